// What a plan asks of a body, added up: how often and how long the hands bear it, how often it
// lands, bears on its neck, bends far back, hangs upside down, and how hard it works. Pure.
//
// Counted for one gymnast, from what the library says of each drill (`loads`, `each`, `effort`,
// `pace`) and from the plan's doses. Of a range the larger end counts, of a row of choices what
// bears most, as in the timetable. A light load (1) is carried all day and is not added up.
// These are counts for a coach to look at, never a forecast of injury. Tested by
// tests/reason/loads_test.cpp.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "plan/library.h"
#include "plan/model.h"
#include "reason/timetable.h"

namespace chalkleaf::reason {

/// What is added up, in the order of the tables.
enum class Load {
  kHandTime,    ///< held on the hands, ms
  kHandTimes,   ///< times the hands take the body's weight
  kLandings,    ///< from a jump that ends there
  kBounces,     ///< landings that are the next take-off, a second or less apart
  kNeckTimes,   ///< times the neck bears weight
  kBackBends,   ///< times the back is bent far backwards
  kUpsideDown,  ///< hips above the shoulders, ms
  kEffort,      ///< effort (0 to 10) × working time, ms: Foster et al. 2001 count it in minutes
};
inline constexpr std::size_t kLoadKinds = 8;
/// All, in order.
const std::array<Load, kLoadKinds>& all_loads();
/// `hands_s`, `landings`: the key of a load in JSON.
std::string_view load_key(Load load);
/// True for those measured in milliseconds.
bool is_time(Load load);
/// `40 landings`, `1 min 20 s held on the hands`.
std::string load_text(Load load, std::int64_t amount);
/// The amount alone: `40`, `1 min 20 s`, and of effort its number of minutes: `145`.
std::string load_amount(Load load, std::int64_t amount);
/// What a column of a table is called: `landings`.
std::string_view load_title(Load load);

/// One sum of each. Sums stop far beyond sense, where a dose is absurd.
class LoadSums {
 public:
  std::int64_t of(Load load) const { return sums_[static_cast<std::size_t>(load)]; }
  void add(Load load, std::int64_t amount);
  void add(const LoadSums& other);
  /// Each no less than the other's.
  void raise_to(const LoadSums& other);
  bool is_nothing() const { return sums_ == std::array<std::int64_t, kLoadKinds>{}; }

 private:
  std::array<std::int64_t, kLoadKinds> sums_{};
};

/// What one line adds; a station of a circuit in all rounds.
struct LineLoads {
  const plan::Drill* drill = nullptr;
  LoadSums sums;
};

/// Points into the session.
struct PlanLoads {
  LoadSums sum;
  std::vector<LineLoads> lines;  ///< in order; those that add nothing too
  /// What could not be counted: no drill of the library, or no dose. Not pauses.
  std::vector<const plan::Drill*> uncounted;
};

/// `Handstands: 10 min` is no hold of ten minutes, but what a part of the lesson is spent on: from
/// two minutes on, where the dose does not say that it is held.
bool is_place_in_lesson(const plan::Amount& amount);

PlanLoads loads_of(const plan::Session& session, const Timetable& timetable,
                   const plan::DrillBook& book);

}  // namespace chalkleaf::reason
