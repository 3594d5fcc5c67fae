#include "sheet/theme.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <set>
#include <string_view>
#include <vector>

#include "base/text.h"
#include "sheet/theme_checks.h"
#include "sheet/theme_likes.h"
#include "source/read.h"

namespace chalkleaf::sheet {
namespace {

using source::YamlNode;

constexpr std::array<std::string_view, kTextRoles> kRoleNames = {
    "title",       "subtitle",  "strong",          "part",
    "part-detail", "clock",     "drill",           "dose",
    "cue",         "variation", "variation-label", "station",
    "column",      "box-title", "box-text",        "note",
    "fine",        "foot"};
constexpr std::array<std::string_view, kUses> kUseNames = {"ink",  "soft", "main", "line",
                                                           "hair", "tint", "paper"};

// In the order of figure::Ink; the last, paper, is the sheet's.
constexpr std::array<std::string_view, figure::kInks - 1> kInkNames = {
    "body", "far", "suit", "far-suit", "thing", "edge", "accent", "held", "ghost"};

/// Reads keys of one map and notices those nobody asked for.
class MapReader {
 public:
  MapReader(const YamlNode& map, std::string what, Diagnostics& diagnostics)
      : map_(map), what_(std::move(what)), diagnostics_(diagnostics) {
    if (map.kind != YamlNode::Kind::kMap)
      fail(map.span, fmt::format("‘{}’ must have keys below it", what_));
  }
  ~MapReader() {
    for (const auto& [key, value] : map_.entries) {
      if (asked_.count(key.text) == 0) {
        diagnostics_.error("unknown-key", key.span,
                           fmt::format("‘{}’ has no key ‘{}’", what_, key.text),
                           fmt::format("remove it; ‘{}’ may have: {}", what_,
                                       join_list({asked_.begin(), asked_.end()})));
      }
    }
  }
  MapReader(const MapReader&) = delete;
  MapReader& operator=(const MapReader&) = delete;

  const YamlNode* get(std::string_view key) {
    asked_.insert(std::string(key));
    for (const auto& [name, value] : map_.entries) {
      if (name.text == key) return &value;
    }
    diagnostics_.error("missing-key", map_.span, fmt::format("‘{}’ lacks the key ‘{}’", what_, key),
                       fmt::format("add `{}:`", key));
    return nullptr;
  }
  /// Two names of colours, the second of which may be missing: `line`, `hair tint`. `none` is no
  /// colour.
  std::pair<std::optional<Use>, std::optional<Use>> uses(std::string_view key) {
    std::pair<std::optional<Use>, std::optional<Use>> out;
    const YamlNode* node = get(key);
    if (node == nullptr) return out;
    const std::string_view text = trim(node->text);
    const std::size_t space = std::min(text.find(' '), text.size());
    const auto one = [&](std::string_view name) -> std::optional<Use> {
      const auto found = std::find(kUseNames.begin(), kUseNames.end(), name);
      if (found != kUseNames.end()) return static_cast<Use>(found - kUseNames.begin());
      if (name != "none" && !name.empty())
        fail(node->span, fmt::format("‘{}’ is no colour of the theme", name));
      return std::nullopt;
    };
    out.first = one(text.substr(0, space));
    out.second = one(trim(text.substr(space)));
    return out;
  }
  bool has(std::string_view key) {
    asked_.insert(std::string(key));
    return std::any_of(map_.entries.begin(), map_.entries.end(),
                       [&](const auto& entry) { return entry.first.text == key; });
  }
  std::string word(std::string_view key) {
    const YamlNode* node = get(key);
    if (node == nullptr) return {};
    if (!node->is_scalar()) fail(node->span, fmt::format("‘{}’ must be a word", key));
    return node->text;
  }
  double number(std::string_view key, std::string_view unit) {
    return number_of(get(key), key, unit);
  }
  double number_of(const YamlNode* node, std::string_view key, std::string_view unit) {
    if (node == nullptr) return 0;
    std::string_view text = trim(node->text);
    if (!unit.empty() && text.ends_with(unit)) {
      text = trim(text.substr(0, text.size() - unit.size()));
    } else if (!unit.empty()) {
      fail(node->span,
           fmt::format("‘{}’ must be a number of {}, such as `12 {}`", key, unit, unit));
      return 0;
    }
    char* end = nullptr;
    const std::string copy(text);
    const double value = std::strtod(copy.c_str(), &end);
    if (copy.empty() || *end != '\0' || !(value >= 0 && value <= 1000)) {
      fail(node->span, fmt::format("‘{}’ is not a number from 0 to 1000", node->text));
      return 0;
    }
    return value;
  }
  Length points(std::string_view key) { return Length::pt(number(key, "pt")); }
  Length millimetres(std::string_view key) { return Length::mm(number(key, "mm")); }
  void fail(Span span, std::string message) {
    diagnostics_.error(kBadValue, span, std::move(message));
  }
  Diagnostics& diagnostics() { return diagnostics_; }

 private:
  const YamlNode& map_;
  std::string what_;
  Diagnostics& diagnostics_;
  std::set<std::string> asked_;
};

/// `12.5/15 bold soft`: size and leading in points, then weight, slant and colour in any order.
TextLook read_text(MapReader& reader, std::string_view key) {
  TextLook look;
  const YamlNode* node = reader.get(key);
  if (node == nullptr) return look;
  std::vector<std::string> words;
  for (std::string_view rest = node->text; !trim(rest).empty();) {
    rest = trim(rest);
    const std::size_t end = std::min(rest.find(' '), rest.size());
    words.emplace_back(rest.substr(0, end));
    rest.remove_prefix(end);
  }
  const std::size_t slash = words.empty() ? std::string::npos : words[0].find('/');
  if (slash == std::string::npos) {
    reader.fail(node->span,
                fmt::format("‘{}’ must begin with size and leading, such as `12/15`", key));
    return look;
  }
  YamlNode size;
  size.span = node->span;
  size.text = words[0].substr(0, slash);
  YamlNode leading = size;
  leading.text = words[0].substr(slash + 1);
  look.size = Length::pt(reader.number_of(&size, key, ""));
  look.leading = Length::pt(reader.number_of(&leading, key, ""));
  if (look.leading < look.size)
    reader.fail(node->span, fmt::format("‘{}’ has lines closer than its type is high", key));
  for (std::size_t i = 1; i < words.size(); ++i) {
    const auto use = std::find(kUseNames.begin(), kUseNames.end(), words[i]);
    if (words[i] == "bold") {
      look.weight = type::Weight::kBold;
    } else if (words[i] == "italic") {
      look.slant = type::Slant::kItalic;
    } else if (use != kUseNames.end()) {
      look.colour = static_cast<Use>(use - kUseNames.begin());
    } else {
      reader.fail(node->span,
                  fmt::format("‘{}’ is neither bold, italic nor a colour of the theme", words[i]));
    }
  }
  return look;
}

// A4 and A5 must be there; each other paper that is not takes after its kin, which comes before it.
template <class Map, class Read>
void for_papers(MapReader& papers, Map& out, Read read) {
  for (const Paper paper : kPapers) {
    const bool own = papers.has(paper_key(paper)) || kin(paper) == paper;
    out[paper] = own ? read(paper_key(paper)) : out.at(kin(paper));
  }
}

Look read_look(MapReader& theme, std::string_view key) {
  Look look;
  const YamlNode* node = theme.get(key);
  if (node == nullptr) return look;
  MapReader reader(*node, std::string(key), theme.diagnostics());
  look.font = reader.word("font");
  look.minimum = reader.points("minimum");
  // Nobody reads less in a hall (common practice, no source).
  if (look.minimum < Length::pt(6)) reader.fail(node->span, "‘minimum’ must be 6 pt or more");
  if (const YamlNode* margin = reader.get("margin")) {
    MapReader papers(*margin, "margin", theme.diagnostics());
    for_papers(papers, look.margin, [&](auto name) { return papers.millimetres(name); });
  }
  look.gap = reader.millimetres("gap");
  look.row_padding = reader.points("row-padding");
  look.part_space = reader.points("part-space");
  look.tick_box = reader.millimetres("tick-box");
  if (look.tick_box < Length::mm(2)) reader.fail(node->span, "‘tick-box’ must be 2 mm or more");
  look.figure = reader.millimetres("figure");
  look.radius = reader.points("radius");
  look.line_width = reader.points("line");
  look.hair_width = reader.points("hair");
  look.tick_radius = reader.points("tick-radius");
  const auto panel = reader.uses("panel");
  look.panel_line = panel.first.value_or(Use::kPaper);
  look.panel_fill = panel.second;
  look.part_fill = reader.uses("part-band").first;
  if (const YamlNode* scale = reader.get("scale")) {
    MapReader papers(*scale, "scale", theme.diagnostics());
    for_papers(papers, look.scale, [&](auto name) { return papers.number(name, ""); });
  }
  if (const YamlNode* text = reader.get("text")) {
    MapReader texts(*text, "text", theme.diagnostics());
    for (std::size_t i = 0; i < kTextRoles; ++i) {
      look.texts[i] = read_text(texts, kRoleNames[i]);
      if (look.texts[i].size < look.minimum) {
        texts.fail(text->span,
                   fmt::format("‘{}’ is smaller than the sheet's minimum size", kRoleNames[i]));
      }
    }
  }
  return look;
}

// A map of names to colours, in the order of the names.
template <class Names, class Colours>
void read_colours(MapReader& theme, std::string_view key, const Names& known, Colours& out) {
  const YamlNode* map = theme.get(key);
  if (map == nullptr) return;
  MapReader names(*map, std::string(key), theme.diagnostics());
  for (std::size_t i = 0; i < known.size(); ++i) {
    const YamlNode* node = names.get(known[i]);
    if (node == nullptr) continue;
    const auto colour = parse_colour(node->text);
    if (!colour) names.fail(node->span, "a colour is written '#1b2733', in quotes");
    out[i] = colour.value_or(kBlack);
  }
}

}  // namespace

std::string_view use_name(Use use) { return kUseNames[static_cast<std::size_t>(use)]; }
std::string_view ink_name(figure::Ink ink) { return kInkNames[static_cast<std::size_t>(ink)]; }

Look Look::scaled(double factor) const {
  Look out = *this;
  for (TextLook& text : out.texts) {
    const Length wanted = std::max(text.size.scaled(factor), minimum);
    // Leading keeps its proportion to the size that is really used.
    text.leading = text.leading.scaled(wanted.in_pt() / text.size.in_pt());
    text.size = wanted;
  }
  for (Length* length :
       {&out.row_padding, &out.part_space, &out.gap, &out.radius, &out.tick_radius}) {
    *length = length->scaled(factor);
  }
  out.tick_box = std::max(tick_box, tick_box.scaled(factor));
  out.figure = figure.scaled(factor);
  return out;
}

// Running text of all kinds is of one size; what is an eighth larger or more is a heading.
Look Look::compacted(Kind kind) const {
  const bool card = is_for_coaches(kind);
  const double headings = card ? 0.88 : 0.86;
  const Length running = card ? minimum.scaled(1.055) : minimum;
  const double leading_of_it = card ? 0.94 : 0.89;
  const double space = card ? 0.7 : 0.6;
  Look out = *this;
  for (std::size_t i = 0; i < out.texts.size(); ++i) {
    TextLook& text = out.texts[i];
    const auto role = static_cast<TextRole>(i);
    const double leading = text.leading.in_pt() / text.size.in_pt() * leading_of_it;
    // What the coach looks for at arm's length stays as it is, or nearly.
    const bool sought = card && (role == TextRole::kDrill || role == TextRole::kClock);
    const bool fine = role == TextRole::kFine || role == TextRole::kFoot ||
                      role == TextRole::kColumn || role == TextRole::kPartDetail;
    if (sought) {
      text.size = text.size.scaled(0.95);
    } else if (fine) {
      text.size = minimum;
    } else if (text.size * 8 > minimum * 10) {
      text.size = std::max(text.size.scaled(headings), minimum.scaled(1.08));
    } else {
      text.size = running;
    }
    text.leading = text.size.scaled(leading);
  }
  if (card) {  // as legible as the cue above it
    out.texts[static_cast<std::size_t>(TextRole::kVariation)].colour = Use::kInk;
  }
  out.row_padding = row_padding.scaled(space);
  out.part_space = part_space.scaled(space);
  out.gap = gap.scaled(0.8);
  out.figure = figure.scaled(card ? 0.8 : 0.64);
  if (!card) out.tick_box = tick_box.scaled(0.88);
  return out;
}

std::shared_ptr<const Theme> read_theme(const SourcePtr& source, const OtherTheme& other,
                                        Diagnostics& diagnostics) {
  Diagnostics found;
  auto theme = std::make_shared<Theme>();
  if (const auto root = read_with_likes(source, other, found)) {
    MapReader reader(*root, "theme", found);
    theme->name = reader.word("name");
    theme->about = reader.word("about");
    read_colours(reader, "colours", kUseNames, theme->colours);
    read_colours(reader, "figures", kInkNames, theme->inks);
    theme->inks.back() = theme->colour(Use::kPaper);
    theme->card = read_look(reader, "card");
    theme->home = read_look(reader, "home");
    if (!found.has_errors()) check_contrast(*theme, *root, found);
  }
  diagnostics.append(found);
  return found.has_errors() ? nullptr : theme;
}

}  // namespace chalkleaf::sheet
