#include "sheet/card_columns.h"

#include <algorithm>

namespace chalkleaf::sheet {
namespace {

constexpr int kGymnastsUnknown = 8;  // columns when nobody says how many come
constexpr int kMostColumns = 100;    // a bound against numbers that no reader should let through

}  // namespace

GymnastColumns::GymnastColumns(const plan::Session& session, Builder& builder) : b_(builder) {
  count_ = std::clamp(session.gymnast_count().value_or(kGymnastsUnknown), 1, kMostColumns);
  // A card set larger keeps its boxes as the theme has them, if that saves a line of boxes.
  side_ = b_.look().tick_box;
  const Length plain = b_.context().theme.card.tick_box;
  if (lines(plain) < lines(side_)) side_ = plain;
  // A box is never narrower than the number above it.
  side_ = std::max(side_, b_.text_width(TextRole::kColumn, std::to_string(count_)));
  const int lines_needed = lines(side_);
  per_line_ = (count_ + lines_needed - 1) / lines_needed;
  width_ = (side_ + gap()) * per_line_ - gap();
}

// Boxes may take two fifths of the width.
int GymnastColumns::lines(Length side) const {
  const Length room = b_.width() * 2 / 5 + side / 4;
  const auto most = static_cast<int>(room.in_millipoints() / (side * 5 / 4).in_millipoints());
  return (count_ + std::max(1, most) - 1) / std::max(1, most);
}

std::vector<NodeId> GymnastColumns::cells(NodeId row, Role role) const {
  std::vector<NodeId> out;
  for (int i = 0; i < count_; ++i) {
    out.push_back(b_.node(row, role));
    if (role == Role::kHeaderCell) b_.at(out.back()).scope = page::HeaderScope::kColumn;
  }
  return out;
}

// Lines of cells as wide as a box, filled by `cell(i)` for gymnast i from 0.
template <class MakeCell>
Block GymnastColumns::grid(Length line_gap, MakeCell cell) const {
  std::vector<Block> out;
  for (int from = 0; from < count_; from += per_line_) {
    page::RowBlock line;
    line.gap = gap();
    for (int i = from; i < std::min(from + per_line_, count_); ++i)
      line.cells.push_back({page::Track::fixed(side_), cell(static_cast<std::size_t>(i))});
    out.push_back({std::move(line)});
  }
  return Builder::stack(std::move(out), line_gap);
}

Block GymnastColumns::numbers(const std::vector<Owner>& owners) const {
  return grid({}, [&](std::size_t i) {
    return b_.text(TextRole::kColumn, std::to_string(i + 1), owners[i], {}, page::Align::kCentre);
  });
}

Block GymnastColumns::boxes(const std::vector<NodeId>& cells, const plan::Drill& drill) const {
  const bool write_in = !drill.record.empty();
  std::vector<NodeId> forms;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string n = std::to_string(i + 1);
    const Labels& labels = b_.labels();
    forms.push_back(
        write_in
            ? b_.field_node(cells[i], labels.say("field-gymnast", {{"n", n},
                                                                   {"drill", drill.name.text},
                                                                   {"unit", drill.record.text}}))
            : b_.tick_node(cells[i],
                           labels.say("tick-gymnast", {{"n", n}, {"drill", drill.name.text}})));
  }
  // A figure wants more height than a tick.
  const Length height = write_in ? side_.scaled(1.6) : side_;
  return grid(gap(), [&](std::size_t i) { return b_.tick_box(side_, forms[i], height); });
}

}  // namespace chalkleaf::sheet
