// A display list becomes the bytes of a tagged PDF 1.7.
//
// libharu keeps the objects, the cross-reference table and the file; text operators, fonts,
// structure and metadata are written by us. Deterministic: the same list gives the same bytes on
// every machine. Tested by tests/pdf/.
#pragma once

#include <string>
#include <tl/expected.hpp>

#include "page/display_list.h"
#include "type/fonts.h"

namespace chalkleaf::pdf {

struct WriteError {
  std::string message;
};

/// Thread-safe: each call has a document of its own.
tl::expected<std::string, WriteError> write(const page::DisplayList& list,
                                            const type::Fonts& fonts);

}  // namespace chalkleaf::pdf
