// The drill library: one file a drill, written once, used by every plan that names it. The program
// brings one, the shelf; a club has its own before it.
//
// A drill file has front matter (what kind of drill, what it needs, how hard it is) and a body in
// the words of a drill's own lines: cues, easier and harder rungs, safety. A plan line inherits
// what it does not say. Tested by tests/plan/library_test.cpp.
#pragma once

#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
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
/// What `trains:` may say: `trunk`, `balance`, `landing` …
const std::vector<std::string>& trained_things();
/// True for work that needs speed and force, before which long stretches are harmful.
bool is_power(DrillKind kind);

/// What one repetition of a drill, or one whole hold, adds to the sums of a plan.
struct EachRepetition {
  std::optional<Sourced<int>> hands;          ///< times the hands take body weight
  std::optional<Sourced<int>> landings;       ///< from a jump, on one foot or two
  std::optional<Sourced<Duration>> inverted;  ///< with the hips above the shoulders
};

/// One drill: a file of a club's `drills/`, or of the program's own shelf.
struct LibraryDrill {
  SourcePtr source;
  SourcePtr shelf_source = {};  ///< of the shelf's drill that it takes keys from; null: of none
  Words name;
  std::vector<Words> also;  ///< other names it goes by
  Sourced<DrillKind> kind;
  Words figure;         ///< a pose by name; may be empty
  Words figure_easier;  ///< of the first easier rung, where its shape is another; may be empty
  Words figure_harder;  ///< likewise
  Words plain;          ///< one sentence for a family: what it is; may be empty
  std::vector<std::pair<Words, Sourced<int>>> loads;  ///< region and load, 1 to 3
  bool loads_none = false;             ///< `loads: none`: no region bears anything worth counting
  std::vector<Words> trains;           ///< what gets better by it, as trained_things() has it
  EachRepetition each;                 ///< what one repetition adds to the sums
  std::optional<Sourced<int>> effort;  ///< how hard a usual dose feels, 1 to 10
  std::optional<Sourced<Duration>> longest;  ///< longest sensible hold for a child of 7 to 11
  std::vector<Words> stretches;              ///< muscle groups, of a stretch
  std::vector<KitUse> needs;                 ///< kit it cannot be done without
  Words at;                                  ///< station of the hall; may be empty
  std::optional<Sourced<bool>> spotter;      ///< a spotter stands by
  std::optional<Sourced<bool>> coach;      ///< `coach: yes`: a skill that a qualified coach teaches
  std::optional<Sourced<bool>> home;       ///< `home: no`: height or apparatus, never at home
  std::optional<Sourced<bool>> one_sided;  ///< `sides: each`: done on one side at a time
  Words curve;                             ///< `dish` or `arch`; may be empty
  std::optional<Sourced<int>> level;       ///< 1 to 10
  std::optional<Sourced<Duration>> pace;   ///< of one repetition
  std::optional<Sourced<Duration>> changeover;  ///< to get ready for it, when not the usual time
  Words mets;  ///< a compendium code, for `load` some day; may be empty
  std::vector<Words> cues;
  std::vector<Variation> easier;  ///< the nearest rung first
  std::vector<Variation> harder;
  std::vector<Substitute> substitutes;
  std::vector<Note> notes;
  Words record;  ///< `record: seconds`, for a box on the sheets; may be empty
  std::vector<Safety> safety;
  bool of_shelf = false;   ///< it came with the program, and no club has said anything of it
  bool own_only = false;   ///< `shelf: off`: takes nothing from the shelf's drill of its name
  Diagnostics found = {};  ///< what is wrong in its file; a plan that uses it hears of it too
  bool name_known = true;  ///< false: its title could not be read, so any plan may mean this drill
};

/// One name of one drill of the shelf.
struct ShelfName {
  std::string_view key;   ///< by plan/drill_names.h
  std::string_view name;  ///< as written
  std::size_t drill = 0;  ///< whose it is, for ShelfSource::drill
};

/// The program's own drills, each of which is read when it is first asked for: a plan names a dozen
/// of hundreds. Implemented by `club`. Safe to call from several threads.
class ShelfSource {
 public:
  virtual ~ShelfSource() = default;
  /// All names, in the order of their keys, each key once.
  virtual const std::vector<ShelfName>& names() const = 0;
  /// Lives as long as the source.
  virtual const LibraryDrill& drill(std::size_t index) const = 0;
};

/// What a drill is called, without the rest of its file.
struct DrillNames {
  std::string name;
  std::vector<std::string> also;
};
/// The names a drill's file would be read to have, when that is plain to see; nothing when the file
/// has to be read to know.
std::optional<DrillNames> drill_names_in(std::string_view text);

/// All drills that plans inherit from, found by name: a club's, and behind them those of the shelf.
/// A club's drill of a name that the shelf has too takes from there the keys that it leaves out,
/// unless it says `shelf: off`, or that it is of another kind. Read-only once made; safe to share
/// between threads.
class DrillBook {
 public:
  /// A drill by its names; without `drill`, its file is read when it is first asked for.
  struct Unread {
    DrillNames names;
    std::optional<LibraryDrill> drill;
  };
  /// Reads the file of a drill, by its place among those given.
  using Read = std::function<LibraryDrill(std::size_t)>;
  using Shelf = std::shared_ptr<const ShelfSource>;

  DrillBook() = default;
  /// A book of drills most of which are never read. Nothing when two of them have one name: which
  /// counts, and where it is said, takes reading them. `shelf` may be null.
  static std::optional<DrillBook> of_unread(std::vector<Unread> drills, Read read,
                                            Shelf shelf = nullptr);
  /// Reports two files of one name (`duplicate-drill`); the first one counts. `shelf` may be null.
  DrillBook(std::vector<LibraryDrill> drills, Diagnostics& diagnostics, Shelf shelf = nullptr);
  DrillBook(const DrillBook&) = delete;  // it points into itself
  DrillBook& operator=(const DrillBook&) = delete;
  DrillBook(DrillBook&&) = default;
  DrillBook& operator=(DrillBook&&) = default;

  bool empty() const { return slots_.empty() && !shelf_; }
  /// False when all its drills come from the shelf.
  bool has_own() const { return !slots_.empty(); }
  const ShelfSource* shelf() const { return shelf_.get(); }
  /// The club's own. Reads all that were not read yet.
  std::vector<std::reference_wrapper<const LibraryDrill>> all() const;
  /// Those that are read already.
  std::vector<std::reference_wrapper<const LibraryDrill>> read_now() const;
  /// Those whose name could not be read, so that any plan may mean them.
  std::vector<const LibraryDrill*> nameless() const;
  /// By name or other name, forgiving case, plurals, hyphens, accents and what follows a comma, a
  /// bracket, `on`, `with` or the like: `Dish holds, palms pressed together` is `Dish hold`. What
  /// changes the movement is not forgiven: `Splits with a foot on the bench` is not `Splits`.
  /// `where` is said of the line's place, `Beam` or `Vault and bars`: on the beam, `Half turn` is
  /// `Half turn on the beam` when there is such a drill.
  const LibraryDrill* find(std::string_view name, std::string_view where = {}) const;
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
    std::uint32_t letters = 0;  ///< a bit for each letter in it
    std::size_t drill = 0;
    std::string_view key;
    std::string_view name;
    bool is_shelf = false;
  };

  struct Slot {
    std::once_flag once;
    std::optional<LibraryDrill> drill;
    bool unread = false;
    std::string title;                  ///< its key
    std::optional<std::size_t> behind;  ///< the shelf's drill of its name
    std::once_flag joined_once;
    std::unique_ptr<LibraryDrill> joined;  ///< with what it takes from there; null: nothing
  };

  const LibraryDrill& at(std::size_t place) const;
  const LibraryDrill& own(std::size_t place) const;
  const LibraryDrill* at_key(std::string_view key) const;
  bool add(std::size_t drill, const Words& name, Diagnostics& diagnostics);
  void outline();
  void join_shelf();
  std::optional<std::string_view> that_begins_with(std::string_view key) const;

  mutable std::deque<Slot> slots_;
  Read read_;
  std::map<std::string, Entry, std::less<>> by_key_;  ///< by plan/drill_names.h
  std::vector<Outline> outlines_;                     ///< of by_key_ and the shelf's names
  Shelf shelf_;
  std::map<std::size_t, std::size_t> instead_;  ///< one of slots_ for a drill of the shelf
};

/// Of a library's cues, and of its ladder each way, a plan's line takes so many: a card has room
/// for no more.
inline constexpr std::size_t kMostInheritedCues = 2;
inline constexpr std::size_t kMostInheritedRungs = 1;

/// What DrillBook::find is to know of a line's place: its station, else the title of its part.
std::string_view place_of(const Part& part, const Drill& drill);

/// Gives each drill of a linked session its `known`, and what its line leaves out: cues, easier,
/// harder, kit, station, substitutes, notes, a record box; safety goes to its part, that of its
/// choices, substitutes and moves too. What is wrong in the files of those drills is reported with
/// the plan, since its sheets would be wrong. `book` must outlive the session.
void inherit(Session& session, const DrillBook& book, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
