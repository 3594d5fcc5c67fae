// The words of a language, by what they do in a coach's text.
//
// Data, not code: `themes/words/<language>.yaml` has one list of phrases a role; a phrase is one or
// more words and marks, compared in lower case as the tokens of dose/tokens.h. Read once by `club`
// and handed down. Tested by tests/draft/lexicon_test.cpp.
#pragma once

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/diagnostic.h"
#include "source/tree.h"

namespace chalkleaf::draft {

enum class Role {
  kWarmUp,
  kCoolDown,
  kBreak,
  kPart,         ///< opens a part, beside the three above
  kStretchPart,  ///< a part in which a bare number is seconds
  kSecond,
  kMinute,
  kHour,
  kCounted,     ///< `20 counts`
  kRepetition,  ///< `10 reps`, `3 times`
  kGo,
  kOwnCount,  ///< `5 breaths`: counted, and the word is kept
  kLength,
  kStep,
  kSet,
  kRound,
  kThereAndBack,
  kThereBegin,  ///< `across … and back`
  kBack,
  kTwice,
  kOnce,
  kHold,
  kInARow,
  kUntil,
  kStuck,
  kMaxHold,
  kToFatigue,
  kAsMany,
  kEmom,
  kBestOf,
  kCountTo,
  kRest,        ///< behind a time
  kRestBefore,  ///< before one
  kBetween,
  kWork,
  kNoRest,
  kSuperset,
  kCircuit,
  kThrough,
  kEach,
  kEachSide,
  kEachLeg,
  kEachArm,
  kEachWay,
  kLeft,
  kRight,
  kMiddle,
  kAnd,
  kThen,
  kQualifier,  ///< behind a bare number: says how
  kForwardBack,
  kNotADose,          ///< a number before it counts no dose
  kNameBeforeNumber,  ///< the number behind it is part of a name
  kNoAmountBehind,
  kCondition,
  kFinish,
  kManner,
  kSlow,
  kOddEven,
  kOr,
  kSame,
  kLadder,
  kComplex,
  kEachPerson,
  kForAll,
  kStatic,  ///< held: a bare number behind it is seconds
  kBody,
  kMoving,  ///< not held, even in a stretch
  kRemark,  ///< begins a remark
  kChild,   ///< with a number: one child
  kHealth,
  kHome,
  kWeekday,
  kPeople,
  kKey,  ///< opens a line below a drill in the taught form
  kReader,
  kGroupTurns,  ///< groups that take turns: their minutes are no dose
  kSwap,
  kAgeBefore,     ///< `over 40s`
  kLevelOfThree,  ///< `bronze`: opens a line of its own below the drill it is a level of
  kLevel,
};
inline constexpr std::size_t kRoles = static_cast<std::size_t>(Role::kLevel) + 1;

/// A word, number or mark of a line.
struct Piece {
  enum class Kind {
    kNumber,
    kWord,
    kTimes,
    kDash,
    kComma,
    kSemicolon,
    kColon,
    kSlash,
    kOpen,
    kClose,
    kStop,
    kOther
  };
  Kind kind = Kind::kOther;
  std::string text;       ///< lower case
  std::size_t begin = 0;  ///< in the line
  std::size_t end = 0;
  double value = 0;       ///< of a number
  bool whole = false;     ///< a number without a fraction
  bool in_words = false;  ///< a number written as `five`
  bool space_before = false;
  bool space_after = false;

  bool is(Kind wanted) const { return kind == wanted; }
  bool is_word(std::string_view wanted) const { return kind == Kind::kWord && text == wanted; }
};
using Pieces = std::vector<Piece>;

/// Cuts a line into pieces.
Pieces pieces_of(std::string_view line);

class Lexicon {
 public:
  /// Reads a file of words; what it does not know is reported (`bad-value`).
  static Lexicon read(const source::YamlNode& root, Diagnostics& diagnostics);

  /// The number of pieces from `at` that are the longest phrase of the role; 0 when there is none.
  std::size_t match(Role role, const Pieces& pieces, std::size_t at, std::size_t end) const;
  bool is(Role role, const Pieces& pieces, std::size_t at, std::size_t end) const {
    return match(role, pieces, at, end) > 0;
  }
  bool any_of(const std::vector<Role>& roles, const Pieces& pieces, std::size_t at,
              std::size_t end) const;
  /// True when any phrase of the role stands between.
  bool within(Role role, const Pieces& pieces, std::size_t begin, std::size_t end) const;
  /// What a short form stands for and how many pieces it takes; nothing when it is none.
  struct Spelled {
    std::string_view text;
    std::size_t pieces = 0;
  };
  Spelled spelled(const Pieces& pieces, std::size_t at, std::size_t end) const;

 private:
  struct Phrase {
    std::vector<std::string> words;
    std::string meaning;  ///< of a short form
  };
  using Phrases = std::unordered_map<std::string, std::vector<Phrase>>;  ///< by the first word
  static void add(Phrases& to, std::string_view phrase, std::string meaning);
  static const Phrase* longest(const Phrases& in, const Pieces& pieces, std::size_t at,
                               std::size_t end);

  std::array<Phrases, kRoles> roles_;
  Phrases short_;
};

}  // namespace chalkleaf::draft
