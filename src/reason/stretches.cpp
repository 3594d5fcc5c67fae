#include "reason/stretches.h"

#include <algorithm>

#include "reason/drill_lines.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

using plan::AmountKind;
using plan::DrillKind;

// The words before `on`, `with`, a comma and the like: what is done.
std::vector<TextWord> head_of(std::string_view name) {
  std::vector<TextWord> words = words_in(name.substr(0, name.find_first_of(",(;:")));
  const auto end =
      std::find_if(words.begin() + (words.empty() ? 0 : 1), words.end(), [](const TextWord& word) {
        return is_one_of(word.text, {"on", "with", "against", "to", "over", "in", "at", "each"});
      });
  words.erase(end, words.end());
  return words;
}

// `Shoulders, jog: 8 min` is no stretch of the shoulders.
bool moves_about(std::string_view name) {
  return has_one_of(words_in(name), {"jog", "jogs", "run", "runs", "skip", "skips", "march",
                                     "gallop", "gallops", "dance", "trot", "walk", "walks"});
}

// `Calf stretch: 20 s each leg`, but neither `Stretch jump: 10 s` nor `Team stretch: 3 min`.
bool is_stretch_by_words(std::string_view name, const plan::Amount& amount, bool repeated) {
  const std::vector<TextWord> words = head_of(name);
  if (words.empty() || !is_one_of(words.back().text, {"stretch", "stretches"})) return false;
  if (has_one_of(words, {"dynamic", "moving", "swinging", "bouncing"})) return false;
  const bool of_a_muscle = has_one_of(
      words, {"hamstring", "calf",     "calve", "quad",  "thigh",      "hip",       "groin",
              "shoulder",  "wrist",    "ankle", "chest", "back",       "triceps",   "neck",
              "pike",      "straddle", "split", "lunge", "half-kneel", "butterfly", "lat"});
  return amount.held || repeated || of_a_muscle;
}

std::optional<Duration> hold_of(const plan::Amount& amount, const plan::Timings& timings) {
  if (amount.as_many) return std::nullopt;
  if (amount.kind == AmountKind::kTime) return amount.most_time();
  if (amount.kind != AmountKind::kMaxHold) return std::nullopt;
  return amount.most_time().value_or(timings.max_hold.value);
}

// `Shoulders, wrists: 4 min` is a row of things, and so is a stretch of no muscle in particular
// that takes minutes: `Stretch circle: 5 min`.
bool is_row(const plan::LibraryDrill* known, std::string_view name, const plan::Amount& amount) {
  constexpr Duration kMinutes = Duration::seconds(120);
  const auto commas = std::count(name.begin(), name.end(), ',');
  if (commas > 1) return true;
  const bool of_no_muscle = known != nullptr && known->stretches.empty();
  return (commas == 1 || of_no_muscle) && amount.most_time() && *amount.most_time() >= kMinutes;
}

bool is_stretch(const plan::LibraryDrill* known, std::string_view name, const plan::Amount& amount,
                bool repeated) {
  if (moves_about(name) || is_row(known, name, amount)) return false;
  if (known != nullptr && known->kind.value != DrillKind::kUnknown) {
    return known->kind.value == DrillKind::kStretch;
  }
  return is_stretch_by_words(name, amount, repeated);
}

}  // namespace

std::vector<HeldStretch> held_stretches(const plan::Drill& drill, const Subject& subject) {
  std::vector<HeldStretch> out;
  if (!drill.dose || drill.circuit) return out;
  const plan::Dose& dose = *drill.dose;
  const auto add = [&](const plan::LibraryDrill* known, const plan::Words& name,
                       const plan::Amount& amount, bool repeated) {
    const auto hold = hold_of(amount, subject.session.timings);
    if (!hold || !is_stretch(known, name.text, amount, repeated)) return;
    const std::int64_t sets = std::min<std::int64_t>(dose.sets, 1000);
    out.push_back({&drill, known, name, *hold, *hold * sets, place_in_plan(drill, name)});
  };
  if (dose.amount.kind != AmountKind::kMoves) {
    add(drill.known, drill.name, dose.amount, dose.sets > 1 || dose.sides != plan::Sides::kOnce);
    return out;
  }
  for (const plan::Move& move : dose.moves) {
    add(subject.book.find(move.name.text), move.name, move.amount,
        move.sides != plan::Sides::kOnce);
  }
  return out;
}

bool speaks_of_moving(std::string_view text) {
  return has_one_of(words_in(text), {"run",      "jog",       "march",   "skip",    "gallop",
                                     "dance",    "hop",       "jump",    "tag",     "game",
                                     "play",     "chase",     "running", "jogging", "marching",
                                     "skipping", "galloping", "dancing", "hopping", "jumping",
                                     "tig",      "trot",      "canter",  "jig",     "swim"});
}

// Only kinds that plainly leave the pulse where it is count as resting; a drill nobody knows may be
// a run.
Pulse pulse_of(const plan::Drill& drill) {
  // `Walk, jog, skips, ankles` is a row of things, whichever of them the library knew.
  if (drill.name.text.find(',') != std::string::npos && speaks_of_moving(drill.name.text))
    return Pulse::kRaises;
  if (is_pause(drill)) return Pulse::kRests;
  if (moves_about(drill.name.text)) return Pulse::kUnknown;
  switch (kind_of(drill)) {
    case DrillKind::kUnknown:
      break;
    case DrillKind::kMobilise:
    case DrillKind::kActivate:
    case DrillKind::kShape:
    case DrillKind::kBalance:
    case DrillKind::kHang:
    case DrillKind::kStretch:
    case DrillKind::kRest:
      return Pulse::kRests;
    case DrillKind::kRaise:
    case DrillKind::kStrength:
    case DrillKind::kSupport:
    case DrillKind::kSwing:
    case DrillKind::kJump:
    case DrillKind::kLanding:
    case DrillKind::kRoll:
    case DrillKind::kTurn:
    case DrillKind::kSkill:
    case DrillKind::kGame:
      return Pulse::kRaises;
  }
  const auto words = head_of(drill.name.text);
  const bool still =
      !words.empty() && is_one_of(singular(words.back().text), {"stretch", "circle"});
  return still ? Pulse::kRests : Pulse::kUnknown;
}

}  // namespace chalkleaf::reason
