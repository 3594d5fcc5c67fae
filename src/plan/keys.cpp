// See the header.
#include "plan/keys.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "base/text.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

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

std::string hint_for(std::string_view key, const std::vector<std::string>& known,
                     const std::string& meant) {
  const std::string lower = lower_ascii(key);
  if (!meant.empty()) return fmt::format("did you mean `{}`?", meant);
  if (!is_about_children(lower)) return suggestion(key, known, "keys");
  const bool has_size = std::find(known.begin(), known.end(), "size") != known.end();
  return has_size ? "write how many there are: `size: 8`; children's names do not belong here"
                  : "children's names do not belong into these files";
}

// `about 12`, `12 girls`, `10-12`: more than a number, and only one that it can mean. Of a range
// the larger: with more children there is more to look after. 0 when it is none.
int people_meant(std::string_view text) {
  int found = 0;
  int numbers = 0;
  bool other = false;
  for (std::size_t i = 0; i < text.size();) {
    const bool digit = text[i] >= '0' && text[i] <= '9';
    if (!digit) {
      other = other || text[i] != ' ';
      ++i;
      continue;
    }
    int value = 0;
    for (; i < text.size() && text[i] >= '0' && text[i] <= '9'; ++i)
      value = std::min(value * 10 + (text[i] - '0'), 1'000);
    found = std::max(found, value);
    ++numbers;
  }
  const bool odd =
      text.find_first_of(".,;:/") != std::string_view::npos || trim(text).starts_with('-');
  return other && !odd && (numbers == 1 || numbers == 2) ? found : 0;
}

}  // namespace

bool is_about_children(std::string_view typed) {
  const std::string key = lower_ascii(typed);
  static constexpr std::array<std::string_view, 12> kWords{
      "child",   "children", "kids",   "names",    "gymnast",  "gymnasts",
      "members", "athletes", "pupils", "register", "birthday", "birthdays"};
  return std::find(kWords.begin(), kWords.end(), key) != kWords.end();
}

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
           Diagnostics& diagnostics, const OtherNames& others)
    : map_(map), diagnostics_(diagnostics) {
  report_duplicates(map, diagnostics);
  for (const auto& entry : map.entries) {
    const source::YamlNode& key = entry.first;
    if (std::find(known.begin(), known.end(), lower_ascii(key.text)) != known.end()) continue;
    if (key.text == "<<") continue;  // reported when it was read
    Diagnostic found{Severity::kError, "unknown-key", key.span,
                     fmt::format("‘{}’ is not a key of {}", key.text, where)};
    const std::string meant = key_meant(entry, known, others);
    found.hint = hint_for(key.text, known, meant);
    if (!meant.empty()) {
      found.edits.push_back({key.span, meant});
      if (others) meant_.emplace_back(meant, &entry.second);
    }
    diagnostics.add(std::move(found));
  }
}

// The key that a slip or another word stands for, where the map does not have it itself.
std::string Keys::key_meant(const source::YamlEntry& entry, const std::vector<std::string>& known,
                            const OtherNames& others) const {
  constexpr std::size_t kShortestSlip = 4;
  const std::string lower = lower_ascii(entry.first.text);
  std::string meant = others ? others(lower) : std::string();
  const bool is_known = std::find(known.begin(), known.end(), meant) != known.end();
  if (!is_known) meant.clear();
  // Behind `kids` stands how many there are, or names that do not belong here.
  const bool number = entry.second.text.find_first_of("0123456789") != std::string::npos;
  if (is_about_children(lower)) return number ? meant : std::string();
  if (meant.empty() && lower.size() >= kShortestSlip) meant = closest(lower, known).value_or("");
  return meant.empty() || find(meant) != nullptr ? std::string() : meant;
}

const source::YamlNode* Keys::find(std::string_view key) const {
  for (const auto& entry : map_.entries) {
    if (lower_ascii(entry.first.text) == key) return &entry.second;
  }
  for (const auto& [meant, node] : meant_) {
    if (meant == key) return node;
  }
  return nullptr;
}

Words Keys::text(std::string_view key) const {
  const source::YamlNode* node = find(key);
  return node == nullptr ? Words() : scalar_words(*node, key, diagnostics_);
}

std::optional<Sourced<int>> Keys::people(std::string_view key, int most) const {
  const source::YamlNode* node = find(key);
  if (node == nullptr) return std::nullopt;
  const bool is_value = node->is_scalar() && !trim(node->text).empty();
  if (is_value) {
    if (const int meant = people_meant(node->text); meant >= 1 && meant <= most) {
      report(node->span,
             {fmt::format("‘{}’ must be a number", key),
              fmt::format("write `{}: {}`; who they are does not belong here", key, meant),
              std::to_string(meant)});
      return std::nullopt;
    }
  }
  if (!is_value && (node->unreadable || node->kind == source::YamlNode::Kind::kNull)) {
    scalar_words(*node, key, diagnostics_);  // says so
    return std::nullopt;
  }
  const auto number = parse_whole(node->text, 1, most);
  if (is_value && number) return Sourced<int>{*number, node->span};
  if (is_value && node->text.find_first_of("0123456789") != std::string::npos) {
    report(node->span, number.error());
    return std::nullopt;
  }
  report(node->span,
         {fmt::format("‘{}’ must be a number", key),
          fmt::format("write how many there are, from 1 to {}; names do not belong here", most)});
  return std::nullopt;
}

void Keys::report(const Span& span, const ValueProblem& problem) const {
  Diagnostic found{Severity::kError, kBadValue, span, problem.message};
  found.hint = problem.hint;
  if (!problem.meant.empty()) found.edits.push_back({span, problem.meant});
  diagnostics_.add(std::move(found));
}

}  // namespace chalkleaf::plan
