// The slip at the foot of a home sheet that a family cuts off and gives back. Internal to the room.
//
// Everything on it is written by hand, and it asks for a number or initials: no child's name is
// printed or kept. Tested by tests/sheet/home_slip_test.cpp.
#pragma once

#include "sheet/builder.h"
#include "sheet/home_days.h"

namespace chalkleaf::sheet {

/// One block, from the line to cut along to its last field.
Block home_slip(const plan::ReturnSlip& slip, const plan::Session& session, const HomeDays& days,
                Builder& builder);

}  // namespace chalkleaf::sheet
