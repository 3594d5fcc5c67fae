// The manual of the checks is complete and well-formed; examples/mistakes provokes every one.
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "reason/checks.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;

TEST_CASE("every check has a name of its own, in words and hyphens") {
  std::set<std::string> names;
  for (const CheckInfo& info : all_checks()) {
    INFO(info.name);
    CHECK(names.insert(std::string(info.name)).second);
    CHECK(info.name.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string_view::npos);
  }
  for (const char* name : {"missing-warm-up",   "missing-cool-down",
                           "warm-up-not-first", "cool-down-not-last",
                           "over-slot",         "under-slot",
                           "over-budget",       "under-budget",
                           "unknown-station",   "coach-words-at-home",
                           "no-dose",           "substitute-without-easier",
                           "choices-unordered", "unknown-drill",
                           "duplicate-drill",   "unknown-kit",
                           "not-enough-kit",    "no-substitute-at-home",
                           "spotter-at-home",   "stretch-before-raise",
                           "stretch-too-long",  "one-side-only",
                           "unpaired-shape",    "too-few-adults",
                           "no-water-break",    "level-above-group",
                           "hard-words",        "no-adult-note",
                           "no-space-note",     "unreadable-dose",
                           "unknown-key",       "duplicate-key",
                           "bad-value",         "missing-key",
                           "unknown-part",      "part-cycle",
                           "outside-folder",    "unreadable-file",
                           "text-overflow",     "missing-glyph",
                           "figure-cycle",      "not-written"}) {
    INFO(name);
    CHECK(names.count(name) == 1);
  }
}

TEST_CASE("every check says what, why, on what ground, and what to change") {
  for (const CheckInfo& info : all_checks()) {
    INFO(info.name);
    for (const std::string_view sentence : {info.what, info.why, info.cure}) {
      CHECK(sentence.size() > 20);
      CHECK((sentence.ends_with('.') || sentence.ends_with("’.") || sentence.ends_with("?")));
      CHECK(sentence.find("  ") == std::string_view::npos);
    }
    CHECK(info.source.size() > 15);
    CHECK(!info.example.empty());
  }
}

TEST_CASE("what guards children is an error unless a club says otherwise") {
  std::set<std::string> guards = {"stretch-before-raise", "level-above-group", "too-few-adults",
                                  "no-water-break", "spotter-at-home"};
  // What cannot be done safely at home is nobody's choice.
  const std::set<std::string> at_home = {"spotter-at-home"};
  for (const CheckInfo& info : all_checks()) {
    INFO(info.name);
    if (guards.erase(std::string(info.name)) == 0) continue;
    CHECK(info.severity == Severity::kError);
    CHECK(info.adjustable == !at_home.count(std::string(info.name)));
  }
  CHECK(guards.empty());
}

TEST_CASE("what a session lacks is a warning, and an open point on the card") {
  std::set<std::string> points;
  for (const CheckInfo& info : all_checks()) {
    if (!info.open_point) continue;
    points.emplace(info.name);
    CHECK(info.severity == Severity::kWarning);
    CHECK(info.adjustable);
  }
  CHECK(points == std::set<std::string>{"missing-warm-up", "missing-cool-down", "warm-up-not-first",
                                        "cool-down-not-last", "over-slot", "part-cannot-fit",
                                        "substitute-without-easier", "rota-slip", "rota-full"});
}

TEST_CASE("what cannot be read, found or printed cannot be switched off") {
  std::set<std::string> fixed;
  for (const CheckInfo& info : all_checks()) {
    if (!info.adjustable && info.stops == Stops::kEverything) fixed.emplace(info.name);
  }
  CHECK(fixed == std::set<std::string>{
                     "unreadable-dose", "unknown-key", "duplicate-key", "bad-value", "missing-key",
                     "unknown-part", "part-cycle", "outside-folder", "unreadable-file",
                     "text-overflow", "missing-glyph", "not-written", "figure-cycle",
                     "does-not-fit", "colour-adjusted", "logo-unclear", "read-as"});
}
