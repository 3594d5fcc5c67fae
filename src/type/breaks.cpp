#include "type/breaks.h"

namespace chalkleaf::type {

Breaker::Iterator Breaker::open(UBreakIteratorType type, const std::string& language) {
  UErrorCode status = U_ZERO_ERROR;
  Iterator iterator(ubrk_open(type, language.c_str(), nullptr, 0, &status));
  if (U_FAILURE(status)) iterator.reset();
  return iterator;
}

Breaker::Breaker(const std::string& language)
    : lines_(open(UBRK_LINE, language)), graphemes_(open(UBRK_CHARACTER, language)) {}

template <class Found>
void Breaker::walk(UBreakIterator* iterator, std::string_view text, Found found) {
  if (iterator == nullptr || text.empty()) return;
  UErrorCode status = U_ZERO_ERROR;
  UText view = UTEXT_INITIALIZER;
  utext_openUTF8(&view, text.data(), static_cast<std::int64_t>(text.size()), &status);
  ubrk_setUText(iterator, &view, &status);
  if (U_SUCCESS(status) != 0) {
    ubrk_first(iterator);
    for (auto at = ubrk_next(iterator); at != UBRK_DONE; at = ubrk_next(iterator)) {
      found(static_cast<std::uint32_t>(at), ubrk_getRuleStatus(iterator));
    }
  }
  utext_close(&view);
}

void Breaker::find(std::string_view text, std::vector<Break>& out) {
  out.clear();
  walk(lines_.get(), text, [&](std::uint32_t at, int status) {
    const bool forced = status >= UBRK_LINE_HARD;
    // ICU ends every text with a break; only a line end makes it one of ours.
    if (forced || at < text.size()) out.push_back({at, forced});
  });
}

std::vector<std::uint32_t> Breaker::graphemes(std::string_view text) {
  std::vector<std::uint32_t> out;
  walk(graphemes_.get(), text, [&](std::uint32_t at, int) { out.push_back(at); });
  if (out.empty() && !text.empty()) out.push_back(static_cast<std::uint32_t>(text.size()));
  return out;
}

}  // namespace chalkleaf::type
