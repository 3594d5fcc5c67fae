// What a plan for at home must say before a child starts: who is there, and what is cleared away.
// Tested by tests/reason/checks_test.cpp.
#include <algorithm>

#include "reason/check_parts.h"
#include "reason/safety_words.h"

namespace chalkleaf::reason {
namespace {

template <class Rule>
bool any_note(const plan::Session& session, Rule rule) {
  const auto in = [&](const std::vector<plan::Safety>& notes) {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const plan::Safety& note) { return rule(note.words.text); });
  };
  return in(session.safety) || std::any_of(session.parts.begin(), session.parts.end(),
                                           [&](const plan::Part& part) { return in(part.safety); });
}

}  // namespace

void check_home_notes(const plan::Session& session, Diagnostics& diagnostics) {
  if (session.place.value != plan::Place::kHome) return;
  // At the first safety note, where the words belong; where there is none, at the front matter.
  const Span span =
      session.safety.empty() ? session.front_matter : session.safety.front().words.span;
  if (!any_note(session, says_adult_present)) {
    diagnostics.error(
        "no-adult-note", span, "no safety note of this home plan says that an adult is in the room",
        "add it as a block quote, such as ‘> **Safety.** An adult stays in the room.’");
  }
  if (!any_note(session, says_space_cleared)) {
    diagnostics.error(
        "no-space-note", span, "no safety note of this home plan says what to clear away",
        "add it as a block quote, such as ‘> **Safety.** Clear two big steps of floor "
        "in every direction.’");
  }
}

}  // namespace chalkleaf::reason
