// See the header.
#include "source/inlines.h"

#include <algorithm>
#include <memory>

namespace chalkleaf::source {
namespace {

// CommonMark 0.29, 2.1: ASCII punctuation, which a backslash escapes (6.1).
bool is_punctuation(char c) {
  return (c >= '!' && c <= '/') || (c >= ':' && c <= '@') || (c >= '[' && c <= '`') ||
         (c >= '{' && c <= '~');
}

// CommonMark 0.29, 6.2: the length of an entity at `at`, 0 when there is none.
std::size_t entity_length(std::string_view text, std::size_t at) {
  constexpr std::size_t kLongest = 40;  // the longest HTML5 name has 32 bytes
  for (std::size_t i = at + 1; i < text.size() && i < at + kLongest; ++i) {
    const char c = text[i];
    if (c == ';') return i > at + 1 ? i - at + 1 : 0;
    const bool part =
        (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '#';
    if (!part) return 0;
  }
  return 0;
}

std::size_t character_length(std::string_view text, std::size_t at) {
  std::size_t n = 1;
  while (at + n < text.size() && (static_cast<unsigned char>(text[at + n]) & 0xC0U) == 0x80U) ++n;
  return n;
}

/// Walks the source of one block beside cmark's literals.
class Tracer {
 public:
  Tracer(const Span& where, Text& out)
      : where_(where), source_(where.text()), out_(out), budget_(16 * source_.size() + 4096) {}

  /// How the text added from here on is set off.
  void set_tone(Tone tone) { tone_ = tone; }
  void skip_to(std::size_t at) { cursor_ = std::min(at, source_.size()); }
  Span span(std::size_t begin, std::size_t end) const {
    return {where_.source, where_.begin + static_cast<std::uint32_t>(begin),
            where_.begin + static_cast<std::uint32_t>(end)};
  }

  /// Escapes and entities mean something in text, not in code.
  enum class Reading { kText, kVerbatim };
  void add(std::string_view literal, Reading reading) {
    if (literal.empty()) return;
    for (std::size_t at = cursor_; at < source_.size() && budget_ > 0; ++at) {
      --budget_;
      if (!could_begin(literal, at, reading)) continue;
      if (align(literal, at, reading)) return;
    }
    out_.append(literal, where_, tone_);  // its place is not found; the text must not vanish
  }

  /// A line end in the source, read as `as`.
  void add_break(std::string_view as) {
    std::size_t at = cursor_;
    while (at < source_.size() && source_[at] != '\n' && source_[at] != '\r') ++at;
    const std::size_t begin = at;
    while (at < source_.size() && is_prefix(source_[at])) ++at;
    out_.append(as, span(begin, at), tone_);
    cursor_ = at;
  }

  /// Moves to the bracket a link or image begins with; its offset.
  std::size_t open_link(bool is_image) {
    std::size_t at = cursor_;
    while (at < source_.size() && source_[at] != '[' && source_[at] != '<') ++at;
    if (at == source_.size()) return cursor_;
    cursor_ = at + 1;
    return is_image && at > 0 && source_[at - 1] == '!' ? at - 1 : at;
  }
  /// Moves behind a link's `](target "title")`, `][label]`, `]` or `>`; the offset there.
  std::size_t close_link() {
    std::size_t at = cursor_;
    while (at < source_.size() && source_[at] != ']' && source_[at] != '>') ++at;
    if (at == source_.size()) return cursor_;
    const bool bracket = source_[at] == ']';
    ++at;
    if (bracket && at < source_.size() && (source_[at] == '(' || source_[at] == '[')) {
      at = matching(at);
    }
    cursor_ = at;
    return at;
  }

 private:
  // White space and quote marks: what may stand between one line's text and the next line's.
  static bool is_prefix(char c) {
    return c == '\n' || c == '\r' || c == ' ' || c == '\t' || c == '>';
  }

  bool could_begin(std::string_view literal, std::size_t at, Reading reading) const {
    const char c = source_[at];
    if (c == literal[0]) return true;
    if (reading == Reading::kText) return c == '\\' || c == '&';
    return literal[0] == ' ' && (c == '\n' || c == '\r');
  }

  // The offset behind the bracket that closes the one at `at`, quotes and escapes minded.
  std::size_t matching(std::size_t at) const {
    const char opening = source_[at];
    const char closing = opening == '(' ? ')' : ']';
    int depth = 0;
    char quote = 0;
    for (std::size_t i = at; i < source_.size(); ++i) {
      const char c = source_[i];
      if (c == '\\') {
        ++i;
      } else if (quote != 0) {
        if (c == quote) quote = 0;
      } else if (opening == '(' && (c == '"' || c == '\'') && i > 0 &&
                 (source_[i - 1] == ' ' || source_[i - 1] == '\n')) {
        quote = c;
      } else if (c == opening) {
        ++depth;
      } else if (c == closing && --depth == 0) {
        return i + 1;
      }
    }
    return at;
  }

  /// A stretch of the literal and the bytes it stands for.
  struct Run {
    std::size_t begin, size;
    std::size_t from, to;
  };

  // Tries to read the whole literal at `at`; on success appends it and moves behind it.
  bool align(std::string_view literal, std::size_t at, Reading reading) {
    std::vector<Run> runs;
    std::size_t i = 0;
    const auto take = [&](std::size_t size, std::size_t bytes) {
      if (size == bytes && !runs.empty() && runs.back().size == runs.back().to - runs.back().from) {
        runs.back().size += size;
        runs.back().to += bytes;
      } else {
        runs.push_back({i, size, at, at + bytes});
      }
      i += size;
      at += bytes;
    };
    while (i < literal.size()) {
      if (at >= source_.size() || budget_ == 0) return false;
      --budget_;
      const char c = source_[at];
      if (reading == Reading::kText && c == '\\' && at + 1 < source_.size() &&
          is_punctuation(source_[at + 1]) && source_[at + 1] == literal[i]) {
        take(1, 2);
      } else if (const std::size_t n = reading == Reading::kText ? entity_at(literal, i, at) : 0) {
        take(character_length(literal, i), n);
      } else if (c == literal[i]) {
        take(1, 1);
      } else if (reading == Reading::kVerbatim && literal[i] == ' ' && (c == '\n' || c == '\r')) {
        std::size_t gap = 0;
        while (at + gap < source_.size() && is_prefix(source_[at + gap])) ++gap;
        take(1, gap);
      } else {
        return false;
      }
    }
    for (const Run& run : runs) {
      out_.append(literal.substr(run.begin, run.size), span(run.from, run.to), tone_);
    }
    cursor_ = at;
    return true;
  }

  // The length of an entity at `at` that cmark has decoded: one that does not stand in the literal.
  std::size_t entity_at(std::string_view literal, std::size_t i, std::size_t at) const {
    if (source_[at] != '&') return 0;
    const std::size_t n = entity_length(source_, at);
    if (n == 0 || literal.substr(i).starts_with(source_.substr(at, n))) return 0;
    return n;
  }

  Span where_;
  std::string_view source_;
  Text& out_;
  Tone tone_ = Tone::kPlain;
  std::size_t cursor_ = 0;
  std::size_t budget_;  ///< steps left, so that hostile text stays linear
};

std::string_view literal_of(cmark_node* node) {
  const char* literal = cmark_node_get_literal(node);
  return literal == nullptr ? std::string_view() : std::string_view(literal);
}

// Where a paragraph's text begins: cmark has taken link definitions (CommonMark 0.29, 4.7) off its
// front, but still counts them to its place. A line that looks like one is one unless the first
// inline node shows it.
std::size_t behind_definitions(cmark_node* block, std::string_view source) {
  cmark_node* first = cmark_node_first_child(block);
  if (first == nullptr) return 0;
  const bool linked = cmark_node_get_type(first) == CMARK_NODE_LINK &&
                      cmark_node_next(first) != nullptr &&
                      literal_of(cmark_node_next(first)).starts_with(':');
  std::size_t at = 0;
  while (!linked && at < source.size() && source[at] == '[') {
    const std::size_t stop = std::min(source.find_first_of("\r\n", at), source.size());
    const std::string_view line = source.substr(at, stop - at);
    const std::string_view shown = literal_of(first);
    const std::string_view same = line.substr(0, std::min(line.find_first_of("\\&"), shown.size()));
    const bool is_text = !shown.empty() && shown.starts_with(same);
    if (is_text || line.find("]:") == std::string_view::npos || stop == source.size()) break;
    at = source.find_first_not_of("\r\n \t>", stop);
    if (at == std::string_view::npos) return source.size();
  }
  return at;
}

struct IteratorEnd {
  void operator()(cmark_iter* it) const { cmark_iter_free(it); }
};

/// Collects one block's inline nodes.
class Collector {
 public:
  Collector(const Span& where, MarkNode& node, std::size_t begin)
      : node_(node), tracer_(where, node.text) {
    tracer_.skip_to(begin);
  }

  void enter(cmark_node* inline_node) {
    const cmark_node_type type = cmark_node_get_type(inline_node);
    using Reading = Tracer::Reading;
    if (type == CMARK_NODE_TEXT) {
      tracer_.add(literal_of(inline_node), Reading::kText);
    } else if (type == CMARK_NODE_CODE || type == CMARK_NODE_HTML_INLINE) {
      tracer_.add(literal_of(inline_node), Reading::kVerbatim);
    } else if (type == CMARK_NODE_SOFTBREAK) {
      tracer_.add_break(" ");
    } else if (type == CMARK_NODE_LINEBREAK) {
      tracer_.add_break("\n");
    } else if (type == CMARK_NODE_STRONG || type == CMARK_NODE_EMPH) {
      nest(type, +1);
    } else if (type == CMARK_NODE_LINK || type == CMARK_NODE_IMAGE) {
      const bool is_image = type == CMARK_NODE_IMAGE;
      const char* url = cmark_node_get_url(inline_node);
      const std::size_t begin = tracer_.open_link(is_image);
      open_.push_back({node_.text.str().size(), begin, url == nullptr ? "" : url, is_image});
    }
  }
  void exit(cmark_node* inline_node) {
    const cmark_node_type type = cmark_node_get_type(inline_node);
    if (type == CMARK_NODE_STRONG || type == CMARK_NODE_EMPH) {
      nest(type, -1);
    } else if (type == CMARK_NODE_LINK || type == CMARK_NODE_IMAGE) {
      Open& open = open_.back();
      const std::size_t end = tracer_.close_link();
      node_.links.push_back({open.text_begin, node_.text.str().size(), std::move(open.target),
                             tracer_.span(open.source_begin, end), open.is_image});
      open_.pop_back();
    }
  }

 private:
  struct Open {
    std::size_t text_begin;
    std::size_t source_begin;
    std::string target;
    bool is_image;
  };
  // Emphasis nests; what is printed is plain, emphasised or strong.
  void nest(cmark_node_type type, int by) {
    (type == CMARK_NODE_STRONG ? strong_ : emphasised_) += by;
    tracer_.set_tone(strong_ > 0       ? Tone::kStrong
                     : emphasised_ > 0 ? Tone::kEmphasised
                                       : Tone::kPlain);
  }

  MarkNode& node_;
  Tracer tracer_;
  std::vector<Open> open_;
  int strong_ = 0;
  int emphasised_ = 0;
};

}  // namespace

void read_inlines(cmark_node* block, const Span& where, MarkNode& node) {
  Collector collector(where, node, behind_definitions(block, where.text()));
  const std::unique_ptr<cmark_iter, IteratorEnd> it(cmark_iter_new(block));
  for (cmark_event_type event; (event = cmark_iter_next(it.get())) != CMARK_EVENT_DONE;) {
    cmark_node* inline_node = cmark_iter_get_node(it.get());
    if (inline_node == block) continue;
    if (event == CMARK_EVENT_ENTER) {
      collector.enter(inline_node);
    } else {
      collector.exit(inline_node);
    }
  }
}

}  // namespace chalkleaf::source
