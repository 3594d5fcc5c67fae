// The front of the room: one typesetter holds what its worker remembers between paragraphs.
// Tests: tests/type/lines_test.cpp.
#include "type/lines.h"

#include <algorithm>

#include "type/fill.h"
#include "type/plan.h"

namespace chalkleaf::type {
namespace {

// Wider than any sheet, and far from where sums would overflow.
constexpr Length kEndless = Length::millipoints(1LL << 50U);

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

Length Typesetter::natural_width(std::span<const Inline> text) {
  Length widest;
  for (const Line& line : state_->fill(text, kEndless, Purpose::kMeasure).lines) {
    widest = std::max(widest, line.width);
  }
  return widest;
}

const Fonts& Typesetter::fonts() const { return state_->shaper.fonts(); }

}  // namespace chalkleaf::type
