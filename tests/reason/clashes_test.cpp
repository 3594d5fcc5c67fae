// Sessions that are in each other's way in one hall.
#include "reason/clashes.h"

#include <catch2/catch.hpp>
#include <deque>

#include "reason/group_week.h"
#include "reason/sessions.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;
using namespace chalkleaf::reason::tests;
using plan::Place;

namespace {

/// A club with one vault, three beams, a strip for ten and one crash mat.
plan::Club small_club() {
  plan::Club club;
  const auto station = [&](const std::string& name, int count, int takes) {
    plan::Station one;
    one.name = {name, {}};
    one.count = {count, {}};
    one.takes = {takes, {}};
    club.stations.push_back(one);
  };
  station("vault", 1, 1);
  station("beam", 3, 1);
  station("floor strip", 1, 10);
  station("wall", 1, 0);
  plan::StockItem mat;
  mat.name = {"crash mat", {}};
  mat.count = plan::Sourced<int>{1, {}};
  club.kit.push_back(mat);
  return club;
}

class Hall {
 public:
  /// A session of one part, half an hour long, with one drill there.
  Hall& session(const std::string& title, int start, const std::string& at, int gymnasts = 8,
                const std::string& uses = "", const std::string& date = "2026-12-01",
                Place place = Place::kGym) {
    SessionMaker maker(place);
    maker.start(min(start)).part("All").budget(min(30)).drill("Go", hold(1, min(1)));
    Kept& kept = kept_.emplace_back();
    kept.session = maker.session();
    kept.session.title = {title, {}};
    kept.session.gymnasts = plan::Sourced<int>{gymnasts, {}};
    if (!date.empty()) kept.session.date = plan::Sourced<Date>{*parse_date(date), {}};
    auto& drill = std::get<plan::Drill>(kept.session.parts[0].steps[0]);
    drill.at = {at, {}};
    if (!uses.empty()) drill.uses.push_back({{uses, {}}, {}});
    return *this;
  }
  plan::Session& last() { return kept_.back().session; }
  void coach(const std::string& name) {
    rota::Rotation rotation;
    rotation.coaches = {{{name, {}}, {0}, {}}};
    kept_.back().rotations = {rotation};
  }
  std::string found() {
    plans_.clear();
    for (Kept& kept : kept_) {
      kept.times = timetable(kept.session, {});
      kept.times.rotations = kept.rotations;
      if (!kept.rotations.empty()) kept.times.seats = {{0, 0, std::nullopt}};
      plans_.push_back(week_session(kept.session, kept.times, {}));
    }
    std::string out;
    for (const Clash& one : clashes(plans_, small_club()))
      out += iso_text(one.day) + " " + one.first->title.text + "/" + one.second->title.text + ": " +
             clash_text(one) + "\n";
    return out;
  }
  std::string said() {
    found();
    Diagnostics all;
    check_clashes(plans_, small_club(), all);
    std::string out;
    for (const Diagnostic& one : all.all()) out += one.name + ": " + one.message + "\n";
    return out;
  }

 private:
  struct Kept {
    plan::Session session;
    Timetable times;
    std::vector<rota::Rotation> rotations;
  };
  std::deque<Kept> kept_;
  std::vector<WeekSession> plans_;
};

constexpr int kFive = 17 * 60;

}  // namespace

TEST_CASE("one vault cannot be two sessions' at a time") {
  CHECK(Hall().session("A", kFive, "vault").session("B", kFive + 20, "vault").found() ==
        "2026-12-01 A/B: the vault from 17:20 to 17:30 (2 wanted, 1 there)\n");
  // One after the other, on another day, at another place, at home, without a clock.
  CHECK(Hall().session("A", kFive, "vault").session("B", kFive + 30, "vault").found().empty());
  CHECK(Hall()
            .session("A", kFive, "vault")
            .session("B", kFive, "vault", 8, "", "2026-12-02")
            .found()
            .empty());
  CHECK(Hall().session("A", kFive, "vault").session("B", kFive, "beam").found().empty());
  CHECK(Hall()
            .session("A", kFive, "vault")
            .session("B", kFive, "vault", 8, "", "2026-12-01", Place::kHome)
            .found()
            .empty());
  Hall no_clock;
  no_clock.session("A", kFive, "vault").session("B", kFive, "vault").last().start.reset();
  CHECK(no_clock.found().empty());
}

TEST_CASE("a station clashes when both together are more than it takes") {
  CHECK(Hall()
            .session("A", kFive, "floor strip", 5)
            .session("B", kFive, "floor strip", 5)
            .found()
            .empty());
  CHECK(
      Hall().session("A", kFive, "floor strip", 5).session("B", kFive, "floor strip", 6).found() ==
      "2026-12-01 A/B: the floor strip from 17:00 to 17:30 (11 wanted, 10 there)\n");
  // Eight at three beams take turns: they use three.
  CHECK(Hall().session("A", kFive, "beams", 8).session("B", kFive, "beam", 1).found() ==
        "2026-12-01 A/B: the beam from 17:00 to 17:30 (4 wanted, 3 there)\n");
  CHECK(Hall().session("A", kFive, "beam", 2).session("B", kFive, "beam", 1).found().empty());
  // Nobody knows how many stand at a wall, or what a trapeze is.
  CHECK(Hall().session("A", kFive, "wall").session("B", kFive, "wall").found().empty());
  CHECK(Hall().session("A", kFive, "trapeze").session("B", kFive, "trapeze").found().empty());
}

TEST_CASE("kit and coaches can be in one place only") {
  CHECK(Hall()
            .session("A", kFive, "", 8, "crash mat")
            .session("B", kFive, "", 8, "crash mats")
            .found() == "2026-12-01 A/B: the crash mat from 17:00 to 17:30 (2 wanted, 1 there)\n");
  Hall coached;
  coached.session("A", kFive, "").coach("Evening coach");
  coached.session("B", kFive + 15, "").coach("evening coach");
  CHECK(coached.found() == "2026-12-01 A/B: evening coach from 17:15 to 17:30\n");
}

TEST_CASE("sessions of every week clash without a date; one message names all two plans clash in") {
  Hall weekly;
  weekly.session("A", kFive, "vault", 8, "crash mat", "").last().repeat = {{Weekday::kTuesday, {}}};
  weekly.session("B", kFive, "vault", 8, "crash mat", "").last().repeat = {{Weekday::kTuesday, {}}};
  weekly.session("C", kFive, "vault", 8, "", "").last().repeat = {{Weekday::kFriday, {}}};
  CHECK(weekly.said() ==
        "hall-clash: on 2024-01-02 this session and ‘A’ want the same of the hall: the vault from "
        "17:00 to 17:30 (2 wanted, 1 there) and the crash mat from 17:00 to 17:30 (2 wanted, 1 "
        "there)\n");
}
