// See the header.
#include "draft/read.h"

#include <algorithm>

#include "base/text.h"
#include "draft/lexicon.h"
#include "draft/write.h"

namespace chalkleaf::draft {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// `---`, also as word processors and hasty fingers write it, or a first line that is `title: …`.
bool begins_front_matter(std::string_view text) {
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  while (!text.empty() && (text[0] == '\n' || text[0] == '\r' || text[0] == ' '))
    text.remove_prefix(1);
  const std::string first = lower_ascii(trim(text.substr(0, text.find('\n'))));
  if (first.starts_with("---") || first.starts_with("–") || first.starts_with("—")) return true;
  const std::size_t colon = first.find(':');
  const std::string_view key = std::string_view(first).substr(0, colon);
  return colon != std::string::npos && (key == "title" || key == "place" || key == "group");
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
