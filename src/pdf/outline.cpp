#include "pdf/outline.h"

#include <fmt/format.h>

#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

struct Bookmark {
  const page::OutlineEntry* entry = nullptr;
  ObjectId object = 0;
  std::size_t parent = 0;    // indices; 0 is the outline itself
  std::size_t previous = 0;  // 0: none
  std::size_t next = 0;
  std::vector<std::size_t> children;
  std::size_t below = 0;  // entries at any depth
};

// [0] is the outline itself. An entry belongs to the last one before it of a lower level.
std::vector<Bookmark> arranged(const page::DisplayList& list, Objects& objects) {
  std::vector<Bookmark> out(1);
  out[0].object = objects.reserve();
  std::vector<std::size_t> path{0};
  for (const page::OutlineEntry& entry : list.outline) {
    if (entry.page >= list.pages.size()) continue;
    while (path.size() > 1 && out[path.back()].entry->level >= entry.level) path.pop_back();
    Bookmark bookmark;
    bookmark.entry = &entry;
    bookmark.object = objects.reserve();
    bookmark.parent = path.back();
    std::vector<std::size_t>& siblings = out[path.back()].children;
    if (!siblings.empty()) {
      bookmark.previous = siblings.back();
      out[siblings.back()].next = out.size();
    }
    siblings.push_back(out.size());
    for (const std::size_t above : path) ++out[above].below;
    path.push_back(out.size());
    out.push_back(std::move(bookmark));
  }
  return out;
}

}  // namespace

std::optional<ObjectId> write_outline(const page::DisplayList& list,
                                      const std::vector<ObjectId>& pages, Objects& objects) {
  if (list.outline.empty()) return std::nullopt;
  const std::vector<Bookmark> all = arranged(list, objects);
  const auto ref = [&](std::size_t index) { return reference(all[index].object); };
  for (const Bookmark& bookmark : all) {
    std::string entries = bookmark.entry == nullptr ? "/Type /Outlines\n" : "";
    if (!bookmark.children.empty()) {
      entries += fmt::format("/First {}\n/Last {}\n/Count {}\n", ref(bookmark.children.front()),
                             ref(bookmark.children.back()), bookmark.below);
    }
    if (bookmark.entry != nullptr) {
      const page::OutlineEntry& entry = *bookmark.entry;
      entries += "/Title " + text_string(entry.title) + "\n/Parent " + ref(bookmark.parent) + "\n";
      if (bookmark.previous != 0) entries += "/Prev " + ref(bookmark.previous) + "\n";
      if (bookmark.next != 0) entries += "/Next " + ref(bookmark.next) + "\n";
      // The left edge and the zoom stay as the reader has them.
      entries += "/Dest [" + reference(pages[entry.page]) + " /XYZ null ";
      append_length(entries, list.pages[entry.page].size.height - entry.y);
      entries += " null]\n";
    }
    objects.fill(bookmark.object, std::move(entries));
  }
  return all[0].object;
}

}  // namespace chalkleaf::pdf
