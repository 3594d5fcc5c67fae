// Several plans in one file: the week of each group on a page, or their cards as a booklet.
//
// All plans are of one club. No clock: without a date asked for, the week is that of the newest
// session in the gym, so that the same plans make the same file on any day. Tested by
// tests/sheet/week_sheet_test.cpp and tests/together.py.
#pragma once

#include <optional>
#include <string>

#include "base/date.h"
#include "club/build.h"

namespace chalkleaf::club {

struct TogetherRequest {
  Request base;                      ///< `out` is unused: this makes one file
  std::optional<std::string> group;  ///< only its plans
  std::optional<Date> starting;      ///< only what is on within seven days from here
  std::optional<std::string> file;   ///< `….pdf`; none: week.pdf or booklet.pdf
};

struct Together {
  Summary summary;
  std::string path;           ///< as the user names it; empty: nothing was written
  std::size_t sessions = 0;   ///< plans that are in it
  std::size_t pages = 0;      ///< groups' pages, or the booklet's without blank ones
  std::size_t sheets = 0;     ///< of paper, of a booklet
  std::size_t undated = 0;    ///< plans that were left out because they are on no day
  std::optional<Date> first;  ///< of the week shown
};

/// `week`: a page for each group, what it does and when.
Together make_week(const TogetherRequest& request, const Surroundings& surroundings,
                   Listener& listener);
/// `booklet`: a cover and the coach cards, two pages on each side of a sheet, to print on both
/// sides, fold and staple.
Together make_booklet(const TogetherRequest& request, const Surroundings& surroundings,
                      Listener& listener);

}  // namespace chalkleaf::club
