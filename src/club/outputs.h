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

/// One finished PDF.
struct Sheet {
  sheet::Kind kind = sheet::Kind::kCoachCard;
  std::string bytes;
};

/// A gym plan has a coach card, a home plan a coach card and a home sheet; of these, what `only`
/// lets through.
std::vector<sheet::Kind> kinds_to_print(plan::Place place, Only only);

/// `<stem>-card.pdf` or `<stem>-sheet.pdf`
std::string sheet_path(const std::string& stem, sheet::Kind kind);

/// Writes the sheets and removes those of earlier runs that are not among them (of the kinds `only`
/// lets through). When one cannot be written none is left; `not-written` says why, and the result
/// is false.
bool save(FileSystem& files, const PlanPaths& plan, Only only, const std::vector<Sheet>& sheets,
          Diagnostics& diagnostics);

}  // namespace chalkleaf::club
