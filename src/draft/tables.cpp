// See the header.
#include "draft/tables.h"

#include <algorithm>

#include "base/text.h"
#include "draft/headed_table.h"
#include "draft/line_scores.h"
#include "draft/table_cells.h"
#include "draft/weights.h"

namespace chalkleaf::draft {
namespace {

class TableReader {
 public:
  TableReader(const Lexicon& words, const Source& source, const Setting& setting)
      : words_(words), source_(source), setting_(setting), own_(setting) {}

  void run(std::vector<DraftLine>& lines, std::size_t begin, std::size_t end) {
    if (read_headed_table(words_, source_, lines, begin, end, setting_)) return;
    std::size_t body = 0;
    std::size_t dosed = 0;
    std::size_t clocks = 0;
    std::size_t minutes = 0;
    const bool headed = begin + 1 < end && is_delimiter(row_of(source_, lines[begin + 1].line));
    for (std::size_t i = begin + (headed ? 2 : 0); i < end; ++i) {
      if (is_delimiter(row_of(source_, lines[i].line))) continue;
      ++body;
      dosed += has_dose(lines[i].line) ? 1 : 0;
      clocks += clock_of(lines[i].line) ? 1 : 0;
      minutes += minutes_of(lines[i].line) ? 1 : 0;
    }
    // Where no row has a dose it is who is where: it stays a table.
    if (dosed == 0) return;
    const bool timetable = clocks * 2 >= body || minutes * 3 >= body * 2;
    if (!timetable && dosed * 2 < body) return;
    for (std::size_t i = begin; i < end; ++i) {
      DraftLine& line = lines[i];
      const bool head = headed && i < begin + 2;
      line.reading = DraftLine::Reading::kTyped;
      if (head || is_delimiter(row_of(source_, line.line))) continue;
      timetable ? timed_row(line) : row(line);
    }
  }

 private:
  std::string_view text(const Cell& cell) const { return text_of(source_, cell); }
  bool has_dose(const Line& line) const {
    const std::vector<Cell> cells = cells_of(source_, line);
    if (cells.size() < 2) return false;
    const std::size_t last = cells.size() - (minutes_of(line) ? 1 : 0);
    return std::any_of(cells.begin(), cells.begin() + static_cast<std::ptrdiff_t>(last),
                       [&](const Cell& cell) {
                         if (is_ordinal(text(cell))) return false;
                         const SpokenLine read = read_drills(words_, text(cell), {});
                         return read.has_dose() || !read.defaults.empty();
                       });
  }
  // `| 2.17 | Warm up: … |`
  std::optional<Clock> clock_of(const Line& line) const {
    const std::vector<Cell> cells = cells_of(source_, line);
    if (cells.size() < 2) return std::nullopt;
    const auto read = read_clock(text(cells[0]));
    return read && read->size == text(cells[0]).size() ? std::optional(read->clock) : std::nullopt;
  }
  // `Back drop, 3 turns each <tab> 15 min`
  std::optional<double> minutes_of(const Line& line) const {
    const std::vector<Cell> cells = cells_of(source_, line);
    if (cells.size() < 2) return std::nullopt;
    const Pieces pieces = pieces_of(text(cells.back()));
    const bool minutes = pieces.size() == 2 && pieces[0].is(Piece::Kind::kNumber) &&
                         (words_.is(Role::kMinute, pieces, 1, 2));
    return minutes ? std::optional(pieces[0].value) : std::nullopt;
  }

  // A row that is a part of the session: its time, what is done, what to watch for.
  void timed_row(DraftLine& line) {
    const std::vector<Cell> cells = cells_of(source_, line.line);
    const auto clock = clock_of(line.line);
    const auto minutes = minutes_of(line.line);
    if (!clock && !minutes) return row(line);
    const Cell& what = cells[clock ? 1 : 0];
    Line part = line.line;
    part.table = false;
    part.mark = Line::Mark::kNone;
    part.text = what.begin;
    part.end = what.end;
    part.clock = clock;
    line.line.clock = clock;
    line.heading = read_heading(words_, source_, part, {});
    if (minutes) line.heading.minutes = minutes;
    const Pieces pieces = pieces_of(text(what));
    const bool part_word = words_.any_of(kPartRoles, pieces, 0, pieces.size());
    if (!part_word && read_drills(words_, text(what), setting_).has_dose())
      line.heading.rest = what.begin;
    line.heading.rest_end = std::max(line.heading.rest, what.end);
    line.spoken = {};
    line.reading = DraftLine::Reading::kHeading;
    line.from = line.heading.rest;
    own_ = setting_;
    own_.defaults.clear();
    own_.stretch = line.heading.stretch;
    const std::size_t behind = clock ? 2 : 1;
    if (cells.size() > behind + 1 && !line.heading.pause &&
        is_dose_of(cells[behind], cells[behind + 1]) && !is_dose_of(what, cells[behind])) {
      // `| 17.45 | Warm up | run and dodge | 4 min |`
      line.heading.rest = line.heading.rest_end;
      DraftLine made = line;
      made.from = line.from = cells[behind].begin;
      named_row(made, {cells.begin() + static_cast<std::ptrdiff_t>(behind), cells.end()});
      line.spoken = std::move(made.spoken);
      return;
    }
    const std::size_t said = cells.size() - (minutes ? 1 : 0);  // the minutes stand in the last
    if (said > behind && !line.heading.pause && is_dose_of(what, cells[behind])) {
      // `| 7.55 | front landing | 6 |`
      std::vector<Cell> drill(cells.begin() + static_cast<std::ptrdiff_t>(behind) - 1,
                              cells.begin() + static_cast<std::ptrdiff_t>(said));
      if (part_word && line.heading.rest > what.begin && line.heading.rest < what.end)
        drill[0].begin = line.heading.rest;  // `conditioning: dish`
      DraftLine made = line;
      made.from = line.from;
      named_row(made, drill);
      line.spoken = std::move(made.spoken);
      return;
    }
    // `| 13:22 | Warm up | Traffic lights game. Then 10 star jumps |`
    if (part_word && !line.heading.pause && said > behind &&
        trim(source_.text().substr(line.heading.rest, line.heading.rest_end - line.heading.rest))
            .empty()) {
      SpokenLine drills = read_drills(words_, text(cells[behind]), own_);
      if (drills.has_dose()) {
        line.heading.rest = line.heading.rest_end = what.end;
        line.from = cells[behind].begin;
        line.spoken = std::move(drills);
        return;
      }
    }
    const Cell rest{line.heading.rest, line.heading.rest_end};
    if (!line.heading.pause) line.spoken = read_drills(words_, text(rest), own_);
    for (std::size_t i = behind; i < said && !line.spoken.drills.empty(); ++i) {
      if (cells[i].end > cells[i].begin)
        line.spoken.drills.back().notes.emplace_back(text(cells[i]));
    }
  }

  void row(DraftLine& line) {
    std::vector<Cell> cells = cells_of(source_, line.line);
    if (!cells.empty() && is_ordinal(text(cells[0]))) cells.erase(cells.begin());
    // `| | ankle hops | 2 x 20 |`: what goes on below a row that has a time.
    while (cells.size() > 1 && cells[0].begin == cells[0].end) cells.erase(cells.begin());
    if (cells.empty()) return;
    line.from = line.line.begin;
    if (clock_of(line.line)) return timed_row(line);
    if (part_row(line, cells)) return;
    const SpokenLine second = read_drills(words_, cells.size() > 1 ? text(cells[1]) : "", {});
    const bool amount = cells.size() > 1 && is_amount(cells[1]);
    if (amount || (second.drills.empty() && !second.defaults.empty()))
      return named_row(line, cells);
    open_part(line, cells[0]);
    for (std::size_t i = 1; i < cells.size(); ++i) {
      SpokenLine read = read_drills(words_, text(cells[i]), setting_);
      for (SpokenDrill& drill : read.drills) {
        shift(drill, cells[i]);
        line.spoken.drills.push_back(std::move(drill));
      }
    }
  }

  // Nothing but minutes.
  std::optional<double> minutes_in(const Cell& cell) const {
    const Pieces pieces = pieces_of(text(cell));
    const bool minutes = pieces.size() > 1 && pieces[0].is(Piece::Kind::kNumber) &&
                         words_.is(Role::kMinute, pieces, 1, pieces.size()) &&
                         (pieces.size() == 2 || words_.is(Role::kEach, pieces, 2, pieces.size()));
    return minutes ? std::optional(pieces[0].value) : std::nullopt;
  }
  bool names_part(const Cell& cell) const {
    const std::string_view name = text(cell);
    const Pieces pieces = pieces_of(name);
    const bool small =
        std::any_of(name.begin(), name.end(), [](char c) { return c >= 'a' && c <= 'z'; });
    return (!small && name.size() > 1 && !pieces.empty()) ||
           words_.any_of(kPartRoles, pieces, 0, pieces.size());
  }
  // Nothing but an amount: `2 laps each`, `5 rounds`, `3 x 10`.
  bool is_amount(const Cell& cell) const {
    if (is_ordinal(text(cell)) && text(cell).find_first_of("0123456789") == std::string_view::npos)
      return false;
    const SpokenDrill read = read_named(words_, "", text(cell), {});
    const bool rounds =
        read.elements.size() == 1 && read.elements[0].kind == Element::Kind::kRounds;
    return read.notes.empty() && (read.dose.has_value() || rounds);
  }
  // The cell behind a name is how much of it.
  bool is_dose_of(const Cell& name, const Cell& cell) const {
    return cell.end > cell.begin && is_amount(cell) &&
           !read_drills(words_, text(name), {}).has_dose();
  }
  bool is_rest(const Cell& cell) const {
    const SpokenDrill read = read_named(words_, "", text(cell), {});
    return read.notes.empty() && read.elements.size() == 1 &&
           read.elements[0].kind == Element::Kind::kRest;
  }

  // `WARM UP <tab> 20 min`, `7 | Conditioning | 2 sets | 10 mins`, `FLOOR <tab> Forward roll <tab>
  // 6`
  bool part_row(DraftLine& line, const std::vector<Cell>& cells) {
    const auto end = cells.end();
    const auto timed = std::find_if(cells.begin() + 1, end,
                                    [&](const Cell& cell) { return minutes_in(cell).has_value(); });
    const bool several = cells.size() > 2 && is_amount(cells[2]) && !is_amount(cells[1]) &&
                         !timed_is(timed, end, cells[2]);
    // `Stuck in the mud | 4 min`, and `Tag | 5 min` in a warm-up of ten: a game of the part.
    const double least =
        names_part(cells[0]) ? kPartMinutes - 3 : std::max(kPartMinutes, part_minutes_ / 2 + 0.5);
    const bool opens = timed != end && *minutes_in(*timed) >= least &&
                       (names_part(cells[0]) || timed + 1 == end) &&
                       !(cells.size() > 2 && several && !names_part(cells[0]));
    if (!opens && !(several && names_part(cells[0]))) return false;
    own_ = setting_;
    open_part(line, cells[0]);
    const Pieces name = pieces_of(text(cells[0]));
    line.heading.pause = words_.is(Role::kBreak, name, 0, name.size());
    own_.stretch = words_.within(Role::kStretchPart, name, 0, name.size());
    own_.defaults.clear();
    if (!opens) {
      DraftLine drill = line;
      named_row(drill, {cells.begin() + 1, end});
      line.spoken = std::move(drill.spoken);
      return true;
    }
    line.heading.minutes = minutes_in(*timed);
    part_minutes_ = *line.heading.minutes;
    for (auto cell = cells.begin() + 1; cell != end; ++cell) {
      if (cell == timed || cell->begin == cell->end) continue;
      const SpokenLine said = read_drills(words_, text(*cell), {});
      for (const Element& e : said.defaults) {
        if (e.kind == Element::Kind::kRest) own_.defaults.push_back(e);
        const bool sets = e.kind == Element::Kind::kCount && e.unit == Unit::kSets;
        if (!sets || e.values.size() != 1) continue;
        line.spoken.group.emplace();
        line.spoken.group->rounds = e.values.front();
        line.spoken.group->has_rounds = true;
      }
    }
    return true;
  }
  static bool timed_is(std::vector<Cell>::const_iterator timed,
                       std::vector<Cell>::const_iterator end, const Cell& cell) {
    return timed != end && timed->begin == cell.begin;
  }

  // A name, its dose, and what to watch for.
  void named_row(DraftLine& line, const std::vector<Cell>& cells) {
    line.reading = DraftLine::Reading::kDrills;
    line.spoken = {};
    // `Jog / sidesteps <tab> 2 laps each`, `Splits left, right, middle <tab> 40 s`
    const std::string_view both =
        source_.text().substr(cells[0].begin, cells[1].end - cells[0].begin);
    SpokenLine whole = read_drills(words_, replace_all(both, "|", " "), own_);
    const bool all = whole.has_dose() &&
                     std::all_of(whole.drills.begin(), whole.drills.end(),
                                 [](const SpokenDrill& one) { return one.dose.has_value(); });
    const bool sided = whole.drills.size() == 1 && all && whole.drills[0].dose->sides;
    SpokenDrill drill = read_named(words_, text(cells[0]), text(cells[1]), own_);
    const bool plain = !drill.dose || !drill.dose->sides;
    const bool more = !drill.dose && whole.drills.size() == 1 && all;
    if (more || (whole.drills.size() > 1 && all && !whole.group) || (sided && plain)) {
      for (SpokenDrill& one : whole.drills) {
        one.where.begin += cells[0].begin - line.from;
        one.where.end += cells[0].begin - line.from;
        line.spoken.drills.push_back(std::move(one));
      }
      drill = std::move(line.spoken.drills.back());
      line.spoken.drills.pop_back();
    } else {
      drill.where = {cells[0].begin - line.from, cells[1].end - line.from};
    }
    for (std::size_t i = 2; i < cells.size(); ++i) {
      if (cells[i].end == cells[i].begin) continue;
      if (drill.dose && is_rest(cells[i])) {
        drill.dose->rest = read_named(words_, "", text(cells[i]), {}).elements[0].values.front();
        continue;
      }
      drill.notes.emplace_back(replace_all(text(cells[i]), "**", ""));
    }
    line.spoken.drills.push_back(std::move(drill));
  }

  void shift(SpokenDrill& drill, const Cell& cell) const {
    const std::size_t by = cell.begin - line_begin(cell);
    drill.where.begin += by;
    drill.where.end += by;
  }
  std::uint32_t line_begin(const Cell& cell) const {
    return source_.line_start(source_.line_column(cell.begin).line);
  }

  const Lexicon& words_;
  const Source& source_;
  const Setting& setting_;
  Setting own_;              ///< of the part that a row opened
  double part_minutes_ = 0;  ///< of the same; 0: none said
};

}  // namespace

void read_table(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines,
                std::size_t begin, std::size_t end, const Setting& setting) {
  TableReader(words, source, setting).run(lines, begin, end);
}

}  // namespace chalkleaf::draft
