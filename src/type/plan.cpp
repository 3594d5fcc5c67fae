#include "type/plan.h"

namespace chalkleaf::type {
namespace {

// Beyond these a text is no running text, and is filled first fit.
constexpr std::uint32_t kMostInnerBreaks = 16;  // of one word
constexpr std::uint32_t kLongestBroken = 64;    // bytes, of a word with inner breaks
constexpr std::size_t kMostLinesAStop = 200;    // on average
// Hyphens can save lines, and then every number of saved lines is a way of its own to each stop:
// square work, which no sheet's paragraph is long enough to ask for.
constexpr std::size_t kMostHyphenatedLines = 200;

}  // namespace

void Planner::run() {
  std::vector<Piece>& all = pieces_.all();
  out_.reserve(all.size());
  while (begin_ < all.size()) {
    std::size_t end = begin_;
    while (end < all.size() && all[end].kind != Piece::Kind::kLineEnd) ++end;
    if (end < all.size()) ++end;
    count_ = end - begin_;
    plan();
    begin_ = end;
  }
  all.swap(out_);
}

void Planner::plan() {
  if (fits_one_line()) return add_as_is(true);
  if (!find_stops(Hyphens::kNeeded) || !find_lines()) return add_as_is(false);
  const auto fit = total_fit(graph_);
  if (!fit) return add_as_is(false);
  // A hyphen is worth looking for only where it could pay.
  if (fit->demerits > kHyphenDemerits && fit->stops.size() <= kMostHyphenatedLines) {
    if (find_stops(Hyphens::kAlsoForLooks) && find_lines()) {
      const auto most_lines = static_cast<std::uint32_t>(fit->stops.size());
      if (const auto better = total_fit(graph_, most_lines)) return add_planned(*better);
    }
    find_stops(Hyphens::kNeeded);
  }
  add_planned(*fit);
}

bool Planner::fits_one_line() const {
  Pen pen;
  for (std::size_t i = 0; i < count_; ++i) {
    const Piece& one = piece(i);
    if (one.kind == Piece::Kind::kLineEnd) continue;
    pen.add(*one.shaped, one.inline_index, pieces_.source(one).size);
    if (one.kind == Piece::Kind::kWord && pen.width() > measure_) return false;
  }
  return true;
}

std::uint32_t Planner::add_stop(std::size_t index, std::uint32_t inner, Ending ending) {
  stops_.push_back({static_cast<std::uint32_t>(index), inner});
  graph_.stops.push_back(ending);
  return static_cast<std::uint32_t>(stops_.size() - 1);
}

bool Planner::find_stops(Hyphens hyphens) {
  graph_ = LineGraph{measure_, {}, {}};
  stops_.clear();
  inner_.clear();
  known_.assign(count_, Known{});
  add_stop(0, kWhole, Ending::kSpace);
  std::size_t last_word = count_;
  while (last_word > 0 && piece(last_word - 1).kind != Piece::Kind::kWord) --last_word;
  for (std::size_t i = 0; i < count_; ++i) {
    const Piece& one = piece(i);
    Known& known = known_[i];
    known.first_inner = static_cast<std::uint32_t>(inner_.size());
    known.first_inner_stop = static_cast<std::uint32_t>(stops_.size());
    if (!one.held) {
      const auto inner = pieces_.inner_breaks(one);
      inner_.insert(inner_.end(), inner.begin(), inner.end());
    }
    if (hyphens == Hyphens::kAlsoForLooks && i + 1 != last_word) find_hyphens(i);
    known.inner_count = static_cast<std::uint32_t>(inner_.size()) - known.first_inner;
    if (known.inner_count > kMostInnerBreaks) return false;
    if (known.inner_count > 0 && one.end - one.begin > kLongestBroken) return false;
    for (std::uint32_t k = known.first_inner; k < inner_.size(); ++k) {
      const bool hyphen = pieces_.shows_hyphen(inner_[k]);
      add_stop(i, k, hyphen ? Ending::kHyphen : Ending::kCompound);
    }
    if (i + 1 == count_ || one.kind == Piece::Kind::kSpace) {
      if (i + 1 == count_ || one.after == After::kAllowed)
        known.stop = add_stop(i, kWhole, Ending::kSpace);
    } else if (one.after == After::kAllowed) {
      known.stop = add_stop(i, kWhole, one.soft_hyphen ? Ending::kHyphen : Ending::kCompound);
    }
  }
  return true;
}

// A word that another style goes on without a space is left whole.
void Planner::find_hyphens(std::size_t i) {
  const auto is_word = [&](std::size_t n) { return piece(n).kind == Piece::Kind::kWord; };
  if (!is_word(i) || (i > 0 && is_word(i - 1)) || (i + 1 < count_ && is_word(i + 1))) return;
  pieces_.find_hyphens(piece(i), hyphens_);
  for (const std::uint32_t offset : hyphens_) inner_.push_back({offset, true});
}

// False when there are too many to choose from.
bool Planner::find_lines() {
  reached_.assign(stops_.size(), false);
  reached_[0] = true;
  for (std::uint32_t stop = 0; stop + 1 < stops_.size(); ++stop) {
    if (reached_[stop]) lines_from(stop);
    if (graph_.lines.size() > kMostLinesAStop * stops_.size()) return false;
  }
  return true;
}

void Planner::lines_from(std::uint32_t stop) {
  std::size_t next = 0;
  Reach reach;
  if (stop > 0) {
    const Stop& from = stops_[stop];
    next = from.piece + 1U;
    if (from.inner != kWhole) {
      const Piece& word = piece(from.piece);
      const Piece rest = pieces_.part(word, inner_[from.inner].offset, word.end);
      if (!pass_word(reach, stop, from.piece, rest, from.inner + 1)) return;
    }
  }
  for (std::size_t i = next; i < count_; ++i) {
    const Piece& one = piece(i);
    if (one.kind == Piece::Kind::kWord) {
      if (!pass_word(reach, stop, i, one, known_[i].first_inner)) return;
      continue;
    }
    if (one.kind == Piece::Kind::kSpace) {
      reach.pen.add(*one.shaped, one.inline_index, pieces_.source(one).size);
      reach.spaced = reach.begun;
    }
    if (known_[i].stop != kNone) offer(stop, known_[i].stop, reach.solid, reach);
  }
}

// Goes on over a word, or over what is left of one. False when it is too wide.
bool Planner::pass_word(Reach& reach, std::uint32_t stop, std::size_t index, const Piece& word,
                        std::uint32_t first_inner) {
  const Known& known = known_[index];
  const Length size = pieces_.source(word).size;
  if (reach.spaced) reach.one_word = false;
  reach.begun = true;
  for (std::uint32_t k = first_inner; k < known.first_inner + known.inner_count; ++k) {
    const Piece head = pieces_.part(word, word.begin, inner_[k].offset, inner_[k].hyphen);
    Pen pen = reach.pen;
    pen.add(*head.shaped, head.inline_index, size);
    if (head.soft_hyphen) pen.add(pieces_.hyphen(head), head.inline_index, size);
    if (pen.width() > measure_) break;
    offer(stop, known.first_inner_stop + k - known.first_inner, pen.width(), reach);
  }
  reach.pen.add(*word.shaped, word.inline_index, size);
  reach.solid = reach.pen.width();
  if (reach.solid > measure_) return false;
  if (known.stop == kNone) return true;
  Pen pen = reach.pen;
  if (graph_.stops[known.stop] == Ending::kHyphen)
    pen.add(pieces_.hyphen(word), word.inline_index, size);
  if (pen.width() <= measure_) offer(stop, known.stop, pen.width(), reach);
  return true;
}

void Planner::offer(std::uint32_t from, std::uint32_t to, Length width, const Reach& reach) {
  graph_.lines.push_back({from, to, width, reach.one_word});
  reached_[to] = true;
}

void Planner::add_as_is(bool planned) {
  for (std::size_t i = 0; i < count_; ++i) {
    out_.push_back(piece(i));
    out_.back().planned = planned;
  }
}

void Planner::add_planned(const Fit& fit) {
  std::size_t next = 0;  // of the fit's stops; its last is the end, where the line ends by itself
  for (std::size_t i = 0; i < count_; ++i) {
    Piece rest = piece(i);
    for (; next + 1 < fit.stops.size(); ++next) {
      const Stop& stop = stops_[fit.stops[next]];
      if (stop.piece != i || stop.inner == kWhole) break;
      const InnerBreak& inner = inner_[stop.inner];
      Piece head = pieces_.part(rest, rest.begin, inner.offset, inner.hyphen);
      head.planned = head.ends_line = true;
      out_.push_back(head);
      rest = pieces_.part(rest, inner.offset, rest.end);
    }
    rest.planned = true;
    if (next + 1 < fit.stops.size() && stops_[fit.stops[next]].piece == i) {
      rest.ends_line = true;
      ++next;
    }
    out_.push_back(rest);
  }
}

}  // namespace chalkleaf::type
