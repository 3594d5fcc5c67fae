// See the header.
#include "draft/tables.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::draft {
namespace {

/// A cell: bytes of the file, trimmed.
struct Cell {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
};

std::string_view text_of(const Source& source, const Cell& cell) {
  return source.text().substr(cell.begin, cell.end - cell.begin);
}

Cell trimmed(const Source& source, Cell cell) {
  const std::string_view all = source.text();
  const auto blank = [&](std::uint32_t at) { return all[at] == ' ' || all[at] == '\t'; };
  while (cell.begin < cell.end && blank(cell.begin)) ++cell.begin;
  while (cell.end > cell.begin && blank(cell.end - 1)) --cell.end;
  return cell;
}

// The bytes of a gap between two columns; 0 where there is none.
std::uint32_t gap_size(std::string_view all, std::uint32_t at, std::uint32_t end) {
  std::uint32_t size = 0;
  bool tab = false;
  while (at + size < end && (all[at + size] == ' ' || all[at + size] == '\t')) {
    tab = tab || all[at + size] == '\t';
    ++size;
  }
  return tab || size > 2 ? size : 0;
}

std::vector<Cell> columns_of(const Source& source, const Line& line) {
  std::vector<Cell> out;
  const std::string_view all = source.text();
  Cell cell = trimmed(source, {line.begin, line.end});
  const std::uint32_t end = cell.end;
  for (std::uint32_t at = cell.begin; at < end; ++at) {
    const std::uint32_t gap = gap_size(all, at, end);
    if (gap == 0) continue;
    out.push_back({cell.begin, at});
    cell.begin = at + gap;
    at += gap - 1;
  }
  out.push_back({cell.begin, end});
  return out;
}

std::vector<Cell> cells_of(const Source& source, const Line& line) {
  std::vector<Cell> out;
  const std::string_view all = source.text();
  std::uint32_t at = trimmed(source, {line.begin, line.end}).begin;
  if (at < line.end && all[at] != '|') return columns_of(source, line);
  while (at < line.end) {
    const std::uint32_t from = at + 1;
    std::uint32_t to = from;
    while (to < line.end && all[to] != '|') ++to;
    if (to == line.end && trim(all.substr(from, to - from)).empty()) break;
    out.push_back(trimmed(source, {from, to}));
    at = to;
  }
  return out;
}

bool is_ordinal(std::string_view text) {
  return !text.empty() && text.size() < 3 &&
         text.find_first_not_of("0123456789") == std::string_view::npos;
}

bool is_delimiter(std::string_view row) {
  return row.find('-') != std::string_view::npos &&
         row.find_first_not_of("|:- \t") == std::string_view::npos;
}

class TableReader {
 public:
  TableReader(const Lexicon& words, const Source& source, const Setting& setting)
      : words_(words), source_(source), setting_(setting) {}

  void run(std::vector<DraftLine>& lines, std::size_t begin, std::size_t end) {
    std::size_t body = 0;
    std::size_t dosed = 0;
    std::size_t clocks = 0;
    std::size_t minutes = 0;
    const bool headed = begin + 1 < end && is_delimiter(row_text(lines[begin + 1].line));
    for (std::size_t i = begin + (headed ? 2 : 0); i < end; ++i) {
      if (is_delimiter(row_text(lines[i].line))) continue;
      ++body;
      dosed += has_dose(lines[i].line) ? 1 : 0;
      clocks += clock_of(lines[i].line) ? 1 : 0;
      minutes += minutes_of(lines[i].line) ? 1 : 0;
    }
    // Where no row has a dose it is who is where: it stays a table.
    if (dosed == 0) return;
    const bool timetable = clocks * 2 >= body || minutes * 3 >= body * 2;
    if (!timetable && dosed * 2 < body) return;
    for (std::size_t i = begin; i < end; ++i) {
      DraftLine& line = lines[i];
      const bool head = headed && i < begin + 2;
      line.reading = DraftLine::Reading::kTyped;
      if (head || is_delimiter(row_text(line.line))) continue;
      timetable ? timed_row(line) : row(line);
    }
  }

 private:
  std::string_view row_text(const Line& line) const {
    return source_.text().substr(line.begin, line.end - line.begin);
  }
  std::string_view text(const Cell& cell) const { return text_of(source_, cell); }
  bool has_dose(const Line& line) const {
    const std::vector<Cell> cells = cells_of(source_, line);
    if (cells.size() < 2) return false;
    const std::size_t last = cells.size() - (minutes_of(line) ? 1 : 0);
    return std::any_of(cells.begin(), cells.begin() + static_cast<std::ptrdiff_t>(last),
                       [&](const Cell& cell) {
                         if (is_ordinal(text(cell))) return false;
                         const SpokenLine read = read_drills(words_, text(cell), {});
                         return read.has_dose() || !read.defaults.empty();
                       });
  }
  // `| 2.17 | Warm up: … |`
  std::optional<Clock> clock_of(const Line& line) const {
    const std::vector<Cell> cells = cells_of(source_, line);
    if (cells.size() < 2) return std::nullopt;
    const auto read = read_clock(text(cells[0]));
    return read && read->size == text(cells[0]).size() ? std::optional(read->clock) : std::nullopt;
  }
  // `Back drop, 3 turns each <tab> 15 min`
  std::optional<double> minutes_of(const Line& line) const {
    const std::vector<Cell> cells = cells_of(source_, line);
    if (cells.size() < 2) return std::nullopt;
    const Pieces pieces = pieces_of(text(cells.back()));
    const bool minutes = pieces.size() == 2 && pieces[0].is(Piece::Kind::kNumber) &&
                         (words_.is(Role::kMinute, pieces, 1, 2));
    return minutes ? std::optional(pieces[0].value) : std::nullopt;
  }

  // A row that is a part of the session: its time, what is done, what to watch for.
  void timed_row(DraftLine& line) {
    const std::vector<Cell> cells = cells_of(source_, line.line);
    const auto clock = clock_of(line.line);
    const auto minutes = minutes_of(line.line);
    if (!clock && !minutes) return row(line);
    const Cell& what = cells[clock ? 1 : 0];
    Line part = line.line;
    part.table = false;
    part.mark = Line::Mark::kNone;
    part.text = what.begin;
    part.end = what.end;
    part.clock = clock;
    line.line.clock = clock;
    line.heading = read_heading(words_, source_, part, {});
    if (minutes) line.heading.minutes = minutes;
    const Pieces pieces = pieces_of(text(what));
    const bool part_word = words_.any_of(
        {Role::kWarmUp, Role::kCoolDown, Role::kBreak, Role::kPart, Role::kStretchPart}, pieces, 0,
        pieces.size());
    if (!part_word && read_drills(words_, text(what), setting_).has_dose())
      line.heading.rest = what.begin;
    line.heading.rest_end = std::max(line.heading.rest, what.end);
    line.spoken = {};
    line.reading = DraftLine::Reading::kHeading;
    line.from = line.heading.rest;
    Setting own = setting_;
    own.stretch = line.heading.stretch;
    const Cell rest{line.heading.rest, line.heading.rest_end};
    if (!line.heading.pause) line.spoken = read_drills(words_, text(rest), own);
    for (std::size_t i = clock ? 2 : 1; i < cells.size() && !line.spoken.drills.empty(); ++i) {
      if (minutes && i + 1 == cells.size()) break;
      if (cells[i].end > cells[i].begin)
        line.spoken.drills.back().notes.emplace_back(text(cells[i]));
    }
  }

  void row(DraftLine& line) {
    std::vector<Cell> cells = cells_of(source_, line.line);
    if (!cells.empty() && is_ordinal(text(cells[0]))) cells.erase(cells.begin());
    if (cells.empty()) return;
    line.from = line.line.begin;
    const SpokenLine second = read_drills(words_, cells.size() > 1 ? text(cells[1]) : "", {});
    if (second.drills.empty() && !second.defaults.empty()) return named_row(line, cells);
    line.reading = DraftLine::Reading::kHeading;
    line.heading = {};
    line.heading.name_begin = cells[0].begin;
    line.heading.name_end = cells[0].end;
    line.heading.rest = line.heading.rest_end = line.line.end;
    line.spoken = {};
    for (std::size_t i = 1; i < cells.size(); ++i) {
      SpokenLine read = read_drills(words_, text(cells[i]), setting_);
      for (SpokenDrill& drill : read.drills) {
        shift(drill, cells[i]);
        line.spoken.drills.push_back(std::move(drill));
      }
    }
  }

  // A name, its dose, and what to watch for.
  void named_row(DraftLine& line, const std::vector<Cell>& cells) {
    line.reading = DraftLine::Reading::kDrills;
    line.spoken = {};
    SpokenDrill drill = read_named(words_, text(cells[0]), text(cells[1]), setting_);
    drill.where = {cells[0].begin - line.from, cells[1].end - line.from};
    for (std::size_t i = 2; i < cells.size(); ++i) {
      if (cells[i].end > cells[i].begin)
        drill.notes.emplace_back(replace_all(text(cells[i]), "**", ""));
    }
    line.spoken.drills.push_back(std::move(drill));
  }

  void shift(SpokenDrill& drill, const Cell& cell) const {
    const std::size_t by = cell.begin - line_begin(cell);
    drill.where.begin += by;
    drill.where.end += by;
  }
  std::uint32_t line_begin(const Cell& cell) const {
    return source_.line_start(source_.line_column(cell.begin).line);
  }

  const Lexicon& words_;
  const Source& source_;
  const Setting& setting_;
};

/// Looks for columns.
class ColumnFinder {
 public:
  ColumnFinder(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines)
      : words_(words), source_(source), lines_(lines) {}

  void run() {
    for (std::size_t i = 0; i < lines_.size();) {
      std::size_t end = i;
      while (end < lines_.size() && is_row(lines_[end])) ++end;
      if (end > i + 2) block(i, end);
      i = std::max(end, i + 1);
    }
  }

 private:
  bool is_row(const DraftLine& one) const {
    const bool open = one.reading == DraftLine::Reading::kBlank && !one.line.blank &&
                      one.grid_of == nullptr && !one.line.table && !one.line.clock &&
                      one.line.mark == Line::Mark::kNone;
    constexpr std::uint32_t kLongest = 400;
    return open && one.line.end - one.line.begin < kLongest &&
           columns_of(source_, one.line).size() > 1;
  }
  // Nothing but an amount: `3 x 12, 30 sec rest`, `10 min`.
  bool is_amount(const Cell& cell) const {
    const SpokenLine read = read_drills(words_, text_of(source_, cell), {});
    return read.drills.empty() && !read.defaults.empty();
  }

  void block(std::size_t begin, std::size_t end) {
    std::size_t amounts = 0;
    for (std::size_t i = begin; i < end; ++i) {
      const std::vector<Cell> cells = columns_of(source_, lines_[i].line);
      amounts += std::any_of(cells.begin() + 1, cells.end(),
                             [&](const Cell& cell) { return is_amount(cell); })
                     ? 1
                     : 0;
    }
    if (amounts * 3 < (end - begin) * 2) return;
    for (std::size_t i = begin; i < end; ++i) lines_[i].line.table = true;
  }

  const Lexicon& words_;
  const Source& source_;
  std::vector<DraftLine>& lines_;
};

}  // namespace

void find_columns(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines) {
  ColumnFinder(words, source, lines).run();
}

void read_table(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines,
                std::size_t begin, std::size_t end, const Setting& setting) {
  TableReader(words, source, setting).run(lines, begin, end);
}

}  // namespace chalkleaf::draft
