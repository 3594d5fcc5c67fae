// Which way up a photo is: EXIF's orientation (CIPA DC-008-2019, 4.5 and 4.6.4 A, tag 0x0112),
// read by ourselves because nothing else of EXIF is wanted. Only for this room.
// Tested by tests/picture/orientation_test.cpp.
#pragma once

#include <string_view>

#include "picture/decode.h"

namespace chalkleaf::picture {

/// 1 to 8 as EXIF counts them; 1, upright, when the JPEG does not say or says nonsense.
int orientation_of(std::string_view jpeg);
/// Turns and mirrors the picture so that it is upright.
Picture upright(Picture picture, int orientation);

}  // namespace chalkleaf::picture
