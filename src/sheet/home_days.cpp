#include "sheet/home_days.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;
using TickEach = plan::Ticks::Each;

namespace {

// As few letters as tell the days apart: `M`, `Tu`, `Th`.
std::vector<std::string> letters_of(const std::vector<Occasion>& days) {
  std::vector<std::string> out;
  for (const Occasion& day : days) {
    std::size_t end = 0;
    for (;;) {
      end += decode_utf8(day.short_name, end).size;
      const std::string letters = day.short_name.substr(0, end);
      const bool shared = end < day.short_name.size() &&
                          std::any_of(days.begin(), days.end(), [&](const Occasion& other) {
                            return &other != &day && other.short_name.starts_with(letters);
                          });
      if (!shared) {
        out.push_back(letters);
        break;
      }
    }
  }
  return out;
}

}  // namespace

HomeDays::HomeDays(const plan::Session& session, Builder& builder)
    : b_(builder), labels_(builder.labels()), days_(practice_days(session, builder.labels())) {
  // Days that are only counted have no name to shorten.
  if (session.repeat.empty()) {
    for (std::size_t i = 1; i <= days_.size(); ++i) letters_.push_back(std::to_string(i));
  } else {
    letters_ = letters_of(days_);
  }
  if (!session.ticks_sheet) return;
  const plan::Ticks& ticks = session.ticks_sheet->value;
  each_set_ = ticks.each == TickEach::kSet;
  if (ticks.each == TickEach::kWeek) weeks_ = practice_weeks(ticks.count, labels_);
}

std::int64_t HomeDays::boxes_a_day(const plan::Drill& drill) const {
  return drill.circuit || each_set_ ? sets_to_tick(drill) : 1;
}

std::optional<Length> HomeDays::line_width(const plan::Drill& drill) const {
  if (!weeks_.empty() || boxes_a_day(drill) > 1 || !drill.record.empty()) return std::nullopt;
  Length width;
  for (const Occasion& day : days_) {
    width += b_.text_width(TextRole::kColumn, day.short_name) + b_.look().tick_box +
             b_.look().gap * 7 / 4;
  }
  return width;
}

bool HomeDays::has_own(const plan::Drill& drill) const {
  return !drill.record.empty() || (weeks_.empty() && boxes_a_day(drill) > 1);
}

Length HomeDays::lettered_width() const {
  const auto n = static_cast<std::int64_t>(days_.size());
  return b_.look().tick_box * n + gap() / 2 * (n - 1);
}

// The letters first, then the box around them: both stand in one place, and the box is not filled.
Block HomeDays::lettered_box(const std::string& letters, const std::string& description,
                             NodeId list, Length wide) {
  const NodeId item = b_.node(list, Role::kListItem);
  const Owner label = Owner::of(b_.node(item, Role::kLabel));
  const NodeId body = b_.node(item, Role::kListBody);
  const Length side = b_.look().tick_box;
  const bool ticked = wide <= side;
  Block text = b_.text(TextRole::kColumn, letters, label, {},
                       ticked ? page::Align::kCentre : page::Align::kStart);
  if (!ticked) {
    RowBlock inset;
    inset.align = RowAlign::kBaseline;
    inset.cells.push_back({Track::flexible(), std::move(text)});
    inset.cells.insert(inset.cells.begin(),
                       {Track::fixed(b_.look().tick_radius + Length::pt(1)), Builder::space({})});
    text = {std::move(inset)};
  }
  const NodeId form = ticked ? b_.tick_node(body, description) : b_.field_node(body, description);
  Block box = b_.tick_box(wide, form, side);
  auto& drawing = std::get<page::DrawingBlock>(box.content);
  drawing.paths.front().fill.reset();
  drawing.baseline = (side + b_.look().text(TextRole::kColumn).size.scaled(0.71)) / 2;
  RowBlock row;
  row.gap = Length() - wide;
  row.align = RowAlign::kBaseline;
  row.cells.push_back({Track::fixed(wide), std::move(text)});
  row.cells.push_back({Track::fixed(wide), std::move(box)});
  return {std::move(row)};
}

Block HomeDays::lettered(const std::string& what) {
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  RowBlock row;
  row.gap = gap() / 2;
  row.align = RowAlign::kBaseline;
  for (std::size_t i = 0; i < days_.size(); ++i) {
    const std::string words = labels_.say("tick-day", {{"drill", what}, {"day", days_[i].name}});
    row.cells.push_back({Track::fixed(b_.look().tick_box),
                         lettered_box(letters_[i], words, list, b_.look().tick_box)});
  }
  return {std::move(row)};
}

Length HomeDays::gap() const { return b_.look().gap / 2; }

Length HomeDays::days_width() const {
  Length out;
  for (const Occasion& day : days_)
    out = std::max(out, b_.text_width(TextRole::kColumn, day.short_name));
  return out;
}

Block HomeDays::list(const std::vector<Occasion>& times, const MakeCells& make) {
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  page::WrapBlock wrap;
  wrap.gap = b_.look().gap * 5 / 4;
  wrap.line_gap = b_.look().row_padding / 2;
  for (const Occasion& time : times) {
    const NodeId item = b_.node(list, Role::kListItem);
    const NodeId label = b_.node(item, Role::kLabel);
    RowBlock row;
    row.gap = gap();
    row.align = RowAlign::kMiddle;
    row.cells.push_back(
        {Track::natural(), b_.text(TextRole::kColumn, time.short_name, Owner::of(label))});
    for (page::RowCell& cell : make(time, b_.node(item, Role::kListBody)))
      row.cells.push_back(std::move(cell));
    wrap.children.push_back({std::move(row)});
  }
  return {std::move(wrap)};
}

// A line a day with a box a week; what is too wide goes on in lines of its own. Where so many lines
// would take more of the page than the drill itself, a box stands for all days of its week.
Block HomeDays::days_by_weeks(const plan::Drill& drill, Length room) {
  const std::string title = labels_.say("week-by-week");
  const Length side = b_.look().tick_box;
  const Length gap = this->gap();
  const Length label_width = std::max(b_.text_width(TextRole::kColumn, title), days_width()) + gap;
  const EvenLines rows =
      even_lines(static_cast<std::int64_t>(weeks_.size()), room - label_width - gap, side, gap);
  const auto a_row = static_cast<std::size_t>(rows.a_line);
  const std::int64_t lines_of_all = rows.lines * static_cast<std::int64_t>(days_.size() + 1);
  const bool each_day = (side + gap / 2) * lines_of_all < b_.page_height() / 3;

  const auto line = [&](Block label) {
    RowBlock row;
    row.gap = gap;
    row.align = RowAlign::kMiddle;
    row.cells.push_back({Track::fixed(label_width), std::move(label)});
    return row;
  };
  std::vector<Block> lines;
  if (!each_day) {
    lines.push_back(b_.text(TextRole::kColumn, labels_.say("whole-week"),
                            Owner::of(b_.node(Builder::kRoot, Role::kP))));
  }
  const auto add_boxes = [&](NodeId list, const Occasion* day, std::size_t from, std::size_t end) {
    const NodeId item = b_.node(list, Role::kListItem);
    RowBlock boxes = line(day == nullptr ? Builder::space({})
                                         : b_.text(TextRole::kColumn, day->short_name,
                                                   Owner::of(b_.node(item, Role::kLabel))));
    const NodeId body = b_.node(item, Role::kListBody);
    for (std::size_t i = from; i < end; ++i) {
      const std::string words =
          day == nullptr
              ? labels_.say("tick-day", {{"drill", drill.name.text}, {"day", weeks_[i].name}})
              : labels_.say(
                    "tick-week",
                    {{"drill", drill.name.text}, {"week", weeks_[i].name}, {"day", day->name}});
      boxes.cells.push_back({Track::fixed(side), b_.tick_box(side, b_.tick_node(body, words))});
    }
    lines.push_back({std::move(boxes)});
  };
  for (std::size_t from = 0; from < weeks_.size(); from += a_row) {
    const std::size_t end = std::min(from + a_row, weeks_.size());
    const Owner head = Owner::of(b_.node(Builder::kRoot, Role::kP));
    RowBlock numbers = line(b_.text(TextRole::kColumn, title + " ", head));
    for (std::size_t i = from; i < end; ++i) {
      numbers.cells.push_back(
          {Track::fixed(side), b_.text(TextRole::kColumn, std::to_string(i + 1) + " ", head, {},
                                       page::Align::kCentre)});
    }
    lines.push_back({std::move(numbers)});
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    if (!each_day) add_boxes(list, nullptr, from, end);
    for (const Occasion& day : days_) {
      if (each_day) add_boxes(list, &day, from, end);
    }
  }
  return Builder::stack(std::move(lines), gap / 2);
}

// A box a day where one for each set would take more of the page than the drill itself.
std::int64_t HomeDays::boxes_that_fit(const plan::Drill& drill, Length room) const {
  const std::int64_t a_day = boxes_a_day(drill);
  const Length side = b_.look().tick_box;
  const std::int64_t lines = even_lines(a_day, room - days_width() - gap(), side, gap()).lines *
                             static_cast<std::int64_t>(days_.size());
  return (side + b_.look().row_padding / 2) * lines <= b_.page_height() * 2 / 5 ? a_day : 1;
}

// Of one day, behind its name: in one line, or as many as they need.
std::vector<page::RowCell> HomeDays::in_lines(std::vector<Block> boxes, Length room) const {
  const Length side = b_.look().tick_box;
  const EvenLines even =
      even_lines(static_cast<std::int64_t>(boxes.size()), room - gap(), side, gap());
  const auto a_line = static_cast<std::size_t>(even.a_line);
  std::vector<Block> rows;
  for (std::size_t from = 0; from < boxes.size(); from += a_line) {
    RowBlock row;
    row.gap = gap();
    for (std::size_t i = from; i < std::min(from + a_line, boxes.size()); ++i)
      row.cells.push_back({Track::fixed(side), std::move(boxes[i])});
    if (even.lines == 1) return std::move(row.cells);
    rows.push_back({std::move(row)});
  }
  std::vector<page::RowCell> out;
  out.push_back({Track::fixed((side + gap()) * even.a_line - gap()),
                 Builder::stack(std::move(rows), gap() / 2)});
  return out;
}

Block HomeDays::boxes(const plan::Drill& drill, Length room) {
  const std::int64_t a_day = weeks_.empty() ? boxes_that_fit(drill, room) : 1;
  if (!drill.record.empty() && !drill.circuit && a_day == 1 && weeks_.empty())
    return fields(drill, line_room(room));
  const Length side = b_.look().tick_box;
  std::vector<Block> lines;
  if (!weeks_.empty()) {
    lines.push_back(days_by_weeks(drill, room));
  } else {
    if (a_day > 1) {
      lines.push_back(b_.text(TextRole::kColumn,
                              labels_.say(drill.circuit ? "each-round" : "each-set"),
                              Owner::of(b_.node(Builder::kRoot, Role::kP))));
    }
    const std::string_view one_of_many = drill.circuit ? "tick-round" : "tick-set";
    lines.push_back(list(days_, [&](const Occasion& day, NodeId body) {
      std::vector<Block> out;
      for (std::int64_t n = 1; n <= a_day; ++n) {
        const std::string words =
            a_day > 1
                ? labels_.say(
                      one_of_many,
                      {{"drill", drill.name.text}, {"n", std::to_string(n)}, {"day", day.name}})
                : labels_.say("tick-day", {{"drill", drill.name.text}, {"day", day.name}});
        out.push_back(b_.tick_box(side, b_.tick_node(body, words)));
      }
      return in_lines(std::move(out), room - b_.text_width(TextRole::kColumn, day.short_name));
    }));
  }
  if (!drill.record.empty()) lines.push_back(fields(drill, line_room(room)));
  return Builder::stack(std::move(lines), b_.look().row_padding / 3);
}

// `Write down seconds [M  ] [W  ]`, where there is room for all of it.
std::optional<Block> HomeDays::field_line(const plan::Drill& drill, std::vector<type::Inline> what,
                                          Length room) {
  const Length side = b_.look().tick_box;
  Length widest;
  for (const std::string& letters : letters_)
    widest = std::max(widest, b_.text_width(TextRole::kColumn, letters));
  const Length wide = widest + side.scaled(1.6);
  const auto n = static_cast<std::int64_t>(days_.size());
  const Length all = (wide + gap() / 2) * n - gap() / 2;
  if (!weeks_.empty() || all + gap() + b_.width_of(what) > room) return std::nullopt;
  RowBlock row;
  row.gap = gap();
  row.align = RowAlign::kBaseline;
  row.cells.push_back(
      {Track::flexible(), b_.paragraph(std::move(what), TextRole::kColumn,
                                       Owner::of(b_.node(Builder::kRoot, Role::kP)))});
  RowBlock boxes;
  boxes.gap = gap() / 2;
  boxes.align = RowAlign::kBaseline;
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  for (std::size_t i = 0; i < days_.size(); ++i) {
    const std::string words = labels_.say(
        "field-day",
        {{"drill", drill.name.text}, {"unit", drill.record.text}, {"day", days_[i].name}});
    boxes.cells.push_back({Track::fixed(wide), lettered_box(letters_[i], words, list, wide)});
  }
  row.cells.push_back({Track::fixed(all), {std::move(boxes)}});
  return Block{std::move(row)};
}

Block HomeDays::fields(const plan::Drill& drill, Length room) {
  std::vector<type::Inline> what = {b_.label(
      TextRole::kColumn, labels_.say(weeks_.empty() ? "write-down" : "write-down-weekly"))};
  plan::Words unit = drill.record;
  unit.emphasis = {{0, unit.text.size(), true}};
  for (type::Inline& one : b_.pieces(TextRole::kColumn, unit)) what.push_back(std::move(one));
  if (room > Length()) {
    if (auto line = field_line(drill, what, room)) return std::move(*line);
  }
  std::vector<Block> lines;
  lines.push_back(b_.paragraph(std::move(what), TextRole::kColumn,
                               Owner::of(b_.node(Builder::kRoot, Role::kP))));
  // High enough for a figure in a child's hand.
  const Length height = std::max(Length::mm(8.5), b_.look().tick_box.scaled(1.3));
  const Length width = height.scaled(1.7);
  lines.push_back(list(times(), [&](const Occasion& time, NodeId body) {
    const NodeId field = b_.field_node(body, labels_.say("field-day", {{"drill", drill.name.text},
                                                                       {"unit", drill.record.text},
                                                                       {"day", time.name}}));
    std::vector<page::RowCell> out;
    out.push_back({Track::fixed(width), b_.tick_box(width, field, height)});
    return out;
  }));
  return Builder::stack(std::move(lines), b_.look().row_padding / 3);
}

}  // namespace chalkleaf::sheet
