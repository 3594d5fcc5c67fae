// Fewer pixels for a picture that has more than print can show.
//
// Each new pixel is the average of the area it covers, in whole numbers: exact, and so the same on
// every machine. The stored values are averaged, not the light they stand for, which keeps thin
// dark lines on white as dark as they look. Tested by tests/picture/shrink_test.cpp.
#pragma once

#include "picture/decode.h"

namespace chalkleaf::picture {

/// At most `width` × `height` pixels (both positive); a side that is smaller already stays.
Picture shrunk(Picture picture, int width, int height);
/// Shrinks both sides alike, until the picture fits into `width` × `height`.
Picture shrunk_into(Picture picture, int width, int height);

}  // namespace chalkleaf::picture
