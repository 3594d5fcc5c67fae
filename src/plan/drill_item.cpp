// See the header.
#include "plan/drill_item.h"

#include <fmt/format.h>

#include <algorithm>

#include "plan/attributes.h"
#include "plan/blocks.h"
#include "plan/drill_line.h"
#include "plan/kit_moves.h"
#include "plan/lines.h"
#include "plan/part_links.h"
#include "plan/pictures.h"
#include "plan/stations.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

Drill drill_of(DrillLine line, const Span& span) {
  Drill out;
  out.span = span;
  out.name = std::move(line.name);
  out.choices = std::move(line.choices);
  out.dose = std::move(line.dose);
  out.dose_unreadable = line.dose_unreadable;
  out.circuit = std::move(line.circuit);
  if (line.dose_unreadable && !line.unread.empty())
    out.notes.push_back({Note::Kind::kListItem, std::move(line.unread)});
  return out;
}

class DrillReader {
 public:
  DrillReader(std::vector<Safety>& safety, Diagnostics& diagnostics)
      : safety_(safety), diagnostics_(diagnostics) {}

  Drill read(const source::MarkNode& item) {
    std::vector<Note> pictures;
    const source::MarkNode line = without_pictures(without_comments(item.children[0]), pictures);
    ParagraphLines lines = lines_of(printed_text(line));
    const std::vector<source::Text> stations = take_stations(lines);
    const StationsBelow below_it = stations.empty() ? stations_below(item) : StationsBelow::kSurely;
    Drill made = drill_of(read_drill_line(lines.first, below_it, diagnostics_), item.span);
    if (made.dose) report_keys_in_dose(*made.dose, diagnostics_);
    for (const source::Text& text : stations) station_without_dash(text, made);
    made.notes.insert(made.notes.end(), pictures.begin(), pictures.end());
    read_forgotten(lines, below(made), diagnostics_);
    for (std::size_t i = 1; i < item.children.size(); ++i) block_below(item.children[i], made);
    if (made.circuit && made.dose_unreadable) {  // then nobody knows the stations' time of work
      for (Drill& station : made.stations) station.dose_unreadable = !station.dose;
    }
    return made;
  }

  void block_below(const source::MarkNode& node, Drill& made) {
    if (node.kind == MarkKind::kList) {
      for (const source::MarkNode& child : node.children) item_below(child, made);
    } else if (node.kind == MarkKind::kQuote) {
      if (auto safety = read_safety(node)) safety_.push_back(std::move(*safety));
    } else {
      add_notes(node, made.notes);
    }
  }

 private:
  void item_below(const source::MarkNode& item, Drill& made) {
    if (made.circuit && is_station(item)) return station(item, made);
    read_attribute(item, below(made), diagnostics_);
  }

  void station(const source::MarkNode& item, Drill& circuit) {
    const source::Text line = lines_of(printed_text(item.children[0])).first.trimmed();
    if (const auto kit = kit_line(line); kit && !kit->rest.empty()) {
      diagnostics_.error(kBadValue, kit->verb.span,
                         "a line that moves kit cannot stand among the stations of a circuit",
                         "move it to the left, so that it stands before or after the circuit");
      return add_item_notes(item, circuit.notes);
    }
    Drill made = read(item);
    if (!made.circuit) return add_station(std::move(made), circuit);
    diagnostics_.error(kBadValue, words_of(line).span, "a circuit cannot stand in a circuit",
                       "move it to the left, so that it stands beside this one, or list its "
                       "stations here and take its line out");
    circuit.notes.push_back({Note::Kind::kListItem, words_of(line)});
    for (Drill& inner : made.stations) add_station(std::move(inner), circuit);
    keep_as_notes(made, circuit.notes);
  }

  // What stood below a line that has no place of its own.
  static void keep_as_notes(const Drill& from, std::vector<Note>& out) {
    const auto keep = [&](const std::vector<Words>& all) {
      for (const Words& words : all) {
        if (!words.empty()) out.push_back({Note::Kind::kListItem, words});
      }
    };
    keep(from.cues);
    keep(from.easier);
    keep(from.harder);
    for (const KitUse& use : from.uses) keep({use.kit, use.how});
    for (const Substitute& one : from.substitutes) {
      keep({one.kit, one.name});
      keep(one.cues);
      keep(one.easier);
      keep(one.harder);
      out.insert(out.end(), one.notes.begin(), one.notes.end());
    }
    keep({from.record, from.at});
    keep(from.figures);
    out.insert(out.end(), from.notes.begin(), from.notes.end());
  }

  // Stations written as lines without dashes run on from the circuit's own line.
  static std::vector<source::Text> take_stations(ParagraphLines& lines) {
    const source::Text all = lines.first.trimmed();
    if (all.span().text().find_first_of("\r\n") == std::string_view::npos) return {};
    std::vector<source::Text> pieces;
    std::size_t begin = 0;
    for (std::size_t i = 0; i <= all.str().size(); ++i) {
      if (i < all.str().size() && !is_line_break(all, i)) continue;
      pieces.push_back(all.slice(begin, i).trimmed());
      begin = i + 1;
    }
    if (pieces.size() < 2 || !is_plainly_a_circuit(pieces[0]) || is_plainly_a_circuit(all)) {
      return {};
    }
    lines.first = pieces[0];
    pieces.erase(pieces.begin());
    return pieces;
  }

  void station_without_dash(const source::Text& text, Drill& circuit) {
    diagnostics_.error(kBadValue, text.span(),
                       "this station has no dash before it, so it runs on from the circuit",
                       fmt::format("write `- {}`, indented by two spaces below ‘{}’",
                                   words_of(text).text, circuit.name.text));
    add_station(read_lone_station(text, text.span(), diagnostics_), circuit);
  }

  std::vector<Safety>& safety_;
  Diagnostics& diagnostics_;
};

}  // namespace

bool is_step(const source::MarkNode& item) {
  const source::MarkNode* first = first_paragraph(item);
  if (first == nullptr) return false;
  const source::MarkNode line = without_comments(*first);
  return part_links(line).only_links || is_drill_line(lines_of(line.text).first);
}

bool lists_drills(const source::MarkNode& list) {
  return std::any_of(list.children.begin(), list.children.end(), [](const auto& item) {
    const source::MarkNode* first = first_paragraph(item);
    return is_step(item) ||
           (first != nullptr && drill_without_colon(lines_of(first->text).first).has_value());
  });
}

Drill read_drill_item(const source::MarkNode& item, std::vector<Safety>& safety,
                      Diagnostics& diagnostics) {
  return DrillReader(safety, diagnostics).read(item);
}

void read_below_circuit(const source::MarkNode& list, Drill& circuit, std::vector<Safety>& safety,
                        Diagnostics& diagnostics) {
  DrillReader(safety, diagnostics).block_below(list, circuit);
}

Drill read_lone_drill(const source::Text& line, const Span& span, Diagnostics& diagnostics) {
  Drill out = drill_of(read_drill_line(line, StationsBelow::kNone, diagnostics), span);
  out.dose_unreadable = !out.dose;
  return out;
}

Drill read_lone_station(const source::Text& line, const Span& span, Diagnostics& diagnostics) {
  Drill out = drill_of(read_drill_line(line, StationsBelow::kNone, diagnostics), span);
  out.circuit.reset();
  return out;
}

}  // namespace chalkleaf::plan
