#include "draft/facts.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;

namespace {

draft::Facts facts(const std::string& text) {
  const Source source("d.md", text);
  return draft::facts_of(draft_test::english(), source,
                         draft::read_document(draft_test::english(), source));
}

}  // namespace

TEST_CASE("the hours of a title, in the forms people write") {
  CHECK(facts("Rec 1 / Thurs 5:00-5:50\n").start == 17 * 60);
  CHECK(facts("Rec 1 / Thurs 5:00-5:50\n").slot == 50);
  CHECK(facts("tuesday beginners 5pm-6pm\n").slot == 60);
  CHECK(facts("FREESTYLE teens / Fri 6.30-8pm\n").slot == 90);
  CHECK(facts("Adult drop-in, Jan 21, 8:00-9:30pm\n").start == 20 * 60);
  CHECK(facts("HOLIDAY CAMP 9:00 AM - 12:30 PM\n").slot == 210);
  CHECK_FALSE(facts("Tumbling juniors 11-14 year\n").slot);
}

TEST_CASE("how many come, and where it is done") {
  CHECK(facts("Rec\n14 kids me n Tash\n").gymnasts == 14);
  CHECK(facts("Rec\nNumber of pupils: 38.\n").gymnasts == 38);
  CHECK(facts("Easter home programme\n").home);
  CHECK_FALSE(facts("Camp 9.30-3.00\n3.00 home - side door\n").home);
}
