#include "type/packed_patterns.h"

#include <algorithm>
#include <cstdint>
#include <cstring>

namespace chalkleaf::type {
namespace {

constexpr std::uint32_t kNone = UINT32_MAX;
constexpr std::size_t kAlign = 8;

// A level of the dictionary: this, its states, their steps, its strings (each with a NUL).
struct LevelHead {
  std::uint32_t states;
  std::uint32_t steps;
  std::uint32_t string_bytes;
  std::uint32_t nohyphen;  ///< begin of a string
  std::int32_t nohyphen_pieces;
  std::int32_t utf8;
  char least[4];  ///< characters before and behind a hyphen, in words and in parts of compounds
  char encoding[MAX_NAME];
};
struct PackedState {
  std::uint32_t match;
  std::uint32_t replacement;
  std::uint32_t steps;  ///< the first of them
  std::int32_t steps_count;
  std::int32_t fallback;
  std::int8_t replaced_at;
  std::int8_t replaced;
  std::int16_t unused;
};
static_assert(sizeof(LevelHead) == 48 && sizeof(PackedState) == 24 && sizeof(HyphenTrans) == 8);

template <class T>
void append(std::string& out, const T& value) {
  out.append(reinterpret_cast<const char*>(&value), sizeof value);
}

// Most patterns share their few strings of figures. One that stands for several has a NUL behind
// each.
std::uint32_t add_string(std::string& strings, const char* text, int pieces = 1) {
  if (text == nullptr) return kNone;
  std::size_t size = 0;
  for (int i = 0; i < pieces; ++i) size += std::strlen(text + size) + 1;
  const std::string_view whole(text, size);
  const std::size_t known = strings.find(whole);
  if (known != std::string::npos) return static_cast<std::uint32_t>(known);
  strings += whole;
  return static_cast<std::uint32_t>(strings.size() - size);
}

void append_level(std::string& out, const HyphenDict& dict) {
  LevelHead head{};
  std::string states;
  std::string steps;
  std::string strings;
  // The count is of the commas there were.
  head.nohyphen = add_string(strings, dict.nohyphen, dict.nohyphenl + 1);
  head.nohyphen_pieces = dict.nohyphenl;
  head.utf8 = dict.utf8;
  head.least[0] = dict.lhmin;
  head.least[1] = dict.rhmin;
  head.least[2] = dict.clhmin;
  head.least[3] = dict.crhmin;
  std::copy(std::begin(dict.cset), std::end(dict.cset), std::begin(head.encoding));
  for (int i = 0; i < dict.num_states; ++i) {
    const HyphenState& from = dict.states[i];
    PackedState state{};
    state.match = add_string(strings, from.match);
    state.replacement = add_string(strings, from.repl);
    state.steps = head.steps;
    state.steps_count = from.num_trans;
    state.fallback = from.fallback_state;
    state.replaced_at = from.replindex;
    state.replaced = from.replcut;
    append(states, state);
    for (int k = 0; k < from.num_trans; ++k) {
      HyphenTrans step;
      std::memset(&step, 0, sizeof step);  // what lies between its members, too
      step.ch = from.trans[k].ch;
      step.new_state = from.trans[k].new_state;
      append(steps, step);
    }
    head.steps += static_cast<std::uint32_t>(from.num_trans);
  }
  head.states = static_cast<std::uint32_t>(dict.num_states);
  head.string_bytes = static_cast<std::uint32_t>(strings.size());
  append(out, head);
  out += states + steps + strings;
  out.resize((out.size() + kAlign - 1) / kAlign * kAlign);
}

}  // namespace

std::string packed_patterns(const HyphenDict& dict) {
  std::string out;
  for (const HyphenDict* level = &dict; level != nullptr; level = level->nextlevel) {
    append_level(out, *level);
  }
  return out;
}

std::unique_ptr<PackedPatterns> PackedPatterns::open(std::string_view bytes) {
  auto out = std::make_unique<PackedPatterns>();
  while (!bytes.empty()) {
    LevelHead head;
    if (bytes.size() < sizeof head) return nullptr;
    std::memcpy(&head, bytes.data(), sizeof head);
    const std::size_t states = sizeof head;
    const std::size_t steps = states + std::size_t{head.states} * sizeof(PackedState);
    const std::size_t strings = steps + std::size_t{head.steps} * sizeof(HyphenTrans);
    const std::size_t end = (strings + head.string_bytes + kAlign - 1) / kAlign * kAlign;
    if (head.states == 0 || end > bytes.size()) return nullptr;
    // libhyphen only reads what these point to.
    char* const base = const_cast<char*>(bytes.data());
    const auto text = [&](std::uint32_t at) {
      return at < head.string_bytes ? base + strings + at : nullptr;
    };
    Level level;
    level.states = std::make_unique_for_overwrite<HyphenState[]>(head.states);
    for (std::size_t i = 0; i < head.states; ++i) {
      PackedState from;
      std::memcpy(&from, base + states + i * sizeof from, sizeof from);
      if (from.steps_count < 0 || from.steps > head.steps ||
          static_cast<std::uint32_t>(from.steps_count) > head.steps - from.steps) {
        return nullptr;
      }
      HyphenState& to = level.states[i];
      to.match = text(from.match);
      to.repl = text(from.replacement);
      to.replindex = from.replaced_at;
      to.replcut = from.replaced;
      to.fallback_state = from.fallback;
      to.num_trans = from.steps_count;
      to.trans = reinterpret_cast<HyphenTrans*>(base + steps) + from.steps;
    }
    HyphenDict& dict = level.dict;
    dict.lhmin = head.least[0];
    dict.rhmin = head.least[1];
    dict.clhmin = head.least[2];
    dict.crhmin = head.least[3];
    dict.nohyphen = text(head.nohyphen);
    dict.nohyphenl = head.nohyphen_pieces;
    dict.num_states = static_cast<int>(head.states);
    std::copy(std::begin(head.encoding), std::end(head.encoding), std::begin(dict.cset));
    dict.utf8 = head.utf8;
    dict.states = level.states.get();
    out->levels_.push_back(std::move(level));
    bytes.remove_prefix(end);
  }
  if (out->levels_.empty()) return nullptr;
  for (std::size_t i = 0; i + 1 < out->levels_.size(); ++i) {
    out->levels_[i].dict.nextlevel = &out->levels_[i + 1].dict;
  }
  return out;
}

}  // namespace chalkleaf::type
