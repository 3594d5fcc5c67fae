#include "club/revision.h"

#include <fmt/format.h>
#include <git2.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <map>
#include <sstream>

#include "club/side_process.h"

namespace chalkleaf::club {
namespace {

constexpr std::int64_t kNoTime = -1;
constexpr int kMostCommits = 20'000;  // a plan older than that has no revision on its sheet
constexpr std::string_view kHadEnough = "more\n";

template <class T, void (*Free)(T*)>
struct Freed {
  void operator()(T* object) const { Free(object); }
};
using Repository = std::unique_ptr<git_repository, Freed<git_repository, git_repository_free>>;
using Commit = std::unique_ptr<git_commit, Freed<git_commit, git_commit_free>>;
using Tree = std::unique_ptr<git_tree, Freed<git_tree, git_tree_free>>;

/// libgit2's process-wide state, for as long as one of these lives.
struct Library {
  Library() {
    git_libgit2_init();
    // A club's folder often belongs to another user (a shared disk, a container). Nothing in a
    // repository is run by reading it.
    git_libgit2_opts(GIT_OPT_SET_OWNER_VALIDATION, 0);
    for (const int level : {GIT_CONFIG_LEVEL_SYSTEM, GIT_CONFIG_LEVEL_XDG, GIT_CONFIG_LEVEL_GLOBAL,
                            GIT_CONFIG_LEVEL_PROGRAMDATA}) {
      git_libgit2_opts(GIT_OPT_SET_SEARCH_PATH, level, "");
    }
  }
  Library(const Library&) = delete;
  Library& operator=(const Library&) = delete;
  ~Library() { git_libgit2_shutdown(); }
};

/// What is known of one plan.
struct Known {
  bool in_head = false;
  git_oid blob{};        ///< of HEAD, when in_head
  std::string short_id;  ///< of the last commit that changed it; empty when not found
  std::int64_t time = 0;
  int offset_minutes = 0;
};

/// The plans still looked for, as the folders of the repository hold them.
struct Place {
  std::map<std::string, std::unique_ptr<Place>> inside;
  Known* file = nullptr;  ///< a plan, when not a folder
};

Tree tree_of(git_repository* repository, const git_oid* id) {
  git_tree* tree = nullptr;
  return Tree(git_tree_lookup(&tree, repository, id) == 0 ? tree : nullptr);
}

Tree tree_of(const git_commit* commit) {
  git_tree* tree = nullptr;
  return Tree(git_commit_tree(&tree, commit) == 0 ? tree : nullptr);
}

Commit head_of(git_repository* repository) {
  git_oid id;
  git_commit* commit = nullptr;
  const bool found = git_reference_name_to_id(&id, repository, "HEAD") == 0 &&
                     git_commit_lookup(&commit, repository, &id) == 0;
  return Commit(found ? commit : nullptr);
}

class Walk {
 public:
  explicit Walk(git_repository* repository) : repository_(repository) {}

  /// False: the history is longer than was looked through, and plans are still looked for.
  bool run(Place& wanted) {
    Commit commit = head_of(repository_);
    Tree tree = commit ? tree_of(commit.get()) : nullptr;
    if (!tree) return true;
    note_blobs(wanted, tree.get());
    for (int steps = 0; steps < kMostCommits && !wanted.inside.empty(); ++steps) {
      Commit before;
      Tree tree_before;
      if (git_commit_parentcount(commit.get()) > 0) {
        git_commit* parent = nullptr;
        if (git_commit_parent(&parent, commit.get(), 0) != 0) return true;  // a shallow clone
        before.reset(parent);
        tree_before = tree_of(parent);
        if (!tree_before) return true;
      }
      settle(wanted, tree.get(), tree_before.get(), commit.get());
      if (!before) return true;
      commit = std::move(before);
      tree = std::move(tree_before);
    }
    return wanted.inside.empty();
  }

 private:
  // Marks what HEAD has, and drops the rest: that is not yet committed.
  void note_blobs(Place& place, const git_tree* tree) {
    std::erase_if(place.inside, [&](const auto& child) {
      const git_tree_entry* entry = git_tree_entry_byname(tree, child.first.c_str());
      if (entry == nullptr) return true;
      const bool is_folder = git_tree_entry_type(entry) == GIT_OBJECT_TREE;
      if (child.second->file != nullptr) {
        child.second->file->in_head = !is_folder;
        child.second->file->blob = *git_tree_entry_id(entry);
        return is_folder;
      }
      const Tree below = is_folder ? tree_of(repository_, git_tree_entry_id(entry)) : nullptr;
      if (!below) return true;
      note_blobs(*child.second, below.get());
      return child.second->inside.empty();
    });
  }

  // Settles the plans that differ between a commit and the one before it (null: there is none), and
  // takes them off the list. Folders that are the same are not looked into.
  void settle(Place& place, const git_tree* now, const git_tree* before, const git_commit* commit) {
    if (before != nullptr && git_oid_equal(git_tree_id(now), git_tree_id(before)) != 0) return;
    std::erase_if(place.inside, [&](const auto& child) {
      const git_tree_entry* entry = git_tree_entry_byname(now, child.first.c_str());
      const git_tree_entry* old =
          before == nullptr ? nullptr : git_tree_entry_byname(before, child.first.c_str());
      if (entry == nullptr) return true;
      const git_oid* id = git_tree_entry_id(entry);
      if (old != nullptr && git_oid_equal(id, git_tree_entry_id(old)) != 0) return false;
      if (child.second->file != nullptr) {
        credit(*child.second->file, commit);
        return true;
      }
      const bool was_folder = old != nullptr && git_tree_entry_type(old) == GIT_OBJECT_TREE;
      const Tree below = tree_of(repository_, id);
      const Tree below_before = was_folder ? tree_of(repository_, git_tree_entry_id(old)) : nullptr;
      if (!below) return true;
      settle(*child.second, below.get(), below_before.get(), commit);
      return child.second->inside.empty();
    });
  }

  static void credit(Known& known, const git_commit* commit) {
    constexpr std::size_t kShown = 7;
    char text[GIT_OID_HEXSZ + 1] = {};
    git_oid_tostr(text, sizeof text, git_commit_id(commit));
    known.short_id.assign(text, kShown);
    known.time = git_commit_time(commit);
    known.offset_minutes = git_commit_time_offset(commit);
  }

  git_repository* repository_;
};

bool is_in_repository(const FileSystem& files, const std::string& folder) {
  for (std::string at = folder;; at = parent_path(at)) {
    if (files.kind(join_path(at, ".git")) != FileKind::kNothing) return true;
    if (at == "/" || at == ".") return false;
  }
}

Date day_of(const Known& known) {
  constexpr std::int64_t kDay = 86'400;
  const std::int64_t local = known.time + std::int64_t{known.offset_minutes} * 60;
  return date_from_days(local / kDay - (local % kDay < 0 ? 1 : 0));
}

// The walk itself, for the process it is asked in: a line for each plan, in their order:
// `in_head blob short_id time offset_minutes`, or empty when nothing is known of it; then
// kHadEnough when that is why.
std::string walk_repository(const std::string& folder, const std::vector<std::string>& paths) {
  const Library library;
  git_repository* opened = nullptr;
  if (git_repository_open_ext(&opened, folder.c_str(), GIT_REPOSITORY_OPEN_CROSS_FS, nullptr) !=
      0) {
    return {};
  }
  const Repository repository(opened);
  const char* work_tree = git_repository_workdir(opened);
  if (work_tree == nullptr) return {};
  const std::string top = normal_path(work_tree);
  Place wanted;
  std::vector<std::unique_ptr<Known>> plans;
  for (const std::string& path : paths) {
    plans.push_back(nullptr);
    if (!is_within(path, top)) continue;
    Place* place = &wanted;
    std::string_view rest = std::string_view(path).substr(top == "/" ? 1 : top.size() + 1);
    for (std::size_t slash = 0; slash != std::string_view::npos;) {
      slash = rest.find('/');
      auto& next = place->inside[std::string(rest.substr(0, slash))];
      if (!next) next = std::make_unique<Place>();
      place = next.get();
      if (slash != std::string_view::npos) rest.remove_prefix(slash + 1);
    }
    plans.back() = std::make_unique<Known>();
    place->file = plans.back().get();
  }
  const bool whole = Walk(opened).run(wanted);
  std::string out;
  for (const auto& plan : plans) {
    if (plan) {
      char blob[GIT_OID_HEXSZ + 1] = {};
      git_oid_tostr(blob, sizeof blob, &plan->blob);
      out += fmt::format("{} {} {} {} {}", plan->in_head ? 1 : 0, blob,
                         plan->short_id.empty() ? "-" : plan->short_id, plan->time,
                         plan->offset_minutes);
    }
    out += '\n';
  }
  if (!whole) out += kHadEnough;
  return out;
}

// A line of walk_repository(). A time no calendar of ours has is no time.
std::optional<Known> known_from(std::string_view line) {
  std::istringstream words{std::string(line)};
  Known out;
  std::string blob;
  if (!(words >> out.in_head >> blob >> out.short_id >> out.time >> out.offset_minutes)) {
    return std::nullopt;
  }
  if (git_oid_fromstr(&out.blob, blob.c_str()) != 0) return std::nullopt;
  if (out.short_id == "-") out.short_id.clear();
  constexpr std::int64_t kLastSecond =
      253'402'300'799;                    // of the year 9999, as far as a PDF's dates go
  constexpr int kWidestOffset = 14 * 60;  // minutes from UTC, of any place on earth
  if (out.time < 0 || out.time > kLastSecond || std::abs(out.offset_minutes) > kWidestOffset) {
    out.time = kNoTime;
    out.offset_minutes = 0;
  }
  return out;
}

}  // namespace

struct Revisions::State {
  Library library;                     // hashes what a plan holds now; opens nothing
  std::map<std::string, Known> plans;  ///< by absolute path
};

std::function<Revisions()> Revisions::ask(const FileSystem& files, const std::string& folder,
                                          const std::vector<std::string>& paths) {
  // Looking for .git first saves plans outside any repository the cost of a process.
  if (!is_in_repository(files, folder)) return [] { return Revisions(); };
  constexpr std::chrono::seconds kPatience{10};
  constexpr std::size_t kMostAnswer = 64 * 1024 * 1024;
  auto aside = std::make_shared<Aside>([&] { return walk_repository(folder, paths); }, kPatience,
                                       kMostAnswer);
  return [aside, paths] {
    Revisions out;
    const auto said = aside->answer();
    if (!said) out.trouble_ = "does not answer";
    if (!said || said->empty()) return out;
    out.state_ = std::make_unique<State>();
    std::string_view rest = *said;
    for (const std::string& path : paths) {
      const std::size_t end = std::min(rest.find('\n'), rest.size());
      if (const auto known = known_from(rest.substr(0, end))) out.state_->plans[path] = *known;
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    if (rest == kHadEnough) {
      out.trouble_ =
          fmt::format("has plans that none of its last {} commits changed", kMostCommits);
    }
    return out;
  };
}

Revisions::Revisions(const FileSystem& files, const std::string& folder,
                     const std::vector<std::string>& paths)
    : Revisions(ask(files, folder, paths)()) {}
Revisions::~Revisions() = default;
Revisions::Revisions(Revisions&&) noexcept = default;
Revisions& Revisions::operator=(Revisions&&) noexcept = default;

Revision Revisions::of(const std::string& path, std::string_view bytes) const {
  Revision out;
  if (!state_) return out;
  const auto found = state_->plans.find(path);
  if (found == state_->plans.end()) return out;
  const Known& known = found->second;
  if (!known.in_head) {
    out.text = "not yet committed";
    return out;
  }
  if (known.short_id.empty()) return out;
  git_oid now;
  const bool same = git_odb_hash(&now, bytes.data(), bytes.size(), GIT_OBJECT_BLOB) == 0 &&
                    git_oid_equal(&now, &known.blob) != 0;
  out.text = same ? known.short_id : known.short_id + ", edited";
  if (known.time == kNoTime) return out;
  out.date = day_of(known);
  out.committed = known.time;
  return out;
}

}  // namespace chalkleaf::club
