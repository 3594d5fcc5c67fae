// See the header. Four forms: a Markdown table; columns set apart by tabs or spaces; a line a turn
// that says who is where; one line and `then rotate`.
#include "rota/table.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "rota/pairs.h"

namespace chalkleaf::rota {
namespace {

struct RawRow {
  std::uint32_t line = 0;
  std::optional<Clock> clock = {};
  Cell label = {};
  std::vector<Cell> cells = {};
};

class TableMaker {
 public:
  TableMaker(const Source& source, const Words& words) : source_(source), words_(words) {}

  std::string text(const Cell& cell) const {
    return std::string(source_.text().substr(cell.begin, cell.end - cell.begin));
  }
  bool is_clock(const Cell& cell) const {
    const std::string all = text(cell);
    const auto read = read_clock(all);
    return read && read->size == all.size();
  }
  bool is_time(const Cell& cell) const {
    return !cell.empty() && (is_clock(cell) || is_turn_label(words_, text(cell)));
  }

  // A break of all: one cell across, or the same in all of them.
  static bool is_across(const std::vector<Cell>& cells) {
    return std::count_if(cells.begin(), cells.end(), [](const Cell& c) { return !c.empty(); }) == 1;
  }

  // Rows of the clock below names.
  std::optional<Table> down(const std::vector<Cell>& head, const std::vector<RawRow>& rows) const {
    Table out;
    out.names = head;
    for (const RawRow& row : rows) {
      TableTurn turn{row.clock, row.label, row.line};
      std::vector<Cell> cells = aligned(head, row.cells);
      const std::string first = row.cells.empty() ? "" : text(row.cells.front());
      const bool said = !row.cells.empty() && within(words_.pauses, first);
      if ((head.size() > 1 && is_across(cells)) || (row.cells.size() < head.size() && said)) {
        if (head.size() > 2 || said) {
          turn.pause = true;
          for (const Cell& cell : row.cells) {
            if (!cell.empty())
              turn.pause_words += (turn.pause_words.empty() ? "" : " ") + text(cell);
          }
          turn.pause_cell = row.cells.front();
          cells.clear();
        }
      } else if (same_pause(cells)) {
        turn.pause = true;
        turn.pause_words = first;
        turn.pause_cell = row.cells.front();
        cells.clear();
      }
      out.turns.push_back(std::move(turn));
      out.cells.push_back(std::move(cells));
    }
    return out;
  }

  bool same_pause(const std::vector<Cell>& cells) const {
    std::set<std::string> found;
    for (const Cell& cell : cells) {
      if (!cell.empty()) found.insert(lower_ascii(text(cell)));
    }
    return found.size() == 1 && cells.size() > 1 && within(words_.pauses, *found.begin());
  }

  // Names in front of rows, the clock across.
  std::optional<Table> across(const std::vector<Cell>& times,
                              const std::vector<RawRow>& rows) const {
    Table out;
    for (const RawRow& row : rows) out.names.push_back(row.label);
    for (std::size_t t = 0; t < times.size(); ++t) {
      TableTurn turn;
      turn.label = times[t];
      if (const auto clock = read_clock(text(times[t]))) turn.clock = clock->clock;
      turn.line = source_.line_column(times[t].begin).line;
      std::vector<Cell> cells;
      for (const RawRow& row : rows) cells.push_back(t < row.cells.size() ? row.cells[t] : Cell());
      const auto filled =
          std::find_if(cells.begin(), cells.end(), [](const Cell& c) { return !c.empty(); });
      const bool lone =
          is_across(cells) && cells.size() > 1 && within(words_.pauses, text(*filled));
      const bool title = within(words_.pauses, text(times[t])) && !turn.clock;
      if (lone || same_pause(cells) || title) {
        turn.pause = true;
        turn.pause_cell = filled == cells.end() ? times[t] : *filled;
        turn.pause_words = text(turn.pause_cell);
        cells.clear();
      }
      out.turns.push_back(std::move(turn));
      out.cells.push_back(std::move(cells));
    }
    return out;
  }

  // A row's cells under the names they stand below.
  std::vector<Cell> aligned(const std::vector<Cell>& head, const std::vector<Cell>& cells) const {
    std::vector<Cell> out(head.size());
    if (cells.size() >= head.size()) {
      std::copy_n(cells.begin(), head.size(), out.begin());
      return out;
    }
    for (const Cell& cell : cells) {
      std::size_t best = 0;
      const auto off = [&](std::size_t i) {
        const std::size_t a = head[i].column;
        return a > cell.column ? a - cell.column : cell.column - a;
      };
      for (std::size_t i = 1; i < head.size(); ++i) {
        if (off(i) < off(best)) best = i;
      }
      out[best] = cell;
    }
    return out;
  }

  // From a head and rows of which nothing is known but their cells.
  std::optional<Table> make(std::vector<Cell> head, std::vector<RawRow> rows) const {
    const auto times =
        std::count_if(head.begin(), head.end(), [&](const Cell& cell) { return is_time(cell); });
    std::size_t clocks = 0;
    std::size_t read = 0;
    for (const RawRow& row : rows) {
      clocks += row.clock || is_time(row.label) ? 1 : 0;
      read += row.clock ? 1 : 0;
    }
    // Groups may be numbers: what stands over rows with a clock names no turns.
    const auto clocks_above =
        std::count_if(head.begin(), head.end(), [&](const Cell& cell) { return is_clock(cell); });
    const bool times_above = times > 1 && times * 2 >= static_cast<std::ptrdiff_t>(head.size()) &&
                             (clocks_above > 1 || read * 2 < rows.size());
    Table out;
    if (times_above) {
      for (RawRow& row : rows) take_label(row);
      std::optional<Cell> corner;
      const auto longest = std::max_element(
          rows.begin(), rows.end(),
          [](const auto& a, const auto& b) { return a.cells.size() < b.cells.size(); });
      if (head.size() > longest->cells.size() && !is_time(head.front())) {
        corner = head.front();
        head.erase(head.begin());
      }
      for (RawRow& row : rows) row.cells = aligned(head, row.cells);
      auto made = across(head, rows);
      if (made && corner) made->corner = *corner;
      return made;
    }
    if (clocks * 2 < rows.size()) {
      // No clock anywhere: rows are turns in order where the first column's words come again.
      if (!first_column_is_label(rows)) return down(head, rows);
      for (RawRow& row : rows) take_label(row);
    }
    std::optional<Cell> corner;
    const auto longest = std::max_element(
        rows.begin(), rows.end(),
        [](const auto& a, const auto& b) { return a.cells.size() < b.cells.size(); });
    if (head.size() > longest->cells.size() || (head.size() > 1 && head.front().empty())) {
      corner = head.front();
      head.erase(head.begin());
    }
    auto made = down(head, rows);
    if (made && corner) made->corner = *corner;
    return made;
  }

 private:
  static void take_label(RawRow& row) {
    if (!row.label.empty() || row.cells.empty()) return;
    row.label = row.cells.front();
    row.cells.erase(row.cells.begin());
  }
  bool first_column_is_label(const std::vector<RawRow>& rows) const {
    std::set<std::string> elsewhere;
    for (const RawRow& row : rows) {
      for (std::size_t i = 1; i < row.cells.size(); ++i)
        elsewhere.insert(lower_ascii(text(row.cells[i])));
    }
    std::size_t again = 0;
    for (const RawRow& row : rows)
      again +=
          !row.cells.empty() && elsewhere.contains(lower_ascii(text(row.cells.front()))) ? 1 : 0;
    return again * 2 < rows.size();
  }

  const Source& source_;
  const Words& words_;
};

class TableFinder {
 public:
  TableFinder(const Source& source, const std::vector<Line>& lines, const Words& words)
      : source_(source), lines_(lines), words_(words), make_(source, words) {}

  std::vector<Table> run() {
    for (std::size_t i = 0; i < lines_.size();) {
      std::size_t end = i;
      std::optional<Table> found = pipes(i, end);
      if (!found) found = columns(i, end);
      if (!found) found = pair_lines(source_, lines_, words_, i, end);
      if (!found) found = spaces(i, end);
      if (!found) {
        ++i;
        continue;
      }
      for (std::size_t k = i; k < end; ++k) {
        if (!lines_[k].blank) found->lines.push_back(lines_[k].number);
      }
      out_.push_back(std::move(*found));
      i = std::max(end, i + 1);
    }
    return std::move(out_);
  }

 private:
  std::optional<Table> pipes(std::size_t at, std::size_t& end) const {
    std::size_t stop = at;
    while (stop < lines_.size() && stop <= at + kMostRows && lines_[stop].pipe) ++stop;
    if (stop < at + 3 || stop > at + kMostRows) return std::nullopt;
    std::vector<RawRow> rows;
    for (std::size_t i = at + 1; i < stop; ++i) {
      if (lines_[i].rule) continue;
      RawRow row{lines_[i].number, std::nullopt, {}, lines_[i].cells};
      if (!row.cells.empty() && make_.is_time(row.cells.front())) {
        row.label = row.cells.front();
        if (const auto clock = read_clock(make_.text(row.label))) row.clock = clock->clock;
        row.cells.erase(row.cells.begin());
      }
      rows.push_back(std::move(row));
    }
    if (rows.empty()) return std::nullopt;
    auto made = make_.make(lines_[at].cells, rows);
    if (!made || !is_grid(*made)) return std::nullopt;
    end = stop;
    return made;
  }

  // Every turn has a name that comes again in another turn: a grid, no list of drills.
  bool is_grid(const Table& table) const {
    std::multiset<std::string> all;
    std::size_t turns = 0;
    std::size_t longest = 0;
    for (std::size_t t = 0; t < table.turns.size(); ++t) {
      if (table.turns[t].pause) continue;
      ++turns;
      std::set<std::string> own;
      for (const Cell& cell : table.cells[t]) {
        if (cell.empty()) continue;
        const std::string text = lower_ascii(make_.text(cell));
        longest = std::max(longest, text.size());
        if (!is_rest(words_, text)) own.insert(text);
      }
      all.insert(own.begin(), own.end());
    }
    if (turns < 2 || table.names.size() < 2 || longest > 40) return false;
    std::size_t again = 0;
    std::set<std::string> different(all.begin(), all.end());
    for (const std::string& one : different) again += all.count(one) > 1 ? 1 : 0;
    return different.size() > 1 && again * 2 >= different.size();
  }

  bool open(std::size_t i) const {
    const Line& line = lines_[i];
    return !line.blank && !line.pipe && line.hashes == 0 && line.end - line.begin < 200;
  }

  std::optional<Table> columns(std::size_t at, std::size_t& end) const {
    if (!open(at) || wide(at) < 2) return std::nullopt;
    const bool clocks = std::all_of(lines_[at].cells.begin(), lines_[at].cells.end(),
                                    [&](const Cell& cell) { return make_.is_clock(cell); });
    if (lines_[at].clock && !clocks) return std::nullopt;  // a part with its clock, no head
    const bool across = clocks && wide(at) > 1;  // `4.25  5.10  6.05` over the rows of groups
    std::vector<std::size_t> found;
    for (std::size_t i = at; i < std::min(lines_.size(), at + kMostRows); ++i) {
      if (across && i > at && lines_[i].clock) break;
      if (lines_[i].blank && i + 1 < lines_.size() && open(i + 1) && wide(i + 1) > 2 &&
          lines_[i + 1].clock.has_value() == lines_[found.back()].clock.has_value() &&
          !is_head(i + 1) && found.size() > 1)
        continue;
      if (!open(i) || (found.size() > 2 && lines_[found.back()].clock && is_head(i))) break;
      if (lines_[i].rule) continue;
      if (wide(i) < 2 && !lines_[i].clock) break;
      found.push_back(i);
    }
    // What stands behind the grid with a clock of its own is a part, no row; `12.00 LUNCH` is one.
    while (found.size() > 1 && wide(found.back()) < 3 && lines_[found.back()].cells.size() < 2 &&
           !within(words_.pauses, lines_[found.back()].words(source_)))
      found.pop_back();
    if (found.size() < 3) return std::nullopt;
    std::vector<RawRow> rows;
    std::vector<Cell> head = lines_[found[0]].cells;
    if (lines_[found[0]].clock) head.insert(head.begin(), lines_[found[0]].label);
    for (std::size_t i = 1; i < found.size(); ++i) {
      const Line& line = lines_[found[i]];
      RawRow row{line.number, line.clock, line.label, line.cells};
      if (!row.clock && !row.cells.empty() && make_.is_time(row.cells.front())) {
        row.label = row.cells.front();
        row.cells.erase(row.cells.begin());
      }
      rows.push_back(std::move(row));
    }
    auto made = make_.make(std::move(head), std::move(rows));
    if (!made || !is_grid(*made)) return std::nullopt;
    end = found.back() + 1;
    return made;
  }
  // Cells, the clock one of them.
  std::size_t wide(std::size_t i) const {
    return lines_[i].cells.size() + (lines_[i].clock ? 1 : 0);
  }
  // A line of names over a clock of its own.
  bool is_head(std::size_t i) const {
    return !lines_[i].clock && lines_[i].cells.size() > 2 && i + 1 < lines_.size() &&
           lines_[i + 1].clock.has_value();
  }

  // `9.25 A B C D` below `vault bars beam floor`: one space between cells.
  std::optional<Table> spaces(std::size_t at, std::size_t& end) const {
    if (!open(at) || lines_[at].clock) return std::nullopt;
    std::vector<Cell> head = pieces(lines_[at].text, lines_[at].end);
    if (head.size() < 2 || head.size() > 12) return std::nullopt;
    std::vector<RawRow> rows;
    std::size_t stop = at + 1;
    std::size_t full = 0;
    for (; stop < std::min(lines_.size(), at + kMostRows); ++stop) {
      const Line& line = lines_[stop];
      if (line.blank && rows.size() < 1) continue;
      if (!open(stop) || !line.clock) break;
      const std::vector<Cell> cells = pieces(line.text, line.end);
      const bool fits = cells.size() == head.size() || cells.size() + 1 == head.size();
      const bool pause = within(words_.pauses, line.words(source_));
      if (!fits && !pause) break;
      full += fits && !pause ? 1 : 0;
      rows.push_back(
          {line.number, line.clock, line.label,
           pause && !fits ? std::vector<Cell>{trimmed(source_, line.text, line.end)} : cells});
    }
    if (full < 2) return std::nullopt;
    auto made = make_.make(std::move(head), std::move(rows));
    if (!made || !is_grid(*made)) return std::nullopt;
    end = stop;
    return made;
  }
  std::vector<Cell> pieces(std::uint32_t begin, std::uint32_t end) const {
    const std::string_view all = source_.text();
    const std::string_view text = all.substr(begin, end - begin);
    char mark = ' ';
    for (const char c : {'|', ';', ',', '/'}) {
      if (text.find(c) != std::string_view::npos) {
        mark = c;
        break;
      }
    }
    std::vector<Cell> out;
    std::uint32_t from = begin;
    for (std::uint32_t i = begin; i <= end; ++i) {
      const bool cut = i == end || all[i] == mark || (mark == ' ' && all[i] == '\t');
      if (!cut) continue;
      const Cell cell = trimmed(source_, from, i);
      if (!cell.empty()) out.push_back(cell);
      from = i + 1;
    }
    return out;
  }

  const Source& source_;
  const std::vector<Line>& lines_;
  const Words& words_;
  TableMaker make_;
  std::vector<Table> out_;
};

}  // namespace

bool is_station(const Words& words, std::string_view text) {
  const std::vector<Token> tokens = tokens_of(text);
  if (tokens.empty() || tokens.size() > 7) return false;
  for (std::size_t at = 0; at < tokens.size(); ++at) {
    if (match(words.stations, tokens, at) > 0) return true;
  }
  return false;
}

bool is_turn_label(const Words& words, std::string_view text) {
  const std::vector<Token> tokens = tokens_of(text);
  if (tokens.empty() || tokens.size() > 4) return false;
  std::size_t at = match(words.turns, tokens, 0);
  if (at == tokens.size()) return false;
  if (match(words.first, tokens, at) > 0) return true;
  // `R1` is one token
  const std::string& last = tokens[at].text;
  const std::size_t digit = last.find_first_of("0123456789");
  if (digit == std::string::npos) return false;
  const bool one =
      last.find_first_not_of("0123456789", digit) == std::string::npos && last.size() < digit + 3;
  if (!one) return false;
  if (digit == 0)
    return tokens.size() == at + 1 || tokens[at + 1].text == "." || tokens[at + 1].text == ")" ||
           tokens[at + 1].text == "st" || tokens[at + 1].text == "nd" ||
           tokens[at + 1].text == "rd" || tokens[at + 1].text == "th";
  return match(words.turns, {{last.substr(0, digit), 0, digit}}, 0) == 1;
}

bool is_rest(const Words& words, std::string_view text) {
  const std::vector<Token> tokens = tokens_of(text);
  if (tokens.empty()) return true;
  return match(words.rest, tokens, 0) == tokens.size();
}

std::vector<Table> tables_of(const Source& source, const std::vector<Line>& lines,
                             const Words& words) {
  return TableFinder(source, lines, words).run();
}

}  // namespace chalkleaf::rota
