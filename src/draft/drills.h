// The drills one line speaks of: `fwd roll down wedge x5 teddy rolls x4`, `hollow 3x20'', arch
// 3x20''`, `shapes 20 sec ea: hollow, arch`, `superset x3: 8 leg lifts + 10 press ups`.
//
// Words and amounts alternate; commas, colons and dashes say which belong together. What is no dose
// and no name of a drill is a remark of the drill before it. Nothing here decides whether the line
// is one of drills at all (draft/sequence.h). Tested by tests/draft/drills_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "draft/elements.h"

namespace chalkleaf::draft {

/// A dose as it was said.
struct SpokenDose {
  enum class Kind { kReps, kGoes, kSeconds, kSteps, kLengths, kMaxHold };
  Kind kind = Kind::kReps;
  std::vector<double> values = {};  ///< one, a range of two, or the rungs of a ladder
  double sets = 1;
  std::optional<Role> sides = {};
  std::vector<std::string> ways = {};
  std::optional<double> rest = {};  ///< seconds
  bool held = false;
  bool as_many = false;
  std::vector<std::string> remarks = {};

  bool is_ladder() const { return values.size() > 2; }
};

/// A stretch of the line, in bytes.
struct Stretch {
  std::size_t begin = 0;
  std::size_t end = 0;
};

struct SpokenDrill {
  std::string label;  ///< `bronze`, `L4`, `bars`: who or where; may be empty
  std::string name;   ///< spelled out
  std::string typed;  ///< as typed, its dose and remarks with it
  std::vector<Element> elements;
  std::optional<SpokenDose> dose;
  std::vector<std::string> notes;
  Stretch where;
};

/// Rounds over several drills: a circuit, a superset, every minute on the minute.
struct Group {
  double rounds = 1;
  bool has_rounds = false;
  std::optional<double> work;     ///< seconds at each
  std::optional<double> rest;     ///< seconds after each
  std::optional<double> between;  ///< seconds between rounds
  bool superset = false;          ///< `superset` or `circuit` was said, perhaps without rounds
};

struct SpokenLine {
  std::vector<SpokenDrill> drills;
  std::optional<Group> group;
  std::vector<Element> defaults;  ///< amounts that belong to no drill of the line
  bool has_dose() const;
};

/// What holds for the part the line stands in.
struct Setting {
  std::string_view name = {};           ///< of what the words are said: the heading before them
  bool stretch = false;                 ///< bare numbers are seconds
  std::vector<Element> defaults = {};   ///< `hold everything 30`
  std::optional<Element> of_each = {};  ///< `10 of each`: the amount of what has none of its own
  bool group = false;                   ///< its drills are done in rounds
  bool timed_group = false;             ///< and the time at each is given
  double sets = 0;                      ///< `3 sets of each`, of its drills; 0: not said
};

/// A drill whose name is known, and the words of its dose.
SpokenDrill read_named(const Lexicon& words, std::string_view name, std::string_view dose,
                       const Setting& setting);

SpokenLine read_drills(const Lexicon& words, std::string_view line, const Setting& setting);

}  // namespace chalkleaf::draft
