#include "draft/opening_run.h"

#include <algorithm>

#include "draft/remarks.h"

namespace chalkleaf::draft {
namespace {

using Reading = DraftLine::Reading;

class OpeningRun {
 public:
  OpeningRun(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines)
      : words_(words), source_(source), lines_(lines) {}

  void run() {
    std::size_t parts = 0;
    while (parts < lines_.size() && !opens(lines_[parts])) ++parts;
    for (std::size_t begin = 0; begin < parts; ++begin) {
      std::size_t end = begin;
      std::size_t known = 0;
      while (end < parts && is_drill(lines_[end])) known += names_move(lines_[end++]) ? 1 : 0;
      // `"He came to the river …" (10 min)` is what the others stand below.
      const std::string_view top = lines_[begin].line.words(source_);
      if (end > begin + 2 && lines_[begin].heading.minutes && top.ends_with(')')) ++begin;
      if (end - begin > 2 || (end - begin == 2 && known == 2)) {
        for (std::size_t i = begin; i < end; ++i) lines_[i].reading = Reading::kDrills;
        if (begin > 0) head(lines_[begin - 1]);
        return;
      }
      begin = std::max(begin, end);
    }
  }

 private:
  static bool opens(const DraftLine& one) {
    return one.reading == Reading::kHeading || one.reading == Reading::kDrills ||
           one.reading == Reading::kGrid || one.reading == Reading::kKept || one.line.table;
  }

  bool is_drill(const DraftLine& one) const {
    constexpr std::size_t kLongest = 110;
    const std::string_view text = one.line.words(source_);
    if (one.reading != Reading::kRemark || one.about_child || one.label || one.line.clock ||
        text.size() > kLongest)
      return false;
    const auto sure = [](const Element& e) {
      return e.is_amount() && (e.kind != Element::Kind::kCount || e.unit != Unit::kBare);
    };
    return std::any_of(one.spoken.drills.begin(), one.spoken.drills.end(),
                       [&](const SpokenDrill& drill) {
                         return drill.dose && !drill.name.empty() &&
                                (names_move(one) ||
                                 std::any_of(drill.elements.begin(), drill.elements.end(), sure));
                       });
  }

  bool names_move(const DraftLine& one) const {
    return std::any_of(one.spoken.drills.begin(), one.spoken.drills.end(),
                       [&](const SpokenDrill& drill) {
                         const Pieces name = pieces_of(drill.name);
                         return drill.dose && (words_.within(Role::kMove, name, 0, name.size()) ||
                                               words_.within(Role::kStatic, name, 0, name.size()));
                       });
  }

  void head(DraftLine& one) const {
    constexpr std::size_t kLongest = 60;
    const std::string_view text = one.line.words(source_);
    const bool open = one.reading == Reading::kRemark && !one.about_child && !one.label &&
                      !one.line.table && text.size() <= kLongest &&
                      (!one.spoken.has_dose() || one.heading.minutes);
    if (!open) return;
    one.reading = Reading::kHeading;
    if (one.heading.name_end <= one.heading.name_begin || !one.heading.minutes) {
      one.heading.name_begin = one.line.text;
      one.heading.name_end = one.heading.rest = one.heading.rest_end = one.line.end;
    }
  }

  const Lexicon& words_;
  const Source& source_;
  std::vector<DraftLine>& lines_;
};

}  // namespace

void settle_opening_run(const Lexicon& words, const Source& source, std::vector<DraftLine>& lines) {
  OpeningRun(words, source, lines).run();
}

}  // namespace chalkleaf::draft
