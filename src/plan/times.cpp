// See the header.
#include "plan/times.h"

#include <array>
#include <string_view>

namespace chalkleaf::plan {
namespace {

using Kind = Token::Kind;

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

std::optional<std::int64_t> unit_at(const std::vector<Token>& tokens, std::size_t at,
                                    std::size_t end) {
  if (at >= end || !tokens[at].is(Kind::kWord)) return std::nullopt;
  for (const Unit& unit : kUnits) {
    if (unit.word == tokens[at].word) return unit.milliseconds;
  }
  return std::nullopt;
}

// `1:30`, `1:30 min`, `1:15 h`, `1:15:00`.
std::optional<TimeRead> read_clock(const std::vector<Token>& tokens, std::size_t at,
                                   std::size_t end) {
  const Token& clock = tokens[at];
  const auto unit = unit_at(tokens, at + 1, end);
  for (std::size_t i = 1; i < clock.fields.size(); ++i) {
    if (clock.fields[i] > 59) return std::nullopt;
  }
  std::int64_t first_ms = clock.fields.size() == 3 ? 3'600'000 : 60'000;
  TimeRead out{{}, at + 1, false, !unit && clock.fields.size() == 2};
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

}  // namespace

std::optional<TimeRead> read_time(const std::vector<Token>& tokens, std::size_t at,
                                  std::size_t end) {
  if (at < end && tokens[at].is(Kind::kClock)) return read_clock(tokens, at, end);
  TimeRead out{{}, at, false, false};
  std::int64_t last_unit = 0;
  while (out.next < end && tokens[out.next].is(Kind::kNumber)) {
    const Token& number = tokens[out.next];
    std::int64_t numerator = number.numerator;
    std::int64_t denominator = number.denominator;
    std::size_t next = out.next + 1;
    if (next + 1 < end && tokens[next].is(Kind::kSlash) && tokens[next + 1].is(Kind::kNumber) &&
        tokens[next + 1].numerator > 0 && tokens[next + 1].numerator <= 60 &&
        tokens[next + 1].denominator == 1) {  // 1/2 min
      denominator *= tokens[next + 1].numerator;
      next += 2;
    }
    const auto unit = unit_at(tokens, next, end);
    if (!unit || (last_unit != 0 && *unit >= last_unit)) break;  // `1 min 30 s`, never `30 s 1 min`
    // At most 10^10 × 3.6 × 10^6: far from overflow.
    const std::int64_t product = numerator * *unit;
    if (number.too_large || product % denominator != 0) out.too_large = true;
    const Duration part = Duration::milliseconds(product / denominator);
    if (part > kLongestDuration) {
      out.too_large = true;
    } else {
      out.value += part;
    }
    last_unit = *unit;
    out.next = next + 1;
  }
  if (out.next == at) return std::nullopt;
  if (out.value > kLongestDuration) out.too_large = true;
  return out;
}

}  // namespace chalkleaf::plan
