// Drills found by name.
#include <catch2/catch.hpp>
#include <chrono>

#include "plan/library_reading.h"

namespace chalkleaf::plan {
namespace {

std::string titled(const std::string& title, const std::string& also = {}) {
  return "---\ntitle: " + title + (also.empty() ? "" : "\nalso: " + also) + "\n---\n";
}

std::string found(const ReadBook& read, std::string_view name) {
  const LibraryDrill* drill = read.book.find(name);
  return drill == nullptr ? "" : drill->name.text;
}

TEST_CASE("the longest name wins, an exact one always") {
  const ReadBook read =
      book_of({titled("Handstand", "hand stand hold"), titled("Handstand against the wall"),
               titled("Walk"), titled("Walk on toes, slowly")});
  CHECK(messages(read.found).empty());
  CHECK(found(read, "Handstands") == "Handstand");
  CHECK(found(read, "Hand-stand hold, tight") == "Handstand");
  CHECK(found(read, "Handstand against the wall, belly to it") == "Handstand against the wall");
  CHECK(found(read, "Handstand against a friend") == "Handstand");
  CHECK(found(read, "walk on toes slowly") == "Walk on toes, slowly");
  CHECK(found(read, "Walk on the mat") == "Walk");
  CHECK(found(read, "Walk on toes").empty());  // that changes what is done
  CHECK(found(read, "Wall handstand").empty());
  CHECK(found(read, "").empty());
  CHECK(found(book_of({}), "Walk").empty());
}

TEST_CASE("two drills of one name are reported where the second stands, and the first counts") {
  const ReadBook read = book_of({titled("Dish hold", "Dish, hollow hold"), titled("dish-holds"),
                                 titled("Dish"), titled("Boat", "hollow holds, boats")});
  CHECK(messages(read.found) ==
        "drills/0.md:3:7: warning: two drills of the library go by the name ‘Dish’ "
        "[duplicate-drill]; give one of them another name, or put both into one file\n"
        "drills/1.md:2:8: warning: two drills of the library go by the name ‘dish-holds’ "
        "[duplicate-drill]; give one of them another name, or put both into one file\n"
        "drills/3.md:3:7: warning: two drills of the library go by the name ‘hollow holds’ "
        "[duplicate-drill]; give one of them another name, or put both into one file\n");
  CHECK(read.found.all().at(0).labels.at(0).span.source->path() == "drills/0.md");
  CHECK(found(read, "Dish") == "Dish");  // its own title is stronger than another's second name
  CHECK(read.book.find("dish holds") == &read.book.all()[0].get());
}

TEST_CASE("a near miss is guessed, with the name as it is written in the library") {
  const ReadBook read = book_of({titled("Dish hold", "Hollow body"), titled("Arch hold")});
  CHECK(read.book.closest("Dihs hold").value() == "Dish hold");
  CHECK(read.book.closest("Dish hodl, arms by the ears").value() == "Dish hold");
  CHECK(read.book.closest("holow bodies").value() == "Hollow body");
  CHECK_FALSE(read.book.closest("Cartwheel").has_value());
  CHECK_FALSE(read.book.closest("").has_value());
}

TEST_CASE("another drill by its first words is asked about, and not taken for it") {
  const ReadBook read =
      book_of({titled("Dish hold", "Dish"), titled("Dish to arch roll"), titled("Lunges"),
               titled("Jog on the spot"), titled("Easy run", "jog")});
  CHECK(found(read, "Dish to arch").empty());
  CHECK(read.book.closest("Dish to arch").value() == "Dish to arch roll");
  CHECK(found(read, "Lunge to handstand").empty());
  CHECK(read.book.closest("Lunge to handstand").value() == "Lunges");
  CHECK(found(read, "Jog on spot") == "Jog on the spot");
  CHECK(found(read, "Jog to the wall") == "Easy run");
  CHECK(found(read, "Dish with towel") == "Dish hold");
}

// A bound, not a measurement: without its filters `closest` alone takes ten times as long.
TEST_CASE("thousands of strange names against thousands of drills take no time to speak of") {
  std::vector<std::string> files;
  for (int i = 0; i < 2'000; ++i) files.push_back(titled(fmt::format("abcdefghij {}", 10'000 + i)));
  const ReadBook read = book_of(files);
  const auto begin = std::chrono::steady_clock::now();
  for (int i = 0; i < 2'000; ++i) {
    const std::string name = fmt::format("jihgfedcba {}, a, b, c, d", 10'000 + i);
    CHECK_FALSE(read.book.find(name));
    read.book.closest(name);
  }
  CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(20));
}

}  // namespace
}  // namespace chalkleaf::plan
