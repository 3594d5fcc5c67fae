// Tested by tests/reason/guard_test.cpp.
#include "reason/guard_library.h"

#include "reason/drill_lines.h"

namespace chalkleaf::reason {

// It says itself what is not for home.
bool is_shipped(const Source& source) { return source.path().starts_with("shelf/"); }

Inherited inherited_words(const plan::Session& session, const plan::DrillBook& book) {
  Inherited out;
  for (const DrillLine& line : drill_lines(session)) {
    const plan::Drill& drill = *line.drill;
    if (drill.known != nullptr) out.sources.insert(drill.known->source.get());
    for (const plan::LibraryDrill* known : drill.known_choices) {
      if (known != nullptr) out.sources.insert(known->source.get());
    }
    for (const Named& named : named_with_substitutes(line, book))
      out.sources.insert(named.drill->source.get());
    const auto add = [&](const plan::Words& words) {
      if (words.span.source != nullptr && is_shipped(*words.span.source)) return;
      if (out.sources.count(words.span.source) > 0) out.words.emplace_back(words, drill.name.span);
    };
    for (const auto* list : {&drill.cues, &drill.easier, &drill.harder}) {
      for (const plan::Words& words : *list) add(words);
    }
    for (const plan::Note& note : drill.notes) add(note.words);
    for (const plan::Substitute& one : drill.substitutes) {
      add(one.name);
      for (const auto* list : {&one.cues, &one.easier, &one.harder}) {
        for (const plan::Words& words : *list) add(words);
      }
    }
  }
  return out;
}

}  // namespace chalkleaf::reason
