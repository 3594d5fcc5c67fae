// The guard: what endangers a child, in the coach's own words, wherever it stands in the file.
//
// What is dangerous is data (plan/danger_book.h); how words are matched is
// reason/word_patterns.h. Tested by tests/reason/guard_test.cpp, tests/guard_score.py and the
// gallery in examples/mistakes.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/danger_book.h"
#include "plan/library.h"
#include "plan/model.h"

namespace chalkleaf::reason {

class LineWeights;

/// A danger book made ready. Read-only; safe to share between threads.
class Guard {
 public:
  /// What is wrong in the book is reported; a guard with a broken book still has the rest of it.
  /// `image`: what image() gave for this book, or empty. Without `weights` (line_weights.h) the
  /// patterns of the book are believed as they are.
  Guard(std::shared_ptr<const plan::DangerBook> book, Diagnostics& diagnostics,
        std::string_view image = {}, std::shared_ptr<const LineWeights> weights = nullptr);
  ~Guard();
  Guard(const Guard&) = delete;
  Guard& operator=(const Guard&) = delete;

  /// What takes long to make of the book, in bytes; empty when the book is broken.
  std::string image() const;
  /// True when the session says it somewhere: `adult-stays`, `space-cleared`.
  bool says(std::string_view saying, const plan::Session& session) const;
  /// The sentences that say it in the text above and between the drills: in no title, heading or
  /// list entry.
  std::vector<Span> said_in_prose(std::string_view saying, const plan::Session& session) const;
  /// True when a text says it.
  bool says(std::string_view saying, std::string_view text) const;
  /// Adds what it finds in a session's files and in what its drills have inherited.
  void check(const plan::Session& session, const plan::DrillBook& book,
             Diagnostics& diagnostics) const;

 private:
  struct Compiled;
  std::unique_ptr<Compiled> compiled_;
};

}  // namespace chalkleaf::reason
