// See the header.
#include "dose/times.h"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <string_view>

namespace chalkleaf::dose {
namespace {

struct Unit {
  std::string_view word;
  std::int64_t milliseconds;
};
// `m` is left out: it could be metres.
constexpr std::array<Unit, 14> kUnits{{{"s", 1000},
                                       {"sec", 1000},
                                       {"secs", 1000},
                                       {"second", 1000},
                                       {"seconds", 1000},
                                       {"min", 60'000},
                                       {"mins", 60'000},
                                       {"minute", 60'000},
                                       {"minutes", 60'000},
                                       {"h", 3'600'000},
                                       {"hr", 3'600'000},
                                       {"hrs", 3'600'000},
                                       {"hour", 3'600'000},
                                       {"hours", 3'600'000}}};

// `1:30`, `1:30 min`, `1:15 h`, `1:15:00`.
std::optional<TimeRead> read_clock(const std::vector<Token>& tokens, std::size_t at,
                                   std::size_t end) {
  const Token& clock = tokens[at];
  const auto unit = unit_at(tokens, at + 1, end);
  for (std::size_t i = 1; i < clock.fields.size(); ++i) {
    if (clock.fields[i] > 59) return std::nullopt;
  }
  std::int64_t first_ms = clock.fields.size() == 3 ? 3'600'000 : 60'000;
  TimeRead out;
  out.next = at + 1;
  out.bare_clock = !unit && clock.fields.size() == 2;
  out.seconds = clock.fields.size() == 2 && (!unit || *unit == 60'000);
  if (unit) {
    if (*unit == 1000 || (clock.fields.size() == 3 && *unit != 3'600'000)) return std::nullopt;
    first_ms = *unit;
    out.next = at + 2;
  }
  std::int64_t ms = 0;
  for (const std::int64_t field : clock.fields) {
    ms += field * first_ms;
    first_ms /= 60;
  }
  out.value = Duration::milliseconds(ms);
  out.too_large = out.value > kLongestDuration;
  return out;
}

bool is_word_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end,
                std::initializer_list<std::string_view> words) {
  return at < end && std::any_of(words.begin(), words.end(),
                                 [&](std::string_view word) { return tokens[at].is_word(word); });
}
bool is_number_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
  return at < end && tokens[at].is(TokenKind::kNumber);
}

/// A number as it may stand before a unit.
struct Share {
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;
  std::size_t next = 0;
  bool too_large = false;
  bool hundredths = false;  ///< `1.30`
};

// `/2` behind a number, in sixtieths at the finest; the denominator, 0 when there is none.
std::int64_t divided_by(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
  if (at >= end || !tokens[at].is(TokenKind::kSlash) || !is_number_at(tokens, at + 1, end))
    return 0;
  const Token& by = tokens[at + 1];
  return by.denominator == 1 && by.numerator > 0 && by.numerator <= 60 ? by.numerator : 0;
}

// `20`, `1/2`, `2 1/2`, `half a`, `a`; the article only where a whole unit follows it.
std::optional<Share> read_share(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
  const auto article = [&](std::size_t i) { return is_word_at(tokens, i, end, {"a", "an"}); };
  if (is_word_at(tokens, at, end, {"half"})) {
    return Share{1, 2, article(at + 1) ? at + 2 : at + 1, false, false};
  }
  if (article(at) && is_word_at(tokens, at + 1, end, {"min", "minute", "second", "hour"})) {
    return Share{1, 1, at + 1, false, false};
  }
  if (!is_number_at(tokens, at, end)) return std::nullopt;
  const Token& number = tokens[at];
  Share out{number.numerator, number.denominator, at + 1, number.too_large,
            number.denominator == 100};
  if (const std::int64_t by = divided_by(tokens, at + 1, end); by > 0) {
    out.denominator *= by;
    out.next = at + 3;
  } else if (number.denominator == 1 && is_number_at(tokens, at + 1, end)) {
    const Token& part = tokens[at + 1];
    const std::int64_t share = divided_by(tokens, at + 2, end);
    if (share > part.numerator && part.denominator == 1) {  // `2 1/2`
      out.numerator = number.numerator * share + part.numerator;
      out.denominator = share;
      out.next = at + 4;
    }
  }
  if (out.numerator < out.denominator && article(out.next)) ++out.next;  // `½ a minute`
  return out;
}

// The unit behind a number. A single m is one only in `1m30s`: it could be metres.
std::optional<std::int64_t> unit_behind(const std::vector<Token>& tokens, std::size_t at,
                                        std::size_t end) {
  if (const auto unit = unit_at(tokens, at, end)) return unit;
  if (at < end && tokens[at].is_word("m") && is_number_at(tokens, at + 1, end) &&
      unit_at(tokens, at + 2, end) == 1000) {
    return 60'000;
  }
  return std::nullopt;
}

// `1 min 30`, `1 h 15`: the next smaller unit goes without saying, where nothing is counted by it.
bool is_bare_remainder(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
  if (!is_number_at(tokens, at, end) || tokens[at].denominator != 1) return false;
  if (tokens[at].numerator >= 60 || tokens[at].too_large) return false;
  return at + 1 == end || is_word_at(tokens, at + 1, end,
                                     {"rest", "hold", "holds", "held", "each", "on", "off", "work",
                                      "per", "ea", "between"});
}

// `:30` is half a minute; no other use of a colon stands so close to two digits.
std::optional<TimeRead> read_bare_seconds(const std::vector<Token>& tokens, std::size_t at,
                                          std::size_t end) {
  if (at >= end || !tokens[at].is(TokenKind::kColon) || !is_number_at(tokens, at + 1, end)) {
    return std::nullopt;
  }
  const Token& number = tokens[at + 1];
  const bool two_digits = number.begin == tokens[at].end && number.end == number.begin + 2 &&
                          number.denominator == 1 && number.numerator < 60;
  if (!two_digits) return std::nullopt;
  TimeRead out;
  out.value = Duration::seconds(number.numerator);
  out.next = at + 2;
  out.bare_clock = out.seconds = true;
  return out;
}

}  // namespace

std::optional<std::int64_t> unit_at(const std::vector<Token>& tokens, std::size_t at,
                                    std::size_t end) {
  if (at >= end || !tokens[at].is(TokenKind::kWord)) return std::nullopt;
  for (const Unit& unit : kUnits) {
    if (unit.word == tokens[at].word) return unit.milliseconds;
  }
  return std::nullopt;
}

std::optional<TimeRead> read_time(const std::vector<Token>& tokens, std::size_t at,
                                  std::size_t end) {
  if (at < end && tokens[at].is(TokenKind::kClock)) return read_clock(tokens, at, end);
  if (const auto seconds = read_bare_seconds(tokens, at, end)) return seconds;
  TimeRead out;
  out.next = at;
  std::int64_t last_unit = 0;
  const auto add = [&](Duration part, std::size_t next, std::int64_t unit) {
    if (part > kLongestDuration) {
      out.too_large = true;
    } else {
      out.value += part;
    }
    last_unit = unit;
    out.next = next;
    out.seconds = unit == 1000;
  };
  for (;;) {
    const bool joined = last_unit != 0 && is_word_at(tokens, out.next, end, {"and"});
    const std::size_t begin = joined ? out.next + 1 : out.next;
    if (last_unit > 1000 && !joined && is_bare_remainder(tokens, begin, end)) {
      add(Duration::milliseconds(tokens[begin].numerator * last_unit / 60), begin + 1,
          last_unit / 60);
      break;
    }
    const auto share = read_share(tokens, begin, end);
    const auto unit = share ? unit_behind(tokens, share->next, end) : std::nullopt;
    if (!unit || (last_unit != 0 && *unit >= last_unit)) break;  // `1 min 30 s`, never `30 s 1 min`
    // At most 10^10 × 3.6 × 10^6: far from overflow.
    const std::int64_t product = share->numerator * *unit;
    if (share->too_large || product % share->denominator != 0) out.too_large = true;
    out.doubtful = out.doubtful || (share->hundredths && *unit >= 60'000 &&
                                    share->numerator % share->denominator < 60);
    add(Duration::milliseconds(product / share->denominator), share->next + 1, *unit);
  }
  if (out.next == at) return std::nullopt;
  if (out.value > kLongestDuration) out.too_large = true;
  return out;
}

}  // namespace chalkleaf::dose
