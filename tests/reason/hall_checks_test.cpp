// Parts that cannot be done in their time, and queues: when they are said, and when not.
#include <catch2/catch.hpp>

#include "reason/a_hall.h"
#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;

namespace {

std::string judged(SessionMaker& maker) {
  const plan::Session session = maker.session();
  const plan::HallBook book = a_hall();
  Diagnostics found;
  check(session, timetable(session, {}, &book), {}, plan::DrillBook(), nullptr, found);
  std::string out;
  for (const Diagnostic& one : found.sorted()) {
    if (one.name != "part-cannot-fit" && one.name != "part-tight" && one.name != "long-queue")
      continue;
    CHECK(is_open_point(one) == (one.name == "part-cannot-fit"));
    out += one.name + ": " + one.message + "; " + one.hint + "\n";
  }
  return out;
}

// Eight at the vault: 5 goes each are 6 min 40 s.
SessionMaker vault_for(Duration budget) {
  return framed(SessionMaker().gymnasts(8), min(1), [&](SessionMaker& maker) {
    maker.part("Vault").budget(budget).drill("Squat on", reps(1, 5));
  });
}

const char* const kQueue =
    "long-queue: one child works about 10 s of the 8 min that ‘Vault’ takes, and waits 7 min; open "
    "another lane, or write a side station below ‘Squat on’ for those who wait\n";

}  // namespace

TEST_CASE("hall checks: above twice its time a part cannot fit, and says so on the card") {
  SessionMaker maker = vault_for(min(3));
  CHECK(
      judged(maker) ==
      "part-cannot-fit: the turns of ‘Vault’ take about 7 min in the hall, and it has 3 min; take "
      "goes out of ‘Squat on’, open another lane beside the one, give those who wait a side "
      "station, or give the part more time\n" +
          std::string(kQueue));
}

TEST_CASE("hall checks: a part that is only tight is a note, one that fits none") {
  SessionMaker tight = vault_for(min(4));
  CHECK(judged(tight).rfind("part-tight: the turns of ‘Vault’ take about 7 min", 0) == 0);
  SessionMaker fits = vault_for(min(6));
  CHECK(judged(fits) == kQueue);
}

TEST_CASE("hall checks: silent where nobody knows how many come, at home, and without a queue") {
  SessionMaker unknown = framed(SessionMaker(), min(1), [](SessionMaker& maker) {
    maker.part("Vault").budget(min(1)).drill("Squat on", reps(1, 50));
  });
  CHECK(judged(unknown).empty());
  SessionMaker home =
      framed(SessionMaker(plan::Place::kHome).gymnasts(8), min(1), [](SessionMaker& maker) {
        maker.part("Vault").budget(min(1)).drill("Squat on", reps(1, 50));
      });
  CHECK(judged(home).empty());
  SessionMaker holds = framed(SessionMaker().gymnasts(8), min(1), [](SessionMaker& maker) {
    maker.part("Shapes").budget(min(1)).drill("Dish hold", hold(20, s(20)));
  });
  CHECK(judged(holds).empty());
}
