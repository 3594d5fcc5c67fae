// See the header.
#include "base/spoken_time.h"

#include <string>

#include "base/text.h"

namespace chalkleaf {
namespace {

bool is_digit_at(std::string_view text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

// Obeys `am` or `pm` behind the time.
void obey_half(std::string_view text, SpokenTime& time) {
  constexpr int kNoon = 12 * 60;
  const std::size_t at = behind_spaces(text, time.end);
  const std::string word = lower_ascii(text.substr(at, 2));
  const bool ends = at + 2 >= text.size() || !is_letter(text[at + 2]);
  if ((word != "am" && word != "pm") || !ends) return;
  if (word == "pm" && time.minutes < kNoon) time.minutes += kNoon;
  time.half_said = true;
  time.end = at + 2;
}

}  // namespace

std::size_t space_size(std::string_view text, std::size_t at) {
  if (at >= text.size()) return 0;
  if (text[at] == ' ' || text[at] == '\t') return 1;
  const auto [code, size] = decode_utf8(text, at);
  return code == 0xA0 || code == 0x3000 || code == 0x202F ? size : 0;
}

std::size_t behind_spaces(std::string_view text, std::size_t at) {
  while (const std::size_t size = space_size(text, at)) at += size;
  return at;
}

std::optional<SpokenTime> spoken_time(std::string_view text, std::size_t at) {
  std::size_t i = at;
  int hour = 0;
  for (; is_digit_at(text, i) && i < at + 4; ++i) hour = hour * 10 + (text[i] - '0');
  const std::size_t digits = i - at;
  if (digits == 0 || is_digit_at(text, i)) return std::nullopt;
  int minute = 0;
  bool alone = true;  // the hour
  if (digits == 4) {
    minute = hour % 100;
    hour /= 100;
    if (hour < 6) return std::nullopt;  // `0500`, but also `0250`
    alone = false;
  } else if (digits > 2) {
    return std::nullopt;
  } else if (i < text.size() && (text[i] == '.' || text[i] == ':' || text[i] == 'h') &&
             is_digit_at(text, i + 1) && is_digit_at(text, i + 2) && !is_digit_at(text, i + 3)) {
    minute = (text[i + 1] - '0') * 10 + (text[i + 2] - '0');
    i += 3;
    alone = false;
  }
  if (hour > 23 || minute > 59) return std::nullopt;
  SpokenTime out;
  out.minutes = out.written = hour * 60 + minute;
  out.end = i;
  out.four_digits = digits == 4;
  obey_half(text, out);
  return alone && !out.half_said ? std::nullopt : std::optional(out);
}

}  // namespace chalkleaf
