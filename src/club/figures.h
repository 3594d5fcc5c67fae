// The figures a club can draw: those that ship with the program, and its own `figures/*.yaml`.
//
// Tested by tests/club/figures_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "base/files.h"
#include "club/resources.h"
#include "figure/catalogue.h"
#include "figure/read.h"
#include "reason/checks.h"
#include "sheet/figure_art.h"

namespace chalkleaf::club {

/// A club's catalogue and what is drawn from it.
struct Figures {
  std::unique_ptr<const figure::Catalogue> catalogue;
  std::unique_ptr<const figure::Drawings> drawings;
  std::unique_ptr<sheet::FigureArt> art;  ///< of those drawings
  std::vector<SourcePtr> sources;         ///< the files spans of figures point into
  /// Every figure described, those too that cannot be drawn, and where its name stands.
  std::vector<std::pair<std::string, Span>> described = {};
  std::size_t shipped = 0;  ///< so many of them, the first, ship with the program
};

/// What `reason` asks about a catalogue, which must outlive it.
reason::FigureNames names_of(const figure::Catalogue& catalogue);

/// Adds every `*.yaml` of a folder, in the order of their names. A folder that is not there is
/// empty. `shown` is how the folder is named in messages; with a pack (of the program's own files)
/// what was made of them beforehand is taken from it.
void take_figures(const FileSystem& files, const std::string& folder, const std::string& shown,
                  bool replaces, const PackPtr& pack, figure::Descriptions& descriptions,
                  std::vector<SourcePtr>& sources, Diagnostics& diagnostics);

/// The catalogue of a club: the shipped figures, and those of `club_folder` over them (empty: no
/// club). What is wrong with a file is reported, and with it only the figures concerned are
/// missing.
Figures load_figures(const FileSystem& files, const DataFolder& data,
                     const std::string& club_folder, const std::string& standing,
                     Diagnostics& diagnostics);

/// The same for a folder of figure files that is no club: its figures may begin from shipped ones.
Figures load_figure_folder(const FileSystem& files, const DataFolder& data,
                           const std::string& folder, const std::string& standing,
                           Diagnostics& diagnostics);

}  // namespace chalkleaf::club
