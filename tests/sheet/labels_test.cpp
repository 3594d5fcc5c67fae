#include "sheet/labels.h"

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "sheet/phrases.h"
#include "sheet_fixture.h"

using namespace chalkleaf;
using namespace chalkleaf::sheet;

namespace {

std::string label_messages(const std::string& text) {
  Diagnostics diagnostics;
  const auto source = std::make_shared<const Source>("en.yaml", text);
  read_labels(source, diagnostics);
  std::string out;
  for (const Diagnostic& d : diagnostics.sorted())
    out += render(d, MessageStyle::kShort, Colouring::kPlain);
  return out;
}

}  // namespace

TEST_CASE("phrases are filled, counted and dated") {
  const auto labels = support::english();
  CHECK(labels->say("page", {{"page", "1"}, {"pages", "2"}}) == "1 of 2");
  CHECK(labels->count("gymnasts", 1) == "1 gymnast");
  CHECK(labels->count("gymnasts", 8) == "8 gymnasts");
  CHECK(labels->date({2026, 12, 1}) == "Tue 1 December 2026");
  CHECK(support::plain_spaces(labels->short_time(Duration::seconds(20))) == "20 s");
  CHECK(support::plain_spaces(labels->short_time(Duration::milliseconds(1500))) == "1.5 s");
  CHECK(support::plain_spaces(labels->short_time(Duration::seconds(120))) == "2 min");
  CHECK(support::plain_spaces(labels->short_time(Duration::seconds(90))) == "1 min 30 s");
  CHECK(support::plain_spaces(labels->long_time(Duration::seconds(90))) == "1 minute 30 seconds");
  CHECK(support::plain_spaces(labels->long_time(Duration::seconds(1))) == "1 second");
}

TEST_CASE("a shape held still is known by its words, not by parts of words") {
  const auto labels = support::english();
  CHECK(labels->names_stillness("Dish hold"));
  CHECK(labels->names_stillness("Butterfly stretch"));
  CHECK_FALSE(labels->names_stillness("Sitting star jumps"));  // not `sit`
  CHECK_FALSE(labels->names_stillness("Jog on the spot"));
}

TEST_CASE("a label file with a hole in it is refused") {
  const std::string good(support::repository_file("themes/labels/en.yaml")->text());
  CHECK(label_messages(good).empty());
  CHECK_THAT(label_messages(replace_all(good, "  easier: Easier\n", "")),
             Catch::Contains("the phrase ‘easier’ is missing"));
  CHECK_THAT(label_messages(replace_all(good, "'{page} of {pages}'", "'{page} of {total}'")),
             Catch::Contains("‘{total}’ cannot be filled here [bad-value]; the places of this "
                             "phrase are: page pages"));
  CHECK_THAT(label_messages(good + "  surplus: word\n"),
             Catch::Contains("no sheet says ‘surplus’ [unknown-key]; remove it"));
  CHECK_THAT(label_messages("language: en\n"), Catch::Contains("lacks ‘phrases’"));
}
