// The whole of a dose in its canonical form: what a coach would write who had all day. Every field
// of the model shows in it, and read again it gives the same dose.
//
// A number alone stays one (`3 x 10`, `bare_number`), any other repetitions say `reps`.
#pragma once

#include <fmt/format.h>

#include <string>

#include "dose/parser.h"
#include "plan/circuit.h"

namespace chalkleaf::plan {

inline std::string amount_meaning(const Amount& amount, bool named) {
  const auto range = [](const std::string& from, const std::string& to) {
    return to.empty() ? from : from + "–" + to;
  };
  std::string rungs;
  for (const std::int64_t rung : amount.ladder)
    rungs += (rungs.empty() ? "" : "-") + std::to_string(rung);
  const std::string count = !rungs.empty()
                                ? rungs
                                : range(std::to_string(amount.count),
                                        amount.count_to ? std::to_string(*amount.count_to) : "");
  const std::string time = amount.time ? range(exact_text(*amount.time),
                                               amount.time_to ? exact_text(*amount.time_to) : "")
                                       : "";
  switch (amount.kind) {
    case AmountKind::kRepetitions:
      return count + (amount.bare_number || named ? "" : " reps");
    case AmountKind::kTime:
      return (amount.as_many ? "AMRAP " : "") + time + (amount.held ? " hold" : "");
    case AmountKind::kSteps:
      return count + " steps";
    case AmountKind::kLengths:
      return count + " lengths";
    case AmountKind::kMaxHold:
      return "max hold" + (time.empty() ? "" : " up to " + time);
    case AmountKind::kMoves:
      break;
  }
  return "?";
}

inline std::string sides_meaning(Sides sides) {
  constexpr const char* kSides[] = {"", " each side", " each way", " each leg", " each arm"};
  return kSides[static_cast<int>(sides)];
}

inline std::string moves_meaning(const Dose& dose) {
  std::string out;
  for (const Move& move : dose.moves) {
    out += out.empty() ? "" : ", ";
    out += amount_meaning(move.amount, true);
    if (!(move.amount.held && move.name.text == "hold")) out += " " + move.name.text;
    out += sides_meaning(move.sides);
  }
  const bool plain = dose.sets == 1 && !dose.in_goes && dose.sides == Sides::kOnce;
  return plain ? out : "(" + out + ")";
}

inline std::string meaning(const Dose& dose) {
  std::string out;
  if (dose.in_goes) {
    out = fmt::format("{} goes of ", dose.sets);
  } else if (dose.sets != 1) {
    out = fmt::format("{} x ", dose.sets);
  }
  out += dose.amount.kind == AmountKind::kMoves ? moves_meaning(dose)
                                                : amount_meaning(dose.amount, false);
  out += sides_meaning(dose.sides);
  for (std::size_t i = 0; i < dose.ways.size(); ++i) {
    out += (i == 0 ? ": " : ", ") + dose.ways[i].text;
  }
  if (dose.rest) out += *dose.rest == Duration() ? ", no rest" : ", rest " + exact_text(*dose.rest);
  if (dose.tempo) {
    out += ", tempo ";
    for (std::size_t i = 0; i < 4; ++i) {
      out += fmt::format("{}{}", i == 0 ? "" : "-", dose.tempo->phases[i].rounded_seconds());
    }
  }
  if (dose.pace) out += ", pace " + exact_text(*dose.pace);
  if (dose.every) out += ", every " + exact_text(*dose.every);
  if (dose.effort) out += fmt::format(", effort {}", *dose.effort);
  for (const Words& remark : dose.remarks) out += ", " + remark.text;
  return out;
}

/// `3 rounds, 30 s work, 15 s rest, 1 min between rounds`; behind it `?` when it may be a dose.
inline std::string meaning(const CircuitRead& read) {
  const Circuit& circuit = read.circuit;
  std::string out = fmt::format("{} rounds", circuit.rounds);
  if (circuit.work) out += fmt::format(", {} work", exact_text(*circuit.work));
  if (circuit.rest) {
    out += *circuit.rest == Duration() ? ", no rest"
                                       : fmt::format(", {} rest", exact_text(*circuit.rest));
    if (!circuit.work) out += " between stations";
  }
  if (circuit.between) out += fmt::format(", {} between rounds", exact_text(*circuit.between));
  return out + (read.may_be_dose ? " ?" : "");
}

/// A text without a file behind it.
inline source::Text running_text(const SourcePtr& source) {
  source::Text out;
  const std::string_view text = source->text();
  out.append(text, {source.get(), 0, static_cast<std::uint32_t>(text.size())});
  return out;
}

inline std::string problem_meaning(const DoseProblem& problem) {
  return fmt::format("! {} | {}", problem.message, problem.hint);
}

inline std::string dose_meaning(const std::string& text) {
  const auto source = std::make_shared<const Source>("dose", text);
  const auto dose = parse_dose(running_text(source));
  return dose ? meaning(*dose) : problem_meaning(dose.error());
}

inline std::string line_meaning(const std::string& text) {
  const auto source = std::make_shared<const Source>("dose", text);
  const auto dose = parse_moves_line(running_text(source));
  return dose ? meaning(*dose) : "-";
}

inline std::string circuit_meaning(const std::string& text) {
  const auto source = std::make_shared<const Source>("dose", text);
  const auto read = parse_circuit(running_text(source));
  if (!read) return problem_meaning(read.error());
  return *read ? meaning(**read) : "-";
}

}  // namespace chalkleaf::plan
