// Between two key poses: joints on their arcs, what bears where it was.
#include "figure/motion.h"

#include <catch2/catch.hpp>

#include "reading.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

struct Movement {
  Figure figure;
  std::vector<Shown> shown;
};
Movement movement(const std::string& first, const std::string& second) {
  const ReadFigures read = read_figures("  shape: {frames: [{" + first + "}, {" + second + "}]}\n");
  REQUIRE(messages(read.diagnostics) == "");
  return {read.figures[0], show(read.figures[0], Body::of_age(9))};
}
Solved part_way(const Movement& m, double t) {
  return between(m.figure.poses[0], m.shown[0].solved, m.figure.poses[1], m.shown[1].solved, t);
}
std::vector<Spot> path(const Movement& m, std::string_view part) {
  return path_between(m.figure.poses[0], m.shown[0].solved, m.figure.poses[1], m.shown[1].solved,
                      part);
}

}  // namespace

TEST_CASE("half-way every joint is half-way") {
  const Movement m = movement("touches: back", "touches: back, joints: {hip: 90, knee: 40}");
  CHECK(part_way(m, 0.5).joints.get(Joint::kHip) == 45);
  CHECK(part_way(m, 0.25).joints.get(Joint::kKnee) == 10);
}

TEST_CASE("a movement begins and ends in its key poses") {
  const Movement m =
      movement("touches: feet", "touches: feet, lean: 30, joints: {hip: 60, knee: 50}");
  for (const double t : {0.0, 1.0}) {
    const Skeleton a = part_way(m, t).skeleton;
    const Skeleton& b = m.shown[t < 0.5 ? 0 : 1].solved.skeleton;
    CHECK(length(a.head - b.head) < 1e-9);
    CHECK(length(a.legs[0].toe - b.legs[0].toe) < 1e-9);
    CHECK(length(a.arms[1].tip - b.arms[1].tip) < 1e-9);
  }
}

TEST_CASE("feet that stand stay on the ground and in their place all the way") {
  const Movement m =
      movement("touches: feet", "touches: feet, lean: 40, joints: {hip: 100, knee: 90}");
  const Footing start =
      footing(m.shown[0].solved.body, m.shown[0].solved.skeleton, Part::kFeet, Side::kRight);
  for (int i = 0; i <= 10; ++i) {
    const Solved s = part_way(m, i / 10.0);
    CHECK(lowest(s.body, s.skeleton, Part::kFeet, Side::kRight) == Approx(0).margin(1e-9));
    const Footing now = footing(s.body, s.skeleton, Part::kFeet, Side::kRight);
    CHECK(now.left == Approx(start.left).margin(1e-9));
    CHECK(now.right == Approx(start.right).margin(1e-9));
  }
}

TEST_CASE("a straight leg's foot goes on a circle about its hip") {
  const Movement m = movement("touches: near feet, lean: 0, joints: {far hip: 10}",
                              "touches: near feet, lean: 0, joints: {far hip: 80}");
  const auto foot = path(m, "far foot");
  REQUIRE(foot.size() == 9);
  const Skeleton& s = m.shown[0].solved.skeleton;
  const Spot hip{s.legs[1].hip.x, s.legs[1].hip.y};
  const auto radius = [&](const Spot& spot) { return std::hypot(spot.x - hip.x, spot.y - hip.y); };
  for (const Spot& spot : foot) CHECK(radius(spot) == Approx(radius(foot[0])).epsilon(1e-9));
  CHECK(foot.back().y > foot.front().y + 0.3);
}

TEST_CASE("without a name the path is that of what travels most") {
  const auto ends = [](const std::vector<Spot>& one, const std::vector<Spot>& other) {
    return one.front().x == other.front().x && one.back().y == other.back().y;
  };
  const Movement legs = movement("touches: back", "touches: back, joints: {hip: 90}");
  CHECK(ends(path(legs, ""), path(legs, "near foot")));
  const Movement arms = movement("touches: feet", "touches: feet, joints: {far shoulder: 170}");
  CHECK(ends(path(arms, ""), path(arms, "far hand")));
  CHECK(path(arms, "nothing of the kind").empty());
}

TEST_CASE("what bears in both poses stands in the same place in the picture") {
  const Movement m =
      movement("touches: [near feet, far toes], lean: 0, joints: {near hip: 60, near knee: 60}",
               "touches: near feet, lean: 0, joints: {far hip: 40}");
  const auto middle = [](const Solved& s) {
    const Footing f = footing(s.body, s.skeleton, Part::kFeet, Side::kRight);
    return (f.left + f.right) / 2;
  };
  CHECK(middle(m.shown[0].solved) == Approx(middle(m.shown[1].solved)).margin(1e-9));
}

TEST_CASE("every part that `moves` may name has a path") {
  const Movement m = movement("touches: feet", "height: 0.3, joints: {shoulder: 170}");
  for (const std::string& part : travelling_parts()) {
    INFO(part);
    CHECK(path(m, part).size() == 9);
  }
}
