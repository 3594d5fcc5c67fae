// Keys below a drill: `record`, `at`, and words that people use for the keys there are.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

struct Written {
  const char* below;
  const char* read;
};

TEST_CASE("what stands below a drill is read, or named with what to change") {
  const Written cases[] = {
      {"  - record: seconds\n  - At: the *beam*\n", "  at the beam\n  record seconds\n"},
      {"  - record:\n",
       "plan.md:8:5: error: ‘record’ says nothing [bad-value]; write what is measured, such as "
       "`seconds` or `steps`, behind the colon, or leave the line out\n"},
      {"  - record:\n    - seconds\n",
       "  item seconds\n"
       "plan.md:8:5: error: ‘record’ says nothing [bad-value]; write what is measured, such as "
       "`seconds` or `steps`, behind the colon, or leave the line out\n"},
      {"  - record: 30 s\n",
       "  item record: 30 s\n"
       "plan.md:8:13: error: ‘30 s’ does not say what is measured [bad-value]; write what goes "
       "into the box on the sheet: `record: seconds`, `record: steps`; for no box leave the line "
       "out\n"},
      {"  - record: Yes\n",
       "  item record: Yes\n"
       "plan.md:8:13: error: ‘Yes’ does not say what is measured [bad-value]; write what goes "
       "into the box on the sheet: `record: seconds`, `record: steps`; for no box leave the line "
       "out\n"},
      {"  - record: how long it can be held before the back lifts\n",
       "  item record: how long it can be held before the back lifts\n"
       "plan.md:8:13: error: this is too long for a box on the sheet [bad-value]; keep it to a "
       "word or two, such as `record: seconds`, and say the rest in a `note:` below the drill\n"},
      {"  - record: seconds\n  - record: goes\n",
       "  record seconds\n  item record: goes\n"
       "plan.md:9:5: error: ‘record’ is written twice [bad-value]; keep one of the two lines\n"},
      {"  - record seconds\n  - record the best\n",
       "  record seconds\n  item record the best\n"
       "plan.md:8:5: error: put a colon after ‘record’ [bad-value]; write `- record: seconds`\n"},
      {"  - at:\n",
       "plan.md:8:5: error: ‘at’ says nothing [bad-value]; write the station of the hall, such as "
       "`beam`, behind the colon, or leave the line out\n"},
      {"  - at: beam\n  - at: vault\n",
       "  at beam\n  item at: vault\n"
       "plan.md:9:5: error: ‘at’ is written twice [bad-value]; keep one of the two lines\n"},
      {"  - at the end, smile\n  - at-home practice\n  - at - beam\n",
       "  at beam\n  item at the end, smile\n  item at-home practice\n"
       "plan.md:10:5: error: put a colon after ‘at’ [bad-value]; write `- at: beam`\n"},
      {"  record: seconds\n",
       "  record seconds\n"
       "plan.md:8:3: error: ‘record’ has no dash before it, so it runs on from the line above "
       "[bad-value]; write `- record: seconds`, indented by two spaces below ‘Dish hold’\n"},
      {"- at: beam\n",
       "  at beam\n"
       "plan.md:8:3: error: ‘at’ stands beside the drill, not below it [bad-value]; indent this "
       "line by two spaces so that it belongs to ‘Dish hold’\n"},
      {"  - cue: low\n    - at: beam\n",
       "  at beam\n  cue low\n"
       "plan.md:9:7: error: ‘at’ is indented too far [bad-value]; indent this line like the one "
       "above, so that it belongs to ‘Dish hold’\n"},
      {"  - without towel: Arch: 3\n    - record: x\n    - coach: y\n",
       "  without towel: Arch\n    item record: x\n    paragraph for coach y\n"
       "plan.md:9:7: error: ‘record’ cannot stand below a substitute [bad-value]; indent it like "
       "the line of the substitute, so that it belongs to the drill\n"},
      {"  - rest: 10 s\n",
       "  item rest: 10 s\n"
       "plan.md:8:5: error: ‘rest’ is not something a drill has [unknown-key]; write it on the "
       "drill's own line, behind its name: `Dish hold: 2 x 20 s, rest 20 s`\n"},
      {"  - picture: a.png\n",
       "  item picture: a.png\n"
       "plan.md:8:5: error: ‘picture’ is not something a drill has [unknown-key]; write `- ![what "
       "it shows](../pictures/name.png)`\n"},
  };
  for (const Written& c : cases) {
    INFO(c.below);
    CHECK(read_body_text(std::string("## P\n\n- Dish hold: 3\n") + c.below) ==
          std::string("drill Dish hold | 3 reps\n") + c.read);
  }
}

TEST_CASE("other words for the keys are understood far enough to name the key") {
  const std::pair<const char*, const char*> words[] = {
      {"records", "record"},    {"recording", "record"}, {"score", "record"},
      {"station", "at"},        {"apparatus", "at"},     {"where", "at"},
      {"kit", "uses"},          {"equipment", "uses"},   {"use", "uses"},
      {"tip", "cue"},           {"cues", "cue"},         {"notes", "note"},
      {"coaching", "cue"},      {"couch", "coach"},      {"famly", "family"},
      {"regression", "easier"}, {"home", "family"},      {"esier", "easier"},
      {"progress", "harder"},   {"withuot", "without"}};
  for (const auto& [written, meant] : words) {
    INFO(written);
    CHECK(body_messages(fmt::format("## P\n\n- Dish hold: 3\n  - {}: x\n", written)) ==
          fmt::format("plan.md:8:5: error: ‘{}’ is not something a drill has [unknown-key]; did "
                      "you mean `{}`?\n",
                      written, meant));
  }
}

TEST_CASE("every list mark, tabs, Windows line ends and a byte-order mark are read") {
  const std::string body =
      "## P\n\n- Pick up: hoops\n- Coach: watch\n- Circuit: 3 rounds, 9 s work, 5 s rest\n"
      "  - Hops\n    - cue: low\n  - coach: clap\n- 10 star jumps, 10 high knees\n\n![a](b.png)\n";
  const std::string wanted =
      "pick up [hoops]\nitem for coach watch\ndrill Circuit | circuit 3 rounds, work 9 s, rest 5 "
      "s\n  paragraph for coach clap\n  drill Hops\n    cue low\ndrill 10 star jumps, 10 high "
      "knees | "
      "[star jumps][high knees]\npicture a <b.png>\n";
  CHECK(read_body_text(body) == wanted);
  for (const char* mark : {"* ", "+ ", "-   ", "-\t"}) {
    INFO(mark);
    const std::string marked = replace_all(body, "- ", mark);
    const bool deep = std::string_view(mark).size() > 2 || mark[1] == '\t';
    CHECK(
        read_body_text(deep ? replace_all(replace_all(marked, "    ", "        "), "\n  ", "\n    ")
                            : marked) == wanted);
  }
  CHECK(read_body_text(replace_all(body, "\n", "\r\n")) == wanted);
  const ReadPlan plan = read_plan("\xEF\xBB\xBF" + replace_all(plan_with(body), "\n", "\r\n"));
  CHECK(outline(plan.session) + messages(plan.diagnostics) == wanted);
  std::string numbered = replace_all(body, "\n- ", "\n1. ");
  numbered = replace_all(replace_all(numbered, "\n    - ", "\n      1) "), "\n  - ", "\n   1) ");
  CHECK(read_body_text(numbered) == wanted);
}

}  // namespace
}  // namespace chalkleaf::plan
