// How text of each role is handed to the typesetter: what may be hyphenated, and whose figures are
// of one width.
#include "sheet/builder.h"

#include "sheet/sheet_fixture.h"

using namespace chalkleaf;
using namespace chalkleaf::sheet;

namespace {

// Asks a builder of that kind of sheet.
template <class Ask>
auto with_builder(Kind kind, Ask ask) {
  const auto theme = support::classic_theme();
  const auto labels = support::english();
  const plan::Club club;
  const Context context{*theme, *labels, club, Paper::kA5, {}, {}, std::nullopt, {}, nullptr};
  type::Typesetter typesetter(support::test_fonts());
  Builder builder(kind, context, theme->look(kind), typesetter);
  return ask(builder);
}

bool is_hyphenated(Kind kind, TextRole role, const plan::Words& words) {
  return with_builder(kind, [&](const Builder& builder) {
    const std::vector<type::Inline> pieces = builder.pieces(role, words);
    REQUIRE_FALSE(pieces.empty());
    for (const type::Inline& one : pieces) CHECK(one.hyphenate == pieces[0].hyphenate);
    return pieces[0].hyphenate;
  });
}

}  // namespace

TEST_CASE("sentences of the coach card may be hyphenated, nothing else") {
  plan::Words words = support::words("Land softly, understanding why");
  for (const bool set_off : {false, true}) {
    if (set_off) words.emphasis.push_back({5, 11, true});
    for (const TextRole role :
         {TextRole::kCue, TextRole::kVariation, TextRole::kBoxText, TextRole::kNote}) {
      CHECK(is_hyphenated(Kind::kCoachCard, role, words));
      CHECK_FALSE(is_hyphenated(Kind::kHomeSheet, role, words));
    }
    for (const TextRole role :
         {TextRole::kTitle, TextRole::kPart, TextRole::kClock, TextRole::kDrill, TextRole::kDose,
          TextRole::kStation, TextRole::kVariationLabel, TextRole::kColumn, TextRole::kBoxTitle}) {
      CHECK_FALSE(is_hyphenated(Kind::kCoachCard, role, words));
    }
  }
  // Names and doses stand in roles of running text too.
  with_builder(Kind::kCoachCard, [](const Builder& builder) {
    CHECK_FALSE(builder.piece(TextRole::kVariation, "Palms pressed together").hyphenate);
    CHECK_FALSE(builder.whole(TextRole::kVariation, "3 × 10 s").hyphenate);
    CHECK_FALSE(builder.label(TextRole::kVariationLabel, "Easier").hyphenate);
    const plan::Words station = support::words("the understanding bench");
    for (const type::Inline& one :
         builder.said(TextRole::kVariation, "at-station", "station", station))
      CHECK(one.hyphenate);
  });
}

TEST_CASE("figures of the clock and of columns are of one width") {
  with_builder(Kind::kCoachCard, [](const Builder& builder) {
    CHECK(builder.piece(TextRole::kClock, "17:05").figures == type::Figures::kTabular);
    CHECK(builder.piece(TextRole::kColumn, "8").figures == type::Figures::kTabular);
    CHECK(builder.piece(TextRole::kCue, "8").figures == type::Figures::kOfTheFont);
  });
}

TEST_CASE("a logo takes no height from the sheet, and never more than a quarter of its width") {
  const auto title_height = [](const Logo* logo, Size* shown) {
    const auto theme = support::classic_theme();
    const auto labels = support::english();
    plan::Club club;
    club.name = support::words("Alder Quay");
    Context context{*theme, *labels, club, Paper::kA5, {}, {}, std::nullopt, {}, nullptr};
    context.logo = logo;
    type::Typesetter typesetter(support::test_fonts());
    Builder builder(Kind::kCoachCard, context, theme->look(Kind::kCoachCard), typesetter);
    const Owner heading = Owner::of(builder.node(Builder::kRoot, Role::kH1));
    const Block block = builder.title(support::words("Strong shapes"), heading);
    if (const auto* row = std::get_if<page::RowBlock>(&block.content)) {
      const auto& picture = std::get<page::PictureBlock>(row->cells.back().block.content);
      *shown = picture.size;
      CHECK(picture.source == "/c/logo.png");
      REQUIRE(picture.owner.node);
      CHECK(builder.at(*picture.owner.node).role == Role::kFigure);
      CHECK(builder.at(*picture.owner.node).alternative_text == "Logo of Alder Quay");
    }
    return builder.height_of(block, builder.width());
  };
  Size shown;
  const Length plain = title_height(nullptr, &shown);
  CHECK(shown.width == Length());
  const Logo square{"/c/logo.png", 100, 100};
  CHECK(title_height(&square, &shown) == plain);
  CHECK(shown.width == shown.height);
  const Logo wide{"/c/logo.png", 2000, 100};
  CHECK(title_height(&wide, &shown) == plain);
  CHECK(shown.width == with_builder(Kind::kCoachCard, [](Builder& b) { return b.width(); }) / 4);
  CHECK(shown.height * 19 < shown.width);
  CHECK(shown.width < shown.height * 21);
  const Logo lost{"/c/logo.png", 0, 0};
  CHECK(title_height(&lost, &shown) == plain);
}
