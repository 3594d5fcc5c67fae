// Averages of areas, against sums done another way.
#include "picture/shrink.h"

#include <catch2/catch.hpp>
#include <random>

#include "picture/samples.h"
#include "support/shell.h"

using namespace chalkleaf::picture;

namespace {

// The definition itself, slowly: each new pixel is cut into from × from little squares.
Picture slowly(const Picture& from, int width, int height) {
  Picture out{width, height, from.channels, {}};
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      for (int c = 0; c < from.channels; ++c) {
        long long sum = 0;
        for (int v = 0; v < from.height; ++v) {
          for (int u = 0; u < from.width; ++u) {
            const int old_y = (y * from.height + v) / height;
            const int old_x = (x * from.width + u) / width;
            sum += static_cast<unsigned char>(from.pixels[static_cast<std::size_t>(
                (old_y * from.width + old_x) * from.channels + c)]);
          }
        }
        const long long area = static_cast<long long>(from.width) * from.height;
        out.pixels.push_back(static_cast<char>((2 * sum + area) / (2 * area)));
      }
    }
  }
  return out;
}

}  // namespace

TEST_CASE("each new pixel is the exact average of what it covers") {
  std::mt19937 random(7);
  for (const int channels : {1, 3}) {
    for (const auto& [width, height] : {std::pair{13, 7}, {16, 16}, {1, 9}, {9, 1}, {29, 31}}) {
      Picture from{width, height, channels, {}};
      from.pixels.resize(static_cast<std::size_t>(width * height * channels));
      for (char& value : from.pixels) value = static_cast<char>(random());
      for (const auto& [w, h] : {std::pair{1, 1}, {5, 3}, {8, 8}, {12, 6}, {29, 2}}) {
        const int to_w = std::min(w, width);
        const int to_h = std::min(h, height);
        INFO(width << "x" << height << " to " << to_w << "x" << to_h);
        const Picture out = shrunk(from, w, h);
        CHECK(out.width == to_w);
        CHECK(out.height == to_h);
        CHECK(difference(out, slowly(from, to_w, to_h)) == 0);
      }
    }
  }
}

TEST_CASE("by a whole number it is netpbm's and Pillow's reduction too") {
  // Pillow's Image.reduce averages whole boxes; it may round a half the other way.
  const Picture from = read_pnm(sample_folder() / "jpeg-colour.pnm");
  const Picture fitting{60, 44, 3, [&] {
                          std::string rows;
                          for (std::size_t y = 0; y < 44; ++y)
                            rows += from.pixels.substr(y * 61 * 3, 60 * 3);
                          return rows;
                        }()};
  const std::string path = sample_folder() / "fitting.pnm";
  std::ofstream(path, std::ios::binary) << pnm(fitting);
  const auto ran =
      chalkleaf::support::run("/usr/bin/python3 -c \"from PIL import Image; Image.open('" + path +
                              "').reduce(4).save('" + path + ".small.ppm')\" 2>&1");
  REQUIRE(ran.output.empty());
  CHECK(difference(shrunk(fitting, 15, 11), read_pnm(path + ".small.ppm")) <= 1);
}

TEST_CASE("a picture is shrunk to fit and keeps its shape, and is never enlarged") {
  const auto fitted = [](int width, int height, int into_width, int into_height) {
    const Picture out =
        shrunk_into({width, height, 1, std::string(static_cast<std::size_t>(width * height), 'x')},
                    into_width, into_height);
    CHECK(out.pixels == std::string(static_cast<std::size_t>(out.width * out.height), 'x'));
    return std::pair(out.width, out.height);
  };
  CHECK(fitted(400, 200, 100, 100) == std::pair(100, 50));
  CHECK(fitted(200, 400, 100, 100) == std::pair(50, 100));
  CHECK(fitted(1000, 1, 100, 100) == std::pair(100, 1));
  CHECK(fitted(301, 100, 100, 100) == std::pair(100, 34));
  CHECK(fitted(50, 40, 100, 100) == std::pair(50, 40));
}
