// Tested by tests/reason/line_weights_test.cpp.
#include "reason/second_reading.h"

#include <utility>

namespace chalkleaf::reason {
namespace {

// Log-odds, chosen on plans that the weights had not learnt from (DEVELOPERS.md has the figures).
constexpr double kPattern = 3.0;  // what a pattern's finding adds
constexpr double kSure = 2.0;
constexpr double kUnsure = 0.0;
constexpr double kSureAlone = 2.0;
// Every home plan speaks of who is there, in words that are near to those of who is not.
constexpr double kSureOfPeople = 4.0;

}  // namespace

SecondReading::SecondReading(const plan::DangerBook& book, LineWeightsPtr weights)
    : words_(book), weights_(std::move(weights)) {}

double SecondReading::odds(std::string_view line, const std::vector<Sentence>& sentences,
                           LinePlace place) const {
  return weights_ ? weights_->danger(words_.words(line, sentences), place) : 0;
}

SecondReading::Belief SecondReading::with_pattern(double odds) const {
  if (!weights_ || odds + kPattern > kSure) return Belief::kSure;
  return odds + kPattern > kUnsure ? Belief::kUnsure : Belief::kNone;
}

SecondReading::Belief SecondReading::alone(double odds) const {
  return weights_ && odds > kSureAlone ? Belief::kSure : Belief::kNone;
}

SecondReading::Belief SecondReading::alone_of_people(double odds) const {
  return weights_ && odds > kSureOfPeople ? Belief::kSure : Belief::kNone;
}

std::optional<std::string_view> SecondReading::check_of(
    std::string_view line, const std::vector<Sentence>& sentences, LinePlace place,
    const std::vector<std::string_view>& checks) const {
  if (!weights_) return std::nullopt;
  const std::vector<LineWords::Word> words = words_.words(line, sentences);
  std::optional<std::string_view> out;
  double best = 0;
  for (const std::string_view check : checks) {
    const std::optional<double> fit = weights_->fit(words, place, check);
    if (!fit || (out && *fit <= best)) continue;
    out = check;
    best = *fit;
  }
  return out;
}

}  // namespace chalkleaf::reason
