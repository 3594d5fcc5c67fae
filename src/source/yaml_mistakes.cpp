// See the header.
#include "source/yaml_mistakes.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "source/yaml_spans.h"

namespace chalkleaf::source {
namespace {

/// One line taken apart. Offsets are in the YAML text.
struct Line {
  std::size_t begin = 0;
  std::size_t end = 0;      ///< without line end and white space before it
  std::size_t content = 0;  ///< the first byte that is not white space
  std::string_view text;    ///< content to end
  bool empty() const { return text.empty() || text[0] == '#'; }
  std::size_t indent() const { return content - begin; }
};

std::vector<Line> lines_of(std::string_view yaml) {
  std::vector<Line> out;
  for (std::size_t at = 0; at < yaml.size();) {
    std::size_t stop = yaml.find('\n', at);
    if (stop == std::string_view::npos) stop = yaml.size();
    Line line{at, stop, at, {}};
    const auto is_blank = [&](std::size_t i) {
      return yaml[i] == ' ' || yaml[i] == '\t' || yaml[i] == '\r';
    };
    while (line.end > line.begin && is_blank(line.end - 1)) --line.end;
    while (line.content < line.end && is_blank(line.content)) ++line.content;
    line.text = yaml.substr(line.content, line.end - line.content);
    out.push_back(line);
    at = stop + 1;
  }
  return out;
}

std::size_t line_at(const std::vector<Line>& lines, std::size_t offset) {
  const auto after =
      std::upper_bound(lines.begin(), lines.end(), offset,
                       [](std::size_t o, const Line& line) { return o < line.begin; });
  return after == lines.begin() ? 0 : static_cast<std::size_t>(after - lines.begin()) - 1;
}

/// The key and value of `key: value`, with offsets; `value` may be empty.
struct Entry {
  Stretch key;
  std::size_t value = 0;  ///< where the value begins, or the line ends
};

std::optional<Entry> entry_of(std::string_view yaml, const Line& line) {
  std::size_t begin = line.content;
  while (begin + 1 < line.end && yaml[begin] == '-' && yaml[begin + 1] == ' ') {
    begin = std::min(yaml.find_first_not_of(' ', begin + 1), line.end);
  }
  std::size_t colon = begin;
  while (colon < line.end) {
    colon = yaml.find(':', colon);
    if (colon >= line.end) return std::nullopt;
    if (colon + 1 == line.end || yaml[colon + 1] == ' ' || yaml[colon + 1] == '\t') break;
    ++colon;
  }
  if (colon >= line.end) return std::nullopt;
  std::size_t value = colon + 1;
  while (value < line.end && (yaml[value] == ' ' || yaml[value] == '\t')) ++value;
  return Entry{{begin, colon}, value};
}

// Looks at the lines in order; finds the first slip.
class Linter {
 public:
  Linter(std::string_view yaml, const std::vector<Line>& lines) : yaml_(yaml), lines_(lines) {}

  std::optional<YamlMistake> first_slip(std::size_t from, std::size_t to) {
    std::size_t block_indent = std::string_view::npos;  // inside a `|` block: deeper lines are text
    for (std::size_t i = from; i <= to && i < lines_.size(); ++i) {
      const Line& line = lines_[i];
      if (line.empty()) continue;
      if (block_indent != std::string_view::npos && line.indent() > block_indent) continue;
      block_indent = std::string_view::npos;
      if (auto found = slip_in(i)) return found;
      if (const auto entry = entry_of(yaml_, line)) {
        const char first = entry->value < line.end ? yaml_[entry->value] : ' ';
        if (first == '|' || first == '>') block_indent = line.indent();
      }
      if (!line.empty()) above_ = i;
    }
    return std::nullopt;
  }

  /// The stretch to blank when line `i` is at fault: its value (or all of it) and the lines below
  /// that belong to it.
  Stretch leave_out(std::size_t i, std::size_t from) const {
    std::size_t last = i;
    for (std::size_t j = i + 1; j < lines_.size(); ++j) {
      if (lines_[j].empty()) continue;
      if (lines_[j].indent() <= lines_[i].indent()) break;
      last = j;
    }
    return {std::min(from, lines_[last].end), lines_[last].end};
  }

  YamlMistake mistake(std::size_t i, Stretch where, std::string message, std::string hint) const {
    const auto entry = entry_of(yaml_, lines_[i]);
    const bool in_value = entry && entry->value < lines_[i].end;
    return {where, std::move(message), std::move(hint),
            leave_out(i, in_value ? entry->value : lines_[i].begin)};
  }

 private:
  std::string_view piece(std::size_t begin, std::size_t end) const {
    return yaml_.substr(begin, end - begin);
  }

  std::optional<YamlMistake> slip_in(std::size_t i) const {
    const Line& line = lines_[i];
    const std::size_t tab = yaml_.substr(line.begin, line.indent()).find('\t');
    if (tab != std::string_view::npos) {
      const std::size_t at = line.begin + tab;
      YamlMistake out = mistake(i, {at, at + 1}, "this line is indented with a tab",
                                "YAML is indented with spaces: replace the tab with two spaces");
      out.leave_out = leave_out(i, line.begin);
      const std::string margin = replace_all(yaml_.substr(line.begin, line.indent()), "\t", "  ");
      out.cure = {{line.begin, line.content}, belongs_above() ? margin : std::string()};
      return out;
    }
    const auto entry = entry_of(yaml_, line);
    if (auto found = indent_slip(i, entry.has_value())) return found;
    if (!entry) return colon_slip(i);
    if (entry->value < line.end) return value_slip(i, *entry);
    return std::nullopt;
  }

  std::optional<YamlMistake> indent_slip(std::size_t i, bool is_entry) const {
    if (!above_ || !is_entry) return std::nullopt;
    const Line& line = lines_[i];
    const Line& above = lines_[*above_];
    const auto entry = entry_of(yaml_, above);
    if (!entry || line.indent() <= above.indent() || entry->value >= above.end) return std::nullopt;
    const char first = yaml_[entry->value];
    if (above.text[0] == '-' || first == '[' || first == '{' || first == '|' || first == '>') {
      return std::nullopt;
    }
    YamlMistake out = mistake(i, {line.content, line.end},
                              fmt::format("this line is indented as if it belonged to ‘{}’ above",
                                          piece(entry->key.begin, entry->key.end)),
                              "begin it in the same column as the line above");
    out.leave_out = leave_out(i, line.begin);
    out.cure = {{line.begin, line.content}, std::string(yaml_.substr(above.begin, above.indent()))};
    return out;
  }

  // The line above is a key with nothing behind it, so that an indented line is its value.
  bool belongs_above() const {
    if (!above_) return false;
    const Line& above = lines_[*above_];
    const auto entry = entry_of(yaml_, above);
    return above.indent() > 0 || !entry || entry->value >= above.end;
  }

  // A line without `: `.
  std::optional<YamlMistake> colon_slip(std::size_t i) const {
    const Line& line = lines_[i];
    const char first = line.text[0];
    if (first == '-' || first == ']' || first == '}' || first == '"' || first == '\'') {
      return std::nullopt;
    }
    const std::size_t colon = line.text.find(':');
    const bool word_before = colon != std::string_view::npos && colon > 0 &&
                             line.text.substr(0, colon).find(' ') == std::string_view::npos;
    if (word_before && !line.text.substr(colon).starts_with("://")) {
      const std::size_t at = line.content + colon;
      YamlMistake out = mistake(
          i, {line.content, line.end}, "there is no space after the colon",
          fmt::format("write `{}: {}`", line.text.substr(0, colon), line.text.substr(colon + 1)));
      out.leave_out = leave_out(i, at + 1);
      out.cure = {{at, at + 1}, ": "};
      return out;
    }
    if (line.indent() > 0) return std::nullopt;  // perhaps a second line of a value
    // `title = Shapes`
    const std::size_t equals = line.text.find('=');
    if (equals != std::string_view::npos && equals > 0 && equals + 1 < line.text.size()) {
      const std::string_view key = trim(line.text.substr(0, equals));
      if (!key.empty() && key.find(' ') == std::string_view::npos) {
        YamlMistake out =
            mistake(i, {line.content, line.end}, "this line has no colon",
                    fmt::format("write `{}: {}`", key, trim(line.text.substr(equals + 1))));
        out.cure = {{line.content + key.size(), line.content + equals + 1}, ":"};
        return out;
      }
    }
    return mistake(i, {line.content, line.end}, "this line has no colon",
                   "write it as `key: value`, or indent it if it belongs to the line above");
  }

  std::optional<YamlMistake> value_slip(std::size_t i, const Entry& entry) const {
    const Line& line = lines_[i];
    const std::string_view value = piece(entry.value, line.end);
    const std::string_view key = piece(entry.key.begin, entry.key.end);
    const char first = value[0];
    if (first == '"' || first == '\'') return quote_slip(i, entry);
    if (std::string_view("@`%,]}*&!").find(first) != std::string_view::npos) {
      YamlMistake out =
          mistake(i, {entry.value, line.end}, fmt::format("a value cannot begin with ‘{}’", first),
                  "put the whole value in quotation marks");
      out.cure = quoted({entry.value, line.end});
      return out;
    }
    if (first == '|' || first == '>') {
      if (value.substr(1).find_first_not_of("+-0123456789") == std::string_view::npos ||
          value.find(" #") != std::string_view::npos) {
        return std::nullopt;
      }
      return mistake(i, {entry.value, line.end},
                     fmt::format("a value cannot begin with ‘{}’", first),
                     "put the whole value in quotation marks");
    }
    if (value.starts_with("- ")) {
      return mistake(i, {entry.value, line.end}, "a list cannot begin behind its key",
                     "put each item on a line of its own, indented by two spaces: `- item`");
    }
    if (first == '[' || first == '{') return std::nullopt;
    const std::size_t comment = value.find(" #");
    const std::string_view read = value.substr(0, comment);
    if (read.find(": ") != std::string_view::npos || read.ends_with(':')) {
      YamlMistake out =
          mistake(i, {entry.value, entry.value + read.size()},
                  fmt::format("the value of ‘{}’ has a colon in it", key),
                  fmt::format("put the value in quotation marks: `{}: \"{}\"`", key, trim(read)));
      out.cure = quoted({entry.value, entry.value + trim(read).size()});
      return out;
    }
    return std::nullopt;
  }

  // Single marks: nothing but they themselves means anything within them.
  std::optional<YamlMistake::Cure> quoted(Stretch where) const {
    const std::string inside = replace_all(piece(where.begin, where.end), "'", "''");
    return YamlMistake::Cure{where, "'" + inside + "'"};
  }

  std::optional<YamlMistake> quote_slip(std::size_t i, const Entry& entry) const {
    const Line& line = lines_[i];
    const auto end = quoted_end(yaml_.substr(0, line.end), entry.value);
    if (!end) {
      YamlMistake out =
          mistake(i, {entry.value, line.end}, "this quotation mark is not closed",
                  fmt::format("put another ‘{}’ at the end of the value", yaml_[entry.value]));
      out.cure = {{line.end, line.end}, std::string(1, yaml_[entry.value])};
      return out;
    }
    const std::size_t next = skip_blank(yaml_.substr(0, line.end), *end);
    if (next >= line.end) return std::nullopt;
    return mistake(i, {entry.value, line.end}, "there is text behind the closing quotation mark",
                   "put the whole value between two quotation marks of a kind that does not occur "
                   "in it");
  }

  std::string_view yaml_;
  const std::vector<Line>& lines_;
  std::optional<std::size_t> above_;  ///< the last line that was not empty
};

YamlMistake bracket_mistake(const Linter& linter, std::string_view yaml,
                            const std::vector<Line>& lines, std::size_t opened) {
  const std::size_t i = line_at(lines, opened);
  const bool list = yaml[opened] == '[';
  const auto rest = yaml.substr(opened, lines[i].end - opened);
  if (rest.find(list ? ']' : '}') != std::string_view::npos) {
    return linter.mistake(
        i, {opened, lines[i].end}, fmt::format("what is in these brackets cannot be read"),
        list ? "separate the values with commas: `[Mon, Wed]`"
             : "separate the entries with commas: `{Warm-up: 8 min, Jumps: 10 min}`");
  }
  return linter.mistake(
      i, {opened, lines[i].end}, fmt::format("the bracket ‘{}’ is not closed", yaml[opened]),
      fmt::format("close it with ‘{}’, or put the value in quotation marks", list ? ']' : '}'));
}

}  // namespace

YamlMistake explain(const YamlText& yaml, const YamlFailure& failure) {
  const std::string_view text = yaml.text;
  const std::vector<Line> lines = lines_of(text);
  if (lines.empty()) return {{0, 0}, "this cannot be read", "write entries as `key: value`", {}};
  Linter linter(text, lines);
  using Kind = YamlFailure::Kind;
  if (failure.kind == Kind::kOpenBracket) {
    return bracket_mistake(linter, text, lines, failure.opened);
  }
  if (failure.kind == Kind::kOpenQuote) {
    const std::size_t i = line_at(lines, failure.opened);
    YamlMistake out = linter.mistake(
        i, {failure.opened, lines[i].end}, "this quotation mark is not closed",
        fmt::format("put another ‘{}’ at the end of the value", text[failure.opened]));
    out.cure = {{lines[i].end, lines[i].end}, std::string(1, text[failure.opened])};
    return out;
  }
  const std::size_t at = line_at(lines, failure.at);
  if (failure.kind == Kind::kUnknownEscape) {
    return linter.mistake(at, {lines[at].content, lines[at].end},
                          "a backslash in double quotation marks has a meaning of its own",
                          "put the value in single quotation marks");
  }
  // yaml-cpp notices a slip up to one entry late: begin two unindented lines further up.
  std::size_t from = at;
  for (int found = 0; from > 0 && found < 2;) {
    --from;
    if (!lines[from].empty() && lines[from].indent() == 0) ++found;
  }
  if (auto slip = linter.first_slip(from, at)) return *slip;
  const Line& line = lines[at];
  if (failure.kind == Kind::kSecondTree || entry_of(text, line)) {
    YamlMistake out =
        linter.mistake(at, {line.content, line.end}, "this line does not fit the lines above it",
                       "begin every entry in the same column, as `key: value`");
    out.leave_out = linter.leave_out(at, line.begin);
    return out;
  }
  YamlMistake out = linter.mistake(at, {line.content, line.end}, "this line cannot be read",
                                   "write it as `key: value`, indented with spaces like its "
                                   "neighbours, and put odd values in quotation marks");
  out.leave_out = linter.leave_out(at, line.begin);
  return out;
}

}  // namespace chalkleaf::source
