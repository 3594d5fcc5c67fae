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

namespace {

// `mat` and `mats`, `Bar` and `bar`.
bool same_thing(std::string_view a, std::string_view b) {
  const std::string one = lower_ascii(trim(a));
  const std::string other = lower_ascii(trim(b));
  return one == other || one + "s" == other || one == other + "s";
}

template <class T>
const T* named(const std::vector<T>& all, std::string_view wanted) {
  for (const T& one : all) {
    if (same_thing(one.name.text, wanted)) return &one;
  }
  return nullptr;
}

}  // namespace

const Station* Club::station(std::string_view wanted) const { return named(stations, wanted); }
const StockItem* Club::stock(std::string_view wanted) const { return named(kit, wanted); }

std::optional<int> Session::gymnast_count() const {
  if (gymnasts) return gymnasts->value;
  if (group && group->size) return group->size->value;
  return std::nullopt;
}

std::vector<const Drill*> drills_of(const Part& part) {
  std::vector<const Drill*> out;
  for (const Step& step : part.steps) {
    if (const auto* drill = std::get_if<Drill>(&step)) out.push_back(drill);
  }
  return out;
}

std::vector<const Drill*> all_drills_of(const Part& part) {
  std::vector<const Drill*> out;
  for (const Drill* drill : drills_of(part)) {
    out.push_back(drill);
    for (const Drill& station : drill->stations) out.push_back(&station);
  }
  return out;
}

}  // namespace chalkleaf::plan
