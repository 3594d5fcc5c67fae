// The pack that is built with the program: the same as the files, for everything in them.
#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "base/environment.h"
#include "club/figures.h"
#include "club/folders.h"
#include "club/resources.h"
#include "figure/svg.h"
#include "source/read.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::TemporaryFolder;

namespace {

DataFolder shipped() {
  const RealFileSystem files;
  return *open_data_folder(files, FixedEnvironment(), support::program());
}

std::string messages(const Diagnostics& found) {
  std::string out;
  for (const Diagnostic& d : found.sorted())
    out += render(d, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

}  // namespace

TEST_CASE("the pack has every shipped file, with the tree that reading it gives") {
  const RealFileSystem files;
  const DataFolder data = shipped();
  REQUIRE(data.pack != nullptr);
  const auto paths = packable_files(files, data.path);
  CHECK(paths.size() >= 20);
  for (const std::string& path : paths) {
    INFO(path);
    Diagnostics found;
    const SourcePtr source = source::load_shipped(files, path, data.pack, found);
    REQUIRE(source);
    const auto packed = source::packed_yaml(source);
    REQUIRE(packed);
    const SourcePtr plain = source::load(files, path, path, found);
    const auto read = source::read_yaml(plain, found);
    REQUIRE(read);
    CHECK(source::packed(*packed->unpacked(), 0) == source::packed(*read, 0));
    CHECK(messages(found) == "");
  }
}

TEST_CASE("the pack has the front matter of every drill of the shelf, as reading it gives it") {
  const RealFileSystem files;
  const DataFolder data = shipped();
  const std::string shelf = join_path(data.path, "themes/shelf");
  std::size_t drills = 0;
  const auto entries = files.list(shelf);
  REQUIRE(entries);
  for (const FolderEntry& entry : *entries) {
    INFO(entry.name);
    Diagnostics found;
    const std::string path = join_path(shelf, entry.name);
    const SourcePtr known = source::load_shipped(files, path, entry.name, data.pack, found);
    const SourcePtr plain = source::load(files, path, entry.name, found);
    REQUIRE(plain);
    const source::Document read = source::read_document(plain, found);
    if (!read.front || !messages(found).empty()) continue;  // a manual
    ++drills;
    REQUIRE(known->pack() != nullptr);  // so it is not parsed again
    const source::Document quick = source::read_document(known, found);
    CHECK(quick.front->span == Span{known.get(), read.front->span.begin, read.front->span.end});
    CHECK(source::packed(*quick.front, 0) == source::packed(*read.front, 0));
    CHECK(messages(found) == "");
  }
  CHECK(drills >= 600);
}

TEST_CASE("figures from the pack are those from the files") {
  const RealFileSystem files;
  const DataFolder data = shipped();
  Diagnostics found;
  const Figures packed = load_figures(files, data, "", "/", found);
  const Figures read = load_figures(files, data.path, "", "/", found);
  CHECK(messages(found) == "");
  const auto all = read.catalogue->all();
  CHECK(all.size() >= 250);
  REQUIRE(packed.catalogue->all().size() == all.size());
  const auto names = names_of(*packed.catalogue);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const figure::Figure& one = *all[i];
    const figure::Figure& other = *packed.catalogue->all()[i];
    INFO(one.name.text);
    CHECK(other.name.text == one.name.text);
    CHECK(other.name.span.begin == one.name.span.begin);
    CHECK(other.family == one.family);
    CHECK(other.alternative.text == one.alternative.text);
    CHECK(names.has(one.name.text));
    for (const figure::Word& also : one.also) {
      CHECK((packed.catalogue->find(also.text) == &other) ==
            (read.catalogue->find(also.text) == &one));
    }
    const auto scene = packed.drawings->find(one.name.text, 9, figure::Extent::kWhole);
    const auto scene_read = read.drawings->find(one.name.text, 9, figure::Extent::kWhole);
    const figure::Palette inks{};
    CHECK(figure::svg(*scene, inks, "x") == figure::svg(*scene_read, inks, "x"));
  }
}

TEST_CASE("a club's own figure goes before one from the pack, and is judged") {
  const RealFileSystem files;
  const DataFolder data = shipped();
  const TemporaryFolder club("own-and-packed");
  club.put("figures/own.yaml",
           "figures:\n  standing: {touches: feet, alt: Ours.}\n  hug: {from: arms overhead}\n"
           "  bad: {from: nothing like it}\n");
  Diagnostics found;
  const Figures both = load_figures(files, data, club.str(), club.str(), found);
  CHECK(
      messages(found).find("figures/own.yaml:4:15: error: there is no figure ‘nothing like it’") !=
      std::string::npos);
  CHECK(both.catalogue->find("standing")->alternative.text == "Ours.");
  CHECK(both.catalogue->find("hug") != nullptr);
  CHECK(both.catalogue->find("bad") == nullptr);
  CHECK(names_of(*both.catalogue).has("bad"));
  CHECK(both.catalogue->own().size() == 2);
}

TEST_CASE("without its pack, or with a damaged one, the program reads the files") {
  const TemporaryFolder folder("damaged-pack");
  const RealFileSystem files;
  const DataFolder data = shipped();
  folder.put("fonts/catalogue.yaml", "a: b\n");
  folder.put("themes/classic.yaml",
             RealFileSystem().read(data.path + "/themes/classic.yaml", 1 << 20).value());
  folder.put(
      "themes/labels/en.yaml",
      RealFileSystem().read(data.path + "/themes/labels/en.yaml", 1 << 20).value() + "# changed\n");
  const FixedEnvironment environment;
  const auto opened = [&] {
    return *open_data_folder(files, environment, folder / "build/chalkleaf");
  };
  CHECK(opened().path == folder.str());
  CHECK(opened().pack == nullptr);
  Diagnostics found;
  const auto theme = load_theme(files, opened(), found);
  CHECK(theme != nullptr);
  const std::string pack =
      RealFileSystem().read(support::build_folder() + "/shipped.pack", 64 << 20).value();
  folder.put("shipped.pack", pack.substr(0, 20));
  CHECK(opened().pack == nullptr);
  folder.put("shipped.pack", pack);
  REQUIRE(opened().pack != nullptr);
  CHECK(load_theme(files, opened(), found) != nullptr);
  CHECK(load_labels(files, opened(), "en", found) != nullptr);  // not in it: another text
  CHECK(messages(found) == "");
}
