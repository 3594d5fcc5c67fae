// The coach card: for the hand, at arm's length, in a dim hall, by someone who has never seen the
// plan.
//
// Each part is a table. Its head is the part's heading and the numbers of the gymnasts; each drill
// is a row: when, what and how much, the cue, what is easier and harder, and a box per gymnast.
// Gymnasts are numbers, never names. Tested by tests/sheet/coach_card_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "sheet/builder.h"
#include "sheet/card_drill.h"
#include "sheet/card_opening.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

constexpr int kGymnastsUnknown = 8;  // columns when the plan names no group of known size

class CardWriter {
 public:
  CardWriter(const plan::Session& session, const reason::Timetable& timetable, Builder& builder)
      : session_(session), timetable_(timetable), b_(builder), labels_(builder.labels()) {
    measure_columns();
  }

  page::Flow write() {
    std::vector<page::Section> sections;
    sections.push_back(card_opening(session_, timetable_, b_));
    for (const reason::PartTime& part : timetable_.parts) sections.push_back(part_section(part));
    sections.push_back(closing());
    return b_.finish(std::move(sections), session_, labels_.say("card"));
  }

 private:
  // ---- columns

  void measure_columns() {
    gymnasts_ =
        session_.group && session_.group->size ? session_.group->size->value : kGymnastsUnknown;
    clock_width_ = b_.text_width(TextRole::kClock, "00:00") + b_.look().gap;
    // A card set larger keeps its boxes as the theme has them, if that saves a line of boxes.
    tick_side_ = b_.look().tick_box;
    const Length plain = b_.context().theme.card.tick_box;
    if (tick_lines(plain) < tick_lines(tick_side_)) tick_side_ = plain;
    // A box is never narrower than the number above it.
    tick_side_ = std::max(tick_side_, b_.text_width(TextRole::kColumn, std::to_string(gymnasts_)));
    const int lines = tick_lines(tick_side_);
    per_line_ = (gymnasts_ + lines - 1) / lines;
    ticks_width_ = (tick_side_ + tick_gap()) * per_line_ - tick_gap();
    for (const plan::Part& part : session_.parts) {
      for (const plan::Drill* drill : plan::drills_of(part)) {
        if (!drill->easier.empty() || !drill->harder.empty() || !drill->substitutes.empty())
          has_variations_ = true;
      }
    }
  }

  // Boxes may take two fifths of the width; more gymnasts go on further lines of boxes.
  int tick_lines(Length side) const {
    const Length room = b_.width() * 2 / 5 + side / 4;
    const auto most = static_cast<int>(room.in_millipoints() / (side * 5 / 4).in_millipoints());
    return (gymnasts_ + std::max(1, most) - 1) / std::max(1, most);
  }
  Length tick_gap() const { return tick_side_ / 4; }
  int columns() const { return (has_variations_ ? 3 : 2) + gymnasts_; }

  // ---- a part

  page::Section part_section(const reason::PartTime& part) {
    page::Section section;
    const NodeId table = b_.node(Builder::kRoot, Role::kTable);
    section.slabs.push_back(part_head(part, table));
    section.continuation = continued_head(part);
    const NodeId body = b_.node(table, Role::kTableBody);
    std::size_t next_drill = 0;
    bool any = false;
    const std::vector<plan::Step>& steps = part.part->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      page::Slab slab;
      if (const auto* drill = std::get_if<plan::Drill>(&steps[i])) {
        slab.block = drill_row(*drill, part.drills.at(next_drill++), body);
        slab.origin = drill->span;
      } else if (const auto run = note_run(steps, i); !run.empty()) {
        slab.block = note_row(run, body);
        slab.origin = run.front()->words.span;
        i += run.size() - 1;
      } else {
        continue;
      }
      any = true;
      section.slabs.push_back(std::move(slab));
    }
    // A table body without rows is not a table: an empty part keeps one empty row.
    if (!any) {
      const NodeId row = b_.node(body, Role::kTableRow);
      b_.at(b_.node(row, Role::kDataCell)).column_span = columns();
      section.slabs.front().keep_with_next = false;
    }
    return section;
  }

  std::string part_detail(const reason::PartTime& part) const {
    if (part.length <= Duration()) return {};
    std::string detail =
        labels_.say("part-until", {{"minutes", b_.part_time(part.length)},
                                   {"time", clock(timetable_, part.start + part.length)}});
    for (const plan::PartLink& link : part.part->shared) {
      if (!link.text.empty()) detail += " · " + link.text.text;
    }
    return detail;
  }

  page::Slab part_head(const reason::PartTime& part, NodeId table) {
    const NodeId row = b_.node(b_.node(table, Role::kTableHead), Role::kTableRow);
    const NodeId cell = b_.node(row, Role::kHeaderCell);
    b_.at(cell).scope = page::HeaderScope::kColumn;
    b_.at(cell).column_span = has_variations_ ? 3 : 2;
    const Owner title = Owner::of(b_.node(cell, Role::kH2));
    const Owner detail = Owner::of(b_.node(cell, Role::kP));
    std::vector<Owner> numbers;
    for (int i = 0; i < gymnasts_; ++i) {
      const NodeId number = b_.node(row, Role::kHeaderCell);
      b_.at(number).scope = page::HeaderScope::kColumn;
      numbers.push_back(Owner::of(number));
    }
    if (!has_ticks(*part.part)) numbers.clear();
    page::Slab slab;
    slab.block = head_block(part.part->title, part_detail(part), title, detail, numbers);
    slab.space_before = b_.look().part_space;
    slab.keep_with_next = true;
    slab.origin = part.part->title.span;
    slab.outline = page::OutlineEntry{part.part->title.text, 2, 0, {}};
    return slab;
  }

  // A part without anything to tick off has no numbers above it.
  static bool has_ticks(const plan::Part& part) {
    const auto drills = plan::drills_of(part);
    return std::any_of(drills.begin(), drills.end(),
                       [](const plan::Drill* d) { return d->dose.has_value(); });
  }

  Block continued_head(const reason::PartTime& part) const {
    const Owner owner = Owner::none(Artifact::kHeader);
    plan::Words title = part.part->title;
    title.text = labels_.say("continued", {{"part", title.text}});
    const std::size_t numbers = has_ticks(*part.part) ? static_cast<std::size_t>(gymnasts_) : 0;
    return head_block(title, "", owner, owner, std::vector<Owner>(numbers, owner));
  }

  Block head_block(const plan::Words& title, const std::string& detail, Owner title_owner,
                   Owner detail_owner, const std::vector<Owner>& number_owners) const {
    page::WrapBlock words;
    words.gap = b_.look().gap;
    words.children.push_back(b_.text(TextRole::kPart, title.text, title_owner, title.span));
    if (!detail.empty())
      words.children.push_back(b_.text(TextRole::kPartDetail, detail, detail_owner));
    RowBlock row;
    row.gap = b_.look().gap;
    row.align = RowAlign::kLastBaseline;
    row.cells.push_back({Track::flexible(), {std::move(words)}});
    if (!number_owners.empty())
      row.cells.push_back({Track::fixed(ticks_width_), numbers(number_owners)});
    std::vector<Block> lines;
    lines.push_back({std::move(row)});
    lines.push_back(Builder::space(b_.look().row_padding / 2));
    lines.push_back(b_.rule(b_.width(), b_.look().line_width.scaled(1.4), Use::kInk));
    return Builder::stack(std::move(lines));
  }

  // Lines of cells as wide as a tick box, filled by `cell(i)` for gymnast i from 0.
  template <class MakeCell>
  Block gymnast_grid(Length line_gap, MakeCell cell) const {
    std::vector<Block> lines;
    for (int from = 0; from < gymnasts_; from += per_line_) {
      RowBlock line;
      line.gap = tick_gap();
      for (int i = from; i < std::min(from + per_line_, gymnasts_); ++i) {
        line.cells.push_back({Track::fixed(tick_side_), cell(i)});
      }
      lines.push_back({std::move(line)});
    }
    return Builder::stack(std::move(lines), line_gap);
  }

  Block numbers(const std::vector<Owner>& owners) const {
    return gymnast_grid({}, [&](int i) {
      return b_.text(TextRole::kColumn, std::to_string(i + 1), owners[static_cast<std::size_t>(i)],
                     {}, page::Align::kCentre);
    });
  }

  // ---- a drill

  // The clock; beside it the drill with its boxes, and below them, over the whole width, what else
  // there is.
  Block drill_row(const plan::Drill& drill, const reason::DrillTime& time, NodeId body) {
    const NodeId row_node = b_.node(body, Role::kTableRow);
    const Owner clock_owner = Owner::of(b_.node(row_node, Role::kDataCell));
    const NodeId what = b_.node(row_node, Role::kHeaderCell);
    b_.at(what).scope = page::HeaderScope::kRow;
    CardDrill words(session_, drill, time, b_);
    const Length room = b_.width() - clock_width_ - ticks_width_ - b_.look().gap;
    std::vector<Block> beside = {words.name(what, room)};
    std::vector<Block> below = words.dose(what);
    for (Block& cue : words.cues(what)) below.push_back(std::move(cue));
    // Several lines of boxes leave room for dose and cue beside them.
    const bool boxes_are_high = per_line_ < gymnasts_;
    if (boxes_are_high) {
      for (Block& line : below) beside.push_back(std::move(line));
      below = {Builder::space(tick_gap())};
    }
    const NodeId others = has_variations_ ? b_.node(row_node, Role::kDataCell) : what;
    for (Block& line : words.others(others)) below.push_back(std::move(line));

    RowBlock first;
    first.gap = b_.look().gap;
    first.align = RowAlign::kBaseline;
    first.cells.push_back({Track::flexible(), Builder::stack(std::move(beside))});
    first.cells.push_back({Track::fixed(ticks_width_), ticks(drill, row_node)});
    std::vector<Block> lines;
    lines.push_back({std::move(first)});
    for (Block& line : below) lines.push_back(std::move(line));

    RowBlock row;
    row.align = RowAlign::kBaseline;
    row.cells.push_back({Track::fixed(clock_width_),
                         b_.text(TextRole::kClock, clock(timetable_, time.start), clock_owner)});
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(lines))});
    return ruled({std::move(row)});
  }

  // A drill without a dose (a talk, water, a game) is not ticked off; its cells stay empty.
  Block ticks(const plan::Drill& drill, NodeId row_node) {
    std::vector<NodeId> forms;
    for (int i = 0; i < gymnasts_; ++i) {
      const NodeId cell = b_.node(row_node, Role::kDataCell);
      if (!drill.dose) continue;
      forms.push_back(b_.tick_node(
          cell,
          labels_.say("tick-gymnast", {{"n", std::to_string(i + 1)}, {"drill", drill.name.text}})));
    }
    if (forms.empty()) return Builder::space({});
    return gymnast_grid(tick_gap(), [&](int i) {
      return b_.tick_box(tick_side_, forms[static_cast<std::size_t>(i)]);
    });
  }

  // A row with room above and below and a thin line under it.
  Block ruled(Block row) const {
    const Length pad = b_.look().row_padding;
    page::BoxBlock box;
    box.padding = {pad, Length(), pad, Length()};
    box.content.push_back(std::move(row));
    std::vector<Block> lines;
    lines.push_back({std::move(box)});
    lines.push_back(b_.rule(b_.width(), b_.look().hair_width, Use::kHair));
    return Builder::stack(std::move(lines));
  }

  // ---- notes and the end

  Block note_row(const std::vector<const plan::Note*>& run, NodeId body) {
    const NodeId row = b_.node(body, Role::kTableRow);
    const NodeId cell = b_.node(row, Role::kDataCell);
    b_.at(cell).column_span = columns();
    return ruled(b_.notes(cell, run));
  }

  page::Section closing() {
    page::Section section;
    const Length gap = b_.look().row_padding * 2;
    const Owner ends = Owner::of(b_.node(Builder::kRoot, Role::kP));
    section.slabs.push_back({b_.text(TextRole::kStrong, ending(), ends), gap, true});
    const Owner caution = Owner::of(b_.node(Builder::kRoot, Role::kP));
    section.slabs.push_back(
        {b_.text(TextRole::kFine, labels_.say("card-caution"), caution), gap / 2});
    return section;
  }

  // Rounded so that what is left is never more than there is: the end up, the spare time down.
  std::string ending() const {
    const Duration minute = Duration::minutes(1);
    const Duration up = whole_minutes_up(timetable_.total);
    std::string out = timetable_.start
                          ? labels_.say("ends", {{"time", clock_text(*timetable_.start + up)}})
                          : labels_.say("takes", {{"n", std::to_string(up.rounded_minutes())}});
    if (!timetable_.spare) return out;
    const Duration spare = *timetable_.spare;
    const std::string minutes =
        std::to_string((spare < Duration() ? -spare : spare).in_milliseconds() / 60'000);
    if (spare < Duration()) return out + ", " + labels_.say("over", {{"n", minutes}});
    if (spare < minute) return out + ", " + labels_.say("full");
    return out + ", " + labels_.say("spare", {{"n", minutes}});
  }

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  Builder& b_;
  const Labels& labels_;
  int gymnasts_ = kGymnastsUnknown;
  int per_line_ = kGymnastsUnknown;
  Length clock_width_;
  Length ticks_width_;
  Length tick_side_;
  bool has_variations_ = false;
};

}  // namespace

page::Flow coach_card(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder) {
  return CardWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
