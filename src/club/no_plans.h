// What to say to someone whose folder gives no plans: what is there, and what to rename.
//
// A build that makes nothing and says nothing is taken for one that worked. Tested by
// tests/club/no_plans_test.cpp.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "base/files.h"

namespace chalkleaf::club {

inline constexpr std::array<std::string_view, 2> kPlanFolders = {"sessions", "plans"};
inline constexpr std::string_view kPartsFolder = "parts";
inline constexpr std::string_view kDrillsFolder = "drills";
inline constexpr std::string_view kClubFile = "club.yaml";

/// A folder that is looked into: no link, not hidden, not `out` or `private`.
bool is_entered(const FolderEntry& entry);
/// `tuesday.md`, `TUESDAY.MD`, `tuesday.markdown`; no README.
bool is_plan_name(std::string_view name);

/// The name a file should have if it is a plan with a wrong ending: `tuesday.md` for
/// `tuesday.md.txt`, and for `tuesday.txt` when it begins as a plan does.
std::optional<std::string> plan_name_meant(const FileSystem& files, const std::string& path,
                                           const FolderEntry& entry);

/// Why the club folder `root` gives no plans, and what to change: a sentence.
std::string why_no_plans(const FileSystem& files, const std::string& root);
/// Why there is nothing to build for someone who names nothing and stands outside any club: a
/// sentence.
std::string why_no_club(const FileSystem& files, const std::string& standing);

}  // namespace chalkleaf::club
