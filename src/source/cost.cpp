#include "source/cost.h"

#include <algorithm>

namespace chalkleaf::source {
namespace {

std::size_t occurrences(std::string_view text, std::string_view wanted) {
  std::size_t count = 0;
  for (std::size_t at = text.find(wanted); at != std::string_view::npos;
       at = text.find(wanted, at + 1))
    ++count;
  return count;
}

// How many quotes and lists a line opens, at least about: its leading marks with a space behind
// them.
std::size_t openings(std::string_view line) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (line[i] == ' ' || line[i] == '\t') continue;
    const bool mark = line[i] == '-' || line[i] == '*' || line[i] == '+' || line[i] == '>';
    if (!mark) break;
    ++count;
  }
  return count;
}

struct Shape {
  std::size_t longest_definition = 0;  // of a link: `[name]: address`
  std::size_t deepest = 0;
  std::size_t lines = 0;
};

Shape shape_of(std::string_view text) {
  Shape out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    const std::string_view line = text.substr(0, end);
    const bool defines =
        line.find('[') < line.find("]:") && line.find("]:") != std::string_view::npos;
    if (defines) out.longest_definition = std::max(out.longest_definition, line.size());
    out.deepest = std::max(out.deepest, openings(line));
    ++out.lines;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

}  // namespace

std::optional<std::string> costly_shape(std::string_view text) {
  constexpr std::size_t kMostExpanded =
      16 * 1024 * 1024;  // bytes, if every bracket used the longest definition
  constexpr std::size_t kMostWalked = 4'000'000;  // open blocks asked, line by line
  constexpr std::size_t kMostOpenings = 2'000;    // of HTML
  const Shape shape = shape_of(text);
  if (shape.longest_definition * occurrences(text, "[") > kMostExpanded) {
    return "its links would take more memory than a plan may";
  }
  if (shape.deepest > 64 && shape.deepest * shape.lines > kMostWalked) {
    return "its lists and quotes lie deeper in each other than a plan's may";
  }
  if (occurrences(text, "<?") + occurrences(text, "<!") > kMostOpenings) {
    return "it opens more HTML than a plan may";
  }
  return std::nullopt;
}

}  // namespace chalkleaf::source
