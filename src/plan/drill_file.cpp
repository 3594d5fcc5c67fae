// read_drill of plan/read.h: one file of the drill library.
//
// Its body is read as what stands below a drill in a plan, so that a coach learns one language.
// Tested by tests/plan/drill_file_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "base/files.h"
#include "base/text.h"
#include "plan/attributes.h"
#include "plan/blocks.h"
#include "plan/front_matter.h"
#include "plan/keys.h"
#include "plan/known_keys.h"
#include "plan/lines.h"
#include "plan/read.h"
#include "plan/stray_lines.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;
using YamlKind = source::YamlNode::Kind;

constexpr const char* kWhere = "a drill's front matter";
// An honest drill has a dozen lines below it; each is set on every sheet of every plan that uses
// it.
constexpr std::size_t kMostDrillLines = 100;
constexpr std::size_t kMostNames = 20;
// No honest repetition has more landings, or more weight on the hands.
constexpr int kMostCounted = 50;

// `two-foot_landing.md` is about the drill ‘Two foot landing’.
Words name_of_file(const SourcePtr& source) {
  std::string name = file_stem(source->path());
  std::replace_if(
      name.begin(), name.end(), [](char c) { return c == '-' || c == '_'; }, ' ');
  if (!name.empty() && name[0] >= 'a' && name[0] <= 'z') {
    name[0] = static_cast<char>(name[0] - 'a' + 'A');
  }
  return {name, {source.get(), 0, 0}};
}

Value<DrillKind> parse_kind(std::string_view text) {
  const std::string word = lower_ascii(trim(text));
  if (const auto kind = kind_of_name(word)) return *kind;
  const auto meant = closest(word, kind_names());
  std::vector<std::string> quoted;
  for (const std::string& name : kind_names()) quoted.push_back(fmt::format("`{}`", name));
  return tl::unexpected(ValueProblem{fmt::format("‘{}’ is not a kind of drill", trim(text)),
                                     meant ? fmt::format("did you mean `{}`?", *meant)
                                           : fmt::format("write {}", join_list(quoted, "or"))});
}

// One of a few words, with what to write instead.
auto one_of(std::vector<std::string> words, std::string what) {
  return [words = std::move(words),
          what = std::move(what)](std::string_view text) -> Value<std::string> {
    const std::string word = lower_ascii(trim(text));
    if (std::find(words.begin(), words.end(), word) != words.end()) return word;
    std::vector<std::string> quoted;
    for (const std::string& name : words) quoted.push_back(fmt::format("`{}`", name));
    return tl::unexpected(ValueProblem{fmt::format("‘{}’ is not {}", trim(text), what),
                                       fmt::format("write {}", join_list(quoted, "or"))});
  };
}

// Adult Compendium of Physical Activities, Ainsworth et al. 2011: a code is five digits.
Value<std::string> parse_mets(std::string_view text) {
  text = trim(text);
  const bool fine =
      text.size() == 5 && text.find_first_not_of("0123456789") == std::string_view::npos;
  if (fine) return std::string(text);
  return tl::unexpected(ValueProblem{fmt::format("‘{}’ is not a code of the compendium", text),
                                     "write its five digits in quotation marks: `\"02024\"`"});
}

// `towel, held tight`: the kit, and how it is used.
KitUse kit_use(const Words& written) {
  const std::size_t comma = written.text.find(',');
  if (comma == std::string::npos) return {written, {}};
  const bool exact = written.span.text() == written.text;
  const auto piece = [&](std::size_t begin, std::size_t end) {
    const std::string_view text = trim(std::string_view(written.text).substr(begin, end - begin));
    Words out{std::string(text), written.span};
    if (exact) {
      out.span.begin += static_cast<std::uint32_t>(text.data() - written.text.data());
      out.span.end = out.span.begin + static_cast<std::uint32_t>(text.size());
    }
    return out;
  };
  return {piece(0, comma), piece(comma + 1, written.text.size())};
}

/// The front matter of a drill.
class FrontReader {
 public:
  FrontReader(const source::YamlNode& front, LibraryDrill& drill, Diagnostics& diagnostics)
      : keys_(front, kWhere, known_keys(KeyMap::kDrill), diagnostics),
        drill_(drill),
        diagnostics_(diagnostics) {}

  void read() {
    drill_.name = keys_.text("title");
    also();
    if (const auto kind = keys_.value("kind", parse_kind)) drill_.kind = *kind;
    drill_.figure = keys_.text("figure");
    drill_.figure_easier = keys_.text("figure-easier");
    drill_.figure_harder = keys_.text("figure-harder");
    drill_.plain = keys_.text("plain");
    loads();
    if (const auto* node = keys_.find("stretches")) {
      drill_.stretches = list_words(*node, "stretches", diagnostics_);
    }
    needs();
    drill_.at = keys_.text("at");
    drill_.spotter = keys_.value("spotter", parse_yes_no);
    drill_.coach = keys_.value("coach", parse_yes_no);
    drill_.home = keys_.value("home", parse_yes_no);
    never_at_home(drill_.spotter, "a drill with a spotter is never for home",
                  "a spotter stands by");
    never_at_home(drill_.coach, "a drill that a coach teaches is never for home",
                  "a coach teaches it");
    sides();
    drill_.curve = chosen("curve", {"dish", "arch"}, "a curve of the body");
    drill_.level = keys_.value(
        "level", [](std::string_view text) { return parse_whole(text, 1, kHighestLevel); });
    drill_.pace = keys_.value(
        "pace", [](std::string_view text) { return parse_duration(text, Zero::kRefused); });
    drill_.changeover = keys_.value(
        "changeover", [](std::string_view text) { return parse_duration(text, Zero::kRefused); });
    drill_.effort = keys_.value(
        "effort", [](std::string_view text) { return parse_whole(text, 1, kHighestEffort); });
    drill_.longest = keys_.value(
        "longest", [](std::string_view text) { return parse_duration(text, Zero::kRefused); });
    trains();
    each();
    const auto shelf = keys_.value("shelf", parse_on_off);
    drill_.own_only = shelf && !shelf->value;
    if (auto mets = keys_.value("mets", parse_mets)) drill_.mets = {mets->value, mets->span};
  }

 private:
  Words chosen(std::string_view key, std::vector<std::string> words, std::string what) {
    auto value = keys_.value(key, one_of(std::move(words), std::move(what)));
    return value ? Words{std::move(value->value), value->span} : Words{};
  }

  void also() {
    const source::YamlNode* node = keys_.find("also");
    if (node == nullptr) return;
    drill_.also = list_words(*node, "also", diagnostics_);
    if (drill_.also.size() <= kMostNames) return;
    diagnostics_.error(kBadValue, drill_.also[kMostNames].span,
                       fmt::format("this drill has more than {} other names", kMostNames),
                       "keep those that people use");
    drill_.also.resize(kMostNames);
  }

  void loads() {
    const source::YamlNode* node = keys_.find("loads");
    if (node == nullptr || node->unreadable) return;
    if (node->kind != YamlKind::kMap) {
      drill_.loads_none = lower_ascii(trim(node->text)) == "none";
      if (drill_.loads_none) return;
      return diagnostics_.error(
          kBadValue, node->span, "‘loads’ must be regions of the body, each with its load",
          "write it as `loads: {wrists: 2, shoulders: 1}`; 1 is light, 3 heavy; or `loads: none`");
    }
    const Keys regions(*node, "the loads", known_keys(KeyMap::kLoads), diagnostics_);
    for (const std::string& region : known_keys(KeyMap::kLoads)) {
      const auto load = regions.value(
          region, [](std::string_view text) { return parse_whole(text, 1, kHeaviestLoad); });
      if (load) drill_.loads.push_back({{region, load->span}, *load});
    }
  }

  void trains() {
    const source::YamlNode* node = keys_.find("trains");
    if (node == nullptr) return;
    const std::vector<std::string>& known = trained_things();
    for (Words& one : list_words(*node, "trains", diagnostics_)) {
      one.text = lower_ascii(one.text);
      if (std::find(known.begin(), known.end(), one.text) != known.end()) {
        drill_.trains.push_back(std::move(one));
        continue;
      }
      const auto meant = closest(one.text, known);
      diagnostics_.error(kBadValue, one.span,
                         fmt::format("‘{}’ is nothing that a drill can train", one.text),
                         meant ? fmt::format("did you mean `{}`?", *meant)
                               : fmt::format("write one of these: {}", fmt::join(known, ", ")));
    }
  }

  void each() {
    const source::YamlNode* node = keys_.find("each");
    if (node == nullptr || node->unreadable) return;
    if (node->kind != YamlKind::kMap) {
      return diagnostics_.error(kBadValue, node->span, "‘each’ must say what one repetition counts",
                                "write it as `each: {hands: 1, landings: 1, inverted: 2 s}`");
    }
    const Keys counts(*node, "what each repetition counts", known_keys(KeyMap::kEachRepetition),
                      diagnostics_);
    const auto count = [](std::string_view text) { return parse_whole(text, 1, kMostCounted); };
    drill_.each.hands = counts.value("hands", count);
    drill_.each.landings = counts.value("landings", count);
    drill_.each.inverted = counts.value(
        "inverted", [](std::string_view text) { return parse_duration(text, Zero::kRefused); });
  }

  void needs() {
    const source::YamlNode* node = keys_.find("needs");
    if (node == nullptr) return;
    if (node->kind == YamlKind::kList) {
      for (const Words& one : list_words(*node, "needs", diagnostics_)) {
        drill_.needs.push_back(kit_use(one));
      }
      return;
    }
    const Words one = scalar_words(*node, "needs", diagnostics_);
    if (!one.empty()) drill_.needs.push_back(kit_use(one));
  }

  void sides() {
    const auto sides =
        keys_.value("sides", one_of({"each", "both"}, "how a drill takes its sides"));
    if (sides) drill_.one_sided = Sourced<bool>{sides->value == "each", sides->span};
  }

  void never_at_home(const std::optional<Sourced<bool>>& why, const char* message,
                     const char* label) {
    if (!why || !why->value || !drill_.home || !drill_.home->value) return;
    Diagnostic both{Severity::kError, kBadValue, drill_.home->span, message};
    both.labels.push_back({why->span, label});
    both.hint = "take one of the two lines out";
    diagnostics_.add(std::move(both));
    drill_.home->value = false;
  }

  Keys keys_;
  LibraryDrill& drill_;
  Diagnostics& diagnostics_;
};

/// The body, read into a Drill as if it stood below one.
class DrillBodyReader {
 public:
  DrillBodyReader(Drill& drill, LibraryDrill& out, Diagnostics& diagnostics)
      : drill_(drill), out_(out), diagnostics_(diagnostics) {}

  void read(const source::MarkNode& document) {
    for (const source::MarkNode& block : document.children) {
      this->block(block);
    }
  }

 private:
  void block(const source::MarkNode& node) {
    switch (node.kind) {
      case MarkKind::kHeading:
        return heading(node);
      case MarkKind::kParagraph:
        return paragraph(without_comments(node));
      case MarkKind::kList:
        for (const source::MarkNode& item : node.children) {
          read_attribute(item, below(drill_), diagnostics_);
        }
        return;
      case MarkKind::kQuote:
        if (auto safety = read_safety(node)) out_.safety.push_back(std::move(*safety));
        return;
      default:
        return add_notes(node, drill_.notes);
    }
  }

  void heading(const source::MarkNode& node) {
    const Words words = plain_words_of(printed_text(node));
    if (out_.name.empty() && node.level == 1) {
      out_.name = words;
      drill_.name = words;
    } else if (lower_ascii(words.text) != lower_ascii(out_.name.text)) {
      add_notes(node, drill_.notes);
    }
  }

  // `cue: push tall` without its dash, line by line; what else is said stays together.
  void paragraph(const source::MarkNode& node) {
    std::size_t begin = 0;
    for (const ParagraphLine& line : lines_in(node)) {
      const auto attribute = attribute_of(node.text.slice(line.begin, line.end));
      if (!attribute || !is_known(*attribute) || is_for_reader(*attribute)) continue;
      if (line.begin > begin) add_notes(stretch_of(node, begin, line.begin - 1), drill_.notes);
      diagnostics_.error(kBadValue, attribute->written.span,
                         fmt::format("‘{}’ has no dash before it", attribute->written.text),
                         fmt::format("write `- {}: …`", attribute->written.text));
      place_attribute(*attribute, line.span, below(drill_), diagnostics_);
      begin = line.end + 1;
    }
    if (begin == 0) return add_notes(node, drill_.notes);
    const std::size_t end = node.text.str().size();
    if (begin < end) add_notes(stretch_of(node, begin, end), drill_.notes);
  }

  // `Coach: …` is a paragraph for one reader, in a drill's file as in a plan.
  static bool is_for_reader(const Attribute& attribute) {
    return attribute.key == "coach" || attribute.key == "family" || attribute.key == "note";
  }

  Drill& drill_;
  LibraryDrill& out_;
  Diagnostics& diagnostics_;
};

// True when the drill may have a name that could not be read: a plan that uses it would not find
// it.
bool is_name_lost(const source::Document& document, const Words& title,
                  const Diagnostics& diagnostics) {
  if (!document.front) {
    const bool meant = has_front_matter(document) || document.source->line(1).starts_with("---");
    return title.empty() && meant;
  }
  const auto loses_name = [&](const Diagnostic& d) {
    if (d.severity != Severity::kError || !document.front_span.contains(d.span)) return false;
    if (d.name == "unknown-key") {
      const auto meant = closest(d.span.text(), known_keys(KeyMap::kDrill));
      return !meant || *meant == "title" || *meant == "also";
    }
    for (const auto& entry : document.front->entries) {
      const std::string key = lower_ascii(entry.first.text);
      const bool holds = entry.first.span.joined(entry.second.span).contains(d.span);
      if (holds && (key == "also" || (key == "title" && title.empty()))) return true;
    }
    return false;
  };
  const auto& all = diagnostics.all();
  return std::any_of(all.begin(), all.end(), loses_name);
}

// What a plan would print below the drill, cut where no person would read on.
void cut_to_size(Drill& body, const Span& front, Diagnostics& diagnostics) {
  std::size_t lines =
      body.cues.size() + body.easier.size() + body.harder.size() + body.notes.size();
  for (const Substitute& one : body.substitutes) {
    lines += 1 + one.cues.size() + one.easier.size() + one.harder.size() + one.notes.size();
  }
  if (lines <= kMostDrillLines) return;
  diagnostics.error(kBadValue, front,
                    fmt::format("this drill has more than {} lines", kMostDrillLines),
                    "keep what fits a sheet, and put the rest into drills of their own");
  body = {};
}

void take_over(Drill&& body, LibraryDrill& out, Diagnostics& diagnostics) {
  out.cues = std::move(body.cues);
  out.easier = std::move(body.easier);
  out.harder = std::move(body.harder);
  out.substitutes = std::move(body.substitutes);
  out.notes = std::move(body.notes);
  out.record = std::move(body.record);
  for (KitUse& use : body.uses) out.needs.push_back(std::move(use));
  if (!body.figures.empty()) {
    if (out.figure.empty()) {
      out.figure = std::move(body.figures.front());
    } else {
      diagnostics.error(kBadValue, body.figures.front().span, "this drill has two figures",
                        "keep one of the two: `figure` in the front matter, or the line here");
    }
  }
  if (body.at.empty()) return;
  if (out.at.empty()) {
    out.at = std::move(body.at);
  } else {
    diagnostics.error(kBadValue, body.at.span, "this drill says twice where it is done",
                      "keep one of the two: `at` in the front matter, or the line here");
  }
}

}  // namespace

LibraryDrill read_drill(const source::Document& document, Diagnostics& diagnostics) {
  LibraryDrill out;
  out.source = document.source;
  if (const auto place = place_written(document)) {
    out.name = name_of_file(document.source);
    diagnostics.error(kBadValue, *place, "this is a session, not a drill of the library",
                      "move the file to the folder ‘sessions’");
    return out;
  }
  if (document.front) FrontReader(*document.front, out, diagnostics).read();
  Drill body;
  body.name = out.name.empty() ? name_of_file(document.source) : out.name;
  DrillBodyReader(body, out, diagnostics).read(document.body);
  out.name_known = !is_name_lost(document, out.name, diagnostics);
  if (out.name.empty()) out.name = name_of_file(document.source);
  const Span begin{document.source.get(), 0,
                   static_cast<std::uint32_t>(document.source->line(1).size())};
  cut_to_size(body, begin, diagnostics);
  take_over(std::move(body), out, diagnostics);
  return out;
}

}  // namespace chalkleaf::plan
