// `fit:`: the largest scale whose pages are few enough, in few tries; and what is said when none
// is.
#include "sheet/fit.h"

#include <cmath>

#include "sheet_fixture.h"

using namespace chalkleaf;
using sheet::Kind;
using support::make_sheet;

namespace {

/// A sheet that takes `length` pages at its own scale, growing with the square of it.
struct Sheet {
  double length;
  double gaps = 1;       ///< what the gaps at the feet of its pages make of its length
  double breaks_at = 9;  ///< from this factor on something is cut
  std::vector<double> tried = {};

  page::Composed at(double factor) {
    tried.push_back(factor);
    page::Composed out;
    const double needed = length * factor * factor;
    const double pages = std::max(1.0, std::ceil(needed * gaps));
    if (factor > breaks_at) out.too_tall.emplace_back();
    out.list.pages.resize(static_cast<std::size_t>(pages));
    out.page_height = Length::pt(100);
    out.free_on_last_page = Length::pt((pages - needed) * 100);
    out.used = Length::pt(needed * 100);
    return out;
  }
  sheet::Fitted fit(int pages) {
    return sheet::compose_to_fit(pages, [this](double factor) { return at(factor); });
  }
};

Length title_size(const support::Made& made) {
  return std::get<page::TextItem>(made.list.pages.front().items.front()).size;
}

}  // namespace

TEST_CASE("the largest scale that fits is found in six tries, to a thirtieth") {
  for (const double length : {0.3, 0.8, 1.1, 1.9, 2.0, 2.6, 3.9}) {
    for (const int pages : {1, 2, 3}) {
      INFO(length << " on " << pages);
      Sheet one{length};
      const sheet::Fitted fitted = one.fit(pages);
      CHECK(one.tried.size() <= sheet::kMostTries);
      const double largest = std::min(sheet::kLargestFactor, std::sqrt(pages / length));
      if (largest < sheet::kSmallestFactor) {
        REQUIRE(fitted.needed);
        CHECK(*fitted.needed == Approx(length * 0.7 * 0.7));
        continue;
      }
      CHECK_FALSE(fitted.needed);
      CHECK(fitted.composed.list.pages.size() <= static_cast<std::size_t>(pages));
      const double set = std::sqrt(fitted.composed.used.in_pt() / 100 / length);
      CHECK(set <= largest + 1e-6);
      CHECK(set > largest - 0.05);
    }
  }
}

TEST_CASE("a short sheet is set larger, as much as its page holds") {
  const auto factor_of = [](Sheet one) {
    const page::Composed set =
        sheet::compose_freely([&one](double factor) { return one.at(factor); });
    return std::sqrt(set.used.in_pt() / 100 / one.length);
  };
  // The factors' squares are 1.96, 1.5625 and 1.2544; more than 0.3 of the page has to be free.
  CHECK(factor_of({0.05}) == Approx(1.4).margin(1e-3));
  CHECK(factor_of({0.51}) == Approx(1.4).margin(1e-3));
  CHECK(factor_of({0.52}) == Approx(1.25).margin(1e-3));
  CHECK(factor_of({0.63}) == Approx(1.25).margin(1e-3));
  CHECK(factor_of({0.65}) == Approx(1.12).margin(1e-3));
  CHECK(factor_of({0.69}) == Approx(1.12).margin(1e-3));
  CHECK(factor_of({0.71}) == Approx(1));
  CHECK(factor_of({2.5}) == Approx(1));
  // One that is set larger only at the price of a problem is not.
  CHECK(factor_of({0.3, 1, 1.3}) == Approx(1.25).margin(1e-3));
  CHECK(factor_of({0.3, 1, 1.0}) == Approx(1));
}

TEST_CASE("a sheet that runs over a little is set smaller, as little as saves a page") {
  const auto pages_and_tries = [](Sheet one) {
    const page::Composed set =
        sheet::compose_freely([&one](double factor) { return one.at(factor); });
    return std::pair(set.list.pages.size(), one.tried.back());
  };
  // Two pages' worth of text with gaps at the pages' feet that make three of it.
  CHECK(pages_and_tries({2.0, 1.05}) == std::pair<std::size_t, double>(2, 0.96));
  CHECK(pages_and_tries({2.0, 1.15}) == std::pair<std::size_t, double>(2, 0.92));
  CHECK(pages_and_tries({2.0, 1.25}) == std::pair<std::size_t, double>(2, 0.88));
  // No scale saves this one, and that one is too long to be worth trying.
  CHECK(pages_and_tries({2.0, 1.3}) == std::pair<std::size_t, double>(3, 0.88));
  CHECK(pages_and_tries({2.1, 1.0}) == std::pair<std::size_t, double>(3, 1));
}

TEST_CASE("a sheet is set smaller to fit, never below the minimum, and its boxes stay") {
  plan::Session session = support::session(36);
  const auto free_length = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  const int pages = static_cast<int>(free_length.list.pages.size()) - 1;
  REQUIRE(pages >= 2);
  session.fit_sheet = plan::Sourced<plan::PageCount>{{pages, false}, {}};
  const auto made = make_sheet(Kind::kHomeSheet, session, Paper::kA4);
  CHECK(made.list.pages.size() == static_cast<std::size_t>(pages));
  CHECK(made.diagnostics.all().empty());
  CHECK(made.smallest() >= Length::pt(12));
  CHECK(title_size(made) < title_size(free_length));
  CHECK(made.count(page::Role::kForm) == free_length.count(page::Role::kForm));
  // The card has a wish of its own, and none here.
  CHECK(make_sheet(Kind::kCoachCard, session, Paper::kA5).diagnostics.all().empty());
}

TEST_CASE(
    "what cannot fit is set on as few pages as were found, and the longest drills are named") {
  plan::Session session = support::session(40);
  const auto source = std::make_shared<const Source>("p.md", "fit: 1 page\n- Long one\n- Short\n");
  session.fit_card = plan::Sourced<plan::PageCount>{{1, false}, {source.get(), 5, 11}};
  auto& drill = std::get<plan::Drill>(session.parts[0].steps[3]);
  drill.name = {"Long one", {source.get(), 14, 22}};
  drill.cues.push_back(support::words(std::string(200, 'a') + " b"));
  const auto made = make_sheet(Kind::kCoachCard, session, Paper::kA5);
  session.fit_card.reset();
  CHECK(made.list.pages.size() <=
        make_sheet(Kind::kCoachCard, session, Paper::kA5).list.pages.size());
  const Diagnostic* found = nullptr;
  for (const Diagnostic& one : made.diagnostics.all()) {
    if (one.name == "does-not-fit") found = &one;
  }
  REQUIRE(found != nullptr);
  CHECK(found->severity == Severity::kWarning);
  CHECK(found->span.text() == "1 page");
  CHECK_THAT(found->message, Catch::StartsWith("the coach card needs ") &&
                                 Catch::Contains("pages at its smallest type; 1 page was asked"));
  REQUIRE(found->labels.size() == 1);
  CHECK(found->labels[0].span.text() == "Long one");
  CHECK_THAT(found->hint, Catch::Contains("print on A4"));
}
