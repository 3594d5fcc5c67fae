// The shipped English words, and drills as one line of text.
#pragma once

#include <string>

#include "base/files.h"
#include "draft/drills.h"
#include "draft/lexicon.h"
#include "draft/read.h"
#include "draft/spoken_dose.h"
#include "source/read.h"
#include "support/places.h"

namespace chalkleaf::draft_test {

inline const draft::Lexicon& english() {
  static const draft::Lexicon words = [] {
    Diagnostics diagnostics;
    RealFileSystem files;
    const std::string path = support::repository() + "/themes/words/en.yaml";
    const SourcePtr source = source::load(files, path, path, diagnostics);
    return draft::Lexicon::read(*source::read_yaml(source, diagnostics), diagnostics);
  }();
  return words;
}

/// `Jog: 2 lengths | skips: 1 length`
inline std::string drills(const std::string& line, const draft::Setting& setting = {}) {
  std::string out;
  for (const draft::SpokenDrill& drill : draft::read_drills(english(), line, setting).drills) {
    if (!out.empty()) out += " | ";
    if (!drill.label.empty()) out += drill.label + " – ";
    out += drill.name;
    if (drill.dose) out += ": " + draft::canonical(*drill.dose);
  }
  return out;
}

inline SourcePtr text(const std::string& words) {
  return std::make_shared<const Source>("draft.md", words);
}

/// The canonical plan; empty when the text is one.
inline std::string tidied(const std::string& words) {
  const auto read = draft::read(english(), text(words));
  return read ? std::string(read->canonical->text()) : std::string();
}

}  // namespace chalkleaf::draft_test
