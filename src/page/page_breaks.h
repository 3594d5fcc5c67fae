// Where pages end: the best way through the whole document, not the first that fits.
//
// A document is a row of places; from each, one or more ways lead on to a later one, each a piece
// that is never split (several where a drill can be set in more than one shape). The cheapest way
// through is found by dynamic programming over the pages' beginnings, as M. F. Plass describes for
// pages (Optimal Pagination Techniques for Automatic Typesetting Systems, Stanford 1981) and D. E.
// Knuth and he for lines (Breaking Paragraphs into Lines, 1981). Costs are whole numbers, so every
// machine breaks alike. Only what fits a page is looked at from each beginning: time grows with
// the document's length, not with its square. Tested by tests/page/page_breaks_test.cpp against
// trying all ways.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "base/geometry.h"

namespace chalkleaf::page {

/// A piece, and where it leads.
struct Way {
  std::size_t next = 0;  ///< the place behind it; greater than its own
  Length height;
  Length space_before;          ///< dropped at the top of a page
  bool keep_with_next = false;  ///< no page ends behind it
  std::int64_t dislike = 0;     ///< what choosing it costs, in the unit of Cost::looks
};

struct Place {
  std::vector<Way> ways;     ///< never empty
  Length head;               ///< of what is repeated when a page begins here; zero: nothing
  bool begins_page = false;  ///< nothing stands above it
};

/// What a way through the document costs; less is better, the first difference decides.
struct Cost {
  std::int64_t too_tall = 0;  ///< pieces higher than a page
  std::int64_t parted = 0;    ///< pages that end behind a piece that keeps with the next
  std::int64_t pages = 0;
  std::int64_t looks = 0;  ///< squares of thousandths of a page: empty feet, and dislikes
  auto operator<=>(const Cost&) const = default;
};

struct PlannedPage {
  struct Piece {
    std::size_t place = 0;
    std::size_t way = 0;  ///< index in Place::ways
  };
  std::vector<Piece> pieces;
  bool head = false;  ///< Place::head of its first piece stands above it
  Length height;      ///< of all of it
};

struct PagePlan {
  std::vector<PlannedPage> pages;
  Cost cost;
};

/// The cost of a page that leaves `free` of its height empty. The last page may end anywhere above
/// its middle and more, but not with a box or two.
std::int64_t empty_foot(Length free, Length page_height, bool last);

/// Whether what is repeated at the top is set: not when only without it the piece fits.
bool has_head(const Place& place, const Way& first, Length page_height);

/// The best pages. Never more of them than filling each page in turn would make, unless that parts
/// what belongs together.
PagePlan plan_pages(const std::vector<Place>& places, Length page_height);

}  // namespace chalkleaf::page
