// Pictures and tables that are written so that Markdown does not see them.
#include <catch2/catch.hpp>

#include "outline.h"

namespace chalkleaf::plan {
namespace {

std::string said_of_slips(const std::string& body) {
  return body_messages("## P\n\n" + body + "\n");
}

TEST_CASE("a picture that Markdown does not see is reported with the line to write") {
  const auto error = [](const char* place, const char* message, const char* hint) {
    return fmt::format("plan.md:{}: error: {} [bad-value]; write `{}`\n", place, message, hint);
  };
  const char* space = "the address of a picture cannot have a space as it is";
  const char* none = "this is not yet a picture";
  CHECK(said_of_slips("![dish](my dish.png)") == error("7:1", space, "![dish](<my dish.png>)"));
  CHECK(said_of_slips("Look:\n![]( my dish.JPG )") ==
        error("8:1", space, "![what it shows](<my dish.JPG>)"));
  CHECK(said_of_slips("- Hop: 3\n  - ![dish](my dish.png)") ==
        error("8:5", space, "![dish](<my dish.png>)"));
  CHECK(said_of_slips("- ![dish](my dish.png)") == error("7:3", space, "![dish](<my dish.png>)"));
  CHECK(said_of_slips("![dish] (dish.png)") == error("7:1", none, "![dish](dish.png)"));
  CHECK(said_of_slips("!(dish.png)") == error("7:1", none, "![what it shows](dish.png)"));
  CHECK(said_of_slips("![[dish.png]]") == error("7:1", none, "![what it shows](dish.png)"));
  CHECK(said_of_slips("dish.png") == error("7:1", none, "![what it shows](dish.png)"));
  CHECK(said_of_slips("![dish](<my dish.png>)\n\nHop high!\n\nSee dish.png (or not).").empty());
}

TEST_CASE("a table that Markdown does not see is reported, and its words are kept") {
  CHECK(read_body_text("## P\n\n| a | b |\n| c | d |\n") ==
        "paragraph | a | b | | c | d |\n"
        "plan.md:7:1: error: this table has no line below its titles [bad-value]; write "
        "`|---|---|` below its first line, and an empty line before it\n");
  CHECK(said_of_slips("| a | b | c |\n|---|---|\n| d | e | f |") ==
        "plan.md:7:1: error: the line below these titles has 2 columns, and they have 3 "
        "[bad-value]; write `|---|---|---|` below the titles\n");
  CHECK(said_of_slips("Points:\n| a | b |\n|---|---|\n| c |\n| d | e | f |").empty());
  CHECK(read_body_text("## P\n\nPoints:\n| a | b |\n|---|---|\n| c |\n| d | e | f |\n") ==
        "paragraph Points:\nrow head [a] [b]\nrow [c] []\nrow [d] [e] [f]\n");
}

}  // namespace
}  // namespace chalkleaf::plan
