// Whole messages: what a slip of the pen in a pose file is told. Ranges by the sources named in
// figure/ranges.cpp.
#include "figure/truth.h"

#include <catch2/catch.hpp>

#include "figure/balance.h"
#include "figure/ranges.h"
#include "reading.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

// The findings for one pose, which is line 3 of its file.
std::string truth_of(const std::string& keys) {
  const ReadFigures read = read_pose(keys);
  REQUIRE(messages(read.diagnostics) == "");
  return found(read);
}

const std::string kTrained = "; or `range: trained` for a gymnast’s range\n";

}  // namespace

TEST_CASE("nothing is said of what children do every day") {
  for (const char* keys :
       {"touches: feet", "touches: feet, joints: {shoulder: 180}",
        "touches: [hands, toes], joints: {shoulder: 75}", "touches: hands, joints: {shoulder: 180}",
        "touches: back, joints: {shoulder: 176, ankle: -55}",
        "touches: seat, lean: 0, joints: {hip: 90, shoulder: 176}",
        "touches: shins, lean: 0, joints: {knee: 90, ankle: -55}",
        "touches: {hands: bar}, height: 0.2, joints: {shoulder: 180}",
        "height: 0.3, joints: {shoulder: 178, ankle: -60}"}) {
    INFO(keys);
    CHECK(truth_of(keys) == "");
  }
}

TEST_CASE("a joint beyond the published range is a warning at its place") {
  CHECK(truth_of("touches: back, joints: {hip: 150}") ==
        "figures.yaml:3:35: warning: ‘hip’ is at 150 degrees, beyond the usual 140.8 "
        "[figure-range]; write 140.8 at the most" +
            kTrained);
  CHECK(truth_of("touches: back, joints: {shoulder: 170, near wrist: 90}") ==
        "figures.yaml:3:50: warning: ‘near wrist’ is at 90 degrees, beyond the usual 80 "
        "[figure-range]; write 80 at the most\n");
  CHECK(truth_of("height: 0.5, joints: {shoulder: 170, spine: -40}") ==
        "figures.yaml:3:48: warning: ‘spine’ is at -40 degrees, beyond the usual -30 "
        "[figure-range]; write -30 at the least" +
            kTrained);
}

TEST_CASE("both published ends are the last that nothing is said of") {
  for (std::size_t i = 0; i < kJoints; ++i) {
    const auto joint = static_cast<Joint>(i);
    const Range& range = range_of(joint);
    CHECK(range.possible_low < range.normal_low.value_or(0));
    CHECK(range.possible_high > range.normal_high.value_or(0));
    const auto warned = [&](double angle) {
      Figure figure;
      figure.poses.resize(1);
      figure.poses[0].height = 1;
      figure.poses[0].joints.set(joint, angle);
      Diagnostics diagnostics;
      check(figure, show(figure, Body::of_age(9)), diagnostics);
      return diagnostics.warning_count() + 10 * diagnostics.error_count();
    };
    INFO(joint_name(joint));
    if (range.normal_high) {
      CHECK(warned(*range.normal_high) == 0);
      CHECK(warned(*range.normal_high + 0.1) == 1);
    }
    if (range.normal_low) {
      CHECK(warned(*range.normal_low) == 0);
      CHECK(warned(*range.normal_low - 0.1) == 1);
    }
    CHECK(warned(range.possible_high + 0.1) == 10);
    CHECK(warned(range.possible_low - 0.1) == 10);
  }
}

// Kirby et al. 1981: not at knee and elbow.
TEST_CASE("a gymnast’s range lifts shoulder, hip, trunk and ankle, and nothing else") {
  CHECK(truth_of("touches: back, range: trained, joints: {hip: 155, shoulder: 175, ankle: -75}") ==
        "");
  CHECK(truth_of("height: 0.5, range: trained, joints: {spine: -60, hip: -70, shoulder: 200}") ==
        "");
  CHECK(truth_of("height: 0.5, range: trained, joints: {knee: 160}") ==
        "figures.yaml:3:49: warning: ‘knee’ is at 160 degrees, beyond the usual 152.6 "
        "[figure-range]; write 152.6 at the most\n");
}

TEST_CASE("what nobody can do is an error, trained or not") {
  CHECK(truth_of("height: 1, range: trained, joints: {near elbow: -20}") ==
        "figures.yaml:3:47: error: ‘near elbow’ is at -20 degrees; nobody’s goes beyond -15 "
        "[figure-impossible]; write -15 at the least\n");
  CHECK(truth_of("height: 1, range: trained, joints: {hip: 171, knee: 170}") ==
        "figures.yaml:3:47: error: ‘hip’ is at 171 degrees; nobody’s goes beyond 170 "
        "[figure-impossible]; write 170 at the most\n"
        "figures.yaml:3:57: error: ‘knee’ is at 170 degrees; nobody’s goes beyond 165 "
        "[figure-impossible]; write 165 at the most\n");
}

TEST_CASE("an arm may go all the way round") {
  CHECK(truth_of("touches: feet, still: no, joints: {shoulder: 360}") == "");
  CHECK(truth_of("touches: feet, joints: {shoulder: 270}") ==
        "figures.yaml:3:35: warning: ‘shoulder’ is at -90 degrees, beyond the usual -60 "
        "[figure-range]; write -60 at the least" +
            kTrained);
}

TEST_CASE("a joint that its contacts bent is said to be so") {
  CHECK(truth_of("touches: [feet, near hand], lean: 0, joints: {near shoulder: -20}") ==
        "figures.yaml:3:27: error: ‘near hand’ ends 61 cm above the floor [figure-contact]; change "
        "the angles on the way there, leave it out of `touches`, or name another joint that can "
        "give: `adjust: [near shoulder]`\n");
  CHECK(truth_of(
            "touches: [near feet, far toes], lean: 0, still: no, joints: {near hip: 90, near knee: "
            "90, far hip: -10, far knee: 10}") ==
        "figures.yaml:3:101: warning: ‘far hip’ comes to -61.1 degrees for its contacts, beyond "
        "the usual -30 [figure-range]; change the pose so that it stays within -30, or let another "
        "joint give (`adjust:`)" +
            kTrained);
}

TEST_CASE("a foot that lies flat bends its ankle as far as the shank leans") {
  CHECK(truth_of("touches: feet, lean: 10, joints: {hip: 90, knee: 145}") ==
        "figures.yaml:3:20: error: ‘ankle’ comes to 65 degrees with the foot flat; nobody’s "
        "goes beyond 50 [figure-impossible]; bend the knee less, or let the heel lift: `touches: "
        "toes`\n");
}

TEST_CASE("a hand that cannot get there is an error") {
  CHECK(truth_of("touches: feet, lean: 0, hands on: toes") ==
        "figures.yaml:3:45: error: both hands end 56 cm short of ‘toes’ [figure-contact]; bring "
        "them closer by bending the trunk, the neck or that leg, or put the hand on something "
        "nearer\n");
}

TEST_CASE("a held pose that nothing bears is an error") {
  CHECK(truth_of("joints: {knee: 20}") ==
        "figures.yaml:3:3: error: this pose is held, but nothing bears it [figure-contact]; say "
        "what bears with `touches:`, give the `height:` of a jump, or write `still: no`\n");
  CHECK(truth_of("joints: {knee: 20}, still: no") == "");
  CHECK(truth_of("joints: {knee: 20}, height: 0.2") == "");
}

TEST_CASE("what would fall is said, with the side") {
  const auto falls = [](const std::string& direction, const std::string& by) {
    return "figures.yaml:3:3: warning: whoever holds this would fall " + direction +
           ": the centre of mass is " + by +
           " outside what bears [figure-falls]; change `lean` or the joints, add what else bears "
           "to `touches`, or write `still: no` for a moment of a movement\n";
  };
  CHECK(truth_of("touches: feet, lean: 30") == falls("forwards", "21 cm"));
  CHECK(truth_of("touches: feet, lean: -30") == falls("backwards", "31 cm"));
  CHECK(truth_of("view: front, touches: near feet, joints: {far hip out: 40}") ==
        falls("to the left", "7 cm"));
  CHECK(truth_of("touches: feet, lean: 30, still: no") == "");
}

TEST_CASE("a wall holds on its side only") {
  CHECK(truth_of("touches: {feet: floor, hands: wall}, lean: 16, joints: {shoulder: 106}") == "");
  CHECK(truth_of("touches: {feet: floor, hands: wall}, lean: -16, joints: {shoulder: 106}") ==
        "figures.yaml:3:3: warning: whoever holds this would fall backwards: the centre of mass is "
        "14 cm outside what bears [figure-falls]; change `lean` or the joints, add what else bears "
        "to `touches`, or write `still: no` for a moment of a movement\n");
}

TEST_CASE("what sinks into the ground is named") {
  CHECK(truth_of("touches: seat, lean: 0, joints: {hip: 60}") ==
        "figures.yaml:3:3: warning: ‘near foot’ is 30 cm below the ground [figure-below-ground]; "
        "add it to `touches` if it bears, or bend what carries it\n");
  CHECK(truth_of("touches: seat, ground: beam, lean: 0, joints: {hip: 60, hip out: 20}") == "");
}

TEST_CASE("the lowest part is as low as the lowest of anything") {
  const Body body = Body::of_age(9);
  for (int i = 0; i < 200; ++i) {
    Joints joints;
    for (std::size_t j = 0; j < kJoints; ++j) {
      for (const Side side : kSides) {
        joints.set(static_cast<Joint>(j), side, (i * 37 + static_cast<int>(j) * 61) % 120 - 40);
      }
    }
    const Skeleton s = pose_skeleton(body, joints, {Angle::degrees(i * 11), {}, {}}, {});
    CHECK(lowest_part(body, s).height == lowest(body, s));
  }
}

TEST_CASE("a finding says in which figure and pose it is") {
  const ReadFigures read = read_figures(
      "  base: {touches: back, joints: {hip: 150}}\n"
      "  lift: {frames: [{touches: back}, base]}\n");
  Diagnostics diagnostics;
  check(read.figures[1], show(read.figures[1], Body::of_age(9)), diagnostics);
  REQUIRE(diagnostics.all().size() == 1);
  REQUIRE(diagnostics.all()[0].labels.size() == 1);
  CHECK(diagnostics.all()[0].labels[0].message == "in pose 2 of ‘lift’");
  CHECK(diagnostics.all()[0].labels[0].span.text() == "lift");
}
