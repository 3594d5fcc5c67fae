// The manual of the checks: what cannot be read, found or printed. A club cannot switch these off:
// what stands behind them would be guessed at, or lost.
#include "reason/check_list.h"

namespace chalkleaf::reason {

std::vector<CheckInfo> writing_checks() {
  constexpr bool kFixed = false;
  return {
      {"unreadable-dose", kError, "What stands behind a drill's colon cannot be read as a dose.",
       "A dose that is guessed at would print the wrong work.", kOurs,
       "Write it in one of the forms that the message shows; examples/README.md has them all.",
       "- Dish hold: a few times", kFixed},
      {"read-as", Severity::kNote,
       "A line in a form of the coach's own was read as one of the taught form.",
       "What prints is what was read, so the coach has to be able to compare.", kOurs,
       "Look at what it was read as; `chalkleaf tidy` writes it so.", "- Jog 3 mins", kFixed},
      {"unknown-key", kError, "A word before a colon is not one the language knows.",
       "It would be ignored, and the coach would never learn of it.", kOurs,
       "Correct the word; the message names the closest one that is known. In a plan's front "
       "matter it is a warning, and the card shows the line as it was typed.",
       "theme: rolling", kFixed},
      {"duplicate-key", kError, "One thing is said twice.", "Of two values only one can be meant.",
       kOurs, "Keep one of the two lines.", "slot: 40 min\nslot: 45 min", kFixed},
      {kBadValue, kError,
       "A value cannot be what it stands for, or a line stands where it means nothing.",
       "What cannot be right is not printed.", kOurs,
       "Write it as the message shows. In a plan's front matter it is a warning, unless it is "
       "about safety: the sheets print without it, and the card shows the line as it was typed.",
       "slot: soon", kFixed},
      {"missing-key", kError, "A plan or club file lacks something no sheet can do without.",
       "What is taken in its place may not be what was meant.", kOurs,
       "Add the line that the message shows. A plan is called as its group or its file until it "
       "has a title, and is one for the hall until it says `place: home`.",
       "---\ngroup: Kestrels\n---   (and no title or place)", kFixed},
      {"unknown-part", kError,
       "A link to a shared part leads nowhere, or to something that is no part.",
       "The part would be missing from the sheet.", kOurs,
       "Correct the path; it begins at the file it stands in.", "[The warm-up](../parts/warmup.md)",
       kFixed},
      {"part-cycle", kError, "Shared parts use each other in a circle.",
       "Following them would never end.", kOurs, "Take one of the links out.",
       "[The same part again](warm-up.md)   (in warm-up.md)", kFixed},
      {"outside-folder", kError, "A plan names a file outside its club's folder.",
       "A plan comes from anyone who may write to the repository, and must work for the next "
       "coach.",
       kOurs, "Copy the file into the club's folder and name the copy.",
       "[Warm-up](../../elsewhere/warm-up.md)", kFixed},
      {"unreadable-file", kError, "A file is missing, too large, or not what it should be.",
       "What cannot be read cannot be checked or printed.", kOurs,
       "The message says what is wrong; save the file again as text (UTF-8), or a picture as PNG "
       "or JPEG.",
       "![a child in dish shape](../pictures/dsh.png)", kFixed},
      {"text-overflow", kError, "Something does not fit its place on the page.",
       "It would be cut off or stand on other text.", kOurs,
       "Shorten it, or print on larger paper.",
       "- "
       "Awordwithoutanyplacetobreakwhichiswiderthanthewholeofthepageofacardthatisasmallsheetofpaper"
       ": 10",
       kFixed},
      {"does-not-fit", kWarning, "A sheet needs more pages than `fit:` asks for.",
       "Smaller type than the theme's minimum could not be read at arm's length, so the sheet is "
       "printed as small as it can be.",
       kOurs, "Shorten the drills that the message names, take some out, or ask for more pages.",
       "fit: 1 page   (and forty drills)", kFixed},
      {"colour-adjusted", kWarning, "A colour of the club's is printed darker or lighter.",
       "As it is written, titles in it could not be read by everyone, or a figure's parts could "
       "not be told apart on a grey printer.",
       "WCAG 2.2, 1.4.6 (text 7:1); for figures a rule of ours, no source.",
       "Write the colour that the message names, or leave it: it is only told.",
       "colours: {main: '#e8b400'}", kFixed},
      {"logo-unclear", kWarning, "The club's logo cannot be seen well in print.",
       "A logo for a dark web page is too pale for white paper, and few pixels look coarse.",
       "WCAG 2.2, 1.4.11 (graphics 3:1); how much of it and how many pixels are common practice, "
       "no source.",
       "Name another version of the logo. One that is too pale is left out.",
       "logo: pictures/pale-gold.png", kFixed},
      {"missing-glyph", kWarning, "No font has a character.", "It prints as a crossed box.", kOurs,
       "Use another character, or install a font that has it.", "- Dish hold 𓀀: 2 x 20 s", kFixed},
      {"not-written", kError, "A sheet could not be written.",
       "An old sheet must not be taken for the new one.", kOurs,
       "Make room on the disk, or close the program that holds the file.",
       "(a full disk, a folder without write permission)", kFixed},
  };
}

}  // namespace chalkleaf::reason
