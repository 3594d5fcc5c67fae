// Tested by tests/reason/library_checks_test.cpp and its neighbours.
#include "reason/drill_lines.h"

#include <algorithm>
#include <utility>

#include "reason/text_words.h"

namespace chalkleaf::reason {
namespace {

// More lines than this under one message are a list nobody reads.
constexpr std::size_t kMostLabels = 12;

void add_named(std::vector<Named>& out, const plan::LibraryDrill* drill, const plan::Words& words,
               Span span) {
  if (drill != nullptr) out.push_back({drill, words, span});
}

}  // namespace

std::vector<DrillLine> drill_lines(const plan::Session& session) {
  std::vector<DrillLine> out;
  for (const plan::Part& part : session.parts) {
    for (const plan::Drill* drill : plan::drills_of(part)) {
      out.push_back({&part, drill, nullptr});
      for (const plan::Drill& station : drill->stations) out.push_back({&part, &station, drill});
    }
  }
  return out;
}

bool is_inherited(const plan::Drill& drill, const plan::Words& words) {
  if (drill.known == nullptr || !words.span) return false;
  return words.span.source == drill.known->source.get() ||
         words.span.source == drill.known->shelf_source.get();
}

bool is_for_the_gym(const plan::LibraryDrill& drill) {
  return (drill.spotter && drill.spotter->value) || (drill.coach && drill.coach->value) ||
         (drill.home && !drill.home->value);
}

Span place_in_plan(const plan::Drill& drill, const plan::Words& words) {
  return is_inherited(drill, words) || !words.span ? drill.name.span : words.span;
}

std::vector<Named> named_by(const DrillLine& line, const plan::DrillBook& book) {
  const plan::Drill& drill = *line.drill;
  const std::string_view place = plan::place_of(*line.part, drill);
  std::vector<Named> out;
  if (drill.circuit) return out;  // its name is no drill's
  add_named(out, drill.known, drill.name, drill.name.span);
  for (const plan::Words& choice : drill.choices) {
    add_named(out, book.find(choice.text, place), choice, place_in_plan(drill, choice));
  }
  if (!drill.dose) return out;
  for (const plan::Move& move : drill.dose->moves) {
    add_named(out, book.find(move.name.text, place), move.name, place_in_plan(drill, move.name));
  }
  return out;
}

std::vector<Named> named_with_substitutes(const DrillLine& line, const plan::DrillBook& book) {
  std::vector<Named> out = named_by(line, book);
  const std::string_view place = plan::place_of(*line.part, *line.drill);
  for (const plan::Substitute& one : line.drill->substitutes) {
    add_named(out, book.find(one.name.text, place), one.name, place_in_plan(*line.drill, one.name));
  }
  return out;
}

bool is_pause(const plan::Drill& drill) {
  if (kind_of(drill) == plan::DrillKind::kRest) return true;
  const std::vector<TextWord> words = words_in(drill.name.text);
  if (words.size() >= 2 && words[0].text == "circle" &&
      is_one_of(words[1].text, {"time", "talk"})) {
    return true;
  }
  return has_one_of(words,
                    {"water", "drink", "register", "talk", "chat", "welcome", "news", "briefing",
                     "goodbye", "chalk", "question", "feedback", "sticker", "breath", "breathing"});
}

plan::DrillKind kind_of(const plan::Drill& drill) {
  return drill.known == nullptr ? plan::DrillKind::kUnknown : drill.known->kind.value;
}

void label_library(Diagnostics& diagnostics, Diagnostic& found, const plan::LibraryDrill& drill,
                   Span span, std::string message) {
  if (!span) return;
  diagnostics.keep(drill.source);
  if (drill.shelf_source) diagnostics.keep(drill.shelf_source);
  found.labels.push_back({span, std::move(message)});
}

void Gathered::repeat(Diagnostic& first, Span span, std::string_view again) {
  const auto& labels = first.labels;
  const bool known =
      span == first.span || std::any_of(labels.begin(), labels.end(),
                                        [&](const Label& label) { return label.span == span; });
  if (known || labels.size() >= kMostLabels) return;
  first.labels.push_back({span, std::string(again)});
}

void Gathered::add_to(Diagnostics& diagnostics) {
  for (Diagnostic& one : found_) diagnostics.add(std::move(one));
  found_.clear();
  places_.clear();
}

}  // namespace chalkleaf::reason
