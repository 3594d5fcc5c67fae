// The words of a language, by what they do in a coach's text.
//
// Data, not code: `themes/words/<language>.yaml` has one list of phrases a role; a phrase is one or
// more words and marks, compared in lower case as the tokens of dose/tokens.h. Read once by `club`
// and handed down. Tested by tests/draft/lexicon_test.cpp.
#pragma once

#include <array>
#include <initializer_list>
#include <map>
#include <span>
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
  kAlong,       ///< `hops across x2`: at a name's end, ways are counted
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
  kRank,              ///< the same, whatever stands behind: `level 1 routines`
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
  kAgeBefore,  ///< `over 40s`
  kSideEach,   ///< `each`, before a limb or a side
  kSidePrep,   ///< `to`, `over`: between an amount and its side
  kSideNoun,
  kLegNoun,
  kArmNoun,
  kWayNoun,
  kOtherSide,  ///< `other side same`
  kOtherLeg,
  kOneWay,        ///< `one way`, `the other`: beside equal amounts
  kHoldFor,       ///< `squeeze for 5`: held, where `for` stands behind it
  kOneSided,      ///< done with one leg or arm: `each` behind its dose means each side
  kMove,          ///< what can be counted: `10 star jumps`
  kNameTail,      ///< ends no name: `march for`
  kChildWith,     ///< behind a word for a child: `girl with the knee`
  kAllOf,         ///< `both`, `all`: each of the names before it
  kLinked,        ///< links moves to one: `run, straight jump, land`
  kTo,            ///< between two numbers: a range
  kFrom,          ///< before them
  kHoldBetween,   ///< `hold each of them for 30`
  kLabel,         ///< with a colon behind it: says something of the session
  kOutOf,         ///< between equal numbers: `8 for 8`
  kHow,           ///< behind a number that begins a clause: `5 with clean catch`
  kDoIt,          ///< stands for what was named before: `practise 4 times`
  kAnyNumber,     ///< whatever number is behind it is its own: `day 20`
  kRate,          ///< `a week`: how often it is done, which is no dose
  kAnimal,        ///< each a walk of its own: `animal walks bear bunny crab`
  kVerb,          ///< makes a sentence of words: `beam 3 has a wobbly leg`
  kNameHead,      ///< begins no name behind its amount: `2 lengths of bear walk`
  kHeldOnly,      ///< in sets, too, a number is seconds: `plank 3 x 30`
  kOrder,         ///< before a number that says which: `first 2 turns`
  kPlace,         ///< where it is done: `5 low beam, 3 high beam`
  kLevelOfThree,  ///< `bronze`: opens a line of its own below the drill it is a level of
  kLevel,
  kArticle,
  kOurs,  ///< before one child: `our Gymnast 4`
  kFor,
  kOf,
  kIt,
  kAgain,
  kRestFiller,    ///< between a rest's word and its time: `rest for 30`
  kChangeOnly,    ///< `5 change`: without a unit it is no rest
  kTimes,         ///< of repetitions, those that say how often: `3 times`
  kMaxAlone,      ///< crossed with a number, an amount that is none: `max x 3`
  kSubject,       ///< with a colon, before the title of a mail
  kClockTo,       ///< between two clock times
  kUnnamedPart,   ///< the heading over drills that have none; the first phrase is written
  kHall,          ///< behind `place:`
  kThreeWays,     ///< `splits three ways`
  kRunning,       ///< its rounds are lengths
  kGame,          ///< its rounds are no dose
  kCounter,       ///< with a number, alone on its line, it opens a part: `Day 1`, `Task 2`
  kRestLetter,    ///< right before a number, for a rest: `r15"`
  kMinuteLetter,  ///< `1m30s`: alone it is metres
  kNumbersWord,   ///< before the first of several numbers that are names
  kOfEverything,  ///< of all of them, and never of one drill: `2 sets of everything`
  kColumnDrill,   ///< the head of the column of a table that has the drills' names
  kColumnPart,
  kColumnDose,
  kOfAll,  ///< beside sets and rounds it means the whole list: `3 sets of everything`
};
inline constexpr std::size_t kRoles = static_cast<std::size_t>(Role::kOfAll) + 1;

/// What opens a part.
inline constexpr std::array<Role, 5> kPartRoles{Role::kWarmUp, Role::kCoolDown, Role::kBreak,
                                                Role::kPart, Role::kStretchPart};

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

/// The texts of a phrase's pieces. Nearly all phrases are small letters and blanks, which need no
/// tokenizer; thousands are read whenever the program starts.
std::vector<std::string> words_of_phrase(std::string_view phrase);

class Lexicon;
/// The same with amounts as people speak them made plain: `half a minute`, `:40`, `from 5 to 8`.
Pieces spoken_pieces(const Lexicon& words, std::string_view line);

class Lexicon {
 public:
  /// Reads a file of words; what it does not know is reported (`bad-value`).
  static Lexicon read(const source::YamlNode& root, Diagnostics& diagnostics);

  /// The number of pieces from `at` that are the longest phrase of the role; 0 when there is none.
  std::size_t match(Role role, const Pieces& pieces, std::size_t at, std::size_t end) const;
  bool is(Role role, const Pieces& pieces, std::size_t at, std::size_t end) const {
    return match(role, pieces, at, end) > 0;
  }
  bool any_of(std::span<const Role> roles, const Pieces& pieces, std::size_t at,
              std::size_t end) const;
  bool any_of(std::initializer_list<Role> roles, const Pieces& pieces, std::size_t at,
              std::size_t end) const {
    return any_of(std::span<const Role>(roles.begin(), roles.size()), pieces, at, end);
  }
  /// The longest phrase of any part, in pieces; 0 when none is there.
  std::size_t match_part(const Pieces& pieces, std::size_t at, std::size_t end) const;
  /// Bytes of a text up to the end of the phrase of the role that it begins with; 0 when it does
  /// not.
  std::size_t begins(Role role, std::string_view text) const;
  /// The first phrase that the file lists; empty when it has none.
  const std::string& first(Role role) const { return first_[static_cast<std::size_t>(role)]; }
  /// True when any phrase of the role stands between.
  bool within(Role role, const Pieces& pieces, std::size_t begin, std::size_t end) const;
  /// The key of front matter that a whole text stands for; empty when it stands for none.
  std::string_view key(std::string_view text) const;
  /// What a short form stands for and how many pieces it takes; nothing when it is none.
  struct Spelled {
    std::string_view text;
    std::size_t pieces = 0;
  };
  Spelled spelled(const Pieces& pieces, std::size_t at, std::size_t end) const;
  /// The same for amounts: `half a minute` stands for `30 s`.
  Spelled amount(const Pieces& pieces, std::size_t at, std::size_t end) const;

 private:
  struct Phrase {
    std::vector<std::string> words;
    std::string meaning;  ///< of a short form
  };
  using Phrases = std::unordered_map<std::string, std::vector<Phrase>>;  ///< by the first word
  static void add(Phrases& to, std::string_view phrase, std::string meaning);
  static const Phrase* longest(const Phrases& in, const Pieces& pieces, std::size_t at,
                               std::size_t end);

  std::vector<Phrases> roles_ = std::vector<Phrases>(kRoles);
  std::vector<std::string> first_ = std::vector<std::string>(kRoles);
  Phrases keys_;
  Phrases short_;
  Phrases amounts_;
};

}  // namespace chalkleaf::draft
