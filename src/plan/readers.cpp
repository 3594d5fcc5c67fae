// See the header.
#include "plan/readers.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/text.h"
#include "plan/lines.h"

namespace chalkleaf::plan {
namespace {

constexpr std::size_t kLongestLabel = 40;  // bytes; what is longer is a sentence

constexpr std::array<std::string_view, 26> kCoach{"coach",
                                                  "coaches",
                                                  "coach's",
                                                  "coaches'",
                                                  "lead coach",
                                                  "head coach",
                                                  "assistant coach",
                                                  "coaches and helpers",
                                                  "coach and helper",
                                                  "coach and helpers",
                                                  "coach/helper",
                                                  "coaches/helpers",
                                                  "coaching staff",
                                                  "coaching note",
                                                  "coaching notes",
                                                  "staff",
                                                  "helper",
                                                  "helpers",
                                                  "instructor",
                                                  "instructors",
                                                  "trainer",
                                                  "trainers",
                                                  "not for families",
                                                  "not for parents",
                                                  "private",
                                                  "confidential"};
constexpr std::array<std::string_view, 20> kFamily{"family",
                                                   "families",
                                                   "family's",
                                                   "parent",
                                                   "parents",
                                                   "parents'",
                                                   "carer",
                                                   "carers",
                                                   "parents and carers",
                                                   "parents or carers",
                                                   "guardians",
                                                   "parents/carers",
                                                   "parents & carers",
                                                   "parents and guardians",
                                                   "mum and dad",
                                                   "mums and dads",
                                                   "mum or dad",
                                                   "grown-ups",
                                                   "at home",
                                                   "at-home"};
// Taken off again and again: `Note for the coaches only`.
constexpr std::array<std::string_view, 14> kBefore{
    "notes for ",  "note for ",     "notes to ", "note to ", "message for ",
    "message to ", "reminder for ", "for ",      "to ",      "the ",
    "all ",        "our ",          "note ",     "notes "};
constexpr std::array<std::string_view, 7> kBehind{" only", " notes",    " note",   " please",
                                                  " info", " reminder", " message"};

bool strip_once(std::string_view& label) {
  for (const std::string_view before : kBefore) {
    if (!label.starts_with(before)) continue;
    label.remove_prefix(before.size());
    return true;
  }
  for (const std::string_view behind : kBehind) {
    if (!label.ends_with(behind)) continue;
    label.remove_suffix(behind.size());
    return true;
  }
  return false;
}

template <std::size_t N>
bool is_any(std::string_view word, const std::array<std::string_view, N>& known) {
  return std::find(known.begin(), known.end(), word) != known.end();
}

// In small letters, without the brackets, stars and double spaces people set it off with.
std::string plain_label(std::string_view text) {
  std::string out;
  for (const char c : replace_all(lower_ascii(text), "’", "'")) {
    const bool space = c == ' ' || c == '\n' || c == '\t';
    const bool mark = c == '(' || c == ')' || c == '[' || c == ']' || c == '*' || c == '_';
    if (mark || (space && (out.empty() || out.back() == ' '))) continue;
    out += space ? ' ' : c;
  }
  if (out.ends_with(' ')) out.pop_back();
  return out;
}

std::optional<Note::For> reader_named(std::string_view text) {
  const std::string plain = plain_label(text);
  std::string_view label = plain;
  do {
    if (is_any(label, kCoach)) return Note::For::kCoach;
    if (is_any(label, kFamily)) return Note::For::kFamily;
  } while (strip_once(label));
  return std::nullopt;
}

// What may set a label off, besides the colon: how many bytes of it stand at `at`; 0 when none.
std::size_t mark_at(std::string_view text, std::size_t at) {
  // Asked of every byte of every line, and hardly any begins a mark.
  if (std::string_view("\xE2-=)].!").find(text[at]) == std::string_view::npos) return 0;
  const std::string_view rest = text.substr(at);
  const bool after_space = at > 0 && text[at - 1] == ' ';
  const bool opened = text.starts_with('(') || text.starts_with('[');
  for (const std::string_view dash : {"–", "—", "−"}) {
    if (rest.starts_with(dash)) return dash.size();
  }
  if (rest.starts_with("- ") || rest.starts_with("= ")) return after_space ? 1 : 0;
  if ((rest[0] == ')' || rest[0] == ']') && opened) return 1;
  if (rest.starts_with(". ") || rest.starts_with("! ")) return 1;
  return 0;
}

// A word at a line's begin may be there by chance (`…ask the / coach: she knows`); a capital or a
// bracket is not.
bool begins_like_label(std::string_view text) {
  return !text.empty() && ((text[0] >= 'A' && text[0] <= 'Z') || text[0] == '(' || text[0] == '[');
}

std::size_t behind_space(std::string_view text, std::size_t at) {
  while (at < text.size() && (text[at] == ' ' || text[at] == '\n')) ++at;
  return at;
}

}  // namespace

std::optional<ReaderLabel> reader_label(std::string_view text) {
  const std::size_t skipped = text.size() - std::min(text.size(), trim(text).size());
  const std::string_view head = text.substr(0, kLongestLabel + skipped);
  const auto label = [&](std::size_t at, std::size_t size) -> std::optional<ReaderLabel> {
    const auto reader = reader_named(head.substr(0, at));
    if (!reader) return std::nullopt;
    // `(coach): stand by`, `(Coach) – stand by`
    std::size_t words = behind_space(text, at + size);
    if (size == 1 && (text[at] == ')' || text[at] == ']') && words < text.size()) {
      const std::size_t more = text[words] == ':' ? 1 : mark_at(text, words);
      words = behind_space(text, words + more);
    }
    return ReaderLabel{*reader, at, words};
  };
  if (const std::size_t colon = head.find(':'); colon != std::string_view::npos) {
    if (const auto found = label(colon, 1)) return found;
  }
  for (std::size_t at = 1; at < head.size(); ++at) {
    const std::size_t size = mark_at(head, at);
    if (size == 0) continue;
    if (const auto found = label(at, size)) return found;
  }
  // A label alone: what it is for stands below it.
  if (const auto reader = reader_of_title(text)) {
    return ReaderLabel{*reader, text.size(), text.size()};
  }
  return std::nullopt;
}

std::optional<Note::For> reader_of_title(std::string_view title) {
  title = trim(title);
  if (title.size() > kLongestLabel) return std::nullopt;
  while (title.ends_with(':')) title.remove_suffix(1);
  return reader_named(title);
}

std::vector<ForReader> parted_by_reader(const source::Text& paragraph) {
  const std::string_view all = paragraph.str();
  std::vector<std::size_t> starts{0};
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!is_line_break(paragraph, i)) continue;
    const std::string_view rest = all.substr(i + 1, kLongestLabel + 1);
    if (begins_like_label(rest) && reader_label(rest)) starts.push_back(i + 1);
  }
  starts.push_back(all.size());
  std::vector<ForReader> out;
  for (std::size_t i = 0; i + 1 < starts.size(); ++i) {
    ForReader piece{Note::For::kAll, paragraph.slice(starts[i], starts[i + 1]).trimmed()};
    if (const auto label = reader_label(piece.text.str())) {
      piece.reader = label->reader;
      source::Text said = piece.text.slice(label->words, piece.text.str().size()).trimmed();
      if (!said.empty()) piece.text = std::move(said);
    }
    if (!piece.text.empty()) out.push_back(std::move(piece));
  }
  return out;
}

}  // namespace chalkleaf::plan
