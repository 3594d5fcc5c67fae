// See the header.
#include "plan/body.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/attributes.h"
#include "plan/blocks.h"
#include "plan/drill_line.h"
#include "plan/headings.h"
#include "plan/lines.h"
#include "plan/part_links.h"
#include "plan/stray_lines.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

bool same_title(std::string_view a, std::string_view b) {
  return lower_ascii(trim(a)) == lower_ascii(trim(b));
}

class BodyReader {
 public:
  BodyReader(FileRole role, const Words& title, Diagnostics& diagnostics)
      : role_(role), title_(title), diagnostics_(diagnostics) {}

  Body read(const source::MarkNode& document) {
    if (role_ == FileRole::kSharedPart) out_.parts.push_back({});
    for (const source::MarkNode& block : document.children) {
      this->block(block);
      if (in_part()) reach(block.span);
    }
    return std::move(out_);
  }

 private:
  Part& part() { return out_.parts.back(); }
  bool in_part() const { return !out_.parts.empty(); }
  // A part may begin in the middle of a block, so its place grows at its end only.
  void reach(const Span& span) {
    Span& own = part().span;
    if (!own) own = span;
    own.end = std::max(own.end, span.end);
  }

  void block(const source::MarkNode& node) {
    switch (node.kind) {
      case MarkKind::kHeading:
        return heading(node);
      case MarkKind::kParagraph:
        return paragraph(without_comments(node));
      case MarkKind::kList:
        return list(node);
      case MarkKind::kQuote:
        return quote(node);
      case MarkKind::kCode:
        return code(node);
      default:
        return notes(node);
    }
  }

  void notes(const source::MarkNode& node) {
    std::vector<Note> found;
    add_notes(node, found);
    if (!in_part()) {
      out_.introduction.insert(out_.introduction.end(), found.begin(), found.end());
      return;
    }
    for (Note& note : found) add_note(std::move(note));
  }

  void quote(const source::MarkNode& original) {
    source::MarkNode node = original;
    const std::vector<Stray> strays = take_strays(node, diagnostics_);
    safety(node);
    for (const Stray& stray : strays) place(stray, node.span);
  }

  void safety(const source::MarkNode& quote) {
    auto safety = read_safety(quote);
    if (!safety) return;
    (in_part() ? part().safety : out_.safety).push_back(std::move(*safety));
  }

  void code(const source::MarkNode& node) {
    const std::vector<Stray> lines = list_in_code(node, RunsOnFrom::kText, diagnostics_);
    if (lines.empty()) return notes(node);
    for (const Stray& line : lines) place(line, node.span);
  }

  // What ran on from a line above, as what it was meant to be. `from` is where it stands in.
  void place(const Stray& stray, const Span& from) {
    const Span where = stray.span ? stray.span : from;
    switch (stray.kind) {
      case Stray::Kind::kLink:
        for (const PartLink& link : stray.links) {
          need_part(link.text, link.span);
          part().steps.emplace_back(link);
        }
        break;
      case Stray::Kind::kHeading:
        if (role_ == FileRole::kSession) return open_part(read_heading(stray.text), where);
        add_note({Note::Kind::kSubheading, stray.words});
        break;
      case Stray::Kind::kDrill:
        need_part(title_.empty() ? out_.title : title_, where);
        add_drill(stray.text, where);
        break;
      case Stray::Kind::kNote:
        add_note({Note::Kind::kParagraph, stray.words});
        break;
    }
    if (in_part()) reach(from);
  }

  void add_note(Note note) {
    if (!in_part()) return out_.introduction.push_back(std::move(note));
    part().span = part().span.joined(note.words.span);
    part().steps.emplace_back(std::move(note));
  }

  // A drill of one line. What is wrong with the line itself is reported already.
  void add_drill(const source::Text& text, const Span& span) {
    Drill made;
    made.span = span;
    DrillLine line = read_drill_line(text, diagnostics_);
    made.name = std::move(line.name);
    made.dose = std::move(line.dose);
    made.dose_unreadable = !made.dose;
    part().steps.emplace_back(std::move(made));
  }

  bool is_title(const source::MarkNode& node, const Words& words) const {
    if (node.level != 1) return false;
    if (title_.empty()) return out_.title.empty();
    return same_title(words.text, title_.text);
  }

  void heading(const source::MarkNode& node) {
    const Words words = words_of(printed_text(node));
    if (is_title(node, words)) {
      if (out_.title.empty()) out_.title = words;
      return;
    }
    if (role_ == FileRole::kSharedPart || node.level > 2) return notes(node);
    if (words.empty()) {
      diagnostics_.error("bad-value", node.span, "this heading has no words",
                         "write the part's title, such as `## Warm-up`");
    }
    open_part(read_heading(printed_text(node)), node.span);
  }

  void open_part(Heading heading, const Span& span) {
    Part made;
    made.span = span;
    made.role = role_of(heading.title.text);
    made.title = std::move(heading.title);
    made.budget = heading.time;
    out_.parts.push_back(std::move(made));
  }
  // Drills or a shared part before any heading: they are a part all the same.
  void need_part(const Words& title, const Span& span) {
    if (!in_part()) open_part({title, std::nullopt}, span);
  }

  // Line by line, because coaches write that way; what is plain text stays together.
  void paragraph(const source::MarkNode& node) {
    std::size_t begin = 0;  // of the text not yet placed
    bool plain = false;
    for (ParagraphLine& line : lines_in(node)) {
      line.follows_text = plain;
      const auto stray = judge_text(node, line);
      plain = !stray;
      if (plain) continue;
      if (line.begin > begin) text(stretch_of(node, begin, line.begin - 1));
      place(*stray, node.span);
      begin = line.end;
    }
    if (begin == 0) return text(node);
    if (begin < node.text.str().size()) {
      text(stretch_of(node, begin + 1, node.text.str().size()));
    }
  }

  // Before the first part much may be said that is no drill: `Time: 60 min`, `• bring water`.
  std::optional<Stray> judge_text(const source::MarkNode& node, const ParagraphLine& line) {
    Diagnostics said;
    auto stray = judge_line(node, line, RunsOnFrom::kText, 0, said);
    if (!stray || (!in_part() && !counts_before_parts(*stray))) return std::nullopt;
    diagnostics_.append(said);
    return stray;
  }

  static bool counts_before_parts(const Stray& stray) {
    if (stray.kind != Stray::Kind::kDrill) return stray.kind != Stray::Kind::kNote;
    Diagnostics unused;
    const auto dose = read_drill_line(stray.text, unused).dose;
    return dose && (dose->amount.kind != AmountKind::kTime || dose->sets > 1);
  }

  void text(const source::MarkNode& node) {
    LinksFound found = part_links(node);
    if (!found.only_links) notes(node);
    if (!found.only_links && !in_part()) return;  // a link in the introduction is only mentioned
    for (PartLink& link : found.links) {
      need_part(link.text, node.span);
      part().steps.emplace_back(std::move(link));
    }
  }

  static bool is_step(const source::MarkNode& item) {
    const source::MarkNode* first = first_paragraph(item);
    if (first == nullptr) return false;
    const source::MarkNode line = without_comments(*first);
    return part_links(line).only_links || is_drill_line(lines_of(line.text).first);
  }

  void list(const source::MarkNode& node) {
    if (!in_part()) {
      if (std::none_of(node.children.begin(), node.children.end(), is_step)) return notes(node);
      need_part(title_.empty() ? out_.title : title_, node.span);
    }
    for (const source::MarkNode& child : node.children) item(child);
  }

  void item(const source::MarkNode& original) {
    source::MarkNode node = original;
    const std::vector<Stray> strays = take_strays(node, diagnostics_);
    item_itself(node);
    reach(node.span);
    for (const Stray& stray : strays) place(stray, node.span);
  }

  void item_itself(const source::MarkNode& node) {
    const source::MarkNode* first = first_paragraph(node);
    if (first == nullptr) return notes(node);
    const source::MarkNode line = without_comments(*first);
    if (LinksFound found = part_links(line); found.only_links) {
      for (PartLink& link : found.links) part().steps.emplace_back(std::move(link));
      return below_link(node);
    }
    if (line.links.empty()) {
      const std::string_view raw = lines_in(line).front().raw;
      if (const auto slip = link_slip(raw)) {
        diagnostics_.error("bad-value", line.span, slip->message, slip->hint);
        return notes(node);
      }
    }
    const ParagraphLines lines = lines_of(printed_text(line));
    if (const auto attribute = attribute_of(lines.first); attribute && is_misplaced(*attribute)) {
      return misplaced(*attribute, node);
    }
    if (words_of(lines.first).empty()) return notes(node);
    drill(lines, node);
  }

  void below_link(const source::MarkNode& item) {
    for (std::size_t i = 1; i < item.children.size(); ++i) {
      const source::MarkNode& child = item.children[i];
      child.kind == MarkKind::kCode ? notes(child) : block(child);
    }
  }

  void drill(const ParagraphLines& lines, const source::MarkNode& node) {
    Drill made;
    made.span = node.span;
    DrillLine line = read_drill_line(lines.first, diagnostics_);
    made.name = std::move(line.name);
    made.dose = std::move(line.dose);
    made.dose_unreadable = line.dose_unreadable;
    if (line.dose_unreadable) made.notes.push_back({Note::Kind::kListItem, std::move(line.unread)});
    read_forgotten(lines, below(made), diagnostics_);
    for (std::size_t i = 1; i < node.children.size(); ++i) below_drill(node.children[i], made);
    part().steps.emplace_back(std::move(made));
  }

  void below_drill(const source::MarkNode& node, Drill& made) {
    if (node.kind == MarkKind::kList) {
      for (const source::MarkNode& child : node.children) {
        read_attribute(child, below(made), diagnostics_);
      }
    } else if (node.kind == MarkKind::kQuote) {
      safety(node);
    } else {
      add_notes(node, made.notes);
    }
  }

  // `easier:` beside the drill instead of below it. `Without shoes: 10 jumps` may be a drill.
  static bool is_misplaced(const Attribute& attribute) {
    if (!is_known(attribute)) return false;
    if (attribute.key != "without") return true;
    return attribute.value.str().find(':') != std::string::npos;
  }

  void misplaced(const Attribute& attribute, const source::MarkNode& node) {
    Drill* above = part().steps.empty() ? nullptr : std::get_if<Drill>(&part().steps.back());
    const std::string& key = attribute.written.text;
    if (above == nullptr) {
      diagnostics_.error("bad-value", attribute.written.span,
                         fmt::format("‘{}’ stands below no drill", key),
                         "put this line below the drill it belongs to, indented by two spaces");
      return notes(node);
    }
    diagnostics_.error(
        "bad-value", attribute.written.span,
        fmt::format("‘{}’ stands beside the drill, not below it", key),
        fmt::format("indent this line by two spaces so that it belongs to ‘{}’", above->name.text));
    read_attribute(node, below(*above), diagnostics_);
    above->span = above->span.joined(node.span);
  }

  FileRole role_;
  const Words& title_;
  Diagnostics& diagnostics_;
  Body out_;
};

}  // namespace

Body read_body(const source::MarkNode& document, FileRole role, const Words& title,
               Diagnostics& diagnostics) {
  return BodyReader(role, title, diagnostics).read(document);
}

}  // namespace chalkleaf::plan
