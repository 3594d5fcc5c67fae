// See the header.
#include "club/loads.h"

#include <algorithm>
#include <map>
#include <optional>

#include "club/places.h"
#include "club/resources.h"
#include "club/setup.h"
#include "club/shelf.h"
#include "reason/checks.h"

namespace chalkleaf::club {
namespace {

/// The clubs of a run, each opened when its first plan comes.
class Clubs {
 public:
  Clubs(const Selection& selection, const Request& request, const Surroundings& around,
        Teller& teller)
      : selection_(selection), request_(request), around_(around), teller_(teller) {
    data_ =
        open_data_folder(around.files, around.environment, around.program).value_or(DataFolder());
    shelf_ = open_shelf(around.files, data_);
  }
  const ClubTools& of(std::size_t root) {
    const auto [place, is_new] = clubs_.try_emplace(root);
    if (is_new) {
      place->second = open_club(selection_.roots[root], request_, around_.files, {}, shelf_,
                                teller_, need_of(request_, selection_, around_.files));
      place->second->words = words_for(place->second->club.language, around_, teller_);
    }
    return *place->second;
  }

 private:
  const Selection& selection_;
  const Request& request_;
  const Surroundings& around_;
  Teller& teller_;
  DataFolder data_;
  std::shared_ptr<const plan::ShelfSource> shelf_;
  std::map<std::size_t, std::optional<ClubTools>> clubs_;
};

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
  Clubs clubs(selection, request, around, teller);
  std::map<std::size_t, std::vector<reason::WeekSession>> by_root;
  for (const PlanFile& file : selection.plans) {
    const ClubTools& club = clubs.of(file.root);
    const auto studied = study(paths_of(file, selection.roots[file.root], request), club,
                               around.files, around.on_pass);
    const std::string shown = path_from(request.standing, file.path);
    teller.tell(studied->diagnostics, shown);
    if (studied->diagnostics.has_errors()) ++out.summary.failed;
    if (!studied->readable) continue;
    out.plans.push_back(load_plan(*studied, club, shown));
    const LoadedPlan& plan = *out.plans.back();
    by_root[file.root].push_back(
        reason::week_session(plan.plan.session, plan.plan.timetable, plan.loads.sum));
  }
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
