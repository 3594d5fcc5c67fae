// See the header.
#include "club/list_drills.h"

#include <algorithm>

#include "base/text.h"
#include "club/club_file.h"
#include "club/drill_library.h"
#include "club/places.h"
#include "club/resources.h"
#include "club/select.h"
#include "club/shelf.h"
#include "plan/drill_names.h"

namespace chalkleaf::club {
namespace {

using plan::LibraryDrill;

// What a drill is found by, one text a word may stand in anywhere. Regions and places are whole
// words of their own, so that `arms` does not find every `farm`.
std::string findable(const LibraryDrill& drill) {
  std::string out = " " + drill.name.text;
  const auto add = [&](std::string_view text) { out += " " + std::string(text); };
  for (const plan::Words& name : drill.also) add(name.text);
  for (const plan::Words& thing : drill.trains) add(thing.text);
  for (const auto& [region, load] : drill.loads) add(region.text);
  for (const plan::Words& muscle : drill.stretches) add(muscle.text);
  for (const plan::KitUse& kit : drill.needs) add(kit.kit.text);
  add(drill.at.text);
  add(plan::kind_name(drill.kind.value));
  add(is_for_home(drill) ? "home gym" : "gym");
  if (drill.spotter && drill.spotter->value) add("spotter");
  return lower_ascii(out);
}

// `wrist` finds `wrists`, and `wrists` finds `wrist`.
std::string stem(std::string word) {
  word = lower_ascii(word);
  if (word.size() > 3 && word.ends_with('s') && !word.ends_with("ss")) word.pop_back();
  return word;
}

/// What was asked for: words, and a level that they name.
struct Sought {
  std::vector<std::string> words;
  int level = 0;
};

Sought sought_in(const std::vector<std::string>& words) {
  std::vector<std::string> all;
  for (const std::string& given : words) {
    std::string one;
    for (const char c : given + " ") {
      if (c != ' ' && c != ',') {
        one += c;
      } else if (!one.empty()) {
        all.push_back(std::exchange(one, {}));
      }
    }
  }
  Sought out;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool number = i + 1 < all.size() && !all[i + 1].empty() && all[i + 1].size() <= 2 &&
                        all[i + 1].find_first_not_of("0123456789") == std::string::npos;
    if (lower_ascii(all[i]) == "level" && number) {
      out.level = std::stoi(all[++i]);
    } else {
      out.words.push_back(stem(all[i]));
    }
  }
  return out;
}

bool has_all(const LibraryDrill& drill, const Sought& wanted) {
  if (wanted.level != 0 && (!drill.level || drill.level->value != wanted.level)) return false;
  const std::string text = findable(drill);
  return std::all_of(wanted.words.begin(), wanted.words.end(), [&](const std::string& word) {
    return text.find(" " + word) != std::string::npos;
  });
}

// All drills, each as a plan would have it: the club's own joined with what stands behind them.
std::vector<const LibraryDrill*> everything(const plan::DrillBook& book) {
  std::vector<const LibraryDrill*> out;
  for (const LibraryDrill& drill : book.all()) out.push_back(book.find(drill.name.text));
  if (book.shelf() != nullptr) {
    for (const plan::ShelfName& name : book.shelf()->names()) {
      out.push_back(book.find(name.name));
    }
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  std::sort(out.begin(), out.end(), [](const LibraryDrill* a, const LibraryDrill* b) {
    return lower_ascii(a->name.text) < lower_ascii(b->name.text);
  });
  return out;
}

}  // namespace

bool is_for_home(const LibraryDrill& drill) {
  const auto is = [](const auto& answer, bool value) { return answer && answer->value == value; };
  return !is(drill.spotter, true) && !is(drill.coach, true) && !is(drill.home, false);
}

FoundDrills find_drills(const std::vector<std::string>& words, const std::string& standing,
                        const Surroundings& around, Listener& listener) {
  FoundDrills out;
  out.exit_code = 2;
  const auto data = open_data_folder(around.files, around.environment, around.program);
  if (!data) {
    listener.problem(data.error());
    return out;
  }
  const std::string root = club_above(around.files, standing).value_or("");
  Diagnostics found;
  plan::Club club;
  if (!root.empty()) {
    const std::string display = path_from(standing, join_path(root, "club.yaml"));
    club = load_club(around.files, root, display, found);
  }
  auto shelf = club.uses_shelf ? open_shelf(around.files, *data) : nullptr;
  if (root.empty()) {
    out.book = std::make_shared<const plan::DrillBook>(std::vector<LibraryDrill>{}, found,
                                                       std::move(shelf));
  } else {
    DrillLibrary library = load_drills({around.files, root, standing}, nullptr, std::move(shelf));
    out.book = std::move(library.book);
    found.append(library.folder);
    found.append(library.drills);
  }
  for (const Diagnostic& one : found.sorted()) listener.found(one);
  out.exit_code = found.has_errors() ? 1 : 0;

  std::string name;
  for (const std::string& word : words) name += (name.empty() ? "" : " ") + word;
  out.one = name.empty() ? nullptr : out.book->find(name);
  if (out.one != nullptr) return out;
  const Sought wanted = sought_in(words);
  for (const LibraryDrill* drill : everything(*out.book)) {
    if (drill != nullptr && has_all(*drill, wanted)) out.all.push_back(drill);
  }
  if (out.all.size() == 1 && !words.empty()) out.one = out.all.front();
  if (out.all.empty()) out.closest = out.book->closest(name).value_or("");
  return out;
}

}  // namespace chalkleaf::club
