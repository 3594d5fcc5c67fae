#include "sheet/home_days.h"

#include <algorithm>

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;

HomeDays::HomeDays(const plan::Session& session, Builder& builder)
    : b_(builder), labels_(builder.labels()) {
  for (const auto& day : session.repeat)
    days_.push_back({labels_.weekday(day.value), labels_.short_weekday(day.value)});
  if (!days_.empty()) return;
  for (int i = 1; i <= 3; ++i) {
    const std::string name = labels_.say("day", {{"n", std::to_string(i)}});
    days_.push_back({name, name});
  }
}

Length HomeDays::width() {
  Length width;
  for (const Day& day : days_) {
    width += b_.text_width(TextRole::kColumn, day.short_name) + b_.look().tick_box +
             b_.look().gap * 7 / 4;
  }
  return width;
}

Block HomeDays::list(
    const std::function<std::vector<page::RowCell>(const Day&, NodeId body)>& make) {
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  page::WrapBlock wrap;
  wrap.gap = b_.look().gap * 5 / 4;
  wrap.line_gap = b_.look().row_padding / 2;
  for (const Day& day : days_) {
    const NodeId item = b_.node(list, Role::kListItem);
    const NodeId label = b_.node(item, Role::kLabel);
    RowBlock row;
    row.gap = b_.look().gap / 2;
    row.align = RowAlign::kMiddle;
    row.cells.push_back(
        {Track::natural(), b_.text(TextRole::kColumn, day.short_name, Owner::of(label))});
    for (page::RowCell& cell : make(day, b_.node(item, Role::kListBody)))
      row.cells.push_back(std::move(cell));
    wrap.children.push_back({std::move(row)});
  }
  return {std::move(wrap)};
}

Block HomeDays::boxes(const plan::Drill& drill) {
  if (!drill.record.empty() && !drill.circuit) return fields(drill);
  constexpr std::int64_t kMostRounds = 12;  // of more rounds, only that it was done is ticked
  const bool each_round =
      drill.circuit && drill.circuit->rounds > 1 && drill.circuit->rounds <= kMostRounds;
  const std::int64_t rounds = each_round ? drill.circuit->rounds : 1;
  const Length side = b_.look().tick_box;
  std::vector<Block> lines;
  if (each_round) {
    lines.push_back(b_.text(TextRole::kColumn, labels_.say("each-round"),
                            Owner::of(b_.node(Builder::kRoot, Role::kP))));
  }
  lines.push_back(list([&](const Day& day, NodeId body) {
    std::vector<page::RowCell> out;
    for (std::int64_t round = 1; round <= rounds; ++round) {
      const std::string words =
          each_round
              ? labels_.say(
                    "tick-round",
                    {{"drill", drill.name.text}, {"n", std::to_string(round)}, {"day", day.name}})
              : labels_.say("tick-day", {{"drill", drill.name.text}, {"day", day.name}});
      out.push_back({Track::fixed(side), b_.tick_box(side, b_.tick_node(body, words))});
    }
    return out;
  }));
  if (!drill.record.empty()) lines.push_back(fields(drill));
  return Builder::stack(std::move(lines), b_.look().row_padding / 3);
}

Block HomeDays::fields(const plan::Drill& drill) {
  std::vector<type::Inline> what = {b_.label(TextRole::kColumn, labels_.say("write-down"))};
  plan::Words unit = drill.record;
  unit.emphasis = {{0, unit.text.size(), true}};
  for (type::Inline& one : b_.pieces(TextRole::kColumn, unit)) what.push_back(std::move(one));
  std::vector<Block> lines;
  lines.push_back(b_.paragraph(std::move(what), TextRole::kColumn,
                               Owner::of(b_.node(Builder::kRoot, Role::kP))));
  // High enough for a figure in a child's hand.
  const Length height = std::max(Length::mm(8.5), b_.look().tick_box.scaled(1.3));
  const Length width = height.scaled(1.7);
  lines.push_back(list([&](const Day& day, NodeId body) {
    const NodeId field = b_.field_node(body, labels_.say("field-day", {{"drill", drill.name.text},
                                                                       {"unit", drill.record.text},
                                                                       {"day", day.name}}));
    std::vector<page::RowCell> out;
    out.push_back({Track::fixed(width), b_.tick_box(width, field, height)});
    return out;
  }));
  return Builder::stack(std::move(lines), b_.look().row_padding / 3);
}

}  // namespace chalkleaf::sheet
