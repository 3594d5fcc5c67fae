#include "club/part_library.h"

#include "base/text.h"
#include "club/places.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

using plan::FoundPart;
using plan::LinkProblem;

// Parts beyond this many bytes are read again each time instead of being kept.
constexpr std::size_t kMostKept = 64 * 1024 * 1024;
// Names looked at for a suggestion; a folder with more is not one a person keeps by hand.
constexpr std::size_t kMostNames = 200;

LinkProblem problem(LinkProblem::Kind kind) {
  LinkProblem out;
  out.kind = kind;
  return out;
}

}  // namespace

PartLibrary::PartLibrary(const FileSystem& files, std::string root, std::string standing)
    : files_(files), root_(std::move(root)), standing_(std::move(standing)) {}

tl::expected<PartLibrary::Part, LinkProblem> PartLibrary::find(const std::string& from_path,
                                                               const std::string& target) const {
  if (target.empty() || target.find('\0') != std::string::npos) {
    return tl::unexpected(problem(LinkProblem::Kind::kMissing));
  }
  if (target.starts_with('/')) return tl::unexpected(problem(LinkProblem::Kind::kOutside));
  const std::string path = normal_path(join_path(parent_path(from_path), target));
  if (!is_within(path, root_)) return tl::unexpected(problem(LinkProblem::Kind::kOutside));
  const auto real = files_.real_path(path);
  if (!real || files_.kind(*real) != FileKind::kFile) {
    // A link that leads out of the folder to nothing is told apart only when it leads to something:
    // what is outside is none of the plan's business.
    return tl::unexpected(missing(from_path, path));
  }
  if (!is_within(*real, root_)) return tl::unexpected(problem(LinkProblem::Kind::kOutside));
  std::shared_ptr<Entry> entry;
  {
    const std::lock_guard lock(mutex_);
    auto& place = entries_[*real];
    if (!place) place = std::make_shared<Entry>();
    entry = place;
  }
  std::call_once(entry->once, [&] { entry->result = read(*real); });
  auto result = entry->result;
  if (result) {
    const std::lock_guard lock(mutex_);
    if (kept_bytes_ > kMostKept) entries_.erase(*real);
  }
  return result;
}

tl::expected<PartLibrary::Part, LinkProblem> PartLibrary::read(const std::string& path) const {
  auto part = std::make_shared<FoundPart>();
  part->path = path;
  const SourcePtr source =
      source::load(files_, path, path_from(standing_, path), part->diagnostics);
  if (!source) {
    LinkProblem unreadable = problem(LinkProblem::Kind::kUnreadable);
    unreadable.diagnostics = std::move(part->diagnostics);
    return tl::unexpected(std::move(unreadable));
  }
  const source::Document document = source::read_document(source, part->diagnostics);
  part->file = plan::read_part(document, part->diagnostics);
  part->file.source = source;
  part->diagnostics.keep(source);
  const std::lock_guard lock(mutex_);
  kept_bytes_ += source->text().size();
  return part;
}

// The closest name in the folder the link points at, else among the club's parts.
LinkProblem PartLibrary::missing(const std::string& from_path, const std::string& path) const {
  LinkProblem out = problem(LinkProblem::Kind::kMissing);
  for (const std::string& folder : {parent_path(path), join_path(root_, "parts")}) {
    if (const auto name = closest_in(folder, file_name(path))) {
      out.suggestion = path_from(parent_path(from_path), join_path(folder, *name));
      return out;
    }
  }
  return out;
}

// A folder is listed once, however many links miss; a library of thousands gets no suggestions.
std::optional<std::string> PartLibrary::closest_in(const std::string& folder,
                                                   const std::string& name) const {
  const std::lock_guard lock(names_mutex_);
  const auto [found, is_new] = names_.try_emplace(folder);
  if (is_new) {
    const auto real = files_.real_path(folder);
    if (real && is_within(*real, root_)) {
      for (const FolderEntry& entry : files_.list(folder).value_or(std::vector<FolderEntry>{})) {
        const bool usable = entry.kind == FileKind::kFile && entry.name.ends_with(".md");
        if (usable && found->second.size() < kMostNames) found->second.push_back(entry.name);
      }
    }
  }
  return closest(name, found->second);
}

}  // namespace chalkleaf::club
