// The slip: at the foot of the last page, whole, its fields tagged, no name on it.
#include <catch2/catch.hpp>

#include "sheet_fixture.h"

namespace chalkleaf::sheet {
namespace {

using support::make_sheet;

plan::Session with_slip(int drills, const std::string& when = "") {
  plan::Session session = support::session(drills);
  session.printing.return_slip = plan::ReturnSlip{support::words(when)};
  return session;
}

const page::TextItem* find(const page::DisplayList& list, const std::string& words,
                           std::size_t& page) {
  for (page = 0; page < list.pages.size(); ++page) {
    for (const page::Item& item : list.pages[page].items) {
      const auto* text = std::get_if<page::TextItem>(&item);
      if (text != nullptr && text->text.find(words) != std::string::npos) return text;
    }
  }
  return nullptr;
}

TEST_CASE("a home sheet has a slip only when it is asked for") {
  CHECK(make_sheet(Kind::kHomeSheet, support::session(4), Paper::kA4).text().find("cut here") ==
        std::string::npos);
  CHECK_THAT(make_sheet(Kind::kHomeSheet, with_slip(4), Paper::kA4).text(),
             Catch::Contains("cut here Give this slip back to your coach Strong shapes"));
  CHECK_THAT(make_sheet(Kind::kHomeSheet, with_slip(4, "by Friday 4 December"), Paper::kA4).text(),
             Catch::Contains("Give this slip back to your coach by Friday 4 December"));
  CHECK(make_sheet(Kind::kCoachCard, with_slip(4), Paper::kA5).text().find("cut here") ==
        std::string::npos);
}

TEST_CASE("a slip's five fields are forms to write in, each described") {
  const auto plain = make_sheet(Kind::kHomeSheet, support::session(4), Paper::kA4);
  const auto made = make_sheet(Kind::kHomeSheet, with_slip(4), Paper::kA4);
  CHECK(made.count(page::Role::kForm) == plain.count(page::Role::kForm) + 5);
  std::vector<std::string> described;
  for (const page::Node& node : made.list.tree) {
    if (node.role == page::Role::kForm && node.write_in) described.push_back(node.box_description);
  }
  CHECK(described == std::vector<std::string>{
                         "Write in: Your number or initials", "Write in: Days practised, of 2",
                         "Write in: How hard, 0 to 10", "Write in: Did anything hurt? What?",
                         "Write in: A grown-up’s initials"});
  support::check_tree(made.list);
  support::check_inside_paper(made.list);
}

TEST_CASE("a slip stands whole at the foot of the last page, on every paper") {
  for (const Paper paper : kPapers) {
    for (int drills = 1; drills <= 13; drills += 4) {
      INFO(paper_key(paper) << ", " << drills << " drills");
      const auto made = make_sheet(Kind::kHomeSheet, with_slip(drills), paper);
      std::size_t first = 0;
      std::size_t last = 0;
      REQUIRE(find(made.list, "cut here", first) != nullptr);
      const page::TextItem* end = find(made.list, "initials", last);
      REQUIRE(end != nullptr);
      CHECK(first == last);
      CHECK(last + 1 == made.list.pages.size());
      // Of the room above the foot, less than a field's height is left below the slip.
      Length lowest;
      for (const page::Item& item : made.list.pages.back().items) {
        const auto* path = std::get_if<page::PathItem>(&item);
        if (path == nullptr || !path->owner.node) continue;
        if (made.list.tree[*path->owner.node].role != page::Role::kForm) continue;
        for (const page::PathStep& step : path->steps) lowest = std::max(lowest, step.a.y);
      }
      CHECK(made.list.pages.back().size.height - lowest < Length::mm(30));
      CHECK_FALSE(made.diagnostics.has_errors());
    }
  }
}

}  // namespace
}  // namespace chalkleaf::sheet
