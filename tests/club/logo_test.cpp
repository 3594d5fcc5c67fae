// A club's logo: what is printed, and what is not and why.
#include "club/logo.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "club/folders.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::TemporaryFolder;
using chalkleaf::support::MemoryFileSystem;

namespace {

// Written by Pillow: one colour, `size` as `40, 30`.
std::string png(const std::string& size, const std::string& colour) {
  const TemporaryFolder folder("logo");
  const auto made =
      tests::shell("/usr/bin/python3 -c \"from PIL import Image; Image.new('RGB', (" + size +
                   "), '" + colour + "').save('" + folder / "logo.png" + "')\" 2>&1");
  REQUIRE(made.text.empty());
  return folder.read("logo.png");
}

struct LoadedLogo {
  std::optional<sheet::Logo> logo;
  std::string said;
};

LoadedLogo load_logo(const std::string& written, const std::string& bytes) {
  const MemoryFileSystem files{{"/c/pictures/logo.png", bytes}, {"/elsewhere/logo.png", bytes}};
  const Pictures pictures(files, "/c");
  plan::Club club;
  const SourcePtr source = std::make_shared<const Source>("club.yaml", "logo: " + written + "\n");
  club.logo = {written, {source.get(), 6, static_cast<std::uint32_t>(6 + written.size())}};
  Diagnostics found;
  LoadedLogo out;
  out.logo = load_logo(club, "/c/club.yaml", pictures, found);
  for (const Diagnostic& one : found.sorted())
    out.said += render(one, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

}  // namespace

TEST_CASE("a logo that can be seen is printed") {
  const LoadedLogo dark = load_logo("pictures/logo.png", png("150, 120", "#16324a"));
  CHECK(dark.said.empty());
  REQUIRE(dark.logo);
  CHECK(dark.logo->source == "/c/pictures/logo.png");
  CHECK(dark.logo->width == 150);
  CHECK(dark.logo->height == 120);
}

TEST_CASE("one that is too pale is left out, and one of few pixels is told") {
  const LoadedLogo pale = load_logo("pictures/logo.png", png("150, 120", "#ffe9a0"));
  CHECK_FALSE(pale.logo);
  CHECK(pale.said ==
        "club.yaml:1:7: warning: the logo is too pale for paper: 0 % of its marks reach 3:1, and "
        "half of them should; it is left out [logo-unclear]; name a darker version of it, as clubs "
        "have for letters\n");
  const LoadedLogo white = load_logo("pictures/logo.png", png("150, 120", "#ffffff"));
  CHECK_FALSE(white.logo);
  CHECK_THAT(white.said, Catch::Contains("the logo is white, nearly white or transparent"));
  const LoadedLogo coarse = load_logo("pictures/logo.png", png("40, 59", "#000000"));
  CHECK(coarse.logo);
  CHECK_THAT(coarse.said, Catch::Contains("the logo is 59 pixels high and looks coarse in print"));
  CHECK(load_logo("pictures/logo.png", png("40, 60", "#000000")).said.empty());
  CHECK_THAT(load_logo("pictures/logo.png", png("5, 900", "#000000")).said,
             Catch::Contains("the logo is 180 times as long as it is wide"));
}

TEST_CASE("a logo is a picture of the club's folder") {
  const std::string bytes = png("150, 120", "#16324a");
  CHECK_THAT(load_logo("pictures/logo.jpg", bytes).said,
             Catch::Contains("[unreadable-file]") && Catch::Contains("pictures/logo.png"));
  CHECK_THAT(load_logo("../elsewhere/logo.png", bytes).said, Catch::Contains("[outside-folder]"));
  CHECK_THAT(load_logo("https://club.example/logo.png", bytes).said,
             Catch::Contains("nothing is fetched from elsewhere"));
  CHECK_THAT(load_logo("pictures/logo.png", "GIF89a").said, Catch::Contains("is a GIF"));
  const LoadedLogo none = load_logo("", bytes);
  CHECK_FALSE(none.logo);
  CHECK(none.said.empty());
}
