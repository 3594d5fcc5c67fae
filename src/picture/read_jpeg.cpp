// JPEG (ITU-T T.81) through libjpeg-turbo: grey, YCbCr, RGB, CMYK and YCCK, baseline and
// progressive.
//
// libjpeg leaves by longjmp, as libpng does (see read_png.cpp). A progressive file may repeat its
// whole picture in every scan, so scans are bounded by what they cost. What libjpeg only warns of
// is refused where it means that pixels were made up. Tested by tests/picture/jpeg_test.cpp.
#include <cstdint>
#include <cstdio>  // before jpeglib.h, which needs FILE
//
#include <jerror.h>
#include <jpeglib.h>

#include <csetjmp>

#include "picture/formats.h"
#include "picture/orientation.h"

namespace chalkleaf::picture {
namespace {

// A camera's progressive file has ten scans; T.81 allows thousands.
constexpr int kMostScans = 100;
constexpr std::int64_t kMostScannedPixels = 480'000'000;  // all scans: 20 of the largest picture
// Coefficients of the largest progressive picture: 24 million pixels, 4 channels, 2 bytes.
constexpr long kMostMemory = 256L * 1024 * 1024;

class JpegReader {
 public:
  explicit JpegReader(std::string_view bytes) : bytes_(bytes) {
    cinfo_.err = jpeg_std_error(&errors_);
    errors_.error_exit = on_error;
    errors_.emit_message = on_message;
    errors_.output_message = [](j_common_ptr) {};
    cinfo_.client_data = this;
    progress_.progress_monitor = on_progress;
  }
  ~JpegReader() { jpeg_destroy_decompress(&cinfo_); }
  JpegReader(const JpegReader&) = delete;
  JpegReader& operator=(const JpegReader&) = delete;

  bool begin() {
    if (setjmp(landing_)) return false;  // NOLINT(cert-err52-cpp): libjpeg's way
    jpeg_create_decompress(&cinfo_);
    cinfo_.mem->max_memory_to_use = kMostMemory;
    cinfo_.progress = &progress_;
    jpeg_mem_src(&cinfo_, reinterpret_cast<const unsigned char*>(bytes_.data()),
                 static_cast<unsigned long>(bytes_.size()));
    jpeg_read_header(&cinfo_, TRUE);
    return true;
  }
  std::uint64_t width() const { return cinfo_.image_width; }
  std::uint64_t height() const { return cinfo_.image_height; }

  // To be called once the size is known to be bearable.
  bool start() {
    if (setjmp(landing_)) return false;  // NOLINT(cert-err52-cpp)
    switch (cinfo_.jpeg_color_space) {
      case JCS_GRAYSCALE:
        cinfo_.out_color_space = JCS_GRAYSCALE;
        break;
      case JCS_CMYK:
      case JCS_YCCK:
        cinfo_.out_color_space = JCS_CMYK;
        break;
      default:
        cinfo_.out_color_space = JCS_RGB;
    }
    cinfo_.dct_method = JDCT_ISLOW;  // the exact one, the same on every machine
    cinfo_.do_block_smoothing = FALSE;
    return jpeg_start_decompress(&cinfo_) == TRUE;
  }
  int channels() const { return cinfo_.output_components; }

  bool read_row(unsigned char* row) {
    if (setjmp(landing_)) return false;  // NOLINT(cert-err52-cpp)
    return jpeg_read_scanlines(&cinfo_, &row, 1) == 1;
  }
  bool finish() {
    if (setjmp(landing_)) return false;  // NOLINT(cert-err52-cpp)
    return jpeg_finish_decompress(&cinfo_) == TRUE;
  }

  // Adobe's programs write how much light each ink lets through, others how much ink there is.
  bool inks_are_inverted() const { return cinfo_.saw_Adobe_marker != 0; }

  Problem problem() const {
    switch (code_) {
      case JERR_OUT_OF_MEMORY:
      case JERR_NO_BACKING_STORE:
      case kTooManyScans:
        return {"takes too much work to unpack",
                "save it again as a plain JPEG (not progressive), or as PNG"};
      case JERR_BAD_PRECISION:
      case JERR_SOF_UNSUPPORTED:
      case JERR_CONVERSION_NOTIMPL:
        return {"is a rare kind of JPEG that cannot be printed",
                "save it again as PNG, or as an ordinary JPEG"};
      case JERR_IMAGE_TOO_BIG:  // for libjpeg itself
        return check_size(width(), height()).value_or(damaged());
      case JERR_INPUT_EOF:
      case JERR_INPUT_EMPTY:
      case JERR_NO_IMAGE:
      case JWRN_JPEG_EOF:
        return cut_short();
      default:
        return damaged();
    }
  }

 private:
  static constexpr int kTooManyScans = -1;  // beside libjpeg's own codes

  static JpegReader& self(j_common_ptr cinfo) {
    return *static_cast<JpegReader*>(cinfo->client_data);
  }
  [[noreturn]] static void leave(j_common_ptr cinfo, int code) {
    self(cinfo).code_ = code;
    longjmp(self(cinfo).landing_, 1);  // NOLINT(cert-err52-cpp)
  }
  [[noreturn]] static void on_error(j_common_ptr cinfo) { leave(cinfo, cinfo->err->msg_code); }
  static void on_message(j_common_ptr cinfo, int level) {
    if (level >= 0) return;  // a trace
    switch (cinfo->err->msg_code) {
      case JWRN_ADOBE_XFORM:      // an unknown number, taken as YCbCr
      case JWRN_EXTRANEOUS_DATA:  // filling between two segments
      case JWRN_JFIF_MAJOR:
        return;
      default:
        leave(cinfo, cinfo->err->msg_code);
    }
  }
  static void on_progress(j_common_ptr cinfo) {
    const auto& dec = *reinterpret_cast<j_decompress_ptr>(cinfo);
    const std::int64_t pixels = std::int64_t{dec.image_width} * dec.image_height;
    if (dec.input_scan_number > kMostScans || dec.input_scan_number * pixels > kMostScannedPixels) {
      leave(cinfo, kTooManyScans);
    }
  }

  std::string_view bytes_;
  jpeg_decompress_struct cinfo_{};
  jpeg_error_mgr errors_{};
  jpeg_progress_mgr progress_{};
  std::jmp_buf landing_{};
  int code_ = 0;
};

// Each ink takes its share of the light, and black of all: no profile is applied.
void inks_to_light(const std::string& row, bool inverted, char* to) {
  const auto light = [&](std::size_t at) {
    const unsigned value = static_cast<unsigned char>(row[at]);
    return inverted ? value : 255 - value;
  };
  for (std::size_t from = 0; from < row.size(); from += 4) {
    for (std::size_t c = 0; c < 3; ++c) {
      *to++ = static_cast<char>((light(from + c) * light(from + 3) + 127) / 255);
    }
  }
}

}  // namespace

tl::expected<Picture, Problem> read_jpeg(std::string_view bytes) {
  JpegReader reader(bytes);
  if (!reader.begin()) return tl::unexpected(reader.problem());
  if (auto wrong = check_size(reader.width(), reader.height())) {
    return tl::unexpected(std::move(*wrong));
  }
  if (!reader.start()) return tl::unexpected(reader.problem());
  const int channels = reader.channels();
  if (channels != 1 && channels != 3 && channels != 4) return tl::unexpected(damaged());
  Picture out;
  out.width = static_cast<int>(reader.width());
  out.height = static_cast<int>(reader.height());
  out.channels = channels == 1 ? 1 : 3;
  const auto row_bytes = static_cast<std::size_t>(out.width * out.channels);
  out.pixels.resize(row_bytes * static_cast<std::size_t>(out.height));
  std::string inks(channels == 4 ? static_cast<std::size_t>(out.width) * 4 : 0, '\0');
  for (std::size_t y = 0; y < static_cast<std::size_t>(out.height); ++y) {
    char* const row = out.pixels.data() + y * row_bytes;
    char* const target = inks.empty() ? row : inks.data();
    if (!reader.read_row(reinterpret_cast<unsigned char*>(target))) {
      return tl::unexpected(reader.problem());
    }
    if (!inks.empty()) inks_to_light(inks, reader.inks_are_inverted(), row);
  }
  if (!reader.finish()) return tl::unexpected(reader.problem());
  return upright(std::move(out), orientation_of(bytes));
}

}  // namespace chalkleaf::picture
