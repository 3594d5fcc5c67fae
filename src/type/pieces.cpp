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
  Piece word{Piece::Kind::kWord, index, begin, end};
  word.first_inner_break = static_cast<std::uint32_t>(first);
  word.inner_break_count = static_cast<std::uint32_t>(last - first);
  if (end - begin <= kLongestShaped) {
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
  piece.shaped = &shaper_.shape(inlines_[piece.inline_index].style, word);
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

Piece Pieces::part(const Piece& piece, std::uint32_t begin, std::uint32_t end) {
  Piece out = piece;
  out.begin = begin;
  out.end = end;
  out.inner_break_count = 0;
  out.soft_hyphen = false;
  out.after = end == piece.end ? piece.after : After::kAllowed;
  shape(out);
  return out;
}

Piece Pieces::first_part(const Piece& piece) {
  return part(piece, piece.begin, breaks_[piece.first_inner_break].offset);
}

std::vector<Piece> Pieces::taken_apart(const Piece& piece) {
  std::vector<Piece> out;
  out.reserve(piece.inner_break_count + 1U);
  std::uint32_t begin = piece.begin;
  for (std::uint32_t i = 0; i < piece.inner_break_count; ++i) {
    const std::uint32_t end = breaks_[piece.first_inner_break + i].offset;
    out.push_back(part(piece, begin, end));
    begin = end;
  }
  out.push_back(part(piece, begin, piece.end));
  return out;
}

}  // namespace chalkleaf::type
