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

std::string theme_messages(const std::string& text) {
  Diagnostics diagnostics;
  const auto source = std::make_shared<const Source>("t.yaml", text);
  const auto theme = read_theme(source, {}, diagnostics);
  CHECK((theme == nullptr) == diagnostics.has_errors());
  std::string out;
  for (const Diagnostic& d : diagnostics.sorted())
    out += render(d, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

}  // namespace

TEST_CASE("there are looks for every eye and every printer") {
  const auto looks = support::shipped_looks();
  CHECK(looks == std::vector<std::string>{"classic", "harbour", "high-contrast", "ink-saver",
                                          "large-print", "playful"});
  for (const std::string& name : looks) {
    CHECK(support::shipped_look(name)->name == name);
    CHECK_FALSE(support::shipped_look(name)->about.empty());
  }
}

TEST_CASE("the shipped looks can be read by everyone") {
  // WCAG 2.2: text 4.5:1 (AA) and 7:1 (AAA, 1.4.6); graphics that carry meaning 3:1 (1.4.11).
  for (const std::string& name : support::shipped_looks()) {
    INFO(name);
    const auto theme = support::shipped_look(name);
    for (const Use ground : {Use::kPaper, Use::kTint}) {
      CHECK(contrast_ratio(theme->colour(Use::kInk), theme->colour(ground)) >= 7.0);
      CHECK(contrast_ratio(theme->colour(Use::kMain), theme->colour(ground)) >= 7.0);
      CHECK(contrast_ratio(theme->colour(Use::kSoft), theme->colour(ground)) >= 7.0);
      CHECK(contrast_ratio(theme->colour(Use::kLine), theme->colour(ground)) >= 3.0);
    }
    for (const Kind kind : {Kind::kCoachCard, Kind::kHomeSheet}) {
      for (const TextLook& text : theme->look(kind).texts) {
        CHECK(contrast_ratio(theme->colour(text.colour), theme->colour(Use::kPaper)) >= 7.0);
      }
    }
  }
}

// WCAG 2.2, 1.4.11: 3:1 for graphics that carry meaning. A surface (kProp) carries none: its
// outline (kEdge) does. What touches or crosses in a drawing is told apart in grey: 1.5:1 or more
// (a rule of ours, no source).
TEST_CASE("figures can be seen on paper, and told apart in grey") {
  using figure::Ink;
  for (const std::string& name : support::shipped_looks()) {
    const auto theme = support::shipped_look(name);
    const Colour paper = theme->colour(Use::kPaper);
    const auto ink = [&](Ink which) { return theme->inks[static_cast<std::size_t>(which)]; };
    CHECK(ink(Ink::kPaper) == paper);
    for (const Ink one : {Ink::kBody, Ink::kFar, Ink::kSuit, Ink::kFarSuit, Ink::kEdge,
                          Ink::kAccent, Ink::kHeld, Ink::kGhost}) {
      INFO(name << " " << static_cast<int>(one));
      CHECK(contrast_ratio(ink(one), paper) >= 3.0);
      CHECK(contrast_ratio(ink(Ink::kProp), ink(one)) >= 1.5);
    }
    const Ink order[] = {Ink::kBody, Ink::kHeld, Ink::kAccent, Ink::kSuit, Ink::kFarSuit};
    for (std::size_t i = 1; i < std::size(order); ++i) {
      INFO(name << " " << i);
      CHECK(relative_luminance(ink(order[i])) > relative_luminance(ink(order[i - 1])));
      CHECK(contrast_ratio(ink(order[i]), ink(order[i - 1])) >= 1.5);
    }
    CHECK(contrast_ratio(ink(Ink::kBody), ink(Ink::kFar)) >= 1.5);
  }
}

// UKAAF G003 (2019), value from memory: large print is 16 to 18 pt and more.
TEST_CASE("large print is 18 pt or more everywhere, on any paper") {
  const auto theme = support::shipped_look("large-print");
  for (const Look* look : {&theme->card, &theme->home}) {
    for (const double factor : {0.5, 1.0}) {
      for (const TextLook& text : look->scaled(factor).texts) CHECK(text.size >= Length::pt(18));
    }
  }
}

TEST_CASE("a theme may be like another, and say only what differs") {
  const auto theme_of = [](const std::string& text, std::string* said = nullptr) {
    Diagnostics diagnostics;
    const auto source = std::make_shared<const Source>("own.yaml", text);
    auto theme = read_theme(
        source,
        [&](std::string_view name) -> SourcePtr {
          if (name == "own") return source;
          return name == "classic" ? support::look_file(name) : nullptr;
        },
        diagnostics);
    for (const Diagnostic& d : diagnostics.sorted()) {
      if (said != nullptr) *said += render(d, MessageStyle::kShort, Colouring::kPlain);
    }
    return theme;
  };
  const auto classic = support::classic_theme();
  const auto own = theme_of(
      "name: own\nabout: ours\nlike: classic\ncolours: {main: '#5a1f1f'}\ncard: {text: {cue: 12/14 "
      "bold}}\n");
  REQUIRE(own);
  CHECK(own->name == "own");
  CHECK(own->colour(Use::kMain) == Colour{0x5a, 0x1f, 0x1f});
  CHECK(own->colour(Use::kInk) == classic->colour(Use::kInk));
  CHECK(own->card.text(TextRole::kCue).size == Length::pt(12));
  CHECK(own->card.text(TextRole::kDose).size == classic->card.text(TextRole::kDose).size);
  std::string said;
  CHECK_FALSE(theme_of("name: own\nlike: clasic\n", &said));
  CHECK_THAT(said, Catch::Contains("own.yaml:2:7: error: there is no look ‘clasic’ to be like"));
  said.clear();
  CHECK_FALSE(theme_of("name: own\nlike: own\n", &said));
  CHECK_THAT(said, Catch::Contains("looks that are like each other end nowhere"));
  said.clear();
  CHECK_FALSE(theme_of("name: own\nabout: x\nlike: classic\ncolours: {soft: '#777777'}\n", &said));
  // WCAG 2.2's formula gives #777777 on white 4.478:1, and #767676 the first grey above 4.5:1.
  CHECK_THAT(said, Catch::Contains("own.yaml:4:17: error: ‘soft’ on the paper is 4.47:1, too pale: "
                                   "4.5:1 is the least that can be read [bad-value]; write "
                                   "'#767676', or darker"));
  said.clear();
  CHECK_FALSE(theme_of("name: own\nabout: x\nlike: classic\nfigures: {suit: '#dddddd'}\n", &said));
  CHECK_THAT(said, Catch::Contains("‘suit’ on the paper is 1.35:1"));
  said.clear();
  CHECK_FALSE(theme_of("name: own\nabout: x\nlike: classic\nfigures: {held: '#17212b'}\n", &said));
  CHECK_THAT(said,
             Catch::Contains("‘held’ must be lighter than ‘body’: in grey the two are 1.0:1"));
}

TEST_CASE("a club's own colours are made readable, or refused") {
  const auto classic = support::classic_theme();
  std::string said;
  const auto with = [&](const char* main, const char* second) {
    Diagnostics diagnostics;
    const auto out =
        in_colours(classic, {support::words(main), support::words(second)}, diagnostics);
    said.clear();
    for (const Diagnostic& d : diagnostics.sorted())
      said += render(d, MessageStyle::kShort, Colouring::kPlain);
    return out;
  };
  CHECK(with("", "") == classic);
  CHECK(with("#5a1f1f", "")->colour(Use::kMain) == Colour{0x5a, 0x1f, 0x1f});
  CHECK(said.empty());
  const auto pale = with("#e8b400", "");
  CHECK(contrast_ratio(pale->colour(Use::kMain), classic->colour(Use::kPaper)) >= 7.0);
  CHECK(contrast_ratio(pale->colour(Use::kMain), classic->colour(Use::kTint)) >= 7.0);
  CHECK_THAT(said, Catch::Contains("#e8b400 is printed as #"));
  CHECK_THAT(said, Catch::Contains("[colour-adjusted]"));
  // What is suggested needs no more adjusting.
  const std::string better = hex_text(pale->colour(Use::kMain));
  with(better.c_str(), "");
  CHECK(said.empty());
  const auto suited = with("", "#ffe14d");
  const auto ink = [&](const Theme& theme, figure::Ink which) {
    return theme.inks[static_cast<std::size_t>(which)];
  };
  CHECK(relative_luminance(ink(*suited, figure::Ink::kSuit)) ==
        Approx(relative_luminance(ink(*classic, figure::Ink::kSuit))).margin(0.004));
  CHECK_THAT(said, Catch::Contains("#ffe14d is printed as #"));
  CHECK(with("blue", "")->colour(Use::kMain) == classic->colour(Use::kMain));
  CHECK_THAT(said, Catch::Contains("‘blue’ is not a colour [bad-value]"));
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
  for (const std::string& name : support::shipped_looks()) {
    CHECK(support::shipped_look(name)->home.tick_box >= Length::mm(5));
  }
}

TEST_CASE("mistakes in a theme are said with what to change") {
  const std::string good = classic_text();
  CHECK(theme_messages(good).empty());
  CHECK_THAT(theme_messages(replace_all(good, "ink: '#17212b'", "ink: black")),
             Catch::Contains("a colour is written '#1b2733', in quotes [bad-value]"));
  CHECK_THAT(theme_messages(replace_all(good, "  minimum: 9 pt\n", "")),
             Catch::Contains("‘card’ lacks the key ‘minimum’ [missing-key]; add `minimum:`"));
  CHECK_THAT(theme_messages(replace_all(good, "gap: 2.6 mm", "gap: 2.6 furlongs")),
             Catch::Contains("must be a number of mm"));
  CHECK_THAT(theme_messages(replace_all(good, "cue: 10.5/12.8\n", "cue: 8/12.8\n")),
             Catch::Contains("‘cue’ is smaller than the sheet's minimum size"));
  CHECK_THAT(theme_messages(replace_all(good, "cue: 10.5/12.8\n", "cue: 10.5/12.8 pink\n")),
             Catch::Contains("‘pink’ is neither bold, italic nor a colour of the theme"));
  CHECK_THAT(theme_messages(good + "shadow: deep\n"),
             Catch::Contains("‘theme’ has no key ‘shadow’ [unknown-key]"));
  CHECK_FALSE(theme_messages("- a\n- b\n").empty());
  CHECK_FALSE(theme_messages("").empty());
}
