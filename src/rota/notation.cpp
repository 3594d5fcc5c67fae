// See the header.
#include "rota/notation.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"

namespace chalkleaf::rota {
namespace {

// Who or what stands in one cell.
Piece cell(const Rotation& all, std::size_t turn, std::size_t column) {
  const bool groups_inside = all.cells == Rotation::Cells::kGroups;
  Piece out;
  for (const Visit& visit : all.visits) {
    if (visit.turn != turn || (groups_inside ? visit.station : visit.group) != column) continue;
    const Name& name =
        groups_inside ? all.groups[visit.group].name : all.stations[visit.station].name;
    if (!out.text.empty()) out.text += " + ";
    // As typed, slips and all; what was typed is what is judged.
    const std::string_view typed = visit.span.text();
    out.text += typed.empty() ? std::string_view(name.text) : typed;
    out.span = out.span.joined(visit.span);
  }
  for (const Rest& rest : all.rests) {
    if (groups_inside || rest.turn != turn || rest.group != column || !out.text.empty()) continue;
    out.text = rest.span ? std::string(rest.span.text()) : "rest";
    out.span = rest.span;
  }
  return out;
}

// A name that no other cell has stands where it was typed; its column is not kept, so it takes the
// first free.
void put_strangers(const Rotation& all, std::size_t turn, std::vector<Piece>& row) {
  for (const Stranger& one : all.strangers) {
    if (one.turn != turn) continue;
    const auto free =
        std::find_if(row.begin() + 1, row.end(), [](const Piece& p) { return p.text.empty(); });
    if (free != row.end()) *free = {one.text, one.span};
  }
}

Piece name_of(const Name& name) {
  return {name.text, name.span && name.span.text() == name.text ? name.span : Span()};
}

}  // namespace

std::string turns_text(const Rotation& all) {
  if (all.turns.empty() || all.turns.front().minutes == 0) return {};
  const int first = all.turns.front().minutes;
  const bool even = std::all_of(all.turns.begin(), all.turns.end(),
                                [&](const Turn& one) { return one.minutes == first; });
  std::string out;
  if (even) {
    out = fmt::format("{} x {} min", all.turns.size(), first);
  } else {
    for (const Turn& turn : all.turns)
      out += (out.empty() ? "" : ", ") + std::to_string(turn.minutes);
    out += " min";
  }
  if (all.move > 0) out += fmt::format(", {} min to move", all.move);
  return "(" + out + ")";
}

std::vector<std::vector<Piece>> table_of(const Rotation& all) {
  const bool groups_inside = all.cells == Rotation::Cells::kGroups;
  const std::size_t columns = groups_inside ? all.stations.size() : all.groups.size();
  std::vector<std::vector<Piece>> out;
  std::vector<Piece> head{{all.halls.size() < 2 ? all.corner : "", {}}};
  for (std::size_t c = 0; c < columns; ++c)
    head.push_back(name_of(groups_inside ? all.stations[c].name : all.groups[c].name));
  out.push_back(std::move(head));
  for (std::size_t t = 0; t < all.turns.size(); ++t) {
    for (const Pause& pause : all.pauses) {
      if (pause.before != t || t == 0) continue;
      std::vector<Piece> row(columns + 1);
      if (pause.clock) row[0].text = written_clock(all, *pause.clock);
      const std::string_view typed = pause.span.text();
      const bool exact = typed.find(pause.words) != std::string_view::npos;
      row[1] = {pause.words, exact ? pause.span : Span()};
      const bool counted = pause.words.find_first_of("0123456789") != std::string::npos;
      if (!pause.clock && pause.minutes > 0 && !counted)
        row[1] = {fmt::format("{}, {} min", pause.words, pause.minutes), {}};
      out.push_back(std::move(row));
    }
    const Turn& turn = all.turns[t];
    std::vector<Piece> row(columns + 1);
    if (turn.span) {
      row[0] = {std::string(turn.span.text()), turn.span};
    } else if (turn.clock) {
      row[0].text = written_clock(all, *turn.clock);
    } else {
      row[0].text = std::to_string(t + 1);
    }
    for (std::size_t c = 0; c < columns; ++c) row[c + 1] = cell(all, t, c);
    put_strangers(all, t, row);
    out.push_back(std::move(row));
  }
  return out;
}

const Pause* pause_behind(const Rotation& all) {
  const auto found = std::find_if(all.pauses.begin(), all.pauses.end(),
                                  [&](const Pause& one) { return one.before >= all.turns.size(); });
  return found == all.pauses.end() ? nullptr : &*found;
}

std::string written_clock(const Rotation& all, int minutes) {
  const auto labelled = std::find_if(all.turns.begin(), all.turns.end(),
                                     [](const Turn& one) { return one.span && one.clock; });
  if (labelled == all.turns.end()) return fmt::format("{}:{:02}", minutes / 60 % 24, minutes % 60);
  const std::string_view typed = labelled->span.text();
  const bool half = labelled->clock.value_or(0) >= 13 * 60 &&
                    !typed.starts_with(std::to_string(*labelled->clock / 60));
  const char sign = typed.find(':') != std::string_view::npos ? ':' : '.';
  const int hour = minutes / 60 % 24;
  return fmt::format("{}{}{:02}", half && hour > 12 ? hour - 12 : hour, sign, minutes % 60);
}

}  // namespace chalkleaf::rota
