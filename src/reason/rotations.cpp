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

struct StationPart {
  std::size_t part = 0;
  std::optional<std::size_t> station = {};
};

// The parts below the grid that are its stations, up to the first that is none. Lunch may stand
// between the grid and its stations; one part alone further down, such as `Beam jumps` after a
// grid with beams, is what comes later.
std::vector<StationPart> station_parts(const plan::Session& session, const rota::Rotation& rotation,
                                       std::size_t home) {
  std::vector<StationPart> out;
  for (std::size_t i = home + 1; i < session.parts.size(); ++i) {
    const plan::Part& part = session.parts[i];
    const auto title = std::find_if(
        rotation.titles.begin(), rotation.titles.end(),
        [&](const auto& one) { return part.title.span && one.line == line_of(part.title.span); });
    const bool named = title != rotation.titles.end();
    if (!named && part.station_of != home) {
      if (!out.empty()) break;
      continue;
    }
    out.push_back({i, named ? std::optional(title->station) : std::nullopt});
  }
  const bool far = !out.empty() && out.front().part > home + 1 &&
                   session.parts[out.front().part].station_of != home;
  if (far && out.size() == 1) out.clear();
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
    for (const StationPart& one : station_parts(session, rotation, *home)) {
      plan::Part& station = session.parts[one.part];
      station.station_of = home;
      station.gymnasts = largest_group(rotation);
      out.push_back({one.part, r, one.station});
      if (!station.budget && shortest_turn(rotation) > 0)
        station.budget =
            plan::Sourced<Duration>{Duration::minutes(shortest_turn(rotation)), station.title.span};
    }
  }
  return out;
}

}  // namespace chalkleaf::reason
