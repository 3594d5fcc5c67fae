#include "club/git_objects.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <vector>

#include "base/files.h"
#include "base/text.h"
#include "club/git_pack.h"

namespace chalkleaf::club {
namespace {

constexpr std::uint64_t kLargestObject = 8ULL * 1024 * 1024;
constexpr std::uint64_t kLargestLoose = kLargestObject + 64ULL * 1024;
constexpr std::size_t kMostPacks = 1'000;
constexpr std::size_t kMostFolders = 8;  // of objects kept in other repositories
constexpr int kLongestChain = 4'096;     // of objects that differ from another: what git allows
constexpr std::size_t kMostKept = 32UL * 1024 * 1024;

// How large a loose object is stands inside what is packed, so more room is made until it fits.
std::optional<std::string> inflated_loose(std::string_view bytes) {
  for (std::size_t most = 8 * bytes.size() + 256; most <= 8 * kLargestLoose; most *= 8) {
    if (auto out = inflated(bytes, std::min<std::size_t>(most, kLargestLoose))) return out;
  }
  return std::nullopt;
}

std::optional<GitObject> loose_object(std::string whole) {
  const std::size_t end = whole.find('\0');
  const std::size_t blank = whole.find(' ');
  if (end == std::string::npos || blank == std::string::npos || blank > end) return std::nullopt;
  GitObject out;
  const std::string_view kind = std::string_view(whole).substr(0, blank);
  if (kind == "commit") {
    out.kind = GitKind::kCommit;
  } else if (kind == "tree") {
    out.kind = GitKind::kTree;
  } else if (kind == "blob") {
    out.kind = GitKind::kBlob;
  } else {
    return std::nullopt;
  }
  std::uint64_t size = 0;
  const char* last = whole.data() + end;
  const auto [stop, problem] = std::from_chars(whole.data() + blank + 1, last, size);
  if (problem != std::errc() || stop != last || size != whole.size() - end - 1) return std::nullopt;
  out.bytes = whole.substr(end + 1);
  return out;
}

}  // namespace

std::optional<GitId> git_id(std::string_view hex) {
  GitId out{};
  if (hex.size() != 2 * out.size()) return std::nullopt;
  for (std::size_t i = 0; i < out.size(); ++i) {
    const char* at = hex.data() + 2 * i;
    if (std::from_chars(at, at + 2, out[i], 16).ptr != at + 2) return std::nullopt;
  }
  return out;
}

std::string hex_text(const GitId& id) {
  constexpr char kDigits[] = "0123456789abcdef";
  std::string out;
  for (const std::uint8_t byte : id) {
    out.push_back(kDigits[byte >> 4U]);
    out.push_back(kDigits[byte & 0xFU]);
  }
  return out;
}

struct GitObjects::State {
  std::vector<std::string> folders;
  std::vector<GitPack> packs;
  bool packs_listed = false;
  GitBudget left;
  bool spent = false;
  /// What others differ from, by pack and offset.
  std::map<std::pair<std::size_t, std::uint64_t>, GitObject> kept;
  std::size_t kept_bytes = 0;

  void add_folder(const std::string& folder) {
    if (folders.size() == kMostFolders) return;
    if (std::find(folders.begin(), folders.end(), folder) != folders.end()) return;
    folders.push_back(folder);
    constexpr std::uint64_t kLongestList = 64UL * 1024;
    const RealFileSystem files;
    const auto others = files.read(join_path(folder, "info/alternates"), kLongestList);
    if (!others) return;
    for (std::size_t from = 0; from < others->size();) {
      const std::size_t end = std::min(others->find('\n', from), others->size());
      const std::string_view line = std::string_view(*others).substr(from, end - from);
      from = end + 1;
      if (!line.empty() && line.front() != '#') add_folder(normal_path(join_path(folder, line)));
    }
  }

  bool spend(std::uint64_t bytes) {
    if (left.objects == 0 || bytes > left.bytes) {
      spent = true;
      return false;
    }
    --left.objects;
    left.bytes -= bytes;
    return true;
  }

  void list_packs() {
    if (packs_listed) return;
    packs_listed = true;
    const RealFileSystem files;
    for (const std::string& folder : folders) {
      const std::string inside = join_path(folder, "pack");
      for (const FolderEntry& entry : files.list(inside).value_or(std::vector<FolderEntry>{})) {
        if (entry.kind != FileKind::kFile || !entry.name.ends_with(".idx")) continue;
        if (packs.size() < kMostPacks) packs.emplace_back(join_path(inside, file_stem(entry.name)));
      }
    }
  }

  std::optional<GitObject> find_loose(const GitId& id) {
    const std::string name = club::hex_text(id);
    for (const std::string& folder : folders) {
      const PlainFile file(folder + "/" + name.substr(0, 2) + "/" + name.substr(2));
      if (!file.is_open() || file.size() > kLargestLoose) continue;
      auto whole = inflated_loose(file.read(0, file.size()));
      if (!whole || !spend(whole->size())) return std::nullopt;
      return loose_object(std::move(*whole));
    }
    return std::nullopt;
  }

  std::optional<GitObject> find(const GitId& id) {
    list_packs();
    for (std::size_t i = 0; i < packs.size(); ++i) {
      if (const auto offset = packs[i].find(id)) return from_pack(i, *offset);
    }
    return find_loose(id);
  }

  // Follows an object to the whole one it differs from in the end, then makes the changes.
  std::optional<GitObject> from_pack(std::size_t pack, std::uint64_t offset) {
    struct Change {
      std::uint64_t offset;
      std::string bytes;
    };
    std::vector<Change> changes;
    std::optional<GitObject> whole;
    while (!whole) {
      const auto known = kept.find({pack, offset});
      if (known != kept.end()) {
        whole = known->second;
        break;
      }
      auto found = packs[pack].at(offset, kLargestObject);
      if (!found || !spend(found->bytes.size())) return std::nullopt;
      if (found->type >= 1 && found->type <= 4) {
        whole = GitObject{static_cast<GitKind>(found->type), std::move(found->bytes)};
        keep(pack, offset, *whole);
        break;
      }
      if (found->type != 6 && found->type != 7) return std::nullopt;
      changes.push_back({offset, std::move(found->bytes)});
      if (changes.size() > kLongestChain) return std::nullopt;
      if (found->type == 6) {
        offset = found->base_offset;
      } else if (const auto base = packs[pack].find(found->base_id)) {
        offset = *base;
      } else {
        return std::nullopt;  // a pack on the disk holds all it needs
      }
    }
    for (auto change = changes.rbegin(); change != changes.rend(); ++change) {
      auto made = with_changes(whole->bytes, change->bytes, kLargestObject);
      if (!made || !spend(made->size())) return std::nullopt;
      whole->bytes = std::move(*made);
      keep(pack, change->offset, *whole);
    }
    return whole;
  }

  void keep(std::size_t pack, std::uint64_t offset, const GitObject& object) {
    if (object.kind == GitKind::kBlob) return;
    if (kept_bytes + object.bytes.size() > kMostKept) {
      kept.clear();
      kept_bytes = 0;
    }
    kept_bytes += object.bytes.size();
    kept.insert_or_assign({pack, offset}, object);
  }
};

GitObjects::GitObjects(const std::string& folder, GitBudget budget)
    : state_(std::make_unique<State>()) {
  state_->left = budget;
  state_->add_folder(folder);
}
GitObjects::~GitObjects() = default;
GitObjects::GitObjects(GitObjects&&) noexcept = default;
GitObjects& GitObjects::operator=(GitObjects&&) noexcept = default;

std::optional<GitObject> GitObjects::find(const GitId& id) { return state_->find(id); }
bool GitObjects::is_spent() const { return state_->spent; }

}  // namespace chalkleaf::club
