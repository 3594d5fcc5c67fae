// The body of a plan or a shared part: parts under headings, drills in lists, safety in quotes.
// Tested by tests/plan/body_test.cpp.
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

struct Body {
  Words title;  ///< of a level-1 heading that is not a part; may be empty
  std::vector<Note> introduction;
  std::vector<Safety> safety;  ///< before the first part
  std::vector<Part> parts;     ///< for a shared part's file: exactly one, holding everything
};

/// What the file is: in a session headings of level 1 and 2 begin parts, in a shared part they do
/// not.
enum class FileRole { kSession, kSharedPart };

/// `title` is what front matter says, perhaps nothing.
Body read_body(const source::MarkNode& document, FileRole role, const Words& title,
               Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
