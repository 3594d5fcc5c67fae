#include "source/cost.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "base/text.h"

namespace chalkleaf::source {
namespace {

constexpr const char* kSplit =
    "a plan is a page or two of text: check that this is the right file, or split it";

constexpr std::size_t kLooksPerTableByte = 30;  // cells are copied: 90 ns for each byte
constexpr std::size_t kLooksPerContainer = 3;   // an open list or quote, at each line
constexpr std::size_t kLooksPerEnd = 4;         // of a list, at each list round it
constexpr std::size_t kLooksPerBracket = 4;     // an open one, at each that closes
constexpr std::size_t kLooksPerRun = 30;        // far apart in memory: 100 ns each

bool is_space_or_tab(char c) { return c == ' ' || c == '\t'; }
bool is_digit_byte(char c) { return c >= '0' && c <= '9'; }

// A character that is certainly a letter or digit for CommonMark's rules of emphasis, by its last
// or first byte: ASCII, and the blocks of Latin and Cyrillic letters, which have no punctuation.
bool is_word_before(std::string_view text, std::size_t at) {
  if (at == 0) return false;
  const char c = text[at - 1];
  if (static_cast<unsigned char>(c) < 0x80) return is_letter(c) || is_digit_byte(c);
  const auto lead = at >= 2 ? static_cast<unsigned char>(text[at - 2]) : 0U;
  return (lead >= 0xC3 && lead <= 0xCB) || (lead >= 0xD0 && lead <= 0xD3);
}
bool is_word_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return false;
  const auto byte = static_cast<unsigned char>(text[at]);
  if (byte < 0x80) return is_letter(text[at]) || is_digit_byte(text[at]);
  return (byte >= 0xC3 && byte <= 0xCB) || (byte >= 0xD0 && byte <= 0xD3);
}

/// The lists and quotes of a line.
struct Depth {
  std::size_t marks = 0;    ///< it begins with
  std::size_t deepest = 0;  ///< it can be in: its indentation counted, too
};
Depth depth_of(std::string_view line) {
  std::size_t marks = 0;
  std::size_t spaces = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (is_space_or_tab(c)) {
      spaces += c == '\t' ? 4 : 1;
    } else if (c == '>') {
      ++marks;
    } else if (std::string_view("-*+.)").find(c) != std::string_view::npos) {
      if (i + 1 < line.size() && !is_space_or_tab(line[i + 1])) break;  // `---`, `2.5`
      ++marks;
    } else if (!is_digit_byte(c)) {
      break;
    }
  }
  return {marks, marks + spaces / 2};
}

// What could stand below a table's head, inside any list or quote.
bool is_like_table_rule(std::string_view line) {
  return line.find('-') != std::string_view::npos &&
         line.find_first_not_of("|-: \t\v\f>*+.)0123456789") == std::string_view::npos;
}

// Behind one of these no paragraph goes on: a list entry or a heading at the margin.
bool begins_block(std::string_view line) {
  const std::size_t hashes = std::min(line.find_first_not_of('#'), line.size());
  const bool bullet =
      !line.empty() && (line[0] == '-' || line[0] == '*' || line[0] == '+') && hashes == 0;
  const std::size_t mark = bullet ? 1 : hashes;
  if (mark == 0 || mark > 6 || mark >= line.size() || !is_space_or_tab(line[mark])) return false;
  return line.find_first_not_of(" \t", mark) != std::string_view::npos;
}

/// Counts, line by line, what is open and how often it will be looked at. A stretch of lines
/// without an empty one holds at least as much as any paragraph in it.
class Meter {
 public:
  Meter(std::string_view text, std::size_t most)
      : text_(text), most_(most), tables_(tables_are_bounded(text)) {}

  std::optional<CostlyShape> run() {
    for (std::size_t at = 0; at < text_.size() && !found_;) {
      const std::size_t end = std::min(text_.find_first_of("\r\n", at), text_.size());
      read_line(at, end);
      at = text_.substr(std::min(end, text_.size())).starts_with("\r\n") ? end + 2 : end + 1;
    }
    return std::move(found_);
  }

 private:
  struct Open {
    char mark;
    std::size_t at;
    std::size_t size;
  };

  void read_line(std::size_t begin, std::size_t end) {
    const std::string_view line = text_.substr(begin, end - begin);
    const bool empty = line.find_first_not_of(" \t") == std::string_view::npos;
    if (empty || begins_block(line)) begin_stretch(begin);
    if (!empty) follow_table(line);
    const Depth depth = depth_of(line);
    if (!empty) text_lines_ += std::max<std::size_t>(depth.marks, 1);
    if (text_lines_ > kMostLines) {
      return refuse(begin, fmt::format("it has more than {} lines", kMostLines), kSplit);
    }
    if (!empty) deepest_ = std::max(deepest_, depth.deepest);
    // Each list that ends asks those inside it whether they end with an empty line.
    if (!spend(deepest_ * kLooksPerContainer + depth.marks * depth.marks * kLooksPerEnd)) {
      return refuse(begin, "its lists and quotes lie deeper in each other than a plan's may",
                    "write them with fewer levels");
    }
    if (!in_table_ && is_like_table_rule(line) && !spend((begin - stretch_) * kLooksPerTableByte)) {
      return refuse(begin, "too many lines of one paragraph look like the rule of a table",
                    "put an empty line before each table");
    }
    read_marks(begin, end);
    if (marks_ > kMostMarks) {
      return refuse(
          begin, fmt::format("it has more than {} marks of emphasis, links and code", kMostMarks),
          kSplit);
    }
    if (!found_ && !spend(html_ * line.size())) {
      refuse(begin, "it opens more HTML than a plan may",
             "close each ‘<!--’ with ‘-->’, or write ‘\\<’ for a character that is meant as it is");
    }
  }

  void begin_stretch(std::size_t at) {
    stretch_ = at;
    lines_ = 0;
    in_table_ = false;
    html_ = 0;
    forget_marks();
  }

  void forget_marks() {
    brackets_.clear();
    emphasis_.clear();
    runs_ = 0;
  }

  // Marks go no further than their row of a table that has an empty line, a head and a rule of as
  // many columns before it, all written with bars on both sides.
  void follow_table(std::string_view line) {
    const bool barred = tables_ && line.size() > 1 && line[0] == '|' && line.back() == '|' &&
                        line.find('\\') == std::string_view::npos;
    const auto bars = std::count(line.begin(), line.end(), '|');
    ++lines_;
    if (lines_ == 1) head_bars_ = barred ? bars : 0;
    if (lines_ == 2) in_table_ = barred && bars == head_bars_ && is_like_table_rule(line);
    if (lines_ > 2) in_table_ = in_table_ && line.starts_with('|');
    if (in_table_) forget_marks();
  }

  void read_marks(std::size_t begin, std::size_t end) {
    const std::string_view line = text_.substr(begin, end - begin);
    const std::size_t comment_end = line.rfind("-->");
    for (std::size_t i = begin; i < end && !found_;) {
      const char c = text_[i];
      std::size_t size = 1;
      if (std::string_view("\\`<[]*_&").find(c) != std::string_view::npos) ++marks_;
      if (c == '\\') {
        odd_ = i;
        size = 2;
      } else if (c == '`') {
        odd_ = i;
      } else if (c == '<') {
        odd_ = i;
        const char next = i + 1 < end ? text_[i + 1] : ' ';
        const bool closed = comment_end != std::string_view::npos && begin + comment_end > i &&
                            line.substr(i - begin).starts_with("<!--");
        if ((next == '!' || next == '?') && !closed) ++html_;
      } else if (c == '[') {
        brackets_.push_back(i);
        bracket_ = i;
      } else if (c == ']') {
        close_bracket(i);
      } else if (c == '*' || c == '_') {
        size = std::min(text_.find_first_not_of(c, i), end) - i;
        take_emphasis({c, i, size});
      }
      i += size;
    }
  }

  void close_bracket(std::size_t at) {
    // Where a link ends cmark-gfm walks over every run of the paragraph, closed or not.
    look_back(at, brackets_.size() * kLooksPerBracket + runs_ * kLooksPerRun);
    // Certain only when nothing between the two can make text of either.
    if (!brackets_.empty() && is_behind(brackets_.back(), odd_)) {
      brackets_.pop_back();
    } else {
      odd_ = at;
    }
    bracket_ = at;
  }

  void take_emphasis(const Open& run) {
    const std::size_t behind = run.at + run.size;
    const bool word_before = is_word_before(text_, run.at);
    const bool word_after = is_word_at(text_, behind);
    const bool space_before = run.at == 0 || is_blank(text_[run.at - 1]);
    const bool space_after = behind >= text_.size() || is_blank(text_[behind]);
    if (space_before && space_after) return;
    if (run.mark == '_' && word_before && word_after) return;  // snake_case
    // CommonMark 0.29, 6.4: left-flanking and not right-flanking, and the other way round.
    const bool only_opens = word_after && (space_before || is_ascii_punctuation(text_[run.at - 1]));
    const bool only_closes = word_before && (space_after || is_ascii_punctuation(text_[behind]));
    ++runs_;
    if (!only_opens) look_back(run.at, emphasis_.size());
    if (!only_closes) {
      emphasis_.push_back({run, only_opens});
      return;
    }
    if (emphasis_.empty()) return;
    const auto& [last, pure] = emphasis_.back();
    const bool pair = pure && last.mark == run.mark && last.size == run.size;
    if (pair && is_behind(last.at, odd_) && is_behind(last.at, bracket_)) emphasis_.pop_back();
  }

  static bool is_ascii_punctuation(char c) {
    return c > ' ' && c < 0x7F && !is_letter(c) && !is_digit_byte(c);
  }
  static bool is_behind(std::size_t at, std::optional<std::size_t> other) {
    return !other || at > *other;
  }

  void look_back(std::size_t at, std::size_t looks) {
    if (spend(looks + 1)) return;
    refuse(at,
           "too many marks of emphasis (‘*’, ‘_’) and brackets (‘[’) stand in one paragraph here",
           "put empty lines between paragraphs, or a backslash before a mark that is meant as it "
           "is, as in ‘\\*’");
  }

  bool spend(std::size_t looks) {
    spent_ += looks;
    return spent_ <= most_;
  }
  void refuse(std::size_t at, std::string what, std::string hint) {
    if (!found_) found_ = CostlyShape{at, std::move(what), std::move(hint)};
  }

  std::string_view text_;
  std::size_t most_;
  bool tables_;
  std::size_t spent_ = 0;
  std::size_t text_lines_ = 0;
  std::size_t marks_ = 0;
  std::size_t deepest_ = 0;
  std::size_t stretch_ = 0;       ///< where it begins
  std::size_t lines_ = 0;         ///< of it, so far
  std::ptrdiff_t head_bars_ = 0;  ///< in its first line
  bool in_table_ = false;
  std::size_t runs_ = 0;                         ///< of emphasis in it
  std::size_t html_ = 0;                         ///< openings in it that may never close
  std::vector<std::size_t> brackets_;            ///< open ones, by place
  std::vector<std::pair<Open, bool>> emphasis_;  ///< what may open; true: what can do no more
  std::optional<std::size_t> odd_;               ///< the last mark that may make text of others
  std::optional<std::size_t> bracket_;           ///< the last bracket
  std::optional<CostlyShape> found_;
};

// cmark-gfm writes a definition's address out at each use of its name.
std::optional<CostlyShape> costly_definitions(std::string_view text) {
  constexpr std::size_t kMostExpanded = 16 * 1024 * 1024;  // bytes, if every bracket used it
  const auto brackets = static_cast<std::size_t>(std::count(text.begin(), text.end(), '['));
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find_first_of("\r\n", at), text.size());
    const std::string_view line = text.substr(at, end - at);
    const std::size_t close = line.find("]:");
    const bool defines = close != std::string_view::npos && line.find('[') < close;
    if (defines && line.size() * brackets > kMostExpanded) {
      return CostlyShape{at, "its links would take more memory than a plan may",
                         "shorten the address of this link"};
    }
    at = end + 1;
  }
  return std::nullopt;
}

}  // namespace

bool tables_are_bounded(std::string_view text) {
  constexpr std::size_t kMostColumns = 64;
  constexpr std::size_t kMostCells = 200'000;
  std::size_t lines = 1;
  std::size_t in_line = 0;
  std::size_t widest = 0;
  for (const char c : text) {
    if (c == '|') {
      widest = std::max(widest, ++in_line);
    } else if (c == '\n' || c == '\r') {
      ++lines;
      in_line = 0;
    }
  }
  return widest <= kMostColumns && widest * lines <= kMostCells;
}

std::optional<CostlyShape> costly_shape(std::string_view text, std::size_t most) {
  if (auto found = costly_definitions(text)) return found;
  return Meter(text, most).run();
}

}  // namespace chalkleaf::source
