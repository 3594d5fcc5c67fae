// Elements made in one line. Only for the files that read them (elements.cpp, element_*.cpp).
#pragma once

#include <utility>
#include <vector>

#include "draft/elements.h"

namespace chalkleaf::draft {

inline Element made(Element::Kind kind, std::size_t begin, std::size_t next) {
  Element out;
  out.kind = kind;
  out.begin = begin;
  out.next = next;
  return out;
}

inline Element counted(Unit unit, std::vector<double> values, std::size_t begin, std::size_t next) {
  Element out = made(Element::Kind::kCount, begin, next);
  out.unit = unit;
  out.values = std::move(values);
  return out;
}

inline void scale(std::vector<double>& values, double by) {
  for (double& value : values) value *= by;
}

}  // namespace chalkleaf::draft
