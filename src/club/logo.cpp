#include "club/logo.h"

#include <fmt/format.h>

#include <algorithm>

#include "picture/clarity.h"
#include "plan/picture_links.h"

namespace chalkleaf::club {
namespace {

// Less than half of it clear is a shape that nobody recognises (a rule of ours, no source).
constexpr double kLeastClear = 0.5;
// About 10 mm high: 150 dots an inch still look clean, 300 is as fine as is worth printing (common
// practice, no source).
constexpr int kLeastHeight = 60;
constexpr int kGoodHeight = 120;
constexpr int kLongest = 12;  // times its breadth (a rule of ours, no source)

}  // namespace

std::optional<sheet::Logo> load_logo(const plan::Club& club, const std::string& club_path,
                                     const Pictures& pictures, Diagnostics& diagnostics) {
  if (club.logo.empty()) return std::nullopt;
  plan::Note note;
  note.kind = plan::Note::Kind::kPicture;
  note.words.span = club.logo.span;
  note.picture = club.logo.text;
  plan::PictureLinks(&pictures, diagnostics).follow(note, club_path);
  if (note.picture_width <= 0) return std::nullopt;
  const auto pixels = pictures.pixels(note.picture);
  if (!pixels) return std::nullopt;  // changed under our hands: the next run will tell
  const picture::Clarity clarity = picture::clarity_on_white(*pixels);
  if (clarity.clear < kLeastClear) {
    diagnostics.warning(
        "logo-unclear", club.logo.span,
        clarity.marks <= 0
            ? std::string(
                  "the logo is white, nearly white or transparent: nothing of it can be seen "
                  "on paper; it is left out")
            : fmt::format("the logo is too pale for paper: {:.0f} % of its marks reach 3:1, and "
                          "half of them should; it is left out",
                          clarity.clear * 100),
        "name a darker version of it, as clubs have for letters");
    return std::nullopt;
  }
  const int shorter = std::min(note.picture_width, note.picture_height);
  const int longer = std::max(note.picture_width, note.picture_height);
  if (longer / shorter >= kLongest) {
    diagnostics.warning("logo-unclear", club.logo.span,
                        fmt::format("the logo is {} times as long as it is wide, and prints as a "
                                    "line",
                                    longer / shorter),
                        "name a picture that is nearer to a square");
  } else if (note.picture_height < kLeastHeight) {
    diagnostics.warning(
        "logo-unclear", club.logo.span,
        fmt::format("the logo is {} pixels high and looks coarse in print", note.picture_height),
        fmt::format("name a picture of {} pixels or more", kGoodHeight));
  }
  return sheet::Logo{note.picture, note.picture_width, note.picture_height};
}

}  // namespace chalkleaf::club
