#include "sheet/labels.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "sheet/phrases.h"
#include "source/read.h"

namespace chalkleaf::sheet {
namespace {

using source::YamlNode;

const YamlNode* find(const YamlNode& map, std::string_view key) {
  for (const auto& [name, value] : map.entries) {
    if (name.text == key) return &value;
  }
  return nullptr;
}

/// The places `{name}` of a phrase that are not among `allowed` (words with spaces between).
std::vector<std::string> foreign_places(std::string_view phrase, std::string_view allowed) {
  std::vector<std::string> out;
  const std::string padded = fmt::format(" {} ", allowed);
  for (std::size_t at = phrase.find('{'); at != std::string_view::npos;
       at = phrase.find('{', at + 1)) {
    const std::size_t end = phrase.find('}', at);
    const std::string name(
        phrase.substr(at + 1, end == std::string_view::npos ? end : end - at - 1));
    if (padded.find(fmt::format(" {} ", name)) == std::string::npos) out.push_back(name);
  }
  return out;
}

void check_places(const YamlNode& node, const PhraseForm& phrase, Diagnostics& diagnostics) {
  for (const std::string& place : foreign_places(node.text, phrase.places)) {
    diagnostics.error(kBadValue, node.span, fmt::format("‘{{{}}}’ cannot be filled here", place),
                      phrase.places.empty()
                          ? "this phrase has no places to fill"
                          : fmt::format("the places of this phrase are: {}", phrase.places));
  }
}

template <std::size_t N>
void read_names(const YamlNode& root, std::string_view key, std::array<std::string, N>& out,
                Diagnostics& diagnostics) {
  const YamlNode* node = find(root, key);
  if (node == nullptr || node->items.size() != N) {
    diagnostics.error(kBadValue, node == nullptr ? root.span : node->span,
                      fmt::format("‘{}’ must be a list of {} names", key, N));
    return;
  }
  for (std::size_t i = 0; i < N; ++i) out[i] = node->items[i].text;
}

}  // namespace

std::string Labels::say(std::string_view key, Places places) const {
  const auto found = phrases_.find(key);
  std::string out = found == phrases_.end() ? std::string(key) : found->second;
  for (const auto& [name, value] : places)
    out = replace_all(out, fmt::format("{{{}}}", name), value);
  return out;
}

std::string Labels::count(std::string_view key, std::int64_t n) const {
  return say(fmt::format("{}.{}", key, n == 1 ? "one" : "other"), {{"n", std::to_string(n)}});
}

std::string Labels::short_date(Date date) const {
  const std::string& month = months_[static_cast<std::size_t>(date.month - 1)];
  return fmt::format("{} {} {}", date.day, month, date.year);
}

std::string Labels::date(Date day) const {
  return fmt::format("{} {}", short_weekdays_[static_cast<std::size_t>(chalkleaf::weekday(day))],
                     short_date(day));
}

std::string Labels::short_time(Duration time) const {
  const std::int64_t ms = time.in_milliseconds();
  const std::string seconds =
      ms % 1000 == 0 ? std::to_string(ms / 1000 % 60)
                     : exact_text(Duration::milliseconds(ms % 60'000))
                           .substr(0, exact_text(Duration::milliseconds(ms % 60'000)).find(' '));
  if (ms < 60'000) return say("seconds", {{"n", seconds}});
  const std::string minutes = std::to_string(ms / 60'000);
  if (ms % 60'000 == 0) return say("minutes", {{"n", minutes}});
  return say("minutes-seconds", {{"m", minutes}, {"n", seconds}});
}

std::string Labels::long_time(Duration time) const {
  const std::int64_t seconds = time.rounded_seconds();
  std::string out;
  if (seconds >= 60) out = count("minute-words", seconds / 60);
  if (seconds % 60 != 0 || seconds == 0) {
    if (!out.empty()) out += ' ';
    out += count("second-words", seconds % 60);
  }
  return out;
}

bool Labels::names_stillness(std::string_view drill_name) const {
  const std::string name = lower_ascii(drill_name);
  const auto is_letter = [&](std::size_t i) {
    return i < name.size() &&
           ((name[i] >= 'a' && name[i] <= 'z') || static_cast<unsigned char>(name[i]) >= 0x80);
  };
  return std::any_of(still_words_.begin(), still_words_.end(), [&](const std::string& word) {
    for (std::size_t at = name.find(word); at != std::string::npos; at = name.find(word, at + 1)) {
      if ((at == 0 || !is_letter(at - 1)) && !is_letter(at + word.size())) return true;
    }
    return false;
  });
}

std::shared_ptr<const Labels> read_labels(const SourcePtr& source, Diagnostics& diagnostics) {
  Diagnostics found;
  auto labels = std::make_shared<Labels>();
  const auto root = source::read_yaml(source, found);
  const YamlNode* phrases = root ? find(*root, "phrases") : nullptr;
  if (phrases == nullptr) {
    found.error("missing-key", Span{source.get(), 0, 0}, "the label file lacks ‘phrases’",
                "add `phrases:`");
    diagnostics.append(found);
    return nullptr;
  }
  if (const YamlNode* language = find(*root, "language")) labels->language_ = language->text;
  if (labels->language_.empty()) {
    found.error("missing-key", root->span, "the label file lacks ‘language’", "add `language: en`");
  }
  read_names(*root, "weekdays", labels->weekdays_, found);
  read_names(*root, "short-weekdays", labels->short_weekdays_, found);
  read_names(*root, "months", labels->months_, found);
  if (const YamlNode* words = find(*root, "still-words")) {
    for (const YamlNode& word : words->items)
      labels->still_words_.push_back(lower_ascii(word.text));
  }
  for (const PhraseForm& phrase : all_phrases()) {
    const YamlNode* node = find(*phrases, phrase.key);
    if (node == nullptr) {
      found.error("missing-key", phrases->span,
                  fmt::format("the phrase ‘{}’ is missing", phrase.key),
                  fmt::format("add `{}:`", phrase.key));
      continue;
    }
    if (phrase.counted) {
      for (const std::string_view form : {"one", "other"}) {
        const YamlNode* entry = find(*node, form);
        if (entry == nullptr) {
          found.error("missing-key", node->span,
                      fmt::format("‘{}’ lacks its form ‘{}’", phrase.key, form),
                      "a counted phrase is written `{one: …, other: …}`");
          continue;
        }
        check_places(*entry, phrase, found);
        labels->phrases_[fmt::format("{}.{}", phrase.key, form)] = entry->text;
      }
    } else {
      check_places(*node, phrase, found);
      labels->phrases_[std::string(phrase.key)] = node->text;
    }
  }
  for (const auto& entry : phrases->entries) {
    const source::YamlNode& key = entry.first;
    const auto& all = all_phrases();
    const bool known =
        std::any_of(all.begin(), all.end(), [&](const PhraseForm& p) { return p.key == key.text; });
    if (!known) {
      found.error("unknown-key", key.span, fmt::format("no sheet says ‘{}’", key.text),
                  "remove it");
    }
  }
  diagnostics.append(found);
  return found.has_errors() ? nullptr : labels;
}

}  // namespace chalkleaf::sheet
