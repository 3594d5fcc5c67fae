// How long a figure takes from what was read to its paths: microseconds, median of several rounds.
//
// usage: bench_figures FILE.yaml…     without files: a set of shapes with one to three contacts
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "figure/picture.h"
#include "figure/read.h"
#include "figure/words.h"
#include "source/read.h"

namespace {

using namespace chalkleaf;
using namespace chalkleaf::figure;
using Clock = std::chrono::steady_clock;

constexpr const char* kShapes = R"(figures:
  standing: {touches: feet}
  star: {view: front, touches: feet, joints: {shoulder out: 125, hip out: 25}}
  dish: {touches: back, lean: -80, joints: {spine: 35, hip: 30, shoulder: 170, ankle: -50}}
  tuck sit: {touches: seat, lean: -15, joints: {hip: 120, knee: 130, spine: 30}, hands on: shins}
  pike sit: {touches: [seat, heels], lean: 0, joints: {hip: 88, ankle: -30}, hands on: knees}
  front support: {touches: [hands, toes], joints: {shoulder: 75, ankle: 5}}
  bridge: {touches: [hands, feet], joints: {spine: -75, hip: -20, knee: 70, shoulder: 190}}
  lunge: {touches: [near feet, far toes], lean: 0, joints: {near hip: 75, near knee: 80}}
  support on knees: {touches: [hands, knees, insteps], joints: {shoulder: 63, knee: 40}}
  side support: {view: front, touches: [right hands, right feet], joints: {right shoulder out: 66}}
  handstand: {touches: hands, joints: {shoulder: 180, ankle: -60}}
  leg lift: {frames: [{touches: back}, {touches: back, joints: {hip: 95}}]}
)";

/// The least and the median of rounds, in microseconds.
struct Spent {
  double least = 0;
  double median = 0;
};
template <class Work>
Spent measure(const Work& work) {
  constexpr int kRounds = 25;
  constexpr int kTimes = 40;
  std::vector<double> rounds;
  for (int round = 0; round < kRounds; ++round) {
    const auto begin = Clock::now();
    for (int i = 0; i < kTimes; ++i) work();
    rounds.push_back(std::chrono::duration<double, std::micro>(Clock::now() - begin).count() /
                     kTimes);
  }
  std::sort(rounds.begin(), rounds.end());
  return {rounds.front(), rounds[rounds.size() / 2]};
}

}  // namespace

int main(int argc, char** argv) {
  Diagnostics diagnostics;
  Descriptions all;
  std::vector<SourcePtr> sources;
  const auto take = [&](const std::string& path, std::string text) {
    sources.push_back(source::load_text(path, std::move(text), diagnostics));
    if (sources.back()) all.take(sources.back(), false, diagnostics);
  };
  for (int i = 1; i < argc; ++i) {
    std::ifstream file(argv[i], std::ios::binary);
    take(argv[i], std::string((std::istreambuf_iterator<char>(file)), {}));
  }
  if (argc == 1) take("shapes", kShapes);
  const std::vector<Figure> figures = all.resolve(diagnostics);
  if (figures.empty()) return 1;
  const Body body = Body::of_age(9);
  std::vector<double> medians;
  std::size_t steps = 0;
  fmt::print("{:<36}{:>8}{:>9}{:>8}{:>8}   microseconds\n", "figure", "solved", "picture", "words",
             "in all");
  for (const Figure& figure : figures) {
    const std::vector<Shown> shown = show(figure, body);
    const Spent solving = measure([&] { steps += show(figure, body).size(); });
    const Spent drawing = measure([&] { steps += picture(figure, shown).shapes.size(); });
    const Spent words = measure([&] { steps += alternative_text(figure, shown).size(); });
    medians.push_back(solving.median + drawing.median);
    fmt::print("{:<36}{:>8.1f}{:>9.1f}{:>8.1f}{:>8.1f}\n", figure.name.text, solving.median,
               drawing.median, words.median, medians.back());
  }
  std::sort(medians.begin(), medians.end());
  fmt::print("{} figures: median {:.1f}, nine tenths below {:.1f}, most {:.1f}\n", medians.size(),
             medians[medians.size() / 2], medians[medians.size() * 9 / 10], medians.back());
  return steps > 0 ? 0 : 1;
}
