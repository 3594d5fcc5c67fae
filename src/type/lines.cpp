// The front of the room: one typesetter holds what its worker remembers between paragraphs.
// Tests: tests/type/lines_test.cpp.
#include "type/lines.h"

#include <algorithm>
#include <unordered_map>

#include "type/fill.h"
#include "type/plan.h"

namespace chalkleaf::type {
namespace {

// Wider than any sheet, and far from where sums would overflow.
constexpr Length kEndless = Length::millipoints(1LL << 50U);

// A club's sheets have a few thousand different lines; longer paragraphs are not met again.
constexpr std::size_t kMostKept = 8192;
constexpr std::size_t kLongestKept = 1000;  // bytes of the key

template <class T>
void append_bytes(std::string& key, const T& value) {
  key.append(reinterpret_cast<const char*>(&value), sizeof value);
}

// All that lines depend on. Where a text comes from is not part of it: only problems name that, and
// what has problems is not kept.
void make_key(std::span<const Inline> text, Length width, std::string& key) {
  key.clear();
  append_bytes(key, width.in_millipoints());
  for (const Inline& one : text) {
    append_bytes(key, one.size.in_millipoints());
    append_bytes(key, static_cast<std::uint32_t>(one.style));
    append_bytes(key, one.colour.red);
    append_bytes(key, one.colour.green);
    append_bytes(key, one.colour.blue);
    append_bytes(key,
                 static_cast<std::uint8_t>((one.unbroken ? 1U : 0U) | (one.hyphenate ? 2U : 0U) |
                                           (one.figures == Figures::kTabular ? 4U : 0U)));
    append_bytes(key, static_cast<std::uint32_t>(one.text.size()));
    key += one.text;
  }
}

// What is full is emptied: simpler than to say who goes, and met again soon.
template <class Map, class Value>
void keep(Map& map, const std::string& key, const Value& value) {
  if (key.size() > kLongestKept) return;
  if (map.size() >= kMostKept) map.clear();
  map.emplace(key, value);
}

}  // namespace

struct Typesetter::State {
  State(const Fonts& fonts, const std::string& language, const LazyHyphenation* hyphenation)
      : shaper(fonts, language),
        breaker(language),
        hyphenator(hyphenation),
        pieces(shaper, breaker, hyphenator) {}

  Paragraph fill(std::span<const Inline> text, Length width, Purpose purpose) {
    shaper.begin_paragraph();
    pieces.prepare(text, width);
    if (purpose == Purpose::kPrint) Planner(pieces, width).run();
    return Filler(pieces, breaker, shaper, text, width, purpose).run();
  }

  Shaper shaper;
  Breaker breaker;
  Hyphenator hyphenator;
  Pieces pieces;
  std::string key;  // of the text at hand
  std::unordered_map<std::string, std::shared_ptr<const Paragraph>> paragraphs;
  std::unordered_map<std::string, Length> widths;
};

Typesetter::Typesetter(const Fonts& fonts, const std::string& language,
                       const LazyHyphenation* hyphenation)
    : state_(std::make_unique<State>(fonts, language, hyphenation)) {}
Typesetter::~Typesetter() = default;
Typesetter::Typesetter(Typesetter&&) noexcept = default;
Typesetter& Typesetter::operator=(Typesetter&&) noexcept = default;

Paragraph Typesetter::set(std::span<const Inline> text, Length width) {
  return state_->fill(text, width, Purpose::kPrint);
}

std::shared_ptr<const Paragraph> Typesetter::set_once(std::span<const Inline> text, Length width) {
  make_key(text, width, state_->key);
  const auto known = state_->paragraphs.find(state_->key);
  if (known != state_->paragraphs.end()) return known->second;
  auto made = std::make_shared<const Paragraph>(set(text, width));
  if (made->problems.empty()) keep(state_->paragraphs, state_->key, made);
  return made;
}

Length Typesetter::natural_width(std::span<const Inline> text) {
  make_key(text, {}, state_->key);
  const auto known = state_->widths.find(state_->key);
  if (known != state_->widths.end()) return known->second;
  Length widest;
  for (const Line& line : state_->fill(text, kEndless, Purpose::kMeasure).lines) {
    widest = std::max(widest, line.width);
  }
  keep(state_->widths, state_->key, widest);
  return widest;
}

const Fonts& Typesetter::fonts() const { return state_->shaper.fonts(); }

}  // namespace chalkleaf::type
