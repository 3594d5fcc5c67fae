// The options and arguments that commands take, each a row that says all about it: how it is
// written, what it is for, what it will take. The command line (cli/command_line.h) is read by
// these rows, help is made of them, and what a user gave is asked for by its row, never by its
// text. Tested by tests/cli/command_line_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace chalkleaf::cli {

/// How often something may stand on the command line.
enum class Times { kAtMostOnce, kOnce, kAny, kAtLeastOnce };

/// One option (`--out DIR`), flag (`--strict`) or argument (`PLAN`).
struct Option {
  std::string_view name;   ///< `--out`, or `PLAN` for an argument
  std::string_view value;  ///< how its value is called in help; empty for flags and arguments
  std::string_view about;
  Times times = Times::kAtMostOnce;
  std::vector<std::string_view> choices = {};  ///< the only values it takes; empty: see `refuses`
  /// Why a value will not do, as a part of a sentence; empty when it will.
  std::string (*refuses)(const std::string& value) = nullptr;
  const Option* needs = nullptr;  ///< only together with this one

  bool is_argument() const { return !name.starts_with('-'); }
  bool is_flag() const { return !is_argument() && value.empty(); }
};

extern const Option kPlans, kOnePlan, kCheckName, kNewFolder, kClubFolder, kDrillWords,
    kFigureNames, kFigureFolder;
extern const Option kOut, kWeekFile, kBookletFile, kFigureFile, kCatalogueFile;
extern const Option kPaper, kWeekPaper, kBookletPaper, kFigurePaper;
extern const Option kLook, kOnly, kJobs, kStrict, kMessages, kDots, kTwoUp, kCopies;
extern const Option kGroup, kStarting, kAge, kJson, kWrite;

/// What was given on a command line, by row. All values have passed their rows' checks.
class Given {
 public:
  void add(const Option& option, std::vector<std::string> values);
  bool has(const Option& option) const { return values_of(option) != nullptr; }
  /// The last value; nothing when none was given.
  std::optional<std::string> text(const Option& option) const;
  std::vector<std::string> all(const Option& option) const;
  /// Of an option whose values are whole numbers.
  std::optional<int> number(const Option& option) const;

 private:
  struct Entry {
    const Option* option;
    std::vector<std::string> values;
  };
  const std::vector<std::string>* values_of(const Option& option) const;
  std::vector<Entry> entries_;
};

}  // namespace chalkleaf::cli
