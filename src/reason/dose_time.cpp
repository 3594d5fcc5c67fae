// How long one dose takes, and the sum in words.
//
// The sum is written so that a coach can do it again on paper: every factor says what it counts
// (`2 sets × 2 sides × 10 reps × 2 s`), and a length of time that the dose does not name says where
// it came from (`a rep, default`). Where gymnasts take turns, each set lasts until the last wave
// has done it. Tempo is the sum of its four phases: the worked example of reference-values.md,
// section 11. Tested by tests/reason/dose_time_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "plan/library.h"
#include "reason/sums.h"

namespace chalkleaf::reason {
namespace {

using plan::AmountKind;
using plan::Dose;
using plan::Sides;
using plan::Timing;
using plan::Timings;

// Far over any slot, and a million of them still fit a Duration.
constexpr Duration kMost = kLongestDuration * 100;

/// What a dose is timed with.
struct Basis {
  const Dose& dose;
  const Timings& timings;
  std::optional<LibraryPace> pace;
};

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

std::string tempo_text(const plan::Tempo& tempo) {
  std::string out;
  for (const Duration phase : tempo.phases) {
    std::string seconds = exact_text(phase);
    if (seconds.ends_with(" s")) seconds.resize(seconds.size() - 2);
    out += (out.empty() ? "" : "-") + seconds;
  }
  return out;
}

Term from_timing(const Timing& timing, std::string_view what) {
  return {timing.value,
          fmt::format("{} ({}, {})", exact_text(timing.value), what, origin_word(timing.origin))};
}

// One repetition, step or length.
Term unit(const Basis& basis, AmountKind kind, const Timing& timing, std::string_view what) {
  const Dose& dose = basis.dose;
  if (kind == AmountKind::kRepetitions && dose.tempo) {
    const Duration total = dose.tempo->total();
    return {total, fmt::format("{} (tempo {})", exact_text(total), tempo_text(*dose.tempo))};
  }
  if (dose.pace) return {*dose.pace, exact_text(*dose.pace) + " (its pace)"};
  const bool paced = basis.pace && kind != AmountKind::kLengths;
  if (paced && !(basis.pace->or_default && basis.pace->value < timing.value)) {
    return {basis.pace->value, exact_text(basis.pace->value) + " (" + basis.pace->whose + ")"};
  }
  return from_timing(timing, what);
}

// `12 reps × …`; of a range the larger number, as whoever does most takes longest.
Term of_count(const plan::Amount& amount, std::string_view one, std::string_view many,
              const Term& each) {
  const std::int64_t n = amount.most_count();
  std::string text = counted(n, one, many);
  if (amount.count_to) text += fmt::format(" (of {}–{})", amount.count, n);
  if (!amount.ladder.empty()) text += fmt::format(" ({})", fmt::join(amount.ladder, " + "));
  return multiplied(n, text, each);
}

Term of_time(const plan::Amount& amount) {
  const Duration time = amount.most_time().value_or(Duration());
  std::string text = exact_text(time);
  if (amount.time_to) text += fmt::format(" (of {} to {})", exact_text(*amount.time), text);
  return {time, std::move(text)};
}

// An amount once, on one side.
Term amount_term(const plan::Amount& amount, const Basis& basis) {
  const Timings& timings = basis.timings;
  switch (amount.kind) {
    case AmountKind::kRepetitions:
      return of_count(amount, "rep", "reps", unit(basis, amount.kind, timings.repetition, "a rep"));
    case AmountKind::kSteps:
      return of_count(amount, "step", "steps", unit(basis, amount.kind, timings.step, "a step"));
    case AmountKind::kLengths:
      return of_count(amount, "length", "lengths",
                      unit(basis, amount.kind, timings.length, "a length"));
    case AmountKind::kTime:
      return of_time(amount);
    case AmountKind::kMaxHold:
      if (amount.time) return {*amount.time, exact_text(*amount.time) + " (max hold, its cap)"};
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

// Several moves, one behind the other: `(10 reps × 2 s (a rep, default) + 20 s)`. Where a length of
// time came from is said once. The library's pace is the drill's, not a move's.
Term moves_term(const Basis& basis) {
  const Basis moves{basis.dose, basis.timings, std::nullopt};
  Term out;
  std::vector<std::string> origins;
  for (const plan::Move& move : basis.dose.moves) {
    Term term = amount_term(move.amount, moves);
    if (move.sides != Sides::kOnce) {
      term = multiplied(2, fmt::format("2 {}", sides_word(move.sides)), term);
    }
    if (const std::size_t note = term.text.rfind(" ("); note != std::string::npos) {
      const std::string origin = term.text.substr(note);
      if (std::find(origins.begin(), origins.end(), origin) == origins.end()) {
        origins.push_back(origin);
      } else if (!move.amount.time) {
        term.text.resize(note);
      }
    }
    out.time = std::min(out.time + term.time, kMost);
    out.text += (out.text.empty() ? "(" : " + ") + term.text;
  }
  out.text += ")";
  return out;
}

Term amount(const Basis& basis) {
  if (basis.dose.amount.kind == AmountKind::kMoves) return moves_term(basis);
  return amount_term(basis.dose.amount, basis);
}

Term one_set(const Basis& basis) {
  const Dose& dose = basis.dose;
  const Term once = amount(basis);
  const std::int64_t repeats = dose.repeats_per_set();
  if (repeats == 1) return once;
  return multiplied(repeats, fmt::format("{} {}", repeats, sides_word(dose.sides)), once);
}

// `every T`: each set has T to itself; what it leaves of T is rest, after the last one too, as a
// coach with a clock counts turns (common practice, no source). Waves that need longer get it.
DrillTime with_starts_apart(const Dose& dose, const Term& set, Duration every, const Waves& waves) {
  const Term all = waves.count == 1 ? set : multiplied(waves.count, waves_text(waves), set);
  const Duration cycle = std::max(every, all.time);
  DrillTime out;
  out.waves = waves.count;
  out.work = times(set.time, dose.sets);
  out.rest = times(cycle, dose.sets) - out.work;
  out.reasoning = cycle == every
                      ? fmt::format("{} sets × {} (one every {}, of which {})", dose.sets,
                                    exact_text(every), exact_text(every), all.text)
                      : fmt::format("{} sets × {}", dose.sets, all.text);
  return out;
}

// One set has nothing between sets: its rest stands between its sides or ways, and with only one of
// those it follows the drill (common practice, no source). Only a rest that is written.
DrillTime one_rested_set(const Basis& basis, const Term& set, const Waves& waves) {
  const Dose& dose = basis.dose;
  const std::int64_t repeats = dose.repeats_per_set();
  const std::string rest = exact_text(*dose.rest);
  if (repeats == 1) {
    DrillTime out = in_waves(set, {}, waves);
    out.rest += *dose.rest;
    out.reasoning += fmt::format(" + {} rest after it", rest);
    return out;
  }
  const std::string_view sides = sides_word(dose.sides);
  return in_waves(amount(basis),
                  {repeats, fmt::format("{} {}", repeats, sides), *dose.rest,
                   fmt::format("rest between the {}", sides), true},
                  waves);
}

// A ladder's rest stands between its rungs.
DrillTime rested_ladder(const Dose& dose, const Term& set, const Waves& waves) {
  const auto rests = static_cast<std::int64_t>(dose.amount.ladder.size()) - 1;
  Repeated once;
  DrillTime out = in_waves(set, once, waves);
  out.rest += times(*dose.rest, rests * std::max(1, waves.count));
  out.reasoning += fmt::format(" + {} × {} rest", rests, exact_text(*dose.rest));
  return out;
}

}  // namespace

Duration times(Duration one, std::int64_t n) {
  if (n <= 0 || one <= Duration()) return {};
  if (n > kMost.in_milliseconds() / one.in_milliseconds()) return kMost;
  return one * n;
}

Term multiplied(std::int64_t count, const std::string& counted_text, const Term& one) {
  return {times(one.time, count), counted_text + " × " + one.text};
}

std::optional<LibraryPace> library_pace(const plan::Drill& drill) {
  if (drill.known != nullptr) {
    if (!drill.known->pace) return std::nullopt;
    return LibraryPace{drill.known->pace->value};
  }
  std::optional<LibraryPace> slowest;
  bool without = false;
  for (const plan::LibraryDrill* choice : drill.known_choices) {
    if (choice == nullptr || !choice->pace) {
      without = true;
    } else if (!slowest || slowest->value < choice->pace->value) {
      slowest = LibraryPace{choice->pace->value,
                            fmt::format("the pace of ‘{}’, the slowest choice", choice->name.text)};
    }
  }
  if (slowest) slowest->or_default = without;
  return slowest;
}

DrillTime dose_time(const plan::Dose& dose, const plan::Timings& timings,
                    const std::optional<LibraryPace>& pace, const Waves& waves) {
  Term set = one_set({dose, timings, pace});
  // Nothing multiplies the moves: their sum needs no brackets.
  const bool alone = dose.sets == 1 && waves.count == 1 && dose.repeats_per_set() == 1;
  if (alone && dose.amount.kind == AmountKind::kMoves) {
    set.text = set.text.substr(1, set.text.size() - 2);
  }
  // An interval too short for its set is reported (reason/checks.h); then the sets follow at once.
  const bool too_short = dose.every && *dose.every < set.time;
  if (dose.every && dose.sets > 1 && !too_short) {
    return with_starts_apart(dose, set, *dose.every, waves);
  }
  const bool rested = dose.rest && *dose.rest > Duration();
  if (dose.sets == 1 && rested && !dose.amount.ladder.empty()) {
    return rested_ladder(dose, set, waves);
  }
  if (dose.sets == 1 && rested) return one_rested_set({dose, timings, pace}, set, waves);
  Repeated sets;
  sets.count = dose.sets;
  sets.counted = fmt::format("{} {}", dose.sets, dose.in_goes ? "goes" : "sets");
  if (dose.sets > 1 && !dose.every) sets.between = dose.rest.value_or(timings.rest.value);
  sets.between_words = "rest";
  if (!dose.rest) sets.between_words += fmt::format(" ({})", origin_word(timings.rest.origin));
  return in_waves(set, sets, waves);
}

Duration set_time(const plan::Dose& dose, const plan::Timings& timings,
                  const std::optional<LibraryPace>& pace) {
  return one_set({dose, timings, pace}).time;
}

}  // namespace chalkleaf::reason
