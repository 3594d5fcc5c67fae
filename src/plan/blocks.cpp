// See the header.
#include "plan/blocks.h"

#include "base/text.h"
#include "plan/pictures.h"
#include "plan/readers.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

void add_note(Note::Kind kind, Words words, std::vector<Note>& out) {
  if (!words.empty()) out.push_back({kind, std::move(words)});
}

// The cells of a row, and the row as one line: `a · b`. A row without words is one to write in.
void add_row(const source::MarkNode& row, bool head, std::vector<Note>& out) {
  Note note;
  note.kind = Note::Kind::kTableRow;
  note.words.span = row.span;
  note.table_head = head;
  for (const source::MarkNode& cell : row.children) {
    note.cells.push_back(words_of(printed_text(cell)));
    append_words(note.words, " · ", note.cells.back());
  }
  note.words.span = row.span;
  if (!head || !note.words.empty()) out.push_back(std::move(note));
}

void add_table(const source::MarkNode& table, std::vector<Note>& out) {
  for (const source::MarkNode& row : table.children) {
    add_row(row, &row == &table.children.front(), out);
  }
}

// Text and lines of pictures, in order.
void add_paragraph(Note::Kind kind, const source::MarkNode& paragraph, std::vector<Note>& out) {
  for (TextOrPictures& piece : parted_by_pictures(without_comments(paragraph))) {
    add_text_notes(kind, printed_text(piece.text), out);
    out.insert(out.end(), std::make_move_iterator(piece.pictures.begin()),
               std::make_move_iterator(piece.pictures.end()));
  }
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
      append_words(out_.words, " ", sentence);
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

void add_text_notes(Note::Kind kind, const source::Text& text, std::vector<Note>& out) {
  for (const ForReader& piece : parted_by_reader(text)) {
    Words words = words_of(piece.text);
    if (!words.empty()) out.push_back({kind, std::move(words), piece.reader});
  }
}

void add_item_notes(const source::MarkNode& item, std::vector<Note>& out) {
  const source::MarkNode* first = first_paragraph(item);
  if (first != nullptr) add_paragraph(Note::Kind::kListItem, *first, out);
  const std::size_t own = out.size();
  for (const source::MarkNode& child : item.children) {
    if (&child != first) add_notes(child, out);
  }
  // What stands below `- Coach: …` is the coach's too.
  if (first == nullptr) return;
  const auto label = reader_label(first->text.str());
  if (label) keep_for(label->reader, out, own);
}

void keep_for(Note::For reader, std::vector<Note>& notes, std::size_t begin) {
  for (std::size_t i = begin; i < notes.size(); ++i) {
    if (notes[i].reader == Note::For::kAll) notes[i].reader = reader;
  }
}

void add_notes(const source::MarkNode& block, std::vector<Note>& out) {
  switch (block.kind) {
    case MarkKind::kParagraph:
      return add_paragraph(Note::Kind::kParagraph, block, out);
    case MarkKind::kHeading:
      return add_note(Note::Kind::kSubheading, words_of(printed_text(block)), out);
    case MarkKind::kItem:
      return add_item_notes(block, out);
    case MarkKind::kTableRow:
      return add_row(block, false, out);
    case MarkKind::kTable:
      return add_table(block, out);
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
