// Who is at a place at one time: the session's groups, and the levels of a line.
#include <algorithm>

#include "reason/hall_words.h"

namespace chalkleaf::reason {
namespace {

// All that the coach says of the evening: where `3 groups` or `swap at 5.05` may stand.
std::string words_of_session(const plan::Session& session) {
  std::string out = session.title.text;
  const auto add = [&out](const std::string& text) { out += " . " + text; };
  for (const plan::Note& note : session.introduction) add(note.words.text);
  for (const plan::Part& part : session.parts) {
    add(part.title.text);
    for (const plan::Step& step : part.steps) {
      if (const auto* note = std::get_if<plan::Note>(&step)) add(note->words.text);
      const auto* drill = std::get_if<plan::Drill>(&step);
      if (drill == nullptr) continue;
      add(drill->name.text);
      for (const plan::Note& note : drill->notes) add(note.words.text);
    }
  }
  for (const plan::Words& typed : session.typed) add(typed.text);
  return out;
}

// `Upstarts – A`, `L4 – kips`: what stands at one end of the name and is a level.
std::string level_in(std::string_view piece, const plan::HallBook& book) {
  const std::vector<TextWord> words = words_in(piece);
  std::string out;
  for (const TextWord& word : words) {
    if (find_phrase({word}, book.levels) == std::nullopt) return {};
    out += word.text + " ";
  }
  return out;
}

}  // namespace

int groups_in(const plan::Session& session, int gymnasts, const plan::HallBook& book) {
  const std::vector<TextWord> words = words_in(words_of_session(session));
  constexpr int kMostGroups = 8;
  for (std::size_t at = 0; at + 1 < words.size(); ++at) {
    const auto number = small_number(words[at].text);
    if (number && *number >= 2 && *number <= kMostGroups &&
        find_phrase({words[at + 1]}, book.groups)) {
      return *number;
    }
  }
  for (std::size_t at = 0; at + 2 < words.size(); ++at) {
    const auto number = small_number(words[at + 2].text);
    if (find_phrase({words[at]}, book.groups) && words[at + 1].text == "of" && number &&
        *number > 1) {
      return std::max(1, gymnasts / *number);
    }
  }
  if (!find_phrase(words, book.rotating)) return 1;
  const auto at_places = std::count_if(
      session.parts.begin(), session.parts.end(),
      [&](const plan::Part& part) { return place_in(part.title.text, book) != nullptr; });
  return std::clamp(static_cast<int>(at_places), 1, kMostGroups);
}

bool is_young(const plan::Session& session, const plan::HallBook& book) {
  constexpr int kOldestYoung = 8;
  if (session.group && session.group->oldest) return session.group->oldest->value <= kOldestYoung;
  std::string about = session.title.text;
  for (const plan::Note& note : session.introduction) about += " . " + note.words.text;
  const std::vector<TextWord> words = words_in(about);
  for (std::size_t at = 1; at < words.size(); ++at) {
    if (!find_phrase({words[at]}, book.years)) continue;
    const std::string& word = words[at - 1].text;  // `6-8`: the older counts
    const std::size_t last = word.find_last_not_of("0123456789");
    const auto age = small_number(word.substr(last == std::string::npos ? 0 : last + 1));
    if (age) return *age >= 2 && *age <= kOldestYoung;
  }
  return find_phrase(words, book.young).has_value();
}

std::string level_of(std::string_view name, const plan::HallBook& book) {
  constexpr std::string_view kDash = " – ";
  if (const std::size_t dash = name.find(kDash); dash != std::string_view::npos) {
    if (std::string head = level_in(name.substr(0, dash), book); !head.empty()) return head;
  }
  if (const std::size_t dash = name.rfind(kDash); dash != std::string_view::npos) {
    return level_in(name.substr(dash + kDash.size()), book);
  }
  return {};
}

}  // namespace chalkleaf::reason
