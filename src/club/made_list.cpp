// See the header.
#include "club/made_list.h"

#include <algorithm>

#include "club/places.h"

namespace chalkleaf::club {
namespace {

constexpr std::uint64_t kLargestList = 8UL * 1024 * 1024;
constexpr std::string_view kFirstLine =
    "# Which plan each sheet here was made from. Chalkleaf keeps this list.\n";

// A name with a tab or a line end in it cannot stand in a line.
bool fits_a_line(const std::string& path) {
  return std::all_of(path.begin(), path.end(),
                     [](char c) { return static_cast<unsigned char>(c) >= 0x20; });
}

}  // namespace

MadeList::MadeList(const FileSystem& files, std::string out) : out_(std::move(out)) {
  const std::string path = join_path(out_, kName);
  if (files.kind(path) == FileKind::kNothing) return;
  const auto text = files.read(path, kLargestList);
  if (!text) {
    problem_ = text.error();
    return;
  }
  for (std::size_t at = 0; at < text->size();) {
    const std::size_t end = std::min(text->find('\n', at), text->size());
    const std::string line = text->substr(at, end - at);
    at = end + 1;
    const std::size_t tab = line.find('\t');
    if (tab == std::string::npos || line.starts_with('#')) continue;
    const std::string sheets = normal_path(join_path(out_, line.substr(0, tab)));
    if (sheets != out_ && is_within(sheets, out_))
      plans_[sheets] = normal_path(join_path(out_, line.substr(tab + 1)));
  }
}

void MadeList::add(const std::string& sheets, const std::string& plan) {
  if (!fits_a_line(sheets) || !fits_a_line(plan)) return;
  std::string& known = plans_[sheets];
  changed_ = changed_ || known != plan;
  known = plan;
}

void MadeList::forget(const std::string& sheets) {
  changed_ = plans_.erase(sheets) > 0 || changed_;
}

std::string MadeList::text() const {
  std::string out(kFirstLine);
  for (const auto& [sheets, plan] : plans_)
    out += relative_to(sheets, out_) + "\t" + path_from(out_, plan) + "\n";
  return out;
}

tl::expected<void, FileError> MadeList::save(FileSystem& files) {
  if (!changed_ || problem_) return {};
  auto written = files.write_whole(join_path(out_, kName), text());
  if (written) changed_ = false;
  return written;
}

Presence Absentees::look_for(const std::string& path, const std::string& root) {
  std::string folder = root;
  std::string rest = relative_to(path, root);
  while (true) {
    const std::size_t slash = rest.find('/');
    const std::string name = rest.substr(0, slash);
    auto [place, is_new] = listed_.try_emplace(folder);
    if (is_new) {
      if (auto entries = files_.list(folder)) place->second = std::move(*entries);
    }
    if (!place->second) return Presence::kUnknown;
    const auto found = std::find_if(place->second->begin(), place->second->end(),
                                    [&](const FolderEntry& entry) { return entry.name == name; });
    if (found == place->second->end()) return Presence::kGone;
    if (slash == std::string::npos) return Presence::kThere;
    if (found->kind == FileKind::kFile) return Presence::kGone;
    // A link may have led to the plan then, and may again.
    if (found->is_link || found->kind != FileKind::kFolder) return Presence::kUnknown;
    folder = join_path(folder, name);
    rest = rest.substr(slash + 1);
  }
}

}  // namespace chalkleaf::club
