// The manual of the checks by subject; check_list.cpp puts them in order. Inside the room.
#pragma once

#include <vector>

#include "reason/checks.h"

namespace chalkleaf::reason {

inline constexpr auto kError = Severity::kError;
inline constexpr auto kWarning = Severity::kWarning;
inline constexpr std::string_view kCommonPractice = "Common practice, no source.";
inline constexpr std::string_view kOurs = "A rule of Chalkleaf's own.";

/// Order, time and choices.
std::vector<CheckInfo> session_checks();
/// Groups that go from station to station.
std::vector<CheckInfo> rotation_checks();
/// What a body should and should not do, and who looks after it.
std::vector<CheckInfo> body_checks();
/// What endangers a child in the coach's own words. Not adjustable.
std::vector<CheckInfo> danger_checks();
/// Kit, the library, what a home has.
std::vector<CheckInfo> kit_checks();
/// Poses, and the names of figures.
std::vector<CheckInfo> figure_list_checks();
/// What cannot be read, found or printed. Not adjustable.
std::vector<CheckInfo> writing_checks();

}  // namespace chalkleaf::reason
