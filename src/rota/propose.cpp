// See the header.
#include "rota/propose.h"

#include <fmt/format.h>

#include <algorithm>

#include "rota/encode.h"

namespace chalkleaf::rota {
namespace {

/// Looks for one grid.
class Proposer {
 public:
  explicit Proposer(const Rotation& rotation) : all_(rotation), encoding_(all_, sat_) {}

  Proposal run() {
    Proposal out;
    out.rotation = all_;
    if (!sums(out)) return out;
    for (std::size_t r = 0; r < all_.rules.size(); ++r)
      selectors_.push_back(encoding_.add(all_.rules[r]));
    if (!musts(out)) return out;
    wishes(out);
    first_grid(out);
    out.outcome = Proposal::Outcome::kFound;
    return out;
  }

 private:
  std::vector<Literal> literals(const std::vector<std::size_t>& rules) const {
    std::vector<Literal> out;
    for (const std::size_t rule : rules) out.push_back(selectors_[rule]);
    return out;
  }

  // What no arrangement can help: said by itself, since no rule is to blame.
  bool sums(Proposal& out) {
    for (const Group& group : all_.groups) {
      const bool fits =
          std::any_of(all_.stations.begin(), all_.stations.end(), [&](const Station& one) {
            return !one.takes || !group.size || *group.size <= *one.takes;
          });
      if (fits) continue;
      out.why = fmt::format("{} has {} gymnasts, more than any station takes", group.name.text,
                            *group.size);
      return false;
    }
    switch (sat_.solve({})) {
      case Sat::Answer::kYes:
        return true;
      case Sat::Answer::kNotFound:
        out.outcome = Proposal::Outcome::kNotFound;
        return false;
      case Sat::Answer::kNo:
        break;
    }
    out.why =
        fmt::format("{} groups cannot be at {} stations in {} turns, each at each of them once",
                    all_.groups.size(), all_.stations.size(), all_.turns.size());
    return false;
  }

  bool musts(Proposal& out) {
    for (std::size_t r = 0; r < all_.rules.size(); ++r) {
      if (all_.rules[r].weight == Rule::Weight::kMust) kept_.push_back(r);
    }
    const Sat::Answer said = sat_.solve(literals(kept_));
    if (said == Sat::Answer::kYes) return true;
    if (said == Sat::Answer::kNotFound) {
      out.outcome = Proposal::Outcome::kNotFound;
    } else {
      out.conflict = smallest(kept_, {});
    }
    return false;
  }

  // Leaves out one after the other, the last written first, whatever the rest is impossible
  // without.
  std::vector<std::size_t> smallest(std::vector<std::size_t> rules,
                                    const std::vector<Literal>& fixed) {
    std::vector<std::size_t> candidates = rules;
    std::sort(candidates.rbegin(), candidates.rend());
    for (const std::size_t candidate : candidates) {
      std::vector<std::size_t> fewer = rules;
      std::erase(fewer, candidate);
      std::vector<Literal> assumed = literals(fewer);
      assumed.insert(assumed.end(), fixed.begin(), fixed.end());
      if (sat_.solve(assumed) == Sat::Answer::kNo) rules = std::move(fewer);
    }
    std::sort(rules.begin(), rules.end());
    return rules;
  }

  bool says_the_way() const {
    return std::any_of(all_.rules.begin(), all_.rules.end(), [](const Rule& one) {
      return one.kind == Rule::Kind::kSameWayRound || one.kind == Rule::Kind::kBalanced;
    });
  }

  void wishes(Proposal& out) {
    std::vector<std::size_t> order;
    if (!says_the_way()) {
      Rule unsaid;
      unsaid.kind = Rule::Kind::kSameWayRound;
      selectors_.push_back(encoding_.add(unsaid));
      order.push_back(all_.rules.size());
    }
    for (std::size_t r = 0; r < all_.rules.size(); ++r) {
      if (all_.rules[r].weight == Rule::Weight::kWish) order.push_back(r);
    }
    for (const std::size_t wish : order) {
      std::vector<Literal> assumed = literals(kept_);
      assumed.push_back(selectors_[wish]);
      const Sat::Answer said = sat_.solve(assumed);
      if (said == Sat::Answer::kYes) {
        kept_.push_back(wish);
      } else if (said == Sat::Answer::kNo) {
        out.given_up.push_back({wish, smallest(kept_, {selectors_[wish]}), false});
      } else {
        out.given_up.push_back({wish, {}, true});
      }
    }
  }

  // Turn by turn, group by group, the first station as written that is still possible.
  void first_grid(Proposal& out) {
    std::vector<Literal> assumed = literals(kept_);
    sat_.solve(assumed);
    for (std::size_t t = 0; t < all_.turns.size(); ++t) {
      for (std::size_t g = 0; g < all_.groups.size(); ++g) {
        for (std::size_t s = 0; s <= encoding_.nowhere(); ++s) {
          const Literal cell = encoding_.at(g, t, s);
          bool possible = sat_.is_true(cell);
          if (!possible) {
            std::vector<Literal> tried = assumed;
            tried.push_back(cell);
            possible = sat_.solve(tried) == Sat::Answer::kYes;
          }
          if (!possible) continue;
          assumed.push_back(cell);
          if (s == encoding_.nowhere()) {
            out.rotation.rests.push_back({t, g, {}});
          } else {
            out.rotation.visits.push_back({t, g, s, {}});
          }
          break;
        }
      }
    }
  }

  Rotation all_;
  Sat sat_;
  Encoding encoding_;
  std::vector<Literal> selectors_;  ///< of each rule; behind them that of the unsaid wish
  std::vector<std::size_t> kept_;
};

}  // namespace

Proposal propose(const Rotation& rotation) {
  constexpr std::size_t kMost = 16;  // groups, stations, turns: more is no evening
  const bool small = rotation.groups.size() <= kMost && rotation.stations.size() <= kMost &&
                     rotation.turns.size() <= kMost;
  if (!small || rotation.groups.empty() || rotation.stations.empty() || rotation.turns.empty()) {
    Proposal out;
    out.rotation = rotation;
    out.why = small ? "there are no groups, stations or turns"
                    : "there are more than 16 groups, stations or turns";
    return out;
  }
  return Proposer(rotation).run();
}

std::vector<std::vector<std::size_t>> williams_square(std::size_t stations) {
  std::vector<std::vector<std::size_t>> out;
  if (stations < 2 || stations % 2 == 1) return out;
  // 0, 1, n − 1, 2, n − 2, …; each row one further.
  std::vector<std::size_t> first{0};
  for (std::size_t i = 1; first.size() < stations; ++i) {
    first.push_back(i);
    if (first.size() < stations) first.push_back(stations - i);
  }
  for (std::size_t row = 0; row < stations; ++row) {
    out.emplace_back();
    for (const std::size_t sign : first) out.back().push_back((sign + row) % stations);
  }
  return out;
}

}  // namespace chalkleaf::rota
