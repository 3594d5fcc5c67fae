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
    for (const reason::PartTime& part : timetable_.parts) {
      if (part.length > Duration() || has_content(*part.part, b_))
        sections.push_back(part_section(part, sections.size()));
    }
    if (!session_.typed.empty()) sections.push_back(typed(sections.size()));
    sections.push_back(closing());
    return sections;
  }

  // ---- a part

  page::Section part_section(const reason::PartTime& part, std::size_t place) {
    page::Section section;
    place_ = place;
    rows_.begin(*part.part);
    const NodeId table = b_.node(Builder::kRoot, Role::kTable);
    section.slabs.push_back(part_head(part, table));
    section.continuation = continued_head(part);
    const NodeId body = b_.node(table, Role::kTableBody);
    add_rows(part, body, section);
    // A table body without rows is not a table: an empty part keeps one empty row.
    if (section.slabs.size() == 1) {
      const NodeId row = b_.node(body, Role::kTableRow);
      b_.at(b_.node(row, Role::kDataCell)).column_span = rows_.columns();
      section.slabs.front().keep_with_next = false;
    }
    return section;
  }

  void add_rows(const reason::PartTime& part, NodeId body, page::Section& section) {
    const auto add = [&](std::vector<page::Slab> slabs) {
      for (page::Slab& slab : slabs) section.slabs.push_back(std::move(slab));
    };
    std::vector<const reason::DrillTime*> times;  // of the drills that wait for their columns
    std::vector<const plan::Drill*> waiting;
    const auto flush = [&] {
      add_in_columns(waiting, times, body, section);
      waiting.clear();
      times.clear();
    };
    std::size_t next_drill = 0;
    const std::vector<plan::Step>& steps = part.part->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (const auto* drill = std::get_if<plan::Drill>(&steps[i])) {
        const reason::DrillTime& time = part.drills.at(next_drill++);
        if (!drill->stations.empty()) {
          flush();
          add_circuit(*drill, time, body, section);
        } else if (rows_.is_ticked(*drill)) {
          flush();
          add(rows_.drill(*drill, time, body));
        } else {
          waiting.push_back(drill);
          times.push_back(&time);
        }
      } else if (const auto* move = std::get_if<plan::KitMove>(&steps[i])) {
        flush();
        section.slabs.push_back(rows_.kit_move(*move, start_of(*move, part), body));
        // Kit is fetched for what comes next and put away after what was.
        const bool last = i + 1 == steps.size();
        section.slabs.back().keep_with_next = !last && move->way == plan::KitMove::Way::kPickUp;
      } else if (const auto run = note_run(steps, i); !run.empty()) {
        flush();
        const bool opening = section.slabs.size() == 1;
        if (b_.is_for_reader(*run.front())) add(rows_.notes(run, body));
        i += run.size() - 1;
        // What opens a part stays with the first thing it speaks of.
        if (opening) section.slabs.back().keep_with_next = i + 1 < steps.size();
      }
    }
    flush();
    section.slabs.back().keep_with_next = false;
  }

  // As many columns as have room for about 24 letters behind the clock.
  ColumnStyle style(std::size_t most) const {
    ColumnStyle out;
    out.between = b_.look().gap * 3 / 2;
    out.gap = b_.look().row_padding * 2;
    out.space_before = b_.look().row_padding;
    out.alone = 1500;
    out.three = 1500;
    out.most = 1;
    const Length least = b_.look().text(TextRole::kCue).size * 13;
    for (std::size_t n = 2; n <= most; ++n) {
      if (sets_.column(n, out) >= least) out.most = n;
    }
    return out;
  }

  void add_in_columns(const std::vector<const plan::Drill*>& drills,
                      const std::vector<const reason::DrillTime*>& times, NodeId body,
                      page::Section& section) {
    std::vector<Span> origins;
    for (const plan::Drill* one : drills) origins.push_back(one->span);
    sets_.add(origins, style(kMostInRow), place_, section, [&](std::size_t i, Length width) {
      return rows_.in_column(*drills[i], *times[i], body, width);
    });
  }

  void add_circuit(const plan::Drill& drill, const reason::DrillTime& time, NodeId body,
                   page::Section& section) {
    NodeId list = Builder::kRoot;
    for (page::Slab& slab : rows_.circuit(drill, time, body, list))
      section.slabs.push_back(std::move(slab));
    const reason::DrillTime unknown;
    sets_.add(std::vector<Span>(drill.stations.size(), drill.span), style(2), place_, section,
              [&](std::size_t i, Length width) {
                const bool timed = i < time.stations.size();
                return rows_.station(drill.stations[i], timed ? time.stations[i] : unknown, i, list,
                                     width);
              });
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
    return detail;
  }

  page::Slab part_head(const reason::PartTime& part, NodeId table) {
    const NodeId row = b_.node(b_.node(table, Role::kTableHead), Role::kTableRow);
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
    page::Slab slab;
    slab.block = head_block(part.part->title, part_detail(part), title, detail, numbers);
    slab.space_before = b_.look().part_space;
    slab.keep_with_next = true;
    slab.origin = part.part->title.span;
    slab.outline = page::OutlineEntry{part.part->title.text, 2, 0, {}};
    return slab;
  }

  Block continued_head(const reason::PartTime& part) const {
    const Owner owner = Owner::none(Artifact::kHeader);
    plan::Words title = part.part->title;
    title.text = labels_.say("continued", {{"part", title.text}});
    const std::size_t numbers =
        rows_.part_ticked() ? static_cast<std::size_t>(rows_.ticks().count()) : 0;
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
      row.cells.push_back(
          {Track::fixed(rows_.ticks().width()), rows_.ticks().heads(number_owners)});
    std::vector<Block> lines;
    lines.push_back(b_.part_band({std::move(row)}));
    if (!b_.look().part_fill) lines.push_back(Builder::space(b_.look().row_padding / 2));
    lines.push_back(b_.rule(b_.width(), b_.look().line_width.scaled(1.4), Use::kMain));
    return Builder::stack(std::move(lines));
  }

  // ---- a draft's own lines

  page::Section typed(std::size_t place) {
    page::Section section;
    const Owner head = Owner::of(b_.node(Builder::kRoot, Role::kP));
    section.slabs.push_back({{b_.text(TextRole::kVariationLabel, labels_.say("card-typed"), head)},
                             b_.look().row_padding * 2});
    section.slabs.back().keep_with_next = true;
    ColumnStyle columns = style(kMostInRow);
    columns.gap = Length::pt(1.5);
    columns.three = 0;
    columns.space_before = Length();
    sets_.add(std::vector<Span>(session_.typed.size()), columns, place, section,
              [&](std::size_t i, Length) {
                const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
                // Without its place: as typed means without the typographer's marks.
                return b_.text(TextRole::kFine, session_.typed[i].text, owner);
              });
    return section;
  }

  // ---- the end

  page::Section closing() {
    page::Section section;
    const Length gap = b_.look().row_padding * 2;
    const Owner ends = Owner::of(b_.node(Builder::kRoot, Role::kP));
    const Owner caution = Owner::of(b_.node(Builder::kRoot, Role::kP));
    page::AroundBlock out;
    out.gap = b_.look().gap;
    out.line_gap = gap / 4;
    out.children.push_back(b_.text(TextRole::kStrong, ending(), ends));
    out.children.push_back(b_.text(TextRole::kFine, labels_.say("card-caution"), caution));
    auto pointer = session_.web.empty() ? std::nullopt
                                        : web_pointer(session_.web, TextRole::kFine,
                                                      Length::mm(0.5), Builder::kRoot, b_);
    if (pointer) {
      // The code stands beside the last words: a card has no height to give away.
      out.left.push_back(std::move(pointer->code));
      out.left_width = pointer->side;
      for (Block& one : std::get<page::StackBlock>(pointer->words.content).children)
        out.children.push_back(std::move(one));
    }
    section.slabs.push_back({{std::move(out)}, gap});
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
  CardRows rows_;
  ColumnSets sets_;
  std::size_t place_ = 0;  ///< of the section that is made
};

}  // namespace

page::Flow coach_card(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder) {
  return CardWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
