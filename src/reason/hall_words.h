// Which place and which activity a text means, by the words of a hall book. Inside the room.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/hall_book.h"
#include "plan/model.h"
#include "reason/text_words.h"

namespace chalkleaf::reason {

/// Where the first of the phrases begins among the words; nothing when none is there.
std::optional<std::size_t> find_phrase(const std::vector<TextWord>& words,
                                       const plan::Phrases& phrases);
/// The place, or the activity, that is named first; of two that begin at one word, the longer.
const plan::HallPlace* place_in(std::string_view text, const plan::HallBook& book);
const plan::HallActivity* activity_in(std::string_view text, const plan::HallBook& book);
/// The activity that the text begins with, a word or so before it aside: `Our warm up`.
const plan::HallActivity* activity_at_begin(std::string_view text, const plan::HallBook& book);
/// How many drills a name lists: 3 for `Neck, wrists and ankles`, 1 for `Forward roll`.
std::int64_t drills_listed(std::string_view name, const plan::HallBook& book);
/// `2 lines`, `two ropes`: how many of what is counted at the place; nothing when it does not say.
std::optional<int> lanes_in(std::string_view text, const plan::HallPlace& place);
/// `3`, `three`; nothing for a number that is no small one.
std::optional<int> small_number(std::string_view word);

/// In how many groups the gymnasts are, each at a place of its own; 1: all are together. `3
/// groups`, `groups of 4`; where it only says that they rotate, as many as parts have a place.
int groups_in(const plan::Session& session, int gymnasts, const plan::HallBook& book);
/// All of them are under nine, as far as group or words say.
bool is_young(const plan::Session& session, const plan::HallBook& book);
/// The level that a line's name begins or ends with, `L4 – kips`; empty when it has none.
std::string level_of(std::string_view name, const plan::HallBook& book);

}  // namespace chalkleaf::reason
