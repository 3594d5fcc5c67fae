// See the header.
#include "club/begin.h"

#include <algorithm>
#include <functional>

#include "base/text.h"
#include "club/resources.h"
#include "club/tidy.h"

namespace chalkleaf::club {
namespace {

constexpr std::uint64_t kLargestFile = 256UL * 1024;
constexpr int kDeepestTemplate = 4;

/// One file of the starter.
struct StarterFile {
  std::string name;  ///< within the folder
  std::string text;
};
using Starter = tl::expected<std::vector<StarterFile>, std::string>;

// `gitignore` would be hidden, and at work, under its own name in our repository.
std::string name_given(const std::string& name) {
  return name == "gitignore" ? ".gitignore" : name;
}

tl::expected<void, std::string> collect(const FileSystem& files, const std::string& root,
                                        const std::string& inside, int depth,
                                        std::vector<StarterFile>& out) {
  const std::string folder = inside.empty() ? root : join_path(root, inside);
  const auto unreadable = [&](const std::string& path, const std::string& why) {
    return tl::unexpected("the files to begin with cannot be read: " + path + ": " + why);
  };
  const auto entries = files.list(folder);
  if (!entries || depth > kDeepestTemplate) {
    return unreadable(folder, entries ? "too deep" : entries.error().message);
  }
  for (const FolderEntry& entry : *entries) {
    if (entry.is_link || entry.name.starts_with('.') || entry.name == "out") continue;
    const std::string name = inside.empty() ? entry.name : join_path(inside, entry.name);
    if (entry.kind == FileKind::kFolder) {
      if (auto below = collect(files, root, name, depth + 1, out); !below) return below;
    } else if (entry.kind == FileKind::kFile) {
      auto text = files.read(join_path(root, name), kLargestFile);
      if (!text) return unreadable(join_path(root, name), text.error().message);
      out.push_back({name_given(name), std::move(*text)});
    }
  }
  return {};
}

Starter read_starter(const FileSystem& files, const std::string& root) {
  std::vector<StarterFile> out;
  if (auto read = collect(files, root, {}, 0, out); !read) return tl::unexpected(read.error());
  if (out.empty()) return tl::unexpected("there are no files to begin with in " + root);
  return out;
}

bool is_link(const FileSystem& files, const std::string& path) {
  const auto beside = files.list(parent_path(path));
  if (!beside) return false;
  const std::string name = file_name(path);
  return std::any_of(beside->begin(), beside->end(),
                     [&](const FolderEntry& entry) { return entry.name == name && entry.is_link; });
}

// Why the folder cannot be used; empty when it can.
std::string in_the_way(const FileSystem& files, const std::string& path, const std::string& named) {
  if (is_link(files, path)) {
    return "‘" + named + "’ is a link; name the folder it leads to, or another one";
  }
  switch (files.kind(path)) {
    case FileKind::kNothing:
      return {};
    case FileKind::kFolder:
      break;
    case FileKind::kFile:
    case FileKind::kOther:
      return "‘" + named + "’ is there already and is not a folder; name another one";
  }
  const auto entries = files.list(path);
  if (!entries) return "‘" + named + "’ cannot be looked into: " + entries.error().message;
  constexpr std::size_t kMostNamed = 5;
  std::vector<std::string> found;
  std::size_t more = 0;
  for (const FolderEntry& entry : *entries) {
    if (entry.name == ".git") continue;
    found.size() < kMostNamed ? found.push_back("‘" + entry.name + "’") : static_cast<void>(++more);
  }
  if (found.empty()) return {};
  if (more > 0) found.push_back(std::to_string(more) + " more");
  return "‘" + named + "’ is not empty: " + join_list(found) +
         (found.size() == 1 ? " is" : " are") + " there; name a new folder, or an empty one";
}

// The folders that writing into `path` will make, the innermost first.
std::vector<std::string> missing_folders(const FileSystem& files, std::string path) {
  std::vector<std::string> out;
  while (files.kind(path) == FileKind::kNothing && path != "/" && path != ".") {
    out.push_back(path);
    path = parent_path(path);
  }
  return out;
}

/// Writes files, and takes them back unless kept.
class Writing {
 public:
  Writing(FileSystem& files, const std::string& folder)
      : files_(files), made_(missing_folders(files, folder)) {}
  Writing(const Writing&) = delete;
  Writing& operator=(const Writing&) = delete;
  ~Writing() {
    if (kept_) return;
    for (auto path = written_.rbegin(); path != written_.rend(); ++path) (void)files_.remove(*path);
    // The deepest first: a folder goes only when it is empty.
    std::sort(inside_.begin(), inside_.end(), std::greater<>());
    for (const std::string& folder : inside_) (void)files_.remove_empty_folder(folder);
    for (const std::string& folder : made_) (void)files_.remove_empty_folder(folder);
  }

  tl::expected<void, FileError> write(const std::string& path, const std::string& text) {
    for (std::string& folder : missing_folders(files_, parent_path(path))) {
      inside_.push_back(std::move(folder));
    }
    written_.push_back(path);
    return files_.write_whole(path, text);
  }
  void keep() { kept_ = true; }

 private:
  FileSystem& files_;
  std::vector<std::string> made_;
  std::vector<std::string> inside_;
  std::vector<std::string> written_;
  bool kept_ = false;
};

}  // namespace

tl::expected<Begun, std::string> begin_club(const Surroundings& around, const std::string& standing,
                                            const std::string& folder) {
  FileSystem& files = around.files;
  const auto data = find_data_folder(files, around.environment, around.program);
  if (!data) return tl::unexpected(data.error());
  const Starter starter = read_starter(files, join_path(*data, kStarterFolder));
  if (!starter) return tl::unexpected(starter.error());
  const std::string path = normal_path(join_path(standing, folder));
  if (std::string why = in_the_way(files, path, folder); !why.empty()) return tl::unexpected(why);
  Begun out{folder, {}};
  Writing writing(files, path);
  for (const StarterFile& file : *starter) {
    const std::string target = join_path(path, file.name);
    if (const auto written = writing.write(target, file.text); !written) {
      return tl::unexpected("‘" + normal_path(join_path(folder, file.name)) +
                            "’ cannot be written: " + written.error().message);
    }
    out.files.push_back(file.name);
  }
  writing.keep();
  std::sort(out.files.begin(), out.files.end());
  return out;
}

bool names_draft(std::string_view argument) {
  return argument.ends_with(".md") || argument.ends_with(".txt");
}

tl::expected<std::string, std::string> begin_plan(const Request& request,
                                                  const Surroundings& around, Listener& listener) {
  const std::string& draft = request.arguments.front();
  const std::string path = normal_path(join_path(request.standing, draft));
  if (around.files.kind(path) != FileKind::kFile) {
    return tl::unexpected("there is no file ‘" + draft +
                          "’; write your session in it as you would on paper, then begin from it");
  }
  // Beside the draft: `monday.txt` becomes `monday.md`, `monday.md` becomes `monday-plan.md`.
  const std::size_t dot = draft.rfind('.');
  const std::string name = draft.substr(0, dot) + (draft.ends_with(".md") ? "-plan.md" : ".md");
  const std::string target = normal_path(join_path(request.standing, name));
  if (around.files.kind(target) != FileKind::kNothing || is_link(around.files, target)) {
    return tl::unexpected("‘" + name + "’ is there already and stays as it is; move it, or use " +
                          "`chalkleaf tidy " + draft + "`");
  }
  const TidyRun made = tidy(request, TidyWay::kShow, around, listener);
  if (made.plans.size() != 1) return tl::unexpected("‘" + draft + "’ could not be read as a plan");
  const Tidied& plan = made.plans.front();
  if (plan.after == plan.before) {
    return tl::unexpected("‘" + draft + "’ is a plan in the taught form already");
  }
  if (const auto written = around.files.write_whole(target, plan.after); !written) {
    return tl::unexpected("‘" + name + "’ cannot be written: " + written.error().message);
  }
  return name;
}

}  // namespace chalkleaf::club
