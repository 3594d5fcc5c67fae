// See the header.
#include "draft/dose_lines.h"

#include <algorithm>

#include "base/text.h"
#include "draft/grids.h"
#include "draft/line_scores.h"
#include "draft/weights.h"

namespace chalkleaf::draft {
namespace {

class DoseLines {
 public:
  DoseLines(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines)
      : words_(words), source_(source), lines_(lines) {}

  void run() {
    find_brackets();
    std::vector<std::size_t> names;
    for (std::size_t i = 0; i + 1 < lines_.size(); ++i) {
      const Line& name = lines_[i].line;
      const Line& dose = lines_[i + 1].line;
      if (is_open(lines_[i]) && is_open(lines_[i + 1]) && !dose.clock && is_plain_name(name) &&
          is_only_dose(dose))
        names.push_back(i);
    }
    if (names.size() < 3) return;
    for (const std::size_t i : names) {
      Line& dose = lines_[i + 1].line;
      const std::string_view text = bare_dose(dose);
      Line& name = lines_[i].line;
      name.text += static_cast<std::uint32_t>(
          label_size(name.words(source_), Role::kColumnDrill));  // `Do: side support`
      name.end = dose.end;
      lines_[i].dose_begin = static_cast<std::uint32_t>(text.data() - source_.text().data());
      lines_[i].dose_end = lines_[i].dose_begin + static_cast<std::uint32_t>(text.size());
      for (std::size_t k = i + 2; k < lines_.size() && is_open(lines_[k]); ++k) {
        if (lines_[k].line.indent <= name.indent || is_only_dose(lines_[k].line)) break;
        lines_[k].remark_below = true;
      }
      dose.blank = true;
      dose.text = dose.end;
    }
  }

 private:
  // `- dish (3 x 5 secs)`, `- ski jumps (20)`: in a list whose doses stand in brackets behind their
  // names, a number alone is one, too.
  void find_brackets() {
    std::vector<std::pair<DraftLine*, std::string_view>> found;
    std::size_t sure = 0;
    for (DraftLine& one : lines_) {
      if (!is_open(one) || !is_listed(one.line)) continue;
      const std::string_view text = one.line.words(source_);
      const std::size_t open = text.rfind('(');
      if (!text.ends_with(')') || open == std::string_view::npos || open < 3) continue;
      const std::string_view inside = trim(text.substr(open + 1, text.size() - open - 2));
      if (text.substr(0, open).find_first_of("0123456789:(") != std::string_view::npos) continue;
      if (!is_dose(inside)) continue;
      sure += inside.size() > 2 ? 1 : 0;
      found.emplace_back(&one, inside);
    }
    if (found.size() < 3 || sure < 2) return;
    for (const auto& [one, inside] : found) {
      one->dose_begin = static_cast<std::uint32_t>(inside.data() - source_.text().data());
      one->dose_end = one->dose_begin + static_cast<std::uint32_t>(inside.size());
    }
  }
  static bool is_open(const DraftLine& one) {
    return one.reading == DraftLine::Reading::kBlank && !one.line.blank && !one.line.table &&
           !is_of_rotation(one);
  }
  bool is_plain_name(const Line& line) const {
    std::string_view text = line.words(source_);
    text.remove_prefix(label_size(text, Role::kColumnDrill));
    constexpr std::size_t kLongestName = 60;  // bytes
    return text.size() <= kLongestName &&
           text.find_first_of("0123456789:") == std::string_view::npos;
  }
  // The bytes of a label of that role and its colon: `How many: `; 0 where there is none.
  std::size_t label_size(std::string_view text, Role role) const {
    const std::size_t colon = text.substr(0, 24).find(':');
    if (colon == std::string_view::npos) return 0;
    const Pieces label = pieces_of(text.substr(0, colon));
    if (label.empty() || words_.match(role, label, 0, label.size()) != label.size()) return 0;
    return std::min(text.find_first_not_of(' ', colon + 1), text.size());
  }
  std::string_view bare_dose(const Line& line) const {
    std::string_view text = trim(line.words(source_));
    for (const Role role : {Role::kColumnDose, Role::kRepetition})
      text.remove_prefix(label_size(text, role));
    if (text.starts_with('(') && text.ends_with(')')) text = trim(text.substr(1, text.size() - 2));
    return text;
  }
  bool is_only_dose(const Line& line) const {
    return line.mark != Line::Mark::kHash && is_dose(bare_dose(line));
  }
  bool is_dose(std::string_view text) const {
    if (text.size() > 40) return false;
    if (text.empty() || text.find_first_of("0123456789") == std::string_view::npos) return false;
    if (text.size() < 3 && text.find_first_not_of("0123456789") == std::string_view::npos)
      return true;
    const SpokenDrill read = read_named(words_, "", text, {});
    if (!read.dose || !read.notes.empty()) return false;
    const bool long_time = read.dose->kind == SpokenDose::Kind::kSeconds &&
                           read.dose->values.front() >= kPartMinutes * 60;
    return !long_time;
  }

  const Lexicon& words_;
  const Source& source_;
  std::vector<DraftLine>& lines_;
};

}  // namespace

void join_doses(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines) {
  DoseLines(words, source, lines).run();
}

}  // namespace chalkleaf::draft
