#include "base/span.h"

#include <algorithm>

#include "base/text.h"

namespace chalkleaf {

Source::Source(std::string path, std::string text, std::shared_ptr<const Pack> pack)
    : path_(std::move(path)), text_(std::move(text)), pack_(std::move(pack)) {
  line_starts_.push_back(0);
  for (std::size_t i = 0; i < text_.size(); ++i) {
    const bool lone_return = text_[i] == '\r' && (i + 1 == text_.size() || text_[i + 1] != '\n');
    if (text_[i] == '\n' || lone_return) line_starts_.push_back(static_cast<std::uint32_t>(i + 1));
  }
}

LineColumn Source::line_column(std::uint32_t offset) const {
  offset = std::min(offset, static_cast<std::uint32_t>(text_.size()));
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const auto line = static_cast<std::uint32_t>(after - line_starts_.begin());
  const std::uint32_t start = line_starts_[line - 1];
  const auto before = std::string_view(text_).substr(start, offset - start);
  return {line, static_cast<std::uint32_t>(count_characters(before)) + 1};
}

std::uint32_t Source::line_start(std::uint32_t number) const {
  if (number == 0 || number > line_starts_.size()) return static_cast<std::uint32_t>(text_.size());
  return line_starts_[number - 1];
}

std::string_view Source::line(std::uint32_t number) const {
  if (number == 0 || number > line_starts_.size()) return {};
  const std::size_t begin = line_starts_[number - 1];
  const std::size_t end = number == line_starts_.size() ? text_.size() : line_starts_[number];
  auto line = std::string_view(text_).substr(begin, end - begin);
  while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
  return line;
}

std::string_view Span::text() const {
  if (source == nullptr) return {};
  const auto all = source->text();
  const std::size_t from = std::min<std::size_t>(begin, all.size());
  const std::size_t to = std::clamp<std::size_t>(end, from, all.size());
  return all.substr(from, to - from);
}

bool Span::contains(const Span& inner) const {
  return source == inner.source && begin <= inner.begin && inner.end <= end;
}

Span Span::joined(const Span& other) const {
  if (source == nullptr) return other;
  if (other.source == nullptr) return *this;
  return {source, std::min(begin, other.begin), std::max(end, other.end)};
}

}  // namespace chalkleaf
