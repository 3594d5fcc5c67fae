// Lines of a plan in the taught form that are not: each read by itself, all others left as they
// are.
#include "draft/mend.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using namespace chalkleaf::draft;
using chalkleaf::draft_test::english;

namespace {

constexpr std::string_view kHead = "---\ntitle: T\nplace: gym\n---\n\n## Warm-up\n\n";

// The plan with `body` behind its head, mended where a finding stands on each line that has `|`
// before it; `!` when nothing could be.
std::string mended_body(std::string body) {
  std::vector<std::size_t> marks;
  std::string text(kHead);
  for (std::size_t i = 0; i < body.size(); ++i) {
    if (body[i] == '|') {
      marks.push_back(text.size());
    } else {
      text += body[i];
    }
  }
  const auto coach = std::make_shared<const Source>("plan.md", text);
  std::vector<Diagnostic> found;
  for (const std::size_t at : marks) {
    const auto begin = static_cast<std::uint32_t>(at);
    found.push_back({Severity::kError, "bad-value", {coach.get(), begin, begin + 1}, "x"});
  }
  const auto draft = mend(english(), coach, found);
  if (!draft) return "!";
  CHECK(draft->taught);
  CHECK(draft->typed.size() == draft->read_as.size());
  const std::string_view all = draft->canonical->text();
  REQUIRE(all.starts_with(kHead));
  return std::string(all.substr(kHead.size()));
}

}  // namespace

TEST_CASE("mend: a dose without its colon, a line without its dash") {
  CHECK(mended_body("|- Jog 3 mins\n- Skip: 2 min\n") == "- Jog: 3 min\n- Skip: 2 min\n");
  CHECK(mended_body("- Skip: 2 min\n|Arm circles 10 each way\n") ==
        "- Skip: 2 min\n- Arm circles: 10 each way\n");
  CHECK(mended_body("|- Tuck jumps x10, star jumps x10\n") ==
        "- Tuck jumps: 10\n- Star jumps: 10\n");
}

TEST_CASE("mend: a sentence below a list is a paragraph, and nothing of it is lost") {
  CHECK(mended_body("- Skip: 2 min\n|Everybody cheers at the end\n") ==
        "- Skip: 2 min\n\nEverybody cheers at the end\n");
}

TEST_CASE("mend: what stands behind a colon, below a drill or in a quote is not guessed at") {
  CHECK(mended_body("|- Jog: a few times\n") == "!");
  CHECK(mended_body("- Jog: 3 min\n  |- knees up 3 times\n") == "!");
  CHECK(mended_body("|> Two mats 3 m apart\n") == "!");
  CHECK(mended_body("|- Talk about the week\n") == "!");
  CHECK(mended_body("- Jog: 3 min\n") == "!");
}

TEST_CASE("mend: a finding's own edit goes before the reading of its line") {
  const std::string text = std::string(kHead) + "- Jog: 3 min\n  - eaiser: walk\n";
  const auto coach = std::make_shared<const Source>("plan.md", text);
  const auto begin = static_cast<std::uint32_t>(text.find("eaiser"));
  Diagnostic one{Severity::kError, "unknown-key", {coach.get(), begin, begin + 6}, "x"};
  one.edits.push_back({one.span, "easier"});
  const auto draft = mend(english(), coach, {one});
  REQUIRE(draft);
  CHECK(draft->canonical->text() == std::string(kHead) + "- Jog: 3 min\n  - easier: walk\n");
  CHECK(draft->read_as == std::vector<std::string>{"  - easier: walk"});
  // What was found in the mended plan is told at its place in the coach's.
  const auto at = static_cast<std::uint32_t>(draft->canonical->text().find("walk"));
  CHECK(draft->origin.of({draft->canonical.get(), at, at + 4}).text() == "walk");
}
