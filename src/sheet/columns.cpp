#include "sheet/columns.h"

#include <algorithm>

namespace chalkleaf::sheet {
namespace {

/// Entries that no column parts, and what they need together.
struct Group {
  std::size_t entries = 0;
  Length height;
  Length above;
};

std::vector<Group> groups_of(std::span<const Standing> entries) {
  std::vector<Group> out;
  bool kept = false;
  for (const Standing& one : entries) {
    if (!kept) out.push_back({0, Length(), one.above});
    Group& group = out.back();
    group.height += one.height + (kept ? one.above : Length());
    ++group.entries;
    kept = one.keeps;
  }
  return out;
}

// How many columns of at most that height they take, each filled in turn.
std::size_t columns_of(const std::vector<Group>& groups, Length height) {
  std::size_t out = 0;
  Length used;
  for (const Group& group : groups) {
    const bool first = out == 0 || used + group.above + group.height > height;
    out += first ? 1 : 0;
    used = first ? group.height : used + group.above + group.height;
  }
  return out;
}

}  // namespace

// Halving: what is high enough stays so when it is higher, and heights are whole numbers.
Balanced balance(std::span<const Standing> entries, std::size_t columns, Length at_least) {
  const std::vector<Group> groups = groups_of(entries);
  Length low = at_least;
  Length high;
  for (const Group& group : groups) {
    low = std::max(low, group.height);
    high += group.above + group.height;
  }
  high = std::max(high, low);
  while (low < high) {
    const Length middle = low + (high - low) / 2;
    if (columns_of(groups, middle) <= columns) {
      high = middle;
    } else {
      low = middle + Length::millipoints(1);
    }
  }
  Balanced out{{}, high};
  Length used;
  for (const Group& group : groups) {
    if (out.columns.empty() || used + group.above + group.height > high) {
      out.columns.push_back(0);
      used = group.height;
    } else {
      used += group.above + group.height;
    }
    out.columns.back() += group.entries;
  }
  return out;
}

}  // namespace chalkleaf::sheet
