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
// `#1 safety vault`, `#2: plank`
std::size_t hash_number_size(std::string_view text) {
  std::size_t i = 1;
  while (i < text.size() && i < 3 && is_digit(text[i])) ++i;
  if (i == 1) return 0;
  if (i < text.size() && std::string_view(":.)-").find(text[i]) != std::string_view::npos) ++i;
  return space_size(text, i) > 0 ? i : 0;
}

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

// `#1 safety vault`, `#2 cat hang`, `#3 …`: a list, where one alone may be a gymnast's number.
void read_hash_numbers(const Source& source, std::vector<Line>& lines) {
  std::vector<Line*> run;
  const auto close = [&] {
    constexpr std::size_t kLeast = 3;
    for (Line* line : run.size() < kLeast ? std::vector<Line*>() : run) {
      line->mark = Line::Mark::kNumber;
      line->level = 1;
      const std::string_view words = line->words(source);
      line->text += static_cast<std::uint32_t>(behind_spaces(words, hash_number_size(words)));
    }
    run.clear();
  };
  for (Line& line : lines) {
    const std::string_view words = line.words(source);
    const bool open = line.mark == Line::Mark::kNone && !words.empty() && words[0] == '#';
    const bool next = open && hash_number_size(words) > 0 &&
                      words.substr(1).starts_with(std::to_string(run.size() + 1)) &&
                      !is_digit(words[1 + std::to_string(run.size() + 1).size()]);
    if (!next) close();
    if (next) run.push_back(&line);
  }
  close();
}

// `1  Press-ups`, `2  V-sits`, …, `16 Stork stand`: numbers that go on by one from 1 over many
// lines are a list's, whatever stands between; a few may be amounts.
void read_bare_numbers(const Source& source, std::vector<Line>& lines) {
  std::vector<std::pair<Line*, std::uint32_t>> run;  // and the bytes of its number
  for (Line& line : lines) {
    if (line.mark != Line::Mark::kNone || line.blank || line.table || line.clock) continue;
    const std::string_view words = line.words(source);
    std::size_t digits = 0;
    while (digits < words.size() && digits < 3 && is_digit(words[digits])) ++digits;
    if (digits == 0 || space_size(words, digits) == 0) continue;
    const std::size_t name = behind_spaces(words, digits);
    if (name >= words.size() || !is_letter(words[name])) continue;
    if (words.substr(0, digits) != std::to_string(run.size() + 1)) {
      if (run.size() < 5) run.clear();
      if (words.substr(0, digits) != std::to_string(run.size() + 1)) continue;
    }
    run.emplace_back(&line, static_cast<std::uint32_t>(name));
  }
  constexpr std::size_t kLeast = 5;
  if (run.size() < kLeast) return;
  for (const auto& [line, size] : run) {
    line->mark = Line::Mark::kNumber;
    line->level = 1;
    line->text += size;
  }
}

// `rung 1 - straight bounces x20`, `rung 2 - …`: a word and a number that go on by one, line by
// line, number a list, whatever the word is.
void read_counted_labels(const Source& source, std::vector<Line>& lines) {
  struct Label {
    std::string_view word;
    std::string_view number;
    std::uint32_t size = 0;    ///< of both, in bytes
    std::uint32_t behind = 0;  ///< where the words begin
  };
  const auto label_of = [](std::string_view words) -> std::optional<Label> {
    std::size_t at = 0;
    while (at < words.size() && is_letter(words[at])) ++at;
    Label out;
    out.word = words.substr(0, at);
    const std::size_t digits = behind_spaces(words, at);
    if (at == 0 || digits == at) return std::nullopt;
    std::size_t end = digits;
    while (end < words.size() && is_digit(words[end])) ++end;
    out.number = words.substr(digits, end - digits);
    out.size = static_cast<std::uint32_t>(end);
    std::size_t mark = behind_spaces(words, end);
    if (words.substr(mark).starts_with("\xE2\x80\x93") ||
        words.substr(mark).starts_with("\xE2\x80\x94")) {
      mark += 3;
    } else if (mark < words.size() && (words[mark] == '-' || words[mark] == ':')) {
      ++mark;
    } else {
      return std::nullopt;
    }
    const std::size_t name = behind_spaces(words, mark);
    if (out.number.empty() || out.number.size() > 2 || name == mark || name >= words.size())
      return std::nullopt;
    out.behind = static_cast<std::uint32_t>(name);
    return out;
  };
  std::vector<std::pair<Line*, Label>> run;
  const auto close = [&] {
    constexpr std::size_t kLeast = 4;
    for (const auto& [line, label] :
         run.size() < kLeast ? std::vector<std::pair<Line*, Label>>() : run) {
      line->label_begin = line->text;
      line->label_end = line->text + label.size;
      line->text += label.behind;
    }
    run.clear();
  };
  for (Line& line : lines) {
    const auto label = line.blank || line.table ? std::nullopt : label_of(line.words(source));
    const bool next = label && label->number == std::to_string(run.size() + 1) &&
                      (run.empty() || label->word == run.back().second.word);
    if (!next) close();
    if (next) run.emplace_back(&line, *label);
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
  read_hash_numbers(source, out);
  read_bare_numbers(source, out);
  read_counted_labels(source, out);
  return out;
}

}  // namespace chalkleaf::draft
