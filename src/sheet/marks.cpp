// What is drawn on the sheets: ruling lines, boxes to tick, fields to write in, signs.
//
// The warning sign is ISO 7010 W001 in black and white; all other drawings are ours. Tested by
// tests/sheet/coach_card_test.cpp and home_sheet_test.cpp.
#include <algorithm>
#include <initializer_list>

#include "page/shapes.h"
#include "sheet/builder.h"

namespace chalkleaf::sheet {

Block Builder::rule(Length length, Length thickness, Use use) const {
  page::PathItem line;
  line.owner = Owner::none(Artifact::kLayout);
  line.steps = page::straight_line({Length(), thickness / 2}, {length, thickness / 2});
  line.stroke = stroke(use, thickness);
  return {page::DrawingBlock{{length, thickness}, {std::move(line)}, {}}};
}

Block Builder::part_band(Block heading) const {
  if (!look_.part_fill) return heading;
  page::BoxBlock band;
  band.fill = colour(*look_.part_fill);
  // The words a little in from its end; what stands at its right stays over the columns below.
  band.padding = {look_.row_padding / 2, Length(), look_.row_padding / 2, look_.row_padding};
  band.radius = look_.radius / 2;
  band.content.push_back(std::move(heading));
  return {std::move(band)};
}

Block Builder::tick_box(Length side, NodeId form, Length height) const {
  if (height <= Length()) height = side;
  const Length half = look_.line_width / 2;
  page::PathItem box;
  box.owner = Owner::of(form);
  box.steps = page::rounded_rectangle({half, half, side - half * 2, height - half * 2},
                                      std::min(look_.tick_radius, std::min(side, height) / 2));
  box.fill = colour(Use::kPaper);
  box.stroke = stroke(Use::kLine, look_.line_width);
  // Stands on the line of text beside it with its middle at the middle of the capitals.
  const Length cap = look_.text(TextRole::kDrill).size.scaled(0.71);
  return {page::DrawingBlock{{side, height}, {std::move(box)}, (height + cap) / 2}};
}

NodeId Builder::tick_node(NodeId parent, std::string description) {
  const NodeId id = node(parent, Role::kForm);
  at(id).box_description = std::move(description);
  return id;
}

NodeId Builder::field_node(NodeId parent, std::string description) {
  const NodeId id = tick_node(parent, std::move(description));
  at(id).write_in = true;
  return id;
}

Block Builder::warning_sign(Length height) const {
  // ISO 7010 W001: an equilateral triangle, corners rounded, with an exclamation mark. Proportions
  // are ours.
  const Length width = height.scaled(1.1547);
  const Length stroke_width = height / 10;
  const Length inset = stroke_width / 2;
  const Owner owner = Owner::none(Artifact::kLayout);
  page::PathItem triangle;
  triangle.owner = owner;
  triangle.steps =
      page::polygon({{width / 2, inset}, {width - inset, height - inset}, {inset, height - inset}});
  triangle.stroke = page::Stroke{colour(Use::kInk), stroke_width, true, {}};
  page::PathItem mark;
  mark.owner = owner;
  mark.steps =
      page::straight_line({width / 2, height.scaled(0.4)}, {width / 2, height.scaled(0.62)});
  mark.stroke = page::Stroke{colour(Use::kInk), stroke_width, true, {}};
  page::PathItem dot;
  dot.owner = owner;
  dot.steps = page::circle({width / 2, height.scaled(0.79)}, stroke_width.scaled(0.6));
  dot.fill = colour(Use::kInk);
  return {page::DrawingBlock{
      {width, height}, {std::move(triangle), std::move(mark), std::move(dot)}, {}}};
}

Block Builder::kit_sign(plan::KitMove::Way way, Length side) const {
  const auto point = [&](double x, double y) { return Point{side.scaled(x), side.scaled(y)}; };
  const auto line = [&](std::initializer_list<Point> points) {
    page::PathItem item;
    item.owner = Owner::none(Artifact::kLayout);
    for (const Point& p : points) {
      const auto kind =
          item.steps.empty() ? page::PathStep::Kind::kMove : page::PathStep::Kind::kLine;
      item.steps.push_back({kind, p, {}, {}});
    }
    item.stroke = page::Stroke{colour(Use::kInk), side.scaled(0.1), true, {}};
    return item;
  };
  const bool out = way == plan::KitMove::Way::kPickUp;
  const double tip = out ? 0.08 : 0.7;
  const double wings = out ? 0.32 : 0.46;
  std::vector<page::PathItem> paths = {
      line({point(0.07, 0.6), point(0.07, 0.93), point(0.93, 0.93), point(0.93, 0.6)}),
      line({point(0.5, 0.08), point(0.5, 0.7)}),
      line({point(0.26, wings), point(0.5, tip), point(0.74, wings)})};
  return {page::DrawingBlock{{side, side}, std::move(paths), side.scaled(0.95)}};
}

Block Builder::tick_line(NodeId list, TextRole role, std::vector<type::Inline> pieces, Length side,
                         std::string description) {
  const NodeId item = node(list, Role::kListItem);
  const NodeId label = node(item, Role::kLabel);
  const NodeId form = tick_node(label, std::move(description));
  const NodeId body = node(item, Role::kListBody);
  page::RowBlock row;
  row.gap = look_.gap / 2;
  row.align = page::RowAlign::kBaseline;
  row.cells.push_back({page::Track::fixed(side), tick_box(side, form)});
  row.cells.push_back(
      {page::Track::natural(), paragraph(std::move(pieces), role, Owner::of(body))});
  return {std::move(row)};
}

// The box stands in the line on spaces that are read as nothing more.
Block Builder::tick_words(Block line, TextRole role) {
  auto& row = std::get<page::RowBlock>(line.content);
  auto& box = std::get<page::DrawingBlock>(row.cells.front().block.content);
  Block out = std::move(row.cells.back().block);
  auto& text = std::get<page::TextBlock>(out.content);
  const std::string space(kNoBreakSpace);
  const Length one = text_width(role, space);
  std::string spaces = space;
  for (Length wide = one; wide < box.size.width + look_.gap / 3; wide += one) spaces += space;
  text.text.insert(text.text.begin(), piece(role, std::move(spaces)));
  box.baseline = (box.size.height + look_.text(role).size.scaled(0.71)) / 2;
  text.inlaid.push_back({0, std::move(box)});
  return out;
}

}  // namespace chalkleaf::sheet
