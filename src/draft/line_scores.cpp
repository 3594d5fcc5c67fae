// See the header.
#include "draft/line_scores.h"

#include <algorithm>

#include "draft/remarks.h"
#include "draft/weights.h"

namespace chalkleaf::draft {

bool is_too_long(std::string_view line) {
  constexpr std::size_t kMostNumbers = 60;
  if (line.size() > kLongestLine) return true;
  std::size_t numbers = 0;
  bool inside = false;
  for (const char c : line) {
    const bool digit = c >= '0' && c <= '9';
    numbers += digit && !inside ? 1 : 0;
    inside = digit;
  }
  return numbers > kMostNumbers;
}

double LineScores::heading(const DraftLine& one, const DraftLine* next, bool behind_blank) const {
  if (one.heading.evidence <= kNever) return kNever;
  double score = one.heading.evidence + kWeights.heading_costs;
  if (one.dose_behind) score += kWeights.dosed + kWeights.several * more_doses(one);
  if (habits_.weak_parts && one.dose_behind) score += kWeights.weak_part;
  const bool below =
      next != nullptr && !one.line.blank &&
      ((is_listed(next->line) && !is_listed(one.line)) || next->line.indent > one.line.indent + 1);
  // `3. Floor work`, and below it, further in, its drills.
  const bool numbered = below && one.line.mark == Line::Mark::kNumber &&
                        next->line.indent > one.line.indent + 1 && !one.spoken.has_dose();
  // `- Floor`, and below it, further in, its drills.
  const std::string_view words = one.line.words(source_).substr(0, kLongestLine);
  const bool nested = below && one.line.mark == Line::Mark::kBullet &&
                      next->line.indent > one.line.indent + 1 && !one.spoken.has_dose() &&
                      opens_by_word(words);
  if (nested) score -= kWeights.bullet;
  if (below && (!is_listed(one.line) || numbered || nested)) score += kWeights.list_below;
  const bool steps = next != nullptr && next->line.indent > one.line.indent;
  // `Animals, there and back each:`, above a list further in
  if (steps && !habits_.stepped && one.line.words(source_).ends_with(':')) {
    score += kWeights.colon_above;
    if (one.line.mark == Line::Mark::kBullet) score -= kWeights.bullet;
  }
  if (habits_.stepped) {
    const bool inside = one.line.indent > habits_.margin;
    if (steps && !inside) score += kWeights.steps_in;
    if (steps && !inside && one.line.mark == Line::Mark::kBullet && !nested)
      score -= kWeights.bullet;
    if (inside && !steps) score += kWeights.inside_step;
  }
  if (behind_blank) score += kWeights.blank_before;
  if (one.line.mark == Line::Mark::kNumber && !one.line.clock && !one.heading.strong && !numbered)
    score += kWeights.bullet;
  // An amount in its words: `hop 10`.
  const std::string_view head =
      source_.text().substr(one.heading.name_begin, one.heading.name_end - one.heading.name_begin);
  if (read_drills(words_, head, {}).has_dose()) score += kWeights.dose_in_head;
  return score;
}

// All of it, but for minutes, is a word that opens parts.
bool LineScores::opens_by_word(std::string_view text) const {
  const Pieces pieces = pieces_of(text);
  const std::size_t phrase = words_.match_part(pieces, 0, pieces.size());
  return phrase > 0 && (phrase == pieces.size() || !pieces[phrase].is(Piece::Kind::kWord));
}

double LineScores::drills(const DraftLine& one) const {
  if (one.heading.evidence <= kNever) return kNever;
  double score = (one.spoken.has_dose() && !is_only_minutes(one)) || one.spoken.group
                     ? (is_weak(words_, one) ? kWeights.weak_dose : kWeights.dosed)
                     : kWeights.undosed;
  score += kWeights.several * more_doses(one);
  if (is_listed(one.line) || one.line.indent > habits_.margin + 1) score += kWeights.listed;
  if (one.line.grid && !one.spoken.has_dose()) score -= kWeights.dosed;
  if (one.about_child) score += kWeights.child_is_no_drill;
  if (one.line.clock) score += kWeights.clock_of_drill;
  if (is_short_name(one)) score += kWeights.short_name;
  return score;
}

double LineScores::remark(const DraftLine& one) const {
  const std::string_view text = one.line.words(source_).substr(0, kLongestLine);
  const Pieces pieces = pieces_of(text);
  double score = kWeights.remark;
  if (words_.is(Role::kRemark, pieces, 0, pieces.size())) score += kWeights.remark_begins;
  if (one.about_child) score += kWeights.about_child;
  if (one.label) score += kWeights.label;
  if (!one.spoken.has_dose() && words_.within(Role::kVerb, pieces, 0, pieces.size()))
    score += kWeights.sentence_verb;
  if (text.ends_with('.') || text.ends_with('!') || text.ends_with('?'))
    score += kWeights.remark_sentence;
  std::size_t sentences = 0;
  for (std::size_t i = 0; i + 2 < text.size(); ++i) {
    const bool mark = text[i] == '.' || text[i] == '!' || text[i] == '?';
    if (mark && text[i + 1] == ' ' && text[i + 2] >= 'A' && text[i + 2] <= 'Z') ++sentences;
  }
  if (sentences > 1 && text.size() > 80) score += kWeights.prose;
  const bool begins = words_.is(Role::kRemark, pieces, 0, pieces.size());
  if (one.spoken.has_dose() && !begins) score += kWeights.dose_in_remark;
  if (one.line.clock) score += kWeights.clock_of_drill;
  return score;
}

// Behind the first, up to three: doses that are more than a number.
double LineScores::more_doses(const DraftLine& one) const {
  constexpr std::ptrdiff_t kMost = 3;
  const auto sure = [](const Element& e) {
    return e.is_amount() && (e.kind != Element::Kind::kCount || e.unit != Unit::kBare || e.leads);
  };
  const auto dosed = std::count_if(
      one.spoken.drills.begin(), one.spoken.drills.end(), [&](const SpokenDrill& drill) {
        if (!drill.dose) return false;
        const Pieces name = pieces_of(drill.name);
        return words_.any_of({Role::kMove, Role::kStatic}, name, 0, name.size()) ||
               words_.within(Role::kMove, name, 0, name.size()) ||
               std::any_of(drill.elements.begin(), drill.elements.end(), sure);
      });
  return static_cast<double>(std::clamp<std::ptrdiff_t>(dosed - 1, 0, kMost));
}

// The minutes of a heading are all that looks like a dose: `Main activity – 15 mins`.
bool LineScores::is_only_minutes(const DraftLine& one) const {
  constexpr double kShort = 180;
  if (!one.heading.minutes || one.dose_behind) return false;
  if (habits_.minutes && ends_in_minutes(words_, source_, one.line)) return true;
  std::size_t dosed = 0;
  bool minutes = false;
  for (const SpokenDrill& drill : one.spoken.drills) {
    if (!drill.dose) continue;
    ++dosed;
    minutes =
        drill.dose->kind == SpokenDose::Kind::kSeconds && drill.dose->values.front() >= kShort;
  }
  return dosed == 1 && minutes;
}

// A few words that end in no mark: `wrists n ankles`.
bool LineScores::is_short_name(const DraftLine& one) const {
  constexpr std::size_t kMostPieces = 5;
  const std::string_view text = one.line.words(source_);
  if (text.size() > kLongestLine) return false;
  const Pieces pieces = pieces_of(text);
  const char last = text.empty() ? '.' : text.back();
  return pieces.size() <= kMostPieces && last != '.' && last != '!' && last != '?' && last != ':';
}

}  // namespace chalkleaf::draft
