// What a part of a home sheet holds, in the order of the plan. For both layouts of it
// (home_sheet.cpp, home_compact.cpp), which set the drills each in its way. Inside the room. Tested
// by tests/sheet/home_sheet_test.cpp and home_compact_test.cpp.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "sheet/builder.h"
#include "sheet/home_panel.h"

namespace chalkleaf::sheet {

/// A drill that waits for those it stands beside.
struct WaitingDrill {
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

/// Adds the steps of a part to its section. `drills(waiting)` sets the drills that follow one
/// another, `circuit(one)` a circuit; kit and notes stand between them. `number` counts the drills.
template <class Drills, class Circuit>
void add_home_steps(const reason::PartTime& part, Builder& b, HomePanels& panels, int& number,
                    page::Section& section, Drills drills, Circuit circuit) {
  std::vector<WaitingDrill> waiting;
  const auto flush = [&] {
    drills(waiting);
    waiting.clear();
  };
  std::size_t next_drill = 0;
  const std::vector<plan::Step>& steps = part.part->steps;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (const auto* drill = std::get_if<plan::Drill>(&steps[i])) {
      const reason::DrillTime& time = part.drills.at(next_drill++);
      ++number;
      if (!drill->circuit) {
        waiting.push_back({drill, &time, number});
        continue;
      }
      flush();
      circuit(WaitingDrill{drill, &time, number});
    } else if (const auto* move = std::get_if<plan::KitMove>(&steps[i])) {
      flush();
      page::Slab slab{panels.kit_move(*move), panels.gap()};
      slab.origin = move->span;
      // Kit is fetched for what comes next.
      slab.keep_with_next = move->way == plan::KitMove::Way::kPickUp && i + 1 < steps.size();
      section.slabs.push_back(std::move(slab));
    } else if (const auto run = note_run(steps, i); !run.empty()) {
      if (b.is_for_reader(*run.front())) {
        flush();
        add_together(b.note_pieces(Builder::kRoot, run, b.width()), run.front()->words.span,
                     panels.gap(), section);
        // It stays with the first thing it speaks of.
        section.slabs.back().keep_with_next = i + run.size() < steps.size();
      }
      i += run.size() - 1;
    }
  }
  flush();
  section.slabs.back().keep_with_next = false;
}

}  // namespace chalkleaf::sheet
