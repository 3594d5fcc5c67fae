// The whole run: from arguments to sheets. What `cli` calls, and all it needs to know.
//
// Results come through a Listener, in the order of the plans' paths, on the calling thread,
// whatever the number of workers. Tested by tests/club/build_test.cpp.
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/environment.h"
#include "base/files.h"
#include "base/paper.h"
#include "club/options.h"
#include "draft/read.h"
#include "plan/library.h"
#include "plan/model.h"
#include "reason/timetable.h"

namespace chalkleaf::club {

/// What is asked for.
struct Request {
  std::vector<std::string> arguments;  ///< plans and folders; none: the club stood in
  std::string standing;                ///< the folder the user stands in, absolute, no links
  std::optional<std::string> out;
  std::optional<Paper> paper;
  TwoUp two_up = TwoUp::kNo;
  std::string look = {};  ///< a look's name; empty: what plan and club say
  Only only = Only::kBoth;
  Purpose purpose = Purpose::kBuild;
  Strictness strictness = Strictness::kNormal;
  std::size_t jobs = 1;
  int dots = 80;  ///< an inch, of `proof`'s pictures: kFewestDots to kMostDots
};

/// The surroundings of a run.
struct Surroundings {
  FileSystem& files;
  const Environment& environment;
  std::string program;  ///< its own absolute path, to find its data
  std::function<void(std::string_view pass)> on_pass = {};  ///< for benchmarks, with one worker
  /// Asked before each plan, on any worker's thread: true leaves this and the others undone.
  std::function<bool()> is_stopped = {};
};

/// Who hears of what happens. Called on the thread that called build(), one call at a time.
class Listener {
 public:
  virtual ~Listener() = default;
  /// Something that keeps the run, or one argument, from being used: a sentence.
  virtual void problem(const std::string& sentence) = 0;
  /// What was found; of a shared part, each thing once a run.
  virtual void found(const Diagnostic& diagnostic) = 0;
  /// So many of so many plans are done.
  virtual void progress(std::size_t done, std::size_t total) = 0;
};

/// How the run ended.
struct Summary {
  std::size_t plans = 0;
  std::size_t parts = 0;       ///< shared parts checked by themselves
  std::size_t drills = 0;      ///< files of a drill library, likewise
  std::size_t club_files = 0;  ///< likewise
  std::size_t sheets = 0;      ///< written: PDFs, or pictures of pages
  std::size_t errors = 0;      ///< as heard by the listener
  std::size_t warnings = 0;
  std::size_t failed = 0;                 ///< plans with errors that keep all sheets back
  std::size_t held_back = 0;              ///< plans whose home sheet alone was kept back
  std::size_t skipped = 0;                ///< plans not reached, because the run was stopped
  std::vector<std::string> failed_plans;  ///< the first few of them, as the user names them
  std::vector<std::string> held_plans;    ///< likewise, of those held back
  std::vector<std::string> folders;       ///< where the sheets are (each root's, or `--out`)
  /// PDFs of earlier runs that are there still, though this run was to make them: the first few.
  std::vector<std::string> stayed;
  std::size_t stayed_count = 0;
  std::vector<std::string> moved;  ///< PDFs moved to the earlier ones: the first few
  std::size_t moved_count = 0;
  bool environment_failed = false;  ///< an argument, the program's data or the disk
  /// 0 all well, 1 a plan has errors, 2 usage or environment.
  int exit_code() const { return environment_failed ? 2 : failed > 0 || errors > 0 ? 1 : 0; }
};
/// At most so many plans, or PDFs, are named in a Summary.
inline constexpr std::size_t kMostNamedPlans = 10;

Summary build(const Request& request, const Surroundings& surroundings, Listener& listener);

/// One plan with its timetable, for `times`. The diagnostics went to the listener; empty when the
/// plan could not be read at all.
struct TimedPlan {
  plan::Session session;
  reason::Timetable timetable;                         ///< points into `session`
  std::shared_ptr<const plan::DrillBook> drills = {};  ///< `session` points into it
  std::optional<draft::Draft> draft = {};              ///< `session` points into it
  /// Of a place in the session, the line of the coach's file, from 1; 0 when it is nowhere.
  std::uint32_t line_of(const Span& span) const;
  /// Of a place in a draft's session, the coach's own words; empty where the plan has them itself.
  std::string typed(const Span& span) const;
};
struct Timed {
  Summary summary;
  std::unique_ptr<const TimedPlan> plan;
};
Timed times(const Request& request, const Surroundings& surroundings, Listener& listener);

/// `0.1.0`
std::string_view version();

}  // namespace chalkleaf::club
