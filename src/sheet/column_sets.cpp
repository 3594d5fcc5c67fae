#include "sheet/column_sets.h"

#include <algorithm>

namespace chalkleaf::sheet {

using page::RowBlock;
using page::Track;

namespace {

constexpr std::size_t kMostInColumns = 30;  // items in one set of columns
constexpr std::size_t kFew = 4;             // sets of so many are offered however uneven they are
constexpr std::int64_t kMostUneven = 25;    // larger ones when they leave a hundredth of so many
constexpr std::int64_t kCut = 900;          // each further set of columns

constexpr std::int64_t kParted = 2500;  // the same, where it parts a circuit

// What a set that ends there is disliked for it.
std::int64_t cut(const std::vector<FlowItem>& items, std::size_t end) {
  return kCut + (end < items.size() && items[end].goes_on ? kParted : 0);
}

bool is_head(const FlowItem& item) { return item.kind == FlowItem::Kind::kHead; }

Length gap_between(const FlowItem& above, const FlowItem& below, const ColumnStyle& style) {
  if (is_head(below)) return style.above_head;
  if (is_head(above)) return style.below_head;
  return above.kind == FlowItem::Kind::kEntry && below.kind == FlowItem::Kind::kEntry
             ? style.gap
             : style.gap / 2;
}

// A hairline stands below what is followed by a drill that is none of its columns.
bool has_rule_below(const std::vector<FlowItem>& items, std::size_t next) {
  return next < items.size() && items[next - 1].kind == FlowItem::Kind::kEntry &&
         !is_head(items[next]) && !items[next - 1].keep_with_next;
}

Length space_before(const std::vector<FlowItem>& items, std::size_t i, const ColumnStyle& style) {
  if (is_head(items[i])) return style.above_head;
  if (i > 0 && is_head(items[i - 1])) return style.below_head;
  return style.gap - style.gap / 2;
}

void add_ready(const FlowItem& item, page::Section& section) {
  for (page::Slab& slab : item.slabs()) {
    slab.continuation = item.continuation;
    section.slabs.push_back(std::move(slab));
  }
}

std::vector<Standing> standing(const std::vector<FlowItem>& items, std::size_t from, std::size_t to,
                               const std::vector<std::array<Length, kMostInRow>>& heights,
                               std::size_t columns, const ColumnStyle& style) {
  std::vector<Standing> out;
  for (std::size_t i = from; i < to; ++i) {
    out.push_back({heights[i][columns - 1],
                   i > from ? gap_between(items[i - 1], items[i], style) : Length(),
                   items[i].keep_with_next});
  }
  return out;
}

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

void ColumnSets::add(const std::vector<FlowItem>& items, const ColumnStyle& style,
                     std::size_t section_number, page::Section& section) {
  if (measured_) return build(items, style, offered_.at(next_++), section);
  Offered offered{section_number, {}, {}};
  measure(items, style, offered);
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].slabs) {
      add_ready(items[i], section);
    } else {
      offer(items, i, style, offered, section);
    }
  }
  offered_.push_back(std::move(offered));
}

// The nodes that are made stay until all is measured: an item may hang its own below those of one
// before it.
void ColumnSets::measure(const std::vector<FlowItem>& items, const ColumnStyle& style,
                         Offered& offered) {
  for (const FlowItem& item : items) {
    Heights heights{};
    for (std::size_t n = 1; item.make && n <= std::min(style.most, item.most); ++n) {
      const Length width = column(n, style);
      heights[n - 1] = b_.height_of(item.make(width), width);
    }
    offered.heights.push_back(heights);
  }
}

// From this item on, the ways to set it and those behind it together.
void ColumnSets::offer(const std::vector<FlowItem>& items, std::size_t first,
                       const ColumnStyle& style, Offered& offered, page::Section& section) const {
  const Length rule = style.gap / 2;
  const auto closing = [&](std::size_t end) {
    return has_rule_below(items, end) ? rule : Length();
  };
  const FlowItem& item = items[first];
  page::Slab slab{Builder::space(offered.heights[first][0] + closing(first + 1)),
                  space_before(items, first, style), item.keep_with_next};
  slab.origin = item.origin;
  slab.continuation = item.continuation;
  if (item.kind == FlowItem::Kind::kEntry && style.most > 1 && item.most > 1)
    slab.dislike = style.alone;
  if (first + 1 < items.size() && items[first + 1].goes_on && !item.keep_with_next)
    slab.dislike += kParted;
  std::vector<Together> ways = {{1, 1}};
  for (std::size_t n = 2; n <= std::min(style.most, item.most); ++n) {
    const auto columns = static_cast<std::int64_t>(n);
    Length least;
    Length filled;
    std::int64_t heads = 0;
    std::int64_t three = 0;
    for (std::size_t end = first + 1; end <= std::min(items.size(), first + kMostInColumns);
         ++end) {
      const FlowItem& last = items[end - 1];
      if (!last.make || last.most < n) break;
      heads += is_head(last) ? 1 : 0;
      three = std::max(three, last.three);
      filled += offered.heights[end - 1][n - 1];
      if (end > first + 1) filled += gap_between(items[end - 2], last, style);
      if (end - first < n || last.keep_with_next) continue;  // no column stays empty
      const Balanced made =
          balance(standing(items, first, end, offered.heights, n, style), n, least);
      least = made.height;
      const bool ends_here = end == items.size() || is_head(items[end]) || !items[end].make;
      const Length empty = made.height * columns - filled;
      const bool even = empty * 100 <= made.height * (columns * kMostUneven);
      if (made.columns.size() < n || (!even && !ends_here && end - first > kFew)) continue;
      page::Alternative other;
      other.covers = end - first;
      other.block = Builder::space(made.height + closing(end));
      other.dislike = cut(items, end) + (n == 3 ? three : 0) + heads * style.head;
      ways.push_back({end - first, n});
      slab.alternatives.push_back(std::move(other));
    }
  }
  offered.slabs.emplace_back(section.slabs.size(), std::move(ways));
  section.slabs.push_back(std::move(slab));
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

void ColumnSets::build(const std::vector<FlowItem>& items, const ColumnStyle& style,
                       const Offered& offered, page::Section& section) {
  const std::vector<Together> sets = chosen(offered);
  std::size_t set = 0;
  for (std::size_t i = 0; i < items.size();) {
    if (items[i].slabs) {
      add_ready(items[i], section);
      ++i;
      continue;
    }
    const Together& together = sets.at(set++);
    const std::size_t end = i + together.items;
    const Length width = column(together.columns, style);
    page::Slab slab{{}, space_before(items, i, style), items[end - 1].keep_with_next};
    slab.origin = items[i].origin;
    slab.continuation = items[i].continuation;
    RowBlock row;
    row.gap = style.between;
    const auto all = standing(items, i, end, offered.heights, together.columns, style);
    std::size_t at = i;
    for (const std::size_t count : balance(all, together.columns).columns) {
      Length below;
      for (std::size_t k = at; k < at + count; ++k) {
        if (k > at) below += all[k - i].above;
        if (items[k].outline) slab.inner.push_back({below, *items[k].outline});
        below += all[k - i].height;
      }
      row.cells.push_back({Track::fixed(width), column_of(items, at, at + count, width, style)});
      at += count;
    }
    slab.block = closed({std::move(row)}, has_rule_below(items, end), style);
    section.slabs.push_back(std::move(slab));
    i = end;
  }
}

Block ColumnSets::column_of(const std::vector<FlowItem>& items, std::size_t from, std::size_t to,
                            Length width, const ColumnStyle& style) const {
  std::vector<Block> lines;
  for (std::size_t i = from; i < to; ++i) {
    if (i > from) {
      const Length gap = gap_between(items[i - 1], items[i], style);
      const bool ruled = items[i - 1].kind == FlowItem::Kind::kEntry &&
                         items[i].kind == FlowItem::Kind::kEntry && !items[i - 1].keep_with_next;
      if (ruled) {
        const Length line = b_.look().hair_width;
        lines.push_back(Builder::space(gap / 2 - line));
        lines.push_back(b_.rule(width, line, Use::kHair));
        lines.push_back(Builder::space(gap - gap / 2));
      } else {
        lines.push_back(Builder::space(gap));
      }
    }
    lines.push_back(items[i].make(width));
  }
  return Builder::stack(std::move(lines));
}

// With the hairline between it and what is set below it.
Block ColumnSets::closed(Block set, bool with_rule, const ColumnStyle& style) const {
  if (!with_rule) return set;
  const Length line = b_.look().hair_width;
  std::vector<Block> lines;
  lines.push_back(std::move(set));
  lines.push_back(Builder::space(style.gap / 2 - line));
  lines.push_back(b_.rule(b_.width(), line, Use::kHair));
  return Builder::stack(std::move(lines));
}

}  // namespace chalkleaf::sheet
