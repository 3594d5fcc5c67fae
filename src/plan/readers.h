// Who a text is for: `Coach: …` is printed on the coach's card alone, `Family: …` on the home sheet
// alone.
//
// A label counts however it is set off — a colon, a dash, brackets, a line of its own — because a
// coach's note that reaches a family is worse than a family's note they do not get. What only looks
// like one is printed and warned of by `reason`. Which labels people use is common practice, no
// source. Tested by tests/plan/readers_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// `Coach:`, `For families –`, `(coach)`, `Note for the coach:` at the begin of a text.
struct ReaderLabel {
  Note::For reader = Note::For::kAll;
  std::size_t mark = 0;   ///< where the mark that sets it off stands in the text
  std::size_t words = 0;  ///< where the text behind that mark begins
};
std::optional<ReaderLabel> reader_label(std::string_view text);
/// The same, where a title is nothing but a label: `### Coach`, `## Notes for parents`.
std::optional<Note::For> reader_of_title(std::string_view title);

/// A stretch of a paragraph and who it is for, without its label.
struct ForReader {
  Note::For reader = Note::For::kAll;
  source::Text text;
};
/// A paragraph parted where a line begins with a label. A label with nothing behind it stays in its
/// text, so that it does not vanish.
std::vector<ForReader> parted_by_reader(const source::Text& paragraph);

}  // namespace chalkleaf::plan
