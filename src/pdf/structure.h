// The structure tree: what each mark on the pages is (ISO 32000-1, 14.7 and 14.8). Only for this
// room.
//
// The pages are written first and tell which node each of their marked-content sequences belongs
// to; then the tree is written around them. Tested by tests/pdf/structure_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "page/display_list.h"
#include "pdf/objects.h"
#include "pdf/write.h"

namespace chalkleaf::pdf {

/// The standard structure type's name: "P", "TH".
std::string_view role_name(page::Role role);

/// A marked-content sequence: the `number`th (from 0) of a page.
struct Mark {
  std::size_t page = 0;
  int number = 0;
};

/// A box in the page's own space (y up), growing as marks are added to it.
struct MarkBox {
  std::optional<std::size_t> page;  ///< of the first mark; marks on other pages do not count
  Length left, bottom, right, top;
  void add(std::size_t on_page, Length x, Length y);
};

/// Which marks belong to which node.
struct Marks {
  explicit Marks(std::size_t nodes) : of_node(nodes), boxes(nodes) {}
  std::vector<std::vector<Mark>> of_node;
  std::vector<std::vector<page::NodeId>> of_page;  ///< by page and number
  std::vector<MarkBox> boxes;                      ///< by node; filled for figures and links
};

struct Link;

/// Whether the tree is one: parents first, figures described, links with a way, marks only on
/// leaves.
tl::expected<void, WriteError> check_tree(const page::DisplayList& list);

/// Writes the tree; the number of /StructTreeRoot. `pages` are the page objects, `links` what
/// write_links() made.
ObjectId write_structure(const page::DisplayList& list, const Marks& marks,
                         const std::vector<ObjectId>& pages, const std::vector<Link>& links,
                         Objects& objects);

}  // namespace chalkleaf::pdf
