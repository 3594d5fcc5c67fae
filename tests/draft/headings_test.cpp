#include "draft/headings.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;

namespace {

struct Read {
  std::string name;
  double minutes = 0;
  std::string rest;
};
Read heading(const std::string& text) {
  const Source source("d.md", text);
  const draft::Line line = draft::lines_of(source, 0).at(0);
  const draft::HeadingRead read = draft::read_heading(draft_test::english(), source, line, {});
  const std::string all(source.text());
  return {all.substr(read.name_begin, read.name_end - read.name_begin), read.minutes.value_or(0),
          all.substr(read.rest, read.rest_end - read.rest)};
}

}  // namespace

TEST_CASE("what a heading says: its name, its minutes, and the drills behind it") {
  CHECK(heading("B. FLOOR WORK (25 minutes)").name == "FLOOR WORK");
  CHECK(heading("B. FLOOR WORK (25 minutes)").minutes == 25);
  CHECK(heading("Vault 10 min - run x5").name == "Vault");
  CHECK(heading("Vault 10 min - run x5").minutes == 10);
  CHECK(heading("Vault 10 min - run x5").rest == "run x5");
  CHECK(heading("Warm-up, 15 minutes. Two laps").minutes == 15);
  CHECK(heading("1) WARM UP 20'").minutes == 20);
  CHECK(heading("9.35 Strength 2 rounds: plank 30").name == "Strength");
  CHECK(heading("11:35 Ninja fitness\t3 goes each").name == "Ninja fitness");
  CHECK(heading("Drinks (11.44)").minutes == 0);
}
