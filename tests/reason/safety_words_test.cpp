// Wordings that do and do not say what a home plan must say. Ours; common practice, no source.
#include <catch2/catch.hpp>

#include "reason/safety_words.h"

using namespace chalkleaf::reason;

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
       }) {
    INFO(text);
    CHECK(says_adult_present(text));
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
       }) {
    INFO(text);
    CHECK_FALSE(says_adult_present(text));
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
    CHECK(says_space_cleared(text));
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
    CHECK_FALSE(says_space_cleared(text));
  }
}
