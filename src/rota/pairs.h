// Lines that say who is where: `7.10 Springs rest, Fliers go to floor, Tumblers bars`; `A vault, B
// bars, then rotate`; `A: vault, bars, beam`. Internal to the room. Tested by
// tests/rota/read_test.cpp.
#pragma once

#include "rota/table.h"

namespace chalkleaf::rota {

/// Such lines from line `at` on; `end` is moved behind the last. Nothing where there are none.
std::optional<Table> pair_lines(const Source& source, const std::vector<Line>& lines,
                                const Words& words, std::size_t at, std::size_t& end);

}  // namespace chalkleaf::rota
