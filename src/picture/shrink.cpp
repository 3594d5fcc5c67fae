#include "picture/shrink.h"

#include <algorithm>
#include <cstdint>
#include <vector>

namespace chalkleaf::picture {
namespace {

// Along one side: in units of which an old pixel has `to` and a new one has `from`, the old pixel
// `index` begins in new pixel `first` and gives it `near` units; what is left goes to the next.
struct Overlap {
  std::size_t first = 0;
  std::uint32_t near = 0;
  std::uint32_t far = 0;
};

Overlap overlap(std::size_t index, std::size_t from, std::size_t to) {
  const std::size_t begin = index * to;
  const std::size_t first = begin / from;
  const std::size_t room = (first + 1) * from - begin;
  const std::size_t near = std::min(to, room);
  return {first, static_cast<std::uint32_t>(near), static_cast<std::uint32_t>(to - near)};
}

/// Gathers rows of the old picture into rows of the new one.
class Shrinker {
 public:
  Shrinker(const Picture& from, int width, int height)
      : from_(from),
        channels_(static_cast<std::size_t>(from.channels)),
        columns_(static_cast<std::size_t>(from.width)),
        row_(static_cast<std::size_t>(width) * channels_),
        sums_(row_.size()),
        next_(row_.size()) {
    out_.width = width;
    out_.height = height;
    out_.channels = from.channels;
    out_.pixels.reserve(row_.size() * static_cast<std::size_t>(height));
    for (std::size_t x = 0; x < columns_; ++x) {
      across_.push_back(overlap(x, columns_, static_cast<std::size_t>(width)));
    }
  }

  Picture run() {
    const auto rows = static_cast<std::size_t>(from_.height);
    for (std::size_t y = 0; y < rows; ++y) {
      gather_row(y);
      const Overlap down = overlap(y, rows, static_cast<std::size_t>(out_.height));
      for (std::size_t i = 0; i < row_.size(); ++i) {
        sums_[i] += std::uint64_t{row_[i]} * down.near;
        next_[i] += std::uint64_t{row_[i]} * down.far;
      }
      const Overlap after = overlap(y + 1, rows, static_cast<std::size_t>(out_.height));
      if (after.first > down.first) finish_row();
    }
    return std::move(out_);
  }

 private:
  void gather_row(std::size_t y) {
    std::fill(row_.begin(), row_.end(), 0U);
    const char* pixel = from_.pixels.data() + y * columns_ * channels_;
    for (std::size_t x = 0; x < columns_; ++x) {
      const Overlap& at = across_[x];
      std::uint32_t* const to = row_.data() + at.first * channels_;
      for (std::size_t c = 0; c < channels_; ++c) {
        const std::uint32_t value = static_cast<unsigned char>(*pixel++);
        to[c] += value * at.near;
        if (at.far > 0) to[channels_ + c] += value * at.far;
      }
    }
  }

  void finish_row() {
    const std::uint64_t area =
        static_cast<std::uint64_t>(from_.width) * static_cast<std::uint64_t>(from_.height);
    for (const std::uint64_t sum : sums_) {
      out_.pixels.push_back(static_cast<char>((sum + area / 2) / area));
    }
    std::swap(sums_, next_);
    std::fill(next_.begin(), next_.end(), 0U);
  }

  const Picture& from_;
  std::size_t channels_;
  std::size_t columns_;
  std::vector<Overlap> across_;
  std::vector<std::uint32_t> row_;
  std::vector<std::uint64_t> sums_;
  std::vector<std::uint64_t> next_;
  Picture out_;
};

}  // namespace

Picture shrunk(Picture picture, int width, int height) {
  width = std::min(width, picture.width);
  height = std::min(height, picture.height);
  if (width == picture.width && height == picture.height) return picture;
  return Shrinker(picture, width, height).run();
}

Picture shrunk_into(Picture picture, int width, int height) {
  if (picture.width <= width && picture.height <= height) return picture;
  const auto w = static_cast<std::int64_t>(picture.width);
  const auto h = static_cast<std::int64_t>(picture.height);
  // The side that is further over decides; the other follows, rounded up.
  if (w * height >= h * width) {
    height = static_cast<int>(std::max<std::int64_t>(1, (h * width + w - 1) / w));
  } else {
    width = static_cast<int>(std::max<std::int64_t>(1, (w * height + h - 1) / h));
  }
  return shrunk(std::move(picture), width, height);
}

}  // namespace chalkleaf::picture
