// The fonts of one document: which glyphs it uses of each face, the subset cut for them, and the
// objects that embed it (ISO 32000-1, 9.7: a Type0 font with Identity-H). Only for this room.
//
// Character codes are the glyph numbers of the subset, so a code needs no table to be drawn, and
// /ToUnicode says what it reads as. Widths are whole thousandths: some readers round them anyway,
// and then every letter after it would be off. Tested by tests/pdf/text_test.cpp.
#pragma once

#include <map>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "page/display_list.h"
#include "pdf/kept.h"
#include "pdf/objects.h"
#include "pdf/write.h"
#include "type/fonts.h"

namespace chalkleaf::pdf {

/// One glyph of one face, as this document uses it.
struct GlyphUse {
  std::uint16_t glyph = 0;  ///< in the face
  std::uint16_t code = 0;   ///< in the subset and in the file
  std::int32_t width = 0;   ///< in thousandths of the em
  std::u16string text;      ///< what the code reads as
};

/// One face, as this document uses it.
struct FaceUse {
  std::string name;  ///< in /Resources: "F0", in the order of first use
  const type::Face* face = nullptr;
  std::vector<GlyphUse> glyphs;                ///< ascending
  std::vector<std::uint16_t> index_of;         ///< by glyph: 1 + its index in `glyphs`, or 0
  type::Subset subset;                         ///< empty when `shared` serves
  const type::SharedSubset* shared = nullptr;  ///< may be none
  const type::Subset& cut() const { return shared != nullptr ? shared->subset : subset; }
  const GlyphUse& use(std::uint16_t glyph) const { return glyphs[index_of[glyph] - 1U]; }
};

class FontTable {
 public:
  /// Looks through the whole list and cuts the subsets.
  static tl::expected<FontTable, WriteError> collect(const page::DisplayList& list,
                                                     const type::Fonts& fonts);
  const FaceUse& face(type::FaceId id) const { return faces_.at(id); }
  /// Adds all fonts to the file; the entries of /Resources.
  std::string write(Objects& objects, Kept& kept) const;

 private:
  std::map<type::FaceId, FaceUse> faces_;
};

}  // namespace chalkleaf::pdf
