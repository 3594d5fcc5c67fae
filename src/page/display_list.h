// The finished pages: items at fixed positions, each with its place in the structure tree.
//
// What `page` makes and `pdf` writes. Nothing is measured after this; y runs down.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/colour.h"
#include "base/geometry.h"
#include "type/fonts.h"

namespace chalkleaf::page {

/// The standard structure types of ISO 32000-1, 14.8.4, that our sheets use.
enum class Role {
  kDocument,
  kSect,
  kDiv,
  kP,
  kH1,
  kH2,
  kH3,
  kList,
  kListItem,
  kLabel,
  kListBody,
  kTable,
  kTableHead,
  kTableBody,
  kTableRow,
  kHeaderCell,
  kDataCell,
  kFigure,
  kSpan,
  kForm,
  kBlockQuote,
  kNote,
  kLink,
};

/// What a header cell heads (ISO 32000-1, table 349).
enum class HeaderScope { kNone, kColumn, kRow };

/// A node of the structure tree. A node has either children or marks on pages, never both.
struct Node {
  Role role = Role::kDocument;
  std::uint32_t parent = 0;  ///< index in DisplayList::tree; the root (0) is its own parent
  HeaderScope scope = HeaderScope::kNone;
  int column_span = 1;
  int row_span = 1;
  bool ordered = false;          ///< kList: numbered (ListNumbering Decimal)
  std::string alternative_text;  ///< kFigure: required
  std::string actual_text;       ///< read instead of the marks, when not empty
  std::string language;          ///< BCP 47, when it differs from the document's
  std::string box_description;   ///< kForm: what a tick box stands for (PrintField, role check box)
  bool write_in = false;         ///< kForm: a field to write in (role text value), no box to tick
  std::string web_address;       ///< kLink: required, an absolute URI in ASCII (RFC 3986)
};
using NodeId = std::uint32_t;

/// Marks that are not content: ruling lines, backgrounds, running heads and feet, repeated table
/// heads.
enum class Artifact { kLayout, kBackground, kHeader, kFooter };

/// Whether a mark belongs to a node or is an artifact.
struct Owner {
  std::optional<NodeId> node;
  Artifact artifact = Artifact::kLayout;
  static Owner of(NodeId id) { return {id, Artifact::kLayout}; }
  static Owner none(Artifact kind) { return {std::nullopt, kind}; }
  bool operator==(const Owner&) const = default;
};

/// Glyphs of one face on one baseline.
struct TextItem {
  Owner owner;
  type::FaceId face = 0;
  Length size;
  Colour colour;
  Point baseline;  ///< of the first glyph
  std::string text;
  std::vector<type::Glyph> glyphs;
};

struct PathStep {
  enum class Kind { kMove, kLine, kCurve, kClose };
  Kind kind = Kind::kMove;
  Point a;  ///< end point; first control point of a curve
  Point b;  ///< second control point of a curve
  Point c;  ///< end point of a curve
};

struct Stroke {
  Colour colour;
  Length width;
  bool round = false;          ///< round caps and joins
  std::vector<Length> dashes;  ///< on, off, …; empty: solid
};

struct PathItem {
  Owner owner;
  std::vector<PathStep> steps;
  std::optional<Colour> fill;
  std::optional<Stroke> stroke;
};

/// A picture's pixels as a PDF holds them: rows from the top, each behind the number of its filter
/// (ISO/IEC 15948, 9), deflated. Made by pdf::packed.
struct PackedPicture {
  int width = 0;
  int height = 0;
  int channels = 1;  ///< 1 grey, 3 red, green and blue; 8 bits each
  std::string data;
};

/// A picture that fills a box.
struct PictureItem {
  Owner owner;
  Rect place;
  std::string source;  ///< names the picture to whoever supplies its pixels; not printed
  std::shared_ptr<const PackedPicture> pixels = {};  ///< not there before they are supplied
};

/// A drawing in a space of its own, (0, 0) at its top left: made once, shown in many places and
/// documents. Its paths have no owners; where it is shown it belongs to the item's.
class Artwork {
 public:
  Artwork(Size size, std::vector<PathItem> paths) : size_(size), paths_(std::move(paths)) {}
  Size size() const { return size_; }
  const std::vector<PathItem>& paths() const { return paths_; }

 private:
  Size size_;
  std::vector<PathItem> paths_;
};

/// An artwork that fills a box.
struct ArtItem {
  Owner owner;
  Rect place;
  std::shared_ptr<const Artwork> art;  ///< never null
};

using Item = std::variant<TextItem, PathItem, PictureItem, ArtItem>;

inline const Owner& owner_of(const Item& item) {
  return std::visit([](const auto& any) -> const Owner& { return any.owner; }, item);
}
inline Owner& owner_of(Item& item) {
  return std::visit([](auto& any) -> Owner& { return any.owner; }, item);
}

struct Page {
  Size size;
  std::vector<Item> items;  ///< in reading order: the order they are painted in
};

/// An entry of the document outline (bookmarks).
struct OutlineEntry {
  std::string title;
  int level = 1;  ///< 1 for the top
  std::size_t page = 0;
  Length y;
};

/// What the file says of itself.
struct DocumentInfo {
  std::string title;  ///< never empty
  std::string author;
  std::string subject;
  std::string language;                 ///< BCP 47, never empty
  std::string producer;                 ///< the program and its version
  std::optional<std::int64_t> created;  ///< seconds since 1970, UTC
};

struct DisplayList {
  DocumentInfo info;
  std::vector<Page> pages;
  std::vector<Node> tree;  ///< [0] is the Document node; parents come before their children;
                           ///< siblings in reading order
  std::vector<OutlineEntry> outline;
};

}  // namespace chalkleaf::page
