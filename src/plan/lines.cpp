// See the header.
#include "plan/lines.h"

#include <algorithm>

namespace chalkleaf::plan {
namespace {

bool is_in_link(const source::MarkNode& paragraph, std::size_t i) {
  // Links are in order of their ends.
  const auto link =
      std::partition_point(paragraph.links.begin(), paragraph.links.end(),
                           [&](const source::MarkNode::Link& l) { return l.end <= i; });
  return link != paragraph.links.end() && link->begin <= i;
}

// Spaces and tabs only: a no-break space is a mistake that must be seen.
std::string_view without_spaces(std::string_view text) {
  const std::size_t begin = std::min(text.find_first_not_of(" \t\r\f\v"), text.size());
  const std::size_t end = text.find_last_not_of(" \t\r\f\v") + 1;
  return text.substr(begin, std::max(begin, end) - begin);
}

// The line of the file from `at` on.
void find_raw(const Source& source, std::uint32_t at, ParagraphLine& line) {
  const std::uint32_t number = source.line_column(at).line;
  const std::string_view whole = source.line(number);
  const std::size_t skipped = std::min<std::size_t>(at - source.line_start(number), whole.size());
  line.raw = without_spaces(whole.substr(skipped));
  const auto begin = static_cast<std::uint32_t>(line.raw.data() - source.text().data());
  line.span = {&source, begin, begin + static_cast<std::uint32_t>(line.raw.size())};
  line.indent = indent_of(source, at);
}

// Link definitions may stand before a paragraph's first line of text, and count to its place.
std::uint32_t first_byte(const source::MarkNode& paragraph) {
  const Span& span = paragraph.span;
  if (paragraph.text.empty()) return span.begin;
  const std::uint32_t text = paragraph.text.span(0, 1).begin;
  const std::uint32_t line = span.source->line_column(text).line;
  return std::max(span.begin, span.source->line_start(line));
}

}  // namespace

bool is_line_break(const source::Text& text, std::size_t i) {
  const char c = text.str()[i];
  if (c == '\n') return true;
  if (c != ' ') return false;
  return text.span(i, i + 1).text().find_first_of("\r\n") != std::string_view::npos;
}

void append_stretch(source::MarkNode& to, const source::MarkNode& piece) {
  const std::size_t at = to.text.str().size();
  to.text.append(piece.text);
  for (auto link : piece.links) {
    link.begin += at;
    link.end += at;
    to.links.push_back(std::move(link));
  }
}

std::size_t indent_of(const Source& source, std::uint32_t at) {
  std::size_t columns = 0;
  for (const char c : source.line(source.line_column(at).line)) {
    if (c == ' ') {
      ++columns;
    } else if (c == '\t') {
      columns += 4 - columns % 4;
    } else {
      break;
    }
  }
  return columns;
}

bool has_several_lines(const source::MarkNode& paragraph) {
  return paragraph.span.text().find_first_of("\r\n") != std::string_view::npos;
}

std::vector<ParagraphLine> lines_in(const source::MarkNode& paragraph) {
  const source::Text& text = paragraph.text;
  const std::size_t size = text.str().size();
  std::vector<ParagraphLine> out;
  ParagraphLine line;
  if (!paragraph.span) return out;
  find_raw(*paragraph.span.source, first_byte(paragraph), line);
  for (std::size_t i = 0; i < size; ++i) {
    if (!is_line_break(text, i) || is_in_link(paragraph, i)) continue;
    line.end = i;
    out.push_back(line);
    line = {};
    line.begin = i + 1;
    // The break's bytes go to the next line's first; those of quote marks belong to the line.
    const Span gap = text.span(i, i + 1);
    std::uint32_t at = gap.end;
    while (at > gap.begin) {
      const char c = gap.source->text()[at - 1];
      if (c == '\n' || c == '\r') break;
      --at;
    }
    find_raw(*gap.source, at, line);
  }
  line.end = size;
  out.push_back(line);
  return out;
}

source::MarkNode stretch_of(const source::MarkNode& paragraph, std::size_t begin, std::size_t end) {
  source::MarkNode out;
  out.kind = source::MarkNode::Kind::kParagraph;
  out.text = paragraph.text.slice(begin, end);
  out.span = out.text.span();
  auto link = std::partition_point(paragraph.links.begin(), paragraph.links.end(),
                                   [&](const source::MarkNode::Link& l) { return l.end < begin; });
  for (; link != paragraph.links.end() && link->end <= end; ++link) {
    if (link->begin < begin) continue;
    out.links.push_back(*link);
    out.links.back().begin -= begin;
    out.links.back().end -= begin;
    out.span = out.span.joined(link->span);
  }
  return out;
}

}  // namespace chalkleaf::plan
