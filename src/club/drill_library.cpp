// See the header.
#include "club/drill_library.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "club/in_order.h"
#include "club/no_plans.h"
#include "club/places.h"
#include "plan/picture_links.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

constexpr std::size_t kMostDrills = 2'000;
constexpr std::size_t kLargestDrill = 64UL * 1024;
constexpr std::size_t kLargestLibrary = 8UL * 1024 * 1024;
constexpr int kDeepestDrills = 8;  // folders within folders
constexpr std::size_t kDrillsATask = 16;

/// Finds the files of a library, in the order of their paths.
class Finder {
 public:
  Finder(const LibraryPlace& place, Diagnostics& problems) : place_(place), problems_(problems) {}

  std::vector<std::string> find() {
    const std::string folder = join_path(place_.root, kDrillsFolder);
    const FileKind kind = place_.files.kind(folder);
    if (kind == FileKind::kNothing) return {};
    const auto real = place_.files.real_path(folder);
    if (kind != FileKind::kFolder || !real || *real != folder) {
      const bool link = kind == FileKind::kFolder;
      problems_.error(link ? "outside-folder" : "unreadable-file", {},
                      shown(folder) + (link ? " is a link, and links to folders are not followed"
                                            : " is not a folder"),
                      "keep the club's drills in a folder ‘drills’, one file a drill");
      return {};
    }
    walk(folder, 0);
    std::sort(found_.begin(), found_.end());
    return std::move(found_);
  }

 private:
  std::string shown(const std::string& path) const { return path_from(place_.standing, path); }

  void walk(const std::string& folder, int depth) {
    const auto entries = place_.files.list(folder);
    if (!entries || depth > kDeepestDrills) {
      return problems_.error("unreadable-file", {},
                             shown(folder) + " cannot be read: " +
                                 (entries ? "it lies too deep" : entries.error().message),
                             "drills are read from the folder ‘drills’ and the folders in it");
    }
    for (const FolderEntry& entry : *entries) {
      if (full_) return;
      const std::string path = join_path(folder, entry.name);
      if (is_entered(entry)) {
        walk(path, depth + 1);
      } else if (entry.kind == FileKind::kFile && is_plan_name(entry.name)) {
        take(path, entry.is_link);
      } else if (const auto meant = plan_name_meant(place_.files, path, entry)) {
        problems_.warning("unreadable-file", {},
                          shown(path) + " looks like a drill, but is not read as one",
                          "rename it to " + *meant);
      }
    }
  }

  void take(const std::string& path, bool is_link) {
    if (is_link) {
      const auto real = place_.files.real_path(path);
      if (!real || !is_within(*real, place_.root)) {
        return problems_.error("outside-folder", {},
                               shown(path) + " is a link that leads out of the club's folder",
                               "put the drill itself there");
      }
    }
    if (found_.size() == kMostDrills) {
      full_ = true;
      return problems_.error("unreadable-file", {},
                             fmt::format("{} has more than {} drills",
                                         shown(join_path(place_.root, kDrillsFolder)), kMostDrills),
                             "keep those the club uses");
    }
    found_.push_back(path);
  }

  const LibraryPlace& place_;
  Diagnostics& problems_;
  std::vector<std::string> found_;
  bool full_ = false;
};

/// A file's bytes, or why there are none.
struct LoadedFile {
  SourcePtr source;
  Diagnostics found;
};

LoadedFile load_file(const FileSystem& files, const std::string& path, const std::string& display,
                     const PackPtr& pack = nullptr) {
  LoadedFile out;
  out.source = source::load_shipped(files, path, display, pack, out.found);
  if (out.source && out.source->text().size() > kLargestDrill) {
    out.found.error("unreadable-file", {out.source.get(), 0, 0},
                    fmt::format("this drill is larger than {} KB", kLargestDrill / 1024),
                    "a drill is a dozen lines of text; check that this is the right file");
    out.found.keep(std::move(out.source));
    out.source = nullptr;
  }
  return out;
}

plan::LibraryDrill read_file(LoadedFile file, const std::string& path, const std::string& display,
                             const plan::PictureLookup* pictures) {
  plan::LibraryDrill out;
  if (file.source) {
    const source::Document document = source::read_document(file.source, file.found);
    out = plan::read_drill(document, file.found);
  } else {
    // Nobody knows its name, so any plan with a drill nobody knows may mean it.
    out.source = std::make_shared<const Source>(display, "");
    out.name_known = false;
  }
  file.found.keep(out.source);
  out.found = std::move(file.found);
  if (pictures != nullptr) plan::link_pictures(out, path, *pictures);
  return out;
}

// A book of files that are read only when they are asked for. What cannot be named without reading
// is read now. Nothing when all has to be read: two files have one name, or there is too much.
std::shared_ptr<const plan::DrillBook> unread_book(const LibraryPlace& place,
                                                   const std::vector<std::string>& paths,
                                                   const plan::PictureLookup* pictures,
                                                   const plan::DrillBook::Shelf& shelf,
                                                   Diagnostics& found) {
  const auto read = [&files = place.files, standing = place.standing, paths,
                     pictures](std::size_t i) {
    return load_drill(files, paths[i], path_from(standing, paths[i]), pictures);
  };
  std::vector<plan::DrillBook::Unread> drills;
  Diagnostics in_read;
  std::size_t bytes = 0;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const auto text = place.files.read(paths[i], kLargestDrill);
    if (text) bytes += text->size();
    if (bytes > kLargestLibrary) return nullptr;
    const auto names = text ? plan::drill_names_in(*text) : std::nullopt;
    if (names) {
      drills.push_back({*names, std::nullopt});
      continue;
    }
    plan::LibraryDrill drill = read(i);
    in_read.append(drill.found);
    plan::DrillNames known{drill.name.text, {}};
    for (const plan::Words& also : drill.also) known.also.push_back(also.text);
    drills.push_back({std::move(known), std::move(drill)});
  }
  auto book = plan::DrillBook::of_unread(std::move(drills), read, shelf);
  if (!book) return nullptr;
  found.append(in_read);
  return std::make_shared<const plan::DrillBook>(std::move(*book));
}

}  // namespace

plan::LibraryDrill load_drill(const FileSystem& files, const std::string& path,
                              const std::string& display, const plan::PictureLookup* pictures,
                              const PackPtr& pack) {
  return read_file(load_file(files, path, display, pack), path, display, pictures);
}

DrillLibrary load_drills(const LibraryPlace& place, const plan::PictureLookup* pictures,
                         const std::shared_ptr<const plan::ShelfSource>& shelf) {
  DrillLibrary out;
  const std::vector<std::string> paths = Finder(place, out.folder).find();
  if (place.need == Need::kNamed) {
    out.book = unread_book(place, paths, pictures, shelf, out.drills);
    if (out.book) return out;
  }
  const auto display = [&](std::size_t i) { return path_from(place.standing, paths[i]); };
  std::vector<LoadedFile> loaded;
  std::size_t bytes = 0;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    loaded.push_back(load_file(place.files, paths[i], display(i)));
    if (loaded.back().source) bytes += loaded.back().source->text().size();
    if (bytes <= kLargestLibrary) continue;
    out.folder.error("unreadable-file", {},
                     fmt::format("the drills of the club are more than {} MB of text",
                                 kLargestLibrary / 1024 / 1024),
                     "keep those the club uses");
    break;
  }
  std::vector<plan::LibraryDrill> drills;
  drills.reserve(loaded.size());
  // Several files are one task: a drill is read faster than a thread is woken for it.
  const auto make_worker = [&] {
    return [&](std::size_t task) {
      std::vector<plan::LibraryDrill> read;
      const std::size_t end = std::min((task + 1) * kDrillsATask, loaded.size());
      for (std::size_t i = task * kDrillsATask; i < end; ++i) {
        read.push_back(read_file(std::move(loaded[i]), paths[i], display(i), pictures));
      }
      return read;
    };
  };
  const auto take = [&](std::size_t, std::vector<plan::LibraryDrill> read) {
    for (plan::LibraryDrill& drill : read) {
      out.drills.append(drill.found);
      drills.push_back(std::move(drill));
    }
  };
  run_in_order<std::vector<plan::LibraryDrill>>((loaded.size() + kDrillsATask - 1) / kDrillsATask,
                                                place.jobs, make_worker, take);
  out.book = std::make_shared<const plan::DrillBook>(std::move(drills), out.drills, shelf);
  return out;
}

}  // namespace chalkleaf::club
