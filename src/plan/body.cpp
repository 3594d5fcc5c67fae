// See the header.
#include "plan/body.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/attributes.h"
#include "plan/blocks.h"
#include "plan/drill_line.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;
using Link = source::MarkNode::Link;

// A link to a Markdown file beside this one; `#heading` and `?query` do not count.
bool leads_to_part(const Link& link) {
  std::string_view target = link.target;
  if (link.is_image || target.find("://") != std::string_view::npos) return false;
  target = target.substr(0, target.find_first_of("#?"));
  return target.size() > 3 && lower_ascii(target.substr(target.size() - 3)) == ".md";
}

bool has_letters(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80;
  });
}

/// The part links of a paragraph, and whether it says anything besides.
struct LinksFound {
  std::vector<PartLink> links;
  bool only_links = false;
};
LinksFound part_links(const source::MarkNode& paragraph) {
  LinksFound out;
  std::size_t at = 0;
  bool more = false;
  for (const Link& link : paragraph.links) {
    if (!leads_to_part(link)) continue;
    const Words text = words_of(paragraph.text.slice(link.begin, link.end));
    out.links.push_back(
        {text.empty() ? Words{link.target, link.span} : text, link.target, link.span});
    more = more || has_letters(paragraph.text.slice(at, link.begin).str());
    at = link.end;
  }
  more = more || has_letters(paragraph.text.slice(at, paragraph.text.str().size()).str());
  out.only_links = !out.links.empty() && !more;
  return out;
}

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
      if (!out_.parts.empty()) part().span = part().span.joined(block.span);
    }
    return std::move(out_);
  }

 private:
  Part& part() { return out_.parts.back(); }
  bool in_part() const { return !out_.parts.empty(); }

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
    for (Note& note : found) part().steps.emplace_back(std::move(note));
  }

  void quote(const source::MarkNode& node) {
    auto safety = read_safety(node);
    if (!safety) return;
    (in_part() ? part().safety : out_.safety).push_back(std::move(*safety));
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
    open_part(words, node.span);
  }

  void open_part(Words title, const Span& span) {
    Part made;
    made.span = span;
    made.role = role_of(title.text);
    made.title = std::move(title);
    out_.parts.push_back(std::move(made));
  }
  // Drills or a shared part before any heading: they are a part all the same.
  void need_part(const Words& title, const Span& span) {
    if (!in_part()) open_part(title, span);
  }

  void paragraph(const source::MarkNode& node) {
    LinksFound found = part_links(node);
    if (!found.only_links) {
      if (in_part() && is_plainly_a_drill(node.text)) suspect_drill(node);
      notes(node);
    }
    if (!found.only_links && !in_part()) return;  // a link in the introduction is only mentioned
    for (PartLink& link : found.links) {
      need_part(link.text, node.span);
      part().steps.emplace_back(std::move(link));
    }
  }

  // Only a warning: `Water: 1 min` may be meant as a sentence.
  void suspect_drill(const source::MarkNode& node) {
    const Words words = words_of(node.text);
    std::string_view line = words.text;
    while (!line.empty() && !has_letters(line.substr(0, 1))) line.remove_prefix(1);
    diagnostics_.warning("bad-value", words.span, "this reads like a drill, but is not a list item",
                         fmt::format("write `- {}`, with a dash and a space before it", line));
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

  void item(const source::MarkNode& node) {
    const source::MarkNode* first = first_paragraph(node);
    if (first == nullptr) return notes(node);
    const source::MarkNode line = without_comments(*first);
    if (LinksFound found = part_links(line); found.only_links) {
      for (PartLink& link : found.links) part().steps.emplace_back(std::move(link));
      return below_link(node);
    }
    const ParagraphLines lines = lines_of(printed_text(line));
    if (const auto attribute = attribute_of(lines.first); attribute && is_misplaced(*attribute)) {
      return misplaced(*attribute, node);
    }
    if (words_of(lines.first).empty()) return notes(node);
    drill(lines, node);
  }

  void below_link(const source::MarkNode& item) {
    for (std::size_t i = 1; i < item.children.size(); ++i) block(item.children[i]);
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
      quote(node);
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

PartRole role_of(std::string_view title) {
  std::string letters;  // `Warm-up`, `warm up` and `WARMUP` are one word
  for (const char c : lower_ascii(title)) {
    if (c >= 'a' && c <= 'z') letters += c;
  }
  const auto is_any = [&](std::initializer_list<std::string_view> known) {
    return std::find(known.begin(), known.end(), letters) != known.end();
  };
  if (is_any({"warmup", "warmups", "warmingup"})) return PartRole::kWarmUp;
  if (is_any({"cooldown", "cooldowns", "coolingdown", "warmdown", "warmingdown"})) {
    return PartRole::kCoolDown;
  }
  return PartRole::kMain;
}

Body read_body(const source::MarkNode& document, FileRole role, const Words& title,
               Diagnostics& diagnostics) {
  return BodyReader(role, title, diagnostics).read(document);
}

}  // namespace chalkleaf::plan
