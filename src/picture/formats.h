// Which kind of file it is, by its first bytes, and the readers of the two kinds that can be
// printed. Only for this room. Tested by tests/picture/decode_test.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "picture/decode.h"

namespace chalkleaf::picture {

enum class Format { kPng, kJpeg, kOther };

Format format_of(std::string_view bytes);
/// Names the format of a file that is neither, and what to do about it.
Problem not_ours(std::string_view bytes);

/// The problem of a picture of these sides, if it has one. In 64 bits, because files lie.
std::optional<Problem> check_size(std::uint64_t width, std::uint64_t height);
Problem cut_short();
Problem damaged();

tl::expected<Picture, Problem> read_png(std::string_view bytes);
tl::expected<Picture, Problem> read_jpeg(std::string_view bytes);

}  // namespace chalkleaf::picture
