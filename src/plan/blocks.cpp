// See the header.
#include "plan/blocks.h"

#include "base/text.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

void add_note(Note::Kind kind, Words words, std::vector<Note>& out) {
  if (!words.empty()) out.push_back({kind, std::move(words)});
}

// The cells of a row as one line: `a · b`.
void add_row(const source::MarkNode& row, std::vector<Note>& out) {
  Words line{"", row.span};
  for (const source::MarkNode& cell : row.children) {
    const Words words = words_of(printed_text(cell));
    if (words.empty()) continue;
    if (!line.text.empty()) line.text += " · ";
    line.text += words.text;
  }
  add_note(Note::Kind::kTableRow, std::move(line), out);
}

// An HTML block is printed as it stands; its comments are the coach's own.
void add_html(const source::MarkNode& block, std::vector<Note>& out) {
  add_note(Note::Kind::kParagraph, words_of(without_comments(block).text), out);
}

void add_verbatim(const source::MarkNode& block, std::vector<Note>& out) {
  std::string text = block.text.str();
  while (text.ends_with('\n') || text.ends_with('\r')) text.pop_back();
  add_note(Note::Kind::kVerbatim, {std::move(text), block.span}, out);
}

// Length of a leading `Safety.`, `Safety:` or `[!WARNING]`, with the white space behind it.
std::size_t label_length(std::string_view text) {
  std::size_t n = 0;
  if (text.starts_with("[!")) {  // how a git host writes a call-out
    const std::size_t close = text.find(']');
    if (close < 16) n = close + 1;  // npos is not
    while (n < text.size() && (text[n] == ' ' || text[n] == '\n')) ++n;
  }
  const std::string_view rest = text.substr(n);
  if (starts_with_ignoring_case(rest, "safety")) {
    std::size_t end = 6;
    while (end < rest.size() && rest[end] == ' ') ++end;
    if (end < rest.size() && (rest[end] == '.' || rest[end] == ':' || rest[end] == '!')) {
      n += end + 1;
    } else if (trim(rest.substr(6)).empty()) {
      n = text.size();  // a line of its own
    }
  }
  return n;
}

/// Collects a quote's sentences from all its leaves.
class SafetyReader {
 public:
  void read(const source::MarkNode& block) {
    switch (block.kind) {
      case MarkKind::kParagraph:
      case MarkKind::kHeading:
        return add(printed_text(block));
      case MarkKind::kTableCell:
        return add(printed_text(block));
      case MarkKind::kHtml:
        return add(without_comments(block).text);
      case MarkKind::kCode:
        return add(block.text);
      default:
        for (const source::MarkNode& child : block.children) read(child);
    }
  }
  Safety take() { return std::move(out_); }

 private:
  void add(const source::Text& text) {
    const source::Text kept =
        first_ ? text.slice(label_length(text.str()), text.str().size()) : text;
    first_ = false;
    for (Words& sentence : sentences_of(kept)) {
      if (!out_.words.empty()) out_.words.text += ' ';
      out_.words.text += sentence.text;
      out_.words.span = out_.words.span.joined(sentence.span);
      out_.sentences.push_back(std::move(sentence));
    }
  }

  Safety out_;
  bool first_ = true;
};

}  // namespace

const source::MarkNode* first_paragraph(const source::MarkNode& item) {
  const bool has = !item.children.empty() && item.children[0].kind == MarkKind::kParagraph;
  return has ? &item.children[0] : nullptr;
}

void add_item_notes(const source::MarkNode& item, std::vector<Note>& out) {
  const source::MarkNode* first = first_paragraph(item);
  if (first != nullptr) add_note(Note::Kind::kListItem, words_of(printed_text(*first)), out);
  for (const source::MarkNode& child : item.children) {
    if (&child != first) add_notes(child, out);
  }
}

void add_notes(const source::MarkNode& block, std::vector<Note>& out) {
  switch (block.kind) {
    case MarkKind::kParagraph:
      return add_note(Note::Kind::kParagraph, words_of(printed_text(block)), out);
    case MarkKind::kHeading:
      return add_note(Note::Kind::kSubheading, words_of(printed_text(block)), out);
    case MarkKind::kItem:
      return add_item_notes(block, out);
    case MarkKind::kTableRow:
      return add_row(block, out);
    case MarkKind::kCode:
      return add_verbatim(block, out);
    case MarkKind::kHtml:
      return add_html(block, out);
    case MarkKind::kRule:
      return;
    case MarkKind::kTableCell:
    case MarkKind::kDocument:
    case MarkKind::kList:
    case MarkKind::kQuote:
    case MarkKind::kTable:
      for (const source::MarkNode& child : block.children) add_notes(child, out);
  }
}

std::optional<Safety> read_safety(const source::MarkNode& quote) {
  SafetyReader reader;
  reader.read(quote);
  Safety out = reader.take();
  if (out.sentences.empty()) return std::nullopt;
  return out;
}

}  // namespace chalkleaf::plan
