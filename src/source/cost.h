// Texts that would take a Markdown parser far longer, or far more memory, than their size.
//
// cmark-gfm looks back over every mark that is still open whenever one might close, over every open
// list and quote at each line, over a whole paragraph at each line that could be a table's second,
// and over the rest of one at each `<?`: half a megabyte made of such marks takes minutes, and no
// parser of C can be interrupted. So those looks are counted before it is asked, in one pass over
// the text: never fewer than there will be, and few for whatever a person writes, since a pair
// such as `*word*` or `[word]` closes at once. How many there are is the whole test; what a plan
// means does not matter here. Tested by tests/source/cost_test.cpp; tests/costly.py tries patterns.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace chalkleaf::source {

/// Looks back that are allowed a text, each of 1 to 4 nanoseconds (measured: cmark-gfm 0.29 on one
/// core of a slow machine, shared).
inline constexpr std::size_t kMostLooks = 100'000'000;

/// Lines with text that are read, lists and quotes inside others counted as further ones, and marks
/// of emphasis, links and code: each costs 1 to 3 KB of memory (measured) before a plan is
/// understood.
inline constexpr std::size_t kMostLines = 36'000;
inline constexpr std::size_t kMostMarks = 150'000;

/// Why a text is not given to the parser.
struct CostlyShape {
  std::size_t at = 0;  ///< offset of the mark where it became too much
  std::string what;    ///< a clause about the text: `it opens …`
  std::string hint;    ///< what to change
};

/// cmark-gfm fills short rows of a table up with empty cells: one wide row above a million short
/// ones would fill the memory. False: the text could do so, and is to be read without tables.
bool tables_are_bounded(std::string_view text);

/// What makes the text too costly to parse; nothing for any plan a person would write.
std::optional<CostlyShape> costly_shape(std::string_view text, std::size_t most = kMostLooks);

}  // namespace chalkleaf::source
