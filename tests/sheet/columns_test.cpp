// Columns as low as they can be, against all ways to cut the entries.
#include "sheet/columns.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <numeric>

#include "support/random.h"

using namespace chalkleaf;

namespace {

using sheet::Standing;

Length height_of_run(const std::vector<Standing>& all, std::size_t begin, std::size_t end) {
  Length out;
  for (std::size_t i = begin; i < end; ++i)
    out += all[i].height + (i > begin ? all[i].above : Length());
  return out;
}

// The lowest of all ways, by trying them.
Length lowest(const std::vector<Standing>& all, std::size_t begin, std::size_t columns) {
  Length best = height_of_run(all, begin, all.size());
  if (columns == 1) return best;
  for (std::size_t end = begin + 1; end < all.size(); ++end) {
    if (all[end - 1].keeps) continue;
    best = std::min(best, std::max(height_of_run(all, begin, end), lowest(all, end, columns - 1)));
  }
  return best;
}

}  // namespace

TEST_CASE(
    "columns are as low as they can be, hold every entry in its order, part no two that keep") {
  support::Random random(7);
  for (int round = 0; round < 300; ++round) {
    std::vector<Standing> entries;
    const std::size_t count = 1 + random.below(9);
    for (std::size_t i = 0; i < count; ++i) {
      entries.push_back({Length::pt(static_cast<double>(10 + random.below(90))),
                         Length::pt(static_cast<double>(random.below(12))), random.below(4) == 0});
    }
    for (const std::size_t columns : {1U, 2U, 3U}) {
      const sheet::Balanced made = sheet::balance(entries, columns);
      CHECK(made.height == lowest(entries, 0, columns));
      CHECK(sheet::balance(entries, columns, made.height).columns == made.columns);
      CHECK(made.columns.size() <= columns);
      CHECK(std::accumulate(made.columns.begin(), made.columns.end(), std::size_t{0}) == count);
      std::size_t begin = 0;
      for (const std::size_t n : made.columns) {
        CHECK(height_of_run(entries, begin, begin + n) <= made.height);
        begin += n;
        if (begin < count) CHECK_FALSE(entries[begin - 1].keeps);
      }
    }
  }
}
