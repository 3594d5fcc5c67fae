#include "sheet/dose_text.h"

#include <fmt/format.h>

#include <vector>

#include "base/text.h"

namespace chalkleaf::sheet {
namespace {

using plan::AmountKind;
using plan::Dose;
using plan::Sides;

std::string short_amount(const Dose& dose, const Labels& labels) {
  switch (dose.amount.kind) {
    case AmountKind::kRepetitions:
      return std::to_string(dose.amount.count);
    case AmountKind::kTime:
      return labels.short_time(dose.amount.time.value_or(Duration()));
    case AmountKind::kSteps:
      return labels.count("dose-steps", dose.amount.count);
    case AmountKind::kLengths:
      return labels.count("dose-lengths", dose.amount.count);
    case AmountKind::kMaxHold:
    case AmountKind::kMoves:
      break;
  }
  if (!dose.amount.time) return labels.say("dose-max-hold");
  return labels.say("dose-max-hold-cap", {{"time", labels.short_time(*dose.amount.time)}});
}

std::vector<std::string> way_names(const Dose& dose) {
  std::vector<std::string> names;
  for (const plan::Words& way : dose.ways) names.push_back(way.text);
  return names;
}

std::string short_sides(const Dose& dose, const Labels& labels) {
  if (!dose.ways.empty())
    return labels.say("dose-ways", {{"ways", fmt::format("{}", fmt::join(way_names(dose), ", "))}});
  switch (dose.sides) {
    case Sides::kOnce:
      break;
    case Sides::kEachSide:
      return labels.say("dose-each-side");
    case Sides::kEachWay:
      return labels.say("dose-each-way");
    case Sides::kEachLeg:
      return labels.say("dose-each-leg");
    case Sides::kEachArm:
      return labels.say("dose-each-arm");
  }
  return {};
}

/// Tempo phases are whole or half seconds, written without their unit: `3-0-1-0`.
std::string tempo_phases(const plan::Tempo& tempo) {
  std::vector<std::string> phases;
  for (const Duration phase : tempo.phases) {
    const std::string text = exact_text(phase);
    phases.push_back(text.substr(0, text.find(' ')));
  }
  return fmt::format("{}", fmt::join(phases, "-"));
}

std::string plain_amount(const Dose& dose, std::string_view drill_name, const Labels& labels) {
  const std::string time = labels.long_time(dose.amount.time.value_or(Duration()));
  switch (dose.amount.kind) {
    case AmountKind::kRepetitions:
      return labels.count("say-repetitions", dose.amount.count);
    case AmountKind::kSteps:
      return labels.count("say-steps", dose.amount.count);
    case AmountKind::kLengths:
      return labels.count("say-lengths", dose.amount.count);
    case AmountKind::kTime: {
      const bool held = dose.amount.held || labels.names_stillness(drill_name);
      return labels.say(held ? "say-hold" : "say-keep-going", {{"time", time}});
    }
    case AmountKind::kMaxHold:
    case AmountKind::kMoves:
      break;
  }
  if (!dose.amount.time) return labels.say("say-max-hold");
  return labels.say("say-max-hold-cap", {{"time", time}});
}

std::string plain_sides(const Dose& dose, const Labels& labels) {
  if (!dose.ways.empty()) {
    return labels.say("say-ways", {{"ways", join_list(way_names(dose), labels.say("and"))}});
  }
  switch (dose.sides) {
    case Sides::kOnce:
      break;
    case Sides::kEachSide:
      return labels.say("say-each-side");
    case Sides::kEachWay:
      return labels.say("say-each-way");
    case Sides::kEachLeg:
      return labels.say("say-each-leg");
    case Sides::kEachArm:
      return labels.say("say-each-arm");
  }
  return {};
}

std::string plain_sets(const Dose& dose, const Labels& labels) {
  if (dose.sets <= 1) return {};
  // "Do 10. Do that 3 times." but "Hold for 20 seconds. Do it 3 times."
  const bool counted = dose.amount.kind == AmountKind::kRepetitions || dose.sides != Sides::kOnce;
  if (dose.sets == 2) return labels.say(counted ? "say-twice-of" : "say-twice");
  return labels.count(counted ? "say-sets-of" : "say-sets", dose.sets);
}

std::string plain_tempo(const plan::Tempo& tempo, const Labels& labels) {
  constexpr std::array<std::string_view, 4> kPhases = {"say-down", "say-pause", "say-up",
                                                       "say-pause"};
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < kPhases.size(); ++i) {
    if (tempo.phases[i] > Duration()) {
      parts.push_back(labels.say(kPhases[i], {{"time", labels.long_time(tempo.phases[i])}}));
    }
  }
  return labels.say("say-tempo", {{"phases", fmt::format("{}", fmt::join(parts, ", "))}});
}

// A remark of the coach's as a sentence: a capital, a full stop.
std::string as_sentence(std::string text) {
  if (text.empty()) return text;
  if (text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  if (text.back() != '.' && text.back() != '!' && text.back() != '?') text += '.';
  return text;
}

}  // namespace

plan::Dose with_rest(plan::Dose dose, const plan::Timings& timings) {
  const bool counted =
      dose.sets > 1 && !dose.rest && !dose.every && timings.rest.value > Duration();
  if (counted) dose.rest = timings.rest.value;
  return dose;
}

std::string short_dose(const Dose& dose, const Labels& labels) {
  std::string out = short_amount(dose, labels);
  if (dose.sets > 1)
    out = labels.say("dose-sets", {{"n", std::to_string(dose.sets)}, {"amount", out}});
  if (const std::string sides = short_sides(dose, labels); !sides.empty()) out += " " + sides;
  const auto add = [&](const std::string& clause) { out += ", " + clause; };
  if (dose.tempo) add(labels.say("dose-tempo", {{"phases", tempo_phases(*dose.tempo)}}));
  if (dose.pace) add(labels.say("dose-pace", {{"time", labels.short_time(*dose.pace)}}));
  if (dose.every) add(labels.say("dose-every", {{"time", labels.short_time(*dose.every)}}));
  if (dose.rest) add(labels.say("dose-rest", {{"time", labels.short_time(*dose.rest)}}));
  if (dose.effort) add(labels.say("dose-effort", {{"n", std::to_string(*dose.effort)}}));
  for (const plan::Words& remark : dose.remarks) add(remark.text);
  return out;
}

PlainDose plain_dose(const Dose& dose, std::string_view drill_name, const Labels& labels) {
  PlainDose out;
  const auto add = [](std::string& to, const std::string& sentence) {
    if (sentence.empty()) return;
    if (!to.empty()) to += ' ';
    to += sentence;
  };
  add(out.what, plain_amount(dose, drill_name, labels));
  add(out.what, plain_sides(dose, labels));
  add(out.what, plain_sets(dose, labels));
  if (dose.tempo) add(out.how, plain_tempo(*dose.tempo, labels));
  if (dose.pace) add(out.how, labels.say("say-pace", {{"time", labels.long_time(*dose.pace)}}));
  if (dose.every) add(out.how, labels.say("say-every", {{"time", labels.long_time(*dose.every)}}));
  if (dose.rest) {
    add(out.how,
        labels.say(dose.sets > 1 || dose.sides != Sides::kOnce ? "say-rest" : "say-rest-after",
                   {{"time", labels.long_time(*dose.rest)}}));
  }
  if (dose.effort) add(out.how, labels.say("say-effort", {{"n", std::to_string(*dose.effort)}}));
  for (const plan::Words& remark : dose.remarks) add(out.how, as_sentence(remark.text));
  return out;
}

}  // namespace chalkleaf::sheet
