// Turns at a station that holds fewer gymnasts than there are.
//
// Eight gymnasts and three beams are three waves: three, three and two. A set is over when the last
// wave has done it; whoever waits, rests. Tested by tests/reason/waves_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/sums.h"

namespace chalkleaf::reason {

Waves waves(const plan::Session& session, const plan::Club& club, const plan::Drill& drill,
            const std::optional<int>& at_a_time) {
  if (session.place.value != plan::Place::kGym || drill.at.empty()) return {};
  const plan::Station* station = club.station(drill.at.text);
  const std::optional<int> gymnasts = at_a_time ? at_a_time : session.gymnast_count();
  if (station == nullptr || !gymnasts || *gymnasts < 1) return {};
  const std::int64_t places =
      std::int64_t{station->count.value} * std::int64_t{station->takes.value};
  if (places < 1 || places >= *gymnasts) return {};
  Waves out;
  out.gymnasts = *gymnasts;
  out.places = static_cast<int>(places);
  out.count = (out.gymnasts - 1) / out.places + 1;
  return out;
}

std::string waves_text(const Waves& waves) {
  const bool even = waves.gymnasts % waves.places == 0;
  return fmt::format("{} waves of {}{} {}", waves.count, even ? "" : "up to ", waves.places,
                     waves.places == 1 ? "gymnast" : "gymnasts");
}

namespace {

// `2 × 20 s rest`
std::string gaps_text(const Repeated& repeated) {
  const std::int64_t gaps = repeated.count - 1;
  const std::string count = gaps == 1 && repeated.says_where ? "" : std::to_string(gaps) + " × ";
  return count + exact_text(repeated.between) + " " + repeated.between_words;
}

}  // namespace

DrillTime in_waves(const Term& once, const Repeated& repeated, const Waves& waves) {
  const std::int64_t gaps = repeated.count - 1;
  DrillTime out;
  out.waves = waves.count;
  out.work = times(once.time, repeated.count);
  const std::string turns = repeated.count == 1 ? "" : repeated.counted + " × ";
  if (waves.count == 1) {
    out.reasoning = turns + once.text;
    if (gaps == 0 || repeated.between <= Duration()) return out;
    out.rest = times(repeated.between, gaps);
    out.reasoning += " + " + gaps_text(repeated);
    return out;
  }
  const Term all = multiplied(waves.count, waves_text(waves), once);
  const Duration rested = once.time + repeated.between;
  if (gaps == 0 || rested <= all.time) {
    out.rest = times(all.time, repeated.count) - out.work;
    out.reasoning = turns + all.text;
    return out;
  }
  out.rest = times(rested, gaps) + all.time - out.work;
  out.reasoning =
      fmt::format("{}: {} × ({} + {} {}) + {}", repeated.counted, gaps, exact_text(once.time),
                  exact_text(repeated.between), repeated.between_words, all.text);
  return out;
}

}  // namespace chalkleaf::reason
