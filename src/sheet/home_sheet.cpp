// The home sheet: for a fridge door, read by an adult once and by a child of seven to fourteen
// every day.
//
// What to clear away and who must be there; what is needed; one panel a drill, in plain words, with
// a box for every practice day; how hard it was; when to stop and who to ask. Panels stand two in a
// row of equal height where the paper is wide enough. Tested by tests/sheet/home_sheet_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"

#include "sheet/builder.h"
#include "sheet/dose_text.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

class HomeWriter {
 public:
  HomeWriter(const plan::Session& session, const reason::Timetable& timetable, Builder& builder)
      : session_(session), timetable_(timetable), b_(builder), labels_(builder.labels()) {
    // Two panels beside each other need room for about thirty characters each.
    two_columns_ = b_.width() >= b_.look().text(TextRole::kCue).size * 36;
    for (const auto& day : session.repeat)
      days_.push_back({labels_.weekday(day.value), labels_.short_weekday(day.value)});
    if (days_.empty()) {
      for (int i = 1; i <= 3; ++i) {
        const std::string name = labels_.say("day", {{"n", std::to_string(i)}});
        days_.push_back({name, name});
      }
    }
  }

  page::Flow write() {
    std::vector<page::Section> sections;
    sections.push_back(opening());
    for (const reason::PartTime& part : timetable_.parts) sections.push_back(part_section(part));
    sections.push_back(closing());
    return b_.finish(std::move(sections), session_, labels_.say("sheet"));
  }

 private:
  struct Day {
    std::string name;
    std::string short_name;
  };

  Length panel_gap() const { return b_.look().row_padding; }

  // ---- above the drills

  page::Section opening() {
    page::Section section;
    const NodeId title = b_.node(Builder::kRoot, Role::kH1);
    page::Slab head{b_.title(session_.title, Owner::of(title)), {}, true};
    head.outline = page::OutlineEntry{session_.title.text, 1, 0, {}};
    section.slabs.push_back(std::move(head));
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
    section.slabs.push_back(
        {b_.text(TextRole::kSubtitle, subtitle(), owner, session_.group_name.span), {}, true});
    for (const plan::Note& note : session_.introduction) {
      section.slabs.push_back({b_.note(Builder::kRoot, note), panel_gap()});
    }
    Block adults = adults_box();
    Block kit = kit_box();
    constexpr std::size_t kMostBeside =
        6;  // a long kit list beside the grown-ups' box would leave a hole
    if (two_columns_ && session_.equipment.size() <= kMostBeside) {
      RowBlock row;
      row.gap = panel_gap();
      row.align = RowAlign::kStretch;
      row.cells.push_back({Track::flexible(11), std::move(adults)});
      row.cells.push_back({Track::flexible(9), std::move(kit)});
      section.slabs.push_back({{std::move(row)}, panel_gap() * 3 / 2});
    } else {
      section.slabs.push_back({std::move(adults), panel_gap() * 3 / 2});
      section.slabs.push_back({std::move(kit), panel_gap()});
    }
    return section;
  }

  std::string subtitle() const {
    std::vector<std::string> facts;
    if (!session_.group_name.empty()) facts.push_back(session_.group_name.text);
    facts.push_back(about_minutes(timetable_.total));
    std::vector<std::string> names;
    for (const auto& day : session_.repeat) names.push_back(labels_.weekday(day.value));
    if (!names.empty()) facts.push_back(fmt::format("{}", fmt::join(names, ", ")));
    return fmt::format("{}", fmt::join(facts, " · "));
  }

  std::string about_minutes(Duration time) const {
    return labels_.count("about-minutes", std::max<std::int64_t>(1, time.rounded_minutes()));
  }

  Block framed(Block content, Use use, Length width) const {
    page::BoxBlock box;
    box.padding = Insets::all(b_.look().row_padding + width);
    box.border = b_.stroke(use, width);
    box.radius = b_.look().radius;
    box.content.push_back(std::move(content));
    return {std::move(box)};
  }

  Length list_box() const { return b_.look().text(TextRole::kBoxText).size.scaled(1.05); }

  Block adults_box() {
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
      lines.push_back(b_.tick_line(
          list, TextRole::kBoxText, {b_.piece(TextRole::kBoxText, sentence.text, sentence.span)},
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
    if (!says_stop(session_, labels_)) add({labels_.say("stop-line"), {}});
    return framed(Builder::stack(std::move(lines), b_.look().row_padding / 3), Use::kInk,
                  b_.look().line_width.scaled(1.5));
  }

  Block kit_box() {
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
    return framed(Builder::stack(std::move(lines), b_.look().row_padding / 3), Use::kLine,
                  b_.look().line_width);
  }

  // ---- a part

  page::Section part_section(const reason::PartTime& part) {
    page::Section section;
    const plan::Words& title = part.part->title;
    const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
    page::Slab head;
    head.block = part_head(title, Owner::of(heading), part.length);
    head.space_before = b_.look().part_space;
    head.keep_with_next = !part.part->steps.empty();
    head.outline = page::OutlineEntry{title.text, 2, 0, {}};
    head.origin = title.span;
    section.slabs.push_back(std::move(head));
    plan::Words again = title;
    again.text = labels_.say("continued", {{"part", title.text}});
    section.continuation =
        b_.text(TextRole::kPart, again.text, Owner::none(Artifact::kHeader), title.span);
    add_steps(part, section);
    return section;
  }

  Block part_head(const plan::Words& title, Owner owner, Duration length) {
    page::WrapBlock words;
    words.gap = b_.look().gap;
    words.children.push_back(b_.text(TextRole::kPart, title.text, owner, title.span));
    if (length > Duration()) {
      words.children.push_back(b_.text(TextRole::kPartDetail, about_minutes(length),
                                       Owner::of(b_.node(Builder::kRoot, Role::kP))));
    }
    return {std::move(words)};
  }

  // Drills two by two into rows; a note between them ends the row.
  void add_steps(const reason::PartTime& part, page::Section& section) {
    std::vector<Block> waiting;
    Span origin;
    const auto flush = [&] {
      if (waiting.empty()) return;
      page::Slab slab;
      slab.space_before = panel_gap();
      slab.origin = origin;
      if (!two_columns_) {
        slab.block = std::move(waiting.front());
      } else {
        RowBlock row;
        row.gap = panel_gap();
        row.align = RowAlign::kStretch;
        if (waiting.size() == 1) waiting.push_back(Builder::space({}));
        for (Block& panel : waiting) row.cells.push_back({Track::flexible(), std::move(panel)});
        slab.block = {std::move(row)};
      }
      section.slabs.push_back(std::move(slab));
      waiting.clear();
    };
    std::size_t next_drill = 0;
    const std::vector<plan::Step>& steps = part.part->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (const auto* drill = std::get_if<plan::Drill>(&steps[i])) {
        if (waiting.empty()) origin = drill->span;
        waiting.push_back(panel(*drill, part.drills.at(next_drill++)));
        if (!two_columns_ || waiting.size() == 2) flush();
      } else if (const auto run = note_run(steps, i); !run.empty()) {
        flush();
        section.slabs.push_back({b_.notes(Builder::kRoot, run), panel_gap(), false, std::nullopt,
                                 run.front()->words.span});
        i += run.size() - 1;
      }
    }
    flush();
  }

  // ---- a drill

  // Three groups: what and how much; how; and what else it can be. The days to tick stand at the
  // foot, or beside the name where there is one panel in a row.
  Block panel(const plan::Drill& drill, const reason::DrillTime& time) {
    ++number_;
    std::vector<Block> what = {panel_name(drill)};
    for (Block& line : panel_dose(drill, time)) what.push_back(std::move(line));
    std::vector<Block> how;
    for (const plan::Note& note : drill.notes) how.push_back(b_.note(Builder::kRoot, note));
    for (const plan::KitUse& use : drill.uses) how.push_back(labelled("with", kit_words(use)));
    for (const plan::Words& cue : drill.cues) {
      how.push_back(b_.paragraph(
          {b_.piece(TextRole::kCue, labels_.say("say-cue", {{"cue", cue.text}}), cue.span)},
          TextRole::kCue, paragraph_owner()));
    }
    std::vector<Block> choices;
    for (const plan::Variation& easier : drill.easier)
      choices.push_back(padded(labelled("easier", easier), Ground::kTint));
    for (const plan::Variation& harder : drill.harder)
      choices.push_back(padded(labelled("harder", harder), Ground::kPaper));
    for (const plan::Substitute& one : drill.substitutes)
      choices.push_back(padded(substitute_lines(one), Ground::kPaper));

    const bool days_beside_name = !two_columns_ && day_boxes_width() * 2 < b_.width();
    if (days_beside_name) {
      RowBlock head;
      head.gap = b_.look().gap;
      head.align = RowAlign::kBaseline;
      head.cells.push_back({Track::flexible(), std::move(what.front())});
      head.cells.push_back({Track::natural(), day_boxes(drill)});
      what.front() = {std::move(head)};
    }
    std::vector<Block> groups;
    const Length close = b_.look().row_padding / 4;
    for (std::vector<Block>* group : {&what, &how, &choices}) {
      if (!group->empty()) groups.push_back(Builder::stack(std::move(*group), close));
    }
    page::StackBlock inner{std::move(groups), b_.look().row_padding * 2 / 3, false};
    if (days_beside_name) return framed({std::move(inner)}, Use::kLine, b_.look().hair_width);
    std::vector<Block> whole;
    whole.push_back({std::move(inner)});
    whole.push_back(day_boxes(drill));
    page::StackBlock outer{std::move(whole), b_.look().row_padding, true};
    return framed({std::move(outer)}, Use::kLine, b_.look().hair_width);
  }

  Owner paragraph_owner() { return Owner::of(b_.node(Builder::kRoot, Role::kP)); }

  Block panel_name(const plan::Drill& drill) {
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kH3));
    // The number hangs beside the name, and both are one heading; a figure will stand above them.
    RowBlock row;
    row.gap = b_.look().gap * 2 / 3;
    row.align = RowAlign::kBaseline;
    row.cells.push_back(
        {Track::natural(), b_.text(TextRole::kDrill, std::to_string(number_) + " ", owner)});
    row.cells.push_back(
        {Track::flexible(), b_.text(TextRole::kDrill, drill.name.text, owner, drill.name.span)});
    return {std::move(row)};
  }

  // What and how often in strong type, how in plain type behind it.
  std::vector<Block> panel_dose(const plan::Drill& drill, const reason::DrillTime& time) {
    PlainDose words;
    if (drill.dose) {
      words = plain_dose(with_rest(*drill.dose, session_.timings), drill.name.text, labels_);
    } else if (time.shared_time) {
      words.what =
          labels_.count("say-shared", std::max<std::int64_t>(1, time.work.rounded_minutes()));
    }
    if (words.what.empty()) return {};
    std::vector<type::Inline> pieces = {b_.piece(TextRole::kDose, words.what)};
    if (!words.how.empty()) pieces.push_back(b_.piece(TextRole::kNote, " " + words.how));
    for (type::Inline& piece : pieces)
      piece.origin = drill.dose ? drill.dose->span : drill.name.span;
    return {b_.paragraph(std::move(pieces), TextRole::kDose, paragraph_owner())};
  }

  // `towel, held tight between the hands`; a bare name is told by the description of the kit list.
  plan::Words kit_words(const plan::KitUse& use) const {
    plan::Words words = use.kit;
    if (!use.how.empty()) {
      words.text += ", " + use.how.text;
      words.span = words.span.joined(use.how.span);
      return words;
    }
    for (const plan::KitItem& item : session_.equipment) {
      const bool same = lower_ascii(item.name.text) == lower_ascii(use.kit.text);
      if (!same || item.description.empty()) continue;
      words.text += " – " + item.description.text;
      words.span = use.kit.span;
    }
    return words;
  }

  Block labelled(std::string_view label, const plan::Words& words) {
    return b_.paragraph({b_.label(TextRole::kVariationLabel, labels_.say(label)),
                         b_.piece(TextRole::kVariation, words.text, words.span)},
                        TextRole::kVariation, paragraph_owner());
  }

  // All choices stand at one edge; the easier one on a quiet ground, so that it is not missed.
  enum class Ground { kPaper, kTint };
  Block padded(Block content, Ground ground) const {
    const Length pad = b_.look().row_padding;
    page::BoxBlock box;
    const Length above = ground == Ground::kTint ? pad / 3 : Length();
    box.padding = {above, pad * 2 / 3, above, pad * 2 / 3};
    if (ground == Ground::kTint) box.fill = b_.colour(Use::kTint);
    box.radius = b_.look().radius / 2;
    box.content.push_back(std::move(content));
    return {std::move(box)};
  }

  Block substitute_lines(const plan::Substitute& substitute) {
    std::vector<Block> lines;
    std::vector<type::Inline> first = {
        b_.label(TextRole::kVariationLabel, labels_.say("without", {{"kit", substitute.kit.text}})),
        b_.piece(TextRole::kVariation, substitute.name.text + ".", substitute.name.span)};
    if (substitute.dose) {
      first.push_back(b_.piece(TextRole::kVariation,
                               " " + plain_dose(with_rest(*substitute.dose, session_.timings),
                                                substitute.name.text, labels_)
                                         .whole(),
                               substitute.dose->span));
    }
    for (const plan::Words& cue : substitute.cues)
      first.push_back(b_.piece(TextRole::kVariation, " " + cue.text + ".", cue.span));
    lines.push_back(b_.paragraph(std::move(first), TextRole::kVariation, paragraph_owner()));
    for (const plan::Variation& easier : substitute.easier)
      lines.push_back(labelled("easier", easier));
    for (const plan::Variation& harder : substitute.harder)
      lines.push_back(labelled("harder", harder));
    for (const plan::Note& note : substitute.notes) lines.push_back(b_.note(Builder::kRoot, note));
    return Builder::stack(std::move(lines));
  }

  Length day_boxes_width() {
    Length width;
    for (const Day& day : days_) {
      width += b_.text_width(TextRole::kColumn, day.short_name) + b_.look().tick_box +
               b_.look().gap * 7 / 4;
    }
    return width;
  }

  Block day_boxes(const plan::Drill& drill) {
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    page::WrapBlock wrap;
    wrap.gap = b_.look().gap * 5 / 4;
    wrap.line_gap = b_.look().row_padding / 2;
    for (const Day& day : days_) {
      const NodeId item = b_.node(list, Role::kListItem);
      const NodeId label = b_.node(item, Role::kLabel);
      const NodeId form =
          b_.tick_node(b_.node(item, Role::kListBody),
                       labels_.say("tick-day", {{"drill", drill.name.text}, {"day", day.name}}));
      RowBlock pair;
      pair.gap = b_.look().gap / 2;
      pair.align = RowAlign::kMiddle;
      pair.cells.push_back(
          {Track::natural(), b_.text(TextRole::kColumn, day.short_name, Owner::of(label))});
      pair.cells.push_back(
          {Track::fixed(b_.look().tick_box), b_.tick_box(b_.look().tick_box, form)});
      wrap.children.push_back({std::move(pair)});
    }
    return {std::move(wrap)};
  }

  // ---- below the drills

  page::Section closing() {
    page::Section section;
    section.slabs.push_back({effort_box(), b_.look().part_space});
    section.slabs.push_back({care_box(), panel_gap()});
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
    section.slabs.back().keep_with_next = true;
    section.slabs.push_back(
        {b_.text(TextRole::kFine, labels_.say("home-caution"), owner), panel_gap()});
    return section;
  }

  // A line of numbers from 0 to 10 for each practice day (the CR-10 scale: Foster et al. 2001).
  Block effort_box() {
    const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
    std::vector<Block> lines;
    lines.push_back(b_.text(TextRole::kBoxTitle, labels_.say("how-hard"), Owner::of(heading)));
    lines.push_back(b_.text(TextRole::kFine, labels_.say("how-hard-ends"), paragraph_owner()));
    Length label_width;
    for (const Day& day : days_)
      label_width = std::max(label_width, b_.text_width(TextRole::kColumn, day.short_name));
    for (const Day& day : days_) {
      const Owner owner = paragraph_owner();
      RowBlock row;
      row.gap = b_.look().gap / 2;
      row.align = RowAlign::kBaseline;
      row.cells.push_back({Track::fixed(label_width + b_.look().gap),
                           b_.text(TextRole::kColumn, day.short_name + " ", owner)});
      for (int i = 0; i <= 10; ++i) {
        row.cells.push_back({Track::flexible(), number_cell(std::to_string(i), owner)});
      }
      lines.push_back({std::move(row)});
    }
    return framed(Builder::stack(std::move(lines), b_.look().row_padding / 2), Use::kLine,
                  b_.look().hair_width);
  }

  // The figure, in a frame that is wide enough to circle.
  Block number_cell(const std::string& number, Owner owner) const {
    page::BoxBlock box;
    const Length pad = b_.look().row_padding / 6;
    box.padding = {pad, Length(), pad, Length()};
    box.border = b_.stroke(Use::kHair, b_.look().hair_width);
    box.radius = b_.look().radius;
    // The space keeps the figures apart when the line is read out or copied.
    box.content.push_back(
        b_.text(TextRole::kColumn, number + " ", owner, {}, page::Align::kCentre));
    return {std::move(box)};
  }

  Block care_box() {
    std::vector<Block> lines;
    const auto add = [&](std::string_view heading, const std::string& words, Span origin) {
      const Owner title = Owner::of(b_.node(Builder::kRoot, Role::kH2));
      lines.push_back(b_.text(TextRole::kBoxTitle, labels_.say(heading), title));
      lines.push_back(b_.text(TextRole::kBoxText, words, paragraph_owner(), origin));
    };
    add("when-to-stop", labels_.say("stop-text"), {});
    const plan::Words& contact = b_.context().club.contact;
    add("who-to-ask", contact.empty() ? labels_.say("ask-coach") : contact.text, contact.span);
    return framed(Builder::stack(std::move(lines), b_.look().row_padding / 4), Use::kInk,
                  b_.look().line_width.scaled(1.5));
  }

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  Builder& b_;
  const Labels& labels_;
  std::vector<Day> days_;
  bool two_columns_ = true;
  int number_ = 0;
};

}  // namespace

page::Flow home_sheet(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder) {
  return HomeWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
