// A text becomes sentences: words without endings, numbers, times, and what negates what.
#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/text.h"
#include "reason/stems.h"
#include "reason/text_words.h"
#include "reason/word_patterns.h"

namespace chalkleaf::reason {
namespace {

constexpr std::size_t kShortQuestion = 4;  // words
constexpr std::size_t kMostWords = 80;     // of one sentence; a longer one is cut in two

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool is_tens(double number) { return number >= 20 && number < 100 && std::fmod(number, 10) == 0; }

/// A word as written, taken apart at hyphens, digits and apostrophes.
struct Piece {
  std::string text;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
};

using Contractions = std::map<std::string, std::string, std::less<>>;

// `don't` is `do not`, `you're` is `you`, `mum's` is `mum`.
void add_without_apostrophe(std::string word, std::uint32_t begin, std::uint32_t end,
                            const Contractions& contractions, std::vector<Piece>& out) {
  const std::size_t mark = word.find('\'');
  std::string bare = word;
  std::erase(bare, '\'');
  if (const auto found = contractions.find(bare); found != contractions.end()) {
    out.push_back({found->second, begin, end});
    out.push_back({"not", begin, end});  // which the book lists among its negators
    return;
  }
  if (mark != std::string::npos && mark > 0) word.resize(mark);
  out.push_back({std::move(word), begin, end});
}

// `30s` is `30 s`, `push-ups` is `push ups`.
std::vector<Piece> pieces_of(const TextWord& word, const Contractions& contractions) {
  std::vector<Piece> out;
  const std::string& text = word.text;
  std::size_t begin = 0;
  const auto cut = [&](std::size_t end) {
    if (end > begin) {
      add_without_apostrophe(text.substr(begin, end - begin),
                             static_cast<std::uint32_t>(word.begin),
                             static_cast<std::uint32_t>(word.end), contractions, out);
    }
    begin = end;
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '-') {
      cut(i);
      begin = i + 1;
    } else if (i > begin && is_digit(text[i]) != is_digit(text[i - 1])) {
      cut(i);
    }
  }
  cut(text.size());
  return out;
}

enum class Stop { kNone, kComma, kClause, kSentence };

// A line end parts sentences, unless a long line was broken: the next begins with a small letter.
bool goes_on(std::string_view text, std::size_t line_end) {
  constexpr std::size_t kBroken = 68;  // bytes: shorter lines are lines of their own
  const std::size_t before = text.substr(0, line_end).rfind('\n');
  const std::size_t length = line_end - (before == std::string_view::npos ? 0 : before + 1);
  const std::size_t next = text.find_first_not_of(" \t>\n", line_end);
  return next != std::string_view::npos && length >= kBroken &&
         ((text[next] >= 'a' && text[next] <= 'z') || text[next] == '(');
}

// What stands between two words. `min.` ends no sentence when a small letter follows, `2.5` never.
Stop stop_between(std::string_view text, std::size_t from, std::size_t to) {
  Stop out = Stop::kNone;
  for (std::size_t i = from; i < to; ++i) {
    const char c = text[i];
    if (c == ',') out = std::max(out, Stop::kComma);
    if (c == ':' || c == '(' || c == ')' || c == '"') out = std::max(out, Stop::kClause);
    if ((c == '-' || c == '=') && i > from && i + 1 < to) out = std::max(out, Stop::kClause);
    if (c == '\n' && !goes_on(text, i)) return Stop::kSentence;
    const std::string_view rest = text.substr(i, 3);
    if (rest == "–" || rest == "—" || rest == "“" || rest == "”") {
      out = std::max(out, Stop::kClause);
    }
    // A bar parts the cells of a table.
    if (c == '!' || c == '?' || c == ';' || c == '|' || rest == "…" || c == '\r')
      return Stop::kSentence;
    if (c == '.') {
      const bool number = i == from && to == i + 1 && from > 0 && is_digit(text[from - 1]);
      if (number) continue;
      const bool small = to < text.size() && text[to] >= 'a' && text[to] <= 'z';
      if (!small || to - i > 2) return Stop::kSentence;
      out = std::max(out, Stop::kClause);
    }
  }
  return out;
}

bool is_one_slip_away(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > 1) return false;
  const auto [in_a, in_b] = std::mismatch(a.begin(), a.end(), b.begin());
  const std::string_view rest_a(in_a, a.end());
  const std::string_view rest_b(in_b, b.end());
  if (rest_a.empty()) return true;
  if (a.size() < b.size()) return rest_a == rest_b.substr(1);
  const bool swapped = rest_a.size() > 1 && rest_a[0] == rest_b[1] && rest_a[1] == rest_b[0] &&
                       rest_a.substr(2) == rest_b.substr(2);
  return swapped || rest_a.substr(1) == rest_b.substr(1);
}

bool is_question(std::string_view text, std::size_t from, std::size_t to) {
  return text.substr(from, to - from).find('?') != std::string_view::npos;
}

// The `5` of `2.5` or `0,5`.
bool is_fraction(std::string_view text, std::size_t last_end, const TextWord& word) {
  return last_end > 0 && word.begin == last_end + 1 && is_digit(text[last_end - 1]) &&
         (text[last_end] == '.' || text[last_end] == ',') &&
         std::all_of(word.text.begin(), word.text.end(), is_digit);
}

}  // namespace

std::vector<Sentence> WordPatterns::sentences(std::string_view text) const {
  std::vector<Sentence> out;
  Sentence now;
  const auto end_sentence = [&] {
    if (!now.words.empty()) {
      now.has.assign(vocabulary_.size(), false);
      for (const Lexeme& word : now.words) {
        if (word.id >= 0) now.has[static_cast<std::size_t>(word.id)] = true;
      }
      negate(now);
      out.push_back(std::move(now));
    }
    now = {};
  };
  const auto is_no = [&](const std::string& word) {
    const auto known = vocabulary_.find(stem(word));
    const auto id =
        known == vocabulary_.end() ? negators_.size() : static_cast<std::size_t>(known->second);
    return id < negators_.size() && negators_[id];
  };
  std::size_t last_end = 0;
  Lexeme::Edge edge = Lexeme::Edge::kNone;
  for (const TextWord& word : words_in(text)) {
    if (is_fraction(text, last_end, word) && !now.words.empty()) {
      double places = 1;
      for (const char c : word.text) {
        places /= 10;
        if (is_digit(c)) now.words.back().number += places * (c - '0');
      }
      last_end = word.end;
      continue;
    }
    const Stop stop = stop_between(text, last_end, word.begin);
    const std::size_t was_end = last_end;
    last_end = word.end;
    // `Sore wrists? Same number.` is one thought, `Handstands? Never.` is two.
    const bool asked = stop == Stop::kSentence && now.words.size() <= kShortQuestion &&
                       is_question(text, was_end, word.begin) && !is_no(word.text);
    if (asked) {
      edge = Lexeme::Edge::kClause;
    } else if (stop == Stop::kSentence || now.words.size() >= kMostWords) {
      // `March in socks? No, bare feet.`
      if (is_no(word.text) && is_question(text, was_end, word.begin)) now.forbidden = true;
      end_sentence();
      edge = Lexeme::Edge::kNone;
    } else if (stop == Stop::kClause) {
      edge = Lexeme::Edge::kClause;
    } else if (stop == Stop::kComma && edge == Lexeme::Edge::kNone) {
      edge = Lexeme::Edge::kComma;
    }
    for (const Piece& piece : pieces_of(word, contractions_)) {
      Lexeme lexeme;
      lexeme.begin = piece.begin;
      lexeme.end = piece.end;
      const auto known = vocabulary_.find(stem(piece.text));
      lexeme.id = known != vocabulary_.end() ? known->second : meant_by(piece.text);
      const auto flag = [&](const std::vector<bool>& flags) {
        const auto id = static_cast<std::size_t>(lexeme.id);
        return lexeme.id >= 0 && id < flags.size() && flags[id];
      };
      if (flag(fillers_)) continue;
      lexeme.negator = flag(negators_);
      if (is_digit(piece.text.front())) {
        lexeme.number = 0;
        std::from_chars(piece.text.data(), piece.text.data() + piece.text.size(), lexeme.number);
      } else if (const auto number = numbers_.find(piece.text); number != numbers_.end()) {
        lexeme.number = number->second;
      }
      if (const auto unit = units_.find(piece.text); unit != units_.end()) {
        // `half a minute`, `two minutes`, `two and a half minutes`, `a full minute`
        double count = -1;
        const std::size_t size = now.words.size();
        for (std::size_t back = 1; back <= std::min<std::size_t>(size, 3) && count < 0; ++back)
          count = now.words[size - back].number;
        if (count == 0.5 && size >= 3 && now.words[size - 3].number >= 1)
          count += now.words[size - 3].number;
        if (count >= 0 || unit->second > 1) lexeme.seconds = unit->second * std::max(count, 0.0);
        if (count < 0 && unit->second > 1) lexeme.seconds = unit->second;
      }
      // `Twenty-eight` is one number.
      Lexeme* const tens = now.words.empty() ? nullptr : &now.words.back();
      if (tens != nullptr && edge == Lexeme::Edge::kNone && is_tens(tens->number) &&
          lexeme.number >= 1 && lexeme.number < 10 && !is_digit(piece.text.front()) &&
          tens->end - tens->begin > 2) {
        tens->number += lexeme.number;
        tens->end = lexeme.end;
        continue;
      }
      lexeme.edge = edge;
      edge = Lexeme::Edge::kNone;
      now.words.push_back(lexeme);
    }
  }
  end_sentence();
  // `Handstands at home? Never.`, `… a bridge. Don't.`
  for (std::size_t i = 0; i + 1 < out.size(); ++i) {
    const std::vector<Lexeme>& next = out[i + 1].words;
    if (next.size() <= 2 && next.back().negator) out[i].forbidden = true;
  }
  return out;
}

// `Hanstand` is a handstand: a long word with one letter wrong, missing or too many.
int WordPatterns::meant_by(const std::string& word) const {
  constexpr std::size_t kLong = 8;  // letters; shorter words are too near to each other
  if (word.size() < kLong) return -1;
  const std::string wanted = stem(word);
  for (auto at = vocabulary_.lower_bound(wanted.substr(0, 1));
       at != vocabulary_.end() && at->first[0] == wanted[0]; ++at) {
    if (at->first.size() + 2 >= kLong && is_one_slip_away(at->first, wanted)) return at->second;
  }
  return -1;
}

// A negation reaches to the end of its clause; over a comma only along a list: `no bridges,
// back-bends or rolls`.
void WordPatterns::negate(Sentence& sentence) const {
  std::vector<Lexeme>& words = sentence.words;
  const auto in = [](const Lexeme& word, const std::vector<bool>& flags) {
    const auto id = static_cast<std::size_t>(word.id);
    return word.id >= 0 && id < flags.size() && flags[id];
  };
  const auto list_goes_on = [&](std::size_t from) {
    std::size_t to = from + 1;
    bool joined = false;
    while (to < words.size() && words[to].edge == Lexeme::Edge::kNone) {
      joined = joined || (to - from <= 2 && in(words[to], joiners_));
      ++to;
    }
    return joined || to - from <= 2;
  };
  int by = -1;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i].edge == Lexeme::Edge::kClause) by = -1;
    if (words[i].edge == Lexeme::Edge::kComma && by >= 0 && !list_goes_on(i)) by = -1;
    if (in(words[i], turns_)) by = -1;
    words[i].negated_by = by;
    if (!words[i].negator) continue;
    const bool harmless =
        std::any_of(not_negating_.begin(), not_negating_.end(),
                    [&](const Pattern* one) { return matches_at(*one, sentence, i); });
    if (!harmless) by = static_cast<int>(i);
  }
  // `Not allowed: …` forbids all of its sentence, `… are not for at home, but …` what stands
  // before.
  constexpr std::size_t kOpening = 2;  // words before it
  for (const Pattern* one : forbids_) {
    const auto match = find(*one, sentence);
    if (!match) continue;
    if (match->front() <= kOpening && match->back() + 1 < words.size()) sentence.forbidden = true;
    // `Stay with her: next door does not count` takes nothing back of what stands before the colon.
    std::size_t from = match->front();
    while (from > 0 && words[from].edge != Lexeme::Edge::kClause) --from;
    if (match->front() < from + 2) from = 0;
    for (std::size_t i = from; i <= match->back(); ++i)
      words[i].negated_by = static_cast<int>(match->front());
  }
}

}  // namespace chalkleaf::reason
