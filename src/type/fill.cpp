#include "type/fill.h"

#include <algorithm>

#include "base/text.h"
#include "type/characters.h"

namespace chalkleaf::type {
namespace {

// How much of a word that was cut is shown in the message about it.
constexpr std::size_t kMostShown = 60;  // characters

std::string shortened(std::string_view word) {
  std::size_t end = 0;
  for (std::size_t n = 0; n < kMostShown && end < word.size(); ++n) {
    end += decode_utf8(word, end).size;
  }
  std::string out(word.substr(0, end));
  if (end < word.size()) out += "…";
  return out;
}

}  // namespace

Filler::Filler(Pieces& pieces, Breaker& breaker, Shaper& shaper, std::span<const Inline> text,
               Length width, Purpose purpose)
    : pieces_(pieces),
      breaker_(breaker),
      shaper_(shaper),
      text_(text),
      limit_(width),
      purpose_(purpose),
      waiting_(pieces.all().rbegin(), pieces.all().rend()) {}

Paragraph Filler::run() {
  while (!waiting_.empty()) step();
  if (line_begun_) end_line(nullptr);
  return std::move(out_);
}

void Filler::step() {
  if (ahead(0).planned) {
    const Piece piece = ahead(0);
    waiting_.pop_back();
    place(piece);
    if (piece.ends_line) end_line(&last_placed_);
    return;
  }
  const Look found = look();
  if (found.fits) {
    for (std::size_t i = 0; i < found.count; ++i) {
      const Piece piece = ahead(0);
      waiting_.pop_back();
      place(piece);
    }
    return;
  }
  if (found.to_take_apart != kNothing && (!line_begun_ || first_part_fits(found.to_take_apart))) {
    take_apart(found.to_take_apart);
  } else if (line_begun_) {
    end_line(&last_placed_);
  } else if (found.held) {
    release(found.count);
  } else {
    cut(found.count);
  }
}

bool Filler::fits(Pen pen, const Piece& piece) const {
  pen.add(*piece.shaped, piece.inline_index, inline_size(piece));
  if (piece.soft_hyphen && piece.after == After::kAllowed) {
    pen.add(pieces_.hyphen(piece), piece.inline_index, inline_size(piece));
  }
  return pen.width() <= limit_;
}

Filler::Look Filler::look() const {
  Look out;
  Pen pen = pen_;
  for (std::size_t i = 0; i < waiting_.size(); ++i) {
    const Piece& piece = ahead(i);
    out.count = i + 1;
    if (piece.kind == Piece::Kind::kLineEnd) return out;
    if (piece.inner_break_count > 0 && !piece.held && out.to_take_apart == kNothing) {
      out.to_take_apart = i;
    }
    if (piece.after == After::kHeld || (piece.held && piece.inner_break_count > 0)) {
      out.held = true;
    }
    if (piece.kind == Piece::Kind::kWord && !fits(pen, piece)) {
      out.fits = false;
      return out;
    }
    pen.add(*piece.shaped, piece.inline_index, inline_size(piece));
    if (piece.after == After::kAllowed) return out;
  }
  return out;
}

bool Filler::first_part_fits(std::size_t n) {
  Pen pen = pen_;
  for (std::size_t i = 0; i < n; ++i) {
    pen.add(*ahead(i).shaped, ahead(i).inline_index, inline_size(ahead(i)));
  }
  return fits(pen, pieces_.first_part(ahead(n)));
}

void Filler::take_apart(std::size_t n) {
  const std::vector<Piece> parts = pieces_.taken_apart(ahead(n));
  const auto at = waiting_.end() - static_cast<std::ptrdiff_t>(n) - 1;
  waiting_.insert(waiting_.erase(at), parts.rbegin(), parts.rend());
}

void Filler::release(std::size_t count) {
  for (std::size_t i = 0; i < count; ++i) {
    Piece& piece = ahead(i);
    piece.held = false;
    if (piece.after == After::kHeld) piece.after = After::kAllowed;
  }
}

void Filler::report(TextProblem::Kind kind, const std::string& text, const Span& origin) {
  if (reported_.emplace(kind, text, origin.source, origin.begin, origin.end).second) {
    TextProblem problem{kind, text, origin};
    if (kind == TextProblem::Kind::kMissingGlyph && !text.empty())
      problem.script = script_name(decode_utf8(text, 0).code);
    out_.problems.push_back(std::move(problem));
  }
}

void Filler::report_cut_word(const Piece& piece) {
  if (piece.begin < reported_until_) return;
  std::size_t end = piece.begin;
  const std::string_view text = pieces_.text();
  while (end < text.size()) {
    const Decoded decoded = decode_utf8(text, end);
    if (is_breaking_space(decoded.code) || is_line_end(decoded.code)) break;
    end += decoded.size;
  }
  reported_until_ = static_cast<std::uint32_t>(end);
  report(TextProblem::Kind::kCutWord, shortened(text.substr(piece.begin, end - piece.begin)),
         text_[piece.inline_index].origin);
}

void Filler::cut(std::size_t count) {
  report_cut_word(ahead(0));
  for (std::size_t i = 0; i < count; ++i) {
    const Piece piece = ahead(0);
    waiting_.pop_back();
    if (i + 1 < count) {
      place(piece);
    } else {
      cut_piece(piece);
    }
  }
}

// Places a piece that is wider than a line, as much of it on each line as fits there.
void Filler::cut_piece(const Piece& piece) {
  std::vector<std::uint32_t> ends = breaker_.graphemes(pieces_.text(piece));
  for (std::uint32_t& end : ends) end += piece.begin;
  // A rough measure, from the piece shaped as a whole: the width up to each end.
  std::vector<Length> widths(ends.size());
  {
    const std::string_view text = pieces_.text(piece);
    std::vector<Length> at(text.size());
    // A run's text is the piece's without what is not shown, so the two are walked side by side.
    std::size_t in_piece = 0;
    std::vector<std::size_t> bytes;  // of the run's text, as bytes of the piece
    for (const ShapedRun& run : piece.shaped->runs) {
      bytes.clear();
      for (std::size_t in_run = 0; in_run < run.text.size();) {
        const Decoded shown = decode_utf8(run.text, in_run);
        Decoded here = decode_utf8(text, in_piece);
        while (here.code != shown.code && in_piece + here.size < text.size()) {
          in_piece += here.size;
          here = decode_utf8(text, in_piece);
        }
        bytes.insert(bytes.end(), shown.size, in_piece);
        in_run += shown.size;
        if (in_piece + here.size < text.size()) in_piece += here.size;
      }
      for (const Glyph& glyph : run.glyphs) {
        at[bytes[glyph.cluster]] +=
            scaled_units(glyph.advance, inline_size(piece), run.font->units_per_em());
      }
    }
    Length sum;
    std::size_t byte = 0;
    for (std::size_t i = 0; i < ends.size(); ++i) {
      for (; byte < ends[i] - piece.begin; ++byte) sum += at[byte];
      widths[i] = sum;
    }
  }
  std::uint32_t begin = piece.begin;
  for (std::size_t first = 0; first < ends.size();) {
    const Length before = first == 0 ? Length() : widths[first - 1];
    const Length room = limit_ - pen_.width();
    std::size_t last = first;  // one past
    while (last < ends.size() && widths[last] - before <= room) ++last;
    if (last == first && line_begun_) {
      end_line(nullptr);
      continue;
    }
    last = std::max(last, first + 1);
    Piece part = pieces_.part(piece, begin, ends[last - 1]);
    // Shaped by itself it may be a little wider: halved, never one by one, whatever was measured.
    if (last > first + 1 && !fits(pen_, part)) {
      std::size_t fitting = first + 1;
      while (last - fitting > 1) {
        const std::size_t middle = fitting + (last - fitting) / 2;
        (fits(pen_, pieces_.part(piece, begin, ends[middle - 1])) ? fitting : last) = middle;
      }
      last = fitting;
      part = pieces_.part(piece, begin, ends[last - 1]);
    }
    if (line_begun_ && !fits(pen_, part)) {
      end_line(nullptr);
      continue;
    }
    place(part);
    begin = ends[last - 1];
    first = last;
    if (first < ends.size()) end_line(&last_placed_);
  }
}

void Filler::place(const Piece& piece) {
  line_begun_ = true;
  last_placed_ = piece;
  if (piece.kind == Piece::Kind::kLineEnd) {
    if (line_.fragments.empty() && line_.ascent == Length()) {
      // An empty line is as high as its text would be.
      for (const FaceId id : shaper_.fonts().chain(text_[piece.inline_index].style)) {
        const Face* face = shaper_.fonts().face(id);
        if (face == nullptr) continue;
        line_.ascent = scaled_units(face->ascender(), inline_size(piece), face->units_per_em());
        line_.descent = scaled_units(-face->descender(), inline_size(piece), face->units_per_em());
        break;
      }
    }
    end_line(nullptr);
    return;
  }
  place_word(*piece.shaped, piece.inline_index);
  if (piece.kind == Piece::Kind::kWord) solid_width_ = pen_.width();
  const Span& origin = text_[piece.inline_index].origin;
  for (const std::string& missing : piece.shaped->missing) {
    report(TextProblem::Kind::kMissingGlyph, missing, origin);
  }
}

void Filler::place_word(const ShapedWord& word, std::uint32_t inline_index) {
  const Inline& source = text_[inline_index];
  if (purpose_ == Purpose::kMeasure) {
    pen_.add(word, inline_index, source.size);
    return;
  }
  for (const ShapedRun& run : word.runs) {
    const bool joins = !line_.fragments.empty() &&
                       line_.fragments.back().inline_index == inline_index &&
                       line_.fragments.back().face == run.face;
    if (!joins) {
      Fragment fragment;
      fragment.inline_index = inline_index;
      fragment.face = run.face;
      fragment.size = source.size;
      fragment.colour = source.colour;
      fragment.x = pen_.width();
      line_.fragments.push_back(std::move(fragment));
      const std::uint32_t em = run.font->units_per_em();
      line_.ascent = std::max(line_.ascent, scaled_units(run.font->ascender(), source.size, em));
      line_.descent =
          std::max(line_.descent, scaled_units(-run.font->descender(), source.size, em));
    }
    pen_.add(run, inline_index, source.size);
    Fragment& fragment = line_.fragments.back();
    const auto base = static_cast<std::uint32_t>(fragment.text.size());
    fragment.text += run.text;
    for (Glyph glyph : run.glyphs) {
      glyph.cluster += base;
      fragment.glyphs.push_back(glyph);
    }
    fragment.width = pen_.width() - fragment.x;
  }
}

// `soft_hyphen_after`: the piece the line ends with, when the end is one that a soft hyphen shows.
void Filler::end_line(const Piece* soft_hyphen_after) {
  if (soft_hyphen_after != nullptr && soft_hyphen_after->soft_hyphen) {
    const Piece piece = *soft_hyphen_after;
    place_word(pieces_.hyphen(piece), piece.inline_index);
    solid_width_ = pen_.width();
  }
  line_.width = solid_width_;
  out_.lines.push_back(std::move(line_));
  line_ = Line();
  pen_ = Pen();
  solid_width_ = Length();
  line_begun_ = false;
}

}  // namespace chalkleaf::type
