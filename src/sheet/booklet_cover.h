// The first page of a booklet of cards: whose, when, and where each session begins.
// Tested by tests/sheet/week_sheet_test.cpp.
#pragma once

#include <string>
#include <vector>

#include "sheet/sheets.h"

namespace chalkleaf::sheet {

/// A session of the booklet and the page its card begins on.
struct BookletSession {
  const plan::Session* session = nullptr;
  std::size_t page = 0;
};

/// Pages in front of the cards; as many for the same sessions, whatever their page numbers.
/// `title` and `about` say what the booklet is of. `sessions` is not empty.
page::DisplayList booklet_cover(const std::string& title, const std::string& about,
                                const std::vector<BookletSession>& sessions, const Context& context,
                                type::Typesetter& typesetter, Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
