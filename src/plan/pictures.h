// Pictures that stand in a line of their own: `![two children on a line](../pictures/line.png)`.
//
// A picture within a line of text stays what it is elsewhere, its text. Tested by
// tests/plan/pictures_test.cpp.
#pragma once

#include <vector>

#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// The pictures of a paragraph or line that is nothing else; empty when it says more.
std::vector<Note> pictures_of(const source::MarkNode& paragraph);
/// A paragraph without its lines of pictures, which are appended to `pictures`.
source::MarkNode without_pictures(const source::MarkNode& paragraph, std::vector<Note>& pictures);
/// A paragraph in order: stretches of text, and the lines of pictures between them.
struct TextOrPictures {
  source::MarkNode text;  ///< empty where there are pictures
  std::vector<Note> pictures;
};
std::vector<TextOrPictures> parted_by_pictures(const source::MarkNode& paragraph);

}  // namespace chalkleaf::plan
