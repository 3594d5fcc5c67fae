// The fonts the tests of this room set with: Debian's own, where its packages put them.
#pragma once

#include <string>
#include <vector>

#include "base/files.h"
#include "type/lines.h"

namespace chalkleaf::type {

inline const std::string kLato = "/usr/share/fonts/truetype/lato/Lato-Regular.ttf";
inline const std::string kLatoBold = "/usr/share/fonts/truetype/lato/Lato-Bold.ttf";
inline const std::string kAndika = "/usr/share/fonts/truetype/andika/Andika-Regular.ttf";
inline const std::string kDejaVu = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";

/// Faces 0 Lato, 1 Lato Bold, 2 DejaVu Sans, 3 Andika. Roles: `text` falls back to DejaVu Sans,
/// `display` is Lato alone, `learner` is Andika alone and in one style only.
inline Catalogue test_catalogue() {
  Catalogue out;
  out.faces = {{"Lato", kLato, "OFL-1.1"},
               {"Lato Bold", kLatoBold, "OFL-1.1"},
               {"DejaVu Sans", kDejaVu, "Bitstream-Vera"},
               {"Andika", kAndika, "OFL-1.1"}};
  using Chain = std::vector<FaceId>;
  out.roles = {{"text", {Chain{0, 2}, Chain{}, Chain{1, 2}, Chain{}}},
               {"display", {Chain{0}, Chain{}, Chain{1}, Chain{}}},
               {"learner", {Chain{3}, Chain{}, Chain{}, Chain{}}}};
  return out;
}

inline const Fonts& test_fonts() {
  static const RealFileSystem files;
  static const Fonts fonts(test_catalogue(), files);
  return fonts;
}

inline StyleId style(std::string_view role, Weight weight = Weight::kRegular) {
  return test_fonts().style(role, weight, Slant::kUpright).value();
}

/// Ten-point text.
inline Inline plain(std::string text, StyleId in_style = style("text")) {
  Inline out;
  out.text = std::move(text);
  out.style = in_style;
  out.size = Length::pt(10);
  return out;
}

/// How wide a text is on a line that is never broken.
inline Length width_of(const std::string& text, StyleId in_style = style("text")) {
  Typesetter typesetter(test_fonts());
  const Inline one = plain(text, in_style);
  return typesetter.natural_width(std::span(&one, 1));
}

/// What the lines read, each in order.
inline std::vector<std::string> texts(const Paragraph& paragraph) {
  std::vector<std::string> out;
  for (const Line& line : paragraph.lines) {
    out.emplace_back();
    for (const Fragment& fragment : line.fragments) out.back() += fragment.text;
  }
  return out;
}

}  // namespace chalkleaf::type
