#include "figure/picture.h"

#include <algorithm>
#include <cmath>

#include "figure/arrows.h"
#include "figure/draw.h"
#include "figure/motion.h"
#include "figure/props.h"
#include "figure/words.h"

namespace chalkleaf::figure {
namespace {

constexpr double kGroundBeyond = 0.10;  // metres of ground at both ends
constexpr double kBetweenFrames = 0.22;

// From above one sees what was upright end on: height becomes nearness.
Solved seen(const Pose& pose, const Solved& solved) {
  Solved out = solved;
  if (pose.view == View::kAbove) out.skeleton.tip_to_viewer();
  return out;
}

void draw_pose(const Pose& pose, const Solved& as_solved, Scene& scene) {
  const Solved solved = seen(pose, as_solved);
  draw_things_behind(pose, solved, scene);
  draw_body(solved, Manner::kFull, scene);
  draw_things_held(pose, solved, scene);
}

Scene one_picture(const Figure& figure, const std::vector<Shown>& shown) {
  Scene scene;
  const Pose& pose = figure.poses.back();
  const Solved& last = shown.back().solved;
  Box body;
  if (shown.size() > 1) {
    const Solved first = seen(figure.poses.front(), shown.front().solved);
    draw_body(first, Manner::kGhost, scene);
    draw_things_held(figure.poses.front(), first, scene);
  }
  draw_pose(pose, last, scene);
  body = scene.box;
  if (shown.size() > 1) draw_movement(figure, shown, scene);
  draw_turning(figure, last, scene);
  scene.box.take(body);
  draw_ground(pose, last, body.left - kGroundBeyond, body.right + kGroundBeyond, scene);
  return scene;
}

Scene row(const Figure& figure, const std::vector<Shown>& shown) {
  Scene scene;
  double right = 0;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    Scene frame;
    draw_pose(figure.poses[i], shown[i].solved, frame);
    const double by = i == 0 ? 0 : right + kBetweenFrames - frame.box.left;
    frame.frames = {(frame.box.left + frame.box.right) / 2};
    const Box box = frame.box;
    draw_ground(figure.poses[i], shown[i].solved, box.left - kGroundBeyond * 0.6,
                box.right + kGroundBeyond * 0.6, frame);
    frame.move(by);
    right = frame.box.right;
    for (Shape& shape : frame.shapes) scene.shapes.push_back(std::move(shape));
    scene.frames.push_back(frame.frames.front());
    scene.box.take(frame.box);
  }
  return scene;
}

}  // namespace

std::vector<Shown> show(const Figure& figure, const Body& body) {
  std::vector<Shown> out;
  for (const Pose& pose : figure.poses) {
    Shown one;
    one.solved = solve(pose, body);
    const Vec bar = bar_place(pose, one.solved);
    one.out_of_reach = reach(pose, bar, one.solved);
    if (!out.empty() && figure.show == Show::kArrow) {
      align(figure.poses[out.size() - 1], out.back().solved, pose, one.solved);
    }
    out.push_back(std::move(one));
  }
  return out;
}

Scene picture(const Figure& figure, const std::vector<Shown>& shown) {
  Scene out = figure.show == Show::kRow && shown.size() > 1 ? row(figure, shown)
                                                            : one_picture(figure, shown);
  out.stature = shown.back().solved.body.stature;
  out.alternative = alternative_text(figure, shown);
  return out;
}

Scene picture(const Figure& figure, const Body& body) {
  return picture(figure, show(figure, body));
}

}  // namespace chalkleaf::figure
