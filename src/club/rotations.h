// The rotations of a plan: as they are written, and where no grid is, as one is proposed.
//
// Internal to the room. Tested by tests/cases/rotation-proposed and
// tests/cases/rotation-impossible.
#pragma once

#include <vector>

#include "club/compile.h"
#include "rota/model.h"
#include "rota/propose.h"

namespace chalkleaf::club {

struct PlanRotations {
  std::vector<rota::Rotation> all;  ///< those without a grid have the proposed visits
  /// Of each of them what was given up for it, or why there is none; empty where a grid is written.
  std::vector<rota::Proposal> proposals;
};

/// Nothing without words.
PlanRotations rotations_in(const SourcePtr& source, const ClubTools& club);

/// Proposes a grid where none is written, from the clock at which its part begins. Marks the
/// session's parts as reason::seat_rotations does.
void propose_missing(PlanRotations& rotations, plan::Session& session, const ClubTools& club);

/// Puts proposed grids into the parts they belong to, where a written one would stand.
void add_grids(plan::Session& session, const std::vector<reason::Seat>& seats,
               const PlanRotations& rotations);

/// Says what the proposals gave up, and which musts cannot be kept together (`rota-rule`).
void tell_of_proposals(const PlanRotations& rotations, Diagnostics& diagnostics);

/// The plan with its proposed grids written in; the same text where none is missing.
std::string with_grids(const Source& source, const PlanRotations& rotations);

}  // namespace chalkleaf::club
