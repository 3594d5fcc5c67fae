// See the header.
#include "reason/rotations.h"

#include <algorithm>

namespace chalkleaf::reason {
namespace {

std::optional<std::size_t> part_of(const plan::Session& session, const rota::Rotation& rotation) {
  const Span& at = rotation.heading.span ? rotation.heading.span : rotation.span;
  std::optional<std::size_t> out;
  for (std::size_t i = 0; i < session.parts.size(); ++i) {
    const plan::Part& part = session.parts[i];
    const Span& own = part.title.span ? part.title.span : part.span;
    if (own.source == at.source && own.begin <= std::max(at.end, rotation.span.begin)) out = i;
  }
  return out;
}

std::uint32_t line_of(const Span& span) {
  return span ? span.source->line_column(span.begin).line : 0;
}

int shortest_turn(const rota::Rotation& rotation) {
  int out = 0;
  for (const rota::Turn& turn : rotation.turns) {
    if (turn.minutes > 0 && (out == 0 || turn.minutes < out)) out = turn.minutes;
  }
  return out;
}

std::optional<int> largest_group(const rota::Rotation& rotation) {
  std::optional<int> out;
  for (const rota::Group& group : rotation.groups) {
    if (group.size && (!out || *group.size > *out)) out = group.size;
  }
  return out;
}

}  // namespace

std::vector<Seat> seat_rotations(plan::Session& session,
                                 const std::vector<rota::Rotation>& rotations) {
  std::vector<Seat> out;
  for (std::size_t r = 0; r < rotations.size(); ++r) {
    const rota::Rotation& rotation = rotations[r];
    const auto home = part_of(session, rotation);
    if (!home || session.parts[*home].role != plan::PartRole::kMain) continue;
    plan::Part& part = session.parts[*home];
    out.push_back({*home, r, std::nullopt});
    const Span where = part.title.span ? part.title.span : part.span;
    if (!part.budget && rotation.minutes() > 0)
      part.budget = plan::Sourced<Duration>{Duration::minutes(rotation.minutes()), where};
    bool begun = false;  // lunch may stand between the grid and its stations
    for (std::size_t i = *home + 1; i < session.parts.size(); ++i) {
      plan::Part& station = session.parts[i];
      const auto title =
          std::find_if(rotation.titles.begin(), rotation.titles.end(), [&](const auto& one) {
            return station.title.span && one.line == line_of(station.title.span);
          });
      const bool marked = station.station_of == home;
      const bool own = title != rotation.titles.end() || marked;
      if (!own && begun) break;
      if (!own) continue;
      begun = true;
      station.station_of = home;
      station.gymnasts = largest_group(rotation);
      std::optional<std::size_t> which;
      if (title != rotation.titles.end()) which = title->station;
      out.push_back({i, r, which});
      if (!station.budget && shortest_turn(rotation) > 0)
        station.budget =
            plan::Sourced<Duration>{Duration::minutes(shortest_turn(rotation)), station.title.span};
    }
  }
  return out;
}

}  // namespace chalkleaf::reason
