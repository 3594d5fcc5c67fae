#include "club/git_history.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <memory>
#include <string_view>

#include "base/text.h"
#include "club/git_objects.h"

namespace chalkleaf::club {
namespace {

constexpr int kMostCommits = 20'000;  // a plan older than that has no revision on its sheet
constexpr std::uint64_t kLargestHead = 4UL * 1024;
constexpr std::uint64_t kLargestRefs = 16UL * 1024 * 1024;

std::string_view first_line(std::string_view text) { return trim(text.substr(0, text.find('\n'))); }

/// Where the files of a repository lie.
struct RepositoryPlace {
  std::string work_tree;
  std::string own;     ///< HEAD; of a linked work tree its own
  std::string common;  ///< objects and refs
};

std::optional<RepositoryPlace> place_at(const FileSystem& files, const std::string& folder) {
  RepositoryPlace out{folder, join_path(folder, ".git"), {}};
  const FileKind kind = files.kind(out.own);
  if (kind == FileKind::kFile) {  // a linked work tree, or a submodule
    const auto text = files.read(out.own, kLargestHead);
    constexpr std::string_view kLeads = "gitdir: ";
    if (!text || !text->starts_with(kLeads)) return std::nullopt;
    out.own =
        normal_path(join_path(folder, first_line(std::string_view(*text).substr(kLeads.size()))));
  } else if (kind != FileKind::kFolder) {
    return std::nullopt;
  }
  const auto common = files.read(join_path(out.own, "commondir"), kLargestHead);
  out.common = common ? normal_path(join_path(out.own, first_line(*common))) : out.own;
  const bool sound = files.kind(join_path(out.own, "HEAD")) == FileKind::kFile &&
                     files.kind(join_path(out.common, "objects")) == FileKind::kFolder;
  return sound ? std::optional(std::move(out)) : std::nullopt;
}

// A ref's name becomes a path, and the club's folder comes from anyone.
bool is_ref_name(std::string_view name) {
  return name.starts_with("refs/") && name.find("..") == std::string_view::npos &&
         name.find('\0') == std::string_view::npos;
}

std::optional<GitId> packed_ref(const FileSystem& files, const std::string& common,
                                std::string_view name) {
  const auto refs = files.read(join_path(common, "packed-refs"), kLargestRefs);
  if (!refs) return std::nullopt;
  const std::string ending = " " + std::string(name) + "\n";
  constexpr std::size_t kDigits = 40;
  for (std::size_t at = refs->find(ending); at != std::string::npos;
       at = refs->find(ending, at + 1)) {
    const bool whole = at == kDigits || (at > kDigits && (*refs)[at - kDigits - 1] == '\n');
    if (whole) return git_id(std::string_view(*refs).substr(at - kDigits, kDigits));
  }
  return std::nullopt;
}

std::optional<GitId> head_of(const FileSystem& files, const RepositoryPlace& place) {
  constexpr std::string_view kLeads = "ref: ";
  constexpr int kMostSteps = 5;  // as git
  auto text = files.read(join_path(place.own, "HEAD"), kLargestHead);
  for (int i = 0; text && i < kMostSteps; ++i) {
    const std::string line(first_line(*text));
    if (!line.starts_with(kLeads)) return git_id(line);
    const std::string name(trim(std::string_view(line).substr(kLeads.size())));
    if (!is_ref_name(name)) return std::nullopt;
    text = files.read(join_path(place.common, name), kLargestHead);
    if (!text) return packed_ref(files, place.common, name);
  }
  return std::nullopt;
}

struct Commit {
  GitId id{};
  GitId tree{};
  std::optional<GitId> parent;  ///< the first
  std::int64_t time = 0;
  int offset_minutes = 0;
};

// `committer A Name <mail> 1764600000 +1300`; what is no time stays 0.
void read_time(std::string_view line, Commit& commit) {
  const std::size_t mail = line.rfind('>');
  if (mail == std::string_view::npos) return;
  std::string_view rest = trim(line.substr(mail + 1));
  const std::size_t blank = rest.find(' ');
  const std::string_view seconds = rest.substr(0, blank);
  std::from_chars(seconds.data(), seconds.data() + seconds.size(), commit.time);
  if (blank == std::string_view::npos) return;
  const std::string_view zone = trim(rest.substr(blank));
  int digits = 0;
  if (zone.size() != 5) return;
  std::from_chars(zone.data() + 1, zone.data() + zone.size(), digits);
  const int minutes = digits / 100 * 60 + digits % 100;
  commit.offset_minutes = zone.front() == '-' ? -minutes : minutes;
}

std::optional<Commit> commit_of(GitObjects& objects, const GitId& id) {
  const auto object = objects.find(id);
  if (!object || object->kind != GitKind::kCommit) return std::nullopt;
  Commit out;
  out.id = id;
  bool has_tree = false;
  std::string_view rest = object->bytes;
  while (!rest.empty() && rest.front() != '\n') {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    const std::string_view line = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    const std::size_t blank = std::min(line.find(' '), line.size());
    const std::string_view key = line.substr(0, blank);
    const std::string_view value = line.substr(std::min(blank + 1, line.size()));
    if (key == "tree" && !has_tree) {
      const auto tree = git_id(value);
      if (!tree) return std::nullopt;
      out.tree = *tree;
      has_tree = true;
    } else if (key == "parent" && !out.parent) {
      out.parent = git_id(value);
      if (!out.parent) return std::nullopt;
    } else if (key == "committer") {
      read_time(line, out);
    }
  }
  return has_tree ? std::optional(out) : std::nullopt;
}

/// A folder as a commit has it.
struct Tree {
  GitId id{};
  std::string bytes;  ///< entries: mode, blank, name, NUL, the twenty bytes of an id

  struct Entry {
    GitId id{};
    bool is_folder = false;
  };
  std::optional<Entry> find(std::string_view name) const {
    constexpr std::size_t kId = std::tuple_size_v<GitId>;
    std::string_view rest = bytes;
    while (true) {
      const std::size_t blank = rest.find(' ');
      const std::size_t end = rest.find('\0');
      if (blank == std::string_view::npos || end == std::string_view::npos || blank > end ||
          rest.size() - end - 1 < kId) {
        return std::nullopt;
      }
      if (rest.substr(blank + 1, end - blank - 1) == name) {
        Entry out;
        std::copy_n(rest.begin() + static_cast<std::ptrdiff_t>(end) + 1, kId, out.id.begin());
        out.is_folder = rest.substr(0, blank) == "40000";
        return out;
      }
      rest.remove_prefix(end + 1 + kId);
    }
  }
};

std::optional<Tree> tree_of(GitObjects& objects, const GitId& id) {
  auto object = objects.find(id);
  if (!object || object->kind != GitKind::kTree) return std::nullopt;
  return Tree{id, std::move(object->bytes)};
}

/// The files still looked for, as the folders of the repository hold them.
struct Place {
  std::map<std::string, std::unique_ptr<Place>> inside;
  FileHistory* file = nullptr;  ///< null: a folder
};

class Walk {
 public:
  explicit Walk(GitObjects& objects) : objects_(objects) {}

  /// False when the newest commit cannot be read, so that nothing is known of any file.
  bool run(const GitId& head, Place& wanted) {
    const auto commit = commit_of(objects_, head);
    const auto tree = commit ? tree_of(objects_, commit->tree) : std::nullopt;
    if (!tree) return false;
    note_contents(wanted, *tree);
    walk(*commit, *tree, wanted);
    return true;
  }
  /// True when files were still looked for after kMostCommits.
  bool had_enough() const { return had_enough_; }

 private:
  void walk(std::optional<Commit> commit, std::optional<Tree> tree, Place& wanted) {
    for (int steps = 0; steps < kMostCommits && !wanted.inside.empty(); ++steps) {
      std::optional<Commit> before;
      std::optional<Tree> tree_before;
      if (commit->parent) {
        before = commit_of(objects_, *commit->parent);
        if (!before) return;  // a shallow clone ends here
        // Most commits of a large repository change no plan, and many not even a tree.
        tree_before = before->tree == tree->id ? tree : tree_of(objects_, before->tree);
        if (!tree_before) return;
      }
      settle(wanted, *tree, tree_before ? &*tree_before : nullptr, *commit);
      if (!before) return;
      commit = std::move(before);
      tree = std::move(tree_before);
    }
    had_enough_ = !wanted.inside.empty();
  }

  // Marks what HEAD has, and drops the rest: that is not yet committed.
  void note_contents(Place& place, const Tree& tree) {
    std::erase_if(place.inside, [&](const auto& child) {
      const auto entry = tree.find(child.first);
      if (!entry) return true;
      if (FileHistory* file = child.second->file) {
        if (entry->is_folder) return true;
        const auto blob = objects_.find(entry->id);
        file->in_head = true;
        if (blob && blob->kind == GitKind::kBlob) file->content = hash128(blob->bytes);
        return false;
      }
      const auto below = entry->is_folder ? tree_of(objects_, entry->id) : std::nullopt;
      if (!below) return true;
      note_contents(*child.second, *below);
      return child.second->inside.empty();
    });
  }

  // Settles the files that differ between a commit and the one before it (null: there is none), and
  // takes them off the list. Folders that are the same are not looked into.
  void settle(Place& place, const Tree& now, const Tree* before, const Commit& commit) {
    if (before != nullptr && now.id == before->id) return;
    std::erase_if(place.inside, [&](const auto& child) {
      const auto entry = now.find(child.first);
      if (!entry) return true;
      const auto old = before == nullptr ? std::nullopt : before->find(child.first);
      if (old && entry->id == old->id) return false;
      if (FileHistory* file = child.second->file) {
        credit(*file, commit);
        return true;
      }
      const auto below = tree_of(objects_, entry->id);
      const auto below_before = old && old->is_folder ? tree_of(objects_, old->id) : std::nullopt;
      if (!below) return true;
      settle(*child.second, *below, below_before ? &*below_before : nullptr, commit);
      return child.second->inside.empty();
    });
  }

  static void credit(FileHistory& file, const Commit& commit) {
    constexpr std::size_t kShown = 7;
    file.short_id = hex_text(commit.id).substr(0, kShown);
    file.time = commit.time;
    file.offset_minutes = commit.offset_minutes;
  }

  GitObjects& objects_;
  bool had_enough_ = false;
};

// The nearest sound repository at or above a folder, as git looks for it.
std::optional<RepositoryPlace> repository_above(const FileSystem& files,
                                                const std::string& folder) {
  for (std::string at = folder;; at = parent_path(at)) {
    if (files.kind(join_path(at, ".git")) != FileKind::kNothing) {
      if (auto place = place_at(files, at)) return place;
      // A file that leads nowhere is an error to git, a folder of another's making is none.
      if (files.kind(join_path(at, ".git")) == FileKind::kFile) return std::nullopt;
    }
    if (at == "/" || at == ".") return std::nullopt;
  }
}

}  // namespace

bool is_in_repository(const FileSystem& files, const std::string& folder) {
  for (std::string at = folder;; at = parent_path(at)) {
    if (files.kind(join_path(at, ".git")) != FileKind::kNothing) return true;
    if (at == "/" || at == ".") return false;
  }
}

FileHistories file_histories(const FileSystem& files, const std::string& folder,
                             const std::vector<std::string>& paths) {
  FileHistories histories{std::vector<std::optional<FileHistory>>(paths.size()), {}};
  std::vector<std::optional<FileHistory>>& out = histories.files;
  const auto repository = repository_above(files, folder);
  if (!repository) return histories;
  Place wanted;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const std::string& top = repository->work_tree;
    if (!is_within(paths[i], top) || paths[i].size() == top.size()) continue;
    Place* place = &wanted;
    std::string_view rest = std::string_view(paths[i]).substr(top == "/" ? 1 : top.size() + 1);
    for (std::size_t slash = 0; slash != std::string_view::npos;) {
      slash = rest.find('/');
      auto& next = place->inside[std::string(rest.substr(0, slash))];
      if (!next) next = std::make_unique<Place>();
      place = next.get();
      if (slash != std::string_view::npos) rest.remove_prefix(slash + 1);
    }
    place->file = &out[i].emplace();
  }
  // Without a first commit every file is one that is not yet committed.
  const auto head = head_of(files, *repository);
  if (!head) return histories;
  GitObjects objects(join_path(repository->common, "objects"));
  Walk walk(objects);
  if (!walk.run(*head, wanted)) std::fill(out.begin(), out.end(), std::nullopt);
  if (objects.is_spent()) {
    histories.trouble = "is larger than can be looked through in good time";
  } else if (walk.had_enough()) {
    histories.trouble =
        fmt::format("has plans that none of its last {} commits changed", kMostCommits);
  }
  return histories;
}

}  // namespace chalkleaf::club
