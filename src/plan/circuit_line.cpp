// See the header.
#include "plan/circuit_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "plan/circuit.h"
#include "plan/dose_parser.h"
#include "plan/tokens.h"
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

// A text that may be a dose is a circuit's where its name says so, or stations follow.
bool counts(const CircuitRead& read, const source::Text& name, StationsBelow stations) {
  return !read.may_be_dose || stations == StationsBelow::kSurely || names_a_circuit(name);
}

void report(const DoseProblem& problem, const source::Text& text, Diagnostics& diagnostics) {
  diagnostics.error(
      problem.kind == DoseProblem::Kind::kUnreadable ? "unreadable-dose" : "bad-value",
      text.span(problem.begin, problem.end), problem.message, problem.hint);
}

}  // namespace

bool is_circuit(const source::Text& name, const source::Text& written, StationsBelow stations) {
  const auto read = parse_circuit(written);
  return read && *read && counts(**read, name, stations);
}

bool read_circuit(const source::Text& name, const source::Text& written, StationsBelow stations,
                  DrillLine& out, Diagnostics& diagnostics) {
  auto read = parse_circuit(written);
  if (read && *read) {
    if (!counts(**read, name, stations)) return false;
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
  auto read = parse_circuit(text);
  if (!read || !*read || !counts(**read, {}, stations)) return false;
  out.name = plain_words_of(text);
  out.circuit = std::move((*read)->circuit);
  return true;
}

bool read_circuit_without_colon(const source::Text& name, const source::Text& written,
                                StationsBelow stations, DrillLine& out, Diagnostics& diagnostics) {
  if (name.empty() || stations == StationsBelow::kNone) return false;
  auto read = parse_circuit(written);
  if (!read || !*read || !counts(**read, name, stations)) return false;
  out.name = plain_words_of(name);
  out.circuit = std::move((*read)->circuit);
  const Words rounds = words_of(written);
  diagnostics.error("bad-value", rounds.span, "there is no colon before the rounds of this circuit",
                    fmt::format("put a colon between its name and its rounds: `{}: {}`",
                                out.name.text, rounds.text));
  return true;
}

}  // namespace chalkleaf::plan
