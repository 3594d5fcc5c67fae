#include "pdf/pictures.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>

#include "base/hash.h"
#include "pdf/deflate.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

// ISO/IEC 15948, 9.2: what a byte is expected to be, from those to the left, above, and above left.
enum class Filter { kNone, kSub, kUp, kAverage, kPaeth };

template <Filter kFilter>
int expected_byte(int left, int above, int corner) {
  if constexpr (kFilter == Filter::kNone) return 0;
  if constexpr (kFilter == Filter::kSub) return left;
  if constexpr (kFilter == Filter::kUp) return above;
  if constexpr (kFilter == Filter::kAverage) return (left + above) / 2;
  const int to_left = std::abs(above - corner);
  const int to_above = std::abs(left - corner);
  const int to_corner = std::abs(left + above - 2 * corner);
  if (to_left <= to_above && to_left <= to_corner) return left;
  return to_above <= to_corner ? above : corner;
}

/// A row of pixels, with zeros for what stands before it and, for the first, above it.
struct Row {
  const unsigned char* bytes;
  const unsigned char* above;
  std::size_t size;
  std::size_t channels;
};

// Writes the row behind its filter's number; how far its bytes are from zero in all.
template <Filter kFilter>
std::int64_t write_row(std::string& out, const Row& row) {
  out.resize(row.size + 1);
  out[0] = static_cast<char>(kFilter);
  auto* to = reinterpret_cast<signed char*>(out.data()) + 1;
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < row.size; ++i) {
    const bool first = i < row.channels;
    const int left = first ? 0 : row.bytes[i - row.channels];
    const int corner = first ? 0 : row.above[i - row.channels];
    to[i] =
        static_cast<signed char>(row.bytes[i] - expected_byte<kFilter>(left, row.above[i], corner));
    sum += std::abs(static_cast<int>(to[i]));
  }
  return sum;
}

// 12.8 of the same: of each row the filter that leaves the smallest numbers, which suits photos.
std::string filtered(std::string_view pixels, std::size_t row_bytes, std::size_t channels) {
  constexpr std::array kWrites = {write_row<Filter::kNone>, write_row<Filter::kSub>,
                                  write_row<Filter::kUp>, write_row<Filter::kAverage>,
                                  write_row<Filter::kPaeth>};
  std::string out;
  out.reserve(pixels.size() + pixels.size() / std::max<std::size_t>(row_bytes, 1));
  const std::string nothing_above(row_bytes, '\0');
  std::string tried;
  std::string best;
  const auto* above = reinterpret_cast<const unsigned char*>(nothing_above.data());
  for (std::size_t at = 0; at < pixels.size(); at += row_bytes) {
    const auto* bytes = reinterpret_cast<const unsigned char*>(pixels.data()) + at;
    const Row row{bytes, above, row_bytes, channels};
    std::int64_t least = kWrites.front()(best, row);
    for (std::size_t i = 1; i < kWrites.size(); ++i) {
      const std::int64_t sum = kWrites[i](tried, row);
      if (sum >= least) continue;
      least = sum;
      std::swap(best, tried);
    }
    out += best;
    above = bytes;
  }
  return out;
}

// Unfiltered, which suits drawings of few colours.
std::string unfiltered(std::string_view pixels, std::size_t row_bytes) {
  std::string out;
  for (std::size_t at = 0; at < pixels.size(); at += row_bytes) {
    out.push_back(static_cast<char>(Filter::kNone));
    out += pixels.substr(at, row_bytes);
  }
  return out;
}

}  // namespace

std::optional<page::PackedPicture> packed(int width, int height, int channels,
                                          std::string_view pixels) {
  const auto step = static_cast<std::size_t>(channels);
  const std::size_t row_bytes = static_cast<std::size_t>(width) * step;
  page::PackedPicture out{width, height, channels, deflated(filtered(pixels, row_bytes, step))};
  std::string plain = deflated(unfiltered(pixels, row_bytes));
  if (out.data.empty() || plain.empty()) return std::nullopt;
  if (plain.size() < out.data.size()) out.data = std::move(plain);
  return out;
}

// Two pictures are one when they are equal, wherever they are kept.
tl::expected<PictureTable, WriteError> PictureTable::collect(const page::DisplayList& list) {
  PictureTable out;
  std::map<Hash128, std::string> known;
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const auto* picture = std::get_if<page::PictureItem>(&item);
      if (picture == nullptr) continue;
      const page::PackedPicture* pixels = picture->pixels.get();
      if (pixels == nullptr) return tl::unexpected(WriteError{"a picture has no pixels"});
      if (out.names_.count(pixels) > 0) continue;
      const Hash128 hash = hash128(
          fmt::format("{} {} {} ", pixels->width, pixels->height, pixels->channels) + pixels->data);
      const auto [found, is_new] =
          known.try_emplace(hash, fmt::format("I{}", out.in_order_.size()));
      if (is_new) out.in_order_.push_back(pixels);
      out.names_[pixels] = found->second;
    }
  }
  return out;
}

std::string PictureTable::write(Objects& objects) const {
  std::string out;
  for (const page::PackedPicture* one : in_order_) {
    std::string entries = fmt::format(
        "/Type /XObject\n/Subtype /Image\n/Width {0}\n/Height {1}\n/ColorSpace /{2}\n"
        "/BitsPerComponent 8\n/Filter /FlateDecode\n"
        "/DecodeParms <</Predictor 15 /Colors {3} /BitsPerComponent 8 /Columns {0}>>\n",
        one->width, one->height, one->channels == 3 ? "DeviceRGB" : "DeviceGray", one->channels);
    const ObjectId object = objects.add_stream(std::move(entries), one->data, Packing::kPlain);
    out += fmt::format("/{} {} ", names_.at(one), reference(object));
  }
  return out;
}

}  // namespace chalkleaf::pdf
