#include "sheet/card_drill.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/circuit_text.h"
#include "sheet/dose_text.h"
#include "sheet/typography.h"

namespace chalkleaf::sheet {

std::string InCommon::words(const Labels& labels) const {
  std::vector<std::string> out;
  if (!place.empty()) out.push_back(place);
  if (every) out.push_back(labels.say("dose-every", {{"time", labels.short_time(*every)}}));
  if (rest) out.push_back(labels.say("dose-rest", {{"time", labels.short_time(*rest)}}));
  if (effort) out.push_back(labels.say("dose-effort", {{"n", std::to_string(*effort)}}));
  return fmt::format("{}", fmt::join(out, ", "));
}

type::Inline CardDrill::dot(TextRole role) const {
  return b_.piece(role, std::string(page::kSeparator));
}

std::vector<type::Inline> CardDrill::dose_pieces() const {
  std::string dose;
  Span origin = drill_.name.span;
  if (drill_.circuit) {
    dose = short_circuit(*drill_.circuit, labels_);
    origin = drill_.circuit->span;
  } else if (drill_.dose) {
    plan::Dose own = with_rest(*drill_.dose, session_.timings);
    if (common_ != nullptr) {
      if (common_->rest) own.rest.reset();
      if (common_->every) own.every.reset();
      if (common_->effort) own.effort.reset();
    }
    dose = short_dose(own, labels_);
    origin = drill_.dose->span;
  } else if (time_.shared_time) {
    dose = labels_.say("dose-shared", {{"n", std::to_string(time_.work.rounded_minutes())}});
  }
  if (dose.empty()) return {};
  type::Inline out = b_.piece(TextRole::kDose, std::move(dose));
  out.origin = origin;
  return {std::move(out)};
}

// `at beam, 3 waves of 3`: who has not seen the plan learns where to go and that all take turns.
std::vector<type::Inline> CardDrill::place_pieces() const {
  std::vector<type::Inline> out;
  if (common_ != nullptr && !common_->place.empty()) return out;
  if (!drill_.at.empty()) out = b_.said(TextRole::kVariation, "at-station", "station", drill_.at);
  const std::optional<int> gymnasts =
      time_.in_turn > 0 ? std::optional(time_.in_turn) : session_.gymnast_count();
  if (time_.waves <= 1 || !gymnasts) return out;
  if (!out.empty()) out.push_back(plain(", ", {}));
  // As even as they can be: ten gymnasts with room for eight are two waves of five.
  const int each = (*gymnasts + time_.waves - 1) / time_.waves;
  out.push_back(plain(
      labels_.say("waves", {{"n", std::to_string(each)}, {"waves", std::to_string(time_.waves)}}),
      {}));
  return out;
}

Block CardDrill::line(std::vector<type::Inline> pieces, TextRole role, NodeId cell) {
  return b_.paragraph(std::move(pieces), role, Owner::of(b_.node(cell, Role::kP)));
}

Block CardDrill::name(NodeId cell, Length room) {
  std::vector<type::Inline> pieces = {
      b_.piece(TextRole::kDrill, drill_.name.text, drill_.name.span)};
  left_over_.clear();
  for (const std::vector<type::Inline>& more : {dose_pieces(), place_pieces()}) {
    if (more.empty()) continue;
    std::vector<type::Inline>& to = left_over_.empty() ? pieces : left_over_;
    std::vector<type::Inline> both = to;
    both.push_back(b_.piece(TextRole::kDose, "\u2002"));
    both.insert(both.end(), more.begin(), more.end());
    if (!left_over_.empty() || b_.width_of(both) <= room) {
      to = std::move(both);
    } else {
      left_over_ = more;
    }
  }
  return line(std::move(pieces), TextRole::kDrill, cell);
}

std::vector<Block> CardDrill::dose(NodeId cell) {
  if (left_over_.empty() || (b_.is_dense() && has_cues())) return {};
  return {line(std::move(left_over_), TextRole::kDose, cell)};
}

std::vector<type::Inline> CardDrill::cue_pieces() const {
  std::vector<type::Inline> pieces;
  const auto add = [&](std::vector<type::Inline> more) {
    for (type::Inline& one : more) pieces.push_back(std::move(one));
  };
  const auto begin = [&] {
    if (!pieces.empty()) pieces.push_back(dot(TextRole::kCue));
  };
  for (const plan::Words& cue : drill_.cues) {
    begin();
    add(b_.pieces(TextRole::kCue, cue));
  }
  for (const plan::KitUse& use : drill_.uses) {
    begin();
    pieces.push_back(b_.label(TextRole::kVariationLabel, labels_.say("with")));
    add(b_.pieces(TextRole::kVariation, use.kit));
    if (use.how.empty()) continue;
    pieces.push_back(plain(", ", {}));
    add(b_.pieces(TextRole::kVariation, use.how));
  }
  if (!drill_.record.empty()) {
    begin();
    pieces.push_back(b_.label(TextRole::kVariationLabel, labels_.say("record")));
    add(b_.pieces(TextRole::kVariation, drill_.record));
  }
  return pieces;
}

std::vector<Block> CardDrill::cues(NodeId cell) {
  std::vector<type::Inline> pieces = cue_pieces();
  if (pieces.empty()) return {};
  if (!left_over_.empty()) {  // where paper is dear
    left_over_.push_back(dot(TextRole::kDose));
    pieces.insert(pieces.begin(), left_over_.begin(), left_over_.end());
    left_over_.clear();
  }
  return {line(std::move(pieces), TextRole::kCue, cell)};
}

std::vector<Block> CardDrill::station(NodeId cell, Length room) {
  std::vector<type::Inline> first = {
      b_.piece(TextRole::kStation, drill_.name.text, drill_.name.span)};
  for (const std::vector<type::Inline>& more : {dose_pieces(), place_pieces()}) {
    if (more.empty()) continue;
    first.back().text += ' ';  // a line may end here
    first.insert(first.end(), more.begin(), more.end());
  }
  std::vector<type::Inline> cue = cue_pieces();
  if (cue.empty()) return {line(std::move(first), TextRole::kStation, cell)};
  std::vector<type::Inline> both = first;
  both.back().text += ' ';
  both.insert(both.end(), cue.begin(), cue.end());
  if (b_.width_of(both) <= room) return {line(std::move(both), TextRole::kStation, cell)};
  std::vector<Block> out = {line(std::move(first), TextRole::kStation, cell)};
  out.push_back(line(std::move(cue), TextRole::kCue, cell));
  return out;
}

std::vector<Block> CardDrill::others(NodeId cell, Length room) {
  // Notes say how to set up, so they come before anybody starts.
  std::vector<Block> lines = b_.notes(cell, drill_.notes, room);
  Block rungs = line({}, TextRole::kVariation, cell);
  auto& text = std::get<page::TextBlock>(rungs.content);
  add_rungs("easier", drill_.easier, text);
  add_rungs("harder", drill_.harder, text);
  if (!text.text.empty()) lines.push_back(std::move(rungs));
  for (const plan::Substitute& one : drill_.substitutes) lines.push_back(substitute(one, cell));
  return lines;
}

std::vector<Block> CardDrill::rest(NodeId cell, NodeId others_cell, Length room) {
  std::vector<Block> lines = cues(cell);
  const bool notes = std::any_of(drill_.notes.begin(), drill_.notes.end(),
                                 [&](const plan::Note& note) { return b_.is_for_reader(note); });
  const bool run_on = b_.is_dense() && !lines.empty() && !notes;
  if (!run_on) {
    for (Block& line : others(others_cell, room)) lines.push_back(std::move(line));
    return lines;
  }
  auto& text = std::get<page::TextBlock>(lines.back().content);
  add_rungs("easier", drill_.easier, text);
  add_rungs("harder", drill_.harder, text);
  for (const plan::Substitute& one : drill_.substitutes)
    lines.push_back(substitute(one, others_cell));
  return lines;
}

// The mark is read out as the word it stands for.
void CardDrill::add_rungs(std::string_view key, const std::vector<plan::Variation>& rungs,
                          page::TextBlock& line) const {
  for (const plan::Variation& rung : rungs) {
    if (!line.text.empty()) line.text.back().text += ' ';
    line.read_as.push_back({line.text.size(), labels_.say(key)});
    line.text.push_back(b_.mark(key, TextRole::kVariation));
    line.text.push_back(plain(std::string(kNoBreakSpace), {}));
    for (type::Inline& one : b_.pieces(TextRole::kVariation, rung))
      line.text.push_back(std::move(one));
  }
}

bool CardDrill::is_dose_of_drill(const plan::Substitute& substitute) const {
  return drill_.dose && short_dose(with_rest(*substitute.dose, session_.timings), labels_) ==
                            short_dose(with_rest(*drill_.dose, session_.timings), labels_);
}

Block CardDrill::substitute(const plan::Substitute& substitute, NodeId cell) {
  const Owner owner = Owner::of(b_.node(cell, Role::kP));
  std::vector<type::Inline> pieces = {
      b_.label(TextRole::kVariationLabel, labels_.say("without", {{"kit", substitute.kit.text}})),
      plain(substitute.name.text, substitute.name.span)};
  // As much as of the drill itself where nothing else is said.
  if (substitute.dose && !is_dose_of_drill(substitute)) {
    pieces.push_back(plain(", ", {}));
    type::Inline dose = b_.whole(
        TextRole::kVariation, short_dose(with_rest(*substitute.dose, session_.timings), labels_));
    dose.origin = substitute.dose->span;
    pieces.push_back(std::move(dose));
  }
  const auto add_words = [&](const plan::Words& words) {
    for (type::Inline& one : b_.pieces(TextRole::kVariation, words))
      pieces.push_back(std::move(one));
  };
  const auto add = [&](const plan::Words& words) {
    pieces.push_back(dot(TextRole::kVariation));
    add_words(words);
  };
  for (const plan::Note& note : substitute.notes) {
    if (b_.is_for_reader(note)) add(note.words);
  }
  for (const plan::Words& cue : substitute.cues) add(cue);
  Block out = b_.paragraph(std::move(pieces), TextRole::kVariation, owner);
  add_rungs("easier", substitute.easier, std::get<page::TextBlock>(out.content));
  add_rungs("harder", substitute.harder, std::get<page::TextBlock>(out.content));
  return out;
}

}  // namespace chalkleaf::sheet
