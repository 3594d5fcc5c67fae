// What every command over a club's plans begins with: the arguments, the press, the club.
//
// What is wrong on the way is told at once. Internal to the room. Tested by
// tests/club/build_test.cpp.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/hash.h"
#include "club/build.h"
#include "club/compile.h"
#include "club/drill_library.h"
#include "club/resources.h"
#include "club/select.h"
#include "type/hyphenation.h"

namespace chalkleaf::club {

/// Tells the listener, counts, and tells things in shared files only once.
class Teller {
 public:
  Teller(Listener& listener, Summary& summary) : listener_(listener), summary_(summary) {}

  void problem(const std::string& sentence);
  /// What was found while compiling `plan` (its path as displayed; empty: nothing in particular).
  void tell(const Diagnostics& found, const std::string& plan);

 private:
  bool is_new(const Diagnostic& diagnostic);

  Listener& listener_;
  Summary& summary_;
  std::set<Hash128> told_;
};

/// SOURCE_DATE_EPOCH; nothing when it is not set, or wrong (told).
std::optional<std::int64_t> read_source_date(const Environment& environment, Teller& teller);

/// What a run prints with, apart from the plans.
struct Press {
  std::unique_ptr<const type::Fonts> fonts;
  std::unique_ptr<const pdf::Writer> writer;  ///< with these fonts
  std::unique_ptr<const type::Hyphenations> hyphenations;
  DataFolder data;
  std::shared_ptr<const plan::ShelfSource> shelf;  ///< null when there is none
};
/// Nothing when something is missing (told): without it no plan could be set.
std::optional<Press> set_up_press(const Surroundings& around, Teller& teller, Summary& summary);

/// Nothing when the program's own words or its usual look cannot be read, or there is no such look
/// as was asked for (told). Without a data folder none are needed. What is wrong in drills that no
/// plan names is only told when all are needed.
std::optional<ClubTools> open_club(const Root& root, const Request& request,
                                   const FileSystem& files, const DataFolder& data,
                                   const std::shared_ptr<const plan::ShelfSource>& shelf,
                                   Teller& teller, Need need = Need::kAll);

/// The words drafts are read with, for a command that needs nothing else of the program's data;
/// null when they cannot be read (told).
std::shared_ptr<const draft::Lexicon> words_for(const std::string& language,
                                                const Surroundings& around, Teller& teller);

/// Each root's plans in one walk through its repository. Asks now, in this thread, and gives what
/// waits for the answers.
std::function<std::vector<Revisions>()> ask_for_revisions(const Selection& selection,
                                                          const FileSystem& files);

/// Says why sheets of a root's plans do not say their version, when git was given up on. Not made
/// an error by `--strict`: it is the machine's, and the plans are well.
void tell_of_revisions(const Revisions& revisions, const Root& root, const Request& request,
                       Teller& teller);

/// Where what is made of an `out` folder's plans goes.
std::string folder_of(const std::string& out, const Request& request);
PlanPaths paths_of(const PlanFile& plan, const Root& root, const Request& request);

/// kNamed when the user named a few plans, kAll for a whole club and what belongs to it.
Need need_of(const Request& request, const Selection& selection, const FileSystem& files);

Selection select(const Request& request, const FileSystem& files, Teller& teller, Summary& summary);
/// A part, a drill and the club's file can be checked, but not printed or timed.
void refuse_shared(const Selection& selection, const Request& request, Teller& teller);

/// A worker's own: one typesetter a language, because what it has shaped is worth keeping.
class Worker {
 public:
  Worker(const type::Fonts& fonts, const type::Hyphenations& hyphenations)
      : fonts_(&fonts), hyphenations_(&hyphenations) {}
  type::Typesetter& typesetter(const ClubTools& club) {
    const std::string& language = club.club.language;
    return typesetters_.try_emplace(language, *fonts_, language, &hyphenations_->of(language))
        .first->second;
  }

 private:
  const type::Fonts* fonts_;
  const type::Hyphenations* hyphenations_;
  std::map<std::string, type::Typesetter> typesetters_;
};

}  // namespace chalkleaf::club
