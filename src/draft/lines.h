// A file's lines, and what stands at the margin of each: hashes, bullets, numbers, a clock.
// Tested by tests/draft/lines_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "base/span.h"

namespace chalkleaf::draft {

/// `9.30`, `16h30`, `1:15`; minutes of the day as written, before noon is sorted out.
struct Clock {
  int minutes = 0;
  std::optional<int> until = {};  ///< `5:15-5:40`
};

struct Line {
  enum class Mark { kNone, kHash, kBullet, kNumber, kQuote };
  std::uint32_t number = 1;  ///< from 1
  std::uint32_t begin = 0;   ///< bytes in the file, without the line's end
  std::uint32_t end = 0;
  std::size_t indent = 0;  ///< columns
  Mark mark = Mark::kNone;
  int level = 0;  ///< of hashes; of a number 2 where it stands below another: `1.2`
  bool blank = false;
  bool rule = false;                     ///< nothing but dashes or the like; blank
  bool table = false;                    ///< begins with a bar, or is a row of columns
  std::optional<std::size_t> head = {};  ///< the place of the row that names its columns
  char cut = 0;        ///< the comma or tab that sets a row's cells apart, where a head says so
  bool grid = false;   ///< cells set apart by tabs or many spaces
  bool bold = false;   ///< `**…**` at its begin
  bool emoji = false;  ///< its bullet is a picture, which those who type on a phone give headings
  std::optional<Clock> clock = {};
  std::uint32_t label_begin = 0;  ///< of `rung 4` in a list of them; both 0 where there is none
  std::uint32_t label_end = 0;
  std::uint32_t text = 0;         ///< where its words begin, behind marks and clock
  std::uint32_t clock_begin = 0;  ///< of a clock behind its name; both 0 where it stands in front
  std::uint32_t clock_end = 0;

  std::string_view words(const Source& source) const {
    return source.text().substr(text, end - text);
  }
};

/// Cuts a file into lines, from a byte that is the first of a line.
std::vector<Line> lines_of(const Source& source, std::uint32_t begin);

/// A clock at the begin of a text and the bytes it takes; nothing when there is none.
struct ClockRead {
  Clock clock;
  std::size_t size = 0;
};
std::optional<ClockRead> read_clock(std::string_view text);

}  // namespace chalkleaf::draft
