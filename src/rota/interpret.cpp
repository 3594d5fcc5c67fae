// See the header.
#include "rota/interpret.h"

#include <algorithm>
#include <map>

#include "base/text.h"

namespace chalkleaf::rota {
namespace {

// `A (L4)`, `A (6)`
std::string_view without_brackets(std::string_view text) {
  const std::size_t open = text.find('(');
  return open == std::string_view::npos || open == 0 ? text : trim(text.substr(0, open));
}

/// Names in the order they are met.
class Names {
 public:
  explicit Names(const Words& words) : words_(words) {}

  std::optional<std::size_t> find(std::string_view name) const {
    const std::string key = key_of(words_, name);
    for (std::size_t i = 0; i < keys_.size(); ++i) {
      if (keys_[i] == key) return i;
    }
    return std::nullopt;
  }
  std::size_t add(std::string_view name, const Span& span) {
    if (const auto found = find(name)) return *found;
    keys_.push_back(key_of(words_, name));
    all_.push_back({std::string(without_brackets(name)), span});
    return all_.size() - 1;
  }
  const std::vector<Name>& all() const { return all_; }
  const std::vector<std::string>& keys() const { return keys_; }

 private:
  const Words& words_;
  std::vector<std::string> keys_;
  std::vector<Name> all_;
};

class Interpreter {
 public:
  Interpreter(const Source& source, const Words& words, const Table& table)
      : source_(source), words_(words), table_(table), groups_(words), stations_(words) {}

  std::optional<Rotation> run() {
    turns();
    if (table_.pairs.empty()) {
      count_values();
      choose_cells();
      cells();
    } else {
      pairs();
    }
    if (groups_.all().size() < 2 || stations_.all().size() < 2) return std::nullopt;
    // Places on both sides are a list of what is done, with nobody in it.
    std::size_t places = 0;
    for (const Name& name : groups_.all())
      places += is_station(words_, name.text) && name.text.size() > 1 ? 1 : 0;
    if (places * 2 > groups_.all().size()) return std::nullopt;
    for (const Name& name : groups_.all()) {
      Group group;
      group.name = name;
      out_.groups.push_back(std::move(group));
    }
    for (const Name& name : stations_.all()) {
      Station station;
      station.name = name;
      out_.stations.push_back(std::move(station));
    }
    if (!table_.corner.empty()) out_.halls.push_back(text(table_.corner));
    out_.lines = table_.lines;
    if (!table_.corner.empty()) out_.corner = text(table_.corner);
    out_.form = table_.then_rotate     ? Rotation::Form::kOrder
                : table_.pairs.empty() ? Rotation::Form::kWritten
                                       : Rotation::Form::kLines;
    if (!out_.lines.empty()) {
      const std::uint32_t last = out_.lines.back();
      out_.span = {
          &source_, source_.line_start(out_.lines.front()),
          source_.line_start(last) + static_cast<std::uint32_t>(source_.line(last).size())};
    }
    return std::move(out_);
  }

 private:
  std::string text(const Cell& cell) const {
    return std::string(source_.text().substr(cell.begin, cell.end - cell.begin));
  }
  Span span(const Cell& cell) const { return {&source_, cell.begin, cell.end}; }

  void turns() {
    for (std::size_t i = 0; i < table_.turns.size(); ++i) {
      const TableTurn& row = table_.turns[i];
      const bool has_cells = i < table_.cells.size() && !table_.cells[i].empty();
      const bool has_pairs = std::any_of(table_.pairs.begin(), table_.pairs.end(),
                                         [&](const Pair& pair) { return pair.turn == i; });
      if (row.pause || (!has_cells && !has_pairs)) {
        Pause pause;
        pause.before = out_.turns.size();
        if (row.clock) {
          pause.clock = row.clock->minutes;
          if (row.clock->until) pause.minutes = *row.clock->until - row.clock->minutes;
        }
        pause.words = row.pause_words;
        pause.span = row.pause_cell.empty() ? span(row.label) : span(row.pause_cell);
        out_.pauses.push_back(std::move(pause));
        turn_of_.push_back(std::nullopt);
        continue;
      }
      Turn turn;
      if (row.clock) {
        turn.clock = row.clock->minutes;
        if (row.clock->until) turn.minutes = *row.clock->until - row.clock->minutes;
      }
      if (!row.label.empty()) turn.span = span(row.label);
      turn_of_.push_back(out_.turns.size());
      out_.turns.push_back(turn);
    }
  }

  void count_values() {
    for (std::size_t i = 0; i < table_.cells.size(); ++i) {
      if (!turn_of_[i]) continue;
      for (const Cell& cell : table_.cells[i]) {
        if (!cell.empty() && !is_rest(words_, text(cell))) ++counts_[key_of(words_, text(cell))];
      }
    }
  }

  // A short name, `A`, `G2`, `Group 1`, which no place of a hall has.
  bool is_group(std::string_view name) const {
    const std::vector<Token> tokens = tokens_of(without_brackets(name));
    if (tokens.empty()) return false;
    if (match(words_.group, tokens, 0) > 0) return true;
    const bool letter = tokens.size() == 1 && tokens[0].text.size() == 1;
    const bool numbered = tokens.size() == 1 && tokens[0].text.size() < 4 && tokens[0].is_word() &&
                          tokens[0].text.find_first_of("0123456789") != std::string::npos;
    return letter || numbered;
  }

  void choose_cells() {
    const auto vote = [&](std::string_view name) {
      const bool station = is_station(words_, name);
      return (station && !(is_group(name) && name.size() == 1) ? 1.0 : 0.0) -
             (is_group(name) ? 0.5 : 0.0);
    };
    double of_names = 0;
    double of_cells = 0;
    for (const Cell& name : table_.names) of_names += vote(text(name));
    for (const auto& [value, count] : counts_) of_cells += vote(value);
    if (!table_.names.empty()) of_names /= static_cast<double>(table_.names.size());
    if (!counts_.empty()) of_cells /= static_cast<double>(counts_.size());
    out_.cells = of_names >= of_cells ? Rotation::Cells::kGroups : Rotation::Cells::kStations;
  }

  // The value that was meant by one that stands there once and is nearly another: `Yelow`.
  std::string meant(const std::string& key) const {
    const auto own = counts_.find(key);
    if (own == counts_.end() || own->second > 1 || key.size() < 3) return key;
    for (const auto& [other, count] : counts_) {
      if (count < 2 || other == key) continue;
      const bool near = key.size() > 3 && edit_distance(key, other) == 1;
      const bool shortened = other.starts_with(key) || key.starts_with(other + " ");
      if (near || shortened) return other;
    }
    return key;
  }

  // A name that stands in the grid once, where the others stand three times and more, is a slip.
  bool is_strange(const std::string& key) const {
    if (out_.turns.size() < 3 || counts_.size() < 4) return false;
    std::vector<int> all;
    for (const auto& [value, count] : counts_) all.push_back(count);
    std::sort(all.begin(), all.end());
    const auto own = counts_.find(key);
    return own != counts_.end() && own->second == 1 && all[all.size() / 2] >= 3 &&
           all[all.size() / 4] > 1;
  }

  // `A + B`: two that stand alone elsewhere.
  std::vector<Cell> values(const Cell& cell) const {
    const std::string all = text(cell);
    std::vector<Cell> out;
    std::uint32_t from = cell.begin;
    const auto add = [&](std::uint32_t end) {
      const Cell one = trimmed(source_, from, end);
      if (!one.empty()) out.push_back(one);
    };
    for (std::uint32_t i = cell.begin; i < cell.end; ++i) {
      const char c = source_.text()[i];
      std::size_t size = c == '+' || c == '&' || c == '/' || c == ',' ? 1 : 0;
      if (source_.text().substr(i, 5) == " and ") size = 5;
      if (size == 0) continue;
      add(i);
      from = i + static_cast<std::uint32_t>(size);
    }
    add(cell.end);
    const bool known = out.size() > 1 && std::all_of(out.begin(), out.end(), [&](const Cell& one) {
                         const std::string key = key_of(words_, text(one));
                         const bool named = std::any_of(
                             table_.names.begin(), table_.names.end(),
                             [&](const Cell& name) { return key_of(words_, text(name)) == key; });
                         return counts_.contains(key) || (!named && is_group(text(one)));
                       });
    return known ? out : std::vector<Cell>{cell};
  }

  void cells() {
    const bool cells_are_groups = out_.cells == Rotation::Cells::kGroups;
    Names& columns = cells_are_groups ? stations_ : groups_;
    Names& inside = cells_are_groups ? groups_ : stations_;
    std::vector<std::size_t> column_of;
    for (const Cell& name : table_.names) {
      const bool nowhere = cells_are_groups && !name.empty() && is_rest(words_, text(name));
      if (nowhere) rest_column_ = kNowhere;
      column_of.push_back(nowhere ? kNowhere : columns.add(text(name), span(name)));
    }
    for (std::size_t i = 0; i < table_.cells.size(); ++i) {
      if (!turn_of_[i]) continue;
      for (std::size_t k = 0; k < table_.cells[i].size() && k < column_of.size(); ++k) {
        cell(*turn_of_[i], column_of[k], table_.cells[i][k], inside);
      }
    }
  }

  void cell(std::size_t turn, std::size_t column, const Cell& cell, Names& inside) {
    const bool cells_are_groups = out_.cells == Rotation::Cells::kGroups;
    if (cells_are_groups && rest_column_ == column) {
      for (const Cell& one : values(cell)) {
        if (!one.empty() && !is_rest(words_, text(one)))
          out_.rests.push_back({turn, inside.add(text(one), span(one)), span(one)});
      }
      return;
    }
    if (cell.empty() || is_rest(words_, text(cell))) {
      if (!cells_are_groups && !cell.empty()) out_.rests.push_back({turn, column, span(cell)});
      return;
    }
    for (const Cell& one : values(cell)) {
      const std::string key = meant(key_of(words_, text(one)));
      if (is_strange(key)) {
        out_.strangers.push_back({turn, text(one), span(one)});
        continue;
      }
      const std::size_t which =
          inside.find(key)
              ? *inside.find(key)
              : inside.add(key == key_of(words_, text(one)) ? text(one) : key, span(one));
      if (cells_are_groups) {
        out_.visits.push_back({turn, which, column, span(one)});
      } else {
        out_.visits.push_back({turn, column, which, span(one)});
      }
    }
  }

  void pairs() {
    out_.cells = Rotation::Cells::kStations;
    for (const Pair& pair : table_.pairs) {
      if (!turn_of_[pair.turn]) continue;
      const std::size_t turn = *turn_of_[pair.turn];
      const std::size_t group = groups_.add(text(pair.group), span(pair.group));
      const std::string place = text(pair.place);
      const bool station = is_station(words_, place);
      if (!station && is_rest(words_, place)) {
        out_.rests.push_back({turn, group, span(pair.place)});
        continue;
      }
      out_.visits.push_back(
          {turn, group, stations_.add(place, span(pair.place)), span(pair.place)});
    }
    if (table_.then_rotate) move_round();
  }

  // Everyone goes to the next station as listed, until all have been everywhere.
  void move_round() {
    const std::size_t n = stations_.all().size();
    const std::vector<Visit> first = out_.visits;
    for (std::size_t t = 1; t < n; ++t) {
      out_.turns.emplace_back();
      for (const Visit& visit : first) {
        out_.visits.push_back({t, visit.group, (visit.station + t) % n, {}});
      }
    }
  }

  static constexpr std::size_t kNowhere = 1'000'000;  ///< the column of who rests

  const Source& source_;
  const Words& words_;
  const Table& table_;
  Rotation out_;
  std::optional<std::size_t> rest_column_ = {};
  Names groups_;
  Names stations_;
  std::map<std::string, int> counts_;
  std::vector<std::optional<std::size_t>> turn_of_;  ///< of each row; none: a break
};

std::optional<std::size_t> named(const Words& words, const std::vector<Group>& groups,
                                 const std::string& key) {
  for (std::size_t i = 0; i < groups.size(); ++i) {
    if (key_of(words, groups[i].name.text) == key) return i;
  }
  return std::nullopt;
}

}  // namespace

std::string key_of(const Words& words, std::string_view name) {
  const std::vector<Token> tokens = tokens_of(without_brackets(name));
  const std::size_t skip = match(words.group, tokens, 0);
  std::string out;
  for (std::size_t i = skip < tokens.size() ? skip : 0; i < tokens.size(); ++i) {
    if (!tokens[i].is_word() && !tokens[i].is_number() && i + 1 == tokens.size()) break;
    out += (out.empty() ? "" : " ") + tokens[i].text;
  }
  return out;
}

std::optional<Rotation> interpret(const Source& source, const Words& words, const Table& table) {
  return Interpreter(source, words, table).run();
}

bool join_halls(Rotation& first, const Rotation& second) {
  static const Words kNone;
  std::vector<std::size_t> group_of;
  for (const Group& group : second.groups) {
    const auto found = named(kNone, first.groups, key_of(kNone, group.name.text));
    group_of.push_back(found ? *found : first.groups.size());
  }
  const bool same_groups = std::all_of(group_of.begin(), group_of.end(),
                                       [&](std::size_t i) { return i < first.groups.size(); });
  for (const Station& a : first.stations) {
    for (const Station& b : second.stations) {
      if (key_of(kNone, a.name.text) == key_of(kNone, b.name.text)) return false;
    }
  }
  if (!same_groups || first.turns.size() != second.turns.size()) return false;
  for (std::size_t t = 0; t < first.turns.size(); ++t) {
    if (!first.turns[t].clock || first.turns[t].clock != second.turns[t].clock) return false;
  }
  const std::size_t offset = first.stations.size();
  const std::size_t hall = std::max<std::size_t>(first.halls.size(), 1);
  for (Station station : second.stations) {
    station.hall = hall;
    first.stations.push_back(std::move(station));
  }
  first.halls.resize(hall);
  first.halls.push_back(second.halls.empty() ? "" : second.halls.front());
  for (Visit visit : second.visits) {
    visit.group = group_of[visit.group];
    visit.station += offset;
    first.visits.push_back(visit);
  }
  for (Rest rest : second.rests) {
    rest.group = group_of[rest.group];
    first.rests.push_back(rest);
  }
  first.strangers.insert(first.strangers.end(), second.strangers.begin(), second.strangers.end());
  first.lines.insert(first.lines.end(), second.lines.begin(), second.lines.end());
  first.span = first.span.joined(second.span);
  return true;
}

}  // namespace chalkleaf::rota
