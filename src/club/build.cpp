// Resources, plans, clubs, workers: in that order. What is wrong before the first plan is compiled
// ends the run; what is wrong with one plan ends that plan.
#include "club/build.h"

#include <future>
#include <map>

#include "club/accounts.h"
#include "club/compile.h"
#include "club/drill_library.h"
#include "club/in_order.h"
#include "club/places.h"
#include "club/resources.h"
#include "club/select.h"
#include "club/setup.h"
#include "club/shared_files.h"
#include "club/shelf.h"
#include "reason/checks.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

// Bytes of plans worked on at a time: one of the largest that are read, or a hundred of honest
// size.
constexpr std::size_t kMostAtATime = source::kLargestFile;

void check_shared(const Selection& selection, const std::vector<ClubTools>& clubs,
                  const Request& request, const FileSystem& files, Teller& teller,
                  Summary& summary) {
  for (const SharedFile& file : selection.shared) {
    if (file.kind == SharedFile::Kind::kClub) {
      ++summary.club_files;  // opened with its club, and what is wrong with it told
      continue;
    }
    const std::string display = path_from(request.standing, file.path);
    const ClubTools& club = clubs[file.root];
    Diagnostics found;
    if (file.kind == SharedFile::Kind::kDrill) {
      ++summary.drills;  // of a club's library all is told already; a drill may stand alone, too
      found = load_drill(files, file.path, display, club.pictures.get()).found;
      reason::apply_choices(club.club, found);
    } else {
      ++summary.parts;
      found = check_part(files, file.path, display, *club.parts, club.pictures.get());
    }
    if (request.strictness == Strictness::kStrict) found.make_strict();
    teller.tell(found, "");
  }
}

// What only all plans of a club together can say: each group's weeks, and who is in whose way.
void check_weeks(const std::map<std::size_t, std::vector<reason::WeekSession>>& by_club,
                 const std::vector<ClubTools>& clubs, const Request& request, Teller& teller) {
  for (const auto& [root, sessions] : by_club) {
    for (const reason::GroupWeek& week : reason::group_weeks(sessions)) {
      Diagnostics found;
      reason::check_week(week, found);
      reason::apply_choices(clubs[root].club, found);
      // A build's sheets are made by now: too late for an error.
      const bool strict = request.strictness == Strictness::kStrict;
      if (strict && request.purpose == Purpose::kCheck) found.make_strict();
      teller.tell(found, "");
    }
    Diagnostics found;
    reason::check_clashes(sessions, clubs[root].club, found);
    reason::apply_choices(clubs[root].club, found);
    const bool strict = request.strictness == Strictness::kStrict;
    if (strict && request.purpose == Purpose::kCheck) found.make_strict();
    teller.tell(found, "");
  }
}

// `--out` is a folder, there or to be made.
bool is_usable_out(const Request& request, const FileSystem& files, Teller& teller) {
  if (!request.out || request.purpose == Purpose::kCheck) return true;
  std::string at = normal_path(join_path(request.standing, *request.out));
  while (files.kind(at) == FileKind::kNothing && at != "/" && at != ".") at = parent_path(at);
  if (files.kind(at) == FileKind::kFolder) return true;
  teller.problem("‘--out’ has to be a folder, and ‘" + path_from(request.standing, at) +
                 "’ is a file; name a folder");
  return false;
}

}  // namespace

Summary build(const Request& request, const Surroundings& around, Listener& listener) {
  Summary summary;
  Teller teller(listener, summary);
  const std::optional<std::int64_t> date = read_source_date(around.environment, teller);
  if (summary.environment_failed) return summary;
  if (!is_usable_out(request, around.files, teller)) return summary;
  const Selection selection = select(request, around.files, teller, summary);
  const bool checks = request.purpose == Purpose::kCheck;
  if (!checks) refuse_shared(selection, request, teller);
  if (selection.plans.empty() && (!checks || selection.shared.empty())) return summary;
  Accounts accounts(selection, request, around.files, teller, summary);
  // A long walk goes on beside the reading of the club; for one plan a thread costs more than it.
  const bool beside = request.jobs > 1 && selection.plans.size() > 1;
  std::future<std::vector<Revisions>> revisions;
  if (!checks) {
    revisions = std::async(beside ? std::launch::async : std::launch::deferred,
                           ask_for_revisions(selection, around.files));
  }
  const std::optional<Press> press = set_up_press(around, teller, summary);
  if (!press) return accounts.close();

  std::vector<ClubTools> clubs;
  const Need need = need_of(request, selection, around.files);
  for (const Root& root : selection.roots) {
    auto club = open_club(root, request, around.files, press->data, press->shelf, teller, need);
    if (!club) {
      summary.environment_failed = true;
      return accounts.close();
    }
    clubs.push_back(std::move(*club));
  }
  if (checks) check_shared(selection, clubs, request, around.files, teller, summary);
  if (revisions.valid()) {
    std::vector<Revisions> found = revisions.get();
    for (std::size_t i = 0; i < clubs.size(); ++i) {
      tell_of_revisions(found[i], selection.roots[i], request, teller);
      clubs[i].revisions = std::move(found[i]);
    }
  }

  RunTools run{around.files, *press->writer};
  run.paper = request.paper;
  run.two_up = request.two_up;
  run.look = request.look;
  run.only = request.only;
  run.purpose = request.purpose;
  run.strictness = request.strictness;
  run.dots = request.dots;
  run.source_date = date;
  run.producer = "Chalkleaf " + std::string(version());
  run.on_pass = around.on_pass;
  Turns turns(kMostAtATime);
  run.turns = &turns;

  const std::size_t total = selection.plans.size();
  const auto make_worker = [&] {
    return [&, worker = std::make_shared<Worker>(*press->fonts, *press->hyphenations)](
               std::size_t index) {
      const PlanFile& plan = selection.plans[index];
      const ClubTools& club = clubs[plan.root];
      if (around.is_stopped && around.is_stopped()) {
        Compiled nothing;
        nothing.skipped = true;
        return nothing;
      }
      return compile(accounts.paths(index), club, run, worker->typesetter(club));
    };
  };
  std::map<std::size_t, std::vector<reason::WeekSession>> by_club;
  run_in_order<Compiled>(
      total, request.jobs, make_worker, [&](std::size_t index, Compiled compiled) {
        const bool skipped = compiled.skipped;
        if (compiled.week)
          by_club[selection.plans[index].root].push_back(std::move(*compiled.week));
        accounts.take(index, std::move(compiled));
        if (!skipped) listener.progress(index + 1, total);
      });
  check_weeks(by_club, clubs, request, teller);
  return accounts.close();
}

Timed times(const Request& request, const Surroundings& around, Listener& listener) {
  Timed out;
  Teller teller(listener, out.summary);
  const Selection selection = select(request, around.files, teller, out.summary);
  refuse_shared(selection, request, teller);
  if (out.summary.environment_failed) return out;
  if (selection.plans.size() != 1) {
    teller.problem("‘times’ shows one plan at a time: name its file");
    return out;
  }
  const PlanFile& plan = selection.plans.front();
  // Its sums need no looks or figures, but the pace of the shelf's drills.
  const auto data = open_data_folder(around.files, around.environment, around.program);
  const auto shelf = open_shelf(around.files, data.value_or(DataFolder()));
  ClubTools club =
      open_club(selection.roots[plan.root], request, around.files, {}, shelf, teller, Need::kNamed)
          .value();
  club.words = words_for(club.club.language, around, teller);
  Diagnostics in_hall;
  if (data) club.hall = load_hall(around.files, *data, club.club.language, in_hall);
  if (data) club.rota = load_rota(around.files, *data, club.club.language, in_hall);
  teller.tell(in_hall, "");
  const std::unique_ptr<Studied> studied = study(
      paths_of(plan, selection.roots[plan.root], request), club, around.files, around.on_pass);
  teller.tell(studied->diagnostics, path_from(request.standing, plan.path));
  out.summary.failed = studied->diagnostics.has_errors() ? 1 : 0;
  if (!studied->readable) return out;
  // The model's own vectors move as they are, so what the timetable points at stays where it is.
  out.plan = std::make_unique<const TimedPlan>(TimedPlan{std::move(studied->session),
                                                         std::move(studied->timetable), club.drills,
                                                         std::move(studied->draft)});
  return out;
}

std::uint32_t TimedPlan::line_of(const Span& span) const {
  if (!span) return 0;
  const bool moved = draft && span.source == draft->canonical.get();
  const Span at = moved ? draft->origin.of(span) : span;
  return at.source->line_column(at.begin).line;
}

std::string TimedPlan::typed(const Span& span) const {
  if (!draft || span.source != draft->canonical.get()) return {};
  return std::string(draft->origin.of(span).text());
}

std::string_view version() { return CHALKLEAF_VERSION; }

}  // namespace chalkleaf::club
