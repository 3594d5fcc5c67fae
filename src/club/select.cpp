#include "club/select.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "club/no_plans.h"
#include "club/places.h"

namespace chalkleaf::club {
namespace {

constexpr int kDeepestPlans =
    32;  // folders within folders; a file system can be made to have no end

class Selector {
 public:
  Selector(const FileSystem& files, const Wanted& wanted) : files_(files), wanted_(wanted) {}

  Selection select() {
    if (wanted_.arguments.empty()) {
      take_club_stood_in();
    } else {
      for (const std::string& argument : wanted_.arguments) take(argument);
    }
    auto& plans = out_.plans;
    std::sort(plans.begin(), plans.end(),
              [](const PlanFile& a, const PlanFile& b) { return a.path < b.path; });
    plans.erase(std::unique(plans.begin(), plans.end(),
                            [](const PlanFile& a, const PlanFile& b) { return a.path == b.path; }),
                plans.end());
    auto& shared = out_.shared;
    std::sort(shared.begin(), shared.end(),
              [](const SharedFile& a, const SharedFile& b) { return a.path < b.path; });
    const auto same = [](const SharedFile& a, const SharedFile& b) { return a.path == b.path; };
    shared.erase(std::unique(shared.begin(), shared.end(), same), shared.end());
    refuse_collisions();
    return std::move(out_);
  }

 private:
  std::string shown(const std::string& path) const { return path_from(wanted_.standing, path); }

  void take_club_stood_in() {
    if (const auto root = club_above(files_, wanted_.standing)) {
      take_folder(*root, *root);
      if (out_.plans.empty()) out_.problems.push_back(why_no_plans(files_, *root));
    } else {
      out_.problems.push_back(why_no_club(files_, wanted_.standing));
    }
  }

  void take(const std::string& argument) {
    const std::string path = normal_path(join_path(wanted_.standing, argument));
    switch (files_.kind(path)) {
      case FileKind::kNothing:
        out_.problems.push_back("there is no file or folder ‘" + argument + "’");
        return;
      case FileKind::kOther:
        out_.problems.push_back("‘" + argument + "’ is neither a file nor a folder");
        return;
      case FileKind::kFile:
        take_file(path);
        return;
      case FileKind::kFolder:
        break;
    }
    const std::string folder = files_.real_path(path).value_or(path);
    const std::size_t before = out_.plans.size();
    if (const auto root = club_above(files_, folder)) {
      take_folder(*root, folder);
    } else {
      take_loose(folder);
    }
    if (out_.plans.size() > before || out_.diagnostics.has_errors()) return;
    if (files_.kind(join_path(folder, kClubFile)) == FileKind::kFile) {
      out_.problems.push_back("‘" + argument + "’: " + why_no_plans(files_, folder));
      return;
    }
    out_.problems.push_back("there are no plans in ‘" + argument +
                            "’: a club's plans are *.md files below its ‘sessions’ or ‘plans’ "
                            "folder");
  }

  void take_file(const std::string& named) {
    const std::string folder = files_.real_path(parent_path(named)).value_or(parent_path(named));
    std::string path = join_path(folder, file_name(named));
    const auto club = club_above(files_, folder);
    // Without a club a folder called parts is all that tells a part from a plan.
    const auto is_in = [&](std::string_view name) {
      return club ? is_within(path, join_path(*club, name)) : file_name(folder) == name;
    };
    if (club == folder && file_name(path) == kClubFile) {
      const std::size_t root = root_of(*club, true);
      out_.shared.push_back({SharedFile::Kind::kClub, std::move(path), root});
    } else if (is_in(kPartsFolder) || is_in(kDrillsFolder)) {
      // Parts link to each other, and to their neighbours, so the folder above theirs is the root.
      const std::size_t root = root_of(club.value_or(parent_path(folder)), club.has_value());
      using Kind = SharedFile::Kind;
      out_.shared.push_back(
          {is_in(kPartsFolder) ? Kind::kPart : Kind::kDrill, std::move(path), root});
    } else {
      add(std::move(path), club);
    }
  }

  // The plans of a club that lie below `folder`.
  void take_folder(const std::string& root, const std::string& folder) {
    for (const std::string_view name : kPlanFolders) {
      const std::string plans = join_path(root, name);
      if (is_within(folder, plans)) {
        walk(root, folder, 0);
      } else if (is_within(plans, folder) && is_own_folder(root, std::string(name))) {
        walk(root, plans, 0);
      }
    }
  }

  bool is_own_folder(const std::string& root, const std::string& name) const {
    const std::string path = join_path(root, name);
    const auto real = files_.real_path(path);
    return real && *real == path && files_.kind(path) == FileKind::kFolder;
  }

  void walk(const std::string& root, const std::string& folder, int depth) {
    if (depth > kDeepestPlans) {
      out_.diagnostics.error(
          "unreadable-file", {},
          fmt::format("{} lies more than {} folders deep; what is in it is not read", shown(folder),
                      kDeepestPlans),
          "move its plans further up");
      return;
    }
    const auto entries = files_.list(folder);
    if (!entries) {
      out_.problems.push_back("‘" + shown(folder) + "’ cannot be read: " + entries.error().message);
      return;
    }
    for (const FolderEntry& entry : *entries) {
      std::string path = join_path(folder, entry.name);
      if (is_entered(entry)) {
        walk(root, path, depth + 1);
      } else if (entry.kind == FileKind::kFile && is_plan_name(entry.name)) {
        take_entry(path, entry, root, root);
      } else {
        mention(path, entry);
      }
    }
  }

  // A plan of a folder that was looked through; `bounds` is the folder a link may lead to.
  void take_entry(const std::string& path, const FolderEntry& entry, const std::string& bounds,
                  const std::optional<std::string>& club) {
    if (!entry.is_link || !leads_out(path, bounds)) return add(path, club);
    out_.diagnostics.error(
        "outside-folder", {},
        shown(path) + " is a link that leads out of the " + (club ? "club's folder" : "folder"),
        "put the plan itself there, or name the file it leads to");
  }

  // A plan saved with an ending of the editor's choosing would silently not be printed.
  void mention(const std::string& path, const FolderEntry& entry) {
    const auto name = plan_name_meant(files_, path, entry);
    if (!name) return;
    out_.diagnostics.warning("unreadable-file", {},
                             shown(path) + " looks like a plan, but is not read as one",
                             "rename it to " + *name);
  }

  bool leads_out(const std::string& path, const std::string& root) const {
    const auto real = files_.real_path(path);
    return !real || !is_within(*real, root);
  }

  // A folder of plans without a club: those that stand directly in it.
  void take_loose(const std::string& folder) {
    for (const FolderEntry& entry : files_.list(folder).value_or(Entries{})) {
      if (entry.kind == FileKind::kFile && is_plan_name(entry.name)) {
        take_entry(join_path(folder, entry.name), entry, folder, std::nullopt);
      } else {
        mention(join_path(folder, entry.name), entry);
      }
    }
  }

  void add(std::string path, const std::optional<std::string>& club) {
    const std::string root = club.value_or(parent_path(path));
    PlanFile plan;
    plan.sheets = sheets_of(path, root);
    plan.path = std::move(path);
    plan.root = root_of(root, club.has_value());
    out_.plans.push_back(std::move(plan));
  }

  std::size_t root_of(const std::string& path, bool is_club) {
    const auto [place, is_new] = roots_.try_emplace(path, out_.roots.size());
    if (is_new) out_.roots.push_back({path, is_club, out_of(path)});
    return place->second;
  }

  std::string out_of(const std::string& root) const {
    // A folder the user names may be reached through links; one a club ships may not (see save()).
    if (wanted_.out) return resolved_path(files_, join_path(wanted_.standing, *wanted_.out));
    return join_path(root, "out");
  }

  std::string sheets_of(const std::string& path, const std::string& root) const {
    std::string inside = relative_to(path, root);
    for (const std::string_view name : kPlanFolders) {
      if (is_within(inside, name) && inside.size() > name.size()) {
        inside = inside.substr(name.size() + 1);
        break;
      }
    }
    // Each name by itself, so that none of them can lead anywhere else.
    std::string out = out_of(root);
    for (std::string folders = parent_path(inside); folders != "." && folders != "/";) {
      const std::size_t slash = std::min(folders.find('/'), folders.size());
      out = join_path(out, sheet_name(folders.substr(0, slash)));
      folders = slash == folders.size() ? "." : folders.substr(slash + 1);
    }
    return join_path(out, sheet_name(file_stem(inside)));
  }

  // Two plans must not print over each other. The first by path keeps its place.
  void refuse_collisions() {
    std::map<std::string_view, const PlanFile*> taken;
    std::vector<std::string> refused;
    for (const PlanFile& plan : out_.plans) {
      const auto [place, is_new] = taken.try_emplace(plan.sheets, &plan);
      if (is_new) continue;
      refused.push_back(plan.path);
      out_.problems.push_back(
          fmt::format("‘{}’ would be printed over ‘{}’, as {}-card.pdf; rename one of them",
                      shown(plan.path), shown(place->second->path), shown(plan.sheets)));
    }
    taken.clear();
    std::erase_if(out_.plans, [&](const PlanFile& plan) {
      return std::binary_search(refused.begin(), refused.end(), plan.path);
    });
  }

  using Entries = std::vector<FolderEntry>;
  const FileSystem& files_;
  const Wanted& wanted_;
  std::map<std::string, std::size_t> roots_;
  Selection out_;
};

}  // namespace

std::optional<std::string> club_above(const FileSystem& files, const std::string& folder) {
  for (std::string at = folder;; at = parent_path(at)) {
    if (files.kind(join_path(at, kClubFile)) == FileKind::kFile) return at;
    if (at == "/" || at == ".") return std::nullopt;
  }
}

Selection select_plans(const FileSystem& files, const Wanted& wanted) {
  return Selector(files, wanted).select();
}

}  // namespace chalkleaf::club
