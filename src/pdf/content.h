// The operators of one page (ISO 32000-1, 8, 9 and 14.6). Only for this room.
//
// Every mark stands in a marked-content sequence: of the structure node it belongs to, or of an
// artifact. Neighbours of one owner share a sequence. State is set only where it changes. This is
// where y is flipped. Tested by tests/pdf/write_test.cpp and text_test.cpp.
#pragma once

#include <string>

#include "page/display_list.h"
#include "pdf/artworks.h"
#include "pdf/fonts.h"
#include "pdf/pictures.h"
#include "pdf/structure.h"

namespace chalkleaf::pdf {

/// The content stream of page number `page`; its marks are added to `marks`.
std::string page_content(const page::DisplayList& list, std::size_t page, const FontTable& fonts,
                         const PictureTable& pictures, const ArtworkTable& artworks, Marks& marks);

}  // namespace chalkleaf::pdf
