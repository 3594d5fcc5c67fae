// What the tests of rotations share: the shipped words, texts, and grids as short strings.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/files.h"
#include "rota/read.h"
#include "source/read.h"
#include "support/places.h"

namespace chalkleaf::rota_test {

inline const rota::Words& english() {
  static const std::shared_ptr<const rota::Words> kWords = [] {
    const RealFileSystem files;
    static Diagnostics found;
    const std::string path = support::repository() + "/themes/words/en/rota.yaml";
    return rota::read_words(source::load(files, path, "rota.yaml", found), found);
  }();
  return *kWords;
}

/// Keeps its text alive, since names point into it.
struct Text {
  explicit Text(std::string text) : source(std::make_shared<Source>("plan.md", std::move(text))) {}
  SourcePtr source;
  std::vector<rota::Rotation> all() const { return rota::read(*source, english()); }
  rota::Rotation one() const {
    const auto found = all();
    return found.empty() ? rota::Rotation() : found.front();
  }
};

/// `9:25 28: A vault, B bars`, a line a turn; breaks between them.
inline std::string grid_of(const rota::Rotation& all) {
  std::string out;
  const auto clock = [](const std::optional<int>& minutes) {
    if (!minutes) return std::string("-");
    const std::string minute = std::to_string(*minutes % 60);
    return std::to_string(*minutes / 60) + ":" + (minute.size() < 2 ? "0" : "") + minute;
  };
  for (std::size_t t = 0; t < all.turns.size(); ++t) {
    for (const rota::Pause& pause : all.pauses) {
      if (pause.before == t) out += "break " + std::to_string(pause.minutes) + "\n";
    }
    out += clock(all.turns[t].clock) + " " + std::to_string(all.turns[t].minutes) + ":";
    for (std::size_t g = 0; g < all.groups.size(); ++g) {
      for (const rota::Visit& visit : all.visits) {
        if (visit.turn == t && visit.group == g)
          out += " " + all.groups[g].name.text + "=" + all.stations[visit.station].name.text;
      }
      for (const rota::Rest& rest : all.rests) {
        if (rest.turn == t && rest.group == g) out += " " + all.groups[g].name.text + "=rest";
      }
    }
    out += "\n";
  }
  return out;
}

/// Groups `A`, `B`, … and stations `a`, `b`, …, to be proposed.
inline rota::Rotation blank(std::size_t groups, std::size_t stations, std::size_t turns) {
  rota::Rotation out;
  for (std::size_t g = 0; g < groups; ++g) {
    rota::Group group;
    group.name.text = std::string(1, static_cast<char>('A' + g));
    out.groups.push_back(std::move(group));
  }
  for (std::size_t s = 0; s < stations; ++s) {
    rota::Station station;
    station.name.text = std::string(1, static_cast<char>('a' + s));
    out.stations.push_back(std::move(station));
  }
  out.turns.resize(turns);
  return out;
}

}  // namespace chalkleaf::rota_test
