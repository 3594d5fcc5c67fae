// What becomes of compiled plans: sheets get their names on the disk, everything is counted, and
// what was found is told, in the order of the plans.
//
// Sheets are put in place some dozens at a time, because a disk makes many files safe about as fast
// as one; while it does, the workers go on. Tested by tests/club/build_test.cpp and
// tests/club/faults_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "club/compile.h"
#include "club/gone_plans.h"
#include "club/outputs.h"
#include "club/select.h"
#include "club/setup.h"

namespace chalkleaf::club {

/// All on the thread that called build(), but for paths().
class Accounts {
 public:
  /// All of these must outlive it.
  Accounts(const Selection& selection, const Request& request, FileSystem& files, Teller& teller,
           Summary& summary);

  /// Of the plan at a place in the selection. Safe to call from several threads.
  PlanPaths paths(std::size_t index) const;
  /// The next plan, in order.
  void take(std::size_t index, Compiled compiled);
  /// Puts in place what is left, and counts as not made what was not taken.
  Summary& close();

 private:
  struct Waiting {
    std::size_t index = 0;
    Compiled compiled;
  };
  void put_waiting_in_place();
  void settle();
  void count(const Waiting& done, const Placed& placed);
  void note_stayed(const std::vector<std::string>& sheets);

  const Selection& selection_;
  const Request& request_;
  FileSystem& files_;
  Teller& teller_;
  Summary& summary_;
  std::vector<std::string> earlier_;     ///< of each root
  std::optional<GonePlans> gone_plans_;  ///< of a build
  std::vector<Waiting> waiting_;
  std::size_t staged_ = 0;  ///< files of those
  std::size_t taken_ = 0;
  std::set<std::string> folders_;
};

}  // namespace chalkleaf::club
