#include "plan/danger_book.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "source/read.h"

namespace chalkleaf::plan {
namespace {

using source::YamlNode;

Words words_of_node(const YamlNode& node) { return {node.text, node.span}; }

class DangerReader {
 public:
  explicit DangerReader(Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

  void read(const YamlNode& root, DangerBook& book) {
    for (const auto& [key, value] : root.entries) {
      if (key.text == "numbers") {
        pairs(value, book.numbers);
      } else if (key.text == "units") {
        pairs(value, book.units);
      } else if (key.text == "contractions") {
        pairs(value, book.contractions);
      } else if (key.text == "fillers") {
        book.fillers = split(value);
      } else if (key.text == "negators") {
        book.negators = split(value);
      } else if (key.text == "joiners") {
        book.joiners = split(value);
      } else if (key.text == "turn-back") {
        book.turn_back = split(value);
      } else if (key.text == "not-negating") {
        book.not_negating = list(value);
      } else if (key.text == "forbids") {
        book.forbids = list(value);
      } else if (key.text == "concepts") {
        for (const auto& [name, phrases] : value.entries)
          book.concepts.emplace_back(name.text, words_of_node(phrases));
      } else if (key.text == "sayings") {
        for (const auto& [name, patterns] : value.entries)
          book.sayings.emplace_back(name.text, list(patterns));
      } else if (key.text == "dangers") {
        for (const auto& [name, entry] : value.entries) book.dangers.push_back(danger(name, entry));
      } else if (key.text != "language") {
        stranger(key);
      }
    }
  }

 private:
  // The commas stand between words or phrases.
  static std::vector<Words> split(const YamlNode& node) {
    std::vector<Words> out;
    std::size_t begin = 0;
    while (begin <= node.text.size()) {
      const std::size_t end = std::min(node.text.find(',', begin), node.text.size());
      out.push_back({node.text.substr(begin, end - begin), node.span});
      begin = end + 1;
    }
    return out;
  }
  static std::vector<Words> list(const YamlNode& node) {
    std::vector<Words> out;
    if (node.is_scalar()) out.push_back(words_of_node(node));
    for (const YamlNode& item : node.items) out.push_back(words_of_node(item));
    return out;
  }
  static void pairs(const YamlNode& map, std::vector<std::pair<std::string, std::string>>& out) {
    for (const auto& [key, value] : map.entries) out.emplace_back(key.text, value.text);
  }
  void stranger(const YamlNode& key) {
    diagnostics_.error("unknown-key", key.span, fmt::format("no list is called ‘{}’", key.text),
                       "remove it");
  }

  Danger danger(const YamlNode& name, const YamlNode& entry) {
    Danger out;
    out.name = words_of_node(name);
    for (const auto& [key, value] : entry.entries) {
      if (key.text == "check") {
        out.check = words_of_node(value);
      } else if (key.text == "at") {
        out.at = value.text == "home"  ? Danger::At::kHome
                 : value.text == "gym" ? Danger::At::kGym
                                       : Danger::At::kAnywhere;
      } else if (key.text == "when") {
        out.when = value.text == "cold" ? Danger::When::kCold : Danger::When::kAlways;
      } else if (key.text == "in") {
        out.in = value.text == "drills" ? Danger::In::kDrills : Danger::In::kEverywhere;
      } else if (key.text == "below") {
        std::from_chars(value.text.data(), value.text.data() + value.text.size(), out.below);
      } else if (key.text == "says") {
        out.says = list(value);
      } else if (key.text == "unless") {
        out.unless = list(value);
      } else if (key.text == "answered") {
        out.answered = list(value);
      } else if (key.text == "what") {
        out.what = value.text;
      } else if (key.text == "instead") {
        out.instead = value.text;
      } else if (key.text == "source") {
        out.source = value.text;
      } else {
        stranger(key);
      }
    }
    const bool whole = !out.check.empty() && !out.says.empty() && !out.what.empty() &&
                       !out.instead.empty() && !out.source.empty();
    if (!whole) {
      diagnostics_.error("missing-key", name.span,
                         fmt::format("the danger ‘{}’ is not whole", name.text),
                         "give it check, says, what, instead and source");
    }
    return out;
  }

  Diagnostics& diagnostics_;
};

}  // namespace

std::shared_ptr<const DangerBook> read_danger_book(const SourcePtr& source,
                                                   Diagnostics& diagnostics) {
  Diagnostics found;
  auto book = std::make_shared<DangerBook>();
  book->source = source;
  if (const auto root = source::read_yaml(source, found)) DangerReader(found).read(*root, *book);
  diagnostics.append(found);
  return found.has_errors() ? nullptr : book;
}

}  // namespace chalkleaf::plan
