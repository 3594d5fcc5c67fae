// The drills of a session as the checks look at them: line by line, with what the library knows of
// each, and one message for what is wrong in several lines. Inside the room.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "reason/check_parts.h"

namespace chalkleaf::reason {

/// A drill of the session, in order. A circuit is one, and each of its stations.
struct DrillLine {
  const plan::Part* part = nullptr;
  const plan::Drill* drill = nullptr;
  const plan::Drill* circuit = nullptr;  ///< whose station it is; else null
};
std::vector<DrillLine> drill_lines(const plan::Session& session);

/// Where to point for words of a drill: at themselves, or at the plan's line when they were taken
/// over from the library.
Span place_in_plan(const plan::Drill& drill, const plan::Words& words);

/// True for words of a drill that were taken over from the library: the club's or the shelf's.
bool is_inherited(const plan::Drill& drill, const plan::Words& words);
/// It needs a spotter or a coach, or is kept in the gym.
bool is_for_the_gym(const plan::LibraryDrill& drill);

/// A drill of the library that a line names, and in what way.
struct Named {
  const plan::LibraryDrill* drill = nullptr;
  plan::Words words;  ///< the name as it stands there
  Span span;          ///< in the plan
};
/// The line itself, its choices and its moves. Each that the library knows.
std::vector<Named> named_by(const DrillLine& line, const plan::DrillBook& book);
/// Besides those its substitutes.
std::vector<Named> named_with_substitutes(const DrillLine& line, const plan::DrillBook& book);

/// A line that is a pause or a talk and no drill: `Water: 2 min`, `Register and hall check`.
bool is_pause(const plan::Drill& drill);
/// The line's kind by the library; kUnknown when it does not know it.
plan::DrillKind kind_of(const plan::Drill& drill);

/// Adds a label into the library's file, which is kept alive for it. Nothing for a span of nowhere.
void label_library(Diagnostics& diagnostics, Diagnostic& found, const plan::LibraryDrill& drill,
                   Span span, std::string message);

/// One message for what is wrong in several lines: that of the first, with the other lines as
/// labels.
class Gathered {
 public:
  /// The finding of this key, made by `make()` when it is the first; for another line it is only
  /// labelled there with `again`.
  template <class Make>
  void add(const std::string& key, Span span, std::string_view again, Make make) {
    const auto [place, is_new] = places_.try_emplace(key, found_.size());
    if (is_new) return found_.push_back(make());
    repeat(found_[place->second], span, again);
  }
  void add_to(Diagnostics& diagnostics);

 private:
  static void repeat(Diagnostic& first, Span span, std::string_view again);

  std::vector<Diagnostic> found_;
  std::map<std::string, std::size_t> places_;
};

}  // namespace chalkleaf::reason
