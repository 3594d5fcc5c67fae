#include "sheet/qr_code.h"

#include <qrencode.h>

#include <map>
#include <memory>

namespace chalkleaf::sheet {
namespace {

struct Spot {
  int x = 0;
  int y = 0;
  auto operator<=>(const Spot&) const = default;
};

// Every edge between dark and light, with the dark on its right: as many leave a corner as reach
// it, so any walk along them closes.
std::map<Spot, std::vector<Spot>> edges_of(const QrCode& code) {
  std::map<Spot, std::vector<Spot>> out;
  for (int y = 0; y < code.side; ++y) {
    for (int x = 0; x < code.side; ++x) {
      if (!code.is_dark(x, y)) continue;
      if (!code.is_dark(x, y - 1)) out[{x, y}].push_back({x + 1, y});
      if (!code.is_dark(x + 1, y)) out[{x + 1, y}].push_back({x + 1, y + 1});
      if (!code.is_dark(x, y + 1)) out[{x + 1, y + 1}].push_back({x, y + 1});
      if (!code.is_dark(x - 1, y)) out[{x, y + 1}].push_back({x, y});
    }
  }
  return out;
}

}  // namespace

std::optional<QrCode> qr_code(const std::string& text) {
  struct End {
    void operator()(QRcode* code) const { QRcode_free(code); }
  };
  const std::unique_ptr<QRcode, End> made(QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M));
  if (!made) return std::nullopt;
  QrCode out;
  out.side = made->width;
  const auto count = static_cast<std::size_t>(out.side) * static_cast<std::size_t>(out.side);
  for (std::size_t i = 0; i < count; ++i) out.dark.push_back((made->data[i] & 1U) != 0);
  return out;
}

page::DrawingBlock qr_drawing(const QrCode& code, Length module, page::Owner owner, Colour ink) {
  page::DrawingBlock out;
  const Length side = module * (code.side + 2 * kQuietZone);
  out.size = {side, side};
  page::PathItem item;
  item.owner = owner;
  item.fill = ink;
  const auto point = [&](Spot spot) {
    return Point{module * (spot.x + kQuietZone), module * (spot.y + kQuietZone)};
  };
  using Step = page::PathStep::Kind;
  std::map<Spot, std::vector<Spot>> edges = edges_of(code);
  while (!edges.empty()) {
    const Spot start = edges.begin()->first;
    Spot at = start;
    Spot way{};
    do {
      const auto leaving = edges.find(at);
      const Spot next = leaving->second.back();
      leaving->second.pop_back();
      if (leaving->second.empty()) edges.erase(leaving);
      const Spot step{next.x - at.x, next.y - at.y};
      if (at == start && step != way && way == Spot{}) {
        item.steps.push_back({Step::kMove, point(at), {}, {}});
      } else if (step != way) {
        item.steps.push_back({Step::kLine, point(at), {}, {}});
      }
      way = step;
      at = next;
    } while (at != start);
    item.steps.push_back({Step::kClose, {}, {}, {}});
  }
  out.paths.push_back(std::move(item));
  return out;
}

}  // namespace chalkleaf::sheet
