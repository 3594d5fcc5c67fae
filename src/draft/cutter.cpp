// See the header.
#include "draft/cutter.h"

#include <algorithm>
#include <array>

namespace chalkleaf::draft {
namespace {

using EKind = Element::Kind;
using PKind = Piece::Kind;

/// Cuts a line into items.
class Cutter {
 public:
  Cutter(const Lexicon& words, const Pieces& pieces, std::string_view line)
      : words_(words), pieces_(pieces), line_(line), reader_(words, pieces, line) {}

  std::vector<Item> run(Place begin = Place::kFirst) {
    place_ = begin;
    std::size_t dashes = 0;
    std::size_t slashes = 0;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      dashes += is_spaced_dash(i) ? 1 : 0;
      slashes += is_spaced_slash(i) ? 1 : 0;
    }
    dash_list_ = dashes > 2;
    slash_list_ = slashes > 2;
    numbers_ = bracketed_numbers() > 1;
    cut(0, pieces_.size());
    return std::move(out_);
  }

 private:
  bool is_spaced_dash(std::size_t i) const {
    const Piece& piece = pieces_[i];
    return piece.is(PKind::kDash) && (piece.space_before || piece.space_after) && i > 0;
  }
  static bool is_emphasis(const Piece& piece) {
    return piece.is(PKind::kOther) && (piece.text.front() == '*' || piece.text.front() == '_') &&
           piece.text.find_first_not_of("*_") == std::string::npos;
  }
  // `zone A = strip to pit`
  bool names_place(std::size_t i) const {
    return i == 2 && pieces_[i].text == "=" && pieces_[i].space_before && pieces_[i].space_after &&
           words_.is(Role::kNameBeforeNumber, pieces_, 0, i);
  }
  // Not between ways: `crawl forward / back / sideways`.
  bool is_spaced_slash(std::size_t i) const {
    const Piece& piece = pieces_[i];
    if (!piece.is(PKind::kSlash) || !piece.space_before || !piece.space_after) return false;
    const bool way = words_.is(Role::kForwardBack, pieces_, i + 1, pieces_.size());
    return !way || (i + 2 < pieces_.size() && pieces_[i + 2].is(PKind::kWord));
  }
  // `>` and `|` between drills, `//`
  bool is_bar(std::size_t i) const {
    const Piece& piece = pieces_[i];
    static constexpr std::array<std::string_view, 9> kBars{">", "|", "•", "·", "→",
                                                           "➡", "⇒", "»", "▶"};
    const std::string_view raw = line_.substr(piece.begin, piece.end - piece.begin);
    const bool sign = std::find(kBars.begin(), kBars.end(), raw) != kBars.end();
    const bool slashes = piece.is(PKind::kSlash) && piece.space_before && !piece.space_after &&
                         i + 1 < pieces_.size() && pieces_[i + 1].is(PKind::kSlash);
    return (sign && i > 0 && piece.space_before && piece.space_after) || slashes;
  }
  void mark(Item::Kind kind, std::size_t begin, std::size_t end) {
    out_.push_back({kind, begin, end, {}});
    place_ = Place::kFirst;
  }
  void word(std::size_t at) {
    if (!out_.empty() && out_.back().kind == Item::Kind::kWords && out_.back().end == at) {
      ++out_.back().end;
    } else {
      out_.push_back({Item::Kind::kWords, at, at + 1, {}});
    }
    place_ = Place::kInside;
  }

  // What stands in brackets: the elements, if there is nothing else, or all of it as a remark.
  std::size_t bracket(std::size_t at, std::size_t end) {
    std::size_t close = at + 1;
    while (close < end && !pieces_[close].is(PKind::kClose)) ++close;
    std::vector<Element> inside;
    std::size_t i = at + 1;
    while (i < close) {
      const auto found = reader_.read(i, close, Place::kInside);
      if (!found) break;
      inside.push_back(*found);
      i = found->next;
    }
    // `basic steps (7 steps)`
    if (inside.size() == 1 && inside[0].kind == EKind::kCount && inside[0].unit == Unit::kSteps)
      inside.clear();
    const bool minutes =
        inside.size() == 1 && inside[0].kind == EKind::kCount && inside[0].unit == Unit::kBare;
    // `round-offs 6 (3 each leg)`: the number before is all of them.
    const bool shares = !out_.empty() && out_.back().kind == Item::Kind::kElement &&
                        out_.back().element.is_amount() && inside.size() > 1 &&
                        inside[0].is_amount() &&
                        std::any_of(inside.begin(), inside.end(),
                                    [](const Element& e) { return e.kind == EKind::kSides; });
    const bool divides =
        close + 1 < end && (pieces_[close + 1].is(PKind::kColon) || is_spaced_dash(close + 1));
    const bool sides = std::all_of(inside.begin(), inside.end(),
                                   [](const Element& e) { return e.kind == EKind::kSides; });
    if (i == close && !inside.empty() && (!minutes || numbers_) && (!divides || sides) && !shares) {
      for (const Element& one : inside) {
        out_.push_back({Item::Kind::kElement, one.begin, one.next, one});
      }
    } else if (close > at + 1) {
      out_.push_back({Item::Kind::kBracket, at + 1, close, {}});
    }
    return std::min(close + 1, end);
  }

  void cut(std::size_t at, std::size_t end) {
    while (at < end) {
      const Piece& piece = pieces_[at];
      if (piece.is(PKind::kOpen)) {
        at = bracket(at, end);
        continue;
      }
      if (const auto found = is_bar(at) ? std::nullopt : reader_.read(at, end, place_)) {
        out_.push_back({Item::Kind::kElement, at, found->next, *found});
        at = found->next;
        const bool group = found->kind == EKind::kRounds || found->kind == EKind::kEmom;
        place_ = group ? Place::kFirst : Place::kInside;  // `three rounds of eight tuck-ups`
        continue;
      }
      if (is_emphasis(piece)) {
        ++at;
        continue;
      }
      if (piece.is(PKind::kComma) || piece.is(PKind::kSemicolon)) {
        mark(Item::Kind::kComma, at, at + 1);
      } else if (piece.is(PKind::kStop)) {
        mark(Item::Kind::kStop, at, at + 1);
      } else if (piece.is(PKind::kColon) || is_spaced_dash(at) || names_place(at)) {
        mark(dash_list_ && !piece.is(PKind::kColon) ? Item::Kind::kComma : Item::Kind::kDivide, at,
             at + 1);
      } else if (is_spaced_slash(at) && !out_.empty() &&
                 (slash_list_ || begins_count(at + 1, end) ||
                  out_.back().kind == Item::Kind::kElement)) {
        mark(Item::Kind::kComma, at, at + 1);
      } else if (is_bar(at)) {
        const std::size_t signs = piece.is(PKind::kSlash) ? 2 : 1;
        mark(Item::Kind::kStop, at, at + signs);
        at += signs;
        continue;
      } else if (piece.is(PKind::kClose)) {
        ++at;
        continue;
      } else if (const std::size_t odd = words_.match(Role::kOddEven, pieces_, at, end); odd > 0) {
        mark(Item::Kind::kComma, at, at + odd);
        at += odd;
        continue;
      } else if (const std::size_t then = words_.match(Role::kThen, pieces_, at, end);
                 then > 0 && place_ == Place::kInside) {
        mark(Item::Kind::kComma, at, at + then);
        at += then;
        continue;
      } else if (then > 0) {
        at += then;  // `, then …`
        continue;
      } else if (const std::size_t both = words_.match(Role::kAnd, pieces_, at, end);
                 both > 0 && (begins_count(at + both, end) || parts_doses(at + both, end))) {
        mark(Item::Kind::kComma, at, at + both);
        at += both;
        continue;
      } else {
        word(at);
      }
      ++at;
    }
  }
  // `star jumps (20), tuck jumps (10)`; one alone may be minutes.
  std::size_t bracketed_numbers() const {
    std::size_t found = 0;
    for (std::size_t i = 0; i + 2 < pieces_.size(); ++i) {
      const bool number = pieces_[i].is(PKind::kOpen) && pieces_[i + 1].is(PKind::kNumber) &&
                          pieces_[i + 2].is(PKind::kClose) && i > 0;
      found += number && words_.is(Role::kMove, pieces_, i - 1, i) ? 1 : 0;
    }
    return found;
  }

  // `… + 10 press ups`, `… and five big breaths`
  bool begins_count(std::size_t at, std::size_t end) const {
    if (out_.empty()) return false;
    const auto found = reader_.read(at, end, Place::kFirst);
    if (!found) return false;
    // `… and 10 second wall sit`
    const bool timed =
        found->kind == EKind::kTime && !found->held && found->next < end &&
        pieces_[found->next].is(PKind::kWord) &&
        words_.within(Role::kStatic, pieces_, found->next, std::min(found->next + 3, end));
    return timed || (found->kind == EKind::kCount && found->leads);
  }

  // `pull-ups 5 + box jumps 8`: behind a dose it begins another drill.
  bool parts_doses(std::size_t at, std::size_t end) const {
    if (out_.empty() || out_.back().kind != Item::Kind::kElement ||
        !out_.back().element.is_amount())
      return false;
    for (std::size_t i = at; i < end && !reader_.is_clause_end(i, end); ++i) {
      const auto found = reader_.read(i, end, Place::kInside);
      if (found && found->is_amount() && !found->held) return i > at;
      if (found) i = found->next - 1;
    }
    return false;
  }

  const Lexicon& words_;
  const Pieces& pieces_;
  std::string_view line_;
  ElementReader reader_;
  std::vector<Item> out_;
  Place place_ = Place::kFirst;
  bool dash_list_ = false;
  bool slash_list_ = false;
  bool numbers_ = false;  ///< numbers in brackets are doses
};

}  // namespace

std::vector<Item> cut(const Lexicon& words, const Pieces& pieces, std::string_view line,
                      Place begin) {
  return Cutter(words, pieces, line).run(begin);
}

}  // namespace chalkleaf::draft
