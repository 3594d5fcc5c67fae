// The font catalogue: roles, chains, and what is missing.
#include "club/font_catalogue.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "support/memory_files.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;

namespace {

const std::string kCatalogue =
    "roles:\n  card: [Round, Plain]\n"
    "families:\n"
    "  Round:\n    licence: OFL-1.1\n    package: fonts-round\n    folders: [here, /there]\n"
    "    regular: r.ttf\n    bold: b.ttf\n    italic: i.ttf\n    bold-italic: z.ttf\n"
    "  Plain:\n    licence: MIT\n    package: fonts-plain\n    folders: [/there]\n"
    "    regular: p.ttf\n    bold: q.ttf\n";

MemoryFileSystem disk_with_fonts() {
  return MemoryFileSystem{{"/d/fonts/catalogue.yaml", kCatalogue},
                          {"/d/fonts/here/r.ttf", ""},
                          {"/there/r.ttf", ""},
                          {"/there/b.ttf", ""},
                          {"/there/i.ttf", ""},
                          {"/there/z.ttf", ""},
                          {"/there/p.ttf", ""},
                          {"/there/q.ttf", ""}};
}

std::string chains(const type::Catalogue& catalogue) {
  std::string out;
  for (const type::RoleSpec& role : catalogue.roles) {
    out += role.name;
    for (const auto& chain : role.chains) {
      out += " |";
      for (const type::FaceId face : chain) {
        out += " " + file_name(catalogue.faces[face].path);
      }
    }
  }
  return out;
}

}  // namespace

TEST_CASE("the first folder that has a file counts; a missing style is set in a plainer one") {
  const MemoryFileSystem files = disk_with_fonts();
  Diagnostics found;
  const type::Catalogue catalogue = load_font_catalogue(files, std::string("/d"), found);
  CHECK(found.all().empty());
  // regular, italic, bold, bold italic: the order of type::RoleSpec
  CHECK(chains(catalogue) == "card | r.ttf p.ttf | i.ttf p.ttf | b.ttf q.ttf | z.ttf q.ttf");
  CHECK(catalogue.faces[0].path == "/d/fonts/here/r.ttf");
  CHECK(catalogue.faces[0].family == "Round");
  CHECK(catalogue.faces[0].licence == "OFL-1.1");
}

TEST_CASE("a role's first family must be there, with the package that has it; others need not") {
  MemoryFileSystem files = disk_with_fonts();
  REQUIRE(files.remove("/there/p.ttf"));
  Diagnostics none;
  CHECK(chains(load_font_catalogue(files, std::string("/d"), none)) ==
        "card | r.ttf | i.ttf | b.ttf q.ttf | z.ttf q.ttf");
  CHECK(none.all().empty());
  REQUIRE(files.remove("/there/i.ttf"));
  Diagnostics found;
  load_font_catalogue(files, std::string("/d"), found);
  REQUIRE(found.all().size() == 1);
  CHECK(render(found.all()[0], MessageStyle::kShort, Colouring::kPlain) ==
        "/d/fonts/catalogue.yaml:4:3: error: the font file i.ttf of ‘Round’ is in none of its "
        "folders [unreadable-file]; install the Debian package fonts-round, or put the file in "
        "/d/fonts\n");
}

TEST_CASE("the shipped catalogue: two roles of four styles, each with its licence") {
  const RealFileSystem files;
  Diagnostics found;
  const type::Catalogue catalogue =
      load_font_catalogue(files, std::string(support::repository()), found);
  CHECK(found.all().empty());
  REQUIRE(catalogue.roles.size() == 2);
  CHECK(catalogue.roles[0].name == "card");
  CHECK(catalogue.roles[1].name == "home");
  for (const type::RoleSpec& role : catalogue.roles) {
    for (const auto& chain : role.chains) CHECK(chain.size() >= 2);
  }
  for (const type::FaceSpec& face : catalogue.faces) {
    CHECK((face.licence == "OFL-1.1" || face.licence == "Bitstream-Vera"));
  }
}
