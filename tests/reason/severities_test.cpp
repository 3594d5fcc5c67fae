// What a club decides about the checks.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;

namespace {

plan::Club deciding(const std::string& check, std::optional<Severity> severity) {
  plan::Club club;
  club.checks.push_back({{check, {}}, severity, {}});
  return club;
}

std::string judged_by_club(const plan::Club& club) {
  Diagnostics diagnostics;
  check_choices(club, diagnostics);
  return report(diagnostics);
}

}  // namespace

TEST_CASE("a club may make a check milder, stricter or switch it off") {
  SessionMaker maker = framed(SessionMaker().slot(s(600)), s(60), [](SessionMaker&) {});
  const auto first_words = [&](const plan::Club& club) {
    const std::string all = checked(maker, club);
    return all.substr(0, all.find(':', all.find(": ") + 2));
  };
  CHECK(first_words({}) == "s.md:2:1: warning");
  CHECK(first_words(deciding("under-slot", Severity::kError)) == "s.md:2:1: error");
  CHECK(first_words(deciding("under-slot", std::nullopt)).empty());
  CHECK(first_words(deciding("over-slot", std::nullopt)) == "s.md:2:1: warning");
}

TEST_CASE("a switched-off error keeps no plan from being printed") {
  Diagnostics found;
  found.error("too-few-adults", {}, "x");
  found.warning("under-slot", {}, "y");
  plan::Club club = deciding("too-few-adults", std::nullopt);
  club.checks.push_back({{"under-slot", {}}, Severity::kError, {}});
  apply_choices(club, found);
  CHECK(report(found) == "error: y [under-slot]\n");
  CHECK(found.error_count() == 1);
  apply_choices(deciding("under-slot", Severity::kWarning), found);
  CHECK_FALSE(found.has_errors());
  CHECK(found.warning_count() == 1);
}

TEST_CASE("what cannot be read stays an error, whatever a club writes") {
  Diagnostics found;
  found.error("unreadable-dose", {}, "x");
  apply_choices(deciding("unreadable-dose", std::nullopt), found);
  CHECK(report(found) == "error: x [unreadable-dose]\n");
}

TEST_CASE("names no check has, and checks that cannot be changed") {
  CHECK(judged_by_club(deciding("hard-words", std::nullopt)).empty());
  CHECK(judged_by_club(deciding("hard-wrods", std::nullopt)) ==
        "error: there is no check ‘hard-wrods’ [bad-value]; did you mean `hard-words`?\n");
  CHECK(judged_by_club(deciding("everything", std::nullopt)) ==
        "error: there is no check ‘everything’ [bad-value]; `chalkleaf explain` lists the checks "
        "by name\n");
  CHECK(judged_by_club(deciding("text-overflow", Severity::kWarning)) ==
        "error: ‘text-overflow’ cannot be changed: what it finds would be guessed at or lost on "
        "the page [bad-value]; take this line out\n");
}

TEST_CASE("the share of a slot that may stay unused is the club's to say") {
  const auto unused = [](int percent) {
    plan::Club club;
    club.limits.unused_share = plan::Sourced<int>{percent, {}};
    return checked(framed(SessionMaker().slot(s(300)), s(120), [](SessionMaker&) {}), club);
  };
  // 120 s + 15 s + 120 s of 300 s: 45 s, 15 %.
  CHECK(unused(15).empty());
  CHECK_FALSE(unused(14).empty());
}
