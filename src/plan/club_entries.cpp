// See the header.
#include "plan/club_entries.h"

#include <fmt/format.h>

#include <set>

#include "base/text.h"
#include "plan/known_keys.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using YamlKind = source::YamlNode::Kind;

// Limits of sense: what is beyond them is a slip, not a hall.
constexpr int kMostStations = 99;
constexpr int kMostKit = 999;

// Of one kind. Each is looked for among all the others.
constexpr std::size_t kMostEntries = 1'000;

void too_many(std::string_view what, const Span& where, Diagnostics& diagnostics) {
  diagnostics.error(
      kBadValue, where,
      fmt::format("‘{}’ has more than {} entries; the rest is not read", what, kMostEntries),
      "keep those the club uses");
}

template <int kLeast, int kMost>
Value<int> whole(std::string_view text) {
  return parse_whole(text, kLeast, kMost);
}

Words name_of(const source::YamlEntry& entry) { return {entry.first.text, entry.first.span}; }

// What is only named: `hall: beam, bar`, `kit: [hoops, cones]`. Nothing for a map.
std::optional<std::vector<Words>> only_names(const source::YamlNode& node, std::string_view what,
                                             Diagnostics& diagnostics) {
  if (node.kind != YamlKind::kList && !node.is_scalar()) return std::nullopt;
  std::vector<Words> out = list_words(node, what, diagnostics);
  if (out.size() > kMostEntries) {
    too_many(what, out[kMostEntries].span, diagnostics);
    out.resize(kMostEntries);
  }
  return out;
}

// `beam` and `beams` are one thing, and one of them would never be found.
bool is_new_thing(const Words& name, const Words* same, Diagnostics& diagnostics) {
  if (same == nullptr) return true;
  Diagnostic twice{Severity::kError, "duplicate-key", name.span,
                   fmt::format("‘{}’ is the same as ‘{}’", name.text, same->text)};
  twice.labels.push_back({same->span, "it is written here first"});
  twice.hint = "keep one of the two, or give them names that tell them apart";
  diagnostics.add(std::move(twice));
  return false;
}

/// Reads one club's entries; a class only to keep the parameters in one place.
class EntriesReader {
 public:
  EntriesReader(const Keys& keys, Club& club, Diagnostics& diagnostics)
      : keys_(keys), club_(club), diagnostics_(diagnostics) {}

  void read() {
    with("hall", [this](const auto& node) { hall(node); });
    with("kit", [this](const auto& node) { kit(node); });
    with("staff", [this](const auto& node) { staff(node); });
    with("contacts", [this](const auto& node) { contacts(node); });
    with("words", [this](const auto& node) { words(node); });
    with("checks", [this](const auto& node) { checks(node); });
    with("limits", [this](const auto& node) { limits(node); });
  }

 private:
  template <class Read>
  void with(std::string_view key, Read read) {
    const source::YamlNode* node = keys_.find(key);
    if (node == nullptr || node->unreadable) return;
    if (node->kind == YamlKind::kNull) {
      scalar_words(*node, key, diagnostics_);  // says that it has no value
      return;
    }
    read(*node);
  }

  bool wrong(const Span& span, std::string message, std::string hint) {
    diagnostics_.error(kBadValue, span, std::move(message), std::move(hint));
    return false;
  }

  bool is_map(const source::YamlEntry& entry, std::string_view example) {
    if (entry.second.kind == YamlKind::kMap) return true;
    if (entry.second.unreadable) return false;
    return wrong(entry.second.span, fmt::format("‘{}’ must have entries", entry.first.text),
                 fmt::format("write it as `{}: {}`", entry.first.text, example));
  }

  void add_station(Station station) {
    const Station* same = club_.station(station.name.text);
    if (is_new_thing(station.name, same == nullptr ? nullptr : &same->name, diagnostics_)) {
      club_.stations.push_back(std::move(station));
    }
  }
  void hall(const source::YamlNode& node) {
    if (const auto names = only_names(node, "hall", diagnostics_)) {
      for (const Words& name : *names) add_station({name});
      return;
    }
    for (const source::YamlEntry* entry :
         named_entries(node, "hall", "beam: {count: 3, takes: 1}", diagnostics_)) {
      Station station{name_of(*entry)};
      const source::YamlNode& value = entry->second;
      if (value.kind != YamlKind::kNull && is_map(*entry, "{count: 3, takes: 1}")) {
        const Keys keys(value, "a station of the hall", known_keys(KeyMap::kStation), diagnostics_);
        if (const auto count = keys.value("count", whole<1, kMostStations>)) station.count = *count;
        if (const auto takes = keys.value("takes", whole<1, kLargestGroup>)) station.takes = *takes;
      }
      add_station(std::move(station));
    }
  }

  void add_kit(StockItem item) {
    const StockItem* same = club_.stock(item.name.text);
    if (is_new_thing(item.name, same == nullptr ? nullptr : &same->name, diagnostics_)) {
      club_.kit.push_back(std::move(item));
    }
  }
  void kit(const source::YamlNode& node) {
    if (const auto names = only_names(node, "kit", diagnostics_)) {
      for (const Words& name : *names) add_kit({name, std::nullopt, {}});
      return;
    }
    for (const source::YamlEntry* entry : named_entries(node, "kit", "hoops: 12", diagnostics_)) {
      add_kit(stock_item(*entry));
    }
  }
  StockItem stock_item(const source::YamlEntry& entry) {
    StockItem out{name_of(entry), std::nullopt, {}};
    const source::YamlNode& value = entry.second;
    if (value.kind == YamlKind::kMap) {
      const Keys keys(value, "a piece of kit", known_keys(KeyMap::kStock), diagnostics_);
      out.count = keys.value("count", whole<0, kMostKit>);
      out.note = keys.text("note");
    } else if (value.is_scalar()) {
      const auto count = parse_whole(value.text, 0, kMostKit);
      if (count) {
        out.count = Sourced<int>{*count, value.span};
      } else {
        wrong(
            value.span, fmt::format("‘{}’ is not a number of {}", value.text, out.name.text),
            fmt::format("write how many there are, or both: `{}: {{count: 12, note: …}}`; leave it "
                        "empty if there are always enough",
                        out.name.text));
      }
    } else if (value.kind == YamlKind::kList) {
      is_map(entry, "12");
    }
    return out;
  }

  void staff(const source::YamlNode& node) {
    if (const auto names = only_names(node, "staff", diagnostics_)) {
      for (const Words& name : *names) club_.staff.push_back({name, {}, {}});
      return;
    }
    for (const source::YamlEntry* entry :
         named_entries(node, "staff", "Lead coach: {qualification: level 2, groups: [Wrens]}",
                       diagnostics_)) {
      club_.staff.push_back(member(*entry));
    }
  }
  StaffMember member(const source::YamlEntry& entry) {
    StaffMember out{name_of(entry), {}, {}};
    const source::YamlNode& value = entry.second;
    if (value.is_scalar()) {
      out.qualification = scalar_words(value, out.name.text, diagnostics_);
    } else if (value.kind == YamlKind::kMap) {
      const Keys keys(value, "an adult of the staff", known_keys(KeyMap::kStaff), diagnostics_);
      out.qualification = keys.text("qualification");
      if (const auto* groups = keys.find("groups")) out.groups = groups_of(*groups);
    } else if (value.kind == YamlKind::kList) {
      is_map(entry, "{qualification: level 2, groups: [Wrens]}");
    }
    return out;
  }
  std::vector<Words> groups_of(const source::YamlNode& node) {
    std::vector<Words> out;
    std::vector<std::string> names;
    for (const Group& group : club_.groups) names.push_back(group.name.text);
    for (Words& name : list_words(node, "groups", diagnostics_)) {
      if (names.empty() || club_.group(name.text) != nullptr) {
        out.push_back(std::move(name));
      } else {
        wrong(name.span, fmt::format("the club has no group ‘{}’", name.text),
              suggestion(name.text, names, "groups"));
      }
    }
    return out;
  }

  void contacts(const source::YamlNode& node) {
    for (const source::YamlEntry* entry :
         named_entries(node, "contacts", "safeguarding: ask at the club desk", diagnostics_)) {
      Words value = scalar_words(entry->second, entry->first.text, diagnostics_);
      if (!value.empty()) club_.contacts.emplace_back(name_of(*entry), std::move(value));
    }
  }

  void words(const source::YamlNode& node) {
    for (const source::YamlEntry* entry :
         named_entries(node, "words", "dish: a shallow curve, lying on the back", diagnostics_)) {
      Words meaning = scalar_words(entry->second, entry->first.text, diagnostics_);
      if (!meaning.empty()) club_.words.push_back({name_of(*entry), std::move(meaning)});
    }
  }

  void checks(const source::YamlNode& node) {
    for (const source::YamlEntry* entry :
         named_entries(node, "checks", "under-slot: off", diagnostics_)) {
      const Words value = scalar_words(entry->second, entry->first.text, diagnostics_);
      if (value.empty()) continue;
      const std::string word = lower_ascii(value.text);
      SeverityChoice choice{name_of(*entry), std::nullopt, value.span};
      if (word == "error") choice.severity = Severity::kError;
      if (word == "warning") choice.severity = Severity::kWarning;
      if (word == "note") choice.severity = Severity::kNote;
      if (word == "off" || choice.severity) {
        club_.checks.push_back(std::move(choice));
      } else {
        wrong(value.span, fmt::format("‘{}’ is not a severity", value.text),
              "write `error`, `warning`, `note` or `off`");
      }
    }
  }

  std::optional<Sourced<Duration>> time_limit(const Keys& keys, std::string_view key,
                                              Duration least, Duration most) {
    auto time =
        keys.value(key, [](std::string_view text) { return parse_duration(text, Zero::kRefused); });
    if (!time || (time->value >= least && time->value <= most)) return time;
    wrong(time->span, fmt::format("‘{}’ is not a limit that makes sense here", time->span.text()),
          fmt::format("write a time from {} to {}", exact_text(least), exact_text(most)));
    return std::nullopt;
  }
  // `10`, `10 %`, `10%`
  static Value<int> percent(std::string_view text) {
    std::string_view number = trim(text);
    if (number.ends_with('%')) number = trim(number.substr(0, number.size() - 1));
    auto value = parse_whole(number, 0, 100);
    if (!value) value.error().hint = "write a share of the slot in percent, from 0 to 100: `10 %`";
    return value;
  }
  void limits(const source::YamlNode& node) {
    if (node.kind != YamlKind::kMap) {
      wrong(node.span, "‘limits’ must be entries, one for each limit",
            "write each on a line of its own: `longest-stretch: 30 s`");
      return;
    }
    const Keys keys(node, "the limits", known_keys(KeyMap::kLimits), diagnostics_);
    Limits& out = club_.limits;
    out.longest_stretch =
        time_limit(keys, "longest-stretch", Duration::seconds(5), Duration::minutes(5));
    out.stretch_before_power =
        time_limit(keys, "stretch-before-power", Duration::seconds(5), Duration::minutes(10));
    out.water_after =
        time_limit(keys, "water-after", Duration::minutes(10), Duration::minutes(240));
    out.unused_share = keys.value("unused-share", percent);
    out.fewest_adults = keys.value("fewest-adults", whole<1, kMostAdults>);
  }

  const Keys& keys_;
  Club& club_;
  Diagnostics& diagnostics_;
};

}  // namespace

std::vector<const source::YamlEntry*> named_entries(const source::YamlNode& node,
                                                    std::string_view what, std::string_view example,
                                                    Diagnostics& diagnostics) {
  std::vector<const source::YamlEntry*> out;
  if (node.unreadable) return out;
  if (node.kind != YamlKind::kMap) {
    diagnostics.error(kBadValue, node.span, fmt::format("‘{}’ must be entries, one a line", what),
                      fmt::format("write each on a line of its own: `{}`", example));
    return out;
  }
  report_duplicates(node, diagnostics);
  std::set<std::string> seen;
  for (const source::YamlEntry& entry : node.entries) {
    if (seen.size() == kMostEntries) {
      too_many(what, entry.first.span, diagnostics);
      break;
    }
    const bool is_new = seen.insert(lower_ascii(entry.first.text)).second;
    if (is_new && !trim(entry.first.text).empty()) out.push_back(&entry);
  }
  return out;
}

void read_club_entries(const Keys& keys, Club& club, Diagnostics& diagnostics) {
  EntriesReader(keys, club, diagnostics).read();
}

}  // namespace chalkleaf::plan
