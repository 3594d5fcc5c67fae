// Titles of parts: their role, and the time written behind them. Which forms coaches use is common
// practice, no source.
#include "plan/headings.h"

#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {
namespace {

TEST_CASE("a title that begins with warm-up or cool-down is one") {
  for (const char* title :
       {"Warm-up", "warm up", "WARMUP", "Warming up", "Warm‑up", "Warm up & games", "Warm-up!",
        "Warm-up: raise the pulse", "WARM UP - 10 min", "  Warm-ups"}) {
    INFO(title);
    CHECK(role_of(title) == PartRole::kWarmUp);
  }
  for (const char* title : {"Cool-down", "cool down", "Cooldown", "Warm down", "cooling down",
                            "Cool down and stretch", "Cool-down!"}) {
    INFO(title);
    CHECK(role_of(title) == PartRole::kCoolDown);
  }
  for (const char* title :
       {"", "Warm hands", "Warm", "Bars", "The cool down", "Warm upside down", "Cool", "Up warm"}) {
    INFO(title);
    CHECK(role_of(title) == PartRole::kMain);
  }
}

std::string parted(const std::string& title) {
  const auto source = std::make_shared<const Source>("h", title);
  source::Text text;
  text.append(title, {source.get(), 0, static_cast<std::uint32_t>(title.size())});
  const Heading heading = read_heading(text);
  std::string out = heading.title.text;
  if (heading.time) {
    out += fmt::format(" | {} <{}>", exact_text(heading.time->value), heading.time->span.text());
  }
  return out;
}

TEST_CASE("a time behind the title is the part's own") {
  CHECK(parted("Warm-up (10 min)") == "Warm-up | 10 min <10 min>");
  CHECK(parted("Warm up: 10 mins") == "Warm up | 10 min <10 mins>");
  CHECK(parted("WARM UP - 10 min") == "WARM UP | 10 min <10 min>");
  CHECK(parted("Bars – 1 h 5 min") == "Bars | 1 h 5 min <1 h 5 min>");
  CHECK(parted("Bars, beam, 90 s") == "Bars, beam | 1 min 30 s <90 s>");
  CHECK(parted("Bars: swings: 20 minutes") == "Bars: swings | 20 min <20 minutes>");
  CHECK(parted("Bars (ten minutes)") == "Bars | 10 min <ten minutes>");
  CHECK(parted("Bars 10 min") == "Bars | 10 min <10 min>");
  CHECK(parted("Bars (10 min") == "Bars | 10 min <10 min>");
  CHECK(parted("Bars (10 min) and beam") == "Bars and beam | 10 min <10 min>");
  CHECK(parted("Bars (about 10 min)") == "Bars | 10 min <10 min>");
  CHECK(parted("Bars (10 min max)") == "Bars | 10 min <10 min>");
  CHECK(parted("10 min: Bars") == "Bars | 10 min <10 min>");
  CHECK(parted("10 min Bars") == "Bars | 10 min <10 min>");
}

TEST_CASE("of a range the longer time is the part's") {
  CHECK(parted("Quiz (10-15 min)") == "Quiz | 15 min <15 min>");
  CHECK(parted("Quiz – 10 to 15 min") == "Quiz | 15 min <15 min>");
}

TEST_CASE("other numbers are part of the title") {
  for (const char* title :
       {"Bars", "Bars (2)", "Bars: 10", "10 min", "(10 min)", "Bars (10 min each)", "Bars (0 min)",
        "Station 2: vault", "Bars – 1:30", "17:00 Bars", "10 min of bars", "Beam 2"}) {
    INFO(title);
    CHECK(parted(title) == title);
  }
}

TEST_CASE("a heading and the timings may not give a part two times") {
  const auto said = [](const char* heading) {
    return messages(read_plan(fmt::format("---\ntitle: T\nplace: gym\ntimings:\n  parts: "
                                          "{{Bars: 8 min}}\n---\n\n## {}\n",
                                          heading))
                        .diagnostics);
  };
  CHECK(said("Bars (8 min)").empty());
  CHECK(said("Bars (10 min)") ==
        "plan.md:5:17: warning: the heading of ‘Bars’ gives it 10 min, not 8 min [bad-value]; keep "
        "one "
        "of the two times\n");
}

}  // namespace
}  // namespace chalkleaf::plan
