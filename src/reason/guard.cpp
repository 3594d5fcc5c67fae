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
#include "reason/guard_library.h"
#include "reason/guard_people.h"
#include "reason/raw_text.h"
#include "reason/second_reading.h"
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
  bool above = false;    // it stands in the text above all drills
  bool joined = false;   // all sentences of an entry as one
  std::size_t line = 0;  // of the lines that were weighed
};

/// A paragraph, an entry, a heading or a quote of a file as the second reading sees it.
struct WeighedLine {
  Span span;  // empty: of words that a library has given
  LinePlace place;
  double odds = 0;
  bool forbidden = false;
  bool spoken_of = false;
};

// Headings, rows of tables and a word or two are too little to weigh.
bool is_sentence(const WeighedLine& line) {
  constexpr std::ptrdiff_t kFewWords = 3;
  const std::string_view text = line.span.text();
  return line.place.kind != LinePlace::Kind::kHeading && !text.starts_with('|') &&
         std::count(text.begin(), text.end(), ' ') >= kFewWords - 1;
}

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

LinePlace::Kind line_kind(RawUnit::Kind kind) {
  if (kind == RawUnit::Kind::kHeading) return LinePlace::Kind::kHeading;
  return kind == RawUnit::Kind::kItem ? LinePlace::Kind::kItem : LinePlace::Kind::kText;
}

// Where the words of a match stand in the file.
Span span_of(const Placed& placed, const Match& match) {
  if (placed.place) return placed.place;
  const auto& words = placed.sentence.words;
  return {placed.source, placed.offset + words[match.front()].begin,
          placed.offset + words[match.back()].end};
}

constexpr int kGrown = 18;  // years: who is an adult

bool ends_with_colon(std::string_view text) { return trim(text).ends_with(':'); }

bool negates(const Sentence& sentence) {
  return std::any_of(sentence.words.begin(), sentence.words.end(),
                     [](const Lexeme& word) { return word.negator; });
}

bool concerns(const plan::Danger& danger, plan::Place place) {
  if (danger.at == plan::Danger::At::kAnywhere) return true;
  return (danger.at == plan::Danger::At::kHome) == (place == plan::Place::kHome);
}

bool is_for_these(const plan::Danger& danger, const People& people) {
  return danger.below == 0 || people.beginners || (people.oldest && *people.oldest < danger.below);
}

// The danger that a line fits best, of those that may be meant; null when it fits none.
template <class MayBe>
const plan::Danger* danger_of(std::string_view line, const std::vector<Sentence>& sentences,
                              LinePlace place, const SecondReading& second,
                              const plan::DangerBook& book, MayBe may_be) {
  std::vector<std::string_view> checks;
  for (const plan::Danger& one : book.dangers) {
    if (may_be(one)) checks.push_back(one.check.text);
  }
  const auto check = second.check_of(line, sentences, place, checks);
  const auto found = std::find_if(book.dangers.begin(), book.dangers.end(), [&](const auto& one) {
    return check && one.check.text == *check && may_be(one);
  });
  return found == book.dangers.end() ? nullptr : &*found;
}

}  // namespace

struct Guard::Compiled {
  Compiled(std::shared_ptr<const plan::DangerBook> from, std::string_view image,
           LineWeightsPtr weights)
      : book(std::move(from)), words(*book, image), second(*book, std::move(weights)) {
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

  void weigh(std::string_view text, const std::vector<Sentence>& all, LinePlace place, Span span,
             std::vector<WeighedLine>& lines) const {
    lines.push_back({span, place, second.odds(text, all, place), false, false});
  }

  /// All sentences of one file. What stands below `Never at home:` is forbidden.
  void read(const Source& source, bool at_home, std::vector<Placed>& out,
            std::vector<WeighedLine>& lines) const {
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
      weigh(part, all, {line_kind(unit.kind), at_home}, {&source, unit.begin, unit.end}, lines);
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
        out.push_back(
            {sentence, &source, unit.begin, {}, unit.kind, above, false, lines.size() - 1});
        lines.back().forbidden = lines.back().forbidden || sentence.forbidden;
      }
      if (unit.kind == RawUnit::Kind::kItem && is_one_thought(all)) {
        Sentence whole = joined(all);
        whole.forbidden = whole.forbidden || heading_forbids || forbidden_from != kNowhere;
        out.push_back(
            {std::move(whole), &source, unit.begin, {}, unit.kind, false, true, lines.size() - 1});
      }
      const bool leads =
          !all.empty() && ends_with_colon(part) && (negates(all.back()) || all.back().forbidden);
      if (leads && forbidden_from == kNowhere)
        forbidden_from = unit.kind == RawUnit::Kind::kItem ? unit.indent + 1 : 0;
    }
  }

  /// Lines in which no pattern has found anything and that are dangerous by their words.
  void tell_others(const std::vector<WeighedLine>& lines, plan::Place place, const People& people,
                   Gathered& gathered) const {
    for (const WeighedLine& line : lines) {
      if (line.spoken_of || line.forbidden || !line.span || !is_sentence(line)) continue;
      if (second.alone(line.odds) != SecondReading::Belief::kSure) continue;
      const std::string_view text = line.span.text();
      const plan::Danger* danger = danger_of(
          text, words.sentences(text), line.place, second, *book,
          [&](const plan::Danger& d) { return concerns(d, place) && is_for_these(d, people); });
      if (danger == nullptr) continue;
      const bool of_people = danger->check.text == "danger-alone";
      if (of_people && second.alone_of_people(line.odds) != SecondReading::Belief::kSure) continue;
      gathered.add(danger->check.text + "!", line.span, "here too", [&] {
        return Diagnostic{Severity::kWarning,
                          danger->check.text,
                          line.span,
                          fmt::format("{}: {}", quoted(text), danger->what),
                          {},
                          danger->instead};
      });
    }
  }

  std::shared_ptr<const plan::DangerBook> book;
  WordPatterns words;
  SecondReading second;
  std::vector<Compiled1> dangers;
  std::map<std::string, std::vector<const Pattern*>, std::less<>> sayings;
};

Guard::Guard(std::shared_ptr<const plan::DangerBook> book, Diagnostics& diagnostics,
             std::string_view image, LineWeightsPtr weights)
    : compiled_(std::make_unique<Compiled>(std::move(book), image, std::move(weights))) {
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

void Guard::check(const plan::Session& session, const plan::DrillBook& book,
                  Diagnostics& diagnostics) const {
  const Compiled& all = *compiled_;
  // In a hall a coach reads the card, which says it first; a family has nobody to ask.
  const bool at_home = session.place.value == plan::Place::kHome;
  std::vector<Placed> sentences;
  std::vector<WeighedLine> lines;
  const Inherited library = inherited_words(session, book);
  for (const SourcePtr& source : session.sources) {
    if (library.sources.count(source.get()) == 0 && !is_shipped(*source))
      all.read(*source, at_home, sentences, lines);
  }
  for (const auto& [words, place] : library.words) {
    std::vector<Sentence> said = all.words.sentences(words.text);
    all.weigh(words.text, said, {LinePlace::Kind::kItem, at_home}, {}, lines);
    for (Sentence& sentence : said)
      sentences.push_back({std::move(sentence), place.source, 0, place, RawUnit::Kind::kItem, false,
                           false, lines.size() - 1});
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
      WeighedLine& whole = lines[placed.line];
      // Where it stands and who comes makes these dangerous, not their words.
      const bool by_place = danger.when == plan::Danger::When::kCold || danger.below > 0;
      const auto belief =
          by_place ? SecondReading::Belief::kSure : all.second.with_pattern(whole.odds);
      if (belief == SecondReading::Belief::kNone) continue;
      whole.spoken_of = true;
      // Two entries may know the same danger: one check speaks once of a line.
      const std::uint32_t line = found->source->line_column(found->begin).line;
      const auto [one_of_line, is_new] =
          spoken_of.try_emplace({danger.check.text, found->source, line}, &danger);
      if (!is_new && one_of_line->second != &danger) continue;
      last = &placed;
      const bool sure = belief == SecondReading::Belief::kSure;
      gathered.add(danger.name.text + (sure ? "" : "?"), *found, "here too", [&] {
        return Diagnostic{
            sure ? (at_home ? Severity::kError : Severity::kWarning) : Severity::kNote,
            danger.check.text,
            *found,
            fmt::format("{}{}: {}", quoted(found->text()), sure ? "" : ", if it is meant so",
                        danger.what),
            {},
            danger.instead};
      });
    }
  }
  all.tell_others(lines, session.place.value, people, gathered);
  gathered.add_to(diagnostics);
}

}  // namespace chalkleaf::reason
