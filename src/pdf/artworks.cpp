#include "pdf/artworks.h"

#include <fmt/format.h>

#include "base/hash.h"
#include "pdf/deflate.h"
#include "pdf/paths.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

// Lines may reach over the drawing's edge by half their width; what is outside BBox is cut off.
Length widest_line(const page::Artwork& art) {
  Length out;
  for (const page::PathItem& path : art.paths()) {
    if (path.stroke) out = std::max(out, path.stroke->width);
  }
  return out;
}

// What stands between `stream` and `endstream`, deflated.
std::string content(const page::Artwork& art) {
  std::string out;
  PathWriter paths(out, art.size().height, PathWriter::Begins::kUnknown);
  for (const page::PathItem& path : art.paths()) {
    const bool shown = !path.steps.empty() && (path.fill || path.stroke);
    if (shown) paths.write(path);
  }
  return deflated(out);
}

}  // namespace

// Two artworks are one when they are written alike, wherever they are kept.
ArtworkTable ArtworkTable::collect(const page::DisplayList& list) {
  ArtworkTable out;
  std::map<Hash128, std::string> known;
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const auto* shown = std::get_if<page::ArtItem>(&item);
      if (shown == nullptr || out.names_.count(shown->art.get()) > 0) continue;
      const page::Artwork* art = shown->art.get();
      const Hash128 hash = hash128(fmt::format("{} {} ", art->size().width.in_millipoints(),
                                               art->size().height.in_millipoints()) +
                                   art->written(content));
      const auto [found, is_new] =
          known.try_emplace(hash, fmt::format("A{}", out.in_order_.size()));
      if (is_new) out.in_order_.push_back(art);
      out.names_[art] = found->second;
    }
  }
  return out;
}

std::string ArtworkTable::write(Objects& objects) const {
  std::string out;
  for (const page::Artwork* art : in_order_) {
    const Length over = widest_line(*art);
    std::string entries = "/Type /XObject\n/Subtype /Form\n/Filter /FlateDecode\n/BBox [";
    for (const Length edge : {-over, -over, art->size().width + over, art->size().height + over}) {
      append_length(entries, edge);
      entries.push_back(' ');
    }
    entries.back() = ']';
    // Nothing but paths: an empty dictionary says that no resources of the page are meant.
    entries += "\n/Resources <<>>\n";
    const ObjectId object =
        objects.add_stream(std::move(entries), art->written(content), Packing::kPlain);
    out += fmt::format("/{} {} ", names_.at(art), reference(object));
  }
  return out;
}

}  // namespace chalkleaf::pdf
