// The table of commands and the reading of command lines by it.
#include "cli/command_line.h"

#include <catch2/catch.hpp>
#include <set>

namespace chalkleaf::cli {
namespace {

std::variant<Chosen, Stop> read(std::vector<const char*> words) {
  words.insert(words.begin(), "chalkleaf");
  return read_command_line(static_cast<int>(words.size()), words.data());
}

Stop stopped(const std::variant<Chosen, Stop>& line) {
  REQUIRE(std::holds_alternative<Stop>(line));
  return std::get<Stop>(line);
}

Chosen chosen(const std::variant<Chosen, Stop>& line) {
  if (const auto* stop = std::get_if<Stop>(&line)) FAIL(stop->text);
  return std::get<Chosen>(line);
}

TEST_CASE("command table: every command has a name of its own, help, and something to do") {
  std::set<std::string_view> names;
  for (const Command& command : commands()) {
    CAPTURE(command.name);
    CHECK(names.insert(command.name).second);
    CHECK(!command.about.empty());
    CHECK(command.action != nullptr);
    CHECK(command.examples.find(command.name) != std::string_view::npos);
    std::set<std::string_view> options;
    for (const Option* option : command.options) CHECK(options.insert(option->name).second);
    const std::string help = stopped(read({std::string(command.name).c_str(), "--help"})).text;
    for (const Option* option : command.options) {
      CHECK(help.find(option->name) != std::string::npos);
    }
  }
}

TEST_CASE("command line: what was given is asked for by its row") {
  const auto line = read({"build", "a.md", "b.md", "--out", "here", "--strict", "--jobs", "3"});
  const Chosen one = chosen(line);
  CHECK(one.command->name == "build");
  CHECK(one.given.all(kPlans) == std::vector<std::string>{"a.md", "b.md"});
  CHECK(one.given.text(kOut) == "here");
  CHECK(one.given.has(kStrict));
  CHECK(one.given.number(kJobs) == 3);
  CHECK(!one.given.has(kTwoUp));
  CHECK(!one.given.text(kLook));
  CHECK(message_style(one.given) == MessageStyle::kHuman);
}

TEST_CASE("command line: values are judged by their rows") {
  for (const std::vector<const char*>& words :
       std::vector<std::vector<const char*>>{{"build", "--jobs", "0"},
                                             {"build", "--jobs", "257"},
                                             {"build", "--jobs", "2x"},
                                             {"build", "--only", "both"},
                                             {"build", "--copies", "2"},
                                             {"build", "--two-up", "--copies", "3"},
                                             {"build", "--two-up", "--paper", "a4"},
                                             {"build", "--out", ""},
                                             {"week", "--starting", "tomorrow"},
                                             {"figure"},
                                             {"figure", "bridge", "--age", "40"},
                                             {"times"},
                                             {"times", "a.md", "b.md"},
                                             {"begin"},
                                             {"proof", "--dots", "19"}}) {
    CAPTURE(words);
    const Stop stop = stopped(read(words));
    CHECK(stop.exit_code == 2);
    CHECK(stop.text.starts_with("chalkleaf: "));
  }
  CHECK(chosen(read({"build", "--two-up", "--copies", "2"})).given.number(kCopies) == 2);
}

TEST_CASE("command line: an unknown command is answered with those there are") {
  const auto line = read({"print", "a.md"});
  const Stop stop = stopped(line);
  CHECK(stop.exit_code == 2);
  CHECK(stop.text.starts_with("chalkleaf: ‘print’ is not a command: write build, check, "));
  CHECK(stopped(read({})).text.starts_with("chalkleaf: no command is given: write build"));
  CHECK(stopped(read({"--version"})).text == "chalkleaf " + std::string(club::version()) + "\n");
}

}  // namespace
}  // namespace chalkleaf::cli
