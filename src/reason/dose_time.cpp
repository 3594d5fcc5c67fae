// How long one dose takes, and the sum in words.
//
// The sum is written so that a coach can do it again on paper: every factor says what it counts
// (`2 sets × 2 sides × 10 reps × 2 s`), and a length of time that the dose does not name says where
// it came from (`a rep, default`). Tempo is the sum of its four phases: the worked example of
// reference-values.md, section 11. Tested by tests/reason/dose_time_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/timetable.h"

namespace chalkleaf::reason {
namespace {

using plan::AmountKind;
using plan::Dose;
using plan::Sides;
using plan::Timing;
using plan::Timings;

// A dose is text of the coach's, so its numbers may be absurd. Sums stop at this; it is far over
// any slot, and a million of them still fit a Duration.
constexpr Duration kMost = kLongestDuration * 100;

Duration times(Duration one, std::int64_t n) {
  if (n <= 0 || one <= Duration()) return {};
  if (n > kMost.in_milliseconds() / one.in_milliseconds()) return kMost;
  return one * n;
}

std::string_view origin_word(Timing::Origin origin) {
  switch (origin) {
    case Timing::Origin::kDefault:
      return "default";
    case Timing::Origin::kClub:
      return "club";
    case Timing::Origin::kPlan:
      return "plan";
  }
  return "";
}

std::string counted(std::int64_t n, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

std::string tempo_text(const plan::Tempo& tempo) {
  std::string out;
  for (const Duration phase : tempo.phases) {
    std::string seconds = exact_text(phase);
    if (seconds.ends_with(" s")) seconds.resize(seconds.size() - 2);
    out += (out.empty() ? "" : "-") + seconds;
  }
  return out;
}

/// A length of time and its part of the sum.
struct Term {
  Duration time;
  std::string text;
};

Term from_timing(const Timing& timing, std::string_view what) {
  return {timing.value,
          fmt::format("{} ({}, {})", exact_text(timing.value), what, origin_word(timing.origin))};
}

// One repetition, step or length.
Term unit(const Dose& dose, const Timing& timing, std::string_view what) {
  if (dose.amount.kind == AmountKind::kRepetitions && dose.tempo) {
    const Duration total = dose.tempo->total();
    return {total, fmt::format("{} (tempo {})", exact_text(total), tempo_text(*dose.tempo))};
  }
  if (dose.pace) return {*dose.pace, exact_text(*dose.pace) + " (its pace)"};
  return from_timing(timing, what);
}

Term multiplied(std::int64_t count, const std::string& counted_text, const Term& one) {
  return {times(one.time, count), counted_text + " × " + one.text};
}

// The amount once, on one side.
Term amount(const Dose& dose, const Timings& timings) {
  const std::int64_t n = dose.amount.count;
  switch (dose.amount.kind) {
    case AmountKind::kRepetitions:
      return multiplied(n, counted(n, "rep", "reps"), unit(dose, timings.repetition, "a rep"));
    case AmountKind::kSteps:
      return multiplied(n, counted(n, "step", "steps"), unit(dose, timings.step, "a step"));
    case AmountKind::kLengths:
      return multiplied(n, counted(n, "length", "lengths"), unit(dose, timings.length, "a length"));
    case AmountKind::kTime: {
      const Duration time = dose.amount.time.value_or(Duration());
      return {time, exact_text(time)};
    }
    case AmountKind::kMaxHold:
      if (dose.amount.time) {
        return {*dose.amount.time, exact_text(*dose.amount.time) + " (max hold, its cap)"};
      }
      return from_timing(timings.max_hold, "max hold");
    case AmountKind::kMoves:
      break;
  }
  return {};
}

std::string_view sides_word(Sides sides) {
  switch (sides) {
    case Sides::kOnce:
      return "";
    case Sides::kEachSide:
      return "sides";
    case Sides::kEachWay:
      return "ways";
    case Sides::kEachLeg:
      return "legs";
    case Sides::kEachArm:
      return "arms";
  }
  return "";
}

Term one_set(const Dose& dose, const Timings& timings) {
  const Term once = amount(dose, timings);
  const std::int64_t repeats = dose.repeats_per_set();
  if (repeats == 1) return once;
  return multiplied(repeats, fmt::format("{} {}", repeats, sides_word(dose.sides)), once);
}

// `every T`: each set has T to itself; what it leaves of T is rest, after the last one too, as a
// coach with a clock counts turns (common practice, no source).
DrillTime with_starts_apart(const Dose& dose, const Term& set, Duration every) {
  DrillTime out;
  out.work = times(set.time, dose.sets);
  out.rest = times(every - set.time, dose.sets);
  out.reasoning = fmt::format("{} sets × {} (one every {}, of which {})", dose.sets,
                              exact_text(every), exact_text(every), set.text);
  return out;
}

// One set has nothing between sets: its rest stands between its sides or ways, and with only one of
// those it follows the drill (common practice, no source). Only a rest that is written.
DrillTime with_rest_in_set(const Dose& dose, DrillTime out) {
  if (!dose.rest || *dose.rest <= Duration()) return out;
  const std::int64_t repeats = dose.repeats_per_set();
  const std::string rest = exact_text(*dose.rest);
  if (repeats == 1) {
    out.rest = *dose.rest;
    out.reasoning += fmt::format(" + {} rest after it", rest);
    return out;
  }
  out.rest = times(*dose.rest, repeats - 1);
  out.reasoning += repeats == 2 ? fmt::format(" + {} rest", rest)
                                : fmt::format(" + {} × {} rest", repeats - 1, rest);
  out.reasoning += fmt::format(" between the {}", sides_word(dose.sides));
  return out;
}

}  // namespace

DrillTime dose_time(const plan::Dose& dose, const plan::Timings& timings) {
  const Term set = one_set(dose, timings);
  // An interval too short for its set is reported (reason/checks.h); then the sets follow at once.
  const bool too_short = dose.every && *dose.every < set.time;
  if (dose.every && dose.sets > 1 && !too_short) return with_starts_apart(dose, set, *dose.every);
  DrillTime out;
  out.work = times(set.time, dose.sets);
  out.reasoning = set.text;
  if (dose.sets == 1) return with_rest_in_set(dose, std::move(out));
  out.reasoning = fmt::format("{} {} × {}", dose.sets, dose.in_goes ? "goes" : "sets", set.text);
  if (dose.every) return out;
  const Duration rest = dose.rest.value_or(timings.rest.value);
  if (rest <= Duration()) return out;
  out.rest = times(rest, dose.sets - 1);
  out.reasoning += fmt::format(" + {} × {} rest", dose.sets - 1, exact_text(rest));
  if (!dose.rest) out.reasoning += fmt::format(" ({})", origin_word(timings.rest.origin));
  return out;
}

Duration set_time(const plan::Dose& dose, const plan::Timings& timings) {
  return one_set(dose, timings).time;
}

}  // namespace chalkleaf::reason
