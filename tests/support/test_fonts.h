// The fonts of Debian's packages as a catalogue, for tests that set type.
#pragma once

#include "base/files.h"
#include "type/fonts.h"

namespace chalkleaf::support {

/// Roles `card` (Lato) and `home` (Andika), both falling back to DejaVu Sans. Opened once per
/// process.
inline const type::Fonts& test_fonts() {
  static const RealFileSystem files;
  static const type::Fonts fonts = [] {
    const std::string base = "/usr/share/fonts/truetype/";
    type::Catalogue catalogue;
    const auto add = [&](const char* family, const std::string& path) {
      catalogue.faces.push_back({family, base + path, "OFL-1.1"});
      return static_cast<type::FaceId>(catalogue.faces.size() - 1);
    };
    const auto regular = add("Lato", "lato/Lato-Regular.ttf");
    const auto italic = add("Lato", "lato/Lato-Italic.ttf");
    const auto bold = add("Lato", "lato/Lato-Bold.ttf");
    const auto andika = add("Andika", "andika/Andika-Regular.ttf");
    const auto andika_bold = add("Andika", "andika/Andika-Bold.ttf");
    const auto dejavu = add("DejaVu Sans", "dejavu/DejaVuSans.ttf");
    catalogue.roles.push_back(
        {"card", {{{regular, dejavu}, {italic, dejavu}, {bold, dejavu}, {bold, dejavu}}}});
    catalogue.roles.push_back(
        {"home",
         {{{andika, dejavu}, {andika, dejavu}, {andika_bold, dejavu}, {andika_bold, dejavu}}}});
    return type::Fonts(std::move(catalogue), files);
  }();
  return fonts;
}

}  // namespace chalkleaf::support
