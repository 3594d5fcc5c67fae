#include "draft/write.h"

#include <catch2/catch.hpp>
#include <ctime>

#include "draft/english.h"
#include "rota/grids.h"

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

TEST_CASE("a grid with tabs becomes the taught notation, and nothing of it is lost") {
  const SourcePtr coach = draft_test::text(
      "Tues squad\n4:00 warmup\n- jog 2 laps\n4:20 events, 22 min ea. G1 (4 boys) w/ D, G2 (5) w/ "
      "Ray\n\n"
      "\t4:20\t4:42\t5:04\t5:10\nG1\tFX\tPH\tWATER\tSR\nG2\tSR\tFX\tWATER\tPH\n\nFX\n- rolls x5\n");
  const auto rotations = rota::read(*coach, rota_test::english());
  REQUIRE(rotations.size() == 1);
  const auto read = draft::read(draft_test::english(), coach, rotations);
  REQUIRE(read);
  const std::string made(read->canonical->text());
  CHECK(made.find("gymnasts: 9\n") != std::string::npos);
  CHECK(made.find("## Warmup (20 min)\n") != std::string::npos);
  CHECK(made.find("## Events (3 x 22 min)\n\n22 min ea. G1 (4 boys) w/ D, G2 (5) w/ Ray\n\n"
                  "| | G1 | G2 |\n|---|---|---|\n| 4:20 | FX | SR |\n| 4:42 | PH | FX |\n| 5:04 | "
                  "WATER | |\n"
                  "| 5:10 | SR | PH |\n") != std::string::npos);
  const std::size_t at = made.find("| PH | FX |");
  const Span cell{read->canonical.get(), static_cast<std::uint32_t>(at + 2),
                  static_cast<std::uint32_t>(at + 4)};
  const Span typed = read->origin.of(cell);
  CHECK(typed.text() == "PH");
  CHECK(coach->line_column(typed.begin).line == 7);
}

TEST_CASE("sets and rounds said of a whole part") {
  const std::string drills = "leg lifts 10\npress ups 8\nplank 20s\n";
  const auto has = [](const std::string& text, const std::string& words) {
    return tidied(text).find(words) != std::string::npos;
  };
  for (const std::string said : {"Strength – 3 sets of everything", "Strength (3 sets of each)",
                                 "Strength\n3 sets of each"}) {
    INFO(said);
    CHECK(has("Squad\n\n" + said + "\n" + drills, "- Leg lifts: 3 x 10\n- Press ups: 3 x 8\n"));
  }
  for (const std::string said : {"Strength x3", "Strength – all x 3", "Strength\n3 rounds"}) {
    INFO(said);
    CHECK(has("Squad\n\n" + said + "\n" + drills,
              "- Circuit: 3 rounds\n  - Leg lifts: 10\n  - Press ups: 8\n"));
  }
}

TEST_CASE("a draft may begin with a rule, a dash or a word of ours") {
  CHECK_FALSE(tidied("– jog 2 laps\n– star jumps x10\n").empty());
  CHECK_FALSE(tidied("-----\nTuesday squad\nFloor\nrolls x5\n").empty());
  CHECK_FALSE(tidied("Group: Level 3\nWarm up\njog 2 laps\n").empty());
  CHECK(tidied("title: Shapes\nplace: gym\n\n## Floor\n\n- Roll: 5\n").empty());
  CHECK(tidied("———\ntitle: Shapes\n———\n").empty());
}

TEST_CASE("a row's dose is put together from its columns") {
  const std::string made = tidied(
      "Squad Sun\nSection\tMins\tDrill\tSets\tReps\tNotes\n"
      "Warm up\t12\tJog\t\t4 laps\t\n\t\tTuck jumps\t2\t10\tarms!!\n"
      "Drink\t5\t\t\t\t\nPower\t18\tBox jumps\t4\t6\trest 45s\n"
      "\t\tCalf raises\t2\t15\teach leg\n");
  CHECK(made.find(
            "## Warm up (12 min)\n\n- Jog: 4 lengths\n- Tuck jumps: 2 x 10\n  - note: arms!!") !=
        std::string::npos);
  CHECK(
      made.find(
          "## Power (18 min)\n\n- Box jumps: 4 x 6, rest 45 s\n- Calf raises: 2 x 15 each leg\n") !=
      std::string::npos);
}

TEST_CASE("a list that is gone through again is a circuit, whose sets are said once") {
  CHECK(tidied("Home\n\nMain bit - go through it twice, 1 minute rest in between\n1. Press ups x8\n"
               "2. Dish hold 20 seconds\n3. Tuck ups x10\n")
            .find("2 rounds") != std::string::npos);
}

TEST_CASE("the rows below a heading are put together by the head of their table") {
  const std::string made = tidied(
      "Squad\n\nDrill\tSets\tReps\tRest\tCue\nBASICS 20 min\nSnap down\t3\t5\t\toff the top\n"
      "CONDITIONING 15 min\nBox jumps\t4\t6\t45s\tstep down\nV sits\t3\t15\t20s\t\n");
  CHECK(made.find("- Snap down: 3 x 5\n  - note: off the top\n") != std::string::npos);
  CHECK(made.find(
            "- Box jumps: 4 x 6, rest 45 s\n  - note: step down\n- V sits: 3 x 15, rest 20 s\n") !=
        std::string::npos);
}

TEST_CASE(
    "what each drill of a part has is said once, above it, and how often the list is done below "
    "it") {
  const std::string made = tidied(
      "Circuits\n\nEach for 40 s (12 min)\nplank\nwall sit\nrope skipping\n"
      "twice through the whole list\n\n10 of each (13 min)\npress-ups\nburpees\n"
      "3 times round, partner counts out loud\n");
  CHECK(made.find("## Each for 40 s (12 min)\n\n- Circuit: 2 rounds") != std::string::npos);
  CHECK(made.find("  - Rope skipping: 40 s\n") != std::string::npos);
  CHECK(made.find("## 10 of each (13 min)\n\n- Circuit: 3 rounds\n  - Press-ups: 10\n") !=
        std::string::npos);
}

TEST_CASE("a dose on the line below its name belongs to it, where a draft is written so") {
  const std::string made = tidied(
      "Squad\nWARM UP: 15 min\nSpiderman walk\n(2 lengths)\nAnkle bounces\n(20)\n"
      "Lunge with twist\n(5 each side)\n\nFLOOR: 30 min\nJump, jump, pause\n(6 goes)\n");
  CHECK(
      made.find(
          "- Spiderman walk: 2 lengths\n- Ankle bounces: 20\n- Lunge with twist: 5 each side\n") !=
      std::string::npos);
  CHECK(made.find("- Jump, jump, pause: 6 goes\n") != std::string::npos);
  // One such line may be a remark of its own.
  CHECK(
      tidied("Squad\nWARM UP: 15 min\nSpiderman walk\n(2 lengths)\n- hops 10\n").find("walk: 2") ==
      std::string::npos);
}

TEST_CASE(
    "cards: a counted word opens each part, and labels say what is the drill and what the dose") {
  const std::string made = tidied(
      "Saturday\n\nCARD 1 * BARS\nDo: hang and lift your knees\nHow many: 3 x 5\nCARD 2 * BEAM\n"
      "Do: walk backwards on toes\nHow many: 4 lengths\nCARD 3 * FLOOR\nDo: forward roll\nHow "
      "many: 6\n");
  CHECK(made.find("## CARD 1 \\* BARS\n\n- Hang and lift your knees: 3 x 5\n") !=
        std::string::npos);
  CHECK(made.find("- Walk backwards on toes: 4 lengths\n\n## CARD 3") != std::string::npos);
  CHECK(made.find("- Forward roll: 6\n") != std::string::npos);
}

TEST_CASE("lines below a dose on a line of its own are notes of its drill") {
  const std::string made = tidied(
      "Vault Mon\n\nTrampette (25 min)\nStraight jump\n    5 goes each\n    land in the hoop\n"
      "Tuck jump\n    4 goes each\n    knees come up, arms stay high\nHalf turn\n    3 each way\n  "
      "  turn late\n");
  CHECK(made.find("- Straight jump: 5 goes\n  - note: land in the hoop\n- Tuck jump: 4 goes\n"
                  "  - note: knees come up, arms stay high\n- Half turn: 3 each way\n  - note: "
                  "turn late\n") != std::string::npos);
}

TEST_CASE("columns of levels give each level's dose of one drill") {
  const std::string made = tidied(
      "Skills day\n\n## Bars (30 min)\n\n| Skill | Bronze | Silver | Gold |\n|---|---|---|---|\n"
      "| Cast | 2 x 5 | 3 x 5 | 3 x 8 |\n| Roll | down wedge x5 | on the flat x5 | to straddle x4 "
      "|\n");
  CHECK(made.find("- Bronze – Cast: 2 x 5\n- Silver – Cast: 3 x 5\n- Gold – Cast: 3 x 8\n") !=
        std::string::npos);
  CHECK(made.find("- Bronze – Roll – down wedge: 5\n") != std::string::npos);
}

TEST_CASE("a number in brackets counts where a list has its doses in brackets") {
  const std::string made = tidied(
      "Parkour\n\nWarm up\n- ski jumps (20)\n- dish (3 x 5 secs)\n- hands walk round (2 laps each "
      "way)\n");
  CHECK(made.find("- Ski jumps: 20\n- Dish: 3 x 5 s\n- Hands walk round: 2 lengths each way\n") !=
        std::string::npos);
  CHECK(tidied("Club\n\nWarm up\n- ski jumps (20)\n- dish 5\n- rolls 6\n").find("Ski jumps: 20") ==
        std::string::npos);
}

TEST_CASE("nothing of a row is lost that has no drill, or no dose") {
  const std::string made = tidied(
      "Squad Sun\nSection\tMins\tDrill\tSets\tReps\tNotes\nWarm up\t12\tJog\t\t4 laps\t\n"
      "Home\t\t\t\t\tbring the log books\n\t\t\t\t\tdoor code on the board\n");
  CHECK(made.find("- Home\n  - note: bring the log books\n") != std::string::npos);
  CHECK(made.find("door code on the board") != std::string::npos);
  CHECK(tidied("Day\n\n| Skill | Bronze | Silver |\n|---|---|---|\n| Cast | 5 | 3 x 5 |\n"
               "| Chalk | | |\n| | ask for help | |\n")
            .find("ask for help") != std::string::npos);
}

TEST_CASE("many lines that may each begin a list take time in proportion") {
  const auto seconds = [](int lines) {
    std::string text = "Rec\n";
    for (int i = 0; i < lines; ++i) text += "run 1\n";
    const std::clock_t begin = std::clock();
    tidied(text);
    return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  };
  const double once = seconds(500);
  // Eight times the lines; the floor keeps a busy machine from failing it.
  CHECK(seconds(4000) < 30 * std::max(once, 0.01));
}
