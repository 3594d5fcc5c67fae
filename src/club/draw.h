// Figures without a plan: one drawn as PDF or SVG, or a whole catalogue on a sheet.
//
// Tested by tests/figures.py.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/paper.h"
#include "club/build.h"

namespace chalkleaf::club {

/// What is to be drawn.
struct DrawRequest {
  std::vector<std::string> names;  ///< of figures; a name may be spread over several words
  std::optional<std::string>
      folder;                      ///< a club, or a folder of figure files; none: the club stood in
  std::optional<std::string> out;  ///< `….pdf` or `….svg`
  std::string standing;            ///< absolute, no links
  double years = 9;                ///< the age of the body
  Paper paper = Paper::kA4;
};

/// What was drawn.
struct Drawn {
  std::string path;  ///< as the user names it
  std::size_t figures = 0;
  bool failed = false;  ///< there were errors, or nothing could be written
  int exit_code = 0;    ///< as of the program
};

/// `figure NAME…`: the figures named.
Drawn draw_figures(const DrawRequest& request, const Surroundings& surroundings,
                   Listener& listener);
/// `figures [FOLDER]`: the whole catalogue, with what is wrong with each.
Drawn draw_catalogue(const DrawRequest& request, const Surroundings& surroundings,
                     Listener& listener);

}  // namespace chalkleaf::club
