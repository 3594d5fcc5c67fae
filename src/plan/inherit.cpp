// inherit of plan/library.h: a plan's drills get what their lines leave out.
//
// What a line does say replaces what the library has: a coach who writes one cue wants that one.
// Of the library's ladder a line gets the nearest rung each way, and of its cues the first two: a
// card has room for no more, and nobody hears more than two. The rest of the ladder is the
// library's, for who plans. Only substitutes are taken one by one, since each is for kit of its
// own. Safety is never replaced, only added. Tested by tests/plan/inherit_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/files.h"
#include "base/text.h"
#include "plan/known_keys.h"
#include "plan/library.h"

namespace chalkleaf::plan {
namespace {

// What one plan takes from the library at most: lines, and bytes of them. Far above any honest
// plan, and little memory, however often one drill is named.
constexpr std::size_t kMostInherited = 2'000;
constexpr std::size_t kMostBytes = 512UL * 1024;

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out(1);
  for (const char c : lower_ascii(text)) {
    const bool letter = (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (letter) {
      out.back() += c;
    } else if (!out.back().empty()) {
      out.emplace_back();
    }
  }
  return out;
}

// What may be the title of a drill whose title could not be read: its file's name, and the lines at
// the top of the file whose key means nothing, such as `tilte: Walk on beam 2`.
std::string possible_title(const LibraryDrill& drill) {
  constexpr std::size_t kMost = 2'000;  // bytes
  std::string out = file_stem(drill.source->path());
  std::string_view rest = std::string_view(drill.source->text()).substr(0, kMost);
  rest = rest.substr(0, rest.find("\n---", 1));
  const std::vector<std::string> known = known_keys(KeyMap::kDrill);
  while (!rest.empty()) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    rest.remove_prefix(std::min(line.size() + 1, rest.size()));
    const std::string key = lower_ascii(trim(line.substr(0, line.find(':'))));
    if (std::find(known.begin(), known.end(), key) == known.end()) out += ' ' + std::string(line);
  }
  return out;
}

// A word in common will do, whole or as the beginning of the other (`lift`, `lifts`).
bool may_be_called(const LibraryDrill& drill, std::string_view name) {
  constexpr std::size_t kShortest = 3;  // bytes; `to` and `on` say nothing
  const std::vector<std::string> ours = words_of(possible_title(drill));
  for (const std::string& word : words_of(name)) {
    if (word.size() < kShortest) continue;
    const bool common = std::any_of(ours.begin(), ours.end(), [&](const std::string& own) {
      return own.size() >= kShortest && (own.starts_with(word) || word.starts_with(own));
    });
    if (common) return true;
  }
  return false;
}

class Heir {
 public:
  Heir(Session& session, const DrillBook& book, Diagnostics& diagnostics)
      : session_(session), book_(book), diagnostics_(diagnostics) {
    nameless_ = book.nameless();
    for (const Safety& safety : session.safety) said_.insert(safety.words.text);
  }

  void run() {
    for (Part& part : session_.parts) {
      part_ = &part;
      said_in_part_.clear();
      for (const Safety& safety : part.safety) said_in_part_.insert(safety.words.text);
      for (Step& step : part.steps) {
        if (auto* drill = std::get_if<Drill>(&step)) take(*drill);
      }
    }
  }

 private:
  void take(Drill& drill) {
    if (full_) return;
    // `a or b or c` is several drills; none of them lends its cues to the others.
    const bool own_figure = !drill.figures.empty();
    place_ = place_of(*part_, drill);
    if (drill.choices.empty()) drill.known = known(drill.name.text);
    if (drill.known != nullptr) fill(drill, *drill.known);
    const auto one_of_several = [&](const Words& name) {
      const LibraryDrill* one = known(name.text);
      if (one == nullptr || one->figure.empty() || own_figure || drill.known != nullptr) return one;
      drill.figures.push_back(one->figure);
      count(1, size_of(one->figure));
      return one;
    };
    drill.known_choices.clear();
    for (const Words& choice : drill.choices) drill.known_choices.push_back(one_of_several(choice));
    if (drill.dose) {
      for (const Move& move : drill.dose->moves) one_of_several(move.name);
    }
    for (const Substitute& substitute : drill.substitutes) known(substitute.name.text);
    for (Drill& station : drill.stations) take(station);
    if (full_) too_much(drill);
  }

  // The library's drill of a name: what is wrong with it is said, and its safety given to the part.
  const LibraryDrill* known(std::string_view name) {
    const LibraryDrill* found = book_.find(name, place_);
    if (found == nullptr || found->of_shelf) {
      // It may be one of the club's whose name could not be read; printing it without its safety
      // would be wrong.
      for (const LibraryDrill* drill : nameless_) {
        if (may_be_called(*drill, name)) report(*drill);
      }
    }
    if (found == nullptr) return nullptr;
    report(*found);
    for (const Safety& safety : found->safety) {
      if (said_.count(safety.words.text) > 0) continue;
      if (!said_in_part_.insert(safety.words.text).second) continue;
      part_->safety.push_back(safety);
      count(1, safety.words.text.size());
    }
    return found;
  }

  void report(const LibraryDrill& drill) {
    if (!reported_.insert(&drill).second) return;
    session_.sources.push_back(drill.source);
    if (drill.shelf_source) session_.sources.push_back(drill.shelf_source);
    diagnostics_.append(drill.found);
  }

  void fill(Drill& drill, const LibraryDrill& known) {
    const bool own_kit = !drill.uses.empty();
    // A rung the plan writes itself may have any shape, and so may all of a line with a figure of
    // its own.
    const bool same_shape = drill.figures.empty();
    if (same_shape && drill.easier.empty()) drill.figure_easier = known.figure_easier;
    if (same_shape && drill.harder.empty()) drill.figure_harder = known.figure_harder;
    if (drill.figures.empty() && !known.figure.empty()) drill.figures.push_back(known.figure);
    inherit_list(drill.cues, known.cues, kMostInheritedCues);
    inherit_list(drill.easier, known.easier, kMostInheritedRungs);
    inherit_list(drill.harder, known.harder, kMostInheritedRungs);
    inherit_list(drill.uses, known.needs, known.needs.size());
    inherit_list(drill.notes, known.notes, known.notes.size());
    if (drill.at.empty()) drill.at = known.at;
    if (drill.record.empty()) drill.record = known.record;
    for (const Substitute& substitute : known.substitutes) {
      // A line with kit of its own needs no substitute for the library's.
      if (own_kit && !names(drill.uses, substitute.kit.text)) continue;
      if (has_substitute(drill, substitute.kit.text)) continue;
      drill.substitutes.push_back(substitute);
      count(substitute);
    }
  }

  static bool same(std::string_view a, std::string_view b) {
    return lower_ascii(trim(a)) == lower_ascii(trim(b));
  }
  static bool names(const std::vector<KitUse>& uses, std::string_view kit) {
    return std::any_of(uses.begin(), uses.end(),
                       [&](const KitUse& use) { return same(use.kit.text, kit); });
  }
  static bool has_substitute(const Drill& drill, std::string_view kit) {
    return std::any_of(drill.substitutes.begin(), drill.substitutes.end(),
                       [&](const Substitute& one) { return same(one.kit.text, kit); });
  }

  static std::size_t size_of(const Words& words) { return words.text.size(); }
  static std::size_t size_of(const Note& note) { return note.words.text.size(); }
  static std::size_t size_of(const KitUse& use) {
    return use.kit.text.size() + use.how.text.size();
  }

  template <class T>
  void inherit_list(std::vector<T>& own, const std::vector<T>& library, std::size_t most) {
    if (!own.empty()) return;
    const auto end = library.begin() + static_cast<std::ptrdiff_t>(std::min(most, library.size()));
    own.assign(library.begin(), end);
    for (const T& one : own) count(1, size_of(one));
  }

  template <class T>
  void count_all(const std::vector<T>& lines) {
    for (const T& one : lines) count(1, size_of(one));
  }
  void count(const Substitute& one) {
    count(1, one.name.text.size());
    count_all(one.cues);
    count_all(one.easier);
    count_all(one.harder);
    count_all(one.notes);
  }
  void count(std::size_t lines, std::size_t bytes) {
    lines_ += lines;
    bytes_ += bytes;
    full_ = full_ || lines_ > kMostInherited || bytes_ > kMostBytes;
  }

  void too_much(const Drill& drill) {
    if (said_too_much_) return;
    said_too_much_ = true;
    diagnostics_.error(kBadValue, drill.name.span,
                       "with what its drills take from the library this plan is too long",
                       "split it into several plans, or shorten the drills it uses");
  }

  Session& session_;
  const DrillBook& book_;
  Diagnostics& diagnostics_;
  std::vector<const LibraryDrill*> nameless_;
  std::set<const LibraryDrill*> reported_;
  std::set<std::string> said_;          // safety of the session
  std::set<std::string> said_in_part_;  // and of this part
  Part* part_ = nullptr;
  std::string place_;  // of the line at hand
  std::size_t lines_ = 0;
  std::size_t bytes_ = 0;
  bool full_ = false;
  bool said_too_much_ = false;
};

}  // namespace

void inherit(Session& session, const DrillBook& book, Diagnostics& diagnostics) {
  if (!book.empty()) Heir(session, book, diagnostics).run();
}

}  // namespace chalkleaf::plan
