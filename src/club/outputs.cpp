#include "club/outputs.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "reason/checks.h"
#include "sheet/evening.h"

namespace chalkleaf::club {
namespace {

std::vector<sheet::Kind> kinds_let_through(Only only) {
  std::vector<sheet::Kind> out(sheet::kKinds.begin(), sheet::kKinds.end());
  if (only == Only::kCards)
    std::erase_if(out, [](sheet::Kind kind) { return !sheet::is_for_coaches(kind); });
  if (only == Only::kSheets) std::erase_if(out, sheet::is_for_coaches);
  return out;
}

std::string_view ending_of(sheet::Kind kind) {
  switch (kind) {
    case sheet::Kind::kCoachCard:
      return "card";
    case sheet::Kind::kHomeSheet:
      return "sheet";
    case sheet::Kind::kStationCards:
      return "stations";
    case sheet::Kind::kHallPoster:
      return "poster";
  }
  return {};
}

std::string hint_for(const FileError& error) {
  switch (error.kind) {
    case FileError::Kind::kNoSpace:
      return "make room on the disk, or choose another folder with ‘--out’";
    case FileError::Kind::kNoPermission:
      return "choose a folder you may write to with ‘--out’";
    default:
      return "see what stands there, or choose another folder with ‘--out’";
  }
}

void say_not_written(const std::string& shown, const FileError& error, Diagnostics& diagnostics) {
  diagnostics.error("not-written", {},
                    fmt::format("{} could not be written: {}", shown, error.message),
                    hint_for(error));
}

// True when there is no file there afterwards.
bool remove_stale(FileSystem& files, const std::string& path, const std::string& shown,
                  Diagnostics& diagnostics) {
  if (files.kind(path) == FileKind::kNothing) return true;
  const auto removed = files.remove(path);
  if (removed) return true;
  diagnostics.error("not-written", {},
                    fmt::format("{} is from an earlier run and could not be removed: {}", shown,
                                removed.error().message),
                    "remove it yourself: it no longer shows the plan");
  return false;
}

// A club's folder is not to be trusted: its `out` may be a link to someone's papers, and sheets
// would be written over them.
bool leads_elsewhere(const FileSystem& files, const PlanPaths& plan) {
  const std::string folder = parent_path(plan.sheets);
  return resolved_path(files, folder) != folder;
}

bool refused_for_a_link(const FileSystem& files, const PlanPaths& plan, Diagnostics& diagnostics) {
  if (!leads_elsewhere(files, plan)) return false;
  diagnostics.error(
      "outside-folder", {},
      fmt::format("{} leads through a link to another folder, so nothing is written there",
                  parent_path(plan.shown_sheets)),
      "remove the link, or name the folder you mean with ‘--out’");
  return true;
}

void drop_all(FileSystem& files, const std::vector<StagedSheet>& sheets, std::size_t from = 0) {
  for (std::size_t i = from; i < sheets.size(); ++i) files.drop(sheets[i].file);
}

// All are safe before the first gets its name, so that a full disk leaves a plan's card and sheet
// of one version.
bool make_all_safe(FileSystem& files, const std::vector<StagedSheet>& sheets,
                   Diagnostics& diagnostics) {
  for (const StagedSheet& sheet : sheets) {
    if (const auto safe = files.make_safe(sheet.file); !safe) {
      say_not_written(sheet.shown, safe.error(), diagnostics);
      return false;
    }
  }
  return true;
}

constexpr std::uint64_t kLargestSheet = 64UL * 1024 * 1024;

// Somebody else's file may stand where a sheet would.
bool is_ours(const std::string& bytes) {
  return bytes.starts_with("%PDF-") && bytes.find("Chalkleaf") != std::string::npos;
}

// Makes room for a newer file: the one that has its name gets the next number.
tl::expected<void, FileError> number_away(FileSystem& files, const std::string& path) {
  if (files.kind(path) == FileKind::kNothing) return {};
  constexpr int kMostNumbers = 9'999;
  for (int i = 1; i <= kMostNumbers; ++i) {
    const std::string numbered =
        join_path(parent_path(path), fmt::format("{}-{}.pdf", file_stem(path), i));
    if (files.kind(numbered) == FileKind::kNothing) return files.move_new(path, numbered);
  }
  return tl::unexpected(FileError{FileError::Kind::kOther, "there are too many of that name"});
}

}  // namespace

Rotations rotations_of(const reason::Timetable& timetable) {
  if (!sheet::evenings_of(timetable).empty()) return Rotations::kStations;
  return sheet::grids_of(timetable).empty() ? Rotations::kNone : Rotations::kGrid;
}

std::vector<sheet::Kind> kinds_to_print(plan::Place place, Rotations rotations, Only only) {
  std::vector<sheet::Kind> out = kinds_let_through(only);
  if (place == plan::Place::kGym) std::erase(out, sheet::Kind::kHomeSheet);
  if (rotations != Rotations::kStations) std::erase(out, sheet::Kind::kStationCards);
  if (rotations == Rotations::kNone) std::erase(out, sheet::Kind::kHallPoster);
  return out;
}

std::string sheet_path(const std::string& stem, sheet::Kind kind) {
  return fmt::format("{}-{}.pdf", stem, ending_of(kind));
}

std::string picture_path(const std::string& stem, sheet::Kind kind, std::size_t page) {
  return fmt::format("{}-{}-{}.png", stem, ending_of(kind), page);
}

Older fate_of_older(const Diagnostics& found, const Source* plan_source) {
  // These say that something could not be had, whatever line they point at.
  constexpr std::array<std::string_view, 3> kFaults = {"unreadable-file", "outside-folder",
                                                       "not-written"};
  if (plan_source == nullptr) return Older::kStay;
  const bool only_own = std::all_of(found.all().begin(), found.all().end(), [&](const auto& one) {
    if (one.severity != Severity::kError) return true;
    // What can hurt a child makes an older sheet no better, wherever it was written.
    if (reason::stopped_by(one) == reason::Stops::kHomeSheet) return true;
    return one.span.source == plan_source &&
           std::find(kFaults.begin(), kFaults.end(), one.name) == kFaults.end();
  });
  return only_own ? Older::kMoveAway : Older::kStay;
}

bool stage(FileSystem& files, const PlanPaths& plan, const std::vector<Sheet>& sheets,
           std::vector<StagedSheet>& out, Diagnostics& diagnostics) {
  if (sheets.empty()) return true;
  if (refused_for_a_link(files, plan, diagnostics)) return false;
  for (const Sheet& sheet : sheets) {
    std::string shown = sheet_path(plan.shown_sheets, sheet.kind);
    auto staged = files.stage(sheet_path(plan.sheets, sheet.kind), sheet.bytes);
    if (!staged) {
      say_not_written(shown, staged.error(), diagnostics);
      drop_all(files, out);
      out.clear();
      return false;
    }
    out.push_back({std::move(*staged), std::move(shown), sheet.kind});
  }
  return true;
}

bool move_to_earlier(FileSystem& files, const PlanPaths& plan, const std::string& path,
                     const std::string& shown, Diagnostics& diagnostics) {
  const auto bytes = files.read(path, kLargestSheet);
  if (bytes && !is_ours(*bytes)) return false;
  const std::string target = join_path(plan.earlier, relative_to(path, plan.out));
  tl::expected<void, FileError> moved;
  if (!bytes) {
    moved = tl::unexpected(bytes.error());
  } else if (resolved_path(files, parent_path(target)) != parent_path(target)) {
    moved = tl::unexpected(FileError{FileError::Kind::kOther, "that folder is a link"});
  } else if (const auto same = files.read(target, kLargestSheet); same && *same == *bytes) {
    moved = files.remove(path);
  } else {
    moved = number_away(files, target);
    if (moved) moved = files.move_new(path, target);
  }
  if (moved) return true;
  diagnostics.error(
      "not-written", {},
      fmt::format("{} no longer shows the plan and could not be moved to the folder ‘{}’: {}",
                  shown, file_name(plan.earlier), moved.error().message),
      "move it away yourself");
  return false;
}

std::vector<std::string> standing_sheets(const FileSystem& files, const PlanPaths& plan,
                                         Only only) {
  std::vector<std::string> out;
  for (const sheet::Kind kind : kinds_let_through(only)) {
    if (files.kind(sheet_path(plan.sheets, kind)) == FileKind::kFile)
      out.push_back(sheet_path(plan.shown_sheets, kind));
  }
  return out;
}

Placed put_in_place(FileSystem& files, const PlanPaths& plan, Only only,
                    const std::vector<StagedSheet>& sheets, Older older, Diagnostics& diagnostics) {
  Placed out;
  if (!make_all_safe(files, sheets, diagnostics)) {
    drop_all(files, sheets);
    out.well = false;
    older = Older::kStay;
  }
  std::vector<sheet::Kind> done;
  for (std::size_t i = 0; out.well && i < sheets.size(); ++i) {
    if (const auto placed = files.put_in_place(sheets[i].file); !placed) {
      say_not_written(sheets[i].shown, placed.error(), diagnostics);
      drop_all(files, sheets, i);
      out.well = false;
      older = Older::kStay;
    } else {
      done.push_back(sheets[i].kind);
    }
  }
  out.written = done.size();
  for (const sheet::Kind kind : kinds_let_through(only)) {
    if (std::find(done.begin(), done.end(), kind) != done.end()) continue;
    const std::string path = sheet_path(plan.sheets, kind);
    const std::string shown = sheet_path(plan.shown_sheets, kind);
    if (files.kind(path) != FileKind::kFile) continue;
    if (leads_elsewhere(files, plan)) break;  // what is there is none of ours
    const std::size_t before = diagnostics.error_count();
    if (older == Older::kMoveAway && move_to_earlier(files, plan, path, shown, diagnostics)) {
      out.moved.push_back(shown);
    } else {
      out.stayed.push_back(shown);
    }
    out.well = out.well && diagnostics.error_count() == before;
  }
  return out;
}

bool save_pictures(FileSystem& files, const PlanPaths& plan, Only only,
                   const std::vector<Sheet>& sheets, Older older, Diagnostics& diagnostics) {
  if (refused_for_a_link(files, plan, diagnostics)) return false;
  for (const Sheet& sheet : sheets) {
    for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
      const auto written =
          files.write_whole(picture_path(plan.sheets, sheet.kind, i + 1), sheet.pages[i]);
      if (written) continue;
      say_not_written(picture_path(plan.shown_sheets, sheet.kind, i + 1), written.error(),
                      diagnostics);
      return false;
    }
  }
  if (older == Older::kStay) return true;
  for (const sheet::Kind kind : kinds_let_through(only)) {
    std::size_t page = 1;
    for (const Sheet& sheet : sheets) {
      if (sheet.kind == kind) page += sheet.pages.size();
    }
    for (; files.kind(picture_path(plan.sheets, kind, page)) != FileKind::kNothing; ++page) {
      if (!remove_stale(files, picture_path(plan.sheets, kind, page),
                        picture_path(plan.shown_sheets, kind, page), diagnostics))
        return false;
    }
  }
  return true;
}

}  // namespace chalkleaf::club
