#include "pdf/paths.h"

#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

using page::PathStep;

// A path of so many steps is worth a coordinate system of its own: a box to tick and more.
constexpr std::size_t kLongPath = 8;

}  // namespace

void PathWriter::write(const page::PathItem& item) {
  if (item.fill) set_fill(*item.fill);
  if (item.stroke) set_stroke(*item.stroke);
  // A long path is written from its own first point: its numbers are short, and the same drawing
  // elsewhere on the page is the same text, which deflates to almost nothing.
  const bool own_origin = item.steps.size() >= kLongPath;
  if (own_origin) {
    const Point first = item.steps.front().a;
    out_ += "q 1 0 0 1 ";
    point(first);
    out_ += "cm\n";
    origin_ = {first.x, height_ - first.y};
  }
  for (const PathStep& step : item.steps) {
    switch (step.kind) {
      case PathStep::Kind::kMove:
        point(step.a);
        out_ += "m\n";
        break;
      case PathStep::Kind::kLine:
        point(step.a);
        out_ += "l\n";
        break;
      case PathStep::Kind::kCurve:
        point(step.a);
        point(step.b);
        point(step.c);
        out_ += "c\n";
        break;
      case PathStep::Kind::kClose:
        out_ += "h\n";
        break;
    }
  }
  out_ += item.fill && item.stroke ? "B\n" : item.fill ? "f\n" : "S\n";
  if (own_origin) {
    out_ += "Q\n";
    origin_ = {};
  }
}

void PathWriter::set_fill(Colour colour) {
  if (fill_ == colour) return;
  append_colour(out_, colour, Paint::kFill);
  fill_ = colour;
}

void PathWriter::set_stroke(const page::Stroke& stroke) {
  if (!stroke_ || stroke_->colour != stroke.colour)
    append_colour(out_, stroke.colour, Paint::kStroke);
  if (!stroke_ || stroke_->width != stroke.width) {
    number(stroke.width);
    out_ += "w\n";
  }
  if (!stroke_ || stroke_->round != stroke.round) out_ += stroke.round ? "1 J 1 j\n" : "0 J 0 j\n";
  if (!stroke_ || stroke_->dashes != stroke.dashes) {
    out_ += '[';
    for (const Length dash : stroke.dashes) number(dash);
    out_ += "] 0 d\n";
  }
  stroke_ = stroke;
}

void PathWriter::point(Point p) {
  char buffer[2 * (kLongestNumber + 1)];
  char* at = write_thousandths(buffer, (p.x - origin_.x).in_millipoints() * unit_);
  *at++ = ' ';
  at = write_thousandths(at, (height_ - p.y - origin_.y).in_millipoints() * unit_);
  *at++ = ' ';
  out_.append(buffer, at);
}

void PathWriter::number(Length length) {
  append_length(out_, length * unit_);
  out_ += ' ';
}

}  // namespace chalkleaf::pdf
