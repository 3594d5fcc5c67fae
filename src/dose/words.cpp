// See the header.
#include "dose/words_of.h"

#include <algorithm>

namespace chalkleaf::dose {

Words words_of(const source::Text& text) {
  const source::Text kept = text.trimmed();
  Words out{kept.str(), kept.span()};
  std::replace(out.text.begin(), out.text.end(), '\n', ' ');
  for (const source::Text::Mark& mark : kept.marks()) {
    out.emphasis.push_back({mark.begin, mark.end, mark.tone == source::Tone::kStrong});
  }
  return out;
}

}  // namespace chalkleaf::dose
