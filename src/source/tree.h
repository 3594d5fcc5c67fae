// What a file is once read: YAML and Markdown as plain trees, every node with its bytes in the
// file.
//
// yaml-cpp and cmark-gfm stay behind source/read.h; no other room sees them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/span.h"

namespace chalkleaf::source {

struct YamlEntry;

/// A YAML value. Anchors, aliases and tags are refused when reading (reported as `bad-value`).
struct YamlNode {
  enum class Kind { kNull, kScalar, kList, kMap };
  Kind kind = Kind::kNull;
  Span span;
  std::string text;                ///< kScalar: its value
  bool quoted = false;             ///< kScalar: it was written in quotes
  bool unreadable = false;         ///< kNull: what stood here was reported
  std::vector<YamlNode> items;     ///< kList
  std::vector<YamlEntry> entries;  ///< kMap, in file order, duplicates included

  bool is_scalar() const { return kind == Kind::kScalar; }
};

/// A key of a map and its value. Not a std::pair: that cannot be made of a type that holds it.
struct YamlEntry {
  YamlEntry(YamlNode key, YamlNode value) : first(std::move(key)), second(std::move(value)) {}
  YamlNode first;
  YamlNode second;
};

/// How a stretch of running text is set off. Strong inside emphasis, or the other way, is strong.
enum class Tone { kPlain, kEmphasised, kStrong };

/// Running text with the place of each byte: escapes, entities and marks of emphasis are gone from
/// `text`, but any stretch of it can be traced to the file.
class Text {
 public:
  /// A stretch set off: [begin, end) of `str()`, never empty.
  struct Mark {
    std::size_t begin = 0;
    std::size_t end = 0;
    Tone tone = Tone::kPlain;
  };

  const std::string& str() const { return text_; }
  bool empty() const { return text_.empty(); }
  /// The stretches set off, in order; they do not overlap.
  const std::vector<Mark>& marks() const { return marks_; }
  /// The bytes in the file that the half-open range [begin, end) of `str()` came from.
  Span span(std::size_t begin, std::size_t end) const;
  Span span() const { return span(0, text_.size()); }
  /// The part of the text in [begin, end), with its places and marks.
  Text slice(std::size_t begin, std::size_t end) const;
  /// Without white space at either end.
  Text trimmed() const;
  /// Appends text whose bytes stand at `where`. When sizes differ, the whole of it maps to the
  /// whole of `where`.
  void append(std::string_view text, Span where, Tone tone = Tone::kPlain);
  /// Appends a text with its places and marks.
  void append(const Text& more);

 private:
  struct Piece {
    std::size_t begin = 0;  ///< in text_
    std::size_t size = 0;
    Span where;
  };
  void mark(std::size_t begin, std::size_t end, Tone tone);

  std::string text_;
  std::vector<Piece> pieces_;
  std::vector<Mark> marks_;
};

/// A Markdown node. Blocks have `children`; leaves of running text are flattened into `text`.
struct MarkNode {
  enum class Kind {
    kDocument,
    kHeading,    ///< `level`, `text`
    kParagraph,  ///< `text`, `links`
    kList,       ///< children: kItem
    kItem,       ///< children: blocks
    kQuote,      ///< children: blocks
    kTable,      ///< children: kTableRow
    kTableRow,   ///< children: kTableCell
    kTableCell,  ///< `text`
    kCode,       ///< `text`: a code block, verbatim
    kHtml,       ///< `text`: an HTML block, verbatim (comments included)
    kRule,       ///< a thematic break
  };
  /// A link inside a paragraph's text.
  struct Link {
    std::size_t begin = 0;  ///< in text.str()
    std::size_t end = 0;
    std::string target;
    Span span;  ///< the whole of `[text](target)`
    bool is_image = false;
  };
  Kind kind = Kind::kDocument;
  Span span;
  int level = 0;
  Text text;
  std::vector<Link> links;
  std::vector<MarkNode> children;
};

/// A whole file: front matter if it has any, and the body.
struct Document {
  SourcePtr source;
  std::optional<YamlNode>
      front;  ///< the map between the `---` lines; empty when there is none or it is unreadable
  Span front_span;  ///< between the `---` lines; empty at the file's begin when there is none
  MarkNode body;
};

}  // namespace chalkleaf::source
