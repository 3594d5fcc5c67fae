// `club.yaml`: who trains here, where, with what. Tested by tests/plan/club_test.cpp and
// club_mistakes_test.cpp.
#include <fmt/format.h>

#include "base/text.h"
#include "plan/club_entries.h"
#include "plan/keys.h"
#include "plan/known_keys.h"
#include "plan/printing.h"
#include "plan/read.h"
#include "plan/timings.h"

namespace chalkleaf::plan {
namespace {

using YamlKind = source::YamlNode::Kind;

Group read_group(const source::YamlNode& name, const source::YamlNode& value,
                 Diagnostics& diagnostics) {
  Group group;
  group.name = {name.text, name.span};
  if (value.kind == YamlKind::kNull) return group;
  if (value.kind != YamlKind::kMap) {
    diagnostics.error(kBadValue, value.span, fmt::format("‘{}’ must have entries", name.text),
                      fmt::format("write it as `{}: {{ages: 9–11, size: 8}}`", name.text));
    return group;
  }
  const Keys keys(value, "a group", known_keys(KeyMap::kGroup), diagnostics);
  if (const auto ages = keys.value("ages", parse_ages)) {
    group.youngest = Sourced<int>{ages->value.first, ages->span};
    group.oldest = Sourced<int>{ages->value.second, ages->span};
  }
  group.size = keys.people("size", kLargestGroup);
  group.level = keys.value(
      "level", [](std::string_view text) { return parse_whole(text, 1, kHighestLevel); });
  group.adults = keys.people("adults", kMostAdults);
  return group;
}

void read_groups(const source::YamlNode& node, Club& club, Diagnostics& diagnostics) {
  if (!node.unreadable && node.kind != YamlKind::kMap) {
    diagnostics.error(kBadValue, node.span, "‘groups’ must be entries, one for each group",
                      "write each on a line of its own: `Kestrels: {ages: 9–11, size: 8}`");
    return;
  }
  for (const source::YamlEntry* entry : named_entries(node, "groups", "", diagnostics)) {
    club.groups.push_back(read_group(entry->first, entry->second, diagnostics));
  }
}

// BCP 47 (RFC 5646), the shape only: subtags of one to eight letters or digits.
Value<std::string> parse_language(std::string_view text) {
  std::size_t length = 0;
  bool fine = !text.empty();
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    const bool digit = c >= '0' && c <= '9';
    if (c == '-') {
      fine = fine && length > 0;
      length = 0;
    } else {
      fine = fine && (letter || (digit && i > 1)) && ++length <= 8;
    }
  }
  if (fine && length > 0 && text.find('-') != 1) return std::string(text);
  return tl::unexpected(ValueProblem{fmt::format("‘{}’ is not a language tag", text),
                                     "write a tag such as `en`, `en-GB` or `nl`"});
}

}  // namespace

Club read_club(const SourcePtr& source, const source::YamlNode& root, Diagnostics& diagnostics) {
  Club club;
  club.source = source;
  if (root.kind != YamlKind::kMap) {
    diagnostics.error(kBadValue, root.span, "the club file must have entries",
                      "begin it with `name: ` and the club's name");
    return club;
  }
  const Keys keys(root, "the club file", known_keys(KeyMap::kClub), diagnostics);
  club.name = keys.text("name");
  if (!keys.has("name")) {
    diagnostics.error("missing-key", {source.get(), root.span.begin, root.span.begin},
                      "the club has no name", "add a line `name: ` with the club's name");
  }
  read_printing(keys, club.printing);
  if (const source::YamlNode* groups = keys.find("groups")) {
    read_groups(*groups, club, diagnostics);
  }
  if (const source::YamlNode* timings = keys.find("timings")) {
    read_timings(*timings, Timing::Origin::kClub, club.timings, diagnostics);
  }
  club.contact = keys.text("contact");
  club.home_safety = keys.text("home-safety");
  if (const source::YamlNode* colours = keys.find("colours")) {
    if (colours->kind == YamlKind::kMap) {
      const Keys each(*colours, "colours", known_keys(KeyMap::kColours), diagnostics);
      club.main_colour = each.text("main");
      club.second_colour = each.text("second");
    } else {
      diagnostics.error(kBadValue, colours->span, "‘colours’ must have entries",
                        "write `colours: {main: '#1b4f72', second: '#b8431f'}`");
    }
  }
  club.logo = keys.text("logo");
  if (const auto shelf = keys.value("shelf", parse_on_off)) club.uses_shelf = shelf->value;
  read_club_entries(keys, club, diagnostics);
  if (auto web = keys.value("web", [](std::string_view text) {
        return parse_web_address(text, PlanPlace::kAllowed);
      })) {
    club.web = {std::move(web->value), web->span};
  }
  if (auto language = keys.value("language", parse_language)) club.language = language->value;
  return club;
}

}  // namespace chalkleaf::plan
