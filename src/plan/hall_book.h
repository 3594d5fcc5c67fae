// How a hall runs: where gymnasts take turns and how long a turn blocks the place, and how long
// everything around the drills takes. What words mean these is language, so it is data.
//
// One file a language, `themes/words/<language>/hall.yaml`; its head says what each key means, and
// each entry names its source. Used by reason/hall_time.h. Tested by tests/plan/hall_book_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "base/duration.h"
#include "plan/library.h"

namespace chalkleaf::plan {

/// More lanes than a hall has of one place; a larger number counts something else.
inline constexpr int kMostLanes = 12;

/// Words that mean one thing, each as single words in lower case: `high bar` is two.
using Phrases = std::vector<std::vector<std::string>>;

/// A place where gymnasts take turns.
struct HallPlace {
  /// kEach: `5` are five goes of each gymnast. kTogether: one go of five.
  enum class Goes { kEach, kTogether };
  std::string name;
  Phrases words;                ///< what it is called
  Phrases counted;              ///< what there are several of when `2 …` is written: `lines`
  std::vector<DrillKind> only;  ///< kinds of drill that are done in turns there; empty: all
  Goes goes = Goes::kTogether;
  int lanes = 1;     ///< the most there are, when neither hall nor plan says
  int lane = 1;      ///< gymnasts for whom one lane is enough
  Duration blocked;  ///< a go keeps the lane, besides its repetitions
  Duration length;   ///< along the whole of it keeps the lane
  Duration cycle;    ///< the least from one go of a gymnast to the next
  std::string source;
};

/// What a part, or a line without a dose, is about.
struct HallActivity {
  /// Whose places its drills are at: those that its part names, those that a line itself names, or
  /// none, as in a game.
  enum class Places { kOfPart, kOfLine, kNone };
  std::string name;
  Phrases words;
  std::vector<DrillKind> kinds;  ///< of drills that are this, whatever they are called
  Places places = Places::kOfPart;
  Duration begin;   ///< until the first drill begins
  Duration rep;     ///< a repetition takes at least so long
  Duration change;  ///< before each drill
  Duration lasts;   ///< a line without a dose
  Duration alone;   ///< the same, of the only line of a part
  std::string source;
};

/// Everything of one language.
struct HallBook {
  SourcePtr source;
  std::vector<HallPlace> places;
  std::vector<HallActivity> activities;
  Phrases groups;    ///< `groups`, `stations`: `3 …` part the gymnasts
  Phrases rotating;  ///< `rotation`, `swap`: groups go from place to place
  Phrases levels;    ///< `L4`, `bronze`: a line is for those alone
  Phrases one_go;    ///< `bounces`, `in a row`: however many, one go
  Phrases young;     ///< `toddlers`: under-nines, where no age is written
  Phrases years;     ///< `6 years`: what a number before it is an age in
  Phrases several;   ///< parts of the body and ways: two in a name are two drills
  Phrases spotted;   ///< `with spot`, `with help`: one gymnast a spotter
  /// Of things that take long: how long one takes. `routine`, 75 s.
  std::vector<std::pair<std::vector<std::string>, Duration>> paces;
  std::vector<std::pair<std::string, Duration>> times;  ///< `explain`, `hold-set-up`, …
  std::vector<std::pair<std::string, double>> factors;  ///< `low`, `high`, `young`

  /// Zero, and 1, when there is none of the name.
  Duration time(std::string_view name) const;
  double factor(std::string_view name) const;
  const HallActivity* activity(std::string_view name) const;
};

/// Reads such a file. Null when it is not right (reported).
std::shared_ptr<const HallBook> read_hall_book(const SourcePtr& source, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
