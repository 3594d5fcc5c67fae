// See the header.
#include "draft/read.h"

#include <algorithm>
#include <array>
#include <vector>

#include "base/text.h"
#include "draft/lexicon.h"
#include "draft/write.h"
#include "source/read.h"

namespace chalkleaf::draft {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// `key: value`, `key = value`, a list's item or a line further in: what front matter is made of.
bool is_entry(std::string_view line) {
  if (line.starts_with(' ') || line.starts_with('\t')) return true;
  line = trim(line);
  if (line.starts_with('#') || line.starts_with("- ")) return true;
  const std::size_t mark = line.find_first_of(":=");
  if (mark == 0 || mark == std::string_view::npos || mark > 24) return false;
  return std::all_of(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(mark),
                     [](char c) { return is_letter(c) || c == '-' || c == ' ' || c == '_'; });
}

bool is_key_of_ours(std::string_view line) {
  constexpr std::array<std::string_view, 10> kKeys{"title",     "place",  "group",  "slot",
                                                   "start",     "date",   "repeat", "gymnasts",
                                                   "equipment", "timings"};
  const std::string_view key = line.substr(0, line.find(':'));
  return line.starts_with(' ') || std::find(kKeys.begin(), kKeys.end(), key) != kKeys.end();
}

// `---`, also as word processors and hasty fingers write it, with entries below; or entries of
// ours, the first of them a title, that have lost it. A draft, too, may begin with a rule, with `–
// jog`, or with `Group: …`.
bool begins_front_matter(std::string_view text) {
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  std::vector<std::string_view> head;
  constexpr std::size_t kMost = 40;
  for (std::size_t at = 0; at < text.size() && head.size() < kMost;) {
    const std::size_t stop = std::min(text.find('\n', at), text.size());
    std::string_view line = text.substr(at, stop - at);
    if (line.ends_with('\r')) line.remove_suffix(1);
    at = stop + 1;
    if (head.empty() && trim(line).empty()) continue;
    if (!head.empty() &&
        (trim(line).empty() || line.starts_with("## ") || source::is_loose_fence(line))) {
      if (source::is_loose_fence(line)) head.push_back(line);
      break;
    }
    head.push_back(line);
  }
  if (head.empty()) return false;
  if (source::is_loose_fence(head[0])) {
    if (head.size() == 1) return true;
    return source::is_loose_fence(head[1]) ||
           std::any_of(head.begin() + 1, head.end(), [](std::string_view line) {
             return is_entry(line) && line.find_first_of(":=") != std::string_view::npos;
           });
  }
  if (source::is_loose_fence(head.back()) && head.size() > 1) head.pop_back();
  const bool ours = std::all_of(head.begin(), head.end(), is_key_of_ours);
  const bool named = std::any_of(head.begin(), head.end(), [](std::string_view line) {
    return line.starts_with("title:") || line.starts_with("place:");
  });
  return ours && named;
}

}  // namespace

bool is_canonical(const Source& source) { return begins_front_matter(source.text()); }

std::optional<Draft> read(const Lexicon& words, const SourcePtr& coach,
                          const std::vector<rota::Rotation>& rotations) {
  if (is_canonical(*coach)) return std::nullopt;
  const DraftDocument document = read_document(words, *coach, rotations);
  const bool empty = std::all_of(document.lines.begin(), document.lines.end(),
                                 [](const DraftLine& one) { return one.line.blank; });
  if (empty) return std::nullopt;
  return write(words, coach, document, facts_of(words, *coach, document));
}

}  // namespace chalkleaf::draft
