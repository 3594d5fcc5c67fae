// See the header.
#include "draft/write.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "draft/grids.h"
#include "draft/markdown_text.h"
#include "draft/spoken_dose.h"
#include "rota/notation.h"

namespace chalkleaf::draft {
namespace {

using Reading = DraftLine::Reading;

constexpr std::string_view kRotations = "Rotations";  // what plan/rotations.h knows one by

class Writer {
 public:
  Writer(const Lexicon& words, const SourcePtr& coach, const DraftDocument& document,
         const Facts& facts)
      : words_(words), coach_(coach), document_(document), facts_(facts), origin_(coach) {}

  Draft run() {
    front_matter();
    find_frame();
    for (std::size_t i = 0; i < document_.lines.size(); ++i) line(i);
    end_list();
    return {std::make_shared<const Source>(coach_->path(), std::move(text_)), std::move(origin_),
            std::move(typed_)};
  }

 private:
  std::string_view heading_text(const DraftLine& one) const {
    return coach_->text().substr(one.heading.name_begin,
                                 one.heading.name_end - one.heading.name_begin);
  }
  // A part that is the warm-up or the cool-down by another name: `General prep`, `Wind down`.
  void find_frame() {
    const auto within = [&](const DraftLine& one, Role role) {
      const Pieces pieces = pieces_of(heading_text(one));
      return words_.is(role, pieces, 0, pieces.size());
    };
    bool warm = false;
    bool cool = false;
    for (std::size_t i = 0; i < document_.lines.size(); ++i) {
      const DraftLine& one = document_.lines[i];
      if (one.reading == Reading::kDrills && one.spoken.has_dose()) cool_at_.reset();
      if (one.reading != Reading::kHeading) continue;
      const std::string_view name = heading_text(one);
      warm = warm || is_called(name, "warm");
      cool = cool || is_called(name, "cool");
      if (!warm_at_ && within(one, Role::kWarmUp)) warm_at_ = i;
      const bool stretch = within(one, Role::kStretchPart) && !within(one, Role::kWarmUp);
      if (within(one, Role::kCoolDown) || stretch) {
        cool_at_ = i;
        // Its own drills do not end it.
        while (i + 1 < document_.lines.size() &&
               document_.lines[i + 1].reading != Reading::kHeading)
          ++i;
      } else if (one.spoken.has_dose()) {
        cool_at_.reset();
      }
    }
    if (warm) warm_at_.reset();
    if (cool) cool_at_.reset();
  }

  Span span(std::uint32_t begin, std::uint32_t end) const { return {coach_.get(), begin, end}; }
  Span span(const DraftLine& one) const { return span(one.line.begin, one.line.end); }
  Span span(const DraftLine& one, const Stretch& where) const {
    return span(one.from + static_cast<std::uint32_t>(where.begin),
                one.from + static_cast<std::uint32_t>(where.end));
  }
  void put(std::string_view text) { text_ += text; }
  void put(std::string_view text, Span from) {
    const auto begin = static_cast<std::uint32_t>(text_.size());
    text_ += text;
    origin_.add(begin, static_cast<std::uint32_t>(text_.size()), from);
  }
  std::string_view words_of(const DraftLine& one) const {
    return coach_->text().substr(one.line.text, one.line.end - one.line.text);
  }
  // With its marks and its clock: a remark stays as it was typed.
  std::string_view whole(const DraftLine& one) const {
    std::string_view all =
        trim(coach_->text().substr(one.line.begin, one.line.end - one.line.begin));
    if (one.line.mark == Line::Mark::kNone || one.line.mark == Line::Mark::kNumber) return all;
    return one.line.clock ? all : words_of(one);
  }

  void front_matter() {
    put("---\n");
    const bool titled =
        std::any_of(document_.lines.begin(), document_.lines.end(),
                    [](const DraftLine& one) { return one.reading == Reading::kTitle; });
    if (!titled) put(fmt::format("title: {}\n", yaml_string(file_name())));
    for (const DraftLine& one : document_.lines) {
      if (one.reading != Reading::kTitle) continue;
      put("title: ");
      put(yaml_string(trim(words_of(one))), span(one));
      put("\n");
    }
    put(facts_.home ? "place: home\n" : "place: gym\n");
    if (facts_.start)
      put(fmt::format("start: \"{:02}:{:02}\"\n", *facts_.start / 60, *facts_.start % 60));
    if (facts_.slot) put(fmt::format("slot: {} min\n", *facts_.slot));
    if (const auto all = gymnasts_of_rotation()) {
      put(fmt::format("gymnasts: {}\n", *all));
    } else if (facts_.gymnasts && !facts_.home)
      put(fmt::format("gymnasts: {}\n", *facts_.gymnasts));
    put("---\n");
  }

  // All groups together, where each is counted.
  std::optional<int> gymnasts_of_rotation() const {
    for (const DraftLine& one : document_.lines) {
      if (one.opens_rotation == nullptr) continue;
      int sum = 0;
      for (const rota::Group& group : one.opens_rotation->groups) {
        if (!group.size) return std::nullopt;
        sum += *group.size;
      }
      return sum > 0 ? std::optional(sum) : std::nullopt;
    }
    return std::nullopt;
  }

  // A text that begins with a part is called as its file is.
  std::string_view file_name() const {
    std::string_view name = coach_->path();
    name.remove_prefix(std::min(name.rfind('/') + 1, name.size()));
    return name.substr(0, name.rfind('.'));
  }

  void line(std::size_t at) {
    const DraftLine& one = document_.lines[at];
    switch (one.reading) {
      case Reading::kBlank:
      case Reading::kTitle:
        return;
      case Reading::kKept:
        return kept(one);
      case Reading::kTyped:
        return typed_.push_back(span(one));
      case Reading::kRemark:
        return remark(one);
      case Reading::kHeading:
        return heading(at);
      case Reading::kDrills:
        return drills(one);
      case Reading::kTable:
        return table(at);
      case Reading::kGrid:
        return grid(at);
    }
  }

  void end_list() {
    in_list_ = false;
    circuit_ = false;
  }

  void remark(const DraftLine& one) {
    end_list();
    put("\n");
    if (one.about_child) put("Coach: ");
    put(escaped_line(as_remark(whole(one))), span(one));
    put("\n");
    // An amount that was not taken for one is shown as it was typed, too.
    if (one.spoken.has_dose() && !one.about_child) typed_.push_back(span(one));
  }
  // A remark that could be read as a drill, kit or a label of the taught form is kept from it.
  std::string as_remark(std::string_view text) const {
    std::string out(trim(text));
    const std::size_t colon = out.find(':');
    const bool label =
        colon != std::string::npos && colon + 1 < out.size() && out[colon + 1] == ' ';
    if (label) {
      const Pieces head = pieces_of(std::string_view(out).substr(0, colon));
      const bool reader = words_.match(Role::kReader, head, 0, head.size()) == head.size();
      out.replace(colon, 1, reader ? "," : " –");
    }
    // `Sets 3` alone would be a drill that has lost its dash.
    const bool counts = out.find_first_of("0123456789") != std::string::npos;
    const bool capital = !out.empty() && out[0] >= 'A' && out[0] <= 'Z';
    if (counts && capital && is_letter(out.back())) out += '.';
    return out;
  }

  // A line of the taught form, below what it stands below.
  void kept(const DraftLine& one) {
    const bool below = one.line.mark == Line::Mark::kBullet && in_list_;
    if (!below) {
      end_list();
      put("\n");
    }
    const std::string_view all =
        coach_->text().substr(one.line.begin, one.line.end - one.line.begin);
    const std::string margin = below ? (circuit_ ? "    " : "  ") : "";
    put(margin);
    put(trim(all), span(one));
    put("\n");
  }

  // Rows as they stand; a table begins and ends with an empty line.
  void table(std::size_t at) {
    const DraftLine& one = document_.lines[at];
    const bool first = at == 0 || document_.lines[at - 1].reading != Reading::kTable;
    if (first) {
      end_list();
      put("\n");
    }
    put(trim(coach_->text().substr(one.line.begin, one.line.end - one.line.begin)), span(one));
    put("\n");
  }

  // Until the next clock, or as said.
  std::optional<double> minutes(std::size_t at) const {
    const DraftLine& one = document_.lines[at];
    if (one.line.clock) {
      if (one.line.clock->until) return between(one.line.clock->minutes, *one.line.clock->until);
      for (std::size_t i = at + 1; i < document_.lines.size(); ++i) {
        const DraftLine& next = document_.lines[i];
        const bool part = next.reading == Reading::kHeading || next.reading == Reading::kRemark ||
                          next.opens_rotation != nullptr;
        if (!next.line.clock || !part) continue;
        if (const auto found = between(one.line.clock->minutes, next.line.clock->minutes))
          return found;
        break;
      }
      if (facts_.start && facts_.slot) {
        const int end = *facts_.start + *facts_.slot;
        const int left = end - in_gym_hours(one.line.clock->minutes);
        if (!one.heading.minutes && left > 0 && left < 8 * 60) return left;
      }
    }
    return one.heading.minutes;
  }
  static std::optional<double> between(int from, int to) {
    int out = in_gym_hours(to) - in_gym_hours(from);
    if (out < 0) out += 12 * 60;
    if (out <= 0 || out > 6 * 60) return std::nullopt;
    return out;
  }

  void open_part(std::string_view name, Span from, std::optional<double> minutes) {
    end_list();
    put("\n## ");
    put(escaped(with_capital(name_text(name))), from);
    if (minutes && *minutes > 0) put(fmt::format(" ({:g} min)", *minutes), from);
    put("\n");
    in_part_ = true;
  }

  // ---- a rotation

  // Its heading says the turns; what else the coach's says stands below it.
  void rotation_heading(const DraftLine& one) {
    const rota::Rotation& rotation = *one.opens_rotation;
    end_list();
    const Span from = rotation.title.span ? rotation.title.span : span(one);
    put("\n## ");
    put(rotation.title.text.empty() ? std::string(kRotations)
                                    : escaped(with_capital(name_text(rotation.title.text))),
        from);
    if (const std::string turns = rota::turns_text(rotation); !turns.empty())
      put(" " + turns, from);
    put("\n");
    in_part_ = true;
    if (rotation.remark) paragraph(rotation.remark.text(), rotation.remark);
  }

  void grid(std::size_t at) {
    const DraftLine& one = document_.lines[at];
    const bool told = one.grid_of != nullptr && one.grid_of->form != rota::Rotation::Form::kWritten;
    if (one.opens_rotation != nullptr) rotation_heading(one);
    if (one.grid_of == nullptr) return keep_words(one);
    const rota::Rotation& rotation = *one.grid_of;
    written_ = grid_text(rotation);
    if (told) {  // in words: they stand above what was made of them
      for (const DraftLine& line : document_.lines) {
        if (line.reading == Reading::kGrid && is_line_of(rotation, line))
          paragraph(whole(line), span(line));
      }
    }
    put_table(rotation);
    if (!told) keep_words(one);
    if (const rota::Pause* behind = rota::pause_behind(rotation)) pause_part(*behind, at);
  }
  void put_table(const rota::Rotation& rotation) {
    end_list();
    put("\n");
    for (const rota::Piece& piece : table_pieces(rotation)) {
      piece.span ? put(piece.text, piece.span) : put(piece.text);
    }
  }

  // A line of the grid with a word that the table has not is shown as it was typed, too.
  void keep_words(const DraftLine& one) {
    if (has_other_words(whole(one), written_)) typed_.push_back(span(one));
  }

  // Lunch, behind the last turn: a part of its own, until the next clock.
  void pause_part(const rota::Pause& pause, std::size_t at) {
    std::optional<double> minutes;
    for (std::size_t i = at + 1; pause.clock && i < document_.lines.size() && !minutes; ++i) {
      const DraftLine& next = document_.lines[i];
      const bool part = next.line.clock &&
                        (next.reading == Reading::kHeading || next.reading == Reading::kRemark);
      if (part) minutes = between(*pause.clock, next.line.clock->minutes);
    }
    open_part(pause.words, pause.span, minutes);
    begin_list();
    put("- ");
    put(escaped_line(with_capital(name_text(pause.words))), pause.span);
    put("\n");
  }

  void heading(std::size_t at) {
    const DraftLine& one = document_.lines[at];
    if (one.opens_rotation != nullptr) return rotation_heading(one);
    const std::string_view name = coach_->text().substr(
        one.heading.name_begin, one.heading.name_end - one.heading.name_begin);
    const std::string frame = warm_at_ == at ? "Warm-up – " : cool_at_ == at ? "Cool-down – " : "";
    open_part(frame + without_marks(name), span(one.heading.name_begin, one.heading.name_end),
              minutes(at));
    const std::string_view rest =
        coach_->text().substr(one.heading.rest, one.heading.rest_end - one.heading.rest);
    const bool row = one.line.table;
    if (words_left(one)) typed_.push_back(span(one));
    if (!one.spoken.drills.empty() && (one.spoken.has_dose() || row)) {
      if (!words_left(one)) typed_.push_back(span(one));
      return items(one);
    }
    group_below_ = one.spoken.group;
    if (!words_left(one) && !trim(rest).empty()) typed_.push_back(span(one));
    const bool nothing_below = !drills_follow(at);
    if (group_below_ && !nothing_below) {
      if (!trim(rest).empty()) paragraph(rest, span(one.heading.rest, one.heading.rest_end));
      return open_circuit(*group_below_, span(one));
    }
    if (!one.spoken.drills.empty() && one.spoken.group) return items(one);
    if (nothing_below) {
      // A part that is one thing: a game, a drink, stickers.
      in_list_ = true;
      put("\n- ");
      put(escaped_line(with_capital(name_text(without_marks(name)))),
          span(one.heading.name_begin, one.heading.name_end));
      put("\n");
      if (!trim(rest).empty()) note(rest, span(one.heading.rest, one.heading.rest_end), "  ");
      return;
    }
    if (!trim(rest).empty()) paragraph(rest, span(one.heading.rest, one.heading.rest_end));
  }

  // Words that are in neither the heading nor what stands behind it: `(5 mins – don't skip it)`.
  bool words_left(const DraftLine& one) const {
    const std::string_view all = coach_->text();
    const auto left = [&](std::uint32_t begin, std::uint32_t end) {
      const std::string_view text = all.substr(begin, std::max(begin, end) - begin);
      return std::count_if(text.begin(), text.end(), [](char c) { return is_letter(c); }) > 4;
    };
    return left(one.heading.name_end, one.heading.rest) || left(one.heading.rest_end, one.line.end);
  }

  void paragraph(std::string_view text, Span from) {
    end_list();
    put("\n");
    put(escaped_line(as_remark(without_marks(text))), from);
    put("\n");
  }

  static std::string without_marks(std::string_view text) {
    return replace_all(replace_all(text, "**", ""), "__", "");
  }

  bool drills_follow(std::size_t at) const {
    for (std::size_t i = at + 1; i < document_.lines.size(); ++i) {
      const DraftLine& one = document_.lines[i];
      if (one.reading == Reading::kDrills || one.reading == Reading::kTable) return true;
      if (one.reading == Reading::kHeading) return false;
    }
    return false;
  }

  void begin_list() {
    if (!in_list_) put("\n");
    in_list_ = true;
  }

  void open_circuit(const Group& group, Span from) {
    begin_list();
    circuit_ = true;
    std::string line =
        fmt::format("Circuit: {:g} {}", group.rounds, group.rounds > 1 ? "rounds" : "round");
    if (group.work) line += ", " + seconds_text(*group.work) + " work";
    if (group.rest && *group.rest > 0) line += ", " + seconds_text(*group.rest) + " rest";
    if (group.between && *group.between > 0)
      line += ", " + seconds_text(*group.between) + " between rounds";
    put("- ");
    put(line, from);
    put("\n");
  }

  void drills(const DraftLine& one) {
    if (!in_part_) open_part(words_.first(Role::kUnnamedPart), span(one), std::nullopt);
    const bool amounts =
        std::any_of(one.spoken.drills.begin(), one.spoken.drills.end(),
                    [](const SpokenDrill& drill) { return !drill.elements.empty(); });
    if (amounts || one.spoken.drills.size() > 1 || one.spoken.group) typed_.push_back(span(one));
    if (one.opens) {
      end_list();
      open_circuit(*one.opens, span(one));
    }
    if (one.spoken.drills.empty() && one.spoken.group) {
      end_list();
      return open_circuit(*one.spoken.group, span(one));
    }
    items(one);
  }

  void items(const DraftLine& one) {
    const bool own_group = one.spoken.group && !one.spoken.drills.empty();
    const bool was_circuit = circuit_;
    if (own_group) open_circuit(*one.spoken.group, span(one));
    begin_list();
    const std::string margin = circuit_ ? "  " : "";
    for (const SpokenDrill& drill : one.spoken.drills) item(one, drill, margin);
    if (own_group) circuit_ = was_circuit && !own_group;
  }

  void item(const DraftLine& one, const SpokenDrill& drill, const std::string& margin) {
    const Span where = span(one, drill.where);
    std::string name = drill.label.empty() ? drill.name : drill.label + " – " + drill.name;
    name = with_capital(name_text(name));
    put(margin + "- ");
    put(escaped_line(name), where);
    if (drill.dose) {
      put(": ");
      put(canonical(*drill.dose), where);
    }
    put("\n");
    for (const std::string& said : drill.notes) note(said, where, margin + "  ");
  }

  void note(std::string_view text, Span from, const std::string& margin) {
    put(margin + "- note: ");
    put(escaped(trim(text)), from);
    put("\n");
  }

  const Lexicon& words_;
  const SourcePtr& coach_;
  const DraftDocument& document_;
  const Facts& facts_;
  Origin origin_;
  std::string text_;
  std::vector<Span> typed_;
  std::optional<Group> group_below_;
  std::optional<std::size_t> warm_at_ = {};  ///< the line that opens the warm-up by another name
  std::optional<std::size_t> cool_at_ = {};
  std::string written_ = {};  ///< the words of the grid that was written last
  bool in_list_ = false;
  bool circuit_ = false;
  bool in_part_ = false;
};

}  // namespace

Draft write(const Lexicon& words, const SourcePtr& coach, const DraftDocument& document,
            const Facts& facts) {
  return Writer(words, coach, document, facts).run();
}

std::string item_text(const SpokenDrill& drill) {
  const std::string name = drill.label.empty() ? drill.name : drill.label + " – " + drill.name;
  std::string out = "- " + escaped_line(with_capital(name_text(name)));
  if (drill.dose) out += ": " + canonical(*drill.dose);
  out += "\n";
  for (const std::string& said : drill.notes) out += "  - note: " + escaped(trim(said)) + "\n";
  return out;
}

}  // namespace chalkleaf::draft
