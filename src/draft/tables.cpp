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

std::vector<Cell> cells_of(const Source& source, const Line& line) {
  std::vector<Cell> out;
  const std::string_view all = source.text();
  std::uint32_t at = line.begin;
  while (at < line.end && all[at] != '|') ++at;
  while (at < line.end) {
    const std::uint32_t from = at + 1;
    std::uint32_t to = from;
    while (to < line.end && all[to] != '|') ++to;
    if (to == line.end && trim(all.substr(from, to - from)).empty()) break;
    Cell cell{from, to};
    while (cell.begin < cell.end && (all[cell.begin] == ' ' || all[cell.begin] == '\t'))
      ++cell.begin;
    while (cell.end > cell.begin && (all[cell.end - 1] == ' ' || all[cell.end - 1] == '\t'))
      --cell.end;
    out.push_back(cell);
    at = to;
  }
  return out;
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
    const bool headed = begin + 1 < end && is_delimiter(row_text(lines[begin + 1].line));
    for (std::size_t i = begin + (headed ? 2 : 0); i < end; ++i) {
      if (is_delimiter(row_text(lines[i].line))) continue;
      ++body;
      dosed += has_dose(lines[i].line) ? 1 : 0;
    }
    if (dosed * 2 < body || dosed == 0) return;
    for (std::size_t i = begin; i < end; ++i) {
      const bool head = headed && i < begin + 2;
      lines[i].reading = DraftLine::Reading::kTyped;
      if (!head && !is_delimiter(row_text(lines[i].line))) row(lines[i]);
    }
  }

 private:
  std::string_view row_text(const Line& line) const {
    return source_.text().substr(line.begin, line.end - line.begin);
  }
  std::string_view text(const Cell& cell) const {
    return source_.text().substr(cell.begin, cell.end - cell.begin);
  }
  // A clock in the first cell makes it a row of a timetable.
  bool has_dose(const Line& line) const {
    const std::vector<Cell> cells = cells_of(source_, line);
    if (cells.size() < 2 || read_clock(text(cells[0]))) return false;
    return std::any_of(cells.begin() + 1, cells.end(), [&](const Cell& cell) {
      const SpokenLine read = read_drills(words_, text(cell), {});
      return read.has_dose() || !read.defaults.empty();
    });
  }

  void row(DraftLine& line) {
    const std::vector<Cell> cells = cells_of(source_, line.line);
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

}  // namespace

void read_table(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines,
                std::size_t begin, std::size_t end, const Setting& setting) {
  TableReader(words, source, setting).run(lines, begin, end);
}

}  // namespace chalkleaf::draft
