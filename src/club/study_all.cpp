#include "club/study_all.h"

#include "club/resources.h"

namespace chalkleaf::club {

OpenClubs::OpenClubs(const Selection& selection, const Request& request, const Surroundings& around,
                     Teller& teller)
    : selection_(selection), request_(request), around_(around), teller_(teller) {
  data_ = open_data_folder(around.files, around.environment, around.program).value_or(DataFolder());
  shelf_ = open_shelf(around.files, data_);
}

const ClubTools& OpenClubs::of(std::size_t root) {
  const auto [place, is_new] = clubs_.try_emplace(root);
  if (is_new) {
    place->second = open_club(selection_.roots[root], request_, around_.files, {}, shelf_, teller_,
                              need_of(request_, selection_, around_.files));
    ClubTools& club = *place->second;
    club.words = words_for(club.club.language, around_, teller_);
    Diagnostics in_rota;
    club.rota = load_rota(around_.files, data_, club.club.language, in_rota);
    teller_.tell(in_rota, "");
  }
  return *place->second;
}

void study_all(const Selection& selection, OpenClubs& clubs, const Request& request,
               const Surroundings& around, Teller& teller, Summary& summary,
               const TakeStudied& take) {
  for (const PlanFile& file : selection.plans) {
    const auto studied = study(paths_of(file, selection.roots[file.root], request),
                               clubs.of(file.root), around.files, around.on_pass);
    const std::string shown = path_from(request.standing, file.path);
    teller.tell(studied->diagnostics, shown);
    if (studied->diagnostics.has_errors()) ++summary.failed;
    if (studied->readable) take(file, *studied, shown);
  }
}

}  // namespace chalkleaf::club
