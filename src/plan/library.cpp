// DrillBook of plan/library.h: drills by name. Tested by tests/plan/library_test.cpp.
#include "plan/library.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>

#include "base/text.h"
#include "plan/drill_names.h"

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

// As `closest` of base/text.h has it.
std::size_t most_edits(std::string_view key) {
  return std::max<std::size_t>(1, count_characters(key) / 3);
}

void report_twice(const Words& name, const Span& first, Diagnostics& diagnostics) {
  Diagnostic twice{Severity::kWarning, "duplicate-drill", name.span,
                   fmt::format("two drills of the library go by the name ‘{}’", name.text)};
  twice.labels.push_back({first, "it stands here first, and this one counts"});
  twice.hint = "give one of them another name, or put both into one file";
  diagnostics.add(std::move(twice));
}

}  // namespace

DrillBook::DrillBook(std::vector<LibraryDrill> drills, Diagnostics& diagnostics) {
  for (LibraryDrill& drill : drills) slots_.emplace_back().drill = std::move(drill);
  // Titles first: a drill's own name is stronger than another's second one.
  for (std::size_t i = 0; i < slots_.size(); ++i) add(i, slots_[i].drill->name, diagnostics);
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    for (const Words& name : slots_[i].drill->also) add(i, name, diagnostics);
  }
  outline();
}

std::optional<DrillBook> DrillBook::of_unread(std::vector<Unread> drills, Read read) {
  DrillBook out;
  out.read_ = std::move(read);
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
    slot.unread = !one.drill;
    slot.drill = std::move(one.drill);
  }
  out.outline();
  return out;
}

void DrillBook::outline() {
  outlines_.reserve(by_key_.size());
  for (const auto& [key, entry] : by_key_) {
    outlines_.push_back({key.size(), letters_of(key), &key, &entry});
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

const LibraryDrill* DrillBook::find(std::string_view name) const {
  if (slots_.empty()) return nullptr;
  const NameKey wanted = key_of_name(name);
  auto found = by_key_.find(wanted.key);
  for (std::size_t i = 0; found == by_key_.end() && i < wanted.cuts.size(); ++i) {
    found = by_key_.find(std::string_view(wanted.key).substr(0, wanted.cuts[i]));
  }
  return found == by_key_.end() ? nullptr : &at(found->second.drill);
}

std::optional<std::string> DrillBook::closest(std::string_view name) const {
  const NameKey wanted = key_of_name(name);
  std::vector<std::string_view> keys{wanted.key};
  if (!wanted.cuts.empty())
    keys.push_back(std::string_view(wanted.key).substr(0, wanted.cuts.back()));
  if (const Entry* longer = that_begins_with(wanted.key)) return longer->name;
  const Entry* best = nullptr;
  std::size_t least = kLongestCompared;
  std::size_t compared = 0;
  for (const std::string_view key : keys) {
    if (key.empty() || key.size() > kLongestCompared) continue;
    const std::size_t most = most_edits(key);
    const std::uint32_t letters = letters_of(key);
    for (const Outline& other : outlines_) {
      const std::size_t longer = std::max(other.size, key.size());
      if (longer - std::min(other.size, key.size()) > 4 * most) continue;  // bytes, not letters
      if (std::popcount(other.letters ^ letters) > static_cast<int>(2 * most)) continue;
      if (++compared > kMostCompared) break;
      const std::size_t edits = edit_distance(key, *other.key);
      if (edits <= most && edits < least) {
        least = edits;
        best = other.entry;
      }
    }
  }
  if (best != nullptr) return best->name;
  // `Lunge to handstand`: what it begins with.
  const auto first = by_key_.find(std::string_view(wanted.key).substr(0, wanted.begin));
  if (wanted.begin == 0 || first == by_key_.end()) return std::nullopt;
  return first->second.name;
}

// `Dish to arch` for `Dish to arch roll`; nothing when several names begin so.
const DrillBook::Entry* DrillBook::that_begins_with(std::string_view key) const {
  constexpr std::size_t kShortest = 6;  // bytes; `jump` begins too many names
  if (key.size() < kShortest) return nullptr;
  const auto found = by_key_.lower_bound(key);
  if (found == by_key_.end() || !found->first.starts_with(key)) return nullptr;
  const auto next = std::next(found);
  const bool several = next != by_key_.end() && next->first.starts_with(key) &&
                       next->second.drill != found->second.drill;
  return several ? nullptr : &found->second;
}

}  // namespace chalkleaf::plan
