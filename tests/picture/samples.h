// The pictures of make_pictures.py, made once a build, and what must come out of them.
#pragma once

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "picture/decode.h"
#include "support/places.h"

namespace chalkleaf::picture {

inline std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

/// Where make_pictures.py has put them when this was built (CMakeLists.txt).
inline const std::filesystem::path& sample_folder() {
  static const std::filesystem::path folder = support::build_folder() + "/test-files/pictures";
  return folder;
}

/// The samples with this ending (`.png`, `.jpg`), in the order of their names.
inline std::vector<std::filesystem::path> samples(const std::string& ending) {
  std::vector<std::filesystem::path> out;
  for (const auto& entry : std::filesystem::directory_iterator(sample_folder())) {
    if (entry.path().extension() == ending) out.push_back(entry.path());
  }
  std::sort(out.begin(), out.end());
  return out;
}

/// A PNM file (P5 or P6, 8 bits) as a picture.
inline Picture read_pnm(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::string kind;
  int most = 0;
  Picture out;
  in >> kind >> out.width >> out.height >> most;
  REQUIRE(most == 255);
  in.get();
  out.channels = kind == "P6" ? 3 : 1;
  out.pixels.assign(std::istreambuf_iterator<char>(in), {});
  return out;
}

/// The picture as a PNM file, which netpbm and Pillow read.
inline std::string pnm(const Picture& picture) {
  return (picture.channels == 3 ? "P6\n" : "P5\n") + std::to_string(picture.width) + " " +
         std::to_string(picture.height) + "\n255\n" + picture.pixels;
}

/// How far the two are apart where they are furthest; 999 when they are not of one size and kind.
inline int difference(const Picture& a, const Picture& b) {
  if (a.width != b.width || a.height != b.height || a.channels != b.channels ||
      a.pixels.size() != b.pixels.size())
    return 999;
  int most = 0;
  for (std::size_t i = 0; i < a.pixels.size(); ++i) {
    const int apart =
        static_cast<unsigned char>(a.pixels[i]) - static_cast<unsigned char>(b.pixels[i]);
    most = std::max(most, std::abs(apart));
  }
  return most;
}

/// What decode() says: `61 × 45 RGB`, or `is damaged …; save …`.
inline std::string told(std::string_view bytes) {
  const auto out = decode(bytes);
  if (!out) return out.error().message + "; " + out.error().hint;
  return std::to_string(out->width) + " × " + std::to_string(out->height) +
         (out->channels == 3 ? " RGB" : " grey");
}
inline std::string told_of_hostile(const std::string& name) {
  const std::filesystem::path path = sample_folder() / "hostile" / name;
  REQUIRE(std::filesystem::exists(path));
  return told(bytes_of(path));
}

inline const std::string kCutShort =
    "is cut short: its end is missing; save it again as PNG or JPEG";
inline const std::string kDamaged =
    "is damaged and cannot be shown; open it to see that it is whole, and save it again as PNG or "
    "JPEG";

}  // namespace chalkleaf::picture
