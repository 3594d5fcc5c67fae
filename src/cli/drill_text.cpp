// See the header.
#include "cli/drill_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "club/list_drills.h"

namespace chalkleaf::cli {
namespace {

using plan::LibraryDrill;
using plan::Words;

// Each line as a terminal may show it.
std::string printable_text(const std::string& text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    out += printable(std::string_view(text).substr(at, end - at)) + "\n";
    at = end + 1;
  }
  return out;
}

bool is_yes(const std::optional<plan::Sourced<bool>>& answer) { return answer && answer->value; }

std::string place_text(const LibraryDrill& drill) {
  if (is_yes(drill.spotter)) return "gym, with a spotter";
  if (is_yes(drill.coach)) return "gym, with a coach";
  return club::is_for_home(drill) ? "gym and home" : "gym";
}

std::string level_text(const LibraryDrill& drill) {
  return drill.level ? fmt::format("level {}", drill.level->value) : std::string("-");
}

std::string in_column(const std::string& text, std::size_t width) {
  const std::size_t used = display_width(text);
  return text + std::string(used < width ? width - used : 0, ' ');
}

std::string listed(const std::vector<Words>& words) {
  std::string out;
  for (const Words& one : words) out += (out.empty() ? "" : ", ") + one.text;
  return out;
}

/// DrillLines as they would stand below a plan's line.
class DrillLines {
 public:
  void add(std::string_view key, const Words& words) {
    if (!words.empty()) text_ += fmt::format("  - {}: {}\n", key, words.text);
  }
  void add(std::string_view key, const std::vector<Words>& all, std::size_t begin,
           std::size_t end) {
    for (std::size_t i = begin; i < std::min(end, all.size()); ++i) add(key, all[i]);
  }
  void add(const plan::KitUse& kit) {
    const std::string how = kit.how.empty() ? "" : ", " + kit.how.text;
    text_ += fmt::format("  - uses: {}{}\n", kit.kit.text, how);
  }
  void add(const plan::Substitute& one) {
    text_ += fmt::format("  - without {}: {}\n", one.kit.text, one.name.text);
    for (const Words& easier : one.easier) text_ += "    - easier: " + easier.text + "\n";
  }
  void add(const plan::Note& note) {
    const bool coach = note.reader == plan::Note::For::kCoach;
    const bool family = note.reader == plan::Note::For::kFamily;
    add(coach ? "coach" : family ? "family" : "note", note.words);
  }
  void add(const plan::Safety& safety) { text_ += "> Safety. " + safety.words.text + "\n"; }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

/// `  trains     trunk, hips`, when there is anything to say.
class About {
 public:
  void add(const std::string& key, const std::string& value) {
    if (!value.empty()) text_ += fmt::format("  {}{}\n", in_column(key, 12), value);
  }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

std::string loads_text(const LibraryDrill& drill) {
  if (drill.loads_none) return "none";
  constexpr const char* kNames[] = {"", "light", "middling", "heavy"};
  std::string out;
  for (const auto& [region, load] : drill.loads) {
    out += fmt::format("{}{} {}", out.empty() ? "" : ", ", region.text,
                       kNames[std::clamp(load.value, 0, 3)]);
  }
  return out;
}

std::string time_text(const LibraryDrill& drill) {
  std::string out;
  const auto add = [&](const std::string& piece) { out += (out.empty() ? "" : ", ") + piece; };
  if (drill.pace) add(exact_text(drill.pace->value) + " a repetition");
  if (drill.longest) add("held for " + exact_text(drill.longest->value) + " at most");
  if (drill.changeover) add(exact_text(drill.changeover->value) + " to get ready");
  return out;
}

std::string each_text(const LibraryDrill& drill) {
  std::string out;
  const auto add = [&](const std::string& piece) { out += (out.empty() ? "" : ", ") + piece; };
  const plan::EachRepetition& each = drill.each;
  if (each.hands) add(counted(each.hands->value, "time on the hands", "times on the hands"));
  if (each.landings) add(counted(each.landings->value, "landing", "landings"));
  if (each.inverted) add(exact_text(each.inverted->value) + " upside down");
  return out;
}

std::string about(const LibraryDrill& drill) {
  About out;
  out.add("also called", listed(drill.also));
  std::string kind(plan::kind_name(drill.kind.value));
  if (!drill.curve.empty()) kind += ", " + drill.curve.text;
  if (drill.one_sided && drill.one_sided->value) kind += ", one side at a time";
  out.add("kind", kind);
  out.add("level", drill.level ? std::to_string(drill.level->value) : "");
  out.add("place", place_text(drill) + (drill.at.empty() ? "" : ", at: " + drill.at.text));
  out.add("trains", listed(drill.trains));
  out.add("stretches", listed(drill.stretches));
  out.add("loads", loads_text(drill));
  out.add("each counts", each_text(drill));
  out.add("effort", drill.effort ? fmt::format("{} of 10", drill.effort->value) : "");
  out.add("time", time_text(drill));
  std::string from = drill.source ? drill.source->path() : "";
  if (drill.shelf_source) from += ", and the rest from " + drill.shelf_source->path();
  out.add("stands in", from);
  return out.text();
}

}  // namespace

std::string drill_list(const std::vector<const LibraryDrill*>& drills) {
  std::size_t name = 0;
  std::size_t kind = 0;
  for (const LibraryDrill* drill : drills) {
    name = std::max(name, display_width(drill->name.text));
    kind = std::max(kind, plan::kind_name(drill->kind.value).size());
  }
  std::string out;
  for (const LibraryDrill* drill : drills) {
    const std::string what(plan::kind_name(drill->kind.value));
    out += fmt::format("{}  {}  {}  {}\n", in_column(printable(drill->name.text), name),
                       in_column(what, kind), in_column(level_text(*drill), 8), place_text(*drill));
  }
  return out;
}

std::string drill_text(const LibraryDrill& drill) {
  DrillLines taken;
  taken.add("cue", drill.cues, 0, plan::kMostInheritedCues);
  taken.add("easier", drill.easier, 0, plan::kMostInheritedRungs);
  taken.add("harder", drill.harder, 0, plan::kMostInheritedRungs);
  for (const plan::KitUse& kit : drill.needs) taken.add(kit);
  for (const plan::Substitute& one : drill.substitutes) taken.add(one);
  taken.add("at", drill.at);
  taken.add("record", drill.record);
  taken.add("figure", drill.figure);
  for (const plan::Note& note : drill.notes) taken.add(note);
  for (const plan::Safety& safety : drill.safety) taken.add(safety);
  DrillLines more;
  more.add("cue", drill.cues, plan::kMostInheritedCues, drill.cues.size());
  more.add("easier", drill.easier, plan::kMostInheritedRungs, drill.easier.size());
  more.add("harder", drill.harder, plan::kMostInheritedRungs, drill.harder.size());
  std::string out = drill.name.text + "\n";
  if (!drill.plain.empty()) out += drill.plain.text + "\n";
  out += "\nA plan that names it gets:\n" + taken.text();
  if (!more.text().empty()) out += "\nAnd there are:\n" + more.text();
  out += "\nAbout it:\n" + about(drill);
  return printable_text(out);
}

}  // namespace chalkleaf::cli
