// The file as its writer sees it: headings, paragraphs, list entries, quotes, each with its bytes.
//
// What endangers a child has to be found wherever it stands, also where the plan's reader took a
// line for something else or could not read it at all. So the guard reads the file itself and not
// the model. Inside the room. Tested by tests/reason/guard_test.cpp.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::reason {

struct RawUnit {
  enum class Kind { kTitle, kKit, kFront, kHeading, kItem, kText, kQuote };
  Kind kind = Kind::kText;
  std::uint32_t begin = 0;  ///< bytes in the file
  std::uint32_t end = 0;
  std::uint32_t indent = 0;  ///< of a list entry
};

/// The text with what is not for reading (addresses of links, comments, marks of emphasis) replaced
/// by blanks, byte for byte.
std::string readable(std::string_view text);
/// The units of such a text, in order. Of front matter only titles, descriptions and safety.
std::vector<RawUnit> raw_units(std::string_view text);

}  // namespace chalkleaf::reason
