#include "figure/flesh.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <limits>

namespace chalkleaf::figure {
namespace {

constexpr std::array<std::string_view, kParts> kPartNames = {
    "feet",  "toes",         "heels",    "insteps",    "pointed toes", "knees",
    "shins", "seat",         "back",     "upper back", "front",        "side",
    "hands", "fingers back", "forearms", "elbows",     "head",         "thighs"};

struct Disc {
  Vec at;
  double radius;
};
double lowest_of(std::initializer_list<Disc> discs) {
  double out = std::numeric_limits<double>::infinity();
  for (const Disc& disc : discs) out = std::min(out, disc.at.y - disc.radius);
  return out;
}

constexpr Vec kDown{0, -1, 0};

// The seat is behind and below the hips.
Disc seat(const Body& body, const Skeleton& s) {
  const TrunkSlice& pelvis = s.trunk.front();
  return {pelvis.at - pelvis.frame.forward * (0.006 * body.stature), 0.060 * body.stature};
}

double trunk_lowest(const Skeleton& s, std::size_t first, std::size_t end) {
  double out = std::numeric_limits<double>::infinity();
  for (std::size_t i = first; i < end; ++i) {
    out = std::min(out, s.trunk[i].at.y - reach_of(s.trunk[i], kDown));
  }
  return out;
}

double arm_lowest(const Flesh& f, const ArmPoints& a) {
  return lowest_of({{a.shoulder, f.shoulder},
                    {a.elbow, f.elbow},
                    {a.wrist, f.palm},
                    {a.knuckles, f.knuckles},
                    {a.tip, f.fingers}});
}

double foot_lowest(const Flesh& f, const LegPoints& l) {
  return lowest_of({{l.ankle, f.ankle}, {l.heel, f.heel}, {l.ball, f.ball}, {l.toe, f.toe}});
}

double head_lowest(const Flesh& f, const Skeleton& s) {
  return s.head.y - head_reach(f, s.head_frame, kDown);
}

}  // namespace

std::string_view part_name(Part part) { return kPartNames[static_cast<std::size_t>(part)]; }

const std::vector<std::string>& part_names() {
  static const std::vector<std::string> names(kPartNames.begin(), kPartNames.end());
  return names;
}

std::optional<Part> read_part(std::string_view text) {
  for (std::size_t i = 0; i < kParts; ++i) {
    const std::string_view name = kPartNames[i];
    // `near foot`, `left knee`: one of two.
    const bool one = name.ends_with('s') && name.substr(0, name.size() - 1) == text;
    if (name == text || one || (name == "feet" && text == "foot")) return static_cast<Part>(i);
  }
  return std::nullopt;
}

bool is_limb(Part part) {
  switch (part) {
    case Part::kSeat:
    case Part::kBack:
    case Part::kUpperBack:
    case Part::kFront:
    case Part::kSideBody:
    case Part::kHead:
      return false;
    default:
      return true;
  }
}

Flesh::Flesh(const Body& body) {
  const double k = body.stature;
  hip = 0.049 * k;
  knee = 0.030 * k;
  calf = 0.031 * k;
  shin = 0.022 * k;
  ankle = 0.020 * k;
  // The foot is as long as the body's ankle is high, so its thickness follows that.
  const double foot = body.ankle / 0.039;
  heel = 0.020 * foot;
  ball = 0.015 * foot;
  toe = 0.011 * foot;
  shoulder = 0.030 * k;
  elbow = 0.021 * k;
  forearm = 0.022 * k;
  wrist = 0.0140 * k;
  palm = 0.0155 * k;
  knuckles = 0.0150 * k;
  fingers = 0.0095 * k;
  neck = 0.027 * k;
  head_high = body.head * 0.5;
  head_deep = body.head * 0.455;
  head_wide = body.head * 0.40;
}

double reach_of(const TrunkSlice& slice, const Vec& direction) {
  // The widest of an ellipse in a direction: half axes times the direction's share along each.
  const double a = slice.depth * dot(slice.frame.forward, direction);
  const double b = slice.breadth * dot(slice.frame.right, direction);
  return std::sqrt(a * a + b * b);
}

double head_reach(const Flesh& flesh, const Frame& frame, const Vec& direction) {
  const double a = flesh.head_deep * dot(frame.forward, direction);
  const double b = flesh.head_high * dot(frame.up, direction);
  const double c = flesh.head_wide * dot(frame.right, direction);
  return std::sqrt(a * a + b * b + c * c);
}

double lowest(const Body& body, const Skeleton& s, Part part, Side side) {
  const Flesh f(body);
  const ArmPoints& arm = s.arm(side);
  const LegPoints& leg = s.leg(side);
  switch (part) {
    case Part::kFeet:
      return lowest_of({{leg.heel, f.heel}, {leg.ball, f.ball}});
    case Part::kToes:
      return lowest_of({{leg.ball, f.ball}});
    case Part::kHeels:
      return lowest_of({{leg.heel, f.heel}, {leg.ankle, f.ankle}});
    case Part::kInsteps:
      return lowest_of({{leg.ball, f.ball}, {leg.toe, f.toe}});
    case Part::kPointedToes:
      return lowest_of({{leg.toe, f.toe}});
    case Part::kKnees:
      return lowest_of({{leg.knee, f.knee}});
    case Part::kShins:
      return lowest_of({{leg.knee, f.knee}, {leg.toe, f.toe}});
    case Part::kSeat: {
      const Disc disc = seat(body, s);
      return lowest_of({disc, {s.leg(Side::kRight).hip, f.hip}, {s.leg(Side::kLeft).hip, f.hip}});
    }
    case Part::kBack:
      return std::min(trunk_lowest(s, 0, kSlices), lowest_of({seat(body, s)}));
    case Part::kUpperBack:
      return trunk_lowest(s, kSlices - 4, kSlices);
    case Part::kFront:
      return trunk_lowest(s, 0, kSlices);
    case Part::kSideBody:
      return std::min(
          {trunk_lowest(s, 0, kSlices), lowest_of({{s.legs[0].hip, f.hip}, {s.legs[1].hip, f.hip}}),
           lowest_of({{s.arms[0].shoulder, f.shoulder}, {s.arms[1].shoulder, f.shoulder}})});
    case Part::kHands:
    case Part::kFingersBack:
      return lowest_of({{arm.wrist, f.palm}, {arm.knuckles, f.knuckles}, {arm.tip, f.fingers}});
    case Part::kForearms:
      return lowest_of({{arm.elbow, f.elbow}, {arm.wrist, f.palm}});
    case Part::kElbows:
      return lowest_of({{arm.elbow, f.elbow}});
    case Part::kHead:
      return head_lowest(f, s);
    case Part::kThighs:
      return lowest_of({{leg.hip, f.hip}, {leg.knee, f.knee}});
  }
  return 0;
}

double lowest(const Body& body, const Skeleton& s) {
  const Flesh f(body);
  double out = std::min({trunk_lowest(s, 0, kSlices), head_lowest(f, s)});
  for (const Side side : kSides) {
    const LegPoints& leg = s.leg(side);
    out = std::min({out, arm_lowest(f, s.arm(side)), foot_lowest(f, leg),
                    lowest_of({{leg.knee, f.knee}, {leg.hip, f.hip}})});
  }
  return out;
}

LowestPart lowest_part(const Body& body, const Skeleton& s) {
  const Flesh f(body);
  LowestPart out{"head", std::nullopt, head_lowest(f, s)};
  const auto take = [&](std::string_view name, std::optional<Side> side, double height) {
    if (height < out.height) out = {name, side, height};
  };
  for (std::size_t i = 0; i < kSlices; ++i) {
    const double facing = s.trunk[i].frame.forward.y;
    const std::string_view name = facing > 0.3    ? "back"
                                  : facing < -0.3 ? "front"
                                  : i < 3         ? "seat"
                                                  : "side";
    take(name, std::nullopt, s.trunk[i].at.y - reach_of(s.trunk[i], kDown));
  }
  for (const Side side : kSides) {
    const ArmPoints& a = s.arm(side);
    const LegPoints& l = s.leg(side);
    take("shoulder", side, a.shoulder.y - f.shoulder);
    take("elbow", side, a.elbow.y - f.elbow);
    take("hand", side, lowest(body, s, Part::kHands, side));
    take("hip", side, l.hip.y - f.hip);
    take("knee", side, l.knee.y - f.knee);
    take("foot", side, foot_lowest(f, l));
  }
  return out;
}

Footing footing(const Body& body, const Skeleton& s, Part part, Side side) {
  const Flesh f(body);
  const ArmPoints& arm = s.arm(side);
  const LegPoints& leg = s.leg(side);
  const double skin = 0.012 * body.stature;  // what lies this close to the ground rests on it
  std::vector<double> xs;
  const auto take = [&](const Vec& at) { xs.push_back(at.x); };
  const auto trunk = [&](std::size_t first) {
    const double low = trunk_lowest(s, first, kSlices);
    for (std::size_t i = first; i < kSlices; ++i) {
      if (s.trunk[i].at.y - reach_of(s.trunk[i], kDown) <= low + skin) take(s.trunk[i].at);
    }
  };
  switch (part) {
    case Part::kFeet:
      xs = {leg.heel.x, leg.ball.x, leg.toe.x};
      break;
    case Part::kToes:
      xs = {leg.ball.x, leg.toe.x};
      break;
    case Part::kHeels:
      xs = {leg.heel.x, leg.ankle.x};
      break;
    case Part::kInsteps:
      xs = {leg.ankle.x, leg.toe.x};
      break;
    case Part::kPointedToes:
      xs = {leg.toe.x};
      break;
    case Part::kKnees:
      xs = {leg.knee.x};
      break;
    case Part::kShins:
      xs = {leg.knee.x, leg.ankle.x, leg.toe.x};
      break;
    case Part::kSeat: {
      const Disc disc = seat(body, s);
      xs = {disc.at.x - disc.radius * 0.6, disc.at.x + disc.radius * 0.6};
      for (const LegPoints& one : s.legs) {
        // The thighs bear as far as they lie on the same ground.
        const double seat_low = disc.at.y - disc.radius;
        for (int i = 1; i <= 4; ++i) {
          const double t = i / 4.0;
          const Vec at = mix(one.hip, one.knee, t);
          const double radius = f.hip + (f.knee - f.hip) * t;
          if (at.y - radius <= seat_low + 2 * skin) take(at);
        }
      }
      break;
    }
    case Part::kBack:
    case Part::kFront:
      trunk(0);
      break;
    case Part::kUpperBack:
      trunk(kSlices - 4);
      break;
    case Part::kSideBody:
      trunk(0);
      for (const LegPoints& one : s.legs) take(one.hip);
      break;
    case Part::kHands:
    case Part::kFingersBack:
      xs = {arm.wrist.x, arm.tip.x};
      break;
    case Part::kForearms:
      xs = {arm.elbow.x, arm.wrist.x, arm.tip.x};
      break;
    case Part::kElbows:
      xs = {arm.elbow.x};
      break;
    case Part::kHead:
      xs = {s.head.x};
      break;
    case Part::kThighs:
      xs = {leg.hip.x, leg.knee.x};
      break;
  }
  // Flesh gives: each point bears a little to both sides.
  const auto [least, most] = std::minmax_element(xs.begin(), xs.end());
  return {*least - skin, *most + skin};
}

}  // namespace chalkleaf::figure
