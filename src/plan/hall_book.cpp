#include "plan/hall_book.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>

#include "plan/values.h"
#include "source/read.h"

namespace chalkleaf::plan {
namespace {

using source::YamlNode;

class HallReader {
 public:
  explicit HallReader(Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

  void read(const YamlNode& root, HallBook& book) {
    for (const auto& [key, value] : root.entries) {
      if (key.text == "places") {
        for (const auto& [name, entry] : value.entries) book.places.push_back(place(name, entry));
      } else if (key.text == "activities") {
        for (const auto& [name, entry] : value.entries)
          book.activities.push_back(activity(name, entry));
      } else if (key.text == "spotted") {
        book.spotted = phrases(value);
      } else if (key.text == "several") {
        book.several = phrases(value);
      } else if (key.text == "one-go") {
        book.one_go = phrases(value);
      } else if (key.text == "young") {
        book.young = phrases(value);
      } else if (key.text == "years") {
        book.years = phrases(value);
      } else if (key.text == "groups") {
        book.groups = phrases(value);
      } else if (key.text == "rotating") {
        book.rotating = phrases(value);
      } else if (key.text == "levels") {
        book.levels = phrases(value);
      } else if (key.text == "paces") {
        for (const auto& [name, entry] : value.entries)
          book.paces.emplace_back(split(name.text), duration(entry));
      } else if (key.text == "times") {
        for (const auto& [name, entry] : value.entries)
          book.times.emplace_back(name.text, duration(entry));
      } else if (key.text == "factors") {
        for (const auto& [name, entry] : value.entries)
          book.factors.emplace_back(name.text, factor(entry));
      } else if (key.text != "language") {
        stranger(key);
      }
    }
  }

 private:
  void stranger(const YamlNode& key) {
    diagnostics_.error("unknown-key", key.span, fmt::format("‘{}’ means nothing here", key.text),
                       "remove it, or see the head of the file for the keys there are");
  }
  void bad(const YamlNode& node, std::string_view what) {
    diagnostics_.error(kBadValue, node.span, fmt::format("‘{}’ is no {}", node.text, what),
                       fmt::format("write a {}", what));
  }
  Duration duration(const YamlNode& node) {
    const auto time = parse_duration(node.text, Zero::kAllowed);
    if (!time) bad(node, "length of time");
    return time ? *time : Duration();
  }
  // Two digits behind the point at most: what is not known better needs no more.
  double factor(const YamlNode& node) {
    const std::string& text = node.text;
    const std::size_t point = std::min(text.find('.'), text.size());
    int whole = 0;
    int behind = 0;
    const std::string digits = point < text.size() ? text.substr(point + 1) : "";
    const bool good = number(text.substr(0, point), whole) &&
                      (digits.empty() || (digits.size() <= 2 && number(digits, behind)));
    if (!good) bad(node, "number with at most two digits behind its point");
    return whole + behind / (digits.size() == 1 ? 10.0 : 100.0);
  }
  static bool number(const std::string& text, int& out) {
    const auto read = std::from_chars(text.data(), text.data() + text.size(), out);
    return !text.empty() && read.ec == std::errc() && read.ptr == text.data() + text.size();
  }
  int count(const YamlNode& node) {
    int out = 0;
    if (number(node.text, out) && out > 0) return out;
    bad(node, "whole number above 0");
    return 1;
  }
  static std::vector<std::string> split(std::string_view text) {
    std::vector<std::string> out(1);
    for (const char c : text) {
      if (c != ' ') {
        out.back() += c;
      } else if (!out.back().empty()) {
        out.emplace_back();
      }
    }
    return out;
  }
  static Phrases phrases(const YamlNode& node) {
    Phrases out;
    for (const YamlNode& item : node.items) out.push_back(split(item.text));
    return out;
  }
  std::vector<DrillKind> kinds(const YamlNode& node) {
    std::vector<DrillKind> out;
    for (const YamlNode& item : node.items) {
      const auto kind = kind_of_name(item.text);
      if (!kind) bad(item, "kind of drill");
      if (kind) out.push_back(*kind);
    }
    return out;
  }

  HallPlace place(const YamlNode& name, const YamlNode& entry) {
    HallPlace out;
    out.name = name.text;
    for (const auto& [key, value] : entry.entries) {
      if (key.text == "words") {
        out.words = phrases(value);
      } else if (key.text == "counted") {
        out.counted = phrases(value);
      } else if (key.text == "only") {
        out.only = kinds(value);
      } else if (key.text == "goes") {
        out.goes = value.text == "each" ? HallPlace::Goes::kEach : HallPlace::Goes::kTogether;
      } else if (key.text == "lanes") {
        out.lanes = count(value);
      } else if (key.text == "lane") {
        out.lane = count(value);
      } else if (key.text == "blocked") {
        out.blocked = duration(value);
      } else if (key.text == "length") {
        out.length = duration(value);
      } else if (key.text == "cycle") {
        out.cycle = duration(value);
      } else if (key.text == "source") {
        out.source = value.text;
      } else {
        stranger(key);
      }
    }
    whole(name, !out.words.empty() && out.blocked > Duration() && !out.source.empty(),
          "words, blocked and source");
    return out;
  }

  HallActivity activity(const YamlNode& name, const YamlNode& entry) {
    HallActivity out;
    out.name = name.text;
    for (const auto& [key, value] : entry.entries) {
      if (key.text == "words") {
        out.words = phrases(value);
      } else if (key.text == "kinds") {
        out.kinds = kinds(value);
      } else if (key.text == "places") {
        out.places = value.text == "of line" ? HallActivity::Places::kOfLine
                     : value.text == "none"  ? HallActivity::Places::kNone
                                             : HallActivity::Places::kOfPart;
      } else if (key.text == "begin") {
        out.begin = duration(value);
      } else if (key.text == "rep") {
        out.rep = duration(value);
      } else if (key.text == "change") {
        out.change = duration(value);
      } else if (key.text == "lasts") {
        out.lasts = duration(value);
      } else if (key.text == "alone") {
        out.alone = duration(value);
      } else if (key.text == "source") {
        out.source = value.text;
      } else {
        stranger(key);
      }
    }
    if (out.alone == Duration()) out.alone = out.lasts;
    whole(name, out.lasts > Duration() && !out.source.empty(), "lasts and source");
    return out;
  }

  void whole(const YamlNode& name, bool is_whole, std::string_view keys) {
    if (is_whole) return;
    diagnostics_.error("missing-key", name.span, fmt::format("‘{}’ is not whole", name.text),
                       fmt::format("give it {}", keys));
  }

  Diagnostics& diagnostics_;
};

template <class T>
const T* of_name(const std::vector<std::pair<std::string, T>>& list, std::string_view name) {
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const auto& one) { return one.first == name; });
  return found == list.end() ? nullptr : &found->second;
}

}  // namespace

Duration HallBook::time(std::string_view name) const {
  const Duration* found = of_name(times, name);
  return found == nullptr ? Duration() : *found;
}

double HallBook::factor(std::string_view name) const {
  const double* found = of_name(factors, name);
  return found == nullptr ? 1.0 : *found;
}

const HallActivity* HallBook::activity(std::string_view name) const {
  const auto found = std::find_if(activities.begin(), activities.end(),
                                  [&](const HallActivity& one) { return one.name == name; });
  return found == activities.end() ? nullptr : &*found;
}

std::shared_ptr<const HallBook> read_hall_book(const SourcePtr& source, Diagnostics& diagnostics) {
  Diagnostics found;
  auto book = std::make_shared<HallBook>();
  book->source = source;
  if (const auto root = source::read_yaml(source, found)) HallReader(found).read(*root, *book);
  diagnostics.append(found);
  return found.has_errors() ? nullptr : book;
}

}  // namespace chalkleaf::plan
