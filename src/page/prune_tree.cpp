#include "page/prune_tree.h"

#include <algorithm>

namespace chalkleaf::page {

void prune_tree(DisplayList& list, const std::vector<NodeRange>& dropped) {
  if (dropped.empty()) return;
  std::vector<bool> gone(list.tree.size());
  for (const NodeRange& range : dropped) {
    for (NodeId id = range.begin; id < std::min<std::size_t>(range.end, gone.size()); ++id)
      gone[id] = true;
  }
  std::vector<NodeId> renumbered(list.tree.size());
  std::vector<Node> kept;
  for (std::size_t i = 0; i < list.tree.size(); ++i) {
    renumbered[i] = static_cast<NodeId>(kept.size());
    if (gone[i]) continue;
    kept.push_back(std::move(list.tree[i]));
    kept.back().parent = renumbered[kept.back().parent];  // parents come first
  }
  list.tree = std::move(kept);
  for (Page& page : list.pages) {
    for (Item& item : page.items) {
      Owner& owner = owner_of(item);
      if (owner.node) owner.node = renumbered[*owner.node];
    }
  }
}

}  // namespace chalkleaf::page
