// Which checks run on a session, and which stay quiet because something else was already wrong.
//
// A part that could not be read, or a dose that could not, makes sums too small and notes seem
// missing; saying so as well would bury the message that helps. Nothing is lost: the plan is not
// printed, and the quiet checks speak on the next run. Tested by tests/reason/checks_test.cpp.
#include "reason/checks.h"

#include <algorithm>

#include "reason/check_parts.h"
#include "rota/check.h"

namespace chalkleaf::reason {
namespace {

bool found_any(const Diagnostics& diagnostics, std::initializer_list<std::string_view> names) {
  const auto& all = diagnostics.all();
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) {
    return d.severity != Severity::kNote &&
           std::find(names.begin(), names.end(), d.name) != names.end();
  });
}

// Something in the part was not understood: it may be the very drills that seem to be missing.
bool has_mistakes(const plan::Part& part, const Diagnostics& diagnostics) {
  const auto& all = diagnostics.all();
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) {
    return d.severity == Severity::kError && part.span.contains(d.span) &&
           !d.span.contains(part.title.span);
  });
}

bool has_content(const plan::Part& part) {
  return !plan::drills_of(part).empty() || part.budget.has_value();
}

// The parts that say they are the warm-up (or cool-down) but hold nothing to do.
void check_content(const plan::Session& session, plan::PartRole role, std::string_view name,
                   std::string_view words, Diagnostics& diagnostics) {
  const plan::Part* empty = nullptr;
  for (const plan::Part& part : session.parts) {
    if (part.role != role) continue;
    if (has_content(part)) return;
    if (empty == nullptr) empty = &part;
  }
  if (empty == nullptr || has_mistakes(*empty, diagnostics)) return;
  diagnostics.warning(
      std::string(name), empty->title.span,
      std::string("the ") + std::string(words) + " " + quoted(empty->title.text) + " has no drills",
      "list at least one drill below its heading, link a shared part there, or give it a time of "
      "its own under ‘timings: parts:’");
}

}  // namespace

void check_order(const plan::Session& session, Diagnostics& diagnostics) {
  using plan::PartRole;
  const auto& parts = session.parts;
  const auto is = [](PartRole role) {
    return [role](const plan::Part& part) { return part.role == role; };
  };
  // A hello, a register, stamps on hands: nobody moves in them.
  const auto moves = [](const plan::Part& part) {
    const auto drills = plan::drills_of(part);
    return std::any_of(drills.begin(), drills.end(), [](const plan::Drill* drill) {
      return drill->dose.has_value() || !drill->choices.empty() || drill->circuit;
    });
  };
  const auto warm_up = std::find_if(parts.begin(), parts.end(), is(PartRole::kWarmUp));
  if (warm_up == parts.end()) {
    diagnostics.warning("missing-warm-up", session.front_matter, "this session has no warm-up",
                        "begin it with a part under the heading ‘## Warm-up’");
  } else if (const auto before = std::find_if(parts.begin(), warm_up, moves); before != warm_up) {
    const plan::Words& first = before->title;
    Diagnostic found{
        Severity::kWarning,
        "warm-up-not-first",
        warm_up->title.span,
        "the warm-up " + quoted(warm_up->title.text) + " comes after " + quoted(first.text),
        {{first.span, "this comes first now"}},
        "move " + quoted(warm_up->title.text) + " up, before " + quoted(first.text)};
    diagnostics.add(std::move(found));
  }
  const auto cool_down = std::find_if(parts.rbegin(), parts.rend(), is(PartRole::kCoolDown));
  if (cool_down == parts.rend()) {
    diagnostics.warning("missing-cool-down", session.front_matter, "this session has no cool-down",
                        "end it with a part under the heading ‘## Cool-down’");
  } else if (const auto behind = std::find_if(parts.rbegin(), cool_down, moves);
             behind != cool_down) {
    const plan::Words& last = behind->title;
    Diagnostic found{
        Severity::kWarning,
        "cool-down-not-last",
        cool_down->title.span,
        "the cool-down " + quoted(cool_down->title.text) + " comes before " + quoted(last.text),
        {{last.span, "this comes last now"}},
        "move " + quoted(cool_down->title.text) + " down, after " + quoted(last.text)};
    diagnostics.add(std::move(found));
  }
}

namespace {

// What can be judged although something is missing: only what stands there.
void check_lines(const Subject& subject, Diagnostics& diagnostics) {
  check_drills(subject, diagnostics);
  check_known(subject, diagnostics);
  check_choice_order(subject, diagnostics);
  check_repeated_lines(subject, diagnostics);
  check_levels(subject, diagnostics);
  check_stations(subject, diagnostics);
  check_kit_listed(subject, diagnostics);
  check_kit_enough(subject, diagnostics);
  check_substitutes(subject, diagnostics);
  check_stretch_times(subject, diagnostics);
  check_sides(subject, diagnostics);
  check_holds(subject, diagnostics);
  check_loads(subject, diagnostics);
  check_adults(subject, diagnostics);
  check_pictures(subject, diagnostics);
  check_coach_words(subject, diagnostics);
}

// What a part that could not be read may have held.
void check_whole(const Subject& subject, Diagnostics& diagnostics) {
  const plan::Session& session = subject.session;
  check_content(session, plan::PartRole::kWarmUp, "missing-warm-up", "warm-up", diagnostics);
  check_content(session, plan::PartRole::kCoolDown, "missing-cool-down", "cool-down", diagnostics);
  check_home_notes(subject, diagnostics);
  check_raise_first(subject, diagnostics);
  check_power_first(subject, diagnostics);
  check_tired_skills(subject, diagnostics);
  check_curves(subject, diagnostics);
  check_water(subject, diagnostics);
  check_hard_words(subject, diagnostics);
}

void check_all(const Subject& subject, Diagnostics& diagnostics) {
  const plan::Session& session = subject.session;
  if (session.parts.empty()) {
    diagnostics.error("missing-warm-up", session.front_matter,
                      "this session has no parts, so no warm-up and no cool-down",
                      "write a heading for each part, such as ‘## Warm-up’, with its drills in a "
                      "list below");
    return;
  }
  const bool parts_missing =
      found_any(diagnostics, {"unknown-part", "part-cycle", "outside-folder", "unreadable-file"});
  // A line that was not understood may be the time that is missing.
  const auto lines_missing = [&] {
    return found_any(diagnostics, {"unreadable-dose", "no-dose", kBadValue, "unknown-key"});
  };
  check_order(session, diagnostics);
  check_lines(subject, diagnostics);
  check_over_slot(session, subject.timetable, diagnostics);
  check_budgets(subject.timetable, diagnostics);
  check_hall(subject, diagnostics);
  if (parts_missing) return;
  check_whole(subject, diagnostics);
  if (lines_missing()) return;
  check_unused_budgets(subject, diagnostics);
  check_under_slot(subject, diagnostics);
}

}  // namespace

void check(const plan::Session& session, const Timetable& timetable, const plan::Club& club,
           const plan::DrillBook& book, const Guard* guard, Diagnostics& diagnostics) {
  if (club.source) diagnostics.keep(club.source);
  const Subject subject{session, timetable, club, book, guard};
  check_spotters(subject, diagnostics);
  // Where the library has spoken of a line, its words need not be judged as well.
  if (guard != nullptr) guard->check(session, book, diagnostics);
  check_all(subject, diagnostics);
  for (const rota::Rotation& rotation : timetable.rotations) rota::check(rotation, diagnostics);
  apply_choices(club, diagnostics);
  apply_switched_off(session, diagnostics);
}

}  // namespace chalkleaf::reason
