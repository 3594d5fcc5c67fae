// A text line by line as a grid may stand in it: cells set apart by bars, tabs or spaces, and a
// clock in front. Internal to the room. Tested by tests/rota/lines_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "base/span.h"

namespace chalkleaf::rota {

/// No hall's grid has more rows, and what looks for one at every line is not to look further.
inline constexpr std::size_t kMostRows = 80;
/// Lines of a plan with a grid, and more than anyone writes.
inline constexpr std::size_t kMostLines = 3'000;

struct Clock {
  int minutes = 0;  ///< of the day; 1 to 7 o'clock are in the afternoon, when gyms are open
  std::optional<int> until = {};  ///< `9.25-9.53`
};
struct ClockRead {
  Clock clock;
  std::size_t size = 0;  ///< bytes
};
/// A clock at the begin of a text: `9.25`, `4:20pm`, `1625`, `5pm`, `9.25 - 9.53`.
std::optional<ClockRead> read_clock(std::string_view text);

/// Trimmed bytes of the file, and the column on the screen (from 0, tabs of eight) where they
/// begin.
struct Cell {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  std::size_t column = 0;
  bool empty() const { return end <= begin; }
};

struct Line {
  std::uint32_t number = 1;
  std::uint32_t begin = 0;  ///< bytes, without white space at either end
  std::uint32_t end = 0;
  bool blank = false;
  bool pipe = false;  ///< a row of a Markdown table
  bool rule = false;  ///< the row of dashes below its head
  int hashes = 0;     ///< of a heading
  bool bullet = false;
  std::uint32_t text = 0;           ///< where its words begin, behind hashes, bullet and clock
  std::optional<Clock> clock = {};  ///< in front of its words
  Cell label = {};                  ///< the bytes of that clock
  std::vector<Cell> cells = {};     ///< behind the clock; of a pipe row all of them

  std::string_view words(const Source& source) const {
    return source.text().substr(text, end - text);
  }
};

std::vector<Line> lines_of(const Source& source);

/// Bytes [begin, end) without white space at either end.
Cell trimmed(const Source& source, std::uint32_t begin, std::uint32_t end);

}  // namespace chalkleaf::rota
