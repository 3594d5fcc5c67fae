// The tools every sheet is built with: text in a role of the theme, boxes to tick, rules, and the
// structure tree that grows beside the blocks. Internal to the room.
//
// builder.cpp has the tree and the text, marks.cpp what is drawn, notes.cpp the coach's own text.
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

/// How a home sheet's drills are set.
enum class Arrangement {
  kRoomy,    ///< a framed panel each
  kCompact,  ///< without frames; in three columns where that is calm
  kDense,    ///< the same, run on and in three columns wherever that saves height
  kClose,    ///< the same as close as can be read, for what would not stand on one sheet else
};

/// Builds one sheet. Holds the tree, the look at its final scale, and the styles resolved once.
class Builder {
 public:
  Builder(Kind kind, const Context& context, const Look& look, type::Typesetter& typesetter,
          Arrangement arrangement = Arrangement::kRoomy);

  const Labels& labels() const { return context_.labels; }
  const Look& look() const { return look_; }
  const Context& context() const { return context_; }
  Arrangement arrangement() const { return arrangement_; }
  /// Whether paper is dear.
  bool is_dense() const {
    return arrangement_ == Arrangement::kDense || arrangement_ == Arrangement::kClose;
  }
  const Insets& margins() const { return margins_; }
  /// Between the margins.
  Length width() const { return width_; }

  /// Between the margins and above the foot, about: for what must not be higher than a page.
  Length page_height() const;
  Length height_of(const Block& block, Length width);
  /// Of its first line of text, below its top.
  Length baseline_of(const Block& block, Length width);
  Length natural_width(const Block& block);

  /// A new node, after its parent's other children.
  NodeId node(NodeId parent, Role role);
  page::Node& at(NodeId id) { return tree_[id]; }
  /// The number the next node gets.
  NodeId next_node() const { return static_cast<NodeId>(tree_.size()); }
  /// Takes back the nodes made since `first` was the next one; nothing may refer to them.
  void drop_from(NodeId first) { tree_.resize(first); }
  static constexpr NodeId kRoot = 0;

  // ---- text

  /// Text with an origin is the coach's: it gets the typographer's marks (sheet/typography.h).
  type::Inline piece(TextRole role, std::string text, Span origin = {}) const;
  /// The coach's words with what they set off: strong in bold, emphasised in italics (upright where
  /// the role is italic).
  std::vector<type::Inline> pieces(TextRole role, const plan::Words& words) const;
  /// A phrase of the program's with the coach's words where it has kHole, kept as `pieces` keeps
  /// them.
  std::vector<type::Inline> filled(TextRole role, const std::string& phrase,
                                   const plan::Words& words) const;
  static constexpr std::string_view kHole = "\x01";  ///< stands in no phrase and no text read
  /// The same for the phrase of that key and its place.
  std::vector<type::Inline> said(TextRole role, std::string_view key, std::string_view place,
                                 const plan::Words& words) const;
  /// A word before what it labels, with a space that never ends a line.
  type::Inline label(TextRole role, std::string text) const;
  /// A piece that stays on one line where it can.
  type::Inline whole(TextRole role, std::string text, Span origin = {}) const;
  /// `▼` for easier, `▲` for harder.
  type::Inline mark(std::string_view key, TextRole role) const;
  /// A paragraph of pieces, spaced as `role` asks.
  Block paragraph(std::vector<type::Inline> pieces, TextRole role, Owner owner,
                  page::Align align = page::Align::kStart) const;
  Block text(TextRole role, std::string words, Owner owner, Span origin = {},
             page::Align align = page::Align::kStart) const;
  Block text(TextRole role, const plan::Words& words, Owner owner) const;
  /// Paragraphs behind each other in one, each still its own in the tree; `between` stands between
  /// them. The leading is the first one's.
  static Block run_together(std::vector<Block> paragraphs, const type::Inline& between);
  /// The sheet's title, and the club's logo beside it: set smaller, never below the minimum, where
  /// its longest word is wider than its room.
  Block title(const plan::Words& words, Owner owner);
  /// The same with other words, so wide, behind it on its line; none where that has no room.
  std::optional<Block> title_line(const plan::Words& words, Owner owner, const Block& behind,
                                  Length width);
  Length text_width(TextRole role, std::string words);
  Length width_of(std::span<const type::Inline> pieces) {
    return typesetter_.natural_width(pieces);
  }
  /// The width of the longest word of the pieces, joined.
  Length longest_word(std::span<const type::Inline> pieces);

  /// `towel`, strong, and what kind: ` – a bath towel`.
  std::vector<type::Inline> kit_pieces(const plan::KitItem& item, TextRole name,
                                       TextRole description) const;
  /// `Set out: hoops, cones, two each  1 min`, the verb as the coach wrote it; to
  /// families `pick up` is `now fetch`.
  std::vector<type::Inline> kit_move_pieces(const plan::KitMove& move) const;
  /// `9–11 y`, `9 y`, `9 y and over`; empty where the club does not say.
  std::string ages(const plan::Group& group) const;
  /// `9 min`, or `40 s` for what takes less than a minute.
  std::string part_time(Duration time) const;

  // ---- marks

  /// A part's heading, on a band where the look has one.
  Block part_band(Block heading) const;
  /// A ruling line, an artifact.
  Block rule(Length length, Length thickness, Use colour) const;
  /// A box to tick, as high as it is wide unless `height` is given; `form` is its own node of role
  /// Form.
  Block tick_box(Length side, NodeId form, Length height = {}) const;
  /// Makes the Form node of a box under `parent`, described for who cannot see it.
  NodeId tick_node(NodeId parent, std::string description);
  /// The same for a field to write in.
  NodeId field_node(NodeId parent, std::string description);
  /// The general warning sign of ISO 7010 (W001) in black and white: a triangle with an exclamation
  /// mark.
  Block warning_sign(Length height) const;
  /// A tray with an arrow out of it or into it: kit that is fetched or put away. A drawing of ours.
  Block kit_sign(plan::KitMove::Way way, Length side) const;
  /// A figure's drawing for the session's group; null when it has none of that name.
  std::shared_ptr<const figure::Scene> scene(std::string_view name, const plan::Session& session,
                                             figure::Extent extent) const;
  /// How large a drawing is when it fits `most`, all figures of a sheet to one scale where they
  /// can.
  Size figure_size(const figure::Scene& scene, Size most) const;
  /// The drawing at that size, its Figure node below `parent`.
  Block figure(const figure::Scene& scene, Size size, NodeId parent);
  /// The Figure node of a drawing that is made later, by the next.
  NodeId figure_node(const figure::Scene& scene, NodeId parent);
  Block figure_of(const figure::Scene& scene, Size size, NodeId id);
  /// The same as marks of an owner; `size` has no room for the numbers of a row.
  Block drawing(const figure::Scene& scene, Size size, Owner owner) const;
  static Block stack(std::vector<Block> children, Length gap = {});
  static Block space(Length height);
  /// A list entry to tick: the box, then the pieces. Adds LI, Lbl and LBody below `list`.
  Block tick_line(NodeId list, TextRole role, std::vector<type::Inline> pieces, Length side,
                  std::string description);
  /// A tick_line() as a paragraph that may be run together with others.
  Block tick_words(Block line, TextRole role);

  // ---- text of the coach's that is no drill

  /// Whether this sheet's reader is among those the note is for.
  bool is_for_reader(const plan::Note& note) const;
  /// The notes for this sheet's reader below each other: a P each, the rows of a table a Table.
  /// `room` is the width there is; a table that is wider is set as lines.
  std::vector<Block> notes(NodeId parent, std::span<const plan::Note> all, Length room);
  /// One run of notes (see note_run) as pieces that may stand on different pages: for a table its
  /// head with the first row, then row by row.
  std::vector<Block> note_pieces(NodeId parent, std::span<const plan::Note* const> run,
                                 Length room);

  Colour colour(Use use) const { return context_.theme.colour(use); }
  page::Stroke stroke(Use use, Length width) const { return {colour(use), width, false, {}}; }

  /// The ways that would be chosen for these sections, which the tree need not be complete for.
  std::vector<page::ChosenWay> choose(std::vector<page::Section> sections,
                                      const plan::Session& session, std::string_view kind_label);
  /// Ends the building: the flow with paper, margins, tree, info and foot filled in.
  page::Flow finish(std::vector<page::Section> sections, const plan::Session& session,
                    std::string_view kind_label);

 private:
  static std::string unbroken(const std::string& text);
  Size logo_size() const;
  Block logo();
  Block title_words(const plan::Words& words, Owner owner, Length width);
  /// Whether text of this role reads on in sentences, so that its words may be hyphenated. Names,
  /// doses, times and labels stay whole, and all words of a home sheet: children who learn to read
  /// read it.
  bool is_running(TextRole role) const;
  type::StyleId style(type::Weight weight, type::Slant slant) const {
    return styles_[static_cast<std::size_t>(weight) * 2 + static_cast<std::size_t>(slant)];
  }
  Block note(NodeId parent, const plan::Note& note);
  Block picture(NodeId parent, const plan::Note& note);
  std::string kit_move_verb(const plan::KitMove& move) const;
  Block foot(const std::string& first, const std::string& second, std::size_t page_index,
             std::size_t pages, Length number_width) const;

  Kind kind_;
  Arrangement arrangement_;
  const Context& context_;
  Look look_;
  type::Typesetter& typesetter_;
  Insets margins_;
  Length width_;
  std::vector<page::Node> tree_;
  std::array<type::StyleId, 4> styles_{};
};

/// A picture is never parted from what stands before it: the slab before a picture keeps with it.
void keep_pictures(std::vector<page::Section>& sections);
/// Rounded up, so that nothing is said to end before it does.
Duration whole_minutes_up(Duration time);
/// Whether the coach's own safety words already say when to stop.
bool says_stop(const plan::Session& session, const Labels& labels);
/// The note at `first` of the steps with those that are one piece with it: the rows of its table.
/// None when another kind of step stands there.
std::vector<const plan::Note*> note_run(const std::vector<plan::Step>& steps, std::size_t first);
/// Whether the run is one paragraph, which can stand in a column: no table and no picture.
bool is_paragraph(const std::vector<const plan::Note*>& run);
/// Whether this sheet prints anything of the part: not where all of it is for another reader.
bool has_content(const plan::Part& part, const Builder& builder);

/// `17:00`, or the time since the begin where the session has no start.
std::string clock(const reason::Timetable& timetable, Duration since_start);

page::Flow coach_card(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder);
page::Flow home_sheet(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder);
/// The home sheet without frames, for one sheet of paper.
page::Flow compact_home_sheet(const plan::Session& session, const reason::Timetable& timetable,
                              Builder& builder);

}  // namespace chalkleaf::sheet
