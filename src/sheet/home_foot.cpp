// What comes before and after the drills of the usual, compact home sheet.
//
// The safety box keeps its frame and takes in when to stop; the rest is lines. Tested by
// tests/sheet/home_compact_test.cpp.
#include <algorithm>

#include "sheet/home_boxes.h"
#include "sheet/web_pointer.h"

namespace chalkleaf::sheet {

using page::RowAlign;
using page::RowBlock;
using page::Track;

namespace {

std::string with_capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

}  // namespace

// `▼ easier  ▲ harder  [M] cross off the day`
Block HomeBoxes::marks_line() {
  const Owner owner = paragraph();
  std::vector<type::Inline> pieces;
  for (const std::string_view key : {"easier", "harder"}) {
    if (!pieces.empty()) pieces.push_back(b_.piece(TextRole::kFine, "\u2002"));
    pieces.push_back(b_.mark(key, TextRole::kFine));
    pieces.push_back(
        b_.piece(TextRole::kFine,
                 "\u00A0" + labels_.say(key == "easier" ? "marks-easier" : "marks-harder")));
  }
  page::WrapBlock out;
  out.gap = b_.look().gap;
  out.line_gap = b_.look().row_padding / 4;
  out.children.push_back(b_.paragraph(std::move(pieces), TextRole::kFine, owner));
  // A box to show, not to tick.
  const Length side = b_.look().tick_box;
  RowBlock sample;
  sample.gap = Length() - side;
  sample.align = RowAlign::kBaseline;
  const Owner words = paragraph();
  sample.cells.push_back({Track::fixed(side), b_.text(TextRole::kColumn, days_.letters().front(),
                                                      words, {}, page::Align::kCentre)});
  Block box = b_.tick_box(side, Builder::kRoot);
  auto& drawing = std::get<page::DrawingBlock>(box.content);
  drawing.paths.front().owner = Owner::none(Artifact::kLayout);
  drawing.paths.front().fill.reset();
  drawing.baseline = (side + b_.look().text(TextRole::kColumn).size.scaled(0.71)) / 2;
  sample.cells.push_back({Track::fixed(side), std::move(box)});
  RowBlock meaning;
  meaning.gap = b_.look().gap / 2;
  meaning.align = RowAlign::kBaseline;
  meaning.cells.push_back({Track::fixed(side), {std::move(sample)}});
  meaning.cells.push_back(
      {Track::natural(), b_.text(TextRole::kFine, " " + labels_.say("marks-day"), words)});
  out.children.push_back({std::move(meaning)});
  return {std::move(out)};
}

// The grown-ups' box and what is needed beside each other, as wide each as makes the row least
// high; or below each other over the whole width, where that is lower still.
Block HomeBoxes::opening() {
  const Length close = b_.look().row_padding / 4;
  const Length gap = b_.look().gap;
  std::vector<Block> ticks = adult_lines();
  Block heading = std::move(ticks.front());
  ticks.erase(ticks.begin());
  const Block stop = b_.text(TextRole::kBoxText, labels_.say("stop-text"), paragraph());
  std::vector<Block> needed = kit_lines();
  const Block marks = marks_line();

  const auto safety = [&](Block list) {
    std::vector<Block> lines = {heading, std::move(list), stop};
    return framed(b_, Builder::stack(std::move(lines), close), Use::kInk,
                  b_.look().line_width.scaled(1.5));
  };
  const Block adults = safety(Builder::stack(ticks, close));
  std::vector<Block> kit_and_marks = needed;
  kit_and_marks.push_back(Builder::space(close));
  kit_and_marks.push_back(marks);
  const Block kit =
      framed(b_, Builder::stack(std::move(kit_and_marks), close), Use::kLine, b_.look().hair_width);

  // In running lines, the marks behind what is needed where they have room.
  const type::Inline between = b_.piece(TextRole::kBoxText, "\u2002");
  const auto in_words = [&](std::vector<Block> lines) {
    for (Block& one : lines) {
      if (std::holds_alternative<RowBlock>(one.content))
        one = b_.tick_words(std::move(one), TextRole::kBoxText);
    }
    return Builder::run_together(std::move(lines), between);
  };
  page::WrapBlock line;
  line.gap = gap * 3 / 2;
  line.line_gap = close;
  line.children.push_back(in_words(std::move(needed)));
  line.children.push_back(marks);
  Block all_ticks = in_words(std::move(ticks));
  std::vector<Block> below;
  if (b_.is_dense()) {
    std::vector<Block> both = {all_ticks, stop};
    std::vector<Block> lines = {heading, Builder::run_together(std::move(both), between)};
    below.push_back(framed(b_, Builder::stack(std::move(lines), close), Use::kInk,
                           b_.look().line_width.scaled(1.5)));
  } else {
    below.push_back(safety(std::move(all_ticks)));
  }
  below.push_back({std::move(line)});
  Block best = Builder::stack(std::move(below), b_.look().row_padding);
  Length height = b_.height_of(best, b_.width());
  if (b_.width() < b_.look().text(TextRole::kCue).size * 30) return best;
  for (const auto& [left, right] : {std::pair{11, 9}, {5, 4}, {13, 7}, {1, 1}, {12, 8}, {14, 6}}) {
    RowBlock row;
    row.gap = gap;
    row.align = RowAlign::kStretch;
    row.cells.push_back({Track::flexible(left), adults});
    row.cells.push_back({Track::flexible(right), kit});
    Block tried{std::move(row)};
    const Length high = b_.height_of(tried, b_.width());
    if (high >= height) continue;
    height = high;
    best = std::move(tried);
  }
  return best;
}

Block HomeBoxes::effort_line() {
  const Owner heading = Owner::of(b_.node(Builder::kRoot, Role::kH2));
  const Owner words = paragraph();
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  const Length side = b_.look().tick_box;
  page::WrapBlock boxes;
  boxes.gap = b_.look().gap / 2;
  boxes.line_gap = b_.look().row_padding / 2;
  const std::vector<Occasion>& times = days_.times();
  Length widest;
  for (std::size_t i = 0; i < times.size(); ++i) {
    const std::string name = days_.by_weeks() ? times[i].short_name : days_.letters()[i];
    const Length wide = b_.text_width(TextRole::kColumn, name) + side.scaled(1.5);
    widest = std::max(widest, wide);
    boxes.children.push_back(days_.lettered_box(
        name, labels_.say("field-effort", {{"day", times[i].name}}), list, wide));
  }
  const auto n = static_cast<std::int64_t>(times.size());
  const Length all = (widest + boxes.gap) * n;
  const Block title = b_.text(TextRole::kBoxTitle, labels_.say("how-hard") + " ", heading);
  const Block how = b_.text(TextRole::kFine, labels_.say("how-hard-write"), words);
  const bool one_line = all <= b_.width() * 2 / 5;
  RowBlock row;
  row.gap = b_.look().gap / 2;
  row.align = RowAlign::kBaseline;
  const Length gap = b_.look().gap / 2;
  const Length title_width =
      b_.text_width(TextRole::kBoxTitle, labels_.say("how-hard") + " ") + Length::pt(1);
  const Length how_width = b_.text_width(TextRole::kFine, labels_.say("how-hard-write"));
  if (title_width + how_width + all + gap * 2 <= b_.width()) {
    row.cells.push_back({Track::fixed(title_width), title});
    row.cells.push_back({Track::flexible(), how});
    row.cells.push_back({Track::fixed(all), {std::move(boxes)}});
    return {std::move(row)};
  }
  if (one_line) {
    std::vector<Block> both = {title, how};
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(both))});
    row.cells.push_back({Track::fixed(all), {std::move(boxes)}});
    return {std::move(row)};
  }
  std::vector<Block> lines = {title, how};
  lines.push_back(Builder::space(b_.look().row_padding / 2));
  lines.push_back({std::move(boxes)});
  return Builder::stack(std::move(lines));
}

// One paragraph, where paper is dear.
Block HomeBoxes::words_line(const std::vector<const plan::ExplainedWord*>& words) {
  std::vector<type::Inline> pieces = {
      b_.label(TextRole::kVariationLabel, labels_.say("words-here") + ":")};
  for (const plan::ExplainedWord* word : words) {
    if (pieces.size() > 1) pieces.push_back(b_.piece(TextRole::kFine, "; "));
    for (type::Inline& one : b_.pieces(TextRole::kVariationLabel, word->word))
      pieces.push_back(std::move(one));
    pieces.push_back(b_.piece(TextRole::kFine, "\u00A0– "));
    for (type::Inline& one : b_.pieces(TextRole::kFine, word->meaning))
      pieces.push_back(std::move(one));
  }
  return b_.paragraph(std::move(pieces), TextRole::kFine, paragraph());
}

// `tuck – knees to the chest`, each its own entry, in columns that are read down.
std::vector<Block> HomeBoxes::plain_words(const std::vector<const plan::ExplainedWord*>& words) {
  if (b_.is_dense()) return {words_line(words)};
  const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
  const NodeId list = b_.node(Builder::kRoot, Role::kList);
  const bool wide = b_.width() >= b_.look().text(TextRole::kCue).size * 30;
  const std::size_t columns = wide && words.size() > 1 ? 2 : 1;
  const std::size_t share = (words.size() + columns - 1) / columns;
  RowBlock row;
  row.gap = b_.look().gap;
  for (std::size_t from = 0; from < words.size(); from += share) {
    std::vector<Block> column;
    for (std::size_t i = from; i < std::min(from + share, words.size()); ++i) {
      const NodeId body = b_.node(b_.node(list, Role::kListItem), Role::kListBody);
      std::vector<type::Inline> pieces = b_.pieces(TextRole::kVariationLabel, words[i]->word);
      pieces.push_back(b_.piece(TextRole::kFine, "\u00A0– "));
      for (type::Inline& one : b_.pieces(TextRole::kFine, words[i]->meaning))
        pieces.push_back(std::move(one));
      column.push_back(b_.paragraph(std::move(pieces), TextRole::kFine, Owner::of(body)));
    }
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(column))});
  }
  std::vector<Block> out;
  out.push_back(b_.text(TextRole::kBoxTitle, labels_.say("words-here"), Owner::of(heading)));
  out.push_back({std::move(row)});
  return out;
}

Block HomeBoxes::foot() {
  std::vector<type::Inline> ask = {
      b_.label(TextRole::kVariationLabel, labels_.say("who-to-ask") + ":")};
  const auto add = [&](const plan::Words& words) {
    for (type::Inline& one : b_.pieces(TextRole::kFine, words)) ask.push_back(std::move(one));
  };
  const plan::Club& club = b_.context().club;
  plan::Words contact = club.contact;
  if (contact.empty()) contact.text = labels_.say("ask-coach");
  const auto end_sentence = [&] {
    const std::string& last = ask.back().text;
    if (!last.empty() && std::string_view(".!?…").find(last.back()) == std::string_view::npos)
      ask.push_back(b_.piece(TextRole::kFine, "."));
  };
  add(contact);
  end_sentence();
  for (const auto& [what, who] : club.contacts) {
    ask.push_back(b_.piece(TextRole::kFine, " "));
    ask.push_back(b_.piece(TextRole::kVariationLabel, with_capital(what.text) + ": ", what.span));
    add(who);
    end_sentence();
  }
  page::AroundBlock out;
  out.gap = b_.look().gap;
  out.line_gap = b_.look().row_padding / 4;
  out.children.push_back(b_.paragraph(std::move(ask), TextRole::kFine, paragraph()));
  out.children.push_back(b_.text(TextRole::kFine, labels_.say("home-caution"), paragraph()));
  if (!session_.web.empty()) {
    if (auto pointer =
            web_pointer(session_.web, TextRole::kFine, Length::mm(0.6), Builder::kRoot, b_)) {
      // The words go on around the code.
      out.left.push_back(std::move(pointer->code));
      out.left_width = pointer->side;
      for (Block& one : std::get<page::StackBlock>(pointer->words.content).children)
        out.children.push_back(std::move(one));
    }
  }
  if (b_.is_dense()) {
    Block one = Builder::run_together(std::move(out.children), b_.piece(TextRole::kFine, " "));
    out.children = {std::move(one)};
  }
  return {std::move(out)};
}

}  // namespace chalkleaf::sheet
