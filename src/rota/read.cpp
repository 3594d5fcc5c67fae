// See the header.
#include "rota/read.h"

#include <algorithm>
#include <array>
#include <utility>

#include "rota/around.h"
#include "rota/interpret.h"
#include "rota/lines.h"
#include "rota/mentions.h"
#include "rota/table.h"
#include "rota/wanted.h"

namespace chalkleaf::rota {
namespace {

// Headings below that are a station's: its drills stand there.
void find_titles(const Source& source, const std::vector<Line>& lines, const Words& words,
                 Rotation& rotation) {
  const Mentions mentions(words, rotation);
  const std::uint32_t from =
      rotation.lines.empty() ? 0 : *std::max_element(rotation.lines.begin(), rotation.lines.end());
  for (const Line& line : lines) {
    if (line.number <= from || line.hashes < 2) continue;
    const auto station = mentions.station_of_title(line.words(source));
    if (!station && !rotation.titles.empty()) return;
    if (station) rotation.titles.push_back({line.number, *station});
  }
}

void find_colours(const Words& words, Rotation& rotation) {
  const std::array kColours{
      std::pair{&Words::red, NamedColour::kRed},
      std::pair{&Words::orange, NamedColour::kOrange},
      std::pair{&Words::yellow, NamedColour::kYellow},
      std::pair{&Words::green, NamedColour::kGreen},
      std::pair{&Words::turquoise, NamedColour::kTurquoise},
      std::pair{&Words::blue, NamedColour::kBlue},
      std::pair{&Words::purple, NamedColour::kPurple},
      std::pair{&Words::black, NamedColour::kBlack},
  };
  for (Group& group : rotation.groups) {
    for (const auto& [phrases, colour] : kColours) {
      if (within(words.*phrases, group.name.text)) group.colour = colour;
    }
  }
}

// What is told in words and drawn as a grid is one rotation: the grid's.
void drop_told_twice(std::vector<Rotation>& all) {
  const bool drawn = std::any_of(all.begin(), all.end(), [](const Rotation& one) {
    return one.form == Rotation::Form::kWritten;
  });
  if (!drawn) return;
  std::erase_if(all, [](const Rotation& one) { return one.form != Rotation::Form::kWritten; });
}

}  // namespace

std::vector<Rotation> read(const Source& source, const Words& words) {
  constexpr std::size_t kLargest = 200'000;  // bytes; no evening is longer
  std::vector<Rotation> out;
  if (source.text().size() > kLargest) return out;
  const std::vector<Line> lines = lines_of(source);
  if (lines.size() > kMostLines) return out;
  for (const Table& table : tables_of(source, lines, words)) {
    auto found = interpret(source, words, table);
    if (!found) continue;
    if (!out.empty() && join_halls(out.back(), *found)) continue;
    out.push_back(std::move(*found));
  }
  drop_told_twice(out);
  if (out.empty()) {
    if (auto found = wanted(source, lines, words)) out.push_back(std::move(*found));
  }
  for (Rotation& rotation : out) {
    read_around(source, lines, words, rotation);
    find_titles(source, lines, words, rotation);
    find_colours(words, rotation);
  }
  return out;
}

int Rotation::minutes() const {
  if (turns.empty()) return 0;
  int sum = 0;
  for (std::size_t t = 0; t < turns.size(); ++t) {
    sum += turns[t].minutes + move;
  }
  for (const Pause& pause : pauses) {
    if (pause.before > 0 && pause.before < turns.size()) sum += pause.minutes;
  }
  if (turns.front().clock && turns.back().clock) {
    return *turns.back().clock - *turns.front().clock + turns.back().minutes + move;
  }
  return sum;
}

}  // namespace chalkleaf::rota
