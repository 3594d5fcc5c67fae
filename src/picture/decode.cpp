#include "picture/decode.h"

#include "picture/formats.h"

namespace chalkleaf::picture {
namespace {

// Drawings are often saved in colour without having any: a third of the bytes tells the same.
void drop_needless_colour(Picture& picture) {
  if (picture.channels != 3) return;
  std::string& pixels = picture.pixels;
  for (std::size_t i = 0; i < pixels.size(); i += 3) {
    if (pixels[i] != pixels[i + 1] || pixels[i] != pixels[i + 2]) return;
  }
  for (std::size_t i = 0; i * 3 < pixels.size(); ++i) pixels[i] = pixels[i * 3];
  pixels.resize(pixels.size() / 3);
  picture.channels = 1;
}

}  // namespace

tl::expected<Picture, Problem> decode(std::string_view bytes) {
  if (bytes.size() > kMostBytes) return tl::unexpected(too_many_bytes());
  tl::expected<Picture, Problem> out;
  switch (format_of(bytes)) {
    case Format::kPng:
      out = read_png(bytes);
      break;
    case Format::kJpeg:
      out = read_jpeg(bytes);
      break;
    case Format::kOther:
      return tl::unexpected(not_ours(bytes));
  }
  if (out) drop_needless_colour(*out);
  return out;
}

}  // namespace chalkleaf::picture
