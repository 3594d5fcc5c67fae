// See the header.
#include "plan/attributes.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/blocks.h"
#include "plan/drill_line.h"
#include "plan/pictures.h"
#include "plan/readers.h"
#include "plan/values.h"
#include "plan/words.h"
#include "plan/written_slips.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

constexpr std::size_t kLongestBox = 40;  // bytes of `record:`; what is longer is no label of a box

Note::For reader_of(const Attribute& a) {
  if (a.key == "coach") return Note::For::kCoach;
  return a.key == "family" ? Note::For::kFamily : Note::For::kAll;
}

// `- cue: push tall`, as the attribute is written rightly.
std::string as_line(const Attribute& a) {
  const std::string value = words_of(a.value).text;
  const auto meant = is_known(a) ? std::nullopt : key_meant(a.key);
  return fmt::format("- {}: {}", meant ? *meant : a.written.text, value.empty() ? "…" : value);
}

/// Reads one item; a class only to keep the many parameters in one place.
class AttributeReader {
 public:
  AttributeReader(const Below& target, Diagnostics& diagnostics)
      : to_(target), diagnostics_(diagnostics) {}

  void item(const source::MarkNode& node) {
    const source::MarkNode* first = first_paragraph(node);
    if (first == nullptr) return add_item_notes(node, *to_.notes);
    report_written_slips(*first, diagnostics_);
    const ParagraphLines lines =
        lines_of(printed_text(without_pictures(without_comments(*first), *to_.notes)));
    auto attribute = attribute_of(lines.first);
    if (!attribute) attribute = without_colon(lines.first);
    if (!attribute) {
      add_text_notes(Note::Kind::kListItem, lines.first, *to_.notes);
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
      keep_for(reader_of(*attribute), rest.notes, 0);
      to_.notes->insert(to_.notes->end(), rest.notes.begin(), rest.notes.end());
    }
    read_forgotten(lines, to_, diagnostics_);
  }

  // `values` stand in a list below a key without words of its own.
  void place(const Attribute& a, const Span& span, const std::vector<Words>& values) {
    if (a.key == "cue") return several(a, span, values, *to_.cues);
    if (a.key == "easier") return several(a, span, values, *to_.easier);
    if (a.key == "harder") return several(a, span, values, *to_.harder);
    if (a.key == "note" || reader_of(a) != Note::For::kAll) {
      std::vector<Words> words;
      several(a, span, values, words);
      for (Words& said : words) {
        to_.notes->push_back({Note::Kind::kParagraph, std::move(said), reader_of(a)});
      }
      return;
    }
    if (a.key == "record" && to_.record != nullptr) return record(a, span, values);
    if (a.key == "at" && to_.at != nullptr) return at(a, span, values);
    if (a.key == "figure" && to_.figures != nullptr) return figure(a, span, values);
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
    Diagnostic found{Severity::kError, kBadValue, out->written.span,
                     fmt::format("put a colon after ‘{}’", out->written.text)};
    found.hint = fmt::format("write `{}`{}", as_line(*out), note);
    const std::uint32_t end = out->written.span.end;
    if (!value.empty()) found.edits.push_back({{out->written.span.source, end, end}, ":"});
    diagnostics_.add(std::move(found));
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
      if (!is_for_one(a, a.value)) out.push_back(words);
    } else if (values.empty()) {
      empty(a, span, a.key == "easier" || a.key == "harder" ? "what to do instead" : "the words");
    }
    for (const Words& value : values) {
      const auto label = reader_label(value.text);
      if (!label || reader_of(a) != Note::For::kAll) {
        out.push_back(value);
      } else {
        to_.notes->push_back({Note::Kind::kParagraph, value, label->reader});
      }
    }
  }

  // `cue: (coach) hand under the back`, `note: coach only: …`: a note for one reader.
  bool is_for_one(const Attribute& a, const source::Text& value) {
    if (reader_of(a) != Note::For::kAll || !reader_label(value.str())) return false;
    add_text_notes(Note::Kind::kParagraph, value, *to_.notes);
    return true;
  }

  void uses(const Attribute& a, const Span& span, const std::vector<Words>& values) {
    const std::size_t comma = std::min(a.value.str().find(','), a.value.str().size());
    KitUse use{plain_words_of(a.value.slice(0, comma)),
               plain_words_of(a.value.slice(comma + 1, a.value.str().size()))};
    if (!use.kit.empty()) {
      to_.uses->push_back(std::move(use));
    } else if (values.empty() || !use.how.empty()) {
      empty(a, span, "the kit");
    }
    for (const Words& kit : values) to_.uses->push_back({kit, {}});
  }

  // `record:` and `at:` have one value; a second one stays a note.
  bool is_second(const Attribute& a, const Words& slot) {
    if (slot.empty()) return false;
    Diagnostic twice{Severity::kError, kBadValue, a.written.span,
                     fmt::format("‘{}’ is written twice", a.written.text)};
    twice.labels.push_back({slot.span, "it is written here first"});
    twice.hint = "keep one of the two lines";
    diagnostics_.add(std::move(twice));
    keep(a, {});
    return true;
  }

  void record(const Attribute& a, const Span& span, const std::vector<Words>& values) {
    if (is_second(a, *to_.record)) return keep(std::nullopt, values);
    const Words what = plain_words_of(a.value);
    keep(std::nullopt, values);
    if (what.empty()) {
      return empty(a, span, "what is measured, such as `seconds` or `steps`,");
    }
    const std::string lower = lower_ascii(what.text);
    const bool answer = lower == "yes" || lower == "true" || lower == "on" || lower == "box" ||
                        lower == "no" || lower == "false" || lower == "off";
    const bool digits = lower.find_first_of("0123456789") != std::string::npos;
    if (answer || digits) {
      diagnostics_.error(kBadValue, what.span,
                         fmt::format("‘{}’ does not say what is measured", what.text),
                         "write what goes into the box on the sheet: `record: seconds`, `record: "
                         "steps`; for no box leave the line out");
      return keep(a, {});
    }
    if (what.text.size() > kLongestBox) {
      diagnostics_.error(kBadValue, what.span, "this is too long for a box on the sheet",
                         "keep it to a word or two, such as `record: seconds`, and say the rest in "
                         "a `note:` below the drill");
      return keep(a, {});
    }
    *to_.record = what;
  }

  void at(const Attribute& a, const Span& span, const std::vector<Words>& values) {
    if (is_second(a, *to_.at)) return keep(std::nullopt, values);
    *to_.at = plain_words_of(a.value);
    keep(std::nullopt, values);
    if (to_.at->empty()) empty(a, span, "the station of the hall, such as `beam`,");
  }

  void figure(const Attribute& a, const Span& span, const std::vector<Words>& values) {
    if (!to_.figures->empty() && is_second(a, to_.figures->front())) {
      return keep(std::nullopt, values);
    }
    Words name = plain_words_of(a.value);
    keep(std::nullopt, values);
    if (name.empty()) return empty(a, span, "a figure's name, such as `front support`,");
    to_.figures->push_back(std::move(name));
  }

  // A line that could not be used, as a note; `values` stood in a list below it.
  void keep(const std::optional<Attribute>& a, const std::vector<Words>& values) {
    if (a) {
      Words line = a->written;
      append_words(line, ": ", words_of(a->value));
      to_.notes->push_back({Note::Kind::kListItem, std::move(line)});
    }
    for (const Words& more : values) to_.notes->push_back({Note::Kind::kListItem, more});
  }

  // `uses` or `record` below a substitute, or a key nobody knows: reported, and kept as a note.
  void not_here(const Attribute& a, const std::vector<Words>& values) {
    keep(a, values);
    if (!is_known(a)) {
      Diagnostic found{Severity::kError, "unknown-key", a.written.span,
                       fmt::format("‘{}’ is not something a drill has", a.written.text)};
      found.hint = unknown_hint(a);
      if (const auto meant = key_meant(a.key)) found.edits.push_back({a.written.span, *meant});
      return diagnostics_.add(std::move(found));
    }
    diagnostics_.error(
        kBadValue, a.written.span,
        fmt::format("‘{}’ cannot stand below a substitute", a.written.text),
        "indent it like the line of the substitute, so that it belongs to the drill");
  }

  static std::string unknown_hint(const Attribute& a) {
    if (const auto meant = key_meant(a.key)) return fmt::format("did you mean `{}`?", *meant);
    if (speaks_of_dose(a.key)) {
      return "write it on the drill's own line, behind its name: `Dish hold: 2 x 20 s, rest 20 s`";
    }
    if (a.key == "picture" || a.key == "image" || a.key == "photo") {
      return "write `- ![what it shows](../pictures/name.png)`";
    }
    return suggestion(a.key, drill_keys(), "keys");
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
    DrillLine line = read_drill_line(a.value, StationsBelow::kNone, diagnostics_);
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
  return {drill.name.text, &drill.cues,        &drill.easier, &drill.harder, &drill.notes,
          &drill.uses,     &drill.substitutes, &drill.record, &drill.at,     &drill.figures};
}

Below below(Substitute& substitute) {
  return {substitute.name.text,
          &substitute.cues,
          &substitute.easier,
          &substitute.harder,
          &substitute.notes,
          nullptr,
          nullptr,
          nullptr,
          nullptr,
          nullptr};
}

void read_attribute(const source::MarkNode& item, const Below& target, Diagnostics& diagnostics) {
  AttributeReader(target, diagnostics).item(item);
}

void place_attribute(const Attribute& attribute, const Span& span, const Below& target,
                     Diagnostics& diagnostics) {
  AttributeReader(target, diagnostics).place(attribute, span, {});
}

void read_forgotten(const ParagraphLines& lines, const Below& target, Diagnostics& diagnostics) {
  for (const source::Text& line : lines.forgotten) {
    auto attribute = attribute_without_dash(line.trimmed(), {});
    if (!attribute) continue;  // lines_of takes no other
    diagnostics.error(kBadValue, attribute->written.span,
                      fmt::format("‘{}’ has no dash before it, so it runs on from the line above",
                                  attribute->written.text),
                      fmt::format("write `{}`, indented by two spaces below ‘{}’",
                                  as_line(*attribute), target.name));
    if (!is_known(*attribute)) attribute->key = key_meant(attribute->key).value_or("note");
    AttributeReader(target, diagnostics).place(*attribute, words_of(line).span, {});
  }
}

void report_keys_in_dose(const Dose& dose, Diagnostics& diagnostics) {
  for (const Words& remark : dose.remarks) {
    source::Text text;
    text.append(remark.text, remark.span);
    const auto attribute = attribute_of(text);
    if (!attribute || !is_known(*attribute)) continue;
    diagnostics.error(
        kBadValue, remark.span,
        fmt::format("‘{}’ stands on the drill's own line, where it is read as a part of the dose",
                    attribute->written.text),
        fmt::format("write `{}` on a line of its own below the drill, indented by two spaces",
                    as_line(*attribute)));
  }
}

}  // namespace chalkleaf::plan
