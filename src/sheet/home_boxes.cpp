#include "sheet/home_boxes.h"

#include <algorithm>

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;

Block framed(const Builder& builder, Block content, Use use, Length width,
             std::optional<Use> fill) {
  page::BoxBlock box;
  box.padding = Insets::all(builder.look().row_padding + width);
  box.border = builder.stroke(use, width);
  if (fill) box.fill = builder.colour(*fill);
  box.radius = builder.look().radius;
  box.content.push_back(std::move(content));
  return {std::move(box)};
}

Block panel(const Builder& builder, Block content) {
  const Look& look = builder.look();
  return framed(builder, std::move(content), look.panel_line, look.hair_width, look.panel_fill);
}

std::vector<Block> HomeBoxes::adult_lines() {
  const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  std::vector<Block> lines;
  RowBlock head;
  head.gap = b_.look().gap * 2 / 3;
  head.align = RowAlign::kMiddle;
  const Length sign = b_.look().text(TextRole::kBoxTitle).leading.scaled(1.1);
  head.cells.push_back({Track::fixed(sign.scaled(1.16)), b_.warning_sign(sign)});
  head.cells.push_back({Track::flexible(), b_.text(TextRole::kBoxTitle, labels_.say("grown-ups"),
                                                   Owner::of(heading))});
  lines.push_back({std::move(head)});
  const auto add = [&](const plan::Words& sentence) {
    lines.push_back(b_.tick_line(list, TextRole::kBoxText, b_.pieces(TextRole::kBoxText, sentence),
                                 list_box(), labels_.say("tick-home", {{"text", sentence.text}})));
  };
  for (const plan::Safety& safety : session_.safety) {
    for (const plan::Words& sentence : safety.sentences) add(sentence);
  }
  for (const plan::Part& part : session_.parts) {
    for (const plan::Safety& safety : part.safety) {
      for (const plan::Words& sentence : safety.sentences) add(sentence);
    }
  }
  if (session_.unsaid.adult_stays) add({labels_.say("adult-line"), {}});
  if (session_.unsaid.space_clear) add({labels_.say("space-line"), {}});
  const bool in_full = b_.arrangement() != Arrangement::kRoomy;  // below these lines
  if (!in_full && !says_stop(session_, labels_)) add({labels_.say("stop-line"), {}});
  return lines;
}

Block HomeBoxes::adults() {
  return framed(b_, Builder::stack(adult_lines(), b_.look().row_padding / 3), Use::kInk,
                b_.look().line_width.scaled(1.5));
}

std::vector<Block> HomeBoxes::kit_lines() {
  const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
  std::vector<Block> lines;
  lines.push_back(b_.text(TextRole::kBoxTitle, labels_.say("you-need"), Owner::of(heading)));
  if (session_.equipment.empty()) {
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
    lines.push_back(b_.text(TextRole::kBoxText, labels_.say("need-nothing"), owner));
  } else {
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    for (const plan::KitItem& item : session_.equipment) {
      lines.push_back(
          b_.tick_line(list, TextRole::kBoxText,
                       b_.kit_pieces(item, TextRole::kVariationLabel, TextRole::kBoxText),
                       list_box(), labels_.say("tick-kit", {{"kit", item.name.text}})));
    }
  }
  return lines;
}

Block HomeBoxes::kit() {
  return framed(b_, Builder::stack(kit_lines(), b_.look().row_padding / 3), Use::kLine,
                b_.look().line_width);
}

// A line of numbers from 0 to 10 for each time (the CR-10 scale: Foster et al. 2001). More times
// than a page has lines for go on in a second frame.
std::vector<Block> HomeBoxes::effort() {
  const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
  const Length gap = b_.look().row_padding / 2;
  std::vector<Block> lines;
  lines.push_back(b_.text(TextRole::kBoxTitle, labels_.say("how-hard"), Owner::of(heading)));
  lines.push_back(b_.text(TextRole::kFine, labels_.say("how-hard-ends"), paragraph()));
  Length label_width;
  for (const Occasion& time : days_.times())
    label_width = std::max(label_width, b_.text_width(TextRole::kColumn, time.short_name));
  for (const Occasion& time : days_.times()) {
    const Owner owner = paragraph();
    RowBlock row;
    row.gap = b_.look().gap / 2;
    row.align = RowAlign::kBaseline;
    row.cells.push_back({Track::fixed(label_width + b_.look().gap),
                         b_.text(TextRole::kColumn, time.short_name + " ", owner)});
    for (int i = 0; i <= 10; ++i) {
      row.cells.push_back({Track::flexible(), number_cell(std::to_string(i), owner)});
    }
    lines.push_back({std::move(row)});
  }
  std::vector<Block> out;
  std::vector<Block> frame;
  Length height;
  const auto finish = [&] {
    out.push_back(
        framed(b_, Builder::stack(std::move(frame), gap), Use::kLine, b_.look().hair_width));
    frame.clear();
    height = Length();
  };
  for (Block& line : lines) {
    const Length more = b_.height_of(line, b_.width()) + gap;
    if (!frame.empty() && height + more > b_.page_height() * 4 / 5) finish();
    height += more;
    frame.push_back(std::move(line));
  }
  finish();
  return out;
}

// The figure, in a frame that is wide enough to circle.
Block HomeBoxes::number_cell(const std::string& number, Owner owner) const {
  page::BoxBlock box;
  const Length pad = b_.look().row_padding / 6;
  box.padding = {pad, Length(), pad, Length()};
  box.border = b_.stroke(Use::kHair, b_.look().hair_width);
  box.radius = b_.look().radius;
  // The space keeps the figures apart when the line is read out or copied.
  box.content.push_back(b_.text(TextRole::kColumn, number + " ", owner, {}, page::Align::kCentre));
  return {std::move(box)};
}

Block HomeBoxes::meaning(const plan::ExplainedWord& word, Length word_width, NodeId list) {
  const NodeId item = b_.node(list, Role::kListItem);
  const Owner label = Owner::of(b_.node(item, Role::kLabel));
  const Owner body = Owner::of(b_.node(item, Role::kListBody));
  RowBlock row;
  row.gap = b_.look().gap;
  row.align = RowAlign::kBaseline;
  row.cells.push_back(
      {Track::fixed(word_width), b_.text(TextRole::kVariationLabel, word.word, label)});
  row.cells.push_back({Track::flexible(), b_.text(TextRole::kVariation, word.meaning, body)});
  return {std::move(row)};
}

// Beside each other in two columns once there are many, the first half left.
Block HomeBoxes::words(const std::vector<const plan::ExplainedWord*>& words, Length outer) {
  constexpr std::size_t kMostInOneColumn = 4;
  const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  const bool wide = outer >= b_.look().text(TextRole::kCue).size * 36;
  const std::size_t columns = wide && words.size() > kMostInOneColumn ? 2 : 1;
  const std::size_t share = (words.size() + columns - 1) / columns;
  // The meanings stand at one edge, behind the longest of the words that are not too long.
  const Length most = outer / static_cast<std::int64_t>(columns * 4);
  Length word_width;
  for (const plan::ExplainedWord* one : words) {
    const Length width = b_.text_width(TextRole::kVariationLabel, one->word.text);
    if (width <= most) word_width = std::max(word_width, width);
  }
  if (word_width == Length()) word_width = most;
  const Length gap = b_.look().row_padding / 3;
  RowBlock row;
  row.gap = b_.look().gap;
  for (std::size_t from = 0; from < words.size(); from += share) {
    std::vector<Block> column;
    for (std::size_t i = from; i < std::min(from + share, words.size()); ++i)
      column.push_back(meaning(*words[i], word_width, list));
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(column), gap)});
  }
  std::vector<Block> lines;
  lines.push_back(b_.text(TextRole::kBoxTitle, labels_.say("words-here"), Owner::of(heading)));
  lines.push_back({std::move(row)});
  return framed(b_, Builder::stack(std::move(lines), gap), Use::kLine, b_.look().hair_width);
}

Block HomeBoxes::care() {
  std::vector<Block> lines;
  const auto heading = [&](std::string_view key) {
    const Owner title = Owner::of(b_.node(Builder::kRoot, Role::kH2));
    lines.push_back(b_.text(TextRole::kBoxTitle, labels_.say(key), title));
  };
  heading("when-to-stop");
  lines.push_back(b_.text(TextRole::kBoxText, labels_.say("stop-text"), paragraph()));
  heading("who-to-ask");
  const plan::Club& club = b_.context().club;
  plan::Words contact = club.contact;
  if (contact.empty()) contact.text = labels_.say("ask-coach");
  lines.push_back(b_.text(TextRole::kBoxText, contact, paragraph()));
  for (const auto& [what, who] : club.contacts) {
    std::string label = what.text;
    if (!label.empty() && label[0] >= 'a' && label[0] <= 'z')
      label[0] = static_cast<char>(label[0] - 'a' + 'A');
    std::vector<type::Inline> pieces = {
        b_.piece(TextRole::kVariationLabel, label + ": ", what.span)};
    for (type::Inline& one : b_.pieces(TextRole::kBoxText, who)) pieces.push_back(std::move(one));
    lines.push_back(b_.paragraph(std::move(pieces), TextRole::kBoxText, paragraph()));
  }
  return framed(b_, Builder::stack(std::move(lines), b_.look().row_padding / 4), Use::kInk,
                b_.look().line_width.scaled(1.5));
}

}  // namespace chalkleaf::sheet
