// What club.yaml and a plan say of paper, holes and the slip: plan over club.
#include "plan/printing.h"

#include <catch2/catch.hpp>

#include "plan/club_reading.h"

namespace chalkleaf::plan {
namespace {

Printing printing_of(const std::string& front, const std::string& club = "") {
  const Club from = read_club_text("name: A\n" + club).club;
  const ReadPlan plan = read_plan("---\ntitle: T\nplace: home\n" + front + "---\n", from);
  CHECK(messages(plan.diagnostics).empty());
  return plan.session.printing;
}

TEST_CASE("a paper is for both sheets, or for the one named") {
  CHECK(printing_of("paper: US Letter\n").card_paper.value().value == Paper::kLetter);
  CHECK(printing_of("paper: US Letter\n").sheet_paper.value().value == Paper::kLetter);
  const Printing each = printing_of("paper: {card: A5 landscape, sheet: letter}\n");
  CHECK(each.card_paper.value().value == Paper::kA5Landscape);
  CHECK(each.sheet_paper.value().value == Paper::kLetter);
  CHECK_FALSE(printing_of("paper: {card: half letter}\n").sheet_paper.has_value());
}

TEST_CASE("what the plan leaves out is the club's") {
  const char* club =
      "paper: {card: half-letter, sheet: letter}\nfiling-margin: yes\nreturn-slip: yes\n";
  CHECK(printing_of("", club).card_paper.value().value == Paper::kHalfLetter);
  CHECK(printing_of("", club).filing == Filing::kOneSide);
  CHECK(printing_of("", club).return_slip.value().when.empty());
  const Printing over = printing_of(
      "paper: {card: a5}\nfiling-margin: both sides\nreturn-slip: by Friday 4 December\n", club);
  CHECK(over.card_paper.value().value == Paper::kA5);
  CHECK(over.sheet_paper.value().value == Paper::kLetter);
  CHECK(over.filing == Filing::kBothSides);
  CHECK(over.return_slip.value().when.text == "by Friday 4 December");
  const Printing none = printing_of("filing-margin: no\nreturn-slip: no\n", club);
  CHECK(none.filing == Filing::kNone);
  CHECK_FALSE(none.return_slip.has_value());
}

TEST_CASE("what is wrong with printing is said with what to write") {
  const auto said = [](const std::string& front) {
    return messages(read_plan("---\ntitle: T\nplace: gym\n" + front + "---\n").diagnostics);
  };
  CHECK(
      said("paper: foolscap\n") ==
      "plan.md:4:8: warning: ‘foolscap’ is not a paper size we print on [bad-value]; write a4, a5, "
      "letter or half-letter, and behind it landscape for a sheet on its side\n");
  CHECK(
      said("paper: {cards: a5}\n") ==
      "plan.md:4:9: warning: ‘cards’ is not a key of paper [unknown-key]; did you mean `card`?\n");
  CHECK(said("filing-margin: 20 mm\n") ==
        "plan.md:4:16: warning: ‘20 mm’ is not a margin for filing [bad-value]; write `yes`, `no`, "
        "or "
        "`both sides` for paper printed on both sides\n");
}

}  // namespace
}  // namespace chalkleaf::plan
