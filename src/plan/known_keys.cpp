// See the header.
#include "plan/known_keys.h"

namespace chalkleaf::plan {

const std::vector<std::string>& known_keys(KeyMap map) {
  using List = std::vector<std::string>;
  static const List session{"title",   "place", "group", "gymnasts",      "adults",
                            "slot",    "start", "date",  "repeat",        "equipment",
                            "timings", "web",   "paper", "filing-margin", "return-slip",
                            "fit",     "ticks", "look",  "safety",        "heat",
                            "sheet",   "checks"};
  static const List each_sheet{"card", "sheet"};
  static const List timings{"rep", "step", "length", "changeover", "max-hold", "rest"};
  static const List drill{"title",         "also",          "kind",      "level",   "curve",
                          "sides",         "loads",         "stretches", "needs",   "at",
                          "spotter",       "home",          "pace",      "mets",    "figure",
                          "figure-easier", "figure-harder", "plain",     "coach",   "trains",
                          "each",          "changeover",    "effort",    "longest", "shelf"};
  static const List each_repetition{"hands", "landings", "inverted"};
  static const List loads{"wrists", "elbows", "shoulders", "neck",    "back",
                          "hips",   "knees",  "ankles",    "landings"};
  static const List club{"name",        "groups",  "hall",     "kit",   "staff",
                         "timings",     "contact", "contacts", "words", "checks",
                         "limits",      "paper",   "language", "web",   "filing-margin",
                         "return-slip", "look",    "colours",  "logo",  "shelf",
                         "home-safety", "sheet"};
  static const List colours{"main", "second"};
  static const List group{"ages", "size", "level", "adults"};
  static const List station{"count", "takes"};
  static const List stock{"count", "note"};
  static const List staff{"qualification", "groups"};
  static const List limits{"longest-stretch", "stretch-before-power", "water-after", "unused-share",
                           "fewest-adults"};
  switch (map) {
    case KeyMap::kSession:
      return session;
    case KeyMap::kEachSheet:
      return each_sheet;
    case KeyMap::kTimings:
      return timings;
    case KeyMap::kDrill:
      return drill;
    case KeyMap::kLoads:
      return loads;
    case KeyMap::kEachRepetition:
      return each_repetition;
    case KeyMap::kClub:
      return club;
    case KeyMap::kColours:
      return colours;
    case KeyMap::kGroup:
      return group;
    case KeyMap::kStation:
      return station;
    case KeyMap::kStock:
      return stock;
    case KeyMap::kStaff:
      return staff;
    case KeyMap::kLimits:
      break;
  }
  return limits;
}

}  // namespace chalkleaf::plan
