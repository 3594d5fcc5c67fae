// See the header.
#include "club/drafts.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/text.h"
#include "draft/lexicon.h"
#include "draft/mend.h"

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
    if (!draft.taught) one.severity = weight(one);
    one.span = moved(one.span);
    for (Label& label : one.labels) label.span = moved(label.span);
    for (Edit& edit : one.edits) edit.span = moved(edit.span);
    out.add(std::move(one));
  }
  out.keep(draft.canonical);
  out.keep(draft.origin.coach());
  return out;
}

std::optional<draft::Draft> mended(const draft::Lexicon& words, const SourcePtr& coach,
                                   const Diagnostics& found, Supply supply) {
  constexpr std::array<std::string_view, 3> kMendable{"unreadable-dose", "unknown-key",
                                                      "bad-value"};
  std::vector<Diagnostic> wrong;
  for (const Diagnostic& one : found.all()) {
    const bool form = std::find(kMendable.begin(), kMendable.end(), one.name) != kMendable.end();
    const bool supplied = one.name != "missing-key" || supply == Supply::kMissingKeys;
    const bool cured = !one.edits.empty() && one.severity != Severity::kNote && supplied;
    if ((one.severity == Severity::kError && form) || cured) wrong.push_back(one);
  }
  if (wrong.empty()) return std::nullopt;
  return draft::mend(words, coach, wrong);
}

void tell_mended(const draft::Draft& draft, Diagnostics& found) {
  if (!draft.taught || draft.typed.empty()) return;
  const auto said = [&](std::size_t i) { return replace_all(trim(draft.read_as[i]), "\n", " / "); };
  Diagnostic note{Severity::kNote, "read-as", draft.typed.front(),
                  fmt::format("this was read as ‘{}’", said(0))};
  for (std::size_t i = 1; i < draft.typed.size(); ++i)
    note.labels.push_back({draft.typed[i], fmt::format("and this as ‘{}’", said(i))});
  note.hint =
      "compare; `chalkleaf tidy` shows the whole plan as it was read, and writes it with `--write`";
  for (std::size_t i = 0; i < draft.typed.size(); ++i) {
    std::string_view line = draft.read_as[i];
    if (line.ends_with('\n')) line.remove_suffix(1);
    note.edits.push_back({draft.typed[i], std::string(line)});
  }
  found.add(std::move(note));
}

plan::FrontWords front_words(const draft::Lexicon* words) {
  if (words == nullptr) return {};
  plan::FrontWords out;
  out.place = [words](std::string_view text) -> std::optional<plan::Place> {
    const draft::Pieces pieces = draft::pieces_of(text);
    const auto all = [&](draft::Role role) {
      return !pieces.empty() && words->match(role, pieces, 0, pieces.size()) == pieces.size();
    };
    if (all(draft::Role::kHome)) return plan::Place::kHome;
    if (all(draft::Role::kHall)) return plan::Place::kGym;
    return std::nullopt;
  };
  out.says_home = [words](std::string_view text) {
    const draft::Pieces pieces = draft::pieces_of(text);
    return words->within(draft::Role::kHome, pieces, 0, pieces.size());
  };
  out.key = [words](std::string_view text) { return std::string(words->key(text)); };
  out.to_clock = [words](std::string_view text) {
    return words->begins(draft::Role::kClockTo, text);
  };
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
