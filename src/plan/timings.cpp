// See the header.
#include "plan/timings.h"

#include <fmt/format.h>

#include "base/text.h"
#include "plan/keys.h"
#include "plan/known_keys.h"

namespace chalkleaf::plan {
namespace {

struct TimingKey {
  const char* key;
  Timing Timings::*member;
  Zero zero;
};
constexpr TimingKey kKeys[] = {{"rep", &Timings::repetition, Zero::kRefused},
                               {"step", &Timings::step, Zero::kRefused},
                               {"length", &Timings::length, Zero::kRefused},
                               {"changeover", &Timings::changeover, Zero::kAllowed},
                               {"max-hold", &Timings::max_hold, Zero::kRefused},
                               {"rest", &Timings::rest, Zero::kAllowed}};

bool is_map(const source::YamlNode& node, std::string_view what, std::string_view example,
            Diagnostics& diagnostics) {
  if (node.kind == source::YamlNode::Kind::kMap) return true;
  if (node.unreadable) return false;
  diagnostics.error(kBadValue, node.span, fmt::format("‘{}’ must be entries with times", what),
                    fmt::format("write them as `{}`", example));
  return false;
}

std::vector<Budget> read_budgets(const source::YamlNode& node, Diagnostics& diagnostics) {
  std::vector<Budget> out;
  if (!is_map(node, "parts", "parts: {Warm-up: 8 min}", diagnostics)) return out;
  std::vector<std::string> any;  // each part's title is a key of its own
  for (const auto& entry : node.entries) any.push_back(lower_ascii(entry.first.text));
  const Keys keys(node, "the parts", std::move(any), diagnostics);
  for (const auto& entry : node.entries) {
    if (keys.find(lower_ascii(entry.first.text)) != &entry.second) continue;  // the first counts
    const Words words = scalar_words(entry.second, entry.first.text, diagnostics);
    if (words.empty()) continue;
    const auto time =
        keys.read(words, [](std::string_view t) { return parse_duration(t, Zero::kRefused); });
    if (time) out.push_back({{entry.first.text, entry.first.span}, *time});
  }
  return out;
}

}  // namespace

std::vector<Budget> read_timings(const source::YamlNode& node, Timing::Origin origin,
                                 Timings& timings, Diagnostics& diagnostics) {
  if (!is_map(node, "timings", "timings: {rep: 3 s, changeover: 10 s}", diagnostics)) return {};
  std::vector<std::string> known = known_keys(KeyMap::kTimings);
  const bool in_plan = origin == Timing::Origin::kPlan;
  if (in_plan) known.emplace_back("parts");
  const Keys keys(node, "the timings", std::move(known), diagnostics);
  for (const TimingKey& key : kKeys) {
    const Zero zero = key.zero;
    const auto time =
        keys.value(key.key, [zero](std::string_view t) { return parse_duration(t, zero); });
    if (time) timings.*key.member = {time->value, origin, time->span};
  }
  const source::YamlNode* parts = in_plan ? keys.find("parts") : nullptr;
  return parts == nullptr ? std::vector<Budget>() : read_budgets(*parts, diagnostics);
}

}  // namespace chalkleaf::plan
