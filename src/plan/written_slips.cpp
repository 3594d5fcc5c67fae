// See the header.
#include "plan/written_slips.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>

#include "base/text.h"
#include "plan/lines.h"

namespace chalkleaf::plan {
namespace {

constexpr std::size_t kLongestLine = 300;  // bytes of a line; what is longer is an essay

bool names_picture(std::string_view path) {
  const std::string lower = lower_ascii(path);
  return lower.ends_with(".png") || lower.ends_with(".jpg") || lower.ends_with(".jpeg");
}

std::string address(std::string_view path) {
  const bool space = path.find(' ') != std::string_view::npos;
  return space ? fmt::format("<{}>", path) : std::string(path);
}

struct Slip {
  std::string message;
  std::string hint;
};

Slip picture(std::string message, std::string_view words, std::string_view path) {
  words = trim(words);
  return {std::move(message),
          fmt::format("write `![{}]({})`", words.empty() ? "what it shows" : words,
                      address(trim(path)))};
}

// `![x](my picture.png)`, `![x] (a.png)`, `!(a.png)`, `![[a.png]]`, `a.png`
std::optional<Slip> picture_slip(std::string_view raw) {
  constexpr const char* kNone = "this is not yet a picture";
  if (raw.starts_with("![[") && raw.ends_with("]]")) {
    const std::string_view path = raw.substr(3, raw.size() - 5);
    return names_picture(path) ? std::optional(picture(kNone, "", path)) : std::nullopt;
  }
  if (raw.starts_with("!(") && raw.ends_with(")")) {
    return picture(kNone, "", raw.substr(2, raw.size() - 3));
  }
  const std::size_t open = raw.find("![");
  if (open == std::string_view::npos) {
    const bool path = names_picture(raw) && raw.find(' ') == std::string_view::npos;
    return path ? std::optional(picture(kNone, "", raw)) : std::nullopt;
  }
  const std::size_t close = raw.find(']', open);
  if (close == std::string_view::npos) return std::nullopt;
  const std::string_view words = raw.substr(open + 2, close - open - 2);
  const std::string_view behind = raw.substr(close + 1);
  const std::string_view tail = trim(behind);
  if (!tail.starts_with('(')) return std::nullopt;
  const std::size_t end = tail.find(')');
  if (end == std::string_view::npos) return std::nullopt;
  const std::string_view path = trim(tail.substr(1, end - 1));
  if (path.starts_with('<') || !names_picture(path)) return std::nullopt;
  if (path.find(' ') != std::string_view::npos) {
    return picture("the address of a picture cannot have a space as it is", words, path);
  }
  if (tail.size() != behind.size() && behind.starts_with(' ')) return picture(kNone, words, path);
  return std::nullopt;
}

bool is_row(std::string_view raw) {
  return raw.size() > 2 && raw.starts_with('|') && raw.find('|', 1) != std::string_view::npos;
}

std::size_t columns_of(std::string_view raw) {
  const auto bars = static_cast<std::size_t>(std::count(raw.begin(), raw.end(), '|'));
  return raw.ends_with('|') ? bars - 1 : bars;
}

bool is_rule(std::string_view raw) {
  return is_row(raw) && raw.find_first_not_of("|-: ") == std::string_view::npos;
}

// The first line of a table that is none.
Slip table(std::string_view titles, std::string_view below) {
  std::string rule = "|";
  const std::size_t columns = std::min<std::size_t>(columns_of(titles), 20);
  for (std::size_t i = 0; i < columns; ++i) rule += "---|";
  if (is_rule(below)) {
    return {fmt::format("the line below these titles has {} columns, and they have {}",
                        columns_of(below), columns_of(titles)),
            fmt::format("write `{}` below the titles", rule)};
  }
  return {"this table has no line below its titles",
          fmt::format("write `{}` below its first line, and an empty line before it", rule)};
}

}  // namespace

void report_written_slips(const source::MarkNode& paragraph, Diagnostics& diagnostics) {
  const std::string_view all = paragraph.text.str();
  const bool look = all.find('|') != std::string_view::npos ||
                    all.find('!') != std::string_view::npos || names_picture(trim(all));
  if (!look || paragraph.span.text().size() > kLongestLine * 100) return;
  bool in_table = false;
  const std::vector<ParagraphLine> lines = lines_in(paragraph);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string_view raw = trim(lines[i].raw);
    const bool row = is_row(raw) && raw.size() <= kLongestLine;
    std::optional<Slip> slip;
    if (row && !in_table) {
      slip = table(raw, i + 1 < lines.size() ? trim(lines[i + 1].raw) : "");
    } else if (!row && raw.size() <= kLongestLine) {
      slip = picture_slip(raw);
    }
    in_table = row;
    if (slip) diagnostics.error(kBadValue, lines[i].span, slip->message, slip->hint);
  }
}

}  // namespace chalkleaf::plan
