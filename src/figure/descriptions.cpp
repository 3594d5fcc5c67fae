// Files of figures become descriptions by name. See figure/read.h.
#include <fmt/format.h>

#include "base/text.h"
#include "figure/hints.h"
#include "figure/read.h"
#include "source/read.h"

namespace chalkleaf::figure {

using source::YamlNode;

namespace {

constexpr std::size_t kMostFigures = 2'000;
constexpr std::size_t kLongestName = 200;  // bytes; messages repeat names

}  // namespace

// Sound files of the program's own, so nothing is said and nothing is replaced.
void Descriptions::take_packed(const source::PackedNode& root) {
  std::string family;
  if (const auto found = root.find("family")) {
    if (auto node = found->unpacked()) family = std::move(node->text);
  }
  const auto figures = root.find("figures");
  if (!figures) return;
  figures->each_entry([&](const YamlNode& key, const source::PackedNode& value) {
    const std::string name(trim(key.text));
    if (!by_name_.emplace(name, entries_.size()).second) return;
    entries_.push_back({name, key.span, family, {}, true, value});
  });
}

std::vector<std::string> Descriptions::also(std::size_t place) const {
  std::vector<std::string> out;
  const auto& packed = entries_[place].packed;
  const auto found = packed ? packed->find("also") : std::nullopt;
  const auto node = found ? found->unpacked() : std::nullopt;
  if (!node) return out;
  if (node->is_scalar()) out.push_back(node->text);
  for (const YamlNode& item : node->items) out.push_back(item.text);
  return out;
}

void Descriptions::take(const SourcePtr& source, bool replaces, Diagnostics& diagnostics) {
  if (const auto known = replaces ? std::nullopt : source::packed_yaml(source)) {
    return take_packed(*known);
  }
  const auto root = source::read_yaml(source, diagnostics);
  if (!root) return;
  std::string family;
  const YamlNode* figures = nullptr;
  for (const auto& [key, value] : root->entries) {
    if (key.text == "family") {
      family = value.text;
    } else if (key.text == "figures") {
      figures = &value;
    } else {
      diagnostics.error("unknown-key", key.span, "a file of figures has no key " + quoted(key.text),
                        hint_for(key.text, {"family", "figures"}));
    }
  }
  if (figures == nullptr || figures->kind != YamlNode::Kind::kMap) {
    diagnostics.error("missing-key", figures == nullptr ? root->span : figures->span,
                      "this file describes no figures",
                      "add `figures:` and below it each figure's name with its keys");
    return;
  }
  for (const auto& [key, value] : figures->entries) {
    if (entries_.size() >= kMostFigures) {
      diagnostics.error(kBadValue, key.span,
                        fmt::format("there are more than {} figures", kMostFigures),
                        "keep those that are used");
      return;
    }
    const std::string name(trim(key.text));
    if (name.empty() || name.size() > kLongestName) {
      diagnostics.error(kBadValue, key.span, "this is no name for a figure",
                        "write a few words, as coaches say them");
      continue;
    }
    Entry entry{name, key.span, family, value, !replaces};
    const auto known = by_name_.find(name);
    if (known == by_name_.end()) {
      by_name_[name] = entries_.size();
      entries_.push_back(std::move(entry));
    } else if (replaces && entries_[known->second].replaceable) {
      entries_[known->second] = std::move(entry);
    } else {
      Diagnostic twice{Severity::kError,
                       "duplicate-key",
                       key.span,
                       "there is a figure " + quoted(name) + " already",
                       {},
                       "give one of them another name"};
      twice.labels.push_back({entries_[known->second].span, "here"});
      diagnostics.add(std::move(twice));
    }
  }
}

}  // namespace chalkleaf::figure
