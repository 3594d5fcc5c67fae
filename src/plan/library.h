// The club's drill library: one file a drill, written once, used by every plan that names it.
//
// A drill file has front matter (what kind of drill, what it needs, how hard it is) and a body in
// the words of a drill's own lines: cues, easier and harder rungs, safety. A plan line inherits
// what it does not say. Tested by tests/plan/library_test.cpp.
#pragma once

#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"

namespace chalkleaf::plan {

/// What a drill does for the body; decides what the checks expect of it.
enum class DrillKind {
  kUnknown,
  kRaise,     ///< `raise`: raises the pulse
  kMobilise,  ///< `mobilise`: moves joints through their range
  kActivate,  ///< `activate`: wakes the muscles that work later
  kStrength,  ///< `strength`
  kShape,     ///< `shape`: a body shape held or moved through
  kBalance,   ///< `balance`
  kSupport,   ///< `support`: weight on the hands
  kHang,      ///< `hang`
  kSwing,     ///< `swing`
  kJump,      ///< `jump`
  kLanding,   ///< `landing`
  kRoll,      ///< `roll`
  kTurn,      ///< `turn`: about the long axis
  kSkill,     ///< `skill`: what fits nowhere else
  kStretch,   ///< `stretch`: held still
  kGame,      ///< `game`
  kRest,      ///< `rest`: water, talk, calm breathing
};
/// `strength` and its kin; empty for kUnknown.
std::string_view kind_name(DrillKind kind);
/// All but kUnknown's, in the order of DrillKind.
const std::vector<std::string>& kind_names();
std::optional<DrillKind> kind_of_name(std::string_view name);
/// True for work that needs speed and force, before which long stretches are harmful.
bool is_power(DrillKind kind);

/// One file of `drills/`.
struct LibraryDrill {
  SourcePtr source;
  Words name;
  std::vector<Words> also;  ///< other names it goes by
  Sourced<DrillKind> kind;
  Words figure;         ///< a pose by name; may be empty
  Words figure_easier;  ///< of the first easier rung, where its shape is another; may be empty
  Words figure_harder;  ///< likewise
  Words plain;          ///< one sentence for a family: what it is; may be empty
  std::vector<std::pair<Words, Sourced<int>>> loads;  ///< region and load, 1 to 3
  std::vector<Words> stretches;                       ///< muscle groups, of a stretch
  std::vector<KitUse> needs;                          ///< kit it cannot be done without
  Words at;                                           ///< station of the hall; may be empty
  std::optional<Sourced<bool>> spotter;               ///< a spotter stands by
  std::optional<Sourced<bool>> home;       ///< `home: no`: height or apparatus, never at home
  std::optional<Sourced<bool>> one_sided;  ///< `sides: each`: done on one side at a time
  Words curve;                             ///< `dish` or `arch`; may be empty
  std::optional<Sourced<int>> level;       ///< 1 to 10
  std::optional<Sourced<Duration>> pace;   ///< of one repetition
  Words mets;                              ///< a compendium code, for `load` some day; may be empty
  std::vector<Words> cues;
  std::vector<Variation> easier;  ///< the nearest rung first
  std::vector<Variation> harder;
  std::vector<Substitute> substitutes;
  std::vector<Note> notes;
  Words record;  ///< `record: seconds`, for a box on the sheets; may be empty
  std::vector<Safety> safety;
  Diagnostics found = {};  ///< what is wrong in its file; a plan that uses it hears of it too
  bool name_known = true;  ///< false: its title could not be read, so any plan may mean this drill
};

/// What a drill is called, without the rest of its file.
struct DrillNames {
  std::string name;
  std::vector<std::string> also;
};
/// The names a drill's file would be read to have, when that is plain to see; nothing when the file
/// has to be read to know.
std::optional<DrillNames> drill_names_in(std::string_view text);

/// All drills of a club, found by name. Read-only once made; safe to share between threads.
class DrillBook {
 public:
  /// A drill by its names; without `drill`, its file is read when it is first asked for.
  struct Unread {
    DrillNames names;
    std::optional<LibraryDrill> drill;
  };
  /// Reads the file of a drill, by its place among those given.
  using Read = std::function<LibraryDrill(std::size_t)>;

  DrillBook() = default;
  /// A book of drills most of which are never read. Nothing when two of them have one name: which
  /// counts, and where it is said, takes reading them.
  static std::optional<DrillBook> of_unread(std::vector<Unread> drills, Read read);
  /// Reports two files of one name (`duplicate-drill`); the first one counts.
  DrillBook(std::vector<LibraryDrill> drills, Diagnostics& diagnostics);
  DrillBook(const DrillBook&) = delete;  // it points into itself
  DrillBook& operator=(const DrillBook&) = delete;
  DrillBook(DrillBook&&) = default;
  DrillBook& operator=(DrillBook&&) = default;

  bool empty() const { return slots_.empty(); }
  /// Reads all that were not read yet.
  std::vector<std::reference_wrapper<const LibraryDrill>> all() const;
  /// Those that are read already.
  std::vector<std::reference_wrapper<const LibraryDrill>> read_now() const;
  /// Those whose name could not be read, so that any plan may mean them.
  std::vector<const LibraryDrill*> nameless() const;
  /// By name or other name, forgiving case, plurals, hyphens, accents and what follows a comma, a
  /// bracket, `on`, `with` or the like: `Dish holds, palms pressed together` is `Dish hold`.
  const LibraryDrill* find(std::string_view name) const;
  /// A name that is close to one nobody knows.
  std::optional<std::string> closest(std::string_view name) const;

 private:
  /// One name of one drill.
  struct Entry {
    std::size_t drill = 0;  ///< place in slots_
    std::string name;       ///< as written
    Span span;              ///< nowhere while the drill is unread
  };
  /// What can be said of a name before it is compared letter by letter.
  struct Outline {
    std::size_t size = 0;
    std::uint32_t letters = 0;  ///< a bit for each letter in it
    const std::string* key = nullptr;
    const Entry* entry = nullptr;
  };

  struct Slot {
    std::once_flag once;
    std::optional<LibraryDrill> drill;
    bool unread = false;
  };

  const LibraryDrill& at(std::size_t place) const;
  bool add(std::size_t drill, const Words& name, Diagnostics& diagnostics);
  void outline();
  const Entry* that_begins_with(std::string_view key) const;

  mutable std::deque<Slot> slots_;
  Read read_;
  std::map<std::string, Entry, std::less<>> by_key_;  ///< by plan/drill_names.h
  std::vector<Outline> outlines_;                     ///< of by_key_, in its order
};

/// Gives each drill of a linked session its `known`, and what its line leaves out: cues, easier,
/// harder, kit, station, substitutes, notes, a record box; safety goes to its part, that of its
/// choices, substitutes and moves too. What is wrong in the files of those drills is reported with
/// the plan, since its sheets would be wrong. `book` must outlive the session.
void inherit(Session& session, const DrillBook& book, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
