// Where the program finds its themes, words and fonts.
#include "club/resources.h"

#include <catch2/catch.hpp>

#include "support/memory_files.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::support::MemoryFileSystem;

namespace {

using Values = std::map<std::string, std::string>;

void put_data(MemoryFileSystem& files, const std::string& folder) {
  files.put(folder + "/fonts/catalogue.yaml", "");
  files.put(folder + "/themes/classic.yaml", "");
}

std::string found(const MemoryFileSystem& files, const std::string& program,
                  const FixedEnvironment& environment = FixedEnvironment()) {
  const auto folder = find_data_folder(files, environment, program);
  return folder ? *folder : "! " + folder.error();
}

}  // namespace

TEST_CASE("data: named by the environment, installed, or in the source tree, in this order") {
  MemoryFileSystem files;
  const FixedEnvironment named(Values{{"CHALKLEAF_DATA", "/named"}});
  CHECK(found(files, "/usr/bin/chalkleaf") ==
        "! the themes and fonts that belong to the program are not in /usr/share/chalkleaf; set "
        "CHALKLEAF_DATA to the folder that has them");
  files.put("/builds/x/source-tree", "/tree\n");
  put_data(files, "/tree");
  CHECK(found(files, "/builds/x/chalkleaf") == "/tree");
  CHECK(found(files, "/tree/build/chalkleaf") == "/tree");
  put_data(files, "/usr/share/chalkleaf");
  CHECK(found(files, "/usr/bin/chalkleaf") == "/usr/share/chalkleaf");
  CHECK(found(files, "/usr/bin/chalkleaf", named) ==
        "! CHALKLEAF_DATA names /named, but that folder has no themes and no fonts/catalogue.yaml");
  put_data(files, "/named");
  CHECK(found(files, "/usr/bin/chalkleaf", named) == "/named");
}

TEST_CASE("a language is a tag, never a way to another file") {
  MemoryFileSystem files;
  files.put("/d/themes/secret.yaml", "");
  for (const std::string language : {"xx", "", "../secret", "en/../../secret"}) {
    Diagnostics diagnostics;
    CHECK(load_labels(files, std::string("/d"), language, diagnostics) == nullptr);
    REQUIRE(diagnostics.all().size() == 1);
    CHECK(diagnostics.all()[0].name == "bad-value");
    CHECK(diagnostics.all()[0].message ==
          "there are no sheet words for the language ‘" + language + "’");
    CHECK(files.reads().empty());
  }
}

TEST_CASE("what is wrong in a theme points into it, also when the file is let go") {
  MemoryFileSystem files{{"/d/themes/classic.yaml", "nonsense: 1\n"}};
  Diagnostics diagnostics;
  CHECK(load_theme(files, std::string("/d"), diagnostics) == nullptr);
  REQUIRE_FALSE(diagnostics.all().empty());
  CHECK(diagnostics.all()[0].span.source->path() == "/d/themes/classic.yaml");
}

TEST_CASE("the shipped theme and words are sound") {
  const RealFileSystem files;
  Diagnostics diagnostics;
  CHECK(load_theme(files, std::string(support::repository()), diagnostics) != nullptr);
  CHECK(load_labels(files, std::string(support::repository()), "en", diagnostics) != nullptr);
  CHECK(diagnostics.all().empty());
}
