// Drawings of figures in a theme's colours, made once for all sheets of a run.
//
// Tested by tests/sheet/figure_block_test.cpp.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <utility>

#include "figure/scene.h"
#include "page/display_list.h"

namespace chalkleaf::sheet {

/// The drawing as paths, 100 points a metre: about the size it is printed in.
std::shared_ptr<const page::Artwork> artwork_of(const figure::Scene& scene,
                                                const figure::Palette& inks);

/// Remembers artworks. One for a run; safe to share between threads.
class FigureArt {
 public:
  /// `scene` must outlive this: it is known again by its address, as figure::Drawings keeps it.
  std::shared_ptr<const page::Artwork> of(const figure::Scene& scene, const figure::Palette& inks);

 private:
  std::mutex mutex_;
  std::map<std::pair<const figure::Scene*, figure::Palette>, std::shared_ptr<const page::Artwork>>
      made_;
};

}  // namespace chalkleaf::sheet
