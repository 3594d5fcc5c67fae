// See the header.
#include "draft/part_settling.h"

#include <algorithm>

#include "base/text.h"
#include "draft/grids.h"
#include "draft/heading_minutes.h"
#include "draft/line_scores.h"
#include "draft/of_all.h"
#include "draft/remarks.h"
#include "draft/tables.h"
#include "draft/weights.h"

namespace chalkleaf::draft {
namespace {

using Reading = DraftLine::Reading;

class PartSettler {
 public:
  PartSettler(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines)
      : words_(words), source_(source), lines_(lines), all_(words) {}

  void run() {
    find_amounts_of_each();
    find_repeated_parts();
    settle_parts();
    give_remarks_below();
    find_rounds_behind();
  }

 private:
  std::vector<DraftLine>& lines() { return lines_; }

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
        one.spoken = one.dose_end > 0      ? drill_and_dose(one, setting)
                     : setting.timed_group ? station_of(one.line)
                                           : read_drills(words_, one.line.words(source_), setting);
        if (one.line.label_end > 0 && !one.spoken.drills.empty() &&
            one.spoken.drills.front().label.empty()) {
          one.spoken.drills.front().label = source_.text().substr(
              one.line.label_begin, one.line.label_end - one.line.label_begin);
        }
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

  // A name, and its dose on the next line or in a bracket behind it.
  SpokenLine drill_and_dose(const DraftLine& one, const Setting& setting) const {
    const std::string_view all = source_.text();
    const std::string_view above = all.substr(one.line.text, one.dose_begin - one.line.text);
    const std::size_t next_line = above.find('\n');
    const std::string_view name =
        trim(above.substr(0, next_line != std::string_view::npos ? next_line : above.rfind('(')));
    SpokenLine out;
    out.drills.push_back(read_named(
        words_, name, all.substr(one.dose_begin, one.dose_end - one.dose_begin), setting));
    out.drills.back().typed = name;
    out.drills.back().where = {0, one.line.end - one.line.text};
    return out;
  }

  // What stands below a dose on a line of its own is a note of that drill.
  void give_remarks_below() {
    DraftLine* owner = nullptr;
    for (DraftLine& one : lines()) {
      if (one.dose_end > 0) owner = &one;
      if (!one.remark_below || one.about_child || one.reading != Reading::kRemark) continue;
      if (owner == nullptr || owner->spoken.drills.empty()) continue;
      owner->spoken.drills.back().notes.emplace_back(trim(one.line.words(source_)));
      one.reading = Reading::kTyped;
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

  // What a line says of rounds when it is read by itself, whatever the drills above it have.
  void read_rounds(DraftLine& one, bool of_each) const {
    const std::string_view text = one.line.words(source_);
    if (one.line.table || is_too_long(text)) return;
    if (const auto said = all_.clause(text); said && said->plainly && said->rounds > 0) {
      one.spoken = {};
      one.spoken.group.emplace();
      one.spoken.group->rounds = said->rounds;
      one.spoken.group->has_rounds = true;
      one.spoken.group->between = said->rest;
    } else if (of_each) {
      SpokenLine alone = read_drills(words_, text, {});
      if (alone.group && alone.group->has_rounds && !alone.has_dose())
        one.spoken = std::move(alone);
    }
  }

  // `Then go again!! 2 rounds`, below a list: all of the list, so many times.
  void find_rounds_behind() {
    bool of_each = false;  // the drills of this part have the amount of its heading
    for (std::size_t i = 0; i < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      if (one.reading == Reading::kHeading) of_each = one.of_each.has_value();
      if (one.reading != Reading::kRemark && one.reading != Reading::kDrills) continue;
      SpokenLine typed = one.spoken;
      read_rounds(one, of_each);
      if (!takes_rounds(i)) one.spoken = std::move(typed);
    }
  }
  // The list above it is done as often as the line says.
  bool takes_rounds(std::size_t at) {
    DraftLine& one = lines()[at];
    if (!one.spoken.group || !one.spoken.group->has_rounds || one.spoken.group->work ||
        one.spoken.has_dose() || one.about_child)
      return false;
    if (names_move(one)) return false;
    if (opens_list(at)) return true;
    std::size_t first = at;
    std::size_t dosed = 0;
    while (first > 0 && lines()[first - 1].reading == Reading::kDrills &&
           !lines()[first - 1].spoken.group) {
      --first;
      dosed += lines()[first].spoken.has_dose() ? 1 : 0;
    }
    const bool more = at + 1 < lines().size() && lines()[at + 1].reading == Reading::kDrills;
    if (dosed < 2 || more) return false;
    one.reading = Reading::kRemark;
    lines()[first].opens = one.spoken.group;
    return true;
  }

  // Drills with doses that stand right below, to the next heading; two are as good as more.
  std::size_t dosed_below(std::size_t at) const {
    constexpr std::size_t kFar = 30;
    std::size_t found = 0;
    for (std::size_t i = at + 1; i < std::min(lines_.size(), at + kFar) && found < 2; ++i) {
      const DraftLine& one = lines_[i];
      if (one.reading == Reading::kHeading || one.reading == Reading::kTable) break;
      found += one.reading == Reading::kDrills && one.spoken.has_dose() ? 1 : 0;
    }
    return found;
  }

  // `Strength x3`, `Conditioning (3 sets of each)`, `Strong legs, 2 sets of everything` above its
  // drills is a heading, not a drill.
  void find_repeated_parts() {
    for (std::size_t i = 0; i < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      const bool open = one.reading == Reading::kDrills || one.reading == Reading::kRemark;
      if (!open || one.line.mark == Line::Mark::kBullet || dosed_below(i) < 2) continue;
      const std::string_view text = one.line.words(source_).substr(0, 120);
      std::optional<double> minutes;
      const std::size_t name = name_of_repeated_part(text, minutes);
      if (name == 0) continue;
      if (minutes) one.heading.minutes = minutes;
      const Pieces pieces = pieces_of(text.substr(0, name));
      one.reading = Reading::kHeading;
      one.heading.name_begin = one.line.text;
      one.heading.name_end = one.line.text + static_cast<std::uint32_t>(name);
      one.heading.rest = one.heading.name_end;
      one.heading.rest_end = one.line.end;
      one.heading.stretch = words_.is(Role::kStretchPart, pieces, 0, pieces.size());
    }
  }
  // The bytes of its name; 0 where it is none.
  std::size_t name_of_repeated_part(std::string_view text, std::optional<double>& minutes) const {
    const Pieces pieces = pieces_of(text);
    std::size_t phrase = 0;
    for (const Role role : {Role::kPart, Role::kStretchPart, Role::kWarmUp, Role::kCoolDown})
      phrase = std::max(phrase, words_.match(role, pieces, 0, pieces.size()));
    if (phrase > 0 && phrase < pieces.size()) {
      const std::size_t end = pieces[phrase - 1].end;
      if (all_.said(text.substr(end))) return end;
    }
    constexpr std::size_t kLongestName = 40;  // bytes
    const std::size_t mark = std::min(
        {text.find(','), text.find(" - "), text.find(" – "), text.find(':'), text.find(" (")});
    if (mark == 0 || mark > kLongestName) return 0;
    if (text.substr(0, mark).find_first_of("0123456789") != std::string_view::npos) return 0;
    const std::size_t behind = text.find_first_not_of(" ,:-(–", mark);
    if (behind == std::string_view::npos) return 0;
    const auto said = all_.said(text.substr(behind));
    if (!said || !said->plainly) return 0;
    minutes = said->minutes;
    return mark;
  }

  // `Each for 40 s (12 min)`, `10 of each`, and below it names without a dose: a part whose drills
  // all have it.
  void find_amounts_of_each() {
    for (std::size_t i = 0; i + 2 < lines().size(); ++i) {
      DraftLine& one = lines()[i];
      if (one.line.blank || one.line.table || one.line.end - one.line.text > 60) continue;
      std::string_view text = one.line.words(source_);
      const Pieces pieces = pieces_of(text);
      std::size_t open = 1;
      while (open < pieces.size() && !pieces[open].is(Piece::Kind::kOpen)) ++open;
      const auto minutes =
          open < pieces.size() ? minutes_at({words_, pieces, text, false}, open) : std::nullopt;
      if (minutes && minutes->end == pieces.size()) text = text.substr(0, pieces[open].begin);
      const auto amount = all_.amount_of_each(text);
      if (!amount) continue;
      std::size_t end = i + 1;
      while (end < lines().size() && is_bare_name(lines()[end])) ++end;
      if (end < i + 3) continue;
      one.reading = Reading::kHeading;
      one.heading = {};
      if (minutes) one.heading.minutes = minutes->minutes;
      one.heading.name_begin = one.line.text;
      one.heading.name_end = one.line.text + static_cast<std::uint32_t>(trim(text).size());
      one.heading.rest = one.heading.rest_end = one.line.end;
      one.of_each = amount;
      for (std::size_t k = i + 1; k < end; ++k) lines()[k].reading = Reading::kDrills;
      i = end - 1;
    }
  }
  bool is_bare_name(const DraftLine& one) const {
    const std::string_view text = one.line.words(source_);
    constexpr std::size_t kLongestName = 45;  // bytes
    const bool open = (one.reading == Reading::kDrills || one.reading == Reading::kRemark ||
                       one.reading == Reading::kHeading) &&
                      !one.line.blank && !one.line.table && !one.about_child &&
                      one.line.mark != Line::Mark::kHash && !one.heading.minutes;
    return open && text.size() <= kLongestName && !one.line.clock &&
           text.find_first_of("0123456789:") == std::string_view::npos && !all_.said(text) &&
           !read_drills(words_, text, {}).has_dose();
  }

  // The same on a line of its own.
  bool line_of_all(std::size_t at, Setting& setting) {
    DraftLine& one = lines()[at];
    const bool open = one.reading == Reading::kDrills || one.reading == Reading::kRemark;
    if (!open || one.about_child || dosed_below(at) < 2) return false;
    const auto said = all_.said(one.line.words(source_));
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
    if (one.of_each) {
      setting.of_each = one.of_each;
      one.spoken = {};
      return;
    }
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
      auto said = all_.said(rest);
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
  std::vector<DraftLine>& lines_;
  OfAllReader all_;
  std::optional<Line::Mark> first_mark_ = {};  ///< of the part's first line of drills
  bool list_expected_ = false;                 ///< the lines that follow are those of a circuit
};

}  // namespace

void settle_parts(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines) {
  PartSettler(words, source, lines).run();
}

}  // namespace chalkleaf::draft
