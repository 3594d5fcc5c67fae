// A dose: how much of a drill.
//
//     [sets x] amount [each side|way|leg|arm [: names]] [, rest T] [, tempo 3-0-1-0] [, pace T]
//              [, effort 6] [, every T] [, up to T] [, N goes] [, words]
//     amount = 10 | 10 reps | 8–12 | 5-4-3-2-1 | 30 s | 20–30 s | hold 30 s | 2 min | 20 steps | 4
//     lengths
//              | max hold | AMRAP 30 s | several moves in a row: (10 star jumps, 10 high knees)
//
// Sets may also stand behind the amount (`10 reps x 3`), sides be said as `each`, `per leg`, `E/S`,
// `L/R` or `10 left, 10 right`, and a rest as `30 s on, 15 s off`. All that is understood, and what
// is refused, is in tests/plan/dose_corpus.txt.
//
// Tested by tests/plan/dose_test.cpp, dose_corpus_test.cpp and dose_moves_test.cpp.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/duration.h"
#include "dose/words.h"

namespace chalkleaf::dose {

enum class AmountKind {
  kRepetitions,  ///< `count` repetitions
  kTime,         ///< `time`, held still or kept going
  kSteps,        ///< `count` steps
  kLengths,      ///< `count` lengths of the strip, hall or room
  kMaxHold,      ///< as long as the shape stays good, at most `time` if there is one
  kMoves,        ///< several moves in a row: Dose::moves
};

/// What is done once, in one set on one side.
struct Amount {
  AmountKind kind = AmountKind::kRepetitions;
  std::int64_t count = 0;        ///< repetitions, steps or lengths
  std::optional<Duration> time;  ///< kTime: always; kMaxHold: the cap, if one is written
  bool held = false;             ///< kTime: it was written `hold 20 s`
  std::optional<std::int64_t> count_to = {};  ///< `8–12`: 12, and `count` is 8
  std::optional<Duration> time_to = {};       ///< `20–30 s`: 30 s, and `time` is 20 s
  /// `5-4-3-2-1`: so many, then so many, …; at least three rungs. `count` is their sum.
  std::vector<std::int64_t> ladder = {};
  bool as_many = false;      ///< kTime: as many good repetitions as fit into it, `AMRAP 60 s`
  bool bare_number = false;  ///< kRepetitions: written as a number alone, `10` or `3 x 10`

  /// What a sum counts with: the larger end of a range.
  std::int64_t most_count() const { return count_to.value_or(count); }
  /// The same of `time`; nothing when there is none.
  std::optional<Duration> most_time() const { return time_to ? time_to : time; }
};

/// Whether the amount is done once or on each of two sides. Without names it stands for two.
enum class Sides { kOnce, kEachSide, kEachWay, kEachLeg, kEachArm };

/// One of several moves in a row: `10 star jumps`.
struct Move {
  Words name;  ///< `star jumps`; may be empty only where the dose cannot be read
  Amount amount;
  Sides sides = Sides::kOnce;
};

/// Seconds down, paused, up, paused for one repetition: `tempo 3-0-1-0`.
struct Tempo {
  std::array<Duration, 4> phases;
  Duration total() const { return phases[0] + phases[1] + phases[2] + phases[3]; }
};

struct Dose {
  Span span;
  std::int64_t sets = 1;
  bool in_goes = false;  ///< the sets were written as goes: `max hold, 3 goes`
  Amount amount;
  std::vector<Move> moves;  ///< kMoves: at least two; one set is all of them in order
  Sides sides = Sides::kOnce;
  std::vector<Words> ways;  ///< `each way: forwards, backwards`
  /// Between sets (and between goes), not after the last. With one set: between its sides or ways;
  /// with one set and one side: once, after it.
  std::optional<Duration> rest;
  std::optional<Tempo> tempo;     ///< time of one repetition, by phases
  std::optional<Duration> pace;   ///< time of one repetition, step or length: `pace 3 s`
  std::optional<Duration> every;  ///< a set starts every T; rest is what is left of it
  std::optional<int> effort;      ///< 0 to 10 (CR-10)
  std::vector<Words> remarks;  ///< words without numbers after a comma, printed as they are: `slow`

  /// How many times the amount is done in one set: 2 for `each side`, the number of named ways.
  std::int64_t repeats_per_set() const {
    if (sides == Sides::kOnce) return 1;
    return ways.size() > 1 ? static_cast<std::int64_t>(ways.size()) : 2;
  }
};

}  // namespace chalkleaf::dose
