// See the header.
#include "rota/pairs.h"

#include <algorithm>
#include <set>

#include "base/text.h"

namespace chalkleaf::rota {
namespace {

/// Reads the lines of one text.
class PairReader {
 public:
  PairReader(const Source& source, const std::vector<Line>& lines, const Words& words)
      : source_(source), lines_(lines), words_(words) {}

  std::optional<Table> run(std::size_t at, std::size_t& end) const {
    if (auto found = timed(at, end)) return found;
    if (auto found = rotating(at, end)) return found;
    return orders(at, end);
  }

 private:
  struct Placed {
    Cell group;
    Cell place;
  };

  std::string lower(const Cell& cell) const {
    return lower_ascii(source_.text().substr(cell.begin, cell.end - cell.begin));
  }

  bool open(std::size_t i) const {
    const Line& line = lines_[i];
    return !line.blank && !line.pipe && line.end - line.begin < 400;
  }

  // Pieces between signs, sentences and `and`; never within brackets.
  std::vector<Cell> pieces(std::uint32_t begin, std::uint32_t end) const {
    const std::string_view all = source_.text();
    std::vector<Cell> out;
    std::uint32_t from = begin;
    int depth = 0;
    const auto cut = [&](std::uint32_t to, std::uint32_t next) {
      const Cell cell = trimmed(source_, from, to);
      if (!cell.empty()) out.push_back(cell);
      from = next;
    };
    for (std::uint32_t i = begin; i < end; ++i) {
      const char c = all[i];
      depth += c == '(' ? 1 : c == ')' && depth > 0 ? -1 : 0;
      if (depth > 0) continue;
      const bool stop = c == '.' && (i + 1 == end || is_blank(all[i + 1]));
      if (c == ',' || c == ';' || c == '|' || c == '/' || c == '\t' || stop) cut(i, i + 1);
      for (const std::string_view word : {" and ", " & ", " + ", " then "}) {
        if (all.substr(i, std::min<std::size_t>(word.size(), end - i)) == word)
          cut(i, i + static_cast<std::uint32_t>(word.size()));
      }
    }
    cut(end, end);
    return out;
  }

  std::optional<Placed> placed(const Cell& piece) const {
    const std::string_view text = source_.text().substr(piece.begin, piece.end - piece.begin);
    const std::vector<Token> tokens = tokens_of(text);
    if (tokens.size() < 2) return std::nullopt;
    const auto cell = [&](std::size_t first, std::size_t last) {
      return Cell{piece.begin + static_cast<std::uint32_t>(tokens[first].begin),
                  piece.begin + static_cast<std::uint32_t>(tokens[last - 1].end), 0};
    };
    if (const std::size_t n = match(words_.stations, tokens, 0); n > 0 && n < tokens.size()) {
      std::size_t next = n;
      while (next < tokens.size() && match(words_.at, tokens, next) > 0) ++next;
      if (next < tokens.size() && tokens.size() - next < 3 && !tokens[next].is_number())
        return Placed{cell(next, tokens.size()), cell(0, n)};
    }
    const bool said = match(words_.group, tokens, 0) > 0 && tokens.size() > 2;
    const std::size_t name = said ? 2 : 1;
    constexpr std::size_t kFar = 6;
    for (std::size_t at = name; at < std::min(tokens.size(), kFar); ++at) {
      const std::size_t n = std::max(match(words_.stations, tokens, at),
                                     tokens[at].is_word() ? match(words_.rest, tokens, at) : 0);
      if (n == 0) continue;
      if (!tokens[0].is_word() && !said) return std::nullopt;
      return Placed{cell(0, name), cell(at, at + n)};
    }
    return std::nullopt;
  }

  std::vector<Placed> all_placed(std::uint32_t begin, std::uint32_t end) const {
    std::vector<Placed> out;
    for (const Cell& piece : pieces(begin, end)) {
      if (const auto one = placed(piece)) out.push_back(*one);
    }
    return out;
  }

  // `Turn 2: …`: the bytes of the label, 0 without one.
  std::size_t turn_label(const Line& line) const {
    const std::string_view text = line.words(source_);
    const std::size_t colon = text.substr(0, 24).find_first_of(":-)");
    if (colon == std::string_view::npos || colon == 0) return 0;
    return is_turn_label(words_, trim(text.substr(0, colon))) ? colon + 1 : 0;
  }

  std::optional<Table> timed(std::size_t at, std::size_t& end) const {
    Table out;
    std::set<std::string> known;
    std::size_t full = 0;
    for (std::size_t i = at; i < std::min(lines_.size(), at + kMostRows); ++i) {
      const Line& line = lines_[i];
      if (line.blank && !out.turns.empty()) continue;
      if (!open(i)) break;
      const auto label = static_cast<std::uint32_t>(turn_label(line));
      if (!line.clock && label == 0) break;
      std::vector<Placed> found = all_placed(line.text + label, line.end);
      std::size_t again = 0;
      for (const Placed& one : found) again += known.contains(lower(one.group)) ? 1 : 0;
      const bool turn = found.size() > 1 && (full == 0 || again * 2 >= found.size());
      const bool pause = !turn && full > 0 && within(words_.pauses, line.words(source_));
      if (!turn && !pause) break;
      TableTurn made{line.clock,
                     line.clock ? line.label : trimmed(source_, line.text, line.text + label),
                     line.number};
      made.pause = pause;
      if (pause) {
        made.pause_cell = trimmed(source_, line.text + label, line.end);
        made.pause_words = std::string(line.words(source_));
      }
      for (const Placed& one : found) {
        if (pause) break;
        known.insert(lower(one.group));
        out.pairs.push_back({out.turns.size(), one.group, one.place});
      }
      full += turn ? 1 : 0;
      out.turns.push_back(std::move(made));
      end = i + 1;
    }
    if (full < 2) return std::nullopt;
    out.cells.resize(out.turns.size());
    return out;
  }

  // `then rotate`, in a line of its own.
  bool begins_rotating(const Line& line) const {
    const std::vector<Token> tokens = tokens_of(line.words(source_));
    constexpr std::size_t kFar = 4;
    for (std::size_t i = 0; i < std::min(kFar, tokens.size()); ++i) {
      if (match(words_.rotating, tokens, i) > 0) return true;
    }
    return false;
  }

  std::optional<Table> rotating(std::size_t at, std::size_t& end) const {
    if (!open(at)) return std::nullopt;
    const Line& line = lines_[at];
    const std::vector<Token> tokens = tokens_of(line.words(source_));
    std::size_t here = 0;
    while (here < tokens.size() && match(words_.rotating, tokens, here) == 0) ++here;
    const bool next = at + 1 < lines_.size() && open(at + 1) && begins_rotating(lines_[at + 1]);
    if (here == tokens.size() && !next) return std::nullopt;
    // What stands behind `then rotate` says more of it: `the order is vault - bars`.
    std::vector<Placed> found;
    if (here < tokens.size())
      found = all_placed(line.text, line.text + static_cast<std::uint32_t>(tokens[here].begin));
    if (found.size() < 2) found = all_placed(line.text, line.end);
    if (found.size() < 2) return std::nullopt;
    const auto is_name = [&](const Placed& one) {
      const char c = source_.text()[one.group.begin];
      return (c >= 'A' && c <= 'Z') || found.size() > 2;
    };
    if (!std::all_of(found.begin(), found.end(), is_name)) return std::nullopt;
    std::set<std::string> groups;
    std::set<std::string> places;
    Table out;
    out.turns.push_back({line.clock, line.label, line.number});
    for (const Placed& one : found) {
      const bool fresh = groups.insert(lower(one.group)).second;
      if (!places.insert(lower(one.place)).second || !fresh) return std::nullopt;
      out.pairs.push_back({0, one.group, one.place});
    }
    out.cells.resize(1);
    out.then_rotate = true;
    end = at + (here < tokens.size() ? 1 : 2);
    return out;
  }

  // The name before a colon or dash, and what stands behind it, one a turn.
  struct Order {
    Cell label;
    std::vector<Cell> cells;
  };
  std::optional<Order> order(std::size_t i) const {
    if (!open(i) || lines_[i].clock) return std::nullopt;
    const Line& line = lines_[i];
    const std::string_view all = source_.text();
    const std::string_view text = line.words(source_);
    std::size_t cut = std::string_view::npos;
    std::size_t size = 1;
    for (const std::string_view mark : {":", " - ", " – ", " = ", "  ", "\t"}) {
      const std::size_t found = text.find(mark);
      if (found == std::string_view::npos || found == 0 || found > 24 || found >= cut) continue;
      cut = found;
      size = mark.size();
    }
    if (cut == std::string_view::npos) return std::nullopt;
    Order out;
    out.label = trimmed(source_, line.text, line.text + static_cast<std::uint32_t>(cut));
    std::uint32_t from = line.text + static_cast<std::uint32_t>(cut + size);
    const auto end_at = [&](std::uint32_t to, std::uint32_t next) {
      const Cell cell = trimmed(source_, from, to);
      if (!cell.empty()) out.cells.push_back(cell);
      from = next;
    };
    for (std::uint32_t k = from; k < line.end; ++k) {
      if (all[k] == ',' || all[k] == ';' || all[k] == '>' || all[k] == '/') end_at(k, k + 1);
      for (const std::string_view mark : {"→", " - ", " – ", "  ", " then "}) {
        if (k >= from && all.substr(k, mark.size()) == mark)
          end_at(k, k + static_cast<std::uint32_t>(mark.size()));
      }
    }
    end_at(line.end, line.end);
    return out.cells.size() > 1 && out.cells.size() < 13 ? std::optional(out) : std::nullopt;
  }

  std::optional<Table> orders(std::size_t at, std::size_t& end) const {
    std::vector<Order> found;
    std::size_t stop = at;
    for (std::size_t i = at; i < std::min(lines_.size(), at + kMostRows); ++i) {
      if (lines_[i].blank && !found.empty()) continue;
      const auto one = order(i);
      if (!one || (!found.empty() && one->cells.size() != found.front().cells.size())) break;
      found.push_back(*one);
      stop = i + 1;
    }
    if (found.size() < 2) return std::nullopt;
    // Each word comes again in another line: turns, not drills.
    std::multiset<std::string> all;
    std::size_t stations = 0;
    std::size_t labels = 0;
    for (const Order& one : found) {
      labels += is_station(words_, lower(one.label)) ? 1 : 0;
      for (const Cell& cell : one.cells) {
        all.insert(lower(cell));
        stations += is_station(words_, lower(cell)) ? 1 : 0;
      }
    }
    const std::set<std::string> different(all.begin(), all.end());
    std::size_t again = 0;
    for (const std::string& one : different) again += all.count(one) > 1 ? 1 : 0;
    const bool are_groups = labels * 2 > found.size() && stations == 0;
    const bool are_places = labels == 0 && stations * 4 >= all.size() * 3;
    if ((!are_groups && !are_places) || again * 4 < different.size() * 3) return std::nullopt;
    Table out;
    for (std::size_t t = 0; t < found.front().cells.size(); ++t) {
      TableTurn turn;
      turn.line = source_.line_column(found.front().cells[t].begin).line;
      out.turns.push_back(turn);
      std::vector<Cell> cells;
      for (const Order& one : found) cells.push_back(one.cells[t]);
      const bool pause = std::all_of(cells.begin(), cells.end(), [&](const Cell& cell) {
        return within(words_.pauses, lower(cell));
      });
      if (pause) {
        out.turns.back().pause = true;
        out.turns.back().pause_cell = cells.front();
        out.turns.back().pause_words = lower(cells.front());
        cells.clear();
      }
      out.cells.push_back(std::move(cells));
    }
    for (const Order& one : found) out.names.push_back(one.label);
    end = stop;
    return out;
  }

  const Source& source_;
  const std::vector<Line>& lines_;
  const Words& words_;
};

}  // namespace

std::optional<Table> pair_lines(const Source& source, const std::vector<Line>& lines,
                                const Words& words, std::size_t at, std::size_t& end) {
  return PairReader(source, lines, words).run(at, end);
}

}  // namespace chalkleaf::rota
