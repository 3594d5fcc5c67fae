// Makes shipped.pack: what takes long to read of the files that ship with the program, read when
// it is built (base/pack.h says why that is never wrong).
//
//     pack_shipped DATA-FOLDER OUT
//
// A file with anything wrong in it fails the build. Tested by tests/club/shipped_pack_test.cpp.
#include <cstdio>
#include <map>

#include "base/diagnostic_text.h"
#include "club/resources.h"
#include "club/shelf.h"
#include "figure/read.h"
#include "source/read.h"
#include "type/hyphenation.h"

namespace {

using namespace chalkleaf;

void say(const Diagnostics& found) {
  for (const Diagnostic& one : found.sorted()) {
    std::fputs(render(one, MessageStyle::kShort, Colouring::kPlain).c_str(), stderr);
  }
}

// Of each language there are words for, as this machine has them.
void pack_hyphens(const FileSystem& files, const std::string& language,
                  std::map<Hash128, std::string>& entries) {
  constexpr std::uint64_t kLargest = 16ULL * 1024 * 1024;
  const type::Hyphenations all(files);
  for (const std::string& path : all.of(language).paths()) {
    const auto patterns = files.read(path, kLargest);
    if (const auto entry = patterns ? type::Hyphenation::packed(*patterns) : std::nullopt) {
      entries.insert(*entry);
      return;
    }
  }
}

int pack(const std::string& folder, const std::string& out) {
  RealFileSystem files;
  Diagnostics found;
  std::map<Hash128, std::string> entries;
  figure::Descriptions figures;
  for (const std::string& path : club::packable_files(files, folder)) {
    const SourcePtr source = source::load(files, path, path, found);
    if (!source) continue;
    found.keep(source);
    const auto entry = source::pack_yaml(source);
    if (!entry) {
      std::fprintf(stderr, "%s is not sound YAML\n", path.c_str());
      return 1;
    }
    entries.insert(*entry);
    if (path.find("themes/labels/") != std::string::npos)
      pack_hyphens(files, file_stem(path), entries);
    if (path.find("themes/words/") != std::string::npos && path.ends_with("/dangers.yaml")) {
      if (const auto guard = club::pack_guard(source, found)) entries.insert(*guard);
      const std::string weights = parent_path(path) + "/danger_weights.txt";
      if (const auto made = club::pack_line_weights(files, weights)) entries.insert(*made);
    }
    if (path.find("themes/figures/") != std::string::npos) figures.take(source, false, found);
  }
  entries.merge(club::pack_shelf(files, folder, found));
  // Who finds a figure in the pack takes it for one that was read without a word.
  figures.resolve(found);
  say(found);
  if (!found.all().empty()) return 1;
  const auto written = files.write_whole(out, packed(entries));
  if (!written) std::fprintf(stderr, "%s: %s\n", out.c_str(), written.error().message.c_str());
  return written ? 0 : 1;
}

}  // namespace

int main(int count, char** values) {
  if (count != 3) {
    std::fputs("usage: pack_shipped DATA-FOLDER OUT\n", stderr);
    return 2;
  }
  return pack(values[1], values[2]);
}
