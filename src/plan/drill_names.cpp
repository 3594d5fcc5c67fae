// See the header.
#include "plan/drill_names.h"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "base/text.h"

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

// Words behind which only the where and how of a drill is said.
constexpr std::array<std::string_view, 32> kQualify{
    "above", "across", "against", "along",   "around",  "as",      "at",      "behind",
    "below", "beside", "between", "by",      "for",     "holding", "in",      "like",
    "near",  "off",    "on",      "over",    "round",   "through", "under",   "until",
    "using", "while",  "within",  "wearing", "without", "toward",  "towards", "with"};
// `Jump down` is another drill than `Jump`, and `Dish to arch` than `Dish`; `Roll down the wedge`
// is a roll, and `Run to the wall` a run.
constexpr std::array<std::string_view, 7> kQualifyBeforeArticle{"down", "up",   "to", "from",
                                                                "into", "onto", "out"};
// `Tuck jump with half turn` is another drill than `Tuck jump`.
constexpr std::array<std::string_view, 13> kMoves{"turn", "twist", "jump",    "roll", "handstand",
                                                  "hop",  "kick",  "leap",    "spin", "cartwheel",
                                                  "half", "full",  "rotation"};
constexpr std::array<std::string_view, 5> kArticles{"the", "a", "an", "your", "our"};

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
    std::reverse(out_.cuts.begin(), out_.cuts.end());
    // A cut that cuts nothing off is the name itself.
    while (!out_.cuts.empty() && out_.cuts.front() >= out_.key.size()) {
      out_.cuts.erase(out_.cuts.begin());
    }
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
    // Behind `with` a word decides: kit, or a move of its own.
    if (with_ && !is_one_of(word_, kMoves)) cut_at(*with_);
    with_.reset();
    const bool before_article = is_one_of(word_, kQualifyBeforeArticle);
    if (word_ == "with") {
      with_ = out_.key.size();
    } else if (is_one_of(word_, kQualify)) {
      cut();
    }
    if (before_article) held_ = out_.key.size();
    if (out_.begin == 0 && (before_article || is_one_of(word_, kQualify))) {
      out_.begin = out_.key.size();
    }
    out_.key += singular(word_);
    word_.clear();
  }

  void cut() { cut_at(out_.key.size()); }
  void cut_at(std::size_t size) {
    const bool is_new = out_.cuts.empty() || out_.cuts.back() < size;
    if (size > 0 && is_new && out_.cuts.size() < kMostCuts) out_.cuts.push_back(size);
  }

  NameKey out_;
  std::string word_;
  std::string article_;              // the last word, when it is one
  std::optional<std::size_t> held_;  // where the key ended before `down`
  std::optional<std::size_t> with_;  // and before `with`
};

}  // namespace

NameKey key_of_name(std::string_view name) { return KeyReader().read(name); }

}  // namespace chalkleaf::plan
