#include "plan/table_row.h"

#include <utility>

namespace chalkleaf::plan {

Note table_row(const std::vector<std::string>& cells, RowKind kind, const Span& span) {
  Note out;
  out.kind = Note::Kind::kTableRow;
  out.words.span = span;
  out.table_head = kind == RowKind::kHead;
  for (const std::string& cell : cells) {
    Words words;
    words.text = cell;
    words.span = span;
    out.words.text += (out.words.text.empty() || cell.empty() ? "" : " ") + cell;
    out.cells.push_back(std::move(words));
  }
  return out;
}

}  // namespace chalkleaf::plan
