// A drill of the usual home sheet: no frame, its figure at the left, its words beside and below.
//
// How much stands beside the figure, with the name; how, what is easier and what is harder run on
// around it. `▼` and `▲` are explained once on the sheet and are read out as words. Tested by
// tests/sheet/home_compact_test.cpp.
#include <algorithm>

#include "plan/library.h"
#include "sheet/circuit_text.h"
#include "sheet/dose_text.h"
#include "sheet/home_panel.h"

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;

namespace {

bool ends_a_sentence(const std::string& text) {
  if (text.empty()) return true;
  for (const std::string_view end : {".", "!", "?", "…", ":", "”"}) {
    if (text.ends_with(end)) return true;
  }
  return false;
}

}  // namespace

/// A paragraph that grows sentence by sentence.
class HomePanels::RunOn {
 public:
  RunOn(const HomePanels& panels, TextRole role) : panels_(&panels), role_(role) {}

  bool empty() const { return pieces_.empty(); }
  void label(const std::string& text) {
    space();
    pieces_.push_back(panels_->b_.label(TextRole::kVariationLabel, text));
    labelled_ = true;
  }
  void sentence(std::vector<type::Inline> words) {
    if (words.empty()) return;
    if (!labelled_) space();
    labelled_ = false;
    const std::string last = words.back().text;
    for (type::Inline& one : words) pieces_.push_back(std::move(one));
    if (!ends_a_sentence(last)) pieces_.push_back(panels_->b_.piece(role_, "."));
  }
  /// The mark of a rung before its words; read out as a word.
  void rung(std::string_view key, std::vector<type::Inline> words) {
    space();
    read_as_.push_back({pieces_.size(), panels_->labels_.say(key) + ":"});
    pieces_.push_back(panels_->b_.mark(key, role_));
    pieces_.push_back(panels_->b_.piece(role_, std::string("\u00A0")));
    labelled_ = true;
    sentence(std::move(words));
  }
  Block block(Owner owner) && {
    Block out = panels_->b_.paragraph(std::move(pieces_), role_, owner);
    std::get<page::TextBlock>(out.content).read_as = std::move(read_as_);
    return out;
  }

 private:
  void space() {
    if (!pieces_.empty()) pieces_.back().text += ' ';
  }

  const HomePanels* panels_;  // never null
  TextRole role_;
  std::vector<type::Inline> pieces_;
  std::vector<page::ReadAs> read_as_;
  bool labelled_ = false;
};

// ---- the words

// What is no sentence (a table, a picture) stands below.
std::vector<Block> HomePanels::add_how(const plan::Drill& drill, Length room, RunOn& text) {
  const plan::LibraryDrill* known = drill.known;
  const bool told = known != nullptr && std::any_of(drill.notes.begin(), drill.notes.end(),
                                                    [&](const plan::Note& note) {
                                                      return note.words.text == known->plain.text;
                                                    });
  if (known != nullptr && !known->plain.empty() && !told)
    text.sentence(b_.pieces(TextRole::kVariation, known->plain));
  const bool sentences =
      std::all_of(drill.notes.begin(), drill.notes.end(),
                  [](const plan::Note& note) { return note.kind == plan::Note::Kind::kParagraph; });
  std::vector<Block> apart;
  if (!sentences) apart = b_.notes(parent_, drill.notes, room);
  for (const plan::Note& note : drill.notes) {
    if (sentences && b_.is_for_reader(note))
      text.sentence(b_.pieces(TextRole::kVariation, note.words));
  }
  const bool own_place = known == nullptr || known->at.text != drill.at.text;
  if (!drill.at.empty() && own_place) {
    text.label(labels_.say("at"));
    text.sentence(b_.pieces(TextRole::kVariation, drill.at));
  }
  for (const plan::KitUse& use : drill.uses) {
    text.label(labels_.say("with"));
    text.sentence(kit_pieces(use));
  }
  for (const plan::Words& cue : drill.cues)
    text.sentence(b_.said(TextRole::kCue, "say-cue", "cue", cue));
  return apart;
}

void HomePanels::add_rungs(const std::vector<plan::Variation>& easier,
                           const std::vector<plan::Variation>& harder, RunOn& text) {
  for (const plan::Variation& one : easier)
    text.rung("easier", b_.pieces(TextRole::kVariation, one));
  for (const plan::Variation& one : harder)
    text.rung("harder", b_.pieces(TextRole::kVariation, one));
}

// How, what is easier and what is harder: run on where paper is dear, else a paragraph each; each
// substitute its own, so that its easier rung is not taken for the drill's.
std::vector<Block> HomePanels::brief_words(const plan::Drill& drill, Length room) {
  std::vector<Block> out;
  RunOn text(*this, TextRole::kVariation);
  std::vector<Block> apart = add_how(drill, room, text);
  const bool run_on = b_.is_dense() && apart.empty();
  if (!run_on) {
    if (!text.empty()) out.push_back(std::move(text).block(paragraph_owner()));
    for (Block& block : apart) out.push_back(std::move(block));
    text = RunOn(*this, TextRole::kVariation);
  }
  add_rungs(drill.easier, drill.harder, text);
  if (!text.empty()) out.push_back(std::move(text).block(paragraph_owner()));
  for (const plan::Substitute& one : drill.substitutes) {
    RunOn other(*this, TextRole::kVariation);
    other.label(labels_.say("without", {{"kit", one.kit.text}}));
    other.sentence(b_.pieces(TextRole::kVariation, one.name));
    const auto said = [&](const plan::Dose& of, const plan::Words& name) {
      return brief_plain_dose(with_rest(of, session_.timings), name.text, labels_).whole();
    };
    // As much as of the drill itself where nothing else is said.
    if (one.dose && !(drill.dose && said(*one.dose, one.name) == said(*drill.dose, one.name))) {
      const PlainDose dose =
          brief_plain_dose(with_rest(*one.dose, session_.timings), one.name.text, labels_);
      other.sentence({b_.piece(TextRole::kVariation, dose.whole(), one.dose->span)});
    }
    for (const plan::Words& cue : one.cues) other.sentence(b_.pieces(TextRole::kVariation, cue));
    add_rungs(one.easier, one.harder, other);
    out.push_back(std::move(other).block(paragraph_owner()));
    for (Block& note : b_.notes(parent_, one.notes, room)) out.push_back(std::move(note));
  }
  const bool all_text = std::all_of(out.begin(), out.end(), [](const Block& block) {
    return std::holds_alternative<page::TextBlock>(block.content);
  });
  if (b_.arrangement() == Arrangement::kClose && all_text && out.size() > 1)
    out = {Builder::run_together(std::move(out), b_.piece(TextRole::kVariation, " "))};
  return out;
}

// ---- an entry

// The name and how much always stand beside the figure; what follows goes on below it.
HomePanels::Shown HomePanels::shown(const plan::Drill& drill) {
  Shown out{scenes_of(drill), {}};
  for (const Scene& scene : out.scenes) out.nodes.push_back(b_.figure_node(*scene, parent_));
  return out;
}

Block HomePanels::around_figure(const Shown& figures, std::vector<Block> beside,
                                std::vector<Block> below, Length width) {
  page::AroundBlock out;
  out.gap = b_.look().gap * 2 / 3;
  out.line_gap = b_.look().row_padding / 6;
  const std::vector<Scene>& scenes = figures.scenes;
  if (!scenes.empty()) {
    const auto n = static_cast<std::int64_t>(scenes.size());
    const Length gaps = b_.look().gap / 2 * (n - 1);
    const Length most = n == 1 ? std::min(width * 8 / 25, b_.look().figure * 2) : width * 11 / 25;
    std::vector<Size> sizes;
    Length high;
    for (const Scene& scene : scenes) {
      sizes.push_back(b_.figure_size(*scene, {(most - gaps) / n, b_.look().figure}));
      high = std::max(high, sizes.back().height);
      out.left_width += sizes.back().width;
    }
    out.left_width += gaps;
    // Figures of a row stand alike: none is narrower than a child with arms at the sides is high.
    const Length column = std::min(most, b_.look().figure);
    const Length room = std::max(out.left_width, column);
    Length words;
    for (const Block& one : beside)
      words += b_.height_of(one, width - room - out.gap) + out.line_gap;
    const Length above = std::max(Length(), std::min(words, b_.look().figure) - high) / 2;
    RowBlock row;
    row.gap = b_.look().gap / 2;
    row.cells.push_back(
        {Track::fixed((room - out.left_width) / 2 - row.gap), Builder::space(Length())});
    for (std::size_t i = 0; i < scenes.size(); ++i) {
      std::vector<Block> standing;
      standing.push_back(Builder::space(high - sizes[i].height + above));
      standing.push_back(b_.figure_of(*scenes[i], sizes[i], figures.nodes[i]));
      row.cells.push_back({Track::fixed(sizes[i].width), Builder::stack(std::move(standing))});
    }
    out.left_width = room;
    std::vector<Block> left;
    left.push_back({std::move(row)});
    const Length below_figure = std::max(Length(), words - high - above);
    left.push_back(Builder::space(below_figure));
    out.left.push_back(Builder::stack(std::move(left)));
  }
  for (std::vector<Block>* from : {&beside, &below}) {
    for (Block& one : *from) out.children.push_back(std::move(one));
  }
  return {std::move(out)};
}

// Beside the name, or below it where the name would have too little room.
Block HomePanels::with_days(Block title, Block days, Length room) {
  const Length boxes = days_.lettered_width();
  const Length gap = b_.look().gap / 2;
  const Length least = b_.look().text(TextRole::kDrill).size * 5;
  if (boxes + gap + least > room) {
    std::vector<Block> both;
    both.push_back(std::move(title));
    both.push_back(std::move(days));
    return Builder::stack(std::move(both), b_.look().row_padding / 4);
  }
  RowBlock head;
  head.gap = gap;
  head.align = RowAlign::kBaseline;
  head.cells.push_back({Track::flexible(), std::move(title)});
  head.cells.push_back({Track::fixed(boxes), std::move(days)});
  return {std::move(head)};
}

Block HomePanels::entry(const plan::Drill& drill, const reason::DrillTime& time, int number,
                        Length width, Ticked ticked) {
  number_ = number;
  shape_ = Shape::kHalf;
  const bool in_line = ticked == Ticked::kEach && days_.line_width(drill).has_value();
  const bool apart = days_.has_own(drill) || (ticked == Ticked::kEach && !in_line);
  const Length room = width * 16 / 25;
  std::vector<Block> beside;
  Block title = name(drill);
  const Shown figures = shown(drill);
  Block days = in_line ? days_.lettered(drill.name.text) : Builder::space({});
  std::vector<Block> choices = choice_lines(drill);
  std::vector<Block> dosed = dose(drill, time, brief_plain_dose);
  const Length boxes = in_line ? days_.lettered_width() + b_.look().gap / 2 : Length();
  // What little there is to say of how much stands behind the name, where paper is dear.
  if (b_.is_dense() && choices.empty() && dosed.size() == 1 &&
      b_.natural_width(title) + b_.natural_width(dosed.front()) + boxes + b_.look().gap / 2 <=
          room) {
    RowBlock both;
    both.gap = b_.look().gap / 2;
    both.align = RowAlign::kBaseline;
    both.cells.push_back({Track::natural(), std::move(title)});
    both.cells.push_back({Track::flexible(), std::move(dosed.front())});
    title = {std::move(both)};
    dosed.clear();
  }
  std::vector<Block> below = brief_words(drill, width);
  const auto is_text = [](const std::vector<Block>& blocks) {
    return !blocks.empty() && std::holds_alternative<page::TextBlock>(blocks.front().content);
  };
  if (b_.is_dense() && is_text(dosed) && is_text(below)) {
    std::vector<Block> both = {std::move(dosed.front()), std::move(below.front())};
    below.front() = Builder::run_together(std::move(both), b_.piece(TextRole::kVariation, " "));
    dosed.clear();
  }
  // What has no boxes behind its name goes on there, where it cannot be had on one sheet else.
  const bool goes_on = b_.arrangement() == Arrangement::kClose && !in_line && choices.empty() &&
                       std::holds_alternative<page::TextBlock>(title.content);
  if (goes_on && dosed.empty() && is_text(below)) {
    std::vector<Block> both = {std::move(title), std::move(below.front())};
    beside.push_back(Builder::run_together(
        std::move(both), b_.piece(TextRole::kVariation, std::string(page::kSeparator))));
    below.erase(below.begin());
  } else {
    beside.push_back(in_line ? with_days(std::move(title), std::move(days), room)
                             : std::move(title));
  }
  for (Block& line : choices) beside.push_back(std::move(line));
  for (Block& line : dosed) beside.push_back(std::move(line));
  if (apart) below.push_back(days_.boxes(drill, width));
  return around_figure(figures, std::move(beside), std::move(below), width);
}

// ---- a circuit

std::vector<Block> HomePanels::circuit_head(const plan::Drill& drill, const reason::DrillTime& time,
                                            int number, Length width) {
  number_ = number;
  std::vector<Block> out = {name(drill)};
  for (Block& line : dose(drill, time, brief_plain_dose)) out.push_back(std::move(line));
  for (Block& line : brief_words(drill, width)) out.push_back(std::move(line));
  out.push_back(days_.boxes(drill, width));
  return out;
}

Block HomePanels::station_entry(const plan::Drill& station, const reason::DrillTime& time,
                                std::size_t number, NodeId list, Length width) {
  const NodeId item = b_.node(list, Role::kListItem);
  const Owner label = Owner::of(b_.node(item, Role::kLabel));
  parent_ = b_.node(item, Role::kListBody);
  RowBlock head;
  head.gap = b_.look().gap / 2;
  head.align = RowAlign::kBaseline;
  head.cells.push_back(
      {Track::natural(), b_.text(TextRole::kStation, std::to_string(number) + " ", label)});
  head.cells.push_back(
      {Track::flexible(), b_.text(TextRole::kStation, station.name, paragraph_owner())});
  const Shown figures = shown(station);
  std::vector<Block> beside;
  beside.push_back({std::move(head)});
  for (Block& line : dose(station, time, brief_plain_dose)) beside.push_back(std::move(line));
  std::vector<Block> below = brief_words(station, width);
  Block out = around_figure(figures, std::move(beside), std::move(below), width);
  parent_ = Builder::kRoot;
  if (station.record.empty()) return out;
  std::vector<Block> both;
  both.push_back(std::move(out));
  both.push_back(days_.fields(station, width));
  return Builder::stack(std::move(both), b_.look().row_padding / 4);
}

}  // namespace chalkleaf::sheet
