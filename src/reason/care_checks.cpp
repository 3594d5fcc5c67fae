// Who looks after the group, when it drinks, and what a picture says to who cannot see it.
// Tested by tests/reason/care_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "reason/drill_lines.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

/// How many children one adult looks after.
struct Ratio {
  int from_age;
  int children;
};
// NSPCC, recommended adult to child ratios: ages 4-8 1:6, 9-12 1:8, 13-18 1:10, and always at least
// two adults; 2-3 1:4 and 0-2 1:3 (those two: value from memory). Guidance, not law. Adults' groups
// are nobody's children.
constexpr std::array<Ratio, 5> kRatios{{{13, 10}, {9, 8}, {4, 6}, {2, 4}, {0, 3}}};
constexpr int kGrownUp = 18;
constexpr int kAlone = 5;  ///< from this age children come without a parent into the hall
constexpr int kFewestAdults = 2;

int children_to_one(int youngest) {
  return std::find_if(kRatios.begin(), kRatios.end(),
                      [&](const Ratio& ratio) { return youngest >= ratio.from_age; })
      ->children;
}

// Helps, but is no adult (NSPCC: 18 or over).
bool is_under_eighteen(const Subject& subject, const plan::StaffMember& member) {
  return subject.guard != nullptr &&
         (subject.guard->says("under-eighteen", member.name.text) ||
          subject.guard->says("under-eighteen", member.qualification.text));
}

/// How many adults there are, and where that is said.
struct Adults {
  int count = 0;
  Span span;
  std::vector<Label> labels;
};

bool looks_after(const plan::StaffMember& member, const plan::Group& group) {
  return std::any_of(member.groups.begin(), member.groups.end(), [&](const plan::Words& name) {
    return lower_ascii(name.text) == lower_ascii(group.name.text);
  });
}

std::optional<Adults> adults_of(const Subject& subject) {
  const plan::Session& session = subject.session;
  if (session.adults) return Adults{session.adults->value, session.adults->span, {}};
  if (!session.group) return std::nullopt;
  const Span span = session.group_name.span ? session.group_name.span : session.front_matter;
  const plan::Group& group = *session.group;
  if (group.adults) {
    return Adults{group.adults->value, span, {{group.adults->span, "usually with the group"}}};
  }
  Adults out{0, span, {}};
  for (const plan::StaffMember& member : subject.club.staff) {
    if (!looks_after(member, group)) continue;
    const bool counts = !is_under_eighteen(subject, member);
    if (counts) ++out.count;
    out.labels.push_back(
        {member.name.span, counts ? "is with the group" : "is not 18 yet, so does not count"});
  }
  return out.labels.empty() ? std::nullopt : std::optional(out);
}

std::string adults_text(int n) { return fmt::format("{} {}", n, n == 1 ? "adult" : "adults"); }

// Whoever counts the children should count the adults. Words that speak of any will do; in a draft,
// a name or `just me` may be one.
void check_adults_stated(const Subject& subject, Diagnostics& diagnostics) {
  const plan::Session& session = subject.session;
  const auto& group = session.group;
  const bool in_a_club = !subject.club.staff.empty();
  const std::optional<int> children =
      in_a_club || session.gymnasts ? session.gymnast_count() : std::nullopt;
  if (!children || !session.typed.empty() ||
      (group && group->youngest && group->youngest->value >= kGrownUp))
    return;
  // Where there are no words for a language, nobody can tell.
  if (subject.guard == nullptr || subject.guard->says("adults-counted", session)) return;
  const Span span = session.gymnasts && session.gymnasts->span ? session.gymnasts->span
                    : session.group_name.span                  ? session.group_name.span
                                                               : session.front_matter;
  diagnostics.add(
      {in_a_club ? Severity::kWarning : Severity::kNote,
       "no-adults-stated",
       span,
       fmt::format("{} gymnasts come, and nothing says how many adults are with them", *children),
       {},
       in_a_club ? "write the group behind the names under ‘staff:’ in club.yaml, or "
                   "‘adults: 2’ here"
                 : "write ‘adults: 2’ here, and only those of 18 and over"});
}

}  // namespace

void check_adults(const Subject& subject, Diagnostics& diagnostics) {
  if (subject.at_home()) return;
  std::optional<Adults> adults = adults_of(subject);
  if (!adults) return check_adults_stated(subject, diagnostics);
  const auto& group = subject.session.group;
  const bool ages_known = group && group->youngest;
  if (ages_known && group->youngest->value >= kGrownUp) return;
  if (ages_known && group->youngest->value < kAlone && subject.guard != nullptr &&
      subject.guard->says("parents-join", subject.session))
    return;
  const auto& limit = subject.club.limits.fewest_adults;
  const int fewest = limit ? limit->value : kFewestAdults;
  const std::optional<int> gymnasts = subject.session.gymnast_count();
  int needed = fewest;
  int children = 0;
  if (ages_known && gymnasts && *gymnasts > 0) {
    children = children_to_one(group->youngest->value);
    needed = std::max(fewest, (*gymnasts - 1) / children + 1);
  }
  if (adults->count >= needed) return;
  Diagnostic found{Severity::kError, "too-few-adults", adults->span, ""};
  if (needed > fewest) {
    found.message =
        fmt::format("{} gymnasts, the youngest {} years old, need {} (one for {}), and there {} {}",
                    *gymnasts, group->youngest->value, adults_text(needed), children,
                    adults->count == 1 ? "is" : "are", adults->count);
    if (group->youngest->span) {
      found.labels.push_back({group->youngest->span, "the group's ages"});
    }
  } else {
    found.message = fmt::format("any group needs {}, and there {} {}", adults_text(fewest),
                                adults->count == 1 ? "is" : "are", adults->count);
  }
  for (Label& label : adults->labels) {
    if (label.span) found.labels.push_back(std::move(label));
  }
  if (limit && limit->span && needed == fewest) {
    found.labels.push_back({limit->span, "the club's limit"});
  }
  found.hint = fmt::format(
      "when more come, write ‘adults: {}’{}", needed,
      needed > fewest ? fmt::format("; or take at most {} gymnasts", adults->count * children)
                      : "");
  diagnostics.add(std::move(found));
}

namespace {

// Over an hour without a drink is common practice to avoid, no source.
constexpr Duration kWaterAfter = Duration::minutes(60);
// American Academy of Pediatrics 2011, Pediatrics 128(3):e741-e747 (value from memory): in the heat
// a drink every 20 minutes.
constexpr Duration kWaterInHeat = Duration::minutes(20);

Duration water_after(const Subject& subject) {
  const auto& limit = subject.club.limits.water_after;
  const Duration usual = limit ? limit->value : kWaterAfter;
  const auto& heat = subject.session.heat;
  return heat && heat->value ? std::min(usual, kWaterInHeat) : usual;
}

/// What speaks of a drink, in the words of the plan's language.
class Water {
 public:
  explicit Water(const Guard& guard) : guard_(guard) {}
  bool in(std::string_view text) const { return guard_.says("water", text); }
  bool in(const std::vector<plan::Words>& list) const {
    return std::any_of(list.begin(), list.end(),
                       [&](const plan::Words& words) { return in(words.text); });
  }
  bool in(const std::vector<plan::Note>& notes) const {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const plan::Note& note) { return in(note.words.text); });
  }
  bool in(const std::vector<plan::Safety>& notes) const {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const plan::Safety& note) { return in(note.words.text); });
  }
  bool in(const plan::Drill& drill) const {
    return in(drill.name.text) || in(drill.cues) || in(drill.notes) ||
           (drill.dose && in(drill.dose->remarks)) ||
           std::any_of(drill.stations.begin(), drill.stations.end(),
                       [&](const plan::Drill& station) { return in(station); });
  }
  // Words above the parts or beside them are for the whole session: `Water whenever you like`.
  bool at_any_time(const plan::Session& session) const {
    return in(session.introduction) || in(session.safety) ||
           std::any_of(session.parts.begin(), session.parts.end(),
                       [&](const plan::Part& part) { return in(part.safety); });
  }

 private:
  const Guard& guard_;
};

/// When there is water: from begin to end, from the session's begin.
struct Break {
  Duration begin;
  Duration end;
};

// A rotation's breaks stand in its grid, with their clock.
std::vector<Break> breaks_in(const rota::Rotation& rotation, const PartTime& part,
                             const Water& water) {
  std::vector<Break> out;
  for (const rota::Pause& pause : rotation.pauses) {
    if (!water.in(pause.words) || pause.before == 0 || pause.before >= rotation.turns.size())
      continue;
    Duration begin = part.start;
    for (std::size_t t = 0; t < pause.before; ++t)
      begin += Duration::minutes(rotation.turns[t].minutes + rotation.move);
    const auto start = rotation.start();
    if (pause.clock && start) begin = part.start + Duration::minutes(*pause.clock - *start);
    out.push_back({begin, begin + Duration::minutes(pause.minutes)});
  }
  return out;
}

std::vector<Break> breaks_in(const PartTime& part, const Water& water) {
  std::vector<Break> out;
  if (water.in(part.part->title.text)) out.push_back({part.start, part.start + part.length});
  auto drill = part.drills.begin();
  auto move = part.kit_moves.begin();
  Duration now = part.start;
  for (const plan::Step& step : part.part->steps) {
    if (std::holds_alternative<plan::Drill>(step)) {
      now = drill->start + drill->work + drill->rest;
      if (water.in(*drill->drill)) out.push_back({drill->start, now});
      ++drill;
    } else if (const auto* note = std::get_if<plan::Note>(&step)) {
      if (water.in(note->words.text)) out.push_back({now, now});
    } else if (const auto* moved = std::get_if<plan::KitMove>(&step)) {
      if (water.in(moved->kit)) out.push_back({move->start, move->start + move->length});
      ++move;
    }
  }
  return out;
}

// The drill that begins nearest to the middle of the time without water.
const DrillTime* nearest_to(const Timetable& timetable, Duration middle) {
  const auto distance = [&](const DrillTime& drill) {
    return drill.start > middle ? drill.start - middle : middle - drill.start;
  };
  const DrillTime* out = nullptr;
  for (const PartTime& part : timetable.parts) {
    for (const DrillTime& drill : part.drills) {
      if (out == nullptr || distance(drill) < distance(*out)) out = &drill;
    }
  }
  return out;
}

void report_dry(const Subject& subject, Break dry, bool none, Diagnostics& diagnostics) {
  const auto& limit = subject.club.limits.water_after;
  const DrillTime* before = nearest_to(subject.timetable, dry.begin + (dry.end - dry.begin) / 2);
  const plan::Session& session = subject.session;
  Diagnostic found{
      Severity::kError, "no-water-break", session.slot ? session.slot->span : session.front_matter,
      none ? fmt::format("this session takes {} and has no water break", exact_text(dry.end))
           : fmt::format("{} pass in this session without a water break",
                         exact_text(dry.end - dry.begin))};
  if (before != nullptr) {
    found.labels.push_back({before->drill->name.span, "about the middle of that time"});
  }
  const auto& heat = subject.session.heat;
  if (heat && heat->value && heat->span) {
    found.labels.push_back({heat->span, "in the heat every 20 min"});
  } else if (limit && limit->span) {
    found.labels.push_back({limit->span, "the club's limit"});
  }
  found.hint = before == nullptr ? "add a line such as ‘- Water: 2 min’"
                                 : fmt::format("add a line such as ‘- Water: 2 min’ before {}",
                                               quoted(before->drill->name.text));
  diagnostics.add(std::move(found));
}

}  // namespace

void check_water(const Subject& subject, Diagnostics& diagnostics) {
  if (subject.guard == nullptr) return;  // nobody can tell what `eau` is
  const Water water(*subject.guard);
  const Duration most = water_after(subject);
  const auto& slot = subject.session.slot;
  const Duration whole = std::max(subject.timetable.total, slot ? slot->value : Duration());
  if (whole <= most || water.at_any_time(subject.session)) return;
  std::vector<Break> breaks;
  for (const PartTime& part : subject.timetable.parts) {
    const rota::Rotation* rotation = subject.timetable.rotation_of(*part.part);
    for (const Break& one :
         rotation == nullptr ? breaks_in(part, water) : breaks_in(*rotation, part, water))
      breaks.push_back(one);
  }
  const bool none = breaks.empty();
  breaks.push_back({whole, whole});
  Break longest{};
  Duration since;
  for (const Break& one : breaks) {
    if (one.begin - since > longest.end - longest.begin) longest = {since, one.begin};
    since = std::max(since, one.end);
  }
  if (longest.end - longest.begin > most) report_dry(subject, longest, none, diagnostics);
}

namespace {

class Pictures {
 public:
  explicit Pictures(Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

  void look_at(const std::vector<plan::Note>& notes, Span owner) {
    for (const plan::Note& note : notes) look_at(note, owner);
  }
  void look_at(const plan::Note& note, Span owner) {
    if (note.kind != plan::Note::Kind::kPicture || !trim(note.words.text).empty()) return;
    const Span span = note.words.span ? note.words.span : owner;
    gathered_.add(note.picture, span, "here too", [&] {
      return Diagnostic{Severity::kWarning,
                        "picture-without-text",
                        span,
                        fmt::format("this picture has no text for who cannot see it"),
                        {},
                        "say what it shows between the square brackets, as in ‘![a child in dish "
                        "shape](dish.png)’"};
    });
  }
  void look_at(const plan::Drill& drill) {
    look_at(drill.notes, drill.name.span);
    for (const plan::Substitute& one : drill.substitutes) look_at(one.notes, one.name.span);
    for (const plan::Drill& station : drill.stations) look_at(station);
  }
  ~Pictures() { gathered_.add_to(diagnostics_); }
  Pictures(const Pictures&) = delete;
  Pictures& operator=(const Pictures&) = delete;

 private:
  Diagnostics& diagnostics_;
  Gathered gathered_;
};

}  // namespace

// WCAG 2.2, success criterion 1.1.1: what is no text has a text that serves in its place.
void check_pictures(const Subject& subject, Diagnostics& diagnostics) {
  Pictures pictures(diagnostics);
  pictures.look_at(subject.session.introduction, subject.session.front_matter);
  for (const plan::Part& part : subject.session.parts) {
    for (const plan::Step& step : part.steps) {
      if (const auto* note = std::get_if<plan::Note>(&step))
        pictures.look_at(*note, part.title.span);
      if (const auto* drill = std::get_if<plan::Drill>(&step)) pictures.look_at(*drill);
    }
  }
}

}  // namespace chalkleaf::reason
