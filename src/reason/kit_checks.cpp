// Is the kit of a plan listed, enough for the group, and replaced for a home that has none?
//
// Judged by the noun alone and rather too kindly: a `crash mat` is listed where `mats` are.
// Common practice, no source. Tested by tests/reason/kit_checks_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "reason/drill_lines.h"
#include "reason/kit_words.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

using plan::Drill;
using plan::KitUse;

/// One thing that one line of the plan uses.
struct Use {
  const Drill* drill = nullptr;
  const KitUse* use = nullptr;
  Span span;
};

std::vector<Use> uses_of(const plan::Session& session) {
  std::vector<Use> out;
  for (const DrillLine& line : drill_lines(session)) {
    for (const KitUse& use : line.drill->uses) {
      out.push_back({line.drill, &use, place_in_plan(*line.drill, use.kit)});
    }
  }
  return out;
}

KitNouns listed(const Subject& subject) {
  KitNouns out;
  for (const plan::KitItem& item : subject.session.equipment) {
    out.add(item.name.text);
    out.add(item.description.text);
  }
  if (subject.at_home()) return out;
  for (const plan::StockItem& item : subject.club.kit) {
    out.add(item.name.text);
    out.add(item.note.text);
  }
  for (const plan::Station& station : subject.club.stations) out.add(station.name.text);
  return out;
}

bool is_of_shelf(const Drill& drill, const plan::Words& words) {
  if (!is_inherited(drill, words)) return false;
  return drill.known->of_shelf || words.span.source == drill.known->shelf_source.get();
}

// Not for at home, which is said and enough: a family will not look for its mats.
bool is_refused(const Subject& subject, const Drill& drill) {
  return subject.at_home() && drill.known != nullptr && is_for_the_gym(*drill.known);
}

std::string listing_hint(const Subject& subject, const plan::Words& kit) {
  std::vector<std::string> names;
  for (const plan::KitItem& item : subject.session.equipment) names.push_back(item.name.text);
  if (!subject.at_home()) {
    for (const plan::StockItem& item : subject.club.kit) names.push_back(item.name.text);
  }
  if (const auto meant = closest(kit.text, names)) {
    return fmt::format("did you mean {}?", quoted(*meant));
  }
  return subject.at_home()
             ? fmt::format(
                   "add a line such as ‘{}: …’ to ‘equipment:’, so that the family can "
                   "look for it beforehand",
                   kit.text)
             : "add it to ‘equipment:’ of the plan or to ‘kit:’ in club.yaml, so that it is set "
               "out";
}

}  // namespace

namespace {

std::string station_hint(const plan::Club& club, std::string_view at) {
  std::vector<std::string> names;
  for (const plan::Station& station : club.stations) names.push_back(station.name.text);
  if (const auto meant = closest(at, names)) return fmt::format("did you mean `at: {}`?", *meant);
  // `the far beam`, `beam 2`
  for (const std::string& name : names) {
    if (lower_ascii(at).find(lower_ascii(name)) != std::string::npos) {
      return fmt::format("did you mean `at: {}`?", name);
    }
  }
  constexpr std::size_t kMostNamedPlaces = 12;
  const std::size_t all = names.size();
  if (all > kMostNamedPlaces) names.resize(kMostNamedPlaces);
  for (std::string& name : names) name = quoted(name);
  if (all > kMostNamedPlaces) names.push_back(fmt::format("{} more", all - kMostNamedPlaces));
  return fmt::format("the hall has {}; write one of them, or add it to ‘hall:’ in club.yaml",
                     join_list(names));
}

}  // namespace

void check_stations(const Subject& subject, Diagnostics& diagnostics) {
  // A hall of which nothing is told: there is nothing to be missing from.
  if (subject.club.stations.empty() || subject.at_home()) return;
  Gathered gathered;
  for (const DrillLine& line : drill_lines(subject.session)) {
    const plan::Words& at = line.drill->at;
    if (at.empty() || subject.club.station(at.text) != nullptr) continue;
    gathered.add(lower_ascii(at.text), place_in_plan(*line.drill, at), "and here", [&] {
      Diagnostic found{Severity::kWarning, "unknown-station", place_in_plan(*line.drill, at),
                       fmt::format("the hall has no station {}, so nobody's turns there are timed",
                                   quoted(at.text))};
      if (is_inherited(*line.drill, at)) {
        label_library(diagnostics, found, *line.drill->known, at.span, "the library says so here");
      }
      found.hint = station_hint(subject.club, at.text);
      return found;
    });
  }
  gathered.add_to(diagnostics);
}

void check_kit_listed(const Subject& subject, Diagnostics& diagnostics) {
  const KitNouns known = listed(subject);
  // A hall of which nothing is told: there is no list to be missing from.
  if (known.empty() && !subject.at_home()) return;
  Gathered gathered;
  for (const Use& one : uses_of(subject.session)) {
    const plan::Words& kit = one.use->kit;
    if (is_refused(subject, *one.drill)) continue;
    // Nobody wrote what the shelf's drill needs. It stands beside the drill, and at home with what
    // to do without.
    if (is_of_shelf(*one.drill, kit)) continue;
    const auto things = things_in(kit.text);
    const bool fine = things.empty() || std::any_of(things.begin(), things.end(), [&](auto& thing) {
                        return known.has(thing) || is_everywhere(thing);
                      });
    if (fine) continue;
    gathered.add(joined(things.front()), one.span, "used here too", [&] {
      Diagnostic found{
          Severity::kWarning, "unknown-kit", one.span,
          fmt::format("{} uses {}, which {} not list", quoted(one.drill->name.text),
                      quoted(kit.text),
                      subject.at_home() ? "the plan's ‘equipment:’ does"
                                        : "the plan's ‘equipment:’ and the club's ‘kit:’ do")};
      if (is_inherited(*one.drill, kit)) {
        label_library(diagnostics, found, *one.drill->known, kit.span, "the library says so here");
      }
      found.hint = listing_hint(subject, kit);
      return found;
    });
  }
  gathered.add_to(diagnostics);
}

namespace {

/// Kit that a line says is needed by each, or by every few.
struct Demand {
  const plan::Words* kit = nullptr;
  Share share;
  std::int64_t gymnasts = 0;  ///< who need it at one time
  Span span;
  std::string who;  ///< ‘Hoop jumps’, or the line that fetches the kit
};

// In a circuit the group is spread over the stations; where gymnasts take turns, one wave at a time
// needs kit.
std::int64_t at_one_time(const Subject& subject, const DrillLine& line, int all) {
  if (line.circuit != nullptr && !line.circuit->stations.empty()) {
    const auto stations = static_cast<std::int64_t>(line.circuit->stations.size());
    return (all + stations - 1) / stations;
  }
  const Waves turns = waves(subject.session, subject.club, *line.drill);
  return turns.count > 1 ? turns.places : all;
}

std::vector<Demand> demands_of(const Subject& subject, int all) {
  std::vector<Demand> out;
  for (const DrillLine& line : drill_lines(subject.session)) {
    for (const KitUse& use : line.drill->uses) {
      if (const auto share = share_in(use.kit.text + " " + use.how.text)) {
        out.push_back({&use.kit, *share, at_one_time(subject, line, all),
                       place_in_plan(*line.drill, use.kit), quoted(line.drill->name.text)});
      }
    }
  }
  for (const plan::Part& part : subject.session.parts) {
    for (const plan::Step& step : part.steps) {
      const auto* move = std::get_if<plan::KitMove>(&step);
      if (move == nullptr || move->way != plan::KitMove::Way::kPickUp) continue;
      for (const plan::Words& kit : move->kit) {
        const auto share = share_in(kit.text + " " + (move->kit.size() == 1 ? move->how.text : ""));
        if (share)
          out.push_back({&kit, *share, all, kit.span ? kit.span : move->span, "this line"});
      }
    }
  }
  return out;
}

const plan::StockItem* stock_of(const plan::Club& club, const plan::Words& kit) {
  const auto wanted = things_in(kit.text);
  if (wanted.size() != 1) return nullptr;
  for (const plan::StockItem& item : club.kit) {
    if (things_in(item.name.text) == wanted) return &item;
  }
  return nullptr;
}

Diagnostic too_little(const Subject& subject, const Demand& demand, const plan::StockItem& stock) {
  const std::int64_t needed = demand.share.needed_by(demand.gymnasts);
  const plan::Session& session = subject.session;
  Diagnostic found{
      Severity::kWarning, "not-enough-kit", demand.span,
      fmt::format("{} needs {} of {} for {} gymnasts, and the club has {}", demand.who, needed,
                  quoted(stock.name.text), demand.gymnasts, stock.count->value)};
  if (stock.count->span) {
    found.labels.push_back({stock.count->span, fmt::format("{} here", stock.count->value)});
  }
  const auto& size = session.gymnasts ? session.gymnasts
                     : session.group  ? session.group->size
                                      : session.gymnasts;
  if (size && size->span) {
    found.labels.push_back({size->span, fmt::format("{} gymnasts", size->value)});
  }
  found.hint =
      "let them share or take turns (‘one between two’), use other kit, or correct the number in "
      "club.yaml";
  return found;
}

}  // namespace

void check_kit_enough(const Subject& subject, Diagnostics& diagnostics) {
  const std::optional<int> all = subject.session.gymnast_count();
  if (subject.at_home() || !all || subject.club.kit.empty()) return;
  Gathered gathered;
  for (const Demand& demand : demands_of(subject, *all)) {
    const plan::StockItem* stock = stock_of(subject.club, *demand.kit);
    if (stock == nullptr || !stock->count) continue;
    if (demand.share.needed_by(demand.gymnasts) <= stock->count->value) continue;
    gathered.add(stock->name.text, demand.span, "here too",
                 [&] { return too_little(subject, demand, *stock); });
  }
  gathered.add_to(diagnostics);
}

namespace {

bool may_be_missing(const Drill& drill, const KitUse& use) {
  const auto things = things_in(use.kit.text);
  const bool everywhere =
      things.empty() || std::any_of(things.begin(), things.end(), is_everywhere);
  if (everywhere) return false;
  const auto optional = [](std::string_view text) {
    return has_one_of(words_in(text), {"if", "optional", "without", "no"});
  };
  // `uses: cushion, if you have one`, `easier: no towel`.
  return !optional(use.how.text) && !optional(use.kit.text) &&
         std::none_of(drill.easier.begin(), drill.easier.end(), [&](const plan::Words& rung) {
           const auto words = words_in(rung.text);
           return has_one_of(words, {"without", "no"}) &&
                  std::any_of(words.begin(), words.end(), [&](const TextWord& word) {
                    return singular(word.text) == things.front().back();
                  });
         });
}

}  // namespace

void check_substitutes(const Subject& subject, Diagnostics& diagnostics) {
  if (!subject.at_home()) return;
  Gathered gathered;
  for (const Use& one : uses_of(subject.session)) {
    if (!one.drill->substitutes.empty() || !may_be_missing(*one.drill, *one.use)) continue;
    if (is_refused(subject, *one.drill)) continue;
    gathered.add(lower_ascii(one.drill->name.text), one.span, "here too", [&] {
      const std::string& kit = one.use->kit.text;
      Diagnostic found{Severity::kWarning, "no-substitute-at-home", one.span,
                       fmt::format("{} uses {}, and nothing stands in for it in a home without",
                                   quoted(one.drill->name.text), quoted(kit))};
      if (is_inherited(*one.drill, one.use->kit)) {
        label_library(diagnostics, found, *one.drill->known, one.use->kit.span,
                      "the library says so here");
      }
      found.hint = fmt::format(
          "add a line below it such as ‘- without {}: …’, with an easier option of its own",
          kit.find(' ') == std::string::npos ? kit : joined(things_in(kit).front()));
      return found;
    });
  }
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
