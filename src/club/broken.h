// What is wrong in a club's shared files, and which plans it concerns.
//
// A mistake in one figure must not keep a plan from being printed that has no such figure. Where a
// file cannot be read at all nobody knows what was in it: then every plan that may need it is
// concerned. Tested by tests/club/broken_test.cpp.
#pragma once

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "club/figures.h"
#include "plan/library.h"
#include "plan/model.h"

namespace chalkleaf::club {

/// The figures a club described badly. Read-only once made.
class BrokenFigures {
 public:
  BrokenFigures() = default;
  /// `found` is what load_figures() found; `figures` must outlive this.
  BrokenFigures(const Figures& figures, const Diagnostics& found);
  /// Adds what is wrong with the figures that a linked session draws.
  void report(const plan::Session& session, Diagnostics& found) const;

 private:
  void place(const Figures& figures, const Diagnostic& diagnostic);
  void report(const std::string& name, Diagnostics& found) const;

  /// A file of figures with errors.
  struct BadFile {
    std::string text;          ///< in lower case
    bool has_figures = false;  ///< some of it could be read
    std::vector<Diagnostic> errors;
  };

  const figure::Catalogue* catalogue_ = nullptr;
  Diagnostics found_;  ///< all of it; keeps alive what the others point into
  std::map<std::string, std::vector<Diagnostic>> by_name_;  ///< in lower case
  std::map<const Source*, BadFile> files_;
  std::vector<Diagnostic> anywhere_;  ///< errors of files that nobody could read
};

/// What is wrong with a club's `club.yaml`. An entry that only some plans need keeps back only
/// those: a group its own, the hall and its staff gym plans, who to ask the home sheets.
class BrokenClub {
 public:
  BrokenClub() = default;
  /// `found` is what load_club() found, and what was found with the looks, labels and logo. Nothing
  /// of either has to outlive this.
  BrokenClub(const plan::Club& club, const Diagnostics& found);
  /// Nothing of the session may be printed.
  bool holds_back(const plan::Session& session) const;
  /// No home sheet may be printed.
  bool holds_home_sheets() const { return home_sheets_; }
  /// What is printed of several plans at once needs all of it.
  bool empty() const {
    return !all_ && !gym_plans_ && !home_sheets_ && !any_group_ && groups_.empty();
  }

 private:
  bool all_ = false;
  bool gym_plans_ = false;
  bool home_sheets_ = false;
  bool any_group_ = false;
  std::set<std::string> groups_;  ///< in lower case
  std::set<std::string> known_;   ///< the groups that could be read, in lower case
};

/// Whether a linked session has a drill, a choice, a move or a substitute that the library does not
/// know.
bool has_unknown_drill(const plan::Session& session, const plan::DrillBook& drills);

}  // namespace chalkleaf::club
