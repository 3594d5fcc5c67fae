// Sessions made by hand: `reason` is tested on the model, not through the reader of `plan`.
// Every name stands on a line of its own in a source, so that messages have real places.
#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/diagnostic_text.h"
#include "plan/library.h"
#include "reason/checks.h"
#include "reason/english_guard.h"
#include "reason/timetable.h"

namespace chalkleaf::reason::tests {

using plan::AmountKind;
using plan::Dose;

constexpr Duration s(std::int64_t n) { return Duration::seconds(n); }
constexpr Duration min(std::int64_t n) { return Duration::minutes(n); }

inline Dose a_dose(AmountKind kind, std::int64_t count) {
  Dose out;
  out.amount.kind = kind;
  out.amount.count = count;
  return out;
}
inline Dose reps(std::int64_t sets, std::int64_t count) {
  Dose out = a_dose(AmountKind::kRepetitions, count);
  out.sets = sets;
  return out;
}
inline Dose hold(std::int64_t sets, Duration time) {
  Dose out;
  out.sets = sets;
  out.amount.kind = AmountKind::kTime;
  out.amount.time = time;
  return out;
}

/// Builds a session line by line; `session()` may be called once all lines are there.
class SessionMaker {
 public:
  explicit SessionMaker(plan::Place place = plan::Place::kGym) {
    session_.place.value = place;
    words("***");  // lines that look like no front matter, since nothing closes it
  }

  SessionMaker& slot(Duration slot) {
    session_.slot = plan::Sourced<Duration>{slot, words("slot: " + exact_text(slot)).span};
    return *this;
  }
  SessionMaker& start(Duration since_midnight) {
    session_.start = plan::Sourced<TimeOfDay>{{since_midnight}, {}};
    return *this;
  }
  SessionMaker& timings(const plan::Timings& timings) {
    session_.timings = timings;
    return *this;
  }
  SessionMaker& safety(const std::string& text) {
    plan::Safety note;
    note.words = words(text);
    (session_.parts.empty() ? session_.safety : session_.parts.back().safety).push_back(note);
    return *this;
  }
  SessionMaker& part(const std::string& title, plan::PartRole role = plan::PartRole::kMain) {
    plan::Part part;
    part.title = words(title);
    part.role = role;
    session_.parts.push_back(std::move(part));
    return *this;
  }
  SessionMaker& budget(Duration time) {
    session_.parts.back().budget =
        plan::Sourced<Duration>{time, words("budget: " + exact_text(time)).span};
    return *this;
  }
  SessionMaker& drill(const std::string& name, std::optional<Dose> dose = std::nullopt) {
    plan::Drill drill;
    drill.name = words(name);
    drill.dose = std::move(dose);
    if (drill.dose) drill.dose->span = drill.name.span;
    session_.parts.back().steps.emplace_back(std::move(drill));
    return *this;
  }
  /// A line that moves kit: `hoops, two each`, with its kit and what else it says.
  SessionMaker& kit_move(plan::KitMove::Way way, const std::string& kit, const std::string& how,
                         std::optional<Duration> time = std::nullopt) {
    plan::KitMove move;
    move.way = way;
    move.kit = {words(kit)};
    move.span = move.kit.front().span;
    move.how = {how, {}};
    move.time = time;
    session_.parts.back().steps.emplace_back(std::move(move));
    return *this;
  }
  SessionMaker& note(const std::string& text, plan::Note::For reader = plan::Note::For::kAll) {
    plan::Note note;
    note.words = words(text);
    note.reader = reader;
    if (session_.parts.empty()) {
      session_.introduction.push_back(std::move(note));
    } else {
      session_.parts.back().steps.emplace_back(std::move(note));
    }
    return *this;
  }
  /// A drill without a place, for a station of the circuit that was added last.
  SessionMaker& station(const std::string& name, std::optional<Dose> dose = std::nullopt) {
    plan::Drill drill;
    drill.name = words(name);
    drill.dose = std::move(dose);
    last_drill().stations.push_back(std::move(drill));
    return *this;
  }
  SessionMaker& group(const plan::Group& group) {
    session_.group = group;
    session_.group_name = words("group: " + group.name.text);
    return *this;
  }
  SessionMaker& gymnasts(int n) {
    session_.gymnasts = plan::Sourced<int>{n, words("gymnasts: " + std::to_string(n)).span};
    return *this;
  }
  SessionMaker& adults(int n) {
    session_.adults = plan::Sourced<int>{n, words("adults: " + std::to_string(n)).span};
    return *this;
  }
  /// Enough of them, said on no line of the source.
  SessionMaker& two_adults() {
    session_.adults = plan::Sourced<int>{2, {}};
    return *this;
  }
  SessionMaker& equipment(const std::string& name, const std::string& description = "") {
    session_.equipment.push_back({{name, {}}, {description, {}}});
    return *this;
  }
  plan::Session& raw() { return session_; }
  plan::Drill& last_drill() { return std::get<plan::Drill>(session_.parts.back().steps.back()); }
  /// Adds a line to the source and gives it as words with their place.
  plan::Words words(const std::string& line) {
    const auto begin = static_cast<std::uint32_t>(text_.size());
    text_ += line + "\n";
    return {line, {nullptr, begin, begin + static_cast<std::uint32_t>(line.size())}};
  }

  plan::Session session() {
    session_.source = std::make_shared<const Source>("s.md", text_);
    session_.sources = {session_.source};
    session_.front_matter = {session_.source.get(), 0, 3};
    if (session_.slot) place(session_.slot->span);
    if (session_.gymnasts) place(session_.gymnasts->span);
    if (session_.adults) place(session_.adults->span);
    place(session_.group_name.span);
    for (plan::Note& note : session_.introduction) place(note.words.span);
    for (plan::Safety& note : session_.safety) place(note.words.span);
    for (plan::Part& part : session_.parts) {
      place(part.title.span);
      if (part.budget) place(part.budget->span);
      for (plan::Safety& note : part.safety) place(note.words.span);
      for (plan::Step& step : part.steps) {
        if (auto* drill = std::get_if<plan::Drill>(&step)) place(*drill);
        if (auto* note = std::get_if<plan::Note>(&step)) place(note->words.span);
        if (auto* move = std::get_if<plan::KitMove>(&step)) {
          place(move->span);
          for (plan::Words& kit : move->kit) place(kit.span);
        }
      }
    }
    return session_;
  }

 private:
  // Words that were made without `words()` stand nowhere.
  void place(Span& span) const {
    if (span.end > span.begin) span.source = session_.source.get();
  }
  void place(std::vector<plan::Words>& all) const {
    for (plan::Words& words : all) place(words.span);
  }
  void place(plan::Drill& drill) const {
    place(drill.name.span);
    place(drill.at.span);
    place(drill.choices);
    place(drill.cues);
    place(drill.easier);
    place(drill.harder);
    if (drill.dose) {
      place(drill.dose->span);
      for (plan::Move& move : drill.dose->moves) place(move.name.span);
    }
    for (plan::Note& note : drill.notes) place(note.words.span);
    for (plan::KitUse& use : drill.uses) place(use.kit.span);
    for (plan::Substitute& substitute : drill.substitutes) {
      place(substitute.name.span);
      place(substitute.easier);
      place(substitute.harder);
    }
    for (plan::Drill& station : drill.stations) place(station);
  }

  plan::Session session_;
  std::string text_;
};

/// A drill of the library; its values stand nowhere, so that no label leads to them.
inline plan::LibraryDrill known(const std::string& name, plan::DrillKind kind) {
  plan::LibraryDrill out;
  out.source = std::make_shared<const Source>("drills/" + name + ".md", name + "\n");
  out.name = {name, {}};
  out.kind.value = kind;
  return out;
}
inline plan::Group group(const std::string& name, int youngest, int size) {
  plan::Group out;
  out.name = {name, {}};
  out.youngest = plan::Sourced<int>{youngest, {}};
  out.size = plan::Sourced<int>{size, {}};
  return out;
}
inline plan::Station station(const std::string& name, int count, int takes) {
  return {{name, {}}, {count, {}}, {takes, {}}};
}

/// A warm-up and a cool-down of exactly `each`, around what `fill` adds.
template <class Fill>
SessionMaker framed(SessionMaker maker, Duration each, Fill fill) {
  maker.part("Warm-up", plan::PartRole::kWarmUp).drill("Jog", hold(1, each));
  fill(maker);
  maker.part("Cool-down", plan::PartRole::kCoolDown).drill("Sway", hold(1, each));
  return maker;
}

/// Everything found, one line each, with labels after it.
inline std::string report(const Diagnostics& diagnostics) {
  std::string out;
  for (const Diagnostic& found : diagnostics.sorted()) {
    out += render(found, MessageStyle::kShort, Colouring::kPlain);
    for (const Label& label : found.labels) {
      out += "  " + std::string(label.span.text()) + ": " + label.message + "\n";
    }
  }
  return out;
}

inline std::string checked(SessionMaker maker, Diagnostics diagnostics = {}) {
  const plan::Session session = maker.session();
  check(session, timetable(session, {}), {}, {}, english_guard(), diagnostics);
  return report(diagnostics);
}

/// The same in a club with a library.
inline std::string checked(SessionMaker maker, const plan::Club& club,
                           std::vector<plan::LibraryDrill> drills = {}) {
  Diagnostics diagnostics;
  plan::Session session = maker.session();
  const plan::DrillBook book(std::move(drills), diagnostics);
  plan::inherit(session, book, diagnostics);
  check(session, timetable(session, club), club, book, english_guard(), diagnostics);
  return report(diagnostics);
}

}  // namespace chalkleaf::reason::tests
