// A YAML map read with a list of keys that mean something.
//
// Keys it does not know and keys written twice are errors, so that nothing a coach writes is
// ignored. What the source room has already reported as unreadable is passed over in silence.
// Tested by tests/plan/front_matter_test.cpp.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "plan/known_keys.h"
#include "plan/model.h"
#include "plan/values.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// What a key says for the coach card and for the home sheet.
template <class Value>
struct EachSheet {
  Value card;
  Value sheet;
};

class Keys {
 public:
  /// The known key that another word stands for; empty when it stands for none.
  using OtherNames = std::function<std::string(std::string_view)>;
  /// Reports unknown and duplicate keys of `map`. `where` names it in messages: "the front matter".
  /// With `others` an entry is found by the key its own is a slip or another word for. Neither
  /// `map` nor `diagnostics` is owned; both must outlive this.
  Keys(const source::YamlNode& map, std::string where, std::vector<std::string> known,
       Diagnostics& diagnostics, const OtherNames& others = {});

  /// The value of a key, the first when it is written twice; nothing when it is not there.
  const source::YamlNode* find(std::string_view key) const;
  bool has(std::string_view key) const { return find(key) != nullptr; }

  /// Text behind a key; empty words when it is not there or not text (reported).
  Words text(std::string_view key) const;
  /// A value behind a key, read by `parse`; nothing when it is not there or wrong (reported).
  template <class Parse>
  auto value(std::string_view key, Parse parse) const -> std::optional<
      Sourced<typename std::invoke_result_t<Parse, std::string_view>::value_type>> {
    const Words words = text(key);
    if (!words.span || words.empty()) return std::nullopt;
    return read(words, parse);
  }
  /// A value for both sheets, or one for each: `{card: 1 page, sheet: 2 sheets}`.
  template <class Parse>
  auto each_sheet(std::string_view key, Parse parse) const {
    const source::YamlNode* node = find(key);
    if (node == nullptr || node->kind != source::YamlNode::Kind::kMap) {
      auto both = value(key, parse);
      return EachSheet<decltype(both)>{both, both};
    }
    const Keys each(*node, std::string(key), known_keys(KeyMap::kEachSheet), diagnostics_);
    return EachSheet<decltype(value(key, parse))>{each.value("card", parse),
                                                  each.value("sheet", parse)};
  }
  /// How many people a key says, from 1 to `most`. Names of children do not belong into these
  /// files, and whoever writes some is told so.
  std::optional<Sourced<int>> people(std::string_view key, int most) const;
  /// The same for words at hand.
  template <class Parse>
  auto read(const Words& words, Parse parse) const -> std::optional<
      Sourced<typename std::invoke_result_t<Parse, std::string_view>::value_type>> {
    auto parsed = parse(words.text);
    if (!parsed) {
      report(words.span, parsed.error());
      return std::nullopt;
    }
    return {{std::move(*parsed), words.span}};
  }

 private:
  void report(const Span& span, const ValueProblem& problem) const;
  std::string key_meant(const source::YamlEntry& entry, const std::vector<std::string>& known,
                        const OtherNames& others) const;

  const source::YamlNode& map_;
  /// Entries by the key they were meant to have.
  std::vector<std::pair<std::string, const source::YamlNode*>> meant_ = {};
  Diagnostics& diagnostics_;
};

/// True of a key that looks like a place for children's names.
bool is_about_children(std::string_view key);
/// Reports every key of `map` that is written twice, ignoring ASCII case.
void report_duplicates(const source::YamlNode& map, Diagnostics& diagnostics);
/// The words of a scalar; empty, and reported as `bad-value` for `what`, when it is none.
Words scalar_words(const source::YamlNode& node, std::string_view what, Diagnostics& diagnostics);
/// The pieces of `a, b, c`, or the items of a list: each with its place.
std::vector<Words> list_words(const source::YamlNode& node, std::string_view what,
                              Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
