#include "pdf/text_use.h"

#include <algorithm>

#include "base/text.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

// The spaces of Unicode (general category Zs) and the tab. Fonts draw many of them with one glyph,
// and who reads or searches wants a plain space for each.
bool is_space(char32_t code) {
  return code == '\t' || code == 0xA0 || code == 0x1680 || (code >= 0x2000 && code <= 0x200A) ||
         code == 0x202F || code == 0x205F || code == 0x3000;
}

}  // namespace

std::vector<Cluster> clusters_of(const page::TextItem& item) {
  std::vector<std::uint32_t> starts;
  starts.reserve(item.glyphs.size());
  for (const type::Glyph& glyph : item.glyphs) {
    if (starts.empty() || starts.back() != glyph.cluster) starts.push_back(glyph.cluster);
  }
  if (!std::is_sorted(starts.begin(), starts.end())) {  // right to left
    std::sort(starts.begin(), starts.end());
    starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
  }
  std::vector<Cluster> out;
  out.reserve(starts.size());
  const std::string_view text = item.text;
  for (std::size_t i = 0; i < item.glyphs.size();) {
    const std::uint32_t begin = item.glyphs[i].cluster;
    Cluster cluster{i, 0, {}};
    for (; i < item.glyphs.size() && item.glyphs[i].cluster == begin; ++i) ++cluster.count;
    const auto next = std::upper_bound(starts.begin(), starts.end(), begin);
    const std::size_t end = next == starts.end() ? text.size() : *next;
    if (begin < text.size()) cluster.text = text.substr(begin, end - begin);
    out.push_back(cluster);
  }
  return out;
}

std::u16string readable(std::string_view text) {
  if (text.size() == 1 && text[0] >= ' ' && text[0] <= '~') {
    return std::u16string(1, static_cast<char16_t>(text[0]));
  }
  std::string kept;
  for (std::size_t i = 0; i < text.size();) {
    const Decoded decoded = decode_utf8(text, i);
    i += decoded.size;
    const char32_t code = is_space(decoded.code) ? U' ' : decoded.code;
    const bool control = code < 0x20 || (code >= 0x7F && code < 0xA0);
    if (!control && code != 0xFEFF && (code & 0xFFFEU) != 0xFFFE) append_utf8(kept, code);
  }
  return kept.empty() ? std::u16string(1, u'\u2060') : utf16(kept);
}

}  // namespace chalkleaf::pdf
