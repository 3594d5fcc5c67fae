// source::Text: running text that remembers where each stretch of it stands in the file.
//
// A list of pieces in order; a piece as long as the bytes it came from maps byte by byte, any other
// (an escape, an entity) maps as a whole. Marks of emphasis go along with every cut. Tested by
// tests/source/text_test.cpp.
#include <algorithm>

#include "base/text.h"
#include "source/tree.h"

namespace chalkleaf::source {

void Text::mark(std::size_t begin, std::size_t end, Tone tone) {
  if (tone == Tone::kPlain || begin >= end) return;
  if (!marks_.empty() && marks_.back().end == begin && marks_.back().tone == tone) {
    marks_.back().end = end;
  } else {
    marks_.push_back({begin, end, tone});
  }
}

void Text::append(const Text& more) {
  const std::size_t at = text_.size();
  const std::string_view all = more.text_;
  for (const Piece& piece : more.pieces_) append(all.substr(piece.begin, piece.size), piece.where);
  for (const Mark& one : more.marks_) mark(at + one.begin, at + one.end, one.tone);
}

void Text::append(std::string_view text, Span where, Tone tone) {
  if (text.empty()) return;
  const std::size_t begin = text_.size();
  text_ += text;
  mark(begin, text_.size(), tone);
  if (!pieces_.empty() && text.size() == where.size()) {
    Piece& last = pieces_.back();
    const bool exact = last.size == last.where.size();
    if (exact && last.where.source == where.source && last.where.end == where.begin) {
      last.size += text.size();
      last.where.end = where.end;
      return;
    }
  }
  pieces_.push_back({begin, text.size(), where});
}

Span Text::span(std::size_t begin, std::size_t end) const {
  begin = std::min(begin, text_.size());
  end = std::clamp(end, begin, text_.size());
  // The first piece that ends behind `begin`.
  auto piece = std::partition_point(pieces_.begin(), pieces_.end(),
                                    [&](const Piece& p) { return p.begin + p.size <= begin; });
  if (piece == pieces_.end()) {  // an empty stretch at the very end
    if (pieces_.empty()) return {};
    const Span& last = pieces_.back().where;
    return {last.source, last.end, last.end};
  }
  Span out;
  do {
    Span where = piece->where;
    if (piece->size == where.size()) {
      const std::size_t from = std::max(begin, piece->begin) - piece->begin;
      const std::size_t to = std::clamp(end, piece->begin, piece->begin + piece->size);
      where.end = where.begin + static_cast<std::uint32_t>(to - piece->begin);
      where.begin += static_cast<std::uint32_t>(from);
    }
    out = out.joined(where);
    ++piece;
  } while (piece != pieces_.end() && piece->begin < end);
  return out;
}

Text Text::slice(std::size_t begin, std::size_t end) const {
  begin = std::min(begin, text_.size());
  end = std::clamp(end, begin, text_.size());
  Text out;
  auto piece = std::partition_point(pieces_.begin(), pieces_.end(),
                                    [&](const Piece& p) { return p.begin + p.size <= begin; });
  for (; piece != pieces_.end() && piece->begin < end; ++piece) {
    const std::size_t from = std::max(begin, piece->begin);
    const std::size_t to = std::min(end, piece->begin + piece->size);
    out.append(std::string_view(text_).substr(from, to - from), span(from, to));
  }
  auto one = std::partition_point(marks_.begin(), marks_.end(),
                                  [&](const Mark& m) { return m.end <= begin; });
  for (; one != marks_.end() && one->begin < end; ++one) {
    out.mark(std::max(begin, one->begin) - begin, std::min(end, one->end) - begin, one->tone);
  }
  return out;
}

Text Text::trimmed() const {
  const std::string_view all = text_;
  const std::string_view kept = trim(all);
  if (kept.size() == all.size()) return *this;
  const auto begin = static_cast<std::size_t>(kept.data() - all.data());
  return slice(begin, begin + kept.size());
}

}  // namespace chalkleaf::source
