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

bool is_part_name(std::string_view name) { return name.ends_with(".md"); }

LinkProblem problem(LinkProblem::Kind kind) {
  LinkProblem out;
  out.kind = kind;
  return out;
}

}  // namespace

PartLibrary::PartLibrary(const FileSystem& files, std::string root, std::string standing)
    : files_(files),
      standing_(std::move(standing)),
      folder_(files, std::move(root), {"parts", is_part_name, closest}) {}

tl::expected<PartLibrary::Part, LinkProblem> PartLibrary::find(const std::string& from_path,
                                                               const std::string& target) const {
  const auto real = folder_.find(from_path, target);
  if (!real && real.error() == ClubFolder::Miss::kOutside) {
    return tl::unexpected(problem(LinkProblem::Kind::kOutside));
  }
  if (!real && real.error() == ClubFolder::Miss::kUnreadable) {
    LinkProblem unreadable = problem(LinkProblem::Kind::kUnreadable);
    unreadable.diagnostics.error("unreadable-file", {},
                                 "‘" + target + "’ cannot be looked at: the disk does not allow it",
                                 "see that the file and the folders above it may be read");
    return tl::unexpected(std::move(unreadable));
  }
  if (!real) {
    LinkProblem missing = problem(LinkProblem::Kind::kMissing);
    missing.suggestion = folder_.suggestion(from_path, target);
    return tl::unexpected(std::move(missing));
  }
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

}  // namespace chalkleaf::club
