#include "club/no_plans.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "base/text.h"

namespace chalkleaf::club {
namespace {

using Entries = std::vector<FolderEntry>;

Entries entries_of(const FileSystem& files, const std::string& folder) {
  return files.list(folder).value_or(Entries{});
}

const FolderEntry* find(const Entries& entries, std::string_view name) {
  const auto found = std::find_if(entries.begin(), entries.end(),
                                  [&](const FolderEntry& entry) { return entry.name == name; });
  return found == entries.end() ? nullptr : &*found;
}

bool is_plan(const FolderEntry& entry) {
  return entry.kind == FileKind::kFile && is_plan_name(entry.name);
}

// `Sessions`, `my sessions`, `session`, `sesions`, `training plans`
bool is_meant_for_plans(const FolderEntry& entry) {
  if (!is_entered(entry)) return false;
  const std::string name = lower_ascii(entry.name);
  return name.find("session") != std::string::npos || name.find("plan") != std::string::npos ||
         closest(name, {kPlanFolders.begin(), kPlanFolders.end()}).has_value();
}

// The first folder, not for parts or drills, that has Markdown directly in it.
const FolderEntry* folder_of_markdown(const FileSystem& files, const std::string& root,
                                      const Entries& entries) {
  for (const FolderEntry& entry : entries) {
    if (!is_entered(entry) || entry.name == kPartsFolder || entry.name == kDrillsFolder) {
      continue;
    }
    const Entries inside = entries_of(files, join_path(root, entry.name));
    if (std::any_of(inside.begin(), inside.end(), is_plan)) return &entry;
  }
  return nullptr;
}

// What is there where `sessions` should be, and what to do.
std::string advice(const FileSystem& files, const std::string& root) {
  const Entries entries = entries_of(files, root);
  for (const std::string_view name : kPlanFolders) {
    const FolderEntry* entry = find(entries, name);
    if (entry == nullptr) continue;
    if (entry->kind != FileKind::kFolder) return fmt::format("‘{}’ is not a folder", name);
    if (entry->is_link) {
      return fmt::format("‘{}’ is a link, and links to folders are not followed", name);
    }
    return fmt::format("there is none in ‘{}’; put one there, such as ‘tuesday.md’", name);
  }
  const auto meant = std::find_if(entries.begin(), entries.end(), is_meant_for_plans);
  if (meant != entries.end()) return fmt::format("rename ‘{}’ to ‘sessions’", meant->name);
  const auto loose = std::find_if(entries.begin(), entries.end(), is_plan);
  if (loose != entries.end()) {
    return fmt::format("make a folder ‘sessions’ and move ‘{}’ into it", loose->name);
  }
  if (const FolderEntry* folder = folder_of_markdown(files, root, entries)) {
    return fmt::format("if those in ‘{}’ are plans, rename it to ‘sessions’", folder->name);
  }
  return "make the folder, and put a plan in it, such as ‘tuesday.md’";
}

// The first line begins front matter or is a heading.
bool begins_as_a_plan(const FileSystem& files, const std::string& path) {
  constexpr std::uint64_t kMost = 256 * 1024;
  const auto text = files.read(path, kMost);
  if (!text) return false;
  std::string_view begin = *text;
  if (begin.starts_with("\xEF\xBB\xBF")) begin.remove_prefix(3);
  begin = trim(begin);
  return begin.starts_with("---\n") || begin.starts_with("---\r") || begin.starts_with("# ") ||
         begin.starts_with("## ");
}

}  // namespace

bool is_entered(const FolderEntry& entry) {
  return entry.kind == FileKind::kFolder && !entry.is_link && !entry.name.starts_with('.') &&
         entry.name != "out" && entry.name != "private";
}

bool is_plan_name(std::string_view name) {
  const std::string lower = lower_ascii(name);
  const bool is_markdown = lower.ends_with(".md") || lower.ends_with(".markdown");
  return is_markdown && !lower.starts_with('.') && file_stem(lower) != "readme";
}

std::optional<std::string> plan_name_meant(const FileSystem& files, const std::string& path,
                                           const FolderEntry& entry) {
  if (entry.kind != FileKind::kFile || entry.name.starts_with('.')) return std::nullopt;
  if (!lower_ascii(entry.name).ends_with(".txt")) return std::nullopt;
  std::string stem = file_stem(entry.name);
  if (is_plan_name(stem)) return stem;
  if (lower_ascii(stem) == "readme" || !begins_as_a_plan(files, path)) return std::nullopt;
  return stem + ".md";
}

std::string why_no_plans(const FileSystem& files, const std::string& root) {
  return "this club has no plans: its plans are the .md files in its folder ‘sessions’; " +
         advice(files, root);
}

std::string why_no_club(const FileSystem& files, const std::string& standing) {
  const std::string problem =
      "no plan is named, and this folder is not in a club folder (one with a club.yaml); ";
  const Entries entries = entries_of(files, standing);
  for (const FolderEntry& entry : entries) {
    const std::string name = lower_ascii(entry.name);
    if (entry.kind == FileKind::kFile && (name == "club.yml" || name == kClubFile)) {
      return problem + "rename ‘" + entry.name + "’ to ‘club.yaml’";
    }
  }
  for (const FolderEntry& entry : entries) {
    const std::string folder = join_path(standing, entry.name);
    if (is_entered(entry) && files.kind(join_path(folder, kClubFile)) == FileKind::kFile) {
      return problem + "there is one in ‘" + entry.name + "’: name it, or go there first";
    }
  }
  return problem + "name a plan, such as ‘tuesday.md’, or a folder of plans";
}

}  // namespace chalkleaf::club
