// What comes when: power before the pulse is up, hard skills behind hard work, holds beyond an age.
// By the model, where the guard goes by the coach's words; a line the guard has spoken of is left
// alone. Tested by tests/reason/order_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <deque>

#include "reason/drill_lines.h"
#include "reason/line_times.h"
#include "reason/loads.h"
#include "reason/stretches.h"

namespace chalkleaf::reason {
namespace {

using plan::Drill;
using plan::DrillKind;

// Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise comes before power. How
// little counts as having raised nothing is common practice, no source.
constexpr Duration kLeastBeforePower = Duration::seconds(30);
// Half an hour of a lesson at full effort makes nobody exhausted, five minutes of strength work
// without a pause do; the legs are back after ten (common practice, no source).
constexpr Duration kExhausting = Duration::minutes(5);
constexpr Duration kRecovered = Duration::minutes(10);
constexpr int kHardEffort = 8;
constexpr int kHardSkill = 5;

bool spoken_of(const Drill& drill, std::string_view check, const Diagnostics& diagnostics) {
  const Span line = drill.span ? drill.span : drill.name.span;
  const auto& all = diagnostics.all();
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& one) {
    return one.name == check && line.contains(one.span);
  });
}

int load_of(const plan::LibraryDrill& drill, std::string_view region) {
  for (const auto& [name, load] : drill.loads) {
    if (name.text == region) return load.value;
  }
  return 0;
}

// Jumps and skills that ask for all a leg or an arm has; a small bounce or a frog jump does not.
bool needs_full_power(const Drill& drill) {
  if (drill.known == nullptr) return false;
  const plan::LibraryDrill& known = *drill.known;
  switch (known.kind.value) {
    case DrillKind::kJump:
    case DrillKind::kLanding:
    case DrillKind::kSkill:
    case DrillKind::kSwing:
      break;
    default:
      return false;
  }
  constexpr int kHeavy = 3;
  return load_of(known, "landings") >= kHeavy || load_of(known, "knees") >= kHeavy - 1 ||
         load_of(known, "wrists") >= kHeavy || load_of(known, "shoulders") >= kHeavy;
}

// A part that has a time and no drills, or words instead of drills, may hold the whole warm-up.
bool may_hide_a_warm_up(const plan::Part& part) {
  const bool words = std::any_of(part.steps.begin(), part.steps.end(), [](const plan::Step& step) {
    return std::holds_alternative<plan::Note>(step);
  });
  return plan::drills_of(part).empty() && (part.budget || words);
}

}  // namespace

void check_power_first(const Subject& subject, Diagnostics& diagnostics) {
  const LineTimes line_times(subject.timetable);
  Gathered gathered;
  Duration moved;
  for (const plan::Part& part : subject.session.parts) {
    if (may_hide_a_warm_up(part)) break;
    bool raised = false;
    for (const plan::Step& step : part.steps) {
      if (std::holds_alternative<plan::Note>(step)) raised = true;  // it may say: run two rounds
      const auto* drill = std::get_if<Drill>(&step);
      if (raised || drill == nullptr) continue;
      if (drill->circuit || (!drill->dose && !drill->choices.empty())) raised = true;
      if (!raised && needs_full_power(*drill) && !spoken_of(*drill, "danger-cold", diagnostics)) {
        gathered.add("", drill->name.span, "and this one", [&] {
          return Diagnostic{
              Severity::kWarning,
              "power-before-raise",
              drill->name.span,
              fmt::format("{} needs full power, and only {} before it may have raised the pulse",
                          quoted(drill->name.text), exact_text(moved)),
              {},
              "put two or three minutes of running, skipping or a running game before it"};
        });
        continue;
      }
      if (pulse_of(*drill) == Pulse::kRests) continue;
      moved += line_times.raising(*drill);
      raised = moved >= kLeastBeforePower;
    }
    if (raised) break;
  }
  gathered.add_to(diagnostics);
}

namespace {

/// Hard work that a skill may come too soon behind.
struct HardWork {
  const Drill* drill = nullptr;
  LineTime time;
};

bool is_hard_work(const DrillLine& line) {
  const Drill& drill = *line.drill;
  if (line.part->role == plan::PartRole::kWarmUp || drill.known == nullptr) return false;
  const DrillKind kind = kind_of(drill);
  if (kind != DrillKind::kStrength && kind != DrillKind::kRaise) return false;
  const auto& known = drill.known->effort;
  const auto effort = drill.dose && drill.dose->effort ? drill.dose->effort
                      : known                          ? std::optional(known->value)
                                                       : std::nullopt;
  return effort && *effort >= kHardEffort;
}

bool is_hard_skill(const Drill& drill) {
  if (drill.known == nullptr) return false;
  const plan::LibraryDrill& known = *drill.known;
  const DrillKind kind = known.kind.value;
  const bool skill = kind == DrillKind::kSkill || kind == DrillKind::kSwing ||
                     kind == DrillKind::kLanding || kind == DrillKind::kRoll;
  return skill && known.level && known.level->value >= kHardSkill;
}

Diagnostic tired_skill(const Drill& skill, const std::deque<HardWork>& work, Duration sum) {
  Diagnostic found{Severity::kWarning, "skill-when-tired", skill.name.span,
                   fmt::format("{} comes straight behind {} of very hard work",
                               quoted(skill.name.text), exact_text(sum))};
  for (const HardWork& one : work) {
    found.labels.push_back({one.drill->name.span, exact_text(one.time.work)});
  }
  found.hint = fmt::format("put {} before that work, or ten easy minutes between them",
                           quoted(skill.name.text));
  return found;
}

}  // namespace

void check_tired_skills(const Subject& subject, Diagnostics& diagnostics) {
  const LineTimes line_times(subject.timetable);
  std::deque<HardWork> recent;
  for (const DrillLine& line : drill_lines(subject.session)) {
    const LineTime at = line_times.of(*line.drill);
    while (!recent.empty() && recent.front().time.end + kRecovered < at.begin) recent.pop_front();
    if (is_hard_work(line)) recent.push_back({line.drill, at});
    if (!is_hard_skill(*line.drill)) continue;
    Duration sum;
    for (const HardWork& one : recent) sum += one.time.work;
    if (sum < kExhausting) continue;
    if (!spoken_of(*line.drill, "danger-tired-skill", diagnostics))
      diagnostics.add(tired_skill(*line.drill, recent, sum));
    recent.clear();  // said once for this work
  }
}

namespace {

/// `longest:` of the library is for 7 to 11 years; so many halves of it at other ages. Common
/// practice, no source: shape holds of 15-20 s, longer with age.
struct AgeShare {
  int from_age;
  int halves;
};
constexpr std::array<AgeShare, 3> kAgeShares{{{12, 4}, {7, 3}, {0, 2}}};
constexpr int kUnknownHalves = 6;  // ages nobody wrote: who is not known is not accused

int halves_for(const std::optional<plan::Group>& group) {
  if (!group || !group->youngest) return kUnknownHalves;
  return std::find_if(kAgeShares.begin(), kAgeShares.end(),
                      [&](const AgeShare& share) {
                        return std::max(0, group->youngest->value) >= share.from_age;
                      })
      ->halves;
}

std::optional<Duration> hold_in(const plan::Amount& amount) {
  const bool held =
      amount.kind == plan::AmountKind::kTime && !amount.as_many && !is_place_in_lesson(amount);
  return held || amount.kind == plan::AmountKind::kMaxHold ? amount.most_time() : std::nullopt;
}

}  // namespace

void check_holds(const Subject& subject, Diagnostics& diagnostics) {
  const int halves = halves_for(subject.session.group);
  const bool ages_known = halves != kUnknownHalves;
  Gathered gathered;
  for (const DrillLine& line : drill_lines(subject.session)) {
    const Drill& drill = *line.drill;
    if (drill.known == nullptr || !drill.known->longest || !drill.dose) continue;
    if (kind_of(drill) == DrillKind::kStretch || kind_of(drill) == DrillKind::kRest) continue;
    const Duration most = drill.known->longest->value * halves / 2;
    const auto hold = hold_in(drill.dose->amount);
    if (!hold || *hold <= most || spoken_of(drill, "danger-hold", diagnostics)) continue;
    gathered.add(drill.known->name.text, drill.name.span, "here too", [&] {
      Diagnostic found{Severity::kWarning, "hold-too-long", drill.name.span,
                       fmt::format("{} is held for {}, longer than {} keep it in good form ({})",
                                   quoted(drill.name.text), exact_text(*hold),
                                   ages_known ? fmt::format("children of {}",
                                                            subject.session.group->youngest->value)
                                              : "most children",
                                   exact_text(most))};
      label_library(diagnostics, found, *drill.known, drill.known->longest->span,
                    "longest hold for 7 to 11 years");
      found.hint = fmt::format("hold it for {} at most, rest as long, and repeat",
                               exact_text(drill.known->longest->value));
      return found;
    });
  }
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
