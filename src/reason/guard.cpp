#include "reason/guard.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "base/text.h"
#include "reason/check_parts.h"
#include "reason/drill_lines.h"
#include "reason/raw_text.h"
#include "reason/word_patterns.h"

namespace chalkleaf::reason {
namespace {

/// A danger with its patterns compiled.
struct Compiled1 {
  const plan::Danger* danger = nullptr;
  std::vector<const Pattern*> says;
  std::vector<const Pattern*> unless;
  std::vector<const Pattern*> answered;
};

/// A sentence of a file, and where it stands.
struct Placed {
  Sentence sentence;
  const Source* source = nullptr;
  std::uint32_t offset = 0;  // of the text that its words count from
  Span place = {};           // of the plan's line, when the words are the library's
};

// Where the words of a match stand in the file.
Span span_of(const Placed& placed, const Match& match) {
  if (placed.place) return placed.place;
  const auto& words = placed.sentence.words;
  return {placed.source, placed.offset + words[match.front()].begin,
          placed.offset + words[match.back()].end};
}

bool ends_with_colon(std::string_view text) { return trim(text).ends_with(':'); }

bool negates(const Sentence& sentence) {
  return std::any_of(sentence.words.begin(), sentence.words.end(),
                     [](const Lexeme& word) { return word.negator; });
}

/// Who comes, as far as the text says.
struct People {
  std::optional<int> youngest;
  std::optional<int> oldest;
  int children = 0;  // 0: not said, or of several groups
  int adults = 0;
  bool beginners = false;
  Span span;  // where the children are counted
};

// Guidance, not law. NSPCC, recommended adult to child ratios: ages 2-3 1:4 (value from memory),
// 4-8 1:6, 9-12 1:8, 13-18 1:10, and always two adults at least.
int adults_needed(int children, int youngest) {
  const int each = youngest < 4 ? 4 : youngest < 9 ? 6 : youngest < 13 ? 8 : 10;
  return std::max(2, (children + each - 1) / each);
}

}  // namespace

struct Guard::Compiled {
  Compiled(std::shared_ptr<const plan::DangerBook> from, std::string_view image)
      : book(std::move(from)), words(*book, image) {
    for (const plan::Danger& danger : book->dangers) {
      Compiled1 one{&danger, {}, {}, {}};
      for (const plan::Words& w : danger.says) one.says.push_back(&words.pattern(w));
      for (const plan::Words& w : danger.unless) one.unless.push_back(&words.pattern(w));
      for (const plan::Words& w : danger.answered) one.answered.push_back(&words.pattern(w));
      dangers.push_back(std::move(one));
    }
    for (const auto& [name, patterns] : book->sayings) {
      for (const plan::Words& w : patterns) sayings[name].push_back(&words.pattern(w));
    }
    words.seal();
  }

  bool any(const std::vector<const Pattern*>& patterns, const Sentence& sentence) const {
    return std::any_of(patterns.begin(), patterns.end(),
                       [&](const Pattern* one) { return words.find(*one, sentence).has_value(); });
  }

  const std::vector<const Pattern*>& saying(std::string_view name) const {
    static const std::vector<const Pattern*> kNone;
    const auto found = sayings.find(name);
    return found == sayings.end() ? kNone : found->second;
  }

  People people(const std::vector<Placed>& sentences, const plan::Session& session) const {
    People out;
    int groups = 0;
    for (const Placed& placed : sentences) {
      const Sentence& sentence = placed.sentence;
      for (const Pattern* one : saying("children-count")) {
        const auto match = words.find(*one, sentence);
        if (!match) continue;
        ++groups;
        out.children = numbers_of(sentence, *match).front();
        out.span = span_of(placed, *match);
        break;
      }
      for (const Pattern* one : saying("ages")) {
        const auto match = words.find(*one, sentence);
        if (!match) continue;
        for (const int age : numbers_of(sentence, *match)) {
          if (age < 2 || age > 17) continue;
          out.youngest = std::min(out.youngest.value_or(age), age);
          out.oldest = std::max(out.oldest.value_or(age), age);
        }
      }
      for (const Pattern* one : saying("adult-count")) {
        if (const auto match = words.find(*one, sentence))
          out.adults += numbers_of(sentence, *match).front();
      }
      for (const Pattern* one : saying("one-adult-more")) {
        if (words.find(*one, sentence)) ++out.adults;
      }
      out.beginners = out.beginners || any(saying("beginners"), sentence);
    }
    if (groups != 1) out.children = 0;
    if (session.group && session.group->youngest) {
      out.youngest = session.group->youngest->value;
      out.oldest = session.group->oldest ? session.group->oldest->value : *out.youngest;
      out.children = 0;  // `too-few-adults` judges the group
    }
    if (session.adults || session.gymnasts) out.children = 0;
    return out;
  }

  /// All sentences of one file. What stands below `Never at home:` is forbidden.
  void read(const Source& source, std::vector<Placed>& out) const {
    const std::string text = readable(source.text());
    constexpr std::uint32_t kNowhere = 1'000'000;
    std::uint32_t forbidden_from = kNowhere;  // entries indented this far are forbidden
    bool heading_forbids = false;
    for (const RawUnit& unit : raw_units(text)) {
      const std::string_view part =
          std::string_view(text).substr(unit.begin, unit.end - unit.begin);
      std::vector<Sentence> all = words.sentences(part);
      if (unit.kind == RawUnit::Kind::kHeading) {
        forbidden_from = kNowhere;
        heading_forbids =
            std::any_of(all.begin(), all.end(), [](const Sentence& s) { return s.forbidden; });
      } else if (unit.kind != RawUnit::Kind::kItem || unit.indent < forbidden_from) {
        forbidden_from = kNowhere;
      }
      for (Sentence& sentence : all) {
        sentence.forbidden = sentence.forbidden || heading_forbids || forbidden_from != kNowhere;
        out.push_back({sentence, &source, unit.begin, {}});
      }
      const bool leads =
          !all.empty() && ends_with_colon(part) && (negates(all.back()) || all.back().forbidden);
      if (leads && forbidden_from == kNowhere)
        forbidden_from = unit.kind == RawUnit::Kind::kItem ? unit.indent + 1 : 0;
    }
  }

  std::shared_ptr<const plan::DangerBook> book;
  WordPatterns words;
  std::vector<Compiled1> dangers;
  std::map<std::string, std::vector<const Pattern*>, std::less<>> sayings;
};

Guard::Guard(std::shared_ptr<const plan::DangerBook> book, Diagnostics& diagnostics,
             std::string_view image)
    : compiled_(std::make_unique<Compiled>(std::move(book), image)) {
  for (const plan::Words& one : compiled_->words.broken()) {
    diagnostics.error(kBadValue, one.span, fmt::format("‘{}’ is no pattern", one.text),
                      "see the head of the file for how patterns are written");
  }
}
std::string Guard::image() const {
  return compiled_->words.broken().empty() ? compiled_->words.image() : std::string();
}

Guard::~Guard() = default;

namespace {

/// What a session's drills have taken from a library: words with the plan's lines they came to.
struct Library {
  std::set<const Source*> sources;
  std::vector<std::pair<plan::Words, Span>> inherited;
};

Library library_of(const plan::Session& session, const plan::DrillBook& book) {
  Library out;
  for (const DrillLine& line : drill_lines(session)) {
    const plan::Drill& drill = *line.drill;
    if (drill.known != nullptr) out.sources.insert(drill.known->source.get());
    for (const plan::LibraryDrill* known : drill.known_choices) {
      if (known != nullptr) out.sources.insert(known->source.get());
    }
    for (const Named& named : named_with_substitutes(line, book))
      out.sources.insert(named.drill->source.get());
    const auto add = [&](const plan::Words& words) {
      if (out.sources.count(words.span.source) > 0)
        out.inherited.emplace_back(words, drill.name.span);
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

// The library has said of this line that it is not for home.
bool is_refused(const Span& span, const Diagnostics& diagnostics) {
  const auto same_line = [&](const Span& other) {
    return other.source == span.source &&
           other.source->line_column(other.begin).line == span.source->line_column(span.begin).line;
  };
  const auto& all = diagnostics.all();
  return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) {
    return d.name == "spotter-at-home" &&
           (same_line(d.span) || std::any_of(d.labels.begin(), d.labels.end(),
                                             [&](const Label& l) { return same_line(l.span); }));
  });
}

bool concerns(const plan::Danger& danger, plan::Place place) {
  if (danger.at == plan::Danger::At::kAnywhere) return true;
  return (danger.at == plan::Danger::At::kHome) == (place == plan::Place::kHome);
}

}  // namespace

bool Guard::says(std::string_view saying, std::string_view text) const {
  const auto patterns = compiled_->sayings.find(saying);
  if (patterns == compiled_->sayings.end()) return false;
  const std::vector<Sentence> all = compiled_->words.sentences(text);
  return std::any_of(all.begin(), all.end(), [&](const Sentence& sentence) {
    return compiled_->any(patterns->second, sentence);
  });
}

bool Guard::says(std::string_view saying, const plan::Session& session) const {
  return std::any_of(session.sources.begin(), session.sources.end(), [&](const SourcePtr& source) {
    const std::string text = readable(source->text());
    const std::vector<RawUnit> units = raw_units(text);
    return std::any_of(units.begin(), units.end(), [&](const RawUnit& unit) {
      return says(saying, std::string_view(text).substr(unit.begin, unit.end - unit.begin));
    });
  });
}

void Guard::check(const plan::Session& session, const plan::DrillBook& book,
                  Diagnostics& diagnostics) const {
  const Compiled& all = *compiled_;
  // In a hall a coach reads the card, which says it first; a family has nobody to ask.
  const bool at_home = session.place.value == plan::Place::kHome;
  std::vector<Placed> sentences;
  const Library library = library_of(session, book);
  for (const SourcePtr& source : session.sources) {
    if (library.sources.count(source.get()) == 0) all.read(*source, sentences);
  }
  for (const auto& [words, place] : library.inherited) {
    for (Sentence& sentence : all.words.sentences(words.text))
      sentences.push_back({std::move(sentence), place.source, 0, place});
  }
  const People people = all.people(sentences, session);
  if (!at_home && people.children > 0 && people.youngest && people.adults > 0) {
    const int needed = adults_needed(people.children, *people.youngest);
    if (people.adults < needed) {
      diagnostics.add(
          {Severity::kError,
           "too-few-adults",
           people.span,
           fmt::format("{} children, the youngest {} years old, need {} adults, and the "
                       "plan speaks of {}",
                       people.children, *people.youngest, needed, people.adults),
           {},
           fmt::format("find another adult and write ‘adults: {}’ between the --- "
                       "lines, or take fewer children",
                       needed)});
    }
  }
  Gathered gathered;
  for (const Compiled1& one : all.dangers) {
    const plan::Danger& danger = *one.danger;
    if (!concerns(danger, session.place.value)) continue;
    const bool young = people.beginners || (people.oldest && *people.oldest < danger.below);
    if (danger.below > 0 && !young) continue;
    const bool answered =
        !one.answered.empty() &&
        std::any_of(sentences.begin(), sentences.end(),
                    [&](const Placed& placed) { return all.any(one.answered, placed.sentence); });
    if (answered) continue;
    for (const Placed& placed : sentences) {
      for (const Pattern* pattern : one.says) {
        const auto match = all.words.find(*pattern, placed.sentence);
        if (!match || all.any(one.unless, placed.sentence)) continue;
        const Span span = span_of(placed, *match);
        if (is_refused(span, diagnostics)) break;
        gathered.add(danger.name.text, span, "here too", [&] {
          return Diagnostic{at_home ? Severity::kError : Severity::kWarning,
                            danger.check.text,
                            span,
                            fmt::format("{}: {}", quoted(span.text()), danger.what),
                            {},
                            danger.instead};
        });
        break;
      }
    }
  }
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
