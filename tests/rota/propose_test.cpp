// Grids that are proposed: against brute force, published squares, and the order in which rules are
// written.
#include "rota/propose.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numeric>
#include <random>
#include <set>

#include "grids.h"
#include "rota/holds.h"
#include "rota/slips.h"
#include "support/random.h"

using namespace chalkleaf;
using rota_test::blank;
using rota_test::grid_of;

namespace {

using Kind = rota::Rule::Kind;
using Weight = rota::Rule::Weight;
using Random = std::mt19937;

std::size_t below(Random& random, std::size_t n) { return static_cast<std::size_t>(random() % n); }

rota::Rule rule(Kind kind, Weight weight, std::vector<std::size_t> groups,
                std::vector<std::size_t> stations, int number = 0) {
  rota::Rule out;
  out.kind = kind;
  out.weight = weight;
  out.groups = std::move(groups);
  out.stations = std::move(stations);
  out.number = number;
  return out;
}

rota::Rule random_rule(Random& random, std::size_t n, Weight weight) {
  const std::size_t g = below(random, n);
  const std::size_t a = below(random, n);
  const std::size_t b = (a + 1 + below(random, n - 1)) % n;
  const std::size_t h = (g + 1 + below(random, n - 1)) % n;
  switch (below(random, 7)) {
    case 0:
      return rule(Kind::kNotFirst, weight, {g}, {a});
    case 1:
      return rule(Kind::kNotLast, weight, {g}, {a});
    case 2:
      return rule(Kind::kBefore, weight, {g}, {a, b});
    case 3:
      return rule(Kind::kNotAfter, weight, {g}, {a, b});
    case 4:
      return rule(Kind::kInFirst, weight, {g}, {a}, static_cast<int>(1 + below(random, n)));
    case 5:
      return rule(Kind::kNotBeside, weight, {g, h}, {});
    default:
      return rule(Kind::kOneKit, weight, {g, h}, {a, b});
  }
}

// All ways to give n groups n stations in n turns, each once, one group at a station: Latin
// squares.
const std::vector<std::vector<rota::Visit>>& squares(std::size_t n) {
  static std::vector<std::vector<std::vector<rota::Visit>>> kept(5);
  if (!kept[n].empty()) return kept[n];
  std::vector<std::vector<std::size_t>> rows;  // a turn: the station of each group
  std::vector<std::size_t> row(n);
  std::iota(row.begin(), row.end(), std::size_t{0});
  do rows.push_back(row);
  while (std::next_permutation(row.begin(), row.end()));
  std::vector<std::size_t> chosen;
  const auto add = [&](const auto& self) -> void {
    if (chosen.size() == n) {
      std::vector<rota::Visit> visits;
      for (std::size_t t = 0; t < n; ++t) {
        for (std::size_t g = 0; g < n; ++g) visits.push_back({t, g, rows[chosen[t]][g], {}});
      }
      kept[n].push_back(std::move(visits));
      return;
    }
    for (std::size_t r = 0; r < rows.size(); ++r) {
      const bool fits = std::all_of(chosen.begin(), chosen.end(), [&](std::size_t above) {
        for (std::size_t g = 0; g < n; ++g) {
          if (rows[above][g] == rows[r][g]) return false;
        }
        return true;
      });
      if (!fits) continue;
      chosen.push_back(r);
      self(self);
      chosen.pop_back();
    }
  };
  add(add);
  return kept[n];
}

// The first of all grids, in the order they are listed, that keeps the rules.
std::optional<std::vector<rota::Visit>> first_by_force(const rota::Rotation& blank_one,
                                                       std::size_t n,
                                                       const std::vector<rota::Rule>& rules) {
  rota::Rotation grid = blank_one;
  for (const std::vector<rota::Visit>& visits : squares(n)) {
    grid.visits = visits;
    const bool all = std::all_of(rules.begin(), rules.end(), [&](const rota::Rule& one) {
      return !rota::breaks(grid, one).has_value();
    });
    if (all) return visits;
  }
  return std::nullopt;
}

rota::Rule same_way() { return rule(Kind::kSameWayRound, Weight::kWish, {}, {}); }

}  // namespace

TEST_CASE("rota propose: without a wish everybody moves on by one") {
  const rota::Proposal found = rota::propose(blank(4, 4, 4));
  REQUIRE(found.outcome == rota::Proposal::Outcome::kFound);
  CHECK(grid_of(found.rotation) ==
        "- 0: A=a B=b C=c D=d\n- 0: A=b B=c C=d D=a\n- 0: A=c B=d C=a D=b\n- 0: A=d B=a C=b D=c\n");
  CHECK(found.given_up.empty());
}

TEST_CASE("rota propose: brute force agrees on 10,000 random cases of up to four groups") {
  Random random(20'260'314);
  std::size_t impossible = 0;
  std::size_t given_up = 0;
  const unsigned rounds = support::rounds(10'000);
  for (unsigned round = 0; round < rounds; ++round) {
    const std::size_t n = 2 + below(random, 3);
    rota::Rotation asked = blank(n, n, n);
    const std::size_t rules = below(random, 2 * n + 1);
    for (std::size_t i = 0; i < rules; ++i)
      asked.rules.push_back(
          random_rule(random, n, below(random, 2) == 0 ? Weight::kMust : Weight::kWish));
    // By force: the musts; then each wish that still leaves a grid; the first grid of those.
    std::vector<rota::Rule> kept;
    for (const rota::Rule& one : asked.rules) {
      if (one.weight == Weight::kMust) kept.push_back(one);
    }
    const rota::Proposal found = rota::propose(asked);
    CAPTURE(round, n, rules);
    if (!first_by_force(asked, n, kept)) {
      ++impossible;
      REQUIRE(found.outcome == rota::Proposal::Outcome::kImpossible);
      // Of the reason none can be left out.
      REQUIRE(!found.conflict.empty());
      for (std::size_t out = 0; out <= found.conflict.size(); ++out) {
        std::vector<rota::Rule> some;
        for (std::size_t i = 0; i < found.conflict.size(); ++i) {
          if (i != out) some.push_back(asked.rules[found.conflict[i]]);
        }
        REQUIRE(first_by_force(asked, n, some).has_value() == (out < found.conflict.size()));
      }
      continue;
    }
    REQUIRE(found.outcome == rota::Proposal::Outcome::kFound);
    std::vector<std::size_t> dropped;
    const auto try_wish = [&](const rota::Rule& wish, std::size_t which) {
      kept.push_back(wish);
      if (first_by_force(asked, n, kept)) return;
      kept.pop_back();
      dropped.push_back(which);
    };
    try_wish(same_way(), asked.rules.size());
    for (std::size_t i = 0; i < asked.rules.size(); ++i) {
      if (asked.rules[i].weight == Weight::kWish) try_wish(asked.rules[i], i);
    }
    std::vector<std::size_t> said;
    for (const rota::GivenUp& one : found.given_up) said.push_back(one.rule);
    given_up += said.size();
    REQUIRE(said == dropped);
    REQUIRE(found.rotation.visits == *first_by_force(asked, n, kept));
    REQUIRE(rota::slips_of(found.rotation).empty());
  }
  CHECK(impossible > rounds / 30);  // the cases are of all kinds
  CHECK(given_up > rounds / 6);
}

TEST_CASE(
    "rota propose: Williams' squares for 4, 6 and 8 are the published ones, and there is none for "
    "5") {
  CHECK(rota::williams_square(4).front() == std::vector<std::size_t>{0, 1, 3, 2});
  CHECK(rota::williams_square(6).front() == std::vector<std::size_t>{0, 1, 5, 2, 4, 3});
  CHECK(rota::williams_square(8).front() == std::vector<std::size_t>{0, 1, 7, 2, 6, 3, 5, 4});
  CHECK(rota::williams_square(5).empty());
  for (const std::size_t n : {4U, 6U, 8U}) {
    std::set<std::pair<std::size_t, std::size_t>> follows;
    for (const auto& row : rota::williams_square(n)) {
      for (std::size_t t = 1; t < n; ++t) CHECK(follows.insert({row[t - 1], row[t]}).second);
    }
    CHECK(follows.size() == n * (n - 1));
    rota::Rotation asked = blank(n, n, n);
    asked.rules.push_back(rule(Kind::kBalanced, Weight::kMust, {}, {}));
    const rota::Proposal found = rota::propose(asked);
    REQUIRE(found.outcome == rota::Proposal::Outcome::kFound);
    CHECK_FALSE(rota::breaks(found.rotation, asked.rules[0]));
    CHECK(rota::slips_of(found.rotation).empty());
  }
  rota::Rotation five = blank(5, 5, 5);
  five.rules.push_back(rule(Kind::kBalanced, Weight::kMust, {}, {}));
  const rota::Proposal none = rota::propose(five);
  CHECK(none.outcome == rota::Proposal::Outcome::kImpossible);
  CHECK(none.conflict == std::vector<std::size_t>{0});
}

TEST_CASE("rota propose: musts in any order give the same grid") {
  Random random(7);
  for (int round = 0; round < 60; ++round) {
    const std::size_t n = 4 + below(random, 3);
    rota::Rotation asked = blank(n, n, n);
    for (std::size_t i = 0; i < n; ++i)
      asked.rules.push_back(random_rule(random, n, Weight::kMust));
    const rota::Proposal one = rota::propose(asked);
    std::shuffle(asked.rules.begin(), asked.rules.end(), random);
    const rota::Proposal other = rota::propose(asked);
    REQUIRE(one.outcome == other.outcome);
    REQUIRE(one.rotation.visits == other.rotation.visits);
  }
}

TEST_CASE("rota propose: sums that cannot come out are said without a rule") {
  rota::Rotation asked = blank(2, 2, 2);
  asked.groups[0].size = 12;
  for (rota::Station& station : asked.stations) station.takes = 6;
  const rota::Proposal found = rota::propose(asked);
  CHECK(found.outcome == rota::Proposal::Outcome::kImpossible);
  CHECK(found.conflict.empty());
  CHECK(found.why == "A has 12 gymnasts, more than any station takes");
}

TEST_CASE("rota propose: more groups than stations take turns to stay out, late ones come late") {
  const rota::Proposal found = rota::propose(blank(3, 2, 3));
  REQUIRE(found.outcome == rota::Proposal::Outcome::kFound);
  CHECK(found.rotation.rests.size() == 3);
  CHECK(found.rotation.visits.size() == 6);
  rota::Rotation late = blank(3, 3, 4);
  for (std::size_t t = 0; t < 4; ++t) late.turns[t].clock = static_cast<int>(1020 + 30 * t);
  late.groups[2].from = 1050;
  const rota::Proposal second = rota::propose(late);
  REQUIRE(second.outcome == rota::Proposal::Outcome::kFound);
  for (const rota::Visit& visit : second.rotation.visits)
    CHECK((visit.group != 2 || visit.turn > 0));
}
