// See the header.
#include "base/paper.h"

#include <algorithm>
#include <string>
#include <vector>

#include "base/text.h"

namespace chalkleaf {
namespace {

constexpr std::size_t kSizes = 4;
constexpr std::array<std::string_view, kPapers.size()> kKeys = {
    "a4",           "a5",           "letter",           "half-letter",
    "a4-landscape", "a5-landscape", "letter-landscape", "half-letter-landscape"};

std::size_t index(Paper paper) { return static_cast<std::size_t>(paper); }

Length inches(double n) { return Length::pt(n * 72); }

Size upright_size(Paper paper) {
  switch (static_cast<Paper>(index(paper) % kSizes)) {
    case Paper::kA4:
      return {Length::mm(210), Length::mm(297)};
    case Paper::kA5:
      return {Length::mm(148), Length::mm(210)};
    case Paper::kLetter:
      return {inches(8.5), inches(11)};
    default:
      return {inches(5.5), inches(8.5)};
  }
}

}  // namespace

bool is_landscape(Paper paper) { return index(paper) >= kSizes; }

Paper turned(Paper paper) { return static_cast<Paper>((index(paper) + kSizes) % kPapers.size()); }

Size paper_size(Paper paper) {
  const Size upright = upright_size(paper);
  return is_landscape(paper) ? Size{upright.height, upright.width} : upright;
}

Paper kin(Paper paper) {
  if (is_landscape(paper)) return turned(paper);
  if (paper == Paper::kLetter) return Paper::kA4;
  return paper == Paper::kHalfLetter ? Paper::kA5 : paper;
}

// A cut across the long side turns the sheet: upright halves come from a sheet on its side.
std::optional<Paper> half_of(Paper paper) {
  const auto size = static_cast<Paper>(index(paper) % kSizes);
  if (size != Paper::kA4 && size != Paper::kLetter) return std::nullopt;
  const Paper upright = size == Paper::kA4 ? Paper::kA5 : Paper::kHalfLetter;
  return is_landscape(paper) ? upright : turned(upright);
}

std::optional<Paper> double_of(Paper paper) {
  const auto found = std::find_if(kPapers.begin(), kPapers.end(),
                                  [&](Paper other) { return half_of(other) == paper; });
  return found == kPapers.end() ? std::nullopt : std::optional(*found);
}

std::string_view paper_key(Paper paper) { return kKeys[index(paper)]; }

std::optional<Paper> read_paper(std::string_view text) {
  // Words in any order, however they are joined.
  bool landscape = false;
  bool portrait = false;
  std::string name;
  std::string word;
  for (const char c : lower_ascii(text) + " ") {
    if (c != ' ' && c != '-' && c != '_' && c != ',' && c != '\t') {
      word += c;
      continue;
    }
    if (word == "landscape") {
      if (landscape) return std::nullopt;
      landscape = true;
    } else if (word == "portrait" || word == "upright") {
      if (portrait) return std::nullopt;
      portrait = true;
    } else if (word != "us" && word != "paper" && word != "size") {
      name += word;
    }
    word.clear();
  }
  if (landscape && portrait) return std::nullopt;
  for (std::size_t i = 0; i < kSizes; ++i) {
    if (name == replace_all(std::string(kKeys[i]), "-", ""))
      return landscape ? turned(kPapers[i]) : kPapers[i];
  }
  return std::nullopt;
}

}  // namespace chalkleaf
