#include "cli/options.h"

#include <algorithm>
#include <charconv>

#include "base/date.h"
#include "base/diagnostic_text.h"
#include "base/paper.h"
#include "base/text.h"
#include "club/page_pictures.h"

namespace chalkleaf::cli {
namespace {

constexpr int kMostJobs = 256;
constexpr int kYoungest = 5;
constexpr int kOldest = 16;

std::optional<int> whole_number(const std::string& text) {
  int number = 0;
  const char* end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, number);
  if (problem != std::errc() || stop != end) return std::nullopt;
  return number;
}

template <int kLeast, int kMost>
std::string refuses_number(const std::string& text) {
  const auto number = whole_number(text);
  if (number && *number >= kLeast && *number <= kMost) return {};
  return "a number from " + std::to_string(kLeast) + " to " + std::to_string(kMost) +
         " is needed, not ‘" + printable(text) + "’";
}

std::string refuses_paper(const std::string& text) {
  if (read_paper(text)) return {};
  return "‘" + printable(text) + "’ is no paper we print on: write " + std::string(kPaperChoices);
}

std::string refuses_date(const std::string& text) {
  if (parse_date(text)) return {};
  return "a day such as 2026-11-30 is needed, not ‘" + printable(text) + "’";
}

std::string refuses_nothing(const std::string& text) {
  return text.empty() ? "a folder is needed" : std::string();
}

Option paper_option(std::string_view about) {
  return {"--paper", "SIZE", about, Times::kAtMostOnce, {}, refuses_paper, nullptr};
}

Option file_option(std::string_view about) { return {"--out", "FILE", about}; }

}  // namespace

const Option kPlans{"PLAN", "",
                    "Plans and folders of plans; without any, the club folder you stand in",
                    Times::kAny};
const Option kOnePlan{"PLAN", "", "The plan", Times::kOnce};
const Option kCheckName{"NAME", "", "The name at the end of a message; without, all of them"};
const Option kNewFolder{"DIR", "", "A folder that is not there yet, or is empty; or a draft's file",
                        Times::kOnce};
const Option kClubFolder{"FOLDER", "", "A club; without, the one you stand in"};
const Option kDrillWords{"WORD", "",
                         "Of its name, what it trains or needs, its kind, place or level; without "
                         "any, all drills",
                         Times::kAny};
const Option kFigureNames{"NAME", "", "The figure's name; several make several pages",
                          Times::kAtLeastOnce};
const Option kFigureFolder{
    "FOLDER", "", "A club, or a folder of figure files; without, all of the club you stand in"};

const Option kOut{"--out",
                  "DIR",
                  "Folder for what is made; out in the club folder if not given",
                  Times::kAtMostOnce,
                  {},
                  refuses_nothing};
const Option kWeekFile = file_option("Where it goes; week.pdf if not given");
const Option kBookletFile = file_option("Where it goes; booklet.pdf if not given");
const Option kFigureFile = file_option("Where it goes, .pdf or .svg; NAME.pdf if not given");
const Option kCatalogueFile = file_option("Where it goes; figures.pdf if not given");

const Option kPaper = paper_option(
    "a4, a5, letter or half-letter, or such as a5-landscape; whatever plan and club say");
const Option kWeekPaper = paper_option(
    "a4, a5, letter or half-letter, or such as a5-landscape; a4-landscape if neither this nor the "
    "club says");
const Option kBookletPaper = paper_option(
    "a4, a5, letter or half-letter, or such as a5-landscape; a5 if neither this nor the club says");
const Option kFigurePaper =
    paper_option("a4, a5, letter or half-letter, or such as a5-landscape; a4 if not given");

const Option kLook{"--look", "NAME",
                   "A look, whatever plan and club say; ‘chalkleaf looks’ lists them"};
const Option kOnly{"--only",
                   "KIND",
                   "cards (for coaches) or sheets (for families)",
                   Times::kAtMostOnce,
                   {"cards", "sheets"}};
const Option kJobs{
    "--jobs",           "N", "Plans worked on at a time; as many as cores if not given",
    Times::kAtMostOnce, {},  refuses_number<1, kMostJobs>};
const Option kJson{"--json", "", "Print it as JSON, for scripts"};
const Option kWrite{"--write", "", "Put it in the place of the file; without, it is only shown"};
const Option kStrict{"--strict", "", "Take every warning for an error"};
const Option kMessages{"--messages",
                       "STYLE",
                       "human, short or json (one object a line)",
                       Times::kAtMostOnce,
                       {"human", "short", "json"}};
const Option kDots{"--dots",           "N", "Dots an inch, 20 to 600; 80 if not given",
                   Times::kAtMostOnce, {},  refuses_number<club::kFewestDots, club::kMostDots>};
const Option kTwoUp{
    "--two-up", "",
    "Two a5 pages on a4, or two half-letter on letter, to cut: one page after the other"};
const Option kCopies{"--copies",
                     "N",
                     "With --two-up 2: every page twice, for two coaches",
                     Times::kAtMostOnce,
                     {},
                     refuses_number<1, 2>,
                     &kTwoUp};
const Option kGroup{"--group", "NAME", "Only plans of this group"};
const Option kStarting{"--starting",       "DATE", "First of seven days, as 2026-11-30",
                       Times::kAtMostOnce, {},     refuses_date};
const Option kAge{"--age",
                  "N",
                  "Years of the child that is drawn, 5 to 16; 9 if not given",
                  Times::kAtMostOnce,
                  {},
                  refuses_number<kYoungest, kOldest>};

void Given::add(const Option& option, std::vector<std::string> values) {
  entries_.push_back({&option, std::move(values)});
}

const std::vector<std::string>* Given::values_of(const Option& option) const {
  const auto found = std::find_if(entries_.begin(), entries_.end(),
                                  [&](const Entry& entry) { return entry.option == &option; });
  return found == entries_.end() ? nullptr : &found->values;
}

std::optional<std::string> Given::text(const Option& option) const {
  const std::vector<std::string>* values = values_of(option);
  if (values == nullptr || values->empty()) return std::nullopt;
  return values->back();
}

std::vector<std::string> Given::all(const Option& option) const {
  const std::vector<std::string>* values = values_of(option);
  return values == nullptr ? std::vector<std::string>() : *values;
}

std::optional<int> Given::number(const Option& option) const {
  const auto written = text(option);
  return written ? whole_number(*written) : std::nullopt;
}

}  // namespace chalkleaf::cli
