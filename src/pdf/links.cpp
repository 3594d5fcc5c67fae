#include "pdf/links.h"

#include <fmt/format.h>

#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

std::string annotation(const page::Node& node, const MarkBox& box, ObjectId page, std::size_t key) {
  std::string out = "/Type /Annot\n/Subtype /Link\n/Rect [";
  for (const Length edge : {box.left, box.bottom, box.right, box.top}) {
    append_length(out, edge);
    out.push_back(' ');
  }
  out.back() = ']';
  // No frame is drawn; printed with the page (PDF/A-2, 6.3.2). Contents says where it leads to
  // those who meet the annotation without its text (Matterhorn Protocol 1.1, 28-012).
  return out + fmt::format(
                   "\n/Border [0 0 0]\n/F 4\n/P {}\n/StructParent {}\n/Contents {}\n"
                   "/A <</Type /Action /S /URI /URI {}>>\n",
                   reference(page), key, text_string(node.web_address),
                   text_string(node.web_address));
}

}  // namespace

std::vector<Link> write_links(const page::DisplayList& list, const Marks& marks,
                              const std::vector<ObjectId>& pages, Objects& objects) {
  std::vector<Link> out;
  for (page::NodeId id = 0; id < list.tree.size(); ++id) {
    const MarkBox& box = marks.boxes[id];
    if (list.tree[id].role != page::Role::kLink || !box.page) continue;
    Link link{id, *box.page, pages.size() + out.size(), 0};
    link.object = objects.add(annotation(list.tree[id], box, pages[link.page], link.key));
    out.push_back(link);
  }
  return out;
}

std::string annotations_of(std::size_t page, const std::vector<Link>& links) {
  std::string out;
  for (const Link& link : links) {
    if (link.page == page) out += reference(link.object) + " ";
  }
  if (out.empty()) return out;
  out.back() = ']';
  return "/Annots [" + out + "\n";
}

}  // namespace chalkleaf::pdf
