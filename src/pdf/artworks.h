// Artworks: drawings that stand in the file once, however often they are shown (ISO 32000-1, 8.10:
// form XObjects). Only for this room.
//
// What is written of one does not depend on the document, so it is made and deflated once a run.
// Tested by tests/pdf/artworks_test.cpp.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "page/display_list.h"
#include "pdf/kept.h"
#include "pdf/objects.h"

namespace chalkleaf::pdf {

/// The artworks of one document.
class ArtworkTable {
 public:
  /// Looks through the whole list; refers to its artworks and to what is kept.
  static ArtworkTable collect(const page::DisplayList& list, Kept& kept);
  /// In /Resources: "A0", in the order of first use.
  const std::string& name(const page::ArtItem& item) const { return names_.at(item.art.get()); }
  /// Adds all artworks to the file; entries of the /XObject dictionary.
  std::string write(Objects& objects) const;

 private:
  std::map<const page::Artwork*, std::string> names_;  ///< looked up only, never walked
  struct Written {
    const page::Artwork* art;
    const std::string* bytes;  ///< of what stands between `stream` and `endstream`
  };
  std::vector<Written> in_order_;
};

}  // namespace chalkleaf::pdf
