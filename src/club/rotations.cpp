// See the header.
#include "club/rotations.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/table_row.h"
#include "reason/rotations.h"
#include "rota/around.h"
#include "rota/notation.h"
#include "rota/read.h"

namespace chalkleaf::club {
namespace {

std::string rule_name(const rota::Rotation& rotation, std::size_t rule) {
  return rule < rotation.rules.size() ? "‘" + rotation.rules[rule].text + "’"
                                      : std::string("that all go the same way round");
}

void tell_of_one(const rota::Rotation& rotation, const rota::Proposal& proposal,
                 Diagnostics& diagnostics) {
  using Outcome = rota::Proposal::Outcome;
  if (proposal.outcome != Outcome::kFound) {
    Diagnostic none{Severity::kWarning, "rota-rule", rotation.heading.span, ""};
    if (proposal.outcome == Outcome::kNotFound) {
      none.message = "no grid was found for this rotation, and none was ruled out";
      none.hint = "write the grid as a table, or take out what is hardest to keep";
    } else if (proposal.conflict.empty()) {
      none.message = "there is no grid for this rotation: " + proposal.why;
      none.hint = "change the groups, the stations or the number of turns";
    } else {
      std::vector<std::string> names;
      for (const std::size_t rule : proposal.conflict) names.push_back(rule_name(rotation, rule));
      none.span = rotation.rules[proposal.conflict.back()].span;
      none.message = fmt::format("there is no grid that keeps {}", join_list(names));
      for (std::size_t i = 0; i + 1 < proposal.conflict.size(); ++i)
        none.labels.push_back({rotation.rules[proposal.conflict[i]].span, "together with this"});
      none.hint = proposal.conflict.size() == 1 ? "take it out, or make it a ‘wish:’"
                                                : "take one of them out, or make it a ‘wish:’";
    }
    diagnostics.add(std::move(none));
    return;
  }
  for (const rota::GivenUp& one : proposal.given_up) {
    const bool written = one.rule < rotation.rules.size();
    std::vector<std::string> names;
    for (const std::size_t rule : one.against) names.push_back(rule_name(rotation, rule));
    Diagnostic note{
        Severity::kNote, "rota-rule",
        written ? rotation.rules[one.rule].span : rotation.heading.span,
        fmt::format("the proposed grid does not keep {}", rule_name(rotation, one.rule))};
    if (one.undecided) {
      note.message += ", and whether one could was not found out";
    } else if (names.empty()) {
      note.message += ": no grid can";
    } else {
      note.message += fmt::format(": not with {}", join_list(names));
    }
    note.hint = "nothing has to be done; write a wish further up to have it kept first";
    diagnostics.add(std::move(note));
  }
}

// Where the table goes: behind the last line of the notation below the heading, before what comes
// then.
std::uint32_t place_of(const Source& source, const rota::Rotation& rotation) {
  std::uint32_t out = rotation.heading.span.end;
  std::uint32_t number = source.line_column(out).line + 1;
  for (; number <= source.line_count(); ++number) {
    const std::string_view line = trim(source.line(number));
    if (line.starts_with('#') || line.starts_with('|')) break;
    if (!line.empty() && !line.starts_with("- ") && !line.starts_with("* ")) break;
    if (!line.empty())
      out = source.line_start(number) + static_cast<std::uint32_t>(source.line(number).size());
  }
  return out;
}

std::string table_text(const rota::Rotation& rotation) {
  std::string out;
  bool head = true;
  for (const auto& row : rota::table_of(rotation)) {
    for (const rota::Piece& piece : row) out += piece.text.empty() ? "| " : "| " + piece.text + " ";
    out += "|\n";
    if (!head) continue;
    for (std::size_t i = 0; i < row.size(); ++i) out += "|---";
    out += "|\n";
    head = false;
  }
  return out;
}

bool is_proposed(const rota::Rotation& rotation) {
  return rotation.form == rota::Rotation::Form::kNone && !rotation.visits.empty();
}

}  // namespace

PlanRotations rotations_in(const SourcePtr& source, const ClubTools& club) {
  PlanRotations out;
  if (!club.rota) return out;
  out.all = rota::read(*source, *club.rota);
  out.proposals.resize(out.all.size());
  return out;
}

void propose_missing(PlanRotations& rotations, plan::Session& session, const ClubTools& club) {
  if (rotations.all.empty()) return;
  const std::vector<reason::Seat> seats = reason::seat_rotations(session, rotations.all);
  const reason::Timetable times = reason::timetable(session, club.club, club.hall.get());
  for (const reason::Seat& seat : seats) {
    rota::Rotation& rotation = rotations.all[seat.rotation];
    if (session.parts[seat.part].station_of || rotation.turns.empty()) continue;
    if (!rotation.turns.front().clock && times.start) {
      const Duration begin = times.start->since_midnight + times.parts[seat.part].start;
      rotation.turns.front().clock = static_cast<int>(begin.rounded_minutes());
      rota::fill_clocks(rotation);
    }
  }
  for (std::size_t i = 0; i < rotations.all.size(); ++i) {
    rota::Rotation& rotation = rotations.all[i];
    if (rotation.form != rota::Rotation::Form::kNone) continue;
    rota::Proposal& proposal = rotations.proposals[i];
    proposal = rota::propose(rotation);
    if (proposal.outcome == rota::Proposal::Outcome::kFound) rotation = proposal.rotation;
  }
}

void add_grids(plan::Session& session, const std::vector<reason::Seat>& seats,
               const PlanRotations& rotations) {
  for (const reason::Seat& seat : seats) {
    const rota::Rotation& rotation = rotations.all[seat.rotation];
    if (seat.station || session.parts[seat.part].station_of || !is_proposed(rotation)) continue;
    bool head = true;
    for (const auto& row : rota::table_of(rotation)) {
      std::vector<std::string> cells;
      for (const rota::Piece& piece : row) cells.push_back(piece.text);
      session.parts[seat.part].steps.emplace_back(plan::table_row(
          cells, head ? plan::RowKind::kHead : plan::RowKind::kBody, rotation.heading.span));
      head = false;
    }
  }
}

void tell_of_proposals(const PlanRotations& rotations, Diagnostics& diagnostics) {
  for (std::size_t i = 0; i < rotations.all.size(); ++i) {
    if (rotations.all[i].form == rota::Rotation::Form::kNone)
      tell_of_one(rotations.all[i], rotations.proposals[i], diagnostics);
  }
}

std::string with_grids(const Source& source, const PlanRotations& rotations) {
  std::string out(source.text());
  // From the last to the first, so that places stay what they are.
  for (std::size_t i = rotations.all.size(); i-- > 0;) {
    const rota::Rotation& rotation = rotations.all[i];
    if (!is_proposed(rotation)) continue;
    const std::uint32_t at = place_of(source, rotation);
    out.insert(at, "\n\n" + table_text(rotation));
    // One empty line behind it, whatever stood there.
    const std::size_t end = at + 2 + table_text(rotation).size();
    if (end < out.size() && out[end] == '\n' && end + 1 < out.size() && out[end + 1] == '\n')
      out.erase(end, 1);
  }
  return out;
}

}  // namespace chalkleaf::club
