#include "club/club_folder.h"

#include "club/places.h"

namespace chalkleaf::club {
namespace {

// Names looked at for a suggestion; a folder with more is not one a person keeps by hand.
constexpr std::size_t kMostNames = 200;

std::string path_of(const std::string& from_path, const std::string& target) {
  return normal_path(join_path(parent_path(from_path), target));
}

}  // namespace

tl::expected<std::string, ClubFolder::Miss> ClubFolder::find(const std::string& from_path,
                                                             const std::string& target) const {
  if (target.empty() || target.find('\0') != std::string::npos) {
    return tl::unexpected(Miss::kNothing);
  }
  if (target.starts_with('/')) return tl::unexpected(Miss::kOutside);
  const std::string path = path_of(from_path, target);
  if (!is_within(path, root_)) return tl::unexpected(Miss::kOutside);
  const auto real = files_.real_path(path);
  // A link that leads out of the folder to nothing is told apart only when it leads to something:
  // what is outside is none of the plan's business.
  if (!real && real.error().kind != FileError::Kind::kNotFound)
    return tl::unexpected(Miss::kUnreadable);
  const FileKind kind = real ? files_.kind(*real) : FileKind::kNothing;
  if (kind == FileKind::kOther) return tl::unexpected(Miss::kUnreadable);
  if (kind != FileKind::kFile) return tl::unexpected(Miss::kNothing);
  if (!is_within(*real, root_)) return tl::unexpected(Miss::kOutside);
  return *real;
}

std::string ClubFolder::suggestion(const std::string& from_path, const std::string& target) const {
  if (target.empty() || target.find('\0') != std::string::npos) return {};
  const std::string path = path_of(from_path, target);
  for (const std::string& folder : {parent_path(path), join_path(root_, kind_.folder)}) {
    if (const auto name = kind_.meant(file_name(path), names_in(folder))) {
      return path_from(parent_path(from_path), join_path(folder, *name));
    }
  }
  return {};
}

// A folder is listed once, however many paths miss; of thousands of names only the first count.
const std::vector<std::string>& ClubFolder::names_in(const std::string& folder) const {
  const std::lock_guard lock(mutex_);
  const auto [found, is_new] = names_.try_emplace(folder);
  if (!is_new) return found->second;
  const auto real = files_.real_path(folder);
  if (!real || !is_within(*real, root_)) return found->second;
  for (const FolderEntry& entry : files_.list(folder).value_or(std::vector<FolderEntry>{})) {
    const bool usable = entry.kind == FileKind::kFile && kind_.is_name(entry.name);
    if (usable && found->second.size() < kMostNames) found->second.push_back(entry.name);
  }
  return found->second;
}

}  // namespace chalkleaf::club
