// See the header.
#include "plan/attributes.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/blocks.h"
#include "plan/drill_line.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

constexpr const char* kBadValue = "bad-value";
const std::vector<std::string> kKnown{"cue", "easier", "harder", "uses", "without", "note"};

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

// A key is one word; anything longer before a colon is a sentence of the coach's.
bool is_word(std::string_view text) {
  constexpr std::size_t kLongest = 24;
  return !text.empty() && text.size() <= kLongest &&
         std::all_of(text.begin(), text.end(), [](char c) { return is_letter(c) || c == '-'; });
}

/// Reads one item; a class only to keep the many parameters in one place.
class Reader {
 public:
  Reader(const Below& target, Diagnostics& diagnostics) : to_(target), diagnostics_(diagnostics) {}

  void item(const source::MarkNode& node) {
    const source::MarkNode* first = first_paragraph(node);
    if (first == nullptr) return add_item_notes(node, *to_.notes);
    const ParagraphLines lines = lines_of(printed_text(*first));
    auto attribute = attribute_of(lines.first);
    if (!attribute) attribute = without_colon(lines.first);
    if (!attribute) {
      to_.notes->push_back({Note::Kind::kListItem, words_of(lines.first)});
      for (const source::MarkNode& child : node.children) {
        if (&child != first) add_notes(child, *to_.notes);
      }
    } else if (attribute->key == "without" && to_.substitutes != nullptr) {
      substitute(*attribute, node);
    } else {
      Rest rest = rest_of(node, attribute->value.empty());
      place(*attribute, first->span, rest.values);
      for (const Attribute& deeper : rest.too_deep) too_deep(deeper);
      for (const ParagraphLines& below : rest.forgotten) read_forgotten(below, to_, diagnostics_);
      to_.notes->insert(to_.notes->end(), rest.notes.begin(), rest.notes.end());
    }
    read_forgotten(lines, to_, diagnostics_);
  }

  // `values` stand in a list below a key without words of its own.
  void place(const Attribute& a, const Span& span, const std::vector<Words>& values) {
    if (a.key == "cue") return several(a, span, values, *to_.cues);
    if (a.key == "easier") return several(a, span, values, *to_.easier);
    if (a.key == "harder") return several(a, span, values, *to_.harder);
    if (a.key == "note") {
      std::vector<Words> words;
      several(a, span, values, words);
      for (Words& said : words) to_.notes->push_back({Note::Kind::kParagraph, std::move(said)});
      return;
    }
    if (a.key == "uses" && to_.uses != nullptr) return uses(a, span, values);
    if (a.key == "without" && to_.substitutes != nullptr) {
      return add_substitute(a, span);
    }
    not_here(a, values);
  }

 private:
  /// What stands below an attribute's own line.
  struct Rest {
    std::vector<Words> values;
    std::vector<Attribute> too_deep;
    std::vector<Note> notes;
    std::vector<ParagraphLines> forgotten;
  };

  Rest rest_of(const source::MarkNode& node, bool empty) const {
    Rest out;
    const source::MarkNode* first = first_paragraph(node);
    for (const source::MarkNode& child : node.children) {
      if (&child == first) continue;
      if (child.kind != MarkKind::kList) {
        add_notes(child, out.notes);
        continue;
      }
      for (const source::MarkNode& item : child.children) sort_item(item, empty, out);
    }
    return out;
  }

  void sort_item(const source::MarkNode& item, bool as_values, Rest& out) const {
    const source::MarkNode* line = first_paragraph(item);
    const bool plain = line != nullptr && item.children.size() == 1;
    if (plain) {
      ParagraphLines lines = lines_of(printed_text(*line));
      const source::Text text = lines.first;
      auto attribute = attribute_of(text);
      const bool deep = attribute && is_known(*attribute);
      if (deep) {
        out.too_deep.push_back(std::move(*attribute));
      } else if (as_values) {
        out.values.push_back(words_of(text));
      }
      if (deep || as_values) {
        out.forgotten.push_back(std::move(lines));
        return;
      }
    }
    add_item_notes(item, out.notes);
  }

  // `cue push tall`: a key whose colon is forgotten, reported.
  std::optional<Attribute> without_colon(const source::Text& text) {
    auto out = attribute_without_colon(text);
    if (!out) return std::nullopt;
    const std::string value = words_of(out->value).text;
    const std::string note =
        out->key == "uses" || out->key == "without"
            ? fmt::format("; if it is a note, `- note: {}`", words_of(text).text)
            : std::string();
    if (out->key == "without") {
      diagnostics_.error(kBadValue, out->written.span, "put a colon after ‘without’ and the kit",
                         fmt::format("write `- without towel: Dish hold: 2 x 20 s`{}", note));
      return std::nullopt;
    }
    diagnostics_.error(
        kBadValue, out->written.span, fmt::format("put a colon after ‘{}’", out->written.text),
        fmt::format("write `- {}: {}`{}", out->written.text, value.empty() ? "…" : value, note));
    if (value.empty()) return std::nullopt;
    return out;
  }

  void too_deep(const Attribute& attribute) {
    diagnostics_.error(
        kBadValue, attribute.written.span,
        fmt::format("‘{}’ is indented too far", attribute.written.text),
        fmt::format("indent this line like the one above, so that it belongs to ‘{}’", to_.name));
    place(attribute, attribute.written.span.joined(attribute.value.span()), {});
  }

  void empty(const Attribute& a, const Span& span, std::string_view what) {
    diagnostics_.error(kBadValue, span, fmt::format("‘{}’ says nothing", a.written.text),
                       fmt::format("write {} behind the colon, or leave the line out", what));
  }

  void several(const Attribute& a, const Span& span, const std::vector<Words>& values,
               std::vector<Words>& out) {
    const Words words = words_of(a.value);
    if (!words.empty()) {
      out.push_back(words);
    } else if (values.empty()) {
      empty(a, span, a.key == "cue" || a.key == "note" ? "the words" : "what to do instead");
    }
    out.insert(out.end(), values.begin(), values.end());
  }

  void uses(const Attribute& a, const Span& span, const std::vector<Words>& values) {
    const std::size_t comma = std::min(a.value.str().find(','), a.value.str().size());
    KitUse use{words_of(a.value.slice(0, comma)),
               words_of(a.value.slice(comma + 1, a.value.str().size()))};
    if (!use.kit.empty()) {
      to_.uses->push_back(std::move(use));
    } else if (values.empty() || !use.how.empty()) {
      empty(a, span, "the kit");
    }
    for (const Words& kit : values) to_.uses->push_back({kit, {}});
  }

  // `uses` or `without` below a substitute, or a key nobody knows: reported, and kept as a note.
  void not_here(const Attribute& a, const std::vector<Words>& values) {
    if (a.key == "uses" || a.key == "without") {
      diagnostics_.error(
          kBadValue, a.written.span,
          fmt::format("‘{}’ cannot stand below a substitute", a.written.text),
          "indent it like the line of the substitute, so that it belongs to the drill");
    } else {
      diagnostics_.error("unknown-key", a.written.span,
                         fmt::format("‘{}’ is not something a drill has", a.written.text),
                         suggestion(a.key, kKnown, "keys"));
    }
    Words line = a.written;
    const Words value = words_of(a.value);
    line.text += ": " + value.text;
    line.span = line.span.joined(value.span);
    to_.notes->push_back({Note::Kind::kListItem, std::move(line)});
    for (const Words& more : values) to_.notes->push_back({Note::Kind::kListItem, more});
  }

  Substitute make_substitute(const Attribute& a, const Span& span) {
    Substitute out;
    out.span = span;
    out.kit = a.kit;
    if (out.kit.empty()) {
      diagnostics_.error(kBadValue, a.written.span, "‘without’ does not say what is missing",
                         "name the kit: `without towel: Dish hold: 2 x 20 s`");
    }
    if (words_of(a.value).empty()) {
      diagnostics_.error(
          kBadValue, a.written.span, fmt::format("‘{}’ does not say what to do", a.written.text),
          fmt::format("write the drill that stands in: `{}: Dish hold: 2 x 20 s`", a.written.text));
      return out;
    }
    DrillLine line = read_drill_line(a.value, diagnostics_);
    out.name = std::move(line.name);
    out.dose = std::move(line.dose);
    if (line.dose_unreadable) out.notes.push_back({Note::Kind::kListItem, std::move(line.unread)});
    return out;
  }

  void add_substitute(const Attribute& a, const Span& span) {
    Substitute made = make_substitute(a, span);
    to_.substitutes->push_back(std::move(made));
  }

  void substitute(const Attribute& a, const source::MarkNode& node) {
    Substitute made = make_substitute(a, node.span);
    const source::MarkNode* first = first_paragraph(node);
    for (const source::MarkNode& child : node.children) {
      if (&child == first) continue;
      if (child.kind != MarkKind::kList) {
        add_notes(child, made.notes);
        continue;
      }
      for (const source::MarkNode& item : child.children) {
        read_attribute(item, below(made), diagnostics_);
      }
    }
    to_.substitutes->push_back(std::move(made));
  }

  Below to_;
  Diagnostics& diagnostics_;
};

}  // namespace

Below below(Drill& drill) {
  return {drill.name.text, &drill.cues, &drill.easier,     &drill.harder,
          &drill.notes,    &drill.uses, &drill.substitutes};
}

Below below(Substitute& substitute) {
  return {substitute.name.text,
          &substitute.cues,
          &substitute.easier,
          &substitute.harder,
          &substitute.notes,
          nullptr,
          nullptr};
}

std::optional<Attribute> attribute_of(const source::Text& text) {
  const std::string& all = text.str();
  const std::size_t colon = all.find(':');
  if (colon == std::string::npos || all.compare(colon, 3, "://") == 0) return std::nullopt;
  const source::Text head = text.slice(0, colon).trimmed();
  Attribute out;
  out.written = words_of(head);
  out.value = text.slice(colon + 1, all.size()).trimmed();
  if (starts_with_ignoring_case(head.str(), "without ")) {
    out.key = "without";
    out.kit = words_of(head.slice(8, head.str().size()));
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
  while (end < all.size() && is_letter(all[end])) ++end;
  Attribute out;
  out.key = lower_ascii(all.substr(0, end));
  if (!is_known(out) || (end < all.size() && all[end] != ' ' && all[end] != '-')) {
    return std::nullopt;
  }
  out.written = words_of(line.slice(0, end));
  std::size_t begin = end;  // `cue - push tall`, `cue – push tall`
  while (begin < all.size()) {
    const std::string_view rest = std::string_view(all).substr(begin);
    const std::size_t dash = rest.starts_with("–") || rest.starts_with("—") ? 3 : 1;
    if (dash == 1 && rest[0] != ' ' && rest[0] != '-') break;
    begin += dash;
  }
  out.value = line.slice(begin, all.size());
  return out;
}

bool is_known(const Attribute& attribute) {
  return std::find(kKnown.begin(), kKnown.end(), attribute.key) != kKnown.end();
}

ParagraphLines lines_of(const source::Text& text) {
  const std::string& all = text.str();
  const auto is_break = [&](std::size_t i) {
    if (all[i] == '\n') return true;
    if (all[i] != ' ') return false;
    const std::string_view bytes = text.span(i, i + 1).text();
    return bytes.find_first_of("\r\n") != std::string_view::npos;
  };
  // A line that begins with a known key begins a new piece; the first piece is the line itself.
  std::vector<std::size_t> starts{0};
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!is_break(i)) continue;
    std::size_t stop = i + 1;
    while (stop < all.size() && !is_break(stop)) ++stop;
    const source::Text line = text.slice(i + 1, stop).trimmed();
    const auto attribute = attribute_of(line);
    if (attribute && is_known(*attribute)) starts.push_back(i + 1);
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

void read_attribute(const source::MarkNode& item, const Below& target, Diagnostics& diagnostics) {
  Reader(target, diagnostics).item(item);
}

void place_attribute(const Attribute& attribute, const Span& span, const Below& target,
                     Diagnostics& diagnostics) {
  Reader(target, diagnostics).place(attribute, span, {});
}

void read_forgotten(const ParagraphLines& lines, const Below& target, Diagnostics& diagnostics) {
  for (const source::Text& line : lines.forgotten) {
    const auto attribute = attribute_of(line);
    diagnostics.error(kBadValue, attribute->written.span,
                      fmt::format("‘{}’ has no dash before it, so it runs on from the line above",
                                  attribute->written.text),
                      fmt::format("write `- {}: …`, indented by two spaces below ‘{}’",
                                  attribute->written.text, target.name));
    Reader(target, diagnostics).place(*attribute, words_of(line).span, {});
  }
}

}  // namespace chalkleaf::plan
