// Tested by tests/reason/line_weights_test.cpp.
#include "reason/line_marks.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>

#include "base/text.h"
#include "reason/stems.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

bool is_digit_at(std::string_view text) {
  return !text.empty() && text.front() >= '0' && text.front() <= '9';
}

// How large a number is, not which: few are seen often enough to be learnt one by one.
std::string number_mark(double number) {
  int size = 0;
  for (const double limit : {1.0, 4.0, 8.0, 12.0, 17.0, 30.0, 60.0, 199.0}) {
    if (number > limit) ++size;
  }
  return "n" + std::to_string(size);
}

std::string time_mark(double seconds) {
  int size = 0;
  for (const double limit : {10.0, 20.0, 35.0, 59.0, 89.0, 149.0}) {
    if (seconds > limit) ++size;
  }
  return "t" + std::to_string(size);
}

// The places of negated words, as bytes of the line: a word begins at one of them or does not.
std::vector<std::uint32_t> negated_in(const std::vector<Sentence>& sentences) {
  std::vector<std::uint32_t> out;
  for (const Sentence& sentence : sentences) {
    for (const Lexeme& word : sentence.words) {
      if (sentence.forbidden || word.negated_by >= 0) out.push_back(word.begin);
    }
  }
  return out;
}

// `wall-bars` are two words; `don't` is one.
std::vector<std::string> pieces_of(std::string_view word) {
  std::vector<std::string> out(1);
  for (const char c : word) {
    if (c == '-') {
      out.emplace_back();
    } else if (c != '\'') {
      out.back() += c;
    }
  }
  out.erase(std::remove(out.begin(), out.end(), std::string()), out.end());
  return out;
}

bool is_one_word(std::string_view text) {
  return !text.empty() && text.find_first_not_of("abcdefghijklmnopqrstuvwxyz") == text.npos;
}

}  // namespace

LineWords::LineWords(const plan::DangerBook& book) {
  for (const plan::Words& one : book.fillers) known_[one.text].filler = true;
  for (const auto& [word, value] : book.numbers) known_[word].number = std::atof(value.c_str());
  for (const auto& [word, value] : book.units) known_[word].unit = std::atof(value.c_str());
  for (const auto& [name, phrases] : book.concepts) {
    std::string_view rest = phrases.text;
    while (!rest.empty()) {
      const std::size_t comma = std::min(rest.find(','), rest.size());
      const std::string_view phrase = trim(rest.substr(0, comma));
      rest.remove_prefix(std::min(comma + 1, rest.size()));
      if (!is_one_word(phrase)) continue;
      std::vector<std::string>& kinds = kinds_[stem(phrase)];
      if (kinds.empty() || kinds.back() != "@" + name) kinds.push_back("@" + name);
    }
  }
}

std::vector<LineWords::Word> LineWords::words(std::string_view line,
                                              const std::vector<Sentence>& sentences) const {
  const std::vector<std::uint32_t> negated = negated_in(sentences);
  std::vector<Word> out;
  double number = -1;  // of the word before
  for (const TextWord& one : words_in(line)) {
    const bool is_negated =
        std::binary_search(negated.begin(), negated.end(), static_cast<std::uint32_t>(one.begin));
    for (const std::string& piece : pieces_of(one.text)) {
      const auto found = known_.find(piece);
      const Known known = found == known_.end() ? Known() : found->second;
      if (known.filler) continue;
      Word word;
      double value = known.number;
      if (is_digit_at(piece)) std::from_chars(piece.data(), piece.data() + piece.size(), value);
      if (value >= 0) {
        word.text = number_mark(value);
      } else if (known.unit > 0 && number >= 0) {
        out.pop_back();
        word.text = time_mark(number * known.unit);
      } else {
        word.text = stem(piece);
        if (const auto kinds = kinds_.find(word.text); kinds != kinds_.end())
          word.kinds = &kinds->second;
      }
      number = value;
      if (is_negated) word.text.insert(0, 1, '!');
      out.push_back(std::move(word));
    }
  }
  return out;
}

namespace {

/// Puts marks together without a new string each.
class Marks {
 public:
  explicit Marks(const TakeMark& take) : take_(take) {}
  void one(std::string_view a, std::string_view b = {}, std::string_view c = {},
           std::string_view d = {}) {
    text_.assign(a);
    text_ += b;
    text_ += c;
    text_ += d;
    take_(text_);
  }

 private:
  const TakeMark& take_;
  std::string text_;
};

constexpr std::size_t kNear = 3;  // words

std::string_view negation(const LineWords::Word& word) {
  return word.text.front() == '!' ? "!" : "";
}

// A kind of thing beside a word, and beside another kind: `jump` and `@furniture`.
void marks_of_kinds(const std::vector<LineWords::Word>& words, std::size_t at,
                    std::string_view where, Marks& marks) {
  const LineWords::Word& word = words[at];
  if (word.kinds == nullptr) return;
  const std::string_view no = negation(word);
  const std::size_t from = at > kNear ? at - kNear : 0;
  const std::size_t end = std::min(words.size(), at + kNear + 1);
  for (const std::string& kind : *word.kinds) {
    marks.one(no, kind);
    marks.one(where, no, kind);
    for (std::size_t i = from; i < end; ++i) {
      if (i < at) marks.one(words[i].text, "~", no, kind);
      if (i > at) marks.one(no, kind, "~", words[i].text);
      if (i >= at || words[i].kinds == nullptr) continue;
      for (const std::string& other : *words[i].kinds) marks.one(other, "~", no, kind);
    }
  }
}

}  // namespace

void line_marks(const std::vector<LineWords::Word>& words, LinePlace place, const TakeMark& take) {
  const std::string_view where = place.at_home ? "home " : "gym ";
  Marks marks(take);
  marks.one(where, place.kind == LinePlace::Kind::kItem      ? "item"
                   : place.kind == LinePlace::Kind::kHeading ? "heading"
                                                             : "text");
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string& word = words[i].text;
    marks.one(word);
    marks.one(where, word);
    if (word.front() == '!') marks.one(std::string_view(word).substr(1));
    if (i + 1 < words.size()) marks.one(word, "_", words[i + 1].text);
    if (i + 2 < words.size()) marks.one(word, "~", words[i + 2].text);
    if (i + 3 < words.size()) marks.one(word, "~", words[i + 3].text);
    marks_of_kinds(words, i, where, marks);
  }
}

bool tells_kind(std::string_view mark) {
  return mark.find('~') == mark.npos && mark.find(' ') == mark.npos;
}

}  // namespace chalkleaf::reason
