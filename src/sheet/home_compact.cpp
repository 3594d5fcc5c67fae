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
    std::vector<FlowItem> items;
    for (const reason::PartTime& part : timetable_.parts) {
      if (part.length > Duration() || has_content(*part.part, b_)) add_part(part, items);
    }
    sections.push_back(page::Section());
    sets_.add(items, style(), sections.size() - 1, sections.back());
    sections.push_back(closing());
    return sections;
  }

  Length gap() const { return b_.look().row_padding; }

  // ---- above the drills

  page::Section opening() {
    page::Section section;
    section.slabs.push_back(head());
    add_introduction(section);
    section.slabs.push_back({boxes_.opening(), gap()});
    return section;
  }

  // Where paper is dear a table stands beside what was said before it.
  void add_introduction(page::Section& section) {
    std::vector<Block> notes = b_.notes(Builder::kRoot, session_.introduction, b_.width());
    const auto is_text = [](const Block& block) {
      const auto* stack = std::get_if<page::StackBlock>(&block.content);
      return stack != nullptr && stack->children.size() == 1;
    };
    const bool table_last = notes.size() > 1 && !is_text(notes.back()) &&
                            std::all_of(notes.begin(), notes.end() - 1, is_text);
    const Length table = table_last ? b_.natural_width(notes.back()) + Length::pt(1) : Length();
    if (!b_.is_dense() || !table_last || table * 5 > b_.width() * 3) {
      for (Block& note : notes) section.slabs.push_back({std::move(note), gap()});
      return;
    }
    RowBlock row;
    row.gap = b_.look().gap;
    Block last = std::move(notes.back());
    notes.pop_back();
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(notes), gap() / 2)});
    row.cells.push_back({Track::fixed(table), std::move(last)});
    section.slabs.push_back({{std::move(row)}, gap()});
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

  // The heading, so wide: how long it takes behind it, and the boxes of what is ticked once.
  Block part_head(const reason::PartTime& part, Length width) {
    const plan::Words& title = part.part->title;
    const Owner heading = Owner::of(b_.node(Builder::kRoot, Role::kH2));
    std::vector<Block> words = {b_.text(TextRole::kPart, title.text, heading, title.span)};
    if (part.length > Duration()) {
      words.push_back(b_.text(TextRole::kPartDetail, about_minutes(part.length),
                              Owner::of(b_.node(Builder::kRoot, Role::kP))));
    }
    RowBlock row;
    row.gap = b_.look().gap;
    row.align = RowAlign::kBaseline;
    row.cells.push_back(
        {Track::flexible(),
         Builder::run_together(std::move(words), b_.piece(TextRole::kPartDetail, "\u2002"))});
    const bool once = ticked(*part.part) == Ticked::kOnce;
    if (once && !days_.by_weeks())
      row.cells.push_back({Track::fixed(days_.lettered_width()), days_.lettered(title.text)});
    std::vector<Block> lines;
    lines.push_back(b_.part_band({std::move(row)}));
    lines.push_back(Builder::space(gap() / 4));
    lines.push_back(b_.rule(width, b_.look().line_width, Use::kMain));
    if (once && days_.by_weeks()) {
      plan::Drill all;
      all.name = title;
      lines.push_back(Builder::space(gap() / 2));
      lines.push_back(days_.boxes(all, width));
    }
    return Builder::stack(std::move(lines));
  }

  std::shared_ptr<const Block> continued_head(const plan::Words& title) const {
    plan::Words again = title;
    again.text = labels_.say("continued", {{"part", title.text}});
    std::vector<Block> lines;
    lines.push_back(b_.part_band(
        b_.text(TextRole::kPart, again.text, Owner::none(Artifact::kHeader), title.span)));
    lines.push_back(Builder::space(gap() / 4));
    lines.push_back(b_.rule(b_.width(), b_.look().line_width, Use::kMain));
    return std::make_shared<const Block>(Builder::stack(std::move(lines)));
  }

  void add_part(const reason::PartTime& part, std::vector<FlowItem>& items) {
    const plan::Words& title = part.part->title;
    const std::size_t first = items.size();
    FlowItem head;
    head.kind = FlowItem::Kind::kHead;
    head.origin = title.span;
    head.make = [this, &part](Length width) { return part_head(part, width); };
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{title.text, 2, 0, {}};
    items.push_back(std::move(head));
    add_steps(part, items);
    items.back().keep_with_next = false;
    const auto again = continued_head(title);
    for (std::size_t i = first + 1; i < items.size(); ++i) items[i].continuation = again;
  }

  void add_steps(const reason::PartTime& part, std::vector<FlowItem>& items) {
    std::size_t next_drill = 0;
    const std::vector<plan::Step>& steps = part.part->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
      if (const auto* drill = std::get_if<plan::Drill>(&steps[i])) {
        const NumberedDrill one{drill, &part.drills.at(next_drill++), ++number_};
        if (drill->circuit) {
          add_circuit(one, items);
        } else {
          add_drill(one, *part.part, items);
        }
      } else if (const auto* move = std::get_if<plan::KitMove>(&steps[i])) {
        FlowItem item = other_item(move->span);
        item.make = [this, move](Length) { return panels_.kit_move(*move); };
        // Kit is fetched for what comes next.
        item.keep_with_next = move->way == plan::KitMove::Way::kPickUp && i + 1 < steps.size();
        items.push_back(std::move(item));
      } else if (const auto run = note_run(steps, i); !run.empty()) {
        i += run.size() - 1;
        // It stays with the first thing it speaks of.
        if (b_.is_for_reader(*run.front())) add_notes(run, i + 1 < steps.size(), items);
      }
    }
  }

  // A paragraph stands in a column; tables and pictures need the whole width.
  void add_notes(const std::vector<const plan::Note*>& run, bool keep,
                 std::vector<FlowItem>& items) {
    FlowItem item = other_item(run.front()->words.span);
    if (is_paragraph(run)) {
      item.make = [this, run](Length width) {
        return Builder::stack(b_.note_pieces(Builder::kRoot, run, width));
      };
      item.keep_with_next = keep;
    } else {
      item.slabs = [this, run, keep] {
        page::Section made;
        add_together(b_.note_pieces(Builder::kRoot, run, b_.width()), run.front()->words.span,
                     panels_.gap(), made);
        made.slabs.back().keep_with_next = keep;
        return std::move(made.slabs);
      };
    }
    items.push_back(std::move(item));
  }

  // ---- columns

  // As many as have room for about 26 letters each.
  ColumnStyle style() const {
    const bool dense = b_.is_dense();
    ColumnStyle out;
    out.between = b_.look().gap * 5 / 4;
    out.gap = gap() * 3 / 2;
    out.above_head = b_.look().part_space;
    out.below_head = gap() * 3 / 4;
    out.alone = 2500;
    out.head = dense ? 1200 : 12000;  // across, where there is room
    out.most = 1;
    const Length least = b_.look().text(TextRole::kVariation).size * 13;
    for (std::size_t n = 2; n <= kMostInRow; ++n) {
      if (sets_.column(n, out) >= least) out.most = n;
    }
    return out;
  }

  // One that is higher than a page goes on over several.
  void add_drill(const NumberedDrill& one, const plan::Part& part, std::vector<FlowItem>& items) {
    FlowItem item;
    item.origin = one.drill->span;
    // Three columns are for what is known by heart, unless they save a page.
    if (part.role == plan::PartRole::kMain) item.three = 3000;
    const Ticked by = ticked(part);
    item.make = [this, one, by](Length width) {
      return panels_.entry(*one.drill, *one.time, one.number, width, by);
    };
    const NodeId first = b_.next_node();
    const bool too_high = panels_.is_too_high(item.make(b_.width()));
    b_.drop_from(first);
    if (too_high) {
      item.make = nullptr;
      item.slabs = [this, one] {
        std::vector<page::Slab> out;
        for (Block& frame : panels_.in_frames(*one.drill, *one.time, one.number)) {
          out.push_back({std::move(frame), gap()});
          out.back().origin = one.drill->span;
        }
        return out;
      };
    }
    items.push_back(std::move(item));
  }

  void add_circuit(const NumberedDrill& one, std::vector<FlowItem>& items) {
    const std::vector<plan::Drill>& stations = one.drill->stations;
    auto list = std::make_shared<NodeId>(Builder::kRoot);
    FlowItem head;
    head.origin = one.drill->span;
    head.keep_with_next = !stations.empty();
    head.make = [this, one, list](Length width) {
      Block out =
          Builder::stack(panels_.circuit_head(*one.drill, *one.time, one.number, width), gap() / 4);
      if (one.drill->stations.empty()) return out;
      *list = b_.node(Builder::kRoot, Role::kList);
      b_.at(*list).ordered = true;
      return out;
    };
    items.push_back(std::move(head));
    for (std::size_t i = 0; i < stations.size(); ++i) {
      FlowItem item;
      item.origin = one.drill->span;
      item.goes_on = true;
      item.make = [this, one, list, i](Length width) {
        const reason::DrillTime unknown;
        const bool timed = i < one.time->stations.size();
        return panels_.station_entry(one.drill->stations[i],
                                     timed ? one.time->stations[i] : unknown, i + 1, *list, width);
      };
      items.push_back(std::move(item));
    }
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
  int number_ = 0;  ///< of the drill before
};

}  // namespace

page::Flow compact_home_sheet(const plan::Session& session, const reason::Timetable& timetable,
                              Builder& builder) {
  return CompactWriter(session, timetable, builder).write();
}

}  // namespace chalkleaf::sheet
