// See the header.
#include "source/front_matter.h"

#include <algorithm>

#include "base/text.h"
#include "source/read.h"

namespace chalkleaf::source {
namespace {

bool is_exact_fence(std::string_view line) {
  while (line.ends_with(' ') || line.ends_with('\t')) line.remove_suffix(1);
  return line == "---" || line == "...";
}

// `key: value`
bool is_entry(std::string_view line) {
  line = trim(line);
  const std::size_t colon = line.find(':');
  if (colon == 0 || colon == std::string_view::npos || colon > 24) return false;
  return std::all_of(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(colon), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || c == ' ';
  });
}

bool is_heading(std::string_view line) { return line.starts_with("# ") || line.starts_with("## "); }

/// Finds the first and the last line of a file's front matter.
class Finder {
 public:
  Finder(const Source& source, std::uint32_t mark) : source_(source), mark_(mark) {}

  // The first line that is not empty.
  std::uint32_t first() const {
    std::uint32_t number = 1;
    while (number < source_.line_count() && trim(line(number)).empty()) ++number;
    return number;
  }

  std::string_view line(std::uint32_t number) const {
    std::string_view out = source_.line(number);
    if (number == 1) out.remove_prefix(std::min<std::size_t>(mark_, out.size()));
    return out;
  }

  // Anything but `---` on the very first line counts only with an entry below it.
  bool opens(std::uint32_t number) const {
    const std::string_view text = line(number);
    if (number == 1 && is_exact_fence(text)) return !text.starts_with('.');
    return is_loose_fence(text) && number < source_.line_count() && is_entry(line(number + 1));
  }

  // The line that ends the entries which begin at `number`; 0 when there is none.
  std::uint32_t closing(std::uint32_t number) const {
    std::uint32_t loose = 0;
    for (std::uint32_t n = number; n <= source_.line_count(); ++n) {
      const std::string_view text = line(n);
      if (is_exact_fence(text)) return loose == 0 ? n : loose;
      // Behind a heading dashes are a rule of the body; a `---` there still ends the block.
      if (is_heading(text) && loose != 0) return loose;
      if (loose == 0 && is_loose_fence(text)) loose = n;
    }
    return loose;
  }

 private:
  const Source& source_;
  std::uint32_t mark_;
};

// What a file lacks that begins with entries but not with `---`.
enum class Lacks { kNothing, kOpening, kBoth };
Lacks lacking(const Finder& finder, std::uint32_t first, std::uint32_t last) {
  constexpr std::uint32_t kMostEntries = 60;
  bool known = false;
  std::uint32_t n = first;
  for (; n <= last && n < first + kMostEntries; ++n) {
    const std::string_view text = finder.line(n);
    if (n > first && is_loose_fence(text)) return known ? Lacks::kOpening : Lacks::kNothing;
    if (trim(text).empty() || is_heading(text)) break;
    const bool indented = text.starts_with(' ') && n > first;
    if (!is_entry(text) && !indented) return Lacks::kNothing;
    for (const std::string_view key : {"title:", "place:", "group:", "slot:"}) {
      known = known || starts_with_ignoring_case(text, key);
    }
  }
  return known ? Lacks::kBoth : Lacks::kNothing;
}

}  // namespace

bool is_loose_fence(std::string_view line) {
  line = trim(line);
  std::size_t hyphens = 0;
  std::size_t long_dashes = 0;
  while (!line.empty()) {
    const Decoded c = decode_utf8(line, 0);
    if (c.code == '-') {
      ++hyphens;
    } else if ((c.code >= 0x2010 && c.code <= 0x2015) || c.code == 0x2212) {
      ++long_dashes;
    } else {
      return false;
    }
    line.remove_prefix(c.size);
  }
  return long_dashes > 0 || hyphens >= 3;
}

std::uint32_t byte_order_mark(std::string_view text) {
  return text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
}

Split split_front_matter(const Source& source, Diagnostics& diagnostics) {
  const std::uint32_t mark = byte_order_mark(source.text());
  Split out{false, {&source, mark, mark}, mark};
  const Finder finder(source, mark);
  const std::uint32_t first = finder.first();
  const bool opened = finder.opens(first);
  const Lacks lacks = opened ? Lacks::kNothing : lacking(finder, first, source.line_count());
  if (!opened && lacks == Lacks::kNothing) return out;

  const std::uint32_t entries = opened ? first + 1 : first;  // the first line inside the block
  const std::uint32_t begin = std::max(mark, source.line_start(first));
  const Span where{&source, begin, begin + static_cast<std::uint32_t>(finder.line(first).size())};
  const Span above{&source, begin, begin};
  if (lacks == Lacks::kOpening) {
    Diagnostic open{Severity::kError, kBadValue, where,
                    "the front matter has no line `---` before it"};
    open.hint = "put a line of three hyphens, `---`, above this line";
    open.edits.push_back({above, "---\n"});
    diagnostics.add(std::move(open));
  }
  out.has_front = true;
  out.front.begin = std::max(mark, source.line_start(entries));
  const std::uint32_t last = lacks == Lacks::kBoth ? 0 : finder.closing(entries);
  if (last != 0) {
    out.front.end = std::max(out.front.begin, source.line_start(last));
    out.body_begin = source.line_start(last + 1);
    return out;
  }
  // No end: it is taken to end at the first line that cannot be front matter.
  std::uint32_t stop = entries;
  while (stop <= source.line_count() && !trim(source.line(stop)).empty() &&
         !is_heading(source.line(stop))) {
    ++stop;
  }
  out.front.end = out.body_begin = std::max(out.front.begin, source.line_start(stop));
  const Span below{&source, out.front.end, out.front.end};
  Diagnostic closed{Severity::kError, kBadValue, where,
                    "the front matter that begins here is not closed"};
  closed.hint = "put a line of three hyphens, `---`, after its last entry";
  if (lacks == Lacks::kBoth) {
    closed.message = "the front matter has no lines `---` round it";
    closed.hint =
        "put a line of three hyphens, `---`, above this line, and another one after the last entry";
    closed.edits.push_back({above, "---\n"});
  }
  closed.edits.push_back({below, "---\n"});
  diagnostics.add(std::move(closed));
  return out;
}

}  // namespace chalkleaf::source
