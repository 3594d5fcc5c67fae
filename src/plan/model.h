// The typed model of a session: what the coach meant, with the place of every value.
//
// Plain values; nothing here reads a file or checks a rule. Made by plan/read.h, judged by
// `reason`, set by `sheet`.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/date.h"
#include "base/diagnostic.h"
#include "base/duration.h"
#include "base/paper.h"
#include "base/span.h"
#include "plan/dose.h"

namespace chalkleaf::plan {

/// A value and the bytes it was read from.
template <class T>
struct Sourced {
  T value{};
  Span span;
};

/// Text of the coach's that is neither drill, cue nor safety: printed as it stands, in its place.
struct Note {
  enum class Kind { kParagraph, kSubheading, kListItem, kTableRow, kVerbatim, kPicture };
  /// Who it is printed for: `Coach: …` and `Family: …` are for one of the two sheets alone.
  enum class For { kAll, kCoach, kFamily };
  Kind kind = Kind::kParagraph;
  Words words;  ///< kPicture: its text for who cannot see it, perhaps empty
  For reader = For::kAll;
  std::vector<Words> cells = {};  ///< kTableRow: every cell, empty ones too
  bool table_head = false;        ///< kTableRow: the row of column titles
  std::string picture = {};       ///< kPicture: as written; link_parts makes it an absolute path
  int picture_width = 0;          ///< kPicture: in pixels, set by link_parts; 0: it was not read
  int picture_height = 0;
};

/// One safety blockquote. `words` has all of it without a leading `Safety.`; `sentences` has it in
/// pieces.
struct Safety {
  Words words;
  std::vector<Words> sentences;
};

/// `uses: towel, held tight between the hands`
struct KitUse {
  Words kit;
  Words how;  ///< may be empty
};

/// `easier:` or `harder:`; what to do instead.
using Variation = Words;

/// `without towel: Dish hold, palms pressed together: 2 x 20 s`
struct Substitute {
  Span span;
  Words kit;                 ///< what is missing
  Words name;                ///< the drill that stands in
  std::optional<Dose> dose;  ///< when empty, the dose of the drill it stands in for
  std::vector<Words> cues;
  std::vector<Variation> easier;
  std::vector<Variation> harder;
  std::vector<Note> notes;
};

/// `Circuit: 3 rounds, 30 s work, 15 s rest, 1 min between rounds`, for the drills listed below it.
struct Circuit {
  Span span;
  std::int64_t rounds = 1;
  std::optional<Duration> work;  ///< at each station; none: each station has a dose of its own
  std::optional<Duration> rest;  ///< after each station but the last of a round; none: change-over
  std::optional<Duration> between;  ///< between two rounds; none: like `rest`
};

struct LibraryDrill;

/// One line of the session.
struct Drill {
  Span span;  ///< the whole list item
  Words name;
  std::vector<Words> choices;  ///< `a or b or c` in the name, in the order written; else empty
  std::optional<Dose> dose;    ///< empty: none written, or unreadable (then already reported)
  bool dose_unreadable = false;
  std::optional<Circuit> circuit;  ///< then there is no dose
  std::vector<Drill> stations;     ///< of a circuit, in order; not circuits themselves
  std::vector<Words> cues;
  std::vector<Variation> easier;
  std::vector<Variation> harder;
  std::vector<KitUse> uses;
  std::vector<Substitute> substitutes;
  std::vector<Note> notes;
  Words record;  ///< `record: seconds`: what is written into a box on the sheets; may be empty
  Words at;      ///< `at: beam`: the hall's station; may be empty
  /// Names of figures: the one of `figure:`, or the library's; of choices and moves one each.
  std::vector<Words> figures;
  Words figure_easier;  ///< of the first easier rung, when that is the library's; may be empty
  Words figure_harder;  ///< likewise
  const LibraryDrill* known = nullptr;  ///< the club's own description; set by plan::inherit
  /// The same of each choice, null where it has none; empty when none has one.
  std::vector<const LibraryDrill*> known_choices = {};
};

/// `Pick up: hoops`, `Put away: hoops, in the blue bag: 1 min`: a line between drills.
struct KitMove {
  enum class Way { kPickUp, kPutAway };
  Span span;
  Way way = Way::kPickUp;
  Words verb = {};               ///< as written: `Set out`; printed before the kit
  std::vector<Words> kit;        ///< `hoops`, `cones`
  Words how;                     ///< what else the line says; may be empty
  std::optional<Duration> time;  ///< when it takes longer than a change-over
};

/// A link to a shared part, before it is followed.
struct PartLink {
  Words text;          ///< what the link says
  std::string target;  ///< as written, relative to the file it stands in
  Span span;
};

using Step = std::variant<Drill, Note, PartLink, KitMove>;

enum class PartRole { kWarmUp, kMain, kCoolDown };

/// One part of the session, under its heading. After `link_parts` no step is a PartLink.
struct Part {
  Span span;  ///< heading and body
  Words title;
  PartRole role = PartRole::kMain;
  std::vector<Step> steps;
  std::vector<Safety> safety;
  std::vector<PartLink> shared;  ///< the links that were followed, in order
  std::optional<Sourced<Duration>> budget;
  /// Of a station of a rotation: the part whose turns its drills fill, by its place among the
  /// parts. It runs beside the other stations, not behind them.
  std::optional<std::size_t> station_of = {};
  std::optional<int> gymnasts =
      {};  ///< at a time, where not all are: at a station the largest group
};

/// A value of time, and who said so.
struct Timing {
  enum class Origin { kDefault, kClub, kPlan };
  Duration value;
  Origin origin = Origin::kDefault;
  Span span;
};

/// How long things take when the dose does not say. Defaults are common practice, no source.
struct Timings {
  Timing repetition{Duration::seconds(2), Timing::Origin::kDefault, {}};
  Timing step{Duration::seconds(1), Timing::Origin::kDefault, {}};
  Timing length{Duration::seconds(15), Timing::Origin::kDefault, {}};
  Timing changeover{Duration::seconds(15), Timing::Origin::kDefault, {}};  ///< between two drills
  Timing max_hold{Duration::seconds(30), Timing::Origin::kDefault, {}};  ///< when no cap is written
  Timing rest{Duration(), Timing::Origin::kDefault, {}};  ///< between sets, when none is written
};

/// One group of the club.
struct Group {
  Words name;
  std::optional<Sourced<int>> youngest;  ///< years
  std::optional<Sourced<int>> oldest;
  std::optional<Sourced<int>> size;         ///< gymnasts
  std::optional<Sourced<int>> level = {};   ///< the highest level of drill it does, 1 to 10
  std::optional<Sourced<int>> adults = {};  ///< usually with it; none: the staff who name the group
};

/// A place in the hall: `beam: {count: 3, takes: 1}`.
struct Station {
  Words name;
  Sourced<int> count{1, {}};  ///< how many there are
  Sourced<int> takes{0, {}};  ///< gymnasts at a time on each; 0: as many as come
};

/// What the club owns: `hoops: 12`, `mats: {count: 8, note: thin}`.
struct StockItem {
  Words name;
  std::optional<Sourced<int>> count;  ///< none: enough for everybody
  Words note;                         ///< may be empty
};

/// One adult of the club's, named by role or first name: `Lead coach: {qualification: …}`.
struct StaffMember {
  Words name;
  Words qualification;  ///< may be empty
  std::vector<Words> groups;
};

/// `words: {dish: …}`: a word of the trade, explained to families.
struct ExplainedWord {
  Words word;
  Words meaning;
};

/// `checks: {under-slot: off}`. Names are checked by `reason`.
struct SeverityChoice {
  Words check;
  std::optional<Severity> severity;  ///< none: off
  Span span;                         ///< of the value
};

/// `limits:` of a club; what is not set is the default of the check that uses it.
struct Limits {
  std::optional<Sourced<Duration>> longest_stretch;  ///< `longest-stretch`: one hold
  std::optional<Sourced<Duration>>
      stretch_before_power;                      ///< `stretch-before-power`: a muscle's sum
  std::optional<Sourced<Duration>> water_after;  ///< `water-after`: minutes without a water break
  std::optional<Sourced<int>> unused_share;      ///< `unused-share`: percent of the slot, 0 to 100
  std::optional<Sourced<int>> fewest_adults;     ///< `fewest-adults`: with any group
};

/// Where sheets are punched to be filed (ISO 838).
enum class Filing { kNone, kOneSide, kBothSides };

/// The slip a family tears off the home sheet and gives back.
struct ReturnSlip {
  Words when;  ///< `by Friday 4 December`; may be empty
};

/// How a home sheet sets its drills.
enum class SheetLayout {
  kCompact,  ///< without frames, for one sheet of paper
  kRoomy,    ///< a framed panel each
};

/// What club and plan say of printing; what a plan leaves out is its club's.
struct Printing {
  std::optional<Sourced<Paper>> card_paper;   ///< none: A5
  std::optional<Sourced<Paper>> sheet_paper;  ///< none: A4
  Filing filing = Filing::kNone;
  std::optional<ReturnSlip> return_slip;
  Words look = {};                             ///< the name of a look; empty: the usual one
  SheetLayout layout = SheetLayout::kCompact;  ///< `sheet:`
};

/// `club.yaml`. A plan without a club has a Club with an empty name and defaults.
struct Club {
  SourcePtr source;
  Words name;
  Printing printing;
  std::vector<Group> groups;
  Timings timings;
  Words contact;      ///< who to ask, for the home sheet; may be empty
  Words home_safety;  ///< `home-safety:`, the safety note of every home plan; may be empty
  /// `contacts:` besides, each with what it is for: `safeguarding: …`
  std::vector<std::pair<Words, Words>> contacts;
  std::vector<Station> stations;  ///< of the hall
  std::vector<StockItem> kit;
  std::vector<StaffMember> staff;
  std::vector<ExplainedWord> words;
  std::vector<SeverityChoice> checks;
  Limits limits;
  std::string language = "en";  ///< BCP 47 tag of the club's sheets
  Words web;  ///< address of the club's page, with `{plan}` where a plan's name goes; may be empty
  Words main_colour;       ///< `colours: {main: …}`: of titles and rules; may be empty
  Words second_colour;     ///< of the suit in figures; may be empty
  Words logo;              ///< path of a picture, from the club's folder; may be empty
  bool uses_shelf = true;  ///< `shelf: off`: its plans inherit from its own drills alone

  const Group* group(std::string_view name) const;      ///< ignoring ASCII case
  const Station* station(std::string_view name) const;  ///< ignoring ASCII case and a plural
  const StockItem* stock(std::string_view name) const;  ///< ignoring ASCII case and a plural
};

enum class Place { kGym, kHome };

/// `fit: 1 sheet`: on how many pages a sheet is to be printed.
struct PageCount {
  int pages = 1;
  bool in_sheets = false;  ///< said as sheets of paper, which have two pages each
};

/// `ticks: 6 weeks`: what there is a box for beside each drill.
struct Ticks {
  enum class Each {
    kGymnast,
    kSet,
    kDay,
    kWeek,
    kTurn,  ///< of a rotation: on a station's card, never written
  };
  Each each = Each::kGymnast;
  int count = 0;  ///< kWeek: weeks of the block; kTurn: turns
};

/// One entry of `equipment:`.
struct KitItem {
  Words name;         ///< `towel`
  Words description;  ///< `a bath towel, rolled lengthways`; may be empty
};

/// What a family has to be told before a child starts and this home plan does not say, as far as
/// `reason` reads it: the home sheet says it in words of its own.
struct Unsaid {
  bool adult_stays = false;
  bool space_clear = false;
};

/// `checks: {long-queue: two coaches tonight}`: a finding that is let be in one plan, and why.
struct SwitchedOff {
  Words check;
  Words reason;
};

struct Session {
  SourcePtr source;
  Span front_matter;  ///< where a missing key belongs; the file's first line when there is none
  Words title;
  Sourced<Place> place;
  Words group_name;                      ///< may be empty
  std::optional<Group> group;            ///< the club's group of that name
  std::optional<Sourced<int>> gymnasts;  ///< `gymnasts: 6`, when not the whole group comes
  std::optional<Sourced<int>> adults;    ///< `adults: 2`, in the hall with them
  std::optional<Sourced<bool>> heat;     ///< `heat: yes`, a hot day or a hot hall
  std::vector<SwitchedOff> checks_off;   ///< names are checked by `reason`
  std::optional<Sourced<Duration>> slot;
  std::optional<Sourced<TimeOfDay>> start;
  std::optional<Sourced<Date>> date;
  std::vector<Sourced<Weekday>> repeat;
  std::vector<KitItem> equipment;
  std::optional<Sourced<PageCount>> fit_card;   ///< `fit:`, or its `card:`
  std::optional<Sourced<PageCount>> fit_sheet;  ///< `fit:`, or its `sheet:`
  Timings timings;
  Printing printing;
  Words web;  ///< where this plan stands on the web: its own, or made from the club's; may be empty
  std::vector<Note> introduction;  ///< text before the first part
  std::vector<Safety> safety;      ///< of the session; each part has its own besides
  Unsaid unsaid;
  std::vector<Part> parts;
  std::vector<SourcePtr> sources;  ///< the plan and every part it uses: keeps all spans alive
  /// Of a draft: its lines of drills as the coach typed them. The card ends with them, so that what
  /// was read can be compared.
  std::vector<Words> typed;
  std::optional<Sourced<Ticks>> ticks_card;   ///< `ticks:`, or its `card:`; none: each gymnast
  std::optional<Sourced<Ticks>> ticks_sheet;  ///< the same for the home sheet; none: each day

  /// How many come: `gymnasts:`, else the group's size; none when neither is known.
  std::optional<int> gymnast_count() const;
};

/// A shared part's file, its links not yet followed.
struct PartFile {
  SourcePtr source;
  Words title;  ///< may be empty
  std::vector<Step> steps;
  std::vector<Safety> safety;
  std::optional<Span> place;  ///< where it says `place:`, which only a session does
};

/// The drills of a part that have a line of their own, in order: a circuit is one.
std::vector<const Drill*> drills_of(const Part& part);
/// The same, each circuit followed by its stations.
std::vector<const Drill*> all_drills_of(const Part& part);

}  // namespace chalkleaf::plan
