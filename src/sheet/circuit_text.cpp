#include "sheet/circuit_text.h"

#include <fmt/format.h>

#include <vector>

namespace chalkleaf::sheet {

std::string short_circuit(const plan::Circuit& circuit, const Labels& labels) {
  std::vector<std::string> out = {labels.count("circuit-rounds", circuit.rounds)};
  std::vector<std::string> times;
  if (circuit.work)
    times.push_back(labels.say("circuit-work", {{"time", labels.short_time(*circuit.work)}}));
  if (circuit.rest)
    times.push_back(labels.say("circuit-rest", {{"time", labels.short_time(*circuit.rest)}}));
  if (!times.empty()) out.push_back(fmt::format("{}", fmt::join(times, ", ")));
  if (circuit.between && circuit.rounds > 1)
    out.push_back(labels.say("circuit-between", {{"time", labels.short_time(*circuit.between)}}));
  return fmt::format("{}", fmt::join(out, " · "));
}

PlainDose plain_circuit(const plan::Circuit& circuit, const Labels& labels) {
  PlainDose out;
  out.what = labels.count("home-rounds", circuit.rounds);
  if (circuit.work)
    out.what += " " + labels.say("home-work", {{"time", labels.long_time(*circuit.work)}});
  const auto add = [&](std::string_view key, const std::optional<Duration>& time) {
    if (!time || *time <= Duration()) return;
    if (!out.how.empty()) out.how += ' ';
    out.how += labels.say(key, {{"time", labels.long_time(*time)}});
  };
  add("home-rest", circuit.rest);
  if (circuit.rounds > 1) add("home-between", circuit.between);
  return out;
}

}  // namespace chalkleaf::sheet
