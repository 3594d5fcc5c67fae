// See the header.
#include "rota/check.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/duration.h"
#include "base/text.h"
#include "rota/holds.h"
#include "rota/slips.h"

namespace chalkleaf::rota {
namespace {

class Checker {
 public:
  Checker(const Rotation& rotation, Diagnostics& diagnostics)
      : all_(rotation), found_(diagnostics) {}

  void run() {
    if (all_.form != Rotation::Form::kNone) {
      slips();
      coaches();
      clock();
    }
    rules();
  }

 private:
  std::string turn_text(std::size_t t) const {
    const auto& clock = all_.turns[t].clock;
    return clock ? "at " + clock_of(*clock) : fmt::format("in turn {}", t + 1);
  }
  const std::string& group(std::size_t g) const { return all_.groups[g].name.text; }
  const std::string& station(std::size_t s) const { return all_.stations[s].name.text; }

  int gymnasts(std::size_t turn, std::size_t at) const {
    int out = 0;
    for (const Visit& visit : all_.visits) {
      if (visit.turn == turn && visit.station == at)
        out += all_.groups[visit.group].size.value_or(0);
    }
    return out;
  }

  std::string text(const Slip& slip) const {
    switch (slip.kind) {
      case Slip::Kind::kStranger:
        return fmt::format("‘{}’ {} is in no other turn", slip.span.text(), turn_text(slip.turn));
      case Slip::Kind::kTwice:
        return fmt::format("{} is in two places at once {}", group(slip.group),
                           turn_text(slip.turn));
      case Slip::Kind::kNowhere:
        return fmt::format("{} is nowhere {}", group(slip.group), turn_text(slip.turn));
      case Slip::Kind::kShared:
        return fmt::format("{} has two groups {}", station(slip.station), turn_text(slip.turn));
      case Slip::Kind::kFull:
        return fmt::format("{} takes {} at a time, and {} are there {}", station(slip.station),
                           *all_.stations[slip.station].takes, gymnasts(slip.turn, slip.station),
                           turn_text(slip.turn));
      case Slip::Kind::kAgain:
        return fmt::format("{} is at {} a second time {}", group(slip.group), station(slip.station),
                           turn_text(slip.turn));
      case Slip::Kind::kNever:
        return fmt::format("{} never comes to {}", group(slip.group), station(slip.station));
    }
    return {};
  }

  Span place(const Span& span) const { return span ? span : all_.span; }

  void slips() {
    std::vector<Slip> left;
    for (const Mend& mend : mends_of(all_, left)) this->mend(mend);
    for (const Slip& slip : left) {
      const bool full = slip.kind == Slip::Kind::kFull;
      Diagnostic made{Severity::kWarning, full ? "rota-full" : "rota-slip", place(slip.span),
                      text(slip)};
      made.hint = hint(slip);
      found_.add(std::move(made));
    }
  }
  std::string hint(const Slip& slip) const {
    switch (slip.kind) {
      case Slip::Kind::kNever:
        return fmt::format("give {} a turn at {}, or say so: ‘{}: no {}’", group(slip.group),
                           station(slip.station), group(slip.group), station(slip.station));
      case Slip::Kind::kAgain:
        return fmt::format("write another station or group, or say so: ‘{} twice for {}’",
                           station(slip.station), group(slip.group));
      case Slip::Kind::kNowhere:
        return fmt::format("write {} into the turn, or ‘rest’ where it stays out",
                           group(slip.group));
      case Slip::Kind::kFull:
        return "put smaller groups together, or give the station another lane";
      case Slip::Kind::kStranger:
        return "write the name of a group or station that is in the other turns";
      case Slip::Kind::kTwice:
      case Slip::Kind::kShared:
        break;
    }
    return "look at this turn again";
  }

  void mend(const Mend& mend) {
    constexpr std::size_t kMost = 3;
    std::vector<std::string> said;
    bool full = !mend.cures.empty();
    for (const Slip& slip : mend.cures) {
      if (said.size() < kMost) said.push_back(text(slip));
      full = full && slip.kind == Slip::Kind::kFull;
    }
    const Mend::Change& first = mend.changes.front();
    Diagnostic made{Severity::kWarning, full ? "rota-full" : "rota-slip", place(first.cell),
                    join_list(said)};
    if (mend.changes.size() == 1) {
      made.hint = fmt::format("write ‘{}’ here, if that is what was meant", first.name);
    } else {
      made.hint = fmt::format("write ‘{}’ here and ‘{}’ there: the two look mixed up", first.name,
                              mend.changes[1].name);
      made.labels.push_back({place(mend.changes[1].cell), "and this one"});
    }
    for (const Mend::Change& change : mend.changes) {
      if (change.cell) made.edits.push_back({change.cell, change.name});
    }
    if (made.edits.size() != mend.changes.size()) made.edits.clear();
    found_.add(std::move(made));
  }

  // A coach who goes with two groups, or has a station and goes with a group, in two places at
  // once.
  void coaches() {
    for (const Coach& coach : all_.coaches) {
      for (std::size_t t = 0; t < all_.turns.size(); ++t) {
        std::vector<std::size_t> places =
            coach.groups.empty() ? std::vector<std::size_t>() : coach.stations;
        for (const Visit& visit : all_.visits) {
          const bool own = visit.turn == t && std::find(coach.groups.begin(), coach.groups.end(),
                                                        visit.group) != coach.groups.end();
          const bool new_place =
              std::find(places.begin(), places.end(), visit.station) == places.end();
          if (own && new_place) places.push_back(visit.station);
        }
        if (places.size() < 2) continue;
        Diagnostic made{Severity::kWarning, "rota-full", coach.name.span,
                        fmt::format("{} would be at {} and at {} {}", coach.name.text,
                                    station(places[0]), station(places[1]), turn_text(t))};
        made.hint = "give one of the two to another coach, or put both groups at one station";
        found_.add(std::move(made));
        break;
      }
    }
  }

  void clock() {
    for (std::size_t t = 1; t < all_.turns.size(); ++t) {
      const auto& above = all_.turns[t - 1].clock;
      const auto& own = all_.turns[t].clock;
      if (!above || !own || *own > *above) continue;
      Diagnostic made{Severity::kWarning, "rota-clock", place(all_.turns[t].span),
                      fmt::format("the turn at {} stands below the one at {}", clock_of(*own),
                                  clock_of(*above))};
      made.hint = "write the time at which this turn begins";
      found_.add(std::move(made));
      return;
    }
    uneven();
    claimed();
    pauses();
  }

  // One turn too long by as much as the next is too short: the clock between them is a slip.
  void uneven() {
    if (all_.turns.size() < 3) return;
    std::vector<int> gaps;
    for (std::size_t t = 0; t + 1 < all_.turns.size(); ++t) gaps.push_back(gap_behind(t));
    std::vector<int> sorted = gaps;
    std::erase(sorted, 0);
    if (sorted.size() < 3) return;
    std::sort(sorted.begin(), sorted.end());
    const int usual = sorted[sorted.size() / 2];
    for (std::size_t t = 0; t + 1 < gaps.size(); ++t) {
      const int off = gaps[t] - usual;
      if (gaps[t] == 0 || gaps[t + 1] == 0 || off == 0 || gaps[t + 1] - usual != -off) continue;
      const int meant = *all_.turns[t + 1].clock - off;
      Diagnostic made{
          Severity::kWarning, "rota-clock", place(all_.turns[t + 1].span),
          fmt::format(
              "the turn before {} has {} minutes and the one behind it {}; the others have {}",
              clock_of(*all_.turns[t + 1].clock), gaps[t], gaps[t + 1], usual)};
      made.hint = fmt::format("{} would make them alike", clock_of(meant));
      found_.add(std::move(made));
    }
  }
  // From a turn's begin to the next one's, a break between them taken off; 0 where it is not known.
  int gap_behind(std::size_t t) const {
    if (!all_.turns[t].clock || !all_.turns[t + 1].clock) return 0;
    int out = *all_.turns[t + 1].clock - *all_.turns[t].clock;
    for (const Pause& pause : all_.pauses) {
      if (pause.before != t + 1) continue;
      if (pause.minutes == 0) return 0;
      out -= pause.minutes;
    }
    return out;
  }

  void claimed() {
    if (all_.claimed_turns && *all_.claimed_turns != static_cast<int>(all_.turns.size())) {
      Diagnostic made{Severity::kWarning, "rota-clock", place(all_.heading.span),
                      fmt::format("the heading says {} turns, and the grid has {}",
                                  *all_.claimed_turns, all_.turns.size())};
      made.hint = "add the turns that are missing, or correct the heading";
      found_.add(std::move(made));
    }
    if (!all_.claimed) return;
    for (std::size_t t = 0; t + 1 < all_.turns.size(); ++t) {
      const int gap = gap_behind(t);
      if (gap == 0 || gap >= *all_.claimed) continue;
      Diagnostic made{
          Severity::kWarning, "rota-clock", place(all_.turns[t].span),
          fmt::format("the turn {} has {} minutes, not {}", turn_text(t), gap, *all_.claimed)};
      made.hint = "correct the clock of the grid, or the minutes of the heading";
      found_.add(std::move(made));
      return;
    }
  }

  void pauses() {
    for (const Pause& pause : all_.pauses) {
      if (!pause.clock || pause.before == 0 || pause.before >= all_.turns.size()) continue;
      const auto& next = all_.turns[pause.before].clock;
      const auto& above = all_.turns[pause.before - 1].clock;
      if ((!next || *next > *pause.clock) && (!above || *above < *pause.clock)) continue;
      Diagnostic made{Severity::kWarning, "rota-clock", place(pause.span),
                      fmt::format("the break at {} is not between the turns it stands between",
                                  clock_of(*pause.clock))};
      made.hint = "write the time at which the break begins";
      found_.add(std::move(made));
    }
  }

  void rules() {
    for (const Rule& rule : all_.rules) {
      if (rule.kind == Rule::Kind::kUnread) {
        Diagnostic made{
            Severity::kWarning, "rota-rule", rule.span,
            "this cannot be read, so nothing looks after it; it is printed as it stands"};
        made.hint =
            "write it as ‘D not first on vault’, ‘bars before floor for C’, ‘floor not straight "
            "after vault’, ‘A on beam in "
            "the first 2’, ‘A and B not side by side’, ‘one crash mat for vault and floor: A, B’, "
            "‘change hall once’, "
            "‘all the same way round’ or ‘balanced’";
        found_.add(std::move(made));
        continue;
      }
      // Of a proposed grid whoever proposed it says what it leaves out.
      if (all_.visits.empty() || all_.form == Rotation::Form::kNone) continue;
      const auto against = breaks(all_, rule);
      if (!against) continue;
      const bool must = rule.weight == Rule::Weight::kMust;
      Diagnostic made{must ? Severity::kWarning : Severity::kNote, "rota-rule", rule.span,
                      fmt::format("the grid does not keep this: {}", against->what)};
      if (against->span) made.labels.push_back({against->span, "here"});
      made.hint = must ? "change the grid, or take the line out"
                       : "nothing has to be done: it is a wish; the grid is as it was written";
      found_.add(std::move(made));
    }
  }

  const Rotation& all_;
  Diagnostics& found_;
};

}  // namespace

std::string clock_of(int minutes) { return clock_text({Duration::minutes(minutes)}); }

void check(const Rotation& rotation, Diagnostics& diagnostics) {
  Checker(rotation, diagnostics).run();
}

}  // namespace chalkleaf::rota
