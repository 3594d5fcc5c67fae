// What the file says of itself, twice in the same words: the information dictionary (ISO 32000-1,
// 14.3.3) and XMP (ISO 16684-1). Only for this room. Tested by tests/pdf/write_test.cpp.
#pragma once

#include "page/display_list.h"
#include "pdf/objects.h"

namespace chalkleaf::pdf {

/// The number of /Info.
ObjectId write_info(const page::DocumentInfo& info, Objects& objects);
/// The number of the catalog's /Metadata; not compressed, so that any program can find it.
ObjectId write_xmp(const page::DocumentInfo& info, Objects& objects);

}  // namespace chalkleaf::pdf
