// What the weights of its words make of a line: whether a danger that a pattern has found in it is
// believed, and which danger it may be when none has. Inside the room. Tested by
// tests/reason/line_weights_test.cpp.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/danger_book.h"
#include "reason/line_weights.h"

namespace chalkleaf::reason {

using LineWeightsPtr = std::shared_ptr<const LineWeights>;

class SecondReading {
 public:
  /// Without weights every pattern is believed, and nothing is found without one.
  SecondReading(const plan::DangerBook& book, LineWeightsPtr weights);

  /// The log-odds that a line is dangerous by its words; long ones are as dangerous as they are.
  double odds(std::string_view line, const std::vector<Sentence>& sentences, LinePlace place) const;
  enum class Belief { kNone, kUnsure, kSure };
  /// What a line of these odds, in which a pattern has found a danger, is worth.
  Belief with_pattern(double odds) const;
  /// The same of a line in which no pattern has found one.
  Belief alone(double odds) const;
  /// The same when it would be about who is there.
  Belief alone_of_people(double odds) const;
  /// The check of `checks` that a line fits best; nothing when it fits none well.
  std::optional<std::string_view> check_of(std::string_view line,
                                           const std::vector<Sentence>& sentences, LinePlace place,
                                           const std::vector<std::string_view>& checks) const;

 private:
  LineWords words_;
  LineWeightsPtr weights_;
};

}  // namespace chalkleaf::reason
