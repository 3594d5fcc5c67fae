#include "reason/hall_time.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "plan/library.h"
#include "reason/drill_lines.h"
#include "reason/hall_words.h"
#include "reason/sums.h"

namespace chalkleaf::reason {
namespace {

using plan::AmountKind;
using plan::Dose;
using plan::Drill;
using plan::HallActivity;
using plan::HallPlace;

Duration scaled(Duration time, double factor) {
  return Duration::milliseconds(
      std::llround(static_cast<double>(time.in_milliseconds()) * factor / 1000) * 1000);
}

/// Which end of a written range counts.
enum class End { kLow, kMiddle, kHigh };

void take_end(plan::Amount& amount, End end) {
  if (amount.count_to && end != End::kHigh) {
    if (end == End::kMiddle) amount.count = (amount.count + *amount.count_to + 1) / 2;
    amount.count_to.reset();
  }
  if (amount.time_to && end != End::kHigh) {
    if (end == End::kMiddle) amount.time = (*amount.time + *amount.time_to) / 2;
    amount.time_to.reset();
  }
}

Dose at_end(Dose dose, End end) {
  take_end(dose.amount, end);
  for (plan::Move& move : dose.moves) take_end(move.amount, end);
  return dose;
}

/// A part, and what its title and role say of it.
struct HallSetting {
  const plan::Session& session;
  const plan::Club& club;
  const plan::HallBook& book;
  const plan::Part& part;
  int groups = 1;
  plan::Timings timings;  ///< the hall's, where neither plan nor club says
  const HallActivity* activity = nullptr;
  /// Whose `begin` and `change` count; null: as of `other`.
  const HallActivity* pauses = nullptr;
  const HallPlace* place = nullptr;
  int gymnasts = kUsualGroup;
  double pace = 1;  ///< under-nines take longer for all that is not counted
};

void hall_timing(plan::Timing& timing, Duration value) {
  if (timing.origin == plan::Timing::Origin::kDefault && value > Duration()) timing.value = value;
}

plan::Timings hall_timings(plan::Timings timings, const plan::HallBook& book) {
  hall_timing(timings.repetition, book.time("rep"));
  hall_timing(timings.step, book.time("step"));
  hall_timing(timings.length, book.time("length"));
  hall_timing(timings.max_hold, book.time("max-hold"));
  hall_timing(timings.rest, book.time("between-sets"));
  return timings;
}

bool kinds_have(const std::vector<plan::DrillKind>& kinds, plan::DrillKind kind) {
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

const HallActivity* hall_activity_of(const plan::Part& part, const plan::HallBook& book) {
  if (const HallActivity* named = activity_in(part.title.text, book)) return named;
  if (part.role == plan::PartRole::kWarmUp) return book.activity("warm-up");
  if (part.role == plan::PartRole::kCoolDown) return book.activity("cool-down");
  return nullptr;
}

// What a line without a dose is about, by its kind or its words.
const HallActivity* own_activity_of(const Drill& drill, const HallSetting& setting) {
  if (const HallActivity* named = activity_at_begin(drill.name.text, setting.book)) return named;
  const plan::DrillKind kind = kind_of(drill);
  for (const HallActivity& one : setting.book.activities) {
    if (kinds_have(one.kinds, kind)) return &one;
  }
  return nullptr;
}

// Where the line's turns are taken: its own words first, then its part's, then what is known of it.
const HallPlace* hall_place_of(const Drill& drill, const HallSetting& setting) {
  using Places = HallActivity::Places;
  if (setting.session.place.value == plan::Place::kHome) return nullptr;
  const Places whose = setting.activity == nullptr ? Places::kOfPart : setting.activity->places;
  if (whose == Places::kNone) return nullptr;
  const HallPlace* place = place_in(drill.name.text, setting.book);
  if (place == nullptr && whose == Places::kOfPart) place = setting.place;
  if (place == nullptr && (whose == Places::kOfPart || !is_inherited(drill, drill.at))) {
    place = place_in(drill.at.text, setting.book);
  }
  if (place == nullptr) return nullptr;
  const plan::DrillKind kind = kind_of(drill);
  const bool in_turns =
      place->only.empty() || kind == plan::DrillKind::kUnknown || kinds_have(place->only, kind);
  return in_turns ? place : nullptr;
}

// What the line says besides its name: cues that came from the library are not of this hall.
std::string said_of(const Drill& drill) {
  std::string out = drill.name.text;
  for (const plan::Note& note : drill.notes) out += ", " + note.words.text;
  for (const plan::Words& cue : drill.cues) {
    if (!is_inherited(drill, cue)) out += ", " + cue.text;
  }
  if (drill.dose) {
    for (const plan::Words& remark : drill.dose->remarks) out += ", " + remark.text;
  }
  return out;
}

int lanes_of(const Drill& drill, const HallPlace& place, const HallSetting& setting) {
  const std::string said = said_of(drill);
  const int n = setting.gymnasts;
  if (const auto written = lanes_in(said, place)) return std::min(*written, n);
  if (const auto written = lanes_in(setting.part.title.text, place)) return std::min(*written, n);
  for (const plan::Station& station : setting.club.stations) {
    if (place_in(station.name.text, setting.book) != &place) continue;
    return std::clamp(station.count.value * std::max(1, station.takes.value), 1, n);
  }
  int lanes = std::clamp((n + place.lane - 1) / place.lane, 1, place.lanes);
  const bool spotted = find_phrase(words_in(said), setting.book.spotted).has_value();
  if (spotted) {
    const int usual = static_cast<int>(setting.book.factor("spotters"));
    const int adults = setting.session.adults ? setting.session.adults->value : usual;
    lanes = std::min(lanes, std::max(1, adults));
  }
  return lanes;
}

/// The goes of one gymnast at a place.
struct Goes {
  std::int64_t count = 1;
  Duration blocked;  ///< of each
  Duration work;     ///< of each, on the place itself
};

Duration pace_of(const Drill& drill, const Dose& dose, const HallSetting& setting) {
  if (dose.tempo) return dose.tempo->total();
  if (dose.pace) return *dose.pace;
  const std::vector<TextWord> words = words_in(drill.name.text);
  for (const auto& [phrase, pace] : setting.book.paces) {
    if (find_phrase(words, {phrase})) return pace;
  }
  const auto known = library_pace(drill);
  const Duration usual = known ? known->value : setting.timings.repetition.value;
  return setting.activity == nullptr ? usual : std::max(usual, setting.activity->rep);
}

// Of one amount: `x5` on the vault are five goes, `x5` of swings is one of five.
Goes goes_of(const Drill& drill, const Dose& dose, const HallPlace& place,
             const HallSetting& setting) {
  const plan::Amount& amount = dose.amount;
  const std::int64_t sides = dose.repeats_per_set();
  const Duration pace = pace_of(drill, dose, setting);
  const std::int64_t n = std::min<std::int64_t>(amount.most_count(), 1000);
  const std::int64_t sets = std::min<std::int64_t>(dose.sets, 1000);
  switch (amount.kind) {
    case AmountKind::kRepetitions: {
      const bool one = find_phrase(words_in(said_of(drill)), setting.book.one_go).has_value();
      const bool each =
          dose.in_goes ||
          (!one && (place.goes == HallPlace::Goes::kEach || pace >= setting.book.time("skill")));
      if (each) return {sets * n * sides, std::max(place.blocked, pace), pace};
      const std::int64_t rungs = std::max<std::int64_t>(1, std::ssize(amount.ladder));
      return {sets * rungs, place.blocked + times(pace, n * sides) / rungs,
              times(pace, n * sides) / rungs};
    }
    case AmountKind::kSteps:
      return {sets * sides, place.blocked + times(setting.timings.step.value, n),
              times(setting.timings.step.value, n)};
    case AmountKind::kLengths: {
      const Duration length = place.length > Duration() ? place.length : place.blocked;
      return {sets * n * sides, length, length};
    }
    case AmountKind::kTime:
    case AmountKind::kMaxHold: {
      const Duration hold = amount.most_time().value_or(setting.timings.max_hold.value);
      const Duration all = times(hold, sides * sets);  // short holds are one go
      const bool together = place.goes == HallPlace::Goes::kTogether;
      if (together && all <= setting.book.time("hold-in-one-go"))
        return {1, place.blocked + all, all};
      return {sets, place.blocked + times(hold, sides), times(hold, sides)};
    }
    case AmountKind::kMoves: {
      const Duration row = set_time(dose, setting.timings);
      return {sets, place.blocked + row, row};
    }
  }
  return {};
}

HallDrill in_hall_turns(const Drill& drill, const Dose& dose, const HallPlace& place,
                        const HallSetting& setting) {
  HallDrill out;
  out.place = place.name;
  out.gymnasts = setting.gymnasts;
  out.lanes = lanes_of(drill, place, setting);
  const std::int64_t queue = (out.gymnasts + out.lanes - 1) / out.lanes;
  Goes goes = goes_of(drill, dose, place, setting);
  goes.count *= drills_listed(drill.name.text, setting.book);
  const Duration blocked = scaled(goes.blocked, setting.pace);
  const Duration round = std::max(times(blocked, queue), place.cycle);
  out.likely = times(round, goes.count);
  out.working = times(goes.work, goes.count);
  out.waiting = std::max(Duration(), out.likely - out.working);
  out.why = fmt::format("{} each, {}, {} a go", counted(goes.count, "go", "goes"),
                        queue == 1 ? "nobody waits" : fmt::format("{} in a queue", queue),
                        exact_text(blocked));
  if (round > times(blocked, queue)) {
    out.why += fmt::format(", {} from one go to the next", exact_text(place.cycle));
  }
  return out;
}

HallDrill all_at_once(const Drill& drill, const Dose& dose, const HallSetting& setting) {
  const DrillTime time = dose_time(dose, setting.timings,
                                   LibraryPace{pace_of(drill, dose, setting), "in a hall", false});
  HallDrill out;
  out.likely = time.work + time.rest;
  out.working = time.work;
  out.why = time.reasoning;
  const std::int64_t listed =
      dose.amount.kind == AmountKind::kMoves ? 1 : drills_listed(drill.name.text, setting.book);
  if (listed > 1) {
    out.likely = times(out.likely, listed);
    out.working = times(out.working, listed);
    out.why = fmt::format("{} drills × ({})", listed, out.why);
  }
  return out;
}

HallDrill of_circuit(const Drill& drill, const HallSetting& setting) {
  plan::Timings timings = setting.timings;
  hall_timing(timings.changeover, setting.book.time("between-stations"));
  const DrillTime time = circuit_time(drill, timings, {});
  HallDrill out;
  const std::string_view told_in = drill.circuit->work ? "station-told" : "move-told";
  const Duration told = times(setting.book.time(told_in), std::ssize(drill.stations));
  out.likely = time.work + time.rest + told;
  out.working = time.work;
  out.why = fmt::format("{} + {} to explain its stations", time.reasoning, exact_text(told));
  return out;
}

// A line without a dose: what its words or its kind are about, and else a remark that is read out.
HallDrill without_dose(const Drill& drill, const HallSetting& setting) {
  HallDrill out;
  const HallActivity* about = own_activity_of(drill, setting);
  const bool alone = plan::drills_of(setting.part).size() == 1;
  const bool known = about != nullptr || kind_of(drill) != plan::DrillKind::kUnknown;
  if (about == nullptr) about = setting.activity;
  if (about == nullptr) about = setting.book.activity("other");
  if (about == nullptr) return out;
  out.about = about;
  out.likely = alone ? about->alone : known ? about->lasts : setting.book.time("remark");
  out.working = out.likely;
  out.why = fmt::format("{}, as {} usually takes", exact_text(out.likely), about->name);
  return out;
}

HallDrill timed(const Drill& drill, const HallSetting& setting, End end) {
  if (drill.circuit) return of_circuit(drill, setting);
  if (!drill.dose) return without_dose(drill, setting);
  const Dose dose = at_end(*drill.dose, end);
  const HallPlace* place = hall_place_of(drill, setting);
  const auto time = dose.amount.most_time();
  if (time && *time >= setting.book.time("shared")) place = nullptr;  // they go round in that time
  return place == nullptr ? all_at_once(drill, dose, setting)
                          : in_hall_turns(drill, dose, *place, setting);
}

Duration change_before(const HallDrill& next, const HallSetting& setting) {
  if (next.about != nullptr) return {};  // nothing is explained
  const plan::Timing& told = setting.timings.changeover;
  if (told.origin != plan::Timing::Origin::kDefault) return told.value;
  if (!next.place.empty()) return setting.book.time("queue-told");
  return setting.pauses == nullptr ? Duration() : setting.pauses->change;
}

HallDrill hall_drill(const Drill& drill, const HallSetting& setting) {
  HallDrill out = timed(drill, setting, End::kMiddle);
  out.drill = &drill;
  out.low = timed(drill, setting, End::kLow).likely;
  out.high = timed(drill, setting, End::kHigh).likely;
  const Duration change = scaled(change_before(out, setting), setting.pace);
  if (change > Duration()) out.why += fmt::format(" + {} to change", exact_text(change));
  out.low += change;
  out.likely += change;
  out.high += change;
  return out;
}

void share_level(HallDrill& one, std::int64_t levels, double least) {
  const double share = least + (1 - least) / static_cast<double>(levels);
  for (Duration* time : {&one.low, &one.likely, &one.high, &one.working, &one.waiting}) {
    *time = scaled(*time, share);
  }
  one.why += fmt::format(", by 1 of {} levels side by side", levels);
}

// Of lines about one thing that have no dose only the first takes its time: `Stamps`, `Home time`.
void share_activities(std::vector<HallDrill>& drills, Duration further) {
  std::vector<const HallActivity*> had;
  for (HallDrill& one : drills) {
    if (one.about == nullptr) continue;
    const bool again = std::find(had.begin(), had.end(), one.about) != had.end();
    had.push_back(one.about);
    if (!again || one.likely <= further) continue;
    one.low = one.likely = one.high = one.working = further;
    one.why = fmt::format("{} more of it", exact_text(further));
  }
}

// Lines for one level each, one behind the other, are done side by side: each counts for its share.
void share_levels(std::vector<HallDrill>& drills, const plan::HallBook& book) {
  for (std::size_t begin = 0; begin < drills.size();) {
    std::vector<std::string> levels;
    std::size_t end = begin;
    for (; end < drills.size(); ++end) {
      const std::string level = level_of(drills[end].drill->name.text, book);
      if (level.empty()) break;
      if (std::find(levels.begin(), levels.end(), level) == levels.end()) levels.push_back(level);
    }
    for (std::size_t i = begin; levels.size() > 1 && i < end; ++i) {
      share_level(drills[i], static_cast<std::int64_t>(levels.size()), book.factor("level-share"));
    }
    begin = std::max(end, begin + 1);
  }
}

// Nobody gathers a group at home: a part begins at once, and its lines follow each other sooner.
void at_home(HallSetting& setting) {
  const plan::PartRole role = setting.part.role;
  const bool flows = role == plan::PartRole::kWarmUp || role == plan::PartRole::kCoolDown;
  setting.pauses = setting.book.activity(flows ? "home-flow" : "home");
  if (setting.activity == nullptr) setting.activity = setting.book.activity("home");
}

HallPart hall_part(const HallSetting& setting) {
  HallPart out;
  const HallActivity* about = setting.activity;
  if (about == nullptr) about = setting.book.activity("other");
  const Duration begin =
      setting.pauses == nullptr ? Duration() : scaled(setting.pauses->begin, setting.pace);
  Duration low = begin;
  Duration high = begin;
  out.likely = begin;
  for (const Drill* drill : plan::drills_of(setting.part)) {
    out.drills.push_back(hall_drill(*drill, setting));
  }
  share_levels(out.drills, setting.book);
  share_activities(out.drills, setting.book.time("further"));
  for (const HallDrill& one : out.drills) {
    low += one.low;
    high += one.high;
    out.likely += one.likely;
    out.working += one.working;
    out.waiting += one.waiting;
    if (one.lanes > 0) out.lanes = out.lanes == 0 ? one.lanes : std::min(out.lanes, one.lanes);
  }
  if (out.drills.empty() && about != nullptr) out.likely = low = high = begin + about->alone;
  out.low = scaled(low, setting.book.factor("low"));
  out.high = scaled(high, setting.book.factor("high"));
  out.why = fmt::format("{} to begin and {} for its lines", exact_text(begin),
                        exact_text(out.likely - begin));
  return out;
}

}  // namespace

std::vector<HallPart> hall_times(const plan::Session& session, const plan::Club& club,
                                 const plan::HallBook& book) {
  std::vector<HallPart> out;
  out.reserve(session.parts.size());
  const int gymnasts = std::max(1, session.gymnast_count().value_or(kUsualGroup));
  const int groups = groups_in(session, gymnasts, book);
  const double pace = is_young(session, book) ? book.factor("young") : 1;
  for (const plan::Part& part : session.parts) {
    HallSetting setting{session, club, book, part, groups, hall_timings(session.timings, book)};
    setting.pace = pace;
    setting.activity = hall_activity_of(part, book);
    if (session.place.value == plan::Place::kHome) {
      at_home(setting);
    } else {
      setting.pauses = setting.activity == nullptr ? book.activity("other") : setting.activity;
    }
    setting.place = place_in(part.title.text, book);
    setting.gymnasts = setting.place != nullptr ? (gymnasts + groups - 1) / groups : gymnasts;
    if (part.gymnasts) setting.gymnasts = std::max(1, *part.gymnasts);
    out.push_back(hall_part(setting));
  }
  return out;
}

}  // namespace chalkleaf::reason
