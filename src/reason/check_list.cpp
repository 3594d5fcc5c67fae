// Every check of the program by its stable name: the manual, and what `explain` will print.
// Tested by tests/reason/check_list_test.cpp.
#include "reason/checks.h"

namespace chalkleaf::reason {

const std::vector<CheckInfo>& all_checks() {
  constexpr auto kError = Severity::kError;
  constexpr auto kWarning = Severity::kWarning;
  static const std::vector<CheckInfo> kChecks = {
      // The session as a whole.
      {"missing-warm-up", kError, "Cold bodies are hurt more easily, so every session warms up"},
      {"missing-cool-down", kError, "A session ends calmly, with time to settle and to look back"},
      {"warm-up-not-first", kError, "Nothing comes before the warm-up"},
      {"cool-down-not-last", kError, "Nothing comes after the cool-down"},
      {"over-slot", kError,
       "The session must be over when its slot is, because the hall is not ours after it"},
      {"under-slot", kWarning, "More than a tenth of the slot unplanned leaves a group waiting"},
      {"over-budget", kWarning,
       "A part with a time of its own keeps to it, or the next one starts late"},
      // Its drills.
      {"substitute-without-easier", kError,
       "Who lacks the kit still needs a choice that is not “I can't”"},
      {"no-dose", kError, "Without a dose nobody knows how much to do, nor how long it takes"},
      {"unreadable-dose", kError, "A dose that is guessed at would print the wrong work"},
      // What is written.
      {"unknown-key", kError, "A word the compiler does not know is asked about, never ignored"},
      {"duplicate-key", kError, "Of two values for one thing only one can be meant"},
      {"bad-value", kError, "A value that cannot be right is not printed"},
      {"missing-key", kError, "Some values no sheet can do without"},
      // Files.
      {"unknown-part", kError,
       "A link to a shared part must lead to one, or the part would be lost"},
      {"part-cycle", kError, "A shared part that uses itself would never end"},
      {"outside-folder", kError,
       "A plan uses only what is in its own club's folder, so that it works for the next coach"},
      {"unreadable-file", kError, "A file that is missing, too large or not text cannot be used"},
      // Home plans.
      {"no-adult-note", kError, "At home no coach is there, so an adult has to be in the room"},
      {"no-space-note", kError,
       "At home the floor is full of furniture, so space is cleared first"},
      // The printed page.
      {"text-overflow", kError, "Text that does not fit its place would be cut off on paper"},
      {"missing-glyph", kWarning, "A character that no font has prints as a crossed box"},
      {"not-written", kError, "A sheet that could not be written must not be taken for a new one"},
  };
  return kChecks;
}

}  // namespace chalkleaf::reason
