#include "sheet/card_rows.h"

#include <algorithm>

#include "base/text.h"
#include "sheet/card_drill.h"

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;

CardRows::CardRows(const plan::Session& session, const reason::Timetable& timetable,
                   Builder& builder)
    : session_(session),
      timetable_(timetable),
      b_(builder),
      labels_(builder.labels()),
      ticks_(session, builder) {
  clock_width_ = b_.text_width(TextRole::kClock, "00:00") + b_.look().gap;
  asked_ = session.ticks_card.has_value();
  for (const plan::Part& part : session_.parts) {
    for (const plan::Drill* drill : plan::drills_of(part)) {
      has_variations_ = has_variations_ || !drill->easier.empty() || !drill->harder.empty() ||
                        !drill->substitutes.empty() || !drill->stations.empty();
    }
  }
}

void CardRows::begin(const plan::Part& part) {
  part_ = &part;
  const auto drills = plan::drills_of(part);
  part_ticked_ = std::any_of(drills.begin(), drills.end(),
                             [&](const plan::Drill* drill) { return is_ticked(*drill); });
}

bool CardRows::is_ticked(const plan::Drill& drill) const {
  if (asked_) return counts(drill);
  if (!drill.record.empty()) return true;
  const auto written = [](const plan::Drill& station) { return !station.record.empty(); };
  if (std::any_of(drill.stations.begin(), drill.stations.end(), written)) return true;
  if (lower_ascii(drill.name.text).find(labels_.say("register-word")) != std::string::npos)
    return true;
  if (session_.place.value != plan::Place::kGym || part_ == nullptr ||
      part_->role != plan::PartRole::kMain || !counts(drill))
    return false;
  const auto on_apparatus = [](const plan::Drill& one) { return !one.at.empty(); };
  return on_apparatus(drill) ||
         std::any_of(drill.stations.begin(), drill.stations.end(), on_apparatus);
}

// ---- pieces of a row

Block CardRows::clock_text(std::optional<Duration> start, TextRole role, Owner owner) const {
  if (!start) return Builder::space({});
  return b_.text(role, clock(timetable_, *start), owner);
}

Block CardRows::beside_clock(Block clock, Block content) const {
  RowBlock row;
  row.align = RowAlign::kBaseline;
  row.cells.push_back({Track::fixed(clock_width_), std::move(clock)});
  row.cells.push_back({Track::flexible(), std::move(content)});
  return {std::move(row)};
}

// Room above the first piece and below the last, and a thin line under it. Pieces stay together
// where a page can hold them; of very many at least two stay with either end.
std::vector<page::Slab> CardRows::ruled(std::vector<Block> pieces, Span origin) const {
  constexpr std::size_t kMostTogether = 16;
  const Length pad = b_.look().row_padding;
  std::vector<page::Slab> out;
  const std::size_t count = pieces.size();
  for (std::size_t i = 0; i < count; ++i) {
    const bool last = i + 1 == count;
    page::BoxBlock box;
    box.padding = {i == 0 ? pad : Length(), Length(), last ? pad : Length(), Length()};
    box.content.push_back(std::move(pieces[i]));
    std::vector<Block> lines;
    lines.push_back({std::move(box)});
    if (last) lines.push_back(b_.rule(b_.width(), b_.look().hair_width, Use::kHair));
    page::Slab slab;
    slab.block = Builder::stack(std::move(lines));
    slab.keep_with_next = !last && (count <= kMostTogether || i == 0 || i + 2 == count);
    slab.origin = origin;
    out.push_back(std::move(slab));
  }
  return out;
}

// ---- a drill

// Below the clock time there is room beside the drill's other lines: a figure stands there where it
// is large enough to be recognised, and takes nothing from the words.
Block CardRows::with_figure(Block clock, const plan::Drill& drill, Length width, Length height,
                            NodeId cell) {
  const Length least = Length::mm(7);
  const Length air = b_.look().row_padding / 2;
  // A box beside the name may stand a little lower than the clock.
  const Length most =
      height - b_.look().text(TextRole::kClock).leading - air - b_.look().tick_box / 8;
  if (drill.figures.empty() || most < least) return clock;
  const auto scene = b_.scene(drill.figures.front().text, session_, figure::Extent::kGlance);
  if (!scene) return clock;
  const Size size = b_.figure_size(*scene, {width, most});
  if (std::max(size.width, size.height) < least) return clock;
  std::vector<Block> both;
  both.push_back(std::move(clock));
  both.push_back(Builder::space(air));
  both.push_back(b_.figure(*scene, size, cell));
  return Builder::stack(std::move(both));
}

Block CardRows::boxes(const plan::Drill& drill, const std::vector<NodeId>& cells) const {
  return is_ticked(drill) ? ticks_.boxes(cells, drill) : Builder::space({});
}

// The drill with its boxes beside it, and below them, over the whole width, what else there is.
Block CardRows::drill_lines(const plan::Drill& drill, const reason::DrillTime& time, NodeId what,
                            NodeId others, const std::vector<NodeId>& cells) {
  CardDrill words(session_, drill, time, b_);
  const Length gap = b_.look().gap;
  std::vector<Block> beside = {words.name(what, b_.width() - clock_width_ - ticks_.width() - gap)};
  std::vector<Block> below = words.dose(what);
  const bool high = ticks_.has_several_lines() || !drill.record.empty();
  const Length room = b_.width() - clock_width_;
  if (!high) {
    for (Block& line : words.rest(what, others, room)) below.push_back(std::move(line));
  } else {
    for (Block& line : words.cues(what)) below.push_back(std::move(line));
  }
  // High boxes leave room for dose and cue beside them.
  if (high) {
    for (Block& line : below) beside.push_back(std::move(line));
    below = {Builder::space(ticks_.gap())};
    for (Block& line : words.others(others, room)) below.push_back(std::move(line));
  }

  RowBlock first;
  first.gap = gap;
  first.align = RowAlign::kBaseline;
  first.cells.push_back({Track::flexible(), Builder::stack(std::move(beside))});
  first.cells.push_back({Track::fixed(ticks_.width()), boxes(drill, cells)});
  std::vector<Block> lines;
  lines.push_back({std::move(first)});
  for (Block& line : below) lines.push_back(std::move(line));
  return Builder::stack(std::move(lines));
}

std::vector<page::Slab> CardRows::drill(const plan::Drill& drill, const reason::DrillTime& time,
                                        NodeId body) {
  const NodeId row = b_.node(body, Role::kTableRow);
  const Owner clock_owner = Owner::of(b_.node(row, Role::kDataCell));
  const NodeId what = b_.node(row, Role::kHeaderCell);
  b_.at(what).scope = page::HeaderScope::kRow;
  const NodeId others = has_variations_ ? b_.node(row, Role::kDataCell) : what;
  const std::vector<NodeId> cells = ticks_.cells(row, Role::kDataCell);
  std::vector<Block> pieces;
  Block lines = drill_lines(drill, time, what, others, cells);
  Block clock_and_figure = with_figure(clock_text(shown(time.start), TextRole::kClock, clock_owner),
                                       drill, clock_width_ - b_.look().gap,
                                       b_.height_of(lines, b_.width() - clock_width_), what);
  pieces.push_back(beside_clock(std::move(clock_and_figure), std::move(lines)));
  return ruled(std::move(pieces), drill.span);
}

Block CardRows::in_column(const plan::Drill& drill, const reason::DrillTime& time, NodeId body,
                          Length width) {
  const NodeId row = b_.node(body, Role::kTableRow);
  const Owner clock_owner = Owner::of(b_.node(row, Role::kDataCell));
  const NodeId what = b_.node(row, Role::kHeaderCell);
  b_.at(what).scope = page::HeaderScope::kRow;
  const NodeId others = has_variations_ ? b_.node(row, Role::kDataCell) : what;
  if (part_ticked_) ticks_.cells(row, Role::kDataCell);
  CardDrill words(session_, drill, time, b_);
  // The clock and the figure below it take as little as they can.
  const Length left = std::max(b_.text_width(TextRole::kVariationLabel, "00:00"), Length::mm(9));
  const Length room = width - left - b_.look().gap * 2 / 3;
  std::vector<Block> lines = {words.name(what, room)};
  for (Block& line : words.dose(what)) lines.push_back(std::move(line));
  for (Block& line : words.rest(what, others, room)) lines.push_back(std::move(line));
  Block all = Builder::stack(std::move(lines));
  RowBlock out;
  out.gap = b_.look().gap * 2 / 3;
  out.align = RowAlign::kBaseline;
  out.cells.push_back(
      {Track::fixed(left),
       with_figure(clock_text(shown(time.start), TextRole::kVariationLabel, clock_owner), drill,
                   left, b_.height_of(all, room), what)});
  out.cells.push_back({Track::flexible(), std::move(all)});
  return {std::move(out)};
}

// ---- a circuit

std::vector<page::Slab> CardRows::circuit(const plan::Drill& drill, const reason::DrillTime& time,
                                          NodeId body, NodeId& list) {
  const NodeId row = b_.node(body, Role::kTableRow);
  const Owner clock_owner = Owner::of(b_.node(row, Role::kDataCell));
  const NodeId what = b_.node(row, Role::kHeaderCell);
  b_.at(what).scope = page::HeaderScope::kRow;
  const NodeId others = b_.node(row, Role::kDataCell);  // a plan with stations has this column
  circuit_cells_ = part_ticked_ ? ticks_.cells(row, Role::kDataCell) : std::vector<NodeId>();
  Block lines;
  if (is_ticked(drill)) {
    lines = drill_lines(drill, time, what, others, circuit_cells_);
  } else {
    CardDrill words(session_, drill, time, b_);
    const Length room = b_.width() - clock_width_;
    std::vector<Block> all = {words.name(what, room)};
    for (Block& line : words.dose(what)) all.push_back(std::move(line));
    for (Block& line : words.rest(what, others, room)) all.push_back(std::move(line));
    lines = Builder::stack(std::move(all));
  }
  // A row of their own: on two pages they are read behind the boxes of the first.
  const NodeId stations = b_.node(b_.node(body, Role::kTableRow), Role::kDataCell);
  b_.at(stations).column_span = columns();
  list = b_.node(stations, Role::kList);
  b_.at(list).ordered = true;
  page::BoxBlock box;
  box.padding = {b_.look().row_padding, Length(), Length(), Length()};
  box.content.push_back(
      beside_clock(clock_text(shown(time.start), TextRole::kClock, clock_owner), std::move(lines)));
  std::vector<page::Slab> out(1);
  out.front().block = {std::move(box)};
  out.front().keep_with_next = true;
  out.front().origin = drill.span;
  return out;
}

// Its number, its figure below it, and in as few lines as it can be the words: the coach looks for
// the number and reads the cue.
Block CardRows::station(const plan::Drill& station, const reason::DrillTime& time,
                        std::size_t index, NodeId list, Length width) {
  const NodeId item = b_.node(list, Role::kListItem);
  const Owner number = Owner::of(b_.node(item, Role::kLabel));
  const NodeId body = b_.node(item, Role::kListBody);
  CardDrill words(session_, station, time, b_);
  const Length left = b_.look().figure * 3 / 4 + b_.look().gap;
  const Length room = width - left;
  const bool write_in = !station.record.empty() && !circuit_cells_.empty();
  std::vector<Block> lines = words.station(body, room);
  for (Block& line : words.others(body, room)) lines.push_back(std::move(line));
  if (write_in) lines.push_back(ticks_.boxes(circuit_cells_, station));
  Block all = Builder::stack(std::move(lines));
  Block beside = with_figure(b_.text(TextRole::kStation, std::to_string(index + 1), number),
                             station, left - b_.look().gap, b_.height_of(all, room), body);
  RowBlock row;
  row.align = RowAlign::kBaseline;
  row.cells.push_back({Track::fixed(left), std::move(beside)});
  row.cells.push_back({Track::flexible(), std::move(all)});
  return {std::move(row)};
}

// ---- kit and notes

// A slim line on a quiet ground: something to do between two drills, and nothing to tick off.
page::Slab CardRows::kit_move(const plan::KitMove& move, std::optional<Duration> start,
                              NodeId body) {
  const NodeId row = b_.node(body, Role::kTableRow);
  const Owner clock_owner = Owner::of(b_.node(row, Role::kDataCell));
  const NodeId cell = b_.node(row, Role::kDataCell);
  b_.at(cell).column_span = columns() - 1;
  RowBlock line;
  line.gap = b_.look().gap * 2 / 3;
  line.align = RowAlign::kBaseline;
  const Length sign = b_.look().text(TextRole::kCue).size.scaled(0.86);
  line.cells.push_back({Track::fixed(sign), b_.kit_sign(move.way, sign)});
  line.cells.push_back({Track::flexible(), b_.paragraph(b_.kit_move_pieces(move), TextRole::kCue,
                                                        Owner::of(b_.node(cell, Role::kP)))});
  page::BoxBlock ground;
  const Length pad = b_.look().row_padding * 2 / 3;
  ground.padding = {pad, Length(), pad, Length()};
  ground.fill = b_.colour(Use::kTint);
  ground.content.push_back(
      beside_clock(clock_text(start, TextRole::kDose, clock_owner), {std::move(line)}));
  std::vector<Block> lines;
  lines.push_back({std::move(ground)});
  lines.push_back(b_.rule(b_.width(), b_.look().hair_width, Use::kHair));
  page::Slab slab;
  slab.block = Builder::stack(std::move(lines));
  slab.origin = move.span;
  return slab;
}

std::vector<page::Slab> CardRows::notes(const std::vector<const plan::Note*>& run, NodeId body) {
  const NodeId row = b_.node(body, Role::kTableRow);
  const NodeId cell = b_.node(row, Role::kDataCell);
  b_.at(cell).column_span = columns();
  return ruled(b_.note_pieces(cell, run, b_.width()), run.front()->words.span);
}

}  // namespace chalkleaf::sheet
