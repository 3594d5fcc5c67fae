// See the header.
#include "draft/lines.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/spoken_time.h"
#include "base/text.h"

namespace chalkleaf::draft {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::size_t dash_size(std::string_view text, std::size_t at) {
  for (const std::string_view dash : {"-", "–", "—", "~", "～", "−"}) {
    if (text.substr(std::min(at, text.size())).starts_with(dash)) return dash.size();
  }
  return 0;
}

// The bytes of a bullet; emoji and dingbats are bullets to those who type on a phone.
std::size_t bullet_size(std::string_view text) {
  if (text.empty()) return 0;
  const auto [code, size] = decode_utf8(text, 0);
  if (text.starts_with(">>")) return 2;
  if (text[0] == '.' && space_size(text, 1) > 0) return 1;
  if (text[0] == '-' || text[0] == '*' || text[0] == '+' || text[0] == '~') {
    const char next = text.size() > 1 ? text[1] : ' ';
    if (next == text[0]) return 0;
    const bool space = space_size(text, 1) > 0;
    return space || (text[0] == '-' && is_letter(next)) ? 1 : 0;
  }
  const bool dash = code == 0x2013 || code == 0x2014;
  if (dash) return space_size(text, size) > 0 ? size : 0;
  const bool sign = code == 0xB7 || (code >= 0x2020 && code <= 0x2023) || code == 0x2043 ||
                    (code >= 0x2190 && code <= 0x2BFF) || code == 0x30FB || code == 0xFF65 ||
                    (code >= 0x1F300 && code <= 0x1FAFF);
  if (!sign) return 0;
  std::size_t end = size;
  if (text.substr(end).starts_with("\xEF\xB8\x8F")) end += 3;  // its picture form
  return end;
}

// `1.`, `2)`, `a)`, `iv.`, `A.`: the bytes with the space behind; 0 when there is none.
std::size_t number_size(std::string_view text) {
  std::size_t i = 0;
  if (text[0] == '(') {  // `(a)`, `(iv)`, `(2)`
    const std::size_t close = text.substr(0, 6).find(')');
    if (close == std::string_view::npos || close < 2 || space_size(text, close + 1) == 0) return 0;
    if (close == 2 && text[1] == '-') return 3;  // `(-)`
    for (std::size_t k = 1; k < close; ++k) {
      const bool letter = close == 2 || std::string_view("ivxIVX").find(text[k]) < 6;
      if (!is_digit(text[k]) && !(letter && is_letter(text[k]))) return 0;
    }
    return close + 1;
  }
  while (i < text.size() && i < 3 && is_digit(text[i])) ++i;
  // `2b TUMBLE`
  if (i > 0 && i + 1 < text.size() && text[i] >= 'a' && text[i] <= 'f' &&
      space_size(text, i + 1) > 0)
    return i + 1;
  // `1.1 walking`, `2.3. balance`; not `1.2 m`, not the clock of `1.15`.
  if (i > 0 && i + 1 < text.size() && text[i] == '.' && is_digit(text[i + 1])) {
    std::size_t end = i + 2;
    if (end < text.size() && text[end] == '.') ++end;
    const std::size_t word = end + space_size(text, end);
    const bool name =
        word > end && word + 1 < text.size() && is_letter(text[word]) && is_letter(text[word + 1]);
    return name ? end : 0;
  }
  if (i == 0) {
    const auto roman = [](char c) {
      return std::string_view("ivxIVX").find(c) != std::string_view::npos;
    };
    while (i < text.size() && i < 4 && roman(text[i])) ++i;
    if (i == 0 && is_letter(text[0])) i = 1;
    const bool marked = i > 0 && i < text.size() && (text[i] == '.' || text[i] == ')');
    if (!marked) return 0;
  }
  if (i == 0 || i >= text.size() || (text[i] != '.' && text[i] != ')')) return 0;
  ++i;
  return space_size(text, i) > 0 ? i : 0;
}

bool is_grid(std::string_view text) {
  std::size_t gaps = 0;
  text = trim(text);
  for (std::size_t i = 0; i < text.size();) {
    std::size_t run = 0;
    bool tab = false;
    while (i + run < text.size() && (text[i + run] == ' ' || text[i + run] == '\t')) {
      tab = tab || text[i + run] == '\t';
      ++run;
    }
    if (tab || run > 2) ++gaps;
    i += run == 0 ? 1 : run;
  }
  return gaps > 1;
}

// `-----`, `=====`, `* * *`: a line of nothing but one sign.
bool is_rule(std::string_view text) {
  text = trim(text);
  if (text.size() < 3 || std::string_view("-=*_~#.").find(text[0]) == std::string_view::npos)
    return false;
  std::size_t signs = 0;
  for (const char c : text) {
    if (c != text[0] && c != ' ') return false;
    signs += c == text[0] ? 1 : 0;
  }
  return signs > 2;
}

// `[ warm up – 5 min ]`, `== VAULT ==`, `~~~ floor ~~~`: a line set off by the same signs on both
// sides; the bytes on each, 0 when there are none.
std::size_t frame_size(std::string_view text) {
  constexpr std::size_t kLongest = 80;
  if (text.size() < 5 || text.size() > kLongest) return 0;
  if (text[0] == '[') {
    const std::size_t close = text.find(']');
    return close + 1 == text.size() && close > 4 ? 1 : 0;
  }
  if (text.starts_with("**") && text.ends_with("**") && text.size() > 6 &&
      text.substr(2, text.size() - 4).find("**") == std::string_view::npos)
    return 2;
  if (std::string_view("=-~+#").find(text[0]) == std::string_view::npos) return 0;
  std::size_t before = 0;
  while (before < text.size() && text[before] == text[0]) ++before;
  std::size_t behind = 0;
  while (behind < text.size() && text[text.size() - 1 - behind] == text[0]) ++behind;
  return before > 1 && before == behind && before + behind + 2 < text.size() ? before : 0;
}

void read_margin(const Source& source, Line& line) {
  const std::string_view all = source.text().substr(line.begin, line.end - line.begin);
  std::size_t at = 0;
  const auto cell = [&] { return at < all.size() && all[at] == ';' ? 1U : 0U; };  // an empty one
  while (const std::size_t size = std::max<std::size_t>(space_size(all, at), cell())) {
    line.indent += all[at] == ' ' ? 1 : 4;
    at += size;
  }
  line.rule = is_rule(all.substr(std::min(at, all.size())));
  line.blank = at >= all.size() || line.rule;
  if (line.blank) {
    line.text = line.end;
    return;
  }
  line.grid = is_grid(all);
  std::string_view rest = all.substr(at);
  line.table = rest[0] == '|';
  const auto move = [&](std::size_t by) {
    at = behind_spaces(all, at + by);
    rest = all.substr(at);
  };
  const std::size_t hashes = std::min(rest.find_first_not_of('#'), rest.size());
  if (hashes > 0 && hashes < 7 && hashes < rest.size() && !is_digit(rest[hashes])) {
    line.mark = Line::Mark::kHash;
    line.level = static_cast<int>(hashes);
    move(hashes);
  } else if (const std::size_t bullet = bullet_size(rest)) {
    line.mark = Line::Mark::kBullet;
    line.emoji = bullet > 3 || (bullet == 3 && decode_utf8(rest, 0).code >= 0x2600);
    move(bullet);
  } else if (rest[0] == '>') {
    line.mark = Line::Mark::kQuote;
    move(1);
  } else if (const std::size_t number = number_size(rest)) {
    line.mark = Line::Mark::kNumber;
    // `1.2`, `2b`, `(a)` stand below a `1.`
    const std::string_view typed = trim(rest.substr(0, number));
    const std::size_t inner = typed.find('.');
    const bool letter = typed.size() > 1 && is_digit(typed[0]) && is_letter(typed.back());
    line.level =
        typed[0] == '(' || letter || (inner != std::string_view::npos && inner + 1 < typed.size())
            ? 2
            : 1;
    move(number);
  }
  if (const std::size_t frame = frame_size(rest)) {
    const bool bold = rest[0] == '*';
    line.bold = bold;
    if (!bold) {
      line.mark = Line::Mark::kHash;
      line.level = 2;
    }
    line.end -= static_cast<std::uint32_t>(frame);
    at = behind_spaces(all, at + frame);
    const std::string_view inside = all.substr(at, line.end - line.begin - at);
    line.end -= static_cast<std::uint32_t>(inside.size() - trim(inside).size());
    rest = source.text().substr(line.begin + at, line.end - line.begin - at);
    // `**1. Warm-up – 12 mins**`
    if (const std::size_t number = bold && line.mark == Line::Mark::kNone ? number_size(rest) : 0) {
      line.mark = Line::Mark::kNumber;
      line.level = 1;
      at = behind_spaces(all, at + number);
      rest = source.text().substr(line.begin + at, line.end - line.begin - at);
    }
  }
  if (rest.starts_with("**") || rest.starts_with("__")) line.bold = true;
  if (const auto clock = read_clock(rest)) {
    line.clock = clock->clock;
    move(clock->size);
  }
  line.text = line.begin + static_cast<std::uint32_t>(at);
}

}  // namespace

std::optional<ClockRead> read_clock(std::string_view text) {
  const auto first = spoken_time(text, 0);
  if (!first) return std::nullopt;
  ClockRead out;
  out.clock.minutes = first->minutes;
  std::size_t at = first->end;
  std::size_t i = behind_spaces(text, at);
  if (const std::size_t dash = dash_size(text, i)) {
    if (const auto second = spoken_time(text, behind_spaces(text, i + dash))) {
      // `8:00-9:30pm`: the first is of the same half of the day.
      const bool evening = second->minutes >= 13 * 60 && second->written < 12 * 60;
      if (evening && out.clock.minutes + 12 * 60 < second->minutes) out.clock.minutes += 12 * 60;
      out.clock.until = second->minutes;
      at = second->end;
    }
  }
  // A time stands alone: `1.15m` is a height.
  if (at < text.size() && (is_letter(text[at]) || is_digit(text[at]) || text[at] == '%')) {
    return std::nullopt;
  }
  i = behind_spaces(text, at);
  if (const std::size_t dash = dash_size(text, i); dash > 0 && space_size(text, i + dash) > 0) {
    at = i + dash;
  } else if (at < text.size() && (text[at] == ':' || text[at] == ';')) {
    ++at;
  }
  out.size = at;
  return out;
}

namespace {

/// What numbers a line of a list that has no dots.
struct Counter {
  std::size_t number = 0;
  std::string_view word = {};  ///< before the number; may be empty
  std::uint32_t size = 0;      ///< of both, in bytes
  std::uint32_t behind = 0;    ///< where the words begin
};

// `#1 safety vault`, `#2: plank`
std::optional<Counter> hash_counter(const Line& line, std::string_view words) {
  if (line.mark != Line::Mark::kNone || !words.starts_with('#')) return std::nullopt;
  Counter out;
  std::size_t at = 1;
  while (at < words.size() && at < 3 && is_digit(words[at]))
    out.number = out.number * 10 + static_cast<std::size_t>(words[at++] - '0');
  if (at > 1 && at < words.size() && std::string_view(":.)-").find(words[at]) < 4) ++at;
  if (at == 1 || space_size(words, at) == 0) return std::nullopt;
  out.behind = static_cast<std::uint32_t>(behind_spaces(words, at));
  return out;
}

// `1  Press-ups`, `16 Stork stand`
std::optional<Counter> bare_counter(const Line& line, std::string_view words) {
  if (line.mark != Line::Mark::kNone || line.clock) return std::nullopt;
  Counter out;
  std::size_t at = 0;
  while (at < words.size() && at < 3 && is_digit(words[at]))
    out.number = out.number * 10 + static_cast<std::size_t>(words[at++] - '0');
  const std::size_t name = behind_spaces(words, at);
  if (at == 0 || name == at || name >= words.size() || !is_letter(words[name])) return std::nullopt;
  out.behind = static_cast<std::uint32_t>(name);
  return out;
}

// `rung 1 - straight bounces x20`, `step 2: hop`, whatever the word is
std::optional<Counter> labelled_counter(const Line&, std::string_view words) {
  Counter out;
  std::size_t at = 0;
  while (at < words.size() && is_letter(words[at])) ++at;
  out.word = words.substr(0, at);
  const std::size_t digits = behind_spaces(words, at);
  if (at == 0 || digits == at) return std::nullopt;
  at = digits;
  while (at < words.size() && at < digits + 2 && is_digit(words[at]))
    out.number = out.number * 10 + static_cast<std::size_t>(words[at++] - '0');
  out.size = static_cast<std::uint32_t>(at);
  const std::size_t mark = behind_spaces(words, at);
  const bool colon = words.substr(mark).starts_with(':');
  const std::size_t size = colon ? 1 : dash_size(words, mark);
  const std::size_t name = behind_spaces(words, mark + size);
  if (at == digits || size == 0 || name == mark + size || name >= words.size()) return std::nullopt;
  out.behind = static_cast<std::uint32_t>(name);
  return out;
}

/// A way in which lists are numbered.
struct Numbering {
  std::optional<Counter> (*read)(const Line&, std::string_view);
  std::size_t least;  ///< so many lines are a list; fewer may be amounts, or gymnasts' numbers
  bool unbroken;      ///< with nothing between them
};

// Numbers that go on by one from 1 are a list's.
void find_numbering(const Source& source, std::vector<Line>& lines, const Numbering& numbering) {
  std::vector<std::pair<Line*, Counter>> run;
  const auto close = [&] {
    if (run.size() >= numbering.least) {
      for (const auto& [line, counter] : run) {
        if (counter.word.empty()) {
          line->mark = Line::Mark::kNumber;
          line->level = 1;
        } else {
          line->label_begin = line->text;
          line->label_end = line->text + counter.size;
        }
        line->text += counter.behind;
      }
    }
    run.clear();
  };
  for (Line& line : lines) {
    const auto counter =
        line.blank || line.table ? std::nullopt : numbering.read(line, line.words(source));
    if (!counter && !numbering.unbroken) continue;
    const bool next = counter && counter->number == run.size() + 1 &&
                      (run.empty() || counter->word == run.back().second.word);
    if (!next) close();
    if (next || (counter && counter->number == 1)) run.emplace_back(&line, *counter);
  }
  close();
}

}  // namespace

std::vector<Line> lines_of(const Source& source, std::uint32_t begin) {
  std::vector<Line> out;
  const std::string_view all = source.text();
  std::uint32_t number = source.line_column(begin).line;
  while (begin < all.size()) {
    const std::size_t stop = std::min(all.find('\n', begin), all.size());
    Line line;
    line.number = number++;
    line.begin = begin;
    line.end = static_cast<std::uint32_t>(stop);
    while (line.end > line.begin && (all[line.end - 1] == '\r' || all[line.end - 1] == ' ')) {
      --line.end;
    }
    read_margin(source, line);
    out.push_back(line);
    begin = static_cast<std::uint32_t>(stop) + 1;
  }
  for (const Numbering& numbering :
       {Numbering{hash_counter, 3, true}, Numbering{bare_counter, 5, false},
        Numbering{labelled_counter, 4, true}})
    find_numbering(source, out, numbering);
  return out;
}

}  // namespace chalkleaf::draft
