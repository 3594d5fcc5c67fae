#include "plan/model.h"

#include "base/text.h"

namespace chalkleaf::plan {

const Group* Club::group(std::string_view wanted) const {
  const std::string lower = lower_ascii(wanted);
  for (const Group& group : groups) {
    if (lower_ascii(group.name.text) == lower) return &group;
  }
  return nullptr;
}

std::vector<const Drill*> drills_of(const Part& part) {
  std::vector<const Drill*> out;
  for (const Step& step : part.steps) {
    if (const auto* drill = std::get_if<Drill>(&step)) out.push_back(drill);
  }
  return out;
}

}  // namespace chalkleaf::plan
