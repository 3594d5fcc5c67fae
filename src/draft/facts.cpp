// See the header.
#include "draft/facts.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::draft {
namespace {

using Reading = DraftLine::Reading;

/// Minutes of a clock and those until its end.
struct Hours {
  int start = 0;
  std::optional<int> until;
};

bool is_digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

// The bytes of what stands between a begin and its end: `to`, `til`, a dash.
std::size_t to_the_end(const Lexicon& words, std::string_view text) {
  for (const std::string_view dash : {"-", "–"}) {
    if (text.starts_with(dash)) return dash.size();
  }
  return words.begins(Role::kClockTo, text);
}

// `5pm-6pm`, `6.30-8pm`, `11-12`, `4.30`: the first clock of a text.
std::optional<Hours> hours_in(const Lexicon& words, std::string_view text) {
  const std::string lower = lower_ascii(text);
  for (std::size_t at = 0; at < lower.size(); ++at) {
    if (!is_digit_at(lower, at) ||
        (at > 0 && (is_digit_at(lower, at - 1) || lower[at - 1] == '.' || lower[at - 1] == '/')))
      continue;
    if (const auto clock = read_clock(std::string_view(lower).substr(at))) {
      // `14.3` or `9.12.` may be a day; a clock has minutes of an hour and a second one, or a word.
      Hours out{clock->clock.minutes, clock->clock.until};
      std::string_view rest = trim(std::string_view(lower).substr(at + clock->size));
      const std::size_t to = to_the_end(words, rest);
      if (const auto end = to > 0 ? read_clock(trim(rest.substr(to))) : std::nullopt)
        out.until = end->clock.minutes;
      const bool more = !out.until && (rest.starts_with('-') || rest.starts_with("–"));
      if (!more) return out;
    }
    // `5pm-6pm`, `11-12`, `6.30-8pm`
    std::size_t i = at;
    int hour = 0;
    while (is_digit_at(lower, i) && i < at + 2) hour = hour * 10 + (lower[i++] - '0');
    int minute = 0;
    if (i < lower.size() && (lower[i] == '.' || lower[i] == ':') && is_digit_at(lower, i + 1) &&
        is_digit_at(lower, i + 2)) {
      minute = (lower[i + 1] - '0') * 10 + (lower[i + 2] - '0');
      i += 3;
    }
    const auto noon = [&](std::size_t& j) {
      const std::string word = lower.substr(j, 2);
      if (word != "am" && word != "pm") return 0;
      j += 2;
      return word == "pm" ? 2 : 1;
    };
    const int first_noon = noon(i);
    std::size_t dash = i;
    while (dash < lower.size() && lower[dash] == ' ') ++dash;
    std::size_t second = std::string::npos;
    if (const std::size_t to = to_the_end(words, std::string_view(lower).substr(dash)))
      second = dash + to;
    if (second == std::string::npos && first_noon == 0) continue;
    Hours out{hour * 60 + minute, std::nullopt};
    int second_noon = 0;
    if (second != std::string::npos) {
      while (second < lower.size() && lower[second] == ' ') ++second;
      int end_hour = 0;
      std::size_t j = second;
      while (is_digit_at(lower, j) && j < second + 2) end_hour = end_hour * 10 + (lower[j++] - '0');
      int end_minute = 0;
      if (j < lower.size() && (lower[j] == '.' || lower[j] == ':') && is_digit_at(lower, j + 1) &&
          is_digit_at(lower, j + 2)) {
        end_minute = (lower[j + 1] - '0') * 10 + (lower[j + 2] - '0');
        j += 3;
      }
      if (j > second) second_noon = noon(j);
      const bool letters =
          j < lower.size() && (is_letter(lower[j]) || is_digit_at(lower, j) || lower[j] == '.');
      // `11-12` without a word must be the line's last; `5-9 years` are no hours.
      const bool sure = first_noon != 0 || second_noon != 0 || (minute > 0) ||
                        trim(std::string_view(lower).substr(j)).empty();
      if (j == second || letters || !sure || end_hour > 23) {
        if (first_noon == 0) continue;
      } else {
        out.until = end_hour * 60 + end_minute;
      }
    }
    if (hour > 23) continue;
    const bool afternoon = first_noon == 2 || (first_noon == 0 && second_noon == 2);
    if (afternoon && out.start < 720) out.start += 720;
    if (second_noon == 2 && out.until && *out.until < 720) *out.until += 720;
    return out;
  }
  return std::nullopt;
}

class FactReader {
 public:
  FactReader(const Lexicon& words, const Source& source, const DraftDocument& document)
      : words_(words), source_(source), document_(document) {}

  Facts run() {
    std::size_t seen = 0;
    int home = 0;
    bool clocks = false;
    for (const DraftLine& one : document_.lines) {
      if (one.reading == Reading::kBlank) continue;
      if (one.reading == Reading::kHeading && one.line.clock) {
        clocks = true;
        if (!first_clock_) first_clock_ = one.line.clock->minutes;
      }
      const bool head =
          seen < kHeadLines && (one.reading == Reading::kTitle || one.reading == Reading::kRemark);
      ++seen;
      if (!head) continue;
      const std::string_view text =
          source_.text().substr(one.line.begin, one.line.end - one.line.begin);
      const Pieces pieces = pieces_of(text);
      if (words_.within(Role::kHome, pieces, 0, pieces.size()))
        home += one.reading == Reading::kTitle ? 3 : 2;
      people(pieces);
      if (!hours_) hours_ = hours_in(words_, text);
    }
    out_.home = home > 1 && !clocks && !(hours_ && hours_->until);
    clock();
    return out_;
  }

 private:
  static constexpr std::size_t kHeadLines = 5;

  // `14 kids`, `12 booked`, `Number of pupils: 38`
  void people(const Pieces& pieces) {
    if (out_.gymnasts) return;
    for (std::size_t i = 0; i + 1 < pieces.size(); ++i) {
      if (!pieces[i].is(Piece::Kind::kNumber) || !pieces[i].whole) continue;
      const bool before = i > 1 && words_.is(Role::kPeople, pieces, i - 2, pieces.size()) &&
                          pieces[i - 1].is(Piece::Kind::kColon);
      if (!before && !words_.is(Role::kPeople, pieces, i + 1, pieces.size())) continue;
      if (pieces[i].value < 1 || pieces[i].value > 200) continue;
      out_.gymnasts = static_cast<int>(pieces[i].value);
      return;
    }
  }

  void clock() {
    if (first_clock_) {
      out_.start = in_gym_hours(*first_clock_);
    } else if (hours_) {
      out_.start = in_gym_hours(hours_->start);
    }
    if (!hours_ || !hours_->until) return;
    const int begin = in_gym_hours(hours_->start);
    int end = *hours_->until;
    while (end <= begin) end += 720;
    if (end - begin < 12 * 60) out_.slot = end - begin;
    out_.start = begin;
  }

  const Lexicon& words_;
  const Source& source_;
  const DraftDocument& document_;
  Facts out_;
  std::optional<Hours> hours_;
  std::optional<int> first_clock_;
};

}  // namespace

int in_gym_hours(int minutes) {
  return minutes >= 60 && minutes < 8 * 60 ? minutes + 720 : minutes;
}

Facts facts_of(const Lexicon& words, const Source& source, const DraftDocument& document) {
  return FactReader(words, source, document).run();
}

}  // namespace chalkleaf::draft
