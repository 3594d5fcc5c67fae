// Which PDFs a plan has, and how they come to stand on the disk.
//
// After a run, a plan's PDFs are all of that run or not there: none of an earlier run is left
// behind as if it were current. Tested by tests/club/outputs_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/files.h"
#include "club/compile.h"

namespace chalkleaf::club {

/// One finished PDF, or the pictures of its pages.
struct Sheet {
  sheet::Kind kind = sheet::Kind::kCoachCard;
  std::string bytes = {};               ///< of the PDF
  std::vector<std::string> pages = {};  ///< each a PNG
};

/// A gym plan has a coach card, a home plan a coach card and a home sheet; of these, what `only`
/// lets through.
std::vector<sheet::Kind> kinds_to_print(plan::Place place, Only only);

/// `<stem>-card.pdf` or `<stem>-sheet.pdf`
std::string sheet_path(const std::string& stem, sheet::Kind kind);

/// `<stem>-card-2.png` for page 2, from 1
std::string picture_path(const std::string& stem, sheet::Kind kind, std::size_t page);

/// The same as save() for the pictures of pages: those of an earlier, longer sheet are removed.
bool save_pictures(FileSystem& files, const PlanPaths& plan, Only only,
                   const std::vector<Sheet>& sheets, Diagnostics& diagnostics);

/// Writes the sheets and removes those of earlier runs that are not among them (of the kinds `only`
/// lets through). When one cannot be written none is left; `not-written` says why, and the result
/// is false.
bool save(FileSystem& files, const PlanPaths& plan, Only only, const std::vector<Sheet>& sheets,
          Diagnostics& diagnostics);

}  // namespace chalkleaf::club
