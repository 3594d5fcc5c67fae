// See the header.
#include "plan/drill_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

#include "base/text.h"
#include "dose/parser.h"
#include "dose/tokens.h"
#include "plan/choices.h"
#include "plan/circuit_line.h"
#include "plan/mended_line.h"
#include "plan/read.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

constexpr std::size_t kMostTries = 8;  // places where a dose may begin; keeps hostile lines cheap

struct Line {
  source::Text text;
  std::vector<Token> tokens;

  source::Text before(std::size_t token) const { return text.slice(0, tokens[token].begin); }
  source::Text from(std::size_t token) const {
    return text.slice(tokens[token].begin, text.str().size());
  }
};

Line line_of(const source::Text& text) {
  source::Text kept = text.trimmed();
  // A task list's box is for the screen; the printed sheet has boxes of its own.
  const std::string lower = lower_ascii(std::string_view(kept.str()).substr(0, 4));
  if (lower == "[ ] " || lower == "[x] ") kept = kept.slice(4, kept.str().size()).trimmed();
  Line out{std::move(kept), {}};
  out.tokens = tokens_of(std::string_view(out.text.str()).substr(0, 2 * kLongestDose));
  return out;
}

bool is_web_colon(const Line& line, std::size_t i) {
  return std::string_view(line.text.str()).substr(line.tokens[i].begin).starts_with("://");
}

bool is_digit(const Token& token) {
  return token.is(TokenKind::kClock) || (token.is(TokenKind::kNumber) && !token.in_words);
}

bool is_times(const Token& token) { return token.is(TokenKind::kTimes) || token.is_word("x"); }

bool begins_like_dose(const Token& token) {
  return token.is(TokenKind::kNumber) || token.is(TokenKind::kClock) || token.is_word("max") ||
         token.is_word("hold");
}

// The token of the colon between name and dose: the first whose right side is a dose or begins with
// a digit; else the first that could begin one; else the first of all. Nothing without a colon.
std::optional<std::size_t> dividing_colon(const Line& line) {
  std::optional<std::size_t> first;
  std::optional<std::size_t> likely;
  std::size_t tries = 0;
  for (std::size_t i = 0; i < line.tokens.size() && tries < kMostTries; ++i) {
    if (!line.tokens[i].is(TokenKind::kColon) || is_web_colon(line, i)) continue;
    if (!first) first = i;
    if (i + 1 == line.tokens.size()) break;
    ++tries;
    const Token& next = line.tokens[i + 1];
    const bool digit = is_digit(next);
    if (digit || parse_dose(line.from(i + 1))) return i;
    if (!likely && begins_like_dose(next)) likely = i;
  }
  return likely ? likely : first;
}

// Not just a number, which any line may have in it.
bool is_evident(const Dose& dose, std::string_view text) {
  if (dose.amount.kind != AmountKind::kRepetitions || dose.sets > 1) return true;
  if (dose.sides != Sides::kOnce || dose.rest || dose.tempo || dose.pace || dose.every) return true;
  return text.find("rep") != std::string_view::npos;
}

// Where a dose begins in a line without a colon: at its first digit, or behind a dash.
std::optional<std::size_t> dose_without_colon(const Line& line) {
  std::size_t tries = 0;
  bool digit_seen = false;
  for (std::size_t i = 1; i < line.tokens.size() && tries < kMostTries; ++i) {
    const Token& token = line.tokens[i];
    const bool digit = is_digit(token);
    const bool behind_dash = line.tokens[i - 1].is(TokenKind::kDash);
    if (!(digit && !digit_seen) && !behind_dash) continue;
    digit_seen = digit_seen || digit;
    ++tries;
    const source::Text tail = line.from(i);
    const auto dose = parse_dose(tail);
    const bool times = is_times(line.tokens[i - 1]) && i > 1;  // `Star jumps x 10`
    if (dose && (times || is_evident(*dose, tail.str()))) return i;
  }
  return std::nullopt;
}

// Where a drill's name ends before the dose at `at`: without `x`, dashes, commas and the like.
std::size_t name_end_before(const Line& line, std::size_t at) {
  const auto parts = [](const Token& token) {
    return token.is(TokenKind::kDash) || token.is(TokenKind::kComma) ||
           token.is(TokenKind::kSemicolon) || token.is(TokenKind::kOpen) || is_times(token);
  };
  while (at > 0 && parts(line.tokens[at - 1])) --at;
  return at;
}

// `2 x (10 star jumps, 10 high knees), rest 30 s` is called `10 star jumps, 10 high knees`.
Words name_of_moves(const source::Text& text, const Dose& dose) {
  const std::string& all = text.str();
  const auto place = [&](const Words& move) { return std::min(all.rfind(move.text), all.size()); };
  const std::size_t open = all.find('(');
  const bool bracket = open < place(dose.moves.front().name);
  const std::size_t last = place(dose.moves.back().name) + dose.moves.back().name.text.size();
  const std::size_t end = all.find_first_of(bracket ? ",;)" : ",;", last);
  return plain_words_of(text.slice(bracket ? open + 1 : 0, std::min(end, all.size())));
}

// A circuit without its colon: `Circuit, 3 rounds, 30 s work`.
bool is_circuit_behind_name(const Line& line, StationsBelow stations, DrillLine& out,
                            Diagnostics& diagnostics) {
  std::size_t at = 0;
  while (at < line.tokens.size() && !is_digit(line.tokens[at])) ++at;
  if (at == line.tokens.size()) return false;
  const source::Text name = line.before(name_end_before(line, at));
  return read_circuit_without_colon(name, line.from(at), stations, out, diagnostics);
}

DrillLine line_without_colon(const Line& line, StationsBelow stations, Diagnostics& diagnostics) {
  constexpr std::size_t kMostWords = 3;  // of a choice: without a dose, what is longer is a text
  DrillLine out{plain_words_of(line.text)};
  if (line.tokens.empty() || read_nameless_circuit(line.text, stations, out)) return out;
  if (auto dose = parse_moves_line(line.text)) {
    out.name = name_of_moves(line.text, *dose);
    out.dose = std::move(*dose);
    return out;
  }
  if (is_circuit_behind_name(line, stations, out, diagnostics)) return out;
  if (report_circuit_without_rounds(line.text, stations, out, diagnostics)) return out;
  if (begins_like_dose(line.tokens[0])) {
    const auto dose = parse_dose(line.text);
    if (dose && is_evident(*dose, line.text.str())) {
      diagnostics.error(kBadValue, out.name.span, "this dose has no drill",
                        fmt::format("write the drill's name and a colon before it: `Dish hold: {}`",
                                    out.name.text));
      return out;
    }
  }
  const auto at = dose_without_colon(line);
  const std::size_t name_end = at ? name_end_before(line, *at) : 0;
  if (name_end == 0) {
    out.choices = choices_in(line.text, kMostWords);
    return out;
  }
  out.name = plain_words_of(line.before(name_end));
  out.dose_unreadable = true;
  out.unread = plain_words_of(line.from(*at));
  Diagnostic found{Severity::kError, "unreadable-dose", out.unread.span,
                   "there is no colon before this dose"};
  found.hint = fmt::format("put a colon between the drill and its dose: `{}: {}`", out.name.text,
                           out.unread.text);
  if (parse_dose(line.from(*at)))
    found.edits.push_back({{out.name.span.source, out.name.span.end, out.unread.span.begin}, ": "});
  diagnostics.add(std::move(found));
  return out;
}

// A dose that goes on in the next line, indented: `10` / `  slow and tall`. Where it cannot be read
// as one line, each line is a clause of its own.
std::optional<Dose> dose_over_lines(const source::Text& text) {
  if (parse_dose(text)) return std::nullopt;
  source::Text parted;
  bool changed = false;
  for (std::size_t i = 0; i < text.str().size(); ++i) {
    const Span where = text.span(i, i + 1);
    const bool line_end = where.text().find_first_of("\r\n") != std::string_view::npos;
    parted.append(line_end ? "," : text.str().substr(i, 1), where);
    changed = changed || line_end;
  }
  if (!changed) return std::nullopt;
  auto dose = parse_dose(parted);
  if (!dose) return std::nullopt;
  return std::move(*dose);
}

// Words that a number belongs to, so that it is no dose: `Count to 10`, `Beam 2`.
bool takes_a_number(const Token& token) {
  static constexpr std::array<std::string_view, 14> kWords{"to",   "of",  "on", "from", "in",
                                                           "with", "and", "by", "at",   "level",
                                                           "set",  "the", "or", "for"};
  return std::find(kWords.begin(), kWords.end(), token.word) != kWords.end();
}

}  // namespace

std::optional<std::string> mended_drill_line(const Words& name) {
  source::Text text;
  text.append(name.text, name.span);
  const Line line = line_of(text);
  const std::size_t n = line.tokens.size();
  if (n < 2 || std::count_if(line.tokens.begin(), line.tokens.end(), is_digit) != 1) {
    return std::nullopt;
  }
  const Token& first = line.tokens.front();
  if (first.is(TokenKind::kNumber)) {  // `10 star jumps`
    const std::size_t words = is_times(line.tokens[1]) ? 2 : 1;
    if (words == n || !parse_dose(line.text.slice(0, first.end))) return std::nullopt;
    std::string drill = words_of(line.from(words)).text;
    if (drill[0] >= 'a' && drill[0] <= 'z') drill[0] = static_cast<char>(drill[0] - 'a' + 'A');
    return fmt::format("{}: {}", drill, line.text.slice(0, first.end).str());
  }
  std::size_t at = 0;
  while (at < n && !is_digit(line.tokens[at])) ++at;
  const std::size_t end = name_end_before(line, at);
  if (end == 0 || (end == at && takes_a_number(line.tokens[end - 1]))) return std::nullopt;
  const source::Text tail = line.from(at);
  if (!parse_dose(tail)) return std::nullopt;
  return fmt::format("{}: {}", words_of(line.before(end)).text, words_of(tail).text);
}

bool is_drill_line(const source::Text& text) {
  const Line line = line_of(text);
  const auto colon = dividing_colon(line);
  return colon && *colon + 1 < line.tokens.size() && parse_dose(line.from(*colon + 1));
}

bool is_plainly_a_drill(const source::Text& text) {
  const Line line = line_of(text);
  const auto colon = dividing_colon(line);
  if (!colon || *colon == 0 || *colon + 1 >= line.tokens.size()) return false;
  const source::Text tail = line.from(*colon + 1);
  const auto dose = parse_dose(tail);
  return dose && is_evident(*dose, tail.str());
}

std::optional<source::Text> drill_without_colon(const source::Text& text) {
  constexpr std::size_t kMostWords = 5;  // of a name; what is longer is a sentence
  const std::string& all = text.str();
  if (all.empty() || all[0] < 'A' || all[0] > 'Z' || all.ends_with('.') || all.ends_with('!')) {
    return std::nullopt;
  }
  const Line line = line_of(text);
  if (dividing_colon(line)) return std::nullopt;
  const auto at = dose_without_colon(line);
  const std::size_t end = at ? name_end_before(line, *at) : 0;
  if (end == 0 || end > kMostWords || takes_a_number(line.tokens[end - 1])) return std::nullopt;
  source::Text out = line.text.slice(0, line.tokens[end - 1].end);
  out.append(": ", line.text.span(line.tokens[*at].begin, line.tokens[*at].begin));
  out.append(line.from(*at));
  return out;
}

bool is_plainly_a_circuit(const source::Text& text) {
  const Line line = line_of(text);
  const auto colon = dividing_colon(line);
  if (!colon || *colon == 0 || *colon + 1 >= line.tokens.size()) return false;
  return is_circuit(line.before(*colon), line.from(*colon + 1), StationsBelow::kNone);
}

DrillLine read_drill_line(const source::Text& text, StationsBelow stations,
                          Diagnostics& diagnostics) {
  constexpr std::size_t kMostWords = 6;  // of a choice
  const Line line = line_of(text);
  const auto colon = dividing_colon(line);
  if (!colon) return line_without_colon(line, stations, diagnostics);
  const source::Text name = line.before(*colon);
  DrillLine out{plain_words_of(name)};
  const bool nothing_behind = line.from(*colon).str().size() == 1;  // `Dish hold:` has no dose
  if (nothing_behind && (read_nameless_circuit(line.text, stations, out) ||
                         report_circuit_without_rounds(line.text, stations, out, diagnostics))) {
    return out;
  }
  if (out.name.empty()) {
    out.name = plain_words_of(line.text);
    diagnostics.error(kBadValue, out.name.span, "this drill has no name",
                      "write its name before the colon: `Dish hold: 2 x 20 s`");
  }
  out.choices = choices_in(name, kMostWords);
  if (nothing_behind) return out;
  const source::Text written =
      line.text.slice(line.tokens[*colon].end, line.text.str().size()).trimmed();
  if (read_circuit(name, written, stations, out, diagnostics)) {
    out.choices.clear();
    return out;
  }
  out.dose = dose_over_lines(written);
  if (!out.dose) out.dose = read_dose(written, diagnostics);
  out.dose_unreadable = !out.dose;
  if (out.dose_unreadable) out.unread = plain_words_of(written);
  return out;
}

}  // namespace chalkleaf::plan
