#include "type/pieces.h"

#include <algorithm>

#include "base/text.h"
#include "type/characters.h"

namespace chalkleaf::type {
namespace {

// Longer words are shaped in parts: nobody writes them, and what a font's rules do with a very
// long one need not be linear in its length.
constexpr std::uint32_t kLongestShaped = 512;  // bytes

constexpr std::string_view kSoftHyphenText = "\xC2\xAD";

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

}  // namespace

Length scaled_units(std::int64_t units, Length size, std::uint32_t units_per_em) {
  const std::int64_t em = units_per_em;
  const std::int64_t twice = 2 * units * size.in_millipoints();
  // Rounded half away from zero.
  return Length::millipoints((twice >= 0 ? twice + em : twice - em) / (2 * em));
}

Length Pen::width() const {
  return face_ == nullptr ? closed_ : closed_ + scaled_units(units_, size_, face_->units_per_em());
}

void Pen::add(const ShapedRun& run, std::uint32_t inline_index, Length size) {
  if (run.font != face_ || inline_index != inline_index_) {
    closed_ = width();
    face_ = run.font;
    inline_index_ = inline_index;
    size_ = size;
    units_ = 0;
  }
  units_ += run.units;
}

void Pen::add(const ShapedWord& word, std::uint32_t inline_index, Length size) {
  for (const ShapedRun& run : word.runs) add(run, inline_index, size);
}

void Pieces::prepare(std::span<const Inline> text, Length width) {
  inlines_ = text;
  pieces_.clear();
  inner_.clear();
  join_texts(text);
  breaker_.find(text_, breaks_);
  next_break_ = 0;
  std::uint32_t begin = 0;
  for (std::uint32_t i = 0; i < text.size(); ++i) {
    const std::size_t first = pieces_.size();
    split_inline(i, begin, ends_[i]);
    if (text[i].unbroken) hold_inline(i, first, width);
    begin = ends_[i];
  }
  hyphenate_wide(width);
}

// A word that is wider than a line is hyphenated rather than cut.
void Pieces::hyphenate_wide(Length width) {
  for (std::size_t first = 0; first < pieces_.size();) {
    Pen pen;
    std::size_t end = first;  // of what hangs together
    while (end < pieces_.size() && pieces_[end].kind == Piece::Kind::kWord) {
      pen.add(*pieces_[end].shaped, pieces_[end].inline_index, source(pieces_[end]).size);
      if (pieces_[end++].after != After::kNone) break;
    }
    if (pen.width() > width) {
      for (std::size_t i = first; i < end; ++i) hyphenate_wide(pieces_[i], width, end - first == 1);
    }
    first = std::max(end, first + 1);
  }
}

// `alone`: nothing hangs on the piece, so that only its parts that are too wide need a hyphen.
void Pieces::hyphenate_wide(Piece& piece, Length width, bool alone) {
  if (piece.held || piece.end - piece.begin > kLongestShaped) return;
  std::vector<InnerBreak> all;
  std::uint32_t begin = piece.begin;
  const auto add_part = [&](std::uint32_t end) {
    const std::string_view word = std::string_view(text_).substr(begin, end - begin);
    Pen pen;
    pen.add(shaper_.shape(Manner(source(piece)), word), piece.inline_index, source(piece).size);
    if (alone && pen.width() <= width) return;
    for (const std::uint32_t place : hyphenator_.places(word)) all.push_back({begin + place, true});
  };
  for (const InnerBreak inner : inner_breaks(piece)) {
    add_part(inner.offset);
    all.push_back(inner);
    begin = inner.offset;
  }
  add_part(piece.end);
  if (all.size() == piece.inner_break_count) return;
  piece.first_inner_break = static_cast<std::uint32_t>(inner_.size());
  piece.inner_break_count = static_cast<std::uint32_t>(all.size());
  inner_.insert(inner_.end(), all.begin(), all.end());
}

void Pieces::find_hyphens(const Piece& piece, std::vector<std::uint32_t>& offsets) {
  offsets.clear();
  if (!source(piece).hyphenate || piece.held || piece.inner_break_count > 0) return;
  const std::string_view word = text(piece);
  if (!hyphenator_.is_plain_word(word)) return;
  for (const std::uint32_t place : hyphenator_.places(word)) offsets.push_back(piece.begin + place);
}

void Pieces::join_texts(std::span<const Inline> text) {
  text_.clear();
  ends_.clear();
  for (const Inline& part : text) {
    if (is_ascii(part.text) || !first_invalid_utf8(part.text)) {
      text_ += part.text;
    } else {
      for (std::size_t i = 0; i < part.text.size();) {
        const Decoded decoded = decode_utf8(part.text, i);
        append_utf8(text_, decoded.code);
        i += decoded.size;
      }
    }
    ends_.push_back(static_cast<std::uint32_t>(text_.size()));
  }
}

After Pieces::after(std::uint32_t offset) {
  while (next_break_ < breaks_.size() && breaks_[next_break_].offset < offset) ++next_break_;
  const bool found = next_break_ < breaks_.size() && breaks_[next_break_].offset == offset;
  return found ? After::kAllowed : After::kNone;
}

void Pieces::split_inline(std::uint32_t index, std::uint32_t begin, std::uint32_t end) {
  enum class Sort { kWord, kSpace, kLineEnd };
  const auto look = [&](std::uint32_t at, std::uint32_t& size) {
    const Decoded decoded = decode_utf8(text_, at);
    size = static_cast<std::uint32_t>(decoded.size);
    if (is_line_end(decoded.code)) return Sort::kLineEnd;
    return is_breaking_space(decoded.code) ? Sort::kSpace : Sort::kWord;
  };
  for (std::uint32_t at = begin; at < end;) {
    std::uint32_t size = 0;
    const Sort sort = look(at, size);
    std::uint32_t stop = at + size;
    if (sort == Sort::kLineEnd) {
      // The first half of \r\n ends nothing.
      if (after(stop) != After::kNone) add({Piece::Kind::kLineEnd, index, at, stop});
      at = stop;
      continue;
    }
    while (stop < end && look(stop, size) == sort) stop += size;
    if (sort == Sort::kSpace) {
      add({Piece::Kind::kSpace, index, at, stop});
    } else {
      add_word(index, at, stop);
    }
    at = stop;
  }
}

void Pieces::add_word(std::uint32_t index, std::uint32_t begin, std::uint32_t end) {
  after(begin + 1);  // go to the first break inside
  const std::size_t first = next_break_;
  std::size_t last = first;
  while (last < breaks_.size() && breaks_[last].offset < end) ++last;
  if (end - begin <= kLongestShaped) {
    Piece word{Piece::Kind::kWord, index, begin, end};
    word.first_inner_break = static_cast<std::uint32_t>(inner_.size());
    word.inner_break_count = static_cast<std::uint32_t>(last - first);
    for (std::size_t i = first; i < last; ++i) inner_.push_back({breaks_[i].offset, false});
    add(word);
    return;
  }
  const auto add_part = [&](std::uint32_t from, std::uint32_t to) {
    add({Piece::Kind::kWord, index, from, to});
  };
  std::uint32_t from = begin;
  for (std::size_t i = first; i <= last; ++i) {
    const std::uint32_t to = i < last ? breaks_[i].offset : end;
    if (to - from > kLongestShaped) {
      const std::uint32_t base = from;
      std::uint32_t previous = from;
      for (const std::uint32_t g :
           breaker_.graphemes(std::string_view(text_).substr(base, to - base))) {
        // A grapheme longer than that is cut at any character.
        while (base + g - from > kLongestShaped) {
          std::uint32_t cut = previous > from ? previous : from + kLongestShaped;
          while ((static_cast<unsigned char>(text_[cut]) & 0xC0U) == 0x80U) --cut;
          add_part(from, cut);
          from = cut;
        }
        previous = base + g;
      }
    }
    add_part(from, to);
    from = to;
  }
}

void Pieces::add(Piece piece) {
  piece.after = after(piece.end);
  shape(piece);
  pieces_.push_back(piece);
}

void Pieces::shape(Piece& piece) {
  if (piece.kind == Piece::Kind::kLineEnd) return;
  std::string_view word = text(piece);
  while (word.ends_with(kSoftHyphenText)) {
    word.remove_suffix(kSoftHyphenText.size());
    piece.soft_hyphen = true;
  }
  piece.shaped = &shaper_.shape(Manner(source(piece)), word);
}

void Pieces::hold_inline(std::uint32_t index, std::size_t first_piece, Length width) {
  const Length size = inlines_[index].size;
  Pen pen;
  for (std::size_t i = first_piece; i < pieces_.size(); ++i) {
    if (pieces_[i].kind == Piece::Kind::kLineEnd) {
      pen = Pen();
      continue;
    }
    pen.add(*pieces_[i].shaped, index, size);
    if (pieces_[i].kind == Piece::Kind::kWord && pen.width() > width) return;
  }
  for (std::size_t i = first_piece; i < pieces_.size(); ++i) {
    Piece& piece = pieces_[i];
    piece.held = true;
    if (piece.after == After::kAllowed && piece.end < ends_[index]) piece.after = After::kHeld;
  }
}

Piece Pieces::part(const Piece& piece, std::uint32_t begin, std::uint32_t end, bool hyphen) {
  Piece out = piece;
  out.begin = begin;
  out.end = end;
  out.inner_break_count = 0;
  if (end != piece.end) {
    out.after = After::kAllowed;
    out.soft_hyphen = hyphen;
  }
  shape(out);
  return out;
}

Piece Pieces::first_part(const Piece& piece) {
  const InnerBreak& first = inner_breaks(piece).front();
  return part(piece, piece.begin, first.offset, first.hyphen);
}

std::vector<Piece> Pieces::taken_apart(const Piece& piece) {
  std::vector<Piece> out;
  out.reserve(piece.inner_break_count + 1U);
  std::uint32_t begin = piece.begin;
  for (const InnerBreak& inner : inner_breaks(piece)) {
    out.push_back(part(piece, begin, inner.offset, inner.hyphen));
    begin = inner.offset;
  }
  out.push_back(part(piece, begin, piece.end));
  return out;
}

bool Pieces::shows_hyphen(const InnerBreak& inner) const {
  return inner.hyphen || std::string_view(text_).substr(0, inner.offset).ends_with(kSoftHyphenText);
}

const ShapedWord& Pieces::hyphen(const Piece& piece) {
  return shaper_.shape(Manner(source(piece)), kSoftHyphenText);
}

}  // namespace chalkleaf::type
