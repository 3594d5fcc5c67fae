// Figures on paper by themselves: one large on a page, or a whole catalogue to look over.
//
// Tested by tests/figure_commands.py.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "figure/scene.h"
#include "page/display_list.h"
#include "sheet/sheets.h"

namespace chalkleaf::sheet {

/// A figure, and what there is to say of it.
struct ShownFigure {
  std::string name;
  std::string family;
  std::shared_ptr<const figure::Scene> scene;   ///< the whole of it
  std::shared_ptr<const figure::Scene> glance;  ///< as on a card
  std::vector<std::string> findings = {};       ///< what is wrong with it, a sentence each
};

/// Every figure on a page of its own, as large as the paper allows, its words below.
page::DisplayList figure_pages(const std::vector<ShownFigure>& figures, const Context& context,
                               type::Typesetter& typesetter, Diagnostics& diagnostics);

/// All figures, family by family, each at the size of a home sheet and of a card, with its name,
/// its words and what is wrong with it.
page::DisplayList contact_sheet(const std::vector<ShownFigure>& figures, const Context& context,
                                type::Typesetter& typesetter, Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
