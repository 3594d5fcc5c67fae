// See the header.
#include "draft/headings.h"

#include <algorithm>

#include "base/text.h"
#include "draft/drills.h"
#include "draft/heading_minutes.h"
#include "draft/weights.h"

namespace chalkleaf::draft {
namespace {

using PKind = Piece::Kind;

class HeadingReader {
 public:
  HeadingReader(const Lexicon& words, const Source& source, const Line& line, const Habits& habits)
      : words_(words),
        line_(line),
        habits_(habits),
        text_(line.words(source)),
        pieces_(spoken_pieces(words, text_)),
        ends_(habits.minutes && ends_in_minutes(words, source, line)) {}

  HeadingRead run() {
    out_.name_begin = out_.name_end = line_.text;
    out_.rest = out_.rest_end = line_.end;
    if (pieces_.empty()) return out_;
    if (is_counter()) return counter();
    find_phrase();
    if (front_) return with_minutes_in_front();
    find_end();
    judge();
    return out_;
  }

 private:
  std::uint32_t at_piece(std::size_t i) const {
    return i < pieces_.size() ? line_.text + static_cast<std::uint32_t>(pieces_[i].begin)
                              : line_.end;
  }

  // `10 min warm up`, `(15) floor`, `5' stretch`, where the word that opens the part ends the head.
  void find_minutes_in_front() {
    if (line_.clock) return;
    const bool open = pieces_[0].is(PKind::kOpen);
    const std::size_t number = open ? 1 : 0;
    if (number >= pieces_.size() || !pieces_[number].is(PKind::kNumber)) return;
    std::size_t i = number + 1;
    const std::size_t unit = words_.match(Role::kMinute, pieces_, i, pieces_.size());
    i += unit;
    const bool close = i < pieces_.size() && pieces_[i].is(PKind::kClose);
    if ((unit == 0 && !(open && close)) || (open && !close)) return;
    if (open) ++i;
    while (i < pieces_.size() &&
           (is_separator(i) || words_.is(Role::kOf, pieces_, i, pieces_.size())))
      ++i;
    const std::size_t phrase = words_.match_part(pieces_, i, pieces_.size());
    const std::size_t end = i + phrase;
    const bool ends = end == pieces_.size() || is_separator(end) || pieces_[end].is(PKind::kOpen);
    if (phrase == 0 || !ends || pieces_[number].value < 2 || pieces_[number].value > 90) return;
    first_ = i;
    MinutesRead front;
    front.end = i;
    front.minutes = pieces_[number].value;
    front_ = front;
  }

  void find_phrase() {
    find_minutes_in_front();
    phrase_ = words_.match_part(pieces_, first_, pieces_.size());
    // `handstand forward roll 5 goes` begins with a move, not with a part.
    const bool move = phrase_ > 0 && phrase_ < pieces_.size() &&
                      pieces_[phrase_].is(PKind::kWord) &&
                      (words_.match(Role::kMove, pieces_, 0, pieces_.size()) >= phrase_ ||
                       words_.match(Role::kStatic, pieces_, 0, pieces_.size()) >= phrase_) &&
                      !words_.is(Role::kMinute, pieces_, phrase_, pieces_.size()) &&
                      !words_.is(Role::kAnd, pieces_, phrase_, pieces_.size());
    if (move && !words_.is(Role::kWarmUp, pieces_, 0, pieces_.size()) &&
        !words_.is(Role::kCoolDown, pieces_, 0, pieces_.size()) &&
        !words_.is(Role::kStretchPart, pieces_, 0, pieces_.size()))
      phrase_ = 0;
    // `cool down + stretch`
    while (phrase_ > 0 && phrase_ + 1 < pieces_.size() &&
           words_.is(Role::kAnd, pieces_, phrase_, pieces_.size())) {
      const std::size_t more = words_.match_part(pieces_, phrase_ + 1, pieces_.size());
      if (more == 0) break;
      phrase_ += 1 + more;
    }
    warm_or_cool_ = words_.is(Role::kWarmUp, pieces_, 0, pieces_.size()) ||
                    words_.is(Role::kCoolDown, pieces_, 0, pieces_.size());
  }

  HeadingRead with_minutes_in_front() {
    out_.evidence = kWeights.minutes_right_behind + kWeights.part_word;
    if (line_.mark == Line::Mark::kBullet) out_.evidence += kWeights.bullet;
    out_.strong = true;
    out_.name_begin = at_piece(first_);
    out_.name_end = line_.text + static_cast<std::uint32_t>(pieces_[first_ + phrase_ - 1].end);
    out_.minutes = front_->minutes;
    std::size_t rest = first_ + phrase_;
    while (rest < pieces_.size() && is_separator(rest)) ++rest;
    out_.rest = at_piece(rest);
    out_.pause = words_.is(Role::kBreak, pieces_, first_, pieces_.size());
    out_.stretch = words_.is(Role::kStretchPart, pieces_, first_, pieces_.size());
    return out_;
  }

  // `Day 1`, `Task 2:`, `Monday:`, and nothing else on the line.
  bool is_counter() const {
    std::size_t size = pieces_.size();
    if (size > 1 && (pieces_[size - 1].is(PKind::kColon) || pieces_[size - 1].is(PKind::kStop)))
      --size;
    const bool counted = size == 2 && words_.match(Role::kCounter, pieces_, 0, 1) == 1 &&
                         (pieces_[1].is(PKind::kNumber) || pieces_[1].text.size() == 1);
    return counted || (size == 1 && words_.match(Role::kWeekday, pieces_, 0, 1) == 1);
  }
  HeadingRead counter() {
    out_.evidence = kWeights.part_word + kWeights.whole_part_word;
    if (line_.mark == Line::Mark::kHash) out_.evidence += kWeights.hash;
    if (line_.bold) out_.evidence += kWeights.bold;
    if (line_.mark == Line::Mark::kBullet) out_.evidence += kWeights.bullet;
    out_.strong = true;
    const bool marked = !pieces_.back().is(PKind::kWord) && !pieces_.back().is(PKind::kNumber);
    out_.name_end =
        line_.text + static_cast<std::uint32_t>(pieces_[pieces_.size() - (marked ? 2 : 1)].end);
    return out_;
  }

  std::optional<MinutesRead> minutes_at(std::size_t at) const {
    return draft::minutes_at({words_, pieces_, text_, ends_}, at);
  }

  bool spaced_dash(std::size_t i) const {
    return pieces_[i].is(PKind::kDash) && (pieces_[i].space_before || pieces_[i].space_after);
  }

  // The head ends at minutes, a colon, a dash, a full stop or a comma, or is the phrase alone.
  void find_end() {
    std::size_t end = pieces_.size();
    std::size_t rest = pieces_.size();
    bool cut = false;
    for (std::size_t i = 0; i < pieces_.size() && !cut; ++i) {
      if (i > 0 || pieces_[i].is(PKind::kOpen)) {
        if (const auto minutes = minutes_at(i); minutes && i > 0 && is_of_part(*minutes)) {
          minutes_ = minutes;
          end = i;
          rest = minutes->end;
          cut = true;
          break;
        }
      }
      if (i > 0 && line_.clock_end > 0 && at_piece(i) >= line_.clock_begin) {
        end = i;
        rest = i;
        while (rest < pieces_.size() && at_piece(rest) < line_.clock_end) ++rest;
        if (const auto minutes = rest < pieces_.size() ? minutes_at(rest) : std::nullopt;
            minutes && minutes->bracket) {
          minutes_ = minutes;  // `Vault 10.20 (20)`
          rest = minutes->end;
        }
        break;
      }
      if (i > 0 && is_gap(i)) {
        end = i;
        rest = i;
        gap_ = true;
        break;
      }
      const Piece& piece = pieces_[i];
      const bool mark = piece.is(PKind::kColon) || spaced_dash(i) || piece.is(PKind::kComma) ||
                        (piece.is(PKind::kStop) && i + 1 < pieces_.size()) ||
                        piece.is(PKind::kSemicolon);
      const bool before_minutes = i + 1 < pieces_.size() && pieces_[i + 1].is(PKind::kNumber);
      if (mark && i > 0 && (!ends_ || before_minutes || piece.is(PKind::kColon))) {
        // `Warm-up, 15 minutes.`, `Cooling – 5 mins : …`
        std::size_t behind = i + 1;  // `LINE SHAPES :: 15 min`
        while (behind < pieces_.size() && pieces_[behind].is(PKind::kColon)) ++behind;
        if (const auto minutes = behind < pieces_.size() ? minutes_at(behind) : std::nullopt;
            minutes && (!minutes->bare || (habits_.minutes && ends_)) &&
            (minutes->end == pieces_.size() || is_separator(minutes->end) || ends_ ||
             pieces_[minutes->end].is(PKind::kOpen))) {
          minutes_ = minutes;
          end = i;
          rest = minutes->end;
          cut = true;
          break;
        }
        colon_ = piece.is(PKind::kColon) || spaced_dash(i);
        comma_ = piece.is(PKind::kComma);
        end = i;
        rest = i + 1;
        cut = true;
      } else if (piece.is(PKind::kOpen) && i > 0) {
        // `BARS (Sam)`, `Three stations, 8 minutes each (11.20)`
        std::size_t close = i;
        while (close < pieces_.size() && !pieces_[close].is(PKind::kClose)) ++close;
        i = std::min(close, pieces_.size() - 1);
      }
    }
    // Minutes at the very end of the line: `2 points, 3 points, show your neighbour (6)`.
    if (!minutes_ && pieces_.size() > 3) {
      for (std::size_t i = pieces_.size() - 1; i > 0 && i + 5 > pieces_.size(); --i) {
        const auto minutes = minutes_at(i);
        if (!minutes || minutes->end != pieces_.size()) continue;
        // `Main activity in 4 rows – 15 mins`
        const bool behind_dash = !minutes->bare && spaced_dash(i - 1) &&
                                 (phrase_ > 0 || line_.mark == Line::Mark::kHash);
        const bool listed = line_.mark == Line::Mark::kNumber || line_.clock || phrase_ > 0;
        const bool numbered = line_.mark == Line::Mark::kNumber && line_.level == 1 &&
                              minutes->minutes >= kPartMinutes - 1;
        const bool behind_mark =
            !minutes->bare && (line_.clock || numbered || ends_) &&
            (pieces_[i - 1].is(PKind::kStop) || pieces_[i - 1].is(PKind::kComma));
        if ((minutes->bracket && (listed || !minutes->bare)) || behind_dash || behind_mark) {
          trailing_ = minutes;
          break;
        }
      }
    }
    head_ = end;
    while (rest < pieces_.size() && is_separator(rest)) ++rest;
    rest_ = rest;
  }
  // A tab, or so many spaces that a new column begins.
  bool is_gap(std::size_t i) const {
    const std::string_view between =
        text_.substr(pieces_[i - 1].end, pieces_[i].begin - pieces_[i - 1].end);
    return between.find('\t') != std::string_view::npos || between.size() > 2;
  }
  // `warm up tag 4 mins then …`, `stretch splits 1 min, pike 1 min` are minutes of a drill.
  bool is_of_part(const MinutesRead& minutes) const {
    if (habits_.minutes_lead && leads(minutes)) return true;
    const bool words_between = phrase_ > 0 && phrase_ < minutes.begin;
    const bool doses_behind =
        read_drills(words_, text_.substr(pieces_[minutes.end - 1].end), {}).has_dose();
    const bool goes_on = minutes.end < pieces_.size() && doses_behind &&
                         (pieces_[minutes.end].is(PKind::kComma) ||
                          words_.is(Role::kThen, pieces_, minutes.end, pieces_.size()));
    const bool opens = phrase_ > 0 || line_.clock || line_.mark == Line::Mark::kHash;
    // `game stuck in mud 5 min, cool down`: where words alone open parts.
    const bool comma = minutes.end < pieces_.size() && pieces_[minutes.end].is(PKind::kComma);
    if (habits_.weak_parts && words_between && comma && !minutes.bracket) return false;
    return (minutes.bracket && opens) || !goes_on || (!minutes.bracket && !words_between);
  }
  // A dose or rounds within the head do not belong to the name: `Strength 2 rounds: …`.
  std::size_t before_amounts(std::size_t head) const {
    const ElementReader reader(words_, pieces_, text_);
    bool bracket = false;
    for (std::size_t i = 1; i < head; ++i) {
      bracket = (bracket || pieces_[i].is(PKind::kOpen)) && !pieces_[i].is(PKind::kClose);
      if (bracket) continue;
      const auto found = reader.read(i, pieces_.size(), Place::kInside);
      if (!found) continue;
      const bool group =
          found->kind == Element::Kind::kRounds || found->kind == Element::Kind::kOnOff ||
          found->kind == Element::Kind::kEmom || found->kind == Element::Kind::kAsMany;
      const bool side = found->kind == Element::Kind::kSides;
      if (group || ((side || found->is_amount()) && (phrase_ > 0 || line_.clock))) return i;
      i = found->next - 1;
    }
    return head;
  }
  bool is_separator(std::size_t i) const {
    const Piece& piece = pieces_[i];
    return piece.is(PKind::kColon) || piece.is(PKind::kDash) || piece.is(PKind::kComma) ||
           piece.is(PKind::kStop);
  }

  bool capitals(std::size_t end) const {
    if (end == 0) return false;
    const std::string_view head = text_.substr(0, pieces_[end - 1].end);
    std::size_t big = 0;
    for (const char c : head) {
      if (c >= 'a' && c <= 'z') return false;
      if (c >= 'A' && c <= 'Z') ++big;
    }
    return big > 1;
  }
  // The words in capitals at the begin: `WARM UP all together`.
  std::size_t capital_words() const {
    std::size_t i = 0;
    for (; i < pieces_.size() && i < 4; ++i) {
      const std::string_view raw =
          text_.substr(pieces_[i].begin, pieces_[i].end - pieces_[i].begin);
      if (!pieces_[i].is(PKind::kWord) || raw != upper(raw) || raw.size() < 2) break;
    }
    return i;
  }
  static std::string upper(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
      if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    }
    return out;
  }

  void judge() {
    double score = 0;
    std::size_t head = head_;
    std::size_t rest = rest_;
    const bool phrase = phrase_ > 0;
    const bool whole = phrase && phrase_ >= words_in(head);
    // `CONDITIONING CIRCUIT 45 secs on …`: the words that open a part are set off from the rest.
    const bool set_off = phrase && !habits_.capitals && capital_words() >= phrase_ && !whole;
    // A word that opens parts, and right behind it drills: `floor fwd roll x5`.
    const bool runs_on = phrase && !set_off && !whole && !minutes_ && !trailing_ && !line_.clock;
    if (line_.clock) score += kWeights.clock;
    if (line_.mark == Line::Mark::kHash) score += kWeights.hash;
    if (line_.bold) score += kWeights.bold;
    const bool caps = !habits_.capitals && capitals(head) && head < 6;
    if (caps || set_off) score += kWeights.capitals;
    if (phrase) score += kWeights.part_word;
    if (whole) score += kWeights.whole_part_word;
    if (minutes_)
      score += minutes_->bracket                            ? kWeights.minutes_in_brackets
               : phrase                                     ? kWeights.minutes
               : ends_ && minutes_->minutes >= kPartMinutes ? kWeights.break_with_minutes
               : heads_list()                               ? kWeights.break_with_minutes
               : heads_line()                               ? kWeights.minutes_in_brackets
               : heads_prose()                              ? kWeights.minutes_of_prose
                                                            : kWeights.minutes_alone;
    const bool right_behind = minutes_ && phrase && phrase_ == minutes_->begin;
    if (habits_.minutes_lead && minutes_ && leads(*minutes_)) score += kWeights.minutes_lead;
    if (right_behind) score += kWeights.minutes_right_behind - kWeights.minutes;
    if (words_.is(Role::kBreak, pieces_, 0, pieces_.size())) {
      score += right_behind ? kWeights.break_with_minutes : kWeights.break_word;
    }
    const bool whole_line =
        minutes_ && minutes_->end == pieces_.size() && minutes_->minutes >= kLongMinutes;
    if (whole_line && head < 4) score += kWeights.long_minutes;
    if (trailing_) score += kWeights.minutes_in_brackets;
    const bool emoji = line_.emoji && minutes_ && minutes_->minutes >= kPartMinutes;
    if (line_.mark == Line::Mark::kBullet && !emoji) score += kWeights.bullet;
    if (emoji) score += kWeights.emoji_with_minutes;
    if (line_.indent > habits_.margin + 1) score += kWeights.indent;
    const bool alone = rest >= pieces_.size();
    if (alone && text_.ends_with(':')) score += kWeights.colon_at_end;
    if (words_in(head) > kLongestHead && !line_.clock && !runs_on && !set_off && !heads_prose())
      score += kWeights.long_head;
    if (alone && (text_.ends_with('.') || text_.ends_with('!'))) score += kWeights.sentence;
    if (words_.is(Role::kRemark, pieces_, 0, pieces_.size()) && !phrase && !line_.clock)
      score += kWeights.remark_word;
    const bool child = words_.is(Role::kChild, pieces_, 0, pieces_.size()) && pieces_.size() > 1 &&
                       (pieces_[1].is(PKind::kNumber) || pieces_[1].is(PKind::kStop));
    if (child || pieces_[0].text == "#") score += kWeights.child;
    if (words_.is(Role::kLevel, pieces_, 0, pieces_.size()) && !line_.bold && !line_.clock)
      score += kWeights.level;
    if (comma_ && !minutes_ && !trailing_ && !line_.clock) score += kWeights.comma;
    if (runs_on && !caps && !habits_.weak_parts) score += kWeights.runs_on;
    out_.strong =
        line_.clock || line_.mark == Line::Mark::kHash || line_.bold || caps || set_off ||
        (minutes_ && (phrase || minutes_->bracket || heads_line() || heads_list() || ends_)) ||
        trailing_.has_value() || (whole && alone && line_.mark == Line::Mark::kNone);
    const ElementReader reader(words_, pieces_, text_);
    const auto first = reader.read(0, pieces_.size(), Place::kFirst);
    const bool names_nothing = first && first->kind != Element::Kind::kSides;
    const bool marked = line_.clock || line_.mark == Line::Mark::kHash;
    if (names_nothing && !marked) score += kWeights.begins_with_amount;
    out_.evidence = score;

    // The name: the phrase alone where it runs on, else the head.
    if (runs_on && !caps) {
      head = phrase_;
      rest = phrase_;
    }
    if (const std::size_t big = capital_words();
        !habits_.capitals && !caps && big > 0 && big < head && (line_.clock || phrase)) {
      head = big;
      rest = big;
    }
    if (const std::size_t cut = before_amounts(head); cut < head) {
      // What stands between the word that opens a part and the amount is a drill's name.
      head = phrase && phrase_ < cut ? phrase_ : cut;
      rest = head;
    }
    if (trailing_) {
      out_.rest_end = at_piece(trailing_->begin);
      if (rest > trailing_->begin) rest = trailing_->begin;
      head = std::min(head, trailing_->begin);
    }
    out_.name_begin = line_.text + static_cast<std::uint32_t>(pieces_[0].begin);
    out_.name_end =
        head > 0 ? line_.text + static_cast<std::uint32_t>(pieces_[head - 1].end) : out_.name_begin;
    if (minutes_ && !minutes_->bare) {
      out_.minutes = minutes_->minutes;
    } else if (minutes_) {
      out_.minutes = minutes_->minutes;
    } else if (trailing_) {
      out_.minutes = trailing_->minutes;
    }
    while (rest < pieces_.size() && is_separator(rest)) ++rest;
    out_.rest = at_piece(rest);
    // `20:20 3 rounds: …`: all of it says what is done.
    if (names_nothing && line_.clock && rest < pieces_.size()) out_.rest = line_.text;
    if (names_nothing && line_.mark == Line::Mark::kHash) {
      out_.name_begin = out_.rest = line_.text;
      out_.name_end = line_.end;
    }
    out_.pause = words_.is(Role::kBreak, pieces_, 0, pieces_.size());
    out_.stretch = words_.is(Role::kStretchPart, pieces_, 0, pieces_.size()) ||
                   (head > 0 && words_.within(Role::kStretchPart, pieces_, 0, head));
  }
  // `pull 5 min, only if you have a bar: chin ups 5`
  bool leads(const MinutesRead& minutes) const {
    constexpr std::size_t kMostNamed = 5;
    return !minutes.bare && minutes.begin > 0 && minutes.begin < kMostNamed &&
           minutes.minutes >= kPartMinutes - 2 && minutes.end < pieces_.size();
  }
  // `Ending 8 min: splits …`
  bool heads_line() const {
    constexpr double kShort = 5;
    return minutes_ && !minutes_->bare && minutes_->minutes >= kShort &&
           minutes_->end < pieces_.size() &&
           (pieces_[minutes_->end].is(PKind::kColon) || spaced_dash(minutes_->end));
  }
  // `4. Mats out in fours. 4 mins`, `6. Sequence work. 15 mins. balance – travel`
  bool heads_list() const {
    if (line_.mark != Line::Mark::kNumber || line_.level != 1 || minutes_->bare) return false;
    const std::size_t end = minutes_->end;
    const bool stop = minutes_->begin > 0 && pieces_[minutes_->begin - 1].is(PKind::kStop);
    return stop && minutes_->minutes > 3 &&
           (end == pieces_.size() || pieces_[end].is(PKind::kStop));
  }
  // `Ribbon and ball, fifteen minutes. Figure of eight, 10 in each hand. …`: a sentence that gives
  // the minutes of those behind it.
  bool heads_prose() const {
    if (!minutes_ || minutes_->bare || minutes_->minutes < kPartMinutes) return false;
    const std::size_t stop = minutes_->end;
    if (stop + 1 >= pieces_.size() || !pieces_[stop].is(PKind::kStop)) return false;
    const SpokenLine behind = read_drills(words_, text_.substr(pieces_[stop].end), {});
    return std::count_if(behind.drills.begin(), behind.drills.end(),
                         [](const SpokenDrill& drill) { return drill.dose.has_value(); }) > 1;
  }
  // Brackets do not count.
  std::size_t words_in(std::size_t head) const {
    std::size_t out = 0;
    bool inside = false;
    for (std::size_t i = 0; i < head; ++i) {
      inside = inside || pieces_[i].is(PKind::kOpen);
      if (!inside) ++out;
      if (pieces_[i].is(PKind::kClose)) inside = false;
    }
    return out;
  }

  const Lexicon& words_;
  const Line& line_;
  const Habits& habits_;
  std::string_view text_;
  Pieces pieces_;
  bool ends_;  ///< in its minutes, as the parts of this document do
  HeadingRead out_;
  std::size_t first_ = 0;
  std::size_t phrase_ = 0;
  bool warm_or_cool_ = false;
  std::optional<MinutesRead> minutes_;
  std::optional<MinutesRead> trailing_;
  std::optional<MinutesRead> front_;
  std::size_t head_ = 0;
  std::size_t rest_ = 0;
  bool colon_ = false;
  bool comma_ = false;
  bool gap_ = false;  ///< a new column ends the head
};

}  // namespace

HeadingRead read_heading(const Lexicon& words, const Source& source, const Line& line,
                         const Habits& habits) {
  return HeadingReader(words, source, line, habits).run();
}

bool is_called(std::string_view name, std::string_view first) {
  std::string letters;
  for (const char c : lower_ascii(name.substr(0, 24))) {
    if (c >= 'a' && c <= 'z') letters += c;
  }
  const std::string_view begin = letters;
  const bool ing = begin.starts_with(std::string(first) + "ing");
  return begin.starts_with(std::string(first) + (first == "warm" ? "up" : "down")) ||
         (ing && begin.substr(first.size() + 3).starts_with(first == "warm" ? "up" : "down"));
}

}  // namespace chalkleaf::draft
