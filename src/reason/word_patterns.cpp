#include "reason/word_patterns.h"

#include <algorithm>
#include <charconv>

#include "base/text.h"
#include "reason/stems.h"
#include "reason/text_words.h"
#include "reason/word_parts.h"

namespace chalkleaf::reason {

namespace {

constexpr int kDeepest = 8;  // concepts in concepts

}  // namespace

/// Reads the notation. Words become ids, so the vocabulary is what patterns have.
class WordPatterns::Compiler {
 public:
  explicit Compiler(WordPatterns& all) : all_(all) {}

  int word(std::string_view text) {
    return all_.vocabulary_.try_emplace(stem(text), static_cast<int>(all_.vocabulary_.size()))
        .first->second;
  }
  bool well() const { return well_; }

  // `kick up`, `{furniture}`, `(off|from)`, `..`, `[time>60]`; brackets are concepts without a
  // name.
  Atoms run(std::string_view text) {
    Atoms out;
    for (std::size_t at = 0; at < text.size();) {
      const char c = text[at];
      if (c == ' ') {
        ++at;
        continue;
      }
      const char close = c == '{' ? '}' : c == '[' ? ']' : c == '(' ? ')' : ' ';
      std::size_t end =
          c == '(' ? end_of_brackets(text, at) : std::min(text.find(close, at), text.size());
      if (close != ' ') {
        if (end == text.size()) well_ = false;
        end = std::min(end + 1, text.size());
      }
      const std::string_view token = text.substr(at, end - at);
      if (c == '(') {
        out.push_back(choice(token.substr(1, token.size() - 2)));
      } else {
        for (const Atom& atom : atoms(token)) out.push_back(atom);
      }
      at = end;
    }
    return out;
  }

  std::unique_ptr<Pattern> pattern(std::string_view text) {
    auto out = std::make_unique<Pattern>();
    Clause clause;
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
      const bool mark = at == text.size() || text[at] == '&' || text[at] == '!' ||
                        (text[at] == '>' && !in_test(text, at));
      if (!mark) continue;
      clause.run = run(trim(text.substr(begin, at - begin)));
      if (!clause.run.empty()) {
        out->clauses.push_back(std::move(clause));
      } else if (begin > 0 || at == text.size()) {
        well_ = false;
      }
      if (at == text.size()) break;
      clause = {};
      clause.ordered = text[at] == '>';
      clause.absent = text[at] == '!';
      begin = at + 1;
      if (begin < text.size() && text[begin] >= '0' && text[begin] <= '9') {
        std::size_t end = begin;
        while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
        std::from_chars(text.data() + begin, text.data() + end, clause.window);
        begin = end;
      }
    }
    if (out->clauses.empty() || out->clauses.front().absent) well_ = false;
    return out;
  }

 private:
  static bool in_test(std::string_view text, std::size_t at) {
    const std::size_t open = text.rfind('[', at);
    return open != std::string_view::npos && text.find(']', open) > at;
  }
  // The bracket that closes the one at `at`.
  static std::size_t end_of_brackets(std::string_view text, std::size_t at) {
    int depth = 0;
    for (; at < text.size(); ++at) {
      if (text[at] == '(') ++depth;
      if (text[at] == ')' && --depth == 0) break;
    }
    return at;
  }
  // The next bar outside brackets.
  static std::size_t end_of_way(std::string_view text, std::size_t at) {
    int depth = 0;
    for (; at < text.size(); ++at) {
      if (text[at] == '(') ++depth;
      if (text[at] == ')') --depth;
      if (text[at] == '|' && depth == 0) break;
    }
    return at;
  }
  Atom choice(std::string_view ways) {
    Concept meant;
    for (std::size_t begin = 0; begin <= ways.size();) {
      const std::size_t end = end_of_way(ways, begin);
      if (Atoms way = run(trim(ways.substr(begin, end - begin))); !way.empty())
        meant.ways.push_back(std::move(way));
      begin = end + 1;
    }
    all_.concepts_.push_back(std::move(meant));
    return {Atom::Kind::kConcept, static_cast<int>(all_.concepts_.size()) - 1, 0};
  }
  Atoms atoms(std::string_view token) {
    if (token == "..") return {{Atom::Kind::kGap, 0, 3}};
    if (token == "..1") return {{Atom::Kind::kGap, 0, 1}};
    if (token.front() == '{') {
      const auto found = all_.concept_names_.find(std::string(token.substr(1, token.size() - 2)));
      if (found == all_.concept_names_.end()) well_ = false;
      return {{Atom::Kind::kConcept, found == all_.concept_names_.end() ? 0 : found->second, 0}};
    }
    if (token.front() == '[') return {test(token.substr(1, token.size() - 2))};
    Atoms out;
    for (const TextWord& one : words_in(replace_all(token, "-", " "))) {
      const int id = word(one.text);
      const auto at = static_cast<std::size_t>(id);
      // A sentence has no fillers when it is searched.
      if (at >= all_.fillers_.size() || !all_.fillers_[at])
        out.push_back({Atom::Kind::kWord, id, 0});
    }
    return out;
  }
  Atom test(std::string_view text) {
    Atom out{Atom::Kind::kNumber, 0, 0};
    const std::size_t sign = text.find_first_of("<>");
    if (sign == std::string_view::npos) return out;
    const std::string_view limit = text.substr(sign + 1);
    int value = 0;
    std::from_chars(limit.data(), limit.data() + limit.size(), value);
    out.limit = value;
    out.kind = text.starts_with("time") ? Atom::Kind::kLonger
               : text[sign] == '<'      ? Atom::Kind::kBelow
                                        : Atom::Kind::kAbove;
    return out;
  }

  WordPatterns& all_;
  bool well_ = true;
};

/// Looks for one pattern in one sentence.
class Searcher {
 public:
  Searcher(const WordPatterns& all, const Sentence& sentence) : all_(all), s_(sentence) {}

  bool may_begin(const Atom& atom, std::size_t at) const {
    const Lexeme& word = s_.words[at];
    if (atom.kind == Atom::Kind::kWord) return word.id == atom.id;
    if (atom.kind != Atom::Kind::kConcept) return true;
    const WordPatterns::Concept& meant = all_.concepts_[static_cast<std::size_t>(atom.id)];
    return (meant.any_first && word.number >= 0) || (word.id >= 0 && meant.first.has(word.id));
  }

  /// Where a run that begins at `at` ends; 0 when there is none.
  /// Words that follow each other stand in one clause; only a gap goes over a comma or a colon.
  std::size_t run(const Atom* atom, const Atom* last, std::size_t at, int depth,
                  bool joined = false) const {
    if (atom == last) return at;
    const std::size_t size = s_.words.size();
    if (atom->kind == Atom::Kind::kGap) {
      for (std::size_t skip = 0; skip <= static_cast<std::size_t>(atom->limit); ++skip) {
        if (at + skip > size) break;
        if (const std::size_t end = run(atom + 1, last, at + skip, depth)) return end;
      }
      return 0;
    }
    if (at >= size || depth > kDeepest || !may_begin(*atom, at)) return 0;
    const Lexeme& word = s_.words[at];
    if (joined && word.edge != Lexeme::Edge::kNone) return 0;
    switch (atom->kind) {
      case Atom::Kind::kWord:
      case Atom::Kind::kGap:
        return run(atom + 1, last, at + 1, depth, true);
      case Atom::Kind::kConcept: {
        std::size_t best = 0;
        for (const Atoms& way : all_.concepts_[static_cast<std::size_t>(atom->id)].ways) {
          const std::size_t end = run(way.data(), way.data() + way.size(), at, depth + 1);
          if (end == 0) continue;
          best = std::max(best, run(atom + 1, last, end, depth, true));
        }
        return best;
      }
      case Atom::Kind::kLonger: {
        // `two minutes`, `two and half minutes`, `2 min 30`
        std::size_t unit = at;
        while (unit < size && unit < at + 4 && s_.words[unit].seconds < 0) ++unit;
        if (unit >= size || unit >= at + 4 || s_.words[unit].seconds <= atom->limit) return 0;
        if (unit > at && word.number < 0) return 0;
        return run(atom + 1, last, unit + 1, depth, true);
      }
      case Atom::Kind::kBelow:
      case Atom::Kind::kAbove:
      case Atom::Kind::kNumber: {
        const bool fits = atom->kind == Atom::Kind::kNumber ||
                          (atom->kind == Atom::Kind::kBelow ? word.number < atom->limit
                                                            : word.number > atom->limit);
        return word.number >= 0 && fits ? run(atom + 1, last, at + 1, depth, true) : 0;
      }
    }
    return 0;
  }

  std::size_t end_at(const Clause& clause, std::size_t at) const {
    return run(clause.run.data(), clause.run.data() + clause.run.size(), at, 0);
  }

  bool has(const Clause& clause) const {
    for (std::size_t at = 0; at < s_.words.size(); ++at) {
      if (may_begin(clause.run.front(), at) && end_at(clause, at) != 0) return true;
    }
    return false;
  }

  /// What must not be there is not there when it is negated: `no spotter` is no spotter.
  bool has_unnegated(const Clause& clause) const {
    for (std::size_t at = 0; at < s_.words.size(); ++at) {
      if (!may_begin(clause.run.front(), at)) continue;
      const std::size_t end = end_at(clause, at);
      if (end == 0) continue;
      const auto negated = [&](const Lexeme& word) {
        return word.negated_by >= 0 && !word.negator &&
               static_cast<std::size_t>(word.negated_by) < at;
      };
      if (std::none_of(s_.words.begin() + static_cast<std::ptrdiff_t>(at),
                       s_.words.begin() + static_cast<std::ptrdiff_t>(end), negated))
        return true;
    }
    return false;
  }

  // From the clause `next` on; `taken` are the words of those before it.
  bool search(const Pattern& pattern, std::size_t next, Match& taken) const {
    while (next < pattern.clauses.size() && pattern.clauses[next].absent) ++next;
    if (next == pattern.clauses.size()) return stands(pattern, taken);
    const Clause& clause = pattern.clauses[next];
    for (std::size_t at = 0; at < s_.words.size(); ++at) {
      if (!may_begin(clause.run.front(), at)) continue;
      const std::size_t end = end_at(clause, at);
      if (end == 0 || end == at || !fits(clause, at, end, taken)) continue;
      Match more = taken;
      for (std::size_t i = at; i < end; ++i) more.push_back(i);
      std::sort(more.begin(), more.end());
      if (!search(pattern, next + 1, more)) continue;
      taken = std::move(more);
      return true;
    }
    return false;
  }

 private:
  bool fits(const Clause& clause, std::size_t begin, std::size_t end, const Match& taken) const {
    if (taken.empty()) return true;
    for (const std::size_t i : taken) {
      if (i >= begin && i < end) return false;
    }
    if (clause.ordered) return begin > taken.back() && begin - taken.back() - 1 <= clause.window;
    if (begin > taken.back()) return begin - taken.back() - 1 <= clause.window;
    if (end <= taken.front()) return taken.front() - end <= clause.window;
    return true;
  }

  // Nothing negates a word of the match but the negation that the pattern has itself.
  bool stands(const Pattern& pattern, const Match& taken) const {
    return std::none_of(taken.begin(), taken.end(), [&](std::size_t i) {
      const int by = s_.words[i].negated_by;
      if (by < 0 || s_.words[i].negator) return false;
      const bool may_be_own =
          pattern.has_negation || !s_.words[static_cast<std::size_t>(by)].negator;
      return !may_be_own ||
             !std::binary_search(taken.begin(), taken.end(), static_cast<std::size_t>(by));
    });
  }

  const WordPatterns& all_;
  const Sentence& s_;
};

WordPatterns::~WordPatterns() = default;

WordPatterns::WordPatterns(const plan::DangerBook& book, std::string_view image) {
  kept_ = take_image(image);
  if (!kept_) compile(book);
  for (const plan::Words& one : book.not_negating) not_negating_.push_back(&pattern(one));
  for (const plan::Words& one : book.forbids) forbids_.push_back(&pattern(one));
}

void WordPatterns::compile(const plan::DangerBook& book) {
  Compiler compile(*this);
  const auto value = [](const std::string& text) {
    double out = 0;
    std::from_chars(text.data(), text.data() + text.size(), out);
    return out;
  };
  const auto flags = [&](const std::vector<plan::Words>& words, std::vector<bool>& out) {
    for (const plan::Words& one : words) {
      const auto id = static_cast<std::size_t>(compile.word(trim(one.text)));
      if (out.size() <= id) out.resize(id + 1);
      out[id] = true;
    }
  };
  flags(book.fillers, fillers_);
  for (const auto& [word, number] : book.numbers) numbers_[word] = value(number);
  for (const auto& [word, seconds] : book.units) units_[word] = value(seconds);
  for (const auto& [word, left] : book.contractions) contractions_[word] = left;
  for (const auto& [name, phrases] : book.concepts)
    concept_names_.try_emplace(name, static_cast<int>(concept_names_.size()));
  concepts_.resize(concept_names_.size());
  for (const auto& [name, phrases] : book.concepts) {
    const auto at = static_cast<std::size_t>(concept_names_.at(name));
    Compiler reader(*this);
    std::size_t begin = 0;
    while (begin <= phrases.text.size()) {
      const std::size_t end = std::min(phrases.text.find(',', begin), phrases.text.size());
      Atoms way = reader.run(trim(std::string_view(phrases.text).substr(begin, end - begin)));
      if (!way.empty()) concepts_[at].ways.push_back(std::move(way));
      begin = end + 1;
    }
    if (!reader.well()) broken_.push_back(phrases);
  }
  flags(book.negators, negators_);
  flags(book.turn_back, turns_);
  flags(book.joiners, joiners_);
}

bool WordPatterns::negates(const std::vector<Atom>& run, int depth) const {
  return std::any_of(run.begin(), run.end(), [&](const Atom& atom) {
    const auto id = static_cast<std::size_t>(atom.id);
    if (atom.kind == Atom::Kind::kWord) return id < negators_.size() && negators_[id];
    if (atom.kind != Atom::Kind::kConcept || depth > kDeepest) return false;
    const std::vector<Atoms>& ways = concepts_[id].ways;
    return std::any_of(ways.begin(), ways.end(),
                       [&](const Atoms& way) { return negates(way, depth + 1); });
  });
}

const Pattern& WordPatterns::pattern(const plan::Words& words) {
  // A book's patterns are asked for in the same order whoever asks.
  if (kept_ && next_ < patterns_.size()) return *patterns_[next_++];
  Compiler compile(*this);
  patterns_.push_back(compile.pattern(words.text));
  for (const Clause& clause : patterns_.back()->clauses) {
    if (!clause.absent && negates(clause.run, 0)) patterns_.back()->has_negation = true;
  }
  if (!compile.well()) broken_.push_back(words);
  return *patterns_.back();
}

void WordPatterns::seal() {
  if (kept_) return;
  for (Concept& meant : concepts_) meant.first.resize(vocabulary_.size());
  for (int round = 0; round < kDeepest; ++round) {
    for (Concept& meant : concepts_) {
      for (const Atoms& way : meant.ways) {
        if (way.empty()) continue;
        const Atom& first = way.front();
        if (first.kind == Atom::Kind::kWord) {
          meant.first.add(first.id);
        } else if (first.kind == Atom::Kind::kConcept) {
          const Concept& inner = concepts_[static_cast<std::size_t>(first.id)];
          meant.first.add_all(inner.first);
          meant.any_first = meant.any_first || inner.any_first;
        } else {
          meant.any_first = true;
        }
      }
    }
  }
}

std::vector<int> numbers_of(const Sentence& sentence, const Match& match) {
  std::vector<int> out;
  for (const std::size_t i : match) {
    const double number = sentence.words[i].number;
    if (number >= 0) out.push_back(static_cast<int>(number));
  }
  return out;
}

std::optional<Match> WordPatterns::find(const Pattern& pattern, const Sentence& sentence) const {
  if (sentence.forbidden || sentence.words.empty()) return std::nullopt;
  const Searcher searcher(*this, sentence);
  for (const Clause& clause : pattern.clauses) {
    const bool there = clause.absent ? searcher.has_unnegated(clause) : searcher.has(clause);
    if (there == clause.absent) return std::nullopt;
  }
  Match out;
  if (!searcher.search(pattern, 0, out)) return std::nullopt;
  return out;
}

bool WordPatterns::matches_at(const Pattern& pattern, const Sentence& sentence,
                              std::size_t at) const {
  return Searcher(*this, sentence).end_at(pattern.clauses.front(), at) != 0;
}

}  // namespace chalkleaf::reason
