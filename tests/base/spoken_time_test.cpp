// Times of day in the forms of coaches' drafts; which forms there are is common practice, no
// source.
#include "base/spoken_time.h"

#include <fmt/format.h>

#include <catch2/catch.hpp>

using namespace chalkleaf;

namespace {

/// `17:05 pm, 5 bytes`, or nothing.
std::string read(std::string_view text) {
  const auto time = spoken_time(text, 0);
  if (!time) return {};
  return fmt::format("{:02}:{:02}{}, {} bytes", time->minutes / 60, time->minutes % 60,
                     time->half_said ? " said" : "", time->end);
}

}  // namespace

TEST_CASE("spoken times: the forms people type") {
  CHECK(read("9.30") == "09:30, 4 bytes");
  CHECK(read("9:30-10:00") == "09:30, 4 bytes");
  CHECK(read("16h30") == "16:30, 5 bytes");
  CHECK(read("1700 beam") == "17:00, 4 bytes");
  CHECK(read("5pm") == "17:00 said, 3 bytes");
  CHECK(read("5.15\u00A0PM start") == "17:15 said, 8 bytes");
  CHECK(read("9.30 am") == "09:30 said, 7 bytes");
  CHECK(spoken_time("9.30pm", 0)->written == 9 * 60 + 30);
  CHECK(spoken_time("from 4.15", 5)->minutes == 4 * 60 + 15);
}

TEST_CASE("spoken times: what is none") {
  for (const std::string_view text : {"", "five", "5", "5 amazing jumps", "9.5", "9.300", "25.00",
                                      "9.75", "123", "0250", "12345", "9h"}) {
    INFO(text);
    CHECK(read(text).empty());
  }
}
