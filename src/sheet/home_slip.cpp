// See the header.
#include "sheet/home_slip.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <utility>

#include "page/shapes.h"
#include "sheet/typography.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

class SlipWriter {
 public:
  SlipWriter(const plan::ReturnSlip& slip, const plan::Session& session, const HomeDays& days,
             Builder& builder)
      : slip_(slip), session_(session), days_(days), b_(builder), labels_(builder.labels()) {}

  Block write() {
    const NodeId section = b_.node(Builder::kRoot, Role::kSect);
    const Length gap = b_.look().row_padding;
    std::vector<Block> lines;
    lines.push_back(cut_line(section));
    lines.push_back(Builder::stack(head(section), gap / 4));
    const NodeId list = b_.node(section, Role::kList);
    const std::string of_days = std::to_string(days_.count());
    std::vector<Field> fields;
    fields.emplace_back(1, field(list, labels_.say("slip-who")));
    fields.emplace_back(1, field(list, labels_.say("slip-days", {{"n", of_days}})));
    fields.emplace_back(1, field(list, labels_.say("slip-effort")));
    lines.push_back(row(fields));
    fields.clear();
    fields.emplace_back(2, field(list, labels_.say("slip-hurt")));
    fields.emplace_back(1, field(list, labels_.say("slip-adult")));
    lines.push_back(row(fields));
    return Builder::stack(std::move(lines), gap);
  }

 private:
  // Scissors, dashes, words: whoever does not know the sign reads what it is for.
  Block cut_line(NodeId section) {
    const TextRole role = TextRole::kFine;
    const std::string words = labels_.say("cut-here");
    const Length side = b_.look().text(role).leading;
    const Length text_width = b_.text_width(role, words) + Length::pt(1);
    const Length gap = b_.look().gap / 2;
    const Length length = b_.width() - side.scaled(1.6) - text_width - gap * 2;
    page::PathItem line;
    line.owner = Owner::none(Artifact::kLayout);
    line.steps = page::straight_line({Length(), side / 2}, {length, side / 2});
    line.stroke = b_.stroke(Use::kLine, b_.look().line_width);
    line.stroke->dashes = {Length::pt(5), Length::pt(4)};
    RowBlock out;
    out.gap = gap;
    out.align = RowAlign::kMiddle;
    out.cells.push_back({Track::fixed(side.scaled(1.6)), scissors(side)});
    out.cells.push_back(
        {Track::fixed(length), Block{page::DrawingBlock{{length, side}, {std::move(line)}, {}}}});
    out.cells.push_back(
        {Track::fixed(text_width), b_.text(role, words, Owner::of(b_.node(section, Role::kP)))});
    return {std::move(out)};
  }

  // Two rings and two blades that cross; a drawing of ours.
  Block scissors(Length side) const {
    const auto point = [&](double x, double y) { return Point{side.scaled(x), side.scaled(y)}; };
    const page::Stroke pen{b_.colour(Use::kInk), side.scaled(0.08), true, {}};
    std::vector<page::PathItem> paths;
    const auto add = [&](std::vector<page::PathStep> steps) {
      page::PathItem item;
      item.owner = Owner::none(Artifact::kLayout);
      item.steps = std::move(steps);
      item.stroke = pen;
      paths.push_back(std::move(item));
    };
    add(page::circle(point(0.24, 0.27), side.scaled(0.15)));
    add(page::circle(point(0.24, 0.73), side.scaled(0.15)));
    add(page::straight_line(point(0.37, 0.34), point(1.5, 0.76)));
    add(page::straight_line(point(0.37, 0.66), point(1.5, 0.24)));
    return {page::DrawingBlock{{side.scaled(1.6), side}, std::move(paths), {}}};
  }

  // What to do with it, then whose sheet it was: the slip is alone once it is cut off.
  std::vector<Block> head(NodeId section) {
    std::vector<Block> out;
    const Owner heading = Owner::of(b_.node(section, Role::kH2));
    out.push_back(
        slip_.when.empty()
            ? b_.text(TextRole::kBoxTitle, labels_.say("slip-title"), heading)
            : b_.paragraph(b_.said(TextRole::kBoxTitle, "slip-title-when", "when", slip_.when),
                           TextRole::kBoxTitle, heading));
    std::vector<std::string> what = {typographic(session_.title.text)};
    if (!session_.group_name.empty()) what.push_back(session_.group_name.text);
    if (session_.date) what.push_back(labels_.date(session_.date->value));
    out.push_back(b_.text(TextRole::kFine, fmt::format("{}", fmt::join(what, " · ")),
                          Owner::of(b_.node(section, Role::kP))));
    return out;
  }

  /// Columns it takes, and the field once its width is known.
  using Field = std::pair<std::int64_t, std::function<Block(Length)>>;

  // A field's nodes are made at once, in reading order; how wide it is, when its row is known.
  std::function<Block(Length)> field(NodeId list, const std::string& words) {
    const NodeId item = b_.node(list, Role::kListItem);
    const Owner label = Owner::of(b_.node(item, Role::kLabel));
    const NodeId form =
        b_.field_node(b_.node(item, Role::kListBody), labels_.say("slip-field", {{"what", words}}));
    return [this, label, form, words](Length width) {
      // High enough for a word in handwriting.
      const Length height = std::max(Length::mm(9), b_.look().tick_box.scaled(1.4));
      std::vector<Block> lines;
      lines.push_back(b_.text(TextRole::kColumn, words, label));
      lines.push_back(b_.tick_box(width, form, height));
      return Builder::stack(std::move(lines), b_.look().row_padding / 4);
    };
  }

  // Fields beside each other, by columns; the boxes stand on one line.
  Block row(const std::vector<Field>& fields) {
    constexpr std::int64_t kColumns = 3;
    const Length gap = b_.look().gap;
    const Length one = (b_.width() - gap * (kColumns - 1)) / kColumns;
    RowBlock out;
    out.gap = gap;
    out.align = RowAlign::kLastBaseline;
    for (const auto& [columns, make] : fields) {
      const Length width = one * columns + gap * (columns - 1);
      out.cells.push_back({Track::fixed(width), make(width)});
    }
    return {std::move(out)};
  }

  const plan::ReturnSlip& slip_;
  const plan::Session& session_;
  const HomeDays& days_;
  Builder& b_;
  const Labels& labels_;
};

}  // namespace

Block home_slip(const plan::ReturnSlip& slip, const plan::Session& session, const HomeDays& days,
                Builder& builder) {
  return SlipWriter(slip, session, days, builder).write();
}

}  // namespace chalkleaf::sheet
