// How loudly a line speaks for being a heading, a line of drills or a remark.
// Tested by tests/draft/document_test.cpp.
#pragma once

#include "draft/document.h"

namespace chalkleaf::draft {

inline constexpr double kNever = -1e6;              ///< no evidence can outweigh it
inline constexpr std::uint32_t kLongestLine = 600;  ///< bytes; no line of drills is longer

/// No coach types as much in a line: it is a remark, and not taken apart, which only costs time.
bool is_too_long(std::string_view line);

/// A bullet or a number stands before it.
inline bool is_listed(const Line& line) {
  return line.mark == Line::Mark::kBullet || line.mark == Line::Mark::kNumber;
}

class LineScores {
 public:
  LineScores(const Lexicon& words, const Source& source, const Habits& habits)
      : words_(words), source_(source), habits_(habits) {}

  /// `next` is the next line with words, or none; `behind_blank`: an empty line stands before.
  double heading(const DraftLine& one, const DraftLine* next, bool behind_blank) const;
  double drills(const DraftLine& one) const;
  double remark(const DraftLine& one) const;
  /// Behind the first, up to three: doses that are more than a number.
  double more_doses(const DraftLine& one) const;

 private:
  bool is_only_minutes(const DraftLine& one) const;
  bool opens_by_word(std::string_view text) const;
  bool is_short_name(const DraftLine& one) const;

  const Lexicon& words_;
  const Source& source_;
  const Habits& habits_;
};

}  // namespace chalkleaf::draft
