// Whether a line opens a part, and what it says then: `4.42 stretch`, `B. FLOOR WORK (25 minutes)`,
// `Vault 10 min - run + straight jump …`, `**BARS (Sam)**`.
//
// Gives evidence, not a verdict: the whole document decides (draft/sequence.h).
// Tested by tests/draft/headings_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "draft/lexicon.h"
#include "draft/lines.h"

namespace chalkleaf::draft {

struct HeadingRead {
  double evidence = 0;  ///< for its being a heading
  bool strong = false;  ///< a clock, hashes, bold, capitals or minutes say so
  bool stretch = false;
  bool pause = false;            ///< water, a snack: what stands behind it is no dose
  std::uint32_t name_begin = 0;  ///< bytes in the file
  std::uint32_t name_end = 0;
  std::optional<double> minutes = {};
  std::uint32_t rest = 0;  ///< where the words behind the heading begin; rest_end when none
  std::uint32_t rest_end = 0;
};

/// What is known of the whole document.
struct Habits {
  bool capitals = false;    ///< all of it is in capitals
  bool weak_parts = false;  ///< few lines are plainly headings, so that a word must do
  bool minutes =
      false;  ///< parts are lines that end in their minutes: `body shapes 8 min`, `jumps - 12`
  std::size_t margin = 0;  ///< the usual indent
  /// Parts stand at the margin and what is done stands further in, on lines of its own.
  bool stepped = false;
  /// Parts are lines that begin with a name and its minutes, drills behind: `pull 5 min, chin ups`.
  bool minutes_lead = false;
};

/// Where a clock stands behind a few words: `Body 5:00`, `Vault 10.20 (20)`.
struct ClockBehind {
  Clock clock;
  std::uint32_t begin = 0;  ///< bytes of the file
  std::uint32_t end = 0;
};
std::optional<ClockBehind> clock_behind(const Source& source, const Line& line);

/// `body shapes 8 min`, `JUMPS - 12`: a few words, and minutes end the line.
/// `red balls 5 mins roll to mum x5`: a name and its minutes, and drills with doses behind.
bool begins_with_minutes(const Lexicon& words, const Source& source, const Line& line);

bool ends_in_minutes(const Lexicon& words, const Source& source, const Line& line);

HeadingRead read_heading(const Lexicon& words, const Source& source, const Line& line,
                         const Habits& habits);

/// Whether a title begins as plan/headings.h knows a warm-up (`first`: warm) or a cool-down by.
bool is_called(std::string_view name, std::string_view first);

}  // namespace chalkleaf::draft
