// Every plan of a run read and timed, one after the other, for commands that make no sheets.
// Internal to the room.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "club/build.h"
#include "club/compile.h"
#include "club/places.h"
#include "club/select.h"
#include "club/setup.h"
#include "club/shelf.h"

namespace chalkleaf::club {

/// The clubs of a run, each opened when its first plan comes.
class OpenClubs {
 public:
  OpenClubs(const Selection& selection, const Request& request, const Surroundings& around,
            Teller& teller);
  const ClubTools& of(std::size_t root);

 private:
  const Selection& selection_;
  const Request& request_;
  const Surroundings& around_;
  Teller& teller_;
  DataFolder data_;
  std::shared_ptr<const plan::ShelfSource> shelf_;
  std::map<std::size_t, std::optional<ClubTools>> clubs_;
};

/// `shown`: the plan's path as the user names it.
using TakeStudied =
    std::function<void(const PlanFile& file, Studied& studied, const std::string& shown)>;
/// Tells what was found in each, counts those with errors, and hands on those that can be read.
void study_all(const Selection& selection, OpenClubs& clubs, const Request& request,
               const Surroundings& around, Teller& teller, Summary& summary,
               const TakeStudied& take);

}  // namespace chalkleaf::club
