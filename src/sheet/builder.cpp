#include "sheet/builder.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "page/shapes.h"
#include "sheet/typography.h"

namespace chalkleaf::sheet {

Builder::Builder(const Context& context, const Look& look, type::Typesetter& typesetter)
    : context_(context), look_(look), typesetter_(typesetter) {
  width_ = paper_size(context.paper).width - look_.margin.at(context.paper) * 2;
  tree_.push_back({});
  for (std::size_t i = 0; i < styles_.size(); ++i) {
    // The catalogue was checked when it was loaded; a role it lacks is set in its first style.
    styles_[i] =
        typesetter.fonts()
            .style(look_.font, static_cast<type::Weight>(i / 2), static_cast<type::Slant>(i % 2))
            .value_or(0);
  }
}

NodeId Builder::node(NodeId parent, Role role) {
  page::Node made;
  made.role = role;
  made.parent = parent;
  tree_.push_back(std::move(made));
  return static_cast<NodeId>(tree_.size() - 1);
}

type::Inline Builder::piece(TextRole role, std::string text, Span origin) const {
  const TextLook& look = look_.text(role);
  type::Inline out;
  out.text = origin ? typographic(text) : std::move(text);
  out.style =
      styles_[static_cast<std::size_t>(look.weight) * 2 + static_cast<std::size_t>(look.slant)];
  out.size = look.size;
  out.colour = colour(look.colour);
  out.origin = origin;
  return out;
}

type::Inline Builder::whole(TextRole role, std::string text, Span origin) const {
  type::Inline out = piece(role, std::move(text), origin);
  out.unbroken = true;
  return out;
}

type::Inline Builder::label(TextRole role, std::string text) const {
  return piece(role, text.append(kNoBreakSpace));
}

Block Builder::paragraph(std::vector<type::Inline> pieces, TextRole role, Owner owner,
                         page::Align align) const {
  return {page::TextBlock{std::move(pieces), look_.text(role).leading, align, owner}};
}

Block Builder::text(TextRole role, std::string words, Owner owner, Span origin,
                    page::Align align) const {
  std::vector<type::Inline> pieces;
  pieces.push_back(piece(role, std::move(words), origin));
  return paragraph(std::move(pieces), role, owner, align);
}

Block Builder::title(const plan::Words& words, Owner owner) {
  type::Inline line = piece(TextRole::kTitle, words.text, words.span);
  Length widest;
  for (std::size_t at = 0; at < line.text.size();) {
    const std::size_t end = std::min(line.text.find(' ', at), line.text.size());
    widest = std::max(widest, text_width(TextRole::kTitle, line.text.substr(at, end - at)));
    at = end + 1;
  }
  const TextLook& look = look_.text(TextRole::kTitle);
  Length leading = look.leading;
  if (widest > width_) {
    const double factor = width_.in_pt() / widest.in_pt();
    line.size =
        std::max(look.size.scaled(factor * 0.999), look_.minimum);  // a hair less, for rounding
    leading = look.leading.scaled(line.size.in_pt() / look.size.in_pt());
  }
  return {page::TextBlock{{std::move(line)}, leading, page::Align::kStart, owner}};
}

Length Builder::text_width(TextRole role, std::string words) {
  const type::Inline one = piece(role, std::move(words));
  return typesetter_.natural_width({&one, 1});
}

Block Builder::rule(Length length, Length thickness, Use use) const {
  page::PathItem line;
  line.owner = Owner::none(Artifact::kLayout);
  line.steps = page::straight_line({Length(), thickness / 2}, {length, thickness / 2});
  line.stroke = stroke(use, thickness);
  return {page::DrawingBlock{{length, thickness}, {std::move(line)}, {}}};
}

Block Builder::tick_box(Length side, NodeId form) const {
  const Length half = look_.line_width / 2;
  page::PathItem box;
  box.owner = Owner::of(form);
  box.steps = page::rounded_rectangle({half, half, side - half * 2, side - half * 2}, side / 6);
  box.fill = colour(Use::kPaper);
  box.stroke = stroke(Use::kLine, look_.line_width);
  // Stands on the line of text beside it with its middle at the middle of the capitals.
  const Length cap = look_.text(TextRole::kDrill).size.scaled(0.71);
  return {page::DrawingBlock{{side, side}, {std::move(box)}, (side + cap) / 2}};
}

NodeId Builder::tick_node(NodeId parent, std::string description) {
  const NodeId id = node(parent, Role::kForm);
  at(id).box_description = std::move(description);
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

Block Builder::stack(std::vector<Block> children, Length gap) {
  return {page::StackBlock{std::move(children), gap, false}};
}

Block Builder::space(Length height) { return {page::SpaceBlock{height}}; }

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

Block Builder::note(NodeId parent, const plan::Note& note) {
  const bool heading = note.kind == plan::Note::Kind::kSubheading;
  return text(heading ? TextRole::kStrong : TextRole::kNote, note.words.text,
              Owner::of(node(parent, Role::kP)), note.words.span);
}

Block Builder::notes(NodeId parent, std::span<const plan::Note* const> all) {
  std::vector<Block> lines;
  for (const plan::Note* one : all) lines.push_back(note(parent, *one));
  return stack(std::move(lines));
}

std::vector<const plan::Note*> note_run(const std::vector<plan::Step>& steps, std::size_t first) {
  std::vector<const plan::Note*> out;
  for (std::size_t i = first; i < steps.size(); ++i) {
    const auto* note = std::get_if<plan::Note>(&steps[i]);
    if (note == nullptr || (i > first && note->kind != plan::Note::Kind::kTableRow)) break;
    out.push_back(note);
    if (note->kind != plan::Note::Kind::kTableRow) break;
  }
  return out;
}

Block Builder::foot(const std::string& first, const std::string& second, std::size_t page_index,
                    std::size_t pages) const {
  const Owner owner = Owner::none(Artifact::kFooter);
  page::RowBlock row;
  row.gap = look_.gap;
  row.align = page::RowAlign::kLastBaseline;
  row.cells.push_back({page::Track::flexible(), stack({text(TextRole::kFoot, first, owner),
                                                       text(TextRole::kFoot, second, owner)})});
  const std::string number = labels().say(
      "page", {{"page", std::to_string(page_index + 1)}, {"pages", std::to_string(pages)}});
  row.cells.push_back(
      {page::Track::natural(), text(TextRole::kFoot, number, owner, {}, page::Align::kEnd)});
  return {std::move(row)};
}

std::vector<type::Inline> Builder::kit_pieces(const plan::KitItem& item, TextRole name,
                                              TextRole description) const {
  std::vector<type::Inline> out = {piece(name, item.name.text, item.name.span)};
  if (!item.description.empty()) {
    out.push_back(piece(description, " – "));
    out.push_back(piece(description, item.description.text, item.description.span));
  }
  return out;
}

std::string Builder::part_time(Duration time) const {
  if (time < Duration::minutes(1))
    return labels().short_time(Duration::seconds(time.rounded_seconds()));
  return labels().say("minutes", {{"n", std::to_string(time.rounded_minutes())}});
}

page::Flow Builder::finish(std::vector<page::Section> sections, const plan::Session& session,
                           std::string_view kind_label) {
  page::Flow flow;
  flow.paper = paper_size(context_.paper);
  flow.margins = Insets::all(look_.margin.at(context_.paper));
  flow.margins.bottom = flow.margins.bottom * 3 / 4;  // the foot is light: it may stand lower
  flow.sections = std::move(sections);
  flow.tree = std::move(tree_);
  flow.info.title = fmt::format("{} – {}", session.title.text, kind_label);
  flow.info.author = context_.club.name.text;
  flow.info.subject = session.group_name.text;
  flow.info.language = labels().language();
  flow.info.producer = context_.producer;
  flow.info.created = context_.created;
  flow.foot_gap = look_.text(TextRole::kFoot).leading / 2;

  // A page that is dropped must find its way back: what, for whom and when on one line, whose on
  // the other.
  std::vector<std::string> what = {typographic(session.title.text)};
  if (!session.group_name.empty()) what.push_back(session.group_name.text);
  if (session.date) what.push_back(labels().date(session.date->value));
  std::vector<std::string> whose;
  if (!context_.club.name.empty()) whose.push_back(typographic(context_.club.name.text));
  whose.emplace_back(kind_label);
  if (!context_.revision.empty())
    whose.push_back(labels().say("revision", {{"revision", context_.revision}}));
  if (context_.revision_date) whose.push_back(labels().short_date(*context_.revision_date));
  flow.foot = [this, first = fmt::format("{}", fmt::join(what, " · ")),
               second = fmt::format("{}", fmt::join(whose, " · "))](std::size_t page_index,
                                                                    std::size_t pages) {
    return foot(first, second, page_index, pages);
  };
  return flow;
}

Duration whole_minutes_up(Duration time) {
  return Duration::milliseconds((time.in_milliseconds() + 59'999) / 60'000 * 60'000);
}

bool says_stop(const plan::Session& session, const Labels& labels) {
  const auto said = [&](const std::vector<plan::Safety>& notes) {
    return std::any_of(notes.begin(), notes.end(), [&](const plan::Safety& safety) {
      return lower_ascii(safety.words.text).find(labels.say("stop-word")) != std::string::npos;
    });
  };
  return said(session.safety) ||
         std::any_of(session.parts.begin(), session.parts.end(),
                     [&](const plan::Part& part) { return said(part.safety); });
}

std::string clock(const reason::Timetable& timetable, Duration since_start) {
  return timetable.start ? clock_text(*timetable.start + since_start) : stopwatch_text(since_start);
}

}  // namespace chalkleaf::sheet
