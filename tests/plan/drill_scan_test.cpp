// Names that are found without reading a drill, against those reading it gives.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "plan/library_reading.h"
#include "support/places.h"

namespace chalkleaf::plan {
namespace {

std::string joined(const std::string& name, const std::vector<std::string>& also) {
  std::string out = name;
  for (const std::string& one : also) out += "|" + one;
  return out;
}

std::string scanned(const std::string& text) {
  const auto names = drill_names_in(text);
  return names ? joined(names->name, names->also) : "read it";
}

std::string read(const std::string& text) {
  const LibraryDrill drill = read_drill_text(text);
  std::vector<std::string> also;
  for (const Words& one : drill.also) also.push_back(one.text);
  return joined(drill.name.text, also);
}

std::string front(const std::string& lines) { return "---\n" + lines + "---\n\n- cue: tall\n"; }

}  // namespace

TEST_CASE("plain front matter says a drill's names") {
  CHECK(scanned(front("title: Dish hold\nalso: hollow body, boat (small)\nkind: shape\n")) ==
        "Dish hold|hollow body|boat (small)");
  CHECK(scanned(front("kind: shape\nloads: {wrists: 2}\nneeds: [a mat, a box]\ntitle: Push-up\n"
                      "plain: \"Down, and up: slowly.\"\nmets: \"02024\"\n")) == "Push-up");
}

TEST_CASE("what YAML might take another way is read") {
  for (const char* lines : {"title: \"Dish\"\n",
                            "title: Dish: hold\n",
                            "title: Dish # hold\n",
                            "title:\n  Dish\n",
                            "title: Dish\n  hold\n",
                            "title: Dish\ntitle: Boat\n",
                            "Title: Dish\n",
                            "title : Dish\n",
                            "title:Dish\n",
                            "title: [Dish]\n",
                            "title: Dish\nalso: [boat, hold]\n",
                            "title: Dish\nalso:\n- boat\n",
                            "title: Dish\nplain: |\n  title\n",
                            "title: Dish\n\n",
                            "title: Dish\nplain: 'a\n",
                            "title: Dish\nplain: \"a\ntitle: Boat\"\n",
                            "title: Dish\nloads: {wrists: 2,\n  neck: 1}\n",
                            "title: D\xC3\xA9j\xC3\xA0\n",
                            "title: &a Dish\n",
                            "# title: Dish\ntitle: Boat\n",
                            "kind: shape\n",
                            "title: Dish\r\n"}) {
    INFO(lines);
    CHECK(scanned(front(lines)) == "read it");
  }
  CHECK(scanned("# Dish\n") == "read it");
  CHECK(scanned("---\ntitle: Dish\n") == "read it");
  CHECK(scanned("\n---\ntitle: Dish\n---\n") == "read it");
  CHECK(scanned("") == "read it");
}

TEST_CASE("the drills that ship have the names that reading them gives, and few need reading") {
  std::size_t all = 0;
  std::size_t plain = 0;
  const std::string folder = support::repository() + "/themes/shelf";
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() != ".md" || entry.path().stem() == "README") continue;
    std::stringstream text;
    text << std::ifstream(entry.path()).rdbuf();
    ++all;
    if (scanned(text.str()) == "read it") continue;
    ++plain;
    CHECK(scanned(text.str()) == read(text.str()));
  }
  CHECK(all >= 100);
  CHECK(plain * 10 >= all * 9);
}

TEST_CASE("a book of unread drills reads what is asked for, once") {
  const std::vector<std::string> files = {front("title: Dish hold\nalso: boat\n"),
                                          front("title: Arch hold\n")};
  std::vector<std::size_t> reads;
  std::vector<DrillBook::Unread> unread;
  for (const std::string& file : files) unread.push_back({*drill_names_in(file), std::nullopt});
  const auto book = DrillBook::of_unread(unread, [&](std::size_t i) {
    reads.push_back(i);
    return read_drill_text(files[i]);
  });
  REQUIRE(book);
  CHECK(reads.empty());
  CHECK(book->find("Cartwheel") == nullptr);
  CHECK(book->closest("Dihs hold") == "Dish hold");
  CHECK(reads.empty());
  CHECK(book->find("boats")->cues.at(0).text == "tall");
  CHECK(book->find("dish hold") == book->find("boat"));
  CHECK(reads == std::vector<std::size_t>{0});
  CHECK(book->read_now().empty());
  CHECK(book->all().size() == 2);
  CHECK(reads == std::vector<std::size_t>{0, 1});
  unread.push_back({{"Boat", {}}, std::nullopt});
  CHECK_FALSE(DrillBook::of_unread(unread, {}));
}

}  // namespace chalkleaf::plan
