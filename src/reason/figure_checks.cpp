// Figures that are named but not there. Tested by examples/mistakes/unknown-figure and
// tests/cases/figure-*.
#include <fmt/format.h>

#include "reason/checks.h"

namespace chalkleaf::reason {
namespace {

void check_name(const plan::Words& name, const FigureNames& figures, Diagnostics& diagnostics) {
  if (name.empty() || figures.has(name.text)) return;
  const auto meant = figures.closest(name.text);
  diagnostics.warning("unknown-figure", name.span,
                      fmt::format("there is no figure ‘{}’, so nothing is drawn", name.text),
                      meant ? fmt::format("did you mean ‘{}’?", *meant)
                            : "‘chalkleaf figures’ shows all there are; describe your own in the "
                              "club's folder ‘figures’");
}

}  // namespace

void check_figures(const plan::Session& session, const FigureNames& figures,
                   Diagnostics& diagnostics) {
  for (const plan::Part& part : session.parts) {
    for (const plan::Drill* drill : plan::all_drills_of(part)) {
      for (const plan::Words& name : drill->figures) check_name(name, figures, diagnostics);
      check_name(drill->figure_easier, figures, diagnostics);
      check_name(drill->figure_harder, figures, diagnostics);
    }
  }
}

void check_figures(const plan::LibraryDrill& drill, const FigureNames& figures,
                   Diagnostics& diagnostics) {
  for (const plan::Words* name : {&drill.figure, &drill.figure_easier, &drill.figure_harder}) {
    check_name(*name, figures, diagnostics);
  }
}

}  // namespace chalkleaf::reason
