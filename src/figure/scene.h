// A drawing in metres: paths with inks named by what they are for.
//
// y runs up. Which colour an ink has is the theme's business, how large the drawing is the sheet's.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/colour.h"

namespace chalkleaf::figure {

struct Spot {
  double x = 0;
  double y = 0;
  Spot operator+(const Spot& o) const { return {x + o.x, y + o.y}; }
  Spot operator-(const Spot& o) const { return {x - o.x, y - o.y}; }
  Spot operator*(double k) const { return {x * k, y * k}; }
};

struct Step {
  enum class Kind { kMove, kLine, kCurve, kClose };
  Kind kind = Kind::kMove;
  Spot a;  ///< end point; of a curve its first control point
  Spot b;  ///< second control point of a curve
  Spot c;  ///< end point of a curve
};
using Steps = std::vector<Step>;

enum class Ink {
  kBody,  ///< limbs near the viewer, and the head
  kFar,   ///< limbs away from the viewer
  kSuit,  ///< trunk
  kFarSuit,
  kProp,    ///< surfaces of things
  kEdge,    ///< outlines of things, and the ground
  kAccent,  ///< arrows, tape on the floor
  kHeld,    ///< what is in the hands
  kGhost,   ///< outline of where a movement began
  kPaper,   ///< parts one thing from another
};
inline constexpr std::size_t kInks = 10;
/// The colour of each ink.
using Palette = std::array<Colour, kInks>;

/// A path that is filled (non-zero winding) or drawn as a line with round ends.
struct Shape {
  Steps steps;
  std::optional<Ink> fill;
  std::optional<Ink> line;
  double width = 0;  ///< of the line, in metres
  double dash = 0;   ///< on and off alike; 0: solid
};

struct Box {
  double left = 0, right = 0, bottom = 0, top = 0;
  double width() const { return right - left; }
  double height() const { return top - bottom; }
  bool empty() const { return right <= left || top <= bottom; }
  void take(const Box& other);
  void take(Spot spot, double around);
};

/// A drawing; frames of a row are numbered by whoever sets it.
struct Scene {
  std::vector<Shape> shapes;
  Box box;
  double ground = 0;     ///< height of the ground line
  double stature = 1.3;  ///< of the gymnast, in metres
  /// The middles of the frames of a row, left to right; empty for one picture.
  std::vector<double> frames;
  std::string alternative;  ///< for who cannot see it; never empty

  void add(Shape shape);
  void move(double by_x);
};

// ---- outlines

/// Adds a closed circle, anticlockwise.
void add_circle(Steps& steps, Spot centre, double radius);
/// Adds what two circles and the straight lines that touch both enclose, anticlockwise.
void add_limb(Steps& steps, Spot from, double from_radius, Spot to, double to_radius);
/// Adds a closed smooth curve through the spots.
void add_smooth(Steps& steps, const std::vector<Spot>& spots);
/// Adds an open smooth curve through the spots.
void add_line(Steps& steps, const std::vector<Spot>& spots);
void add_polygon(Steps& steps, const std::vector<Spot>& corners);
void add_rounded(Steps& steps, const Box& box, double radius);

}  // namespace chalkleaf::figure
