// Where a grid stands in a text, whatever it is drawn with, as names by turns. Internal to the
// room. Tested by tests/rota/read_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rota/lines.h"
#include "rota/words.h"

namespace chalkleaf::rota {

/// A row of the clock: a turn, or a break of all.
struct TableTurn {
  std::optional<Clock> clock = {};
  Cell label = {};
  std::uint32_t line = 0;
  bool pause = false;
  std::string pause_words = {};
  Cell pause_cell = {};
};

/// One group at one place, where a line says both: `Fliers go to floor`.
struct Pair {
  std::size_t turn = 0;
  Cell group;
  Cell place;
};

/// A grid before it is known which of its names are groups. Where `pairs` are, `names` and `cells`
/// are empty.
struct Table {
  std::vector<Cell> names = {};  ///< of the columns, or of the rows where the clock runs across
  std::vector<TableTurn> turns = {};          ///< breaks among them
  std::vector<std::vector<Cell>> cells = {};  ///< [turn][name]; empty cells too
  std::vector<Pair> pairs = {};
  Cell corner = {};                       ///< what stands over the clock: `MAIN HALL`
  std::vector<std::uint32_t> lines = {};  ///< of the file
  bool then_rotate = false;               ///< one turn, and the others follow by moving round
};

/// All of a text, from its begin to its end.
std::vector<Table> tables_of(const Source& source, const std::vector<Line>& lines,
                             const Words& words);

/// Whether a cell names a place of the hall.
bool is_station(const Words& words, std::string_view text);
/// Whether it is the number of a turn: `Turn 2`, `2nd`, `R3`.
bool is_turn_label(const Words& words, std::string_view text);
/// Whether it says that a group is nowhere: `rest`, `-`.
bool is_rest(const Words& words, std::string_view text);

}  // namespace chalkleaf::rota
