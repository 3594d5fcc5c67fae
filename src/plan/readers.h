// Who a text is for: `Coach: …` is printed on the coach's card alone, `Family: …` on the home sheet
// alone.
//
// Only a label with a colon counts: text wrongly kept from a sheet is worse than text on both.
// Which labels people use is common practice, no source. Tested by tests/plan/readers_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// `Coach:`, `For families:`, `Note for the coach:` at the begin of a text.
struct ReaderLabel {
  Note::For reader = Note::For::kAll;
  std::size_t colon = 0;  ///< where it stands in the text
};
std::optional<ReaderLabel> reader_label(std::string_view text);

/// A stretch of a paragraph and who it is for, without its label.
struct ForReader {
  Note::For reader = Note::For::kAll;
  source::Text text;
};
/// A paragraph parted where a line begins with a label. A label with nothing behind it stays in its
/// text, so that it does not vanish.
std::vector<ForReader> parted_by_reader(const source::Text& paragraph);

}  // namespace chalkleaf::plan
