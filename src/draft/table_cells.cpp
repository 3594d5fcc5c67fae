// See the header.
#include "draft/table_cells.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::draft {
namespace {

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

// `Forward roll | 4 turns each | |`, without a bar in front
std::vector<Cell> cut_cells(const Source& source, const Line& line, char mark) {
  std::vector<Cell> out;
  const std::string_view all = source.text();
  std::uint32_t from = line.begin;
  for (std::uint32_t at = line.begin; at <= line.end; ++at) {
    if (at < line.end && all[at] != mark) continue;
    const Cell cell = trimmed(source, {from, at});
    if (at < line.end || cell.end > cell.begin) out.push_back(cell);
    from = at + 1;
  }
  return out;
}

}  // namespace

std::string_view row_of(const Source& source, const Line& line) {
  return source.text().substr(line.begin, line.end - line.begin);
}

std::string_view text_of(const Source& source, const Cell& cell) {
  return source.text().substr(cell.begin, cell.end - cell.begin);
}

std::size_t bars_in(const Source& source, const Line& line) {
  const std::string_view row = row_of(source, line);
  return static_cast<std::size_t>(std::count(row.begin(), row.end(), '|'));
}

std::vector<Cell> columns_of(const Source& source, const Line& line) {
  std::vector<Cell> out;
  const std::string_view all = source.text();
  if (bars_in(source, line) > 1) return cut_cells(source, line, '|');
  if (line.cut != 0) return cut_cells(source, line, line.cut);
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
  if (line.cut != 0 || (at < line.end && all[at] != '|')) return columns_of(source, line);
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

// `1`, `12`, `a`, `b.`
bool is_ordinal(std::string_view text) {
  if (!text.empty() && (text.back() == '.' || text.back() == ')')) text.remove_suffix(1);
  if (text.size() == 1 && is_letter(text[0])) return true;
  return !text.empty() && text.size() < 3 &&
         text.find_first_not_of("0123456789") == std::string_view::npos;
}

bool is_delimiter(std::string_view row) {
  return row.find('-') != std::string_view::npos &&
         row.find_first_not_of("|:- \t") == std::string_view::npos;
}

}  // namespace chalkleaf::draft
