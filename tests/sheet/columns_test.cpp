// Columns as low as they can be, against all ways to cut the entries.
#include "sheet/columns.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <numeric>

#include "support/random.h"

using namespace chalkleaf;

namespace {

Length height_of_run(const std::vector<Length>& all, std::size_t begin, std::size_t end,
                     Length gap) {
  Length out;
  for (std::size_t i = begin; i < end; ++i) out += all[i] + (i > begin ? gap : Length());
  return out;
}

// The lowest of all ways, by trying them.
Length lowest(const std::vector<Length>& all, std::size_t begin, std::size_t columns, Length gap) {
  if (columns == 1) return height_of_run(all, begin, all.size(), gap);
  Length best = height_of_run(all, begin, all.size(), gap);
  for (std::size_t end = begin + 1; end < all.size(); ++end) {
    best = std::min(
        best, std::max(height_of_run(all, begin, end, gap), lowest(all, end, columns - 1, gap)));
  }
  return best;
}

}  // namespace

TEST_CASE("columns are as low as they can be, and hold every entry in its order") {
  support::Random random(7);
  for (int round = 0; round < 300; ++round) {
    std::vector<Length> entries;
    const std::size_t count = 1 + random.below(9);
    for (std::size_t i = 0; i < count; ++i)
      entries.push_back(Length::pt(static_cast<double>(10 + random.below(90))));
    for (const std::size_t columns : {1U, 2U, 3U}) {
      const Length gap = Length::pt(5);
      const sheet::Balanced made = sheet::balance(entries, columns, gap);
      CHECK(made.height == lowest(entries, 0, columns, gap));
      CHECK(made.columns.size() <= columns);
      CHECK(std::accumulate(made.columns.begin(), made.columns.end(), std::size_t{0}) == count);
      std::size_t begin = 0;
      for (const std::size_t n : made.columns) {
        CHECK(height_of_run(entries, begin, begin + n, gap) <= made.height);
        begin += n;
      }
    }
  }
}
