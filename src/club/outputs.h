// Which PDFs a plan has, and how they come to stand on the disk.
//
// A good PDF is never destroyed: a newer good one takes its place, or it stays, or it is moved to
// `out/earlier`. It stays where a fault kept the newer one from being made, since the fault is gone
// some day and the plan may be as it was; it moves where the plan itself has mistakes or has no
// such sheet any more, since it would pass for current. Tested by tests/club/outputs_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/files.h"
#include "club/compile.h"

namespace chalkleaf::club {

/// The folder of sheets that are no longer of any plan, within the folder of sheets.
inline constexpr std::string_view kEarlierFolder = "earlier";

/// One finished PDF, or the pictures of its pages.
struct Sheet {
  sheet::Kind kind = sheet::Kind::kCoachCard;
  std::string bytes = {};               ///< of the PDF
  std::vector<std::string> pages = {};  ///< each a PNG
};

/// What of groups that go round stands in a plan.
enum class Rotations { kNone, kGrid, kStations };
Rotations rotations_of(const reason::Timetable& timetable);
/// A gym plan has a coach card, with a grid a hall poster, and with stations their cards; a home
/// plan has a coach card and a home sheet. Of these, what `only` lets through.
std::vector<sheet::Kind> kinds_to_print(plan::Place place, Rotations rotations, Only only);

/// `<stem>-card.pdf`, `-sheet.pdf`, `-stations.pdf`, `-poster.pdf`
std::string sheet_path(const std::string& stem, sheet::Kind kind);

/// `<stem>-card-2.png` for page 2, from 1
std::string picture_path(const std::string& stem, sheet::Kind kind, std::size_t page);

/// What becomes of the older sheets of a plan that are not replaced: decided by what was found in
/// `plan_source` (null when it could not be read). Mistakes of the plan itself move them away; a
/// single one from elsewhere keeps them, since what is wrong here may follow from it.
Older fate_of_older(const Diagnostics& found, const Source* plan_source);

/// Writes the sheets beside their places. When one cannot be written none is left; `not-written`
/// says why, and the result is false.
bool stage(FileSystem& files, const PlanPaths& plan, const std::vector<Sheet>& sheets,
           std::vector<StagedSheet>& out, Diagnostics& diagnostics);

/// What put_in_place() did.
struct Placed {
  std::size_t written = 0;
  std::vector<std::string> stayed;  ///< older sheets, not from this version: paths as displayed
  std::vector<std::string> moved;   ///< to the earlier ones, likewise
  bool well = true;                 ///< false: the disk would not (`not-written`)
};
/// Gives a plan's staged sheets their names, all or none, and does with the older ones (of the
/// kinds `only` lets through) what is to be done. The names are safe only after
/// FileSystem::settle().
Placed put_in_place(FileSystem& files, const PlanPaths& plan, Only only,
                    const std::vector<StagedSheet>& sheets, Older older, Diagnostics& diagnostics);

/// The sheets of a plan that are there, of the kinds `only` lets through: paths as displayed.
std::vector<std::string> standing_sheets(const FileSystem& files, const PlanPaths& plan, Only only);

/// Moves a sheet to the earlier ones, if it is one of ours; what has its name there gets a number.
/// The result says whether it is gone from where it was. `shown` is how the user is told of it.
bool move_to_earlier(FileSystem& files, const PlanPaths& plan, const std::string& path,
                     const std::string& shown, Diagnostics& diagnostics);

/// Writes the pictures of pages, whole ones over those of earlier runs, and removes those that an
/// earlier, longer sheet had. Of a plan that was not set those of earlier runs stay or go, as
/// `older` says: they are made again whenever someone wants to look.
bool save_pictures(FileSystem& files, const PlanPaths& plan, Only only,
                   const std::vector<Sheet>& sheets, Older older, Diagnostics& diagnostics);

}  // namespace chalkleaf::club
