#include "cli/times_table.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/diagnostic_text.h"
#include "base/text.h"

namespace chalkleaf::cli {
namespace {

using reason::DrillTime;
using reason::PartTime;
using reason::Timetable;

constexpr std::size_t kWidest = 60;  // columns of a drill's name and dose; what is longer is cut

/// One line of the table. An empty `time` leaves the rest of the row out.
struct Row {
  std::string clock, what, dose, time, why;
};

// `1:30`, and `0:11.666` where rounding would spoil the sum.
std::string exact_stopwatch(Duration duration) {
  if (duration < Duration()) return "-" + exact_stopwatch(-duration);
  const std::int64_t fraction = duration.in_milliseconds() % 1000;
  const std::string whole = stopwatch_text(duration - Duration::milliseconds(fraction));
  return fraction == 0 ? whole : fmt::format("{}.{:03}", whole, fraction);
}

// The coach's own words on one line.
std::string one_line(std::string_view text) {
  std::string out;
  for (const char c : printable(replace_all(replace_all(text, "\r", " "), "\n", " "))) {
    if (c != ' ' || (!out.empty() && out.back() != ' ')) out += c;
  }
  return std::string(trim(out));
}

// At most kWidest columns, the last of them `…` when something is missing.
std::string cut(std::string text) {
  if (display_width(text) <= kWidest) return text;
  std::size_t end = 0;
  std::size_t columns = 1;  // of the `…`
  while (true) {
    const std::size_t size = decode_utf8(text, end).size;
    columns += display_width(std::string_view(text).substr(end, size));
    if (columns > kWidest) break;
    end += size;
  }
  text.resize(end);
  return std::string(trim(text)) + "…";
}

std::string when(const Timetable& timetable, Duration start) {
  return timetable.start ? clock_text(*timetable.start + start) : exact_stopwatch(start);
}

// The drill's own words behind its colon; a circuit's are its rounds and times.
std::string dose_text(const plan::Drill& drill) {
  if (drill.circuit) return cut(one_line(drill.circuit->span.text()));
  return drill.dose ? cut(one_line(drill.dose->span.text())) : "–";
}

std::string station_reason(const DrillTime& station) {
  std::string why = "each round: " + station.reasoning;
  if (station.changeover > Duration()) {
    why += fmt::format(", then {}", exact_text(station.changeover));
  }
  return why;
}

void add_drill_rows(const Timetable& timetable, const DrillTime& drill, std::vector<Row>& rows) {
  Row row;
  row.clock = when(timetable, drill.start);
  row.what = "  " + cut(one_line(drill.drill->name.text));
  row.dose = dose_text(*drill.drill);
  row.time = exact_stopwatch(drill.length());
  row.why = drill.reasoning;
  if (drill.changeover > Duration()) {
    row.why += fmt::format(" + {} change-over", exact_text(drill.changeover));
  }
  rows.push_back(std::move(row));
  // Without a time of their own, so that the column adds up.
  for (const DrillTime& station : drill.stations) {
    rows.push_back({"", "    " + cut(one_line(station.drill->name.text)), dose_text(*station.drill),
                    "", station_reason(station)});
  }
}

// The line without the mark of its list.
std::string move_text(const plan::KitMove& move) {
  const std::string line = one_line(move.span.text());
  const std::size_t begin = line.find_first_not_of("-*+0123456789.) ");
  return begin == std::string::npos ? line : line.substr(begin);
}

Row move_row(const Timetable& timetable, const reason::KitMoveTime& moved) {
  Row row;
  row.clock = when(timetable, moved.start);
  row.what = "  " + cut(move_text(*moved.move));
  row.dose = "–";
  row.time = exact_stopwatch(moved.length);
  row.why = moved.move->time ? "kit is moved" : "kit is moved in the change-over";
  return row;
}

std::string part_reason(const PartTime& part) {
  if (!part.part->budget) return "";
  const std::string budget = exact_text(part.part->budget->value);
  if (part.drills.empty()) return "the part's own " + budget;
  if (part.planned == part.length) return "of the part's own " + budget;
  return fmt::format("the part's own {}; its lines take {}", budget, exact_stopwatch(part.planned));
}

std::vector<Row> rows_of(const Timetable& timetable) {
  std::vector<Row> rows;
  for (const PartTime& part : timetable.parts) {
    if (!rows.empty()) rows.emplace_back();
    rows.push_back({when(timetable, part.start), cut(one_line(part.part->title.text)), "",
                    exact_stopwatch(part.length), part_reason(part)});
    auto drill = part.drills.begin();
    auto move = part.kit_moves.begin();
    for (const plan::Step& step : part.part->steps) {
      if (std::holds_alternative<plan::Drill>(step)) {
        add_drill_rows(timetable, *drill++, rows);
      } else if (std::holds_alternative<plan::KitMove>(step)) {
        rows.push_back(move_row(timetable, *move++));
      }
    }
  }
  return rows;
}

// The sum with its parts, and what the slot leaves of it.
std::vector<Row> closing_rows(const plan::Session& session, const Timetable& timetable) {
  std::vector<Row> rows(1);
  std::string parts;
  for (const PartTime& part : timetable.parts) {
    if (part.part->station_of) continue;  // beside the others, in the rotation's time
    parts += (parts.empty() ? "" : " + ") + exact_stopwatch(part.length);
  }
  const std::string end = timetable.end ? clock_text(*timetable.end) : "";
  rows.push_back({end, "Sum", "", exact_stopwatch(timetable.total), parts});
  if (!timetable.spare) return rows;
  const bool over = *timetable.spare < Duration();
  const std::string slot = exact_stopwatch(session.slot->value);
  const std::string total = exact_stopwatch(timetable.total);
  rows.push_back({"", "Slot", "", slot, ""});
  rows.push_back({"", over ? "Over" : "Spare", "",
                  exact_stopwatch(over ? -*timetable.spare : *timetable.spare),
                  over ? total + " − " + slot : slot + " − " + total});
  return rows;
}

// `about 9 min, 6 to 13 min; one child works 2 min and waits 5 min: `
std::string part_in_hall(const reason::HallPart& hall) {
  const auto minutes = [](Duration time) {
    return time < Duration::minutes(1) ? exact_text(Duration::seconds(time.rounded_seconds()))
                                       : fmt::format("{} min", time.rounded_minutes());
  };
  std::string out = fmt::format("about {}, from {} to {}", minutes(hall.likely), minutes(hall.low),
                                minutes(hall.high));
  if (hall.waiting > Duration()) {
    out += fmt::format("; one child works {} of it and waits {}", minutes(hall.working),
                       minutes(hall.waiting));
  }
  return out + ": " + hall.why;
}

// What each part takes in a hall with so many, a sentence a line; nothing where nobody knows how
// many come.
std::string hall_lines(const plan::Session& session, const Timetable& timetable) {
  const std::optional<int> gymnasts = session.gymnast_count();
  if (!gymnasts || session.place.value == plan::Place::kHome) return {};
  std::string out;
  for (const PartTime& part : timetable.parts) {
    if (!part.hall) continue;
    out +=
        fmt::format("  {}: {}\n", cut(one_line(part.part->title.text)), part_in_hall(*part.hall));
    for (const reason::HallDrill& drill : part.hall->drills) {
      out += fmt::format("    {}: {}, {}\n", cut(one_line(drill.drill->name.text)),
                         exact_text(drill.likely), drill.why);
    }
  }
  return out.empty() ? out : fmt::format("\nIn the hall, with {} gymnasts\n{}", *gymnasts, out);
}

std::string padded(const std::string& text, std::size_t width) {
  const std::size_t taken = display_width(text);
  return text + std::string(taken < width ? width - taken : 0, ' ');
}

std::string padded_left(const std::string& text, std::size_t width) {
  const std::size_t taken = display_width(text);
  return std::string(taken < width ? width - taken : 0, ' ') + text;
}

std::size_t width_of(const std::vector<Row>& rows, std::string Row::*column) {
  std::size_t widest = 0;
  for (const Row& row : rows) {
    widest = std::max(widest, display_width(row.*column));
  }
  return widest;
}

}  // namespace

std::string times_table(const plan::Session& session, const Timetable& timetable) {
  std::vector<Row> rows = rows_of(timetable);
  for (Row& row : closing_rows(session, timetable)) rows.push_back(std::move(row));
  const std::size_t clock = width_of(rows, &Row::clock);
  const std::size_t what = width_of(rows, &Row::what);
  const std::size_t dose = width_of(rows, &Row::dose);
  const std::size_t time = width_of(rows, &Row::time);
  std::string out = one_line(session.title.text) + "\n\n";
  for (const Row& row : rows) {
    std::string line = padded_left(row.clock, clock) + "  " + padded(row.what, what) + "  " +
                       padded(row.dose, dose) + "  " + padded_left(row.time, time) + "  " + row.why;
    while (line.ends_with(' ')) line.pop_back();
    out += line + "\n";
  }
  return out + hall_lines(session, timetable);
}

}  // namespace chalkleaf::cli
