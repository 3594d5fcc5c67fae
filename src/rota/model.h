// A rotation: groups that go from station to station, turn by turn, as one grid of an evening.
//
// Plain values. Made by rota/read.h from what a coach wrote, judged by rota/check.h, proposed by
// rota/propose.h where no grid is written. Indices are into the lists of the same Rotation.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/span.h"

namespace chalkleaf::rota {

/// What something is called, and where it is written.
struct Name {
  std::string text;
  Span span;
};

/// A colour by its name.
enum class NamedColour { kRed, kOrange, kYellow, kGreen, kTurquoise, kBlue, kPurple, kBlack };

struct Group {
  Name name;
  std::optional<int> size = {};            ///< gymnasts
  std::optional<int> from = {};            ///< minute of the day it comes; none: with the others
  std::optional<int> until = {};           ///< minute of the day it goes
  std::vector<std::size_t> twice = {};     ///< stations it is to have two turns at
  std::vector<std::size_t> skips = {};     ///< stations it is not to come to
  std::optional<NamedColour> colour = {};  ///< that its name says: `Reds`
};

struct Station {
  Name name;
  std::optional<int> takes = {};  ///< gymnasts at a time, where the plan says it
  std::size_t hall = 0;           ///< into Rotation::halls; 0 when the plan names none
};

/// Who looks after a station all evening, or goes round with a group.
struct Coach {
  Name name;
  std::vector<std::size_t> stations = {};
  std::vector<std::size_t> groups = {};
};

struct Turn {
  std::optional<int> clock = {};  ///< minute of the day it begins
  int minutes = 0;                ///< without the way to the next station; 0: not known
  Span span = {};                 ///< its label in the grid
};

/// A break of all groups, or what else stands across the grid.
struct Pause {
  std::size_t before = 0;  ///< the turn it stands before; one more than the last: behind all
  std::optional<int> clock = {};
  int minutes = 0;  ///< 0: not known
  std::string words = {};
  Span span = {};
};

/// A group's turn at a station.
struct Visit {
  std::size_t turn = 0;
  std::size_t group = 0;
  std::size_t station = 0;
  Span span = {};  ///< the name in its cell; nowhere in a grid that was proposed
  bool operator==(const Visit& o) const {
    return turn == o.turn && group == o.group && station == o.station;
  }
};

/// What a line behind `must:` or `wish:` asks for.
struct Rule {
  enum class Kind {
    kNotFirst,  ///< groups not in the first turn on these stations
    kNotLast,
    kLast,       ///< in the last turn on the station
    kBefore,     ///< the first station before the second
    kNotAfter,   ///< the first station not in the turn behind the second
    kInFirst,    ///< in one of the first `number` turns on the station
    kNotBeside,  ///< two groups not at neighbouring stations in one turn
    kOneKit,     ///< of the groups only one at a time at any of the stations
    kOneHallChange,
    kSameWayRound,
    kBalanced,  ///< each station comes straight behind each other one equally often
    kUnread,
  };
  enum class Weight { kMust, kWish };
  Kind kind = Kind::kUnread;
  Weight weight = Weight::kWish;
  std::vector<std::size_t> groups = {};  ///< empty: all
  std::vector<std::size_t> stations = {};
  int number = 0;
  std::string text = {};  ///< as written
  Span span = {};
};

/// A turn in which a group stays out, because its cell says so.
struct Rest {
  std::size_t turn = 0;
  std::size_t group = 0;
  Span span = {};
};

/// Words of the grid that name neither a group nor a station there is.
struct Stranger {
  std::size_t turn = 0;
  std::string text;
  Span span;
};

/// A heading below the grid whose drills are a station's.
struct StationTitle {
  std::uint32_t line = 0;  ///< of the file, from 1
  std::size_t station = 0;
};

struct Rotation {
  /// What the cells of the written grid name; the columns name the other.
  enum class Cells { kGroups, kStations };
  /// kWritten: a grid stands in the text. kLines: a line a turn, in words. kOrder: one line and
  /// `then rotate`. kNone: to be proposed.
  enum class Form { kWritten, kLines, kOrder, kNone };
  Form form = Form::kNone;
  Cells cells = Cells::kGroups;
  Name heading = {};        ///< the line above; may be empty
  Name title = {};          ///< of that line what is a name: `Rotations`
  Span remark = {};         ///< what else it says besides lengths of time; may be nowhere
  std::string corner = {};  ///< what stands in the grid's corner, when it is more than `time`
  Span span = {};           ///< the grid, or the heading where there is none
  std::vector<std::uint32_t> lines = {};  ///< of the file (from 1) that are the grid or said of it
  std::vector<Group> groups = {};
  std::vector<Station> stations = {};
  std::vector<std::string> halls = {};
  std::vector<Coach> coaches = {};
  std::vector<Turn> turns = {};
  std::vector<Pause> pauses = {};
  std::vector<Visit> visits = {};
  std::vector<Rest> rests = {};
  std::vector<Stranger> strangers = {};
  std::vector<Rule> rules = {};
  std::vector<StationTitle> titles = {};
  std::optional<int> said_minutes = {};  ///< of a turn, by the words around the grid
  std::optional<int> claimed = {};  ///< the same, also where the clock of the grid says otherwise
  std::optional<int> claimed_turns = {};  ///< `4 x 28 min`
  int move = 0;                           ///< minutes from one station to the next
  int stays_out = 0;                      ///< turns each group has none, when the plan says so

  std::optional<int> start() const { return turns.empty() ? std::nullopt : turns.front().clock; }
  /// From the first turn's begin: turns, breaks and the ways between stations, the way from the
  /// last to what comes next with them. Minutes.
  int minutes() const;
};

}  // namespace chalkleaf::rota
