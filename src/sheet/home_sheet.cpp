// The home sheet: for a fridge door, read by an adult once and by a child of seven to fourteen
// every day.
//
// What to clear away and who must be there; what is needed; one panel a drill, in plain words, with
// a box for every practice day; how hard it was; when to stop and who to ask. Where the paper is
// wide enough, panels stand two in a row of equal height, or one in a row with its figure at the
// side where that fills the page better. Tested by tests/sheet/home_sheet_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "reason/hard_words.h"
#include "sheet/builder.h"
#include "sheet/home_boxes.h"
#include "sheet/home_days.h"
#include "sheet/home_panel.h"
#include "sheet/home_slip.h"
#include "sheet/home_steps.h"
#include "sheet/web_pointer.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

class HomeWriter {
 public:
  HomeWriter(const plan::Session& session, const reason::Timetable& timetable, Builder& builder)
      : session_(session),
        timetable_(timetable),
        b_(builder),
        labels_(builder.labels()),
        days_(session, builder),
        boxes_(session, days_, builder),
        panels_(session, days_, builder) {}

  page::Flow write() {
    std::vector<page::Section> sections;
    sections.push_back(opening());
    for (const reason::PartTime& part : timetable_.parts) {
      if (part.length > Duration() || has_content(*part.part, b_))
        sections.push_back(part_section(part));
    }
    sections.push_back(closing());
    return b_.finish(std::move(sections), session_, labels_.say("sheet"));
  }

 private:
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
    const Length gap = panels_.gap();
    for (Block& note : b_.notes(Builder::kRoot, session_.introduction, b_.width()))
      section.slabs.push_back({std::move(note), gap});
    Block adults = boxes_.adults();
    Block kit = boxes_.kit();
    constexpr std::size_t kMostBeside =
        6;  // a long kit list beside the grown-ups' box would leave a hole
    if (panels_.two_columns() && session_.equipment.size() <= kMostBeside) {
      RowBlock row;
      row.gap = gap;
      row.align = RowAlign::kStretch;
      row.cells.push_back({Track::flexible(11), std::move(adults)});
      row.cells.push_back({Track::flexible(9), std::move(kit)});
      section.slabs.push_back({{std::move(row)}, gap * 3 / 2});
    } else {
      section.slabs.push_back({std::move(adults), gap * 3 / 2});
      section.slabs.push_back({std::move(kit), gap});
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

  // ---- a part

  page::Section part_section(const reason::PartTime& part) {
    page::Section section;
    const plan::Words& title = part.part->title;
    const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
    page::Slab head;
    head.block = b_.part_band(part_head(title, Owner::of(heading), part.length));
    head.space_before = b_.look().part_space;
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{title.text, 2, 0, {}};
    head.origin = title.span;
    section.slabs.push_back(std::move(head));
    plan::Words again = title;
    again.text = labels_.say("continued", {{"part", title.text}});
    section.continuation = b_.part_band(
        b_.text(TextRole::kPart, again.text, Owner::none(Artifact::kHeader), title.span));
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

  // Drills two by two into rows, or one in a row: what fills the pages. Whatever stands between
  // them ends the row.
  void add_steps(const reason::PartTime& part, page::Section& section) {
    std::vector<NumberedDrill> waiting;
    const auto flush = [&] {
      add_panels(waiting, section);
      waiting.clear();
    };
    std::size_t next_drill = 0;
    const std::vector<plan::Step>& steps = part.part->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (const auto* drill = std::get_if<plan::Drill>(&steps[i])) {
        const NumberedDrill one{drill, &part.drills.at(next_drill++), ++number_};
        if (!drill->circuit) {
          waiting.push_back(one);
          continue;
        }
        flush();
        add_frames(one, section);
      } else if (const auto* move = std::get_if<plan::KitMove>(&steps[i])) {
        flush();
        page::Slab slab{panels_.kit_move(*move), panels_.gap()};
        slab.origin = move->span;
        // Kit is fetched for what comes next.
        slab.keep_with_next = move->way == plan::KitMove::Way::kPickUp && i + 1 < steps.size();
        section.slabs.push_back(std::move(slab));
      } else if (const auto run = note_run(steps, i); !run.empty()) {
        if (b_.is_for_reader(*run.front())) {
          flush();
          add_together(b_.note_pieces(Builder::kRoot, run, b_.width()), run.front()->words.span,
                       panels_.gap(), section);
          // It stays with the first thing it speaks of.
          section.slabs.back().keep_with_next = i + run.size() < steps.size();
        }
        i += run.size() - 1;
      }
    }
    flush();
    section.slabs.back().keep_with_next = false;
  }

  // Each drill's panel alone in its row; or, where that is nearer to a full page, both panels of a
  // pair. A pair is what is liked better: it is what the eye expects, and its figures are larger.
  void add_panels(const std::vector<NumberedDrill>& waiting, page::Section& section) {
    constexpr std::int64_t kAlone = 3000;   // about as bad as an empty foot of a twentieth
    const NumberedDrill* before = nullptr;  // whose panel the last slab is
    for (const NumberedDrill& one : waiting) {
      page::Slab slab;
      slab.space_before = panels_.gap();
      slab.origin = one.drill->span;
      slab.most_stretch = panels_.gap() * 2;
      slab.dislike = panels_.two_columns() ? kAlone : 0;
      slab.nodes.begin = b_.next_node();
      slab.block = panels_.drill(*one.drill, *one.time, one.number,
                                 panels_.figure_height(*one.drill, HomePanels::Shape::kWhole),
                                 HomePanels::Shape::kWhole);
      slab.nodes.end = b_.next_node();
      if (panels_.is_too_high(slab.block)) {
        b_.drop_from(slab.nodes.begin);
        add_frames(one, section);
        before = nullptr;
        continue;
      }
      if (panels_.two_columns() && before != nullptr) add_pairs(*before, one, section.slabs.back());
      section.slabs.push_back(std::move(slab));
      before = &one;
    }
  }

  // The same two drills beside each other, in place of their own slabs.
  void add_pairs(const NumberedDrill& left, const NumberedDrill& right, page::Slab& slab) {
    using Shape = HomePanels::Shape;
    constexpr std::int64_t kLow = 6000;
    for (const Shape shape : {Shape::kHalf, Shape::kHalfLow}) {
      page::Alternative pair;
      pair.covers = 2;
      pair.dislike = shape == Shape::kHalf ? 0 : kLow;
      pair.most_stretch = slab.most_stretch;
      pair.nodes.begin = b_.next_node();
      pair.block = panel_pair(left, right, shape);
      pair.nodes.end = b_.next_node();
      slab.alternatives.push_back(std::move(pair));
    }
  }

  void add_frames(const NumberedDrill& one, page::Section& section) {
    for (Block& frame : panels_.in_frames(*one.drill, *one.time, one.number)) {
      page::Slab slab{std::move(frame), panels_.gap()};
      slab.origin = one.drill->span;
      section.slabs.push_back(std::move(slab));
    }
  }

  Block panel_pair(const NumberedDrill& left, const NumberedDrill& right, HomePanels::Shape shape) {
    const Length figures = std::max(panels_.figure_height(*left.drill, shape),
                                    panels_.figure_height(*right.drill, shape));
    RowBlock row;
    row.gap = panels_.gap();
    row.align = RowAlign::kStretch;
    for (const NumberedDrill* one : {&left, &right}) {
      row.cells.push_back(
          {Track::flexible(), panels_.drill(*one->drill, *one->time, one->number, figures, shape)});
    }
    return {std::move(row)};
  }

  // ---- below the drills

  page::Section closing() {
    page::Section section;
    for (Block& frame : boxes_.effort()) {
      const bool first = section.slabs.empty();
      section.slabs.push_back({std::move(frame), first ? b_.look().part_space : panels_.gap()});
    }
    const auto words = reason::words_to_explain(session_, b_.context().club);
    if (!words.empty()) section.slabs.push_back(words_slab(words));
    page::Slab care{{}, panels_.gap()};
    care.nodes.begin = b_.next_node();
    care.block = boxes_.care();
    care.nodes.end = b_.next_node();
    section.slabs.push_back(std::move(care));
    if (!session_.web.empty()) {
      const Length module_side = Length::mm(0.6);  // read from a fridge door at arm's length
      if (auto pointer =
              web_pointer(session_.web, TextRole::kFine, module_side, Builder::kRoot, b_))
        section.slabs.push_back({web_row(std::move(*pointer), b_), panels_.gap()});
    }
    section.slabs.back().keep_with_next = true;
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
    section.slabs.push_back(
        {b_.text(TextRole::kFine, labels_.say("home-caution"), owner), panels_.gap()});
    if (const auto& slip = session_.printing.return_slip) {
      page::Slab slab{home_slip(*slip, session_, days_, b_), b_.look().part_space};
      slab.at_foot = true;
      slab.origin = slip->when.span;
      section.slabs.push_back(std::move(slab));
    }
    return section;
  }

  // Over the whole width, or beside what to do when something hurts.
  page::Slab words_slab(const std::vector<const plan::ExplainedWord*>& words) {
    page::Slab slab{{}, panels_.gap()};
    slab.nodes.begin = b_.next_node();
    slab.block = boxes_.words(words, b_.width());
    slab.nodes.end = b_.next_node();
    if (!panels_.two_columns()) return slab;
    page::Alternative beside;
    beside.covers = 2;
    beside.nodes.begin = b_.next_node();
    RowBlock row;
    row.gap = panels_.gap();
    row.align = RowAlign::kStretch;
    const Length half = (b_.width() - row.gap) / 2;
    row.cells.push_back({Track::flexible(), boxes_.words(words, half)});
    row.cells.push_back({Track::flexible(), boxes_.care()});
    beside.block = {std::move(row)};
    beside.nodes.end = b_.next_node();
    slab.alternatives.push_back(std::move(beside));
    return slab;
  }

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  Builder& b_;
  const Labels& labels_;
  HomeDays days_;
  HomeBoxes boxes_;
  HomePanels panels_;
  int number_ = 0;  ///< of the drill before
};

}  // namespace

page::Flow home_sheet(const plan::Session& session, const reason::Timetable& timetable,
                      Builder& builder) {
  return HomeWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
