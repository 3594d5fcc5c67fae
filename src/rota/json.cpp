// See the header.
#include "rota/json.h"

#include <fmt/format.h>

#include <array>
#include <vector>

#include "base/json_text.h"
#include "rota/slips.h"

namespace chalkleaf::rota {
namespace {

std::string clock_or_null(const std::optional<int>& minutes) {
  return minutes ? fmt::format("\"{:02}:{:02}\"", *minutes / 60 % 24, *minutes % 60) : "null";
}
std::string number_or_null(const std::optional<int>& number) {
  return number ? std::to_string(*number) : "null";
}
std::string minutes_or_null(int minutes) { return minutes > 0 ? std::to_string(minutes) : "null"; }
std::string list(const std::vector<std::string>& items) {
  return fmt::format("[{}]", fmt::join(items, ", "));
}

std::vector<std::string> turns(const Rotation& all) {
  std::vector<std::string> out;
  for (std::size_t t = 0; t < all.turns.size(); ++t) {
    std::vector<std::string> places;
    for (std::size_t g = 0; g < all.groups.size(); ++g) {
      std::vector<std::string> own;
      for (const Visit& visit : all.visits) {
        if (visit.turn == t && visit.group == g)
          own.push_back(json_string(all.stations[visit.station].name.text));
      }
      for (const Rest& rest : all.rests) {
        if (rest.turn == t && rest.group == g) own.push_back("\"rest\"");
      }
      places.push_back(fmt::format("{}: {}", json_string(all.groups[g].name.text), list(own)));
    }
    out.push_back(fmt::format(R"({{"begin": {}, "minutes": {}, "places": {{{}}}}})",
                              clock_or_null(all.turns[t].clock),
                              minutes_or_null(all.turns[t].minutes), fmt::join(places, ", ")));
  }
  return out;
}

std::vector<std::string> slips(const Rotation& all, const LineOf& line_of) {
  std::vector<std::string> out;
  for (const Slip& slip : slips_of(all)) {
    const bool no_group = slip.kind == Slip::Kind::kStranger;
    const bool no_station = no_group || slip.kind == Slip::Kind::kNowhere;
    out.push_back(
        fmt::format(R"({{"kind": "{}", "turn": {}, "group": {}, "station": {}, "line": {}}})",
                    name_of_slip(static_cast<std::size_t>(slip.kind)),
                    slip.kind == Slip::Kind::kNever ? "null" : std::to_string(slip.turn + 1),
                    no_group ? "null" : json_string(all.groups[slip.group].name.text),
                    no_station ? "null" : json_string(all.stations[slip.station].name.text),
                    line_of(slip.span)));
  }
  return out;
}

std::vector<std::string> coaches(const Rotation& all) {
  std::vector<std::string> out;
  for (const Coach& coach : all.coaches) {
    std::vector<std::string> stations;
    std::vector<std::string> groups;
    for (const std::size_t s : coach.stations)
      stations.push_back(json_string(all.stations[s].name.text));
    for (const std::size_t g : coach.groups) groups.push_back(json_string(all.groups[g].name.text));
    out.push_back(fmt::format(R"({{"name": {}, "stations": {}, "groups": {}}})",
                              json_string(coach.name.text), list(stations), list(groups)));
  }
  return out;
}

}  // namespace

std::string_view name_of_slip(std::size_t kind) {
  static constexpr std::array<std::string_view, 7> kNames{
      "stranger", "twice-at-once", "absent", "shared", "over-capacity", "repeated", "missed"};
  return kNames.at(kind);
}

std::string json_of(const Rotation& all, const LineOf& line_of) {
  std::vector<std::string> groups;
  for (const Group& group : all.groups) {
    groups.push_back(fmt::format(R"({{"name": {}, "gymnasts": {}, "from": {}, "until": {}}})",
                                 json_string(group.name.text), number_or_null(group.size),
                                 clock_or_null(group.from), clock_or_null(group.until)));
  }
  std::vector<std::string> stations;
  for (const Station& station : all.stations) {
    stations.push_back(fmt::format(R"({{"name": {}, "takes": {}}})", json_string(station.name.text),
                                   number_or_null(station.takes)));
  }
  std::vector<std::string> breaks;
  for (const Pause& pause : all.pauses) {
    if (pause.before >= all.turns.size()) continue;
    breaks.push_back(fmt::format(R"({{"after_turn": {}, "minutes": {}, "words": {}}})",
                                 pause.before, minutes_or_null(pause.minutes),
                                 json_string(pause.words)));
  }
  std::vector<std::string> rules;
  for (const Rule& rule : all.rules) {
    rules.push_back(fmt::format(R"({{"must": {}, "read": {}, "text": {}}})",
                                rule.weight == Rule::Weight::kMust,
                                rule.kind != Rule::Kind::kUnread, json_string(rule.text)));
  }
  return fmt::format(
      R"({{"line": {}, "grid": "{}", "minutes": {}, "move_minutes": {}, "groups": {}, "stations": {}, )"
      R"("coaches": {}, "turns": {}, "breaks": {}, "rules": {}, "slips": {}}})",
      line_of(all.heading.span ? all.heading.span : all.span),
      all.form == Rotation::Form::kNone ? "proposed" : "written", all.minutes(), all.move,
      list(groups), list(stations), list(coaches(all)), list(turns(all)), list(breaks), list(rules),
      list(slips(all, line_of)));
}

}  // namespace chalkleaf::rota
