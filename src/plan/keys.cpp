// See the header.
#include "plan/keys.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/text.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

constexpr const char* kBadValue = "bad-value";

// A word processor's quotation marks round the whole of a value mean what straight ones would.
Words without_curly_quotes(Words words) {
  struct Pair {
    std::string_view open, close;
  };
  for (const Pair& pair : {Pair{"“", "”"}, Pair{"”", "”"}, Pair{"„", "“"}, Pair{"‘", "’"}}) {
    const std::string_view all = words.text;
    const std::size_t around = pair.open.size() + pair.close.size();
    if (all.size() <= around || !all.starts_with(pair.open) || !all.ends_with(pair.close)) continue;
    const std::string_view inside = all.substr(pair.open.size(), all.size() - around);
    const bool more = inside.find(pair.open) != std::string_view::npos ||
                      (pair.open != "‘" && inside.find(pair.close) != std::string_view::npos);
    if (more || trim(inside).empty()) continue;
    if (words.span.text() == all) {
      words.span.begin += static_cast<std::uint32_t>(pair.open.size());
      words.span.end -= static_cast<std::uint32_t>(pair.close.size());
    }
    words.text = std::string(inside);
    break;
  }
  return words;
}

}  // namespace

void report_duplicates(const source::YamlNode& map, Diagnostics& diagnostics) {
  std::map<std::string, const source::YamlNode*> seen;
  for (const auto& entry : map.entries) {
    const source::YamlNode& key = entry.first;
    const auto [first, is_new] = seen.emplace(lower_ascii(key.text), &key);
    if (is_new) continue;
    Diagnostic twice{Severity::kError, "duplicate-key", key.span,
                     fmt::format("‘{}’ is written twice", key.text)};
    twice.labels.push_back({first->second->span, "it is written here first"});
    twice.hint = "keep one of the two lines";
    diagnostics.add(std::move(twice));
  }
}

Words scalar_words(const source::YamlNode& node, std::string_view what, Diagnostics& diagnostics) {
  if (node.unreadable) return {};
  if (node.is_scalar() && !trim(node.text).empty()) {
    Words out{std::string(trim(node.text)), node.span};
    std::replace(out.text.begin(), out.text.end(), '\n', ' ');
    return without_curly_quotes(std::move(out));
  }
  using Kind = source::YamlNode::Kind;
  if (node.kind == Kind::kList || node.kind == Kind::kMap) {
    diagnostics.error(kBadValue, node.span, fmt::format("‘{}’ must be one value", what),
                      fmt::format("write it on one line: `{}: …`", what));
  } else {
    diagnostics.error(kBadValue, node.span, fmt::format("‘{}’ has no value", what),
                      "write a value behind the colon, or leave the line out");
  }
  return {};
}

std::vector<Words> list_words(const source::YamlNode& node, std::string_view what,
                              Diagnostics& diagnostics) {
  std::vector<Words> out;
  if (node.kind == source::YamlNode::Kind::kList) {
    for (const source::YamlNode& item : node.items) {
      Words words = scalar_words(item, what, diagnostics);
      if (!words.empty()) out.push_back(std::move(words));
    }
    return out;
  }
  const Words all = scalar_words(node, what, diagnostics);
  const std::string_view bytes = all.span.text();
  const bool exact = bytes == all.text;  // else quoted or folded: each piece maps to the whole
  for (std::size_t at = 0; at < all.text.size();) {
    const std::size_t stop = std::min(all.text.find(',', at), all.text.size());
    const std::string_view piece = trim(std::string_view(all.text).substr(at, stop - at));
    if (!piece.empty()) {
      Words words{std::string(piece), all.span};
      if (exact) {
        words.span.begin += static_cast<std::uint32_t>(piece.data() - all.text.data());
        words.span.end = words.span.begin + static_cast<std::uint32_t>(piece.size());
      }
      out.push_back(without_curly_quotes(std::move(words)));
    }
    at = stop + 1;
  }
  return out;
}

Keys::Keys(const source::YamlNode& map, std::string where, std::vector<std::string> known,
           Diagnostics& diagnostics)
    : map_(map), diagnostics_(diagnostics) {
  report_duplicates(map, diagnostics);
  for (const auto& entry : map.entries) {
    const source::YamlNode& key = entry.first;
    if (std::find(known.begin(), known.end(), lower_ascii(key.text)) != known.end()) continue;
    if (key.text == "<<") continue;  // reported when it was read
    diagnostics.error("unknown-key", key.span,
                      fmt::format("‘{}’ is not a key of {}", key.text, where),
                      suggestion(key.text, known, "keys"));
  }
}

const source::YamlNode* Keys::find(std::string_view key) const {
  for (const auto& entry : map_.entries) {
    if (lower_ascii(entry.first.text) == key) return &entry.second;
  }
  return nullptr;
}

Words Keys::text(std::string_view key) const {
  const source::YamlNode* node = find(key);
  return node == nullptr ? Words() : scalar_words(*node, key, diagnostics_);
}

void Keys::report(const Span& span, const ValueProblem& problem) const {
  diagnostics_.error(kBadValue, span, problem.message, problem.hint);
}

}  // namespace chalkleaf::plan
