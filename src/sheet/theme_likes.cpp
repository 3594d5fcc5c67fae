#include "sheet/theme_likes.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "source/read.h"

namespace chalkleaf::sheet {
namespace {

using source::YamlNode;

// Deeper than any honest theme is built on others.
constexpr std::size_t kMostLikes = 8;

// `own` over `below`, map by map; its order of keys is that of the theme below.
void lay_over(YamlNode& below, const YamlNode& own) {
  for (const source::YamlEntry& entry : own.entries) {
    const YamlNode& key = entry.first;
    const YamlNode& value = entry.second;
    const auto same = std::find_if(below.entries.begin(), below.entries.end(),
                                   [&](const auto& e) { return e.first.text == key.text; });
    if (same == below.entries.end()) {
      below.entries.emplace_back(key, value);
    } else if (same->second.kind == YamlNode::Kind::kMap && value.kind == YamlNode::Kind::kMap) {
      lay_over(same->second, value);
    } else {
      *same = {key, value};
    }
  }
}

}  // namespace

std::optional<YamlNode> read_with_likes(const SourcePtr& source, const OtherTheme& other,
                                        Diagnostics& diagnostics) {
  std::vector<YamlNode> layers;  // the theme asked for, then what it is like, and so on
  SourcePtr next = source;
  while (next) {
    auto root = source::read_yaml(next, diagnostics);
    if (!root) return std::nullopt;
    next = nullptr;
    const auto like = std::find_if(root->entries.begin(), root->entries.end(),
                                   [](const auto& e) { return e.first.text == "like"; });
    if (root->kind == YamlNode::Kind::kMap && like != root->entries.end()) {
      const YamlNode name = like->second;
      root->entries.erase(like);
      next = other ? other(trim(name.text)) : nullptr;
      if (!next) {
        diagnostics.error(kBadValue, name.span,
                          fmt::format("there is no look ‘{}’ to be like", trim(name.text)),
                          "‘chalkleaf looks’ lists those there are");
        return std::nullopt;
      }
      if (layers.size() >= kMostLikes) {
        diagnostics.error(kBadValue, name.span, "looks that are like each other end nowhere",
                          "let one of them say everything itself");
        return std::nullopt;
      }
      diagnostics.keep(next);
    }
    layers.push_back(std::move(*root));
  }
  YamlNode out = std::move(layers.back());
  for (std::size_t i = layers.size() - 1; i > 0; --i) {
    lay_over(out, layers[i - 1]);
    out.span = layers[i - 1].span;
  }
  return out;
}

}  // namespace chalkleaf::sheet
