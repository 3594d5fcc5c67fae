// The timetable as JSON: one whole object.
#include "cli/times_json.h"

#include <catch2/catch.hpp>

#include "plan/read.h"
#include "source/read.h"

using namespace chalkleaf;

namespace {

std::string json(const std::string& text) {
  Diagnostics found;
  const SourcePtr source = source::load_text("t.md", text, found);
  club::TimedPlan plan;
  plan.session = plan::read_session(source::read_document(source, found), {}, found);
  plan.timetable = reason::timetable(plan.session, {});
  CHECK(found.all().empty());
  return cli::times_json(plan);
}

}  // namespace

TEST_CASE("times as JSON: parts with their written time, drills with their doses") {
  const std::string wanted =
      R"j({"schema": 1, "title": "T", "place": "gym", "start": "17:00", "slot_seconds": 600, "seconds": 300, "parts": [)j"
      R"j({"name": "Warm-up", "line": 8, "seconds": 300, "model_seconds": 65, "written_seconds": 300, "low": null, "likely": null, "high": null, "lanes": null, "working": null, "waiting": null, "sentence": null, "drills": [)j"
      R"j({"line": 10, "name": "Casts", "notes": [], "sets": null, "rounds": null, "sides": null, "amount": {"kind": "reps", "value": [5, 4, 3]}, "turns": null, "rest_s": 10, "start_s": 0, "seconds": 59, "why": "12 reps (5 + 4 + 3) \u00d7 2 s (a rep, default) + 2 \u00d7 10 s rest", "likely": null, "lanes": null, "sentence": null}, )j"
      R"j({"line": 11, "name": "Kick", "notes": [], "sets": null, "rounds": null, "sides": null, "amount": {"kind": "goes", "value": 3}, "turns": null, "rest_s": null, "start_s": 59, "seconds": 6, "why": "3 goes \u00d7 1 rep \u00d7 2 s (a rep, default)", "likely": null, "lanes": null, "sentence": null}]}], "rotations": []}
)j";
  CHECK(
      json(
          "---\ntitle: T\nplace: gym\nstart: \"17:00\"\nslot: 10 min\n---\n\n## Warm-up (5 min)\n\n"
          "- Casts: 5-4-3, rest 10 s\n- Kick: 3 goes\n") == wanted);
}

TEST_CASE("times as JSON: a circuit's stations have its rounds, work and rests") {
  const std::string text = json(
      "---\ntitle: T\nplace: gym\n---\n\n## Warm-up\n\n"
      "- Circuit: 2 rounds, 30 s work, 10 s rest, 1 min between rounds\n  - Jog\n  - Skip\n");
  CHECK(
      text.find(
          R"("name": "Jog", "notes": [], "sets": null, "rounds": 2, "sides": null, "amount": {"kind": "seconds", "value": 30}, "turns": null, "rest_s": 10)") !=
      std::string::npos);
  CHECK(text.find(R"("rest_s": 60)") != std::string::npos);
}

TEST_CASE("times as JSON: what a part takes in the hall, with lanes, waiting and a sentence") {
  Diagnostics found;
  const SourcePtr words = source::load_text(
      "hall.yaml",
      "places: {vault: {words: [vault], goes: each, lane: 20, blocked: 10 s, source: s}}\n"
      "activities: {other: {begin: 60 s, lasts: 60 s, source: s}}\n"
      "times: {queue-told: 30 s, rep: 2 s}\nfactors: {low: 0.5, high: 2}\n",
      found);
  const auto book = plan::read_hall_book(words, found);
  REQUIRE(book);
  const SourcePtr source = source::load_text(
      "t.md", "---\ntitle: T\nplace: gym\ngymnasts: 8\n---\n\n## Vault\n\n- Squat on: 5 goes\n",
      found);
  club::TimedPlan plan;
  plan.session = plan::read_session(source::read_document(source, found), {}, found);
  plan.timetable = reason::timetable(plan.session, {}, book.get());
  const std::string text = cli::times_json(plan);
  CHECK(
      text.find(
          R"("model_seconds": 490, "written_seconds": null, "low": 245, "likely": 490, "high": 980, "lanes": 1, "working": 10, "waiting": 390, "sentence": "1 min to begin and 7 min 10 s for its lines")") !=
      std::string::npos);
  CHECK(
      text.find(
          R"("likely": 430, "lanes": 1, "sentence": "5 goes each, 8 in a queue, 10 s a go + 30 s to change")") !=
      std::string::npos);
}
