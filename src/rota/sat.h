// A satisfiability solver: variables, clauses, assumptions. CaDiCaL behind it, which stays in this
// file's source. Internal to the room. Tested by tests/rota/propose_test.cpp.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

namespace chalkleaf::rota {

/// A variable; negative: that it is false.
using Literal = int;

class Sat {
 public:
  enum class Answer { kYes, kNo, kNotFound };

  Sat();
  ~Sat();
  Sat(const Sat&) = delete;
  Sat& operator=(const Sat&) = delete;

  Literal fresh() { return ++variables_; }
  void add(const std::vector<Literal>& clause);
  void at_most_one(const std::vector<Literal>& literals);
  /// At least `low` and at most `high` of them. Counts one by one (Sinz 2005, CP 3709, 827-831).
  void between(const std::vector<Literal>& literals, std::size_t low, std::size_t high);
  /// Gives up after a number of conflicts, never after a time: the same on every machine.
  Answer solve(const std::vector<Literal>& assumptions);
  /// In the last answer that was kYes.
  bool is_true(Literal literal) const;

 private:
  struct Solver;
  std::unique_ptr<Solver> solver_;
  Literal variables_ = 0;
  std::vector<bool> model_;
};

}  // namespace chalkleaf::rota
