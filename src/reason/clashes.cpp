// See the header.
#include "reason/clashes.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/text.h"
#include "reason/check_parts.h"
#include "reason/group_week.h"
#include "reason/kit_words.h"

namespace chalkleaf::reason {
namespace {

void add(std::vector<Want>& out, Want want) {
  for (Want& other : out) {
    if (other.kind != want.kind || lower_ascii(other.name) != lower_ascii(want.name)) continue;
    if (want.from > other.until || other.from > want.until) continue;
    other.from = std::min(other.from, want.from);  // parts behind each other are one stay
    other.until = std::max(other.until, want.until);
    other.count = std::max(other.count, want.count);
    return;
  }
  out.push_back(std::move(want));
}

void add_drill(const plan::Drill& drill, const Want& when, std::vector<Want>& out) {
  Want want = when;
  if (!drill.at.empty()) {
    want.kind = Want::Kind::kStation;
    want.name = drill.at.text;
    add(out, want);
  }
  for (const plan::KitUse& use : drill.uses) {
    want.kind = Want::Kind::kKit;
    want.name = use.kit.text;
    const auto share = share_in(use.how.text);
    want.count = share ? share->needed_by(when.count) : 1;
    add(out, want);
  }
  for (const plan::Drill& station : drill.stations) add_drill(station, when, out);
}

// Of the club's things as many as there are; nothing when it does not count them.
std::optional<std::int64_t> there_are(const Want& want, const plan::Club& club) {
  if (want.kind == Want::Kind::kCoach) return 1;
  if (want.kind == Want::Kind::kStation) {
    const plan::Station* station = club.station(want.name);
    if (station == nullptr || station->takes.value <= 0) return std::nullopt;
    return std::int64_t{station->count.value} * station->takes.value;
  }
  const plan::StockItem* item = club.stock(want.name);
  if (item == nullptr || !item->count) return std::nullopt;
  return item->count->value;
}

// What both call by other words (`beam`, `beams`) is one thing where the club has it.
std::string key_of(const Want& want, const plan::Club& club) {
  if (want.kind == Want::Kind::kStation) {
    if (const auto* station = club.station(want.name)) return station->name.text;
  } else if (want.kind == Want::Kind::kKit) {
    if (const auto* item = club.stock(want.name)) return item->name.text;
  }
  return lower_ascii(want.name);
}

// The days of each plan within the weeks that any dated plan is in; where none is dated, one week.
std::map<Date, std::vector<const WeekSession*>> by_day(const std::vector<WeekSession>& plans) {
  constexpr std::int64_t kWeek = 7;
  std::set<Date> mondays;
  for (const WeekSession& plan : plans) {
    if (!plan.when.date) continue;
    const std::int64_t day = days_since_epoch(*plan.when.date);
    for (const std::int64_t each : {day, plan.when.repeat.empty() ? day : day + kWeek - 1})
      mondays.insert(
          date_from_days(each - static_cast<std::int64_t>(weekday(date_from_days(each)))));
  }
  if (mondays.empty()) mondays.insert(Date{2024, 1, 1});  // a Monday
  std::map<Date, std::vector<const WeekSession*>> out;
  for (const WeekSession& plan : plans) {
    if (plan.wants.empty()) continue;
    for (const Date monday : mondays) {
      for (const Date day : days_in_week(plan.when, monday)) out[day].push_back(&plan);
    }
  }
  return out;
}

void find_between(const WeekSession& first, const WeekSession& second, Date day,
                  const plan::Club& club, std::vector<Clash>& out) {
  for (const Want& a : first.wants) {
    const auto there = there_are(a, club);
    if (!there) continue;
    for (const Want& b : second.wants) {
      if (a.kind != b.kind || key_of(a, club) != key_of(b, club)) continue;
      const Duration from = std::max(a.from, b.from);
      const Duration until = std::min(a.until, b.until);
      // More than there are is said of each plan by itself.
      const std::int64_t wanted = std::min(a.count, *there) + std::min(b.count, *there);
      if (from >= until || wanted <= *there) continue;
      out.push_back({&first, &second, day, a.kind, key_of(a, club), from, until, wanted, *there});
    }
  }
}

std::string clock(Duration since_midnight) { return clock_text(TimeOfDay{since_midnight}); }

}  // namespace

std::vector<Want> wants_of(const plan::Session& session, const Timetable& timetable) {
  std::vector<Want> out;
  if (session.place.value != plan::Place::kGym || !timetable.start) return out;
  const Duration begin = timetable.start->since_midnight;
  const auto gymnasts = std::max(1, session.gymnast_count().value_or(1));
  for (const PartTime& part : timetable.parts) {
    // A station is in use by one group or the other while the rotation lasts.
    const bool station = part.part->station_of && *part.part->station_of < timetable.parts.size();
    const PartTime& stay = station ? timetable.parts[*part.part->station_of] : part;
    const Want when{Want::Kind::kStation,
                    {},
                    begin + stay.start,
                    begin + stay.start + stay.length,
                    part.part->gymnasts.value_or(gymnasts)};
    for (const plan::Drill* drill : plan::drills_of(*part.part)) add_drill(*drill, when, out);
    const rota::Rotation* rotation = timetable.rotation_of(*part.part);
    if (rotation == nullptr) continue;
    for (const rota::Coach& coach : rotation->coaches)
      add(out, {Want::Kind::kCoach, coach.name.text, when.from, when.until, 1});
  }
  return out;
}

std::vector<Clash> clashes(const std::vector<WeekSession>& plans, const plan::Club& club) {
  std::vector<Clash> out;
  for (const auto& [day, there] : by_day(plans)) {
    for (std::size_t i = 0; i < there.size(); ++i) {
      for (std::size_t j = i + 1; j < there.size(); ++j)
        find_between(*there[i], *there[j], day, club, out);
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const Clash& a, const Clash& b) {
    return std::tie(a.day, a.from) < std::tie(b.day, b.from);
  });
  return out;
}

std::string clash_text(const Clash& clash) {
  std::string out =
      fmt::format("{}{} from {} to {}", clash.kind == Want::Kind::kCoach ? "" : "the ", clash.name,
                  clock(clash.from), clock(clash.until));
  if (clash.kind != Want::Kind::kCoach)
    out += fmt::format(" ({} wanted, {} there)", clash.wanted, clash.there);
  return out;
}

void check_clashes(const std::vector<WeekSession>& plans, const plan::Club& club,
                   Diagnostics& diagnostics) {
  std::map<std::pair<const WeekSession*, const WeekSession*>, std::vector<Clash>> pairs;
  for (Clash& clash : clashes(plans, club))
    pairs[{clash.first, clash.second}].push_back(std::move(clash));
  // In the order of the plans, not of where they lie in memory.
  for (const WeekSession& first : plans) {
    for (const WeekSession& second : plans) {
      const auto found = pairs.find({&first, &second});
      if (found == pairs.end()) continue;
      std::vector<std::string> things;
      for (const Clash& clash : found->second) {
        if (clash.day != found->second.front().day) break;  // the same again on other days
        things.push_back(clash_text(clash));
      }
      constexpr std::size_t kShown = 4;
      if (things.size() > kShown) {
        const std::size_t more = things.size() - kShown;
        things.resize(kShown);
        things.push_back(fmt::format("{} more", more));
      }
      Diagnostic out{Severity::kWarning, "hall-clash", second.title.span,
                     fmt::format("on {} this session and {} want the same of the hall: {}",
                                 iso_text(found->second.front().day), quoted(first.title.text),
                                 join_list(things))};
      out.labels.push_back({first.title.span, "the other session"});
      out.hint = "let one of them begin later, or do that part at another time or place";
      diagnostics.add(std::move(out));
    }
  }
}

}  // namespace chalkleaf::reason
