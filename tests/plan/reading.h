// What the tests of this room share: read a plan from a string, and put models and messages in
// words.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "plan/read.h"
#include "source/read.h"

namespace chalkleaf::plan {

/// A plan read from a string, with everything its spans need.
struct ReadPlan {
  SourcePtr source;
  source::Document document;
  Session session;
  Diagnostics diagnostics;
};
inline ReadPlan read_plan(const std::string& text, const Club& club = {},
                          const FrontWords& words = {}) {
  ReadPlan out;
  out.source = source::load_text("plan.md", text, out.diagnostics);
  if (!out.source) return out;
  out.document = source::read_document(out.source, out.diagnostics);
  out.session = read_session(out.document, club, out.diagnostics, words);
  return out;
}

/// Every message, one line each, as `--messages short` prints them.
inline std::string messages(const Diagnostics& diagnostics) {
  std::string out;
  for (const Diagnostic& d : diagnostics.sorted()) {
    out += render(d, MessageStyle::kShort, Colouring::kPlain);
  }
  return out;
}

/// The same front matter for every body under test.
inline std::string plan_with(const std::string& body) {
  return "---\ntitle: T\nplace: gym\n---\n" + body;
}
/// The messages of a body, its lines counted from 1.
inline std::string body_messages(const std::string& body) {
  return messages(read_plan("---\ntitle: T\nplace: gym\n---\n" + body).diagnostics);
}

inline std::string described(const Dose& dose) {
  constexpr const char* kUnits[] = {"reps", "time", "steps", "lengths", "max hold", "moves"};
  constexpr const char* kSides[] = {"", "side", "way", "leg", "arm"};
  std::string out;
  if (dose.sets != 1 || dose.in_goes) {
    out += fmt::format("{} {} of ", dose.sets, dose.in_goes ? "goes" : "sets");
  }
  const auto unit = kUnits[static_cast<int>(dose.amount.kind)];
  if (dose.amount.kind == AmountKind::kMoves) {
    for (const Move& move : dose.moves) out += fmt::format("[{}]", move.name.text);
  } else if (dose.amount.kind == AmountKind::kTime) {
    out += exact_text(dose.amount.time.value());
    if (dose.amount.time_to) out += " to " + exact_text(*dose.amount.time_to);
    if (dose.amount.held) out += " held";
  } else if (dose.amount.kind == AmountKind::kMaxHold) {
    out += unit;
    if (dose.amount.time) out += " up to " + exact_text(*dose.amount.time);
  } else {
    out += std::to_string(dose.amount.count);
    if (dose.amount.count_to) out += fmt::format(" to {}", *dose.amount.count_to);
    out += fmt::format(" {}", unit);
  }
  if (dose.sides != Sides::kOnce) {
    out += fmt::format(" each {}", kSides[static_cast<int>(dose.sides)]);
  }
  for (const Words& way : dose.ways) out += fmt::format(" [{}]", way.text);
  if (dose.rest) out += ", rest " + exact_text(*dose.rest);
  if (dose.tempo) out += ", tempo " + exact_text(dose.tempo->total());
  if (dose.pace) out += ", pace " + exact_text(*dose.pace);
  if (dose.every) out += ", every " + exact_text(*dose.every);
  if (dose.effort) out += fmt::format(", effort {}", *dose.effort);
  for (const Words& remark : dose.remarks) out += fmt::format(", ‘{}’", remark.text);
  return out;
}

/// A dose on its own, in words; the message when it cannot be read.
inline std::string dose_of(const std::string& text) {
  const auto source = std::make_shared<const Source>("dose", text);
  source::Text running;
  running.append(text, {source.get(), 0, static_cast<std::uint32_t>(text.size())});
  Diagnostics diagnostics;
  const auto dose = read_dose(running, diagnostics);
  return dose ? described(*dose) : messages(diagnostics);
}

}  // namespace chalkleaf::plan
