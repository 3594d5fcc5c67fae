// See the header.
#include "rota/encode.h"

#include <algorithm>

#include "rota/holds.h"
#include "rota/propose.h"
#include "rota/slips.h"

namespace chalkleaf::rota {
namespace {

bool contains(const std::vector<std::size_t>& list, std::size_t one) {
  return std::find(list.begin(), list.end(), one) != list.end();
}

}  // namespace

Encoding::Encoding(const Rotation& rotation, Sat& sat)
    : all_(rotation),
      sat_(sat),
      groups_(rotation.groups.size()),
      turns_(rotation.turns.size()),
      stations_(rotation.stations.size()) {
  cells_.resize(groups_ * turns_ * (stations_ + 1));
  for (Literal& cell : cells_) cell = sat_.fresh();
  // Two groups are put together only where the hall says that they fit.
  may_share_ = std::any_of(all_.stations.begin(), all_.stations.end(),
                           [](const Station& one) { return one.takes.has_value(); });
  places();
  for (std::size_t g = 0; g < groups_; ++g) visits(g);
  for (std::size_t t = 0; t < turns_; ++t) {
    for (std::size_t s = 0; s < stations_; ++s) station(t, s);
  }
  coaches();
}

void Encoding::places() {
  for (std::size_t g = 0; g < groups_; ++g) {
    for (std::size_t t = 0; t < turns_; ++t) {
      std::vector<Literal> one;
      for (std::size_t s = 0; s <= stations_; ++s) one.push_back(at(g, t, s));
      sat_.add(one);
      sat_.at_most_one(one);
      if (!is_there(all_, g, t)) sat_.add({at(g, t, nowhere())});
    }
  }
}

// How many turns a group stays out although it is there: said, or because there are more groups
// than places; then as evenly as it goes.
std::pair<std::size_t, std::size_t> Encoding::turns_out(std::size_t there) const {
  if (all_.stays_out > 0) {
    const std::size_t said = std::min(there, static_cast<std::size_t>(all_.stays_out));
    return {said, said};
  }
  if (groups_ <= stations_ || may_share_) return {0, 0};
  const std::size_t over = there * (groups_ - stations_);
  return {over / groups_, (over + groups_ - 1) / groups_};
}

void Encoding::visits(std::size_t group) {
  std::size_t there = 0;
  std::vector<Literal> out;
  for (std::size_t t = 0; t < turns_; ++t) {
    if (!is_there(all_, group, t)) continue;
    ++there;
    out.push_back(at(group, t, nowhere()));
  }
  const auto [least_out, most_out] = turns_out(there);
  sat_.between(out, least_out, most_out);
  const Group& own = all_.groups[group];
  const std::size_t open = stations_ - std::min(stations_, own.skips.size());
  const std::size_t extra = own.twice.size();
  for (std::size_t s = 0; s < stations_; ++s) {
    std::vector<Literal> visits;
    for (std::size_t t = 0; t < turns_; ++t) visits.push_back(at(group, t, s));
    if (contains(own.skips, s)) {
      sat_.between(visits, 0, 0);
    } else if (contains(own.twice, s)) {
      sat_.between(visits, 2, 2);
    } else if (open > 0) {
      const std::size_t fewest = there - most_out;
      const std::size_t turns = there - least_out;
      const std::size_t least = fewest >= open + extra ? (fewest - extra) / open : 0;
      sat_.between(visits, least,
                   std::max<std::size_t>(1, (turns - std::min(turns, extra) + open - 1) / open));
    }
  }
}

// One group at a time, or as many as the hall takes: no smallest set of groups that is too many.
void Encoding::station(std::size_t turn, std::size_t station) {
  const auto& takes = all_.stations[station].takes;
  std::vector<Literal> there;
  for (std::size_t g = 0; g < groups_; ++g) there.push_back(at(g, turn, station));
  const bool sized = std::all_of(all_.groups.begin(), all_.groups.end(),
                                 [](const Group& one) { return one.size.has_value(); });
  for (std::size_t g = 0; g < groups_; ++g) {
    if (takes && all_.groups[g].size && *all_.groups[g].size > *takes) sat_.add({-there[g]});
  }
  if (!takes || !sized || groups_ <= stations_) return sat_.at_most_one(there);
  for (std::size_t a = 0; a < groups_; ++a) {
    for (std::size_t b = a + 1; b < groups_; ++b) {
      const int two = *all_.groups[a].size + *all_.groups[b].size;
      if (two > *takes) {
        sat_.add({-there[a], -there[b]});
        continue;
      }
      for (std::size_t c = b + 1; c < groups_; ++c) sat_.add({-there[a], -there[b], -there[c]});
    }
  }
}

void Encoding::coaches() {
  for (const Coach& coach : all_.coaches) {
    for (std::size_t t = 0; t < turns_; ++t) {
      for (std::size_t i = 0; i < coach.groups.size(); ++i) {
        for (std::size_t k = i + 1; k < coach.groups.size(); ++k) {
          for (std::size_t s = 0; s < stations_; ++s) {
            for (std::size_t o = 0; o < stations_; ++o) {
              if (s != o) sat_.add({-at(coach.groups[i], t, s), -at(coach.groups[k], t, o)});
            }
          }
        }
      }
    }
  }
}

Literal Encoding::add(const Rule& rule) {
  const Literal on = sat_.fresh();
  const std::vector<std::size_t> groups = groups_of(all_, rule);
  const auto each = [&](const auto& make) {
    for (const std::size_t g : groups) make(g);
  };
  switch (rule.kind) {
    case Rule::Kind::kNotFirst:
    case Rule::Kind::kNotLast: {
      const std::size_t t = rule.kind == Rule::Kind::kNotFirst ? 0 : turns_ - 1;
      each([&](std::size_t g) {
        for (const std::size_t s : rule.stations) sat_.add({-on, -at(g, t, s)});
      });
      break;
    }
    case Rule::Kind::kLast:
      each([&](std::size_t g) {
        std::vector<Literal> clause{-on};
        for (const std::size_t s : rule.stations) clause.push_back(at(g, turns_ - 1, s));
        sat_.add(clause);
      });
      break;
    case Rule::Kind::kInFirst:
      each([&](std::size_t g) {
        for (const std::size_t s : rule.stations) {
          std::vector<Literal> clause{-on};
          const auto turns = std::min(turns_, static_cast<std::size_t>(std::max(0, rule.number)));
          for (std::size_t t = 0; t < turns; ++t) clause.push_back(at(g, t, s));
          sat_.add(clause);
        }
      });
      break;
    case Rule::Kind::kBefore:
      before(rule, on);
      break;
    case Rule::Kind::kNotAfter:
      each([&](std::size_t g) {
        for (std::size_t t = 0; t + 1 < turns_; ++t)
          sat_.add({-on, -at(g, t, rule.stations[1]), -at(g, t + 1, rule.stations[0])});
      });
      break;
    case Rule::Kind::kNotBeside:
      for (std::size_t t = 0; t < turns_; ++t) {
        for (std::size_t a = 0; a < stations_; ++a) {
          for (std::size_t b = a > 0 ? a - 1 : 0; b < std::min(stations_, a + 2); ++b)
            sat_.add({-on, -at(rule.groups[0], t, a), -at(rule.groups[1], t, b)});
        }
      }
      break;
    case Rule::Kind::kOneKit:
      kit(rule, on);
      break;
    case Rule::Kind::kOneHallChange:
      halls(rule, on);
      break;
    case Rule::Kind::kSameWayRound:
      same_way(on);
      break;
    case Rule::Kind::kBalanced:
      balanced(on);
      break;
    case Rule::Kind::kUnread:
      break;
  }
  return on;
}

// A turn at the second needs one at the first before it, if the group comes to the first at all.
void Encoding::before(const Rule& rule, Literal on) {
  for (const std::size_t g : groups_of(all_, rule)) {
    for (std::size_t t = 0; t < turns_; ++t) {
      for (std::size_t later = t + 1; later < turns_; ++later) {
        std::vector<Literal> clause{-on, -at(g, t, rule.stations[1]),
                                    -at(g, later, rule.stations[0])};
        for (std::size_t i = 0; i < t; ++i) clause.push_back(at(g, i, rule.stations[0]));
        sat_.add(clause);
      }
    }
  }
}

void Encoding::kit(const Rule& rule, Literal on) {
  const std::vector<std::size_t> groups = groups_of(all_, rule);
  for (std::size_t t = 0; t < turns_; ++t) {
    for (std::size_t i = 0; i < groups.size(); ++i) {
      for (std::size_t k = i + 1; k < groups.size(); ++k) {
        for (const std::size_t a : rule.stations) {
          for (const std::size_t b : rule.stations)
            sat_.add({-on, -at(groups[i], t, a), -at(groups[k], t, b)});
        }
      }
    }
  }
}

// Never in one hall, then in another, then in a third or the first again.
void Encoding::halls(const Rule& rule, Literal on) {
  const std::size_t halls = std::max<std::size_t>(1, all_.halls.size());
  for (const std::size_t g : groups_of(all_, rule)) {
    std::vector<std::vector<Literal>> in(turns_, std::vector<Literal>(halls));
    for (std::size_t t = 0; t < turns_; ++t) {
      for (std::size_t h = 0; h < halls; ++h) {
        in[t][h] = sat_.fresh();
        for (std::size_t s = 0; s < stations_; ++s) {
          if (all_.stations[s].hall == h) sat_.add({-at(g, t, s), in[t][h]});
        }
      }
    }
    for (std::size_t a = 0; a < turns_; ++a) {
      for (std::size_t b = a + 1; b < turns_; ++b) {
        for (std::size_t c = b + 1; c < turns_; ++c) {
          for (std::size_t h = 0; h < halls; ++h) {
            for (std::size_t i = 0; i < halls; ++i) {
              for (std::size_t k = 0; k < halls; ++k) {
                if (h != i && i != k) sat_.add({-on, -in[a][h], -in[b][i], -in[c][k]});
              }
            }
          }
        }
      }
    }
  }
}

void Encoding::same_way(Literal on) {
  std::vector<std::vector<Literal>> next(stations_, std::vector<Literal>(stations_));
  for (auto& row : next) {
    for (Literal& one : row) one = sat_.fresh();
    sat_.at_most_one(row);
  }
  for (std::size_t g = 0; g < groups_; ++g) {
    for (std::size_t t = 0; t + 1 < turns_; ++t) {
      for (std::size_t a = 0; a < stations_; ++a) {
        for (std::size_t b = 0; b < stations_; ++b)
          sat_.add({-on, -at(g, t, a), -at(g, t + 1, b), next[a][b]});
      }
    }
  }
}

// The published square, its rows given to the groups and its signs to the stations.
void Encoding::balanced(Literal on) {
  const std::size_t n = stations_;
  const auto square = williams_square(n);
  if (square.empty() || groups_ != n || turns_ != n) return sat_.add({-on});
  std::vector<std::vector<Literal>> row(n, std::vector<Literal>(n));
  std::vector<std::vector<Literal>> sign(n, std::vector<Literal>(n));
  for (auto* table : {&row, &sign}) {
    for (auto& line : *table) {
      for (Literal& one : line) one = sat_.fresh();
      sat_.add(line);
      sat_.at_most_one(line);
    }
    for (std::size_t c = 0; c < n; ++c) {
      std::vector<Literal> column;
      for (std::size_t r = 0; r < n; ++r) column.push_back((*table)[r][c]);
      sat_.at_most_one(column);
    }
  }
  for (std::size_t g = 0; g < n; ++g) {
    for (std::size_t r = 0; r < n; ++r) {
      for (std::size_t t = 0; t < n; ++t) {
        for (std::size_t s = 0; s < n; ++s)
          sat_.add({-on, -row[g][r], -at(g, t, s), sign[s][square[r][t]]});
      }
    }
  }
}

}  // namespace chalkleaf::rota
