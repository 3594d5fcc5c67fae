// What is dangerous for a child, in words: concepts, and the sentences that put them together.
//
// One file a language, `themes/words/<language>/dangers.yaml`; its head explains the notation.
// Read here, understood by `reason` (reason/word_patterns.h). Tested by
// tests/reason/guard_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "plan/dose.h"

namespace chalkleaf::plan {

/// One danger, and all the ways to say it.
struct Danger {
  enum class At { kAnywhere, kHome, kGym };
  Words name;   ///< of the entry
  Words check;  ///< the check that reports it
  At at = At::kAnywhere;
  /// What warms up takes the danger away from all that follows it.
  enum class When { kAlways, kCold } when = When::kAlways;
  /// What is meant by a drill may be meant otherwise in the text above all drills.
  enum class In { kEverywhere, kDrills } in = In::kEverywhere;
  int below = 0;  ///< only when all children are younger than this, or beginners; 0: always
  std::vector<Words> says;      ///< patterns; any of them is the danger
  std::vector<Words> unless;    ///< patterns in the same sentence that make it harmless
  std::vector<Words> answered;  ///< patterns that, anywhere in the plan, answer it
  std::string what;             ///< what is wrong: a clause, no full stop
  std::string instead;          ///< what to do instead: a clause, no full stop
  std::string source;           ///< published, or `common practice, no source`
};

/// Everything of one language.
struct DangerBook {
  SourcePtr source;
  std::vector<std::pair<std::string, std::string>> numbers;  ///< `two`, `2`
  std::vector<std::pair<std::string, std::string>> units;    ///< `minute`, seconds
  /// `dont`, and what is left of it before its `not`: `do`.
  std::vector<std::pair<std::string, std::string>> contractions;
  std::vector<Words> fillers;       ///< words that mean nothing here: `the`, `your`
  std::vector<Words> negators;      ///< `no`, `never`
  std::vector<Words> not_negating;  ///< patterns: `no matter`
  std::vector<Words> joiners;       ///< words that join a list: `or`
  std::vector<Words> turn_back;     ///< words that end a negation: `but`
  std::vector<Words> forbids;       ///< patterns that forbid what stands beside them
  std::vector<std::pair<std::string, Words>> concepts;  ///< name and comma-separated phrases
  std::vector<Danger> dangers;
  /// Patterns of what a plan says of the people and the place: `adult-stays`, `space-cleared`.
  std::vector<std::pair<std::string, std::vector<Words>>> sayings;
};

/// Reads such a file. Null when it is not right (reported).
std::shared_ptr<const DangerBook> read_danger_book(const SourcePtr& source,
                                                   Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
