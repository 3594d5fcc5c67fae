// What a body should not be asked for: a cold stretch, a long one before power, one side only.
// Tested by tests/reason/body_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/text.h"
#include "reason/drill_lines.h"
#include "reason/line_times.h"
#include "reason/stretches.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

using plan::Drill;

// ACSM's Guidelines for Exercise Testing and Prescription, 11th ed., table 5.6: hold a static
// stretch for 10 to 30 s (most adults). Shorter is a position on the way to the next one.
constexpr Duration kShortestStretch = Duration::seconds(10);
constexpr Duration kLongestStretch = Duration::seconds(30);
// Behm et al. 2016, Appl Physiol Nutr Metab 41:1-11: 60 s or more for one muscle group costs 4.6 %
// of what follows, less than 60 s 1.1 %.
constexpr Duration kStretchBeforePower = Duration::seconds(60);
// The losses of that review were measured within ten minutes of the stretch.
constexpr Duration kStretchFades = Duration::minutes(10);
// Adults' guidance (Garber et al. 2011, Med Sci Sports Exerc 43(7):1334-1359; secondary copy) is 60
// s in all for one stretch: at the end, from twelve years, a hold may take all of it.
constexpr Duration kLongestAtTheEnd = Duration::seconds(60);
constexpr int kLongHoldsFrom = 12;
// A jog of three seconds has raised nothing. How little counts is common practice, no source.
constexpr Duration kLeastRaise = Duration::seconds(15);
constexpr std::size_t kMostStretches = 12;  // labels under one message

}  // namespace

// Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise first, then activate and
// mobilise. Anything that may have raised the pulse ends the search, unless it was too short for
// it.
void check_raise_first(const Subject& subject, Diagnostics& diagnostics) {
  Gathered gathered;
  const auto report = [&](const HeldStretch& stretch) {
    gathered.add("", stretch.span, "and this one", [&] {
      Diagnostic found{Severity::kError, "stretch-before-raise", stretch.span,
                       fmt::format("{} is held still before anything has raised the pulse",
                                   quoted(stretch.name.text))};
      if (stretch.known != nullptr) {
        label_library(diagnostics, found, *stretch.known, stretch.known->kind.span,
                      "the library calls it a stretch here");
      }
      found.hint =
          "put two or three minutes of running, skipping or jumping before it, or move it to the "
          "cool-down";
      return found;
    });
  };
  const LineTimes line_times(subject.timetable);
  Duration moved;
  // True when the pulse may be up behind the line.
  const auto look_at = [&](const Drill& drill) {
    const auto held = held_stretches(drill, subject);
    for (const HeldStretch& stretch : held) {
      if (stretch.once >= kShortestStretch) report(stretch);
    }
    if (!held.empty() || pulse_of(drill) == Pulse::kRests) return false;
    moved += line_times.raising(drill);
    return moved >= kLeastRaise;
  };
  for (const plan::Part& part : subject.session.parts) {
    bool raised = part.budget && plan::drills_of(part).empty();
    for (const plan::Step& step : part.steps) {
      if (raised) break;
      if (const auto* note = std::get_if<plan::Note>(&step))
        raised = speaks_of_moving(note->words.text);
      const auto* drill = std::get_if<Drill>(&step);
      if (drill == nullptr) continue;
      raised = drill->circuit ? std::any_of(drill->stations.begin(), drill->stations.end(), look_at)
                              : look_at(*drill);
    }
    if (raised) break;
  }
  gathered.add_to(diagnostics);
}

namespace {

using StretchLines = std::vector<std::pair<HeldStretch, const plan::Part*>>;

Duration longest_in(const plan::Part& part, const Subject& subject) {
  const auto& limit = subject.club.limits.longest_stretch;
  if (limit) return limit->value;
  const auto& group = subject.session.group;
  const bool old_enough = group && group->youngest && group->youngest->value >= kLongHoldsFrom;
  return old_enough && part.role == plan::PartRole::kCoolDown ? kLongestAtTheEnd : kLongestStretch;
}

// One hold.
void check_longest(const Subject& subject, const StretchLines& stretches,
                   Diagnostics& diagnostics) {
  const auto& limit = subject.club.limits.longest_stretch;
  Gathered gathered;
  for (const auto& [stretch, part] : stretches) {
    const Duration most = longest_in(*part, subject);
    if (stretch.once <= most) continue;
    const HeldStretch& held = stretch;
    const std::string again = fmt::format("{}, {}", quoted(held.name.text), exact_text(held.once));
    gathered.add("", held.span, again, [&] {
      Diagnostic found{
          Severity::kWarning, "stretch-too-long", held.span,
          fmt::format("{} is held for {} at a time, longer than {}", quoted(held.name.text),
                      exact_text(held.once), exact_text(most))};
      if (limit && limit->span) found.labels.push_back({limit->span, "the club's limit"});
      found.hint =
          fmt::format("hold it for {} at most, and repeat it if it needs more", exact_text(most));
      return found;
    });
  }
  gathered.add_to(diagnostics);
}

/// What one muscle group has been stretched so far.
struct MuscleSum {
  Duration all;
  std::vector<const HeldStretch*> by;
  std::vector<Duration> ends;  ///< of each in `by`, from the session's begin
};

// What has faded by now goes.
void forget_before(Duration now, MuscleSum& sum) {
  while (!sum.by.empty() && sum.ends.front() + kStretchFades < now) {
    sum.all = sum.all - sum.by.front()->all;
    sum.by.erase(sum.by.begin());
    sum.ends.erase(sum.ends.begin());
  }
}

Diagnostic too_much_before(const Drill& power, const std::string& muscle, const MuscleSum& sum,
                           Duration most) {
  Diagnostic found{
      Severity::kWarning, "stretch-too-long", sum.by.front()->span,
      fmt::format("stretches of the {} add up to {} before {}, which makes them weaker for it",
                  muscle, exact_text(sum.all), quoted(power.name.text))};
  for (std::size_t i = sum.by.size() > 1 ? 0 : 1; i < std::min(sum.by.size(), kMostStretches);
       ++i) {
    found.labels.push_back({sum.by[i]->span, exact_text(sum.by[i]->all)});
  }
  found.labels.push_back({power.name.span, "this needs speed and force"});
  found.hint =
      fmt::format("stay below {} for one muscle group, or stretch after it", exact_text(most));
  return found;
}

// Leg lifts on the back are strength, and no maximal one: what stretching takes is not missed
// there.
bool needs_power(const Drill& drill) {
  constexpr int kHard = 7;  // of 10: common practice, no source
  const plan::DrillKind kind = kind_of(drill);
  if (kind != plan::DrillKind::kStrength) return plan::is_power(kind);
  return drill.known == nullptr || !drill.known->effort || drill.known->effort->value >= kHard;
}

// The sum of one muscle group until power work begins.
void check_before_power(const Subject& subject, const StretchLines& stretches,
                        Diagnostics& diagnostics) {
  const auto& limit = subject.club.limits.stretch_before_power;
  const Duration most = limit ? limit->value : kStretchBeforePower;
  std::map<std::string, MuscleSum> sums;
  std::set<std::string> said;
  const LineTimes line_times(subject.timetable);
  auto next = stretches.begin();
  for (const DrillLine& line : drill_lines(subject.session)) {
    const LineTime at = line_times.of(*line.drill);
    if (needs_power(*line.drill)) {
      for (auto& [muscle, sum] : sums) {
        forget_before(at.begin, sum);
        if (sum.all < most || !said.insert(muscle).second) continue;
        diagnostics.add(too_much_before(*line.drill, muscle, sum, most));
      }
    }
    for (; next != stretches.end() && next->first.line == line.drill; ++next) {
      const HeldStretch& stretch = next->first;
      if (stretch.known == nullptr) continue;
      for (const plan::Words& muscle : stretch.known->stretches) {
        MuscleSum& sum = sums[lower_ascii(muscle.text)];
        sum.all += stretch.all;
        sum.by.push_back(&stretch);
        sum.ends.push_back(at.end);
      }
    }
  }
}

}  // namespace

void check_stretch_times(const Subject& subject, Diagnostics& diagnostics) {
  StretchLines stretches;
  for (const DrillLine& line : drill_lines(subject.session)) {
    for (HeldStretch& one : held_stretches(*line.drill, subject))
      stretches.emplace_back(std::move(one), line.part);
  }
  check_longest(subject, stretches, diagnostics);
  check_before_power(subject, stretches, diagnostics);
}

namespace {

// The words of the line may say what its dose does not: `Lunge, left`, `swap half-way`.
bool speaks_of_sides(const Drill& drill) {
  const auto speaks = [](const plan::Words& words) {
    return has_one_of(words_in(words.text),
                      {"left", "right", "both", "other", "swap", "switch", "change", "each",
                       "alternate", "alternating", "alternately"});
  };
  const auto any = [&](const std::vector<plan::Words>& list) {
    return std::any_of(list.begin(), list.end(), speaks);
  };
  return speaks(drill.name) || any(drill.dose->remarks) || any(drill.cues) ||
         std::any_of(drill.notes.begin(), drill.notes.end(),
                     [&](const plan::Note& note) { return speaks(note.words); });
}

// There and back covers both sides.
bool goes_and_comes(const plan::Dose& dose) {
  return dose.amount.kind == plan::AmountKind::kLengths &&
         (dose.amount.most_count() * dose.sets) % 2 == 0;
}

}  // namespace

void check_sides(const Subject& subject, Diagnostics& diagnostics) {
  Gathered gathered;
  for (const DrillLine& line : drill_lines(subject.session)) {
    const Drill& drill = *line.drill;
    if (drill.known == nullptr || !drill.dose || drill.circuit) continue;
    const auto& one_sided = drill.known->one_sided;
    const plan::Dose& dose = *drill.dose;
    if (!one_sided || !one_sided->value || dose.sides != plan::Sides::kOnce) continue;
    if (!dose.moves.empty() || goes_and_comes(dose) || speaks_of_sides(drill)) continue;
    gathered.add(drill.known->name.text, dose.span, "here too", [&] {
      Diagnostic found{Severity::kNote, "one-side-only", dose.span,
                       fmt::format("{} works one side at a time, and its dose does not say that "
                                   "both have their turn",
                                   quoted(drill.name.text))};
      label_library(diagnostics, found, *drill.known, one_sided->span, "the library says so here");
      found.hint = "write ‘each side’, ‘each leg’ or ‘each arm’ behind the amount";
      return found;
    });
  }
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
