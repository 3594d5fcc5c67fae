// The coach card: for the hand, at arm's length, in a dim hall, by someone who has never seen the
// plan.
//
// Each part is a table. Its head is the part's heading and, where a coach ticks off, the numbers of
// the gymnasts; each drill is a row: when, what and how much, the cue, what is easier and harder,
// and a box per gymnast. Rows without boxes stand beside each other in columns that are read down.
// A circuit is one row with its stations numbered below it, two beside each other. Tested by
// tests/sheet/coach_card_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "sheet/builder.h"
#include "sheet/card_opening.h"
#include "sheet/card_rows.h"
#include "sheet/column_sets.h"
#include "sheet/web_pointer.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

class CardWriter {
 public:
  CardWriter(const plan::Session& session, const reason::Timetable& timetable, Builder& builder)
      : session_(session),
        timetable_(timetable),
        b_(builder),
        labels_(builder.labels()),
        rows_(session, timetable, builder),
        sets_(builder) {}

  page::Flow write() {
    const std::string kind = labels_.say("card");
    return b_.finish(sets_.write_twice(session_, kind, [&] { return sections(); }), session_, kind);
  }

 private:
  std::vector<page::Section> sections() {
    std::vector<page::Section> sections;
    sections.push_back(card_opening(session_, timetable_, rows_.ticks().meaning(), b_));
    std::vector<FlowItem> items;
    for (const reason::PartTime& part : timetable_.parts) {
      if (part.length > Duration() || has_content(*part.part, b_)) add_part(part, items);
    }
    const bool ends_in_column = b_.is_dense() && session_.typed.empty();
    if (ends_in_column) items.push_back(closing_item());
    sections.push_back(page::Section());
    sets_.add(items, style(), sections.size() - 1, sections.back());
    if (!session_.typed.empty()) sections.push_back(typed(sections.size()));
    if (!ends_in_column) sections.push_back(closing());
    return sections;
  }

  // ---- a part

  /// A part's table, whose nodes are made with its heading, and the list of the circuit in it.
  struct Table {
    const reason::PartTime* part = nullptr;
    NodeId body = Builder::kRoot;
    NodeId stations = Builder::kRoot;
  };
  using TablePtr = std::shared_ptr<Table>;

  void add_part(const reason::PartTime& part, std::vector<FlowItem>& items) {
    const auto table = std::make_shared<Table>();
    table->part = &part;
    rows_.begin(part);
    const std::size_t first = items.size();
    FlowItem head;
    head.kind = FlowItem::Kind::kHead;
    head.origin = part.part->title.span;
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{part.part->title.text, 2, 0, {}};
    if (rows_.part_ticked()) head.most = 1;  // over the boxes
    items.push_back(std::move(head));
    add_rows(table, items);
    const bool empty = items.size() == first + 1;
    items[first].make = [this, table, empty](Length width) {
      return part_head(*table, width, empty);
    };
    items.back().keep_with_next = false;
    // The numbers above boxes are needed; a heading alone is not, where it cannot be had on one
    // sheet else.
    std::size_t end = items.size();
    if (b_.arrangement() == Arrangement::kClose) {
      while (end > first + 1 && items[end - 1].most > 1 && !items[end - 1].slabs) --end;
    }
    const auto again = std::make_shared<const Block>(continued_head(part));
    for (std::size_t i = first + 1; i < end; ++i) items[i].continuation = again;
  }

  void add_rows(const TablePtr& table, std::vector<FlowItem>& items) {
    const reason::PartTime& part = *table->part;
    std::size_t next_drill = 0;
    const std::vector<plan::Step>& steps = part.part->steps;
    const std::size_t opening = items.size();
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (const auto* drill = std::get_if<plan::Drill>(&steps[i])) {
        const reason::DrillTime& time = part.drills.at(next_drill++);
        if (drill->stations.empty()) {
          items.push_back(drill_item(*drill, time, table));
        } else {
          add_circuit(*drill, time, table, items);
        }
      } else if (const auto* move = std::get_if<plan::KitMove>(&steps[i])) {
        FlowItem item = other_item(move->span);
        item.make = [this, move, table](Length width) {
          rows_.begin(*table->part);
          return rows_.kit_move(*move, start_of(*move, *table->part), table->body, width);
        };
        // Kit is fetched for what comes next and put away after what was.
        item.keep_with_next = move->way == plan::KitMove::Way::kPickUp;
        items.push_back(std::move(item));
      } else if (const auto run = note_run(steps, i); !run.empty()) {
        i += run.size() - 1;
        if (!b_.is_for_reader(*run.front())) continue;
        items.push_back(notes_item(run, table));
        // What opens a part stays with the first thing it speaks of.
        items.back().keep_with_next = items.size() == opening + 1;
      }
    }
  }

  FlowItem drill_item(const plan::Drill& drill, const reason::DrillTime& time,
                      const TablePtr& table) {
    FlowItem out;
    out.origin = drill.span;
    out.three = 1500;
    if (rows_.is_ticked(drill)) {
      out.slabs = [this, &drill, &time, table] {
        rows_.begin(*table->part);
        return rows_.drill(drill, time, table->body);
      };
    } else {
      out.make = [this, &drill, &time, table](Length width) {
        rows_.begin(*table->part);
        return rows_.in_column(drill, time, table->body, width);
      };
    }
    return out;
  }

  // A paragraph stands in a column; tables and pictures need the whole width.
  FlowItem notes_item(const std::vector<const plan::Note*>& run, const TablePtr& table) {
    FlowItem out = other_item(run.front()->words.span);
    if (is_paragraph(run)) {
      out.make = [this, run, table](Length width) {
        rows_.begin(*table->part);
        return rows_.note(run, table->body, width);
      };
    } else {
      out.slabs = [this, run, table] {
        rows_.begin(*table->part);
        return rows_.notes(run, table->body);
      };
    }
    return out;
  }

  // As many columns as have room for about 24 letters behind the clock.
  ColumnStyle style() const {
    ColumnStyle out;
    out.between = b_.look().gap * 3 / 2;
    out.gap = b_.look().row_padding * 2;
    out.above_head = b_.look().part_space;
    out.below_head = b_.look().row_padding;
    out.alone = 1500;
    out.head = b_.is_dense() ? 1000 : 12000;  // across, where there is room
    out.most = 1;
    const Length least = b_.look().text(TextRole::kCue).size * 13;
    for (std::size_t n = 2; n <= kMostInRow; ++n) {
      if (sets_.column(n, out) >= least) out.most = n;
    }
    return out;
  }

  void add_circuit(const plan::Drill& drill, const reason::DrillTime& time, const TablePtr& table,
                   std::vector<FlowItem>& items) {
    FlowItem head;
    head.origin = drill.span;
    head.keep_with_next = true;
    if (rows_.is_ticked(drill)) head.most = 1;
    head.make = [this, &drill, &time, table](Length width) {
      rows_.begin(*table->part);
      return rows_.circuit(drill, time, table->body, table->stations, width);
    };
    items.push_back(std::move(head));
    for (std::size_t i = 0; i < drill.stations.size(); ++i) {
      FlowItem item;
      item.origin = drill.span;
      item.most = 2;
      item.goes_on = true;
      item.make = [this, &drill, &time, table, i](Length width) {
        const reason::DrillTime unknown;
        const bool timed = i < time.stations.size();
        return rows_.station(drill.stations[i], timed ? time.stations[i] : unknown, i,
                             table->stations, width);
      };
      items.push_back(std::move(item));
    }
  }

  static std::optional<Duration> start_of(const plan::KitMove& move, const reason::PartTime& part) {
    for (const reason::KitMoveTime& one : part.kit_moves) {
      if (one.move == &move) return one.start;
    }
    return std::nullopt;
  }

  // Who comes to a station, and when: `28 min · 9:25 A · 9:55 D`.
  std::string station_detail(const reason::PartTime& part, const reason::Seat& seat) const {
    const rota::Rotation& rotation = timetable_.rotations[seat.rotation];
    std::string out = b_.part_time(part.length);
    for (std::size_t t = 0; t < rotation.turns.size(); ++t) {
      std::string who;
      for (const rota::Visit& visit : rotation.visits) {
        if (visit.turn == t && visit.station == *seat.station)
          who += (who.empty() ? "" : " + ") + rotation.groups[visit.group].name.text;
      }
      if (who.empty()) continue;
      const auto& begins = rotation.turns[t].clock;
      out += " · " +
             (begins ? chalkleaf::clock_text(TimeOfDay{Duration::minutes(*begins)}) + " "
                     : std::string()) +
             who;
    }
    return out;
  }

  std::string part_detail(const reason::PartTime& part) const {
    if (part.length <= Duration()) return {};
    const reason::Seat* seat = timetable_.seat_of(*part.part);
    if (seat != nullptr && seat->station) return station_detail(part, *seat);
    if (part.part->station_of) return b_.part_time(part.length);
    const Duration end = part.start + part.length;
    // By the clock the last part ends when the session does, rounded like that (see ending()); a
    // stopwatch shows the seconds.
    const bool rounded = timetable_.start && end == timetable_.total;
    const Duration shown = rounded ? whole_minutes_up(end) : end;
    std::string detail = labels_.say(
        "part-until", {{"minutes", b_.part_time(part.length)}, {"time", clock(timetable_, shown)}});
    for (const plan::PartLink& link : part.part->shared) {
      if (!link.text.empty()) detail += " · " + link.text.text;
    }
    if (const std::string common = rows_.common().words(labels_); !common.empty())
      detail += " · " + common;
    return detail;
  }

  // With the nodes of its table.
  Block part_head(Table& table, Length width, bool empty) {
    const reason::PartTime& part = *table.part;
    rows_.begin(part);
    const NodeId node = b_.node(Builder::kRoot, Role::kTable);
    const NodeId row = b_.node(b_.node(node, Role::kTableHead), Role::kTableRow);
    const NodeId cell = b_.node(row, Role::kHeaderCell);
    b_.at(cell).scope = page::HeaderScope::kColumn;
    b_.at(cell).column_span = rows_.word_columns();
    const Owner title = Owner::of(b_.node(cell, Role::kH2));
    const Owner detail = Owner::of(b_.node(cell, Role::kP));
    std::vector<Owner> numbers;
    if (rows_.part_ticked()) {
      for (const NodeId number : rows_.ticks().cells(row, Role::kHeaderCell))
        numbers.push_back(Owner::of(number));
    }
    table.body = b_.node(node, Role::kTableBody);
    // A table body without rows is not a table: an empty part keeps one empty row.
    if (empty) {
      const NodeId only = b_.node(table.body, Role::kTableRow);
      b_.at(b_.node(only, Role::kDataCell)).column_span = rows_.columns();
    }
    return head_block(part.part->title, part_detail(part), title, detail, numbers, width);
  }

  Block continued_head(const reason::PartTime& part) const {
    const Owner owner = Owner::none(Artifact::kHeader);
    plan::Words title = part.part->title;
    title.text = labels_.say("continued", {{"part", title.text}});
    const std::size_t numbers =
        rows_.part_ticked() ? static_cast<std::size_t>(rows_.ticks().count()) : 0;
    return head_block(title, "", owner, owner, std::vector<Owner>(numbers, owner), b_.width());
  }

  Block head_block(const plan::Words& title, const std::string& detail, Owner title_owner,
                   Owner detail_owner, const std::vector<Owner>& number_owners,
                   Length width) const {
    std::vector<Block> words = {b_.text(TextRole::kPart, title.text, title_owner, title.span)};
    if (!detail.empty()) {
      std::vector<type::Inline> pieces;
      constexpr std::string_view kBetween = " · ";
      for (std::size_t at = 0; at < detail.size();) {
        const std::size_t end = std::min(detail.find(kBetween, at), detail.size());
        if (!pieces.empty())
          pieces.push_back(b_.piece(TextRole::kPartDetail, std::string(page::kSeparator)));
        pieces.push_back(b_.piece(TextRole::kPartDetail, detail.substr(at, end - at)));
        at = std::min(end + kBetween.size(), detail.size());
      }
      words.push_back(b_.paragraph(std::move(pieces), TextRole::kPartDetail, detail_owner));
    }
    RowBlock row;
    row.gap = b_.look().gap;
    row.align = RowAlign::kLastBaseline;
    row.cells.push_back(
        {Track::flexible(),
         Builder::run_together(std::move(words), b_.piece(TextRole::kPartDetail, "\u2002"))});
    if (!number_owners.empty())
      row.cells.push_back(
          {Track::fixed(rows_.ticks().width()), rows_.ticks().heads(number_owners)});
    std::vector<Block> lines;
    lines.push_back(b_.part_band({std::move(row)}));
    if (!b_.look().part_fill) lines.push_back(Builder::space(b_.look().row_padding / 2));
    lines.push_back(b_.rule(width, b_.look().line_width.scaled(1.4), Use::kMain));
    return Builder::stack(std::move(lines));
  }

  // ---- a draft's own lines

  page::Section typed(std::size_t place) {
    page::Section section;
    const Owner head = Owner::of(b_.node(Builder::kRoot, Role::kP));
    section.slabs.push_back({{b_.text(TextRole::kVariationLabel, labels_.say("card-typed"), head)},
                             b_.look().row_padding * 2});
    section.slabs.back().keep_with_next = true;
    ColumnStyle columns = style();
    columns.gap = Length::pt(3);  // half of it between lines
    std::vector<FlowItem> items;
    for (const plan::Words& line : session_.typed) {
      FlowItem item = other_item({});
      item.make = [this, &line](Length) {
        // Without its place: as typed means without the typographer's marks.
        return b_.text(TextRole::kFine, line.text, Owner::of(b_.node(Builder::kRoot, Role::kP)));
      };
      items.push_back(std::move(item));
    }
    sets_.add(items, columns, place, section);
    return section;
  }

  // ---- the end

  Block ending_block() {
    const Length gap = b_.look().row_padding * 2;
    const Owner ends = Owner::of(b_.node(Builder::kRoot, Role::kP));
    const Owner caution = Owner::of(b_.node(Builder::kRoot, Role::kP));
    page::AroundBlock out;
    out.gap = b_.look().gap;
    out.line_gap = gap / 4;
    std::vector<Block> words = {b_.text(TextRole::kStrong, ending(), ends),
                                b_.text(TextRole::kFine, labels_.say("card-caution"), caution)};
    auto pointer = session_.web.empty() ? std::nullopt
                                        : web_pointer(session_.web, TextRole::kFine,
                                                      Length::mm(0.5), Builder::kRoot, b_);
    if (pointer) {
      // The code stands beside the last words: a card has no height to give away.
      out.left.push_back(std::move(pointer->code));
      out.left_width = pointer->side;
      for (Block& one : std::get<page::StackBlock>(pointer->words.content).children)
        words.push_back(std::move(one));
    }
    if (b_.is_dense()) {
      out.children = {Builder::run_together(std::move(words), b_.piece(TextRole::kFine, "\u2002"))};
    } else {
      out.children = std::move(words);
    }
    return {std::move(out)};
  }

  page::Section closing() {
    page::Section section;
    section.slabs.push_back({ending_block(), b_.look().row_padding * 2});
    return section;
  }

  // Where paper is dear it fills what a column leaves.
  FlowItem closing_item() {
    FlowItem out = other_item({});
    out.most = 2;
    out.make = [this](Length width) {
      std::vector<Block> lines;
      lines.push_back(Builder::space(b_.look().row_padding));
      lines.push_back(b_.rule(width, b_.look().line_width, Use::kMain));
      lines.push_back(Builder::space(b_.look().row_padding));
      lines.push_back(ending_block());
      return Builder::stack(std::move(lines));
    };
    return out;
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
  CardRows rows_;
  ColumnSets sets_;
};

}  // namespace

page::Flow coach_card(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder) {
  return CardWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
