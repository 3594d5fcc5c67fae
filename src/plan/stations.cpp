// See the header.
#include "plan/stations.h"

#include <algorithm>

#include "dose/parser.h"
#include "plan/attributes.h"
#include "plan/blocks.h"
#include "plan/pictures.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

// `- Star jumps` beside a circuit instead of below it.
bool is_lost_station(const Step& step) {
  const auto* drill = std::get_if<Drill>(&step);
  return drill != nullptr && !drill->dose && !drill->dose_unreadable && !drill->circuit;
}

// `found`: stations that stood beside it have been taken in.
void settle(Drill& drill, bool found, Diagnostics& diagnostics) {
  const Span written = drill.circuit->span;
  const bool reported = drill.dose_unreadable;
  drill.dose_unreadable = !found;
  if (!reported && found) {
    diagnostics.error(kBadValue, drill.name.span.joined(written),
                      "the stations of this circuit stand beside it, not below it",
                      "indent the lines of its stations by two spaces");
  } else if (!reported) {
    diagnostics.error(
        kBadValue, drill.name.span.joined(written), "this circuit has no stations",
        "list them below it, each with a dash and indented by two spaces: `  - Star jumps`");
    drill.notes.push_back({Note::Kind::kListItem, {std::string(written.text()), written}});
  }
  if (!found) drill.circuit.reset();
}

source::Text line_of_item(const source::MarkNode& item) {
  const source::MarkNode* first = first_paragraph(item);
  if (first == nullptr) return {};
  const source::MarkNode line = without_comments(*first);
  if (!pictures_of(line).empty()) return {};
  return lines_of(printed_text(line)).first.trimmed();
}

}  // namespace

bool is_station(const source::MarkNode& item) {
  const source::Text line = line_of_item(item);
  if (line.empty()) return false;
  if (const auto attribute = attribute_of(line)) {
    if (is_known(*attribute)) return false;
    // `esaier: knees bent` is a slip; `Rows: 10` is a drill.
    return !key_meant(attribute->key) || parse_dose(attribute->value).has_value();
  }
  return !attribute_without_colon(line);
}

StationsBelow stations_below(const source::MarkNode& item) {
  std::size_t stations = 0;
  bool dosed = false;
  for (const source::MarkNode& child : item.children) {
    if (child.kind != MarkKind::kList) continue;
    for (const source::MarkNode& below : child.children) {
      if (!is_station(below)) continue;
      ++stations;
      dosed = dosed || is_drill_line(line_of_item(below));
    }
  }
  if (stations == 0) return StationsBelow::kNone;
  return stations > 1 || dosed ? StationsBelow::kSurely : StationsBelow::kPerhaps;
}

void settle_circuits(std::vector<Step>& steps, Diagnostics& diagnostics) {
  std::vector<Step> kept;
  kept.reserve(steps.size());
  for (std::size_t i = 0; i < steps.size();) {
    kept.push_back(std::move(steps[i++]));
    auto* circuit = std::get_if<Drill>(&kept.back());
    if (circuit == nullptr || !circuit->circuit || !circuit->stations.empty()) continue;
    while (i < steps.size() && is_lost_station(steps[i])) {
      circuit->stations.push_back(std::get<Drill>(std::move(steps[i++])));
      circuit->span = circuit->span.joined(circuit->stations.back().span);
    }
    settle(*circuit, !circuit->stations.empty(), diagnostics);
  }
  steps = std::move(kept);
}

void add_station(Drill station, Drill& circuit) {
  const auto place = std::upper_bound(
      circuit.stations.begin(), circuit.stations.end(), station.span.begin,
      [](std::uint32_t begin, const Drill& other) { return begin < other.span.begin; });
  circuit.stations.insert(place, std::move(station));
}

}  // namespace chalkleaf::plan
