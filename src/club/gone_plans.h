// Sheets of plans that are gone: found by the list that builds keep, and moved to the earlier ones.
//
// Looked for in the folders a build was asked for, and nowhere else. Tested by
// tests/club/gone_plans_test.cpp.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "club/made_list.h"
#include "club/outputs.h"
#include "club/select.h"
#include "club/setup.h"

namespace chalkleaf::club {

/// The lists of all folders that the sheets of a run go into.
class GonePlans {
 public:
  /// `earlier` has the folder of the earlier sheets of each root. All must outlive it.
  GonePlans(const Selection& selection, const Request& request, FileSystem& files,
            const std::vector<std::string>& earlier, Teller& teller);

  /// Notes the plans of this run, before their first sheet is there. Does it once.
  void note_plans();
  /// Moves the sheets of plans that are gone, and names those of plans that the disk would not
  /// show.
  Placed look();

 private:
  void look_at(MadeList& list, const PlanPaths& plan, Absentees& absentees, Placed& placed);
  /// The root a plan would be of, if it lies in what the run was asked for.
  const Root* root_of(const std::string& plan, const std::string& out) const;
  void save();

  const Selection& selection_;
  const Request& request_;
  FileSystem& files_;
  const std::vector<std::string>& earlier_;
  Teller& teller_;
  std::map<std::string, MadeList> lists_;  ///< by the folder
  std::vector<std::string> asked_;         ///< folders
  bool noted_ = false;
};

}  // namespace chalkleaf::club
