// Judges a rotation: its written grid, its clock, who is at a station, and what must and should be.
//
// Each finding points at the cell, and where one change mends it, carries the edit. Warnings: a
// grid with a slip prints. The manual of the checks is in reason/check_list_rota.cpp. Tested by
// tests/rota/check_test.cpp.
#pragma once

#include "base/diagnostic.h"
#include "rota/model.h"

namespace chalkleaf::rota {

/// `rota-slip`, `rota-clock`, `rota-full`, `rota-rule`.
void check(const Rotation& rotation, Diagnostics& diagnostics);

/// `17:05`
std::string clock_of(int minutes);

}  // namespace chalkleaf::rota
