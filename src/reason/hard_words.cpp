// Where a word of the trade stands, whether it is one there, and whether anything explains it.
#include "reason/hard_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"
#include "reason/drill_lines.h"
#include "reason/family_text.h"
#include "reason/text_words.h"
#include "reason/trade_words.h"

namespace chalkleaf::reason {
namespace {

using TextWords = std::vector<TextWord>;

std::string_view word_at(const TextWords& words, std::size_t i) {
  return i < words.size() ? std::string_view(words[i].text) : std::string_view();
}

// `a tuck`, `tuck jump`, but not `tuck your chin in` or `arch of the foot`.
bool is_noun(const TextWords& words, std::size_t i, FamilyText::Kind kind) {
  const std::string_view before = i > 0 ? word_at(words, i - 1) : std::string_view();
  const std::string_view after = word_at(words, i + 1);
  if (is_one_of(after, {"your", "his", "her", "their", "the", "it", "them", "under", "of", "in",
                        "chin", "knees", "both", "one", "elbows", "everything"})) {
    return false;
  }
  if (kind == FamilyText::Kind::kName) return true;
  const bool beside_another = i > 1 && is_one_of(before, {"to", "and", "or", "then"}) &&
                              find_trade_word(word_at(words, i - 2)) != nullptr;
  if (beside_another) return true;  // `from dish to arch`
  return is_one_of(before, {"a", "an", "the", "this", "our", "in", "into", "from", "your"}) ||
         is_one_of(after, {"hold", "jump", "shape", "position", "rock", "rocks", "roll", "lever",
                           "support", "balance", "body", "sit", "swing"});
}

// The word of the trade at this place, if it is used as one.
const TradeWord* trade_word_at(const TextWords& words, std::size_t i, FamilyText::Kind kind) {
  const TradeWord* word = find_trade_word(words[i].text);
  if (word == nullptr) return nullptr;
  switch (word->use) {
    case TradeUse::kAlways:
      return word;
    case TradeUse::kNoun:
      return is_noun(words, i, kind) ? word : nullptr;
    case TradeUse::kName:
      return kind == FamilyText::Kind::kText ? nullptr : word;
  }
  return nullptr;
}

// `dish (a shallow curve)`, `dish: …`, `a dish is …`, `this is our dish`, `we call it dish`,
// `a shallow curve (dish)`.
bool explains(std::string_view text, const TextWords& words, std::size_t i) {
  const std::string_view behind = trim(text.substr(words[i].end));
  for (const std::string_view mark : {"(", ":", "=", "–", "—", "- "}) {
    if (behind.starts_with(mark) && words.size() > i + 2) return true;
  }
  if (behind.starts_with(')') && i > 1 && trim(text.substr(0, words[i].begin)).ends_with('(')) {
    return true;
  }
  if (is_one_of(word_at(words, i + 1), {"means", "is", "are"}) && words.size() > i + 3) return true;
  for (std::size_t k = i - std::min<std::size_t>(i, 3); k < i; ++k) {
    if (is_one_of(words[k].text, {"our", "called", "call", "named", "say"})) return true;
  }
  return false;
}

// Only in full sentences: in a drill's name `Dish: …` would be its dose.
bool may_explain(const FamilyText& text) { return text.kind == FamilyText::Kind::kText; }

/// One word of the trade on the page.
struct Occurrence {
  const TradeWord* word = nullptr;
  const FamilyText* text = nullptr;
  TextWord where;
};

Span span_of(const Occurrence& found) {
  const plan::Words& words = *found.text->words;
  const plan::Drill* drill = found.text->drill;
  const Span whole = drill == nullptr ? words.span : place_in_plan(*drill, words);
  if (whole != words.span || whole.text() != words.text) return whole;
  Span out = whole;
  out.begin = whole.begin + static_cast<std::uint32_t>(found.where.begin);
  out.end = whole.begin + static_cast<std::uint32_t>(found.where.end);
  return out;
}

bool is_english(const plan::Club& club) {
  const std::string language = lower_ascii(club.language);
  return language == "en" || language.starts_with("en-");
}

std::set<const TradeWord*> explained_by(const plan::Club& club) {
  std::set<const TradeWord*> out;
  for (const plan::ExplainedWord& one : club.words) {
    for (const TextWord& word : words_in(one.word.text)) out.insert(find_trade_word(word.text));
  }
  return out;
}

Diagnostic hard(const Occurrence& found, Diagnostics& diagnostics) {
  const plan::Words& words = *found.text->words;
  const Span span = span_of(found);
  const std::string written(
      std::string_view(words.text).substr(found.where.begin, found.where.end - found.where.begin));
  Diagnostic out{Severity::kWarning, "hard-words", span,
                 fmt::format("a family may not know the word {}, and nothing explains it",
                             quoted(lower_ascii(written)))};
  const plan::Drill* drill = found.text->drill;
  if (drill != nullptr && words.span != span && is_inherited(*drill, words)) {
    label_library(diagnostics, out, *drill->known, words.span, "it stands in the library here");
  }
  out.hint = fmt::format(
      "explain it in club.yaml, as in ‘words: {{{}: {}}}’, or in the drill's ‘plain:’, or use a "
      "plainer word",
      lower_ascii(written), found.word->meaning);
  return out;
}

}  // namespace

void check_hard_words(const Subject& subject, Diagnostics& diagnostics) {
  if (!subject.at_home() || !is_english(subject.club)) return;
  std::set<const TradeWord*> explained = explained_by(subject.club);
  const std::vector<FamilyText> texts = family_texts(subject.session);
  std::vector<Occurrence> occurrences;
  for (const FamilyText& text : texts) {
    // Not for at home, which is said and enough.
    const plan::LibraryDrill* known = text.drill == nullptr ? nullptr : text.drill->known;
    if (known != nullptr && is_for_the_gym(*known)) continue;
    const TextWords words = words_in(text.words->text);
    for (std::size_t i = 0; i < words.size(); ++i) {
      const TradeWord* word = trade_word_at(words, i, text.kind);
      if (word == nullptr) continue;
      const bool told =
          text.described || (may_explain(text) && explains(text.words->text, words, i));
      if (told) explained.insert(word);
      occurrences.push_back({word, &text, words[i]});
    }
  }
  Gathered gathered;
  for (const Occurrence& one : occurrences) {
    if (explained.count(one.word) > 0) continue;
    gathered.add(std::string(one.word->word), span_of(one), "here too",
                 [&] { return hard(one, diagnostics); });
  }
  gathered.add_to(diagnostics);
}

namespace {

/// The entries of `words:`, by the singular of their first word.
using Glossary =
    std::map<std::string, std::vector<std::pair<TextWords, const plan::ExplainedWord*>>>;

Glossary glossary_of(const plan::Club& club) {
  Glossary out;
  for (const plan::ExplainedWord& one : club.words) {
    TextWords words = words_in(one.word.text);
    if (words.empty()) continue;
    std::string first = singular(words.front().text);
    out[std::move(first)].emplace_back(std::move(words), &one);
  }
  return out;
}

bool stands_at(const TextWords& phrase, const TextWords& words, std::size_t at) {
  if (at + phrase.size() > words.size()) return false;
  for (std::size_t i = 0; i < phrase.size(); ++i) {
    if (singular(phrase[i].text) != singular(words[at + i].text)) return false;
  }
  return true;
}

}  // namespace

std::vector<const plan::ExplainedWord*> words_to_explain(const plan::Session& session,
                                                         const plan::Club& club) {
  std::vector<const plan::ExplainedWord*> out;
  const Glossary glossary = glossary_of(club);
  if (glossary.empty()) return out;
  std::set<const plan::ExplainedWord*> seen;
  for (const FamilyText& text : family_texts(session)) {
    const TextWords words = words_in(text.words->text);
    for (std::size_t i = 0; i < words.size(); ++i) {
      const auto entries = glossary.find(singular(words[i].text));
      if (entries == glossary.end()) continue;
      for (const auto& [phrase, entry] : entries->second) {
        if (!stands_at(phrase, words, i)) continue;
        // `Tuck your chin in` needs no word explained.
        const bool another_sense = phrase.size() == 1 && find_trade_word(phrase[0].text) &&
                                   trade_word_at(words, i, text.kind) == nullptr;
        if (!another_sense && seen.insert(entry).second) out.push_back(entry);
      }
    }
  }
  return out;
}

}  // namespace chalkleaf::reason
