// See the header.
#include "club/drafts.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace chalkleaf::club {
namespace {

// How a line is written, not what is done: a reader that could read it has nothing to ask for.
constexpr std::array<std::string_view, 20> kForm{"unreadable-dose",     "no-dose",
                                                 "unknown-drill",       "unknown-key",
                                                 "bad-value",           "missing-key",
                                                 "hard-words",          "duplicate-drill",
                                                 "under-slot",          "no-substitute-at-home",
                                                 "unknown-kit",         "text-overflow",
                                                 "one-side-only",       "duplicate-key",
                                                 "under-budget",        "over-budget",
                                                 "coach-words-at-home", "choices-unordered",
                                                 "unpaired-shape",      "missing-glyph"};

Severity weight(const Diagnostic& found) {
  const bool form = std::find(kForm.begin(), kForm.end(), found.name) != kForm.end();
  if (form) return Severity::kNote;
  const bool file = found.name == "not-written" || found.name == "outside-folder" ||
                    found.name == "unreadable-file" || found.name == "spotter-at-home";
  return found.severity == Severity::kError && !file ? Severity::kWarning : found.severity;
}

}  // namespace

Diagnostics told_of_draft(const Diagnostics& found, const draft::Draft& draft) {
  const auto moved = [&](const Span& span) {
    return span.source == draft.canonical.get() ? draft.origin.of(span) : span;
  };
  Diagnostics out;
  for (Diagnostic one : found.all()) {
    one.severity = weight(one);
    one.span = moved(one.span);
    for (Label& label : one.labels) label.span = moved(label.span);
    for (Edit& edit : one.edits) edit.span = moved(edit.span);
    out.add(std::move(one));
  }
  out.keep(draft.canonical);
  out.keep(draft.origin.coach());
  return out;
}

std::vector<plan::Words> typed_lines(const draft::Draft& draft) {
  std::vector<plan::Words> out;
  for (const Span& span : draft.typed) {
    std::string line = replace_all(trim(span.text()), "\t", " ");
    if (!line.empty()) out.push_back({std::move(line), span});
  }
  return out;
}

}  // namespace chalkleaf::club
