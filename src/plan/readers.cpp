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

constexpr std::array<std::string_view, 3> kCoach{"coach", "coaches", "coach's"};
constexpr std::array<std::string_view, 11> kFamily{"family",
                                                   "families",
                                                   "parent",
                                                   "parents",
                                                   "carer",
                                                   "carers",
                                                   "parents and carers",
                                                   "parents or carers",
                                                   "guardians",
                                                   "parents/carers",
                                                   "parents & carers"};
// Longer ones first.
constexpr std::array<std::string_view, 8> kBefore{"notes for ", "note for ", "note to ", "for ",
                                                  "to ",        "the ",      "all ",     "our "};
constexpr std::array<std::string_view, 4> kBehind{" only", " notes", " note", " please"};

void strip(std::string& label) {
  for (const std::string_view before : kBefore) {
    if (label.starts_with(before)) label.erase(0, before.size());
  }
  for (const std::string_view behind : kBehind) {
    if (label.ends_with(behind)) label.resize(label.size() - behind.size());
  }
}

template <std::size_t N>
bool is_any(const std::string& word, const std::array<std::string_view, N>& known) {
  return std::find(known.begin(), known.end(), word) != known.end();
}

// A word at a line's begin may be there by chance (`…ask the / coach: she knows`); a capital is
// not.
bool begins_with_capital(std::string_view text) {
  return !text.empty() && text[0] >= 'A' && text[0] <= 'Z';
}

}  // namespace

std::optional<ReaderLabel> reader_label(std::string_view text) {
  const std::size_t skipped = text.size() - std::min(text.size(), trim(text).size());
  const std::size_t colon = text.substr(0, kLongestLabel + skipped).find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  std::string label = lower_ascii(trim(text.substr(0, colon)));
  std::replace(label.begin(), label.end(), '\n', ' ');
  label = replace_all(label, "’", "'");
  strip(label);
  if (is_any(label, kCoach)) return ReaderLabel{Note::For::kCoach, colon};
  if (is_any(label, kFamily)) return ReaderLabel{Note::For::kFamily, colon};
  return std::nullopt;
}

std::vector<ForReader> parted_by_reader(const source::Text& paragraph) {
  const std::string_view all = paragraph.str();
  std::vector<std::size_t> starts{0};
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!is_line_break(paragraph, i)) continue;
    const std::string_view rest = all.substr(i + 1, kLongestLabel + 1);
    if (begins_with_capital(rest) && reader_label(rest)) starts.push_back(i + 1);
  }
  starts.push_back(all.size());
  std::vector<ForReader> out;
  for (std::size_t i = 0; i + 1 < starts.size(); ++i) {
    ForReader piece{Note::For::kAll, paragraph.slice(starts[i], starts[i + 1]).trimmed()};
    if (const auto label = reader_label(piece.text.str())) {
      piece.reader = label->reader;
      source::Text said = piece.text.slice(label->colon + 1, piece.text.str().size()).trimmed();
      if (!said.empty()) piece.text = std::move(said);
    }
    if (!piece.text.empty()) out.push_back(std::move(piece));
  }
  return out;
}

}  // namespace chalkleaf::plan
