#include "page/page_breaks.h"

#include <algorithm>
#include <array>
#include <limits>
#include <optional>

namespace chalkleaf::page {
namespace {

constexpr std::int64_t kInSection = 400;  // a page that begins inside a section: two hundredths
constexpr std::size_t kMostStates = 96;   // ways of filling a page up to one place, kept
constexpr std::size_t kMostPieces = 600;  // on a page; more than lines of the smallest type

/// A page begun, filled up to a place.
struct State {
  Length height;
  std::int64_t dislike = 0;
  std::uint32_t pieces = 0;
  // Where it came from: its place and index in the fronts, and the way taken.
  std::uint32_t from = 0;
  std::uint32_t from_index = 0;
  std::uint32_t way = 0;
  bool kept = false;  // its last piece keeps with the next
};

std::uint32_t narrow(std::size_t index) { return static_cast<std::uint32_t>(index); }

constexpr Cost kUnreached{std::numeric_limits<std::int64_t>::max(), 0, 0, 0};

class Planner {
 public:
  Planner(const std::vector<Place>& places, Length page_height)
      : places_(places), page_(page_height), best_(places.size() + 1, kUnreached) {
    came_.resize(places.size() + 1);
    fronts_.resize(places.size() + 1);
  }

  PagePlan run() {
    best_.front() = {};
    for (std::size_t i = 0; i < places_.size(); ++i) {
      if (best_[i] != kUnreached) fill_page(i);
    }
    PagePlan out;
    out.cost = best_.back();
    for (std::size_t end = places_.size(); end > 0; end = came_[end].from)
      out.pages.push_back(came_[end].page);
    std::reverse(out.pages.begin(), out.pages.end());
    return out;
  }

 private:
  struct Came {
    std::size_t from = 0;
    PlannedPage page;
  };

  // All pages that begin at place `i`, for each place they can end at.
  void fill_page(std::size_t i) {
    last_ = i;
    const Place& first = places_[i];
    for (std::uint32_t w = 0; w < first.ways.size(); ++w) {
      const Way& way = first.ways[w];
      const bool head = i > 0 && has_head(first, way, page_);
      const Length top = head ? first.head + way.space_before : Length();
      add(way, {top + way.height, way.dislike, 1, narrow(i), 0, w, way.keep_with_next});
    }
    for (std::size_t j = i; j <= last_; ++j) {
      prune(fronts_[j]);
      const bool goes_on = j < places_.size() && !places_[j].begins_page;
      std::optional<std::uint32_t> best;
      for (std::uint32_t s = 0; s < fronts_[j].size(); ++s) {
        if (end_page(i, j, fronts_[j][s])) best = s;
        if (goes_on) extend(j, s);
      }
      if (best) came_[j] = {i, retraced(i, fronts_[j][*best])};
    }
    for (std::size_t j = i; j <= last_; ++j) fronts_[j].clear();
  }

  void add(const Way& way, const State& state) {
    const std::size_t to = std::min(way.next, places_.size());
    last_ = std::max(last_, to);
    fronts_[to].push_back(state);
  }

  void extend(std::size_t j, std::uint32_t s) {
    const State state = fronts_[j][s];
    if (state.height > page_ || state.pieces >= kMostPieces) return;
    for (std::uint32_t w = 0; w < places_[j].ways.size(); ++w) {
      const Way& way = places_[j].ways[w];
      const Length height = state.height + way.space_before + way.height;
      if (height > page_) continue;
      add(way, {height, state.dislike + way.dislike, state.pieces + 1, narrow(j), s, w,
                way.keep_with_next});
    }
  }

  // Not more than can be looked at: of those about as high as each other the one that is liked
  // best, and the shortest of all, for it may be the only one that saves a page.
  void prune(std::vector<State>& states) const {
    if (states.size() <= kMostStates) return;
    std::array<const State*, kMostStates> best{};
    const auto shortest = std::min_element(
        states.begin(), states.end(),
        [](const State& one, const State& other) { return one.height < other.height; });
    constexpr std::int64_t kSteps = kMostStates / 2;
    const std::int64_t page = std::max<std::int64_t>(1, page_.in_millipoints());
    for (const State& state : states) {
      const std::int64_t step =
          std::clamp<std::int64_t>(state.height.in_millipoints() * kSteps / page, 0, kSteps - 1);
      const State*& known = best[static_cast<std::size_t>(step * 2 + (state.kept ? 1 : 0))];
      const bool better = known == nullptr || state.dislike < known->dislike ||
                          (state.dislike == known->dislike && state.height < known->height);
      if (better) known = &state;
    }
    std::vector<State> out = {*shortest};
    for (const State* one : best) {
      if (one != nullptr && one != &*shortest) out.push_back(*one);
    }
    states = std::move(out);
  }

  // True when ending the page at place `j` is the best way to get there so far.
  bool end_page(std::size_t i, std::size_t j, const State& state) {
    const bool at_end = j == places_.size();
    const bool forced = at_end || places_[j].begins_page;
    Cost cost = best_[i];
    cost.pages += 1;
    cost.too_tall += state.height > page_ ? 1 : 0;
    cost.parted += state.kept && !forced ? 1 : 0;
    cost.looks += state.dislike + empty_foot(page_ - state.height, page_, forced);
    if (!forced && places_[j].head > Length()) cost.looks += kInSection;
    if (cost >= best_[j]) return false;
    best_[j] = cost;
    return true;
  }

  PlannedPage retraced(std::size_t i, State state) const {
    PlannedPage out;
    out.height = state.height;
    for (;;) {
      out.pieces.push_back({state.from, state.way});
      if (state.pieces == 1) break;
      state = fronts_[state.from][state.from_index];
    }
    std::reverse(out.pieces.begin(), out.pieces.end());
    out.head = i > 0 && has_head(places_[i], places_[i].ways[out.pieces.front().way], page_);
    return out;
  }

  const std::vector<Place>& places_;
  Length page_;
  std::vector<Cost> best_;  // of the document up to a place where a page may begin
  std::vector<Came> came_;
  /// Of the page that is filled: its states at each place, and the last place that has any.
  std::vector<std::vector<State>> fronts_;
  std::size_t last_ = 0;
};

}  // namespace

// Squares: one hole of a third is worse than three of a ninth. What is above a fifth of the page
// counts again and more, for that is where a page begins to look unfinished.
std::int64_t empty_foot(Length free, Length page_height, bool last) {
  constexpr std::int64_t kUnfinished = 200;  // thousandths of the page
  constexpr std::int64_t kBoxOrTwo = 600;
  if (free <= Length() || page_height <= Length()) return 0;
  const std::int64_t empty =
      std::min<std::int64_t>(1000, free.in_millipoints() * 1000 / page_height.in_millipoints());
  const std::int64_t beyond = std::max<std::int64_t>(0, empty - (last ? kBoxOrTwo : kUnfinished));
  return last ? beyond * beyond * 2 : empty * empty + beyond * beyond * 3;
}

bool has_head(const Place& place, const Way& first, Length page_height) {
  return place.head > Length() && place.head + first.space_before + first.height <= page_height;
}

PagePlan plan_pages(const std::vector<Place>& places, Length page_height) {
  if (places.empty()) return {};
  return Planner(places, page_height).run();
}

}  // namespace chalkleaf::page
