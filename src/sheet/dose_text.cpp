#include "sheet/dose_text.h"

#include <fmt/format.h>

#include <vector>

#include "base/text.h"

namespace chalkleaf::sheet {
namespace {

using plan::AmountKind;
using plan::Dose;
using plan::Sides;

using plan::Amount;

// `20–30 s`: the unit once, where both have the same. A figure and its unit are parted by a
// no-break space, and by nothing else.
std::string time_range(const std::string& from, const std::string& to) {
  constexpr std::string_view kSpace = "\u00A0";
  const std::size_t cut = from.find(kSpace);
  const std::size_t other = to.find(kSpace);
  const bool one_unit = cut != std::string::npos && other != std::string::npos &&
                        from.substr(cut) == to.substr(other);
  return one_unit ? from.substr(0, cut) : from;
}

std::string short_time(const Amount& amount, const Labels& labels) {
  const std::string from = labels.short_time(amount.time.value_or(Duration()));
  if (!amount.time_to) return from;
  const std::string to = labels.short_time(*amount.time_to);
  return labels.say("dose-range", {{"from", time_range(from, to)}, {"to", to}});
}

// `10 steps`, `8–12 steps`; the word in the number of the larger end.
std::string short_count(const Amount& amount, const Labels& labels) {
  const std::string from = std::to_string(amount.count);
  const std::string most = std::to_string(amount.most_count());
  if (!amount.ladder.empty()) return fmt::format("{}", fmt::join(amount.ladder, ", "));
  const std::string number =
      amount.count_to ? labels.say("dose-range", {{"from", from}, {"to", most}}) : from;
  const std::string_view key = amount.kind == AmountKind::kSteps     ? "dose-steps"
                               : amount.kind == AmountKind::kLengths ? "dose-lengths"
                                                                     : "";
  if (key.empty()) return number;
  const std::string counted = labels.count(key, amount.most_count());
  const std::size_t at = counted.find(most);
  return at == std::string::npos ? counted : std::string(counted).replace(at, most.size(), number);
}

std::string short_sides(Sides sides, const Labels& labels) {
  switch (sides) {
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

std::string short_amount(const Amount& amount, const Labels& labels) {
  switch (amount.kind) {
    case AmountKind::kRepetitions:
    case AmountKind::kSteps:
    case AmountKind::kLengths:
      return short_count(amount, labels);
    case AmountKind::kTime:
      if (amount.as_many) {
        return labels.say("dose-as-many", {{"time", short_time(amount, labels)}});
      }
      return short_time(amount, labels);
    case AmountKind::kMaxHold:
    case AmountKind::kMoves:
      break;
  }
  if (!amount.time) return labels.say("dose-max-hold");
  return labels.say("dose-max-hold-cap", {{"time", labels.short_time(*amount.time)}});
}

// `10 star jumps, 5 lunges each leg`
std::string short_moves(const Dose& dose, const Labels& labels) {
  std::vector<std::string> moves;
  for (const plan::Move& move : dose.moves) {
    std::string text = labels.say(
        "dose-move", {{"amount", short_amount(move.amount, labels)}, {"move", move.name.text}});
    if (const std::string sides = short_sides(move.sides, labels); !sides.empty()) {
      text += " " + sides;
    }
    moves.push_back(std::move(text));
  }
  const std::string row = fmt::format("{}", fmt::join(moves, ", "));
  const bool alone = dose.sets == 1 && dose.sides == Sides::kOnce;
  return alone ? row : labels.say("dose-moves", {{"moves", row}});
}

std::vector<std::string> way_names(const Dose& dose) {
  std::vector<std::string> names;
  for (const plan::Words& way : dose.ways) names.push_back(way.text);
  return names;
}

std::string short_sides(const Dose& dose, const Labels& labels) {
  if (dose.ways.empty()) return short_sides(dose.sides, labels);
  return labels.say("dose-ways", {{"ways", fmt::format("{}", fmt::join(way_names(dose), ", "))}});
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

// `20 to 30 seconds`, the unit once where both have the same.
std::string long_time(const Amount& amount, const Labels& labels) {
  const std::string from = labels.long_time(amount.time.value_or(Duration()));
  if (!amount.time_to) return from;
  const std::string to = labels.long_time(*amount.time_to);
  return labels.say("say-range", {{"from", time_range(from, to)}, {"to", to}});
}

// `Take 20 steps.`; of a range, `Take 8 to 12 steps.`
std::string plain_count(std::string_view key, std::string_view range, const Amount& amount,
                        const Labels& labels) {
  if (!amount.ladder.empty()) {
    return labels.say("say-ladder", {{"rungs", fmt::format("{}", fmt::join(amount.ladder, ", "))}});
  }
  if (!amount.count_to) return labels.count(key, amount.count);
  return labels.say(
      range, {{"from", std::to_string(amount.count)}, {"to", std::to_string(*amount.count_to)}});
}

std::string plain_amount(const Amount& amount, std::string_view name, const Labels& labels) {
  switch (amount.kind) {
    case AmountKind::kRepetitions:
      return plain_count("say-repetitions", "say-repetitions-range", amount, labels);
    case AmountKind::kSteps:
      return plain_count("say-steps", "say-steps-range", amount, labels);
    case AmountKind::kLengths:
      return plain_count("say-lengths", "say-lengths-range", amount, labels);
    case AmountKind::kTime: {
      const std::string time = long_time(amount, labels);
      if (amount.as_many) return labels.say("say-as-many", {{"time", time}});
      const bool held = amount.held || labels.names_stillness(name);
      return labels.say(held ? "say-hold" : "say-keep-going", {{"time", time}});
    }
    case AmountKind::kMaxHold:
    case AmountKind::kMoves:
      break;
  }
  if (!amount.time) return labels.say("say-max-hold");
  return labels.say("say-max-hold-cap", {{"time", labels.long_time(*amount.time)}});
}

std::string plain_sides(Sides sides, const Labels& labels) {
  switch (sides) {
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

std::string plain_sides(const Dose& dose, const Labels& labels) {
  if (dose.ways.empty()) return plain_sides(dose.sides, labels);
  return labels.say("say-ways", {{"ways", join_list(way_names(dose), labels.say("and"))}});
}

// `10 star jumps`, `30 seconds of mountain climbers`, `5 lunges each leg`
std::string plain_move(const plan::Move& move, const Labels& labels) {
  const bool timed = move.amount.kind == AmountKind::kTime && move.amount.time;
  const std::string amount =
      timed ? long_time(move.amount, labels) : short_amount(move.amount, labels);
  const bool of = timed && !move.amount.held;  // `10 seconds hold`
  std::string out =
      labels.say(of ? "say-move-time" : "say-move", {{"amount", amount}, {"move", move.name.text}});
  if (const std::string sides = short_sides(move.sides, labels); !sides.empty()) {
    out += " " + sides;
  }
  return out;
}

// `Do 10 star jumps, then 10 high knees.`
std::string plain_moves(const Dose& dose, const Labels& labels) {
  std::vector<std::string> moves;
  for (const plan::Move& move : dose.moves) moves.push_back(plain_move(move, labels));
  const std::string then = labels.say("say-then");
  return labels.say("say-moves", {{"moves", fmt::format("{}", fmt::join(moves, then))}});
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

// `4 goes`: what a go is, the drill's name says.
bool is_goes_alone(const Dose& dose) {
  return dose.in_goes && dose.amount.kind == AmountKind::kRepetitions && dose.amount.count == 1 &&
         !dose.amount.count_to;
}

}  // namespace

plan::Dose with_rest(plan::Dose dose, const plan::Timings& timings) {
  const bool counted =
      dose.sets > 1 && !dose.rest && !dose.every && timings.rest.value > Duration();
  if (counted) dose.rest = timings.rest.value;
  return dose;
}

std::string short_dose(const Dose& dose, const Labels& labels) {
  std::string out = dose.amount.kind == AmountKind::kMoves ? short_moves(dose, labels)
                                                           : short_amount(dose.amount, labels);
  if (is_goes_alone(dose)) {
    out = labels.count("dose-goes", dose.sets);
  } else if (dose.sets > 1) {
    out = labels.say("dose-sets", {{"n", std::to_string(dose.sets)}, {"amount", out}});
  }
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
  if (is_goes_alone(dose)) {
    add(out.what, labels.count("say-goes", dose.sets));
    add(out.what, plain_sides(dose, labels));
  } else {
    add(out.what, dose.amount.kind == AmountKind::kMoves
                      ? plain_moves(dose, labels)
                      : plain_amount(dose.amount, drill_name, labels));
    add(out.what, plain_sides(dose, labels));
    add(out.what, plain_sets(dose, labels));
  }
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

namespace {

std::string without_stop(std::string sentence) {
  if (!sentence.empty() && sentence.back() == '.') sentence.pop_back();
  return sentence;
}

// `Hold 20 seconds`, `Do 8`
std::string brief_amount(const Dose& dose, std::string_view name, const Labels& labels) {
  const Amount& amount = dose.amount;
  if (amount.kind == AmountKind::kTime && !amount.as_many) {
    const bool held = amount.held || labels.names_stillness(name);
    return labels.say(held ? "brief-hold" : "brief-go", {{"time", long_time(amount, labels)}});
  }
  return without_stop(plain_amount(amount, name, labels));
}

bool is_seconds(const Dose& dose) {
  return dose.amount.kind == AmountKind::kTime && dose.amount.time &&
         *dose.amount.time < Duration::minutes(1);
}

// The unit is not said again where the hold beside it has it.
std::string brief_rest(const Dose& dose, const Labels& labels) {
  const Duration rest = *dose.rest;
  const bool same =
      is_seconds(dose) && rest < Duration::minutes(1) && rest.in_milliseconds() % 1000 == 0;
  return labels.say("brief-rest", {{"time", same ? std::to_string(rest.rounded_seconds())
                                                 : labels.long_time(rest)}});
}

}  // namespace

PlainDose brief_plain_dose(const Dose& dose, std::string_view drill_name, const Labels& labels) {
  PlainDose out = plain_dose(dose, drill_name, labels);
  if (!is_goes_alone(dose) && dose.amount.kind != AmountKind::kMoves) {
    std::string what = brief_amount(dose, drill_name, labels);
    const auto add = [&](const std::string& clause) {
      if (!clause.empty()) what += ", " + clause;
    };
    add(short_sides(dose, labels));
    if (dose.sets == 2) add(labels.say("brief-twice"));
    if (dose.sets > 2) add(labels.say("brief-sets", {{"n", std::to_string(dose.sets)}}));
    out.what = what + ".";
  }
  if (!dose.rest) return out;
  // The rest, as plain_dose says it, in fewer words.
  const std::string long_rest =
      labels.say(dose.sets > 1 || dose.sides != Sides::kOnce ? "say-rest" : "say-rest-after",
                 {{"time", labels.long_time(*dose.rest)}});
  const bool between = dose.sets > 1 || dose.sides != Sides::kOnce;
  const std::size_t at = out.how.find(long_rest);
  if (between && at != std::string::npos)
    out.how.replace(at, long_rest.size(), brief_rest(dose, labels));
  return out;
}

}  // namespace chalkleaf::sheet
