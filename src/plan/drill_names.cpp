// See the header.
#include "plan/drill_names.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "base/text.h"
#include "plan/drill_name_words.h"

namespace chalkleaf::plan {
namespace {

constexpr std::size_t kMostCuts = 12;

// The letters of U+00C0 to U+017F (Unicode 15, Latin-1 Supplement and Latin Extended-A) without
// their accents.
constexpr std::string_view kWithoutAccents =
    "aaaaaaaceeeeiiii"
    "dnoooooxouuuuyts"
    "aaaaaaaceeeeiiii"
    "dnooooo ouuuuyty"
    "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiijjkkkllllllllllnnnnnnnnnoooooooorrrrrrssss"
    "ssss"
    "ttttttuuuuuuuuuuuuwwyyyzzzzzzs";
static_assert(kWithoutAccents.size() == 0x180 - 0xC0);

using namespace name_words;

template <std::size_t N>
bool is_one_of(std::string_view word, const std::array<std::string_view, N>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// English plurals as they are formed by rule; names that are not plurals come out alike every time,
// which is all a key needs.
std::string_view singular(std::string& word) {
  const std::string_view all = word;
  const auto ends = [&](std::string_view end) { return all.ends_with(end); };
  if (all.size() > 3 && ends("ie")) {  // as `plies` becomes below
    word.replace(word.size() - 2, 2, "y");
  } else if (all.size() <= 2 || !ends("s") || ends("ss") || ends("us") || ends("is")) {
    return word;
  } else if (all.size() > 4 && ends("ies")) {
    word.replace(word.size() - 3, 3, "y");
  } else if (ends("sses") || ends("shes") || ends("ches") || ends("xes")) {
    word.resize(word.size() - 2);
  } else {
    word.pop_back();
  }
  return word;
}

std::string_view apparatus_called(std::string_view word) {
  for (const Apparatus& one : kApparatus) {
    if (!word.empty() && is_one_of(word, one.words)) return one.name;
  }
  return {};
}

// The same of a part's title, where hand apparatus is meant as well: `Ball`.
std::string_view place_called(std::string_view word) {
  const auto* const hand = std::find(kInTheHand.begin(), kInTheHand.end(), word);
  return hand == kInTheHand.end() ? apparatus_called(word) : *hand;
}

class KeyReader {
 public:
  NameKey read(std::string_view name) {
    name = name.substr(0, kLongestName);
    for (std::size_t at = 0; at < name.size();) {
      const Decoded next = decode_utf8(name, at);
      take(next.code, name.substr(at, next.size));
      at += next.size;
    }
    end_word();
    out_.key += article_;  // `Beam A`
    cut_sides();
    judge_cuts();
    return std::move(out_);
  }

 private:
  void take(char32_t c, std::string_view bytes) {
    if (c >= U'A' && c <= U'Z') {
      word_ += static_cast<char>(c - U'A' + U'a');
    } else if ((c >= U'a' && c <= U'z') || (c >= U'0' && c <= U'9')) {
      word_ += static_cast<char>(c);
    } else if (c >= 0xC0 && c < 0x180) {
      const char letter = kWithoutAccents[c - 0xC0];
      letter == ' ' ? end_word() : word_.push_back(letter);
    } else if ((c >= 0x0391 && c <= 0x03A9) || (c >= 0x0410 && c <= 0x042F)) {
      append_utf8(word_, c + 0x20);  // Greek and Russian capitals
    } else if (c == U'\'' || c == U'’' || c == U'‘' || (c >= 0x0300 && c <= 0x036F)) {
      return;  // `coach's`; an accent of its own
    } else if (c == U'&') {
      end_word();
      word_ = "and";
      end_word();
    } else if (c < 0x80 || c == 0xA0 || (c >= 0x2010 && c <= 0x205F)) {
      separate(c);
    } else {
      word_ += bytes;
    }
  }

  void separate(char32_t c) {
    const bool after_space = word_.empty();
    end_word();
    const bool dash = c == U'-' || c == U'–' || c == U'—';
    if (c == U',' || c == U';' || c == U':' || c == U'(' || c == U'[' || c == U'{' ||
        (dash && after_space)) {
      cut();
    }
  }

  void end_word() {
    if (word_.empty()) return;
    const bool article = !out_.key.empty() && is_one_of(word_, kArticles);
    if (held_ && article) cut_at(*held_);
    held_.reset();
    if (article) {  // `Jog on spot` is `Jog on the spot`
      article_ = std::exchange(word_, {});
      return;
    }
    article_.clear();
    const bool before_article = is_one_of(word_, kQualifyBeforeArticle);
    const bool qualifies = is_one_of(word_, kQualify);
    // In `Squat on from the block` and `Band pull in, out` the word belongs to what is done.
    if (pending_ && !before_article && !qualifies) cut_at(*pending_);
    pending_.reset();
    if (qualifies) pending_ = out_.key.size();
    if (before_article) held_ = out_.key.size();
    if (out_.begin == 0 && (before_article || qualifies)) out_.begin = out_.key.size();
    const std::size_t begin = out_.key.size();
    out_.key += singular(word_);
    words_.push_back({begin, std::move(word_)});
    word_.clear();
  }

  void cut() {
    pending_.reset();
    cut_at(out_.key.size());
  }
  void cut_at(std::size_t size) {
    const bool is_new = out_.cuts.empty() || out_.cuts.back().size < size;
    if (size > 0 && is_new && out_.cuts.size() < kMostCuts) out_.cuts.push_back({size});
  }

  // Keeps the cuts behind which the movement stays the same, the longest first.
  void judge_cuts() {
    std::vector<NameCut> kept;
    for (auto cut = out_.cuts.rbegin(); cut != out_.cuts.rend(); ++cut) {
      // A cut that cuts nothing off is the name itself.
      if (cut->size >= out_.key.size() || !stays_the_same(*cut)) continue;
      kept.push_back(*cut);
    }
    out_.cuts = std::move(kept);
  }

  bool stays_the_same(NameCut& cut) const {
    bool helped = false;
    bool with_partner = false;
    bool is_near = false;  // what is named stands only beside it
    std::string_view before;
    for (const Word& word : words_) {
      if (word.begin >= cut.size) {
        if (is_one_of(word.text, kQualify)) is_near = false;
        if (is_one_of(word.text, kNear)) is_near = true;
        helped = helped || is_one_of(word.text, kHelped);
        const bool is_partner = word.text == "partner" || word.text == "pair";
        with_partner = with_partner || (is_partner && before == "with");
        if (changes(word.text, before, is_near)) return false;
        const std::string_view place = apparatus_called(word.text);
        if (!place.empty() && place != "floor" && !is_near) {
          if (!cut.apparatus.empty() && cut.apparatus != place) return false;
          cut.apparatus = place;
        }
      }
      before = word.text;
    }
    return helped || !with_partner;
  }

  static bool changes(std::string_view word, std::string_view before, bool is_near) {
    if (word == "feet" && (before == "two" || before == "2" || before == "both")) return false;
    if (is_one_of(word, kMoves) || is_one_of(word, kOtherwise)) return true;
    if (is_one_of(word, kThings)) return before != "to" && !is_near;  // `Run to the wall`
    if (is_one_of(word, kHandApparatus)) return before == "with" || before == "holding";
    if (word == "back") return before == "on";  // `Bridge on back`
    return (word == "hand" || word == "arm") && (before == "without" || before == "no");
  }

  // `Cartwheel left and right`, `Shoulder rolls L + R`
  void cut_sides() {
    std::size_t first = words_.size();
    while (first > 0 && is_one_of(words_[first - 1].text, kSides)) --first;
    if (first == words_.size() || first == 0) return;
    const NameCut cut{words_[first].begin};
    const auto at = std::lower_bound(
        out_.cuts.begin(), out_.cuts.end(), cut,
        [](const NameCut& one, const NameCut& other) { return one.size < other.size; });
    if (at == out_.cuts.end() || at->size != cut.size) out_.cuts.insert(at, cut);
  }

  struct Word {
    std::size_t begin = 0;  ///< in the key
    std::string text;       ///< without its plural
  };

  NameKey out_;
  std::vector<Word> words_;
  std::string word_;
  std::string article_;                 // the last word, when it is one
  std::optional<std::size_t> held_;     // where the key ended before `down`
  std::optional<std::size_t> pending_;  // and before `with`
};

}  // namespace

namespace {
constexpr std::array<std::string_view, 5> kNoPlace{"without", "no", "tape", "chalk", "pretend"};
}  // namespace

std::string_view apparatus_in(std::string_view words) {
  std::string_view out;
  std::string word;
  const auto end = [&] {
    // `Pull without a bar`, `Tape beam`
    if (is_one_of(word, kNoPlace)) return false;
    const std::string_view called = place_called(singular(word));
    const bool other = !called.empty() && !out.empty() && called != out;
    // `Parallel bars` are not two places.
    const bool second_word = out == "parallelbar" && called == "bar";
    if (other && !second_word) return false;
    if (!called.empty() && !second_word) out = called;
    word.clear();
    return true;
  };
  for (const char c : lower_ascii(words.substr(0, kLongestName))) {
    if (c >= 'a' && c <= 'z') {
      word += c;
    } else if (!word.empty() && !end()) {
      return {};
    }
  }
  return end() ? out : std::string_view{};
}

std::vector<std::string> keys_on(std::string_view apparatus, std::string_view key) {
  if (apparatus.empty() || apparatus == "floor") return {};
  const std::string place(apparatus);
  const std::string name(key);
  std::vector<std::string> out{name + "on" + place, place + name};
  if (place == "vault") {
    out.push_back(name + place);  // `Straddle`
    out.push_back(name + "over" + place);
  }
  // A turn in the air is no turn on tiptoe.
  if (place == "trampette" || place == "trampoline") out.push_back(name + "jump");
  return out;
}

NameKey key_of_name(std::string_view name) { return KeyReader().read(name); }

}  // namespace chalkleaf::plan
