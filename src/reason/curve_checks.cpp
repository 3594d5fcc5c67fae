// Front and back of the body: a plan of many front shapes with nothing for the back, or the other
// way round. Any drill that trains the other side balances it, whatever its shape.
// Tested by tests/reason/curve_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "reason/drill_lines.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

// One dish among many drills is no lopsided plan (common practice, no source).
constexpr std::size_t kSeveralShapes = 2;
constexpr std::size_t kMostShapeLabels = 12;

/// A line that bends the body one way.
struct Curved {
  Span span;
  const plan::LibraryDrill* known = nullptr;
  std::string name;
};

// By the words of a line; only ever used to find a counterpart, never a fault.
bool loads_by_words(const plan::Drill& drill, std::string_view curve) {
  const auto words = words_in(drill.name.text);
  if (curve == "dish") {
    return has_one_of(words, {"dish", "hollow", "boat", "tuck-up", "v-sit", "plank", "sit-up",
                              "crunch", "core", "trunk", "front"});
  }
  return has_one_of(
      words, {"arch", "arched", "superman", "bridge", "bow", "cobra", "locust", "swan", "backbend",
              "back", "glute", "row", "pull", "hip", "bottom", "table"});
}

// What it trains: the front is the trunk alone, the back of the body has names of its own.
bool trains_side(const plan::LibraryDrill& drill, std::string_view curve) {
  if (lower_ascii(drill.curve.text) == curve) return true;
  if (!drill.curve.empty()) return false;
  return std::any_of(drill.trains.begin(), drill.trains.end(), [&](const plan::Words& what) {
    const std::string thing = lower_ascii(what.text);
    if (curve == "dish") return thing == "trunk" || thing == "whole body";
    return is_one_of(thing, {"lower back", "upper back", "back thighs", "whole body"});
  });
}

/// What the session does for one side of the body.
struct SideOfBody {
  std::vector<Curved> shapes;
  bool any = false;  ///< a shape, or another drill that trains it, or may by its name
};

SideOfBody side_of(const Subject& subject, std::string_view curve) {
  SideOfBody out;
  for (const DrillLine& line : drill_lines(subject.session)) {
    out.any = out.any || loads_by_words(*line.drill, curve);
    for (const Named& named : named_by(line, subject.book)) {
      out.any = out.any || trains_side(*named.drill, curve);
      if (lower_ascii(named.drill->curve.text) == curve) {
        out.shapes.push_back({named.span, named.drill, named.words.text});
      }
    }
  }
  return out;
}

// A drill of the library that would mend it, within the group's level.
std::string counterpart(const Subject& subject, std::string_view curve) {
  const auto& group = subject.session.group;
  const int most = group && group->level ? group->level->value : 10;
  for (const plan::LibraryDrill& drill : subject.book.all()) {
    const bool fits = lower_ascii(drill.curve.text) == curve &&
                      (!drill.level || drill.level->value <= most) &&
                      (!subject.at_home() || !drill.home || drill.home->value);
    if (fits) return drill.name.text;
  }
  return curve == "arch" ? "Arch hold" : "Dish hold";
}

void check_curve(const Subject& subject, std::string_view curve, std::string_view other,
                 Diagnostics& diagnostics) {
  const std::vector<Curved> lines = side_of(subject, curve).shapes;
  if (lines.size() < kSeveralShapes || side_of(subject, other).any) return;
  const Curved& first = lines.front();
  const auto article = [](std::string_view word) { return word == "arch" ? "an arch" : "a dish"; };
  Diagnostic found{
      Severity::kNote, "unpaired-shape", first.span,
      fmt::format("{} lines bend the body into {}, and nothing in this session loads the {} of the "
                  "body",
                  lines.size(), article(curve), other == "arch" ? "back" : "front")};
  for (std::size_t i = 1; i < std::min(lines.size(), kMostShapeLabels); ++i) {
    found.labels.push_back({lines[i].span, fmt::format("{} too", article(curve))});
  }
  label_library(diagnostics, found, *first.known, first.known->curve.span,
                "the library says so here");
  found.hint = fmt::format("add {}, such as {}, so that front and back grow strong together",
                           article(other), quoted(counterpart(subject, other)));
  diagnostics.add(std::move(found));
}

}  // namespace

void check_curves(const Subject& subject, Diagnostics& diagnostics) {
  check_curve(subject, "dish", "arch", diagnostics);
  check_curve(subject, "arch", "dish", diagnostics);
}

}  // namespace chalkleaf::reason
