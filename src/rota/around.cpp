// See the header.
#include "rota/around.h"

#include <algorithm>
#include <charconv>

#include "base/text.h"
#include "rota/interpret.h"
#include "rota/mentions.h"
#include "rota/table.h"

namespace chalkleaf::rota {
namespace {

std::optional<int> small_number(std::string_view text) {
  int out = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), out);
  const bool whole = read.ec == std::errc() && read.ptr == text.data() + text.size();
  return whole ? std::optional(out) : std::nullopt;
}

class AroundReader {
 public:
  AroundReader(const Source& source, const std::vector<Line>& lines, const Words& words,
               Rotation& rotation)
      : source_(source), lines_(lines), words_(words), out_(rotation) {}

  void run() {
    order_clocks();
    find_heading();
    part_heading();
    find_lengths();
    find_start();
    pauses_around();
    pauses_in_words();
    settle_turns();
    settle_pauses();
  }

 private:
  bool in_grid(const Line& line) const {
    return std::find(out_.lines.begin(), out_.lines.end(), line.number) != out_.lines.end();
  }
  std::string_view whole(const Line& line) const {
    return source_.text().substr(line.begin, line.end - line.begin);
  }
  std::size_t first_line() const { return out_.lines.empty() ? 0 : out_.lines.front() - 1; }
  std::size_t last_line() const { return out_.lines.empty() ? 0 : out_.lines.back() - 1; }

  // `7.50`, and then `8.10`: of the evening too.
  void order_clocks() {
    std::optional<int> above;
    const auto behind = [&](std::optional<int>& clock) {
      if (!clock) return;
      constexpr int kHalfDay = 12 * 60;
      const bool later_half = above && *clock < *above && (*clock + kHalfDay) > *above;
      if (later_half && *above - *clock > kHalfDay / 2) *clock += kHalfDay;
      above = clock;
    };
    for (std::size_t t = 0; t <= out_.turns.size(); ++t) {
      for (Pause& pause : out_.pauses) {
        if (pause.before == t) behind(pause.clock);
      }
      if (t < out_.turns.size()) behind(out_.turns[t].clock);
    }
  }
  static int behind_clock(int clock, int turn) {
    return clock < turn && turn - clock > 360 ? clock + 720 : clock;
  }

  // The nearest line above that says so.
  void find_heading() {
    if (!out_.heading.text.empty()) {  // of a rotation without a grid
      heading_line_ = out_.lines.front() - 1;
      return;
    }
    constexpr std::size_t kFar = 12;
    std::size_t seen = 0;
    for (std::size_t i = first_line(); i-- > 0 && seen < kFar;) {
      const Line& line = lines_[i];
      if (line.blank || line.pipe) continue;
      ++seen;
      const bool titled = line.hashes > 1;
      const bool says = within(words_.rotating, line.words(source_)) ||
                        (within(words_.events, line.words(source_)) && seen < 4);
      if (!titled && !(says && !line.bullet)) continue;
      if (titled && !says && seen > 3) return;
      out_.heading = {std::string(line.words(source_)), {&source_, line.begin, line.end}};
      heading_line_ = i;
      return;
    }
  }

  // `Rotations from 9.25 (28 mins each, 2 to move)`: a name, and lengths or more behind it.
  void part_heading() {
    const std::string_view text = out_.heading.span ? words_of_heading() : std::string_view();
    if (text.empty()) return;
    std::size_t cut = text.size();
    for (const std::string_view mark : {"(", ",", ":", " - ", " – ", " — ", "."}) {
      std::size_t found = text.find(mark);
      // The point of a clock is none.
      while (mark == "." && found + 1 < text.size() && found != std::string_view::npos &&
             !is_blank(text[found + 1]))
        found = text.find(mark, found + 1);
      if (found > 2) cut = std::min(cut, found);
    }
    std::size_t behind_clock = 0;
    for (const Token& token : tokens_of(text)) {
      if (!token.is_number() || token.begin < 3 || token.begin < behind_clock) continue;
      if (const auto clock = read_clock(text.substr(token.begin))) {
        behind_clock = token.begin + clock->size;
      } else {
        cut = std::min(cut, token.begin);
      }
    }
    const auto begin = static_cast<std::uint32_t>(text.data() - source_.text().data());
    const Cell name = trimmed(source_, begin, begin + static_cast<std::uint32_t>(cut));
    out_.title = {std::string(source_.text().substr(name.begin, name.end - name.begin)),
                  {&source_, name.begin, name.end}};
    while (cut < text.size() && std::string_view(" ,:;-").find(text[cut]) != std::string_view::npos)
      ++cut;
    const Cell rest = trimmed(source_, begin + static_cast<std::uint32_t>(cut),
                              begin + static_cast<std::uint32_t>(text.size()));
    if (says_more(source_.text().substr(rest.begin, rest.end - rest.begin)))
      out_.remark = {&source_, rest.begin, rest.end};
  }
  std::string_view words_of_heading() const {
    return heading_line_ ? lines_[*heading_line_].words(source_) : std::string_view();
  }
  // More than lengths of time and the words for them.
  bool says_more(std::string_view text) const {
    const std::vector<Token> tokens = tokens_of(text);
    for (std::size_t at = 0; at < tokens.size();) {
      const std::size_t known =
          std::max({match(words_.minutes, tokens, at), match(words_.each, tokens, at),
                    match(words_.move, tokens, at)});
      const bool small = tokens[at].text == "x" || tokens[at].text == "to" || !tokens[at].is_word();
      if (known == 0 && !small) return true;
      at += std::max<std::size_t>(known, 1);
    }
    return false;
  }

  void take(const Lengths& said, bool near) {
    if (said.turn && !out_.said_minutes) out_.said_minutes = said.turn;
    if (said.move && out_.move == 0) out_.move = *said.move;
    if (!said.list.empty() && list_.empty() && said.list.size() == out_.turns.size())
      list_ = said.list;
    if (near && said.alone && !alone_) alone_ = said.alone;
    if (near && said.turns && !out_.claimed_turns) out_.claimed_turns = said.turns;
  }

  void find_lengths() {
    if (heading_line_) take(lengths_in(words_, lines_[*heading_line_].words(source_)), true);
    if (out_.form == Rotation::Form::kOrder) {
      for (const std::uint32_t line : out_.lines)
        take(lengths_in(words_, lines_[line - 1].words(source_)), true);
    }
    constexpr std::size_t kFar = 6;
    std::size_t seen = 0;
    for (std::size_t i = first_line(); i-- > 0 && seen < kFar;) {
      if (lines_[i].blank || in_grid(lines_[i])) continue;
      ++seen;
      // A line with a clock of its own is a part.
      if (lines_[i].clock && (!heading_line_ || i != *heading_line_) && seen > 1) continue;
      take(lengths_in(words_, lines_[i].words(source_)), false);
    }
    seen = 0;
    for (std::size_t i = last_line() + 1; i < lines_.size() && seen < 3; ++i) {
      if (lines_[i].blank) continue;
      ++seen;
      if (!lines_[i].clock) take(lengths_in(words_, lines_[i].words(source_)), false);
    }
    for (const Line& line : lines_) {
      if (in_grid(line) || line.blank || line.clock || line.bullet) continue;
      if (within(words_.rotating, line.words(source_)) || within(words_.turns, line.words(source_)))
        take(lengths_in(words_, line.words(source_)), false);
    }
    const bool clocked = out_.turns.size() > 1 && out_.turns[1].clock;
    if (!out_.said_minutes && list_.empty() && alone_ && !clocked) {
      // `Rotations (100 min)` is all of it; `ROTATIONS, 45 min` is a turn.
      const int n = static_cast<int>(out_.turns.size());
      out_.said_minutes = n > 2 && *alone_ >= 60 && *alone_ / n >= 8
                              ? (*alone_ - out_.move * (n - 1)) / n
                              : *alone_;
    }
  }

  void find_start() {
    if (out_.turns.empty() || out_.turns.front().clock) return;
    if (out_.form == Rotation::Form::kOrder) return;
    if (!heading_line_) return;
    const Line& line = lines_[*heading_line_];
    if (line.clock) {
      out_.turns.front().clock = line.clock->minutes;
      return;
    }
    // `Rotations from 9.25`
    const std::string_view text = line.words(source_);
    for (std::size_t at = 0; at < text.size(); ++at) {
      if (at > 0 && !is_blank(text[at - 1]) && text[at - 1] != '(') continue;
      if (const auto clock = read_clock(text.substr(at))) {
        out_.turns.front().clock = clock->clock.minutes;
        return;
      }
    }
  }

  std::optional<int> last_clock() const {
    return out_.turns.empty() ? std::nullopt : out_.turns.back().clock;
  }

  // `5:55-6:05 SNACK + BATHROOM` below a grid.
  void pauses_around() {
    if (out_.turns.size() < 2 || !out_.turns[0].clock || !last_clock()) return;
    for (const Line& line : lines_) {
      if (!line.clock || in_grid(line) || !within(words_.pauses, line.words(source_))) continue;
      const int clock = behind_clock(line.clock->minutes, *out_.turns[0].clock);
      if (clock <= *out_.turns[0].clock || clock >= *last_clock() + 90) continue;
      const std::size_t before = turn_behind(clock);
      const bool there = std::any_of(out_.pauses.begin(), out_.pauses.end(),
                                     [&](const Pause& one) { return one.before == before; });
      if (there || before == out_.turns.size()) continue;
      Pause pause;
      pause.before = before;
      pause.clock = clock;
      if (line.clock->until) pause.minutes = *line.clock->until - clock;
      pause.words = std::string(line.words(source_));
      pause.span = {&source_, line.begin, line.end};
      out_.pauses.push_back(std::move(pause));
      out_.lines.push_back(line.number);
    }
    sort_pauses();
  }
  std::size_t turn_behind(int clock) const {
    std::size_t out = 0;
    while (out < out_.turns.size() && out_.turns[out].clock && *out_.turns[out].clock < clock)
      ++out;
    return out;
  }
  void sort_pauses() {
    std::stable_sort(out_.pauses.begin(), out_.pauses.end(),
                     [](const Pause& a, const Pause& b) { return a.before < b.before; });
  }

  // `- break after 2: 10 min, water and loo`; `Water after the second one, 5 mins`.
  void pauses_in_words() {
    for (const Line& line : lines_) {
      const bool own = out_.form == Rotation::Form::kOrder;
      if (line.blank || (in_grid(line) && !own) || line.end - line.begin > 300) continue;
      const std::vector<Token> tokens = tokens_of(line.words(source_));
      for (std::size_t at = 0; at + 1 < tokens.size(); ++at) {
        if (match(words_.pauses, tokens, at) == 0) continue;
        if (pause_after(line, tokens, at)) break;
      }
    }
    sort_pauses();
  }
  bool pause_after(const Line& line, const std::vector<Token>& tokens, std::size_t at) {
    std::optional<std::size_t> after;
    for (std::size_t i = at + 1; i < std::min(tokens.size(), at + 8); ++i) {
      if (tokens[i].text == ".") break;
      if (tokens[i].text != "after" && tokens[i].text != "behind") continue;
      std::size_t k = i + 1;
      while (k < tokens.size() && (tokens[k].text == "the" || match(words_.turns, tokens, k) > 0))
        ++k;
      if (k >= tokens.size()) break;
      if (tokens[k].is_number())
        after = static_cast<std::size_t>(std::max(0, small_number(tokens[k].text).value_or(0)));
      for (std::size_t n = 0; n < words_.first.size(); ++n) {
        if (tokens[k].text == words_.first[n].front()) after = n + 1;
      }
    }
    if (!after || *after == 0 ||
        *after >= std::max<std::size_t>(out_.turns.size(),
                                        static_cast<std::size_t>(out_.claimed_turns.value_or(0))))
      return false;
    const bool there = std::any_of(out_.pauses.begin(), out_.pauses.end(),
                                   [&](const Pause& one) { return one.before == *after; });
    if (there) return true;
    Pause pause;
    pause.before = *after;
    for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
      const auto number = tokens[i].is_number() ? small_number(tokens[i].text) : std::nullopt;
      const bool sentence = i > at ? std::none_of(tokens.begin() + static_cast<std::ptrdiff_t>(at),
                                                  tokens.begin() + static_cast<std::ptrdiff_t>(i),
                                                  [](const Token& t) { return t.text == "."; })
                                   : line.bullet;
      if (number && sentence && match(words_.minutes, tokens, i + 1) > 0) {
        pause.minutes = *number;
        break;
      }
    }
    const std::string_view text = line.words(source_);
    // What the break is, behind its minutes: `10 min, water and loo`.
    const std::size_t comma = line.bullet ? text.find(',') : std::string_view::npos;
    pause.words =
        comma == std::string_view::npos
            ? std::string(text.substr(tokens[at].begin, tokens[at].end - tokens[at].begin))
            : std::string(trim(text.substr(comma + 1)));
    pause.span = {&source_, line.begin, line.end};
    out_.pauses.push_back(std::move(pause));
    return true;
  }

  // The clock of what comes next: a turn, a break, or what stands below the grid.
  std::optional<int> next_clock(std::size_t turn) const {
    for (const Pause& pause : out_.pauses) {
      if (pause.before == turn + 1 && pause.clock) return pause.clock;
    }
    const bool pause = std::any_of(out_.pauses.begin(), out_.pauses.end(),
                                   [&](const Pause& one) { return one.before == turn + 1; });
    if (turn + 1 < out_.turns.size()) return pause ? std::nullopt : out_.turns[turn + 1].clock;
    constexpr int kLongest = 75;
    std::optional<int> out;
    for (std::size_t i = last_line() + 1; i < lines_.size(); ++i) {
      const Line& line = lines_[i];
      if (!line.clock || !out_.turns[turn].clock || line.blank) continue;
      const int clock = behind_clock(line.clock->minutes, *out_.turns[turn].clock);
      const int gap = clock - *out_.turns[turn].clock;
      if (gap > 4 && gap <= kLongest) return clock;
    }
    return out;
  }

  void settle_turns() {
    std::vector<int> gaps;
    for (std::size_t t = 0; t + 1 < out_.turns.size(); ++t) {
      const auto next = next_clock(t);
      if (out_.turns[t].clock && next) gaps.push_back(*next - *out_.turns[t].clock);
    }
    std::sort(gaps.begin(), gaps.end());
    std::optional<int> usual;
    if (!gaps.empty()) usual = gaps[gaps.size() / 2];
    // `28 mins each` beside a grid of half hours: what is left is the way.
    if (usual && out_.said_minutes && out_.move == 0 && *usual > *out_.said_minutes &&
        *usual <= *out_.said_minutes + 10)
      out_.move = *usual - *out_.said_minutes;
    out_.claimed = out_.said_minutes;
    if (usual && out_.said_minutes &&
        (*out_.said_minutes > *usual || *usual > 2 * *out_.said_minutes))
      out_.said_minutes.reset();
    for (std::size_t t = 0; t < out_.turns.size(); ++t) {
      Turn& turn = out_.turns[t];
      if (turn.minutes > 0) continue;
      if (t < list_.size()) {
        turn.minutes = list_[t];
        continue;
      }
      const auto next = next_clock(t);
      const int gap = turn.clock && next ? *next - *turn.clock : 0;
      const bool last = t + 1 == out_.turns.size();
      if (out_.said_minutes &&
          (gap == 0 || gap == *out_.said_minutes || gap == *out_.said_minutes + out_.move)) {
        turn.minutes = *out_.said_minutes;
      } else if (gap > 0 && (!last || !usual || gap <= *usual)) {
        turn.minutes = usual && gap == *usual && out_.said_minutes
                           ? *out_.said_minutes
                           : std::max(1, gap - (last ? 0 : out_.move));
      } else if (out_.said_minutes) {
        turn.minutes = *out_.said_minutes;
      } else if (usual) {
        turn.minutes = *usual - out_.move;
      }
    }
    fill_clocks(out_);
  }

  void settle_pauses() {
    for (Pause& pause : out_.pauses) {
      if (pause.before >= out_.turns.size()) continue;
      const Turn& next = out_.turns[pause.before];
      if (pause.minutes == 0 && pause.clock && next.clock)
        pause.minutes = *next.clock - *pause.clock;
      if (pause.minutes == 0) {
        if (const auto said = lengths_in(words_, pause.words); said.alone || said.turn)
          pause.minutes = said.alone ? *said.alone : *said.turn;
      }
      if (pause.minutes == 0 && pause.before > 0 && next.clock &&
          out_.turns[pause.before - 1].clock) {
        const Turn& above = out_.turns[pause.before - 1];
        const int left = *next.clock - *above.clock - above.minutes;
        if (above.minutes > 0 && left > 0) pause.minutes = left;
      }
    }
  }

  const Source& source_;
  const std::vector<Line>& lines_;
  const Words& words_;
  Rotation& out_;
  std::optional<std::size_t> heading_line_ = {};
  std::optional<int> alone_ = {};
  std::vector<int> list_ = {};
};

}  // namespace

void fill_clocks(Rotation& rotation) {
  for (std::size_t t = 1; t < rotation.turns.size(); ++t) {
    const Turn& above = rotation.turns[t - 1];
    if (rotation.turns[t].clock || !above.clock || above.minutes == 0) continue;
    int clock = *above.clock + above.minutes + rotation.move;
    for (const Pause& pause : rotation.pauses) {
      if (pause.before == t) clock += pause.minutes;
    }
    rotation.turns[t].clock = clock;
  }
  // A break ends when the turn behind it begins.
  for (Pause& pause : rotation.pauses) {
    if (pause.clock || pause.minutes == 0 || pause.before == 0) continue;
    if (pause.before >= rotation.turns.size()) continue;
    if (const auto& next = rotation.turns[pause.before].clock) pause.clock = *next - pause.minutes;
  }
}

void read_around(const Source& source, const std::vector<Line>& lines, const Words& words,
                 Rotation& rotation) {
  AroundReader(source, lines, words, rotation).run();
  read_mentions(source, lines, words, rotation);
}

}  // namespace chalkleaf::rota
