// Pictures: rows of pixels packed for the file, and the objects that hold them (ISO
// 32000-1, 8.9.5).
//
// Packing is apart from writing, because it costs most and its result can be kept for many
// documents. Each picture stands in the file once, however often it is printed. Tested by
// tests/pdf/pictures_test.cpp.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "page/display_list.h"
#include "pdf/objects.h"
#include "pdf/write.h"

namespace chalkleaf::pdf {

/// `pixels` are width * height * channels bytes, 8 bits a channel, grey (1) or red, green and blue
/// (3). Nothing when there is not enough memory. Thread-safe.
std::optional<page::PackedPicture> packed(int width, int height, int channels,
                                          std::string_view pixels);

/// The pictures of one document. Only for this room.
class PictureTable {
 public:
  /// Looks through the whole list; refers to its pictures.
  static tl::expected<PictureTable, WriteError> collect(const page::DisplayList& list);
  /// In /Resources: "I0", in the order of first use.
  const std::string& name(const page::PictureItem& item) const {
    return names_.at(item.pixels.get());
  }
  /// Adds all pictures to the file; entries of the /XObject dictionary.
  std::string write(Objects& objects) const;

 private:
  std::map<const page::PackedPicture*, std::string> names_;  ///< looked up only, never walked
  std::vector<const page::PackedPicture*> in_order_;
};

}  // namespace chalkleaf::pdf
