// The best paragraph there is: total fit against a breaker that tries every way.
#include "type/total_fit.h"

#include <catch2/catch.hpp>
#include <limits>
#include <random>

#include "support/random.h"
#include "type/shelf.h"

using namespace chalkleaf;
using namespace chalkleaf::type;

namespace {

// Every way from a stop to the end, tried one by one.
class AllWays {
 public:
  AllWays(const LineGraph& graph, std::size_t most_lines) : graph_(graph), most_(most_lines) {
    go(0);
  }
  std::int64_t best = std::numeric_limits<std::int64_t>::max();
  std::size_t fewest = std::numeric_limits<std::size_t>::max();

 private:
  void go(std::uint32_t stop) {
    if (stop + 1 == graph_.stops.size()) {
      fewest = std::min(fewest, lines_.size());
      if (lines_.size() <= most_) best = std::min(best, demerits(lines_, graph_.measure));
      return;
    }
    for (const PossibleLine& line : graph_.lines) {
      if (line.from != stop) continue;
      lines_.push_back({line.width, graph_.stops[line.to], line.one_word});
      go(line.to);
      lines_.pop_back();
    }
  }

  const LineGraph& graph_;
  std::size_t most_;
  std::vector<FittedLine> lines_;
};

// Words of random widths between which lines may end in every way.
LineGraph random_graph(std::mt19937& random) {
  LineGraph out;
  out.measure = Length::pt(60 + static_cast<double>(random() % 60));
  const auto words = static_cast<std::uint32_t>(4 + random() % 9);
  std::vector<Length> widths;
  for (std::uint32_t i = 0; i <= words; ++i) {
    constexpr Ending kEndings[] = {Ending::kSpace, Ending::kSpace, Ending::kCompound,
                                   Ending::kHyphen, Ending::kHyphen};
    out.stops.push_back(kEndings[random() % 5]);
    widths.push_back(Length::pt(4 + static_cast<double>(random() % 40)));
  }
  for (std::uint32_t from = 0; from < words; ++from) {
    Length width;
    for (std::uint32_t to = from + 1; to <= words; ++to) {
      width += widths[to] + (to > from + 1 ? Length::pt(3) : Length());
      if (width > out.measure) break;
      out.lines.push_back({from, to, width, to == from + 1});
    }
  }
  return out;
}

std::int64_t demerits_along(const LineGraph& graph, const std::vector<std::uint32_t>& stops) {
  std::vector<FittedLine> lines;
  std::uint32_t from = 0;
  for (const std::uint32_t to : stops) {
    for (const PossibleLine& line : graph.lines) {
      if (line.from == from && line.to == to)
        lines.push_back({line.width, graph.stops[to], line.one_word});
    }
    from = to;
  }
  REQUIRE(lines.size() == stops.size());
  return demerits(lines, graph.measure);
}

Length width_on_one_line(const std::string& text) {
  static Typesetter typesetter(test_fonts());
  const Inline one = plain(text);
  return typesetter.natural_width(std::span(&one, 1));
}

std::string trimmed(std::string line) {
  while (line.ends_with(' ')) line.pop_back();
  return line;
}

// What the typesetter made, or what first fit would make, as the costs count it.
std::vector<FittedLine> fitted(const std::vector<std::string>& lines) {
  std::vector<FittedLine> out;
  for (const std::string& line : lines) {
    const std::string words = trimmed(line);
    out.push_back({width_on_one_line(words), Ending::kSpace, words.find(' ') == std::string::npos});
  }
  return out;
}

std::vector<std::string> first_fit(const std::vector<std::string>& words, Length measure) {
  std::vector<std::string> out;
  for (const std::string& word : words) {
    const std::string longer = out.empty() ? word : out.back() + " " + word;
    if (!out.empty() && width_on_one_line(longer) <= measure) {
      out.back() = longer;
    } else {
      out.push_back(word);
    }
  }
  return out;
}

std::vector<std::string> random_words(std::mt19937& random, std::size_t count) {
  const std::vector<std::string> some = {"stand", "tall",    "on",    "the",       "low",   "beam",
                                         "a",     "arms",    "reach", "towards",   "eight", "slow",
                                         "steps", "balance", "and",   "cartwheel", "to"};
  std::vector<std::string> out;
  for (std::size_t i = 0; i < count; ++i) out.push_back(some[random() % some.size()]);
  return out;
}

}  // namespace

TEST_CASE("no way is better than the one that is found") {
  std::mt19937 random(1981);
  int without_way = 0;
  int with_more_lines = 0;
  for (unsigned round = 0; round < support::rounds(3000); ++round) {
    const LineGraph graph = random_graph(random);
    const std::size_t fewest = AllWays(graph, 0).fewest;
    const std::optional<Fit> found = total_fit(graph);
    REQUIRE(found.has_value() == (fewest < 100));
    if (!found) {
      ++without_way;
      continue;
    }
    REQUIRE(found->stops.size() == fewest);
    REQUIRE(found->demerits == AllWays(graph, fewest).best);
    REQUIRE(found->demerits == demerits_along(graph, found->stops));
    // With a line more to choose from.
    const std::optional<Fit> looser = total_fit(graph, static_cast<std::uint32_t>(fewest + 1));
    REQUIRE(looser.has_value());
    REQUIRE(looser->demerits == AllWays(graph, fewest + 1).best);
    if (looser->stops.size() > fewest) ++with_more_lines;
    REQUIRE_FALSE(total_fit(graph, static_cast<std::uint32_t>(fewest - 1)).has_value());
  }
  // Or nothing was tested.
  CHECK(without_way < 300);
  CHECK(with_more_lines > static_cast<int>(support::rounds(3000) / 150));
}

TEST_CASE("a paragraph is set in the best of all ways to part its words") {
  std::mt19937 random(7);
  int better_than_first_fit = 0;
  for (unsigned round = 0; round < support::rounds(150); ++round) {
    const std::vector<std::string> words = random_words(random, 5 + random() % 8);
    const Length measure = Length::pt(70 + static_cast<double>(random() % 50));
    std::string text = words[0];
    for (std::size_t i = 1; i < words.size(); ++i) text += " " + words[i];
    Typesetter typesetter(test_fonts());
    const Inline one = plain(text);
    const std::vector<std::string> lines = texts(typesetter.set(std::span(&one, 1), measure));
    const std::vector<std::string> greedy = first_fit(words, measure);
    INFO(text << " in " << measure.in_pt());
    REQUIRE(lines.size() == greedy.size());
    // All subsets of the spaces.
    std::int64_t best = std::numeric_limits<std::int64_t>::max();
    for (std::uint32_t cuts = 0; cuts < (1U << (words.size() - 1)); ++cuts) {
      if (static_cast<std::size_t>(__builtin_popcount(cuts)) + 1 != greedy.size()) continue;
      std::vector<std::string> way = {words[0]};
      for (std::size_t i = 1; i < words.size(); ++i) {
        if ((cuts >> (i - 1) & 1U) != 0) {
          way.push_back(words[i]);
        } else {
          way.back() += " " + words[i];
        }
      }
      const std::vector<FittedLine> as_lines = fitted(way);
      if (std::all_of(as_lines.begin(), as_lines.end(),
                      [&](const FittedLine& line) { return line.width <= measure; }))
        best = std::min(best, demerits(as_lines, measure));
    }
    const std::int64_t got = lines.size() == 1 ? best : demerits(fitted(lines), measure);
    REQUIRE(got == best);
    if (lines.size() > 1 && got < demerits(fitted(greedy), measure)) ++better_than_first_fit;
  }
  CHECK(better_than_first_fit > static_cast<int>(support::rounds(150) / 30));
}

TEST_CASE("what costs, and what does not") {
  const Length measure = Length::pt(100);
  const auto cost = [&](std::vector<FittedLine> lines) { return demerits(lines, measure); };
  const auto line = [](double points, Ending ending = Ending::kSpace) {
    return FittedLine{Length::pt(points), ending, false};
  };
  const FittedLine last = line(60);
  CHECK(cost({line(100), last}) == 0);
  CHECK(cost({line(90), line(90), last}) < cost({line(100), line(80), last}));
  CHECK(cost({line(100), line(30)}) == cost({line(100), line(100)}));  // the last may end anywhere
  CHECK(cost({line(100), line(20)}) > 0);                              // a crumb
  CHECK(cost({line(100), {Length::pt(30), Ending::kSpace, true}}) > 0);
  CHECK(cost({line(75), last}) < cost({line(100, Ending::kHyphen), last}));
  CHECK(cost({line(65), last}) > cost({line(100, Ending::kHyphen), last}));
  CHECK(cost({line(100, Ending::kHyphen), line(100, Ending::kHyphen), last}) > 2 * kHyphenDemerits);
  const FittedLine hyphen = line(100, Ending::kHyphen);
  CHECK(cost({hyphen, hyphen, hyphen, last}) > cost({hyphen, hyphen, line(1), line(1), last}));
  CHECK(cost({line(100, Ending::kCompound), last}) > 0);
  // Neighbours that differ much: the same lines in another order.
  CHECK(cost({line(99), line(60), line(82), last}) > cost({line(99), line(82), line(60), last}));
}
