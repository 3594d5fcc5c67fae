// Links that work on a screen: one annotation for each Link node of the structure tree
// (ISO 32000-1, 12.5.6.5; 14.8.4.4.2). Only for this room.
//
// The area to press is the box round the node's marks on the page of the first of them. The node
// refers to the annotation and the annotation, through the parent tree, to the node (Matterhorn
// Protocol 1.1, 28-011). Tested by tests/pdf/structure_test.cpp.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "page/display_list.h"
#include "pdf/objects.h"
#include "pdf/structure.h"

namespace chalkleaf::pdf {

/// The annotation of a Link node that has marks.
struct Link {
  page::NodeId node = 0;
  std::size_t page = 0;
  std::size_t key = 0;  ///< in the parent tree, behind the pages' own
  ObjectId object = 0;
};

/// Writes the annotations; in the order of their nodes. All pages must have been written, so that
/// `marks` knows where everything stands.
std::vector<Link> write_links(const page::DisplayList& list, const Marks& marks,
                              const std::vector<ObjectId>& pages, Objects& objects);
/// A page's `/Annots` entry; empty when it has no links.
std::string annotations_of(std::size_t page, const std::vector<Link>& links);

}  // namespace chalkleaf::pdf
