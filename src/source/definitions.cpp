// See the header.
#include "source/definitions.h"

#include <algorithm>
#include <set>

#include "base/text.h"

namespace chalkleaf::source {
namespace {

/// Where there is text, and where links lead.
struct Shown {
  std::vector<Span> leaves;  ///< in order
  std::set<std::string> targets;
};

void collect(const MarkNode& node, Shown& out) {
  using Kind = MarkNode::Kind;
  if (node.kind == Kind::kCode || node.kind == Kind::kHtml) {
    out.leaves.push_back(node.span);
  } else if (!node.text.empty()) {
    out.leaves.push_back(node.text.span());
  }
  for (const MarkNode::Link& link : node.links) {
    out.targets.insert(link.target);
    out.leaves.push_back(link.span);
  }
  for (const MarkNode& child : node.children) collect(child, out);
}

bool covers(const std::vector<Span>& leaves, std::uint32_t at) {
  // Leaves are in order of their begin; of those before `at`, only near ones can reach it.
  auto after = std::upper_bound(leaves.begin(), leaves.end(), at,
                                [](std::uint32_t a, const Span& leaf) { return a < leaf.begin; });
  for (int looked = 0; after != leaves.begin() && looked < 8; ++looked) {
    --after;
    if (at < after->end) return true;
  }
  return false;
}

// `[label]: target` behind list and quote marks: the offset of its bracket and its target.
struct Definition {
  std::size_t bracket = 0;
  std::string_view target;
};
std::optional<Definition> definition_in(std::string_view line) {
  const std::size_t bracket = line.find_first_not_of(" \t>-*+0123456789.)");
  if (bracket == std::string_view::npos || line[bracket] != '[') return std::nullopt;
  const std::size_t colon = line.find("]:", bracket);
  if (colon == std::string_view::npos) return std::nullopt;
  std::string_view target = trim(line.substr(colon + 2));
  target = target.substr(0, target.find_first_of(" \t"));
  if (target.size() > 1 && target.front() == '<' && target.back() == '>') {
    target = target.substr(1, target.size() - 2);
  }
  return Definition{bracket, target};
}

}  // namespace

void add_unused_definitions(const Source& source, std::uint32_t begin, MarkNode& document) {
  if (source.text().substr(begin).find("]:") == std::string_view::npos) return;
  Shown shown;
  collect(document, shown);
  std::sort(shown.leaves.begin(), shown.leaves.end(),
            [](const Span& a, const Span& b) { return a.begin < b.begin; });
  std::vector<MarkNode> found;
  for (std::uint32_t n = source.line_column(begin).line; n <= source.line_count(); ++n) {
    const auto definition = definition_in(source.line(n));
    if (!definition || shown.targets.count(std::string(definition->target)) > 0) continue;
    const std::uint32_t at = source.line_start(n) + static_cast<std::uint32_t>(definition->bracket);
    if (covers(shown.leaves, at)) continue;
    MarkNode paragraph;
    paragraph.kind = MarkNode::Kind::kParagraph;
    const std::string_view text = trim(source.line(n).substr(definition->bracket));
    paragraph.span = {&source, at, at + static_cast<std::uint32_t>(text.size())};
    paragraph.text.append(text, paragraph.span);
    found.push_back(std::move(paragraph));
  }
  if (found.empty()) return;
  auto& blocks = document.children;
  blocks.insert(blocks.end(), std::make_move_iterator(found.begin()),
                std::make_move_iterator(found.end()));
  std::stable_sort(blocks.begin(), blocks.end(), [](const MarkNode& a, const MarkNode& b) {
    return a.span.begin < b.span.begin;
  });
}

}  // namespace chalkleaf::source
