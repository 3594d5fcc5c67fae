// Terms of a sum that a coach can do again on paper. Inside the room.
#pragma once

#include <string>

#include "base/duration.h"
#include "base/text.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

/// A length of time and its part of the sum in words.
struct Term {
  Duration time;
  std::string text;
};

/// n times `one`. A dose is text of the coach's, so its numbers may be absurd: sums stop at a
/// hundred times the longest time a plan may name.
Duration times(Duration one, std::int64_t n);
/// `counted × one`
Term multiplied(std::int64_t count, const std::string& counted_text, const Term& one);
/// `3 waves of 4 gymnasts`, `3 waves of up to 4 gymnasts` when the last one is smaller.
std::string waves_text(const Waves& waves);

/// How many times something is done, with so much between: sets with their rest, rounds.
struct Repeated {
  std::int64_t count = 1;
  std::string counted;  ///< `3 sets`
  Duration between;
  std::string between_words;  ///< `rest`
  bool says_where = false;    ///< `rest between the legs`: a single one needs no `1 ×`
};
/// Each of `count` turns of `once`, done by every wave before the next turn begins. A wave that has
/// had its turn rests while the others have theirs, so only what is missing of the rest is added:
/// a turn begins every max(waves × once, once + between), and the last one ends with its last wave.
DrillTime in_waves(const Term& once, const Repeated& repeated, const Waves& waves);

/// The time of a circuit: its rounds, and one round in `stations`.
DrillTime circuit_time(const plan::Drill& drill, const plan::Timings& timings, const Waves& waves);

}  // namespace chalkleaf::reason
