// See the header.
#include "draft/document.h"

#include <algorithm>
#include <array>
#include <limits>

#include "base/text.h"
#include "draft/facts.h"
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
    find_underlined();
    find_stamps();
    find_numbered();
    find_lettered();
    find_codes();
    find_title();
    find_rotations();
    keep_taught();
    find_columns(words_, source_, lines());
    read_all();
    settle_weak_parts();
    choose();
    settle_levels();
    find_repeated_parts();
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
      if (line_of_all(i, setting)) continue;
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

  // `push-ups; wall sit`, `hollow rocks / plank taps / burpees`: several on a line; none where it
  // has doses or only one.
  SpokenLine stations_of(std::string_view text) const {
    SpokenLine out;
    if (text.size() > kLongestLine || read_drills(words_, text, {}).has_dose()) return out;
    for (const std::string_view mark : {";", " / ", " | ", " · "}) {
      if (text.find(mark) == std::string_view::npos) continue;
      for (std::size_t at = 0; at <= text.size();) {
        const std::size_t stop = std::min(text.find(mark, at), text.size());
        const std::string_view name = trim(text.substr(at, stop - at));
        at = stop + mark.size();
        if (name.empty()) continue;
        SpokenDrill one;
        one.name = one.typed = name;
        one.where.begin = static_cast<std::size_t>(name.data() - text.data());
        one.where.end = one.where.begin + name.size();
        out.drills.push_back(std::move(one));
      }
      return out.drills.size() > 1 ? out : SpokenLine{};
    }
    return out;
  }

  // A station whose time the circuit gives: a name, and what is said of it. Several names are a
  // list of stations.
  SpokenLine station_of(const Line& line) const {
    const std::string_view text = line.words(source_);
    if (SpokenLine several = stations_of(text); !several.drills.empty()) return several;
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

  // A short line right above a rule is a heading, unless rules stand all over.
  void find_underlined() {
    constexpr std::uint32_t kLongest = 60;
    for (std::size_t i = 0; i + 1 < lines().size(); ++i) {
      Line& line = lines()[i].line;
      const bool under = lines()[i + 1].line.rule && !line.blank && line.mark == Line::Mark::kNone;
      const bool above = i > 0 && lines()[i - 1].line.rule;
      if (!under || above || line.end - line.begin > kLongest) continue;
      line.mark = Line::Mark::kHash;
      line.level = i == 0 ? 1 : 2;
    }
  }

  // `A1 jog`, `A2 kicks`, `B1 …`: codes that count lines, from 1 within each letter.
  void find_codes() {
    std::vector<DraftLine*> found;
    char letter = 0;
    char next = '1';
    for (DraftLine& one : lines()) {
      const std::string_view text = one.line.words(source_);
      const bool code = !one.line.blank && one.line.mark == Line::Mark::kNone && !one.line.clock &&
                        text.size() > 4 && text[0] >= 'A' && text[0] <= 'Z' && text[1] >= '1' &&
                        text[1] <= '9' && (text[2] == ' ' || text[2] == ')' || text[2] == '.');
      if (!code) continue;
      if (text[0] != letter) next = '1';
      letter = text[0];
      if (text[1] != next++) return;
      found.push_back(&one);
    }
    if (found.size() < 4) return;
    for (DraftLine* one : found) {
      one->line.mark = Line::Mark::kNumber;
      one->line.level = 2;
      one->line.text += 2;
      while (one->line.text < one->line.end &&
             std::string_view(" ).:").find(source_.text()[one->line.text]) !=
                 std::string_view::npos)
        ++one->line.text;
      one->from = one->line.text;
    }
  }

  // `[18:05] hollow hold 30 s`: each a minute or so behind the last, it is when a message was sent;
  // else the plan's clock.
  void find_stamps() {
    constexpr int kSoon = 4;  // minutes
    struct Stamp {
      Line* line;
      Clock clock;
      std::size_t size;
    };
    std::vector<Stamp> found;
    bool sent = true;
    for (DraftLine& one : lines()) {
      const std::string_view text = one.line.words(source_);
      if (one.line.blank || !text.starts_with('[')) continue;
      const auto read = read_clock(text.substr(1));
      if (!read || !text.substr(1 + read->size).starts_with(']')) continue;
      const int later = found.empty() ? 0 : read->clock.minutes - found.back().clock.minutes;
      if (later < 0) return;
      sent = sent && later <= kSoon;
      std::size_t size = read->size + 2;
      while (size < text.size() && text[size] == ' ') ++size;
      found.push_back({&one.line, read->clock, size});
    }
    if (found.size() < 3) return;
    for (const Stamp& one : found) {
      one.line->text += static_cast<std::uint32_t>(one.size);
      if (!sent) one.line->clock = one.clock;
    }
  }

  // `A) PREP – 10 MIN`, `B) EMOM 12 MIN`: letters in their order, with what is done below each.
  void find_lettered() {
    std::vector<std::size_t> found;
    std::size_t between = 0;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      const Line& line = lines()[i].line;
      if (line.blank || line.table) continue;
      const std::string_view text = trim(source_.text().substr(line.begin, line.end - line.begin));
      const bool lettered = text.size() > 3 && text[0] == static_cast<char>('A' + found.size()) &&
                            (text[1] == ')' || text[1] == '.') && text[2] == ' ';
      if (lettered) found.push_back(i);
      between += !lettered && !found.empty() ? 1 : 0;
    }
    if (found.size() < 3 || between < found.size()) return;
    for (const std::size_t i : found) {
      Line& line = lines()[i].line;
      line.mark = Line::Mark::kHash;
      line.level = 2;
      line.text = static_cast<std::uint32_t>(source_.text().find(
                      ' ', source_.text().find_first_not_of(" \t", line.begin))) +
                  1;
      lines()[i].from = line.text;
    }
  }

  // `1 rope walk`, …, `2 bottle jumps`: bare numbers that count lines, three or more of them.
  void find_numbered() {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < lines().size(); ++i) {
      Line& line = lines()[i].line;
      const bool clock = line.clock && line.clock_end == 0;
      if (line.blank || line.mark != Line::Mark::kNone || clock) continue;
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

  // `salto from the track 6 rounds`, `streaming: the whole team, 3 times through`: how often that
  // is done, and not the lines above.
  bool names_move(const DraftLine& one) const {
    return std::any_of(one.spoken.drills.begin(), one.spoken.drills.end(),
                       [&](const SpokenDrill& drill) {
                         if (!drill.label.empty()) return true;
                         const Pieces name = pieces_of(drill.name);
                         for (std::size_t i = 0; i < name.size(); ++i) {
                           const bool go = words_.is(Role::kGo, name, i, name.size());
                           if (!go && words_.is(Role::kMove, name, i, name.size())) return true;
                         }
                         return false;
                       });
  }

  // `Do this list twice, with a minute's rest in between.`, right below a heading and above its
  // list.
  bool opens_list(std::size_t at) {
    if (!lines()[at].spoken.drills.empty()) return false;
    std::size_t above = at;
    while (above > 0 && lines()[above - 1].reading == Reading::kBlank) --above;
    if (above == 0 || lines()[above - 1].reading != Reading::kHeading) return false;
    std::size_t drills = 0;
    std::size_t first = at + 1;
    while (first < lines().size() && lines()[first].reading == Reading::kBlank) ++first;
    for (std::size_t i = first; i < lines().size() && drills < 2; ++i) {
      if (lines()[i].reading != Reading::kDrills || lines()[i].spoken.group) break;
      ++drills;
    }
    if (drills < 2 || lines()[first].opens) return false;
    lines()[at].reading = Reading::kRemark;
    lines()[first].opens = lines()[at].spoken.group;
    return true;
  }

  // `Then go again!! 2 rounds`, below a list: all of the list, so many times.
  void find_rounds_behind() {
    for (std::size_t i = 0; i < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      const bool open = one.reading == Reading::kRemark || one.reading == Reading::kDrills;
      if (!open || !one.spoken.group || !one.spoken.group->has_rounds || one.spoken.group->work ||
          one.spoken.has_dose() || one.about_child)
        continue;
      if (names_move(one) || opens_list(i)) continue;
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

  /// What is said of all drills below.
  struct OfAll {
    double sets = 0;    ///< each drill, one after the other
    double rounds = 0;  ///< the list, again and again
    std::optional<double> rest = {};
  };
  // `3 sets of each`, `all x3, 30 s rest`, `repeat the list twice`: nothing else, and no drill's
  // name.
  std::optional<OfAll> said_of_all(std::string_view text) const {
    constexpr double kMost = 10;
    if (text.empty() || text.size() > 80) return std::nullopt;
    const SpokenDrill read = read_named(words_, "", text, {});
    OfAll out;
    for (const Element& e : read.elements) {
      if (e.kind == Element::Kind::kEach || e.kind == Element::Kind::kNothing) continue;
      const bool one = e.values.size() == 1 && e.values.front() <= kMost && e.values.front() > 1;
      if (e.kind == Element::Kind::kRest) {
        out.rest = e.values.front();
      } else if (e.kind == Element::Kind::kCount && e.unit == Unit::kSets && one) {
        out.sets = e.values.front();
      } else if (e.kind == Element::Kind::kCount && e.unit == Unit::kTimes && one) {
        out.rounds = e.values.front();
      } else {
        return std::nullopt;
      }
    }
    for (const std::string& note : read.notes) {
      const Pieces pieces = pieces_of(note);
      for (std::size_t i = 0; i < pieces.size();) {
        const std::size_t taken = std::max(words_.match(Role::kOfAll, pieces, i, pieces.size()),
                                           words_.match(Role::kCircuit, pieces, i, pieces.size()));
        if (taken == 0 && pieces[i].is(Piece::Kind::kWord)) return std::nullopt;
        i += std::max<std::size_t>(taken, 1);
      }
    }
    return (out.sets > 0) != (out.rounds > 0) ? std::optional(out) : std::nullopt;
  }

  // Drills with doses that stand right below, to the next heading; two are as good as more.
  std::size_t dosed_below(std::size_t at) const {
    constexpr std::size_t kFar = 30;
    std::size_t found = 0;
    for (std::size_t i = at + 1; i < std::min(out_.lines.size(), at + kFar) && found < 2; ++i) {
      const DraftLine& one = out_.lines[i];
      if (one.reading == Reading::kHeading || one.reading == Reading::kTable) break;
      found += one.reading == Reading::kDrills && one.spoken.has_dose() ? 1 : 0;
    }
    return found;
  }

  // `Strength x3`, `Conditioning (3 sets of each)` above its drills is a heading, not a drill.
  void find_repeated_parts() {
    for (std::size_t i = 0; i < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      const bool open = one.reading == Reading::kDrills || one.reading == Reading::kRemark;
      if (!open || one.line.mark == Line::Mark::kBullet || dosed_below(i) < 2) continue;
      const std::string_view text = one.line.words(source_).substr(0, 80);
      const Pieces pieces = pieces_of(text);
      std::size_t phrase = 0;
      for (const Role role : {Role::kPart, Role::kStretchPart, Role::kWarmUp, Role::kCoolDown})
        phrase = std::max(phrase, words_.match(role, pieces, 0, pieces.size()));
      if (phrase == 0 || phrase == pieces.size()) continue;
      if (!said_of_all(text.substr(pieces[phrase - 1].end))) continue;
      one.reading = Reading::kHeading;
      one.heading.name_begin = one.line.text;
      one.heading.name_end = one.line.text + static_cast<std::uint32_t>(pieces[phrase - 1].end);
      one.heading.rest = one.heading.name_end;
      one.heading.rest_end = one.line.end;
      one.heading.stretch = words_.is(Role::kStretchPart, pieces, 0, pieces.size());
    }
  }

  // The same on a line of its own.
  bool line_of_all(std::size_t at, Setting& setting) {
    DraftLine& one = lines()[at];
    const bool open = one.reading == Reading::kDrills || one.reading == Reading::kRemark;
    if (!open || one.about_child || dosed_below(at) < 2) return false;
    const auto said = said_of_all(one.line.words(source_));
    if (!said) return false;
    one.reading = Reading::kRemark;
    take_of_all(*said, setting, [&](Group group) {
      for (std::size_t i = at + 1; i < lines().size(); ++i) {
        if (lines()[i].reading != Reading::kDrills) continue;
        lines()[i].opens = group;
        break;
      }
    });
    return true;
  }
  template <class Open>
  static void take_of_all(const OfAll& said, Setting& setting, Open open) {
    if (said.sets > 0) {
      setting.sets = said.sets;
      if (!said.rest) return;
      Element rest;
      rest.kind = Element::Kind::kRest;
      rest.values = {*said.rest};
      setting.defaults.push_back(rest);
      return;
    }
    Group group;
    group.rounds = said.rounds;
    group.has_rounds = true;
    group.between = said.rest;
    setting.group = true;
    open(group);
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
    if (dosed_below(at) > 1) {
      auto said = said_of_all(rest);
      const Pieces words = pieces_of(one.line.words(source_));
      // Of a superset a set is a round of all its drills.
      if (said && said->sets > 0 && words_.within(Role::kSuperset, words, 0, words.size()))
        std::swap(said->rounds, said->sets);
      if (said) {
        one.spoken = {};
        take_of_all(*said, setting, [&](const Group& group) { one.spoken.group = group; });
        return;
      }
    }
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
