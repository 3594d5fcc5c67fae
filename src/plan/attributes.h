// What stands below a drill: `cue:`, `easier:`, `harder:`, `uses:`, `without KIT:`, `note:`,
// `coach:`, `family:`, `record:`, `at:`, `figure:`.
// Tested by tests/plan/drill_test.cpp and attributes_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// Where attributes go: into a drill, or into one of its substitutes. Nothing here is owned; what
/// is null cannot stand there.
struct Below {
  std::string name;  ///< of the drill, for messages
  std::vector<Words>* cues = nullptr;
  std::vector<Variation>* easier = nullptr;
  std::vector<Variation>* harder = nullptr;
  std::vector<Note>* notes = nullptr;
  std::vector<KitUse>* uses = nullptr;
  std::vector<Substitute>* substitutes = nullptr;
  Words* record = nullptr;
  Words* at = nullptr;
  std::vector<Words>* figures = nullptr;
};
Below below(Drill& drill);
Below below(Substitute& substitute);

/// `key: value`, the key a single word, `without KIT`, or a label such as `For the coach`.
struct Attribute {
  std::string key;  ///< lower case; `coach` or `family` for every label that means them
  Words written;    ///< the key as written, with the kit
  Words kit;        ///< of `without`
  source::Text value;
};
/// The attribute a line is, known key or not; nothing when it has no such form.
std::optional<Attribute> attribute_of(const source::Text& text);
bool is_known(const Attribute& attribute);
/// The keys a drill can have below it.
const std::vector<std::string>& drill_keys();
/// The key an unknown one stands for: a slip of the pen, or another word for it.
std::optional<std::string> key_meant(std::string_view key);
/// `sets`, `rest`: what belongs on the drill's own line.
bool speaks_of_dose(std::string_view key);
/// A line whose first word is a known key with no colon behind it: `cue push tall`.
std::optional<Attribute> attribute_without_colon(const source::Text& text);

/// A line below a drill that is meant as an attribute though its dash is missing: with its colon,
/// by another word for its key, or without the colon where it hardly goes on with the line above.
std::optional<Attribute> attribute_without_dash(const source::Text& line, std::string_view above);

/// A paragraph's first line, and the later lines that begin like attributes without a dash. All
/// other lines stay with the line above.
struct ParagraphLines {
  source::Text first;
  std::vector<source::Text> forgotten;
};
ParagraphLines lines_of(const source::Text& text);

/// Reads one list item below a drill or substitute.
void read_attribute(const source::MarkNode& item, const Below& below, Diagnostics& diagnostics);
/// Reads an attribute without blocks below it that stands where it should not.
void place_attribute(const Attribute& attribute, const Span& span, const Below& below,
                     Diagnostics& diagnostics);
/// Reports and places lines whose dash was forgotten.
void read_forgotten(const ParagraphLines& lines, const Below& below, Diagnostics& diagnostics);
/// Reports keys among the remarks of a dose: `20 s, cue: chin in`.
void report_keys_in_dose(const Dose& dose, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
