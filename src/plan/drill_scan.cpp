// drill_names_in of plan/library.h: a drill's names without reading its file.
//
// A plan needs a few drills of a library of hundreds, and reading YAML and Markdown of all of them
// took longer than the plan. Only front matter as most people write it is taken: `key: value` on
// each line, names of plain letters. Whatever could mean something else to YAML gives nothing, and
// the file is read to know. Tested by tests/plan/drill_scan_test.cpp, against reading.
#include <algorithm>

#include "base/text.h"
#include "plan/library.h"

namespace chalkleaf::plan {
namespace {

constexpr std::size_t kMostScannedNames = 20;  // as many as a drill may have

bool is_small(char c) { return c >= 'a' && c <= 'z'; }
bool is_plain(char c) {
  return is_small(c) || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ' || c == '-' ||
         c == ',' || c == '(' || c == ')' || c == '/' || c == '\'';
}

// What YAML takes for text that ends with its line.
bool ends_with_its_line(std::string_view value) {
  if (value.empty()) return true;  // a list or a map may follow, indented
  switch (value.front()) {
    case '[':
      return value.back() == ']' && value.find('"') == std::string_view::npos &&
             value.find('\'') == std::string_view::npos;
    case '{':
      return value.back() == '}' && value.find('"') == std::string_view::npos &&
             value.find('\'') == std::string_view::npos;
    case '"':
      return value.size() > 1 && value.back() == '"' &&
             std::count(value.begin(), value.end(), '"') == 2;
    case '\'':
    case '|':
    case '>':
    case '&':
    case '*':
    case '!':
    case '?':
    case '%':
    case '@':
    case '`':
      return false;
    default:
      return true;
  }
}

// Plain words that YAML and our readers take as they stand.
bool is_name(std::string_view value) {
  const bool begins = !value.empty() && value.front() != ' ' && value.front() != '-' &&
                      value.front() != ',' && value.front() != '\'';
  return begins && std::all_of(value.begin(), value.end(), is_plain);
}

std::vector<std::string> pieces(std::string_view value) {
  std::vector<std::string> out;
  for (std::size_t at = 0; at < value.size();) {
    const std::size_t stop = std::min(value.find(',', at), value.size());
    const std::string_view piece = trim(value.substr(at, stop - at));
    if (!piece.empty()) out.emplace_back(piece);
    at = stop + 1;
  }
  return out;
}

}  // namespace

std::optional<DrillNames> drill_names_in(std::string_view text) {
  constexpr std::string_view kFence = "---\n";
  if (!text.starts_with(kFence)) return std::nullopt;
  text.remove_prefix(kFence.size());
  DrillNames out;
  bool has_also = false;
  while (!text.starts_with(kFence)) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return std::nullopt;
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(end + 1);
    if (line.find_first_of("\r\t") != std::string_view::npos) return std::nullopt;
    const auto colon =
        std::find_if_not(line.begin(), line.end(), [](char c) { return is_small(c) || c == '-'; });
    const auto at = static_cast<std::size_t>(colon - line.begin());
    if (at == 0 || !is_small(line.front()) || colon == line.end() || *colon != ':' ||
        line.substr(at).size() < 3 || line[at + 1] != ' ') {
      return std::nullopt;
    }
    const std::string_view key = line.substr(0, at);
    const std::string_view value = trim(line.substr(at + 2));
    if (value.empty() || !ends_with_its_line(value)) return std::nullopt;
    if (key == "title") {
      if (!out.name.empty() || !is_name(value)) return std::nullopt;
      out.name = value;
    } else if (key == "also") {
      if (has_also || !is_name(value)) return std::nullopt;
      has_also = true;
      out.also = pieces(value);
    }
  }
  if (out.name.empty() || out.also.size() > kMostScannedNames) return std::nullopt;
  return out;
}

}  // namespace chalkleaf::plan
