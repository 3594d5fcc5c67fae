// Where the time of a build goes: microseconds a plan in each pass, one worker, median of several
// runs.
//
// usage: bench_passes PROGRAM CLUB_FOLDER OUT_FOLDER
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <map>
#include <string>
#include <vector>

#include "base/environment.h"
#include "base/files.h"
#include "club/build.h"

namespace {

using Clock = std::chrono::steady_clock;
using chalkleaf::club::Listener;

class Silent final : public Listener {
 public:
  void problem(const std::string& sentence) override { fmt::print(stderr, "{}\n", sentence); }
  void found(const chalkleaf::Diagnostic&) override {}
  void progress(std::size_t, std::size_t) override {}
};

/// Adds up the time between one pass's begin and the next's.
class Watch {
 public:
  void begin(std::string_view pass) {
    const Clock::time_point now = Clock::now();
    if (!current_.empty()) spent_[current_] += now - since_;
    current_ = pass;
    since_ = now;
  }
  std::map<std::string, double> microseconds() {
    begin("");
    std::map<std::string, double> out;
    for (const auto& [pass, time] : spent_)
      out[pass] = std::chrono::duration<double, std::micro>(time).count();
    return out;
  }

 private:
  std::string current_;
  Clock::time_point since_;
  std::map<std::string, Clock::duration> spent_;
};

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) {
    fmt::print(stderr, "usage: {} PROGRAM CLUB_FOLDER OUT_FOLDER\n", argv[0]);
    return 2;
  }
  chalkleaf::RealFileSystem files;
  const chalkleaf::ProcessEnvironment environment;
  Silent silent;
  constexpr int kRuns = 7;
  std::map<std::string, std::vector<double>> runs;
  std::size_t plans = 0;
  for (int i = 0; i < kRuns; ++i) {
    Watch watch;
    chalkleaf::club::Request request;
    request.arguments = {argv[2]};
    request.standing = files.real_path(".").value_or("/");
    request.out = argv[3];
    const auto on_pass = [&](std::string_view pass) { watch.begin(pass); };
    const auto program = files.real_path(argv[1]).value_or(argv[1]);
    const auto summary =
        chalkleaf::club::build(request, {files, environment, program, on_pass}, silent);
    plans = summary.plans;
    if (summary.exit_code() != 0 || plans == 0) return 1;
    for (const auto& [pass, time] : watch.microseconds())
      runs[pass].push_back(time / static_cast<double>(plans));
  }
  double total = 0;
  fmt::print("microseconds a plan, one worker, median of {} builds of {} plans\n", kRuns, plans);
  for (auto& [pass, times] : runs) {
    std::sort(times.begin(), times.end());
    const double median = times[times.size() / 2];
    total += median;
    fmt::print("  {:<12}{:>9.1f}\n", pass, median);
  }
  fmt::print("  {:<12}{:>9.1f}\n", "together", total);
  return 0;
}
