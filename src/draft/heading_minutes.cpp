// Lines that begin or end with minutes: where several do, they are parts.
#include "draft/heading_minutes.h"

#include "base/text.h"
#include "draft/drills.h"
#include "draft/headings.h"
#include "draft/line_scores.h"
#include "draft/weights.h"

namespace chalkleaf::draft {
namespace {

using PKind = Piece::Kind;

}  // namespace

std::optional<MinutesRead> minutes_at(const HeadLine& line, std::size_t at) {
  const auto& [words, pieces, text, of_document] = line;
  MinutesRead out;
  out.begin = at;
  out.bracket = pieces[at].is(PKind::kOpen);
  std::size_t i = out.bracket ? at + 1 : at;
  if (out.bracket) i += words.match(Role::kNameTail, pieces, i, pieces.size());  // `(about 8`
  if (i >= pieces.size() || !pieces[i].is(PKind::kNumber)) return std::nullopt;
  if (i > 0 && pieces[i - 1].is(PKind::kWord) && !pieces[i].space_before) return std::nullopt;
  out.minutes = pieces[i].value;
  if (!pieces[i].whole && out.bracket) return std::nullopt;  // `(11.08)` is a clock
  ++i;
  const std::size_t unit = words.match(Role::kMinute, pieces, i, pieces.size());
  // `splits 2 min right, 2 min left`, `3 min x 2` are doses.
  const auto dose = ElementReader(words, pieces, text)
                        .read(out.begin + (out.bracket ? 1 : 0), pieces.size(), Place::kInside);
  if (!out.bracket && dose && dose->is_amount() && dose->next > i + 2) return std::nullopt;
  i += unit;
  out.bare = unit == 0;
  if (out.bracket) {
    std::size_t close = i;
    while (close < pieces.size() && !pieces[close].is(PKind::kClose)) ++close;
    if (close == pieces.size() || (out.bare && close != i)) return std::nullopt;
    out.end = close + 1;
  } else {
    if (words.is(Role::kEach, pieces, i, pieces.size()) ||
        words.is(Role::kWork, pieces, i, pieces.size())) {
      return std::nullopt;
    }
    // A bare number only at the end or before a colon: `Cool down 8:`
    const bool ends = i == pieces.size() || pieces[i].is(PKind::kColon);
    if (out.bare && !of_document &&
        (!ends || out.minutes < 3 || out.minutes > 60 ||
         words.is(Role::kNameBeforeNumber, pieces, i - 2, pieces.size()) || !pieces[i - 1].whole))
      return std::nullopt;
    out.end = i;
  }
  return out;
}

bool ends_in_minutes(const Lexicon& words, const Source& source, const Line& line) {
  constexpr std::size_t kMost = 9;
  if (line.mark == Line::Mark::kBullet || (line.mark == Line::Mark::kNumber && line.level > 1))
    return false;
  const Pieces pieces = pieces_of(line.words(source).substr(0, 120));
  std::size_t i = 0;
  // `Skill 1: rolls, 15 mins`
  const std::size_t size = pieces.size();
  const bool last = size > 3 && size <= kMost + 2 && pieces[size - 2].is(PKind::kNumber) &&
                    words.match(Role::kMinute, pieces, size - 1, size) == 1;
  while (i < size && !pieces[i].is(PKind::kNumber)) ++i;
  if (last && i + 2 < size && pieces[i].value < 10) i = size - 2;
  if (i == 0 || i + 1 > pieces.size() || i >= kMost || pieces[i].in_words || !pieces[i].whole)
    return false;
  if (pieces[i].value < 3 || pieces[i].value > 60) return false;
  const std::size_t unit = words.match(Role::kMinute, pieces, i + 1, pieces.size());
  const bool dash = pieces[i - 1].is(PKind::kDash) && pieces[i - 1].space_before;
  const std::size_t end = i + 1 + unit;
  const bool column = end < pieces.size() && pieces[end].begin > pieces[end - 1].end + 1;
  return (unit > 0 || dash) && (end == pieces.size() || column);
}

std::optional<ClockBehind> clock_behind(const Source& source, const Line& line) {
  constexpr std::size_t kMostWords = 5;
  const std::string_view text = line.words(source).substr(0, 80);
  if (line.clock || line.blank || line.table) return std::nullopt;
  std::size_t words = 0;
  for (std::size_t at = 0; at < text.size() && words <= kMostWords; ++at) {
    const bool begins = at > 0 && text[at - 1] == ' ' && text[at] != ' ';
    words += begins ? 1 : 0;
    if (!begins || text[at] < '0' || text[at] > '9') continue;
    const auto read = read_clock(text.substr(at));
    const std::size_t end = at + (read ? read->size : 0);
    const bool alone = read && (end >= text.size() || text[end] == ' ' || text[end] == ',' ||
                                text[end - 1] == ':');
    if (!alone || text.substr(at).find_first_of(".:") > 2) return std::nullopt;
    const std::string_view rest = trim(text.substr(end));
    if (!rest.empty() && rest[0] != '(' && rest[0] != ',' && rest[0] != '-') return std::nullopt;
    return ClockBehind{read->clock, line.text + static_cast<std::uint32_t>(at),
                       line.text + static_cast<std::uint32_t>(end)};
  }
  return std::nullopt;
}

bool begins_with_minutes(const Lexicon& words, const Source& source, const Line& line) {
  constexpr std::size_t kMostNamed = 5;
  const std::string_view text = line.words(source).substr(0, kLongestLine);
  const Pieces pieces = spoken_pieces(words, text);
  std::size_t i = 0;
  while (i < pieces.size() && i < kMostNamed && pieces[i].is(PKind::kWord)) ++i;
  if (i > 0 && i < pieces.size() && pieces[i].is(PKind::kComma)) ++i;  // `beams, 15 min, eight`
  if (i == 0 || i >= pieces.size() || !pieces[i].is(PKind::kNumber)) return false;
  const std::size_t unit = words.match(Role::kMinute, pieces, i + 1, pieces.size());
  if (unit == 0 || pieces[i].value < kPartMinutes - 2 || i + 1 + unit >= pieces.size())
    return false;
  return read_drills(words, text.substr(pieces[i + unit].end), {}).has_dose();
}

}  // namespace chalkleaf::draft
