// See the header.
#include "draft/drills.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "draft/assembler.h"
#include "draft/line_scores.h"
#include "draft/spoken_dose.h"

namespace chalkleaf::draft {
bool SpokenLine::has_dose() const {
  return std::any_of(drills.begin(), drills.end(),
                     [](const SpokenDrill& drill) { return drill.dose.has_value(); });
}

SpokenDrill read_named(const Lexicon& words, std::string_view name, std::string_view dose,
                       const Setting& setting) {
  SpokenDrill out;
  out.name = name;
  out.typed = std::string(name) + " " + std::string(dose);
  if (is_too_long(dose)) {
    out.notes.emplace_back(dose);
    return out;
  }
  const Pieces pieces = spoken_pieces(words, dose);
  for (const Item& item : cut(words, pieces, dose, Place::kInside)) {
    if (item.kind == Item::Kind::kElement) out.elements.push_back(item.element);
    if (item.kind != Item::Kind::kWords && item.kind != Item::Kind::kBracket) continue;
    const std::size_t begin = pieces[item.begin].begin;
    out.notes.emplace_back(trim(dose.substr(begin, pieces[item.end - 1].end - begin)));
  }
  out.dose = resolve(words, out, setting);
  return out;
}

SpokenLine read_drills(const Lexicon& words, std::string_view line, const Setting& setting) {
  if (is_too_long(line)) return {};
  const Pieces pieces = spoken_pieces(words, line);
  return Assembler(words, pieces, line, setting).run(cut(words, pieces, line));
}

}  // namespace chalkleaf::draft
