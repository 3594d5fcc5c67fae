// Contacts are exact: over seeded random poses, and for those that every coach knows.
#include "figure/solve.h"

#include <catch2/catch.hpp>

#include "reading.h"
#include "seeded.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

constexpr double kExact = 1e-6;  // metres: a hundredth of a stature is ten thousand times that

// The farthest that any part in `touches` is from what it should touch.
double worst(const Pose& pose, const Solved& solved) {
  double out = 0;
  for (const Contact& contact : pose.contacts) {
    if (!bears_from_below(contact.on)) continue;
    for (const Side side : kSides) {
      if (contact.side && *contact.side != side) continue;
      out = std::max(out, std::fabs(lowest(solved.body, solved.skeleton, contact.part, side) -
                                    surface_height(contact.on)));
    }
  }
  return out;
}

Pose pose_of(const std::string& keys) {
  const ReadFigures read = read_pose(keys);
  REQUIRE(messages(read.diagnostics) == "");
  Pose pose = read.figures[0].poses[0];
  return pose;
}

// Shapes that exercise one, two and three contacts, sided ones, the front view, things of some
// height.
const std::vector<std::string> kSolvedShapes = {
    // one
    "touches: feet, joints: {shoulder: 90}",
    "touches: near feet, joints: {far hip: 60, far knee: 40}",
    "touches: toes, lean: 5, joints: {ankle: -30}",
    "touches: hands, joints: {shoulder: 175}",
    "touches: back, joints: {shoulder: 170, spine: 10}",
    "touches: front, joints: {shoulder: 160, spine: -10}",
    "touches: seat, lean: 0, joints: {hip: 90}",
    "touches: {seat: chair}, lean: 0, joints: {hip: 90, knee: 90}",
    "touches: feet, view: front, joints: {hip out: 20, shoulder out: 90}",
    "touches: upper back, lean: -150, joints: {spine: 60, hip: 100}",
    // two
    "touches: [hands, toes], joints: {shoulder: 75}",
    "touches: [hands, feet], joints: {spine: -60, hip: -10, knee: 70, shoulder: 180}",
    "touches: [near feet, far toes], lean: 0, joints: {near hip: 75, near knee: 80, far hip: -20}",
    "touches: [forearms, toes], joints: {shoulder: 90, elbow: 90}",
    "touches: [shins, hands], joints: {hip: 90, knee: 90, ankle: -55, shoulder: 90}",
    "touches: [seat, heels], joints: {hip: 90, ankle: -30}",
    "touches: [seat, feet], joints: {hip: 110, knee: 120}",
    "touches: {hands: bench, toes: floor}, joints: {shoulder: 70}",
    "touches: {hands: floor, toes: block}, joints: {shoulder: 85}",
    "view: front, touches: [right hands, right feet], joints: {right shoulder out: 80}",
    // three
    "touches: [hands, knees, insteps], joints: {shoulder: 65, knee: 40, ankle: -45}",
    "touches: [hands, near feet, far toes], joints: {shoulder: 90, near hip: 80, near knee: 70}",
    "touches: [near knees, far feet, near insteps], lean: 0, joints: {near knee: 90, far hip: 90, "
    "far knee: 90, near ankle: -40}",
    "touches: [seat, hands, heels], joints: {hip: 80, shoulder: -40}",
};

}  // namespace

TEST_CASE("over random poses every contact is exact, or is reported") {
  Seeded random(2026);
  std::size_t exact = 0;
  std::size_t missed = 0;
  std::array<std::size_t, 4> by_contacts{};
  for (const std::string& shape : kSolvedShapes) {
    const Pose base = pose_of(shape);
    for (int i = 0; i < 120; ++i) {
      Pose pose = base;
      const bool alike = base.joints == base.joints.mirrored() && random.coin();
      for (std::size_t j = 0; j < kJoints; ++j) {
        const auto joint = static_cast<Joint>(j);
        const double both = random.from_to(-15, 15);
        for (const Side side : kSides) {
          if (!has_sides(joint) && side == Side::kLeft) continue;
          const double by = alike || !has_sides(joint) ? both : random.from_to(-15, 15);
          if (has_sides(joint)) {
            pose.joints.set(joint, side, base.joints.get(joint, side) + by);
          } else if (joint == Joint::kSpine || joint == Joint::kNeck || !alike) {
            pose.joints.set(joint, base.joints.get(joint) + by);
          }
        }
      }
      const Body body = Body::of_age(random.from_to(5, 16));
      const Solved solved = solve(pose, body);
      if (!solved.missed.empty()) {
        ++missed;
        continue;
      }
      ++exact;
      ++by_contacts[std::min<std::size_t>(3, pose.contacts.size())];
      INFO(shape << " number " << i << " off by " << worst(pose, solved));
      CHECK(worst(pose, solved) < kExact);
    }
  }
  INFO(exact << " exact, " << missed << " reported");
  CHECK(exact >= 2000);
  CHECK(missed < exact / 5);
  for (std::size_t contacts = 1; contacts <= 3; ++contacts) {
    INFO(contacts << " contacts: " << by_contacts[contacts]);
    CHECK(by_contacts[contacts] >= 300);
  }
}

TEST_CASE("the shapes that every coach knows are exact") {
  for (const char* keys :
       {"touches: [hands, toes], joints: {shoulder: 75}",
        "touches: [hands, feet], joints: {spine: -75, hip: -20, knee: 70, shoulder: 190}",
        "touches: [near feet, far toes], lean: 0, joints: {near hip: 75, near knee: 80, far hip: "
        "-25, far knee: 10}",
        "touches: {hands: bench, toes: floor}, joints: {shoulder: 62, ankle: 5}",
        "view: front, touches: [right hands, right feet], joints: {right shoulder out: 66}",
        "view: back, touches: [left hands, left feet], joints: {left shoulder out: 66}",
        "touches: [hands, knees, insteps], joints: {shoulder: 63, knee: 40, ankle: -45}"}) {
    INFO(keys);
    const Pose pose = pose_of(keys);
    for (int age = 5; age <= 16; ++age) {
      const Solved solved = solve(pose, Body::of_age(age));
      CHECK(solved.missed.empty());
      CHECK(worst(pose, solved) < kExact);
    }
  }
}

TEST_CASE("a front support is a body in one line, face down, above the floor") {
  const Pose pose = pose_of("touches: [hands, toes], joints: {shoulder: 75, ankle: 5}");
  const Solved s = solve(pose, Body::of_age(9));
  CHECK(s.stance.lean.in_degrees() > 60);
  CHECK(s.stance.lean.in_degrees() < 90);
  CHECK(s.joints == pose.joints);
  CHECK(lowest(s.body, s.skeleton) > -1e-3);
}

TEST_CASE("a bridge is belly up") {
  const Solved s = solve(pose_of("touches: [hands, feet], joints: {spine: -75, hip: -20, knee: 70, "
                                 "shoulder: 190, neck: -30}"),
                         Body::of_age(9));
  CHECK(s.skeleton.trunk[5].frame.forward.y > 0.7);
  CHECK(s.skeleton.trunk[5].at.y > 0.3);
}

TEST_CASE("a lean that is written stays, and a joint of the limb gives") {
  const Pose pose = pose_of(
      "touches: [near feet, far toes], lean: 0, joints: {near hip: 75, near knee: 80, far hip: "
      "-25}");
  const Solved s = solve(pose, Body::of_age(9));
  CHECK(s.stance.lean.in_degrees() == 0);
  CHECK(s.joints.get(Joint::kHip, Side::kRight) == 75);
  CHECK(s.joints.get(Joint::kKnee, Side::kLeft) == 0);
  CHECK(s.joints.get(Joint::kHip, Side::kLeft) != -25);
}

TEST_CASE("`adjust` says which joint gives") {
  const Pose pose = pose_of(
      "touches: [near feet, far toes], lean: 0, adjust: far knee, joints: {near hip: 60, near "
      "knee: 60}");
  const Solved s = solve(pose, Body::of_age(9));
  CHECK(s.missed.empty());
  CHECK(s.joints.get(Joint::kHip, Side::kLeft) == 0);
  CHECK(s.joints.get(Joint::kKnee, Side::kLeft) != 0);
}

TEST_CASE("what is in the air is as high as it is said to be") {
  Seeded random(7);
  for (int i = 0; i < 50; ++i) {
    Pose pose;
    pose.joints = random.joints();
    pose.height = random.from_to(0, 1);
    const Solved s = solve(pose, Body::of_age(9));
    CHECK(lowest(s.body, s.skeleton) == Approx(pose.height).margin(1e-9));
  }
}

TEST_CASE("what rests on a thing is as high as the thing") {
  const Pose pose =
      pose_of("touches: {seat: chair, feet: floor}, lean: 0, joints: {hip: 90, knee: 90}");
  const Solved s = solve(pose, Body::of_age(9));
  CHECK(lowest(s.body, s.skeleton, Part::kSeat, Side::kRight) == Approx(0.40).margin(kExact));
}

TEST_CASE("a part that cannot get there is reported with what is missing") {
  const Solved s = solve(pose_of("touches: [feet, near hands], lean: 0"), Body::of_age(9));
  REQUIRE(s.missed.size() == 1);
  CHECK(s.missed[0].contact.part == Part::kHands);
  CHECK(s.missed[0].by == Approx(lowest(s.body, s.skeleton, Part::kHands, Side::kRight)));
  CHECK(s.missed[0].by > 0.3);
}

TEST_CASE("the same pose gives the same numbers twice") {
  for (const std::string& shape : kSolvedShapes) {
    const Pose pose = pose_of(shape);
    const Solved a = solve(pose, Body::of_age(9));
    const Solved b = solve(pose, Body::of_age(9));
    CHECK(a.joints == b.joints);
    CHECK(a.skeleton.head.x == b.skeleton.head.x);
    CHECK(a.skeleton.head.y == b.skeleton.head.y);
  }
}

TEST_CASE("how the body stands when its file does not say") {
  const auto lean = [](const char* keys) { return first_stance(pose_of(keys)).lean.in_degrees(); };
  CHECK(lean("touches: feet") == 0);
  CHECK(lean("touches: back") == -90);
  CHECK(lean("touches: front") == 90);
  CHECK(lean("touches: hands") == 180);
  CHECK(lean("touches: hands, view: front") == 0);
  CHECK(lean("touches: {hands: wall}") == 0);
  CHECK(lean("touches: hands, lean: 20") == 20);
  CHECK(first_stance(pose_of("touches: feet, view: front, turn: 10")).yaw.in_degrees() == 100);
}
