// A circuit of the home sheet: its rounds, its stations numbered, a box for each round and day.
//
// A frame is never split over pages, so a circuit that is higher than a page has several, and so
// has a drill of very many words. Tested by tests/sheet/circuit_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "sheet/home_boxes.h"
#include "sheet/home_panel.h"

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;

std::vector<Block> HomePanels::in_frames(const plan::Drill& drill, const reason::DrillTime& time,
                                         int number) {
  number_ = number;
  shape_ = Shape::kHalf;
  const Length room = inner_width(b_.width());
  const Length close = b_.look().row_padding / 4;
  std::vector<Block> head = {name(drill)};
  if (const auto scenes = scenes_of(drill); !drill.circuit && !scenes.empty()) {
    head.push_back(Builder::space(close * 2));
    head.push_back(figures(scenes, room, Length()));
    head.push_back(Builder::space(close * 2));
  }
  for (Block& line : choice_lines(drill)) head.push_back(std::move(line));
  for (Block& line : dose(drill, time)) head.push_back(std::move(line));
  std::vector<Block> groups;
  groups.push_back(Builder::stack(std::move(head), close));
  // A circuit's lines belong together; the lines of a drill that is too high for a page cannot.
  const auto add = [&](std::vector<Block> lines) {
    if (!drill.circuit) {
      for (Block& line : lines) groups.push_back(std::move(line));
    } else if (!lines.empty()) {
      groups.push_back(Builder::stack(std::move(lines), close));
    }
  };
  add(how(drill, room));
  for (Block& row : station_rows(drill, time, room)) groups.push_back(std::move(row));
  add(others(drill, room));
  groups.push_back(days_.boxes(drill, room));
  return frames(std::move(groups), room, continued_name(drill));
}

// As many stations beside each other as there are panels in a row.
std::vector<Block> HomePanels::station_rows(const plan::Drill& drill, const reason::DrillTime& time,
                                            Length room) {
  std::vector<Block> rows;
  const std::size_t count = drill.stations.size();
  if (count == 0) return rows;
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  b_.at(list).ordered = true;
  const std::size_t columns = two_columns_ ? 2 : 1;
  const Length gap_between = b_.look().gap * 3 / 2;
  const Length station_room = two_columns_ ? (room - gap_between) / 2 : room;
  const reason::DrillTime unknown;
  for (std::size_t i = 0; i < count; i += columns) {
    RowBlock row;
    row.gap = gap_between;
    for (std::size_t at = i; at < i + columns; ++at) {
      Block cell = Builder::space({});
      if (at < count) {
        cell = station(drill.stations[at], at < time.stations.size() ? time.stations[at] : unknown,
                       at + 1, list, station_room);
      }
      row.cells.push_back({Track::flexible(), std::move(cell)});
    }
    rows.push_back({std::move(row)});
  }
  return rows;
}

Length HomePanels::heading() const { return b_.look().text(TextRole::kPart).leading; }

Length HomePanels::room_below_heading() const {
  return b_.page_height() - b_.look().row_padding * 2 - heading() * 2;
}

bool HomePanels::is_too_high(const Block& panel) {
  return b_.height_of(panel, b_.width()) > room_below_heading();
}

// One frame where a page holds it below a heading; else full ones. The boxes to tick never stand in
// a frame alone.
std::vector<Block> HomePanels::frames(std::vector<Block> groups, Length room,
                                      const Block& continued) {
  const Length gap_between = b_.look().row_padding;
  // Above a frame stands the part's heading, and above the first perhaps a line about kit.
  Length limit = room_below_heading() - heading() * 3 / 2;
  std::vector<Block> out;
  std::vector<Block> frame;
  Length height;
  const auto finish = [&] {
    out.push_back(panel(b_, Builder::stack(std::move(frame), gap_between)));
    frame = {continued};
    height = b_.height_of(continued, room) + gap_between;
    limit = room_below_heading();
  };
  const Length last = b_.height_of(groups.back(), room) + gap_between;
  for (std::size_t i = 0; i < groups.size(); ++i) {
    const bool with_last = i + 2 >= groups.size();  // what comes before the last stays with it
    const Length more = b_.height_of(groups[i], room) + gap_between;
    const bool is_last = i + 1 == groups.size();
    const Length needed = with_last && !is_last ? more + last : more;
    if (frame.size() > (out.empty() ? 0U : 1U) && !is_last && height + needed > limit) finish();
    frame.push_back(std::move(groups[i]));
    height += more;
  }
  finish();
  return out;
}

// Above a second frame: which drill it goes on with. Heard once, from the first.
Block HomePanels::continued_name(const plan::Drill& drill) {
  const std::string name = drill.choices.empty() ? drill.name.text : labels_.say("choose-one");
  return b_.text(TextRole::kStation,
                 labels_.say("continued", {{"part", fmt::format("{} {}", number_, name)}}),
                 Owner::none(page::Artifact::kHeader));
}

Block HomePanels::station(const plan::Drill& station, const reason::DrillTime& time,
                          std::size_t number, NodeId list, Length room) {
  const NodeId item = b_.node(list, Role::kListItem);
  const Owner label = Owner::of(b_.node(item, Role::kLabel));
  parent_ = b_.node(item, Role::kListBody);
  const Length number_width = b_.text_width(TextRole::kStation, "00") + b_.look().gap / 2;
  const Length inner = room - number_width;
  std::vector<Block> lines = {b_.text(TextRole::kStation, station.name, paragraph_owner())};
  for (Block& line : dose(station, time)) lines.push_back(std::move(line));
  if (const std::vector<Scene> scenes = scenes_of(station); !scenes.empty()) {
    lines.push_back(Builder::space(b_.look().row_padding / 2));
    lines.push_back(figures(scenes, inner, Length()));
  }
  for (Block& line : how(station, inner)) lines.push_back(std::move(line));
  std::vector<Block> more = others(station, inner);
  for (Block& line : more) lines.push_back(std::move(line));
  parent_ = Builder::kRoot;
  if (!station.record.empty()) lines.push_back(days_.fields(station));
  RowBlock row;
  row.align = RowAlign::kBaseline;
  row.cells.push_back(
      {Track::fixed(number_width), b_.text(TextRole::kStation, std::to_string(number), label)});
  row.cells.push_back(
      {Track::flexible(), Builder::stack(std::move(lines), b_.look().row_padding / 4)});
  return {std::move(row)};
}

}  // namespace chalkleaf::sheet
