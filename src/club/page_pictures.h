// Pictures of a PDF's pages, as another program renders them.
//
// Poppler's `pdftoppm` (Debian: poppler-utils) draws what the printed page will look like, from the
// finished bytes and not from what we meant; it runs as a process of its own, so that neither its
// licence nor its memory is ours. Tested by tests/club/page_pictures_test.cpp and tests/proof.py.
#pragma once

#include <cstddef>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace chalkleaf::club {

/// Dots an inch a picture may have: above, a page is more pixels than anyone looks at.
inline constexpr int kFewestDots = 20;
inline constexpr int kMostDots = 600;

/// One PNG for each of the PDF's `pages`, `dots` an inch. Otherwise what is wrong, in words: the
/// program is not installed, or could not read the file in time. May be called from any thread.
tl::expected<std::vector<std::string>, std::string> page_pictures(const std::string& pdf,
                                                                  std::size_t pages, int dots);

}  // namespace chalkleaf::club
