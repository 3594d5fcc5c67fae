// How much a line of a plan sounds like those that have endangered children: a second reading
// beside the patterns.
//
// Patterns (word_patterns.h) find what they were written for, and also where somebody forbids it in
// words of his own. So every line is weighed as well: each of its marks (line_marks.h) adds what it
// was worth in thousands of lines of which it is known whether they were dangerous. The weights are
// a logistic regression (Cox 1958) that tests/support/learn_dangers.cpp has fitted; they ship as
// data beside the danger book. A weight is a tenth of a unit of log-odds. Tested by
// tests/reason/line_weights_test.cpp.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "reason/line_marks.h"

namespace chalkleaf::reason {

/// The weights of one language. Read-only; safe to share between threads.
class LineWeights {
 public:
  /// None: every line weighs nothing.
  LineWeights() = default;
  /// Reads the text of a file of weights; nothing when a line of it cannot be read.
  static std::optional<LineWeights> read(std::string_view text);
  /// `bytes`: what image() gave, at a multiple of eight; `keeper` keeps them. Nothing when they are
  /// something else.
  static std::optional<LineWeights> from_image(std::string_view bytes,
                                               std::shared_ptr<const void> keeper);
  /// What takes long to make of the text, in bytes.
  std::string image() const;
  bool empty() const { return size_ == 0; }

  /// The log-odds that such a line is dangerous, as far as its words tell. 0 without weights.
  double danger(const std::vector<LineWords::Word>& words, LinePlace place) const;
  /// How well the words fit a danger that is reported by this check; higher is better. Nothing when
  /// no line of it has been learnt from.
  std::optional<double> fit(const std::vector<LineWords::Word>& words, LinePlace place,
                            std::string_view check) const;

 private:
  struct Slot {
    std::uint32_t hash = 0;
    std::int32_t weight = 0;
  };
  const Slot* slots() const { return kept_ != nullptr ? kept_ : own_.data(); }
  std::optional<int> weight(std::string_view section, std::string_view mark) const;
  void add(std::string_view section, std::string_view mark, int weight);

  std::vector<Slot> own_;
  const Slot* kept_ = nullptr;
  std::shared_ptr<const void> keeper_;
  std::size_t size_ = 0;  // a power of two
};

/// A mark counts the less the more there are, so that long lines do not weigh by their length: this
/// is 1 for a line of a usual length.
double share_of_mark(std::size_t marks);

}  // namespace chalkleaf::reason
