// First bytes: as registered by their makers and as `file` knows them. What coaches have at hand is
// named, so that the hint can say what to do.
#include <fmt/format.h>

#include <array>

#include "picture/formats.h"

namespace chalkleaf::picture {
namespace {

using namespace std::string_view_literals;

constexpr auto kSaveAgain = "save it again as PNG or JPEG"sv;

struct Signature {
  std::size_t at;
  std::string_view bytes;
  std::string_view name;
};

constexpr std::array kOthers = {
    Signature{0, "GIF8"sv, "a GIF"},
    Signature{8, "WEBP"sv, "a WebP picture"},
    Signature{4, "ftyphei"sv, "a HEIC photo"},
    Signature{4, "ftyphev"sv, "a HEIC photo"},
    Signature{4, "ftypmif1"sv, "a HEIC photo"},
    Signature{4, "ftypmsf1"sv, "a HEIC photo"},
    Signature{4, "ftypavif"sv, "an AVIF picture"},
    Signature{4, "ftyp"sv, "a film"},
    Signature{0, "%PDF-"sv, "a PDF"},
    Signature{0, "II*\0"sv, "a TIFF picture"},
    Signature{0, "MM\0*"sv, "a TIFF picture"},
    Signature{0, "BM"sv, "a BMP picture"},
    Signature{0, "8BPS"sv, "a Photoshop file"},
    Signature{0, "\0\0\1\0"sv, "an icon file"},
    Signature{0, "\xFF\x0A"sv, "a JPEG XL picture"},
    Signature{4, "JXL "sv, "a JPEG XL picture"},
    Signature{4, "jP  "sv, "a JPEG 2000 picture"},
    Signature{0, "PK\3\4"sv, "a ZIP archive or an office document"},
};

bool has(std::string_view bytes, const Signature& one) {
  return bytes.size() >= one.at && bytes.substr(one.at).starts_with(one.bytes);
}

}  // namespace

Format format_of(std::string_view bytes) {
  if (bytes.starts_with("\x89PNG\r\n\x1A\n"sv)) return Format::kPng;
  return bytes.starts_with("\xFF\xD8\xFF"sv) ? Format::kJpeg : Format::kOther;
}

Problem not_ours(std::string_view bytes) {
  if (bytes.empty()) return {"is empty", "put the picture there again"};
  if (bytes.starts_with("version https://git-lfs"sv)) {
    return {"is not here yet: this is the note Git LFS leaves in its place",
            "run `git lfs pull` to fetch it"};
  }
  const auto only_ours = [](std::string_view name) {
    return Problem{fmt::format("is {}, and only PNG and JPEG can be printed", name),
                   std::string(kSaveAgain)};
  };
  for (const Signature& one : kOthers) {
    if (has(bytes, one)) return only_ours(one.name);
  }
  const std::string_view begin = bytes.substr(0, 1024);
  if (begin.find("<svg"sv) != std::string_view::npos) return only_ours("an SVG drawing");
  const bool is_page = begin.find("<html"sv) != std::string_view::npos ||
                       begin.find("<!DOCTYPE html"sv) != std::string_view::npos ||
                       begin.find("<!doctype html"sv) != std::string_view::npos;
  if (is_page) {
    return {"is a web page, not a picture",
            "open the page and save the picture itself, as PNG or JPEG"};
  }
  return {"is neither a PNG nor a JPEG", std::string(kSaveAgain)};
}

std::optional<Problem> check_size(std::uint64_t width, std::uint64_t height) {
  // 2500 pixels are the width of an A4 page at 300 dpi.
  constexpr std::uint64_t side = kMostSide;
  if (width <= side && height <= side && width * height <= kMostPixels) return std::nullopt;
  return Problem{fmt::format("is {} × {} pixels; at most {} on a side and {} million in all can be "
                             "printed",
                             width, height, kMostSide, kMostPixels / 1'000'000),
                 "save it smaller: 2500 pixels across fill a page"};
}

Problem too_many_bytes() {
  return {fmt::format("is larger than {} MB", kMostBytes / (1024 * 1024)),
          "save it smaller: 2500 pixels across fill a page"};
}

Problem cut_short() { return {"is cut short: its end is missing", std::string(kSaveAgain)}; }

Problem damaged() {
  return {"is damaged and cannot be shown",
          "open it to see that it is whole, and " + std::string(kSaveAgain)};
}

}  // namespace chalkleaf::picture
