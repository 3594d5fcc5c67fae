#include "pdf/structure.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "pdf/links.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

using page::Node;
using page::NodeId;
using page::Role;

// In the order of page::Role.
constexpr std::array<std::string_view, 23> kRoleNames{
    "Document", "Sect",   "Div",   "P",     "H1",         "H2",    "H3",  "L",
    "LI",       "Lbl",    "LBody", "Table", "THead",      "TBody", "TR",  "TH",
    "TD",       "Figure", "Span",  "Form",  "BlockQuote", "Note",  "Link"};
static_assert(kRoleNames.size() == static_cast<std::size_t>(Role::kLink) + 1);

// Ids of equal length, so that their order as text is the order of the nodes (14.7.2: /IDTree is a
// name tree, sorted by key).
std::string note_id(NodeId node) { return fmt::format("(note-{:010})", node); }

// Attribute objects (14.8.5), one for each node that needs one.
std::string attributes(const Node& node, const MarkBox& box) {
  std::string out;
  switch (node.role) {
    case Role::kHeaderCell:
    case Role::kDataCell:
      if (node.role == Role::kHeaderCell && node.scope != page::HeaderScope::kNone) {
        out += node.scope == page::HeaderScope::kRow ? " /Scope /Row" : " /Scope /Column";
      }
      if (node.column_span != 1) out += fmt::format(" /ColSpan {}", node.column_span);
      if (node.row_span != 1) out += fmt::format(" /RowSpan {}", node.row_span);
      return out.empty() ? out : "/A <</O /Table" + out + ">>\n";
    case Role::kList:
      return node.ordered ? "/A <</O /List /ListNumbering /Decimal>>\n" : "";
    case Role::kForm:
      // 14.8.5.6: what a box on paper is for those who cannot see it.
      return std::string("/A <</O /PrintField ") +
             (node.write_in ? "/Role /tv" : "/Role /cb /checked /off") + " /Desc " +
             text_string(node.box_description) + ">>\n";
    case Role::kFigure:
      if (!box.page) return out;
      out = "/A <</O /Layout /BBox [";
      for (const Length edge : {box.left, box.bottom, box.right, box.top}) {
        append_length(out, edge);
        out.push_back(' ');
      }
      out.back() = ']';
      return out + ">>\n";
    default:
      return out;
  }
}

// A node's marks: numbers on the page that /Pg names, references with a page of their own
// elsewhere (14.7.4).
std::string mark_kids(const std::vector<Mark>& marks, const std::vector<ObjectId>& pages,
                      const Link* link) {
  if (marks.empty()) return "";
  const std::size_t home = marks.front().page;
  std::string out = "/Pg " + reference(pages[home]) + "\n/K [";
  for (const Mark& mark : marks) {
    if (mark.page == home) {
      append_int(out, mark.number);
    } else {
      out +=
          fmt::format("<</Type /MCR /Pg {} /MCID {}>>", reference(pages[mark.page]), mark.number);
    }
    out.push_back(' ');
  }
  if (link != nullptr) {
    out += fmt::format("<</Type /OBJR /Pg {} /Obj {}>> ", reference(pages[link->page]),
                       reference(link->object));
  }
  out.back() = ']';
  return out + "\n";
}

std::string element(const page::DisplayList& list, NodeId id, ObjectId parent,
                    const std::vector<NodeId>& children, const std::vector<ObjectId>& nodes,
                    const Marks& marks, const std::vector<ObjectId>& pages, const Link* link) {
  const Node& node = list.tree[id];
  std::string out = fmt::format("/S /{}\n/P {}\n", role_name(node.role), reference(parent));
  if (!children.empty()) {
    out += "/K [";
    for (const NodeId child : children) {
      append_reference(out, nodes[child]);
      out.push_back(' ');
    }
    out.back() = ']';
    out.push_back('\n');
  }
  out += mark_kids(marks.of_node[id], pages, link);
  out += attributes(node, marks.boxes[id]);
  if (!node.alternative_text.empty()) out += "/Alt " + text_string(node.alternative_text) + "\n";
  if (!node.actual_text.empty()) out += "/ActualText " + text_string(node.actual_text) + "\n";
  if (!node.language.empty()) out += "/Lang " + text_string(node.language) + "\n";
  if (node.role == Role::kNote) out += "/ID " + note_id(id) + "\n";
  return out;
}

// Number tree and name tree, each in one node: 14.7.4.4 and 7.9.6.
std::string parent_tree(const Marks& marks, const std::vector<ObjectId>& nodes,
                        const std::vector<Link>& links) {
  std::string out = "/Nums [";
  for (std::size_t page = 0; page < marks.of_page.size(); ++page) {
    append_int(out, static_cast<std::int64_t>(page));
    out += " [";
    for (const NodeId node : marks.of_page[page]) {
      append_reference(out, nodes[node]);
      out.push_back(' ');
    }
    out += "]\n";
  }
  for (const Link& link : links)
    out += fmt::format("{} {}\n", link.key, reference(nodes[link.node]));
  return out + "]\n";
}

std::string id_tree(const page::DisplayList& list, const std::vector<ObjectId>& nodes) {
  std::string names;
  for (NodeId id = 0; id < list.tree.size(); ++id) {
    if (list.tree[id].role == Role::kNote) names += note_id(id) + " " + reference(nodes[id]) + " ";
  }
  return names.empty() ? names : "/Names [" + names + "]\n";
}

bool is_uri(const std::string& text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_uri_character);
}

}  // namespace

std::string_view role_name(Role role) { return kRoleNames[static_cast<std::size_t>(role)]; }

void MarkBox::add(std::size_t on_page, Length x, Length y) {
  if (!page) {
    *this = {on_page, x, y, x, y};
  } else if (*page == on_page) {
    left = std::min(left, x);
    right = std::max(right, x);
    bottom = std::min(bottom, y);
    top = std::max(top, y);
  }
}

tl::expected<void, WriteError> check_tree(const page::DisplayList& list) {
  const auto wrong = [](const std::string& what) { return tl::unexpected(WriteError{what}); };
  if (list.tree.empty() || list.tree[0].role != Role::kDocument) {
    return wrong("the structure tree does not begin with a Document node");
  }
  std::vector<bool> has_children(list.tree.size());
  for (NodeId id = 1; id < list.tree.size(); ++id) {
    const Node& node = list.tree[id];
    if (node.parent >= id) return wrong(fmt::format("node {} comes before its parent", id));
    has_children[node.parent] = true;
    if (node.role == Role::kFigure && node.alternative_text.empty()) {
      return wrong(fmt::format("figure {} has no alternative text", id));
    }
    if (node.role == Role::kLink && !is_uri(node.web_address)) {
      return wrong(fmt::format("link {} does not lead to an address", id));
    }
  }
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const auto owner = page::owner_of(item).node;
      if (!owner) continue;
      if (*owner >= list.tree.size()) {
        return wrong(fmt::format("a mark belongs to node {}, which there is not", *owner));
      }
      if (has_children[*owner]) {
        return wrong(fmt::format("node {} ({}) has both marks and nodes below it", *owner,
                                 role_name(list.tree[*owner].role)));
      }
    }
  }
  return {};
}

ObjectId write_structure(const page::DisplayList& list, const Marks& marks,
                         const std::vector<ObjectId>& pages, const std::vector<Link>& links,
                         Objects& objects) {
  const ObjectId root = objects.reserve();
  std::vector<ObjectId> nodes;
  std::vector<std::vector<NodeId>> children(list.tree.size());
  for (NodeId id = 0; id < list.tree.size(); ++id) {
    nodes.push_back(objects.reserve());
    if (id > 0) children[list.tree[id].parent].push_back(id);
  }
  auto next_link = links.begin();
  for (NodeId id = 0; id < list.tree.size(); ++id) {
    const ObjectId parent = id == 0 ? root : nodes[list.tree[id].parent];
    const bool has_link = next_link != links.end() && next_link->node == id;
    const Link* link = has_link ? &*next_link++ : nullptr;
    objects.fill(nodes[id], element(list, id, parent, children[id], nodes, marks, pages, link));
  }
  std::string entries =
      fmt::format("/Type /StructTreeRoot\n/K [{}]\n/ParentTree {}\n/ParentTreeNextKey {}\n",
                  reference(nodes[0]), reference(objects.add(parent_tree(marks, nodes, links))),
                  pages.size() + links.size());
  if (std::string names = id_tree(list, nodes); !names.empty()) {
    entries += "/IDTree " + reference(objects.add(std::move(names))) + "\n";
  }
  objects.fill(root, std::move(entries));
  return root;
}

}  // namespace chalkleaf::pdf
