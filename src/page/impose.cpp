// See the header.
#include "page/impose.h"

#include <algorithm>
#include <utility>

#include "page/layout.h"
#include "page/shapes.h"

namespace chalkleaf::page {
namespace {

// The marks lie at the paper's edge, clear of the text of pages with margins.
constexpr double kMarkLength = 5;

class Imposer {
 public:
  Imposer(DisplayList list, const ImposeStyle& style)
      : list_(std::move(list)), style_(style), places_(list_.pages.size()) {}

  DisplayList run(const std::vector<Halves>& order) {
    std::vector<Page> sheets;
    for (const Halves& halves : order) {
      sheets.push_back({style_.sheet, {}});
      place(halves.first, 0, sheets);
      place(halves.second, 1, sheets);
      add_marks(sheets.back());
    }
    list_.pages = std::move(sheets);
    move_outline();
    return std::move(list_);
  }

 private:
  /// Where a page stands the first time it is set.
  struct Place {
    std::size_t side = 0;
    Length y;
  };

  bool beside() const { return style_.sheet.width > style_.sheet.height; }

  Point corner(Size page, int half) const {
    const Size& sheet = style_.sheet;
    if (beside()) {
      const Length middle = sheet.width / 2;
      return {half == 0 ? middle - page.width : middle, (sheet.height - page.height) / 2};
    }
    const Length middle = sheet.height / 2;
    return {(sheet.width - page.width) / 2, half == 0 ? middle - page.height : middle};
  }

  void place(std::optional<std::size_t> index, int half, std::vector<Page>& sheets) {
    if (!index || *index >= list_.pages.size()) return;
    const Page& page = list_.pages[*index];
    const Point at = corner(page.size, half);
    const bool again = places_[*index].has_value();
    if (!again) places_[*index] = Place{sheets.size() - 1, at.y};
    for (const Item& item : page.items) {
      Item moved = item;
      move_by(moved, at.x, at.y);
      Owner& owner = owner_of(moved);
      if (again && owner.node) owner = Owner::none(Artifact::kLayout);
      sheets.back().items.push_back(std::move(moved));
    }
  }

  void add_marks(Page& sheet) const {
    Stroke line = style_.line;
    if (style_.middle == MiddleMark::kFold) line.dashes = {line.width * 3, line.width * 2};
    const Length end = beside() ? sheet.size.height : sheet.size.width;
    const Length middle = beside() ? sheet.size.width / 2 : sheet.size.height / 2;
    const auto at = [&](Length along) {
      return beside() ? Point{middle, along} : Point{along, middle};
    };
    for (const auto& [from, to] : {std::pair{Length(), Length::mm(kMarkLength)},
                                   std::pair{end, end - Length::mm(kMarkLength)}}) {
      sheet.items.emplace_back(PathItem{Owner::none(Artifact::kLayout),
                                        straight_line(at(from), at(to)), std::nullopt, line});
    }
  }

  void move_outline() {
    std::vector<OutlineEntry> kept;
    for (OutlineEntry& entry : list_.outline) {
      if (entry.page >= places_.size() || !places_[entry.page]) continue;
      const Place& place = *places_[entry.page];
      entry.page = place.side;
      entry.y += place.y;
      kept.push_back(std::move(entry));
    }
    list_.outline = std::move(kept);
  }

  DisplayList list_;
  const ImposeStyle& style_;
  std::vector<std::optional<Place>> places_;
};

}  // namespace

std::vector<Halves> booklet_order(std::size_t pages) {
  const std::size_t all = (pages + 3) / 4 * 4;
  const auto real = [&](std::size_t page) {
    return page < pages ? std::optional(page) : std::nullopt;
  };
  std::vector<Halves> out;
  for (std::size_t i = 0; i < all / 2; i += 2) {
    out.push_back({real(all - 1 - i), real(i)});
    out.push_back({real(i + 1), real(all - 2 - i)});
  }
  return out;
}

std::vector<Halves> two_up_order(std::size_t pages) {
  if (pages == 1) return twice_order(pages);
  std::vector<Halves> out;
  for (std::size_t i = 0; i < pages; i += 2)
    out.push_back({i, i + 1 < pages ? std::optional(i + 1) : std::nullopt});
  return out;
}

std::vector<Halves> twice_order(std::size_t pages) {
  std::vector<Halves> out;
  for (std::size_t i = 0; i < pages; ++i) out.push_back({i, i});
  return out;
}

DisplayList impose(DisplayList list, const std::vector<Halves>& order, const ImposeStyle& style) {
  return Imposer(std::move(list), style).run(order);
}

}  // namespace chalkleaf::page
