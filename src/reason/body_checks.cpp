// What a body should not be asked for: a cold stretch, a long one before power, one side only, a
// curve without its counterpart. Tested by tests/reason/body_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/text.h"
#include "reason/drill_lines.h"
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
constexpr std::size_t kMostStretches = 12;  // labels under one message

// `Run two rounds of the hall, then:`
bool speaks_of_moving(const plan::Note& note) {
  return has_one_of(
      words_in(note.words.text),
      {"run",      "jog",      "march",     "skip",    "gallop",  "dance",   "hop",
       "jump",     "tag",      "game",      "play",    "chase",   "running", "jogging",
       "marching", "skipping", "galloping", "dancing", "hopping", "jumping"});
}

}  // namespace

// Jeffreys 2007, Professional Strength and Conditioning 6:12-18: raise first, then activate and
// mobilise. Anything that may have raised the pulse ends the search.
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
  // True when the line may have raised the pulse.
  const auto look_at = [&](const Drill& drill) {
    const auto held = held_stretches(drill, subject);
    for (const HeldStretch& stretch : held) {
      if (stretch.once >= kShortestStretch) report(stretch);
    }
    return held.empty() && pulse_of(drill) != Pulse::kRests;
  };
  for (const plan::Part& part : subject.session.parts) {
    bool raised = part.budget && plan::drills_of(part).empty();
    for (const plan::Step& step : part.steps) {
      if (raised) break;
      if (const auto* note = std::get_if<plan::Note>(&step)) raised = speaks_of_moving(*note);
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

// One hold.
void check_longest(const Subject& subject, const std::vector<HeldStretch>& stretches,
                   Diagnostics& diagnostics) {
  const auto& limit = subject.club.limits.longest_stretch;
  const Duration most = limit ? limit->value : kLongestStretch;
  Gathered gathered;
  for (const HeldStretch& stretch : stretches) {
    if (stretch.once <= most) continue;
    gathered.add(lower_ascii(stretch.name.text), stretch.span, "here too", [&] {
      Diagnostic found{
          Severity::kWarning, "stretch-too-long", stretch.span,
          fmt::format("{} is held for {} at a time, longer than {}", quoted(stretch.name.text),
                      exact_text(stretch.once), exact_text(most))};
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
};

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

// The sum of one muscle group until power work begins.
void check_before_power(const Subject& subject, const std::vector<HeldStretch>& stretches,
                        Diagnostics& diagnostics) {
  const auto& limit = subject.club.limits.stretch_before_power;
  const Duration most = limit ? limit->value : kStretchBeforePower;
  std::map<std::string, MuscleSum> sums;
  std::set<std::string> said;
  auto next = stretches.begin();
  for (const DrillLine& line : drill_lines(subject.session)) {
    if (plan::is_power(kind_of(*line.drill))) {
      for (const auto& [muscle, sum] : sums) {
        if (sum.all < most || !said.insert(muscle).second) continue;
        diagnostics.add(too_much_before(*line.drill, muscle, sum, most));
      }
    }
    for (; next != stretches.end() && next->line == line.drill; ++next) {
      if (next->known == nullptr) continue;
      for (const plan::Words& muscle : next->known->stretches) {
        MuscleSum& sum = sums[lower_ascii(muscle.text)];
        sum.all += next->all;
        sum.by.push_back(&*next);
      }
    }
  }
}

}  // namespace

void check_stretch_times(const Subject& subject, Diagnostics& diagnostics) {
  std::vector<HeldStretch> stretches;
  for (const DrillLine& line : drill_lines(subject.session)) {
    for (HeldStretch& one : held_stretches(*line.drill, subject))
      stretches.push_back(std::move(one));
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
      Diagnostic found{Severity::kWarning, "one-side-only", dose.span,
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

namespace {

/// A line that bends the body one way.
struct Curved {
  Span span;
  const plan::LibraryDrill* known = nullptr;
  std::string name;
};

// Which way a line bends, by its words; only ever used to find a counterpart, never a fault.
bool bends_by_words(const Drill& drill, std::string_view curve) {
  const auto words = words_in(drill.name.text);
  return curve == "dish" ? has_one_of(words, {"dish", "hollow", "boat", "tuck-up", "v-sit"})
                         : has_one_of(words, {"arch", "arched", "superman", "bridge", "bow",
                                              "cobra", "locust", "swan", "backbend"});
}

std::vector<Curved> curved(const Subject& subject, std::string_view curve) {
  std::vector<Curved> out;
  for (const DrillLine& line : drill_lines(subject.session)) {
    for (const Named& named : named_by(line, subject.book)) {
      if (lower_ascii(named.drill->curve.text) == curve) {
        out.push_back({named.span, named.drill, named.words.text});
      }
    }
  }
  return out;
}

bool any_bends(const Subject& subject, std::string_view curve) {
  const auto lines = drill_lines(subject.session);
  return std::any_of(lines.begin(), lines.end(),
                     [&](const DrillLine& line) { return bends_by_words(*line.drill, curve); });
}

// A drill of the library that would mend it, within the group's level.
std::string counterpart(const Subject& subject, std::string_view curve) {
  const auto& group = subject.session.group;
  const int most = group && group->level ? group->level->value : 10;
  for (const plan::LibraryDrill& drill : subject.book.all()) {
    const bool fits = lower_ascii(drill.curve.text) == curve &&
                      (!drill.level || drill.level->value <= most) &&
                      (!subject.at_home() || !drill.home || drill.home->value);
    if (fits) return drill.name.text;
  }
  return curve == "arch" ? "Arch hold" : "Dish hold";
}

void check_curve(const Subject& subject, std::string_view curve, std::string_view other,
                 Diagnostics& diagnostics) {
  const std::vector<Curved> lines = curved(subject, curve);
  if (lines.empty() || !curved(subject, other).empty() || any_bends(subject, other)) return;
  const Curved& first = lines.front();
  const auto article = [](std::string_view word) { return word == "arch" ? "an arch" : "a dish"; };
  Diagnostic found{Severity::kNote, "unpaired-shape", first.span,
                   fmt::format("{} bends the body into {}, and nothing in this session into {}",
                               quoted(first.name), article(curve), article(other))};
  for (std::size_t i = 1; i < std::min<std::size_t>(lines.size(), 12); ++i) {
    found.labels.push_back({lines[i].span, fmt::format("{} too", article(curve))});
  }
  label_library(diagnostics, found, *first.known, first.known->curve.span,
                "the library says so here");
  found.hint = fmt::format("add {}, such as {}, so that front and back grow strong together",
                           article(other), quoted(counterpart(subject, other)));
  diagnostics.add(std::move(found));
}

}  // namespace

void check_curves(const Subject& subject, Diagnostics& diagnostics) {
  check_curve(subject, "dish", "arch", diagnostics);
  check_curve(subject, "arch", "dish", diagnostics);
}

}  // namespace chalkleaf::reason
