// A QR code (ISO/IEC 18004) of a text, as squares that are dark or light. libqrencode stays in this
// file's .cpp. Internal to the room. Tested by tests/sheet/web_pointer_test.cpp and, read back from
// the printed page by another program, tests/qr.py.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "page/block.h"

namespace chalkleaf::sheet {

/// The symbol without its quiet zone.
struct QrCode {
  int side = 0;            ///< modules: 21 to 177
  std::vector<bool> dark;  ///< row by row from the top
  bool is_dark(int x, int y) const {
    return x >= 0 && y >= 0 && x < side && y < side &&
           dark[static_cast<std::size_t>(y) * static_cast<std::size_t>(side) +
                static_cast<std::size_t>(x)];
  }
};

/// Error correction level M: about 15 % may be smudged. Nothing where the text is too long.
std::optional<QrCode> qr_code(const std::string& text);
/// The quiet zone on each side of the symbol, in modules (ISO/IEC 18004, "quiet zone": 4X).
inline constexpr int kQuietZone = 4;
/// The symbol in its quiet zone, `module` wide each; the outlines of what is dark, so that no seams
/// show between modules.
page::DrawingBlock qr_drawing(const QrCode& code, Length module, page::Owner owner, Colour ink);

}  // namespace chalkleaf::sheet
