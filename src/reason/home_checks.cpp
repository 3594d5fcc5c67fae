// What a plan for home must say before a child starts: who is there, and what is cleared away. By
// meaning and wherever it stands: in a quote, in `safety:`, in the text above the drills.
// Tested by tests/reason/checks_test.cpp and tests/reason/guard_test.cpp.
#include <algorithm>
#include <string_view>

#include "reason/check_parts.h"

namespace chalkleaf::reason {
namespace {

bool found_of(std::string_view name, const Diagnostics& diagnostics) {
  const auto& all = diagnostics.all();
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) { return d.name == name; });
}

// In the file, or in a note that came with a drill of the library.
bool is_said(std::string_view saying, const Subject& subject) {
  const plan::Session& session = subject.session;
  const auto in = [&](const std::vector<plan::Safety>& notes) {
    return std::any_of(notes.begin(), notes.end(), [&](const plan::Safety& note) {
      return subject.guard->says(saying, note.words.text);
    });
  };
  return subject.guard->says(saying, session) || in(session.safety) ||
         std::any_of(session.parts.begin(), session.parts.end(),
                     [&](const plan::Part& part) { return in(part.safety); });
}

}  // namespace

void check_home_notes(const Subject& subject, Diagnostics& diagnostics) {
  if (!subject.at_home() || subject.guard == nullptr) return;
  const plan::Session& session = subject.session;
  // At the first safety note, where the words belong; where there is none, at the front matter.
  const Span span =
      session.safety.empty() ? session.front_matter : session.safety.front().words.span;
  // A sentence that says the opposite has been pointed at already.
  if (!found_of("danger-alone", diagnostics) && !is_said("adult-stays", subject) &&
      subject.guard->said_in_prose("adult-named", session).empty()) {
    Diagnostic found{Severity::kWarning, "no-adult-note", span,
                     "nothing in this home plan says that an adult stays in the room, so the home "
                     "sheet says it"};
    for (const Span& near : subject.guard->said_in_prose("somebody-named", session))
      found.labels.push_back({near, "this is not enough"});
    found.hint = "make sure of it; in your own words: ‘> **Safety.** An adult stays in the room.’";
    diagnostics.add(std::move(found));
  }
  if (!found_of("danger-space", diagnostics) && !is_said("space-cleared", subject) &&
      subject.guard->said_in_prose("space-named", session).empty()) {
    diagnostics.note("no-space-note", span,
                     "nothing in this home plan says what to clear away, so the home sheet says it",
                     "in your own words: ‘> **Safety.** Clear two big steps of floor in every "
                     "direction.’");
  }
}

plan::Unsaid unsaid_at_home(const Diagnostics& found) {
  return {found_of("no-adult-note", found), found_of("no-space-note", found)};
}

}  // namespace chalkleaf::reason
