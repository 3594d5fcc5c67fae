#include "sheet/card_drill.h"

#include "sheet/dose_text.h"
#include "sheet/typography.h"

namespace chalkleaf::sheet {

type::Inline CardDrill::dot(TextRole role) const {
  return b_.piece(role, std::string(kNoBreakSpace) + "· ");
}

type::Inline CardDrill::dose_piece() const {
  std::string dose;
  if (drill_.dose) {
    dose = short_dose(with_rest(*drill_.dose, session_.timings), labels_);
  } else if (time_.shared_time) {
    dose = labels_.say("dose-shared", {{"n", std::to_string(time_.work.rounded_minutes())}});
  }
  type::Inline out = b_.piece(TextRole::kDose, std::move(dose));
  out.origin = drill_.dose ? drill_.dose->span : drill_.name.span;
  return out;
}

Block CardDrill::name(NodeId cell, Length room) {
  const Owner owner = Owner::of(b_.node(cell, Role::kP));
  std::vector<type::Inline> pieces = {
      b_.piece(TextRole::kDrill, drill_.name.text, drill_.name.span)};
  type::Inline dose = dose_piece();
  std::vector<type::Inline> both = pieces;
  if (!dose.text.empty()) {
    both.push_back(b_.piece(TextRole::kDose, "\u2002"));
    both.push_back(std::move(dose));
  }
  dose_is_placed_ = both.size() == pieces.size() || b_.width_of(both) <= room;
  if (dose_is_placed_) pieces = std::move(both);
  return b_.paragraph(std::move(pieces), TextRole::kDrill, owner);
}

std::vector<Block> CardDrill::dose(NodeId cell) {
  if (dose_is_placed_) return {};
  return {b_.paragraph({dose_piece()}, TextRole::kDose, Owner::of(b_.node(cell, Role::kP)))};
}

std::vector<Block> CardDrill::cues(NodeId cell) {
  std::vector<type::Inline> pieces;
  for (const plan::Words& cue : drill_.cues) {
    if (!pieces.empty()) pieces.push_back(dot(TextRole::kCue));
    pieces.push_back(b_.piece(TextRole::kCue, cue.text, cue.span));
  }
  for (const plan::KitUse& use : drill_.uses) {
    if (!pieces.empty()) pieces.push_back(dot(TextRole::kCue));
    pieces.push_back(b_.label(TextRole::kVariationLabel, labels_.say("with")));
    pieces.push_back(plain(use.kit.text, use.kit.span));
    if (use.how.empty()) continue;
    pieces.push_back(plain(", ", {}));
    pieces.push_back(plain(use.how.text, use.how.span));
  }
  std::vector<Block> lines;
  if (!pieces.empty()) {
    lines.push_back(
        b_.paragraph(std::move(pieces), TextRole::kCue, Owner::of(b_.node(cell, Role::kP))));
  }
  return lines;
}

std::vector<Block> CardDrill::others(NodeId cell) {
  std::vector<Block> lines;
  // Notes say how to set up, so they come before anybody starts.
  for (const plan::Note& note : drill_.notes) lines.push_back(b_.note(cell, note));
  if (!drill_.easier.empty() || !drill_.harder.empty()) {
    page::RowBlock pair;  // always two columns, so that the eye finds `harder` in one place
    pair.gap = b_.look().gap;
    pair.cells.push_back({page::Track::flexible(), variations("easier", drill_.easier, cell)});
    pair.cells.push_back({page::Track::flexible(), variations("harder", drill_.harder, cell)});
    lines.push_back({std::move(pair)});
  }
  for (const plan::Substitute& one : drill_.substitutes) lines.push_back(substitute(one, cell));
  return lines;
}

Block CardDrill::variations(std::string_view key, const std::vector<plan::Variation>& variations,
                            NodeId cell) {
  std::vector<Block> lines;
  for (const plan::Variation& variation : variations) {
    lines.push_back(b_.paragraph({b_.label(TextRole::kVariationLabel, labels_.say(key)),
                                  plain(variation.text, variation.span)},
                                 TextRole::kVariation, Owner::of(b_.node(cell, Role::kP))));
  }
  return Builder::stack(std::move(lines));
}

Block CardDrill::substitute(const plan::Substitute& substitute, NodeId cell) {
  const Owner owner = Owner::of(b_.node(cell, Role::kP));
  std::vector<type::Inline> pieces = {
      b_.label(TextRole::kVariationLabel, labels_.say("without", {{"kit", substitute.kit.text}})),
      plain(substitute.name.text, substitute.name.span)};
  if (substitute.dose) {
    pieces.push_back(plain(", ", {}));
    type::Inline dose = b_.whole(
        TextRole::kVariation, short_dose(with_rest(*substitute.dose, session_.timings), labels_));
    dose.origin = substitute.dose->span;
    pieces.push_back(std::move(dose));
  }
  const auto add = [&](const plan::Words& words) {
    pieces.push_back(dot(TextRole::kVariation));
    pieces.push_back(plain(words.text, words.span));
  };
  for (const plan::Note& note : substitute.notes) add(note.words);
  for (const plan::Words& cue : substitute.cues) add(cue);
  const auto add_labelled = [&](std::string_view key,
                                const std::vector<plan::Variation>& variations) {
    for (const plan::Variation& variation : variations) {
      pieces.push_back(dot(TextRole::kVariation));
      pieces.push_back(b_.label(TextRole::kVariationLabel, labels_.say(key)));
      pieces.push_back(plain(variation.text, variation.span));
    }
  };
  add_labelled("easier", substitute.easier);
  add_labelled("harder", substitute.harder);
  return b_.paragraph(std::move(pieces), TextRole::kVariation, owner);
}

}  // namespace chalkleaf::sheet
