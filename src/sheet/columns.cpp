#include "sheet/columns.h"

#include <algorithm>

namespace chalkleaf::sheet {
namespace {

// How many columns of at most that height the entries take, each filled in turn.
std::vector<std::size_t> fill(std::span<const Length> entries, Length height, Length gap) {
  std::vector<std::size_t> out;
  Length used;
  for (const Length entry : entries) {
    const Length more = out.empty() || used == Length() ? entry : gap + entry;
    if (out.empty() || used + more > height) {
      out.push_back(0);
      used = Length();
    }
    used += used == Length() ? entry : gap + entry;
    ++out.back();
  }
  return out;
}

}  // namespace

// The height sought is that of some run of entries: all runs are tried, the lowest that does.
Balanced balance(std::span<const Length> entries, std::size_t columns, Length gap) {
  std::vector<Length> heights;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    Length run;
    for (std::size_t j = i; j < entries.size(); ++j) {
      run += entries[j] + (j > i ? gap : Length());
      heights.push_back(run);
    }
  }
  std::sort(heights.begin(), heights.end());
  const Length highest =
      entries.empty() ? Length() : *std::max_element(entries.begin(), entries.end());
  const auto enough = std::partition_point(heights.begin(), heights.end(), [&](Length height) {
    return height < highest || fill(entries, height, gap).size() > columns;
  });
  if (enough == heights.end()) return {};
  return {fill(entries, *enough, gap), *enough};
}

}  // namespace chalkleaf::sheet
