// Compression for streams: the zlib format that /FlateDecode reads, through libdeflate. Only for
// this room.
#pragma once

#include <string>
#include <string_view>

namespace chalkleaf::pdf {

/// The same bytes for the same input, whatever thread asks. Empty when there is no memory.
std::string deflated(std::string_view bytes);

}  // namespace chalkleaf::pdf
