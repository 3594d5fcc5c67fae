// See the header.
#include "plan/circuit_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "base/text.h"
#include "dose/parser.h"
#include "dose/tokens.h"
#include "plan/circuit.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

// `Circuit`, `Leg circuit`: nobody gives a single drill that name.
bool names_a_circuit(const source::Text& name) {
  const std::vector<Token> tokens = tokens_of(std::string_view(name.str()).substr(0, kLongestDose));
  return std::any_of(tokens.begin(), tokens.end(), [](const Token& token) {
    return token.is_word("circuit") || token.is_word("circuits");
  });
}

// `Circuit`, `Circuits` and nothing else: such a line is one even where its stations are missing.
bool is_called_circuit(const source::Text& name) {
  const std::string plain = lower_ascii(name.trimmed().str());
  return plain == "circuit" || plain == "circuits";
}

// Whether `3` and `3 times` are rounds here.
BareRounds bare_rounds(const source::Text& name, StationsBelow stations) {
  const bool circuit = names_a_circuit(name) && stations != StationsBelow::kNone;
  return circuit || is_called_circuit(name) ? BareRounds::kCount : BareRounds::kNo;
}

/// `Circuit x 3`, `Leg circuit (3 rounds)`, `3 round circuit`: a name, and the rounds with it.
struct NameWithRounds {
  source::Text name;
  source::Text rounds;
};

bool says_rounds(const source::Text& text) {
  const auto read = parse_circuit(text, BareRounds::kCount);
  return read && *read && (*read)->has_rounds;
}

std::optional<NameWithRounds> rounds_in_name(const source::Text& name) {
  constexpr std::size_t kMostTokens = 12;  // a name, not an essay
  const std::vector<Token> tokens = tokens_of(std::string_view(name.str()).substr(0, kLongestDose));
  if (tokens.size() > kMostTokens || !names_a_circuit(name)) return std::nullopt;
  const auto parts = [](const Token& token) {
    return token.is(TokenKind::kOpen) || token.is(TokenKind::kClose) ||
           token.is(TokenKind::kComma) || token.is(TokenKind::kDash) || token.is(TokenKind::kColon);
  };
  std::size_t end = tokens.size();
  while (end > 0 && parts(tokens[end - 1])) --end;
  // A number alone is the circuit's own: `Circuit 2`.
  for (std::size_t i = 1; i + 1 < end; ++i) {
    if (parts(tokens[i])) continue;
    std::size_t last = i;
    while (last > 0 && parts(tokens[last - 1])) --last;
    const source::Text before = name.slice(0, last == 0 ? 0 : tokens[last - 1].end);
    const source::Text rest = name.slice(tokens[i].begin, tokens[end - 1].end);
    if (names_a_circuit(before) && says_rounds(rest)) return NameWithRounds{before, rest};
  }
  for (std::size_t i = 2; i < std::min<std::size_t>(4, end); ++i) {
    const source::Text rest = name.slice(tokens[i].begin, tokens[end - 1].end);
    const source::Text before = name.slice(0, tokens[i - 1].end);
    if (names_a_circuit(rest) && says_rounds(before)) return NameWithRounds{rest, before};
  }
  return std::nullopt;
}

// `Circuit (3 rounds): 30 s on / 15 s off` as one line of a circuit; its name stays as it is, so
// that the card says the rounds.
std::optional<CircuitRead> with_rounds_of_name(const source::Text& name,
                                               const source::Text& written) {
  const auto with = rounds_in_name(name);
  if (!with) return std::nullopt;
  source::Text whole = with->rounds;
  whole.append(", ", written.span());
  whole.append(written);
  auto read = parse_circuit(whole, BareRounds::kCount);
  if (!read || !*read) return std::nullopt;
  (*read)->circuit.span = written.span();
  return **read;
}

// A text that may be a dose is a circuit's where its name says so, or stations follow.
bool counts(const CircuitRead& read, const source::Text& name, StationsBelow stations) {
  return !read.may_be_dose || stations == StationsBelow::kSurely || names_a_circuit(name);
}

void report(const DoseProblem& problem, const source::Text& text, Diagnostics& diagnostics) {
  diagnostics.error(problem.kind == DoseProblem::Kind::kUnreadable ? "unreadable-dose" : kBadValue,
                    text.span(problem.begin, problem.end), problem.message, problem.hint);
}

}  // namespace

bool is_circuit(const source::Text& name, const source::Text& written, StationsBelow stations) {
  const auto read = parse_circuit(written);
  return read && *read && counts(**read, name, stations);
}

bool read_circuit(const source::Text& name, const source::Text& written, StationsBelow stations,
                  DrillLine& out, Diagnostics& diagnostics) {
  auto read = parse_circuit(written, bare_rounds(name, stations));
  if (!read || !*read || !(*read)->has_rounds) {
    if (auto with = with_rounds_of_name(name, written)) {
      out.circuit = std::move(with->circuit);
      return true;
    }
  }
  if (read && *read) {
    if (!counts(**read, name, stations)) return false;
    // `Circuit: 3 x 2 min` with nothing below it is a dose like any other.
    const bool lone_dose = stations == StationsBelow::kNone && (*read)->may_be_dose &&
                           (*read)->circuit.work && !is_circuit(name, written, stations);
    if (lone_dose) return false;
    out.circuit = std::move((*read)->circuit);
    return true;
  }
  const bool meant = stations != StationsBelow::kNone || names_a_circuit(name);
  if (read || !meant || parse_dose(written)) return false;
  report(read.error(), written, diagnostics);
  out.circuit.emplace();
  out.circuit->span = written.span();
  out.dose_unreadable = true;
  out.unread = plain_words_of(written);
  return true;
}

bool read_nameless_circuit(source::Text text, StationsBelow stations, DrillLine& out) {
  if (stations == StationsBelow::kNone) return false;
  for (const std::string_view behind : {":", " of"}) {
    if (!text.str().ends_with(behind)) continue;
    text = text.slice(0, text.str().size() - behind.size()).trimmed();
  }
  const bool surely = stations == StationsBelow::kSurely;
  auto read = parse_circuit(text, surely ? BareRounds::kCount : BareRounds::kNo);
  // A number alone may be anything.
  const bool number = text.str().find_first_not_of("0123456789") == std::string::npos;
  if (read && *read && !number && counts(**read, {}, stations)) {
    out.name = plain_words_of(text);
    out.circuit = std::move((*read)->circuit);
    return true;
  }
  if (auto with = rounds_in_name(text)) {
    auto rounds = parse_circuit(with->rounds, BareRounds::kCount);
    out.name = plain_words_of(with->name);
    out.circuit = std::move((*rounds)->circuit);
    return true;
  }
  return false;
}

bool says_rounds_by_name(const source::Text& name) { return rounds_in_name(name).has_value(); }

bool report_circuit_without_rounds(source::Text text, StationsBelow stations, DrillLine& out,
                                   Diagnostics& diagnostics) {
  if (stations != StationsBelow::kSurely || !names_a_circuit(text)) return false;
  if (text.str().ends_with(':')) text = text.slice(0, text.str().size() - 1).trimmed();
  out.name = plain_words_of(text);
  out.circuit.emplace();
  out.circuit->span = out.name.span;
  out.dose_unreadable = true;
  diagnostics.error("unreadable-dose", out.name.span, "this circuit does not say how many rounds",
                    fmt::format("write `{0}: 3 rounds`, or with one time for all stations `{0}: 3 "
                                "rounds, 30 s work, 15 s rest`",
                                out.name.text));
  return true;
}

bool read_circuit_without_colon(const source::Text& name, const source::Text& written,
                                StationsBelow stations, DrillLine& out, Diagnostics& diagnostics) {
  if (name.empty() || stations == StationsBelow::kNone) return false;
  auto read = parse_circuit(written, bare_rounds(name, stations));
  if (!read || !*read || !counts(**read, name, stations)) return false;
  out.name = plain_words_of(name);
  out.circuit = std::move((*read)->circuit);
  const Words rounds = words_of(written);
  diagnostics.error(kBadValue, rounds.span, "there is no colon before the rounds of this circuit",
                    fmt::format("put a colon between its name and its rounds: `{}: {}`",
                                out.name.text, rounds.text));
  return true;
}

}  // namespace chalkleaf::plan
