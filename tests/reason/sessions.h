// Sessions made by hand: `reason` is tested on the model, not through the reader of `plan`.
// Every name stands on a line of its own in a source, so that messages have real places.
#pragma once

#include <memory>
#include <string>

#include "base/diagnostic_text.h"
#include "reason/checks.h"
#include "reason/timetable.h"

namespace chalkleaf::reason::tests {

using plan::AmountKind;
using plan::Dose;

inline Dose dose(AmountKind kind, std::int64_t count) {
  Dose out;
  out.amount.kind = kind;
  out.amount.count = count;
  return out;
}
inline Dose reps(std::int64_t sets, std::int64_t count) {
  Dose out = dose(AmountKind::kRepetitions, count);
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
    words("---");
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
  plan::Drill& last_drill() { return std::get<plan::Drill>(session_.parts.back().steps.back()); }
  /// Adds a line to the source and gives it as words with their place.
  plan::Words words(const std::string& line) {
    const auto begin = static_cast<std::uint32_t>(text_.size());
    text_ += line + "\n";
    return {line, {nullptr, begin, begin + static_cast<std::uint32_t>(line.size())}};
  }

  plan::Session session() {
    session_.source = std::make_shared<const Source>("s.md", text_);
    const auto place = [&](Span& span) { span.source = session_.source.get(); };
    session_.front_matter = {session_.source.get(), 0, 3};
    if (session_.slot) place(session_.slot->span);
    for (plan::Safety& note : session_.safety) place(note.words.span);
    for (plan::Part& part : session_.parts) {
      place(part.title.span);
      if (part.budget) place(part.budget->span);
      for (plan::Step& step : part.steps) {
        auto& drill = std::get<plan::Drill>(step);
        place(drill.name.span);
        if (drill.dose) place(drill.dose->span);
        for (plan::Substitute& substitute : drill.substitutes) place(substitute.name.span);
      }
    }
    return session_;
  }

 private:
  plan::Session session_;
  std::string text_;
};

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
  check(session, timetable(session), diagnostics);
  return report(diagnostics);
}

}  // namespace chalkleaf::reason::tests
