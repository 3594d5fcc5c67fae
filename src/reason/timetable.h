// When each thing happens, and why it takes as long as it does.
//
// Exact sums of what the doses say and the timings in force; pure. Tested by
// tests/reason/timetable_test.cpp, against the tempo arithmetic and python3's own clock arithmetic.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/model.h"
#include "reason/hall_time.h"
#include "rota/model.h"

namespace chalkleaf::reason {

/// The time of one drill. All exact.
struct DrillTime {
  const plan::Drill* drill = nullptr;
  Duration start;       ///< from the session's begin
  Duration work;        ///< doing it, all sets and sides
  Duration rest;        ///< between its sets
  Duration changeover;  ///< after it, for the next drill of the session; none after the last
  int in_turn = 0;      ///< gymnasts that take these turns; 0: all there are
  int waves = 1;        ///< turns until the whole group has done a set, where a station takes fewer
  /// Of a circuit: one round, each station from the circuit's begin of that round.
  std::vector<DrillTime> stations = {};
  bool shared_time = false;  ///< it has no dose of its own and fills its share of the part's budget
  std::string reasoning;     ///< how work and rest came about: `3 × 20 s + 2 × 20 s rest`
  Duration length() const { return work + rest + changeover; }
};

/// The time of a line that moves kit. Without a time of its own it is done in the change-over.
struct KitMoveTime {
  const plan::KitMove* move = nullptr;
  Duration start;
  Duration length;
};

/// The time of one part. A written time is the clock: the part takes it, whatever its lines add up
/// to.
struct PartTime {
  const plan::Part* part = nullptr;
  Duration start;
  Duration length;        ///< the change-over into the next part included
  Duration planned = {};  ///< what its lines add up to; its length, where none is written
  std::vector<DrillTime> drills;
  std::vector<KitMoveTime> kit_moves = {};
  std::optional<HallPart> hall = {};  ///< what it takes in a hall; none without a hall book
};

/// A part that belongs to a rotation. Indices are into the parts, the timetable's rotations, and
/// the rotation's stations; without a station it is the part with the grid, or one nobody goes to.
struct Seat {
  std::size_t part = 0;
  std::size_t rotation = 0;
  std::optional<std::size_t> station = {};
};

/// The session's times. Points into the session, which must outlive it.
struct Timetable {
  std::vector<PartTime> parts;
  std::vector<rota::Rotation> rotations = {};
  std::vector<Seat> seats = {};  ///< in the order of the parts
  Duration total;
  std::optional<TimeOfDay> start;
  std::optional<TimeOfDay> end;   ///< start + total
  std::optional<Duration> spare;  ///< slot − total; negative when over

  /// The seat of a part; null when it is of no rotation.
  const Seat* seat_of(const plan::Part& part) const;
  /// The rotation whose grid stands in a part, or null.
  const rota::Rotation* rotation_of(const plan::Part& part) const;
};

/// The gymnasts take turns in waves, because a station holds fewer than there are.
struct Waves {
  int count = 1;     ///< how many waves
  int gymnasts = 0;  ///< in all
  int places = 0;    ///< at a time
};
/// How many turns the group needs at the station of the hall that the drill names; one wave at
/// home, and where a number is not known.
/// `at_a_time`: how many come there at a time, where it is not the whole group.
Waves waves(const plan::Session& session, const plan::Club& club, const plan::Drill& drill,
            const std::optional<int>& at_a_time = {});

/// How long one repetition or step takes by the club's library.
struct LibraryPace {
  Duration value;
  std::string whose = "its pace in the library";
  bool or_default = false;  ///< a choice besides has none: the default counts where it is longer
};
/// Of this drill; of a line with choices the slowest, since the whole group must have time for it.
/// None when the library gives none.
std::optional<LibraryPace> library_pace(const plan::Drill& drill);

/// How long a dose takes, without change-over: work, rest and the reasoning of DrillTime. `pace` is
/// the library's, for a dose with neither tempo nor pace. With several waves a set lasts until all
/// have done it, and waiting counts as rest.
DrillTime dose_time(const plan::Dose& dose, const plan::Timings& timings,
                    const std::optional<LibraryPace>& pace = {}, const Waves& waves = {});
/// How long one set of a dose takes one gymnast, all sides or ways.
Duration set_time(const plan::Dose& dose, const plan::Timings& timings,
                  const std::optional<LibraryPace>& pace = {});

/// The club is for the stations of its hall; nothing points into it. `hall` is for PartTime::hall,
/// and may be null.
Timetable timetable(const plan::Session& session, const plan::Club& club,
                    const plan::HallBook* hall = nullptr);

}  // namespace chalkleaf::reason
