// What the guard understands and what it does not mistake. Wordings of our own.
#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <string>
#include <vector>

#include "reason/checks.h"
#include "reason/english_guard.h"

using chalkleaf::reason::tests::english_guard;

TEST_CASE("an adult who is there") {
  for (const char* text : {
           "An adult stays in the room.",
           "Clear the floor. A grown-up watches every go.",
           "A grown up is in the same room",
           "Never practise alone: a parent stays beside you.",
           "Do not start without an adult in the room.",
           "Don’t begin until your carer is in the room.",
           "With an adult beside you, try the shape.",
           "A guardian must be with the child at all times.",
           "In the room with you: one adult.\nAn adult is present.",
           "Supervised by a parent.",
           "Never practise alone.",
           "Mum or Dad stays with you.",
           "Someone 18 or more sits there in the room.",
       }) {
    INFO(text);
    CHECK(english_guard()->says("adult-stays", text));
  }
}

TEST_CASE("no adult who is there") {
  for (const char* text : {
           "",
           "Stay in the room.",
           "Ask an adult to clear the room.",
           "No adult needs to stay.",
           "You can do this without an adult in the room.",
           "An adult does not have to watch.",
           "An adult needn't stay.",
           "Tell an adult if it hurts. Stay near the wall.",
           "Ask an adult to help with the table.",
           "An adult is nearby.",
           "Mum may leave once you have begun.",
           "If an adult is at home, ask them to watch.",
           "Dad watches by video.",
       }) {
    INFO(text);
    CHECK_FALSE(english_guard()->says("adult-stays", text));
  }
}

TEST_CASE("space that is cleared") {
  for (const char* text : {
           "Clear two big steps of floor in every direction.",
           "Do not start until the floor is clear.",
           "Move tables and chairs to the wall.",
           "Make plenty of room.",
           "Use a clear space, away from windows.",
           "Tidy the carpet first",
       }) {
    INFO(text);
    CHECK(english_guard()->says("space-cleared", text));
  }
}

TEST_CASE("space that is not cleared") {
  for (const char* text : {
           "",
           "Move slowly about the room.",
           "Keep a clear head.",
           "There is no need to clear the floor.",
           "An adult stays in the room.",
           "Lie on the floor. Is everything clear?",
       }) {
    INFO(text);
    CHECK_FALSE(english_guard()->says("space-cleared", text));
  }
}

namespace {

// The names of the checks that speak of a line, at a place.
std::vector<std::string> checks_said_of(const std::string& line, chalkleaf::plan::Place place) {
  chalkleaf::Diagnostics found;
  chalkleaf::plan::Session session;
  session.source = std::make_shared<const chalkleaf::Source>("plan.md", line);
  session.sources.push_back(session.source);
  session.place.value = place;
  english_guard()->check(session, {}, found);
  std::vector<std::string> out;
  for (const auto& one : found.all()) out.push_back(one.name);
  return out;
}

// `home danger-neck - Head circles: 10` in lines; `#` begins a comment.
std::vector<std::vector<std::string>> guard_lines(const std::string& name, std::size_t columns) {
  std::ifstream file(chalkleaf::support::repository() + "/tests/guard/" + name);
  std::vector<std::vector<std::string>> out;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> row;
    for (std::size_t i = 1; i < columns; ++i) {
      const std::size_t space = line.find(' ');
      row.push_back(line.substr(0, space));
      line = line.substr(space + 1);
    }
    row.push_back(line);
    out.push_back(std::move(row));
  }
  return out;
}

constexpr auto kAtHome = chalkleaf::plan::Place::kHome;
constexpr auto kInHall = chalkleaf::plan::Place::kGym;

}  // namespace

TEST_CASE("a danger is understood in any words") {
  const auto [line, check] = GENERATE(table<std::string, std::string>({
      {"- Handstand against the sofa: 5", "danger-upside-down"},
      {"Walk your feet up the wall until you are upside down.", "danger-upside-down"},
      {"- Swing from a scarf round the neck: 3", "danger-tied"},
      {"- Leap from the arm of the settee: 4", "danger-height"},
      {"Push your hips to the ceiling, elbows straight, head hanging.", "danger-back-bend"},
  }));
  INFO(line);
  CHECK(checks_said_of(line, kAtHome) == std::vector{check});
}

TEST_CASE("a sentence that forbids is no danger") {
  for (const char* line : {
           "No handstands, cartwheels or rolls at home.",
           "Handstands stay in the gym.",
           "Handstands at home? Never.",
           "Never at home:\n- handstands\n- bridges",
           "Instead of a bridge lie on your back.",
           "Bridges are not for at home.",
       }) {
    INFO(line);
    CHECK(checks_said_of(line, kAtHome).empty());
  }
}

TEST_CASE("what is dangerous at home only is not in a hall") {
  CHECK(checks_said_of("- Bridge: 3 x 10 s", kAtHome) ==
        std::vector<std::string>{"danger-back-bend"});
  CHECK(checks_said_of("- Bridge: 3 x 10 s", kInHall).empty());
}

TEST_CASE("what is meant by a drill may be meant otherwise above the drills") {
  CHECK(checks_said_of("The cat is on the bench.\n\n## Main\n- Toe taps: 5", kAtHome).empty());
  CHECK(checks_said_of("Hello.\n\n## Main\n- Stork on the bench: 5", kAtHome) ==
        std::vector<std::string>{"danger-height"});
}

TEST_CASE("power is for the warm") {
  CHECK(checks_said_of("## Main\n- Tuck jumps: 8", kInHall) ==
        std::vector<std::string>{"danger-cold"});
  CHECK(checks_said_of("## Warm-up\n- Jog: 3 min\n## Main\n- Tuck jumps: 8", kInHall).empty());
}

TEST_CASE("two entries that know one danger speak once of a line") {
  CHECK(checks_said_of("- Balance on the arm of the sofa, jump off the sofa: 5", kAtHome) ==
        std::vector<std::string>{"danger-height"});
}

TEST_CASE("adults are counted by number, by name and by their ages") {
  for (const char* text : {
           "14 gymnasts of 9 to 11, two coaches.",
           "14 gymnasts of 9 to 11, Ada (24) and Bo (31).",
           "14 gymnasts of 9 to 11; Coach Ada and Coach Bo.",
           "14 gymnasts of 9 to 11, Ada and me.",
       }) {
    INFO(text);
    CHECK(checks_said_of(text, kInHall).empty());
  }
  for (const char* text : {
           "38 children of five to seven, plus me and a volunteer.",
           "Twenty-eight children of six years, two coaches.",
       }) {
    INFO(text);
    CHECK(checks_said_of(text, kInHall) == std::vector<std::string>{"too-few-adults"});
  }
}

TEST_CASE("dangerous lines in many words are understood") {
  const auto rows = guard_lines("dangerous_lines.txt", 3);
  REQUIRE(rows.size() > 400);
  std::size_t noticed = 0;
  for (const auto& row : rows) {
    const auto said = checks_said_of(row[2], row[0] == "home" ? kAtHome : kInHall);
    if (std::find(said.begin(), said.end(), row[1]) != said.end()) ++noticed;
  }
  CHECK(noticed * 100 >= rows.size() * 95);
}

TEST_CASE("sound lines that sound like something else are left alone") {
  const auto rows = guard_lines("sound_lines.txt", 2);
  REQUIRE(rows.size() > 100);
  for (const auto& row : rows) {
    INFO(row[1]);
    CHECK(checks_said_of(row[1], row[0] == "home" ? kAtHome : kInHall).empty());
  }
}

TEST_CASE("every entry of the danger book names a check, and its patterns can be read") {
  const chalkleaf::RealFileSystem files;
  chalkleaf::Diagnostics found;
  const auto source = chalkleaf::source::load(
      files, chalkleaf::support::repository() + "/themes/words/en/dangers.yaml", "dangers.yaml",
      found);
  const auto book = chalkleaf::plan::read_danger_book(source, found);
  REQUIRE(book);
  const chalkleaf::reason::Guard guard(book, found);
  CHECK(found.all().empty());
  for (const chalkleaf::plan::Danger& danger : book->dangers) {
    INFO(danger.name.text);
    const auto* info = chalkleaf::reason::find_check(danger.check.text);
    REQUIRE(info != nullptr);
    CHECK(info->stops == chalkleaf::reason::Stops::kHomeSheet);
    CHECK_FALSE(info->adjustable);
  }
}
