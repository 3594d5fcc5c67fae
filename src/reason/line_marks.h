// What a line of a plan is known by when its danger is weighed (line_weights.h): its words, which
// of them are negated, what they are kinds of, and which stand near each other.
//
// The program and the trainer (tests/support/learn_dangers.cpp) call the same functions, so that a
// mark means to the one what it has meant to the other. Inside the room. Tested by
// tests/reason/line_weights_test.cpp.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "plan/danger_book.h"
#include "reason/word_patterns.h"

namespace chalkleaf::reason {

/// What a word may be, and what it is a kind of. Made from a danger book; read-only.
class LineWords {
 public:
  explicit LineWords(const plan::DangerBook& book);

  /// One word of a line as it is compared.
  struct Word {
    std::string text;                                 ///< its stem; `!` before it: negated
    const std::vector<std::string>* kinds = nullptr;  ///< the book's concepts it is of, or null
  };
  /// The words of a line: without fillers, numbers as the size they have. `sentences`: what
  /// WordPatterns makes of the same line; it knows what is negated.
  std::vector<Word> words(std::string_view line, const std::vector<Sentence>& sentences) const;

 private:
  struct Known {
    bool filler = false;
    double number = -1;
    double unit = -1;  // seconds
  };
  std::map<std::string, Known, std::less<>> known_;
  std::map<std::string, std::vector<std::string>, std::less<>> kinds_;  // by stem
};

/// Where a line stands.
struct LinePlace {
  enum class Kind : std::uint8_t { kText, kItem, kHeading } kind = Kind::kText;
  bool at_home = false;
};

using TakeMark = std::function<void(std::string_view mark)>;
/// The marks by which a line is weighed as dangerous or not. A mark may come more than once.
void line_marks(const std::vector<LineWords::Word>& words, LinePlace place, const TakeMark& take);

/// True of the fewer marks by which it is told which danger a line is.
bool tells_kind(std::string_view mark);

}  // namespace chalkleaf::reason
