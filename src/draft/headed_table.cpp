// See the header.
#include "draft/headed_table.h"

#include <algorithm>

#include "base/text.h"
#include "draft/line_scores.h"

namespace chalkleaf::draft {
namespace {

enum class Column { kClock, kPart, kName, kSets, kReps, kTime, kMinutes, kRest, kLevel, kNote };

Column column_of(const Lexicon& words, std::string_view head) {
  const Pieces pieces = pieces_of(head);
  constexpr std::size_t kLongestHead = 4;  // pieces, with a bracket around the unit
  if (pieces.empty() || pieces.size() > kLongestHead) return Column::kNote;
  const auto begins = [&](Role role) { return words.match(role, pieces, 0, pieces.size()) > 0; };
  const auto whole = [&](Role role) {
    return words.match(role, pieces, 0, pieces.size()) == pieces.size();
  };
  if (whole(Role::kColumnPart)) return Column::kPart;
  if (whole(Role::kColumnDrill)) return Column::kName;
  if (whole(Role::kLevelOfThree)) return Column::kLevel;
  if (begins(Role::kSet) || begins(Role::kRound)) return Column::kSets;
  if (begins(Role::kColumnDose)) return Column::kReps;
  if (begins(Role::kRepetition) && !begins(Role::kTimes)) return Column::kReps;
  if (begins(Role::kRestBefore)) return Column::kRest;
  if (begins(Role::kMinute)) return Column::kMinutes;
  if (begins(Role::kTimes) || begins(Role::kSecond) || begins(Role::kHold)) return Column::kTime;
  return Column::kNote;
}

bool has_digit(std::string_view text) {
  return text.find_first_of("0123456789") != std::string_view::npos;
}

// The columns a row of heads names; empty where it is no such row.
std::vector<Column> columns_named(const Lexicon& words, const Source& source,
                                  const std::vector<Cell>& cells) {
  std::vector<Column> out;
  for (const Cell& cell : cells) {
    const std::string_view text = text_of(source, cell);
    if (has_digit(text)) return {};
    out.push_back(column_of(words, text));
  }
  const auto has = [&](Column one) { return std::find(out.begin(), out.end(), one) != out.end(); };
  const bool levels = std::count(out.begin(), out.end(), Column::kLevel) > 1;
  if (out.size() < 3 || !(has(Column::kSets) || has(Column::kReps) || levels)) return {};
  // Of two columns of names the first has those of the parts.
  const auto first = std::find(out.begin(), out.end(), Column::kName);
  if (first != out.end()) {
    if (!has(Column::kPart) && std::count(first, out.end(), Column::kName) > 1)
      *first = Column::kPart;
    return out;
  }
  if (levels && out[0] == Column::kNote) out[0] = Column::kName;
  if (levels) return has(Column::kName) ? out : std::vector<Column>();
  // A first column that is called whatever it is called has the names.
  const bool amounts = has(Column::kReps) || has(Column::kTime);
  if (out[0] != Column::kNote || !has(Column::kSets) || !amounts) return {};
  out[0] = Column::kName;
  return out;
}

std::optional<Clock> clock_in(std::string_view cell) {
  const auto read = read_clock(cell);
  return read && read->size == cell.size() ? std::optional(read->clock) : std::nullopt;
}

// A column of times of day, below a head that only says `Time`.
void find_clocks(const Source& source, const std::vector<DraftLine>& lines, std::size_t begin,
                 std::size_t end, std::vector<Column>& columns) {
  for (std::size_t i = begin; i < end; ++i) {
    const std::vector<Cell> cells = cells_of(source, lines[i].line);
    for (std::size_t c = 0; c < std::min<std::size_t>({2, cells.size(), columns.size()}); ++c) {
      const bool open = columns[c] == Column::kTime || columns[c] == Column::kNote;
      if (open && clock_in(text_of(source, cells[c]))) columns[c] = Column::kClock;
    }
  }
}

class HeadedTable {
 public:
  HeadedTable(const Lexicon& words, const Source& source, const Setting& setting,
              std::vector<Column> columns, std::vector<std::string_view> heads)
      : words_(words),
        source_(source),
        setting_(setting),
        own_(setting),
        columns_(std::move(columns)),
        levels_(std::move(heads)) {
    const auto named = std::find(columns_.begin(), columns_.end(), Column::kName);
    name_ = static_cast<std::size_t>(named - columns_.begin());
    const auto clock = std::find(columns_.begin(), columns_.end(), Column::kClock);
    if (clock != columns_.end()) clock_ = static_cast<std::size_t>(clock - columns_.begin());
    const auto part = std::find(columns_.begin(), columns_.end(), Column::kPart);
    if (part != columns_.end()) part_ = static_cast<std::size_t>(part - columns_.begin());
  }

  // A column of times that only the rows which open a part have is that of their minutes.
  void look_at(const std::vector<DraftLine>& lines, std::size_t begin, std::size_t end) {
    if (!part_) return;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      if (columns_[c] != Column::kTime) continue;
      bool only_parts = true;
      for (std::size_t i = begin; i < end && only_parts; ++i) {
        const std::vector<Cell> cells = cells_of(source_, lines[i].line);
        if (said(cells, c).empty() || is_delimiter(row_of(source_, lines[i].line))) continue;
        only_parts = !said(cells, *part_).empty();
      }
      if (only_parts) columns_[c] = Column::kMinutes;
    }
  }

  void read(DraftLine& line) {
    line.reading = DraftLine::Reading::kTyped;
    if (is_delimiter(row_of(source_, line.line))) return;
    const std::vector<Cell> cells = cells_of(source_, line.line);
    line.from = line.line.begin;
    line.spoken = {};
    if (std::find(columns_.begin(), columns_.end(), Column::kLevel) != columns_.end())
      return read_levels(line, cells);
    const std::string_view part = part_ ? said(cells, *part_) : std::string_view();
    if (!part.empty()) begin_part(line, cells);
    if (name_ < cells.size() && !said(cells, name_).empty()) {
      if (part.empty()) line.reading = DraftLine::Reading::kDrills;
      line.spoken.drills.push_back(drill(line, cells, name_));
    } else if (!part.empty()) {
      // `Rebounds | | | 2 | 10`, `Home | | | | | bring the log books`
      SpokenDrill one = drill(line, cells, *part_);
      if (one.dose || !one.notes.empty()) line.spoken.drills.push_back(std::move(one));
    } else if (std::any_of(cells.begin(), cells.end(),
                           [](const Cell& c) { return c.end > c.begin; })) {
      line.reading = DraftLine::Reading::kRemark;
    }
  }

 private:
  // `Cast | 2 x 5 | 3 x 5 | 3 x 8`, below `Bronze | Silver | Gold`: what each level does of it.
  void read_levels(DraftLine& line, const std::vector<Cell>& cells) const {
    const std::string_view name = said(cells, name_);
    line.reading = name.empty() ? DraftLine::Reading::kRemark : DraftLine::Reading::kDrills;
    if (name.empty()) return;
    std::vector<std::string> notes;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const std::string_view text = said(cells, i);
      if (i == name_ || text.empty()) continue;
      if (i >= columns_.size() || columns_[i] != Column::kLevel) {
        notes.emplace_back(text);
        continue;
      }
      const std::string whole = std::string(name) + " – " + std::string(text);
      SpokenDrill one = read_named(words_, name, text, own_);
      if (!one.dose || !one.notes.empty()) {
        // `wall walk x3`: which way of it is part of the name.
        SpokenLine read = read_drills(words_, text, own_);
        if (read.drills.size() == 1) {
          one = std::move(read.drills.front());
          one.name = std::string(name) + (one.name.empty() ? "" : " – " + one.name);
        }
      }
      one.label = std::string(levels_[i]);
      one.typed = whole;
      one.where = {cells[i].begin - line.from, cells[i].end - line.from};
      line.spoken.drills.push_back(std::move(one));
    }
    if (line.spoken.drills.empty()) {
      line.spoken.drills.push_back(drill(line, cells, name_));
    } else {
      line.spoken.drills.back().notes.insert(line.spoken.drills.back().notes.end(), notes.begin(),
                                             notes.end());
    }
  }

  std::string_view said(const std::vector<Cell>& cells, std::size_t at) const {
    if (at >= cells.size()) return {};
    const std::string_view text = text_of(source_, cells[at]);
    return text.find_first_not_of("-– ") == std::string_view::npos ? std::string_view() : text;
  }
  void begin_part(DraftLine& line, const std::vector<Cell>& cells) {
    open_part(line, cells[*part_]);
    const Pieces pieces = pieces_of(text_of(source_, cells[*part_]));
    line.heading.pause = words_.is(Role::kBreak, pieces, 0, pieces.size());
    line.heading.stretch = words_.within(Role::kStretchPart, pieces, 0, pieces.size());
    if (clock_) line.line.clock = clock_in(said(cells, *clock_));
    own_ = setting_;
    own_.defaults.clear();
    own_.stretch = line.heading.stretch;
    for (std::size_t i = 0; i < std::min(cells.size(), columns_.size()); ++i) {
      if (columns_[i] != Column::kMinutes) continue;
      const Pieces minutes = pieces_of(said(cells, i));
      if (!minutes.empty() && minutes[0].is(Piece::Kind::kNumber))
        line.heading.minutes = minutes[0].value;
    }
  }

  // Each row's dose is put together by its columns.
  SpokenDrill drill(const DraftLine& line, const std::vector<Cell>& cells, std::size_t name) const {
    std::string sets;
    std::string amount;
    std::string rest;
    std::string sides;
    std::vector<std::string> notes;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const std::string value(said(cells, i));
      const Column column = i < columns_.size() ? columns_[i] : Column::kNote;
      const bool of_part =
          part_ && !said(cells, *part_).empty() &&
          (column == Column::kPart || column == Column::kClock || column == Column::kMinutes);
      if (i == name || value.empty() || of_part) continue;
      const bool bare = value.find_first_not_of("0123456789-") == std::string::npos;
      if (column == Column::kSets && bare) {
        sets = value;
      } else if ((column == Column::kReps || column == Column::kTime) && amount.empty()) {
        const std::string unit = column == Column::kReps ? words_.first(Role::kRepetition) : "s";
        amount = bare ? value + " " + unit : value;
      } else if (column == Column::kMinutes && amount.empty()) {
        amount = bare ? value + " min" : value;
      } else if (column == Column::kRest) {
        rest = ", " + words_.first(Role::kRestBefore) + " " + value;
      } else if (rest.empty() && is_only(value, Element::Kind::kRest)) {
        rest = ", " + value;
      } else if (sides.empty() && is_only(value, Element::Kind::kSides)) {
        sides = " " + value;
      } else {
        notes.push_back(value);
      }
    }
    std::string dose = sets.empty() ? amount : amount.empty() ? sets : sets + " x " + amount;
    dose += sides;
    SpokenDrill out = read_named(words_, text_of(source_, cells[name]), dose + rest, own_);
    out.where = {cells[name].begin - line.from, cells.back().end - line.from};
    out.notes.insert(out.notes.end(), notes.begin(), notes.end());
    return out;
  }
  bool is_only(std::string_view text, Element::Kind kind) const {
    const SpokenDrill read = read_named(words_, "", text, {});
    return read.notes.empty() && read.elements.size() == 1 && read.elements[0].kind == kind;
  }

  const Lexicon& words_;
  const Source& source_;
  const Setting& setting_;
  Setting own_;  ///< of the part that a row opened
  std::vector<Column> columns_;
  std::vector<std::string_view> levels_;  ///< the heads' texts
  std::size_t name_ = 0;
  std::optional<std::size_t> part_ = {};
  std::optional<std::size_t> clock_ = {};
};

}  // namespace

void open_part(DraftLine& line, const Cell& name) {
  line.reading = DraftLine::Reading::kHeading;
  line.heading = {};
  line.heading.name_begin = name.begin;
  line.heading.name_end = name.end;
  line.heading.rest = line.heading.rest_end = line.line.end;
  line.spoken = {};
}

bool is_table_head(const Lexicon& words, const Source& source, const std::vector<Cell>& cells) {
  return !columns_named(words, source, cells).empty();
}

bool read_headed_table(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines,
                       std::size_t begin, std::size_t end, const Setting& setting) {
  const std::size_t head = lines[begin].line.head.value_or(begin);
  const std::size_t first = head == begin ? begin + 1 : begin;
  std::vector<Column> columns = columns_named(words, source, cells_of(source, lines[head].line));
  if (columns.empty()) return false;
  find_clocks(source, lines, first, end, columns);
  const auto has = [&](Column one) {
    return std::find(columns.begin(), columns.end(), one) != columns.end();
  };
  // Without a column of parts, what stands behind a time of day is one.
  if (has(Column::kClock) && !has(Column::kPart)) return false;
  std::vector<std::string_view> heads;
  for (const Cell& cell : cells_of(source, lines[head].line))
    heads.push_back(text_of(source, cell));
  HeadedTable table(words, source, setting, std::move(columns), std::move(heads));
  table.look_at(lines, first, end);
  lines[begin].reading = DraftLine::Reading::kTyped;
  for (std::size_t i = first; i < end; ++i) table.read(lines[i]);
  return true;
}

}  // namespace chalkleaf::draft
