#include "sheet/home_panel.h"

#include <algorithm>

#include "base/text.h"
#include "plan/library.h"
#include "sheet/circuit_text.h"
#include "sheet/dose_text.h"
#include "sheet/home_boxes.h"

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;

HomePanels::HomePanels(const plan::Session& session, HomeDays& days, Builder& builder)
    : session_(session), days_(days), b_(builder), labels_(builder.labels()) {
  // Two panels beside each other need room for about thirty characters each.
  two_columns_ = b_.width() >= b_.look().text(TextRole::kCue).size * 36;
}

Length HomePanels::inner_width(Length outer) const {
  return outer - (b_.look().row_padding + b_.look().hair_width) * 2;
}

// ---- a panel

// Three groups: what and how much; how; and what else it can be. The days to tick stand at the
// foot, or beside the name where there is one panel in a row.
Block HomePanels::drill(const plan::Drill& drill, const reason::DrillTime& time, int number,
                        Length figure_height, Shape shape) {
  number_ = number;
  shape_ = shape;
  const bool whole = shape == Shape::kWhole;
  const Length inside = inner_width(whole ? b_.width() : (b_.width() - gap()) / 2);
  const std::vector<Scene> scenes = scenes_of(drill);
  const bool beside = whole && !scenes.empty();
  const Length room = beside ? inside - figure_column() - gap() : inside;
  std::vector<Block> what = {name(drill)};
  Block picture = figures(scenes, beside ? figure_column() : inside, figure_height);
  for (Block& line : choice_lines(drill)) what.push_back(std::move(line));
  for (Block& line : dose(drill, time)) what.push_back(std::move(line));
  std::vector<Block> how_lines = how(drill, room);
  std::vector<Block> choices = others(drill, room, whole && two_columns_);

  const std::optional<Length> days_line = days_.line_width(drill);
  const bool days_beside_name = whole && drill.choices.empty() && days_line &&
                                *days_line * 2 < (beside ? room * 5 / 4 : b_.width());
  if (days_beside_name) {
    RowBlock head;
    head.gap = b_.look().gap;
    head.align = RowAlign::kBaseline;
    head.cells.push_back({Track::flexible(), std::move(what.front())});
    head.cells.push_back({Track::natural(), days_.boxes(drill, room)});
    what.front() = {std::move(head)};
  }
  std::vector<Block> groups;
  const Length close = b_.look().row_padding / 4;
  for (std::vector<Block>* group : {&what, &how_lines, &choices}) {
    if (!group->empty()) groups.push_back(Builder::stack(std::move(*group), close));
  }
  page::StackBlock inner{std::move(groups), b_.look().row_padding * 2 / 3, false};
  if (beside) {
    RowBlock row;
    row.gap = gap();
    row.align = RowAlign::kMiddle;
    row.cells.push_back({Track::fixed(figure_column()), std::move(picture)});
    row.cells.push_back({Track::flexible(), {std::move(inner)}});
    inner = {{Block{std::move(row)}}, {}, false};
  } else if (!scenes.empty()) {
    inner.children.insert(inner.children.begin(), std::move(picture));
  }
  if (days_beside_name) return panel(b_, {std::move(inner)});
  std::vector<Block> with_days;
  with_days.push_back({std::move(inner)});
  with_days.push_back(days_.boxes(drill, inside));
  page::StackBlock all{std::move(with_days), b_.look().row_padding, true};
  return panel(b_, {std::move(all)});
}

// ---- what it looks like

std::vector<HomePanels::Scene> HomePanels::scenes_of(const plan::Drill& drill) const {
  constexpr std::size_t kMost = 3;
  // Beside each other there is no room for all frames of a movement.
  const auto extent = drill.figures.size() > 1 ? figure::Extent::kGlance : figure::Extent::kWhole;
  std::vector<Scene> out;
  for (const plan::Words& name : drill.figures) {
    auto scene = b_.scene(name.text, session_, extent);
    if (scene && out.size() < kMost && std::find(out.begin(), out.end(), scene) == out.end()) {
      out.push_back(std::move(scene));
    }
  }
  return out;
}

// A rung whose shape is another shows it, beside its words. They begin at the top, level with those
// of the rung beside it.
Block HomePanels::with_small_figure(Block words, const plan::Words& figure) {
  const auto scene = b_.scene(figure.text, session_, figure::Extent::kGlance);
  if (!scene) return words;
  const Length high = b_.look().figure * 4 / 9;
  const Size size = b_.figure_size(*scene, {high * 3 / 2, high});
  RowBlock row;
  row.gap = b_.look().gap / 2;
  row.cells.push_back({Track::flexible(), std::move(words)});
  row.cells.push_back({Track::fixed(size.width), b_.figure(*scene, size, parent_)});
  return {std::move(row)};
}

// The paper that one of several drawings side by side has; a gap stands on either side of each.
Size HomePanels::most_of(std::size_t count, Length width, Shape shape) const {
  const auto n = static_cast<std::int64_t>(std::max<std::size_t>(count, 1));
  const Length high = shape == Shape::kHalfLow ? b_.look().figure * 2 / 3 : b_.look().figure;
  return {(width - b_.look().gap * (n + 1)) / n, high};
}

Length HomePanels::figure_column() const { return b_.width() * (two_columns_ ? 5 : 6) / 20; }

Length HomePanels::figure_height(const plan::Drill& drill, Shape shape) const {
  const std::vector<Scene> scenes = scenes_of(drill);
  const Length width =
      shape == Shape::kWhole ? figure_column() : inner_width((b_.width() - gap()) / 2);
  Length out;
  for (const Scene& scene : scenes) {
    out = std::max(out, b_.figure_size(*scene, most_of(scenes.size(), width, shape)).height);
  }
  return out;
}

// In the middle, on the ground that the panels of a row have in common.
Block HomePanels::figures(const std::vector<Scene>& scenes, Length width, Length height) {
  if (scenes.empty()) return Builder::space({});
  RowBlock row;
  row.gap = b_.look().gap;
  row.cells.push_back({Track::flexible(), Builder::space({})});
  for (const Scene& scene : scenes) {
    const Size size = b_.figure_size(*scene, most_of(scenes.size(), width, shape_));
    std::vector<Block> standing;
    standing.push_back(Builder::space(std::max(Length(), height - size.height)));
    standing.push_back(b_.figure(*scene, size, parent_));
    row.cells.push_back({Track::fixed(size.width), Builder::stack(std::move(standing))});
  }
  row.cells.push_back({Track::flexible(), Builder::space({})});
  return {std::move(row)};
}

// The number hangs beside the name, and both are one heading.
Block HomePanels::number_and(Block words, Owner owner) {
  if (auto* text = std::get_if<page::TextBlock>(&words.content);
      text != nullptr && b_.arrangement() != Arrangement::kRoomy) {
    // One paragraph: a name that goes on begins below its number.
    std::vector<Block> both = {b_.text(TextRole::kDrill, std::to_string(number_), owner),
                               std::move(words)};
    return Builder::run_together(std::move(both), b_.label(TextRole::kDrill, ""));
  }
  RowBlock row;
  row.gap = b_.look().gap * 2 / 3;
  row.align = RowAlign::kBaseline;
  row.cells.push_back(
      {Track::natural(), b_.text(TextRole::kDrill, std::to_string(number_) + " ", owner)});
  row.cells.push_back({Track::flexible(), std::move(words)});
  return {std::move(row)};
}

Block HomePanels::name(const plan::Drill& drill) {
  const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kH3));
  if (drill.choices.empty()) {
    return number_and(b_.text(TextRole::kDrill, drill.name.text, owner, drill.name.span), owner);
  }
  std::vector<Block> words = {
      b_.text(TextRole::kDrill, labels_.say("choose-one"), owner),
      b_.text(TextRole::kPartDetail, labels_.say("easiest-first"), paragraph_owner())};
  return number_and(
      Builder::run_together(std::move(words), b_.piece(TextRole::kPartDetail, "\u2002")), owner);
}

// Each on a line of its own, joined by the `or` that the coach wrote.
std::vector<Block> HomePanels::choice_lines(const plan::Drill& drill) {
  if (drill.choices.empty()) return {};
  std::vector<Block> out;
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  for (const plan::Words& choice : drill.choices) {
    std::vector<type::Inline> pieces;
    if (!out.empty()) pieces.push_back(b_.label(TextRole::kNote, labels_.say("or")));
    pieces.push_back(b_.piece(TextRole::kStation, choice.text, choice.span));
    const NodeId item = b_.node(list, Role::kListItem);
    out.push_back(b_.paragraph(std::move(pieces), TextRole::kStation,
                               Owner::of(b_.node(item, Role::kListBody))));
  }
  out.push_back(Builder::space(b_.look().row_padding / 4));
  return out;
}

// What and how often in strong type, how in plain type behind it.
std::vector<Block> HomePanels::dose(const plan::Drill& drill, const reason::DrillTime& time,
                                    Plain plain) {
  PlainDose words;
  Span origin = drill.name.span;
  if (drill.circuit) {
    words = plain_circuit(*drill.circuit, labels_);
    origin = drill.circuit->span;
  } else if (drill.dose) {
    words = plain(with_rest(*drill.dose, session_.timings), drill.name.text, labels_);
    origin = drill.dose->span;
  } else if (time.shared_time) {
    words.what =
        labels_.count("say-shared", std::max<std::int64_t>(1, time.work.rounded_minutes()));
  }
  if (words.what.empty()) return {};
  std::vector<type::Inline> pieces = {b_.piece(TextRole::kDose, words.what)};
  if (!words.how.empty()) pieces.push_back(b_.piece(TextRole::kNote, " " + words.how));
  for (type::Inline& piece : pieces) piece.origin = origin;
  return {b_.paragraph(std::move(pieces), TextRole::kDose, paragraph_owner())};
}

std::vector<Block> HomePanels::how(const plan::Drill& drill, Length room) {
  std::vector<Block> out;
  const plan::LibraryDrill* known = drill.known;
  if (known != nullptr && !known->plain.empty()) {
    const bool said = std::any_of(drill.notes.begin(), drill.notes.end(), [&](const auto& note) {
      return note.words.text == known->plain.text;
    });
    if (!said) out.push_back(b_.text(TextRole::kNote, known->plain, paragraph_owner()));
  }
  for (Block& note : b_.notes(parent_, drill.notes, room)) out.push_back(std::move(note));
  // The station of the hall that the library knows is none of the family's.
  const bool own_place = known == nullptr || known->at.text != drill.at.text;
  if (!drill.at.empty() && own_place) out.push_back(labelled("at", drill.at));
  for (const plan::KitUse& use : drill.uses) out.push_back(labelled("with", kit_pieces(use)));
  for (const plan::Words& cue : drill.cues) {
    out.push_back(b_.paragraph(b_.said(TextRole::kCue, "say-cue", "cue", cue), TextRole::kCue,
                               paragraph_owner()));
  }
  return out;
}

// All choices stand at one edge; the easier one on a quiet ground, so that it is not missed.
std::vector<Block> HomePanels::others(const plan::Drill& drill, Length room, bool rungs_beside) {
  std::vector<Block> out;
  const auto rungs = [&](std::string_view key, const std::vector<plan::Variation>& all,
                         const plan::Words& figure, Ground ground) {
    for (const plan::Variation& one : all) {
      const bool first = &one == &all.front();
      out.push_back(
          padded(with_small_figure(labelled(key, one), first ? figure : plan::Words{}), ground));
    }
  };
  rungs("easier", drill.easier, drill.figure_easier, Ground::kTint);
  rungs("harder", drill.harder, drill.figure_harder, Ground::kPaper);
  // Across a whole row the two directions stand beside each other.
  if (rungs_beside && drill.easier.size() == 1 && drill.harder.size() == 1) {
    RowBlock pair;
    pair.gap = gap();
    pair.align = RowAlign::kStretch;
    for (Block& rung : out) pair.cells.push_back({Track::flexible(), std::move(rung)});
    out = {Block{std::move(pair)}};
  }
  for (const plan::Substitute& one : drill.substitutes)
    out.push_back(padded(substitute(one, room - b_.look().row_padding * 4 / 3), Ground::kPaper));
  return out;
}

// ---- kit to move

Block HomePanels::kit_move(const plan::KitMove& move) {
  RowBlock line;
  line.gap = b_.look().gap * 2 / 3;
  line.align = RowAlign::kBaseline;
  const Length sign = b_.look().text(TextRole::kStation).size.scaled(0.9);
  line.cells.push_back({Track::fixed(sign), b_.kit_sign(move.way, sign)});
  line.cells.push_back({Track::flexible(),
                        b_.paragraph(b_.kit_move_pieces(move), TextRole::kCue, paragraph_owner())});
  page::BoxBlock ground;
  const Length pad = b_.look().row_padding;
  ground.padding = {pad * 2 / 3, pad, pad * 2 / 3, pad};
  ground.fill = b_.colour(Use::kTint);
  ground.radius = b_.look().radius;
  ground.content.push_back({std::move(line)});
  return {std::move(ground)};
}

// ---- lines

// `towel, held tight between the hands`; a bare name is told by the description of the kit list.
std::vector<type::Inline> HomePanels::kit_pieces(const plan::KitUse& use) const {
  std::vector<type::Inline> out = b_.pieces(TextRole::kVariation, use.kit);
  const auto add = [&](const std::string& between, const plan::Words& words) {
    out.push_back(b_.piece(TextRole::kVariation, between));
    for (type::Inline& one : b_.pieces(TextRole::kVariation, words)) out.push_back(std::move(one));
  };
  if (!use.how.empty()) {
    add(", ", use.how);
    return out;
  }
  for (const plan::KitItem& item : session_.equipment) {
    const bool same = lower_ascii(item.name.text) == lower_ascii(use.kit.text);
    if (same && !item.description.empty()) add(" – ", item.description);
  }
  return out;
}

Block HomePanels::labelled(std::string_view label, std::vector<type::Inline> words) {
  words.insert(words.begin(), b_.label(TextRole::kVariationLabel, labels_.say(label)));
  return b_.paragraph(std::move(words), TextRole::kVariation, paragraph_owner());
}

Block HomePanels::labelled(std::string_view label, const plan::Words& words) {
  return labelled(label, b_.pieces(TextRole::kVariation, words));
}

Block HomePanels::padded(Block content, Ground ground) const {
  const Length pad = b_.look().row_padding;
  page::BoxBlock box;
  // Type leaves more room above itself than below; without any of ours, words on a tint are level
  // with those on paper beside it.
  const Length below = ground == Ground::kTint ? pad / 3 : Length();
  box.padding = {Length(), pad * 2 / 3, below, pad * 2 / 3};
  if (ground == Ground::kTint) box.fill = b_.colour(Use::kTint);
  box.radius = b_.look().radius / 2;
  box.content.push_back(std::move(content));
  return {std::move(box)};
}

Block HomePanels::substitute(const plan::Substitute& substitute, Length room) {
  std::vector<type::Inline> first = {
      b_.label(TextRole::kVariationLabel, labels_.say("without", {{"kit", substitute.kit.text}})),
      b_.piece(TextRole::kVariation, substitute.name.text + ".", substitute.name.span)};
  if (substitute.dose) {
    const PlainDose dose =
        plain_dose(with_rest(*substitute.dose, session_.timings), substitute.name.text, labels_);
    first.push_back(b_.piece(TextRole::kVariation, " " + dose.whole(), substitute.dose->span));
  }
  for (const plan::Words& cue : substitute.cues) {
    first.push_back(b_.piece(TextRole::kVariation, " "));
    for (type::Inline& one : b_.pieces(TextRole::kVariation, cue)) first.push_back(std::move(one));
    const bool ended = !cue.text.empty() &&
                       std::string_view(".!?").find(cue.text.back()) != std::string_view::npos;
    if (!ended) first.push_back(b_.piece(TextRole::kVariation, "."));
  }
  std::vector<Block> lines;
  lines.push_back(b_.paragraph(std::move(first), TextRole::kVariation, paragraph_owner()));
  for (const plan::Variation& easier : substitute.easier)
    lines.push_back(labelled("easier", easier));
  for (const plan::Variation& harder : substitute.harder)
    lines.push_back(labelled("harder", harder));
  for (Block& note : b_.notes(parent_, substitute.notes, room)) lines.push_back(std::move(note));
  return Builder::stack(std::move(lines));
}

}  // namespace chalkleaf::sheet
