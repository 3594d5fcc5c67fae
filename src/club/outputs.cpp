#include "club/outputs.h"

#include <fmt/format.h>

#include <algorithm>

namespace chalkleaf::club {
namespace {

std::vector<sheet::Kind> kinds_let_through(Only only) {
  if (only == Only::kCards) return {sheet::Kind::kCoachCard};
  if (only == Only::kSheets) return {sheet::Kind::kHomeSheet};
  return {sheet::Kind::kCoachCard, sheet::Kind::kHomeSheet};
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
bool leads_elsewhere(const FileSystem& files, const PlanPaths& plan, Diagnostics& diagnostics) {
  const std::string folder = parent_path(plan.sheets);
  if (resolved_path(files, folder) == folder) return false;
  diagnostics.error(
      "outside-folder", {},
      fmt::format("{} leads through a link to another folder, so nothing is written there",
                  parent_path(plan.shown_sheets)),
      "remove the link, or name the folder you mean with ‘--out’");
  return true;
}

bool write(FileSystem& files, const std::string& path, const std::string& shown,
           std::string_view bytes, Diagnostics& diagnostics) {
  const auto written = files.write_whole(path, bytes);
  if (written) return true;
  diagnostics.error("not-written", {},
                    fmt::format("{} could not be written: {}", shown, written.error().message),
                    hint_for(written.error()));
  return false;
}

}  // namespace

std::vector<sheet::Kind> kinds_to_print(plan::Place place, Only only) {
  std::vector<sheet::Kind> out = kinds_let_through(only);
  if (place == plan::Place::kGym) std::erase(out, sheet::Kind::kHomeSheet);
  return out;
}

std::string sheet_path(const std::string& stem, sheet::Kind kind) {
  return stem + (kind == sheet::Kind::kCoachCard ? "-card.pdf" : "-sheet.pdf");
}

std::string picture_path(const std::string& stem, sheet::Kind kind, std::size_t page) {
  return fmt::format("{}{}-{}.png", stem, kind == sheet::Kind::kCoachCard ? "-card" : "-sheet",
                     page);
}

bool save(FileSystem& files, const PlanPaths& plan, Only only, const std::vector<Sheet>& sheets,
          Diagnostics& diagnostics) {
  if (leads_elsewhere(files, plan, diagnostics)) return false;
  bool well = true;
  for (const Sheet& sheet : sheets) {
    well = well && write(files, sheet_path(plan.sheets, sheet.kind),
                         sheet_path(plan.shown_sheets, sheet.kind), sheet.bytes, diagnostics);
  }
  for (const sheet::Kind kind : kinds_let_through(only)) {
    const bool is_new = well && std::any_of(sheets.begin(), sheets.end(),
                                            [&](const Sheet& sheet) { return sheet.kind == kind; });
    if (!is_new && !remove_stale(files, sheet_path(plan.sheets, kind),
                                 sheet_path(plan.shown_sheets, kind), diagnostics))
      well = false;
  }
  return well;
}

bool save_pictures(FileSystem& files, const PlanPaths& plan, Only only,
                   const std::vector<Sheet>& sheets, Diagnostics& diagnostics) {
  if (leads_elsewhere(files, plan, diagnostics)) return false;
  bool well = true;
  const auto shown = [&](sheet::Kind kind, std::size_t page) {
    return picture_path(plan.shown_sheets, kind, page);
  };
  for (const Sheet& sheet : sheets) {
    for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
      well = well && write(files, picture_path(plan.sheets, sheet.kind, i + 1),
                           shown(sheet.kind, i + 1), sheet.pages[i], diagnostics);
    }
  }
  for (const sheet::Kind kind : kinds_let_through(only)) {
    std::size_t page = 1;
    for (const Sheet& sheet : sheets) {
      if (well && sheet.kind == kind) page += sheet.pages.size();
    }
    for (; files.kind(picture_path(plan.sheets, kind, page)) != FileKind::kNothing; ++page) {
      if (!remove_stale(files, picture_path(plan.sheets, kind, page), shown(kind, page),
                        diagnostics))
        return false;
    }
  }
  return well;
}

}  // namespace chalkleaf::club
