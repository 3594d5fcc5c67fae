// Amounts as people speak and type them, as the plain numbers and units they stand for: `half a
// minute` is `30 s`, `:40` is `40 s`, `from 5 to 8` is `5-8`, `twenty five` is `25`.
// The bytes of the new pieces are those of the old ones, so that nothing typed is lost.
// Tested by tests/draft/spoken_pieces_test.cpp.
#include <algorithm>

#include "draft/lexicon.h"

namespace chalkleaf::draft {
namespace {

using Kind = Piece::Kind;

class PlainSpeaker {
 public:
  PlainSpeaker(const Lexicon& words, Pieces pieces) : words_(words), in_(std::move(pieces)) {}

  Pieces run() {
    while (at_ < in_.size()) {
      if (short_rest() || letters_for_digits() || unit_in_front() || slash_ladder() ||
          dot_leaders() || fraction())
        continue;
      if (phrase() || colon_seconds() || clock_seconds() || minutes_and_seconds() ||
          tens_and_units() || range())
        continue;
      out_.push_back(in_[at_++]);
    }
    return std::move(out_);
  }

 private:
  bool is(std::size_t at, Kind kind) const { return at < in_.size() && in_[at].is(kind); }
  bool is_whole(std::size_t at) const { return is(at, Kind::kNumber) && in_[at].whole; }

  // `3 x 30" r15"`: a rest.
  bool short_rest() {
    if (!words_.is(Role::kRestLetter, in_, at_, at_ + 1) || !is_whole(at_ + 1)) return false;
    const Pieces behind(in_.begin() + static_cast<std::ptrdiff_t>(at_) + 1, in_.end());
    if (in_[at_ + 1].space_before || words_.match(Role::kSecond, behind, 1, behind.size()) == 0)
      return false;
    out_.push_back(in_[at_]);
    out_.back().text = words_.first(Role::kRestBefore);
    out_.push_back(in_[at_ + 1]);
    out_.back().space_before = true;
    at_ += 2;
    return true;
  }

  // Takes pieces `at_` to `end` and puts others in their place, which share their bytes.
  void replace(std::size_t end, Pieces made) {
    for (std::size_t i = 0; i < made.size(); ++i) {
      Piece& piece = made[i];
      const bool first = i == 0;
      const bool last = i + 1 == made.size();
      piece.begin = first ? in_[at_].begin : in_[end - 1].end;
      piece.end = in_[end - 1].end;
      piece.space_before = first && in_[at_].space_before;
      piece.space_after = last && in_[end - 1].space_after;
      out_.push_back(std::move(piece));
    }
    at_ = end;
  }
  static Piece number(double value) {
    Piece out;
    out.kind = Kind::kNumber;
    out.value = value;
    out.whole = true;
    return out;
  }
  static Piece seconds() {
    Piece out;
    out.kind = Kind::kWord;
    out.text = "s";
    return out;
  }
  static Piece dash() {
    Piece out;
    out.kind = Kind::kDash;
    out.text = "-";
    return out;
  }

  // `half a minute`, `a dozen`: data.
  bool phrase() {
    const Lexicon::Spelled found = words_.amount(in_, at_, in_.size());
    if (found.pieces == 0) return false;
    replace(at_ + found.pieces, pieces_of(found.text));
    return true;
  }

  // `:40`, `3x:30`
  bool colon_seconds() {
    if (!is(at_, Kind::kColon) || in_[at_].space_after || !is_whole(at_ + 1)) return false;
    const bool two_digits = in_[at_ + 1].end - in_[at_ + 1].begin == 2;
    const bool open = at_ == 0 || in_[at_].space_before || in_[at_ - 1].is(Kind::kTimes) ||
                      in_[at_ - 1].is(Kind::kOpen);
    if (!two_digits || !open) return false;
    replace(at_ + 2, {number(in_[at_ + 1].value), seconds()});
    return true;
  }

  // `0:45`, `2 x 1:30`, `hold 1:30`: a time, not an hour of the day.
  bool clock_seconds() {
    const std::string& text = in_[at_].text;
    if (!is(at_, Kind::kOther) || text.size() != 4 || text[1] != ':') return false;
    const auto digit = [&](std::size_t i) { return text[i] - '0'; };
    for (const std::size_t i : {0U, 2U, 3U}) {
      if (digit(i) < 0 || digit(i) > 9) return false;
    }
    const bool behind =
        !out_.empty() && (out_.back().is(Kind::kTimes) ||
                          words_.is(Role::kStatic, out_, out_.size() - 1, out_.size()) ||
                          words_.is(Role::kHold, out_, out_.size() - 1, out_.size()));
    if (digit(0) != 0 && !behind) return false;
    replace(at_ + 1, {number(60 * digit(0) + 10 * digit(2) + digit(3)), seconds()});
    return true;
  }

  // `1min30`, `1m30s`: without a blank between them.
  bool minutes_and_seconds() {
    const bool near = is_whole(at_) && touches(at_) && touches(at_ + 1) && is_whole(at_ + 2);
    if (!near || in_[at_ + 2].value >= 60 || in_[at_ + 2].end - in_[at_ + 2].begin != 2)
      return false;
    const bool unit = at_ + 3 < in_.size() && words_.is(Role::kSecond, in_, at_ + 3, at_ + 4);
    const bool metres = words_.is(Role::kMinuteLetter, in_, at_ + 1, at_ + 2);
    if (metres ? !unit : !words_.is(Role::kMinute, in_, at_ + 1, at_ + 2)) return false;
    replace(unit ? at_ + 4 : at_ + 3,
            {number(60 * in_[at_].value + in_[at_ + 2].value), seconds()});
    return true;
  }

  // `twenty five`
  bool tens_and_units() {
    if (!is_whole(at_) || !is_whole(at_ + 1)) return false;
    const Piece& tens = in_[at_];
    const Piece& units = in_[at_ + 1];
    const bool fit = tens.in_words && units.in_words && tens.value >= 20 && units.value < 10 &&
                     static_cast<int>(tens.value) % 10 == 0;
    if (!fit) return false;
    Piece made = number(tens.value + units.value);
    made.in_words = true;
    replace(at_ + 2, {made});
    return true;
  }

  // `Sets: 3 Reps: 10`: the unit stands in front.
  bool unit_in_front() {
    const bool first = at_ == 0 || !is_whole(at_ - 1);
    if (!is(at_, Kind::kWord) || !first) return false;
    const bool set = words_.match(Role::kSet, in_, at_, at_ + 1) == 1;
    const bool rep = words_.match(Role::kRepetition, in_, at_, at_ + 1) == 1 &&
                     !words_.is(Role::kTimes, in_, at_, at_ + 1);
    if (!(set || rep) || !in_[at_].text.ends_with('s')) return false;
    std::size_t i = at_ + 1;
    if (is(i, Kind::kColon)) ++i;
    if (!is_whole(i)) return false;
    const bool own = words_.any_of({Role::kSecond, Role::kMinute, Role::kSet, Role::kRepetition},
                                   in_, i + 1, in_.size());
    if (own && !is(i + 2, Kind::kColon) && !is_whole(i + 2)) return false;
    Piece unit;
    unit.kind = Kind::kWord;
    unit.text = words_.first(set ? Role::kSet : Role::kRepetition);
    replace(i + 1, {number(in_[i].value), unit});
    // `sets: 3, reps: 10`
    if (set && (is(at_, Kind::kComma) || is(at_, Kind::kSlash)) && at_ + 1 < in_.size() &&
        words_.match(Role::kRepetition, in_, at_ + 1, at_ + 2) == 1)
      ++at_;
    return true;
  }

  // `General warm up ...... 12 min`
  bool dot_leaders() {
    const auto dots = [&](std::size_t i) {
      return i < in_.size() && !in_[i].text.empty() &&
             in_[i].text.find_first_not_of('.') == std::string::npos;
    };
    if (!dots(at_) || out_.empty()) return false;
    std::size_t end = at_ + 1;
    while (dots(end) && in_[end - 1].end == in_[end].begin) ++end;
    const bool leads = end < in_.size() && in_[end].is(Kind::kNumber) && in_[end].space_before;
    if (in_[end - 1].end - in_[at_].begin < 4 || !leads) return false;
    replace(end, {dash()});
    out_.back().space_before = out_.back().space_after = true;
    return true;
  }

  // `1/2 min`, `1 1/2 mins`, `3/4 hr`: before a unit of time or a length.
  bool fraction() {
    const std::size_t at = is_whole(at_) && is_whole(at_ + 1) ? at_ + 1 : at_;
    if (!is_whole(at) || !is(at + 1, Kind::kSlash) || !is_whole(at + 2) || !touches(at) ||
        !touches(at + 1))
      return false;
    const double below = in_[at + 2].value;
    if (in_[at].value >= below || (below != 2 && below != 3 && below != 4)) return false;
    const std::size_t unit = at + 3;
    if (unit >= in_.size()) return false;
    const bool follows = words_.is(Role::kMinute, in_, unit, unit + 1) ||
                         words_.is(Role::kHour, in_, unit, unit + 1) ||
                         words_.is(Role::kLength, in_, unit, unit + 1);
    if (!follows) return false;
    const double whole = at > at_ ? in_[at_].value : 0;
    Piece made = number(whole + in_[at].value / below);
    made.whole = false;
    replace(at + 3, {made});
    return true;
  }

  // `press-ups 10/8/6`
  bool slash_ladder() {
    Pieces made;
    std::size_t i = at_;
    if (!is_whole(i) || at_ == 0 || !is(at_ - 1, Kind::kWord) || has_point(i)) return false;
    double last = in_[i].value + 1;
    constexpr double kMost = 40;
    while (is_whole(i) && in_[i].value < last && in_[i].value <= kMost && in_[i].value > 0) {
      if (!made.empty()) made.push_back(dash());
      made.push_back(number(in_[i].value));
      last = in_[i].value;
      ++i;
      if (!is(i, Kind::kSlash) || in_[i].space_before || in_[i].space_after || !is_whole(i + 1))
        break;
      ++i;
    }
    if (made.size() < 5) return false;
    replace(i, std::move(made));
    return true;
  }

  bool touches(std::size_t at) const {
    return at + 1 < in_.size() && in_[at].end == in_[at + 1].begin;
  }

  // `1O min`, `2O s`, `l0 on the bench`, `l lap`: letters typed for the digits they look like.
  bool letters_for_digits() {
    const bool l = is(at_, Kind::kWord) && in_[at_].text == "l";
    if (l && is_whole(at_ + 1) && touches(at_) && in_[at_ + 1].value < 1) {  // not `L6`
      replace(at_ + 2, {number(10)});
      return true;
    }
    if (l && is(at_ + 1, Kind::kWord) && in_[at_].space_after && in_[at_ + 1].text.size() > 2 &&
        (at_ == 0 || !is_whole(at_ - 1)) && words_.is(Role::kLength, in_, at_ + 1, at_ + 2)) {
      replace(at_ + 1, {number(1)});
      return true;
    }
    const bool o = is_whole(at_) && touches(at_) && is(at_ + 1, Kind::kWord) &&
                   in_[at_ + 1].text == "o" && !has_point(at_);
    if (!o) return false;
    replace(at_ + 2, {number(in_[at_].value * 10)});
    return true;
  }

  bool has_point(std::size_t at) const { return in_[at].text.find('.') != std::string::npos; }

  // `from 5 to 8`, `between 5 and 8`, `5 to 8`, `5 or 6`
  bool range() {
    const std::size_t from = words_.match(Role::kFrom, in_, at_, in_.size());
    const std::size_t first = at_ + from;
    if (!is_whole(first)) return false;
    std::size_t to = words_.match(Role::kTo, in_, first + 1, in_.size());
    if (to == 0 && from > 0) to = words_.match(Role::kAnd, in_, first + 1, in_.size());
    const std::size_t second = first + 1 + to;
    constexpr double kMost = 100;
    if (to == 0 || !is_whole(second) || in_[first].value >= in_[second].value ||
        in_[second].value > kMost || has_point(first) || has_point(second))
      return false;
    replace(second + 1, {number(in_[first].value), dash(), number(in_[second].value)});
    return true;
  }

  const Lexicon& words_;
  Pieces in_;
  Pieces out_;
  std::size_t at_ = 0;
};

}  // namespace

Pieces spoken_pieces(const Lexicon& words, std::string_view line) {
  return PlainSpeaker(words, pieces_of(line)).run();
}

}  // namespace chalkleaf::draft
