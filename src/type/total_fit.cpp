#include "type/total_fit.h"

#include <algorithm>
#include <limits>

namespace chalkleaf::type {
namespace {

// All shares are in thousandths of the measure; a cost is the square of a share.
constexpr std::int64_t kWhole = 1000;
constexpr std::int64_t kCompoundDemerits = 22'500;         // as a line that misses a seventh
constexpr std::int64_t kSecondHyphenDemerits = 90'000;     // besides the hyphen's own
constexpr std::int64_t kThirdHyphenDemerits = 10'000'000;  // more than ten empty lines
constexpr std::int64_t kTornDemerits = 10'000;             // a class of difference beyond one
constexpr std::int64_t kCrumb = 250;                       // a last line below this is too short
constexpr std::int64_t kLoneWord = 330;                    // so is a last line of one word
constexpr std::int64_t kLoneWordDemerits = 90'000;
constexpr int kMostHyphens = 2;

std::int64_t share(Length part, Length measure) {
  const std::int64_t whole = measure.in_millipoints();
  if (whole <= 0) return 0;
  return std::clamp<std::int64_t>(part.in_millipoints(), 0, whole) * kWhole / whole;
}

// How a line looks beside its neighbours: full, loose, short, very short.
int class_of(Length width, Length measure) {
  const std::int64_t white = kWhole - share(width, measure);
  if (white < 80) return 0;
  if (white < 200) return 1;
  return white < 350 ? 2 : 3;
}

// What the next line's cost depends on.
struct Edge {
  int look = -1;  // class_of the line above; -1 at the begin
  int hyphens = 0;
  bool operator==(const Edge&) const = default;
};

Edge edge_after(const Edge& above, Length width, Ending ending, Length measure) {
  const bool hyphen = ending == Ending::kHyphen;
  return {class_of(width, measure), hyphen ? std::min(above.hyphens + 1, kMostHyphens) : 0};
}

std::int64_t line_demerits(const Edge& above, Length width, Ending ending, Length measure) {
  const std::int64_t white = kWhole - share(width, measure);
  std::int64_t out = white * white;
  if (ending == Ending::kCompound) out += kCompoundDemerits;
  if (ending == Ending::kHyphen) {
    out += kHyphenDemerits;
    if (above.hyphens == 1) out += kSecondHyphenDemerits;
    if (above.hyphens >= kMostHyphens) out += kThirdHyphenDemerits;
  }
  if (above.look >= 0) {
    const int difference = std::abs(class_of(width, measure) - above.look);
    out += std::max(0, difference - 1) * kTornDemerits;
  }
  return out;
}

std::int64_t last_line_demerits(Length width, bool one_word, Length measure) {
  const std::int64_t full = share(width, measure);
  const std::int64_t missing = std::max<std::int64_t>(0, kCrumb - full);
  return missing * missing + (one_word && full < kLoneWord ? kLoneWordDemerits : 0);
}

constexpr std::uint32_t kNever = std::numeric_limits<std::uint32_t>::max();

// The best way to a stop, for one number of lines and one look of the line before.
struct Arrival {
  std::uint32_t stop = 0;
  std::uint32_t lines = 0;
  Edge edge;
  std::int64_t cost = 0;
  std::uint32_t from = 0;  // index of an arrival
};

class Walk {
 public:
  Walk(const LineGraph& graph, std::optional<std::uint32_t> most_lines)
      : graph_(graph), end_(graph.stops.size() - 1) {
    count_lines();
    most_ = most_lines.value_or(rest_[0]);
  }

  std::optional<Fit> run() {
    if (rest_[0] == kNever || rest_[0] > most_) return std::nullopt;
    std::vector<std::vector<std::uint32_t>> at(graph_.stops.size());  // arrivals
    arrivals_.push_back({});
    at[0] = {0};
    for (const PossibleLine& line : graph_.lines) {
      if (rest_[line.to] == kNever) continue;
      for (const std::uint32_t before : at[line.from]) arrive(line, before, at[line.to]);
    }
    return best(at[end_]);
  }

 private:
  // The fewest lines from each stop to the end.
  void count_lines() {
    rest_.assign(graph_.stops.size(), kNever);
    rest_[end_] = 0;
    for (auto line = graph_.lines.rbegin(); line != graph_.lines.rend(); ++line) {
      if (rest_[line->to] == kNever) continue;
      rest_[line->from] = std::min(rest_[line->from], rest_[line->to] + 1);
    }
  }

  void arrive(const PossibleLine& line, std::uint32_t before, std::vector<std::uint32_t>& there) {
    const Arrival& last = arrivals_[before];
    if (last.lines + 1 + rest_[line.to] > most_) return;
    Arrival next{line.to, last.lines + 1, {}, last.cost, before};
    if (line.to == end_) {
      next.cost += last_line_demerits(line.width, line.one_word, graph_.measure);
    } else {
      const Ending ending = graph_.stops[line.to];
      next.edge = edge_after(last.edge, line.width, ending, graph_.measure);
      next.cost += line_demerits(last.edge, line.width, ending, graph_.measure);
    }
    for (const std::uint32_t index : there) {
      Arrival& known = arrivals_[index];
      if (known.lines != next.lines || known.edge != next.edge) continue;
      if (next.cost < known.cost) known = next;
      return;
    }
    there.push_back(static_cast<std::uint32_t>(arrivals_.size()));
    arrivals_.push_back(next);
  }

  std::optional<Fit> best(const std::vector<std::uint32_t>& ends) const {
    if (ends.empty()) return std::nullopt;
    const std::uint32_t found = *std::min_element(
        ends.begin(), ends.end(),
        [&](std::uint32_t a, std::uint32_t b) { return arrivals_[a].cost < arrivals_[b].cost; });
    Fit out;
    out.demerits = arrivals_[found].cost;
    for (std::uint32_t i = found; arrivals_[i].stop != 0; i = arrivals_[i].from)
      out.stops.push_back(arrivals_[i].stop);
    std::reverse(out.stops.begin(), out.stops.end());
    return out;
  }

  const LineGraph& graph_;
  std::size_t end_;
  std::uint32_t most_ = 0;
  std::vector<std::uint32_t> rest_;
  std::vector<Arrival> arrivals_;
};

}  // namespace

std::int64_t demerits(std::span<const FittedLine> lines, Length measure) {
  std::int64_t out = 0;
  Edge edge;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const FittedLine& line = lines[i];
    if (i + 1 == lines.size()) return out + last_line_demerits(line.width, line.one_word, measure);
    out += line_demerits(edge, line.width, line.ending, measure);
    edge = edge_after(edge, line.width, line.ending, measure);
  }
  return out;
}

std::optional<Fit> total_fit(const LineGraph& graph, std::optional<std::uint32_t> most_lines) {
  if (graph.stops.empty()) return std::nullopt;
  return Walk(graph, most_lines).run();
}

}  // namespace chalkleaf::type
