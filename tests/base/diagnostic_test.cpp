#include "base/diagnostic.h"
#include "base/text.h"

#include <catch2/catch.hpp>

#include "base/diagnostic_text.h"
#include "support/shell.h"

using namespace chalkleaf;

namespace {

struct Fixture {
  Source source{"plans/a.md", "---\nequipmnet: towel\n---\n"};
  Diagnostic diagnostic{Severity::kError,
                        "unknown-key",
                        {&source, 4, 13},
                        "there is no key ‘equipmnet’",
                        {},
                        "did you mean `equipment`?"};
};

}  // namespace

TEST_CASE_METHOD(Fixture, "a message for a person shows the line, the place and what to change") {
  CHECK(render(diagnostic, MessageStyle::kHuman, Colouring::kPlain) ==
        "plans/a.md:2:1: error: there is no key ‘equipmnet’ [unknown-key]\n"
        " 2 | equipmnet: towel\n"
        "   | ^^^^^^^^^\n"
        " change: did you mean `equipment`?\n");
}

TEST_CASE_METHOD(Fixture, "a message for an editor is one line") {
  CHECK(render(diagnostic, MessageStyle::kShort, Colouring::kPlain) ==
        "plans/a.md:2:1: error: there is no key ‘equipmnet’ [unknown-key]; did you mean "
        "`equipment`?\n");
}

TEST_CASE_METHOD(Fixture,
                 "a message for a program is one JSON object a line, as python3 reads it") {
  const std::string line = render(diagnostic, MessageStyle::kJson, Colouring::kAnsi);
  CHECK(line ==
        "{\"schema\":1,\"name\":\"unknown-key\",\"severity\":\"error\",\"path\":\"plans/"
        "a.md\",\"line\":2,"
        "\"column\":1,\"end_line\":2,\"end_column\":10,\"message\":\"there is no key "
        "\\u2018equipmnet\\u2019\","
        "\"hint\":\"did you mean `equipment`?\",\"labels\":[]}\n");
  const auto ran = support::run(
      "printf '%s' '" + line +
      "' | python3 -c 'import json,sys; d=json.loads(sys.stdin.read()); print(d[\"end_column\"])'");
  CHECK(ran.status == 0);
  CHECK(ran.output == "10\n");
}

TEST_CASE("of one name only so many are kept, and one that says so") {
  Diagnostics found;
  for (int i = 0; i < 1000; ++i) found.error("bad-value", {}, "this is wrong");
  found.warning("bad-value", {}, "this may be wrong");
  found.error("no-dose", {}, "this has no dose");
  REQUIRE(found.all().size() == Diagnostics::kMostOfOneName + 3);
  CHECK(found.error_count() == Diagnostics::kMostOfOneName + 2);
  const Diagnostic& last = found.all()[Diagnostics::kMostOfOneName];
  CHECK(last.message == "there is more like this from here on, which is not listed");
  CHECK(last.hint == "mend what is listed, and check again");
  CHECK(found.all().back().name == "no-dose");
}

TEST_CASE("what quotes a whole file is cut in the middle, between characters") {
  Diagnostics found;
  const std::string quoted = "‘" + std::string(500'000, 'x') + "’ is no dose";
  Diagnostic long_one{Severity::kError, "bad-value", {}, quoted, {}, quoted};
  long_one.labels.push_back({{}, quoted});
  found.add(long_one);
  const Diagnostic& first = found.all()[0];
  for (const std::string& text : {first.message, first.hint, first.labels[0].message}) {
    CHECK(text.size() <= Diagnostics::kLongestText);
    CHECK(text.starts_with("‘xxxx"));
    CHECK(text.find("x … x") != std::string::npos);
    CHECK(text.ends_with("x’ is no dose"));
  }
  std::string wide;
  for (int i = 0; i < 1'000; ++i) wide += "日";
  found.error("bad-value", {}, wide);
  CHECK(!first_invalid_utf8(found.all().back().message));
  found.error("bad-value", {}, std::string(Diagnostics::kLongestText, 'z'));
  CHECK(found.all().back().message == std::string(Diagnostics::kLongestText, 'z'));
}

TEST_CASE("labels point at the other places; a diagnostic may be nowhere") {
  const Source source("p.md", "a: 1\na: 2\n");
  Diagnostic d{Severity::kWarning,
               "duplicate-key",
               {&source, 5, 6},
               "‘a’ is written twice",
               {{{&source, 0, 1}, "first here"}},
               ""};
  CHECK(render(d, MessageStyle::kHuman, Colouring::kPlain) ==
        "p.md:2:1: warning: ‘a’ is written twice [duplicate-key]\n"
        " 2 | a: 2\n"
        "   | ^\n"
        " p.md:1:1\n"
        " 1 | a: 1\n"
        "   | ^ first here\n");
  d.span = {};
  d.labels.clear();
  CHECK(render(d, MessageStyle::kShort, Colouring::kPlain) ==
        "warning: ‘a’ is written twice [duplicate-key]\n");
}

TEST_CASE("a long line is cut around the caret, and control characters do not reach the terminal") {
  const Source source("p.md", std::string(300, 'x') + "\x1b[31mbad" + std::string(300, 'y'));
  const Diagnostic d{Severity::kError, "bad-value", {&source, 305, 308}, "wrong", {}, ""};
  const std::string text = render(d, MessageStyle::kHuman, Colouring::kPlain);
  CHECK(text.find('\x1b') == std::string::npos);
  CHECK(text.find("^^^") != std::string::npos);
  CHECK(text.size() < 400);
}

TEST_CASE("colours only mark; the words are the same") {
  const Source source("p.md", "x");
  const Diagnostic d{Severity::kError, "bad-value", {&source, 0, 1}, "wrong", {}, "right"};
  const std::string coloured = render(d, MessageStyle::kHuman, Colouring::kAnsi);
  std::string stripped;
  for (std::size_t i = 0; i < coloured.size(); ++i) {
    if (coloured[i] == '\x1b') {
      while (coloured[i] != 'm') ++i;
    } else {
      stripped += coloured[i];
    }
  }
  CHECK(stripped == render(d, MessageStyle::kHuman, Colouring::kPlain));
}

TEST_CASE("printing order is path, then place; the same thing is said once") {
  const Source b("b.md", "text");
  const Source a("a.md", "text");
  Diagnostics all;
  all.error("bad-value", {&b, 0, 1}, "third");
  all.warning("bad-value", {&a, 2, 3}, "second");
  all.error("bad-value", {&a, 0, 1}, "first");
  all.error("bad-value", {&a, 0, 1}, "first");
  const auto sorted = all.sorted();
  REQUIRE(sorted.size() == 3);
  CHECK(sorted[0].message == "first");
  CHECK(sorted[1].message == "second");
  CHECK(sorted[2].message == "third");
  CHECK(all.error_count() == 3);
  CHECK(all.warning_count() == 1);
}

TEST_CASE("lines stay lines, and nothing in them reaches a terminal as it is") {
  CHECK(printable_lines("a\nb\n") == "a\nb\n");
  CHECK(printable_lines("a\x1b[2J\r\n\x9b"
                        "1m\xE2\x80\xAE\n\a") ==
        "a\xEF\xBF\xBD[2J\xEF\xBF\xBD\n\xEF\xBF\xBD"
        "1m\xEF\xBF\xBD\n\xEF\xBF\xBD");
  CHECK(printable_lines("").empty());
}

TEST_CASE("a note is neither an error nor a warning, and strictness does not touch it") {
  Diagnostics found;
  found.warning("over-slot", {}, "a warning");
  found.note("assumed", {}, "a note");
  CHECK(found.warning_count() == 1);
  CHECK_FALSE(found.has_errors());
  found.make_strict();
  CHECK(found.error_count() == 1);
  CHECK(found.warning_count() == 0);
  CHECK(found.all()[1].severity == Severity::kNote);
  CHECK(render(found.all()[1], MessageStyle::kShort, Colouring::kPlain) ==
        "note: a note [assumed]\n");
}

TEST_CASE("a cure that can be written down is data") {
  const Source source("p.md", "warm up\nDish: 3x\n");
  Diagnostic d{Severity::kNote, "assumed", {&source, 0, 7}, "this opens a part", {}, ""};
  d.edits = {{{&source, 0, 0}, "## "}};
  CHECK(render(d, MessageStyle::kJson, Colouring::kPlain) ==
        "{\"schema\":1,\"name\":\"assumed\",\"severity\":\"note\",\"path\":\"p.md\",\"line\":1,"
        "\"column\":1,\"end_line\":1,\"end_column\":8,\"message\":\"this opens a "
        "part\",\"hint\":\"\","
        "\"labels\":[],\"edits\":[{\"path\":\"p.md\",\"line\":1,\"column\":1,\"end_line\":1,"
        "\"end_column\":1,\"text\":\"## \"}]}\n");
}
