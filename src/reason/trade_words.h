// The words of the trade that a parent would not know, with what they mean. Inside the room.
#pragma once

#include <span>
#include <string_view>

namespace chalkleaf::reason {

/// Where a word is one of the trade, and not of everyday English.
enum class TradeUse {
  kAlways,  ///< `straddle`
  kNoun,    ///< `arch`, but not `arch your back`
  kName,    ///< only in the name of a drill or of a choice: `cast`, `lever`
};

struct TradeWord {
  std::string_view word;  ///< singular, as words_in gives it, without hyphens
  TradeUse use;
  std::string_view meaning;  ///< in plain words; for the hint
};

std::span<const TradeWord> trade_words();
/// The entry of a word, in the singular or not, with or without hyphens; else null.
const TradeWord* find_trade_word(std::string_view word);

}  // namespace chalkleaf::reason
