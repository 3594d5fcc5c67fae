// Links to shared parts, and lines that were meant to be one.
// Tested by tests/plan/part_links_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// The part links of a paragraph, and whether it says nothing besides.
struct LinksFound {
  std::vector<PartLink> links;
  bool only_links = false;
};
/// A link leads to a part when it names a Markdown file of the club's; alone in its paragraph also
/// when its ending is forgotten (`../parts/warm-up`) or it names a folder.
LinksFound part_links(const source::MarkNode& paragraph);

/// What is wrong with a line that was meant as a link to a part.
struct LinkSlip {
  std::string message;
  std::string hint;
};
/// `raw` is the whole line as it stands in the file; nothing when it does not look like a link.
/// Ask only about lines in which Markdown sees no link.
std::optional<LinkSlip> link_slip(std::string_view raw);

}  // namespace chalkleaf::plan
