// See the header.
#include "rota/holds.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace chalkleaf::rota {
namespace {

bool lists(const std::vector<std::size_t>& list, std::size_t one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

/// Looks through the visits of one grid.
class Judge {
 public:
  Judge(const Rotation& rotation, const Rule& rule)
      : all_(rotation), rule_(rule), groups_(groups_of(rotation, rule)) {}

  std::optional<Against> run() const {
    switch (rule_.kind) {
      case Rule::Kind::kNotFirst:
        return at_end(first_turn(), "first", true);
      case Rule::Kind::kNotLast:
        return at_end(last_turn(), "last", true);
      case Rule::Kind::kLast:
        return at_end(last_turn(), "last", false);
      case Rule::Kind::kBefore:
        return before();
      case Rule::Kind::kNotAfter:
        return straight_after();
      case Rule::Kind::kInFirst:
        return in_first();
      case Rule::Kind::kNotBeside:
        return beside();
      case Rule::Kind::kOneKit:
        return kit();
      case Rule::Kind::kOneHallChange:
        return halls();
      case Rule::Kind::kSameWayRound:
        return same_way();
      case Rule::Kind::kBalanced:
        return balanced();
      case Rule::Kind::kUnread:
        break;
    }
    return std::nullopt;
  }

 private:
  static std::size_t first_turn() { return 0; }
  std::size_t last_turn() const { return all_.turns.size() - 1; }
  const std::string& group(std::size_t g) const { return all_.groups[g].name.text; }
  const std::string& station(std::size_t s) const { return all_.stations[s].name.text; }

  // In order of turns.
  std::vector<Visit> of(std::size_t g) const {
    std::vector<Visit> out;
    for (const Visit& visit : all_.visits) {
      if (visit.group == g) out.push_back(visit);
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const Visit& a, const Visit& b) { return a.turn < b.turn; });
    return out;
  }

  // kNotFirst, kNotLast, kLast: in the first or last turn of the evening.
  std::optional<Against> at_end(std::size_t turn, std::string_view word, bool refused) const {
    for (const std::size_t g : groups_) {
      bool there = false;
      for (const Visit& visit : all_.visits) {
        if (visit.group != g || visit.turn != turn || !lists(rule_.stations, visit.station))
          continue;
        there = true;
        if (refused)
          return Against{fmt::format("{} is {} on {}", group(g), word, station(visit.station)),
                         visit.span};
      }
      if (!refused && !there)
        return Against{
            fmt::format("{} is not {} on {}", group(g), word, station(rule_.stations.front())), {}};
    }
    return std::nullopt;
  }

  std::optional<Against> before() const {
    for (const std::size_t g : groups_) {
      std::optional<std::size_t> first;
      std::optional<Visit> second;
      for (const Visit& visit : of(g)) {
        if (visit.station == rule_.stations[0] && !first) first = visit.turn;
        if (visit.station == rule_.stations[1] && !second) second = visit;
      }
      if (first && second && second->turn <= *first)
        return Against{fmt::format("{} is on {} before {}", group(g), station(rule_.stations[1]),
                                   station(rule_.stations[0])),
                       second->span};
    }
    return std::nullopt;
  }

  std::optional<Against> straight_after() const {
    for (const std::size_t g : groups_) {
      const std::vector<Visit> own = of(g);
      for (std::size_t i = 1; i < own.size(); ++i) {
        if (own[i].turn == own[i - 1].turn + 1 && own[i].station == rule_.stations[0] &&
            own[i - 1].station == rule_.stations[1])
          return Against{fmt::format("{} is on {} straight after {}", group(g),
                                     station(rule_.stations[0]), station(rule_.stations[1])),
                         own[i].span};
      }
    }
    return std::nullopt;
  }

  std::optional<Against> in_first() const {
    for (const std::size_t g : groups_) {
      for (const std::size_t s : rule_.stations) {
        const std::vector<Visit> own = of(g);
        const bool soon = std::any_of(own.begin(), own.end(), [&](const Visit& visit) {
          return visit.station == s && visit.turn < static_cast<std::size_t>(rule_.number);
        });
        if (!soon)
          return Against{rule_.number == 1
                             ? fmt::format("{} is not first on {}", group(g), station(s))
                             : fmt::format("{} is not on {} in the first {}", group(g), station(s),
                                           rule_.number),
                         {}};
      }
    }
    return std::nullopt;
  }

  std::optional<Against> beside() const {
    for (const Visit& a : all_.visits) {
      if (a.group != rule_.groups[0]) continue;
      for (const Visit& b : all_.visits) {
        if (b.group != rule_.groups[1] || b.turn != a.turn) continue;
        const std::size_t off =
            a.station > b.station ? a.station - b.station : b.station - a.station;
        if (off < 2)
          return Against{fmt::format("{} is on {} and {} on {}", group(a.group), station(a.station),
                                     group(b.group), station(b.station)),
                         a.span};
      }
    }
    return std::nullopt;
  }

  std::optional<Against> kit() const {
    for (std::size_t t = 0; t < all_.turns.size(); ++t) {
      std::vector<Visit> there;
      for (const Visit& visit : all_.visits) {
        if (visit.turn == t && lists(groups_, visit.group) && lists(rule_.stations, visit.station))
          there.push_back(visit);
      }
      if (there.size() > 1)
        return Against{fmt::format("{} on {} and {} on {} need it at once", group(there[0].group),
                                   station(there[0].station), group(there[1].group),
                                   station(there[1].station)),
                       there[1].span};
    }
    return std::nullopt;
  }

  std::optional<Against> halls() const {
    for (const std::size_t g : groups_) {
      std::size_t changes = 0;
      const std::vector<Visit> own = of(g);
      for (std::size_t i = 1; i < own.size(); ++i) {
        const bool other =
            all_.stations[own[i].station].hall != all_.stations[own[i - 1].station].hall;
        changes += other ? 1 : 0;
        if (changes > 1)
          return Against{fmt::format("{} changes the hall twice", group(g)), own[i].span};
      }
    }
    return std::nullopt;
  }

  // One order of stations, in a ring, that all follow, each from a place of its own.
  std::optional<Against> same_way() const {
    std::map<std::size_t, std::size_t> next;
    for (std::size_t g = 0; g < all_.groups.size(); ++g) {
      const std::vector<Visit> own = of(g);
      for (std::size_t i = 1; i < own.size(); ++i) {
        if (own[i].turn != own[i - 1].turn + 1) continue;
        const auto [known, fresh] = next.try_emplace(own[i - 1].station, own[i].station);
        if (!fresh && known->second != own[i].station)
          return Against{fmt::format("{} goes from {} to {}, and another group does not", group(g),
                                     station(own[i - 1].station), station(own[i].station)),
                         own[i].span};
      }
    }
    return std::nullopt;
  }

  // Each station comes straight behind each other one for equally many groups (Williams 1949).
  std::optional<Against> balanced() const {
    std::map<std::pair<std::size_t, std::size_t>, std::size_t> follows;
    for (std::size_t g = 0; g < all_.groups.size(); ++g) {
      const std::vector<Visit> own = of(g);
      for (std::size_t i = 1; i < own.size(); ++i) ++follows[{own[i - 1].station, own[i].station}];
    }
    const std::size_t pairs = all_.stations.size() * (all_.stations.size() - 1);
    const bool even =
        follows.size() == pairs &&
        std::all_of(follows.begin(), follows.end(), [&](const auto& one) {
          return one.second == follows.begin()->second && one.first.first != one.first.second;
        });
    if (even) return std::nullopt;
    return Against{"one station comes behind another more often than others do", {}};
  }

  const Rotation& all_;
  const Rule& rule_;
  std::vector<std::size_t> groups_;
};

}  // namespace

std::vector<std::size_t> groups_of(const Rotation& rotation, const Rule& rule) {
  if (!rule.groups.empty()) return rule.groups;
  std::vector<std::size_t> out;
  for (std::size_t g = 0; g < rotation.groups.size(); ++g) out.push_back(g);
  return out;
}

std::optional<Against> breaks(const Rotation& rotation, const Rule& rule) {
  if (rotation.turns.empty()) return std::nullopt;
  return Judge(rotation, rule).run();
}

}  // namespace chalkleaf::rota
