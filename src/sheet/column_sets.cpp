#include "sheet/column_sets.h"

#include <algorithm>

#include "sheet/columns.h"

namespace chalkleaf::sheet {

using page::RowBlock;
using page::Track;

namespace {

constexpr std::size_t kMostInColumns = 16;  // entries in one set of columns
constexpr std::int64_t kCut = 400;          // each further set of columns

}  // namespace

std::vector<page::Section> ColumnSets::write_twice(const plan::Session& session,
                                                   std::string_view kind_label,
                                                   const Write& write) {
  ways_ = b_.choose(write(), session, kind_label);
  measured_ = true;
  b_.drop_from(Builder::kRoot + 1);
  return write();
}

Length ColumnSets::column(std::size_t columns, const ColumnStyle& style) const {
  const auto n = static_cast<std::int64_t>(columns);
  return (b_.width() - style.between * (n - 1)) / n;
}

void ColumnSets::add(const std::vector<Span>& origins, const ColumnStyle& style,
                     std::size_t section_number, page::Section& section, const Make& make) {
  if (origins.empty()) return;
  if (!measured_) {
    Offered offered{section_number, {}, {}};
    for (std::size_t i = 0; i < origins.size(); ++i) {
      Heights heights{};
      for (std::size_t columns = 1; columns <= style.most; ++columns) {
        const NodeId first = b_.next_node();
        const Length width = column(columns, style);
        heights[columns - 1] = b_.height_of(make(i, width), width);
        b_.drop_from(first);
      }
      offered.heights.push_back(heights);
    }
    offer(origins, style, std::move(offered), section);
    return;
  }
  const Offered& offered = offered_.at(next_++);
  std::size_t entry = 0;
  for (const Together& set : chosen(offered)) {
    std::vector<Length> heights;
    for (std::size_t i = entry; i < entry + set.entries; ++i)
      heights.push_back(offered.heights[i][set.columns - 1]);
    const Length width = column(set.columns, style);
    page::Slab slab{{}, style.space_before};
    slab.origin = origins[entry];
    RowBlock row;
    row.gap = style.between;
    for (const std::size_t count : balance(heights, set.columns, style.gap).columns) {
      std::vector<Block> made;
      for (std::size_t i = 0; i < count; ++i) made.push_back(make(entry++, width));
      row.cells.push_back({Track::fixed(width), column_of(std::move(made), width, style.gap)});
    }
    slab.block = {std::move(row)};
    section.slabs.push_back(std::move(slab));
  }
}

// From each entry on, all ways to set it and those behind it together.
void ColumnSets::offer(const std::vector<Span>& origins, const ColumnStyle& style, Offered offered,
                       page::Section& section) {
  const std::size_t count = origins.size();
  for (std::size_t i = 0; i < count; ++i) {
    page::Slab slab{Builder::space(offered.heights[i][0]), style.space_before};
    slab.origin = origins[i];
    slab.dislike = style.most > 1 && count > 1 ? style.alone : 0;
    std::vector<Together> ways = {{1, 1}};
    for (std::size_t columns = 2; columns <= style.most; ++columns) {
      std::vector<Length> heights;
      for (std::size_t j = i; j < std::min(count, i + kMostInColumns); ++j) {
        heights.push_back(offered.heights[j][columns - 1]);
        if (heights.size() < columns) continue;  // no column stays empty
        page::Alternative other;
        other.covers = heights.size();
        other.block = Builder::space(balance(heights, columns, style.gap).height);
        other.dislike = kCut + (columns == 3 ? style.three : 0);
        ways.push_back({heights.size(), columns});
        slab.alternatives.push_back(std::move(other));
      }
    }
    offered.slabs.emplace_back(section.slabs.size(), std::move(ways));
    section.slabs.push_back(std::move(slab));
  }
  offered_.push_back(std::move(offered));
}

std::vector<ColumnSets::Together> ColumnSets::chosen(const Offered& offered) const {
  std::vector<Together> out;
  for (const page::ChosenWay& one : ways_) {
    if (one.section != offered.section) continue;
    for (const auto& [slab, ways] : offered.slabs) {
      if (slab == one.slab) out.push_back(ways.at(one.way));
    }
  }
  return out;
}

Block ColumnSets::column_of(std::vector<Block> entries, Length width, Length gap) const {
  std::vector<Block> lines;
  for (Block& entry : entries) {
    if (!lines.empty()) {
      const Length line = b_.look().hair_width;
      lines.push_back(Builder::space(gap / 2 - line));
      lines.push_back(b_.rule(width, line, Use::kHair));
      lines.push_back(Builder::space(gap - gap / 2));
    }
    lines.push_back(std::move(entry));
  }
  return Builder::stack(std::move(lines));
}

}  // namespace chalkleaf::sheet
