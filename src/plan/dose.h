// The model's doses: the grammar has a room of its own, and its names are this room's too.
#pragma once

#include "dose/dose.h"

namespace chalkleaf::plan {
using namespace dose;  // `plan::Dose` is `dose::Dose`
}  // namespace chalkleaf::plan
