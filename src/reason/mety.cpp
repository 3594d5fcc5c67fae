// See the header.
#include "reason/mety.h"

#include <algorithm>
#include <array>

#include "plan/library.h"

namespace chalkleaf::reason {
namespace {

constexpr std::array<int, 5> kBandEdges{6, 10, 13, 16, 19};
constexpr double kModerate = 3.0;

/// METy at 6-9, 10-12, 13-15, 16-18 years.
struct YouthRow {
  std::string_view code;
  std::array<double, 4> bands;
};
constexpr std::array<YouthRow, 8> kYouth{{
    {"10260X", {6.9, 7.1, 7.2, 7.4}},  // rope skipping
    {"60140X", {6.8, 7.4, 7.9, 8.4}},  // jogging at one's own pace
    {"85100X", {3.0, 3.0, 2.9, 2.9}},  // hand weights
    {"30200X", {4.0, 4.1, 4.1, 4.2}},  // calisthenics, light
    {"30300X", {3.9, 4.0, 4.0, 4.1}},  // strength with the body's weight
    {"40100X", {3.6, 4.1, 4.5, 4.8}},  // dance
    {"80180X", {3.3, 3.5, 3.6, 3.7}},  // walking, 2.5 miles an hour
    {"60240X", {7.2, 8.0, 8.6, 9.3}},  // running, 5 miles an hour
}};

/// Ainsworth et al. 2011, Med Sci Sports Exerc 43(8):1575-1581. That the two are alike is our
/// judgement.
struct Relation {
  std::string_view adult;
  std::string_view youth;
};
constexpr std::array<Relation, 3> kRelations{{
    {"12025", "60140X"},  // jogging in place
    {"02022", "30300X"},  // calisthenics, moderate
    {"02024", "30200X"},  // calisthenics, light
}};

std::optional<std::size_t> band_of(int age) {
  if (age < kBandEdges.front() || age >= kBandEdges.back()) return std::nullopt;
  const auto above = std::upper_bound(kBandEdges.begin(), kBandEdges.end(), age);
  return static_cast<std::size_t>(above - kBandEdges.begin()) - 1;
}

void add_activity(const DrillTime& time, std::int64_t rounds, int age, Activity& out) {
  const plan::Drill& drill = *time.drill;
  if (drill.circuit) {
    for (const DrillTime& station : time.stations)
      add_activity(station, rounds * drill.circuit->rounds, age, out);
    return;
  }
  if (drill.known == nullptr || drill.known->mets.empty()) return;
  const auto value = mety(drill.known->mets.text, age);
  if (!value) return;
  const auto work = static_cast<double>(time.work.in_milliseconds()) * static_cast<double>(rounds);
  constexpr double kMostMs = 1e12;
  const Duration whole = Duration::milliseconds(static_cast<std::int64_t>(std::min(work, kMostMs)));
  out.mety_minutes += *value * static_cast<double>(whole.in_milliseconds()) / 60'000;
  out.counted += whole;
  if (*value >= kModerate) out.moderate += whole;
}

}  // namespace

std::optional<double> mety(std::string_view code, int age) {
  const auto band = band_of(age);
  if (!band) return std::nullopt;
  for (const Relation& one : kRelations) {
    if (one.adult == code) code = one.youth;
  }
  for (const YouthRow& row : kYouth) {
    if (row.code == code) return row.bands[*band];
  }
  return std::nullopt;
}

std::optional<Activity> activity_of(const plan::Session& session, const Timetable& timetable) {
  const auto& group = session.group;
  if (!group || !group->youngest) return std::nullopt;
  Activity out;
  for (const PartTime& part : timetable.parts) {
    for (const DrillTime& time : part.drills) add_activity(time, 1, group->youngest->value, out);
  }
  return out.counted > Duration() ? std::optional(out) : std::nullopt;
}

}  // namespace chalkleaf::reason
