// See the header.
#include "page/join.h"

#include <iterator>
#include <utility>

namespace chalkleaf::page {

DisplayList join(std::vector<DisplayList> documents, DocumentInfo info) {
  DisplayList out;
  out.info = std::move(info);
  out.tree.push_back({});
  for (DisplayList& document : documents) {
    const auto first_node = static_cast<NodeId>(out.tree.size());
    const std::size_t first_page = out.pages.size();
    for (std::size_t i = 0; i < document.tree.size(); ++i) {
      Node node = std::move(document.tree[i]);
      node.parent = i == 0 ? 0 : node.parent + first_node;
      if (i == 0) {
        node.role = Role::kSect;
        if (document.info.language != out.info.language) node.language = document.info.language;
      }
      out.tree.push_back(std::move(node));
    }
    for (Page& page : document.pages) {
      for (Item& item : page.items) {
        Owner& owner = owner_of(item);
        if (owner.node) *owner.node += first_node;
      }
      out.pages.push_back(std::move(page));
    }
    for (OutlineEntry& entry : document.outline) {
      entry.page += first_page;
      out.outline.push_back(std::move(entry));
    }
  }
  return out;
}

}  // namespace chalkleaf::page
