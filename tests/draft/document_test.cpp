// Which line is what, in small drafts of different habits.
#include "draft/document.h"

#include <catch2/catch.hpp>

#include "draft/english.h"

using namespace chalkleaf;
using Reading = draft::DraftLine::Reading;

namespace {

// A letter a line: t title, r remark, h heading, d drills, g grid, - blank, . said elsewhere.
std::string readings(const std::string& text) {
  const Source source("d.md", text);
  std::string out;
  for (const draft::DraftLine& one : draft::read_document(draft_test::english(), source).lines) {
    switch (one.reading) {
      case Reading::kBlank:
        out += '-';
        break;
      case Reading::kTitle:
        out += 't';
        break;
      case Reading::kRemark:
        out += 'r';
        break;
      case Reading::kHeading:
        out += 'h';
        break;
      case Reading::kDrills:
        out += 'd';
        break;
      case Reading::kTable:
        out += 'g';
        break;
      case Reading::kKept:
        out += 'k';
        break;
      case Reading::kGrid:
        out += '#';
        break;
      case Reading::kTyped:
        out += '.';
        break;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("clocks at the margin open parts") {
  CHECK(readings("Rec Tues 9.30-10.15\n9.30 hello\n9.35 Warm up - run on toes x2\n  shell x5\n9.50 "
                 "drink\n") == "thhdh");
}

TEST_CASE("capitals, minutes and lists") {
  CHECK(readings("Squad\nWARM UP\n- jog 2 laps\n- wrists\nBars (15)\n- casts 3x5\nBring water\n") ==
        "thddhdr");
}

TEST_CASE("where nothing else says so, a word that opens parts does") {
  CHECK(readings("wed 4.30 rec\nwarm up tag 4 mins\nbeam hop x4\nbar swing x5\n") == "thhh");
}

TEST_CASE("a remark about one child is never a drill") {
  const Source source("d.md", "Squad\nBARS\n- casts x5\n\nGirl 7 – heel, no landings 5\n");
  const auto lines = draft::read_document(draft_test::english(), source).lines;
  CHECK(lines.back().reading == Reading::kRemark);
  CHECK(lines.back().about_child);
}

TEST_CASE("a grid stays a table, doses in a table are drills") {
  CHECK(readings("Squad\n## Rotations\n| | bars | beam |\n|---|---|---|\n| 9.25 | A | B |\n") ==
        "thggg");
  CHECK(readings("Squad\n## Warm-up\n| Drill | Dose |\n|---|---|\n| Jog | 2 laps |\n| Dish | 3 x "
                 "10 s |\n") == "th..dd");
}

TEST_CASE("a circuit's list need not look like one") {
  CHECK(readings("Camp\n16h45 Physical - circuit 40 sec on / 20 off - 3 "
                 "rounds\nplank\nsuperman\n17h05 Stretch\n") == "thddh");
}

TEST_CASE("what the taught form has below a drill stays what it is") {
  CHECK(readings("## Shapes\n\n- Dish hold: 3 x 20 s\n  - cue: Back pressed down\n  - easier: Bend "
                 "your knees\n") == "h-dkk");
}

TEST_CASE("children in other words are remarks, however many numbers there are") {
  CHECK(
      readings("Squad\nBARS\n- casts 3x5\n- kips x5\nthe girl in purple, lunge to stand x5\nGirls "
               "4 and 9 only do 3, 6, 9-12\n6 knee strapped, no trampette\n") == "thddrrr");
}

TEST_CASE("labels of the session are remarks") {
  CHECK(readings(
            "Squad\nCoaches: 2 + assistant\nChildren: 16\nBARS\n- casts 3x5\nneed: banner, float "
            "20 in coins\n") == "trrhdr");
}

TEST_CASE("a sign for quotes is a bullet where its lines have doses") {
  CHECK(readings("Home\nskills\n> cartwheels 5 e/s\n> candle 10 secs x3\n> rolls 4 each way\n")
            .substr(2) == "ddd");
  CHECK(readings("Squad\nBARS\n- casts 3x5\n> Coaches: coach 1 bars\n") == "thdk");
}

TEST_CASE("parts are lines that end in their minutes, where several are and have drills below") {
  CHECK(readings(
            "Club\nbody shapes 8min\n - dish x8\njumps 10 min\n - tuck x5\nengine room 10min\n - "
            "dips 8\n") == "thdhdhd");
  CHECK(readings("Club\nROLLS - 10\n+ shoulder roll 4 each side\nJUMPS - 12\n+ stride x8\nWATER - "
                 "3\nSTRENGTH - 8\n+ hollow 20s\n") == "thdhdhhd");
  // Drills that are counted behind a dash are none of that.
  CHECK(readings("Club\nSTRENGTH\npress ups - 10\nsit ups - 15\ndips - 8\n") == "thddd");
}

TEST_CASE("a numbered line above a list further in opens a part") {
  CHECK(readings("Club\n1. Floor work\n   - rolls x3\n   - jumps x5\n2. Bars\n   - casts x5\n") ==
        "thddhd");
}

TEST_CASE("where what is done stands further in, lines at the margin open parts") {
  CHECK(
      readings("Home\nPush things\n press ups 4x8\n dips 3 x 10\nMiddle (10)\n dish 20s, arch 20s\n"
               " plank 30s\nKickers\n walk ups 4 x 30s\n shifts 3 x 10\n") == "thddhddhdd");
  // Not where such lines are drills and what is further in explains them.
  CHECK(readings("Home\npress ups 4x8\n  easier on knees\ndips 3 x 10\n  easier one\nplank 30s\n"
                 "  easier short\n") != "thdhdhd");
}

TEST_CASE("letters in their order open parts, whatever stands behind them") {
  CHECK(
      readings("Squad\nA) PREP - 10 MIN\nskipping 2 min\nB) EMOM 12 MIN\nchin ups 5\npress ups 8\n"
               "C) SUPERSET 1 - 4 SETS, 60 SEC REST\nleg lifts 8\narch rocks 20\n") == "thdhddhdd");
  // Where each is all there is, they are a list.
  CHECK(readings("Squad\nA) skipping 2 min\nB) chin ups 5\nC) leg lifts 8\nwater\n")[1] == 'd');
}

TEST_CASE("a line with a colon above a list further in opens a part") {
  CHECK(readings(
            "Tots\n- Animals, there and back:\n    - horse gallop\n    - duck walk\n- Parachute 5 "
            "min\n")[1] == 'h');
}

TEST_CASE("when a message was sent is no clock of the plan") {
  const std::string said =
      "Home\n[18:03] warm up 5 min: star jumps 30\n[18:05] hollow hold 30s\n"
      "[18:05] arch hold 30s\n";
  CHECK(readings(said) == "thdd");
  // But minutes apart it may be.
  CHECK(readings("Rec\n[18:03] warm up\n[18:25] beam\n[18:45] floor\n") == "thhh");
}

TEST_CASE("where several lines begin with a name and its minutes, they open parts") {
  CHECK(readings("Tots\nmoving round 5 mins jumps x2, hops x6\nred balls 5 mins kick x5, throw x5\n"
                 "bubbles 4 mins breaths 3, jumps x2\n") == "thhh");
}

TEST_CASE("columns set apart by tabs are rows") {
  CHECK(readings("Home\n1\tAnkle circles\t10 each way\tslow\n2\tMini squat\t2 x 8\tknee over "
                 "toe\n3\tCalf stretch\t20 s\tgently\n") == "tddd");
  CHECK(readings("Club\nUnfold beds\t10 min\nJumps x10, plank 30s\t12 min\nStretch calves 20s\t3 "
                 "min\n") == "thhh");
}

TEST_CASE("rounds below a list are those of the list") {
  const Source source("d.md", "Home\nSTRENGTH\n- squats 10\n- dips 8\nThen go again, 2 rounds!\n");
  const draft::DraftDocument read = draft::read_document(draft_test::english(), source);
  REQUIRE(read.lines[2].opens);
  CHECK(read.lines[2].opens->rounds == 2);
}

TEST_CASE("a line that no coach types is a remark") {
  std::string pairs;
  for (int i = 0; i < 31; ++i) pairs += "5 R 5 L ";
  CHECK(readings("Club\n## Floor\n- jumps x10\n" + pairs + "\n- " + pairs + "\n") == "thdrr");
}

TEST_CASE("minutes in front, codes, frames and rules") {
  CHECK(readings("mon 5-6\n10 min warm up\njog 3 laps\n5' stretch\nsplits 30s\n") == "thdhd");
  CHECK(readings(
            "Comp day\nVault\nA1 jog 2 laps\nA2 kicks x8\nBars\nB1 casts x3\nB2 swings 4 goes\n") ==
        "thddhdd");
  CHECK(readings("Home\n[ warm up - 5 min ]\nhigh knees 20\n== floor ==\nrolls x5\n") == "thdhd");
  CHECK(readings("Squad\n**Warm-up – 12 mins**\njog 2 laps\n**Water – 5 mins**\n") == "thdh");
  CHECK(readings("Squad\nFloor work\n-----\nrolls x5\n") == "th-d");
}

TEST_CASE("clocks behind names open parts") {
  CHECK(readings("Rhythmic\nFlexibility 4:45\nsplits 30 s\nBody 5:00\npivots x5\nWater 5:20\n") ==
        "thdhdh");
}

TEST_CASE("a text may begin with a part, or with a day that opens one") {
  CHECK(readings("Warm up\njog 2 laps\nFloor:\nrolls x5\n") == "hdhd");
  CHECK(readings("Home plan\nDay 1\nsquats 3x10\nDay 2\nlunges 2x8\n") == "thdhd");
}

TEST_CASE("columns with a head row") {
  CHECK(readings("Squad\nExercise, Sets, Reps, Rest\nSquats, 3, 10, 30s\nDips, 3, 8, 30s\n") ==
        "t.dd");
}

TEST_CASE("a sheet of a table program, with parts, minutes and empty cells") {
  CHECK(readings("Squad Sun\nSection\tMins\tDrill\tSets\tReps\tNotes\n"
                 "Warm up\t12\tJog\t\t4 laps\t\n\t\tTuck jumps\t2\t10\t\n"
                 "Drink\t5\t\t\t\t\nPower\t18\tBox jumps\t4\t6\trest 45s\n") == "t.hdhh");
  // Times of day beside the parts.
  CHECK(readings("Dev\nTime\tBlock\tExercise\tSets\tReps / hold\tRest (s)\n"
                 "17:00\tWarm-up\tSkipping\t2\t40 reps\t20\n\t\tLunge\t\t30 s each leg\t\n"
                 "17:15\tBasics\tCast\t3\t5 reps\t45\n") == "t.hdh");
}

TEST_CASE("what is said of everything below opens a part") {
  CHECK(
      readings("Gym\n\nWarm up\njog 3 min\n\nStrong legs, 2 sets of everything, sit down between\n"
               "sit to stand x6\nheel raises x10\n") == "t-hd-hdd");
  // A drill whose name begins like a part is none.
  CHECK(readings("Gym\n\nWarm up\njog 3 min\n\nHandstand and roll off on the bed, 8x\n"
                 "bridge 5x\nbelly muscles 20x\n") == "t-hd-ddd");
}

TEST_CASE("the first of a list is no part for its minutes") {
  CHECK(readings("Gym\n\nPreparation, 20 min\na) rope skipping 3 min\nb) squats 2x10\n"
                 "c) arm circles 10 each way\n") == "t-hddd");
}

TEST_CASE("headings may stand between the rows of a table, and its head holds for all of them") {
  CHECK(readings("Squad\n\nDrill\tSets\tReps\tRest\tCue\nWARM UP 15 min\nJog\t\t4 lengths\t\t\n"
                 "Rebounds\t2\t10\t30s\ttight\nBASICS 20 min\nSnap down\t3\t5\t\toff the top\n"
                 "Flick\t2\t6\t\tspot\n") == "t-.hddhdd");
}

TEST_CASE("parts in sentences: a name, its minutes behind a comma, and drills") {
  CHECK(readings("tonight\n\nstart, 8 min, everyone. 10 frog jumps, straddle sit 20 seconds\n\n"
                 "beams, 15 min, eight of you. dip walks 2 lengths, stork stand 5 secs each leg\n\n"
                 "carpet, 15 min, the others. rocking to stand x6, bridge hold 5 secs x3\n") ==
        "t-h-h-h");
}

TEST_CASE("drills above the first part are drills, below a line that may head them") {
  CHECK(
      readings("Tots\nHello song on the red mat\n\n\"He walked all day\" (10 min)\nWe tiptoe round "
               "the mats, 2 laps\nWe stomp like giants, 1 lap\nWe crawl through, 3 times\n\nFLOOR\n"
               "- rolls x5\n") == "tr-hddd-hd");
  // Two lines that name no move may say anything.
  CHECK(readings("Squad\nBring 2 bottles each\nThe bus comes at 5\n\nFLOOR\n- rolls x5\n") ==
        "trr-hd");
}

TEST_CASE("a short time in a row of a table is a drill's, not a part's") {
  CHECK(readings("Rec\n\n## Warm up (15 min)\n\n| Activity | How much |\n|---|---|\n| Follow the "
                 "leader | 3 min |\n| Bear walk | 2 lengths |\n| Crab walk | 2 lengths |\n") ==
        "t-h-..ddd");
  CHECK(readings("Rec\n\nWARM UP\t10 min\n\tStuck in the mud\t4 min\n\tBunny hops\t2 lengths\n"
                 "\tButterfly\t20 secs\n") == "t-hddd");
}

TEST_CASE("what is done in a part stands in the cell behind its name") {
  const Source source(
      "d.md",
      "Club\n\n| Time | Activity | Detail |\n|---|---|---|\n| 13:22 | Warm up | Traffic "
      "lights. Then 10 star jumps, 5 bunny hops |\n| 13:30 | Cool down | Child's pose 20 "
      "seconds, straddle sit 20 seconds |\n");
  const auto lines = draft::read_document(draft_test::english(), source).lines;
  CHECK(lines[4].reading == Reading::kHeading);
  CHECK(lines[4].spoken.drills.size() == 3);
  CHECK(lines[5].spoken.drills.size() == 2);
}
