#include "figure/words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "base/text.h"
#include "figure/clauses.h"
#include "figure/picture.h"

namespace chalkleaf::figure {
namespace {

constexpr double kAge = 9;  // of the body that is told of when nobody says which

std::string body_of(const Told& t) {
  return joined({t.base, t.trunk, t.arms, t.legs, t.feet, t.head, t.things});
}

std::string with_view(const Told& t, const std::string& text) {
  return t.view.empty() ? text : t.view + ": " + text;
}

std::string sentence(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text + ".";
}

std::string_view how(Speed speed) {
  switch (speed) {
    case Speed::kFast:
      return " quickly";
    case Speed::kSlow:
      return " slowly";
    case Speed::kEven:
      break;
  }
  return "";
}

// What is said behind a movement; `many` move.
std::string tempo_of(const Figure& figure, bool many) {
  const auto speed = [&](std::size_t i) {
    return i < figure.tempo.size() ? figure.tempo[i] : Speed::kEven;
  };
  std::string out(how(speed(0)));
  if (!out.empty()) out = "," + out;
  if (!figure.returns) return out;
  return out + (many ? ", and come back" : ", and comes back") + std::string(how(speed(1)));
}

// What of the later pose differs from the earlier one.
Texts changes(const Told& a, const Told& b) {
  Texts out;
  const auto take = [&](const std::string& before, const std::string& after, const char* nothing) {
    if (before == after) return;
    out.push_back(after.empty() ? nothing : after);
  };
  take(a.base, b.base, "");
  take(a.trunk, b.trunk, "back straight");
  take(a.arms, b.arms, b.legs.empty() ? "" : "arms straight");
  take(a.legs, b.legs, b.arms.ends_with("both lifted off the floor") ? "" : "legs straight");
  take(a.feet, b.feet, "feet relaxed");
  take(a.head, b.head, "head in line");
  take(a.things, b.things, "hands empty");
  out.erase(std::remove(out.begin(), out.end(), ""), out.end());
  return out;
}

// Two poses whose clauses are the same still differ by what travels.
std::string travelled(const Solved& a, const Solved& b) {
  struct Point {
    const char* name;
    Vec way;
  };
  const Skeleton& s = a.skeleton;
  const Skeleton& t = b.skeleton;
  const std::array<Point, 4> points = {{{"feet", t.legs[0].toe - s.legs[0].toe},
                                        {"hands", t.arms[0].tip - s.arms[0].tip},
                                        {"head", t.head - s.head},
                                        {"hips", t.trunk[0].at - s.trunk[0].at}}};
  const auto most =
      std::max_element(points.begin(), points.end(),
                       [](const auto& x, const auto& y) { return length(x.way) < length(y.way); });
  const Vec& way = most->way;
  const std::string name = most->name;
  if (std::fabs(way.y) >= std::fabs(way.x))
    return "the same shape with the " + name + (way.y > 0 ? " higher" : " lower");
  return "the same shape with the " + name + " further " +
         (way.x * t.trunk[5].frame.forward.x >= 0 ? "forward" : "back");
}

// `the legs lift to straight, up to the ceiling`, when nothing else moves.
std::string one_change(const Told& a, const Told& b, const Solved& before, const Solved& after) {
  const auto verb = [](double by) {
    return by > 0.1 ? " lift to " : by < -0.1 ? " lower to " : " move to ";
  };
  const auto starts = [](const std::string& text, std::string_view word) {
    return text.starts_with(word);
  };
  if (a.legs != b.legs && starts(a.legs, "legs ") && starts(b.legs, "legs ")) {
    const double by = after.skeleton.legs[0].ankle.y - before.skeleton.legs[0].ankle.y;
    return "the legs" + std::string(verb(by)) + b.legs.substr(5);
  }
  if (a.arms != b.arms && starts(a.arms, "arms ") && starts(b.arms, "arms ") &&
      !starts(b.arms, "arms straight") && !starts(b.arms, "arms bent")) {
    const double by = after.skeleton.arms[0].tip.y - before.skeleton.arms[0].tip.y;
    return "the arms" + std::string(verb(by)) + b.arms.substr(5);
  }
  return "";
}

// `from standing, arms by the sides: the arms lift to overhead, slowly, and come back slowly`
std::string movement(const Figure& figure, const std::vector<Told>& told,
                     const std::vector<Shown>& shown) {
  std::string out = "from " + body_of(told.front());
  bool many = false;
  for (std::size_t i = 1; i < told.size(); ++i) {
    Texts changed = changes(told[i - 1], told[i]);
    const Solved& before = shown[i - 1].solved;
    const Solved& after = shown[i].solved;
    if (changed.size() == 1 && told.size() == 2) {
      if (const std::string one = one_change(told[0], told[1], before, after); !one.empty()) {
        out += ": " + one;
        many = true;
        continue;
      }
    }
    if (changed.empty()) changed.push_back(travelled(before, after));
    out += (i + 1 < told.size() ? "; through " : "; to ") + joined(changed);
  }
  return with_view(told.front(), out + tempo_of(figure, many));
}

// Of who turns about the upright axis.
std::string turned(const Solved& first, const Solved& now) {
  const double by = std::remainder((now.stance.yaw - first.stance.yaw).in_degrees(), 360.0);
  const double size = std::fabs(by);
  if (size < 30) return "";
  if (size > 150) return "turned half round";
  return size > 105  ? "turned more than a quarter"
         : size > 60 ? "turned a quarter"
                     : "turned a little";
}

// `the arms circling`, `the head turning`
std::string turning(const Figure& figure) {
  Texts parts;
  for (const std::string& one : figure.circles) {
    std::string_view name = one;
    const bool sided = take_side(name).has_value();
    std::string text(name);
    if (text == "foot") text = "feet";
    if (sided && text == name && !text.ends_with('s')) text += 's';
    if (std::find(parts.begin(), parts.end(), text) == parts.end()) parts.push_back(text);
  }
  Texts out;
  if (!parts.empty()) out.push_back("the " + join_list(parts) + " circling");
  if (!figure.turns.empty()) out.push_back("the " + figure.turns + " turning");
  return joined(out);
}

std::string row(const std::vector<Told>& told, const std::vector<Shown>& shown) {
  std::string out = std::to_string(told.size()) + " pictures";
  for (std::size_t i = 0; i < told.size(); ++i) {
    out += (i == 0 ? ": " : "; ") + std::to_string(i + 1) + ", " +
           joined({body_of(told[i]), turned(shown[0].solved, shown[i].solved)});
  }
  return with_view(told.front(), out);
}

}  // namespace

std::string describe(const Pose& pose) {
  Figure figure;
  figure.poses.push_back(pose);
  const std::vector<Shown> shown = show(figure, Body::of_age(kAge));
  const Told told = tell(pose, shown.front().solved);
  return with_view(told, body_of(told));
}

std::string alternative_text(const Figure& figure, const std::vector<Shown>& shown) {
  if (!figure.alternative.empty()) return figure.alternative.text;
  std::vector<Told> told;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    told.push_back(tell(figure.poses[i], shown[i].solved));
  }
  std::string text;
  if (told.size() == 1) {
    text = with_view(told[0], body_of(told[0]));
  } else {
    text = figure.show == Show::kRow ? row(told, shown) : movement(figure, told, shown);
  }
  return sentence(joined({text, turning(figure)}));
}

std::string alternative_text(const Figure& figure) {
  if (!figure.alternative.empty()) return figure.alternative.text;
  return alternative_text(figure, show(figure, Body::of_age(kAge)));
}

}  // namespace chalkleaf::figure
