// See the header. CaDiCaL 1.5 (Biere and others 2020), MIT licence, linked from the archive Debian
// ships.
#include "rota/sat.h"

#include <cadical.hpp>

#include <algorithm>

namespace chalkleaf::rota {
namespace {

// Some 50 ms here; what takes longer is said to be undecided.
constexpr int kMostConflicts = 5'000;

}  // namespace

struct Sat::Solver {
  CaDiCaL::Solver own;
};

Sat::Sat() : solver_(std::make_unique<Solver>()) { solver_->own.set("quiet", 1); }
Sat::~Sat() = default;

void Sat::add(const std::vector<Literal>& clause) {
  for (const Literal literal : clause) solver_->own.add(literal);
  solver_->own.add(0);
}

void Sat::at_most_one(const std::vector<Literal>& literals) {
  for (std::size_t a = 0; a < literals.size(); ++a) {
    for (std::size_t b = a + 1; b < literals.size(); ++b) add({-literals[a], -literals[b]});
  }
}

void Sat::between(const std::vector<Literal>& literals, std::size_t low, std::size_t high) {
  const std::size_t n = literals.size();
  if (low > n) return add({});
  if (high == 0) {
    for (const Literal literal : literals) add({-literal});
    return;
  }
  if (high == 1 && n > 1) at_most_one(literals);
  if (low == 1) add(literals);
  const bool counts = (high > 1 && high < n) || low > 1;
  if (!counts) return;
  // count[i][k]: more than k of the first i + 1 are true, both ways.
  const std::size_t most = std::max(low, std::min(high + 1, n));
  std::vector<std::vector<Literal>> count(n, std::vector<Literal>(most));
  for (auto& row : count) {
    for (Literal& one : row) one = fresh();
  }
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t k = 0; k < most; ++k) {
      const Literal own = count[i][k];
      const Literal x = literals[i];
      if (i == 0) {
        if (k == 0) {
          add({-x, own});
          add({x, -own});
        } else {
          add({-own});
        }
        continue;
      }
      const Literal above = count[i - 1][k];
      add({-above, own});
      if (k == 0) {
        add({-x, own});
        add({-own, above, x});
        continue;
      }
      const Literal less = count[i - 1][k - 1];
      add({-x, -less, own});
      add({-own, above, x});
      add({-own, above, less});
    }
  }
  if (high < n && high < most) add({-count[n - 1][high]});
  if (low > 0) add({count[n - 1][low - 1]});
}

Sat::Answer Sat::solve(const std::vector<Literal>& assumptions) {
  for (const Literal literal : assumptions) solver_->own.assume(literal);
  solver_->own.limit("conflicts", kMostConflicts);
  const int said = solver_->own.solve();
  if (said == 20) return Answer::kNo;
  if (said != 10) return Answer::kNotFound;
  model_.assign(static_cast<std::size_t>(variables_) + 1, false);
  const int most = std::min(variables_, solver_->own.vars());
  for (Literal v = 1; v <= most; ++v) model_[static_cast<std::size_t>(v)] = solver_->own.val(v) > 0;
  return Answer::kYes;
}

bool Sat::is_true(Literal literal) const {
  const auto v = static_cast<std::size_t>(literal < 0 ? -literal : literal);
  return v < model_.size() && model_[v] == (literal > 0);
}

}  // namespace chalkleaf::rota
