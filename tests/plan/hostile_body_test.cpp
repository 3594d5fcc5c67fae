// Bodies made to cost: read in bounded time and depth, every place still right.
#include <catch2/catch.hpp>

#include "places.h"
#include "support/random.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("hostile bodies are read in bounded time and depth") {
  const auto many = [](const std::string& piece, std::size_t n) {
    std::string out;
    for (std::size_t i = 0; i < n; ++i) out += piece;
    return out;
  };
  const std::size_t kMany = support::rounds(100'000);
  for (const std::string& body :
       {many(">", kMany),
        many("- ", kMany),
        many("[", kMany),
        many("*a_ ", kMany),
        many("- a: 3\n  - b: c\n", 2000),
        "- " + many("a: ", kMany),
        "- a: " + many("b, ", kMany),
        "- " + many("a – ", kMany),
        many("|x", kMany) + "\n" + many("|-", kMany),
        "|" + many("a|", 60) + "\n|" + many("-|", 60) + "\n" + many("a\n", kMany),
        many("![l", kMany),
        many("<!-- a ", kMany),
        many("a\\\n", kMany),
        "- a: 3\n" + many("  cue: x\n", 5000),
        many("[a]: b\n", 5000),
        many("- Circuit: 3 rounds, 9 s work, 9 s rest\n- a\n", 2000),
        "- Circuit: 3 rounds, 9 s work, 9 s rest\n" + many("  - a\n", 5000),
        "- Circuit: 3 rounds, 9 s work, 9 s rest\n" + many("  a\n", 5000),
        "- Put away: " + many("a, ", kMany),
        "- " + many("a or ", kMany),
        many("Coach: a\n", 5000),
        many("- Put away: a, b\n", 2000),
        many("![a](b)\n", 5000),
        many("**a** *b* ", kMany)}) {
    const ReadPlan plan = read_plan(plan_with(body));
    Places places(plan.source.get());
    places.session(plan.session);
    INFO(body.substr(0, 40));
    CHECK(places.ok);
  }
}

}  // namespace
}  // namespace chalkleaf::plan
