#include "type/fonts.h"

#include <catch2/catch.hpp>
#include <random>
#include <thread>

#include "support/memory_files.h"
#include "support/random.h"
#include "type/shelf.h"

using namespace chalkleaf;
using namespace chalkleaf::type;

namespace {

// OpenType 1.9, "Table Directory": what a subset's file holds.
std::vector<std::string> table_names(const std::string& font) {
  std::vector<std::string> out;
  const auto count =
      static_cast<unsigned char>(font[4]) * 256 + static_cast<unsigned char>(font[5]);
  for (int i = 0; i < count; ++i)
    out.push_back(font.substr(12 + 16 * static_cast<std::size_t>(i), 4));
  return out;
}

std::string bytes_of(const std::string& path) {
  return RealFileSystem().read(path, 1U << 26U).value();
}

Catalogue only(const std::string& path) {
  Catalogue out;
  out.faces = {{"Some Font", path, "OFL-1.1"}};
  out.roles = {{"text", {std::vector<FaceId>{0}, {}, {}, {}}}};
  return out;
}

}  // namespace

TEST_CASE("a face knows its own measures") {
  const Face* lato = test_fonts().face(0);
  REQUIRE(lato != nullptr);
  // Values of the file's tables head and OS/2, read with a few lines of python3.
  CHECK(lato->units_per_em() == 2000);
  CHECK(lato->ascender() == 1610);
  CHECK(lato->descender() == -390);
  CHECK(lato->cap_height() == 1433);
  CHECK(lato->x_height() == 1013);
  CHECK(lato->postscript_name() == "Lato-Regular");
  CHECK(lato->family() == "Lato");
  CHECK(lato->italic_angle() == 0);
  CHECK(lato->bounds() == std::array<std::int32_t, 4>{-1093, -537, 2685, 2157});
  CHECK(lato->has(U'A'));
  CHECK_FALSE(lato->has(0x4E2D));  // a Chinese character
}

TEST_CASE("a role gives the style asked for, or the nearest it has") {
  const Fonts& fonts = test_fonts();
  const auto chain = [&](const char* role, Weight weight, Slant slant) {
    return fonts.chain(fonts.style(role, weight, slant).value());
  };
  using Chain = std::vector<FaceId>;
  CHECK(chain("text", Weight::kBold, Slant::kUpright) == Chain{1, 2});
  CHECK(chain("text", Weight::kBold, Slant::kItalic) == Chain{1, 2});
  CHECK(chain("learner", Weight::kBold, Slant::kItalic) == Chain{3});
  CHECK(fonts.style("titles", Weight::kRegular, Slant::kUpright).error() ==
        "there is no font role 'titles'; there are 'text', 'display' and 'learner'");
}

TEST_CASE("a font is read when it is first asked for, once") {
  support::MemoryFileSystem files;
  files.put("/f/a.ttf", bytes_of(kLato));
  const Fonts fonts(only("/f/a.ttf"), files);
  CHECK(files.reads().empty());
  std::vector<std::thread> workers;
  std::vector<const Face*> seen(8);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    workers.emplace_back([&seen, &fonts, i] { seen[i] = fonts.face(0); });
  }
  for (std::thread& worker : workers) worker.join();
  CHECK(files.reads().size() == 1);
  for (const Face* face : seen) CHECK(face == fonts.face(0));
  CHECK(fonts.face(7) == nullptr);
}

TEST_CASE("a font that cannot be used is told of, and nothing else happens") {
  support::MemoryFileSystem files;
  files.put("/f/text.ttf", "This is not a font.");
  files.put("/f/empty.ttf", "");
  const auto told = [&](const std::string& path) {
    const auto errors = Fonts(only(path), files).open_primary();
    return errors.empty() ? std::string() : errors[0].path + ": " + errors[0].message;
  };
  CHECK(told("/f/none.ttf") == "/f/none.ttf: there is no such file");
  CHECK(told("/f/text.ttf") == "/f/text.ttf: it is not a TrueType or OpenType font");
  CHECK(told("/f/empty.ttf") == "/f/empty.ttf: it is not a TrueType or OpenType font");
  files.put("/f/lato.ttf", bytes_of(kLato));
  CHECK(told("/f/lato.ttf").empty());
  // Cut off after the table directory: every table lies beyond the end.
  files.put("/f/cut.ttf", bytes_of(kLato).substr(0, 300));
  CHECK_FALSE(told("/f/cut.ttf").empty());
}

TEST_CASE("a damaged font is refused or set, but never brings the program down") {
  const std::string whole = bytes_of(kAndika);
  std::mt19937 random(11);
  for (unsigned round = 0; round < support::rounds(150); ++round) {
    std::string bytes = whole;
    if (round % 3 == 0) bytes.resize(random() % bytes.size());
    // Half of the damage falls on the table directory and the small tables behind it.
    const std::size_t reach = round % 2 == 0 ? std::size_t{4096} : bytes.size();
    for (int i = 0; i < 40 && !bytes.empty(); ++i) {
      bytes[random() % std::min(reach, bytes.size())] = static_cast<char>(random());
    }
    support::MemoryFileSystem files;
    files.put("/f/a.ttf", std::move(bytes));
    const Fonts fonts(only("/f/a.ttf"), files);
    const Face* face = fonts.face(0);
    if (face == nullptr) continue;
    Typesetter typesetter(fonts);
    const Inline text = plain("Wrens balance, fi\xCC\x81rst 20 s", 0);
    const Paragraph set = typesetter.set(std::span(&text, 1), Length::pt(60));
    std::vector<std::uint16_t> glyphs;
    for (const Line& line : set.lines) {
      for (const Fragment& fragment : line.fragments) {
        for (const Glyph& glyph : fragment.glyphs) {
          REQUIRE(glyph.id != 0);
          glyphs.push_back(glyph.id);
        }
      }
    }
    std::sort(glyphs.begin(), glyphs.end());
    glyphs.erase(std::unique(glyphs.begin(), glyphs.end()), glyphs.end());
    const auto subset = face->subset(glyphs);
    if (subset) CHECK(subset->new_ids.size() == glyphs.size());
  }
}

TEST_CASE("a subset is small, holds what is drawn, and renumbers the glyphs in order") {
  const Face& lato = *test_fonts().face(0);
  const auto cut = lato.subset({36, 37, 68});
  REQUIRE(cut.has_value());
  CHECK_FALSE(cut->is_cff);
  CHECK(cut->new_ids == std::vector<std::uint16_t>{1, 2, 3});
  CHECK(cut->bytes.size() < 4000);
  CHECK(table_names(cut->bytes) ==
        std::vector<std::string>{"glyf", "head", "hhea", "hmtx", "loca", "maxp"});
  const auto refused = lato.subset({60000});
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().path == kLato);
  CHECK(refused.error().message == "the glyphs it needs cannot be cut out of it");
}

TEST_CASE("subsets are the same bytes before and after the face is prepared for many") {
  for (FaceId id = 0; id < 4; ++id) {
    const RealFileSystem files;
    const Fonts fonts(test_catalogue(), files);  // of its own: nothing cut yet
    const Face& face = *fonts.face(id);
    std::vector<std::uint16_t> glyphs;
    for (std::uint16_t glyph = 3; glyph < 300; glyph = static_cast<std::uint16_t>(glyph + 4)) {
      glyphs.push_back(glyph);
    }
    const auto first = face.subset(glyphs);
    REQUIRE(first.has_value());
    for (int i = 0; i < 40; ++i) {
      const auto again = face.subset(glyphs);
      REQUIRE(again.has_value());
      REQUIRE((again->bytes == first->bytes));
      REQUIRE(again->new_ids == first->new_ids);
    }
  }
}

TEST_CASE("the shared subset is a subset like others, and sets ordinary text") {
  const Face& lato = *test_fonts().face(0);
  const SharedSubset* shared = lato.shared_subset();
  REQUIRE(shared != nullptr);
  CHECK(shared == lato.shared_subset());
  CHECK(std::is_sorted(shared->glyphs.begin(), shared->glyphs.end()));
  CHECK(shared->glyphs.front() != 0);
  const auto cut = lato.subset(shared->glyphs);
  REQUIRE(cut.has_value());
  CHECK((cut->bytes == shared->subset.bytes));
  CHECK(cut->new_ids == shared->subset.new_ids);
  Typesetter typesetter(test_fonts());
  for (const Figures figures : {Figures::kOfTheFont, Figures::kTabular}) {
    Inline text = plain(
        "Jump off the little bench (softly): 3 × 20–30 s, “quiet feet”, ½ turn · 17:05 & 90 %");
    text.figures = figures;
    for (const Line& line : typesetter.set(std::span(&text, 1), Length::pt(2000)).lines) {
      for (const Fragment& fragment : line.fragments) {
        REQUIRE(fragment.face == 0);
        for (const Glyph& glyph : fragment.glyphs) {
          INFO("glyph " << glyph.id << " at " << glyph.cluster);
          CHECK(std::binary_search(shared->glyphs.begin(), shared->glyphs.end(), glyph.id));
        }
      }
    }
  }
}
