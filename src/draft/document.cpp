// See the header.
#include "draft/document.h"

#include <algorithm>
#include <array>
#include <limits>

#include "base/text.h"
#include "draft/line_scores.h"
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
    find_numbered();
    find_title();
    find_rotations();
    keep_taught();
    find_columns(words_, source_, lines());
    read_all();
    settle_weak_parts();
    choose();
    settle_levels();
    settle_parts();
    find_rounds_behind();
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
    return above > 2 && inside > above && inside_dosed * 10 > inside * 6 && above_dosed * 2 < above;
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

  // The lines of their grids, and the headings above.
  void find_rotations() {
    for (const rota::Rotation& rotation : rotations_) {
      DraftLine* heading = nullptr;
      DraftLine* grid = nullptr;
      for (DraftLine& one : lines()) {
        if (rotation.heading.span && one.line.begin <= rotation.heading.span.begin &&
            rotation.heading.span.begin < one.line.end) {
          heading = &one;
        }
        const bool own = std::find(rotation.lines.begin(), rotation.lines.end(), one.line.number) !=
                         rotation.lines.end();
        if (!own || rotation.form == rota::Rotation::Form::kNone) continue;
        one.reading = Reading::kGrid;
        if (grid == nullptr) grid = &one;
      }
      if (grid != nullptr) grid->grid_of = &rotation;
      if (heading == title_) heading = nullptr;
      DraftLine* opens = heading != nullptr ? heading : grid;
      if (opens == nullptr) continue;
      opens->opens_rotation = &rotation;
      if (!opens->line.clock && rotation.start()) opens->line.clock = Clock{*rotation.start(), {}};
      if (heading == nullptr) continue;
      heading->reading = Reading::kHeading;
      heading->heading.name_begin =
          rotation.title.span ? rotation.title.span.begin : heading->line.text;
      heading->heading.name_end = rotation.title.span ? rotation.title.span.end : heading->line.end;
      heading->heading.rest = heading->heading.rest_end = heading->line.end;
    }
  }
  static bool is_of_rotation(const DraftLine& one) {
    return one.reading == Reading::kGrid || one.opens_rotation != nullptr;
  }

  // What the taught form has below a drill, its quotes and its links to parts are taken as they
  // are.
  void keep_taught() {
    const bool bullets = quotes_are_bullets();
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

  // `> 10 lunges e/l`: where such lines have doses the sign is a bullet, not a quote.
  bool quotes_are_bullets() const {
    std::size_t quotes = 0;
    std::size_t dosed = 0;
    for (const DraftLine& one : out_.lines) {
      if (one.line.mark != Line::Mark::kQuote) continue;
      ++quotes;
      const std::string_view text = one.line.words(source_).substr(0, kLongestLine);
      dosed += read_drills(words_, text, {}).has_dose() ? 1 : 0;
    }
    return quotes > 2 && dosed * 2 > quotes;
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
      const double remark = scores.remark(one);
      const double drills = scores.drills(one);
      const double heading = scores.heading(one, next_line(i), i > 0 && lines()[i - 1].line.blank);
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

  // What a heading says of its whole part, and the drills read again by it.
  void settle_parts() {
    Setting setting;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      if (one.reading == Reading::kTable) {
        std::size_t end = i + 1;
        while (end < lines().size() && lines()[end].line.table) ++end;
        read_table(words_, source_, lines(), i, end, setting);
        i = end - 1;
        continue;
      }
      if (is_of_rotation(one)) {
        setting = {};
        list_expected_ = false;
        continue;
      }
      if (one.reading == Reading::kHeading) {
        setting = {};
        first_mark_.reset();
        setting.stretch = one.heading.stretch;
        heading_line(i, setting);
      } else if (list_expected_ && one.heading.evidence > kNever &&
                 one.reading == Reading::kRemark && !one.about_child && !one.line.grid) {
        one.reading = Reading::kDrills;  // the list of a circuit
      }
      if (one.reading != Reading::kRemark && one.reading != Reading::kHeading)
        list_expected_ = false;
      if (one.reading == Reading::kDrills) {
        one.spoken = setting.timed_group ? station_of(one.line)
                                         : read_drills(words_, one.line.words(source_), setting);
        // `circuit 30 sec on 10 off x2 rounds`, above its list.
        if (one.spoken.drills.empty() && one.spoken.group) {
          setting.group = true;
          setting.timed_group = one.spoken.group->work.has_value();
          list_expected_ = true;
        }
        if (setting.group && !one.spoken.group) list_expected_ = true;
        if (!first_mark_) first_mark_ = one.line.mark;
        // A signature below a list is no drill of it.
        if (*first_mark_ != one.line.mark && one.line.mark == Line::Mark::kNone &&
            !read_drills(words_, one.line.words(source_), {}).has_dose() &&
            !setting.defaults.empty()) {
          one.reading = Reading::kRemark;
        }
      }
      if (one.reading == Reading::kHeading) list_expected_ = setting.group;
    }
  }

  // A station whose time the circuit gives: a name, and what is said of it. Several names are a
  // list of stations.
  SpokenLine station_of(const Line& line) const {
    const std::string_view text = line.words(source_);
    SpokenLine out = read_drills(words_, text, {});
    const bool list = text.find(" – ") != std::string_view::npos || out.group;
    if (list || (out.drills.size() > 2 && !out.has_dose() && !is_listed(line))) return out;
    const std::size_t comma = std::min(text.find(','), text.size());
    SpokenDrill one;
    one.name = trim(text.substr(0, comma));
    one.typed = text;
    one.where = {0, text.size()};
    if (comma < text.size()) one.notes.emplace_back(trim(text.substr(comma + 1)));
    out = {};
    out.drills.push_back(std::move(one));
    return out;
  }

  bool drills_follow(std::size_t at, bool group = false) {
    for (std::size_t i = at + 1; i < lines().size(); ++i) {
      if (group && lines()[i].reading == Reading::kRemark && !lines()[i].tail) return true;
      if (lines()[i].reading == Reading::kDrills || lines()[i].reading == Reading::kTable)
        return true;
      if (lines()[i].reading == Reading::kHeading) return false;
    }
    return false;
  }

  // Lines of a part that take turns by the minute: `odd minutes: …`, `even minutes: …`.
  bool alternates(std::size_t at) {
    for (std::size_t i = at + 1; i < lines().size() && lines()[i].reading != Reading::kHeading;
         ++i) {
      const Pieces pieces = pieces_of(lines()[i].line.words(source_));
      if (words_.is(Role::kOddEven, pieces, 0, pieces.size())) return true;
    }
    return false;
  }

  // `1 rope walk`, …, `2 bottle jumps`: bare numbers that count lines, three or more of them.
  void find_numbered() {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      Line& line = lines()[i].line;
      if (line.blank || line.mark != Line::Mark::kNone || line.clock) continue;
      const std::string_view text = line.words(source_);
      const std::size_t next = found.size() + 1;
      const std::string number = std::to_string(next) + " ";
      // `s1 safety vault`
      const std::size_t letter = !text.empty() && text[0] == 's' ? 1 : 0;
      if (text.substr(letter).starts_with(number) && text.size() > number.size() + letter &&
          is_letter(text[number.size() + letter])) {
        found.push_back(i);
      }
    }
    if (found.size() < 3) return;
    for (std::size_t n = 0; n < found.size(); ++n) {
      Line& line = lines()[found[n]].line;
      line.mark = Line::Mark::kNumber;
      const std::uint32_t letter = source_.text()[line.text] == 's' ? 1 : 0;
      line.text += letter + static_cast<std::uint32_t>(std::to_string(n + 1).size() + 1);
      lines()[found[n]].from = line.text;
    }
  }

  // `Then go again!! 2 rounds`, below a list: all of the list, so many times.
  void find_rounds_behind() {
    for (std::size_t i = 0; i < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      const bool open = one.reading == Reading::kRemark || one.reading == Reading::kDrills;
      if (!open || !one.spoken.group || !one.spoken.group->has_rounds || one.spoken.group->work ||
          one.spoken.has_dose() || one.about_child)
        continue;
      std::size_t first = i;
      std::size_t dosed = 0;
      while (first > 0 && lines()[first - 1].reading == Reading::kDrills &&
             !lines()[first - 1].spoken.group) {
        --first;
        dosed += lines()[first].spoken.has_dose() ? 1 : 0;
      }
      const bool more = i + 1 < lines().size() && lines()[i + 1].reading == Reading::kDrills;
      if (dosed < 2 || more) continue;
      one.reading = Reading::kRemark;
      lines()[first].opens = one.spoken.group;
    }
  }

  void heading_line(std::size_t at, Setting& setting) {
    DraftLine& one = lines()[at];
    one.from = one.heading.rest;
    const std::string_view rest =
        source_.text().substr(one.heading.rest, one.heading.rest_end - one.heading.rest);
    Setting behind = setting;
    const bool own = !drills_follow(at);
    const std::string_view name = source_.text().substr(
        one.heading.name_begin, one.heading.name_end - one.heading.name_begin);
    // `6.50 splits 30 s each leg, pancake 30 s`
    if (own || read_drills(words_, rest, behind).has_dose()) behind.name = name;
    one.spoken = read_drills(words_, rest, behind);
    if (one.heading.pause && takes_time_of_pause(one)) return;
    // `ADVENTURE (go round 3 times)`
    const std::string_view whole = one.line.words(source_);
    if (const std::size_t open = whole.find('(');
        open != std::string_view::npos && !one.spoken.group) {
      const SpokenLine inside = read_drills(words_, whole.substr(open + 1), {});
      if (inside.group && inside.group->has_rounds) one.spoken.group = inside.group;
    }
    const Pieces head = pieces_of(one.line.words(source_));
    const bool circuit = words_.within(Role::kCircuit, head, 0, head.size());
    const bool follows = drills_follow(at, one.spoken.group.has_value() && !one.spoken.has_dose());
    if (follows && (circuit || one.spoken.drills.empty() || one.spoken.group)) {
      if (circuit && follows && !one.spoken.group) one.spoken.drills.clear();
      if (one.spoken.drills.empty()) setting.defaults = one.spoken.defaults;
    }
    if (follows && one.spoken.group && !one.spoken.has_dose()) {
      if (one.spoken.group->superset && alternates(at)) one.spoken.group->rounds /= 2;
      one.spoken.drills.clear();
      setting.group = true;
      setting.timed_group = one.spoken.group->work.has_value();
    }
    // `Block B – x2`, above its list
    const bool times = follows && one.spoken.drills.empty() && !one.spoken.group &&
                       one.spoken.defaults.size() == 1 &&
                       one.spoken.defaults[0].values.size() == 1 &&
                       one.spoken.defaults[0].kind == Element::Kind::kCount &&
                       one.spoken.defaults[0].unit == Unit::kTimes;
    if (times) {
      one.spoken.group.emplace();
      one.spoken.group->rounds = one.spoken.defaults[0].values.front();
      one.spoken.group->has_rounds = true;
      one.spoken.defaults.clear();
      setting.defaults.clear();
      setting.group = true;
    }
    // `2.10 run thro display x2`: the heading is the drill.
    const bool counted =
        std::any_of(one.spoken.defaults.begin(), one.spoken.defaults.end(), [](const Element& e) {
          return e.is_amount() && (e.kind != Element::Kind::kTime || e.values.front() < 120);
        });
    if (!follows && one.spoken.drills.empty() && counted) {
      one.from = one.heading.name_begin;
      one.spoken = read_drills(
          words_, source_.text().substr(one.from, one.heading.rest_end - one.from), setting);
    }
    // `Strength – 30 secs rest between sets`, `Stretch – hold everything 30`
    if (follows && setting.defaults.empty()) {
      for (const Element& e : one.spoken.defaults) setting.defaults.push_back(e);
    }
  }

  const Lexicon& words_;
  const Source& source_;
  const std::vector<rota::Rotation>& rotations_;
  DraftDocument out_;
  Habits habits_;
  DraftLine* title_ = nullptr;
  std::optional<Line::Mark> first_mark_ = {};  ///< of the part's first line of drills
  bool is_part_ = false;        ///< the line above levels names an apparatus, not a drill
  bool list_expected_ = false;  ///< the lines that follow are those of a circuit
};

}  // namespace

DraftDocument read_document(const Lexicon& words, const Source& source,
                            const std::vector<rota::Rotation>& rotations) {
  return DocumentReader(words, source, rotations).run();
}

}  // namespace chalkleaf::draft
