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
  enum class Kind { kParagraph, kSubheading, kListItem, kTableRow, kVerbatim };
  Kind kind = Kind::kParagraph;
  Words words;
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

/// One line of the session.
struct Drill {
  Span span;  ///< the whole list item
  Words name;
  std::optional<Dose> dose;  ///< empty: none written, or unreadable (then already reported)
  bool dose_unreadable = false;
  std::vector<Words> cues;
  std::vector<Variation> easier;
  std::vector<Variation> harder;
  std::vector<KitUse> uses;
  std::vector<Substitute> substitutes;
  std::vector<Note> notes;
};

/// A link to a shared part, before it is followed.
struct PartLink {
  Words text;          ///< what the link says
  std::string target;  ///< as written, relative to the file it stands in
  Span span;
};

using Step = std::variant<Drill, Note, PartLink>;

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
  std::optional<Sourced<int>> size;  ///< gymnasts
};

/// `club.yaml`. A plan without a club has a Club with an empty name and defaults.
struct Club {
  SourcePtr source;
  Words name;
  std::optional<Sourced<Paper>> paper;
  std::vector<Group> groups;
  Timings timings;
  Words contact;                ///< who to ask, for the home sheet; may be empty
  std::string language = "en";  ///< BCP 47 tag of the club's sheets

  const Group* group(std::string_view name) const;  ///< ignoring ASCII case
};

enum class Place { kGym, kHome };

/// One entry of `equipment:`.
struct KitItem {
  Words name;         ///< `towel`
  Words description;  ///< `a bath towel, rolled lengthways`; may be empty
};

struct Session {
  SourcePtr source;
  Span front_matter;  ///< where a missing key belongs; the file's first line when there is none
  Words title;
  Sourced<Place> place;
  Words group_name;            ///< may be empty
  std::optional<Group> group;  ///< the club's group of that name
  std::optional<Sourced<Duration>> slot;
  std::optional<Sourced<TimeOfDay>> start;
  std::optional<Sourced<Date>> date;
  std::vector<Sourced<Weekday>> repeat;
  std::vector<KitItem> equipment;
  Timings timings;
  std::vector<Note> introduction;  ///< text before the first part
  std::vector<Safety> safety;      ///< of the session; each part has its own besides
  std::vector<Part> parts;
  std::vector<SourcePtr> sources;  ///< the plan and every part it uses: keeps all spans alive
};

/// A shared part's file, its links not yet followed.
struct PartFile {
  SourcePtr source;
  Words title;  ///< may be empty
  std::vector<Step> steps;
  std::vector<Safety> safety;
  std::optional<Span> place;  ///< where it says `place:`, which only a session does
};

/// The drills of a part, in order.
std::vector<const Drill*> drills_of(const Part& part);

}  // namespace chalkleaf::plan
