// Rows of columns that no bar marks: found by how many of them have as many cells.
#include <algorithm>

#include "base/text.h"
#include "draft/headed_table.h"
#include "draft/line_scores.h"
#include "draft/table_cells.h"
#include "draft/tables.h"

namespace chalkleaf::draft {
namespace {

/// Looks for columns.
class ColumnFinder {
 public:
  ColumnFinder(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines)
      : words_(words), source_(source), lines_(lines) {}

  void run() {
    find_commas();
    find_tabs();
    for (std::size_t i = 0; i < lines_.size();) {
      std::size_t end = i;
      while (end < lines_.size() && is_row(lines_[end])) ++end;
      if (end > i + 2) block(i, end);
      i = std::max(end, i + 1);
    }
  }

 private:
  // `Exercise, Sets, Reps, Rest`, and below it rows of as many cells.
  void find_commas() {
    for (std::size_t i = 0; i + 2 < lines_.size(); ++i) {
      const std::string_view head = lines_[i].line.words(source_).substr(0, kLongestLine);
      const auto cells = static_cast<std::size_t>(std::count(head.begin(), head.end(), ','));
      const Pieces pieces = pieces_of(head);
      const bool heads = cells > 1 && words_.within(Role::kSet, pieces, 0, pieces.size()) &&
                         (words_.within(Role::kRepetition, pieces, 0, pieces.size()) ||
                          words_.within(Role::kTimes, pieces, 0, pieces.size())) &&
                         head.find_first_of("0123456789") == std::string_view::npos;
      if (!heads) continue;
      std::size_t end = i;
      for (; end < lines_.size() && !lines_[end].line.blank; ++end) {
        const std::string_view row = lines_[end].line.words(source_);
        if (static_cast<std::size_t>(std::count(row.begin(), row.end(), ',')) + 1 < cells) break;
      }
      if (end < i + 3) continue;
      for (std::size_t row = i; row < end; ++row) cut(lines_[row], ',');
      i = end;
    }
  }

  static void cut(DraftLine& row, char mark) {
    row.line.cut = mark;
    row.line.table = true;
  }

  // A sheet of a table program, copied: a head, and rows whose cells may be empty.
  void find_tabs() {
    for (std::size_t i = 0; i + 2 < lines_.size(); ++i) {
      const std::size_t tabs = tabs_in(lines_[i]);
      if (tabs < 2 || lines_[i].line.table) continue;
      lines_[i].line.cut = '\t';
      const bool head = is_table_head(words_, source_, columns_of(source_, lines_[i].line));
      lines_[i].line.cut = 0;
      if (!head) continue;
      // Lines without tabs between the rows are headings of parts.
      std::size_t end = i + 1;
      std::size_t rows = 0;
      for (; end < lines_.size() && !lines_[end].line.blank && tabs_in(lines_[end]) <= tabs + 1;
           ++end)
        rows += tabs_in(lines_[end]) > 0 ? 1 : 0;
      if (rows < 2) continue;
      for (std::size_t row = i; row < end; ++row) {
        if (tabs_in(lines_[row]) == 0) continue;
        cut(lines_[row], '\t');
        lines_[row].line.head = i;
      }
      i = end - 1;
    }
  }
  std::size_t tabs_in(const DraftLine& one) const {
    const std::string_view row = row_of(source_, one.line);
    return static_cast<std::size_t>(std::count(row.begin(), row.end(), '\t'));
  }

  bool is_row(const DraftLine& one) const {
    const bool barred = bars_in(source_, one.line) > 1;
    const bool open = one.reading == DraftLine::Reading::kBlank && !one.line.blank &&
                      one.grid_of == nullptr && !one.line.table && !one.line.clock &&
                      (one.line.mark == Line::Mark::kNone || barred);
    constexpr std::uint32_t kLongest = 400;
    return open && one.line.end - one.line.begin < kLongest &&
           columns_of(source_, one.line).size() > 1;
  }
  // Nothing but an amount: `3 x 12, 30 sec rest`, `10 min`.
  bool is_amount(const Cell& cell) const {
    const SpokenLine read = read_drills(words_, text_of(source_, cell), {});
    return read.drills.empty() && !read.defaults.empty();
  }

  void block(std::size_t begin, std::size_t end) {
    std::size_t amounts = 0;
    for (std::size_t i = begin; i < end; ++i) {
      const std::vector<Cell> cells = columns_of(source_, lines_[i].line);
      amounts += std::any_of(cells.begin() + 1, cells.end(),
                             [&](const Cell& cell) { return is_amount(cell); })
                     ? 1
                     : 0;
    }
    if (amounts * 3 < (end - begin) * 2) return;
    for (std::size_t i = begin; i < end; ++i) lines_[i].line.table = true;
  }

  const Lexicon& words_;
  const Source& source_;
  std::vector<DraftLine>& lines_;
};

}  // namespace

void find_columns(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines) {
  ColumnFinder(words, source, lines).run();
}

}  // namespace chalkleaf::draft
