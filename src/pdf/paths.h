// Paths as operators (ISO 32000-1, 8.5): on a page, and in artworks. Only for this room.
//
// State is set only where it changes; y is flipped here. Tested by tests/pdf/write_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "page/display_list.h"

namespace chalkleaf::pdf {

class PathWriter {
 public:
  /// Whether colours and line width begin as a page's do (8.4.1), or are whatever they were where
  /// an artwork is shown.
  enum class Begins { kAsAPage, kUnknown };
  /// What one is: where coordinates have one decimal, whole tenths are shorter.
  enum class Unit : std::uint8_t { kPoint = 1, kTenth = 10 };
  /// Appends to `out`, which must outlive it; y runs down from `height`.
  PathWriter(std::string& out, Length height, Begins begins, Unit unit = Unit::kPoint)
      : out_(out), height_(height), unit_(static_cast<std::int64_t>(unit)) {
    if (begins == Begins::kUnknown) return;
    fill_ = kBlack;
    stroke_ = page::Stroke{kBlack, Length::millipoints(1000), false, {}};
  }

  void write(const page::PathItem& item);
  void set_fill(Colour colour);

 private:
  void set_stroke(const page::Stroke& stroke);
  void point(Point p);
  void number(Length length);

  std::string& out_;
  Length height_;
  std::int64_t unit_;
  Point origin_;                ///< of the path that is written, in the PDF's own directions
  std::optional<Colour> fill_;  ///< none: not known
  std::optional<page::Stroke> stroke_;
};

}  // namespace chalkleaf::pdf
