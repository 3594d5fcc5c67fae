#include "cli/command_table.h"

#include "base/paper.h"
#include "cli/actions.h"

namespace chalkleaf::cli {
namespace {

// A paper that is asked for and cannot be set two on a sheet.
std::string refuses_two_up(const Given& given) {
  const auto paper = read_paper(given.text(kPaper).value_or(""));
  if (!given.has(kTwoUp) || !paper || double_of(*paper)) return {};
  return "two pages of that paper have no sheet we print on: --two-up is for a5 and half-letter";
}

std::vector<Command> make_commands() {
  return {
      {"build",
       "Make the PDFs of plans",
       "chalkleaf build sessions/tuesday.md\nchalkleaf build --paper a4 --only cards",
       {&kPlans, &kOut, &kPaper, &kLook, &kOnly, &kJobs, &kStrict, &kMessages, &kTwoUp, &kCopies},
       build_plans,
       refuses_two_up},
      {"check",
       "Say what is wrong with plans, and make no PDFs",
       "chalkleaf check --messages short sessions/tuesday.md",
       {&kPlans, &kOut, &kPaper, &kLook, &kOnly, &kJobs, &kStrict, &kMessages},
       check_plans},
      {"proof",
       "Make pictures (PNG) of the pages of plans",
       "chalkleaf proof sessions/tuesday.md",
       {&kPlans, &kOut, &kPaper, &kLook, &kOnly, &kJobs, &kStrict, &kMessages, &kDots},
       proof_plans},
      {"times",
       "Show a plan's timetable and how it adds up",
       "chalkleaf times sessions/tuesday.md\nchalkleaf times --json sessions/tuesday.md",
       {&kOnePlan, &kJson},
       show_times},
      {"loads",
       "Add up what plans, and a group's week, ask of a body",
       "chalkleaf loads sessions/tuesday.md\nchalkleaf loads --json\n"
       "Counts for one gymnast: hands, landings, neck, back, upside down, effort.",
       {&kPlans, &kJson},
       show_loads},
      {"clashes",
       "Say which sessions want the same of the hall at the same time",
       "chalkleaf clashes\nchalkleaf clashes sessions\n"
       "Stations, kit and coaches, by what club.yaml says there is.",
       {&kPlans},
       show_clashes},
      {"tidy",
       "Show plans as they were understood, in the taught form",
       "chalkleaf tidy sessions/tuesday.md\nchalkleaf tidy --write sessions/tuesday.md",
       {&kPlans, &kWrite, &kMessages},
       tidy_plans},
      {"week",
       "Make a page of a group's week: when, what, kit",
       "chalkleaf week\nchalkleaf week --group Kestrels --starting 2026-11-30\n"
       "Without --starting it is the week of the newest session in the gym.",
       {&kPlans, &kGroup, &kStarting, &kWeekFile, &kStrict, &kMessages, &kWeekPaper, &kLook},
       make_week},
      {"booklet",
       "Make the coach cards of several plans into one booklet",
       "chalkleaf booklet sessions/tuesday.md sessions/thursday.md\n"
       "chalkleaf booklet --group Kestrels --starting 2026-11-30 --out kestrels.pdf\n"
       "Print it on both sides, turned over by the short edge; fold the stack and staple the fold.",
       {&kPlans, &kGroup, &kStarting, &kBookletFile, &kStrict, &kMessages, &kBookletPaper, &kLook},
       make_booklet},
      {"drills",
       "Find drills, or show all that one gives a plan",
       "chalkleaf drills wrists home\nchalkleaf drills level 3 beam\nchalkleaf drills dish hold",
       {&kDrillWords},
       list_drills},
      {"looks", "List the looks sheets can have", "chalkleaf looks", {&kClubFolder}, list_looks},
      {"explain",
       "Say what a check finds, why, and what to do",
       "chalkleaf explain over-slot",
       {&kCheckName},
       explain_check},
      {"begin",
       "Make a new club folder to start from, or a plan from a draft",
       "chalkleaf begin our-club\nchalkleaf begin monday.txt",
       {&kNewFolder},
       begin_club},
      {"figure",
       "Draw a figure of the catalogue",
       "chalkleaf figure front support\nchalkleaf figure bridge --out bridge.svg",
       {&kFigureNames, &kFigureFile, &kAge, &kFigurePaper},
       draw_figures},
      {"figures",
       "Draw the whole catalogue on a sheet",
       "chalkleaf figures --out catalogue.pdf",
       {&kFigureFolder, &kCatalogueFile, &kAge, &kFigurePaper},
       draw_catalogue},
  };
}

}  // namespace

const std::vector<Command>& commands() {
  static const std::vector<Command> all = make_commands();
  return all;
}

}  // namespace chalkleaf::cli
