#include "sheet/card_rows.h"

#include <algorithm>

#include "base/text.h"
#include "sheet/card_drill.h"
#include "sheet/dose_text.h"

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

void CardRows::begin(const reason::PartTime& part) {
  if (part_ == part.part) return;
  part_ = part.part;
  common_ = common_of(part);
  const auto drills = plan::drills_of(*part.part);
  part_ticked_ = std::any_of(drills.begin(), drills.end(),
                             [&](const plan::Drill* drill) { return is_ticked(*drill); });
}

// Of two drills and more; water and talk have nothing of it.
InCommon CardRows::common_of(const reason::PartTime& part) const {
  const auto drills = plan::drills_of(*part.part);
  std::optional<InCommon> out;
  std::size_t count = 0;
  for (std::size_t i = 0; i < drills.size() && i < part.drills.size(); ++i) {
    const plan::Drill& drill = *drills[i];
    if (!counts(drill)) continue;
    InCommon own;
    for (const type::Inline& one : CardDrill(session_, drill, part.drills[i], b_).place_pieces())
      own.place += one.text;
    if (drill.dose && b_.is_dense()) {
      const plan::Dose dose = with_rest(*drill.dose, session_.timings);
      own.rest = dose.rest;
      own.every = dose.every;
      own.effort = dose.effort;
    }
    if (!out) out = own;
    if (out->place != own.place) out->place.clear();
    if (out->rest != own.rest) out->rest.reset();
    if (out->every != own.every) out->every.reset();
    if (out->effort != own.effort) out->effort.reset();
    ++count;
  }
  return count > 1 ? *out : InCommon();
}

bool CardRows::is_ticked(const plan::Drill& drill) const {
  if (asked_) return counts(drill);
  if (!drill.record.empty()) return true;
  if (part_ != nullptr && part_->station_of && goes_round(*part_)) return false;
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

// Several groups come to the station: its own card has a box for each turn.
bool CardRows::goes_round(const plan::Part& part) const {
  const reason::Seat* seat = timetable_.seat_of(part);
  if (seat == nullptr || !seat->station) return false;
  const auto& visits = timetable_.rotations[seat->rotation].visits;
  return std::count_if(visits.begin(), visits.end(), [&](const rota::Visit& visit) {
           return visit.station == *seat->station;
         }) > 1;
}

// ---- pieces of a row

CardDrill CardRows::words_of(const plan::Drill& drill, const reason::DrillTime& time) const {
  CardDrill out(session_, drill, time, b_);
  out.leave_out(common_);
  return out;
}

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
  CardDrill words = words_of(drill, time);
  const Length gap = b_.look().gap;
  std::vector<Block> beside = {words.name(what, b_.width() - clock_width_ - ticks_.width() - gap)};
  std::vector<Block> below = words.dose(what);
  const bool high = ticks_.has_several_lines() || !drill.record.empty();
  const Length room = b_.width() - clock_width_;
  if (!high) {
    for (Block& line : words.rest(what, others, room)) below.push_back(std::move(line));
    run_on(below);
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
  CardDrill words = words_of(drill, time);
  // The clock and the figure below it take as little as they can.
  const Length narrow =
      std::max(b_.text_width(TextRole::kVariationLabel, "00:00"),
               b_.text_width(TextRole::kVariationLabel, sheet::clock(timetable_, time.start)));
  const Length left = std::max(narrow, Length::mm(9));
  const Length room = width - left - b_.look().gap * 2 / 3;
  std::vector<Block> lines = {words.name(what, room)};
  for (Block& line : words.dose(what)) lines.push_back(std::move(line));
  for (Block& line : words.rest(what, others, room)) lines.push_back(std::move(line));
  run_on(lines);
  const Length gap = b_.look().gap * 2 / 3;
  const Length high = b_.height_of(Builder::stack(lines), room);
  const NodeId first = b_.next_node();
  Block clock = clock_text(shown(time.start), TextRole::kVariationLabel, clock_owner);
  Block out = beside_or_around(with_figure(clock, drill, left, high, what), left, gap, lines, room);
  if (b_.arrangement() != Arrangement::kClose) return out;
  // What warms up and calms down is known by heart. There, and where it costs a line, the figure
  // goes last of all to save a side.
  Block without =
      beside_or_around(std::move(clock), narrow, gap, std::move(lines), width - narrow - gap);
  const bool by_heart = part_->role != plan::PartRole::kMain;
  if (!by_heart && b_.height_of(out, width) <= b_.height_of(without, width)) return out;
  b_.drop_from(first);
  return without;
}

// All in one paragraph, where it cannot be had on one sheet else.
void CardRows::run_on(std::vector<Block>& lines) const {
  const bool all_text = std::all_of(lines.begin(), lines.end(), [](const Block& block) {
    return std::holds_alternative<page::TextBlock>(block.content);
  });
  if (b_.arrangement() != Arrangement::kClose || !all_text || lines.size() < 2) return;
  Block one = Builder::run_together(std::move(lines), b_.piece(TextRole::kCue, "\u2002"));
  lines.clear();
  lines.push_back(std::move(one));
}

// Where paper is dear the words go on below what stands at their left.
Block CardRows::beside_or_around(Block left, Length left_width, Length gap,
                                 std::vector<Block> lines, Length room) const {
  if (!b_.is_dense()) {
    RowBlock out;
    out.gap = gap;
    out.align = RowAlign::kBaseline;
    out.cells.push_back({Track::fixed(left_width), std::move(left)});
    out.cells.push_back({Track::flexible(), Builder::stack(std::move(lines))});
    return {std::move(out)};
  }
  // The first lines of both on one level.
  const Length lower = b_.baseline_of(lines.front(), room) - b_.baseline_of(left, left_width);
  const auto* first = std::get_if<page::TextBlock>(&lines.front().content);
  const Length line = first != nullptr ? first->leading : b_.height_of(lines.front(), room);
  const Length high = std::max(Length(), lower) + b_.height_of(left, left_width);
  const bool clock_only = std::holds_alternative<page::TextBlock>(left.content);
  std::vector<Block> lowered;
  lowered.push_back(Builder::space(std::max(Length(), lower)));
  lowered.push_back(std::move(left));
  // A clock is as high as the line beside it.
  if (clock_only && high > line) lowered.push_back(Builder::space(line - high));
  page::AroundBlock out;
  out.left.push_back(Builder::stack(std::move(lowered)));
  out.left_width = left_width;
  out.gap = gap;
  out.left_read = page::AroundBlock::Read::kFirst;
  out.children = std::move(lines);
  return {std::move(out)};
}

// ---- a circuit

Block CardRows::circuit(const plan::Drill& drill, const reason::DrillTime& time, NodeId body,
                        NodeId& list, Length width) {
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
    CardDrill words = words_of(drill, time);
    const Length room = width - clock_width_;
    std::vector<Block> all = {words.name(what, room)};
    for (Block& line : words.dose(what)) all.push_back(std::move(line));
    for (Block& line : words.rest(what, others, room)) all.push_back(std::move(line));
    run_on(all);
    lines = Builder::stack(std::move(all));
  }
  // A row of their own: on two pages they are read behind the boxes of the first.
  const NodeId stations = b_.node(b_.node(body, Role::kTableRow), Role::kDataCell);
  b_.at(stations).column_span = columns();
  list = b_.node(stations, Role::kList);
  b_.at(list).ordered = true;
  return beside_clock(clock_text(shown(time.start), TextRole::kClock, clock_owner),
                      std::move(lines));
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
  run_on(lines);
  if (write_in) lines.push_back(ticks_.boxes(circuit_cells_, station));
  const Length high = b_.height_of(Builder::stack(lines), room);
  Block beside = with_figure(b_.text(TextRole::kStation, std::to_string(index + 1), number),
                             station, left - b_.look().gap, high, body);
  return beside_or_around(std::move(beside), left - b_.look().gap, b_.look().gap, std::move(lines),
                          room);
}

// ---- kit and notes

// A slim line on a quiet ground: something to do between two drills, and nothing to tick off.
Block CardRows::kit_move(const plan::KitMove& move, std::optional<Duration> start, NodeId body,
                         Length width) {
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
  lines.push_back(b_.rule(width, b_.look().hair_width, Use::kHair));
  return Builder::stack(std::move(lines));
}

Block CardRows::note(const std::vector<const plan::Note*>& run, NodeId body, Length width) {
  const NodeId row = b_.node(body, Role::kTableRow);
  const NodeId cell = b_.node(row, Role::kDataCell);
  b_.at(cell).column_span = columns();
  return Builder::stack(b_.note_pieces(cell, run, width));
}

std::vector<page::Slab> CardRows::notes(const std::vector<const plan::Note*>& run, NodeId body) {
  const NodeId row = b_.node(body, Role::kTableRow);
  const NodeId cell = b_.node(row, Role::kDataCell);
  b_.at(cell).column_span = columns();
  return ruled(b_.note_pieces(cell, run, b_.width()), run.front()->words.span);
}

}  // namespace chalkleaf::sheet
