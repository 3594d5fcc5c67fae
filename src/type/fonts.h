// Fonts: read once, shared read-only by every worker.
//
// A catalogue (made from fonts/catalogue.yaml by `club`) names roles such as `text` and `display`;
// each role has a chain of families, the first that has a character sets it. HarfBuzz stays inside
// this room. Tested by tests/type/fonts_test.cpp.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "base/files.h"
#include "base/geometry.h"

namespace chalkleaf::type {

/// The index of a face in Fonts. Stable for one catalogue.
using FaceId = std::uint16_t;
/// The index of a style (role, weight, slant) in Fonts: a chain of faces.
using StyleId = std::uint16_t;

enum class Weight { kRegular, kBold };
enum class Slant { kUpright, kItalic };

/// One font file of the catalogue.
struct FaceSpec {
  std::string family;   ///< for messages and the licence list
  std::string path;     ///< absolute
  std::string licence;  ///< SPDX identifier
};
/// A role's fonts: per style (index = weight * 2 + slant) the faces to try, in order.
struct RoleSpec {
  std::string name;
  std::array<std::vector<FaceId>, 4> chains;
};
struct Catalogue {
  std::vector<FaceSpec> faces;
  std::vector<RoleSpec> roles;
};

/// Why a font cannot be used.
struct FontError {
  std::string path;
  std::string message;
};

/// One glyph as shaped, in font units (`Face::units_per_em`).
struct Glyph {
  std::uint16_t id = 0;
  std::int32_t advance = 0;
  std::int32_t dx = 0;
  std::int32_t dy = 0;        ///< up positive, as fonts have it
  std::uint32_t cluster = 0;  ///< byte offset, in the run's text, of the characters it stands for
};

/// The glyphs of a face that a document uses, as a font of its own.
struct Subset {
  std::string bytes;  ///< a TrueType file, or a bare CFF table
  bool is_cff = false;
  std::vector<std::uint16_t> new_ids;  ///< parallel to the ids asked for
};

/// A subset of what most texts in Latin letters are set with, cut once and shared by all documents
/// of a run that need nothing else.
struct SharedSubset {
  std::vector<std::uint16_t> glyphs;  ///< of the face, ascending, without 0
  Subset subset;                      ///< of these
};

class FaceData;  // HarfBuzz's side of a face

/// One font, immutable once opened; safe to share between threads.
class Face {
 public:
  explicit Face(std::unique_ptr<FaceData> data);
  ~Face();
  std::uint32_t units_per_em() const;
  /// In font units: above and below (negative) the baseline, capital and x height.
  std::int32_t ascender() const;
  std::int32_t descender() const;
  std::int32_t cap_height() const;
  std::int32_t x_height() const;
  bool has(char32_t code) const;
  std::int32_t advance(std::uint16_t glyph) const;
  /// PostScript name, reduced to what a PDF name may hold.
  const std::string& postscript_name() const;
  const std::string& family() const;
  /// x_min, y_min, x_max, y_max of the whole font, in font units.
  std::array<std::int32_t, 4> bounds() const;
  std::int32_t italic_angle() const;
  /// The subset with glyph 0 and the given glyphs (ascending, without 0). Nothing when the font
  /// refuses. The first few are cut from the file; after that the face is preprocessed once to make
  /// the rest fast.
  tl::expected<Subset, FontError> subset(const std::vector<std::uint16_t>& glyphs) const;
  /// Null when the font refuses.
  const SharedSubset* shared_subset() const;
  const FaceData& data() const { return *data_; }

 private:
  std::unique_ptr<FaceData> data_;
};

/// All fonts of a catalogue; a file is opened when a face is first asked for. Thread-safe.
class Fonts {
 public:
  /// Does not open anything yet. `files` must outlive it.
  Fonts(Catalogue catalogue, const FileSystem& files);
  ~Fonts();
  Fonts(const Fonts&) = delete;
  Fonts& operator=(const Fonts&) = delete;

  /// Opens every font that is the first of a chain; the errors of those that cannot be.
  std::vector<FontError> open_primary() const;
  /// The style of a role, or an error in words naming the roles there are.
  tl::expected<StyleId, std::string> style(std::string_view role, Weight weight, Slant slant) const;
  /// The faces of a style, first choice first; never empty.
  const std::vector<FaceId>& chain(StyleId style) const;
  /// Null when the file cannot be opened.
  const Face* face(FaceId id) const;
  const Catalogue& catalogue() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace chalkleaf::type
