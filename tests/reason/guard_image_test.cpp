// A guard from the bytes that are kept of it is the guard that was kept.
#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <memory>
#include <string>
#include <vector>

#include "base/files.h"
#include "plan/danger_book.h"
#include "reason/guard.h"
#include "source/read.h"
#include "support/places.h"
#include "support/random.h"

using namespace chalkleaf;

namespace {

std::shared_ptr<const plan::DangerBook> shipped_book() {
  Diagnostics found;
  const std::string path = support::repository() + "/themes/words/en/dangers.yaml";
  const auto book =
      plan::read_danger_book(source::load(RealFileSystem(), path, "dangers.yaml", found), found);
  REQUIRE(book);
  return book;
}

std::string told(const reason::Guard& guard, const std::string& line, plan::Place place) {
  plan::Session session;
  session.source = std::make_shared<const Source>("plan.md", line);
  session.sources.push_back(session.source);
  session.place.value = place;
  Diagnostics found;
  guard.check(session, {}, found);
  std::string out;
  for (const Diagnostic& one : found.all())
    out += one.name + " " + std::to_string(one.span.begin) + " " + one.message + "\n";
  return out;
}

}  // namespace

TEST_CASE("guard image: every line is judged as by the guard it was made of") {
  const auto book = shipped_book();
  Diagnostics found;
  const reason::Guard made(book, found);
  const std::string image = made.image();
  REQUIRE(image.size() > 10'000);
  const reason::Guard kept(book, found, image);
  CHECK(kept.image() == image);
  const std::size_t kLines = support::rounds(8) < 8 ? 8 : 1;  // one of so many is judged
  std::size_t judged = 0;
  std::size_t dangers = 0;
  for (const std::string name : {"dangerous_lines.txt", "sound_lines.txt"}) {
    std::ifstream file(support::repository() + "/tests/guard/" + name);
    for (std::string line; std::getline(file, line); ++judged) {
      if (judged % kLines != 0) continue;
      INFO(line);
      for (const plan::Place place : {plan::Place::kHome, plan::Place::kGym}) {
        const std::string said = told(made, line, place);
        CHECK(told(kept, line, place) == said);
        if (!said.empty()) ++dangers;
      }
    }
  }
  CHECK(judged > 500);
  CHECK(dangers > 400 / kLines);
}

TEST_CASE("guard image: bytes that are none are not believed") {
  const auto book = shipped_book();
  Diagnostics found;
  const std::string image = reason::Guard(book, found).image();
  const std::string danger = "- Handstand against the sofa: 5";
  std::vector<std::string> wrong{"", "x", std::string(64, '\0'), image + "x"};
  for (std::size_t i = 1; i < 8; ++i) wrong.push_back(image.substr(0, image.size() * i / 8));
  // A count, an identity of a word or of a concept that cannot be.
  for (std::size_t at = 4; at < image.size(); at += image.size() / 23) {
    wrong.push_back(image);
    std::fill_n(wrong.back().begin() + static_cast<std::ptrdiff_t>(at / 4 * 4), 4, '\x7F');
  }
  for (const std::string& bytes : wrong) {
    const reason::Guard guard(book, found, bytes);
    // What was damaged inside a word is still an image; it must not do harm.
    const std::string said = told(guard, danger, plan::Place::kHome);
    if (bytes.size() != image.size()) CHECK(said.find("danger-upside-down") == 0);
  }
}
