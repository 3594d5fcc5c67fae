// The head of the coach card: who and when, the safety box, the kit. Internal to the room.
#pragma once

#include <string>

#include "sheet/builder.h"

namespace chalkleaf::sheet {

/// Everything above the first part. `boxes` says what the boxes are for, where that needs words.
page::Section card_opening(const plan::Session& session, const reason::Timetable& timetable,
                           const std::string& boxes, Builder& builder);

}  // namespace chalkleaf::sheet
