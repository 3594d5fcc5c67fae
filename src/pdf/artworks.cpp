#include "pdf/artworks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/hash.h"
#include "pdf/deflate.h"
#include "pdf/paths.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

// What is outside BBox is cut off, so it holds all of the paths, wherever the drawing says its
// edges are. With y up: left, bottom, right, top.
std::array<Length, 4> bounds(const page::Artwork& art) {
  std::array<Length, 4> out{{{}, {}, art.size().width, art.size().height}};
  for (const page::PathItem& path : art.paths()) {
    const Length edge = path.stroke ? path.stroke->width : Length();
    for (const page::PathStep& step : path.steps) {
      if (step.kind == page::PathStep::Kind::kClose) continue;
      // The control points of anything but a curve are all at the origin, which is inside.
      for (const Point p : {step.a, step.b, step.c}) {
        const Length y = art.size().height - p.y;
        out[0] = std::min(out[0], p.x - edge);
        out[1] = std::min(out[1], y - edge);
        out[2] = std::max(out[2], p.x + edge);
        out[3] = std::max(out[3], y + edge);
      }
    }
  }
  return out;
}

// What stands between `stream` and `endstream`, deflated.
std::string content(const page::Artwork& art) {
  std::string out;
  PathWriter paths(out, art.size().height, PathWriter::Begins::kUnknown, PathWriter::Unit::kTenth);
  for (const page::PathItem& path : art.paths()) {
    const bool shown = !path.steps.empty() && (path.fill || path.stroke);
    if (shown) paths.write(path);
  }
  return deflated(out);
}

}  // namespace

// Two artworks are one when they are written alike, wherever they are kept.
ArtworkTable ArtworkTable::collect(const page::DisplayList& list, Kept& kept) {
  ArtworkTable out;
  std::map<Hash128, std::string> known;
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const auto* shown = std::get_if<page::ArtItem>(&item);
      if (shown == nullptr || out.names_.count(shown->art.get()) > 0) continue;
      const page::Artwork* art = shown->art.get();
      const std::string& bytes = kept.bytes(shown->art, [&] { return content(*art); });
      const Hash128 hash = hash128(fmt::format("{} {} ", art->size().width.in_millipoints(),
                                               art->size().height.in_millipoints()) +
                                   bytes);
      const auto [found, is_new] =
          known.try_emplace(hash, fmt::format("A{}", out.in_order_.size()));
      if (is_new) out.in_order_.push_back({art, &bytes});
      out.names_[art] = found->second;
    }
  }
  return out;
}

std::string ArtworkTable::write(Objects& objects) const {
  std::string out;
  for (const auto& [art, bytes] : in_order_) {
    std::string entries = "/Type /XObject\n/Subtype /Form\n/Filter /FlateDecode\n/BBox [";
    for (const Length edge : bounds(*art)) {
      append_length(entries, edge * 10);
      entries.push_back(' ');
    }
    entries.back() = ']';
    entries += "\n/Matrix [.1 0 0 .1 0 0]";
    // Nothing but paths: an empty dictionary says that no resources of the page are meant.
    entries += "\n/Resources <<>>\n";
    const ObjectId object = objects.add_stream(std::move(entries), *bytes, Packing::kPlain);
    out += fmt::format("/{} {} ", names_.at(art), reference(object));
  }
  return out;
}

}  // namespace chalkleaf::pdf
