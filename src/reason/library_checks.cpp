// What the club's own drill library says about a plan: names, levels, order of choices, and what is
// not for at home. Tested by tests/reason/library_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/text.h"
#include "reason/drill_lines.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

using plan::Drill;
using plan::LibraryDrill;
using plan::Words;

constexpr std::size_t kMostNames = 5;  // of drills nobody knows, in one message

// `standing-scale` for `Standing scale`.
std::string file_stem(std::string_view name) {
  std::string out;
  for (const TextWord& word : words_in(name)) {
    const std::string plain = replace_all(word.text, "'", "");
    out += (out.empty() ? "" : "-") + plain;
  }
  return out;
}

// The names of a line that the library should know. None of a game in a part with its own time, nor
// of a pause: those are no drills of anybody's library.
std::vector<Words> names_of(const DrillLine& line) {
  const Drill& drill = *line.drill;
  if (drill.circuit || drill.known != nullptr || is_pause(drill)) return {};
  if (!drill.dose && line.circuit == nullptr && line.part->budget) return {};
  if (!drill.choices.empty()) return drill.choices;
  if (!drill.dose || drill.dose->moves.empty()) return {drill.name};
  std::vector<Words> out;
  for (const plan::Move& move : drill.dose->moves) out.push_back(move.name);
  return out;
}

std::string no_drill(const plan::DrillBook& book) {
  return book.has_own() ? "the club's library has no drill " : "no drill goes by the name ";
}

// Names like nothing in the library are one message: a young library lacks many.
void report_strangers(const std::vector<Words>& names, Diagnostics& diagnostics) {
  if (names.empty()) return;
  std::vector<std::string> shown;
  for (const Words& name : names) {
    if (shown.size() < kMostNames) shown.push_back(quoted(name.text));
  }
  if (names.size() > kMostNames) shown.push_back(fmt::format("{} more", names.size() - kMostNames));
  Diagnostic found{Severity::kWarning, "unknown-drill", names.front().span,
                   names.size() == 1
                       ? "the club's library has no drill " + shown.front()
                       : "the club's library has none of the drills " + join_list(shown)};
  for (std::size_t i = 1; i < std::min(names.size(), 2 * kMostNames); ++i) {
    found.labels.push_back({names[i].span, "nor this one"});
  }
  found.hint = fmt::format(
      "describe {} in a file such as ‘drills/{}.md’, or use the name the library has for it",
      names.size() == 1 ? "it" : "each", file_stem(names.front().text));
  diagnostics.add(std::move(found));
}

}  // namespace

void check_known(const Subject& subject, Diagnostics& diagnostics) {
  if (subject.book.empty()) return;
  std::vector<Words> strangers;
  std::map<std::string, bool> seen;
  Gathered slips;
  for (const DrillLine& line : drill_lines(subject.session)) {
    for (Words& name : names_of(line)) {
      const std::string_view place = plan::place_of(*line.part, *line.drill);
      if (name.empty() || subject.book.find(name.text, place) != nullptr) continue;
      if (!name.span) name.span = line.drill->name.span;
      const std::string key = lower_ascii(name.text);
      const auto meant = subject.book.closest(name.text);
      if (!meant) {
        if (seen.emplace(key, true).second) strangers.push_back(std::move(name));
        continue;
      }
      slips.add(key, name.span, "here too", [&] {
        return Diagnostic{Severity::kWarning,
                          "unknown-drill",
                          name.span,
                          no_drill(subject.book) + quoted(name.text),
                          {},
                          fmt::format("did you mean {}? If not, describe it in ‘drills/{}.md’",
                                      quoted(*meant), file_stem(name.text))};
      });
    }
  }
  slips.add_to(diagnostics);
  // The shelf has what most clubs do. What neither has is a coach's own, and needs no word.
  if (subject.book.shelf() == nullptr) report_strangers(strangers, diagnostics);
}

namespace {

/// A choice whose level is known.
struct Rung {
  const Words* words = nullptr;
  const LibraryDrill* drill = nullptr;
  int level = 0;
};

Diagnostic unordered(const Rung& harder, const Rung& easier, const std::vector<Rung>& rungs,
                     const Drill& drill, Diagnostics& diagnostics) {
  std::string order =
      fmt::format("write {} before {}", quoted(easier.words->text), quoted(harder.words->text));
  if (rungs.size() == drill.choices.size()) {
    std::vector<Rung> sorted = rungs;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Rung& a, const Rung& b) { return a.level < b.level; });
    std::string all;
    for (const Rung& rung : sorted) all += (all.empty() ? "" : " or ") + rung.words->text;
    order = fmt::format("write the easiest first: {}", quoted(all));
  }
  Diagnostic found{Severity::kWarning,
                   "choices-unordered",
                   place_in_plan(drill, *easier.words),
                   fmt::format("the choice {} of level {} stands behind {} of level {}",
                               quoted(easier.words->text), easier.level, quoted(harder.words->text),
                               harder.level),
                   {},
                   order + ", or correct the level in the library"};
  for (const Rung* rung : {&harder, &easier}) {
    label_library(diagnostics, found, *rung->drill, rung->drill->level->span,
                  fmt::format("level {} here", rung->level));
  }
  return found;
}

}  // namespace

void check_choice_order(const Subject& subject, Diagnostics& diagnostics) {
  Gathered gathered;
  for (const DrillLine& line : drill_lines(subject.session)) {
    const Drill& drill = *line.drill;
    std::vector<Rung> rungs;
    for (const Words& choice : drill.choices) {
      const LibraryDrill* known = subject.book.find(choice.text, plan::place_of(*line.part, drill));
      if (known != nullptr && known->level) rungs.push_back({&choice, known, known->level->value});
    }
    const auto falls = [](const Rung& a, const Rung& b) { return a.level > b.level; };
    const auto harder = std::adjacent_find(rungs.begin(), rungs.end(), falls);
    if (harder == rungs.end()) continue;
    gathered.add(lower_ascii(drill.name.text), drill.name.span, "here too",
                 [&] { return unordered(*harder, *std::next(harder), rungs, drill, diagnostics); });
  }
  gathered.add_to(diagnostics);
}

namespace {

// Between other drills a run, a rest or a game comes back and is meant to.
bool may_come_back(const Drill& drill) {
  using plan::DrillKind;
  const DrillKind kind = kind_of(drill);
  if (kind == DrillKind::kRest || kind == DrillKind::kGame || kind == DrillKind::kRaise)
    return true;
  if (is_pause(drill)) return true;
  return kind == DrillKind::kUnknown &&
         has_one_of(words_in(drill.name.text),
                    {"run", "jog", "walk", "march", "skip", "gallop", "shake", "game", "rest"});
}

// `2x20s` and `2 x 20 s` are one dose. A line with words of its own below it is meant to be there
// again.
std::string line_key(const Drill& drill) {
  std::string key = lower_ascii(drill.name.text) + "\n";
  for (const char c : lower_ascii(drill.dose->span.text())) {
    if (c != ' ' && c != '\t') key += c;
  }
  for (const Words& cue : drill.cues) key += "\n" + cue.text;
  for (const plan::Note& note : drill.notes) key += "\n" + note.words.text;
  return key + "\n" + drill.at.text;
}

}  // namespace

void check_repeated_lines(const Subject& subject, Diagnostics& diagnostics) {
  for (const plan::Part& part : subject.session.parts) {
    std::map<std::string, const Drill*> seen;
    for (const Drill* drill : plan::drills_of(part)) {
      if (!drill->dose || may_come_back(*drill)) continue;
      const auto [first, is_new] = seen.emplace(line_key(*drill), drill);
      if (is_new) continue;
      diagnostics.add({Severity::kWarning,
                       "duplicate-drill",
                       drill->name.span,
                       fmt::format("{} is listed twice in {}, with the same dose",
                                   quoted(drill->name.text), quoted(part.title.text)),
                       {{first->second->name.span, "the first time"}},
                       "take one of the two lines out, or write it once with more sets"});
    }
  }
}

namespace {

// `harder:` that names a drill above the group: only the coach's own rungs, since those of the
// library say for themselves how hard they are.
void check_harder_rungs(const DrillLine& line, const Subject& subject, Gathered& gathered) {
  const Drill& drill = *line.drill;
  const plan::Group& group = *subject.session.group;
  for (const plan::Variation& rung : drill.harder) {
    if (is_inherited(drill, rung)) continue;
    const LibraryDrill* known = subject.book.find(rung.text, plan::place_of(*line.part, drill));
    if (known == nullptr || !known->level || known->level->value <= group.level->value) continue;
    gathered.add(known->name.text, rung.span, "here too", [&] {
      return Diagnostic{
          Severity::kWarning,
          "level-above-group",
          rung.span,
          fmt::format(
              "the harder choice {} is a drill of level {}, and {} do drills up to level {}",
              quoted(rung.text), known->level->value, group.name.text, group.level->value),
          {},
          fmt::format("write a choice of level {} or below", group.level->value)};
    });
  }
}

}  // namespace

void check_levels(const Subject& subject, Diagnostics& diagnostics) {
  const auto& group = subject.session.group;
  if (!group || !group->level) return;
  const int most = group->level->value;
  Gathered gathered;
  for (const DrillLine& line : drill_lines(subject.session)) {
    for (const Named& named : named_with_substitutes(line, subject.book)) {
      const LibraryDrill& known = *named.drill;
      if (!known.level || known.level->value <= most) continue;
      gathered.add(known.name.text, named.span, "here too", [&] {
        Diagnostic found{
            Severity::kError, "level-above-group", named.span,
            fmt::format("{} is a drill of level {}, and {} do drills up to level {}",
                        quoted(named.words.text), known.level->value, group->name.text, most)};
        label_library(diagnostics, found, known, known.level->span,
                      fmt::format("level {} here", known.level->value));
        if (group->level->span) {
          found.labels.push_back({group->level->span, fmt::format("level {} here", most)});
        }
        found.hint = fmt::format(
            "choose a drill of level {} or below for them; if a level is wrong, correct it in the "
            "library or in club.yaml",
            most);
        return found;
      });
    }
    check_harder_rungs(line, subject, gathered);
  }
  gathered.add_to(diagnostics);
}

namespace {

/// Rungs of a ladder that are drills of the library themselves.
void add_rungs(std::vector<Named>& out, const DrillLine& line, const plan::DrillBook& book,
               const std::vector<plan::Variation>& rungs) {
  const Drill& drill = *line.drill;
  for (const plan::Variation& rung : rungs) {
    const LibraryDrill* known = book.find(rung.text, plan::place_of(*line.part, drill));
    if (known != nullptr) out.push_back({known, rung, place_in_plan(drill, rung)});
  }
}

std::vector<Named> everything_done(const DrillLine& line, const plan::DrillBook& book) {
  const Drill& drill = *line.drill;
  std::vector<Named> out = named_with_substitutes(line, book);
  add_rungs(out, line, book, drill.easier);
  add_rungs(out, line, book, drill.harder);
  for (const plan::Substitute& one : drill.substitutes) {
    add_rungs(out, line, book, one.easier);
    add_rungs(out, line, book, one.harder);
  }
  return out;
}

std::string home_hint(const Named& named, const Drill& drill) {
  if (named.drill == drill.known) {
    return "take it out, or write a drill here that is safe without a coach";
  }
  if (place_in_plan(drill, named.words) != named.words.span) {
    return "it comes with the drill's own lines in the library: write ‘easier:’ and ‘harder:’ "
           "below this line that are safe without a coach";
  }
  return "take this choice out, or write one that is safe without a coach";
}

Diagnostic not_at_home(const Named& named, const Drill& drill, Diagnostics& diagnostics) {
  const LibraryDrill& known = *named.drill;
  const bool spotted = known.spotter && known.spotter->value;
  const bool coached = known.coach && known.coach->value;
  Diagnostic found{Severity::kError, "spotter-at-home", named.span,
                   quoted(named.words.text) +
                       (spotted   ? " needs a spotter, so it is not for at home"
                        : coached ? " is for a coach to teach, so it is not for at home"
                                  : " is for the gym only, and this plan is for at home")};
  const auto& why = spotted ? known.spotter : coached ? known.coach : known.home;
  label_library(diagnostics, found, known, why->span, "the library says so here");
  found.hint = home_hint(named, drill);
  return found;
}

}  // namespace

void check_spotters(const Subject& subject, Diagnostics& diagnostics) {
  if (!subject.at_home() || subject.book.empty()) return;
  Gathered gathered;
  for (const DrillLine& line : drill_lines(subject.session)) {
    for (const Named& named : everything_done(line, subject.book)) {
      if (!is_for_the_gym(*named.drill)) continue;
      gathered.add(named.drill->name.text, named.span, "here too",
                   [&] { return not_at_home(named, *line.drill, diagnostics); });
    }
  }
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
