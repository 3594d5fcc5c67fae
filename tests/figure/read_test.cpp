// Pose files as they are read, and every message about what is wrong in them.
#include "figure/read.h"

#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "reading.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

std::string of_file(const std::string& text) { return messages(read_file(text).diagnostics); }
// Of figures whose lines are counted from 3.
std::string messages_of(const std::string& text) {
  return messages(read_figures(text).diagnostics);
}
std::string of_pose(const std::string& keys) { return messages(read_pose(keys).diagnostics); }

Pose pose(const std::string& keys) {
  const ReadFigures read = read_pose(keys);
  REQUIRE(messages(read.diagnostics) == "");
  return read.figures.at(0).poses.at(0);
}

}  // namespace

TEST_CASE("a pose is what its keys say") {
  const Pose p = pose(
      "view: front, touches: {hands: wall, near foot: floor}, lean: 20, tilt: -5, turn: 10, "
      "joints: {shoulder: 90, near shoulder: 70, spine: -10}, hands on: {far: near hip}, holds: "
      "stick, ground: beam, adjust: [far hip], range: trained, still: no, height: 0.5");
  CHECK(p.view == View::kFront);
  REQUIRE(p.contacts.size() == 2);
  CHECK(p.contacts[0].part == Part::kHands);
  CHECK(p.contacts[0].on == Prop::kWall);
  CHECK(!p.contacts[0].side);
  CHECK(p.contacts[1].part == Part::kFeet);
  CHECK(p.contacts[1].side == Side::kRight);
  CHECK(p.lean == 20);
  CHECK(p.tilt == -5);
  CHECK(p.turn == 10);
  CHECK(p.joints.get(Joint::kShoulder, Side::kRight) == 70);
  CHECK(p.joints.get(Joint::kShoulder, Side::kLeft) == 90);
  CHECK(p.joints.get(Joint::kSpine) == -10);
  REQUIRE(p.reaches.size() == 1);
  CHECK(p.reaches[0].hand == Side::kLeft);
  CHECK(p.reaches[0].target == Target::kHips);
  CHECK(p.reaches[0].side == Side::kRight);
  CHECK(p.holds == Prop::kStick);
  CHECK(p.ground == Prop::kBeam);
  REQUIRE(p.adjust.size() == 1);
  CHECK(p.adjust[0].joint == Joint::kHip);
  CHECK(p.adjust[0].side == Side::kLeft);
  CHECK(p.trained);
  CHECK(!p.still);
  CHECK(p.height == 0.5);
}

TEST_CASE("one side may differ, in whatever order both are written") {
  for (const char* keys : {"joints: {hip: 10, far hip: 40}", "joints: {far hip: 40, hip: 10}"}) {
    const Pose p = pose(keys);
    CHECK(p.joints.get(Joint::kHip, Side::kRight) == 10);
    CHECK(p.joints.get(Joint::kHip, Side::kLeft) == 40);
  }
}

TEST_CASE("a figure begins from another and changes it") {
  const ReadFigures read = read_figures(
      "  a: {touches: feet, joints: {hip: 10, knee: 20}, alt: A}\n"
      "  b: {from: a, joints: {knee: 30}, lean: 5}\n"
      "  c: {from: b, lean: solved, touches: nothing, height: 1}\n");
  REQUIRE(messages(read.diagnostics) == "");
  REQUIRE(read.figures.size() == 3);
  const Pose& b = read.figures[1].poses[0];
  CHECK(b.joints.get(Joint::kHip) == 10);
  CHECK(b.joints.get(Joint::kKnee) == 30);
  CHECK(b.lean == 5);
  CHECK(b.contacts.size() == 1);
  CHECK(read.figures[1].alternative.text == "");  // a text is of one figure only
  const Pose& c = read.figures[2].poses[0];
  CHECK(!c.lean);
  CHECK(c.contacts.empty());
  // What a joint of `a` was given stands in `a`.
  CHECK(b.joint_spans.at({Joint::kHip, Side::kRight}).text() == "hip: 10");
}

TEST_CASE("a movement is its key poses") {
  const ReadFigures read = read_figures(
      "  lying: {touches: back}\n"
      "  lift: {frames: [lying, {from: lying, joints: {hip: 90}, still: no}], tempo: [fast, slow], "
      "returns: yes, moves: near foot, show: row, also: [leg raise]}\n"
      "  end: {from: lift}\n");
  REQUIRE(messages(read.diagnostics) == "");
  const Figure& lift = read.figures[1];
  REQUIRE(lift.poses.size() == 2);
  CHECK(lift.poses[1].joints.get(Joint::kHip) == 90);
  CHECK(lift.poses[0].still);
  CHECK(!lift.poses[1].still);
  CHECK(lift.tempo == std::vector<Speed>{Speed::kFast, Speed::kSlow});
  CHECK(lift.returns);
  CHECK(lift.show == Show::kRow);
  CHECK(lift.also.at(0).text == "leg raise");
  // Whoever begins from a movement begins where it ends.
  CHECK(read.figures[2].poses.at(0).joints.get(Joint::kHip) == 90);
}

TEST_CASE("a library read later may replace figures of an earlier one") {
  Diagnostics diagnostics;
  Descriptions all;
  const auto first =
      source::load_text("a.yaml", "figures:\n  dish: {touches: back}\n", diagnostics);
  const auto second =
      source::load_text("b.yaml", "figures:\n  dish: {touches: front}\n", diagnostics);
  all.take(first, false, diagnostics);
  all.take(second, true, diagnostics);
  const auto figures = all.resolve(diagnostics);
  CHECK(messages(diagnostics) == "");
  REQUIRE(figures.size() == 1);
  CHECK(figures[0].poses[0].contacts[0].part == Part::kFront);
}

TEST_CASE("a file of figures has a family and figures") {
  CHECK(of_file("figure:\n  a: {touches: feet}\n") ==
        "figures.yaml:1:1: error: a file of figures has no key ‘figure’ [unknown-key]; did you "
        "mean ‘figures’?\n"
        "figures.yaml:1:1: error: this file describes no figures [missing-key]; add `figures:` and "
        "below it each figure's name with its keys\n");
  CHECK(of_file("family: Empty\n") ==
        "figures.yaml:1:1: error: this file describes no figures [missing-key]; add `figures:` and "
        "below it each figure's name with its keys\n");
  CHECK(of_file("figures: [a]\n") ==
        "figures.yaml:1:10: error: this file describes no figures [missing-key]; add `figures:` "
        "and below it each figure's name with its keys\n");
  CHECK(messages_of("  a: {touches: feet}\n  a: {touches: back}\n") ==
        "figures.yaml:4:3: error: there is a figure ‘a’ already [duplicate-key]; give one of them "
        "another name\n");
  CHECK(messages_of("  " + std::string(300, 'x') + ": {touches: feet}\n") ==
        "figures.yaml:3:3: error: this is no name for a figure [bad-value]; write a few words, as "
        "coaches say them\n");
}

TEST_CASE("an unknown key is reported with what was meant") {
  CHECK(of_pose("tuches: feet") ==
        "figures.yaml:3:11: error: a figure has no key ‘tuches’ [unknown-key]; did you mean "
        "‘touches’?\n");
  CHECK(of_pose("touches: feet, colour: red") ==
        "figures.yaml:3:26: error: a figure has no key ‘colour’ [unknown-key]; one of: from, view, "
        "touches, joints, lean, tilt, turn, height, hands on, holds, ground, adjust, range, still, "
        "alt, also, frames, show, tempo, returns, moves, circles or turns\n");
  CHECK(
      of_pose("touches: feet, touches: toes") ==
      "figures.yaml:3:26: error: ‘touches’ stands here twice [duplicate-key]; keep one of them\n");
  CHECK(messages_of("  a: 12\n") ==
        "figures.yaml:3:6: error: a figure is described by keys below its name [bad-value]; write "
        "`touches:`, `joints:` and so on, two spaces further in\n");
  CHECK(messages_of("  a: [x]\n") ==
        "figures.yaml:3:6: error: a figure is described by keys below its name [bad-value]; write "
        "`touches:`, `joints:` and so on, two spaces further in\n");
}

TEST_CASE("an unknown joint, part, thing or place is reported with what was meant") {
  CHECK(of_pose("joints: {sholder: 90}") ==
        "figures.yaml:3:20: error: ‘sholder’ is no joint [bad-value]; did you mean ‘shoulder’?\n");
  CHECK(of_pose("joints: {near spine: 90}") ==
        "figures.yaml:3:20: error: ‘near spine’ is no joint [bad-value]; did you mean ‘spine’?\n");
  CHECK(of_pose("joints: 90") ==
        "figures.yaml:3:19: error: ‘joints’ must name joints and their angles [bad-value]; write "
        "`joints: {hip: 90, knee: 90}`\n");
  CHECK(of_pose("touches: [hnads]") ==
        "figures.yaml:3:21: error: ‘hnads’ is no part of the body that can bear weight "
        "[bad-value]; did you mean ‘hands’?\n");
  CHECK(of_pose("touches: near back") ==
        "figures.yaml:3:20: error: ‘near back’ is no part of the body that can bear weight "
        "[bad-value]; did you mean ‘back’?\n");
  CHECK(of_pose("touches: {hands: wal}") ==
        "figures.yaml:3:28: error: ‘wal’ is nothing that can be touched [bad-value]; did you mean "
        "‘wall’?\n");
  CHECK(of_pose("hands on: nees") ==
        "figures.yaml:3:21: error: hands cannot be put on ‘nees’ [bad-value]; did you mean "
        "‘knees’?\n");
  CHECK(of_pose("hands on: {middle: knees}") ==
        "figures.yaml:3:22: error: ‘middle’ is no hand [bad-value]; write `near:` or `far:`\n");
  CHECK(of_pose("holds: stck") ==
        "figures.yaml:3:18: error: ‘stck’ is nothing that can be drawn [bad-value]; did you mean "
        "‘stick’?\n");
  CHECK(of_pose("ground: lien") ==
        "figures.yaml:3:19: error: ‘lien’ is nothing that can be drawn [bad-value]; did you mean "
        "‘line’?\n");
  CHECK(of_pose("adjust: far hips") ==
        "figures.yaml:3:19: error: ‘far hips’ is no joint [bad-value]; did you mean ‘hip’?\n");
}

TEST_CASE("a value that is none is reported with what to write") {
  CHECK(of_pose("joints: {hip: far}") ==
        "figures.yaml:3:25: error: ‘hip’ must be a number from -360 to 360 [bad-value]; write "
        "plain degrees or metres, such as `20` or `-50`\n");
  CHECK(of_pose("joints: {hip: 400}") ==
        "figures.yaml:3:25: error: ‘hip’ must be a number from -360 to 360 [bad-value]; write "
        "plain degrees or metres, such as `20` or `-50`\n");
  CHECK(of_pose("joints: {hip: nan}") ==
        "figures.yaml:3:25: error: ‘hip’ must be a number from -360 to 360 [bad-value]; write "
        "plain degrees or metres, such as `20` or `-50`\n");
  CHECK(of_pose("joints: {hip: inf}") ==
        "figures.yaml:3:25: error: ‘hip’ must be a number from -360 to 360 [bad-value]; write "
        "plain degrees or metres, such as `20` or `-50`\n");
  CHECK(of_pose("joints: {hip: 1, hip: 2}") ==
        "figures.yaml:3:28: error: ‘hip’ stands here twice [duplicate-key]; keep one of them\n");
  CHECK(of_pose("lean: steep") ==
        "figures.yaml:3:17: error: ‘lean’ must be a number from -360 to 360 [bad-value]; write "
        "plain degrees or metres, such as `20` or `-50`\n");
  CHECK(of_pose("height: 9") ==
        "figures.yaml:3:19: error: ‘height’ must be a number from 0 to 3 [bad-value]; write plain "
        "degrees or metres, such as `20` or `-50`\n");
  CHECK(of_pose("view: below") ==
        "figures.yaml:3:17: error: ‘below’ is no view [bad-value]; one of: side, front, back, "
        "quarter or above\n");
  CHECK(of_pose("range: wide") ==
        "figures.yaml:3:18: error: ‘wide’ is no range [bad-value]; one of: trained or usual\n");
  CHECK(of_pose("still: maybe") ==
        "figures.yaml:3:18: error: ‘still’ must be yes or no [bad-value]; write `still: yes`\n");
  CHECK(of_pose("alt: ''") ==
        "figures.yaml:3:16: error: ‘alt’ must say what the picture shows [bad-value]; write a "
        "short sentence, or leave it out\n");
  CHECK(of_pose("show: film") ==
        "figures.yaml:3:17: error: ‘film’ is no show [bad-value]; one of: arrow or row\n");
  CHECK(of_pose("tempo: quick") ==
        "figures.yaml:3:18: error: ‘quick’ is no speed [bad-value]; write fast, slow or even\n");
  CHECK(of_pose("moves: nose") ==
        "figures.yaml:3:18: error: ‘nose’ cannot be shown by an arrow here [bad-value]; one of: "
        "chest, far foot, far hand, far knee, foot, hand, head, hips, knee, near foot, near hand "
        "or near knee\n");
  CHECK(of_pose("frames: []") ==
        "figures.yaml:3:19: error: ‘frames’ must list 1 to 4 poses [bad-value]; write `frames: "
        "[one pose, another pose]`\n");
}

TEST_CASE("lists have an end") {
  std::string eleven = "hands";
  for (int i = 0; i < 10; ++i) eleven += ", feet";
  CHECK(of_pose("touches: [" + eleven + "]") ==
        "figures.yaml:3:20: error: ‘touches’ lists more than 10 [bad-value]; keep those that "
        "matter\n");
  CHECK(of_pose("frames: [{}, {}, {}, {}, {}]") ==
        "figures.yaml:3:19: error: ‘frames’ must list 1 to 4 poses [bad-value]; write `frames: "
        "[one pose, another pose]`\n");
  CHECK(
      of_pose("tempo: [fast, slow, fast]") ==
      "figures.yaml:3:18: error: ‘tempo’ lists more than 2 [bad-value]; keep those that matter\n");
}

TEST_CASE("`from` leads somewhere, and not in a circle") {
  CHECK(messages_of("  a: {from: stnading}\n  standing: {touches: feet}\n") ==
        "figures.yaml:3:13: error: there is no figure ‘stnading’ [unknown-figure]; did you mean "
        "‘standing’?\n");
  CHECK(messages_of("  a: {from: nowhere at all}\n") ==
        "figures.yaml:3:13: error: there is no figure ‘nowhere at all’ [unknown-figure]; name a "
        "figure of the catalogue or of the club's `figures` folder\n");
  CHECK(messages_of("  a: {from: a}\n") ==
        "figures.yaml:3:13: error: ‘a’ begins from itself [figure-cycle]; give this figure a name "
        "of its own, or describe it without `from`\n");
  CHECK(messages_of("  a: {from: b}\n  b: {from: a}\n") ==
        "figures.yaml:4:13: error: ‘a’ begins from ‘b’, which begins from ‘a’ [figure-cycle]; "
        "describe one of them without `from`\n");
  // Told once, and without the figures that only lead there.
  CHECK(
      messages_of(
          "  way: {from: a}\n  a: {from: b}\n  b: {from: c}\n  c: {from: a}\n  on: {from: c}\n") ==
      "figures.yaml:6:13: error: ‘a’ begins from ‘b’, which begins from ‘c’, which begins from "
      "‘a’ [figure-cycle]; describe one of them without `from`\n");
}

TEST_CASE("`from` goes eight deep at most") {
  const auto chain = [](int links) {
    std::string out = "  a0: {touches: feet}\n";
    for (int i = 1; i <= links; ++i) out = fmt::format("  a{}: {{from: a{}}}\n", i, i - 1) + out;
    return out;
  };
  CHECK(messages_of(chain(7)) == "");
  CHECK(messages_of(chain(8)) ==
        "figures.yaml:10:14: error: this figure begins from too many others [bad-value]; describe "
        "it by its own keys, or begin from one figure that is described in full\n");
}

TEST_CASE("a figure that begins from a broken one is left out, and the mistake told once") {
  const ReadFigures read = read_figures(
      "  a: {from: b}\n  b: {knees: 3, touches: feet}\n  c: {from: b}\n  d: {touches: feet}\n");
  CHECK(messages(read.diagnostics) ==
        "figures.yaml:4:7: error: a figure has no key ‘knees’ [unknown-key]; one of: from, view, "
        "touches, joints, lean, tilt, turn, height, hands on, holds, ground, adjust, range, still, "
        "alt, also, frames, show, tempo, returns, moves, circles or turns\n");
  REQUIRE(read.figures.size() == 1);
  CHECK(read.figures[0].name.text == "d");
}

TEST_CASE("a broken figure is left out, however many there are") {
  std::string text;
  for (int i = 0; i < 500; ++i) text += fmt::format("  a{}: {{knees: 3}}\n", i);
  const ReadFigures read = read_figures(text + "  good: {touches: feet}\n");
  REQUIRE(read.figures.size() == 1);
  CHECK(read.figures[0].name.text == "good");
}

TEST_CASE("frames of frames cost no more than they are allowed to") {
  // 4 to the power of 8 poses, if they were followed.
  std::string text = "  a0: {touches: feet}\n";
  for (int i = 1; i <= 7; ++i) {
    text += fmt::format("  a{}: {{frames: [a{}, a{}, a{}, a{}]}}\n", i, i - 1, i - 1, i - 1, i - 1);
  }
  for (int i = 0; i < 200; ++i) text += fmt::format("  b{}: {{from: a7}}\n", i);
  const ReadFigures read = read_figures(text);
  CHECK(read.figures.size() <= 208);
  CHECK(read.diagnostics.error_count() > 0);
}
