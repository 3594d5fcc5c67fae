// Fits the weights of themes/words/<language>/danger_weights.txt to lines of which it is known
// whether they endanger a child:
//
//     learn_dangers dangers.yaml LINES… > danger_weights.txt
//     learn_dangers --weigh danger_weights.txt dangers.yaml LINES…
//
// The second prints each line with its log-odds, and the check it fits best.
// Each line of LINES is `home` or `gym`, the check that should speak of it, or `ok` or nothing when
// none should, and the line itself. Logistic regression with a penalty on squares, by AdaGrad
// (Duchi et al. 2011); the same input gives the same output. Run it when lines were added
// (DEVELOPERS.md).
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <fstream>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/files.h"
#include "plan/danger_book.h"
#include "reason/second_reading.h"
#include "source/read.h"

namespace {

using namespace chalkleaf;
using reason::LinePlace;

struct Example {
  std::string check;  // empty: sound
  std::vector<int> marks;
  std::vector<int> kind_marks;
  double share = 1;
};

/// Marks by number; those that are seen in one line only are not learnt from.
class MarkNames {
 public:
  int id(const std::string& mark) {
    const auto [at, is_new] = ids_.try_emplace(mark, static_cast<int>(names_.size()));
    if (is_new) names_.push_back(mark);
    return at->second;
  }
  const std::string& name(std::size_t id) const { return names_[id]; }
  std::size_t size() const { return names_.size(); }

 private:
  std::unordered_map<std::string, int> ids_;
  std::vector<std::string> names_;
};

// A logistic regression of two classes; `penalty` of each weight's square, over all lines.
// `positive` weighs twice, since a danger that is missed costs more than a line that is read twice.
std::vector<double> fitted(const std::vector<const std::vector<int>*>& marks,
                           const std::vector<double>& shares, const std::vector<bool>& positive,
                           std::size_t count, double penalty) {
  constexpr int kRounds = 60;
  constexpr double kRate = 0.2;
  constexpr double kPositive = 2.0;  // weight of a dangerous line
  std::vector<double> weights(count + 1, 0.0);
  std::vector<double> seen(count + 1, 1.0);  // squares of slopes
  std::vector<double> often(count + 1, 1.0);
  for (const auto* one : marks) {
    for (const int mark : *one) ++often[static_cast<std::size_t>(mark)];
  }
  std::vector<std::size_t> order(marks.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::uint64_t random = 12345;
  const auto step = [&](std::size_t at, double slope) {
    seen[at] += slope * slope;
    weights[at] -= kRate * slope / std::sqrt(seen[at]);
  };
  for (int round = 0; round < kRounds; ++round) {
    for (std::size_t i = order.size(); i > 1; --i) {
      random = random * 6364136223846793005ULL + 1442695040888963407ULL;
      std::swap(order[i - 1], order[(random >> 33U) % i]);
    }
    for (const std::size_t i : order) {
      double sum = weights[count];
      for (const int mark : *marks[i]) sum += shares[i] * weights[static_cast<std::size_t>(mark)];
      const double chance = 1 / (1 + std::exp(-sum));
      const double slope = positive[i] ? kPositive * (chance - 1) : chance;
      for (const int mark : *marks[i]) {
        const auto at = static_cast<std::size_t>(mark);
        step(at, slope * shares[i] + penalty * 2 * weights[at] / often[at]);
      }
      step(count, slope);
    }
  }
  return weights;
}

void print(const char* section, const MarkNames& names, const std::vector<double>& weights,
           double least) {
  std::map<std::string, long> out;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (std::abs(weights[i]) < least) continue;
    out[names.name(i)] = std::lround(weights[i] * 10);
  }
  std::printf("[%s]\n%ld\n", section, std::lround(weights[names.size()] * 10));
  for (const auto& [name, weight] : out) std::printf("%ld %s\n", weight, name.c_str());
}

struct Split {
  LinePlace place;
  std::string check;
  std::string text;
};

std::optional<Split> split_line(const std::string& line) {
  const std::size_t first = line.find(' ');
  const std::size_t second = line.find(' ', first + 1);
  if (first == std::string::npos || second == std::string::npos) return std::nullopt;
  Split out;
  out.place.at_home = line.compare(0, first, "home") == 0;
  out.check = line.substr(first + 1, second - first - 1);
  const bool has_check = out.check == "ok" || out.check.starts_with("danger");
  out.text = line.substr((has_check ? second : first) + 1);
  if (!has_check || out.check == "ok") out.check.clear();
  if (out.text.starts_with("- ")) out.place.kind = LinePlace::Kind::kItem;
  if (out.text.starts_with("# ")) out.place.kind = LinePlace::Kind::kHeading;
  if (out.place.kind != LinePlace::Kind::kText) out.text.erase(0, 2);
  return out;
}

bool read_lines(const char* path, const reason::WordPatterns& patterns,
                const reason::LineWords& words, MarkNames& names, MarkNames& kinds,
                std::vector<Example>& out) {
  std::ifstream file(path);
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    const std::optional<Split> split = split_line(line);
    if (!split) {
      std::fprintf(stderr, "%s: no line of where, check and words: %s\n", path, line.c_str());
      return false;
    }
    Example one;
    one.check = split->check;
    const auto found = words.words(split->text, patterns.sentences(split->text));
    std::set<int> marks;
    line_marks(found, split->place,
               [&](std::string_view mark) { marks.insert(names.id(std::string(mark))); });
    one.marks.assign(marks.begin(), marks.end());
    one.share = reason::share_of_mark(marks.size());
    marks.clear();
    if (!one.check.empty()) {
      line_marks(found, split->place, [&](std::string_view mark) {
        if (reason::tells_kind(mark)) marks.insert(kinds.id(std::string(mark)));
      });
    }
    one.kind_marks.assign(marks.begin(), marks.end());
    out.push_back(std::move(one));
  }
  return true;
}

void forget_rare(std::vector<Example>& all, std::vector<int> Example::*marks, std::size_t count) {
  std::vector<int> often(count, 0);
  for (const Example& one : all) {
    for (const int mark : one.*marks) ++often[static_cast<std::size_t>(mark)];
  }
  for (Example& one : all) {
    auto& list = one.*marks;
    std::erase_if(list, [&](int mark) { return often[static_cast<std::size_t>(mark)] < 2; });
  }
}

void learn_danger(const std::vector<Example>& all, const MarkNames& names) {
  std::vector<const std::vector<int>*> marks;
  std::vector<double> shares;
  std::vector<bool> positive;
  for (const Example& one : all) {
    marks.push_back(&one.marks);
    shares.push_back(one.share);
    positive.push_back(!one.check.empty());
  }
  print("danger", names, fitted(marks, shares, positive, names.size(), 0.25), 0.15);
}

void learn_kinds(const std::vector<Example>& all, const MarkNames& names) {
  std::set<std::string> checks;
  std::vector<const std::vector<int>*> marks;
  std::vector<const Example*> dangerous;
  for (const Example& one : all) {
    if (one.check.empty()) continue;
    checks.insert(one.check);
    marks.push_back(&one.kind_marks);
    dangerous.push_back(&one);
  }
  const std::vector<double> shares(marks.size(), 1.0);
  for (const std::string& check : checks) {
    std::vector<bool> positive;
    for (const Example* one : dangerous) positive.push_back(one->check == check);
    print(check.c_str(), names, fitted(marks, shares, positive, names.size(), 0.1), 0.2);
  }
}

}  // namespace

namespace {

int weigh(int count, char** values) {
  const auto text = RealFileSystem().read(values[2], 4'000'000);
  const auto weights = text ? reason::LineWeights::read(*text) : std::nullopt;
  Diagnostics found;
  const auto book = plan::read_danger_book(
      source::load(RealFileSystem(), values[3], "dangers.yaml", found), found);
  if (!weights || !book) return 1;
  reason::WordPatterns patterns(*book);
  patterns.seal();
  const reason::SecondReading reading(*book, std::make_shared<const reason::LineWeights>(*weights));
  for (int i = 4; i < count; ++i) {
    std::ifstream file(values[i]);
    for (std::string line; std::getline(file, line);) {
      const std::optional<Split> split = split_line(line);
      if (!split || line.front() == '#') continue;
      const auto said = patterns.sentences(split->text);
      std::vector<std::string_view> checks;
      for (const plan::Danger& danger : book->dangers) checks.push_back(danger.check.text);
      const auto check = reading.check_of(split->text, said, split->place, checks);
      std::printf("%.1f %s | %s\n", reading.odds(split->text, said, split->place),
                  std::string(check.value_or("-")).c_str(), line.c_str());
    }
  }
  return 0;
}

}  // namespace

int main(int count, char** values) {
  if (count > 4 && std::string(values[1]) == "--weigh") return weigh(count, values);
  if (count < 3) {
    std::fputs("usage: learn_dangers dangers.yaml LINES...\n", stderr);
    return 2;
  }
  Diagnostics found;
  const auto book = plan::read_danger_book(
      source::load(RealFileSystem(), values[1], "dangers.yaml", found), found);
  if (!book) return 1;
  reason::WordPatterns patterns(*book);
  patterns.seal();
  const reason::LineWords words(*book);
  MarkNames names;
  MarkNames kinds;
  std::vector<Example> all;
  for (int i = 2; i < count; ++i) {
    if (!read_lines(values[i], patterns, words, names, kinds, all)) return 1;
  }
  forget_rare(all, &Example::marks, names.size());
  forget_rare(all, &Example::kind_marks, kinds.size());
  std::puts(
      "# What a mark of a line is worth, in tenths of log-odds. Made by learn_dangers, not by "
      "hand.");
  learn_danger(all, names);
  learn_kinds(all, kinds);
  return 0;
}
