// The keys below a drill, and lines that are one: attribute_of and its kin of plan/attributes.h.
// Tested by tests/plan/drill_test.cpp and attributes_test.cpp.
#include <algorithm>
#include <array>

#include "base/text.h"
#include "dose/parser.h"
#include "plan/attributes.h"
#include "plan/lines.h"
#include "plan/readers.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

struct OtherWord {
  std::string_view written;
  std::string_view meant;
};
// What coaches call these things elsewhere; common practice, no source.
constexpr std::array<OtherWord, 34> kOtherWords{
    {{"station", "at"},        {"where", "at"},
     {"place", "at"},          {"apparatus", "at"},
     {"location", "at"},       {"on", "at"},
     {"kit", "uses"},          {"equipment", "uses"},
     {"needs", "uses"},        {"need", "uses"},
     {"use", "uses"},          {"using", "uses"},
     {"tip", "cue"},           {"tips", "cue"},
     {"point", "cue"},         {"points", "cue"},
     {"focus", "cue"},         {"coaching", "cue"},
     {"regression", "easier"}, {"regress", "easier"},
     {"simpler", "easier"},    {"progression", "harder"},
     {"progress", "harder"},   {"measure", "record"},
     {"score", "record"},      {"recording", "record"},
     {"result", "record"},     {"instead", "without"},
     {"remark", "note"},       {"comment", "note"},
     {"pose", "figure"},       {"drawing", "figure"},
     {"teacher", "coach"},     {"home", "family"}}};

// A key is one word; anything longer before a colon is a sentence of the coach's.
bool is_word(std::string_view text) {
  constexpr std::size_t kLongestKey = 24;
  return !text.empty() && text.size() <= kLongestKey &&
         std::all_of(text.begin(), text.end(), [](char c) { return is_letter(c) || c == '-'; });
}

// `Coach stands by the beam`, `at the end of the beam`, `record the best of three` are notes.
bool begins_sentences(std::string_view key) {
  return key == "figure" || key == "coach" || key == "family" || key == "record" || key == "at";
}

// A line that cannot be a line's end: `slow and`, `eyes up,`.
bool goes_on(std::string_view above) {
  above = trim(above);
  if (above.ends_with(',') || above.ends_with('-') || above.ends_with('(')) return true;
  const std::string last = lower_ascii(above.substr(above.find_last_of(" \n") + 1));
  static constexpr std::array<std::string_view, 14> kWords{"and",  "or",  "but",  "the",  "a",
                                                           "is",   "are", "be",   "make", "it",
                                                           "this", "get", "much", "then"};
  return std::find(kWords.begin(), kWords.end(), last) != kWords.end();
}

}  // namespace

std::optional<Attribute> attribute_of(const source::Text& text) {
  const std::string& all = text.str();
  if (const auto label = reader_label(all)) {
    Attribute out;
    out.key = label->reader == Note::For::kCoach ? "coach" : "family";
    out.written = plain_words_of(text.slice(0, label->mark).trimmed());
    out.value = text.slice(label->words, all.size()).trimmed();
    return out;
  }
  const std::size_t colon = all.find(':');
  if (colon == std::string::npos || all.compare(colon, 3, "://") == 0) return std::nullopt;
  const source::Text head = text.slice(0, colon).trimmed();
  Attribute out;
  out.written = plain_words_of(head);
  out.value = text.slice(colon + 1, all.size()).trimmed();
  if (starts_with_ignoring_case(head.str(), "without ")) {
    out.key = "without";
    out.kit = plain_words_of(head.slice(8, head.str().size()));
    return out;
  }
  if (!is_word(head.str())) return std::nullopt;
  out.key = lower_ascii(head.str());
  return out;
}

std::optional<Attribute> attribute_without_colon(const source::Text& text) {
  const source::Text line = text.trimmed();
  const std::string& all = line.str();
  std::size_t end = 0;
  const std::size_t long_dash = std::min(all.find("–"), all.find("—"));  // `easier—on the knees`
  while (end < std::min(long_dash, all.size()) && is_letter(all[end])) ++end;
  Attribute out;
  out.key = lower_ascii(all.substr(0, end));
  const auto ends = [&](char c) { return end < all.size() && all[end] == c; };
  const bool parted = end == all.size() || end == long_dash || ends(' ') || ends('-') ||
                      ends('=') || ends(';') ||
                      (ends('.') && end + 1 < all.size() && all[end + 1] == ' ');
  if (!is_known(out) || !parted) return std::nullopt;
  out.written = plain_words_of(line.slice(0, end));
  std::size_t begin = end;  // `cue - push tall`, `cue – push tall`
  while (begin < all.size()) {
    const std::string_view rest = std::string_view(all).substr(begin);
    const std::size_t size = rest.starts_with("–") || rest.starts_with("—") ? 3 : 1;
    if (size == 1 && std::string_view(" -=;.").find(rest[0]) == std::string_view::npos) break;
    begin += size;
  }
  out.value = line.slice(begin, all.size());
  if (!begins_sentences(out.key)) return out;
  const std::string_view between = std::string_view(all).substr(end, begin - end);
  const bool dash = between.starts_with(' ') && !trim(between).empty();  // not `at-home`
  const bool two_words =
      out.key == "record" && !out.value.empty() && out.value.str().find(' ') == std::string::npos;
  if (dash || two_words) return out;
  return std::nullopt;
}

bool is_known(const Attribute& attribute) {
  const std::vector<std::string>& known = drill_keys();
  return std::find(known.begin(), known.end(), attribute.key) != known.end();
}

const std::vector<std::string>& drill_keys() {
  static const std::vector<std::string> known{"cue",     "easier", "harder", "uses",
                                              "without", "note",   "coach",  "family",
                                              "record",  "at",     "figure"};
  return known;
}

std::optional<std::string> key_meant(std::string_view key) {
  constexpr std::size_t kShortestSlip = 4;  // anything shorter is close to `at`
  for (const OtherWord& other : kOtherWords) {
    if (other.written == key) return std::string(other.meant);
  }
  return key.size() < kShortestSlip ? std::nullopt : closest(key, drill_keys());
}

bool speaks_of_dose(std::string_view key) {
  static constexpr std::array<std::string_view, 10> kDoseWords{
      "dose", "sets", "set", "reps", "rep", "rest", "time", "tempo", "hold", "pace"};
  return std::find(kDoseWords.begin(), kDoseWords.end(), key) != kDoseWords.end();
}

std::optional<Attribute> attribute_without_dash(const source::Text& line, std::string_view above) {
  if (auto out = attribute_of(line)) {
    if (is_known(*out)) return out;
    const bool slip = key_meant(out->key).has_value() && !out->value.empty();
    return slip && !parse_dose(out->value) ? out : std::nullopt;
  }
  // `easier knees bent`, but not `20 s, / easier than last week`.
  if (goes_on(above)) return std::nullopt;
  auto out = attribute_without_colon(line);
  if (!out || out->value.empty()) return std::nullopt;
  const bool sure = out->key == "cue" || out->key == "easier" || out->key == "harder" ||
                    line.str().substr(0, out->value.span().begin - line.span().begin).size() >
                        out->written.text.size() + 1;
  return sure ? out : std::nullopt;
}

ParagraphLines lines_of(const source::Text& text) {
  const std::string& all = text.str();
  const auto is_break = [&](std::size_t i) { return is_line_break(text, i); };
  // A line that begins with a known key begins a new piece; the first piece is the line itself.
  std::vector<std::size_t> starts{0};
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!is_break(i)) continue;
    std::size_t stop = i + 1;
    while (stop < all.size() && !is_break(stop)) ++stop;
    const source::Text line = text.slice(i + 1, stop).trimmed();
    const std::string_view above = std::string_view(all).substr(starts.back(), i - starts.back());
    if (attribute_without_dash(line, above)) starts.push_back(i + 1);
    i = stop - 1;
  }
  starts.push_back(all.size());
  ParagraphLines out;
  out.first = text.slice(0, starts[1]);
  for (std::size_t i = 1; i + 1 < starts.size(); ++i) {
    out.forgotten.push_back(text.slice(starts[i], starts[i + 1]));
  }
  return out;
}

}  // namespace chalkleaf::plan
