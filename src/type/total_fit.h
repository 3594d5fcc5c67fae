// Which of the possible line ends make the best paragraph: total fit.
//
// Knuth and Plass, "Breaking Paragraphs into Lines", Software: Practice and Experience 11 (1981),
// 1119-1184: every way through the possible line ends has its demerits, and the way with the fewest
// is found in one walk, because the best way up to a place does not depend on what follows. Theirs
// is for justified text, where spaces stretch. Ours is never justified, so a line keeps its natural
// width, and what costs is the white left over at its right, by its share of the measure:
//
// - White counts by its square: two lines that each miss a tenth look better than one that misses a
//   fifth. Cubes, which they use, all but forget a line that misses little, and the ragged edge is
//   then wild in narrow columns, where every line misses something.
// - The last line may end anywhere; but a last line below a quarter of the measure is a crumb, and
//   one short word alone looks forgotten: it costs as much as a line that misses three tenths.
// - A hyphen of ours costs as much as a line that misses three tenths: in a wide measure lines
//   never miss that much, so hyphens are rare there. A hyphen right below another costs more, a
//   third one is not taken while there is any other way.
// - A line that ends in the middle of a compound (half-|turn) costs a little.
// - Neighbours of very different length make the edge look torn (their "fitness classes").
//
// There are never more lines than the fewest possible, which is what filling line by line needs:
// paper and the coach's eye are short of room. Only for this room. Tested against all ways there
// are by tests/type/total_fit_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "base/geometry.h"

namespace chalkleaf::type {

/// What the reader sees at the end of a line.
enum class Ending {
  kSpace,     ///< between words
  kCompound,  ///< inside a word, at a mark the coach wrote: half-|turn, 8–|11
  kHyphen,    ///< at a hyphen that is only there because the line ends
};

/// A line as its cost is counted.
struct FittedLine {
  Length width;
  Ending ending = Ending::kSpace;
  bool one_word = false;  ///< nothing but one word, or a part of one
};

/// The cost of a whole paragraph set as these lines, the last of them last.
std::int64_t demerits(std::span<const FittedLine> lines, Length measure);

/// A hyphen's own cost: a paragraph that costs no more than this cannot gain by one.
inline constexpr std::int64_t kHyphenDemerits = 90'000;

/// A line that fits the measure, between two stops.
struct PossibleLine {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  Length width;
  bool one_word = false;
};

/// Stop 0 is the begin of the text, the last stop its end. Lines ascend by `from`.
struct LineGraph {
  Length measure;
  std::vector<Ending> stops;
  std::vector<PossibleLine> lines;
};

/// A way through the graph.
struct Fit {
  std::vector<std::uint32_t> stops;  ///< the ends of its lines, ascending, the last stop last
  std::int64_t demerits = 0;
};

/// The way with the fewest demerits of those with at most `most_lines` lines, by default as few as
/// can be. Nothing when no way leads to the end, or none in so few lines. Of equals the one found
/// first, always the same.
std::optional<Fit> total_fit(const LineGraph& graph, std::optional<std::uint32_t> most_lines = {});

}  // namespace chalkleaf::type
