// Drawings: the same twice, mirrored when the pose is, within their box, standing on the ground.
#include "figure/picture.h"

#include <catch2/catch.hpp>

#include "figure/draw.h"
#include "figure/svg.h"
#include "paths.h"
#include "reading.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

const std::vector<std::string> kDrawnShapes = {
    "touches: feet, joints: {shoulder: 170}",
    "touches: [hands, toes], joints: {shoulder: 75}",
    "touches: back, lean: -80, joints: {spine: 35, hip: 30, shoulder: 170}",
    "view: front, touches: feet, joints: {hip out: 20, right shoulder out: 120}, ground: beam",
    "view: quarter, touches: near feet, joints: {far hip: 40}, ground: line",
    "touches: {seat: chair, feet: floor}, lean: 0, joints: {hip: 90, knee: 90}, hands on: thighs",
    "touches: {hands: bar}, height: 0.2, joints: {shoulder: 180}",
    "touches: {feet: floor, hands: wall}, lean: 16, joints: {shoulder: 106}, ground: mat",
    "view: above, touches: back, joints: {shoulder out: 120, hip out: 30}",
    "touches: feet, holds: rope, joints: {shoulder out: 20, elbow: 80}",
    "frames: [{touches: back}, {touches: back, joints: {hip: 90}}], tempo: [fast, slow], returns: "
    "yes",
    "show: row, frames: [{touches: feet}, {height: 0.3}, {touches: feet, lean: 40, joints: {hip: "
    "90}}]",
    "touches: feet, circles: [near hand], turns: head",
};

Figure one_figure(const std::string& keys) {
  const ReadFigures read = read_pose(keys);
  REQUIRE(messages(read.diagnostics) == "");
  return read.figures[0];
}

std::string bytes(const Scene& scene) { return svg(scene, Palette{}, "t"); }

// The lowest place of what is filled.
double lowest_drawn(const Scene& scene) {
  double out = 1e9;
  for (const Shape& shape : scene.shapes) {
    if (!shape.fill) continue;
    for (const auto& part : flattened(shape.steps, 32)) {
      for (const Spot& spot : part) out = std::min(out, spot.y);
    }
  }
  return out;
}

}  // namespace

TEST_CASE("the same figure is drawn the same twice") {
  for (const std::string& keys : kDrawnShapes) {
    const Figure f = one_figure(keys);
    INFO(keys);
    CHECK(bytes(picture(f, Body::of_age(9))) == bytes(picture(f, Body::of_age(9))));
    CHECK(bytes(picture(f, Body::of_age(9))) != bytes(picture(f, Body::of_age(12))));
  }
}

TEST_CASE("a mirrored pose is drawn mirrored") {
  Figure f = one_figure(
      "view: front, touches: feet, tilt: 0, joints: {right shoulder out: 130, left shoulder out: "
      "40, "
      "left elbow: 60, spine side: 12, neck side: 20}");
  const Scene a = picture(f, Body::of_age(9));
  f.poses[0].joints = f.poses[0].joints.mirrored();
  const Scene b = picture(f, Body::of_age(9));
  CHECK(a.box.left == Approx(-b.box.right).margin(1e-9));
  CHECK(a.box.right == Approx(-b.box.left).margin(1e-9));
  CHECK(a.box.top == Approx(b.box.top).margin(1e-9));
  const std::vector<Spot> others = ends_of(b);
  std::size_t unmatched = 0;
  for (const Spot& one : ends_of(a)) {
    const bool found = std::any_of(others.begin(), others.end(), [&](const Spot& other) {
      return std::hypot(one.x + other.x, one.y - other.y) < 1e-7;
    });
    unmatched += found ? 0 : 1;
  }
  CHECK(unmatched == 0);
  CHECK(ends_of(a).size() > 300);
}

TEST_CASE("a scene's box holds all that is drawn") {
  for (const std::string& keys : kDrawnShapes) {
    const Scene scene = picture(one_figure(keys), Body::of_age(9));
    INFO(keys);
    REQUIRE(!scene.shapes.empty());
    bool inside = true;
    for (const Shape& shape : scene.shapes) {
      const double half = shape.line ? shape.width / 2 : 0;
      for (const auto& part : flattened(shape.steps, 16)) {
        for (const Spot& spot : part) {
          inside = inside && spot.x - half >= scene.box.left - 1e-9 &&
                   spot.x + half <= scene.box.right + 1e-9 &&
                   spot.y - half >= scene.box.bottom - 1e-9 &&
                   spot.y + half <= scene.box.top + 1e-9;
        }
      }
    }
    CHECK(inside);
    // And is no larger than a gymnast with outstretched arms and her things.
    CHECK(scene.box.height() < 3.2);
    CHECK(scene.alternative.size() > 10);
    CHECK(scene.stature == Body::of_age(9).stature);
  }
}

TEST_CASE("what bears is drawn down to the ground") {
  // Of a trunk the outline is smooth between its slices: less than half the ground line is wide.
  // The rounded ends of toes and fingers are one curve each, half a millimetre of the child too
  // full.
  constexpr double kCap = 0.0005;
  struct Case {
    const char* keys;
    double margin;
  };
  for (const Case& one :
       {Case{"touches: feet", 1e-5}, Case{"touches: toes, lean: 0", 1e-5},
        Case{"touches: [hands, toes], joints: {shoulder: 75}", 1e-5},
        Case{"touches: hands, joints: {shoulder: 180}", 1e-5},
        Case{"touches: [near feet, far toes], lean: 0, joints: {near hip: 75, near knee: 80, far "
             "hip: -25, far knee: 10}",
             1e-5},
        Case{"touches: seat, lean: 0, joints: {hip: 90, shoulder: 90}", 1e-5},
        Case{"touches: [shins, hands], joints: {hip: 90, knee: 90, ankle: -55, shoulder: 90}",
             1e-5},
        Case{"touches: back, joints: {shoulder: 178, hip: 20}", 0.006},
        Case{"touches: front, joints: {shoulder: 170, spine: -20, hip: -10}", 0.006}}) {
    const Shown s = show(one_figure(one.keys), Body::of_age(9)).at(0);
    Scene scene;
    draw_body(s.solved, Manner::kFull, scene);
    INFO(one.keys);
    CHECK(lowest_drawn(scene) == Approx(0).margin(one.margin + kCap));
  }
}

TEST_CASE("a row has its frames side by side, numbered left to right") {
  const Scene scene =
      picture(one_figure("show: row, frames: [{touches: feet}, {height: 0.3}, {touches: back}]"),
              Body::of_age(9));
  REQUIRE(scene.frames.size() == 3);
  CHECK(scene.frames[0] < scene.frames[1]);
  CHECK(scene.frames[1] < scene.frames[2]);
  CHECK(scene.frames[2] < scene.box.right);
}

TEST_CASE("older children are drawn taller") {
  const Figure f = one_figure("touches: feet");
  double before = 0;
  for (int age = 5; age <= 16; ++age) {
    const Scene scene = picture(f, Body::of_age(age));
    CHECK(scene.box.top > before);
    CHECK(scene.box.top == Approx(Body::of_age(age).stature).margin(0.07));  // and the hair
    before = scene.box.top;
  }
}

TEST_CASE("an SVG says what it shows, whatever the title") {
  Figure f = one_figure("touches: feet, alt: '5 < 6 & \"7\" > 2'");
  const Scene scene = picture(f, Body::of_age(9));
  const std::string out = svg(scene, Palette{}, "<b>&");
  CHECK(out.find("<title>&lt;b&gt;&amp;</title>") != std::string::npos);
  CHECK(out.find("<desc>5 &lt; 6 &amp; &quot;7&quot; &gt; 2</desc>") != std::string::npos);
  std::size_t paths = 0;
  for (std::size_t at = 0; (at = out.find("<path ", at)) != std::string::npos; ++at) ++paths;
  CHECK(paths == scene.shapes.size());
  CHECK(out.find("nan") == std::string::npos);
  CHECK(out.find("inf") == std::string::npos);
}
