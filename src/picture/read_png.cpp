// PNG (ISO/IEC 15948) through libpng's row reader.
//
// libpng leaves with longjmp when it meets a mistake, so each function that calls it sets its own
// landing and holds nothing with a destructor. Chunks other than those that make pixels (IHDR,
// PLTE, tRNS, IDAT, IEND) are skipped unread: no texts, profiles or thumbnails are unpacked.
// Tested by tests/picture/png_test.cpp.
#include <png.h>

#include <csetjmp>
#include <cstring>
#include <vector>

#include "picture/formats.h"

namespace chalkleaf::picture {
namespace {

class PngReader {
 public:
  explicit PngReader(std::string_view bytes) : bytes_(bytes) {}
  ~PngReader() { png_destroy_read_struct(&png_, &info_, nullptr); }
  PngReader(const PngReader&) = delete;
  PngReader& operator=(const PngReader&) = delete;

  // Leaves the rows' format set: 8 bits, one to four channels.
  bool begin() {
    png_ = png_create_read_struct(PNG_LIBPNG_VER_STRING, this, on_error, on_warning);
    if (png_ == nullptr) return false;
    info_ = png_create_info_struct(png_);
    if (info_ == nullptr) return false;
    if (setjmp(png_jmpbuf(png_))) return false;  // NOLINT(cert-err52-cpp): libpng's way
    png_set_read_fn(png_, this, on_read);
    png_set_user_limits(png_, 0x7FFFFFFF, 0x7FFFFFFF);  // ours speak more clearly
    png_set_chunk_cache_max(png_, 16);
    png_set_chunk_malloc_max(png_, 1024 * 1024);
    png_set_keep_unknown_chunks(png_, PNG_HANDLE_CHUNK_NEVER, nullptr, -1);
    png_read_info(png_, info_);
    png_set_expand(png_);    // palettes, fewer than 8 bits, a transparent colour
    png_set_scale_16(png_);  // to the nearest of 8 bits
    passes_ = png_set_interlace_handling(png_);
    return true;
  }
  std::uint64_t width() const { return png_get_image_width(png_, info_); }
  std::uint64_t height() const { return png_get_image_height(png_, info_); }

  // To be called once the size is known to be bearable.
  bool settle() {
    if (setjmp(png_jmpbuf(png_))) return false;  // NOLINT(cert-err52-cpp)
    png_read_update_info(png_, info_);
    return true;
  }
  std::size_t row_bytes() const { return png_get_rowbytes(png_, info_); }
  int channels() const { return png_get_channels(png_, info_); }
  int bit_depth() const { return png_get_bit_depth(png_, info_); }

  bool read_into(png_bytep pixels) {
    if (setjmp(png_jmpbuf(png_))) return false;  // NOLINT(cert-err52-cpp)
    const std::size_t rows = png_get_image_height(png_, info_);
    for (int pass = 0; pass < passes_; ++pass) {
      for (std::size_t y = 0; y < rows; ++y) {
        png_read_row(png_, pixels + y * row_bytes(), nullptr);
      }
    }
    png_read_end(png_, nullptr);
    return true;
  }

  Problem problem() const { return ended_ ? cut_short() : damaged(); }

 private:
  static void on_read(png_structp png, png_bytep to, std::size_t count) {
    auto& reader = *static_cast<PngReader*>(png_get_io_ptr(png));
    if (reader.bytes_.size() - reader.at_ < count) {
      reader.ended_ = true;
      png_error(png, "");
    }
    std::memcpy(to, reader.bytes_.data() + reader.at_, count);
    reader.at_ += count;
  }
  [[noreturn]] static void on_error(png_structp png, png_const_charp) { png_longjmp(png, 1); }
  static void on_warning(png_structp, png_const_charp) {}

  std::string_view bytes_;
  std::size_t at_ = 0;
  bool ended_ = false;
  int passes_ = 1;
  png_structp png_ = nullptr;
  png_infop info_ = nullptr;
};

// What shines through is paper. In place: a pixel never grows.
void lay_on_white(Picture& picture, int channels) {
  const int colours = channels - 1;
  std::string& pixels = picture.pixels;
  std::size_t to = 0;
  for (std::size_t from = 0; from < pixels.size(); from += static_cast<std::size_t>(channels)) {
    const unsigned alpha =
        static_cast<unsigned char>(pixels[from + static_cast<unsigned>(colours)]);
    for (int c = 0; c < colours; ++c) {
      const unsigned value = static_cast<unsigned char>(pixels[from + static_cast<unsigned>(c)]);
      pixels[to++] = static_cast<char>((value * alpha + 255 * (255 - alpha) + 127) / 255);
    }
  }
  pixels.resize(to);
}

}  // namespace

tl::expected<Picture, Problem> read_png(std::string_view bytes) {
  PngReader reader(bytes);
  if (!reader.begin()) return tl::unexpected(reader.problem());
  if (auto wrong = check_size(reader.width(), reader.height())) {
    return tl::unexpected(std::move(*wrong));
  }
  if (!reader.settle()) return tl::unexpected(reader.problem());
  const int channels = reader.channels();
  Picture out;
  out.width = static_cast<int>(reader.width());
  out.height = static_cast<int>(reader.height());
  const std::size_t expected = static_cast<std::size_t>(out.width * channels);
  if (channels < 1 || channels > 4 || reader.bit_depth() != 8 || reader.row_bytes() != expected) {
    return tl::unexpected(damaged());
  }
  out.pixels.resize(expected * static_cast<std::size_t>(out.height));
  if (!reader.read_into(reinterpret_cast<png_bytep>(out.pixels.data()))) {
    return tl::unexpected(reader.problem());
  }
  const bool see_through = channels == 2 || channels == 4;
  out.channels = see_through ? channels - 1 : channels;
  if (see_through) lay_on_white(out, channels);
  return out;
}

}  // namespace chalkleaf::picture
