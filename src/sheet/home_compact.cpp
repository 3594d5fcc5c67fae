// The usual home sheet: one sheet of paper, both sides.
//
// The same words as the roomy one (home_sheet.cpp) without frames: drills in columns that are read
// down (sheet/column_sets.h), hairlines between them. Warm-up and cool-down, known by heart after a
// week, are ticked once. Tested by tests/sheet/home_compact_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/hard_words.h"
#include "sheet/builder.h"
#include "sheet/column_sets.h"
#include "sheet/home_boxes.h"
#include "sheet/home_days.h"
#include "sheet/home_panel.h"
#include "sheet/home_slip.h"
#include "sheet/home_steps.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;
using Ticked = HomePanels::Ticked;

class CompactWriter {
 public:
  CompactWriter(const plan::Session& session, const reason::Timetable& timetable, Builder& builder)
      : session_(session),
        timetable_(timetable),
        b_(builder),
        labels_(builder.labels()),
        days_(session, builder),
        boxes_(session, days_, builder),
        panels_(session, days_, builder),
        sets_(builder) {}

  page::Flow write() {
    const std::string kind = labels_.say("sheet");
    return b_.finish(sets_.write_twice(session_, kind, [&] { return sections(); }), session_, kind);
  }

 private:
  std::vector<page::Section> sections() {
    number_ = 0;
    std::vector<page::Section> sections;
    sections.push_back(opening());
    for (const reason::PartTime& part : timetable_.parts) {
      if (part.length > Duration() || has_content(*part.part, b_))
        sections.push_back(part_section(part, sections.size()));
    }
    sections.push_back(closing());
    return sections;
  }

  Length gap() const { return b_.look().row_padding; }

  // ---- above the drills

  page::Section opening() {
    page::Section section;
    section.slabs.push_back(head());
    for (Block& note : b_.notes(Builder::kRoot, session_.introduction, b_.width()))
      section.slabs.push_back({std::move(note), gap()});
    section.slabs.push_back({boxes_.opening(), gap()});
    return section;
  }

  // The title, and on its line, where there is room, for whom and when.
  page::Slab head() {
    const NodeId title = b_.node(Builder::kRoot, Role::kH1);
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
    Block words = b_.text(TextRole::kSubtitle, subtitle(), owner, session_.group_name.span);
    const Length beside = b_.text_width(TextRole::kSubtitle, subtitle()) + Length::pt(1);
    std::vector<Block> lines;
    if (auto line = b_.title_line(session_.title, Owner::of(title), words, beside)) {
      lines.push_back(std::move(*line));
    } else {
      lines.push_back(b_.title(session_.title, Owner::of(title)));
      lines.push_back(std::move(words));
    }
    page::Slab out{Builder::stack(std::move(lines)), {}, true};
    out.outline = page::OutlineEntry{session_.title.text, 1, 0, {}};
    return out;
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

  // ---- a part

  Ticked ticked(const plan::Part& part) const {
    const bool by_heart = part.role != plan::PartRole::kMain && plan::drills_of(part).size() > 1;
    return by_heart ? Ticked::kOnce : Ticked::kEach;
  }

  page::Section part_section(const reason::PartTime& part, std::size_t place) {
    place_ = place;
    page::Section section;
    const plan::Words& title = part.part->title;
    const Owner heading = Owner::of(b_.node(Builder::kRoot, Role::kH2));
    page::WrapBlock words;
    words.gap = b_.look().gap / 2;
    words.children.push_back(b_.text(TextRole::kPart, title.text, heading, title.span));
    if (part.length > Duration()) {
      words.children.push_back(b_.text(TextRole::kPartDetail, about_minutes(part.length),
                                       Owner::of(b_.node(Builder::kRoot, Role::kP))));
    }
    RowBlock row;
    row.gap = b_.look().gap;
    row.align = RowAlign::kBaseline;
    row.cells.push_back({Track::flexible(), {std::move(words)}});
    const bool once = ticked(*part.part) == Ticked::kOnce;
    if (once && !days_.by_weeks())
      row.cells.push_back({Track::fixed(days_.lettered_width()), days_.lettered(title.text)});
    std::vector<Block> lines;
    lines.push_back(b_.part_band({std::move(row)}));
    lines.push_back(Builder::space(gap() / 4));
    lines.push_back(b_.rule(b_.width(), b_.look().line_width, Use::kMain));
    if (once && days_.by_weeks()) {
      plan::Drill all;
      all.name = title;
      lines.push_back(Builder::space(gap() / 2));
      lines.push_back(days_.boxes(all, b_.width()));
    }
    page::Slab head;
    head.block = Builder::stack(std::move(lines));
    head.space_before = b_.look().part_space;
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{title.text, 2, 0, {}};
    head.origin = title.span;
    section.slabs.push_back(std::move(head));
    plan::Words again = title;
    again.text = labels_.say("continued", {{"part", title.text}});
    std::vector<Block> continued;
    continued.push_back(b_.part_band(
        b_.text(TextRole::kPart, again.text, Owner::none(Artifact::kHeader), title.span)));
    continued.push_back(Builder::space(gap() / 4));
    continued.push_back(b_.rule(b_.width(), b_.look().line_width, Use::kMain));
    section.continuation = Builder::stack(std::move(continued));
    add_steps(part, section);
    return section;
  }

  void add_steps(const reason::PartTime& part, page::Section& section) {
    add_home_steps(
        part, b_, panels_, number_, section,
        [&](const std::vector<WaitingDrill>& waiting) { add_drills(waiting, *part.part, section); },
        [&](const WaitingDrill& one) { add_circuit(one, section); });
  }

  // ---- columns

  // As many as have room for about 26 letters each.
  ColumnStyle style() const {
    ColumnStyle out;
    out.between = b_.look().gap * 5 / 4;
    out.gap = gap() * 3 / 2;
    out.space_before = gap() * 3 / 4;
    out.alone = 2500;
    out.most = 1;
    const Length least = b_.look().text(TextRole::kVariation).size * 13;
    for (std::size_t n = 2; n <= kMostInRow; ++n) {
      if (sets_.column(n, out) >= least) out.most = n;
    }
    return out;
  }

  // The part's other drills stand on; one that is higher than a page goes on over several.
  void add_drills(const std::vector<WaitingDrill>& waiting, const plan::Part& part,
                  page::Section& section) {
    std::vector<WaitingDrill> together;
    const auto set = [&] {
      if (!together.empty()) add_planned(together, part, section);
      together.clear();
    };
    for (const WaitingDrill& one : waiting) {
      const NodeId first = b_.next_node();
      const Block alone =
          panels_.entry(*one.drill, *one.time, one.number, b_.width(), ticked(part));
      const bool too_high = panels_.is_too_high(alone);
      b_.drop_from(first);
      if (!too_high) {
        together.push_back(one);
        continue;
      }
      set();
      for (Block& frame : panels_.in_frames(*one.drill, *one.time, one.number)) {
        page::Slab slab{std::move(frame), gap()};
        slab.origin = one.drill->span;
        section.slabs.push_back(std::move(slab));
      }
    }
    set();
  }

  void add_planned(const std::vector<WaitingDrill>& drills, const plan::Part& part,
                   page::Section& section) {
    ColumnStyle columns = style();
    // Three columns are for what is known by heart, unless they save a page.
    if (part.role == plan::PartRole::kMain) columns.three = 3000;
    std::vector<Span> origins;
    for (const WaitingDrill& one : drills) origins.push_back(one.drill->span);
    sets_.add(origins, columns, place_, section, [&](std::size_t i, Length width) {
      const WaitingDrill& one = drills[i];
      return panels_.entry(*one.drill, *one.time, one.number, width, ticked(part));
    });
  }

  void add_circuit(const WaitingDrill& one, page::Section& section) {
    page::Slab first{
        Builder::stack(panels_.circuit_head(*one.drill, *one.time, one.number), gap() / 4), gap()};
    first.origin = one.drill->span;
    const std::vector<plan::Drill>& stations = one.drill->stations;
    first.keep_with_next = !stations.empty();
    section.slabs.push_back(std::move(first));
    if (stations.empty()) return;
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    b_.at(list).ordered = true;
    const reason::DrillTime unknown;
    sets_.add(std::vector<Span>(stations.size(), one.drill->span), style(), place_, section,
              [&](std::size_t i, Length width) {
                const bool timed = i < one.time->stations.size();
                return panels_.station_entry(stations[i], timed ? one.time->stations[i] : unknown,
                                             i + 1, list, width);
              });
  }

  // ---- below the drills

  page::Section closing() {
    page::Section section;
    std::vector<Block> effort;
    effort.push_back(b_.rule(b_.width(), b_.look().line_width, Use::kMain));
    effort.push_back(Builder::space(gap() / 2));
    effort.push_back(boxes_.effort_line());
    section.slabs.push_back({Builder::stack(std::move(effort)), b_.look().part_space});
    const auto words = reason::words_to_explain(session_, b_.context().club);
    if (!words.empty()) add_together(boxes_.plain_words(words), {}, gap(), section);
    section.slabs.push_back({boxes_.foot(), gap()});
    if (const auto& slip = session_.printing.return_slip) {
      page::Slab slab{home_slip(*slip, session_, days_, b_), b_.look().part_space};
      slab.at_foot = true;
      slab.origin = slip->when.span;
      section.slabs.push_back(std::move(slab));
    }
    return section;
  }

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  Builder& b_;
  const Labels& labels_;
  HomeDays days_;
  HomeBoxes boxes_;
  HomePanels panels_;
  ColumnSets sets_;
  int number_ = 0;         ///< of the drill before
  std::size_t place_ = 0;  ///< of the section that is made
};

}  // namespace

page::Flow compact_home_sheet(const plan::Session& session, const reason::Timetable& timetable,
                              Builder& builder) {
  return CompactWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
