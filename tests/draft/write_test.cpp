#include "draft/write.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using draft_test::tidied;

TEST_CASE("a draft in the taught form") {
  CHECK(
      tidied(
          "Rec Thurs 5:00-5:50\n12 kids\n\nWARM UP 10 min\n- jog 2 laps\n- wrists\n\nno shoes\n") ==
      "---\ntitle: \"Rec Thurs 5:00-5:50\"\nplace: gym\nstart: \"17:00\"\nslot: 50 min\ngymnasts: "
      "12\n---\n"
      "\n12 kids\n\n## WARM UP (10 min)\n\n- Jog: 2 lengths\n- Wrists\n\nno shoes\n");
}

TEST_CASE("what is written is canonical, and a canonical plan is left alone") {
  const std::string once = tidied("Rec\nBars (15)\n- casts 3x5\n");
  REQUIRE_FALSE(once.empty());
  CHECK(tidied(once).empty());
  CHECK(tidied("---\ntitle: T\nplace: gym\n---\n\n## Warm-up\n\n- Jog: x5\n").empty());
  CHECK(tidied("\n\n").empty());
}

TEST_CASE("signs that mean something in Markdown are only signs") {
  const std::string made = tidied("Rec\n#3 - wrist *sore* [today]\n");
  CHECK(made.find("\nCoach: \\#3 - wrist \\*sore\\* \\[today\\]\n") != std::string::npos);
}

TEST_CASE("every place leads back to the coach's bytes") {
  const SourcePtr coach = draft_test::text("Rec\nBars (15)\n- casts 3x5\n");
  const auto read = draft::read(draft_test::english(), coach);
  REQUIRE(read);
  const std::size_t at = read->canonical->text().find("Casts");
  const Span span{read->canonical.get(), static_cast<std::uint32_t>(at),
                  static_cast<std::uint32_t>(at + 5)};
  CHECK(read->origin.of(span).text() == "casts 3x5");
  CHECK(read->origin.of({read->canonical.get(), 0, 3}).source == coach.get());
}

TEST_CASE("pathological texts are read in little time") {
  CHECK_FALSE(tidied("Rec\n" + std::string(100'000, '1')).empty());
  CHECK_FALSE(tidied("Rec\n" + std::string(100'000, '-')).empty());
  std::string words;
  for (int i = 0; i < 20'000; ++i) words += "x5 ";
  CHECK_FALSE(tidied("Rec\n" + words).empty());
}

TEST_CASE("a warm-up and a cool-down by another name are called that, too") {
  const std::string written = draft_test::tidied(
      "Club\nGENERAL PREP\n- jog 2 laps\nBARS\n- casts 3x5\nWIND DOWN\n- pike 20 s\n");
  CHECK(written.find("## Warm-up – GENERAL PREP") != std::string::npos);
  CHECK(written.find("## Cool-down – WIND DOWN") != std::string::npos);
  const std::string plain =
      draft_test::tidied("Club\nWARM UP\n- jog 2 laps\nCOOL DOWN\n- pike 20 s\n");
  CHECK(plain.find("## WARM UP\n") != std::string::npos);
  CHECK(plain.find("## COOL DOWN\n") != std::string::npos);
}

TEST_CASE("a table of times is read by its rows") {
  const std::string written = draft_test::tidied(
      "Club\n\n| Time | Activity | Points |\n|---|---|---|\n| 2.10 | Warm up: tag 4 mins | quiet "
      "feet "
      "|\n| 2.20 | Rolls: log roll x4 | |\n| 2.30 | Water | |\n| 2.35 | Cool down: sit tall 10 s | "
      "|\n");
  CHECK(written.find("## Warm up (10 min)") != std::string::npos);
  CHECK(written.find("- Tag: 4 min") != std::string::npos);
  CHECK(written.find("quiet feet") != std::string::npos);
}
