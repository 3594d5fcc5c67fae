// How well a picture can be seen on white paper. Tested by tests/picture/clarity_test.cpp.
#pragma once

#include "picture/decode.h"

namespace chalkleaf::picture {

/// Shares of a picture, 0 to 1.
struct Clarity {
  double marks = 0;  ///< of its pixels that differ from white paper at all
  double clear = 0;  ///< of those marks that stand out from it: 3:1 or more (WCAG 2.2, 1.4.11)
};

/// By luminance, so that what a grey printer makes of it is judged as well.
Clarity clarity_on_white(const Picture& picture);

}  // namespace chalkleaf::picture
