// A hall of round numbers, so that the sums beside the cases can be done by head.
#pragma once

#include "plan/hall_book.h"

namespace chalkleaf::reason::tests {

inline plan::HallBook a_hall() {
  using plan::HallActivity;
  using plan::HallPlace;
  const auto seconds = [](int n) { return Duration::seconds(n); };
  plan::HallBook book;
  HallPlace vault;
  vault.name = "vault";
  vault.words = {{"vault"}, {"trampette"}};
  vault.counted = {{"runs"}};
  vault.goes = HallPlace::Goes::kEach;
  vault.lane = 20;
  vault.blocked = seconds(10);
  vault.cycle = seconds(40);
  HallPlace bars;
  bars.name = "bars";
  bars.words = {{"bars"}, {"bar"}};
  bars.counted = {{"bars"}};
  bars.lanes = 2;
  bars.lane = 4;
  bars.blocked = seconds(10);
  bars.length = seconds(20);
  HallPlace floor = vault;
  floor.name = "floor";
  floor.words = {{"floor"}};
  floor.counted = {{"lines"}};
  floor.only = {plan::DrillKind::kRoll};
  floor.lanes = 4;
  floor.lane = 4;
  floor.cycle = {};
  book.places = {vault, bars, floor};
  const auto activity = [&](const char* name, plan::Phrases words, HallActivity::Places places,
                            int begin, int change, int lasts) {
    HallActivity out;
    out.name = name;
    out.words = std::move(words);
    out.places = places;
    out.begin = seconds(begin);
    out.change = seconds(change);
    out.lasts = seconds(lasts);
    out.alone = seconds(2 * lasts);
    return out;
  };
  using Places = HallActivity::Places;
  book.activities = {activity("warm-up", {{"warm-up"}}, Places::kOfLine, 60, 10, 30),
                     activity("cool-down", {{"cool-down"}}, Places::kOfLine, 60, 10, 30),
                     activity("game", {{"game"}}, Places::kNone, 0, 20, 120),
                     activity("home", {}, Places::kOfLine, 0, 5, 30),
                     activity("home-flow", {}, Places::kOfLine, 7, 3, 30),
                     activity("other", {}, Places::kOfPart, 60, 20, 60)};
  book.spotted = {{"spot"}};
  book.groups = {{"groups"}, {"stations"}};
  book.rotating = {{"rotate"}, {"swap"}};
  book.levels = {{"a"}, {"b"}, {"gold"}};
  book.one_go = {{"bounces"}, {"in", "a", "row"}};
  book.young = {{"toddlers"}};
  book.years = {{"years"}};
  book.several = {{"neck"}, {"wrists"}, {"ankles"}};
  book.paces = {{{"routine"}, seconds(60)}};
  book.times = {{"rep", seconds(2)},           {"skill", seconds(8)},
                {"shared", seconds(60)},       {"hold-in-one-go", seconds(30)},
                {"queue-told", seconds(30)},   {"between-stations", seconds(5)},
                {"station-told", seconds(20)}, {"move-told", seconds(4)},
                {"remark", seconds(15)},       {"further", seconds(25)}};
  book.factors = {{"low", 0.5}, {"high", 2}, {"spotters", 1}, {"young", 1.5}, {"level-share", 0}};
  return book;
}

}  // namespace chalkleaf::reason::tests
