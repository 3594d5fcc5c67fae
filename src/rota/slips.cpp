// See the header.
#include "rota/slips.h"

#include <algorithm>
#include <map>

namespace chalkleaf::rota {
namespace {

/// Counts who is where.
class SlipFinder {
 public:
  explicit SlipFinder(const Rotation& rotation) : all_(rotation) {}

  std::vector<Slip> run() {
    for (const Stranger& one : all_.strangers)
      out_.push_back({Slip::Kind::kStranger, one.turn, 0, 0, one.span});
    for (std::size_t t = 0; t < all_.turns.size(); ++t) turn(t);
    visits_of_groups();
    std::stable_sort(out_.begin(), out_.end(),
                     [](const Slip& a, const Slip& b) { return a.kind < b.kind; });
    return std::move(out_);
  }

 private:
  bool rests(std::size_t group, std::size_t turn) const {
    return std::any_of(all_.rests.begin(), all_.rests.end(),
                       [&](const Rest& one) { return one.turn == turn && one.group == group; });
  }
  std::vector<const Visit*> at(std::size_t turn) const {
    std::vector<const Visit*> out;
    for (const Visit& visit : all_.visits) {
      if (visit.turn == turn) out.push_back(&visit);
    }
    return out;
  }
  std::size_t most_at_once() const {
    std::size_t out = 0;
    for (std::size_t t = 0; t < all_.turns.size(); ++t) out = std::max(out, at(t).size());
    return out;
  }
  // Stations where two groups at a time are the usual thing, or typed in one cell.
  bool is_shared_usually(std::size_t station) const {
    std::size_t together = 0;
    for (std::size_t t = 0; t < all_.turns.size(); ++t) {
      const auto there = at(t);
      together += std::count_if(there.begin(), there.end(),
                                [&](const Visit* v) { return v->station == station; }) > 1
                      ? 1
                      : 0;
    }
    return together > 1 || all_.groups.size() > all_.stations.size() + 1;
  }
  static bool lists(const std::vector<std::size_t>& list, std::size_t one) {
    return std::find(list.begin(), list.end(), one) != list.end();
  }

  void turn(std::size_t t) {
    const std::vector<const Visit*> there = at(t);
    for (std::size_t g = 0; g < all_.groups.size(); ++g) {
      std::vector<const Visit*> own;
      for (const Visit* visit : there) {
        if (visit->group == g) own.push_back(visit);
      }
      for (std::size_t i = 1; i < own.size(); ++i)
        out_.push_back({Slip::Kind::kTwice, t, g, own[i]->station, own[i]->span});
      const bool by_design =
          all_.groups.size() > all_.stations.size() && there.size() >= most_at_once();
      if (own.empty() && is_there(all_, g, t) && !rests(g, t) && !by_design && all_.stays_out == 0)
        out_.push_back({Slip::Kind::kNowhere, t, g, 0, all_.turns[t].span});
    }
    for (std::size_t s = 0; s < all_.stations.size(); ++s) station(t, s, there);
  }

  void station(std::size_t t, std::size_t s, const std::vector<const Visit*>& there) {
    std::vector<const Visit*> own;
    int gymnasts = 0;
    bool known = true;
    bool twice = false;
    for (const Visit* visit : there) {
      if (visit->station != s) continue;
      own.push_back(visit);
      const Group& group = all_.groups[visit->group];
      gymnasts += group.size.value_or(0);
      known = known && group.size.has_value();
      twice = twice || lists(group.twice, s);
    }
    if (own.empty()) return;
    const auto& takes = all_.stations[s].takes;
    if (takes && known && gymnasts > *takes)
      out_.push_back({Slip::Kind::kFull, t, own.back()->group, s, own.back()->span});
    const bool room = takes && known && gymnasts <= *takes;
    const bool typed = own.size() > 1 && all_.cells == Rotation::Cells::kGroups;
    if (own.size() > 1 && !room && !typed && !twice && !is_shared_usually(s))
      out_.push_back({Slip::Kind::kShared, t, own.back()->group, s, own.back()->span});
  }

  void visits_of_groups() {
    std::vector<Slip> found;
    std::map<std::size_t, int> groups;
    for (std::size_t g = 0; g < all_.groups.size(); ++g) {
      std::size_t turns = 0;
      std::vector<std::size_t> count(all_.stations.size());
      for (std::size_t t = 0; t < all_.turns.size(); ++t) {
        turns += is_there(all_, g, t) && !rests(g, t) ? 1 : 0;
      }
      for (const Visit& visit : all_.visits) {
        if (visit.group == g) ++count[visit.station];
      }
      const Group& group = all_.groups[g];
      const std::size_t open =
          all_.stations.size() - std::min(all_.stations.size(), group.skips.size());
      const std::size_t most = std::max<std::size_t>(1, open == 0 ? 1 : (turns + open - 1) / open);
      for (std::size_t s = 0; s < count.size(); ++s) {
        const std::size_t allowed = most + (lists(group.twice, s) ? 1 : 0);
        if (count[s] > allowed) {
          found.push_back(
              {Slip::Kind::kAgain, last_visit(g, s)->turn, g, s, last_visit(g, s)->span});
          ++groups[g];
        }
        const bool must_come = turns >= open && group.twice.empty() && !lists(group.skips, s);
        if (count[s] == 0 && must_come) {
          found.push_back({Slip::Kind::kNever, 0, g, s, group.name.span});
          ++groups[g];
        }
      }
    }
    // Where it is so for most, it is meant.
    const bool meant =
        groups.size() > 2 && groups.size() * 3 > all_.groups.size() * 2 && out_.empty();
    if (!meant) out_.insert(out_.end(), found.begin(), found.end());
  }
  const Visit* last_visit(std::size_t group, std::size_t station) const {
    const Visit* out = nullptr;
    for (const Visit& visit : all_.visits) {
      if (visit.group == group && visit.station == station &&
          (out == nullptr || visit.turn >= out->turn))
        out = &visit;
    }
    return out;
  }

  const Rotation& all_;
  std::vector<Slip> out_;
};

/// Tries changes.
class Mender {
 public:
  explicit Mender(const Rotation& rotation) : now_(rotation) {}

  std::vector<Mend> run(std::vector<Slip>& left) {
    constexpr std::size_t kMost = 3;       // what is wrong in more cells than that is not a slip
    constexpr std::size_t kLargest = 240;  // cells; more would take too long to try
    std::vector<Slip> slips = slips_of(now_);
    std::vector<Mend> out;
    if (now_.visits.size() > kLargest) {
      left = std::move(slips);
      return out;
    }
    while (!slips.empty() && out.size() < kMost) {
      if (!best(slips)) break;
      std::vector<Slip> then = slips_of(best_grid_);
      Mend made = best_mend_;
      for (const Slip& slip : slips) {
        const bool still =
            std::any_of(then.begin(), then.end(), [&](const Slip& one) { return same(one, slip); });
        if (!still) made.cures.push_back(slip);
      }
      out.push_back(std::move(made));
      now_ = best_grid_;
      slips = std::move(then);
    }
    left = std::move(slips);
    return out;
  }

 private:
  static bool same(const Slip& a, const Slip& b) {
    return a.kind == b.kind && a.group == b.group && a.station == b.station && a.turn == b.turn;
  }

  // One that leaves at least two fewer, since a change that is no cure moves one slip elsewhere.
  bool best(const std::vector<Slip>& slips) {
    fewest_ = slips.size();
    best_mend_ = {};
    const std::size_t before = fewest_;
    names();
    swaps();
    const bool cures = fewest_ + 1 < before || (fewest_ == 0 && before > 0);
    return cures;
  }
  void judge(const Rotation& grid, Mend mend) {
    const std::size_t left = slips_of(grid).size();
    if (left > fewest_ || (left == fewest_ && (best_mend_.changes.empty() || uneven_ == 0))) return;
    // Of two changes that cure as much, the one after which more go the same way round.
    const std::size_t uneven = other_ways(grid);
    if (left == fewest_ && uneven >= uneven_) return;
    fewest_ = left;
    uneven_ = uneven;
    best_grid_ = grid;
    best_mend_ = std::move(mend);
  }
  // Ways from one station to the next that most do not take from there.
  static std::size_t other_ways(const Rotation& grid) {
    std::map<std::size_t, std::map<std::size_t, std::size_t>> ways;
    for (const Visit& a : grid.visits) {
      for (const Visit& b : grid.visits) {
        if (a.group == b.group && b.turn == a.turn + 1) ++ways[a.station][b.station];
      }
    }
    std::size_t out = 0;
    for (const auto& [from, to] : ways) {
      std::size_t all = 0;
      std::size_t most = 0;
      for (const auto& [station, count] : to) {
        all += count;
        most = std::max(most, count);
      }
      out += all - most;
    }
    return out;
  }
  bool cells_are_groups() const { return now_.cells == Rotation::Cells::kGroups; }
  const std::string& name(std::size_t i) const {
    return cells_are_groups() ? now_.groups[i].name.text : now_.stations[i].name.text;
  }

  void names() {
    const std::size_t n = cells_are_groups() ? now_.groups.size() : now_.stations.size();
    for (std::size_t v = 0; v < now_.visits.size(); ++v) {
      const Visit& visit = now_.visits[v];
      for (std::size_t i = 0; i < n; ++i) {
        Rotation grid = now_;
        (cells_are_groups() ? grid.visits[v].group : grid.visits[v].station) = i;
        judge(grid, {{{visit.span, name(i), visit.turn}}, {}});
      }
    }
    for (std::size_t k = 0; k < now_.strangers.size(); ++k) stranger(k, n);
  }
  // Where the name that nobody knows stands is the one place of its row that is free.
  void stranger(std::size_t k, std::size_t n) {
    const Stranger one = now_.strangers[k];
    const std::size_t others = cells_are_groups() ? now_.stations.size() : now_.groups.size();
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t o = 0; o < others; ++o) {
        const bool taken = std::any_of(now_.visits.begin(), now_.visits.end(), [&](const Visit& v) {
          return v.turn == one.turn && (cells_are_groups() ? v.station : v.group) == o;
        });
        if (taken) continue;
        Rotation grid = now_;
        grid.strangers.erase(grid.strangers.begin() + static_cast<std::ptrdiff_t>(k));
        grid.visits.push_back(
            {one.turn, cells_are_groups() ? i : o, cells_are_groups() ? o : i, one.span});
        judge(grid, {{{one.span, name(i), one.turn}}, {}});
      }
    }
  }

  // Two cells of one turn that were mixed up.
  void swaps() {
    for (std::size_t a = 0; a < now_.visits.size(); ++a) {
      for (std::size_t b = a + 1; b < now_.visits.size(); ++b) {
        const Visit& first = now_.visits[a];
        const Visit& second = now_.visits[b];
        if (first.turn != second.turn) continue;
        Rotation grid = now_;
        if (cells_are_groups()) {
          std::swap(grid.visits[a].group, grid.visits[b].group);
        } else {
          std::swap(grid.visits[a].station, grid.visits[b].station);
        }
        const std::size_t to_first = cells_are_groups() ? second.group : second.station;
        const std::size_t to_second = cells_are_groups() ? first.group : first.station;
        judge(grid, {{{first.span, name(to_first), first.turn},
                      {second.span, name(to_second), first.turn}},
                     {}});
      }
    }
  }

  Rotation now_;
  std::size_t fewest_ = 0;
  std::size_t uneven_ = 0;
  Rotation best_grid_;
  Mend best_mend_;
};

}  // namespace

bool is_there(const Rotation& rotation, std::size_t group, std::size_t turn) {
  const Group& one = rotation.groups[group];
  const auto& clock = rotation.turns[turn].clock;
  if (!clock) return true;
  if (one.from && *one.from > *clock) return false;
  return !one.until || *one.until > *clock;
}

std::vector<Slip> slips_of(const Rotation& rotation) { return SlipFinder(rotation).run(); }

std::vector<Mend> mends_of(const Rotation& rotation, std::vector<Slip>& left) {
  return Mender(rotation).run(left);
}

}  // namespace chalkleaf::rota
