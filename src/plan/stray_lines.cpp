// See the header.
#include "plan/stray_lines.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/text.h"
#include "plan/attributes.h"
#include "plan/drill_line.h"
#include "plan/headings.h"
#include "plan/kit_moves.h"
#include "plan/part_links.h"
#include "plan/pictures.h"
#include "plan/readers.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

constexpr std::string_view kNoBreakSpace = "\xC2\xA0";
constexpr std::size_t kLongestHeading = 60;  // bytes; longer lines are sentences

constexpr std::array<std::string_view, 9> kBullets{"•", "·", "‣", "▪", "●", "○", "◦", "∙", "⁃"};
constexpr std::array<std::string_view, 3> kLongDashes{"–", "—", "−"};

template <std::size_t N>
std::string_view begins_with(std::string_view text, const std::array<std::string_view, N>& marks) {
  const auto found = std::find_if(marks.begin(), marks.end(),
                                  [&](std::string_view mark) { return text.starts_with(mark); });
  return found == marks.end() ? std::string_view() : *found;
}

bool is_dash(std::string_view text) {
  return !text.empty() && (text[0] == '-' || text[0] == '*' || text[0] == '+');
}

// `## Main` without its space: how many bytes stand before the title; 0 when it is no such line.
std::size_t heading_marks(std::string_view raw) {
  const std::size_t hashes = std::min(raw.find_first_not_of('#'), raw.size());
  if (hashes == 0 || hashes > 6 || hashes == raw.size()) return 0;
  if (raw.substr(hashes).starts_with(kNoBreakSpace)) return hashes + kNoBreakSpace.size();
  return is_letter(raw[hashes]) ? hashes : 0;
}

// The title of a line that is all bold, all capitals, ends with a colon or names a part everybody
// has; empty when it is none of these.
std::string heading_meant(std::string_view raw) {
  if (raw.size() > kLongestHeading) return {};
  std::string_view title = trim(raw);
  bool meant = role_of(title) != PartRole::kMain;
  if (title.ends_with(':')) {
    title = trim(title.substr(0, title.size() - 1));
    meant = true;
  }
  for (const std::string_view mark : {"**", "__"}) {
    if (title.size() <= 4 || !title.starts_with(mark) || !title.ends_with(mark)) continue;
    const std::string_view inside = title.substr(2, title.size() - 4);
    if (inside.find(mark) != std::string_view::npos) continue;
    title = trim(inside);
    meant = true;
  }
  if (title.ends_with(':')) title = trim(title.substr(0, title.size() - 1));
  const auto capitals =
      std::count_if(title.begin(), title.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
  const bool small =
      std::any_of(title.begin(), title.end(), [](char c) { return c >= 'a' && c <= 'z'; });
  return meant || (capitals >= 2 && !small) ? std::string(title) : std::string();
}

/// One line under judgement.
class Judge {
 public:
  Judge(const source::MarkNode& paragraph, const ParagraphLine& line, RunsOnFrom from,
        std::size_t margin, Diagnostics& diagnostics)
      : node_(stretch_of(paragraph, line.begin, line.end)),
        line_(line),
        from_(from),
        at_margin_(line.indent <= margin),
        text_(printed_text(node_).trimmed()),
        diagnostics_(diagnostics) {}

  std::optional<Stray> run() {
    if (line_.raw.empty() || (from_ == RunsOnFrom::kQuote && line_.raw[0] == '>')) return {};
    if (auto found = part_links(node_); found.only_links) {
      return Stray{Stray::Kind::kLink, std::move(found.links)};
    }
    if (!pictures_of(node_).empty()) return {};
    if (node_.links.empty()) {
      if (const auto slip = link_slip(line_.raw)) {
        return said(slip->message, slip->hint, Stray::Kind::kNote, text_);
      }
    }
    if (const std::size_t marks = heading_marks(line_.raw)) return heading(marks);
    if (auto found = dash()) return found;
    if (from_ == RunsOnFrom::kText && reader_label(text_.str())) return {};
    if (is_list_line(text_) && !is_prose()) return drill();
    if (from_ == RunsOnFrom::kText) {
      if (auto mended = drill_without_colon(text_); mended && !is_prose()) {
        return said("this reads like a drill, but has no dash and no colon",
                    fmt::format("write `- {}`", words_of(*mended).text), Stray::Kind::kDrill,
                    *mended, fmt::format("- {}", words_of(*mended).text));
      }
      return attribute_in_text();
    }
    if (!at_margin_) return {};
    if (const std::string title = heading_meant(line_.raw); !title.empty()) {
      const bool colon = text_.str().ends_with(':');
      return said("this looks like a heading, but it runs on from the line above",
                  fmt::format("write `## {}`, with an empty line before it", title),
                  Stray::Kind::kHeading,
                  colon ? text_.slice(0, text_.str().size() - 1).trimmed() : text_,
                  fmt::format("\n## {}\n", title));
    }
    if (from_ == RunsOnFrom::kQuote || is_attribute()) return {};
    return said("this line runs on from the list line above",
                "put an empty line before it; if it goes on with the line above, indent it further "
                "than the dash there; if it is a drill, begin it with a dash and a space",
                Stray::Kind::kNote, text_);
  }

 private:
  // `cure`: the line as it is to be written, where that is known.
  Stray said(std::string message, std::string hint, Stray::Kind kind, const source::Text& text,
             std::string cure = {}) {
    Diagnostic found{Severity::kError, kBadValue, line_.span, std::move(message)};
    found.hint = std::move(hint);
    if (!cure.empty()) found.edits.push_back({line_.span, std::move(cure)});
    diagnostics_.add(std::move(found));
    return {kind, {}, text, words_of(text), line_.span};
  }
  // Below a drill: two spaces further than its dash.
  std::string below_drill(std::string_view line) const {
    return std::string(line_.indent < 2 ? 2 - line_.indent : 0, ' ') + std::string(line);
  }

  bool is_attribute() const {
    const auto attribute = attribute_of(text_);
    return attribute && is_known(*attribute);
  }

  // A drill, a circuit or a line that moves kit, and hardly anything else.
  static bool is_list_line(const source::Text& text) {
    if (is_plainly_a_drill(text) || is_plainly_a_circuit(text)) return true;
    const auto kit = kit_line(text);
    const bool sentence = text.str().find(". ") != std::string::npos || text.str().ends_with('.');
    return kit && !kit->rest.empty() && !sentence && text.str().size() <= kLongestHeading;
  }

  // A later line of a text that goes on in small letters: `…we do / the hold: 20 s, no more.`
  bool is_prose() const {
    const char c = text_.str()[0];
    return from_ == RunsOnFrom::kText && line_.follows_text && c >= 'a' && c <= 'z';
  }

  // `note:` and `uses:` may begin a text of the coach's; these hardly do.
  std::optional<Stray> attribute_in_text() {
    const auto attribute = attribute_of(text_);
    if (!attribute) return {};
    if (attribute->key != "cue" && attribute->key != "easier" && attribute->key != "harder") {
      return {};
    }
    return said(
        fmt::format("‘{}’ has no dash before it, so it belongs to no drill",
                    attribute->written.text),
        fmt::format("write `- {}: {}`, indented by two spaces below its drill",
                    attribute->written.text,
                    attribute->value.empty() ? "…" : words_of(attribute->value).text),
        Stray::Kind::kNote, text_,
        attribute->value.empty() ? std::string() : below_drill(fmt::format("- {}", line_.raw)));
  }

  source::Text behind(std::size_t bytes) const {
    return text_.slice(bytes, text_.str().size()).trimmed();
  }

  Stray heading(std::size_t marks) {
    const std::size_t hashes = line_.raw.find_first_not_of('#');
    const std::string_view written = line_.raw.substr(0, hashes);
    const std::string_view title = trim(line_.raw.substr(marks));
    const bool no_break = marks > hashes;
    return said(no_break ? fmt::format("the space behind {} is a no-break space", written)
                         : fmt::format("a heading needs a space after {}", written),
                fmt::format("write `{} {}`, with an empty line before it", written, title),
                hashes == 2 || (hashes == 1 && role_of(title) != PartRole::kMain)
                    ? Stray::Kind::kHeading
                    : Stray::Kind::kNote,
                behind(std::min(text_.str().find_first_not_of('#'), text_.str().size())),
                fmt::format("\n{} {}\n", written, title));
  }

  // What stands behind a dash or bullet: a drill, or else text.
  Stray listed(std::string message, const source::Text& text) {
    auto attribute = attribute_of(text);
    if (!attribute || !is_known(*attribute)) attribute = attribute_without_colon(text);
    const bool below = attribute && is_known(*attribute);
    const std::string line =
        below ? fmt::format("{}: {}", attribute->written.text, words_of(attribute->value).text)
              : words_of(text).text;
    const auto kind = below                                       ? Stray::Kind::kNote
                      : is_drill_line(text) || is_list_line(text) ? Stray::Kind::kDrill
                                                                  : Stray::Kind::kItem;
    return said(std::move(message),
                fmt::format("write `- {}`{}", line,
                            below ? ", indented by two spaces below its drill"
                                  : ", with a dash and a plain space before it"),
                kind, text,
                below ? below_drill(fmt::format("- {}", line)) : fmt::format("- {}", line));
  }

  std::optional<Stray> dash() {
    std::string_view raw = line_.raw;
    bool no_break = false;
    while (raw.starts_with(kNoBreakSpace) || raw.starts_with(' ')) {
      no_break = true;
      raw.remove_prefix(raw[0] == ' ' ? 1 : kNoBreakSpace.size());
    }
    // `*Dish* hold` is emphasis, whose marks are gone from the text.
    if (raw.size() < 2 || text_.empty() || text_.str()[0] != raw[0]) return {};
    if (is_dash(raw)) {
      const source::Text rest = behind(1);
      if (rest.empty()) return {};
      if (no_break) return listed("a no-break space stands before this dash", rest);
      if (raw.substr(1).starts_with(kNoBreakSpace)) {
        return listed("the space behind this dash is a no-break space", rest);
      }
      if (is_letter(raw[1])) return listed("this line has no space behind its dash", rest);
      if (raw[1] == ' ' && from_ == RunsOnFrom::kList) {
        return said("this line is indented too far to belong to the list",
                    "indent it by two spaces more than the line it belongs to", Stray::Kind::kNote,
                    rest);
      }
      return {};
    }
    return bullet(raw);
  }

  std::optional<Stray> bullet(std::string_view raw) {
    std::string_view mark = begins_with(raw, kBullets);
    const bool long_dash = mark.empty();
    if (long_dash) mark = begins_with(raw, kLongDashes);
    if (mark.empty()) return {};
    const source::Text rest = behind(mark.size());
    // A sentence may begin with a long dash; a drill or a line of a list does not.
    if (long_dash && from_ != RunsOnFrom::kList && !is_list_line(rest)) return {};
    if (rest.empty() || begins_with(rest.str(), kLongDashes) != "") return {};
    return listed(fmt::format("this line begins with {} instead of a dash", mark), rest);
  }

  Stray drill() {
    const bool kit = kit_line(text_).has_value();
    // In a text of its own line it reads well as it is: `Put away: hoops`.
    if (kit && from_ == RunsOnFrom::kText) {
      return {Stray::Kind::kDrill, {}, text_, words_of(text_), line_.span};
    }
    if (is_plainly_a_circuit(text_)) {
      return said("this reads like a circuit, but is not a list item",
                  fmt::format("write `- {}`, and its stations below it, indented by two spaces",
                              words_of(text_).text),
                  Stray::Kind::kDrill, text_);
    }
    if (kit) {
      return said(
          "this line has no dash before it, so it runs on from the line above",
          fmt::format("write `- {}`, with a dash and a space before it", words_of(text_).text),
          Stray::Kind::kDrill, text_, fmt::format("- {}", line_.raw));
    }
    if (from_ == RunsOnFrom::kText) {
      return said("this reads like a drill, but is not a list item",
                  fmt::format("write `- {}`, with a dash and a space before it; if it is only "
                              "text, write it without the colon",
                              words_of(text_).text),
                  Stray::Kind::kDrill, text_, fmt::format("- {}", line_.raw));
    }
    return said(
        "this drill has no dash before it, so it runs on from the line above",
        fmt::format("write `- {}`, with a dash and a space before it", words_of(text_).text),
        Stray::Kind::kDrill, text_, fmt::format("- {}", line_.raw));
  }

  source::MarkNode node_;
  const ParagraphLine& line_;
  RunsOnFrom from_;
  bool at_margin_;
  source::Text text_;
  Diagnostics& diagnostics_;
};

}  // namespace

std::string heading_in_text(std::string_view raw) {
  constexpr std::ptrdiff_t kMostGaps = 4;  // `Cool down (5 min max)`
  raw = trim(raw);
  if (raw.ends_with(':')) raw = trim(raw.substr(0, raw.size() - 1));
  const bool sentence = raw.ends_with('.') || raw.ends_with('!') || raw.ends_with('?');
  std::string title = heading_meant(raw);
  if (sentence || title.empty() || reader_label(title)) return {};
  const bool named = role_of(raw) != PartRole::kMain;
  const auto gaps = std::count(raw.begin(), raw.end(), ' ');
  const bool long_name = named && (gaps > kMostGaps || (gaps > 2 && !raw.ends_with(')')));
  return long_name ? std::string() : title;
}

std::optional<Stray> judge_line(const source::MarkNode& paragraph, const ParagraphLine& line,
                                RunsOnFrom from, std::size_t margin, Diagnostics& diagnostics) {
  return Judge(paragraph, line, from, margin, diagnostics).run();
}

}  // namespace chalkleaf::plan
