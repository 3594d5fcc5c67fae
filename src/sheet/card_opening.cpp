#include "sheet/card_opening.h"

#include <fmt/format.h>

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

class OpeningWriter {
 public:
  OpeningWriter(const plan::Session& session, const reason::Timetable& timetable, Builder& builder)
      : session_(session), timetable_(timetable), b_(builder), labels_(builder.labels()) {}

  page::Section write() {
    page::Section section;
    const Length gap = b_.look().row_padding;
    const NodeId title = b_.node(Builder::kRoot, Role::kH1);
    page::Slab head{
        b_.text(TextRole::kTitle, session_.title.text, Owner::of(title), session_.title.span),
        {},
        true};
    head.outline = page::OutlineEntry{session_.title.text, 1, 0, {}};
    section.slabs.push_back(std::move(head));
    section.slabs.push_back({who_and_when(), Length(), true});
    if (auto box = safety_box()) section.slabs.push_back({std::move(*box), gap * 2});
    if (!session_.equipment.empty()) section.slabs.push_back({kit_list(), gap * 2});
    for (const plan::Note& note : session_.introduction) {
      section.slabs.push_back({b_.note(Builder::kRoot, note), gap});
    }
    return section;
  }

 private:
  Block who_and_when() {
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
    page::WrapBlock wrap;
    wrap.gap = b_.look().gap * 2;
    std::vector<std::vector<type::Inline>> facts;
    if (!session_.group_name.empty()) {
      facts.push_back(
          {b_.whole(TextRole::kStrong, session_.group_name.text, session_.group_name.span)});
      const std::string about = about_group();
      if (!about.empty()) facts.back().push_back(b_.whole(TextRole::kSubtitle, " " + about));
    }
    std::string when = session_.date ? labels_.date(session_.date->value) : std::string();
    std::string clock_times;
    if (timetable_.start) {
      const Duration length = session_.slot ? session_.slot->value : timetable_.total;
      clock_times = labels_.say("from-to", {{"from", clock_text(*timetable_.start)},
                                            {"to", clock_text(*timetable_.start + length)}});
    }
    if (!when.empty() || !clock_times.empty()) {
      facts.push_back({});
      if (!when.empty()) facts.back().push_back(b_.whole(TextRole::kStrong, when));
      if (!clock_times.empty()) {
        facts.back().push_back(
            b_.whole(TextRole::kSubtitle, (when.empty() ? "" : " ") + clock_times));
      }
    }
    const Duration length = session_.slot ? session_.slot->value : timetable_.total;
    facts.push_back(
        {b_.whole(TextRole::kSubtitle,
                  labels_.say("minutes", {{"n", std::to_string(length.rounded_minutes())}}))});
    for (std::size_t i = 0; i < facts.size(); ++i) {
      // A reader that hears the line needs the space that the eye sees as a gap.
      if (i + 1 < facts.size()) facts[i].push_back(b_.piece(TextRole::kSubtitle, " "));
      wrap.children.push_back(b_.paragraph(std::move(facts[i]), TextRole::kSubtitle, owner));
    }
    return {std::move(wrap)};
  }

  std::string about_group() const {
    if (!session_.group) return {};
    const plan::Group& group = *session_.group;
    std::vector<std::string> out;
    if (group.youngest && group.oldest && group.youngest->value != group.oldest->value) {
      out.push_back(labels_.say("ages", {{"from", std::to_string(group.youngest->value)},
                                         {"to", std::to_string(group.oldest->value)}}));
    } else if (group.youngest) {
      out.push_back(labels_.say(group.oldest ? "one-age" : "from-age",
                                {{"from", std::to_string(group.youngest->value)}}));
    }
    if (group.size) out.push_back(labels_.count("gymnasts", group.size->value));
    return fmt::format("{}", fmt::join(out, " · "));
  }

  std::optional<Block> safety_box() {
    std::vector<const plan::Safety*> all;
    for (const plan::Safety& safety : session_.safety) all.push_back(&safety);
    for (const plan::Part& part : session_.parts) {
      for (const plan::Safety& safety : part.safety) all.push_back(&safety);
    }
    if (all.empty()) return std::nullopt;
    const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
    std::vector<Block> lines;
    lines.push_back(
        b_.text(TextRole::kBoxTitle, labels_.say("before-you-start"), Owner::of(heading)));
    for (const plan::Safety* safety : all) {
      const NodeId node = b_.node(Builder::kRoot, Role::kP);
      lines.push_back(
          b_.text(TextRole::kBoxText, safety->words.text, Owner::of(node), safety->words.span));
    }
    RowBlock row;
    row.gap = b_.look().gap;
    const Length sign = b_.look().text(TextRole::kBoxTitle).leading.scaled(1.35);
    row.cells.push_back({Track::fixed(sign.scaled(1.16)), b_.warning_sign(sign)});
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(lines))});
    page::BoxBlock box;
    const Length pad = b_.look().row_padding;
    box.padding = {pad * 3 / 2, pad * 2, pad * 2, pad * 2};
    box.border = b_.stroke(Use::kInk, b_.look().line_width.scaled(1.5));
    box.radius = b_.look().radius;
    box.content.push_back({std::move(row)});
    return Block{std::move(box)};
  }

  Block kit_list() {
    const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    // Two columns, filled row by row, once there is enough to set out.
    const std::size_t columns = session_.equipment.size() > 3 ? 2 : 1;
    const Length side = b_.look().text(TextRole::kBoxText).size;
    std::vector<Block> lines;
    for (std::size_t i = 0; i < session_.equipment.size(); i += columns) {
      RowBlock line;
      line.gap = b_.look().gap;
      for (std::size_t j = i; j < i + columns; ++j) {
        Block entry = Builder::space({});
        if (j < session_.equipment.size()) entry = kit_line(session_.equipment[j], list, side);
        line.cells.push_back({Track::flexible(), std::move(entry)});
      }
      lines.push_back({std::move(line)});
    }
    RowBlock row;
    row.gap = b_.look().gap;
    row.align = RowAlign::kBaseline;
    row.cells.push_back(
        {Track::natural(), b_.text(TextRole::kBoxTitle, labels_.say("kit"), Owner::of(heading))});
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(lines))});
    return {std::move(row)};
  }

  Block kit_line(const plan::KitItem& item, NodeId list, Length side) {
    plan::Words words = item.name;
    if (!item.description.empty()) words.text += ": " + item.description.text;
    return b_.tick_line(list, TextRole::kBoxText, words, side,
                        labels_.say("tick-kit", {{"kit", item.name.text}}));
  }

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  Builder& b_;
  const Labels& labels_;
};

}  // namespace

page::Section card_opening(const plan::Session& session, const reason::Timetable& timetable,
                           Builder& builder) {
  return OpeningWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
