// See the header.
#include "source/markdown.h"

#include <cmark-gfm-core-extensions.h>
#include <cmark-gfm.h>

#include <algorithm>
#include <memory>
#include <mutex>

#include "base/text.h"
#include "source/cost.h"
#include "source/definitions.h"
#include "source/front_matter.h"
#include "source/inlines.h"
#include "source/read.h"
#include "source/read_yaml.h"

namespace chalkleaf::source {
namespace {

struct NodeEnd {
  void operator()(cmark_node* node) const { cmark_node_free(node); }
};
using NodePtr = std::unique_ptr<cmark_node, NodeEnd>;

// Registering fills a list global to the library: once, before any thread parses.
cmark_syntax_extension* table_extension() {
  static cmark_syntax_extension* extension = [] {
    cmark_gfm_core_extensions_ensure_registered();
    return cmark_find_syntax_extension("table");
  }();
  return extension;
}

NodePtr parse(std::string_view text) {
  cmark_parser* parser = cmark_parser_new(CMARK_OPT_DEFAULT | CMARK_OPT_SOURCEPOS);
  // Without them the words of a table stay.
  if (tables_are_bounded(text)) cmark_parser_attach_syntax_extension(parser, table_extension());
  cmark_parser_feed(parser, text.data(), text.size());
  NodePtr root(cmark_parser_finish(parser));
  cmark_parser_free(parser);
  return root;
}

MarkNode::Kind kind_of(cmark_node* node) {
  using Kind = MarkNode::Kind;
  const cmark_node_type type = cmark_node_get_type(node);
  if (type == CMARK_NODE_DOCUMENT) return Kind::kDocument;
  if (type == CMARK_NODE_HEADING) return Kind::kHeading;
  if (type == CMARK_NODE_LIST) return Kind::kList;
  if (type == CMARK_NODE_ITEM) return Kind::kItem;
  if (type == CMARK_NODE_BLOCK_QUOTE) return Kind::kQuote;
  if (type == CMARK_NODE_CODE_BLOCK) return Kind::kCode;
  if (type == CMARK_NODE_HTML_BLOCK) return Kind::kHtml;
  if (type == CMARK_NODE_THEMATIC_BREAK) return Kind::kRule;
  const std::string_view name = cmark_node_get_type_string(node);  // the table extension's own
  if (name == "table") return Kind::kTable;
  if (name == "table_row" || name == "table_header") return Kind::kTableRow;
  if (name == "table_cell") return Kind::kTableCell;
  return Kind::kParagraph;
}

/// Turns cmark's tree into ours.
class TreeReader {
 public:
  TreeReader(const Source& source, std::uint32_t begin)
      : source_(source), begin_(begin), first_line_(source.line_column(begin).line) {}

  MarkNode read(cmark_node* node, const Span& parent, int depth) {
    MarkNode out;
    out.kind = kind_of(node);
    out.span = out.kind == MarkNode::Kind::kDocument ? parent : span_of(node, out.kind, parent);
    switch (out.kind) {
      case MarkNode::Kind::kHeading:
        out.level = cmark_node_get_heading_level(node);
        read_inlines(node, out.span, out);
        break;
      case MarkNode::Kind::kParagraph:
      case MarkNode::Kind::kTableCell:
        read_inlines(node, out.span, out);
        if (has_no_place(node) && !out.text.empty()) out.span = out.text.span();
        break;
      case MarkNode::Kind::kCode:
      case MarkNode::Kind::kHtml:
        read_verbatim(node, out);
        break;
      case MarkNode::Kind::kRule:
        break;
      default:
        read_children(node, out, depth);
    }
    return out;
  }

 private:
  std::uint32_t offset(int line, int column) const {
    const auto number = static_cast<std::uint32_t>(std::max(line, 1)) + first_line_ - 1;
    std::uint32_t at = number == first_line_ ? begin_ : source_.line_start(number);
    at += static_cast<std::uint32_t>(std::max(column - 1, 0));
    return std::min(at, source_.line_start(number + 1));
  }

  // The text that stood right above a table's header gets a paragraph without a place.
  static bool has_no_place(cmark_node* node) {
    return cmark_node_get_type(node) == CMARK_NODE_PARAGRAPH &&
           cmark_node_get_start_line(node) == 0;
  }
  // From the block before it to the end of the table, whose own place may begin too early.
  Span place_above_table(cmark_node* node, const Span& parent) const {
    Span out = parent;
    if (cmark_node* before = cmark_node_previous(node)) {
      out.begin = std::max(out.begin, offset(cmark_node_get_end_line(before),
                                             cmark_node_get_end_column(before) + 1));
    }
    if (cmark_node* table = cmark_node_next(node)) {
      out.end = offset(cmark_node_get_end_line(table), cmark_node_get_end_column(table) + 1);
    }
    out.end = std::max(out.begin, out.end);
    return out;
  }

  // cmark's end is the last byte; column 0 means the line before, and of verbatim blocks it is
  // often wrong, so those end with the lines they have.
  Span span_of(cmark_node* node, MarkNode::Kind kind, const Span& parent) const {
    if (has_no_place(node)) return place_above_table(node, parent);
    const int first = cmark_node_get_start_line(node);
    std::uint32_t begin = offset(first, cmark_node_get_start_column(node));
    std::uint32_t end = offset(cmark_node_get_end_line(node), cmark_node_get_end_column(node) + 1);
    if (kind == MarkNode::Kind::kTableCell && cmark_node_get_start_column(node) == 0) {
      begin = end = parent.end;  // a cell the row does not have
    }
    if (kind == MarkNode::Kind::kCode || kind == MarkNode::Kind::kHtml) {
      const char* literal = cmark_node_get_literal(node);
      const auto lines =
          std::count(literal, literal + std::char_traits<char>::length(literal), '\n');
      end = std::max(end, offset(first + static_cast<int>(lines), 1));
    }
    end = std::max(begin, end);
    const std::string_view text = source_.text();
    while (end > begin && is_blank(text[end - 1])) --end;
    return {&source_, begin, end};
  }

  void read_children(cmark_node* node, MarkNode& out, int depth) {
    for (cmark_node* child = cmark_node_first_child(node); child != nullptr;
         child = cmark_node_next(child)) {
      if (depth >= kDeepestMark) {
        out.children.push_back(as_paragraph(child, out.span));
      } else {
        out.children.push_back(read(child, out.span, depth + 1));
      }
      // cmark ends some containers before their last block; ours always hold what is in them.
      out.span = out.span.joined(out.children.back().span);
    }
    if (out.kind == MarkNode::Kind::kTableRow) add_surplus_cell(out);
  }

  // Too deep to go on: the source itself as text, so that nothing vanishes.
  MarkNode as_paragraph(cmark_node* node, const Span& parent) const {
    MarkNode out;
    out.kind = MarkNode::Kind::kParagraph;
    out.span = span_of(node, out.kind, parent);
    out.text.append(out.span.text(), out.span);
    return out;
  }

  // GFM ignores cells beyond the header's; we keep them, as one more cell.
  void add_surplus_cell(MarkNode& row) const {
    if (row.children.empty()) return;
    Span rest = row.span;
    for (const MarkNode& cell : row.children) rest.begin = std::max(rest.begin, cell.span.end);
    const std::string_view text = source_.text();
    const auto is_edge = [&](std::uint32_t at) { return is_blank(text[at]) || text[at] == '|'; };
    while (rest.begin < rest.end && is_edge(rest.begin)) ++rest.begin;
    while (rest.begin < rest.end && is_edge(rest.end - 1)) --rest.end;
    if (rest.begin == rest.end) return;
    MarkNode cell;
    cell.kind = MarkNode::Kind::kTableCell;
    cell.span = rest;
    cell.text.append(rest.text(), rest);
    row.children.push_back(std::move(cell));
  }

  // Verbatim text line by line: each stands whole in the file, behind quote marks or indentation.
  void read_verbatim(cmark_node* node, MarkNode& out) const {
    std::string_view literal = cmark_node_get_literal(node);
    const std::string_view bytes = out.span.text();
    std::size_t cursor = 0;
    while (!literal.empty()) {
      std::size_t n = literal.find('\n');
      const std::string_view line = literal.substr(0, n);
      n = n == std::string_view::npos ? literal.size() : n + 1;
      // A line whose indentation was a tab is not found as it is; do not look far for it.
      const std::string_view near = bytes.substr(std::min(cursor, bytes.size()), line.size() + 256);
      const bool leading = line.empty() && cursor == 0;  // it would map to the fence
      std::size_t at = leading ? std::string_view::npos : near.find(line);
      if (at != std::string_view::npos) at += cursor;
      if (at == std::string_view::npos) {
        out.text.append(literal.substr(0, n), out.span);
      } else {
        const std::uint32_t begin = out.span.begin + static_cast<std::uint32_t>(at);
        const auto size = static_cast<std::uint32_t>(line.size());
        out.text.append(line, {&source_, begin, begin + size});
        out.text.append(literal.substr(line.size(), n - line.size()),
                        {&source_, begin + size, begin + size});
        cursor = at + line.size();
      }
      literal.remove_prefix(n);
    }
  }

  const Source& source_;
  std::uint32_t begin_;
  std::uint32_t first_line_;
};

}  // namespace

MarkNode read_markdown(const Source& source, std::uint32_t begin) {
  const auto size = static_cast<std::uint32_t>(source.text().size());
  begin = std::min(begin, size);
  const NodePtr root = parse(source.text().substr(begin));
  MarkNode document = TreeReader(source, begin).read(root.get(), {&source, begin, size}, 0);
  add_unused_definitions(source, begin, document);
  return document;
}

Document read_document(const SourcePtr& source, Diagnostics& diagnostics) {
  Document out;
  out.source = source;
  const Split split = split_front_matter(*source, diagnostics);
  out.front_span = split.front;
  if (split.has_front) {
    out.front = packed_front_matter(source, split.front);
    if (!out.front) out.front = read_yaml_span(split.front, diagnostics);
    if (out.front && out.front->kind != YamlNode::Kind::kMap) {
      diagnostics.error(kBadValue, out.front->span, "the front matter is a list",
                        "write each entry on a line of its own, as `key: value`");
      out.front.reset();
    }
  }
  out.body = read_markdown(*source, split.body_begin);
  return out;
}

}  // namespace chalkleaf::source
