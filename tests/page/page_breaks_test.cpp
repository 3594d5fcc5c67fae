#include "page/page_breaks.h"
#include "support/random.h"

#include <catch2/catch.hpp>
#include <chrono>
#include <functional>
#include <optional>
#include <random>

using namespace chalkleaf;
using namespace chalkleaf::page;

namespace {

const Length kPage = Length::pt(100);

Place place_of(std::size_t next, double height, double space = 0, bool keep = false) {
  Place out;
  out.ways.push_back({next, Length::pt(height), Length::pt(space), keep, 0});
  return out;
}

std::vector<Place> column(const std::vector<double>& heights) {
  std::vector<Place> out;
  for (const double height : heights) out.push_back(place_of(out.size() + 1, height));
  return out;
}

std::vector<std::size_t> starts(const PagePlan& plan) {
  std::vector<std::size_t> out;
  for (const PlannedPage& page : plan.pages) out.push_back(page.pieces.front().place);
  return out;
}

// Tries everything: every way from every place, every place to end a page at.
class TryAll {
 public:
  explicit TryAll(const std::vector<Place>& places) : places_(places) {}

  Cost best() {
    go(0, std::nullopt, {});
    return *best_;
  }

 private:
  struct Open {
    Length height;
    std::int64_t dislike = 0;
    bool kept = false;
  };

  void go(std::size_t at, std::optional<Open> page, const Cost& cost) {
    const bool at_end = at == places_.size();
    const bool forced = at_end || places_[at].begins_page;
    if (page) {
      Cost ended = cost;
      ended.pages += 1;
      ended.too_tall += page->height > kPage ? 1 : 0;
      ended.parted += page->kept && !forced ? 1 : 0;
      ended.looks += page->dislike + empty_foot(kPage - page->height, kPage, forced);
      if (!forced && places_[at].head > Length()) ended.looks += 400;
      if (!at_end) {
        go(at, std::nullopt, ended);
      } else if (!best_ || ended < *best_) {
        best_ = ended;
      }
      if (forced || page->height > kPage) return;
    }
    if (at_end) return;
    for (const Way& way : places_[at].ways) {
      Open next = page.value_or(Open{});
      if (page) {
        next.height += way.space_before;
      } else if (at > 0 && has_head(places_[at], way, kPage)) {
        next.height += places_[at].head + way.space_before;
      }
      next.height += way.height;
      if (page && next.height > kPage) continue;
      next.dislike += way.dislike;
      next.kept = way.keep_with_next;
      go(way.next, next, cost);
    }
  }

  const std::vector<Place>& places_;
  std::optional<Cost> best_;
};

// Fills each page in turn with whole chains of what keeps together; the places its pages begin at.
std::vector<std::size_t> in_turn(const std::vector<Place>& places) {
  std::vector<std::size_t> out;
  Length y;
  const auto fits = [&](std::size_t from, std::size_t end) {
    Length height = y;
    for (std::size_t i = from; i < end; ++i)
      height += places[i].ways[0].space_before + places[i].ways[0].height;
    return height <= kPage;
  };
  for (std::size_t i = 0; i < places.size();) {
    std::size_t end = i + 1;
    while (end < places.size() && places[end - 1].ways[0].keep_with_next) ++end;
    for (std::size_t k = i; k < end; ++k) {
      const Way& way = places[k].ways[0];
      const bool ends = out.empty() || places[k].begins_page || (k == i && !fits(i, end)) ||
                        y + way.space_before + way.height > kPage;
      if (ends) {
        out.push_back(k);
        const bool head = k > 0 && has_head(places[k], way, kPage);
        y = head ? places[k].head + way.space_before : Length();
      } else {
        y += way.space_before;
      }
      y += way.height;
    }
    i = end;
  }
  return out;
}

struct Random {
  explicit Random(unsigned seed) : engine(seed) {}
  int below(int n) { return static_cast<int>(engine() % static_cast<unsigned>(n)); }
  bool one_in(int n) { return below(n) == 0; }
  std::mt19937 engine;
};

// Now and then a slab is taller than a page, or stands for two.
std::vector<Place> random_document(Random& random, int most, bool alternatives) {
  std::vector<Place> out;
  const int count = 1 + random.below(most);
  bool in_section = false;
  Length head;
  for (int i = 0; i < count; ++i) {
    const auto n = static_cast<std::size_t>(i);
    Place place = place_of(n + 1, 1 + random.below(random.one_in(12) ? 130 : 60),
                           random.below(3) * 4, random.one_in(5) && i + 1 < count);
    if (!in_section || random.one_in(4)) {
      head = random.one_in(2) ? Length::pt(5 + random.below(20)) : Length();
      in_section = true;
    } else {
      place.head = head;
    }
    place.begins_page = random.one_in(12);
    out.push_back(std::move(place));
  }
  if (!alternatives) return out;
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (random.one_in(3)) {
      out[i].ways.push_back({i + 1, Length::pt(1 + random.below(50)), Length::pt(3), false, 900});
    }
    if (i + 1 < out.size() && !out[i + 1].begins_page && random.one_in(2)) {
      out[i].ways.push_back(
          {i + 2, Length::pt(1 + random.below(70)), Length::pt(3), false, random.below(5000)});
    }
  }
  return out;
}

}  // namespace

TEST_CASE("no pages for nothing, one for one") {
  CHECK(plan_pages({}, kPage).pages.empty());
  CHECK(starts(plan_pages(column({30}), kPage)) == std::vector<std::size_t>{0});
}

TEST_CASE("the last page gets a panel more rather than stand with one") {
  // In turn: four, and one of 20 alone.
  CHECK(starts(plan_pages(column({25, 25, 25, 25, 20}), kPage)) == std::vector<std::size_t>{0, 3});
  // A last page that is nearly half full is left alone.
  CHECK(starts(plan_pages(column({30, 30, 30, 30, 15}), kPage)) == std::vector<std::size_t>{0, 3});
}

TEST_CASE("empty feet are shared out over the pages") {
  // In turn 90, 90, 60, 90 of a hundred; better 70, 75, 95, 90.
  const PagePlan plan = plan_pages(column({50, 20, 20, 55, 35, 60, 90}), kPage);
  CHECK(starts(plan) == std::vector<std::size_t>{0, 2, 4, 6});
}

TEST_CASE("the cheapest of all ways through the document is found") {
  for (unsigned seed = 0; seed < support::rounds(600); ++seed) {
    Random random(seed);
    const std::vector<Place> places = random_document(random, 11, seed % 2 == 1);
    const PagePlan plan = plan_pages(places, kPage);
    INFO("seed " << seed);
    CHECK(plan.cost == TryAll(places).best());
  }
}

TEST_CASE("every place once and in order; no page too full but for one piece") {
  for (unsigned seed = 0; seed < support::rounds(300); ++seed) {
    INFO("seed " << seed);
    Random random(seed);
    const std::vector<Place> places = random_document(random, 80, seed % 3 == 0);
    std::size_t next = 0;
    for (const PlannedPage& page : plan_pages(places, kPage).pages) {
      REQUIRE_FALSE(page.pieces.empty());
      Length height;
      for (std::size_t i = 0; i < page.pieces.size(); ++i) {
        const auto& piece = page.pieces[i];
        CHECK(piece.place == next);
        const Way& way = places[piece.place].ways[piece.way];
        if (i == 0 && page.head) height += places[piece.place].head;
        if (i > 0 || page.head) height += way.space_before;
        if (i > 0) CHECK_FALSE(places[piece.place].begins_page);
        height += way.height;
        next = way.next;
      }
      CHECK(height == page.height);
      if (page.pieces.size() > 1) CHECK(height <= kPage);
    }
    CHECK(next == places.size());
  }
}

TEST_CASE("never more pages than filling each in turn, unless that parts what belongs together") {
  for (unsigned seed = 1000; seed < 1000 + support::rounds(300); ++seed) {
    INFO("seed " << seed);
    Random random(seed);
    const std::vector<Place> places = random_document(random, 60, false);
    const std::vector<std::size_t> greedy = in_turn(places);
    std::int64_t parted = 0;
    for (const std::size_t start : greedy) {
      const bool kept = start > 0 && places[start - 1].ways[0].keep_with_next;
      parted += kept && !places[start].begins_page ? 1 : 0;
    }
    const PagePlan plan = plan_pages(places, kPage);
    CHECK(plan.cost.parted <= parted);
    if (plan.cost.parted == parted) CHECK(plan.pages.size() <= greedy.size());
  }
}

TEST_CASE("thousands of pieces take a moment") {
  const auto seconds = [](std::size_t pieces) {
    std::vector<Place> places;
    for (std::size_t i = 0; i < pieces; ++i) {
      places.push_back(place_of(i + 1, 8 + static_cast<double>(i * 7 % 13), 2));
      if (i + 1 < pieces) places.back().ways.push_back({i + 2, Length::pt(19), {}, false, 500});
    }
    const auto begin = std::chrono::steady_clock::now();
    CHECK(plan_pages(places, kPage).pages.size() > pieces / 20);
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  };
  CHECK(seconds(10'000) < 10);  // a bound far above what it takes: not to measure, to catch n²
}
