// What reads like a coach's note and would reach a family.
#include <catch2/catch.hpp>

#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::Place;

namespace {

std::string noted(const std::string& text, Place place = Place::kHome,
                  plan::Note::For reader = plan::Note::For::kAll) {
  SessionMaker maker(place);
  maker.safety("An adult stays in the room. Clear the floor.");
  return checked(
      framed(maker, s(60), [&](SessionMaker& m) { m.part("Strong").note(text, reader); }));
}

bool warned(const std::string& said) {
  return said.find("[coach-words-at-home]") != std::string::npos;
}

}  // namespace

TEST_CASE("what looks like a coach's note on a family's sheet is warned of") {
  for (const char* text :
       {"Coach stands on the left.", "coach, count aloud", "Coaches’ corner", "(coach stand by)",
        "Lift slowly. Coach: watch the wrists.", "Watch her wrists (coach only)",
        "Count aloud – coaches only", "Not for families", "For the coach stand by",
        "Lift slowly, coach - hand low"}) {
    INFO(text);
    CHECK(warned(noted(text)));
    CHECK_FALSE(warned(noted(text, Place::kGym)));
    CHECK_FALSE(warned(noted(text, Place::kHome, plan::Note::For::kCoach)));
    CHECK_FALSE(warned(noted(text, Place::kHome, plan::Note::For::kFamily)));
  }
}

TEST_CASE("words about the coach are for families too") {
  for (const char* text :
       {"Show it to your coach.", "Ask the coach: she knows.", "Your coach – a friend of shapes.",
        "Stagecoach: a game", "A coaching game", "Ask your coach before you begin."}) {
    INFO(text);
    CHECK_FALSE(warned(noted(text)));
  }
}

TEST_CASE("the warning says both ways out") {
  CHECK(noted("Coach stands by.")
            .find("this goes to the families, and reads like a note for the coach "
                  "[coach-words-at-home]; if it is the coach's, write it on a line of its own that "
                  "begins with `Coach:`; if it is for families, say `your coach`, or begin it with "
                  "`Family:`\n") != std::string::npos);
}
