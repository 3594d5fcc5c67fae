// A session in words, for the tests of the body: every step and everything below it, one line each.
#pragma once

#include <string>
#include <vector>

#include "reading.h"

namespace chalkleaf::plan {

/// `push *tall* and **still**`: words with their emphasis marked again.
inline std::string marked(const Words& words) {
  std::string out;
  std::size_t at = 0;
  for (const Emphasis& one : words.emphasis) {
    const char* mark = one.strong ? "**" : "*";
    out += words.text.substr(at, one.begin - at) + mark;
    out += words.text.substr(one.begin, one.end - one.begin) + mark;
    at = one.end;
  }
  return out + words.text.substr(at);
}

inline std::string outline(const Note& note) {
  constexpr const char* kKinds[] = {"paragraph", "subheading", "item",
                                    "row",       "verbatim",   "picture"};
  constexpr const char* kReaders[] = {"", " for coach", " for family"};
  std::string out = fmt::format("{}{}", kKinds[static_cast<int>(note.kind)],
                                kReaders[static_cast<int>(note.reader)]);
  if (note.kind == Note::Kind::kTableRow) {
    if (note.table_head) out += " head";
    for (const Words& cell : note.cells) out += fmt::format(" [{}]", marked(cell));
    return out + "\n";
  }
  out += fmt::format(" {}", marked(note.words));
  if (note.kind == Note::Kind::kPicture) out += fmt::format(" <{}>", note.picture);
  return out + "\n";
}

inline std::string outline(const Drill& drill, const std::string& indent) {
  const std::string deeper = indent + "  ";
  std::string out = fmt::format("drill {}", marked(drill.name));
  if (drill.dose) out += fmt::format(" | {}", described(*drill.dose));
  if (drill.dose_unreadable) out += " | ?";
  if (drill.circuit) {
    out += fmt::format(" | circuit {} rounds", drill.circuit->rounds);
    if (drill.circuit->work) out += ", work " + exact_text(*drill.circuit->work);
    if (drill.circuit->rest) out += ", rest " + exact_text(*drill.circuit->rest);
    if (drill.circuit->between) out += ", between " + exact_text(*drill.circuit->between);
  }
  out += "\n";
  const auto add = [&](const char* what, const std::vector<Words>& all) {
    for (const Words& words : all) out += fmt::format("{}{} {}\n", deeper, what, marked(words));
  };
  add("choice", drill.choices);
  if (!drill.at.empty()) add("at", {drill.at});
  if (!drill.record.empty()) add("record", {drill.record});
  add("cue", drill.cues);
  add("easier", drill.easier);
  add("harder", drill.harder);
  for (const KitUse& use : drill.uses) {
    out += fmt::format("{}uses {} ({})\n", deeper, use.kit.text, use.how.text);
  }
  for (const Substitute& one : drill.substitutes) {
    out += fmt::format("{}without {}: {}\n", deeper, one.kit.text, one.name.text);
    for (const Note& note : one.notes) out += deeper + "  " + outline(note);
  }
  for (const Note& note : drill.notes) out += deeper + outline(note);
  for (const Drill& station : drill.stations) out += deeper + outline(station, deeper);
  return out;
}

inline std::string outline(const KitMove& move) {
  std::string out = move.way == KitMove::Way::kPickUp ? "pick up" : "put away";
  for (const Words& kit : move.kit) out += fmt::format(" [{}]", kit.text);
  if (!move.how.empty()) out += fmt::format(" ({})", move.how.text);
  if (move.time) out += " " + exact_text(*move.time);
  return out + "\n";
}

/// The steps of a session's parts; text before the first part behind `before`.
inline std::string outline(const Session& session) {
  std::string out;
  for (const Note& note : session.introduction) out += "before " + outline(note);
  for (const Safety& safety : session.safety) out += "safety " + marked(safety.words) + "\n";
  for (const Part& part : session.parts) {
    if (session.parts.size() > 1) out += fmt::format("# {}\n", part.title.text);
    for (const Safety& safety : part.safety) out += "safety " + marked(safety.words) + "\n";
    for (const Step& step : part.steps) {
      if (const auto* note = std::get_if<Note>(&step)) out += outline(*note);
      if (const auto* link = std::get_if<PartLink>(&step)) out += "link " + link->target + "\n";
      if (const auto* drill = std::get_if<Drill>(&step)) out += outline(*drill, "");
      if (const auto* move = std::get_if<KitMove>(&step)) out += outline(*move);
    }
  }
  return out;
}

/// The outline of a body in one part `P`, its first line the fifth of the file, then the messages.
inline std::string read_body_text(const std::string& body) {
  const ReadPlan plan = read_plan(plan_with(body));
  return outline(plan.session) + messages(plan.diagnostics);
}

}  // namespace chalkleaf::plan
