// What a club has decided about the checks: `checks: {under-slot: off, unknown-drill: error}`.
// Tested by tests/reason/severities_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/text.h"
#include "reason/check_parts.h"
#include "reason/checks.h"

namespace chalkleaf::reason {
namespace {

std::string name_hint(std::string_view wanted) {
  std::vector<std::string> names;
  for (const CheckInfo& info : all_checks()) {
    if (info.adjustable) names.emplace_back(info.name);
  }
  if (const auto meant = closest(wanted, names)) return fmt::format("did you mean `{}`?", *meant);
  return "`chalkleaf explain` lists the checks by name";
}

}  // namespace

const CheckInfo* find_check(std::string_view name) {
  const auto& all = all_checks();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const CheckInfo& info) { return info.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::optional<Stops> stopped_by(const Diagnostic& found) {
  if (found.severity != Severity::kError) return std::nullopt;
  const CheckInfo* info = find_check(found.name);
  return info == nullptr ? Stops::kEverything : info->stops;
}

bool is_open_point(const Diagnostic& found) {
  if (found.severity == Severity::kNote) return false;
  const CheckInfo* info = find_check(found.name);
  return info != nullptr && (info->open_point || info->stops == Stops::kHomeSheet);
}

void check_choices(const plan::Club& club, Diagnostics& diagnostics) {
  for (const plan::SeverityChoice& choice : club.checks) {
    const std::string& name = choice.check.text;
    const CheckInfo* info = find_check(name);
    if (info == nullptr) {
      diagnostics.error(kBadValue, choice.check.span, "there is no check " + quoted(name),
                        name_hint(name));
    } else if (!info->adjustable) {
      diagnostics.error(
          kBadValue, choice.check.span,
          quoted(name) + (info->stops == Stops::kHomeSheet
                              ? " cannot be changed: what it finds can hurt a child"
                              : " cannot be changed: what it finds would be guessed at or lost "
                                "on the page"),
          "take this line out");
    }
  }
}

void apply_choices(const plan::Club& club, Diagnostics& diagnostics) {
  std::map<std::string_view, std::optional<Severity>> chosen;
  for (const plan::SeverityChoice& choice : club.checks) {
    const CheckInfo* info = find_check(choice.check.text);
    if (info != nullptr && info->adjustable) chosen[info->name] = choice.severity;
  }
  if (chosen.empty()) return;
  diagnostics.revise([&](const Diagnostic& found) -> std::optional<Severity> {
    const auto choice = chosen.find(found.name);
    return choice == chosen.end() ? found.severity : choice->second;
  });
}

void apply_switched_off(const plan::Session& session, Diagnostics& diagnostics) {
  std::map<std::string_view, const plan::SwitchedOff*> off;
  for (const plan::SwitchedOff& one : session.checks_off) {
    const CheckInfo* info = find_check(one.check.text);
    if (info == nullptr) {
      diagnostics.warning(kBadValue, one.check.span, "there is no check " + quoted(one.check.text),
                          name_hint(one.check.text));
    } else if (!info->adjustable || info->stops == Stops::kHomeSheet) {
      diagnostics.warning(
          kBadValue, one.check.span,
          quoted(one.check.text) +
              " cannot be switched off in a plan: what it finds can hurt a child, or "
              "would be lost on the page",
          "take this line out");
    } else {
      off[info->name] = &one;
    }
  }
  if (off.empty()) return;
  std::map<std::string_view, Diagnostic> said;
  diagnostics.revise([&](const Diagnostic& found) -> std::optional<Severity> {
    const auto one = off.find(found.name);
    if (one == off.end() || found.severity == Severity::kError) return found.severity;
    const auto [note, first] = said.emplace(one->first, found);
    if (!first) note->second.labels.push_back({found.span, found.message});
    return std::nullopt;
  });
  for (auto& [name, note] : said) {
    note.severity = Severity::kNote;
    note.hint = "let be in this plan: " + off[name]->reason.text;
    note.edits.clear();
    diagnostics.add(std::move(note));
  }
}

}  // namespace chalkleaf::reason
