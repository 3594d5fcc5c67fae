// See the header.
#include "club/line_changes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <vector>

namespace chalkleaf::club {
namespace {

constexpr std::size_t kContext = 3;
constexpr std::size_t kMostCells = 16'000'000;  // of the table; larger changes are shown as one

struct Line {
  char mark = ' ';  // ' ' stays, '-' goes, '+' comes
  std::string_view text;
  bool ended = true;  // with a line break
};

std::vector<std::string_view> lines_in(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
    out.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return out;
}

Line line(char mark, std::string_view text) {
  const bool ended = text.ends_with('\n');
  return {mark, ended ? text.substr(0, text.size() - 1) : text, ended};
}

using Lines = std::vector<std::string_view>;

// The longest common subsequence of what stands between the equal begin and the equal end.
std::vector<Line> script(const Lines& before, const Lines& after) {
  std::size_t same = 0;
  while (same < std::min(before.size(), after.size()) && before[same] == after[same]) ++same;
  std::size_t tail = 0;
  while (tail < std::min(before.size(), after.size()) - same &&
         before[before.size() - 1 - tail] == after[after.size() - 1 - tail])
    ++tail;
  const std::size_t rows = before.size() - same - tail;
  const std::size_t columns = after.size() - same - tail;
  std::vector<Line> out;
  for (std::size_t i = 0; i < same; ++i) out.push_back(line(' ', before[i]));
  const bool table = (rows + 1) * (columns + 1) <= kMostCells;
  std::vector<std::uint32_t> length(table ? (rows + 1) * (columns + 1) : 0);
  const auto at = [&](std::size_t row, std::size_t column) -> std::uint32_t& {
    return length[row * (columns + 1) + column];
  };
  for (std::size_t row = table ? rows : 0; row-- > 0;) {
    for (std::size_t column = columns; column-- > 0;) {
      at(row, column) = before[same + row] == after[same + column]
                            ? at(row + 1, column + 1) + 1
                            : std::max(at(row + 1, column), at(row, column + 1));
    }
  }
  std::size_t row = 0;
  std::size_t column = 0;
  while (row < rows || column < columns) {
    if (table && row < rows && column < columns && before[same + row] == after[same + column]) {
      out.push_back(line(' ', before[same + row++]));
      ++column;
    } else if (column == columns ||
               (row < rows && (!table || at(row + 1, column) >= at(row, column + 1)))) {
      out.push_back(line('-', before[same + row++]));
    } else {
      out.push_back(line('+', after[same + column++]));
    }
  }
  for (std::size_t i = before.size() - tail; i < before.size(); ++i)
    out.push_back(line(' ', before[i]));
  return out;
}

// `12,3`, as the format has it: a count of one is left out, and of none the line before is named.
std::string range(std::size_t first, std::size_t count) {
  if (count == 1) return fmt::format("{}", first + 1);
  return fmt::format("{},{}", count == 0 ? first : first + 1, count);
}

}  // namespace

std::string line_changes(std::string_view path, std::string_view before, std::string_view after) {
  const std::vector<Line> all = script(lines_in(before), lines_in(after));
  const auto changes = [](const Line& one) { return one.mark != ' '; };
  std::string out;
  std::size_t old_line = 0;
  std::size_t new_line = 0;
  for (std::size_t at = 0; at < all.size();) {
    const auto next = static_cast<std::size_t>(
        std::find_if(all.begin() + static_cast<std::ptrdiff_t>(at), all.end(), changes) -
        all.begin());
    if (next == all.size()) break;
    const std::size_t begin = std::max(at, next - std::min(next, kContext));
    old_line += begin - at;
    new_line += begin - at;
    // Changes with no more than twice the context between them are one piece.
    std::size_t end = next + 1;
    for (std::size_t i = next; i < all.size() && i <= end + 2 * kContext; ++i) {
      if (changes(all[i])) end = i + 1;
    }
    end = std::min(end + kContext, all.size());
    std::string body;
    std::size_t goes = 0;
    std::size_t comes = 0;
    for (std::size_t i = begin; i < end; ++i) {
      goes += all[i].mark != '+' ? 1 : 0;
      comes += all[i].mark != '-' ? 1 : 0;
      body += fmt::format("{}{}\n", all[i].mark, all[i].text);
      if (!all[i].ended) body += "\\ No newline at end of file\n";
    }
    if (out.empty()) out = fmt::format("--- {0}\n+++ {0}\n", path);
    out += fmt::format("@@ -{} +{} @@\n{}", range(old_line, goes), range(new_line, comes), body);
    old_line += goes;
    new_line += comes;
    at = end;
  }
  return out;
}

}  // namespace chalkleaf::club
