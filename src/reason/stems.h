// English words without their endings: `swinging` and `swings` are `swing`. Inside the room.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf::reason {

/// The stem of a lower-case word by the Snowball project's English stemmer; the same word when
/// there is none. Not a word to show: both sides of a comparison go through it.
std::string stem(std::string_view word);

}  // namespace chalkleaf::reason
