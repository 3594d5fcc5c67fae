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

// The entry of a block map that a byte of it belongs to: the last line at or before it that begins
// in the first column. Empty when the file is not written so.
std::string_view entry_at(std::string_view text, std::size_t at) {
  std::string_view out;
  for (std::size_t begin = 0; begin <= std::min(at, text.size());) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string_view line = text.substr(begin, end - begin);
    const bool is_entry = !line.empty() && (is_letter(line.front()) || line.front() == '"');
    if (is_entry) out = trim(line.substr(0, std::min(line.find(':'), line.size())));
    begin = end + 1;
  }
  return out;
}

}  // namespace

BrokenClub::BrokenClub(const plan::Club& club, const Diagnostics& found) {
  for (const plan::Group& group : club.groups) known_.insert(lower_ascii(group.name.text));
  for (const Diagnostic& one : found.all()) {
    if (one.severity != Severity::kError) continue;
    // Of a file that cannot be read as YAML there is no club.
    const bool inside = club.source != nullptr && one.span.source == club.source.get();
    const std::string_view entry = inside ? entry_at(club.source->text(), one.span.begin) : "";
    if (entry == "groups") {
      const plan::Group* group = nullptr;
      for (const plan::Group& each : club.groups) {
        const bool before = each.name.span.begin <= one.span.begin;
        if (before && (!group || each.name.span.begin > group->name.span.begin)) group = &each;
      }
      if (group != nullptr) groups_.insert(lower_ascii(group->name.text));
      any_group_ = true;
    } else if (entry == "hall" || entry == "staff") {
      gym_plans_ = true;
    } else if (entry == "contact" || entry == "contacts" || entry == "return-slip" ||
               entry == "home-safety") {
      home_sheets_ = true;
    } else {
      all_ = true;
    }
  }
}

bool BrokenClub::holds_back(const plan::Session& session) const {
  if (all_ || (gym_plans_ && session.place.value == plan::Place::kGym)) return true;
  const std::string group = lower_ascii(session.group_name.text);
  if (group.empty() || !any_group_) return false;
  // A group that could not be read may be the one the plan means.
  return groups_.count(group) > 0 || known_.count(group) == 0;
}

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
