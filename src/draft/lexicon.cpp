// See the header.
#include "draft/lexicon.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "dose/tokens.h"

namespace chalkleaf::draft {
namespace {

constexpr std::array<std::string_view, kRoles> kRoleNames{"warm-up",
                                                          "cool-down",
                                                          "break",
                                                          "part",
                                                          "stretch-part",
                                                          "second",
                                                          "minute",
                                                          "hour",
                                                          "counted",
                                                          "repetition",
                                                          "go",
                                                          "own-count",
                                                          "length",
                                                          "step",
                                                          "set",
                                                          "round",
                                                          "there-and-back",
                                                          "there-begin",
                                                          "along",
                                                          "back",
                                                          "twice",
                                                          "once",
                                                          "hold",
                                                          "in-a-row",
                                                          "until",
                                                          "stuck",
                                                          "max-hold",
                                                          "to-fatigue",
                                                          "as-many",
                                                          "emom",
                                                          "best-of",
                                                          "count-to",
                                                          "rest",
                                                          "rest-before",
                                                          "between",
                                                          "work",
                                                          "no-rest",
                                                          "superset",
                                                          "circuit",
                                                          "through",
                                                          "each",
                                                          "each-side",
                                                          "each-leg",
                                                          "each-arm",
                                                          "each-way",
                                                          "left",
                                                          "right",
                                                          "middle",
                                                          "and",
                                                          "then",
                                                          "qualifier",
                                                          "forward-back",
                                                          "not-a-dose",
                                                          "name-before-number",
                                                          "rank",
                                                          "no-amount-behind",
                                                          "condition",
                                                          "finish",
                                                          "manner",
                                                          "slow",
                                                          "odd-even",
                                                          "or",
                                                          "same",
                                                          "ladder",
                                                          "complex",
                                                          "each-person",
                                                          "for-all",
                                                          "static",
                                                          "body",
                                                          "moving",
                                                          "remark",
                                                          "child",
                                                          "health",
                                                          "home",
                                                          "weekday",
                                                          "people",
                                                          "key",
                                                          "reader",
                                                          "group-turns",
                                                          "swap",
                                                          "age-before",
                                                          "side-each",
                                                          "side-prep",
                                                          "side-noun",
                                                          "leg-noun",
                                                          "arm-noun",
                                                          "way-noun",
                                                          "other-side",
                                                          "other-leg",
                                                          "one-way",
                                                          "hold-for",
                                                          "one-sided",
                                                          "move",
                                                          "name-tail",
                                                          "child-with",
                                                          "all-of",
                                                          "linked",
                                                          "to",
                                                          "from",
                                                          "hold-between",
                                                          "label",
                                                          "out-of",
                                                          "how",
                                                          "do-it",
                                                          "any-number",
                                                          "rate",
                                                          "animal",
                                                          "verb",
                                                          "name-head",
                                                          "held-only",
                                                          "order",
                                                          "place",
                                                          "level-of-three",
                                                          "level",
                                                          "article",
                                                          "ours",
                                                          "for",
                                                          "of",
                                                          "it",
                                                          "again",
                                                          "rest-filler",
                                                          "change-only",
                                                          "times",
                                                          "max-alone",
                                                          "subject",
                                                          "clock-to",
                                                          "unnamed-part",
                                                          "hall",
                                                          "three-ways",
                                                          "running",
                                                          "game",
                                                          "counter",
                                                          "rest-letter",
                                                          "minute-letter",
                                                          "numbers-word",
                                                          "of-everything",
                                                          "column-drill",
                                                          "column-part",
                                                          "column-dose",
                                                          "of-all"};

static_assert(!kRoleNames.back().empty());  // a name each

Piece::Kind kind_of(dose::TokenKind kind) {
  switch (kind) {
    case dose::TokenKind::kNumber:
      return Piece::Kind::kNumber;
    case dose::TokenKind::kWord:
      return Piece::Kind::kWord;
    case dose::TokenKind::kTimes:
      return Piece::Kind::kTimes;
    case dose::TokenKind::kDash:
      return Piece::Kind::kDash;
    case dose::TokenKind::kComma:
      return Piece::Kind::kComma;
    case dose::TokenKind::kSemicolon:
      return Piece::Kind::kSemicolon;
    case dose::TokenKind::kColon:
      return Piece::Kind::kColon;
    case dose::TokenKind::kSlash:
      return Piece::Kind::kSlash;
    case dose::TokenKind::kOpen:
      return Piece::Kind::kOpen;
    case dose::TokenKind::kClose:
      return Piece::Kind::kClose;
    case dose::TokenKind::kStop:
      return Piece::Kind::kStop;
    case dose::TokenKind::kClock:
    case dose::TokenKind::kMoves:
    case dose::TokenKind::kOther:
      break;
  }
  return Piece::Kind::kOther;
}

// A letter x beside a number is the sign.
void find_crosses(Pieces& pieces) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!pieces[i].is_word("x")) continue;
    const bool before = i > 0 && pieces[i - 1].is(Piece::Kind::kNumber);
    const bool after = i + 1 < pieces.size() && pieces[i + 1].is(Piece::Kind::kNumber);
    const bool near = i > 0 && (pieces[i - 1].is_word("s") || !pieces[i].space_before);
    if (before || after || near) pieces[i].kind = Piece::Kind::kTimes;
  }
}

}  // namespace

Pieces pieces_of(std::string_view line) {
  Pieces out;
  for (dose::Token& token : dose::tokens_of(line)) {
    Piece piece;
    piece.kind = kind_of(token.kind);
    piece.begin = token.begin;
    piece.end = token.end;
    piece.in_words = token.in_words;
    const std::string_view raw = line.substr(token.begin, token.end - token.begin);
    piece.text = token.word.empty() ? lower_ascii(raw) : token.word;
    if (piece.is(Piece::Kind::kDash)) piece.text = "-";
    if (piece.is(Piece::Kind::kNumber)) {
      piece.value = static_cast<double>(token.numerator) / static_cast<double>(token.denominator);
      piece.whole = token.is_whole() && !token.too_large;
      if (token.too_large) piece.kind = Piece::Kind::kOther;
    }
    piece.space_before = out.empty() || out.back().end < token.begin;
    if (!out.empty()) out.back().space_after = piece.space_before;
    out.push_back(std::move(piece));
  }
  if (!out.empty()) out.back().space_after = true;
  find_crosses(out);
  return out;
}

std::vector<std::string> words_of_phrase(std::string_view phrase) {
  std::vector<std::string> out;
  const bool plain = std::all_of(phrase.begin(), phrase.end(),
                                 [](char c) { return (c >= 'a' && c <= 'z') || c == ' '; });
  if (!plain) {
    for (Piece& piece : pieces_of(phrase)) out.push_back(std::move(piece.text));
    return out;
  }
  for (std::size_t at = 0; at < phrase.size();) {
    const std::size_t end = std::min(phrase.find(' ', at), phrase.size());
    if (end > at) out.emplace_back(phrase.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

void Lexicon::add(Phrases& to, std::string_view phrase, std::string meaning) {
  Phrase made;
  made.words = words_of_phrase(phrase);
  if (made.words.empty()) return;
  made.meaning = std::move(meaning);
  const std::string first = made.words.front();
  to[first].push_back(std::move(made));
}

Lexicon Lexicon::read(const source::YamlNode& root, Diagnostics& diagnostics) {
  Lexicon out;
  for (const source::YamlEntry& entry : root.entries) {
    const std::string& name = entry.first.text;
    if (name == "language") continue;
    if (name == "short" || name == "amounts" || name == "keys") {
      Phrases& to = name == "short" ? out.short_ : name == "keys" ? out.keys_ : out.amounts_;
      for (const source::YamlEntry& one : entry.second.entries)
        add(to, one.first.text, one.second.text);
      continue;
    }
    const auto role = std::find(kRoleNames.begin(), kRoleNames.end(), name);
    if (role == kRoleNames.end()) {
      diagnostics.error(kBadValue, entry.first.span, fmt::format("words have no role ‘{}’", name));
      continue;
    }
    const auto index = static_cast<std::size_t>(role - kRoleNames.begin());
    Phrases& phrases = out.roles_[index];
    if (!entry.second.items.empty()) out.first_[index] = entry.second.items.front().text;
    for (const source::YamlNode& phrase : entry.second.items) {
      add(phrases, phrase.text, {});
      if (role == kRoleNames.begin() + static_cast<std::ptrdiff_t>(Role::kMove)) {
        add(phrases, phrase.text + "s", {});  // each in its plurals
        add(phrases, phrase.text + "es", {});
      }
    }
  }
  return out;
}

const Lexicon::Phrase* Lexicon::longest(const Phrases& in, const Pieces& pieces, std::size_t at,
                                        std::size_t end) {
  if (at >= end) return nullptr;
  const auto found = in.find(pieces[at].text);
  if (found == in.end()) return nullptr;
  const Phrase* best = nullptr;
  for (const Phrase& phrase : found->second) {
    const std::size_t size = phrase.words.size();
    if (at + size > end || (best != nullptr && best->words.size() >= size)) continue;
    std::size_t same = 1;
    while (same < size && pieces[at + same].text == phrase.words[same]) ++same;
    if (same == size) best = &phrase;
  }
  return best;
}

std::size_t Lexicon::match(Role role, const Pieces& pieces, std::size_t at, std::size_t end) const {
  const Phrase* found = longest(roles_[static_cast<std::size_t>(role)], pieces, at, end);
  return found == nullptr ? 0 : found->words.size();
}

bool Lexicon::any_of(std::span<const Role> roles, const Pieces& pieces, std::size_t at,
                     std::size_t end) const {
  return std::any_of(roles.begin(), roles.end(),
                     [&](Role role) { return is(role, pieces, at, end); });
}

std::size_t Lexicon::match_part(const Pieces& pieces, std::size_t at, std::size_t end) const {
  std::size_t out = 0;
  for (const Role role : kPartRoles) out = std::max(out, match(role, pieces, at, end));
  return out;
}

std::string_view Lexicon::key(std::string_view text) const {
  const Pieces pieces = pieces_of(text);
  const Phrase* found = longest(keys_, pieces, 0, pieces.size());
  return found != nullptr && found->words.size() == pieces.size() ? found->meaning
                                                                  : std::string_view();
}

std::size_t Lexicon::begins(Role role, std::string_view text) const {
  constexpr std::size_t kLongest = 40;  // bytes of a phrase
  const Pieces pieces = pieces_of(text.substr(0, kLongest));
  const std::size_t count = match(role, pieces, 0, pieces.size());
  return count == 0 ? 0 : pieces[count - 1].end;
}

bool Lexicon::within(Role role, const Pieces& pieces, std::size_t begin, std::size_t end) const {
  for (std::size_t at = begin; at < end; ++at) {
    if (is(role, pieces, at, end)) return true;
  }
  return false;
}

Lexicon::Spelled Lexicon::spelled(const Pieces& pieces, std::size_t at, std::size_t end) const {
  const Phrase* found = longest(short_, pieces, at, end);
  return found == nullptr ? Spelled{} : Spelled{found->meaning, found->words.size()};
}

Lexicon::Spelled Lexicon::amount(const Pieces& pieces, std::size_t at, std::size_t end) const {
  const Phrase* found = longest(amounts_, pieces, at, end);
  return found == nullptr ? Spelled{} : Spelled{found->meaning, found->words.size()};
}

}  // namespace chalkleaf::draft
