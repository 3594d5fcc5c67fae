#include "club/clashes.h"

#include <utility>

#include "club/study_all.h"
#include "reason/group_week.h"

namespace chalkleaf::club {

ClashesRun clashes(const Request& request, const Surroundings& around, Listener& listener) {
  ClashesRun out;
  Teller teller(listener, out.summary);
  const Selection selection = select(request, around.files, teller, out.summary);
  refuse_shared(selection, request, teller);
  if (out.summary.environment_failed) return out;
  OpenClubs clubs(selection, request, around, teller);
  struct OfClub {
    std::vector<reason::WeekSession> sessions;
    std::vector<std::string> paths;
  };
  std::map<std::size_t, OfClub> by_root;
  study_all(selection, clubs, request, around, teller, out.summary,
            [&](const PlanFile& file, Studied& studied, const std::string& shown) {
              OfClub& club = by_root[file.root];
              club.sessions.push_back(reason::week_session(studied.session, studied.timetable, {}));
              club.paths.push_back(shown);
              if (!club.sessions.back().wants.empty()) ++out.sessions;
            });
  for (const auto& [root, club] : by_root) {
    const auto path_of = [&sessions = club.sessions, &paths = club.paths](const auto* session) {
      return paths[static_cast<std::size_t>(session - sessions.data())];
    };
    for (const reason::Clash& one : reason::clashes(club.sessions, clubs.of(root).club)) {
      out.clashes.push_back(
          {one.day, reason::clash_text(one), path_of(one.first), path_of(one.second)});
    }
  }
  return out;
}

}  // namespace chalkleaf::club
