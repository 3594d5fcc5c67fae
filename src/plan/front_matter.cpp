// See the header.
#include "plan/front_matter.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/keys.h"
#include "plan/known_keys.h"
#include "plan/printing.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using YamlKind = source::YamlNode::Kind;

// A hall by another word, or a home; a name of either is kept as it was typed.
Value<Place> parse_place(std::string_view text, const FrontWords& words) {
  const std::string word = lower_ascii(trim(text));
  if (word == "gym") return Place::kGym;
  if (word == "home") return Place::kHome;
  const auto meant = words.place ? words.place(word) : std::nullopt;
  return tl::unexpected(ValueProblem{
      fmt::format("‘{}’ is not a place", trim(text)), "write `place: gym` or `place: home`",
      meant ? (*meant == Place::kHome ? "home" : "gym") : std::string()});
}

// `60` is minutes of a slot, `1:15` hours.
Value<Duration> parse_slot(std::string_view text) {
  constexpr int kFewest = 5;
  constexpr int kMost = 300;
  auto out = parse_duration(text, Zero::kRefused);
  if (out) return out;
  const std::string_view typed = trim(text);
  for (const std::string_view unit : {" min", " h"}) {
    const std::string meant = std::string(typed) + std::string(unit);
    const auto time = parse_duration(meant, Zero::kRefused);
    if (!time || *time < Duration::minutes(kFewest) || *time > Duration::minutes(kMost)) continue;
    if (typed.find(':') != std::string_view::npos && unit == " min") continue;
    out.error().meant = meant;
    break;
  }
  return out;
}

// A clock as a session's start: `5.30` is in the afternoon, when gyms are open.
std::optional<Duration> clock_of_session(std::string_view text) {
  auto time = parse_time_of_day(text);
  if (!time && !time.error().meant.empty()) time = parse_time_of_day(time.error().meant);
  if (!time) return std::nullopt;
  const bool said = text.find_first_of("aApP") != std::string_view::npos;
  const bool night = time->since_midnight < Duration::minutes(8 * 60);
  return said || !night ? time->since_midnight : time->since_midnight + Duration::minutes(12 * 60);
}

// The bytes of a dash at `at`, or of a word that begins there and joins two clocks; 0 when neither.
std::size_t joint_size(std::string_view text, std::size_t at, const FrontWords& words) {
  for (const std::string_view dash : {"–", "—", "-"}) {
    if (text.substr(at).starts_with(dash)) return dash.size();
  }
  return text[at - 1] == ' ' && words.to_clock ? words.to_clock(text.substr(at)) : 0;
}

// `17:00-18:15`: the clock it begins at, and how long it lasts.
Value<TimeOfDay> parse_start(std::string_view text, bool slot_written, const FrontWords& words) {
  auto out = parse_time_of_day(text);
  if (out || !out.error().meant.empty()) return out;
  text = trim(text);
  for (std::size_t at = 1; at < text.size(); ++at) {
    const std::size_t size = joint_size(text, at, words);
    if (size == 0) continue;
    const std::string_view behind = trim(text.substr(at + size));
    const auto end = clock_of_session(behind);
    std::string first(trim(text.substr(0, at)));
    const std::string noon =
        lower_ascii(behind.substr(behind.size() - std::min<std::size_t>(2, behind.size())));
    const bool said = first.find_first_of("aApP") != std::string::npos;
    if (!said && noon == "pm") first += noon;
    const auto start = clock_of_session(first);
    if (!start || !end || *end <= *start) return out;
    out.error().meant = clock_text({*start});
    if (!slot_written)
      out.error().meant += fmt::format("\nslot: {} min", (*end - *start).rounded_minutes());
    return out;
  }
  return out;
}

void read_group(const Keys& keys, const Club& club, Session& session, Diagnostics& diagnostics) {
  session.group_name = keys.text("group");
  if (session.group_name.empty() || club.groups.empty()) return;
  if (const Group* group = club.group(session.group_name.text)) {
    session.group = *group;
    return;
  }
  std::vector<std::string> names;
  for (const Group& group : club.groups) names.push_back(group.name.text);
  diagnostics.error(kBadValue, session.group_name.span,
                    fmt::format("the club has no group ‘{}’", session.group_name.text),
                    suggestion(session.group_name.text, names, "groups"));
}

void read_repeat(const Keys& keys, Session& session, Diagnostics& diagnostics) {
  const source::YamlNode* node = keys.find("repeat");
  if (node == nullptr) return;
  for (const Words& words : list_words(*node, "repeat", diagnostics)) {
    const auto days = keys.read(words, parse_weekdays);
    if (!days) continue;
    for (const Weekday day : days->value) {
      const auto same = [&](const Sourced<Weekday>& other) { return other.value == day; };
      if (std::none_of(session.repeat.begin(), session.repeat.end(), same)) {
        session.repeat.push_back({day, words.span});
        continue;
      }
      diagnostics.error(kBadValue, words.span, fmt::format("‘{}’ is named twice", words.text),
                        "name each day once");
      break;
    }
  }
}

// Each check with the reason to let it be; whoever reviews the plan reads it.
void read_checks(const source::YamlNode& node, Session& session, Diagnostics& diagnostics) {
  if (node.kind != YamlKind::kMap) {
    return diagnostics.error(kBadValue, node.span, "‘checks’ must say which check, and why",
                             "write it as `checks: {long-queue: two coaches tonight}`");
  }
  for (const auto& entry : node.entries) {
    Words reason = entry.second.kind == YamlKind::kNull
                       ? Words()
                       : scalar_words(entry.second, entry.first.text, diagnostics);
    const std::string word = lower_ascii(reason.text);
    if (reason.empty() || word == "off" || word == "false" || word == "no") {
      diagnostics.error(kBadValue, entry.first.span,
                        fmt::format("‘{}’ is switched off without a reason", entry.first.text),
                        fmt::format("write why: `{}: two coaches tonight`", entry.first.text));
      continue;
    }
    session.checks_off.push_back({{entry.first.text, entry.first.span}, std::move(reason)});
  }
}

void read_fit(const Keys& keys, Session& session) {
  auto fit = keys.each_sheet("fit", parse_page_count);
  session.fit_card = std::move(fit.card);
  session.fit_sheet = std::move(fit.sheet);
}

void read_ticks(const Keys& keys, Session& session, Diagnostics& diagnostics) {
  auto ticks = keys.each_sheet("ticks", parse_ticks);
  session.ticks_card = std::move(ticks.card);
  session.ticks_sheet = std::move(ticks.sheet);
  // `ticks: gymnasts` for both is the card's; asked of the sheet itself, it is a mistake.
  const source::YamlNode* node = keys.find("ticks");
  const bool of_itself = node != nullptr && node->kind == YamlKind::kMap;
  if (of_itself && session.ticks_sheet &&
      session.ticks_sheet->value.each == Ticks::Each::kGymnast) {
    diagnostics.error(kBadValue, session.ticks_sheet->span,
                      "a home sheet belongs to one gymnast, so it has no boxes for others",
                      "write `sets`, `days` or `6 weeks` for the sheet");
  }
}

/// Collects `equipment:`, however it is written.
class EquipmentReader {
 public:
  EquipmentReader(Session& session, Diagnostics& diagnostics)
      : session_(session), diagnostics_(diagnostics) {}

  void read(const source::YamlNode& node) {
    if (node.kind == YamlKind::kMap) {
      read_map(node);
    } else if (node.kind == YamlKind::kList) {
      for (const source::YamlNode& item : node.items) {
        if (item.kind == YamlKind::kMap) {
          read_map(item);
        } else {
          add({scalar_words(item, "equipment", diagnostics_), {}});
        }
      }
    } else {
      for (const Words& name : list_words(node, "equipment", diagnostics_)) add({name, {}});
    }
  }

 private:
  void read_map(const source::YamlNode& map) {
    for (const auto& entry : map.entries) {
      const source::YamlNode& value = entry.second;
      Words description;
      if (value.kind != YamlKind::kNull) {
        description = scalar_words(value, entry.first.text, diagnostics_);
      }
      add({{entry.first.text, entry.first.span}, std::move(description)});
    }
  }

  void add(KitItem item) {
    if (item.name.empty()) return;
    for (const KitItem& other : session_.equipment) {
      if (lower_ascii(other.name.text) != lower_ascii(item.name.text)) continue;
      Diagnostic twice{Severity::kError, "duplicate-key", item.name.span,
                       fmt::format("‘{}’ is written twice", item.name.text)};
      twice.labels.push_back({other.name.span, "it is written here first"});
      twice.hint = "keep one of the two lines";
      return diagnostics_.add(std::move(twice));
    }
    session_.equipment.push_back(std::move(item));
  }

  Session& session_;
  Diagnostics& diagnostics_;
};

// The plan's own address, or the club's with the name of the plan's file in it.
Words read_web(const Keys& keys, const Club& club, const Source& source) {
  if (keys.has("web")) {
    auto own = keys.value(
        "web", [](std::string_view text) { return parse_web_address(text, PlanPlace::kRefused); });
    return own ? Words{std::move(own->value), own->span} : Words();
  }
  Words out = club.web;
  const std::size_t at = out.text.find(kPlanPlace);
  if (at == std::string::npos) return out;
  std::string_view name = source.path();
  name.remove_prefix(name.find_last_of('/') + 1);  // 0 where there is none
  if (name.ends_with(".md")) name.remove_suffix(3);
  std::string escaped;
  for (const char c : name) {
    // RFC 3986, 2.3: unreserved characters stand for themselves.
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       std::string_view("-._~").find(c) != std::string_view::npos;
    escaped += plain ? std::string(1, c) : fmt::format("%{:02X}", static_cast<unsigned char>(c));
  }
  out.text.replace(at, kPlanPlace.size(), escaped);
  return out;
}

// Where nothing says so it is a session in the hall: that prints a card for the coach alone.
void assume_place(Session& session, bool has_front, const FrontWords& words,
                  Diagnostics& diagnostics) {
  const bool home = words.says_home && (words.says_home(session.title.text) ||
                                        words.says_home(session.group_name.text));
  session.place.value = home ? Place::kHome : Place::kGym;
  Diagnostic found{Severity::kWarning, "missing-key", session.front_matter,
                   fmt::format("the plan does not say where it is done, and was read as one for {}",
                               home ? "the home" : "the hall")};
  const std::string line = fmt::format("place: {}", home ? "home" : "gym");
  if (!has_front) {
    found.hint = fmt::format("begin the file with three lines: `---`, then `{}`, then `---`", line);
  } else {
    found.hint = home ? "add the line `place: home` to the front matter, or `place: gym`"
                      : "add the line `place: gym` to the front matter, or `place: home` for "
                        "sheets to take home";
    add_line(found, session.front_matter, line);
  }
  diagnostics.add(std::move(found));
}

// Where a missing key belongs.
Span place_for_keys(const source::Document& document) {
  if (!has_front_matter(document)) {
    const auto length = static_cast<std::uint32_t>(document.source->line(1).size());
    return {document.source.get(), 0, length};
  }
  Span out = document.front_span;
  const std::string_view text = document.source->text();
  while (out.end > out.begin && (text[out.end - 1] == '\n' || text[out.end - 1] == '\r')) --out.end;
  return out;
}

}  // namespace

// Puts a line at the end of front matter; an empty one has no place for it.
void add_line(Diagnostic& found, const Span& front, const std::string& line) {
  if (front.size() == 0) return;
  found.edits.push_back({{front.source, front.end, front.end}, "\n" + line});
}

// A sentence ends at `.`, `!` or `?` with a blank behind it.
Safety safety_of(const Words& words) {
  Safety out;
  out.words = words;
  const std::string& text = words.text;
  const bool exact = words.span.text() == text;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool last = i + 1 == text.size();
    const bool ends = std::string_view(".!?").find(text[i]) != std::string_view::npos;
    if (!last && !(ends && text[i + 1] == ' ')) continue;
    Words sentence{text.substr(begin, i + 1 - begin), words.span};
    if (exact) {
      sentence.span.begin += static_cast<std::uint32_t>(begin);
      sentence.span.end = sentence.span.begin + static_cast<std::uint32_t>(sentence.text.size());
    }
    out.sentences.push_back(std::move(sentence));
    begin = std::min(i + 2, text.size());
  }
  return out;
}

bool has_front_matter(const source::Document& document) {
  return document.front.has_value() || !document.front_span.text().empty();
}

bool is_reported(std::string_view key, const source::Document& document,
                 const Diagnostics& diagnostics) {
  if (!document.front && has_front_matter(document)) return true;
  if (document.front) {
    for (const auto& entry : document.front->entries) {
      if (lower_ascii(entry.first.text) == key) return true;
    }
  }
  const auto& all = diagnostics.all();
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) {
    return document.front_span.contains(d.span) &&
           d.span.text().find(key) != std::string_view::npos;
  });
}

std::vector<Budget> read_front_matter(const source::Document& document, const Club& club,
                                      const FrontWords& words, Session& session,
                                      Diagnostics& diagnostics) {
  session.front_matter = place_for_keys(document);
  if (!document.front) {
    // Front matter that could not be read at all is already reported.
    if (!has_front_matter(document)) assume_place(session, false, words, diagnostics);
    return {};
  }
  const Keys::OtherNames others = [&words](std::string_view key) {
    return words.key ? words.key(key) : std::string();
  };
  const Keys keys(*document.front, "the front matter", known_keys(KeyMap::kSession), diagnostics,
                  others);
  session.title = keys.text("title");
  const auto place =
      keys.value("place", [&words](std::string_view text) { return parse_place(text, words); });
  if (place) session.place = *place;
  read_group(keys, club, session, diagnostics);
  if (!keys.has("place") && !is_reported("place", document, diagnostics))
    assume_place(session, true, words, diagnostics);
  session.gymnasts = keys.people("gymnasts", kLargestGroup);
  session.adults = keys.people("adults", kMostAdults);
  session.heat = keys.value("heat", parse_yes_no);
  session.slot = keys.value("slot", parse_slot);
  const bool slot_written = keys.has("slot");
  session.start = keys.value(
      "start", [&](std::string_view text) { return parse_start(text, slot_written, words); });
  session.date = keys.value("date", parse_day);
  read_repeat(keys, session, diagnostics);
  if (const Words safety = keys.text("safety"); !safety.empty())
    session.safety.push_back(safety_of(safety));
  read_printing(keys, session.printing);
  read_fit(keys, session);
  read_ticks(keys, session, diagnostics);
  session.web = read_web(keys, club, *document.source);
  if (const source::YamlNode* node = keys.find("equipment")) {
    EquipmentReader(session, diagnostics).read(*node);
  }
  if (const source::YamlNode* node = keys.find("checks")) read_checks(*node, session, diagnostics);
  const source::YamlNode* timings = keys.find("timings");
  if (timings == nullptr) return {};
  return read_timings(*timings, Timing::Origin::kPlan, session.timings, diagnostics);
}

Words read_part_title(const source::Document& document, Diagnostics& diagnostics) {
  if (!document.front) return {};
  const bool session = place_written(document).has_value();
  const std::vector<std::string> title{"title"};
  return Keys(*document.front, "a shared part's front matter",
              session ? known_keys(KeyMap::kSession) : title, diagnostics)
      .text("title");
}

std::optional<Span> place_written(const source::Document& document) {
  if (!document.front) return std::nullopt;
  for (const auto& entry : document.front->entries) {
    if (lower_ascii(entry.first.text) == "place") return entry.first.span.joined(entry.second.span);
  }
  return std::nullopt;
}

}  // namespace chalkleaf::plan
