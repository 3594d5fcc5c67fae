// See the header.
#include "source/front_matter.h"

#include "base/text.h"

namespace chalkleaf::source {
namespace {

bool is_fence(std::string_view line) {
  while (line.ends_with(' ') || line.ends_with('\t')) line.remove_suffix(1);
  return line == "---" || line == "...";
}

}  // namespace

std::uint32_t byte_order_mark(std::string_view text) {
  return text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
}

Split split_front_matter(const Source& source, Diagnostics& diagnostics) {
  const std::uint32_t mark = byte_order_mark(source.text());
  Split out{false, {&source, mark, mark}, mark};
  std::string_view first = source.line(1);
  first.remove_prefix(std::min<std::size_t>(mark, first.size()));
  if (!is_fence(first) || first.starts_with('.')) return out;

  out.has_front = true;
  out.front.begin = source.line_start(2);
  std::uint32_t stop = 0;  // the first line that cannot be front matter, should no end be found
  for (std::uint32_t line = 2; line <= source.line_count(); ++line) {
    const std::string_view text = source.line(line);
    if (is_fence(text)) {
      out.front.end = source.line_start(line);
      out.body_begin = source.line_start(line + 1);
      return out;
    }
    const bool heading = text.starts_with("# ") || text.starts_with("## ");
    if (stop == 0 && (trim(text).empty() || heading)) stop = line;
  }
  if (stop == 0) stop = source.line_count() + 1;
  out.front.end = out.body_begin = source.line_start(stop);
  const Span opening{&source, mark, mark + 3};
  diagnostics.error("bad-value", opening, "the front matter that begins here is not closed",
                    "put a line of three hyphens, `---`, after its last entry");
  return out;
}

}  // namespace chalkleaf::source
