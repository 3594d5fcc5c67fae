#include "sheet/theme_checks.h"

#include <fmt/format.h>

#include <set>

namespace chalkleaf::sheet {
namespace {

using figure::Ink;
using source::YamlNode;

class Checker {
 public:
  Checker(const Theme& theme, const YamlNode& root, Diagnostics& diagnostics)
      : theme_(theme), root_(root), diagnostics_(diagnostics) {}

  void run() {
    const Colour paper = theme_.colour(Use::kPaper);
    std::set<Use> texts;
    for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
      for (const TextLook& text : theme_.look(kind).texts) texts.insert(text.colour);
    }
    for (const Use use : texts) {
      check("colours", use_name(use), theme_.colour(use), paper, "the paper", kLeastText);
    }
    for (const Use use : {Use::kInk, Use::kSoft, Use::kMain}) {
      check("colours", use_name(use), theme_.colour(use), theme_.colour(Use::kTint), "the tint",
            kLeastText);
    }
    check("colours", "line", theme_.colour(Use::kLine), paper, "the paper", kLeastGraphics);
    for (const Ink ink : kSeen)
      check("figures", ink_name(ink), ink_of(ink), paper, "the paper", kLeastGraphics);
    for (std::size_t i = 1; i < std::size(kDarkToLight); ++i) {
      const Ink ink = kDarkToLight[i];
      const Ink before = kDarkToLight[i - 1];
      if (relative_luminance(ink_of(ink)) > relative_luminance(ink_of(before)) &&
          contrast_ratio(ink_of(ink), ink_of(before)) >= kLeastApart)
        continue;
      diagnostics_.error(
          kBadValue, span_of("figures", ink_name(ink)),
          fmt::format("‘{}’ must be lighter than ‘{}’: in grey the two are {:.1f}:1, and {:.1f}:1 "
                      "tells them apart",
                      ink_name(ink), ink_name(before), contrast_ratio(ink_of(ink), ink_of(before)),
                      kLeastApart),
          fmt::format("write '{}'", hex_text(with_luminance(
                                        ink_of(ink), (relative_luminance(ink_of(before)) + 0.05) *
                                                             kLeastApart * 1.02 -
                                                         0.05))));
    }
  }

 private:
  // A surface carries no meaning: its outline does.
  static constexpr Ink kSeen[] = {Ink::kBody, Ink::kFar,    Ink::kSuit, Ink::kFarSuit,
                                  Ink::kEdge, Ink::kAccent, Ink::kHeld, Ink::kGhost};
  // What touches or crosses in a drawing, each lighter than the one before it.
  static constexpr Ink kDarkToLight[] = {Ink::kBody, Ink::kHeld, Ink::kAccent, Ink::kSuit,
                                         Ink::kFarSuit};

  Colour ink_of(Ink ink) const { return theme_.inks[static_cast<std::size_t>(ink)]; }

  Span span_of(std::string_view map, std::string_view key) const {
    for (const auto& [name, value] : root_.entries) {
      if (name.text != map) continue;
      for (const auto& [own, colour] : value.entries) {
        if (own.text == key) return colour.span;
      }
    }
    return root_.span;
  }

  void check(std::string_view map, std::string_view key, Colour colour, Colour ground,
             std::string_view ground_name, double least) {
    const double ratio = contrast_ratio(colour, ground);
    if (ratio >= least) return;
    const auto better = with_contrast(colour, ground, least);
    // Rounded down, so that 4.48 is not said to be 4.5.
    diagnostics_.error(kBadValue, span_of(map, key),
                       fmt::format("‘{}’ on {} is {:.2f}:1, too pale: {:.1f}:1 is the least that "
                                   "can be read",
                                   key, ground_name, static_cast<int>(ratio * 100) / 100.0, least),
                       better ? fmt::format("write '{}', or darker", hex_text(*better))
                              : fmt::format("make {} lighter", ground_name));
  }

  const Theme& theme_;
  const YamlNode& root_;
  Diagnostics& diagnostics_;
};

}  // namespace

void check_contrast(const Theme& theme, const YamlNode& root, Diagnostics& diagnostics) {
  Checker(theme, root, diagnostics).run();
}

std::shared_ptr<const Theme> in_colours(const std::shared_ptr<const Theme>& theme,
                                        const OwnColours& own, Diagnostics& diagnostics) {
  if (own.main.empty() && own.second.empty()) return theme;
  auto out = std::make_shared<Theme>(*theme);
  const auto read = [&](const plan::Words& words) {
    const auto colour = parse_colour(words.text);
    if (!colour) {
      diagnostics.error(kBadValue, words.span, fmt::format("‘{}’ is not a colour", words.text),
                        "write six digits from 0 to f behind a #, in quotes: '#1b4f72'");
    }
    return colour;
  };
  const auto adjusted = [&](const plan::Words& words, Colour colour, const std::string& why) {
    diagnostics.warning("colour-adjusted", words.span,
                        fmt::format("{} is printed as {}: {}", words.text, hex_text(colour), why),
                        fmt::format("write '{}' to have it so from the start", hex_text(colour)));
  };
  if (!own.main.empty()) {
    if (const auto colour = read(own.main)) {
      // Titles are text on the paper, and on the band of a part.
      const Colour paper = out->colour(Use::kPaper);
      const Colour tint = out->colour(Use::kTint);
      const Colour ground = relative_luminance(tint) < relative_luminance(paper) ? tint : paper;
      const auto dark = with_contrast(*colour, ground, kGoodText);
      if (!dark) {
        diagnostics.error(kBadValue, own.main.span,
                          "this look's paper is too dark for a colour of your own",
                          "choose another look, or leave the colour out");
      } else {
        if (*dark != *colour) {
          adjusted(own.main, *dark,
                   fmt::format("on {} it is {:.1f}:1, and titles need {:.0f}:1", hex_text(ground),
                               contrast_ratio(*colour, ground), kGoodText));
        }
        out->colours[static_cast<std::size_t>(Use::kMain)] = *dark;
      }
    }
  }
  if (!own.second.empty()) {
    if (const auto colour = read(own.second)) {
      // As light as the theme's own suit: then it is told apart from all round it, in grey too.
      const auto tone = [&](Ink ink) {
        Colour& place = out->inks[static_cast<std::size_t>(ink)];
        place = with_luminance(*colour, relative_luminance(place));
        return place;
      };
      const Colour suit = tone(Ink::kSuit);
      tone(Ink::kFarSuit);
      const double before = relative_luminance(*colour) + 0.05;
      const double after = relative_luminance(suit) + 0.05;
      if (std::max(before, after) / std::min(before, after) > 1.1) {
        adjusted(own.second, suit, "so light or dark it is told apart from the rest of a figure");
      }
    }
  }
  return out;
}

}  // namespace chalkleaf::sheet
