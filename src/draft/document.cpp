// See the header.
#include "draft/document.h"

#include <algorithm>
#include <array>
#include <limits>
#include <unordered_map>

#include "base/text.h"
#include "draft/dose_lines.h"
#include "draft/facts.h"
#include "draft/grids.h"
#include "draft/line_scores.h"
#include "draft/margins.h"
#include "draft/opening_run.h"
#include "draft/part_settling.h"
#include "draft/remarks.h"
#include "draft/tables.h"
#include "draft/weights.h"

namespace chalkleaf::draft {
namespace {

using Reading = DraftLine::Reading;

enum State { kHead, kBody, kTail, kStates };

bool has_small_letters(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

class DocumentReader {
 public:
  DocumentReader(const Lexicon& words, const Source& source,
                 const std::vector<rota::Rotation>& rotations)
      : words_(words), source_(source), rotations_(rotations) {}

  DraftDocument run() {
    for (const Line& line : lines_of(source_, 0)) {
      DraftLine made;
      made.line = line;
      made.from = line.text;
      out_.lines.push_back(std::move(made));
    }
    habits();
    mark_margins(source_, lines());
    find_title();
    mark_grids(rotations_, title_, lines());
    keep_taught();
    find_columns(words_, source_, lines());
    join_doses(words_, source_, lines());
    read_all();
    settle_weak_parts();
    choose();
    settle_opening_run(words_, source_, lines());
    settle_first_of_list();
    settle_counted_parts();
    settle_levels();
    settle_parts(words_, source_, lines());
    name_levels();
    return std::move(out_);
  }

 private:
  std::vector<DraftLine>& lines() { return out_.lines; }

  void habits() {
    std::size_t words = 0;
    std::size_t small = 0;
    std::size_t margin = std::numeric_limits<std::size_t>::max();
    for (const DraftLine& one : lines()) {
      if (one.line.blank) continue;
      ++words;
      small += has_small_letters(one.line.words(source_)) ? 1 : 0;
      margin = std::min(margin, one.line.indent);
    }
    habits_.capitals = small * 10 < words;
    habits_.margin = margin;
    habits_.minutes = minutes_end_parts();
    habits_.stepped = is_stepped();
    habits_.minutes_lead = std::count_if(lines().begin(), lines().end(), [&](const DraftLine& one) {
                             return !one.line.blank && !one.line.table &&
                                    begins_with_minutes(words_, source_, one.line);
                           }) > 2;
    find_clocks_behind();
  }

  // Most lines further in have doses, and most lines above such have none.
  bool is_stepped() {
    std::size_t above = 0;
    std::size_t above_dosed = 0;
    std::size_t inside = 0;
    std::size_t inside_dosed = 0;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      const Line& line = lines()[i].line;
      if (line.blank || line.table) continue;
      const bool further_in = line.indent > habits_.margin;
      const DraftLine* next = next_line(i);
      const bool step = !further_in && next != nullptr && next->line.indent > line.indent;
      if (!further_in && !step) continue;
      const bool dosed =
          read_drills(words_, line.words(source_).substr(0, kLongestLine), {}).has_dose() &&
          !ends_in_minutes(words_, source_, line);
      (step ? above : inside) += 1;
      (step ? above_dosed : inside_dosed) += dosed ? 1 : 0;
    }
    return above > 1 && inside > above && inside_dosed * 2 > inside && above_dosed * 2 < above;
  }

  // Three or more lines, later and later: `Flexibility 4:45`, `Body 5:00`, `Water 5:20`.
  void find_clocks_behind() {
    std::vector<std::pair<DraftLine*, ClockBehind>> found;
    for (DraftLine& one : lines()) {
      if (one.line.mark == Line::Mark::kBullet) continue;
      auto clock = clock_behind(source_, one.line);
      if (!clock) continue;
      const int minutes = in_gym_hours(clock->clock.minutes);
      if (!found.empty() && in_gym_hours(found.back().second.clock.minutes) >= minutes) return;
      found.emplace_back(&one, *clock);
    }
    if (found.size() < 3) return;
    for (auto& [one, clock] : found) {
      one->line.clock = clock.clock;
      one->line.clock_begin = clock.begin;
      one->line.clock_end = clock.end;
    }
  }

  // Three lines or more end in minutes, and most have lines below that do not.
  bool minutes_end_parts() {
    std::size_t found = 0;
    std::size_t above = 0;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      const Line& line = lines()[i].line;
      if (line.blank || line.table || !ends_in_minutes(words_, source_, line)) continue;
      ++found;
      const DraftLine* next = next_line(i);
      above += next != nullptr && !ends_in_minutes(words_, source_, next->line) ? 1 : 0;
    }
    return found > 2 && above * 3 > found * 2;
  }

  // The first line with words; `Subject: …` of a mail.
  void find_title() {
    for (DraftLine& one : lines()) {
      if (one.line.blank) continue;
      if (one.line.table || (one.line.mark == Line::Mark::kHash && one.line.level > 1)) return;
      if (opens_part(one.line)) return;
      const std::string_view text = one.line.words(source_);
      const std::size_t subject = words_.begins(Role::kSubject, text);
      if (subject > 0 && text.substr(subject).starts_with(':')) {
        one.line.text += static_cast<std::uint32_t>(subject) + 1;
        while (one.line.text < one.line.end && source_.text()[one.line.text] == ' ')
          ++one.line.text;
      }
      one.reading = Reading::kTitle;
      title_ = &one;
      return;
    }
  }

  // `Warm up`, `**Floor** – rolls x5`, `Circuit: 45 s work, 15 s rest`: the text begins with a
  // part.
  bool opens_part(const Line& line) const {
    const std::string_view text = line.words(source_);
    if (text.size() > kLongestLine) return false;
    std::string plain = replace_all(text, "*", " ");
    const Pieces pieces = pieces_of(plain);
    std::size_t phrase = 0;
    for (const Role role :
         {Role::kWarmUp, Role::kCoolDown, Role::kPart, Role::kStretchPart, Role::kCircuit}) {
      phrase = std::max(phrase, words_.match(role, pieces, 0, pieces.size()));
    }
    if (phrase == 0) return false;
    const bool warm = words_.match(Role::kWarmUp, pieces, 0, pieces.size()) == phrase;
    if (phrase == pieces.size()) return warm || text.ends_with(':');
    const Piece& behind = pieces[phrase];
    const bool set_off = behind.is(Piece::Kind::kColon) || behind.is(Piece::Kind::kDash);
    if (!set_off) return false;
    const SpokenLine said = read_drills(words_, plain, {});
    return said.has_dose() || (said.group && said.group->work);
  }

  void read_line(DraftLine& one) {
    if (is_too_long(one.line.words(source_))) {
      one.heading.evidence = kNever;
      one.heading.rest = one.heading.rest_end = one.line.end;
      return;
    }
    one.heading = read_heading(words_, source_, one.line, habits_);
    one.from = one.line.text;
    one.spoken = read_drills(words_, one.line.words(source_), {});
    const Pieces pieces = pieces_of(one.line.words(source_));
    one.about_child = is_about_child(words_, one, pieces);
    one.label = is_label(words_, pieces);
    const std::string_view rest =
        source_.text().substr(one.heading.rest, one.heading.rest_end - one.heading.rest);
    one.dose_behind = one.heading.rest > one.line.text && read_drills(words_, rest, {}).has_dose();
  }

  // What the taught form has below a drill, its quotes and its links to parts are taken as they
  // are.
  void keep_taught() {
    const bool bullets = quotes_are_bullets(words_, source_, lines());
    for (DraftLine& one : lines()) {
      if (one.line.blank || one.line.table || one.reading == Reading::kTitle || is_of_rotation(one))
        continue;
      const std::string_view text = one.line.words(source_);
      const Pieces pieces = pieces_of(text.substr(0, 80));
      const std::size_t key = words_.match(Role::kKey, pieces, 0, pieces.size());
      const bool below = key > 0 && one.line.indent > 1 && one.line.mark == Line::Mark::kBullet &&
                         text.find(':') != std::string_view::npos;
      const bool link = text.starts_with('[') && text.find("](") != std::string_view::npos;
      const bool quote = one.line.mark == Line::Mark::kQuote && !bullets;
      if (below || link || quote) one.reading = Reading::kKept;
      if (one.line.mark == Line::Mark::kQuote && bullets) one.line.mark = Line::Mark::kBullet;
    }
  }

  void read_all() {
    for (DraftLine& one : lines()) {
      if (!one.line.blank && !one.line.table && one.reading == Reading::kBlank) read_line(one);
    }
  }

  // Where hardly a line is plainly a heading, a word that opens parts must do.
  void settle_weak_parts() {
    std::size_t strong = 0;
    for (const DraftLine& one : lines()) {
      const bool counts = !one.line.blank && !one.line.table && one.reading != Reading::kTitle;
      strong +=
          counts && one.heading.strong && one.heading.evidence + kWeights.heading_costs > 0 ? 1 : 0;
    }
    habits_.weak_parts = strong < 2;
    if (habits_.weak_parts) read_all();
  }

  const DraftLine* next_line(std::size_t at) {
    for (std::size_t i = at + 1; i < lines().size(); ++i) {
      if (!lines()[i].line.blank) return &lines()[i];
    }
    return nullptr;
  }

  struct Step {
    double score = -1e9;
    int from = 0;
    Reading reading = Reading::kRemark;
  };

  void choose() {
    const LineScores scores(words_, source_, habits_);
    std::vector<std::array<Step, kStates>> steps(lines().size() + 1);
    steps[0][kHead].score = 0;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      const DraftLine& one = lines()[i];
      const auto reach = [&](int from, int to, Reading reading, double by) {
        const double score = steps[i][static_cast<std::size_t>(from)].score + by;
        Step& step = steps[i + 1][static_cast<std::size_t>(to)];
        if (score > step.score) step = {score, from, reading};
      };
      if (is_of_rotation(one)) {
        const Reading reading = one.reading;
        const bool opens = one.opens_rotation != nullptr;
        for (int state = 0; state < kStates; ++state)
          reach(state, opens ? kBody : state, reading, 0);
        continue;
      }
      const bool fixed = one.line.blank || one.line.table || one.reading == Reading::kTitle ||
                         one.reading == Reading::kKept;
      if (fixed) {
        const Reading reading = one.line.blank                  ? Reading::kBlank
                                : one.reading == Reading::kKept ? Reading::kKept
                                : one.line.table                ? Reading::kTable
                                                                : Reading::kTitle;
        for (int state = 0; state < kStates; ++state) reach(state, state, reading, 0);
        continue;
      }
      const double remark = one.dose_end > 0 ? kNever : scores.remark(one);
      const double drills = one.remark_below ? kNever : scores.drills(one);
      const double heading =
          one.dose_end > 0 || one.remark_below
              ? kNever
              : scores.heading(one, next_line(i), i > 0 && lines()[i - 1].line.blank);
      const double remark_ahead = remark - (one.spoken.has_dose() ? kWeights.dose_in_remark : 0);
      reach(kHead, kHead, Reading::kRemark, remark_ahead);
      reach(kBody, kBody, Reading::kRemark, remark);
      reach(kTail, kTail, Reading::kRemark, remark);
      reach(kBody, kTail, Reading::kRemark, remark + kWeights.to_tail);
      reach(kHead, kBody, Reading::kHeading, heading);
      reach(kBody, kBody, Reading::kHeading, heading);
      reach(kTail, kBody, Reading::kHeading, heading + kWeights.back_to_part);
      const bool sure = scores.more_doses(one) > 1;
      reach(kHead, kBody, Reading::kDrills,
            drills + (sure ? kWeights.doses_before_parts : kWeights.drill_before_parts));
      reach(kBody, kBody, Reading::kDrills, drills);
      reach(kTail, kTail, Reading::kDrills, drills + kWeights.drill_in_tail);
    }
    std::size_t state = 0;
    for (std::size_t s = 1; s < kStates; ++s) {
      if (steps.back()[s].score > steps.back()[state].score) state = s;
    }
    for (std::size_t i = lines().size(); i > 0; --i) {
      const Step& step = steps[i][state];
      lines()[i - 1].reading = step.reading;
      lines()[i - 1].tail = state == kTail;
      state = static_cast<std::size_t>(step.from);
    }
  }

  bool begins_with_level(const DraftLine& one) const {
    const Pieces pieces = pieces_of(one.line.words(source_).substr(0, kLongestLine));
    const std::size_t level = words_.match(Role::kLevelOfThree, pieces, 0, pieces.size());
    return level > 0 && level < pieces.size();
  }

  // `CARD 1 * BARS`, and further down `CARD 2 * BEAM`, `CARD 3 …`, with drills below each: parts,
  // whatever the word is.
  void settle_counted_parts() {
    std::unordered_map<std::string, std::vector<std::size_t>> found;  // by the word
    std::size_t last_dosed = 0;
    const auto close = [&](std::vector<std::size_t>& parts) {
      if (parts.size() > 2 && last_dosed > parts.back()) {
        for (const std::size_t part : parts) {
          DraftLine& one = lines()[part];
          one.reading = Reading::kHeading;
          one.heading.name_begin = one.line.text;
          one.heading.name_end = one.heading.rest = one.heading.rest_end = one.line.end;
        }
      }
      parts.clear();
    };
    for (std::size_t i = 0; i < lines().size(); ++i) {
      const auto counter = counter_of(lines()[i]);
      if (!counter) {
        const bool dosed = lines()[i].reading == Reading::kDrills && lines()[i].spoken.has_dose();
        if (dosed) last_dosed = i;
        continue;
      }
      std::vector<std::size_t>& parts = found[counter->first];
      if (counter->second == 1) close(parts);
      const bool next = counter->second == static_cast<double>(parts.size() + 1) &&
                        (parts.empty() || last_dosed > parts.back());
      if (next) parts.push_back(i);
    }
    for (auto& [word, parts] : found) close(parts);
  }
  // The word and the number a line begins with that has no other dose.
  std::optional<std::pair<std::string, double>> counter_of(const DraftLine& one) const {
    const std::string_view text = one.line.words(source_);
    const bool open = (one.reading == Reading::kDrills || one.reading == Reading::kRemark) &&
                      !one.about_child && !one.line.table && !is_listed(one.line) &&
                      text.size() < 60;
    if (!open) return std::nullopt;
    const Pieces pieces = pieces_of(text);
    const bool counted = pieces.size() > 1 && pieces[0].is(Piece::Kind::kWord) &&
                         pieces[1].is(Piece::Kind::kNumber) && pieces[1].whole;
    if (!counted || read_drills(words_, text.substr(pieces[1].end), {}).has_dose())
      return std::nullopt;
    return std::pair(pieces[0].text, pieces[1].value);
  }

  // `Preparation, 20 min`, below it `a) rope skipping 3 min`, `b) squats 2 x 10`: what looks like a
  // part for its minutes is the first of the list.
  void settle_first_of_list() {
    for (std::size_t i = 1; i + 2 < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      if (one.reading != Reading::kHeading || !is_listed(one.line) || !one.heading.minutes)
        continue;
      std::size_t above = i - 1;
      while (above > 0 && lines()[above].reading == Reading::kBlank) --above;
      const auto same_list = [&](const DraftLine& other) {
        return other.line.mark == one.line.mark && other.line.indent == one.line.indent;
      };
      const auto is_drill = [&](const DraftLine& other) {
        return same_list(other) && other.reading == Reading::kDrills && other.spoken.has_dose();
      };
      if (lines()[above].reading != Reading::kHeading || same_list(lines()[above]) ||
          !is_drill(lines()[i + 1]) || !is_drill(lines()[i + 2]))
        continue;
      const std::string_view text = one.line.words(source_);
      const Pieces pieces = pieces_of(text);
      const std::size_t part = words_.any_of(kPartRoles, pieces, 0, pieces.size());
      const bool more = part < pieces.size() && pieces[part].is(Piece::Kind::kWord);
      if (part > 0 && !more) continue;  // `a) warm up 5 min`, and no `rope skipping`
      SpokenLine read = read_drills(words_, text, {});
      if (!read.has_dose()) continue;
      one.reading = Reading::kDrills;
      one.from = one.line.text;
      one.spoken = std::move(read);
    }
  }

  // `rope walk`, and below it `bronze – along it, 2 goes`, `silver – …`: the line above is a part.
  void settle_levels() {
    for (std::size_t i = 0; i + 1 < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      if (one.reading != Reading::kDrills && one.reading != Reading::kRemark) continue;
      if (begins_with_level(one) || !begins_with_level(lines()[i + 1]) || one.spoken.has_dose())
        continue;
      one.reading = Reading::kHeading;
      one.heading.name_begin = one.line.text;
      one.heading.name_end = one.heading.rest = one.heading.rest_end = one.line.end;
    }
    for (DraftLine& one : lines()) {
      const bool other = one.reading == Reading::kRemark || one.reading == Reading::kHeading;
      if (other && begins_with_level(one) && one.spoken.has_dose()) one.reading = Reading::kDrills;
    }
  }

  // Their drills are those of the line above.
  void name_levels() {
    std::string above;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      if (one.reading == Reading::kHeading && i + 1 < lines().size() &&
          begins_with_level(lines()[i + 1])) {
        above = source_.text().substr(one.heading.name_begin,
                                      one.heading.name_end - one.heading.name_begin);
        if (const std::size_t bracket = above.find(" ("); bracket != std::string::npos)
          above.resize(bracket);
        is_part_ = words_.within(Role::kPart, pieces_of(above), 0, pieces_of(above).size());
      } else if (one.reading != Reading::kDrills || !begins_with_level(one)) {
        above.clear();
      }
      if (above.empty() || one.reading != Reading::kDrills || is_part_) continue;
      for (SpokenDrill& drill : one.spoken.drills) {
        const bool own = !drill.name.empty() && drill.name != drill.label && !drill.label.empty();
        if (drill.label.empty()) drill.label = drill.name;
        drill.name = own ? above + ", " + drill.name : above;
      }
    }
  }

  const Lexicon& words_;
  const Source& source_;
  const std::vector<rota::Rotation>& rotations_;
  DraftDocument out_;
  Habits habits_;
  DraftLine* title_ = nullptr;
  bool is_part_ = false;  ///< the line above levels names an apparatus, not a drill
};

}  // namespace

DraftDocument read_document(const Lexicon& words, const Source& source,
                            const std::vector<rota::Rotation>& rotations) {
  return DocumentReader(words, source, rotations).run();
}

}  // namespace chalkleaf::draft
