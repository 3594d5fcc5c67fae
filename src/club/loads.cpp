// See the header.
#include "club/loads.h"

#include <map>

#include "club/study_all.h"
#include "reason/checks.h"

namespace chalkleaf::club {
namespace {

std::unique_ptr<LoadedPlan> load_plan(Studied& studied, const ClubTools& club,
                                      const std::string& shown) {
  auto out = std::make_unique<LoadedPlan>();
  out->path = shown;
  out->plan = TimedPlan{std::move(studied.session), std::move(studied.timetable), club.drills,
                        std::move(studied.draft)};
  out->loads = reason::loads_of(out->plan.session, out->plan.timetable, *club.drills);
  return out;
}

}  // namespace

LoadsRun loads(const Request& request, const Surroundings& around, Listener& listener) {
  LoadsRun out;
  Teller teller(listener, out.summary);
  const Selection selection = select(request, around.files, teller, out.summary);
  refuse_shared(selection, request, teller);
  if (out.summary.environment_failed) return out;
  OpenClubs clubs(selection, request, around, teller);
  std::map<std::size_t, std::vector<reason::WeekSession>> by_root;
  study_all(selection, clubs, request, around, teller, out.summary,
            [&](const PlanFile& file, Studied& studied, const std::string& shown) {
              out.plans.push_back(load_plan(studied, clubs.of(file.root), shown));
              const LoadedPlan& plan = *out.plans.back();
              by_root[file.root].push_back(
                  reason::week_session(plan.plan.session, plan.plan.timetable, plan.loads.sum));
            });
  for (const auto& [root, sessions] : by_root) {
    for (reason::GroupWeek& week : reason::group_weeks(sessions)) {
      Diagnostics found;
      reason::check_week(week, found);
      reason::apply_choices(clubs.of(root).club, found);
      teller.tell(found, "");
      out.weeks.push_back(std::move(week));
    }
  }
  return out;
}

}  // namespace chalkleaf::club
