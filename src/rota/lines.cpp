// See the header.
#include "rota/lines.h"

#include <algorithm>
#include <string>

#include "base/spoken_time.h"
#include "base/text.h"

namespace chalkleaf::rota {
namespace {

// Gyms are open in the afternoon; who trains at seven in the morning writes `7am`.
int in_the_day(int minutes) { return minutes >= 60 && minutes < 8 * 60 ? minutes + 720 : minutes; }

std::optional<SpokenTime> time_at(std::string_view text, std::size_t at) {
  auto out = spoken_time(text, at);
  if (!out || out->half_said) return out;
  // `1.15m` is a height.
  if (out->end < text.size() && (is_letter(text[out->end]) || text[out->end] == '%')) {
    const auto [code, size] = decode_utf8(text, out->end);
    if (code != 0x2013 && code != 0x2014 && code != 0xA0) return std::nullopt;
  }
  if (!out->four_digits) out->minutes = in_the_day(out->minutes);
  return out;
}

std::size_t dash_size(std::string_view text, std::size_t at) {
  for (const std::string_view dash : {"-", "–", "—"}) {
    if (text.substr(std::min(at, text.size())).starts_with(dash)) return dash.size();
  }
  return 0;
}

std::size_t gap_size(std::string_view all, std::uint32_t at, std::uint32_t end) {
  std::uint32_t size = 0;
  bool tab = false;
  while (at + size < end && (all[at + size] == ' ' || all[at + size] == '\t')) {
    tab = tab || all[at + size] == '\t';
    ++size;
  }
  return tab || size > 1 ? size : 0;
}

std::size_t column_of(const Source& source, std::uint32_t line_begin, std::uint32_t at) {
  std::size_t out = 0;
  for (std::uint32_t i = line_begin; i < at; ++i) {
    const char c = source.text()[i];
    const bool continues = (static_cast<unsigned char>(c) & 0xC0U) == 0x80;
    out = c == '\t' ? (out / 8 + 1) * 8 : out + (continues ? 0 : 1);
  }
  return out;
}

void cut_columns(const Source& source, std::uint32_t start, Line& line) {
  std::uint32_t begin = line.text;
  const auto add = [&](std::uint32_t end) {
    if (end > begin) line.cells.push_back({begin, end, column_of(source, start, begin)});
  };
  for (std::uint32_t at = line.text; at < line.end; ++at) {
    const auto gap = static_cast<std::uint32_t>(gap_size(source.text(), at, line.end));
    if (gap == 0) continue;
    add(at);
    begin = at + gap;
    at += gap - 1;
  }
  add(line.end);
}

void cut_pipes(const Source& source, Line& line) {
  std::uint32_t at = line.begin;
  const std::string_view all = source.text();
  while (at < line.end) {
    const std::uint32_t from = at + 1;
    std::uint32_t to = from;
    while (to < line.end && all[to] != '|') ++to;
    if (to == line.end && trim(all.substr(from, to - from)).empty()) break;
    line.cells.push_back(trimmed(source, from, to));
    at = to;
  }
}

void read_margin(const Source& source, Line& line) {
  const std::string_view all = source.text();
  std::uint32_t at = line.begin;
  while (at < line.end && all[at] == '#' && line.hashes < 6) {
    ++at;
    ++line.hashes;
  }
  if (line.hashes == 0 && line.end > at + 1 &&
      (all[at] == '-' || all[at] == '*' || all[at] == '+') && all[at + 1] == ' ') {
    line.bullet = true;
    ++at;
  }
  at = static_cast<std::uint32_t>(behind_spaces(all, at));
  line.text = std::min(at, line.end);
  const auto clock = read_clock(all.substr(line.text, line.end - line.text));
  if (!clock) return;
  line.clock = clock->clock;
  line.label = trimmed(source, line.text, line.text + static_cast<std::uint32_t>(clock->size));
  std::uint32_t next = line.text + static_cast<std::uint32_t>(clock->size);
  while (next < line.end && (all[next] == ' ' || all[next] == '\t' || all[next] == ':')) ++next;
  line.text = next;
}

}  // namespace

std::optional<ClockRead> read_clock(std::string_view text) {
  const auto first = time_at(text, 0);
  if (!first) return std::nullopt;
  ClockRead out{{first->minutes, std::nullopt}, first->end};
  const std::size_t dash = behind_spaces(text, first->end);
  if (const std::size_t size = dash_size(text, dash)) {
    if (const auto second = time_at(text, behind_spaces(text, dash + size))) {
      out.clock.until = second->minutes;
      out.size = second->end;
    }
  }
  return out;
}

Cell trimmed(const Source& source, std::uint32_t begin, std::uint32_t end) {
  const std::string_view all = source.text();
  while (begin < end && is_blank(all[begin])) ++begin;
  while (end > begin && is_blank(all[end - 1])) --end;
  return {begin, end, 0};
}

std::vector<Line> lines_of(const Source& source) {
  std::vector<Line> out;
  for (std::uint32_t number = 1; number <= source.line_count(); ++number) {
    const std::uint32_t start = source.line_start(number);
    const auto size = static_cast<std::uint32_t>(source.line(number).size());
    const Cell all = trimmed(source, start, start + size);
    Line line;
    line.number = number;
    line.begin = line.text = all.begin;
    line.end = all.end;
    line.blank = all.empty();
    if (!line.blank) {
      const std::string_view text = source.text().substr(line.begin, line.end - line.begin);
      line.pipe = text[0] == '|';
      line.rule = text.find('-') != std::string_view::npos &&
                  text.find_first_not_of("|:- \t+=") == std::string_view::npos;
      if (line.pipe) {
        cut_pipes(source, line);
      } else {
        read_margin(source, line);
        cut_columns(source, start, line);
      }
    }
    out.push_back(std::move(line));
  }
  return out;
}

}  // namespace chalkleaf::rota
