// A place in a file the coach wrote.
//
// Every value of the model keeps the bytes it came from, so that every message can point at them. A
// span is a source and a half-open range of bytes; lines and columns are computed only when one is
// printed. Tested by tests/base/source_file_test.cpp.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf {

/// A line and a column as people count them: both from 1. The column counts characters (code
/// points), not bytes.
struct LineColumn {
  std::uint32_t line = 1;
  std::uint32_t column = 1;
  bool operator==(const LineColumn&) const = default;
};

class Pack;

/// One file's path and bytes. Immutable; spans point into it, so it must outlive them.
class Source {
 public:
  /// `path` is how the file is named to the user (relative to where the user stands, with `/`).
  /// In `pack`, which may be null, stands what was made of the text beforehand (base/pack.h).
  Source(std::string path, std::string text, std::shared_ptr<const Pack> pack = {});

  const std::string& path() const { return path_; }
  std::string_view text() const { return text_; }
  const Pack* pack() const { return pack_.get(); }
  /// The line and column of a byte offset; offsets past the end give the end.
  LineColumn line_column(std::uint32_t offset) const;
  /// The text of a line (from 1) without its line end; empty when there is no such line.
  std::string_view line(std::uint32_t number) const;
  /// The offset of a line's first byte (line from 1).
  std::uint32_t line_start(std::uint32_t number) const;
  std::uint32_t line_count() const { return static_cast<std::uint32_t>(line_starts_.size()); }

 private:
  std::string path_;
  std::string text_;
  std::shared_ptr<const Pack> pack_;
  std::vector<std::uint32_t> line_starts_;
};

/// Sources are shared: a part file is read once and used by many plans.
using SourcePtr = std::shared_ptr<const Source>;

/// A half-open range of bytes in a source. A span without a source is "nowhere".
struct Span {
  const Source* source = nullptr;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  explicit operator bool() const { return source != nullptr; }
  std::uint32_t size() const { return end - begin; }
  /// The bytes themselves; empty for a span that is nowhere.
  std::string_view text() const;
  /// True when `inner` lies within this span (and in the same source).
  bool contains(const Span& inner) const;
  /// The smallest span that covers both; the other one when either is nowhere.
  Span joined(const Span& other) const;
  bool operator==(const Span&) const = default;
};

}  // namespace chalkleaf
