// Clocks and cells.
#include "rota/lines.h"

#include <catch2/catch.hpp>

#include "base/span.h"

using namespace chalkleaf;

namespace {

int minutes(std::string_view text) {
  const auto read = rota::read_clock(text);
  return read ? read->clock.minutes : -1;
}

std::vector<std::string> cells(const std::string& text) {
  const Source source("plan.md", text);
  std::vector<std::string> out;
  const std::vector<rota::Line> lines = rota::lines_of(source);
  for (const rota::Cell& cell : lines.front().cells)
    out.emplace_back(source.text().substr(cell.begin, cell.end - cell.begin));
  return out;
}

}  // namespace

TEST_CASE("rota lines: clocks, in the afternoon where gyms are open") {
  CHECK(minutes("9.25") == 9 * 60 + 25);
  CHECK(minutes("4:20") == 16 * 60 + 20);
  CHECK(minutes("7am") == 7 * 60);
  CHECK(minutes("1625") == 16 * 60 + 25);
  CHECK(minutes("1.15m table") == -1);
  CHECK(minutes("12 goes") == -1);
  CHECK(rota::read_clock("5:55-6:05 SNACK")->clock.until == 18 * 60 + 5);
}

TEST_CASE("rota lines: cells by bars, tabs and wide gaps") {
  using Cells = std::vector<std::string>;
  CHECK(cells("| 9.25 | A | | B + C |") == Cells{"9.25", "A", "", "B + C"});
  CHECK(cells("9.25   A   B  C") == Cells{"A", "B", "C"});
  CHECK(cells("G1\tFX\tPH") == Cells{"G1", "FX", "PH"});
  CHECK(cells("one line of words") == Cells{"one line of words"});
}
