// A group's week on one page: when, what, what to set out, and what is practised at home.
// Tested by tests/sheet/week_sheet_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "sheet/sheets.h"

namespace chalkleaf::sheet {

/// A plan of the week with the days it is on (reason/week.h), at least one.
struct WeekPlan {
  const plan::Session* session = nullptr;
  const reason::Timetable* timetable = nullptr;
  std::vector<Date> days;
};

struct GroupWeek {
  std::string name;                    ///< empty: plans that name no group
  const plan::Group* group = nullptr;  ///< the club's of that name, if any
  std::vector<WeekPlan> plans;
};

/// A page for each group, the seven days from `first`; more pages where a week does not fit one at
/// the smallest size. `groups` is not empty.
page::DisplayList week_sheet(const std::vector<GroupWeek>& groups, Date first,
                             const Context& context, type::Typesetter& typesetter,
                             Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
