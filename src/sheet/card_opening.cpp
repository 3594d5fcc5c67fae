#include "sheet/card_opening.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheet/typography.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

class OpeningWriter {
 public:
  OpeningWriter(const plan::Session& session, const reason::Timetable& timetable,
                const std::string& boxes, Builder& builder)
      : session_(session),
        timetable_(timetable),
        boxes_(boxes),
        b_(builder),
        labels_(builder.labels()) {}

  page::Section write() {
    page::Section section;
    const Length gap = b_.is_dense() ? b_.look().row_padding / 2 : b_.look().row_padding;
    const NodeId title = b_.node(Builder::kRoot, Role::kH1);
    Block facts = who_and_when();
    page::Slab head{{}, {}, true};
    head.outline = page::OutlineEntry{session_.title.text, 1, 0, {}};
    // On the title's line where paper is dear and it holds them.
    const Length wide = b_.natural_width(facts) + Length::pt(1);
    std::optional<Block> line;
    if (b_.is_dense()) line = b_.title_line(session_.title, Owner::of(title), facts, wide);
    head.block = line ? std::move(*line) : b_.title(session_.title, Owner::of(title));
    section.slabs.push_back(std::move(head));
    if (!line) section.slabs.push_back({std::move(facts), Length(), true});
    section.slabs.push_back({safety_box(), gap * 2});
    if (!session_.equipment.empty()) section.slabs.push_back({kit_list(), gap * 2});
    for (Block& note : b_.notes(Builder::kRoot, session_.introduction, b_.width()))
      section.slabs.push_back({std::move(note), gap});
    return section;
  }

 private:
  Block who_and_when() {
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
    page::WrapBlock wrap;
    wrap.gap = b_.look().gap * 2;
    std::vector<std::vector<type::Inline>> facts;
    if (!session_.group_name.empty()) {
      facts.push_back(
          {b_.whole(TextRole::kStrong, session_.group_name.text, session_.group_name.span)});
    }
    if (const std::string about = about_group(); !about.empty()) {
      if (facts.empty()) facts.emplace_back();
      const bool first = facts.back().empty();
      facts.back().push_back(b_.whole(TextRole::kSubtitle, (first ? "" : " ") + about));
    }
    std::string when = session_.date ? labels_.date(session_.date->value) : std::string();
    std::string clock_times;
    const Duration length =
        session_.slot ? session_.slot->value : whole_minutes_up(timetable_.total);
    if (timetable_.start) {
      clock_times = labels_.say("from-to", {{"from", clock_text(*timetable_.start)},
                                            {"to", clock_text(*timetable_.start + length)}});
    }
    if (!when.empty() || !clock_times.empty()) {
      facts.push_back({});
      if (!when.empty()) facts.back().push_back(b_.whole(TextRole::kStrong, when));
      if (!clock_times.empty()) {
        facts.back().push_back(
            b_.whole(TextRole::kSubtitle, (when.empty() ? "" : " ") + clock_times));
      }
    }
    if (clock_times.empty()) {  // else it says how long as well
      const std::string minutes = std::to_string(length.in_milliseconds() / 60'000);
      facts.push_back({b_.whole(TextRole::kSubtitle, labels_.say("minutes", {{"n", minutes}}))});
    }
    if (session_.equipment.empty()) facts.push_back(marks());
    for (std::size_t i = 0; i < facts.size(); ++i) {
      // A reader that hears the line needs the space that the eye sees as a gap.
      if (i + 1 < facts.size()) facts[i].push_back(b_.piece(TextRole::kSubtitle, " "));
      wrap.children.push_back(b_.paragraph(std::move(facts[i]), TextRole::kSubtitle, owner));
    }
    return {std::move(wrap)};
  }

  // `▼ easier ▲ harder`, once for the whole card.
  std::vector<type::Inline> marks() const {
    std::vector<type::Inline> out;
    for (const std::string key : {"easier", "harder"}) {
      if (!out.empty()) out.push_back(b_.piece(TextRole::kSubtitle, " "));
      out.push_back(b_.mark(key, TextRole::kSubtitle));
      out.push_back(
          b_.whole(TextRole::kSubtitle,
                   "\u00A0" + labels_.say(key == "easier" ? "marks-easier" : "marks-harder")));
    }
    return out;
  }

  // `9–11 y · 8 gymnasts · 2 adults · a box each set`
  std::string about_group() const {
    std::vector<std::string> out;
    if (session_.group) {
      if (std::string ages = b_.ages(*session_.group); !ages.empty())
        out.push_back(std::move(ages));
    }
    if (const auto gymnasts = session_.gymnast_count())
      out.push_back(labels_.count("gymnasts", *gymnasts));
    if (const auto& adults = session_.adults ? session_.adults : group_adults())
      out.push_back(labels_.count("adults", adults->value));
    if (!boxes_.empty()) out.push_back(boxes_);
    return fmt::format("{}", fmt::join(out, " · "));
  }

  std::optional<plan::Sourced<int>> group_adults() const {
    return session_.group ? session_.group->adults : std::nullopt;
  }

  // Always there: a plan without safety words of its own still says when to stop.
  Block safety_box() {
    const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
    std::vector<Block> paragraphs = {
        b_.text(TextRole::kBoxTitle, labels_.say("before-you-start"), Owner::of(heading))};
    const auto add = [&](std::vector<type::Inline> pieces) {
      const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kP));
      paragraphs.push_back(b_.paragraph(std::move(pieces), TextRole::kBoxText, owner));
    };
    for (const Caution& caution : b_.context().cautions)
      add({b_.piece(TextRole::kBoxText, labels_.say(caution.is_danger ? "card-danger" : "card-open",
                                                    {{"text", typographic(caution.text)}}))});
    for (const plan::Safety& safety : session_.safety)
      add(b_.pieces(TextRole::kBoxText, safety.words));
    for (const PartsSafety& one : safety_of_parts()) add(part_safety(one));
    if (!says_stop(session_, labels_))
      add({b_.piece(TextRole::kBoxText, labels_.say("card-stop-line"))});
    std::vector<Block> lines;
    if (b_.is_dense()) {
      lines.push_back(
          Builder::run_together(std::move(paragraphs), b_.piece(TextRole::kBoxText, "\u2002")));
    } else {
      for (Block& one : paragraphs) {
        if (lines.size() > 1) lines.push_back(Builder::space(b_.look().row_padding / 2));
        lines.push_back(std::move(one));
      }
    }
    const Length sign = b_.look().text(TextRole::kBoxTitle).leading.scaled(1.35);
    const auto beside_sign = [&](std::vector<Block> words) -> Block {
      if (b_.is_dense()) {
        page::AroundBlock around;
        around.left.push_back(b_.warning_sign(sign));
        around.left_width = sign.scaled(1.16);
        around.gap = b_.look().gap;
        around.children = std::move(words);
        return {std::move(around)};
      }
      RowBlock row;
      row.gap = b_.look().gap;
      row.cells.push_back({Track::fixed(sign.scaled(1.16)), b_.warning_sign(sign)});
      row.cells.push_back({Track::flexible(), Builder::stack(std::move(words))});
      return {std::move(row)};
    };
    page::BoxBlock box;
    const Length pad = b_.look().row_padding;
    box.padding = {pad * 3 / 2, pad * 2, pad * 2, pad * 2};
    box.border = b_.stroke(Use::kInk, b_.look().line_width.scaled(1.5));
    box.radius = b_.look().radius;
    box.content.push_back(beside_sign(std::move(lines)));
    return {std::move(box)};
  }

  struct PartsSafety {
    std::vector<std::string> parts;  // their titles
    std::vector<const plan::Words*> words;
  };

  // What several parts say is printed once, and what the same parts say is one paragraph: who looks
  // for the one new line finds it.
  std::vector<PartsSafety> safety_of_parts() const {
    std::vector<PartsSafety> each;  // text by text
    for (const plan::Part& part : session_.parts) {
      const std::string title = typographic(part.title.text);
      for (const plan::Safety& safety : part.safety) {
        const auto same = std::find_if(each.begin(), each.end(), [&](const PartsSafety& one) {
          return one.words.front()->text == safety.words.text;
        });
        PartsSafety& one =
            same == each.end() ? each.emplace_back(PartsSafety{{}, {&safety.words}}) : *same;
        if (one.parts.empty() || one.parts.back() != title) one.parts.push_back(title);
      }
    }
    std::vector<PartsSafety> out;
    for (PartsSafety& one : each) {
      const auto same = std::find_if(out.begin(), out.end(), [&](const PartsSafety& other) {
        return other.parts == one.parts;
      });
      if (same == out.end()) {
        out.push_back(std::move(one));
      } else {
        same->words.push_back(one.words.front());
      }
    }
    return out;
  }

  std::vector<type::Inline> part_safety(const PartsSafety& safety) const {
    const std::string parts = fmt::format("{}", fmt::join(safety.parts, ", "));
    std::vector<type::Inline> out = b_.filled(
        TextRole::kBoxText,
        labels_.say("part-safety", {{"part", parts}, {"text", std::string(Builder::kHole)}}),
        *safety.words.front());
    // What it is about is found in running text.
    if (b_.is_dense()) set_off(parts, out);
    for (std::size_t i = 1; i < safety.words.size(); ++i) {
      out.push_back(b_.piece(TextRole::kBoxText, " "));
      for (type::Inline& one : b_.pieces(TextRole::kBoxText, *safety.words[i]))
        out.push_back(std::move(one));
    }
    return out;
  }

  // The names of the parts in bold, where the phrase begins with them.
  void set_off(const std::string& parts, std::vector<type::Inline>& pieces) const {
    type::Inline& first = pieces.front();
    if (!first.text.starts_with(parts)) return;
    type::Inline names = b_.piece(TextRole::kVariationLabel, parts);
    names.size = first.size;
    first.text.erase(0, parts.size());
    pieces.insert(pieces.begin(), std::move(names));
  }

  // One behind the other; at the end what the marks of the drills mean.
  Block kit_list() {
    const NodeId heading = b_.node(Builder::kRoot, Role::kH2);
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    std::vector<Block> pieces = {
        b_.text(TextRole::kBoxTitle, labels_.say("kit"), Owner::of(heading))};
    const Length side = b_.look().text(TextRole::kBoxText).size;
    for (const plan::KitItem& item : session_.equipment) {
      Block line = b_.tick_line(list, TextRole::kBoxText,
                                b_.kit_pieces(item, TextRole::kVariationLabel, TextRole::kBoxText),
                                side, labels_.say("tick-kit", {{"kit", item.name.text}}));
      pieces.push_back(b_.tick_words(std::move(line), TextRole::kBoxText));
    }
    const Owner meaning = Owner::of(b_.node(Builder::kRoot, Role::kP));
    pieces.push_back(b_.paragraph(marks(), TextRole::kSubtitle, meaning));
    return Builder::run_together(std::move(pieces), b_.piece(TextRole::kBoxText, "\u2002"));
  }

  const plan::Session& session_;
  const reason::Timetable& timetable_;
  const std::string& boxes_;
  Builder& b_;
  const Labels& labels_;
};

}  // namespace

page::Section card_opening(const plan::Session& session, const reason::Timetable& timetable,
                           const std::string& boxes, Builder& builder) {
  return OpeningWriter(session, timetable, boxes, builder).write();
}

}  // namespace chalkleaf::sheet
