// A table of the coach's, kept as a table.
//
// Columns are as wide as they need to be; where that is too much, what is left over the longest
// words is shared out by how much each column wants (the idea of CSS 2.1, 17.5.2.2, automatic
// layout). The head is bold over a rule, hairlines part the rows. Tested by
// tests/sheet/notes_test.cpp.
#include "sheet/note_table.h"

#include <algorithm>

namespace chalkleaf::sheet {
namespace {

constexpr TextRole kCellRole = TextRole::kBoxText;

class TableWriter {
 public:
  TableWriter(std::span<const plan::Note* const> rows, Length room, Builder& builder)
      : rows_(rows), b_(builder), gap_(builder.look().gap * 3 / 2) {
    for (const plan::Note* row : rows) columns_ = std::max(columns_, row->cells.size());
    const bool whole = std::all_of(rows.begin(), rows.end(),
                                   [](const plan::Note* row) { return !row->cells.empty(); });
    has_clock_ = has_clock();
    if (whole) measure(room - gap_ * static_cast<std::int64_t>(columns_ - 1));
  }

  bool fits() const { return !widths_.empty(); }

  std::vector<Block> write(NodeId parent) {
    const NodeId table = b_.node(parent, Role::kTable);
    // A head without rows below it is a row of header cells: a THead asks for a TBody.
    const bool has_head = rows_.front()->table_head && rows_.size() > 1;
    std::vector<Block> out;
    std::size_t next = 0;
    if (has_head) out.push_back(row(b_.node(table, Role::kTableHead), *rows_[next++]));
    const NodeId body = b_.node(table, Role::kTableBody);
    for (; next < rows_.size(); ++next) {
      Block line = row(body, *rows_[next]);
      if (has_head && next == 1) {
        std::vector<Block> both;
        both.push_back(std::move(out.back()));
        both.push_back(std::move(line));
        out.back() = Builder::stack(std::move(both));
      } else {
        out.push_back(std::move(line));
      }
    }
    return out;
  }

 private:
  // A clock down its side, and who is where in the other columns: read across a hall, so these
  // stand wide and alike.
  bool has_clock() const {
    constexpr std::size_t kLongestName = 24;
    std::size_t clocks = 0;
    for (const plan::Note* row : rows_) {
      if (row->table_head || row->cells.empty()) continue;
      const std::string& first = row->cells.front().text;
      const bool digit = !first.empty() && first[0] >= '0' && first[0] <= '9';
      clocks += digit && first.find_first_of(".:") != std::string::npos ? 1 : 0;
      for (std::size_t i = 1; i < row->cells.size(); ++i) {
        if (!is_across(*row) && row->cells[i].text.size() > kLongestName) return false;
      }
    }
    return columns_ > 2 && clocks > 1 && clocks + 2 >= rows_.size();
  }
  // One thing for all columns: a break.
  bool is_across(const plan::Note& row) const {
    if (row.table_head || columns_ < 3) return false;
    std::size_t filled = 0;
    for (std::size_t i = 1; i < row.cells.size(); ++i) filled += row.cells[i].empty() ? 0 : 1;
    return filled == 1 && row.cells.size() > 1 && !row.cells[1].empty();
  }

  std::vector<type::Inline> cell_pieces(const plan::Note& row, std::size_t column) const {
    if (column >= row.cells.size() || row.cells[column].empty()) return {};
    plan::Words words = row.cells[column];
    const bool who = has_clock_ && column > 0 && !is_across(row);
    if (row.table_head || who) words.emphasis = {{0, words.text.size(), true}};
    return b_.pieces(kCellRole, words);
  }

  void measure(Length room) {
    std::vector<Length> wanted(columns_);
    std::vector<Length> least(columns_);
    for (const plan::Note* row : rows_) {
      for (std::size_t i = 0; i < row->cells.size(); ++i) {
        if (has_clock_ && i > 0 && is_across(*row)) continue;
        const std::vector<type::Inline> pieces = cell_pieces(*row, i);
        if (pieces.empty()) continue;
        wanted[i] = std::max(wanted[i], b_.width_of(pieces));
        least[i] = std::max(least[i], b_.longest_word(pieces));
      }
    }
    Length wanted_sum;
    Length least_sum;
    for (std::size_t i = 0; i < columns_; ++i) {
      wanted_sum += wanted[i];
      least_sum += least[i];
    }
    if (has_clock_ && wanted_sum <= room) {
      // As wide as there is room for, but not wider than is read as one line.
      const auto names = static_cast<std::int64_t>(columns_ - 1);
      const Length widest = *std::max_element(wanted.begin() + 1, wanted.end());
      const Length share =
          std::max(widest, std::min((room - wanted[0]) / names, widest * 3 + gap_ * 3));
      const bool alike = wanted[0] + share * names <= room;
      for (std::size_t i = 1; alike && i < columns_; ++i) wanted[i] = share;
      widths_ = std::move(wanted);
    } else if (wanted_sum <= room) {
      widths_ = std::move(wanted);
    } else if (least_sum <= room) {
      const std::int64_t over = (wanted_sum - least_sum).in_millipoints();
      for (std::size_t i = 0; i < columns_; ++i) {
        const Length share =
            over > 0 ? (room - least_sum) * (wanted[i] - least[i]).in_millipoints() / over
                     : Length();
        widths_.push_back(least[i] + share);
      }
    }
  }

  Length table_width() const {
    Length sum = gap_ * static_cast<std::int64_t>(columns_ - 1);
    for (const Length width : widths_) sum += width;
    return sum;
  }

  Block row(NodeId group, const plan::Note& note) {
    const NodeId node = b_.node(group, Role::kTableRow);
    page::RowBlock cells;
    cells.gap = gap_;
    cells.align = page::RowAlign::kBaseline;
    const bool across = has_clock_ && is_across(note);
    for (std::size_t i = 0; i < columns_; ++i) {
      if (across && i > 1) break;
      const NodeId cell = b_.node(node, note.table_head ? Role::kHeaderCell : Role::kDataCell);
      if (note.table_head) b_.at(cell).scope = page::HeaderScope::kColumn;
      std::vector<type::Inline> pieces = cell_pieces(note, i);
      Block content = Builder::space({});
      if (!pieces.empty()) content = b_.paragraph(std::move(pieces), kCellRole, Owner::of(cell));
      Length width = widths_[i];
      if (across && i == 1) {
        b_.at(cell).column_span = static_cast<int>(columns_) - 1;
        width = table_width() - widths_[0] - gap_;
      }
      cells.cells.push_back({page::Track::fixed(width), std::move(content)});
    }
    page::BoxBlock box;
    if (across) box.fill = b_.colour(Use::kTint);
    const Length pad = b_.look().row_padding / 3;
    box.padding = {pad, Length(), pad, Length()};
    box.content.push_back({std::move(cells)});
    std::vector<Block> lines;
    lines.push_back({std::move(box)});
    // The last row has no line: what comes after the table brings its own, or its own space.
    if (note.table_head) {
      lines.push_back(b_.rule(table_width(), b_.look().line_width, Use::kInk));
    } else if (&note != rows_.back()) {
      lines.push_back(b_.rule(table_width(), b_.look().hair_width, Use::kHair));
    }
    return Builder::stack(std::move(lines));
  }

  std::span<const plan::Note* const> rows_;
  Builder& b_;
  Length gap_;
  bool has_clock_ = false;
  std::size_t columns_ = 0;
  std::vector<Length> widths_;
};

}  // namespace

std::vector<Block> note_table(NodeId parent, std::span<const plan::Note* const> rows, Length room,
                              Builder& builder) {
  TableWriter writer(rows, room, builder);
  return writer.fits() ? writer.write(parent) : std::vector<Block>{};
}

}  // namespace chalkleaf::sheet
