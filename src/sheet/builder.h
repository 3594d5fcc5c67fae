// The tools every sheet is built with: text in a role of the theme, boxes to tick, rules, and the
// structure tree that grows beside the blocks. Internal to the room.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "page/compose.h"
#include "plan/model.h"
#include "sheet/sheets.h"

namespace chalkleaf::sheet {

using page::Artifact;
using page::Block;
using page::NodeId;
using page::Owner;
using page::Role;

/// Builds one sheet. Holds the tree, the look at its final scale, and the styles resolved once.
class Builder {
 public:
  Builder(const Context& context, const Look& look, type::Typesetter& typesetter);

  const Labels& labels() const { return context_.labels; }
  const Look& look() const { return look_; }
  const Context& context() const { return context_; }
  /// Between the margins.
  Length width() const { return width_; }

  /// A new node, after its parent's other children.
  NodeId node(NodeId parent, Role role);
  page::Node& at(NodeId id) { return tree_[id]; }
  static constexpr NodeId kRoot = 0;

  /// Text with an origin is the coach's: it gets the typographer's marks (sheet/typography.h).
  type::Inline piece(TextRole role, std::string text, Span origin = {}) const;
  /// A word before what it labels, with a space that never ends a line.
  type::Inline label(TextRole role, std::string text) const;
  /// A piece that stays on one line where it can.
  type::Inline whole(TextRole role, std::string text, Span origin = {}) const;
  /// A paragraph of pieces, spaced as `role` asks.
  Block paragraph(std::vector<type::Inline> pieces, TextRole role, Owner owner,
                  page::Align align = page::Align::kStart) const;
  Block text(TextRole role, std::string words, Owner owner, Span origin = {},
             page::Align align = page::Align::kStart) const;
  /// The sheet's title: set smaller, never below the minimum, where its longest word is wider than
  /// the page.
  Block title(const plan::Words& words, Owner owner);
  Length text_width(TextRole role, std::string words);
  Length width_of(std::span<const type::Inline> pieces) {
    return typesetter_.natural_width(pieces);
  }

  /// A ruling line, an artifact.
  Block rule(Length length, Length thickness, Use colour) const;
  /// A box to tick; `form` is its own node of role Form.
  Block tick_box(Length side, NodeId form) const;
  /// Makes the Form node of a box under `parent`, described for who cannot see it.
  NodeId tick_node(NodeId parent, std::string description);
  /// The general warning sign of ISO 7010 (W001) in black and white: a triangle with an exclamation
  /// mark.
  Block warning_sign(Length height) const;
  static Block stack(std::vector<Block> children, Length gap = {});
  static Block space(Length height);
  /// A list entry to tick: the box, then the pieces. Adds LI, Lbl and LBody below `list`.
  Block tick_line(NodeId list, TextRole role, std::vector<type::Inline> pieces, Length side,
                  std::string description);

  /// Text of the coach's that is no drill: a P below `parent`.
  Block note(NodeId parent, const plan::Note& note);
  /// Several of them below each other, each a P: the rows of a table.
  Block notes(NodeId parent, std::span<const plan::Note* const> notes);

  /// `towel`, strong, and what kind: ` – a bath towel`.
  std::vector<type::Inline> kit_pieces(const plan::KitItem& item, TextRole name,
                                       TextRole description) const;
  /// `9 min`, or `40 s` for what takes less than a minute.
  std::string part_time(Duration time) const;

  Colour colour(Use use) const { return context_.theme.colour(use); }
  page::Stroke stroke(Use use, Length width) const { return {colour(use), width, false, {}}; }

  /// Ends the building: the flow with paper, margins, tree, info and foot filled in.
  page::Flow finish(std::vector<page::Section> sections, const plan::Session& session,
                    std::string_view kind_label);

 private:
  Block foot(const std::string& first, const std::string& second, std::size_t page_index,
             std::size_t pages) const;

  const Context& context_;
  Look look_;
  type::Typesetter& typesetter_;
  Length width_;
  std::vector<page::Node> tree_;
  std::array<type::StyleId, 4> styles_{};
};

/// Rounded up, so that nothing is said to end before it does.
Duration whole_minutes_up(Duration time);
/// Whether the coach's own safety words already say when to stop.
bool says_stop(const plan::Session& session, const Labels& labels);
/// How many of the steps from `first` on are rows of one table: 1 for any other note.
std::vector<const plan::Note*> note_run(const std::vector<plan::Step>& steps, std::size_t first);

/// `17:00`, or the time since the begin where the session has no start.
std::string clock(const reason::Timetable& timetable, Duration since_start);

page::Flow coach_card(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder);
page::Flow home_sheet(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder);

}  // namespace chalkleaf::sheet
