// Words on a home sheet that look like the coach's own.
//
// A note with a clear label is kept from the sheet where it is read (plan/readers.h). What only
// looks like one — `Coach stands on the left`, `watch her wrists (coach only)` — is printed, since
// nothing a coach wrote is lost, and warned of here. The signs are common practice, no source.
// Tested by tests/reason/coach_words_test.cpp.
#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "base/text.h"
#include "reason/check_parts.h"
#include "reason/family_text.h"

namespace chalkleaf::reason {
namespace {

bool ends_word(std::string_view text, std::size_t at) {
  return at >= text.size() || !is_letter(text[at]);
}

// `your coach:`, `ask the coach:` speak to the family about the coach.
bool is_spoken_of(std::string_view text, std::size_t at) {
  const std::string_view before = trim(text.substr(0, at));
  const std::string_view last = before.substr(before.find_last_of(' ') + 1);
  return last == "your" || last == "the" || last == "a" || last == "our" || last == "my";
}

// Begins with `coach` or `coaches`, whatever brackets stand before it.
bool begins_with_coach(std::string_view text) {
  const std::size_t begin = std::min(text.find_first_not_of("([*_\"' "), text.size());
  const std::string_view rest = text.substr(begin);
  for (const std::string_view word : {"coaches", "coach's", "coach"}) {
    if (rest.starts_with(word)) return ends_word(rest, word.size());
  }
  return false;
}

// `… Coach: count aloud`, `… (coach only)`
bool names_coach_inside(std::string_view text) {
  static constexpr std::array<std::string_view, 9> kSure{
      "coach only",       "coaches only",      "only for the coach",
      "only for coaches", "not for families",  "not for parents",
      "for coaches only", "coach's eyes only", "do not tell the parents"};
  for (const std::string_view sign : kSure) {
    if (text.find(sign) != std::string_view::npos) return true;
  }
  for (std::size_t at = text.find("coach"); at != std::string_view::npos;
       at = text.find("coach", at + 1)) {
    std::size_t end = at + 5;
    if (text.substr(end).starts_with("es")) end += 2;
    const bool word = (at == 0 || !is_letter(text[at - 1])) && ends_word(text, end);
    const std::string_view rest = text.substr(std::min(end, text.size()));
    const bool marked = rest.starts_with(":") || rest.starts_with(" - ") ||
                        rest.starts_with(" –") || rest.starts_with(" —");
    const bool bracket = at > 0 && (text[at - 1] == '(' || text[at - 1] == '[');
    if (word && (marked || bracket) && !is_spoken_of(text, at)) return true;
  }
  return false;
}

bool looks_like_coachs(const FamilyText& text) {
  const std::string words = replace_all(lower_ascii(text.words->text), "’", "'");
  if (names_coach_inside(words)) return true;
  for (const std::string_view begin :
       {"for the coach", "for coaches", "note to the coach", "nb coach"}) {
    if (words.starts_with(begin)) return true;
  }
  return text.kind == FamilyText::Kind::kText && begins_with_coach(words);
}

}  // namespace

void check_coach_words(const Subject& subject, Diagnostics& diagnostics) {
  if (!subject.at_home()) return;
  for (const FamilyText& text : family_texts(subject.session)) {
    if (text.addressed || !looks_like_coachs(text)) continue;
    diagnostics.add({Severity::kWarning,
                     "coach-words-at-home",
                     text.words->span,
                     "this goes to the families, and reads like a note for the coach",
                     {},
                     "if it is the coach's, write it on a line of its own that begins with "
                     "`Coach:`; if it is for families, say `your coach`, or begin it with "
                     "`Family:`"});
  }
}

}  // namespace chalkleaf::reason
