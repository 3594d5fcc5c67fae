// What can be ticked off besides a drill as such. Internal to the room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "plan/model.h"
#include "sheet/labels.h"

namespace chalkleaf::sheet {

/// A day of the plan, or a week of its block.
struct Occasion {
  std::string name;
  std::string short_name;
};

/// From 1 to `count`: each the phrase `name` with its number, in short `short_name` or the number
/// alone.
std::vector<Occasion> numbered(std::string_view name, int count, const Labels& labels,
                               std::string_view short_name = {});
/// The plan's `repeat:` days; three numbered ones when it has none.
std::vector<Occasion> practice_days(const plan::Session& session, const Labels& labels);
std::vector<Occasion> practice_weeks(int weeks, const Labels& labels);

/// How many boxes a drill has where each set has one: its sets, or its rounds if it is a circuit.
/// Of very many, only that all were done is ticked.
std::int64_t sets_to_tick(const plan::Drill& drill);

}  // namespace chalkleaf::sheet
