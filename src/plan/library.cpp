// DrillBook of plan/library.h: drills by name. Tested by tests/plan/library_test.cpp.
#include "plan/library.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <map>
#include <mutex>
#include <set>
#include <utility>

#include "base/text.h"
#include "plan/drill_names.h"
#include "plan/join_drills.h"

namespace chalkleaf::plan {
namespace {

// Names longer than this get no suggestion, and no more than so many are compared letter by letter:
// a plan of thousands of strange names must not cost seconds.
constexpr std::size_t kLongestCompared = 60;
constexpr std::size_t kMostCompared = 64;

std::uint32_t letters_of(std::string_view key) {
  std::uint32_t out = 0;
  for (const char c : key) out |= 1U << (static_cast<unsigned char>(c) % 32U);
  return out;
}

// A club's own names are few, and `closest` of base/text.h has the measure for them. The shelf has
// thousands, of which one is always somewhat like a stranger: only a slip of the pen counts.
enum class Names { kOwn, kShelf };
std::size_t most_edits(std::string_view key, Names names) {
  const std::size_t size = count_characters(key);
  if (names == Names::kOwn) return std::max<std::size_t>(1, size / 3);
  return size < 5 ? 0 : std::min<std::size_t>(2, size / 6 + (size < 6 ? 1 : 0));
}

// The words of a name that are long enough to say something, as they stand in keys.
std::vector<std::string> telling_words(std::string_view name) {
  constexpr std::size_t kShortest = 3;
  std::vector<std::string> out;
  std::string word;
  for (const char c : lower_ascii(name.substr(0, kLongestName)) + " ") {
    if (is_letter(c)) {
      word += c;
    } else {
      std::string key = key_of_name(std::exchange(word, {})).key;
      if (key.size() >= kShortest) out.push_back(std::move(key));
    }
  }
  return out;
}

void report_twice(const Words& name, const Span& first, Diagnostics& diagnostics) {
  Diagnostic twice{Severity::kWarning, "duplicate-drill", name.span,
                   fmt::format("two drills of the library go by the name ‘{}’", name.text)};
  twice.labels.push_back({first, "it stands here first, and this one counts"});
  twice.hint = "give one of them another name, or put both into one file";
  diagnostics.add(std::move(twice));
}

}  // namespace

DrillBook::DrillBook(std::vector<LibraryDrill> drills, Diagnostics& diagnostics, Shelf shelf)
    : shelf_(std::move(shelf)) {
  for (LibraryDrill& drill : drills) {
    Slot& slot = slots_.emplace_back();
    slot.title = key_of_name(drill.name.text).key;
    slot.drill = std::move(drill);
  }
  // Titles first: a drill's own name is stronger than another's second one.
  for (std::size_t i = 0; i < slots_.size(); ++i) add(i, slots_[i].drill->name, diagnostics);
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    for (const Words& name : slots_[i].drill->also) add(i, name, diagnostics);
  }
  outline();
  join_shelf();
}

std::optional<DrillBook> DrillBook::of_unread(std::vector<Unread> drills, Read read, Shelf shelf) {
  DrillBook out;
  out.read_ = std::move(read);
  out.shelf_ = std::move(shelf);
  Diagnostics ignored;
  for (std::size_t i = 0; i < drills.size(); ++i) {
    if (!out.add(i, {drills[i].names.name, {}}, ignored)) return std::nullopt;
  }
  for (std::size_t i = 0; i < drills.size(); ++i) {
    for (std::string& name : drills[i].names.also) {
      if (!out.add(i, {std::move(name), {}}, ignored)) return std::nullopt;
    }
  }
  for (Unread& one : drills) {
    Slot& slot = out.slots_.emplace_back();
    slot.title = key_of_name(one.names.name).key;
    slot.unread = !one.drill;
    slot.drill = std::move(one.drill);
  }
  out.outline();
  out.join_shelf();
  return out;
}

void DrillBook::outline() {
  outlines_.reserve(by_key_.size() + (shelf_ ? shelf_->names().size() : 0));
  for (const auto& [key, entry] : by_key_) {
    outlines_.push_back({letters_of(key), entry.drill, key, entry.name, false});
  }
  if (!shelf_) return;
  for (const ShelfName& name : shelf_->names()) {
    outlines_.push_back({letters_of(name.key), name.drill, name.key, name.name, true});
  }
}

const LibraryDrill& DrillBook::at(std::size_t place) const {
  Slot& slot = slots_[place];
  if (slot.unread) std::call_once(slot.once, [&] { slot.drill = read_(place); });
  return *slot.drill;
}

std::vector<std::reference_wrapper<const LibraryDrill>> DrillBook::all() const {
  std::vector<std::reference_wrapper<const LibraryDrill>> out;
  for (std::size_t i = 0; i < slots_.size(); ++i) out.emplace_back(at(i));
  return out;
}

std::vector<std::reference_wrapper<const LibraryDrill>> DrillBook::read_now() const {
  std::vector<std::reference_wrapper<const LibraryDrill>> out;
  for (const Slot& slot : slots_) {
    if (!slot.unread) out.emplace_back(*slot.drill);
  }
  return out;
}

std::vector<const LibraryDrill*> DrillBook::nameless() const {
  std::vector<const LibraryDrill*> out;
  for (const Slot& slot : slots_) {
    if (!slot.unread && !slot.drill->name_known) out.push_back(&*slot.drill);
  }
  return out;
}

// False when another drill goes by that name.
bool DrillBook::add(std::size_t drill, const Words& name, Diagnostics& diagnostics) {
  std::string key = key_of_name(name.text).key;
  if (key.empty()) return true;
  const auto [place, is_new] =
      by_key_.try_emplace(std::move(key), Entry{drill, name.text, name.span});
  if (is_new || place->second.drill == drill) return true;
  report_twice(name, place->second.span, diagnostics);
  return false;
}

namespace {

const ShelfName* shelf_name(const ShelfSource& shelf, std::string_view key) {
  const auto& names = shelf.names();
  const auto found =
      std::lower_bound(names.begin(), names.end(), key,
                       [](const ShelfName& name, std::string_view k) { return name.key < k; });
  return found == names.end() || found->key != key ? nullptr : &*found;
}

}  // namespace

// Which drills of the club stand before one of the shelf: those whose title is a name of it. No
// file is read for this; whether the two may join is seen when a plan names them.
void DrillBook::join_shelf() {
  if (!shelf_) return;
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    const ShelfName* same = shelf_name(*shelf_, slots_[i].title);
    if (same == nullptr) continue;
    slots_[i].behind = same->drill;
    instead_.emplace(same->drill, i);
  }
}

// One of the club's own, with what it takes from the shelf.
const LibraryDrill& DrillBook::own(std::size_t place) const {
  const LibraryDrill& written = at(place);
  Slot& slot = slots_[place];
  if (!slot.behind) return written;
  std::call_once(slot.joined_once, [&] {
    const LibraryDrill& shelf = shelf_->drill(*slot.behind);
    if (may_join(written, shelf)) {
      slot.joined = std::make_unique<LibraryDrill>(joined(written, shelf));
    }
  });
  return slot.joined ? *slot.joined : written;
}

const LibraryDrill* DrillBook::at_key(std::string_view key) const {
  const auto found = by_key_.find(key);
  if (found != by_key_.end()) return &own(found->second.drill);
  const ShelfName* name = shelf_ ? shelf_name(*shelf_, key) : nullptr;
  if (name == nullptr) return nullptr;
  const auto instead = instead_.find(name->drill);
  if (instead == instead_.end()) return &shelf_->drill(name->drill);
  // Another drill under one of the shelf's names does not take the others from it.
  const LibraryDrill& club = own(instead->second);
  return club.shelf_source ? &club : &shelf_->drill(name->drill);
}

std::string_view place_of(const Part& part, const Drill& drill) {
  return apparatus_in(drill.at.text).empty() ? part.title.text : drill.at.text;
}

const LibraryDrill* DrillBook::find(std::string_view name, std::string_view where) const {
  if (empty()) return nullptr;
  const NameKey wanted = key_of_name(name);
  const std::string_view place = apparatus_in(where);
  const auto here = [&](std::string_view key) {
    for (const std::string& longer : keys_on(place, key)) {
      if (const LibraryDrill* found = at_key(longer)) return found;
    }
    return at_key(key);
  };
  if (const LibraryDrill* found = here(wanted.key)) return found;
  for (const NameCut& cut : wanted.cuts) {
    const LibraryDrill* found = here(std::string_view(wanted.key).substr(0, cut.size));
    if (found == nullptr) continue;
    const bool elsewhere = !cut.apparatus.empty() && apparatus_in(found->at.text) != cut.apparatus;
    return elsewhere ? nullptr : found;
  }
  return nullptr;
}

std::optional<std::string> DrillBook::closest(std::string_view name) const {
  const NameKey wanted = key_of_name(name);
  std::vector<std::string_view> keys{wanted.key};
  if (!wanted.cuts.empty())
    keys.push_back(std::string_view(wanted.key).substr(0, wanted.cuts.back().size));
  // `Bear kick` is one letter from `Beam kick`, and no slip: both its words are of the trade.
  const auto says_known_words = [&] {
    const std::vector<std::string> words = telling_words(name);
    return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
      return std::any_of(outlines_.begin(), outlines_.end(), [&](const Outline& other) {
        return other.key.find(word) != std::string_view::npos;
      });
    });
  };
  const auto whole = that_begins_with(wanted.key);
  if (whole && (!shelf_ || !says_known_words())) return std::string(*whole);
  std::string_view best;
  bool best_of_shelf = false;
  std::size_t least = kLongestCompared;
  std::size_t compared = 0;
  for (const std::string_view key : keys) {
    if (key.empty() || key.size() > kLongestCompared) continue;
    const std::size_t most_own = most_edits(key, Names::kOwn);
    const std::size_t most_shelf = most_edits(key, Names::kShelf);
    const std::uint32_t letters = letters_of(key);
    for (const Outline& other : outlines_) {
      const std::size_t most = other.is_shelf ? most_shelf : most_own;
      const std::size_t longer = std::max(other.key.size(), key.size());
      const std::size_t shorter = std::min(other.key.size(), key.size());
      if (longer - shorter > 4 * most) continue;  // bytes, not letters
      if (std::popcount(other.letters ^ letters) > static_cast<int>(2 * most)) continue;
      if (++compared > kMostCompared) break;
      const std::size_t edits = edit_distance(key, other.key);
      if (edits <= most && edits < least) {
        least = edits;
        best = other.name;
        best_of_shelf = other.is_shelf;
      }
    }
  }
  if (!best.empty() && !(best_of_shelf && says_known_words())) return std::string(best);
  // `Lunge to handstand`: what it begins with.
  const auto first = by_key_.find(std::string_view(wanted.key).substr(0, wanted.begin));
  if (wanted.begin == 0 || first == by_key_.end()) return std::nullopt;
  return first->second.name;
}

// `Dish to arch` for `Dish to arch roll`; nothing when several names begin so.
std::optional<std::string_view> DrillBook::that_begins_with(std::string_view key) const {
  constexpr std::size_t kShortest = 6;  // bytes; `jump` begins too many names
  if (key.size() < kShortest) return std::nullopt;
  const Outline* out = nullptr;
  for (const Outline& other : outlines_) {
    if (!other.key.starts_with(key)) continue;
    // Of thousands of names one goes on like any other; only an end that was left off counts.
    if (other.is_shelf && 10 * key.size() < 7 * other.key.size()) continue;
    const bool same =
        out == nullptr || (other.drill == out->drill && other.is_shelf == out->is_shelf);
    if (!same) return std::nullopt;
    if (out == nullptr) out = &other;
  }
  return out == nullptr ? std::nullopt : std::optional(out->name);
}

}  // namespace chalkleaf::plan
