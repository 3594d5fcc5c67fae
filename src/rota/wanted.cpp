// See the header.
#include "rota/wanted.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "rota/around.h"
#include "rota/table.h"

namespace chalkleaf::rota {
namespace {

class WantedReader {
 public:
  WantedReader(const Source& source, const std::vector<Line>& lines, const Words& words)
      : source_(source), lines_(lines), words_(words) {}

  std::optional<Rotation> run() {
    if (!find_heading()) return std::nullopt;
    find_groups();
    find_stations();
    if (out_.groups.size() < 2 || out_.stations.size() < 2) return std::nullopt;
    const Lengths said = lengths_in(words_, lines_[heading_].words(source_));
    const std::size_t turns = said.turns           ? static_cast<std::size_t>(*said.turns)
                              : !said.list.empty() ? said.list.size()
                                                   : std::max(out_.stations.size(), std::size_t{1});
    constexpr std::size_t kMost = 16;
    out_.turns.resize(std::min(turns, kMost));
    const Line& line = lines_[heading_];
    out_.form = Rotation::Form::kNone;
    out_.heading = {std::string(line.words(source_)), {&source_, line.begin, line.end}};
    out_.span = out_.heading.span;
    out_.lines = {line.number};
    if (line.clock) out_.turns.front().clock = line.clock->minutes;
    return std::move(out_);
  }

 private:
  std::string_view words_at(std::size_t i) const { return lines_[i].words(source_); }

  // A line that says so, with how long a turn is; or one anywhere, where rules are written.
  bool find_heading() {
    const bool ruled = std::any_of(lines_.begin(), lines_.end(), [&](const Line& line) {
      const std::string_view text = line.words(source_);
      return starts_with_ignoring_case(text, "must:") || starts_with_ignoring_case(text, "wish:");
    });
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      const Line& line = lines_[i];
      if (line.blank || line.pipe || line.bullet || line.end - line.begin > 200) continue;
      const Lengths said = lengths_in(words_, words_at(i));
      // `## Stations (5 x 35 min, 5 min to move)`
      const bool places = line.hashes > 1 && said.turns && within(words_.events, words_at(i));
      if (!within(words_.rotating, words_at(i)) && !places) continue;
      const bool long_enough = said.turns || !said.list.empty() || (said.turn && ruled);
      const bool titled = line.hashes > 1;
      if (!long_enough && !(ruled && (titled || said.alone || line.clock))) continue;
      heading_ = i;
      return true;
    }
    return false;
  }

  Cell cell(std::string_view text) const {
    const auto begin = static_cast<std::uint32_t>(text.data() - source_.text().data());
    return trimmed(source_, begin, begin + static_cast<std::uint32_t>(text.size()));
  }
  std::vector<Cell> pieces(std::string_view text) const {
    std::vector<Cell> out;
    std::size_t begin = 0;
    int depth = 0;
    for (std::size_t i = 0; i <= text.size(); ++i) {
      if (i < text.size()) depth += text[i] == '(' ? 1 : text[i] == ')' && depth > 0 ? -1 : 0;
      const bool end = i == text.size() || (depth == 0 && (text[i] == ',' || text[i] == ';'));
      const bool word = i < text.size() && depth == 0 && text.substr(i).starts_with(" and ");
      if (!end && !word) continue;
      const Cell one = cell(text.substr(begin, i - begin));
      if (!one.empty()) out.push_back(one);
      begin = i + (word ? 5 : 1);
    }
    return out;
  }
  std::string text(const Cell& one) const {
    return std::string(source_.text().substr(one.begin, one.end - one.begin));
  }

  // `A 4`, `Reds 5-6yrs (8)`: one or two words before a number or bracket.
  std::optional<Cell> name_in(const Cell& piece, bool keyed) const {
    const std::string all = text(piece);
    const std::vector<Token> tokens = tokens_of(all);
    std::size_t n = 0;
    while (n < tokens.size() && tokens[n].is_word() && n < 3) ++n;
    if (n == 0 || (n > 2 && !keyed)) return std::nullopt;
    const bool counted = n < tokens.size() && (tokens[n].is_number() || tokens[n].text == "(");
    if (!counted && !keyed) return std::nullopt;
    if (keyed && !counted) {
      n = std::min<std::size_t>(n, 2);
      for (std::size_t i = 1; i < n; ++i) {
        if (match(words_.from, tokens, i) > 0 || match(words_.until, tokens, i) > 0 ||
            match(words_.with, tokens, i) > 0)
          n = i;
      }
    }
    const char first = all[tokens[0].begin];
    if (!keyed && (first < 'A' || first > 'Z' || is_station(words_, tokens[0].text)))
      return std::nullopt;
    if (!keyed && n < tokens.size() && tokens[n].is_number() && n + 1 < tokens.size() &&
        (tokens[n + 1].text == "." || tokens[n + 1].text == ":" || tokens[n + 1].text == "x"))
      return std::nullopt;
    return cell(std::string_view(source_.text()).substr(piece.begin, tokens[n - 1].end));
  }

  void find_groups() {
    for (const bool keyed : {true, false}) {
      for (std::size_t i = 0; i < lines_.size(); ++i) {
        std::string_view line = words_at(i);
        if (lines_[i].blank || lines_[i].pipe) continue;
        const bool key = starts_with_ignoring_case(line, "groups:");
        if (key != keyed || (!keyed && lines_[i].clock)) continue;
        if (key) line.remove_prefix(7);
        std::vector<Cell> names;
        std::size_t others = 0;
        for (const Cell& piece : pieces(line)) {
          if (const auto name = name_in(piece, keyed)) {
            names.push_back(*name);
          } else {
            ++others;
          }
        }
        if (names.size() < 2 || (!keyed && others > 0)) continue;
        for (const Cell& name : names) {
          Group group;
          group.name = {text(name), {&source_, name.begin, name.end}};
          out_.groups.push_back(std::move(group));
        }
        return;
      }
    }
  }

  void add_station(std::string_view name, const Span& span) {
    const bool known = std::any_of(
        out_.stations.begin(), out_.stations.end(),
        [&](const Station& one) { return lower_ascii(one.name.text) == lower_ascii(name); });
    if (known) return;
    Station station;
    station.name = {std::string(name), span};
    out_.stations.push_back(std::move(station));
  }

  // `### Vault` below the heading; `stations: …`; or the line that names the most places.
  void find_stations() {
    for (std::size_t i = heading_ + 1; i < lines_.size(); ++i) {
      if (lines_[i].hashes > 0 && lines_[i].hashes < 3) break;
      if (lines_[i].hashes != 3) continue;
      std::string_view title = words_at(i);
      title = trim(title.substr(0, title.find('(')));
      const Cell one = cell(title);
      add_station(title, {&source_, one.begin, one.end});
    }
    if (out_.stations.size() > 1) return;
    out_.stations.clear();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      std::string_view line = words_at(i);
      if (!starts_with_ignoring_case(line, "stations:")) continue;
      line.remove_prefix(9);
      for (const Cell& one : pieces(line)) add_station(text(one), {&source_, one.begin, one.end});
      if (out_.stations.size() > 1) return;
    }
    std::size_t best = lines_.size();
    std::size_t most = 1;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].pipe || lines_[i].end - lines_[i].begin > 160) continue;
      const std::size_t found = places_in(i).size();
      if (found > most) {
        most = found;
        best = i;
      }
    }
    if (best == lines_.size()) return;
    for (const Cell& one : places_in(best)) add_station(text(one), {&source_, one.begin, one.end});
  }
  std::vector<Cell> places_in(std::size_t i) const {
    std::vector<Cell> out;
    std::set<std::string> had;
    const std::string_view line = words_at(i);
    const std::vector<Token> tokens = tokens_of(line);
    for (std::size_t at = 0; at < tokens.size(); ++at) {
      const std::size_t n = match(words_.stations, tokens, at);
      if (n == 0) continue;
      const Cell one =
          cell(line.substr(tokens[at].begin, tokens[at + n - 1].end - tokens[at].begin));
      if (had.insert(lower_ascii(text(one))).second) out.push_back(one);
      at += n - 1;
    }
    return out;
  }

  const Source& source_;
  const std::vector<Line>& lines_;
  const Words& words_;
  Rotation out_;
  std::size_t heading_ = 0;
};

}  // namespace

std::optional<Rotation> wanted(const Source& source, const std::vector<Line>& lines,
                               const Words& words) {
  return WantedReader(source, lines, words).run();
}

}  // namespace chalkleaf::rota
