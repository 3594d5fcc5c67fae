// See the header.
#include "club/broken.h"

#include <algorithm>
#include <set>

#include "base/text.h"

namespace chalkleaf::club {
namespace {

const SourcePtr* own_source(const Figures& figures, const Source* wanted) {
  const auto begin = figures.sources.begin() + static_cast<std::ptrdiff_t>(figures.shipped);
  const auto found = std::find_if(begin, figures.sources.end(),
                                  [&](const SourcePtr& source) { return source.get() == wanted; });
  return found == figures.sources.end() ? nullptr : &*found;
}

}  // namespace

BrokenFigures::BrokenFigures(const Figures& figures, const Diagnostics& found)
    : catalogue_(figures.catalogue.get()), found_(found) {
  for (const Diagnostic& one : found_.all()) place(figures, one);
}

// A figure's description goes from its name to the next name of the file.
void BrokenFigures::place(const Figures& figures, const Diagnostic& diagnostic) {
  const bool is_error = diagnostic.severity == Severity::kError;
  const Span& span = diagnostic.span;
  const SourcePtr* source = own_source(figures, span.source);
  if (source == nullptr) {
    if (is_error) anywhere_.push_back(diagnostic);
    return;
  }
  const std::string* nearest = nullptr;
  std::uint32_t at = 0;
  bool has_figures = false;
  for (const auto& [name, place] : figures.described) {
    if (place.source != span.source) continue;
    has_figures = true;
    if (place.begin > span.begin || (nearest != nullptr && place.begin < at)) continue;
    nearest = &name;
    at = place.begin;
  }
  if (is_error) {
    BadFile& file = files_[span.source];
    if (file.errors.empty()) file.text = lower_ascii((*source)->text());
    file.has_figures = has_figures;
    file.errors.push_back(diagnostic);
  }
  if (nearest != nullptr) by_name_[lower_ascii(*nearest)].push_back(diagnostic);
  // A second description of a name stands in no list: its name is what is pointed at.
  const std::string pointed =
      lower_ascii(trim((*source)->text().substr(span.begin, span.end - span.begin)));
  if (catalogue_->is_described(pointed)) by_name_[pointed].push_back(diagnostic);
}

void BrokenFigures::report(const std::string& name, Diagnostics& found) const {
  if (name.empty()) return;
  const auto add = [&](const std::vector<Diagnostic>& all) {
    for (const Diagnostic& one : all) found.add(one);
  };
  const std::string lower = lower_ascii(name);
  const figure::Figure* figure = catalogue_->find(name);
  const bool described = catalogue_->is_described(name);
  const auto known = by_name_.find(figure != nullptr ? lower_ascii(figure->name.text) : lower);
  if (known != by_name_.end()) add(known->second);
  for (const auto& [source, file] : files_) {
    const bool is_named = file.text.find(lower) != std::string::npos;
    // It begins from another one, and somewhere on the way is a mistake; or it stands in the part
    // of a file that could not be read, or may do so.
    const bool lost = figure == nullptr && (described ? known == by_name_.end() : is_named);
    if (lost || (!file.has_figures && (is_named || figure == nullptr))) add(file.errors);
  }
  add(anywhere_);
}

void BrokenFigures::report(const plan::Session& session, Diagnostics& found) const {
  if (catalogue_ == nullptr || found_.all().empty()) return;
  std::set<std::string> names;
  for (const plan::Part& part : session.parts) {
    for (const plan::Drill* drill : plan::all_drills_of(part)) {
      const auto take = [&](const plan::Words& name) {
        // What the shelf names ships with the program: no file of the club's is needed for it.
        const plan::LibraryDrill* known = drill->known;
        const SourcePtr* shelf = nullptr;
        if (known != nullptr) shelf = known->of_shelf ? &known->source : &known->shelf_source;
        const bool of_shelf = shelf != nullptr && *shelf && name.span.source == shelf->get();
        if (!of_shelf) names.insert(name.text);
      };
      for (const plan::Words& name : drill->figures) take(name);
      take(drill->figure_easier);
      take(drill->figure_harder);
    }
  }
  for (const std::string& name : names) report(name, found);
}

bool has_unknown_drill(const plan::Session& session, const plan::DrillBook& drills) {
  const auto unknown = [&](const plan::Words& name) { return drills.find(name.text) == nullptr; };
  for (const plan::Part& part : session.parts) {
    for (const plan::Drill* drill : plan::all_drills_of(part)) {
      if (drill->choices.empty()
              ? unknown(drill->name)
              : std::any_of(drill->choices.begin(), drill->choices.end(), unknown))
        return true;
      if (drill->dose && std::any_of(drill->dose->moves.begin(), drill->dose->moves.end(),
                                     [&](const auto& move) { return unknown(move.name); }))
        return true;
      if (std::any_of(drill->substitutes.begin(), drill->substitutes.end(),
                      [&](const auto& one) { return unknown(one.name); }))
        return true;
    }
  }
  return false;
}

}  // namespace chalkleaf::club
