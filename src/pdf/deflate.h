// Compression for streams: the zlib format that /FlateDecode reads, through libdeflate. Only for
// this room.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf::pdf {

/// How hard to look for what repeats.
enum class Effort {
  kOften,  ///< what is made anew for each document
  kOnce,   ///< what is made once a run and stands in many
};

/// The same bytes for the same input, whatever thread asks. Empty when there is no memory.
std::string deflated(std::string_view bytes, Effort effort);

}  // namespace chalkleaf::pdf
