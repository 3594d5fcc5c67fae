// See the header.
#include "club/shelf.h"

#include <algorithm>
#include <charconv>
#include <deque>
#include <map>
#include <mutex>
#include <vector>

#include "base/text.h"
#include "club/drill_library.h"
#include "club/no_plans.h"
#include "plan/drill_names.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

constexpr const char* kShelfFolder = "themes/shelf";
constexpr std::uint64_t kLargestShelved = 64UL * 1024;

std::vector<std::string> shelf_files(const FileSystem& files, const std::string& folder) {
  std::vector<std::string> out;
  const auto entries = files.list(folder);
  if (!entries) return out;
  for (const FolderEntry& entry : *entries) {
    if (entry.kind == FileKind::kFile && is_plan_name(entry.name)) out.push_back(entry.name);
  }
  return out;
}

/// The names of a shelf as they are gathered: a title goes before another drill's second name.
struct Gatherer {
  struct Name {
    std::string name;
    std::size_t drill = 0;
  };
  std::map<std::string, Name> by_key;

  void add(std::string_view name, std::size_t drill) {
    name = trim(name);
    std::string key = plan::key_of_name(name).key;
    if (!key.empty()) by_key.try_emplace(std::move(key), Name{std::string(name), drill});
  }
};

/// Lines of a text, one after the other.
std::string_view next_line(std::string_view& rest) {
  const std::size_t end = std::min(rest.find('\n'), rest.size());
  const std::string_view line = rest.substr(0, end);
  rest.remove_prefix(std::min(end + 1, rest.size()));
  return line;
}
std::size_t number_of(std::string_view text) {
  std::size_t out = 0;
  std::from_chars(text.data(), text.data() + text.size(), out);
  return out;
}

class FolderShelf final : public plan::ShelfSource {
 public:
  /// `names` points into `owner`; `pack` may be null.
  FolderShelf(const FileSystem& files, std::string folder, std::string_view names,
              std::shared_ptr<const void> owner, PackPtr pack)
      : files_(files),
        folder_(std::move(folder)),
        owner_(std::move(owner)),
        pack_(std::move(pack)) {
    std::string_view rest = names;
    drills_.resize(number_of(next_line(rest)));
    for (Drill& drill : drills_) drill.file = next_line(rest);
    while (!rest.empty()) {
      const std::string_view line = next_line(rest);
      const std::size_t first = std::min(line.find('\t'), line.size());
      const std::size_t second = std::min(line.find('\t', first + 1), line.size());
      const std::size_t drill = number_of(line.substr(std::min(second + 1, line.size())));
      if (second == line.size() || drill >= drills_.size()) continue;  // damaged
      names_.push_back({line.substr(0, first), line.substr(first + 1, second - first - 1), drill});
    }
  }

  const std::vector<plan::ShelfName>& names() const override { return names_; }

  const plan::LibraryDrill& drill(std::size_t index) const override {
    Drill& drill = drills_[index];
    std::call_once(drill.once, [&] {
      const std::string file(drill.file);
      // Its folder is wherever the program was installed: that is nothing to a coach.
      drill.read = load_drill(files_, join_path(folder_, file), "shelf/" + file, nullptr, pack_);
      drill.read.of_shelf = true;
    });
    return drill.read;
  }

 private:
  struct Drill {
    std::string_view file;
    std::once_flag once;
    plan::LibraryDrill read;
  };

  const FileSystem& files_;
  std::string folder_;
  std::shared_ptr<const void> owner_;  // of what names_ and the files point into
  PackPtr pack_;                       // of what was read of the drills when the program was built
  std::vector<plan::ShelfName> names_;
  mutable std::deque<Drill> drills_;
};

// The names belong to these files, and to none that came or went since.
Hash128 key_of(const std::vector<std::string>& found) {
  std::string all;
  for (const std::string& file : found) all += file + "\n";
  return pack_key("shelf", all);
}

std::string names_in(const FileSystem& files, const std::string& folder,
                     const std::vector<std::string>& found) {
  std::vector<plan::DrillNames> drills;
  for (const std::string& file : found) {
    const std::string path = join_path(folder, file);
    const auto text = files.read(path, kLargestShelved);
    auto names = text ? plan::drill_names_in(*text) : std::nullopt;
    if (!names) {  // it takes reading to know
      const plan::LibraryDrill drill = load_drill(files, path, path, nullptr);
      names = plan::DrillNames{drill.name.text, {}};
      for (const plan::Words& name : drill.also) names->also.push_back(name.text);
    }
    drills.push_back(std::move(*names));
  }
  Gatherer names;
  for (std::size_t i = 0; i < drills.size(); ++i) names.add(drills[i].name, i);
  for (std::size_t i = 0; i < drills.size(); ++i) {
    for (const std::string& name : drills[i].also) names.add(name, i);
  }
  std::string out = std::to_string(found.size()) + "\n";
  for (const std::string& file : found) out += file + "\n";
  for (const auto& [key, name] : names.by_key) {
    out += key + "\t" + name.name + "\t" + std::to_string(name.drill) + "\n";
  }
  return out;
}

}  // namespace

std::map<Hash128, std::string> pack_shelf(const FileSystem& files, const std::string& data_folder,
                                          Diagnostics& diagnostics) {
  const std::string folder = join_path(data_folder, kShelfFolder);
  const std::vector<std::string> found = shelf_files(files, folder);
  std::map<Hash128, std::string> out = {{key_of(found), names_in(files, folder, found)}};
  for (const std::string& file : found) {
    const std::string path = join_path(folder, file);
    const SourcePtr source = source::load(files, path, path, diagnostics);
    if (const auto entry = source ? source::pack_front_matter(source) : std::nullopt)
      out.insert(*entry);
  }
  return out;
}

std::shared_ptr<const plan::ShelfSource> open_shelf(const FileSystem& files,
                                                    const DataFolder& data) {
  const std::string folder = join_path(data.path, kShelfFolder);
  if (data.path.empty() || files.kind(folder) != FileKind::kFolder) return nullptr;
  const std::vector<std::string> found = shelf_files(files, folder);
  if (const auto packed = data.pack ? data.pack->find(key_of(found)) : std::nullopt) {
    return std::make_shared<const FolderShelf>(files, folder, *packed, data.pack, data.pack);
  }
  const auto names = std::make_shared<const std::string>(names_in(files, folder, found));
  return std::make_shared<const FolderShelf>(files, folder, *names, names, nullptr);
}

}  // namespace chalkleaf::club
