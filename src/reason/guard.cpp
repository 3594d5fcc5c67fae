#include "reason/guard.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <tuple>
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
  RawUnit::Kind kind = RawUnit::Kind::kItem;
  bool above = false;   // it stands in the text above all drills
  bool joined = false;  // all sentences of an entry as one
};

// The time of a heading is that of the part.
void forget_times(Sentence& sentence) {
  for (Lexeme& word : sentence.words) word.seconds = -1;
}

// `Aerial, first attempt. Coach stays at the desk.` is one thought: what parts its sentences parts
// clauses.
constexpr std::size_t kLongestThought = 120;  // words; longer entries are essays
bool is_one_thought(const std::vector<Sentence>& all) {
  std::size_t words = 0;
  for (const Sentence& one : all) words += one.words.size();
  return all.size() > 1 && words <= kLongestThought;
}

Sentence joined(const std::vector<Sentence>& all) {
  Sentence out;
  for (const Sentence& one : all) {
    const int before = static_cast<int>(out.words.size());
    for (Lexeme word : one.words) {
      if (word.negated_by >= 0) word.negated_by += before;
      out.words.push_back(word);
    }
    if (before > 0) out.words[static_cast<std::size_t>(before)].edge = Lexeme::Edge::kClause;
    out.forbidden = out.forbidden || one.forbidden;
    if (out.has.empty()) out.has.assign(one.has.size(), false);
    for (std::size_t i = 0; i < one.has.size(); ++i) {
      if (one.has[i]) out.has[i] = true;
    }
  }
  return out;
}

// Where the words of a match stand in the file.
Span span_of(const Placed& placed, const Match& match) {
  if (placed.place) return placed.place;
  const auto& words = placed.sentence.words;
  return {placed.source, placed.offset + words[match.front()].begin,
          placed.offset + words[match.back()].end};
}

constexpr int kGrown = 18;  // years: who is an adult

// The shelf is read by a coach before it is shipped, and says itself what is not for home.
bool is_shipped(const Source& source) { return source.path().starts_with("shelf/"); }

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
  int named_adults = 0;  // `Jas (24) and Wes (33)`
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

  // Where a sentence says it: the first of the patterns that is found counts.
  std::optional<Span> find(const Compiled1& danger, const Placed& placed) const {
    for (const Pattern* pattern : danger.says) {
      const auto match = words.find(*pattern, placed.sentence);
      if (match && !any(danger.unless, placed.sentence)) return span_of(placed, *match);
    }
    return std::nullopt;
  }

  // From the first heading to the first sentence that raises the pulse; a plan without one stays
  // cold. Lines without a heading are no whole plan.
  std::pair<std::size_t, std::size_t> cold(const std::vector<Placed>& sentences) const {
    const auto is_heading = [](const Placed& one) { return one.kind == RawUnit::Kind::kHeading; };
    const auto raises = [&](const Placed& one) { return any(saying("raises"), one.sentence); };
    const auto begin = std::find_if(sentences.begin(), sentences.end(), is_heading);
    const auto warm = std::find_if(begin, sentences.end(), raises);
    return {static_cast<std::size_t>(begin - sentences.begin()),
            static_cast<std::size_t>(warm - sentences.begin())};
  }

  const std::vector<const Pattern*>& saying(std::string_view name) const {
    static const std::vector<const Pattern*> kNone;
    const auto found = sayings.find(name);
    return found == sayings.end() ? kNone : found->second;
  }

  // `Jas (24)`, `Coach Ivy`, and any other name within a sentence: too many rather than too few.
  int named_adults(const Placed& placed) const {
    const std::string_view text = placed.source->text();
    const auto& list = placed.sentence.words;
    const auto is_name = [&](const Lexeme& word) {
      const char c = text[placed.offset + word.begin];
      return c >= 'A' && c <= 'Z';
    };
    const std::vector<const Pattern*>& coach = saying("coach-word");
    int out = 0;
    for (std::size_t i = 0; i + 1 < list.size(); ++i) {
      const double age = list[i + 1].number;
      const bool aged = age >= kGrown && age < 100 && list[i + 1].edge != Lexeme::Edge::kNone &&
                        list[i].number < 0;
      const bool titled =
          is_name(list[i + 1]) && std::any_of(coach.begin(), coach.end(), [&](const Pattern* one) {
            return words.matches_at(*one, placed.sentence, i);
          });
      const bool called = i > 0 && is_name(list[i]) && list[i].number < 0 &&
                          list[i].begin + 1 < list[i].end &&
                          text[placed.offset + list[i].begin + 1] >= 'a';
      if (aged || titled || called) ++out;
    }
    return out;
  }

  People people(const std::vector<Placed>& sentences, const plan::Session& session) const {
    People out;
    int groups = 0;
    int more = 0;
    for (const Placed& placed : sentences) {
      if (placed.joined) continue;
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
        if (words.find(*one, sentence)) ++more;
      }
      if (placed.kind != RawUnit::Kind::kItem) out.named_adults += named_adults(placed);
      out.beginners = out.beginners || any(saying("beginners"), sentence);
    }
    // `Two coaches, Jas (24) and Wes (33)` are two.
    out.adults = std::max(out.adults, out.named_adults) + more;
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
    const std::vector<RawUnit> units = raw_units(text);
    const auto is_heading = [](const RawUnit& u) { return u.kind == RawUnit::Kind::kHeading; };
    bool above = std::any_of(units.begin(), units.end(), is_heading);
    for (const RawUnit& unit : units) {
      above = above && !is_heading(unit) && unit.kind != RawUnit::Kind::kItem;
      // A title asks nobody to do anything: what it promises stands in the lines below it.
      if (unit.kind == RawUnit::Kind::kTitle) continue;
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
        if (unit.kind == RawUnit::Kind::kHeading) forget_times(sentence);
        out.push_back({sentence, &source, unit.begin, {}, unit.kind, above, false});
      }
      if (unit.kind == RawUnit::Kind::kItem && is_one_thought(all)) {
        Sentence whole = joined(all);
        whole.forbidden = whole.forbidden || heading_forbids || forbidden_from != kNowhere;
        out.push_back({std::move(whole), &source, unit.begin, {}, unit.kind, false, true});
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
      if (words.span.source != nullptr && is_shipped(*words.span.source)) return;
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

// A danger that lies in the skill itself: who takes the skill out has taken it out as well.
bool is_skill(const plan::Danger& danger) {
  const std::string& check = danger.check.text;
  return check == "danger-upside-down" || check == "danger-back-bend" || check == "danger-neck";
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
    // `Look at the floor` of a drill clears none.
    if (is_shipped(*source)) return false;
    const std::string text = readable(source->text());
    const std::vector<RawUnit> units = raw_units(text);
    return std::any_of(units.begin(), units.end(), [&](const RawUnit& unit) {
      return unit.kind != RawUnit::Kind::kTitle &&
             says(saying, std::string_view(text).substr(unit.begin, unit.end - unit.begin));
    });
  });
}

std::vector<Span> Guard::said_in_prose(std::string_view saying,
                                       const plan::Session& session) const {
  std::vector<Span> out;
  for (const SourcePtr& source : session.sources) {
    if (is_shipped(*source)) continue;
    const std::string text = readable(source->text());
    for (const RawUnit& unit : raw_units(text)) {
      if (unit.kind != RawUnit::Kind::kText && unit.kind != RawUnit::Kind::kQuote &&
          unit.kind != RawUnit::Kind::kFront)
        continue;
      const std::string_view part =
          std::string_view(text).substr(unit.begin, unit.end - unit.begin);
      for (const Sentence& sentence : compiled_->words.sentences(part)) {
        if (!compiled_->any(compiled_->saying(saying), sentence)) continue;
        out.push_back({source.get(), unit.begin + sentence.words.front().begin,
                       unit.begin + sentence.words.back().end});
      }
    }
  }
  return out;
}

namespace {

// Who is there for how many. Read from prose, so said only when it is far off: a count may have
// left out who is named elsewhere.
void check_people(const People& people, Diagnostics& diagnostics) {
  if (people.children == 0 || !people.youngest || people.adults == 0) return;
  constexpr double kTolerance = 1.25;
  const int needed = adults_needed(people.children, *people.youngest);
  const int surely =
      adults_needed(static_cast<int>(people.children / kTolerance), *people.youngest);
  if (people.adults >= surely) return;
  diagnostics.add({Severity::kError,
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

bool is_for_these(const plan::Danger& danger, const People& people) {
  return danger.below == 0 || people.beginners || (people.oldest && *people.oldest < danger.below);
}

}  // namespace

void Guard::check(const plan::Session& session, const plan::DrillBook& book,
                  Diagnostics& diagnostics) const {
  const Compiled& all = *compiled_;
  // In a hall a coach reads the card, which says it first; a family has nobody to ask.
  const bool at_home = session.place.value == plan::Place::kHome;
  std::vector<Placed> sentences;
  const Library library = library_of(session, book);
  for (const SourcePtr& source : session.sources) {
    if (library.sources.count(source.get()) == 0 && !is_shipped(*source))
      all.read(*source, sentences);
  }
  for (const auto& [words, place] : library.inherited) {
    for (Sentence& sentence : all.words.sentences(words.text))
      sentences.push_back(
          {std::move(sentence), place.source, 0, place, RawUnit::Kind::kItem, false, false});
  }
  const People people = all.people(sentences, session);
  if (!at_home) check_people(people, diagnostics);
  const std::pair<std::size_t, std::size_t> cold = all.cold(sentences);
  std::map<std::tuple<std::string, const Source*, std::uint32_t>, const plan::Danger*> spoken_of;
  Gathered gathered;
  for (const Compiled1& one : all.dangers) {
    const plan::Danger& danger = *one.danger;
    if (!concerns(danger, session.place.value) || !is_for_these(danger, people)) continue;
    const bool answered =
        !one.answered.empty() &&
        std::any_of(sentences.begin(), sentences.end(),
                    [&](const Placed& placed) { return all.any(one.answered, placed.sentence); });
    if (answered) continue;
    const bool always = danger.when == plan::Danger::When::kAlways;
    const std::size_t end = always ? sentences.size() : cold.second;
    const Placed* last = nullptr;  // where it was found last
    for (std::size_t i = always ? 0 : cold.first; i < end; ++i) {
      const Placed& placed = sentences[i];
      const bool said = placed.joined && last != nullptr && last->source == placed.source &&
                        last->offset == placed.offset;
      const bool elsewhere = danger.in == plan::Danger::In::kDrills && placed.above;
      if (said || elsewhere) continue;
      const std::optional<Span> found = all.find(one, placed);
      if (!found || (is_skill(danger) && is_refused(*found, diagnostics))) continue;
      // Two entries may know the same danger: one check speaks once of a line.
      const std::uint32_t line = found->source->line_column(found->begin).line;
      const auto [one_of_line, is_new] =
          spoken_of.try_emplace({danger.check.text, found->source, line}, &danger);
      if (!is_new && one_of_line->second != &danger) continue;
      last = &placed;
      gathered.add(danger.name.text, *found, "here too", [&] {
        return Diagnostic{at_home ? Severity::kError : Severity::kWarning,
                          danger.check.text,
                          *found,
                          fmt::format("{}: {}", quoted(found->text()), danger.what),
                          {},
                          danger.instead};
      });
    }
  }
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
