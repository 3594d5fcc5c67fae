#include "figure/draw.h"

#include <algorithm>
#include <cmath>

namespace chalkleaf::figure {
namespace {

Spot flat(const Vec& v) { return {v.x, v.y}; }

/// A piece of a layer. Cloth covers the line of paper round the limb it is worn on, so that it
/// runs on into the trunk.
struct Piece {
  Steps steps;
  Ink ink = Ink::kBody;
  bool cloth = false;
};

/// Something drawn in one go, and how near the viewer it is.
struct Layer {
  double depth = 0;
  std::vector<Piece> pieces;
};

class Artist {
 public:
  Artist(const Solved& solved, Manner manner)
      : s_(solved.skeleton), body_(solved.body), f_(solved.body), manner_(manner) {
    for (const TrunkSlice& slice : s_.trunk) middle_ += slice.at * (1.0 / kSlices);
  }

  void draw(Scene& scene) {
    std::vector<Layer> layers;
    for (const Side side : kSides) {
      layers.push_back(leg(side));
      layers.push_back(arm(side));
    }
    layers.push_back(trunk());
    layers.push_back(head());
    std::stable_sort(layers.begin(), layers.end(),
                     [](const Layer& a, const Layer& b) { return a.depth < b.depth; });
    for (Layer& layer : layers) {
      for (Piece& piece : layer.pieces) put(std::move(piece), scene);
    }
  }

 private:
  // What lies in front is parted from what is behind it by a line of paper.
  void put(Piece piece, Scene& scene) const {
    const double k = body_.stature;
    if (manner_ == Manner::kGhost) {
      if (piece.cloth) return;
      scene.add({piece.steps, std::nullopt, Ink::kGhost, 0.014 * k, 0});
      scene.add({std::move(piece.steps), Ink::kPaper, std::nullopt, 0, 0});
      return;
    }
    scene.add({piece.steps, std::nullopt, piece.cloth ? piece.ink : Ink::kPaper, 0.013 * k, 0});
    scene.add({std::move(piece.steps), piece.ink, std::nullopt, 0, 0});
  }

  // Depths that are alike are drawn in this order: legs, trunk, head, arms.
  double nudge(int order) const { return order * 0.002 * body_.stature; }
  bool is_far(double depth) const { return depth < middle_.z - 0.03 * body_.stature; }

  Layer leg(Side side) const {
    const LegPoints& l = s_.leg(side);
    Layer out;
    const double depth = (l.hip.z + l.knee.z + l.ankle.z) / 3;
    out.depth = depth + nudge(0);
    const bool far = is_far(depth);
    Steps steps;
    add_limb(steps, flat(l.hip), f_.hip, flat(l.knee), f_.knee);
    const Vec calf = mix(l.knee, l.ankle, 0.3) - l.front * (0.007 * body_.stature);
    add_limb(steps, flat(l.knee), f_.knee, flat(calf), f_.calf);
    add_limb(steps, flat(calf), f_.calf, flat(l.ankle), f_.ankle);
    add_limb(steps, flat(l.knee), f_.knee * 0.9, flat(mix(l.knee, l.ankle, 0.6)), f_.shin);
    add_limb(steps, flat(l.ankle), f_.ankle, flat(l.heel), f_.heel);
    add_limb(steps, flat(l.ankle), f_.ankle, flat(l.ball), f_.ball);
    add_limb(steps, flat(l.heel), f_.heel * 0.9, flat(l.ball), f_.ball * 0.9);
    add_limb(steps, flat(l.ball), f_.ball, flat(l.toe), f_.toe);
    out.pieces.push_back({std::move(steps), far ? Ink::kFar : Ink::kBody, false});
    Steps shorts;
    const double t = 0.2;
    const double end = f_.hip + (f_.knee - f_.hip) * t + 0.001 * body_.stature;
    add_cuff(shorts, flat(l.hip), f_.hip + 0.001 * body_.stature, flat(mix(l.hip, l.knee, t)), end);
    out.pieces.push_back({std::move(shorts), far ? Ink::kFarSuit : Ink::kSuit, true});
    return out;
  }

  // Round at one end and cut straight at the other.
  static void add_cuff(Steps& steps, Spot from, double from_radius, Spot to, double to_radius) {
    const Spot way = to - from;
    const double distance = std::sqrt(way.x * way.x + way.y * way.y);
    if (distance < from_radius * 0.15) return add_circle(steps, from, from_radius);
    const Spot n{-way.y / distance, way.x / distance};
    add_circle(steps, from, from_radius);
    add_polygon(steps, {from - n * from_radius, to - n * to_radius, to + n * to_radius,
                        from + n * from_radius});
  }

  Layer arm(Side side) const {
    const ArmPoints& a = s_.arm(side);
    Layer out;
    const double depth = (a.shoulder.z + a.elbow.z + a.wrist.z) / 3;
    out.depth = depth + nudge(3);
    Steps steps;
    const Vec swell = mix(a.elbow, a.wrist, 0.25);
    add_limb(steps, flat(a.shoulder), f_.shoulder, flat(a.elbow), f_.elbow);
    add_limb(steps, flat(a.elbow), f_.elbow, flat(swell), f_.forearm);
    add_limb(steps, flat(swell), f_.forearm, flat(a.wrist), f_.wrist);
    add_limb(steps, flat(a.wrist), f_.palm, flat(a.knuckles), f_.knuckles);
    add_limb(steps, flat(a.knuckles), f_.knuckles, flat(a.tip), f_.fingers);
    out.pieces.push_back({std::move(steps), is_far(depth) ? Ink::kFar : Ink::kBody, false});
    return out;
  }

  Layer trunk() const {
    Layer out;
    out.depth = middle_.z + nudge(1);
    // Seen end on, the slices themselves are the outline.
    const Spot whole = flat(s_.trunk.back().at) - flat(s_.trunk.front().at);
    const bool end_on =
        whole.x * whole.x + whole.y * whole.y < 0.25 * body_.trunk() * body_.trunk();
    std::vector<Spot> one;
    std::vector<Spot> other;
    Steps steps;
    for (std::size_t i = 0; i < kSlices; ++i) {
      const Spot before = flat(s_.trunk[i == 0 ? 0 : i - 1].at);
      const Spot after = flat(s_.trunk[std::min(i + 1, kSlices - 1)].at);
      const Spot way = after - before;
      const double distance = std::sqrt(way.x * way.x + way.y * way.y);
      const Spot n = distance > 1e-6 ? Spot{-way.y / distance, way.x / distance} : Spot{0, 1};
      const double half = reach_of(s_.trunk[i], {n.x, n.y, 0});
      const Spot at = flat(s_.trunk[i].at);
      one.push_back(at - n * half);
      other.push_back(at + n * half);
      if (end_on) add_circle(steps, at, std::min(half, 0.5 * (s_.trunk[i].depth + half)));
    }
    std::vector<Spot> round = one;
    const Spot top = flat(s_.trunk.back().at);
    const Spot below_top = flat(s_.trunk[kSlices - 2].at);
    round.push_back(top + (top - below_top) * 0.55);
    for (auto it = other.rbegin(); it != other.rend(); ++it) round.push_back(*it);
    // And at the other end, or the curve would swing out round the corner, into the ground.
    const Spot bottom = flat(s_.trunk[0].at);
    round.push_back(bottom + (bottom - flat(s_.trunk[1].at)) * 0.55);
    add_smooth(steps, round);
    // Shoulders: the joints are rounded into the trunk.
    for (const ArmPoints& a : s_.arms) {
      add_limb(steps, flat(mix(s_.trunk[kSlices - 2].at, a.shoulder, 0.35)), 0.034 * body_.stature,
               flat(a.shoulder), f_.shoulder);
    }
    const TrunkSlice& pelvis = s_.trunk.front();
    add_circle(steps, flat(pelvis.at - pelvis.frame.forward * (0.006 * body_.stature)),
               0.060 * body_.stature);
    for (const LegPoints& l : s_.legs) add_circle(steps, flat(l.hip), f_.hip);
    if (!head_is_behind()) out.pieces.push_back(neck());
    out.pieces.push_back({std::move(steps), Ink::kSuit, false});
    return out;
  }

  bool head_is_behind() const { return s_.head.z + nudge(2) < middle_.z + nudge(1); }
  // Always behind the head and behind the suit's edge.
  Piece neck() const {
    Steps steps;
    add_limb(steps, flat(s_.trunk[kSlices - 2].at), f_.neck, flat(mix(s_.neck, s_.head, 0.75)),
             f_.neck * 0.9);
    return {std::move(steps), Ink::kBody, false};
  }

  Layer head() const {
    Layer out;
    out.depth = s_.head.z + nudge(2);
    const Frame& f = s_.head_frame;
    const double k = body_.stature;
    const double high = f_.head_high;
    const double deep = f_.head_deep;
    // An egg: round skull above, chin in front below; and the nose.
    Steps steps;
    std::vector<Spot> outline;
    constexpr int kRound = 16;
    for (int i = 0; i < kRound; ++i) {
      const Angle at = Angle::degrees(360.0 / kRound * i);
      const Spot n{cosine(at), sine(at)};
      outline.push_back(support_of_head({n.x, n.y, 0}));
    }
    add_smooth(steps, outline);
    const Vec nose = s_.head + f.forward * (deep * 1.02) - f.up * (high * 0.18);
    const double turned = (nose.z - s_.head.z) / deep;  // 0 in profile, 1 to the viewer
    Steps tip;
    add_limb(tip, flat(s_.head + f.forward * (deep * 0.6) - f.up * (high * 0.05)), high * 0.2,
             flat(nose), high * 0.11);
    // Within the outline it is parted from it, so that a turned head is seen to be turned.
    const bool own = turned > 0.25 && turned < 0.9;
    if (turned <= 0.25 && turned > -0.5) steps.insert(steps.end(), tip.begin(), tip.end());
    Steps knot;
    const Vec at = s_.head - f.forward * (deep * 0.66) + f.up * (high * 0.98);
    add_circle(knot, flat(at), 0.027 * k);
    const bool knot_behind = at.z < s_.head.z - 0.2 * deep;
    Piece head{std::move(steps), Ink::kBody, false};
    Piece hair{std::move(knot), Ink::kBody, false};
    if (knot_behind) {
      out.pieces = {std::move(hair), std::move(head)};
    } else {
      out.pieces = {std::move(head), std::move(hair)};
    }
    if (head_is_behind()) out.pieces.insert(out.pieces.begin(), neck());
    if (own) {
      Steps round;
      add_circle(round, flat(nose), high * 0.15);
      out.pieces.push_back({std::move(round), Ink::kBody, false});
    }
    return out;
  }

  // The farthest point of the skull (an ellipsoid) in a direction of the picture.
  Spot support_of_head(const Vec& n) const {
    const Frame& f = s_.head_frame;
    const double a = f_.head_deep;
    const double b = f_.head_high;
    const double c = f_.head_wide;
    const double x = dot(f.forward, n) * a * a;
    const double y = dot(f.up, n) * b * b;
    const double z = dot(f.right, n) * c * c;
    const double reach = head_reach(f_, f, n);
    return flat(s_.head + (f.forward * x + f.up * y + f.right * z) * (1 / reach));
  }

  const Skeleton& s_;
  const Body& body_;
  Flesh f_;
  Manner manner_;
  Vec middle_;
};

}  // namespace

void draw_body(const Solved& solved, Manner manner, Scene& scene) {
  Artist(solved, manner).draw(scene);
}

Vec grip_of(const Skeleton& skeleton, Side side) {
  const ArmPoints& arm = skeleton.arm(side);
  return mix(arm.wrist, arm.tip, 0.7);
}

}  // namespace chalkleaf::figure
