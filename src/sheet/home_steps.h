// What both layouts of a home sheet (home_sheet.cpp, home_compact.cpp) have in common. Inside the
// room. Tested by tests/sheet/home_sheet_test.cpp and home_compact_test.cpp.
#pragma once

#include <utility>
#include <vector>

#include "sheet/builder.h"
#include "sheet/home_panel.h"

namespace chalkleaf::sheet {

/// A drill and its number on the sheet.
struct NumberedDrill {
  const plan::Drill* drill = nullptr;
  const reason::DrillTime* time = nullptr;
  int number = 0;
};

/// Pieces of one thing: on one page where it holds them, else the first two and the last two.
inline void add_together(std::vector<page::Block> pieces, Span origin, Length gap,
                         page::Section& section) {
  constexpr std::size_t kMostTogether = 12;
  const std::size_t count = pieces.size();
  for (std::size_t i = 0; i < count; ++i) {
    page::Slab slab{std::move(pieces[i]), i == 0 ? gap : Length()};
    slab.keep_with_next = i + 1 < count && (count <= kMostTogether || i == 0 || i + 2 == count);
    slab.origin = origin;
    section.slabs.push_back(std::move(slab));
  }
}

}  // namespace chalkleaf::sheet
