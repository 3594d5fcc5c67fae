// See the header. For the wall of the office: a table of the sessions, each with a bar of its parts
// as long as they take, and a grid of the days of practice at home. The columns of the two stand on
// no common lines on purpose: one is read by row, the other by day.
#include "sheet/week_sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"
#include "page/shapes.h"
#include "sheet/builder.h"
#include "sheet/home_boxes.h"
#include "sheet/typography.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

constexpr std::int64_t kDays = 7;

Date day_after(Date first, std::int64_t days) {
  return date_from_days(days_since_epoch(first) + days);
}

/// One session on one day.
struct Row {
  Date day;
  const WeekPlan* plan = nullptr;
};

class WeekWriter {
 public:
  WeekWriter(Date first, Builder& builder)
      : first_(first), b_(builder), labels_(builder.labels()), gap_(builder.look().gap * 3 / 2) {
    day_ = b_.text_width(TextRole::kPart, "Wed") + b_.look().gap;
    for (std::int64_t i = 0; i < kDays; ++i) {
      const Date day = day_after(first_, i);
      day_ = std::max(day_, b_.text_width(TextRole::kPart, labels_.short_weekday(weekday(day))));
      day_ = std::max(day_, b_.text_width(TextRole::kCue, without_year(day)));
    }
    time_ = b_.text_width(TextRole::kClock,
                          labels_.say("from-to", {{"from", "00:00"}, {"to", "00:00"}})) +
            Length::pt(1);
    const Length rest = b_.width() - day_ - time_ - gap_ * 3;
    kit_ = rest * 2 / 5;
    what_ = rest - kit_;
  }

  page::Section group(const GroupWeek& week) {
    page::Section section;
    add_title(week, section);
    std::vector<Row> rows;
    std::vector<const WeekPlan*> home;
    for (const WeekPlan& plan : week.plans) {
      if (plan.session->place.value == plan::Place::kHome) {
        home.push_back(&plan);
        continue;
      }
      for (const Date day : plan.days) rows.push_back({day, &plan});
    }
    std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
      return std::pair(a.day, start_of(a)) < std::pair(b.day, start_of(b));
    });
    if (rows.empty()) {
      section.slabs.push_back({b_.text(TextRole::kCue, labels_.say("week-nothing"),
                                       Owner::of(b_.node(Builder::kRoot, Role::kP))),
                               b_.look().part_space});
    } else {
      add_sessions(rows, section);
    }
    if (!home.empty()) add_home(home, section);
    if (!rows.empty()) add_kit(rows, section);
    return section;
  }

  std::string span_of_week() const {
    const Date last = day_after(first_, kDays - 1);
    return labels_.say("week-of", {{"from", labels_.date(first_)}, {"to", labels_.date(last)}});
  }

 private:
  static std::int64_t start_of(const Row& row) {
    const auto& start = row.plan->timetable->start;
    return start ? start->since_midnight.in_milliseconds() : -1;
  }

  std::string without_year(Date day) const {
    const std::string all = labels_.short_date(day);
    const std::string year = " " + std::to_string(day.year);
    return all.ends_with(year) ? all.substr(0, all.size() - year.size()) : all;
  }

  // ---- whose week

  void add_title(const GroupWeek& week, page::Section& section) {
    plan::Words name;
    name.text = week.name.empty() ? labels_.say("week-no-group") : week.name;
    page::Slab head{b_.title(name, Owner::of(b_.node(Builder::kRoot, Role::kH1))), {}};
    head.begins_page = true;
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{name.text, 1, 0, {}};
    section.slabs.push_back(std::move(head));
    std::vector<std::string> about = {span_of_week()};
    if (week.group != nullptr) {
      if (std::string ages = b_.ages(*week.group); !ages.empty()) about.push_back(std::move(ages));
      if (week.group->size) about.push_back(labels_.count("gymnasts", week.group->size->value));
    }
    page::Slab line{b_.text(TextRole::kSubtitle, fmt::format("{}", fmt::join(about, " · ")),
                            Owner::of(b_.node(Builder::kRoot, Role::kP))),
                    {}};
    line.keep_with_next = true;
    section.slabs.push_back(std::move(line));
  }

  // ---- in the gym

  struct Cells {
    Block day, time, what, kit;
  };

  Block across(Cells cells, RowAlign align) const {
    RowBlock row;
    row.gap = gap_;
    row.align = align;
    row.cells.push_back({Track::fixed(day_), std::move(cells.day)});
    row.cells.push_back({Track::fixed(time_), std::move(cells.time)});
    row.cells.push_back({Track::fixed(what_), std::move(cells.what)});
    row.cells.push_back({Track::fixed(kit_), std::move(cells.kit)});
    return {std::move(row)};
  }

  void add_sessions(const std::vector<Row>& rows, page::Section& section) {
    const NodeId table = b_.node(Builder::kRoot, Role::kTable);
    const NodeId head = b_.node(b_.node(table, Role::kTableHead), Role::kTableRow);
    const auto title = [&](std::string_view key) {
      const NodeId cell = b_.node(head, Role::kHeaderCell);
      b_.at(cell).scope = page::HeaderScope::kColumn;
      return b_.text(TextRole::kColumn, labels_.say(key), Owner::of(cell));
    };
    // In this order: it is that of the nodes.
    Block day = title("week-day");
    Block time = title("week-time");
    Block what = title("week-session");
    Block kit = title("week-set-out");
    std::vector<Block> top;
    top.push_back(across({std::move(day), std::move(time), std::move(what), std::move(kit)},
                         RowAlign::kBaseline));
    top.push_back(Builder::space(b_.look().row_padding / 2));
    top.push_back(b_.rule(b_.width(), b_.look().line_width, Use::kInk));
    std::vector<Block> above;  // the first row
    above.push_back(Builder::stack(std::move(top)));
    const NodeId body = b_.node(table, Role::kTableBody);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      const bool same_day = i > 0 && rows[i].day == rows[i - 1].day;
      std::vector<Block> lines = std::exchange(above, {});
      if (i > 0) lines.push_back(b_.rule(b_.width(), b_.look().hair_width, Use::kHair));
      lines.push_back(session(rows[i], same_day, body));
      page::Slab slab{Builder::stack(std::move(lines)), i == 0 ? b_.look().part_space : Length()};
      slab.origin = rows[i].plan->session->title.span;
      section.slabs.push_back(std::move(slab));
    }
  }

  Block session(const Row& row, bool same_day, NodeId body) {
    const plan::Session& session = *row.plan->session;
    const NodeId node = b_.node(body, Role::kTableRow);
    const Length close = b_.look().row_padding * 3 / 4;
    // The day again for who hears the table; for the eye it stands above.
    const NodeId day = b_.node(node, Role::kHeaderCell);
    b_.at(day).scope = page::HeaderScope::kRow;
    std::vector<Block> when;
    if (!same_day) {
      when.push_back(b_.text(TextRole::kPart, labels_.short_weekday(weekday(row.day)),
                             Owner::of(b_.node(day, Role::kP))));
    }
    when.push_back(
        b_.text(TextRole::kCue, without_year(row.day), Owner::of(b_.node(day, Role::kP))));

    const NodeId time = b_.node(node, Role::kDataCell);
    std::vector<Block> clock_lines;
    if (const auto& start = row.plan->timetable->start) {
      const Duration length = slot_of(*row.plan);
      clock_lines.push_back(b_.text(TextRole::kClock,
                                    labels_.say("from-to", {{"from", clock_text(*start)},
                                                            {"to", clock_text(*start + length)}}),
                                    Owner::of(b_.node(time, Role::kP))));
    }
    clock_lines.push_back(b_.text(TextRole::kCue, b_.part_time(slot_of(*row.plan)),
                                  Owner::of(b_.node(time, Role::kP))));

    const NodeId what = b_.node(node, Role::kDataCell);
    std::vector<Block> lines;
    lines.push_back(b_.text(TextRole::kDrill, session.title, Owner::of(b_.node(what, Role::kP))));
    if (const Length bar = b_.look().row_padding; !row.plan->timetable->parts.empty())
      lines.push_back(bar_of_parts(*row.plan->timetable, bar));
    if (auto parts = part_pieces(*row.plan->timetable); !parts.empty()) {
      lines.push_back(
          b_.paragraph(std::move(parts), TextRole::kCue, Owner::of(b_.node(what, Role::kP))));
    }

    const NodeId kit = b_.node(node, Role::kDataCell);
    std::vector<std::string> names;
    for (const plan::KitItem& item : session.equipment) names.push_back(item.name.text);
    Block kit_text =
        b_.text(TextRole::kCue,
                names.empty() ? std::string("–") : fmt::format("{}", fmt::join(names, ", ")),
                Owner::of(kit));
    return padded(across({Builder::stack(std::move(when)), Builder::stack(std::move(clock_lines)),
                          Builder::stack(std::move(lines), close), std::move(kit_text)},
                         RowAlign::kTop));
  }

  // What is booked, else what the drills take.
  static Duration slot_of(const WeekPlan& plan) {
    return plan.session->slot ? plan.session->slot->value : plan.timetable->total;
  }

  Block padded(Block content) const {
    page::BoxBlock box;
    box.padding = {b_.look().row_padding * 3 / 2, Length(), b_.look().row_padding * 3 / 2,
                   Length()};
    box.content.push_back(std::move(content));
    return {std::move(box)};
  }

  std::vector<type::Inline> part_pieces(const reason::Timetable& timetable) const {
    std::vector<type::Inline> out;
    for (const reason::PartTime& part : timetable.parts) {
      // The dot stays with what it follows, so that no line begins with one.
      if (!out.empty()) out.push_back(b_.piece(TextRole::kCue, std::string(kNoBreakSpace) + "· "));
      out.push_back(b_.piece(TextRole::kCue, part.part->title.text + std::string(kNoBreakSpace),
                             part.part->title.span));
      out.push_back(b_.whole(TextRole::kVariationLabel, b_.part_time(part.length)));
    }
    return out;
  }

  // The parts below the title, as long as they take; the same is said in words below it.
  Block bar_of_parts(const reason::Timetable& timetable, Length height) const {
    constexpr std::array kShades = {Use::kHair, Use::kLine, Use::kSoft};
    std::vector<page::PathItem> paths;
    const std::int64_t total = std::max<std::int64_t>(timetable.total.in_milliseconds(), 1);
    std::int64_t before = 0;
    std::size_t shade = 0;
    for (const reason::PartTime& part : timetable.parts) {
      const Length from = what_ * before / total;
      before += part.length.in_milliseconds();
      const Length to = what_ * before / total - Length::pt(1.5);
      const Use use =
          part.part->role == plan::PartRole::kMain ? kShades[1 + shade++ % 2] : kShades[0];
      if (to <= from) continue;
      page::PathItem piece;
      piece.owner = Owner::none(Artifact::kLayout);
      piece.steps = page::rounded_rectangle({from, {}, to - from, height},
                                            std::min(height / 4, (to - from) / 2));
      piece.fill = b_.colour(use);
      paths.push_back(std::move(piece));
    }
    return {page::DrawingBlock{{what_, height}, std::move(paths), {}}};
  }

  // ---- at home

  void add_home(const std::vector<const WeekPlan*>& plans, page::Section& section) {
    const Length name = day_ + time_ + gap_ + what_ / 3;
    const Length cell_gap = b_.look().gap / 2;
    const Length day = (b_.width() - name - gap_ - cell_gap * (kDays - 1)) / kDays;
    const auto days_row = [&](Block first, std::vector<Block> cells) {
      RowBlock inner;
      inner.gap = cell_gap;
      inner.align = RowAlign::kStretch;
      for (Block& cell : cells) inner.cells.push_back({Track::fixed(day), std::move(cell)});
      RowBlock row;
      row.gap = gap_;
      row.align = RowAlign::kMiddle;
      row.cells.push_back({Track::fixed(name), std::move(first)});
      row.cells.push_back({Track::flexible(), Block{std::move(inner)}});
      return Block{std::move(row)};
    };
    page::Slab head{b_.text(TextRole::kPart, labels_.say("week-home"),
                            Owner::of(b_.node(Builder::kRoot, Role::kH2))),
                    b_.look().part_space};
    head.keep_with_next = true;
    section.slabs.push_back(std::move(head));

    const NodeId table = b_.node(Builder::kRoot, Role::kTable);
    const NodeId titles = b_.node(b_.node(table, Role::kTableHead), Role::kTableRow);
    const auto header = [&](const std::string& text, page::Align align) {
      const NodeId cell = b_.node(titles, Role::kHeaderCell);
      b_.at(cell).scope = page::HeaderScope::kColumn;
      return b_.text(TextRole::kColumn, text, Owner::of(cell), {}, align);
    };
    Block corner = header(labels_.say("week-practice"), page::Align::kStart);
    std::vector<Block> names;
    for (std::int64_t i = 0; i < kDays; ++i) {
      const Date date = day_after(first_, i);
      names.push_back(header(fmt::format("{} {}", labels_.short_weekday(weekday(date)), date.day),
                             page::Align::kCentre));
    }
    std::vector<Block> lines;
    lines.push_back(days_row(std::move(corner), std::move(names)));
    lines.push_back(Builder::space(b_.look().row_padding / 2));
    lines.push_back(b_.rule(b_.width(), b_.look().line_width, Use::kInk));
    const NodeId body = b_.node(table, Role::kTableBody);
    for (const WeekPlan* plan : plans) {
      const NodeId row = b_.node(body, Role::kTableRow);
      const NodeId title = b_.node(row, Role::kHeaderCell);
      b_.at(title).scope = page::HeaderScope::kRow;
      Block what = b_.text(TextRole::kDrill, plan->session->title, Owner::of(title));
      std::vector<Block> cells;
      for (std::int64_t i = 0; i < kDays; ++i) {
        const NodeId cell = b_.node(row, Role::kDataCell);
        const Date date = day_after(first_, i);
        const bool is_on =
            std::find(plan->days.begin(), plan->days.end(), date) != plan->days.end();
        cells.push_back(is_on ? practised(*plan, cell) : Builder::space({}));
      }
      if (plan != plans.front())
        lines.push_back(b_.rule(b_.width(), b_.look().hair_width, Use::kHair));
      page::BoxBlock box;
      box.padding = {b_.look().row_padding, Length(), b_.look().row_padding, Length()};
      box.content.push_back(days_row(std::move(what), std::move(cells)));
      lines.push_back({std::move(box)});
      section.slabs.push_back({Builder::stack(std::move(lines)),
                               plan == plans.front() ? b_.look().row_padding : Length()});
      lines.clear();
    }
  }

  Block practised(const WeekPlan& plan, NodeId cell) const {
    page::BoxBlock box;
    const Length pad = b_.look().row_padding / 2;
    box.padding = {pad, Length(), pad, Length()};
    box.fill = b_.colour(Use::kTint);
    box.border = b_.stroke(Use::kLine, b_.look().hair_width);
    box.radius = b_.look().radius;
    box.content.push_back(b_.text(TextRole::kVariationLabel, b_.part_time(slot_of(plan)),
                                  Owner::of(cell), {}, page::Align::kCentre));
    return {std::move(box)};
  }

  // ---- what to set out in the whole week

  void add_kit(const std::vector<Row>& rows, page::Section& section) {
    struct Thing {
      std::string name;
      Span origin;
      std::vector<std::string> days;
    };
    std::vector<Thing> things;
    for (const Row& row : rows) {
      for (const plan::KitItem& item : row.plan->session->equipment) {
        const std::string key = lower_ascii(item.name.text);
        auto thing = std::find_if(things.begin(), things.end(),
                                  [&](const Thing& t) { return lower_ascii(t.name) == key; });
        if (thing == things.end())
          thing = things.insert(things.end(), Thing{item.name.text, item.name.span, {}});
        const std::string& day = labels_.short_weekday(weekday(row.day));
        if (thing->days.empty() || thing->days.back() != day) thing->days.push_back(day);
      }
    }
    if (things.empty()) return;
    std::stable_sort(things.begin(), things.end(), [](const Thing& a, const Thing& b) {
      return lower_ascii(a.name) < lower_ascii(b.name);
    });
    std::vector<Block> lines;
    lines.push_back(b_.text(TextRole::kBoxTitle, labels_.say("week-kit"),
                            Owner::of(b_.node(Builder::kRoot, Role::kH2))));
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    page::WrapBlock wrap;
    wrap.gap = b_.look().gap * 2;
    wrap.line_gap = b_.look().row_padding;
    const Length side = b_.look().text(TextRole::kBoxText).size.scaled(1.05);
    for (const Thing& thing : things) {
      std::vector<type::Inline> pieces = {
          b_.whole(TextRole::kVariationLabel, thing.name, thing.origin)};
      pieces.push_back(
          b_.whole(TextRole::kVariation, fmt::format("\u2002{}", fmt::join(thing.days, ", "))));
      wrap.children.push_back(b_.tick_line(list, TextRole::kBoxText, std::move(pieces), side,
                                           labels_.say("tick-kit", {{"kit", thing.name}})));
    }
    lines.push_back({std::move(wrap)});
    section.slabs.push_back({framed(b_, Builder::stack(std::move(lines), b_.look().row_padding),
                                    Use::kLine, b_.look().line_width),
                             b_.look().part_space});
  }

  Date first_;
  Builder& b_;
  const Labels& labels_;
  Length gap_;
  Length day_;
  Length time_;
  Length what_;
  Length kit_;
};

page::Composed compose_at(double factor, const std::vector<GroupWeek>& groups, Date first,
                          const Context& context, type::Typesetter& typesetter) {
  const Look& look = context.theme.card;
  Builder builder(Kind::kCoachCard, context, look.scaled(look.scale.at(context.paper) * factor),
                  typesetter);
  WeekWriter writer(first, builder);
  std::vector<page::Section> sections;
  for (const GroupWeek& week : groups) sections.push_back(writer.group(week));
  plan::Session whole;
  whole.title.text = writer.span_of_week();
  return page::compose(
      builder.finish(std::move(sections), whole, builder.labels().say("week-sheet")), typesetter);
}

}  // namespace

page::DisplayList week_sheet(const std::vector<GroupWeek>& groups, Date first,
                             const Context& context, type::Typesetter& typesetter,
                             Diagnostics& diagnostics) {
  constexpr std::array kSmaller = {0.92, 0.84, 0.76};
  page::Composed best = compose_at(1, groups, first, context, typesetter);
  for (const double factor : kSmaller) {
    if (best.list.pages.size() <= groups.size()) break;
    page::Composed tried = compose_at(factor, groups, first, context, typesetter);
    if (tried.list.pages.size() < best.list.pages.size()) best = std::move(tried);
  }
  page::report(best, "week sheet", diagnostics);
  return std::move(best.list);
}

}  // namespace chalkleaf::sheet
