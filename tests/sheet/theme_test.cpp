#include "sheet/theme.h"

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "sheet_fixture.h"

using namespace chalkleaf;
using namespace chalkleaf::sheet;

namespace {

std::string classic_text() {
  return std::string(support::repository_file("themes/classic.yaml")->text());
}

std::string messages(const std::string& text) {
  Diagnostics diagnostics;
  const auto source = std::make_shared<const Source>("t.yaml", text);
  const auto theme = read_theme(source, diagnostics);
  CHECK((theme == nullptr) == diagnostics.has_errors());
  std::string out;
  for (const Diagnostic& d : diagnostics.sorted())
    out += render(d, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

}  // namespace

TEST_CASE("the shipped theme can be read by everyone") {
  // WCAG 2.2: text 4.5:1 (AA) and 7:1 (AAA, 1.4.6); graphics that carry meaning 3:1 (1.4.11).
  const auto theme = support::classic_theme();
  for (const Use ground : {Use::kPaper, Use::kTint}) {
    CHECK(contrast_ratio(theme->colour(Use::kInk), theme->colour(ground)) >= 7.0);
    CHECK(contrast_ratio(theme->colour(Use::kSoft), theme->colour(ground)) >= 7.0);
    CHECK(contrast_ratio(theme->colour(Use::kLine), theme->colour(ground)) >= 3.0);
  }
  for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
    for (const TextLook& text : theme->look(kind).texts) {
      CHECK(contrast_ratio(theme->colour(text.colour), theme->colour(Use::kPaper)) >= 7.0);
    }
  }
}

TEST_CASE("figures can be seen on paper, and told apart in grey") {
  const auto theme = support::classic_theme();
  const Colour paper = theme->colour(Use::kPaper);
  const auto ink = [&](figure::Ink which) { return theme->inks[static_cast<std::size_t>(which)]; };
  using figure::Ink;
  CHECK(ink(Ink::kPaper) == paper);
  // WCAG 2.2, 1.4.11: 3:1 for graphics that carry meaning. A surface (kProp) carries none: its
  // outline (kEdge) does.
  for (const Ink one : {Ink::kBody, Ink::kFar, Ink::kSuit, Ink::kFarSuit, Ink::kEdge, Ink::kAccent,
                        Ink::kHeld, Ink::kGhost}) {
    INFO(static_cast<int>(one));
    CHECK(contrast_ratio(ink(one), paper) >= 3.0);
    CHECK(contrast_ratio(ink(Ink::kProp), ink(one)) >= 1.5);
  }
  // What touches or crosses in a drawing, printed in grey: 1.5:1 or more (a rule of ours, no
  // source). From dark to light, so that what holds for neighbours holds for all.
  const Ink order[] = {Ink::kBody, Ink::kHeld, Ink::kAccent, Ink::kSuit, Ink::kFarSuit};
  for (std::size_t i = 1; i < std::size(order); ++i) {
    INFO(i);
    CHECK(relative_luminance(ink(order[i])) > relative_luminance(ink(order[i - 1])));
    CHECK(contrast_ratio(ink(order[i]), ink(order[i - 1])) >= 1.5);
  }
  CHECK(contrast_ratio(ink(Ink::kBody), ink(Ink::kFar)) >= 1.5);
}

TEST_CASE("no text is below the sheet's minimum, however small the sheet is set") {
  const auto theme = support::classic_theme();
  CHECK(theme->card.minimum == Length::pt(9));
  CHECK(theme->home.minimum == Length::pt(12));  // UKAAF G003 (2019): clear print is 12 pt or more
  for (const double factor : {0.1, 0.88, 1.0, 2.0}) {
    for (const Look* look : {&theme->card, &theme->home}) {
      for (const TextLook& text : look->scaled(factor).texts) {
        CHECK(text.size >= look->minimum);
        CHECK(text.leading > text.size);
      }
    }
  }
}

TEST_CASE("a box to tick is large enough for a child's hand at home") {
  CHECK(support::classic_theme()->home.tick_box >= Length::mm(5));
}

TEST_CASE("mistakes in a theme are said with what to change") {
  const std::string good = classic_text();
  CHECK(messages(good).empty());
  CHECK_THAT(messages(replace_all(good, "ink: '#17212b'", "ink: black")),
             Catch::Contains("a colour is written '#1b2733', in quotes [bad-value]"));
  CHECK_THAT(messages(replace_all(good, "  minimum: 9 pt\n", "")),
             Catch::Contains("‘card’ lacks the key ‘minimum’ [missing-key]; add `minimum:`"));
  CHECK_THAT(messages(replace_all(good, "gap: 2.6 mm", "gap: 2.6 furlongs")),
             Catch::Contains("must be a number of mm"));
  CHECK_THAT(messages(replace_all(good, "cue: 10.5/12.8\n", "cue: 8/12.8\n")),
             Catch::Contains("‘cue’ is smaller than the sheet's minimum size"));
  CHECK_THAT(messages(replace_all(good, "cue: 10.5/12.8\n", "cue: 10.5/12.8 pink\n")),
             Catch::Contains("‘pink’ is neither bold, italic nor a colour of the theme"));
  CHECK_THAT(messages(good + "shadow: deep\n"),
             Catch::Contains("‘theme’ has no key ‘shadow’ [unknown-key]"));
  CHECK_FALSE(messages("- a\n- b\n").empty());
  CHECK_FALSE(messages("").empty());
}
