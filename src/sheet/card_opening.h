// The head of the coach card: who and when, the safety box, the kit. Internal to the room.
#pragma once

#include "sheet/builder.h"

namespace chalkleaf::sheet {

/// Everything above the first part.
page::Section card_opening(const plan::Session& session, const reason::Timetable& timetable,
                           Builder& builder);

}  // namespace chalkleaf::sheet
