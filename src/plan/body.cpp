// See the header.
#include "plan/body.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "plan/attributes.h"
#include "plan/blocks.h"
#include "plan/circuit_line.h"
#include "plan/drill_item.h"
#include "plan/drill_line.h"
#include "plan/headings.h"
#include "plan/kit_moves.h"
#include "plan/lines.h"
#include "plan/part_links.h"
#include "plan/pictures.h"
#include "plan/readers.h"
#include "plan/rotations.h"
#include "plan/stations.h"
#include "plan/stray_lines.h"
#include "plan/words.h"
#include "plan/written_slips.h"

namespace chalkleaf::plan {
namespace {
using MarkKind = source::MarkNode::Kind;

// `easier:` beside the drill instead of below it. `Without shoes: 10 jumps` may be a drill.
bool is_misplaced(const Attribute& attribute, bool dosed) {
  if (!is_known(attribute)) return false;
  if (dosed && (attribute.key == "coach" || attribute.key == "family")) return false;
  return attribute.key != "without" || attribute.value.str().find(':') != std::string::npos;
}

bool attribute_is_known(const source::MarkNode& line) {
  const auto found = attribute_of(printed_text(line));
  return found && is_known(*found);
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
      next_ = &block + 1;
      end_ = document.children.data() + document.children.size();
      this->block(block);
      if (in_part()) reach(block.span);
    }
    for (Part& part : out_.parts) settle_circuits(part.steps, diagnostics_);
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
    const Note::For next = std::exchange(next_is_for_, Note::For::kAll);
    const Note::For reader = next == Note::For::kAll ? section_is_for_ : next;
    const bool stations = std::exchange(stations_follow_, false) && node.kind == MarkKind::kList &&
                          last_drill() != nullptr && last_drill()->circuit;
    if (stations) return stations_of_last(node);
    if (reader != Note::For::kAll && is_only_text(node)) return notes(node, reader);
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

  void notes(const source::MarkNode& node, Note::For reader = Note::For::kAll) {
    std::vector<Note> found;
    add_notes(node, found);
    for (Note& note : found) {
      if (note.reader == Note::For::kAll) note.reader = reader;
      add_note(std::move(note));
    }
  }

  // What may belong to a line `Coach:` above it: no drills, no links to parts, no safety.
  static bool is_only_text(const source::MarkNode& node) {
    if (node.kind == MarkKind::kList) {
      return std::none_of(node.children.begin(), node.children.end(), is_step);
    }
    if (node.kind == MarkKind::kParagraph) {
      return node.links.empty() && !reader_label(node.text.str());
    }
    return node.kind == MarkKind::kTable || node.kind == MarkKind::kCode;
  }

  void quote(const source::MarkNode& original) {
    source::MarkNode node = original;
    const source::MarkNode* first = first_paragraph(node);
    const auto label = first == nullptr ? std::nullopt : reader_label(first->text.str());
    if (label) return notes(node, label->reader);
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
          add_link(link);
        }
        break;
      case Stray::Kind::kHeading:
        if (role_ == FileRole::kSession) return open_part(read_heading(stray.text), where);
        add_note({Note::Kind::kSubheading, stray.words});
        break;
      case Stray::Kind::kDrill:
        need_part(title_.empty() ? out_.title : title_, where);
        add_line(stray.text, where);
        break;
      case Stray::Kind::kItem:
        if (Drill* circuit = in_part() ? circuit_around(where) : nullptr; circuit != nullptr) {
          add_station(read_lone_station(stray.text, where, diagnostics_), *circuit);
          break;
        }
        [[fallthrough]];
      case Stray::Kind::kNote: {
        std::vector<Note> found;
        add_text_notes(Note::Kind::kParagraph, stray.text, found);
        for (Note& note : found) add_note(std::move(note));
        break;
      }
    }
    if (in_part()) reach(from);
  }

  void add_note(Note note) {
    if (!in_part()) return out_.introduction.push_back(std::move(note));
    part().span = part().span.joined(note.words.span);
    part().steps.emplace_back(std::move(note));
  }

  Drill* last_drill() {
    return part().steps.empty() ? nullptr : std::get_if<Drill>(&part().steps.back());
  }
  // The circuit whose item holds a place that is indented below it.
  Drill* circuit_around(const Span& span) {
    Drill* last = last_drill();
    const bool around = last != nullptr && last->circuit && last->span.contains(span);
    return around && indent_of(*span.source, span.begin) > 0 ? last : nullptr;
  }

  // A shared part has no place among stations; a drill of the library that is linked to has.
  void add_link(const PartLink& link) {
    if (Drill* circuit = circuit_around(link.span); circuit != nullptr) {
      if (link.target.find("drills/") != std::string::npos) {
        Drill station;
        station.span = link.span;
        station.name = link.text;
        return add_station(std::move(station), *circuit);
      }
      diagnostics_.error(kBadValue, link.span, "a shared part cannot stand in a circuit",
                         "move the link to the left, so that it stands beside the circuit, or list "
                         "the drills of the part here");
    }
    part().steps.emplace_back(link);
  }

  // A drill or kit move of one line. What is wrong with the line itself is reported already.
  void add_line(const source::Text& text, const Span& span) {
    if (const auto kit = kit_line(text); kit && !kit->rest.empty()) {
      return add_kit_move(*kit, span, {});
    }
    if (Drill* circuit = circuit_around(span); circuit != nullptr) {
      return add_station(read_lone_station(text, span, diagnostics_), *circuit);
    }
    part().steps.emplace_back(read_lone_drill(text, span, diagnostics_));
    stations_follow_ = last_drill()->circuit.has_value();
  }

  void add_kit_move(const KitLine& line, const Span& span, const std::vector<Words>& listed) {
    if (auto made = read_kit_move(line, span, listed, diagnostics_)) {
      part().steps.emplace_back(std::move(*made));
    } else {
      add_note({Note::Kind::kListItem, line.verb});
      if (!line.rest.empty()) add_note({Note::Kind::kListItem, words_of(line.rest)});
    }
  }

  void stations_of_last(const source::MarkNode& list) {
    Drill& circuit = *last_drill();
    circuit.dose_unreadable = false;
    read_below_circuit(list, circuit, part().safety, diagnostics_);
    circuit.span = circuit.span.joined(list.span);
  }

  bool is_title(const source::MarkNode& node, const Words& words) const {
    if (node.level != 1) return false;
    if (title_.empty()) return out_.title.empty();
    return same_title(words.text, title_.text);
  }

  // Text alone stands below this heading, up to the next.
  bool only_text_follows() const {
    for (const source::MarkNode* at = next_; at != end_; ++at) {
      if (at->kind == MarkKind::kHeading) break;
      const bool label = at->kind == MarkKind::kParagraph && reader_label(at->text.str());
      if (!label && at->kind != MarkKind::kRule && !is_only_text(*at)) return false;
    }
    return true;
  }

  void heading(const source::MarkNode& node) {
    section_is_for_ = Note::For::kAll;
    const Words words = plain_words_of(printed_text(node));
    if (is_title(node, words)) {
      if (out_.title.empty()) out_.title = words;
      return;
    }
    // `## Notes for the coach` is no part of the session.
    if (const auto reader = reader_of_title(words.text); reader && only_text_follows()) {
      section_is_for_ = *reader;
      return notes(node, *reader);
    }
    if (node.level == 3 && rotation_ && !words.empty()) return station(node);
    if (role_ == FileRole::kSharedPart || node.level > 2) return notes(node);
    rotation_.reset();
    if (words.empty()) {
      diagnostics_.error(kBadValue, node.span, "this heading has no words",
                         "write the part's title, such as `## Warm-up`");
    }
    if (says_rounds_by_name(printed_text(node))) {
      diagnostics_.error(kBadValue, node.span, "a heading cannot say how often its drills are done",
                         "write the rounds in a line below it, such as `- Circuit: 3 rounds`, and "
                         "the drills below that line, indented by two spaces");
    }
    open_part(read_heading(printed_text(node)), node.span);
    if (is_rotation(words.text)) rotation_ = out_.parts.size() - 1;
  }

  // `### Vault` in a rotation: its drills are done beside those of the other stations.
  void station(const source::MarkNode& node) {
    open_part(read_heading(printed_text(node)), node.span);
    part().role = PartRole::kMain;
    part().station_of = rotation_;
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

  // `**Warm-up**` above its drills, or `Cool down (5 min)` as the first line of a text.
  bool is_lost_heading(const source::MarkNode& node, const ParagraphLine& line) const {
    if (role_ != FileRole::kSession || line.begin > 0 || !node.links.empty()) return false;
    const std::string title = heading_in_text(line.raw);
    if (title.empty()) return false;
    if (role_of(title) != PartRole::kMain) return true;
    if (in_part()) return false;  // there it is the coach's own emphasis
    // Anything else that is bold is one only above a list of drills.
    const bool alone = line.end == node.text.str().size();
    return alone && next_ != end_ && next_->kind == MarkKind::kList && lists_drills(*next_);
  }

  void lost_heading(const source::MarkNode& node, const ParagraphLine& line) {
    const source::Text text = node.text.slice(line.begin, line.end).trimmed();
    const bool colon = text.str().ends_with(':');
    const source::Text title = colon ? text.slice(0, text.str().size() - 1).trimmed() : text;
    Diagnostic found{Severity::kError, kBadValue, line.span,
                     "this looks like a heading, but is written as text"};
    found.hint = fmt::format("write `## {}`, with an empty line below it", words_of(title).text);
    found.edits.push_back({line.span, fmt::format("\n## {}\n", words_of(title).text)});
    diagnostics_.add(std::move(found));
    open_part(read_heading(title), line.span);
  }

  // Line by line, because coaches write that way; what is plain text stays together.
  void paragraph(const source::MarkNode& node) {
    report_written_slips(node, diagnostics_);
    std::size_t begin = 0;  // of the text not yet placed
    bool plain = false;
    for (ParagraphLine& line : lines_in(node)) {
      line.follows_text = plain;
      if (is_lost_heading(node, line)) {
        lost_heading(node, line);
        begin = line.end;
        continue;
      }
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
    if (stray.kind != Stray::Kind::kDrill) {
      return stray.kind == Stray::Kind::kLink || stray.kind == Stray::Kind::kHeading;
    }
    if (is_plainly_a_circuit(stray.text)) return true;
    Diagnostics unused;
    const auto dose = read_drill_line(stray.text, StationsBelow::kNone, unused).dose;
    return dose && (dose->amount.kind != AmountKind::kTime || dose->sets > 1);
  }

  void text(const source::MarkNode& node) {
    LinksFound found = part_links(node);
    if (!found.only_links) notes(node);
    const auto label = reader_label(node.text.str());
    if (label && trim(node.text.str().substr(label->words)).empty()) next_is_for_ = label->reader;
    if (!found.only_links && !in_part()) return;  // a link in the introduction is only mentioned
    for (PartLink& link : found.links) {
      need_part(link.text, node.span);
      part().steps.emplace_back(std::move(link));
    }
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
    report_written_slips(line, diagnostics_);
    if (line.links.empty()) {
      const std::string_view raw = lines_in(line).front().raw;
      if (const auto slip = link_slip(raw)) {
        diagnostics_.error(kBadValue, line.span, slip->message, slip->hint);
        return notes(node);
      }
    }
    std::vector<Note> pictures;
    const ParagraphLines lines = lines_of(printed_text(without_pictures(line, pictures)));
    const source::Text text = lines.first.trimmed();
    if (text.empty()) return notes(node);
    const bool dosed = is_drill_line(text);  // `Coach: 5 min` is a talk
    if (reader_label(text.str()) && !dosed) return notes(node);
    if (rotation_ && *rotation_ + 1 == out_.parts.size() && is_rotation_line(text.str()))
      return notes(node);
    if (const auto kit = kit_line(text)) {
      kit_move(*kit, node);
      for (Note& picture : pictures) add_note(std::move(picture));
      for (const source::Text& more : lines.forgotten) below_no_drill(more);
      return;
    }
    if (const auto attribute = attribute_of(text); attribute && is_misplaced(*attribute, dosed)) {
      return misplaced(*attribute, node);
    }
    part().steps.emplace_back(read_drill_item(node, part().safety, diagnostics_));
  }

  // `Pick up:` may have its kit in a list below it.
  void kit_move(const KitLine& kit, const source::MarkNode& node) {
    std::vector<Words> listed;
    std::vector<Note> below;
    for (std::size_t i = 1; i < node.children.size(); ++i) {
      const source::MarkNode& child = node.children[i];
      if (child.kind != MarkKind::kList || !kit.rest.empty()) {
        add_notes(child, below);
        continue;
      }
      for (const source::MarkNode& item : child.children) {
        const source::MarkNode* line = first_paragraph(item);
        const bool plain = line != nullptr && item.children.size() == 1;
        if (plain && !attribute_is_known(*line)) {
          listed.push_back(plain_words_of(printed_text(*line)));
        } else {
          add_item_notes(item, below);
        }
      }
    }
    add_kit_move(kit, node.span, listed);
    for (Note& note : below) add_note(std::move(note));
  }
  void below_no_drill(const source::Text& line) {
    const auto attribute = attribute_of(line);
    if (attribute && !reader_label(line.trimmed().str())) report_no_drill(attribute->written);
    std::vector<Note> found;
    add_text_notes(Note::Kind::kListItem, line, found);
    for (Note& note : found) add_note(std::move(note));
  }
  void report_no_drill(const Words& key) {
    diagnostics_.error(kBadValue, key.span, fmt::format("‘{}’ stands below no drill", key.text),
                       "put this line below the drill it belongs to, indented by two spaces");
  }
  void below_link(const source::MarkNode& item) {
    for (auto child = item.children.begin() + 1; child < item.children.end(); ++child)
      child->kind == MarkKind::kCode ? notes(*child) : block(*child);
  }

  void misplaced(const Attribute& attribute, const source::MarkNode& node) {
    Drill* above = last_drill();
    const std::string& key = attribute.written.text;
    if (above == nullptr) {
      report_no_drill(attribute.written);
      return notes(node);
    }
    diagnostics_.error(
        kBadValue, attribute.written.span,
        fmt::format("‘{}’ stands beside the drill, not below it", key),
        fmt::format("indent this line by two spaces so that it belongs to ‘{}’", above->name.text));
    read_attribute(node, below(*above), diagnostics_);
    above->span = above->span.joined(node.span);
  }

  FileRole role_;
  const Words& title_;
  Diagnostics& diagnostics_;
  Body out_;
  Note::For next_is_for_ = Note::For::kAll;     ///< the block below a line that is only `Coach:`
  Note::For section_is_for_ = Note::For::kAll;  ///< all text below a heading that is a label
  const source::MarkNode* next_ = nullptr;      ///< the block behind the one that is read
  const source::MarkNode* end_ = nullptr;
  std::optional<std::size_t> rotation_ = {};  ///< the part with groups and stations
  bool stations_follow_ = false;              ///< the block below a circuit in a line of its own
};

}  // namespace

Body read_body(const source::MarkNode& document, FileRole role, const Words& title,
               Diagnostics& diagnostics) {
  return BodyReader(role, title, diagnostics).read(document);
}

}  // namespace chalkleaf::plan
