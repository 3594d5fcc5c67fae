// See the header.
#include "reason/loads.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "reason/drill_lines.h"
#include "reason/sums.h"

namespace chalkleaf::reason {
namespace {

using plan::AmountKind;
using plan::LibraryDrill;

constexpr std::int64_t kMostOfALoad = 1'000'000'000'000;
constexpr int kMiddling = 2;
// So much time for one thing is a place in the lesson: turns, waiting and words are in it, and a
// gymnast is busy for about a third of it (common practice, no source).
constexpr std::int64_t kBusyShare = 3;
// Quicker than this a landing is the next take-off.
constexpr Duration kBounce = Duration::seconds(1);

/// How much of a drill one gymnast does.
struct Amounts {
  std::int64_t times = 0;  ///< repetitions, or whole holds
  Duration held;           ///< all holds together; nothing of what is repeated
  Duration work;
};

int load_on(const LibraryDrill& drill, std::string_view region) {
  for (const auto& [name, load] : drill.loads) {
    if (lower_ascii(name.text) == region) return load.value;
  }
  return 0;
}

// Walkovers, bridges and limbers are no arch shapes, but bear on the hands while the back bends.
bool bends_back(const LibraryDrill& drill) {
  if (load_on(drill, "back") < kMiddling) return false;
  const std::string curve = lower_ascii(drill.curve.text);
  return curve == "arch" || (curve.empty() && load_on(drill, "wrists") >= kMiddling);
}

void add_landings(const LibraryDrill& drill, const Amounts& amounts, LoadSums& out) {
  if (!drill.each.landings) return;
  const bool quick = drill.pace && drill.pace->value <= kBounce;
  out.add(quick ? Load::kBounces : Load::kLandings, amounts.times * drill.each.landings->value);
}

LoadSums sums_for(const LibraryDrill& drill, const Amounts& amounts, std::optional<int> effort) {
  LoadSums out;
  if (load_on(drill, "wrists") >= kMiddling && drill.kind.value != plan::DrillKind::kStretch) {
    out.add(Load::kHandTime, amounts.held.in_milliseconds());
    if (drill.each.hands) out.add(Load::kHandTimes, amounts.times * drill.each.hands->value);
  }
  add_landings(drill, amounts, out);
  if (load_on(drill, "neck") >= kMiddling) out.add(Load::kNeckTimes, amounts.times);
  if (bends_back(drill)) out.add(Load::kBackBends, amounts.times);
  if (drill.each.inverted) {
    const Duration upside =
        amounts.held > Duration() ? amounts.held : times(drill.each.inverted->value, amounts.times);
    out.add(Load::kUpsideDown, upside.in_milliseconds());
  }
  if (!effort && drill.effort) effort = drill.effort->value;
  if (effort) out.add(Load::kEffort, times(amounts.work, *effort).in_milliseconds());
  return out;
}

std::int64_t product(std::int64_t a, std::int64_t b) {
  if (a <= 0 || b <= 0) return 0;
  return a > kMostOfALoad / b ? kMostOfALoad : a * b;
}

/// How one amount of a drill is counted: what the drill is, and what its dose says.
struct Counted {
  const LibraryDrill& drill;
  const plan::Amount& amount;
  std::int64_t repeats = 1;  ///< sets × sides
  Duration work;             ///< of all of them
};

Amounts amounts_of(const Counted& counted) {
  const LibraryDrill& drill = counted.drill;
  const plan::Amount& amount = counted.amount;
  Amounts out;
  out.work = counted.work;
  const bool in_time = amount.kind == AmountKind::kTime || amount.kind == AmountKind::kMaxHold ||
                       amount.kind == AmountKind::kLengths;
  if (!in_time) {
    out.times = product(amount.most_count(), counted.repeats);
    return out;
  }
  const bool lesson = is_place_in_lesson(amount);
  const Duration busy = lesson ? counted.work / kBusyShare : counted.work;
  // `30 s` of a drill with a pace are so many repetitions; of one that is held, a hold.
  const bool repeated = amount.kind != AmountKind::kMaxHold && !amount.held && drill.pace &&
                        !drill.longest && drill.pace->value > Duration();
  if (repeated) {
    out.times = busy.in_milliseconds() / drill.pace->value.in_milliseconds();
    return out;
  }
  out.held = busy;
  out.times = counted.repeats;
  if (lesson && drill.longest && drill.longest->value > Duration())
    out.times = busy.in_milliseconds() / drill.longest->value.in_milliseconds();
  return out;
}

/// Adds up the lines of one session.
class Adder {
 public:
  Adder(const plan::Session& session, const plan::DrillBook& book, PlanLoads& out)
      : session_(session), book_(book), out_(out) {}

  void add(const DrillTime& time, const plan::Part& part) {
    const plan::Drill& drill = *time.drill;
    if (!drill.circuit) {
      if (drill.dose) return add_line(drill, time.work, *drill.dose, 1, part);
      if (!is_pause(drill)) out_.uncounted.push_back(&drill);
      return;
    }
    for (const DrillTime& station : time.stations) {
      const std::int64_t rounds = drill.circuit->rounds;
      plan::Dose dose;
      dose.amount.kind = AmountKind::kTime;
      dose.amount.time = drill.circuit->work;
      const auto& own = station.drill->dose;
      if (!own && !drill.circuit->work) continue;
      add_line(*station.drill, times(station.work, rounds), own ? *own : dose, rounds, part);
    }
  }

 private:
  void add_line(const plan::Drill& drill, Duration work, const plan::Dose& dose,
                std::int64_t rounds, const plan::Part& part) {
    const std::int64_t sets = product(dose.sets, rounds);
    LoadSums sums;
    bool known = false;
    if (dose.amount.kind == AmountKind::kMoves) {
      for (const plan::Move& move : dose.moves) {
        known = add_move(move, dose, sets, plan::place_of(part, drill), sums) || known;
      }
    }
    const auto add_one = [&](const LibraryDrill* one) {
      if (one == nullptr || dose.amount.kind == AmountKind::kMoves) return;
      known = true;
      const Counted counted{*one, dose.amount, product(sets, dose.repeats_per_set()), work};
      sums.raise_to(sums_for(*one, amounts_of(counted), dose.effort));
    };
    add_one(drill.known);
    for (const LibraryDrill* choice : drill.known_choices) add_one(choice);
    if (!known && !is_pause(drill)) out_.uncounted.push_back(&drill);
    out_.sum.add(sums);
    out_.lines.push_back({&drill, sums});
  }

  bool add_move(const plan::Move& move, const plan::Dose& dose, std::int64_t sets,
                std::string_view place, LoadSums& sums) {
    const LibraryDrill* known = book_.find(move.name.text, place);
    if (known == nullptr) return false;
    plan::Dose alone;
    alone.amount = move.amount;
    alone.sides = move.sides == plan::Sides::kOnce ? dose.sides : move.sides;
    const Duration once = set_time(alone, session_.timings);
    const Counted counted{*known, move.amount, product(sets, alone.repeats_per_set()),
                          times(once, sets)};
    sums.add(sums_for(*known, amounts_of(counted), dose.effort));
    return true;
  }

  const plan::Session& session_;
  const plan::DrillBook& book_;
  PlanLoads& out_;
};

/// How a load is spoken of.
struct LoadWords {
  Load load;
  std::string_view key;
  std::string_view title;
  std::string_view one;   ///< behind `1`; of a time, behind the time
  std::string_view many;  ///< behind other numbers
};
constexpr std::array<LoadWords, kLoadKinds> kLoadWords{{
    {Load::kHandTime, "hands_s", "held on hands", "held on the hands", "held on the hands"},
    {Load::kHandTimes, "hands", "on to hands", "time on to the hands", "times on to the hands"},
    {Load::kLandings, "landings", "landings", "landing", "landings"},
    {Load::kBounces, "bounces", "bounces", "bounce", "bounces"},
    {Load::kNeckTimes, "neck", "neck", "time with weight on the neck",
     "times with weight on the neck"},
    {Load::kBackBends, "back_bends", "back bends", "deep bend of the back",
     "deep bends of the back"},
    {Load::kUpsideDown, "upside_down_s", "upside down", "upside down", "upside down"},
    {Load::kEffort, "effort_min", "effort x min", "effort-minute", "effort-minutes"},
}};

const LoadWords& words_of(Load load) { return kLoadWords[static_cast<std::size_t>(load)]; }

}  // namespace

bool is_place_in_lesson(const plan::Amount& amount) {
  constexpr Duration kLeast = Duration::minutes(2);
  return amount.kind == AmountKind::kTime && !amount.held && !amount.as_many &&
         amount.most_time().value_or(Duration()) >= kLeast;
}

const std::array<Load, kLoadKinds>& all_loads() {
  static const std::array<Load, kLoadKinds> kAll = [] {
    std::array<Load, kLoadKinds> all{};
    for (std::size_t i = 0; i < kLoadKinds; ++i) all[i] = kLoadWords[i].load;
    return all;
  }();
  return kAll;
}

std::string_view load_key(Load load) { return words_of(load).key; }
std::string_view load_title(Load load) { return words_of(load).title; }

bool is_time(Load load) {
  return load == Load::kHandTime || load == Load::kUpsideDown || load == Load::kEffort;
}

std::string load_amount(Load load, std::int64_t amount) {
  if (load == Load::kEffort) return std::to_string((amount + 30'000) / 60'000);
  return is_time(load) ? exact_text(Duration::milliseconds(amount)) : std::to_string(amount);
}

std::string load_text(Load load, std::int64_t amount) {
  const std::string number = load_amount(load, amount);
  return fmt::format("{} {}", number, number == "1" ? words_of(load).one : words_of(load).many);
}

void LoadSums::add(Load load, std::int64_t amount) {
  std::int64_t& sum = sums_[static_cast<std::size_t>(load)];
  sum = std::min(kMostOfALoad, sum + std::clamp<std::int64_t>(amount, 0, kMostOfALoad));
}

void LoadSums::add(const LoadSums& other) {
  for (const Load load : all_loads()) add(load, other.of(load));
}

void LoadSums::raise_to(const LoadSums& other) {
  for (std::size_t i = 0; i < kLoadKinds; ++i) sums_[i] = std::max(sums_[i], other.sums_[i]);
}

PlanLoads loads_of(const plan::Session& session, const Timetable& timetable,
                   const plan::DrillBook& book) {
  PlanLoads out;
  Adder adder(session, book, out);
  for (const PartTime& part : timetable.parts) {
    for (const DrillTime& time : part.drills) adder.add(time, *part.part);
  }
  return out;
}

}  // namespace chalkleaf::reason
