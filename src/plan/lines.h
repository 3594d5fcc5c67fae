// A paragraph line by line: what each says, and how it stands in the file.
//
// Markdown runs the lines of a paragraph together; coaches write line by line. Tested by
// tests/plan/stray_lines_test.cpp.
#pragma once

#include <string_view>
#include <vector>

#include "source/tree.h"

namespace chalkleaf::plan {

/// One line of a paragraph.
struct ParagraphLine {
  std::size_t begin = 0;  ///< in the paragraph's text
  std::size_t end = 0;    ///< without the line break
  std::string_view raw;   ///< its bytes in the file, marks and all, without white space at the ends
  Span span;              ///< of `raw`
  std::size_t indent = 0;     ///< columns of white space before it, a tab going to the next fourth
  bool follows_text = false;  ///< the line above is plain text; for whoever judges the lines to say
};

/// The lines of a paragraph, the first one without what stands before the paragraph in its line.
/// A line break inside a link is none.
std::vector<ParagraphLine> lines_in(const source::MarkNode& paragraph);
/// True when the paragraph has more than one line; cheap.
bool has_several_lines(const source::MarkNode& paragraph);
/// The paragraph that a stretch of another one would be, with the links inside it.
source::MarkNode stretch_of(const source::MarkNode& paragraph, std::size_t begin, std::size_t end);
/// Appends a stretch and its links to a paragraph, right behind what is there.
void append_stretch(source::MarkNode& to, const source::MarkNode& piece);
/// True when the byte at `i` is a line break: a hard one, or a space made from a line end.
bool is_line_break(const source::Text& text, std::size_t i);
/// The columns of white space before `at` in its line, list and quote marks not among them.
std::size_t indent_of(const Source& source, std::uint32_t at);

}  // namespace chalkleaf::plan
