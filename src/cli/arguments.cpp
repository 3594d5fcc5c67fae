#include "cli/arguments.h"

#include <CLI/CLI.hpp>
#include <charconv>
#include <optional>
#include <sstream>
#include <thread>

#include "club/page_pictures.h"

namespace chalkleaf::cli {
namespace {

constexpr int kUsageError = 2;
constexpr int kMostJobs = 256;

/// The options as text, before they become a Request.
struct Texts {
  std::vector<std::string> paths;
  std::string out, paper, look, only;
  std::string messages = "human";
  std::string jobs;
  bool strict = false;
  bool two_up = false;
  int copies = 1;
  int dots = 80;
};

std::optional<std::size_t> read_jobs(const std::string& text) {
  int jobs = 0;
  const char* end = text.data() + text.size();
  const auto [stop, problem] = std::from_chars(text.data(), end, jobs);
  if (problem != std::errc() || stop != end || jobs < 1 || jobs > kMostJobs) return std::nullopt;
  return static_cast<std::size_t>(jobs);
}

void add_messages(CLI::App& command, Texts& texts) {
  command.add_option("--messages", texts.messages, "human, short or json (one object a line)")
      ->type_name("STYLE")
      ->check(CLI::IsMember({"human", "short", "json"}));
}

void add_paper(CLI::App& command, std::string& text, const std::string& otherwise) {
  command
      .add_option("--paper", text,
                  "a4, a5, letter or half-letter, or such as a5-landscape; " + otherwise)
      ->type_name("SIZE")
      ->check([](const std::string& written) {
        return read_paper(written)
                   ? std::string()
                   : "‘" + printable(written) + "’ is no paper we print on: write " +
                         std::string(kPaperChoices);
      });
}

void add_look(CLI::App& command, std::string& text) {
  command
      .add_option("--look", text,
                  "A look, whatever plan and club say; ‘chalkleaf looks’ lists them")
      ->type_name("NAME");
}

void add_common(CLI::App& command, Texts& texts) {
  command.add_option("PLAN", texts.paths,
                     "Plans and folders of plans; without any, the club folder you stand in");
  command
      .add_option("--out", texts.out,
                  "Folder for what is made; out in the club folder if not given")
      ->type_name("DIR")
      ->check([](const std::string& text) {
        return text.empty() ? "a folder is needed" : std::string();
      });
  add_paper(command, texts.paper, "whatever plan and club say");
  add_look(command, texts.look);
  command.add_option("--only", texts.only, "cards (for coaches) or sheets (for families)")
      ->type_name("KIND")
      ->check(CLI::IsMember({"cards", "sheets"}));
  command
      .add_option("--jobs", texts.jobs, "Plans worked on at a time; as many as cores if not given")
      ->type_name("N")
      ->check([](const std::string& text) {
        return read_jobs(text) ? std::string()
                               : "a number from 1 to " + std::to_string(kMostJobs) +
                                     " is needed, not ‘" + printable(text) + "’";
      });
  command.add_flag("--strict", texts.strict, "Take every warning for an error");
  add_messages(command, texts);
}

/// Likewise for what is made of several plans.
struct TogetherTexts {
  std::string group, starting, file;
};

void add_together(CLI::App& command, Texts& texts, TogetherTexts& together,
                  const std::string& usual) {
  command.add_option("PLAN", texts.paths,
                     "Plans and folders of plans; without any, the club folder you stand in");
  command.add_option("--group", together.group, "Only plans of this group")->type_name("NAME");
  command.add_option("--starting", together.starting, "First of seven days, as 2026-11-30")
      ->type_name("DATE")
      ->check([](const std::string& text) {
        return parse_date(text)
                   ? std::string()
                   : "a day such as 2026-11-30 is needed, not ‘" + printable(text) + "’";
      });
  command.add_option("--out", together.file, "Where it goes; " + usual + " if not given")
      ->type_name("FILE");
  command.add_flag("--strict", texts.strict, "Take every warning for an error");
  add_messages(command, texts);
}

/// Likewise for figures.
struct DrawTexts {
  std::vector<std::string> names;
  std::string folder, out, paper;
  int age = 9;
};

void add_drawing(CLI::App& command, DrawTexts& texts, const std::string& out) {
  command.add_option("--out", texts.out, out)->type_name("FILE");
  command
      .add_option("--age", texts.age, "Years of the child that is drawn, 5 to 16; 9 if not given")
      ->type_name("N")
      ->check(CLI::Range(5, 16));
  add_paper(command, texts.paper, "a4 if not given");
}

// A paper that is asked for and cannot be set two on a sheet.
bool out_of_two(const std::string& text) {
  const auto paper = read_paper(text);
  return paper && !double_of(*paper);
}

Arguments from_texts(Command command, const Texts& texts) {
  Arguments out;
  out.command = command;
  out.request.arguments = texts.paths;
  if (!texts.out.empty()) out.request.out = texts.out;
  out.request.paper = read_paper(texts.paper);
  out.request.look = texts.look;
  if (texts.two_up)
    out.request.two_up = texts.copies == 2 ? club::TwoUp::kCopies : club::TwoUp::kPages;
  if (texts.only == "cards") out.request.only = club::Only::kCards;
  if (texts.only == "sheets") out.request.only = club::Only::kSheets;
  if (command == Command::kCheck) out.request.purpose = club::Purpose::kCheck;
  if (command == Command::kProof) out.request.purpose = club::Purpose::kProof;
  out.request.dots = texts.dots;
  if (texts.strict) out.request.strictness = club::Strictness::kStrict;
  out.request.jobs =
      read_jobs(texts.jobs).value_or(std::max(1U, std::thread::hardware_concurrency()));
  if (texts.messages == "short") out.messages = MessageStyle::kShort;
  if (texts.messages == "json") out.messages = MessageStyle::kJson;
  return out;
}

}  // namespace

std::variant<Arguments, Stop> read_arguments(int count, const char* const* values) {
  CLI::App app(
      "Chalkleaf checks gymnastics session plans and sets them as coach cards and home "
      "sheets.",
      "chalkleaf");
  app.set_version_flag("--version", "chalkleaf " + std::string(club::version()));
  app.require_subcommand(1);
  app.footer(
      "Example:\n  chalkleaf build plans\n"
      "Exit codes: 0 all well, 1 a plan has errors, 2 the command or the surroundings.");
  Texts texts;
  CLI::App* build = app.add_subcommand("build", "Make the PDFs of plans");
  build->footer(
      "Examples:\n  chalkleaf build sessions/tuesday.md\n  chalkleaf build --paper a4 --only "
      "cards");
  CLI::App* check = app.add_subcommand("check", "Say what is wrong with plans, and make no PDFs");
  check->footer("Example:\n  chalkleaf check --messages short sessions/tuesday.md");
  CLI::App* times = app.add_subcommand("times", "Show a plan's timetable and how it adds up");
  times->footer("Example:\n  chalkleaf times sessions/tuesday.md");
  CLI::App* proof = app.add_subcommand("proof", "Make pictures (PNG) of the pages of plans");
  proof->footer("Example:\n  chalkleaf proof sessions/tuesday.md");
  add_common(*proof, texts);
  proof->add_option("--dots", texts.dots, "Dots an inch, 20 to 600; 80 if not given")
      ->type_name("N")
      ->check(CLI::Range(club::kFewestDots, club::kMostDots));
  add_common(*build, texts);
  CLI::Option* two_up = build->add_flag(
      "--two-up", texts.two_up,
      "Two a5 pages on a4, or two half-letter on letter, to cut: one page after the other");
  build->add_option("--copies", texts.copies, "With --two-up 2: every page twice, for two coaches")
      ->type_name("N")
      ->check(CLI::Range(1, 2))
      ->needs(two_up);
  CLI::App* week = app.add_subcommand("week", "Make a page of a group's week: when, what, kit");
  TogetherTexts together;
  add_together(*week, texts, together, "week.pdf");
  add_paper(*week, texts.paper, "a4-landscape if neither this nor the club says");
  add_look(*week, texts.look);
  week->footer(
      "Without --starting it is the week of the newest session in the gym.\n"
      "Examples:\n  chalkleaf week\n  chalkleaf week --group Kestrels --starting 2026-11-30");
  CLI::App* booklet =
      app.add_subcommand("booklet", "Make the coach cards of several plans into one booklet");
  add_together(*booklet, texts, together, "booklet.pdf");
  add_paper(*booklet, texts.paper, "a5 if neither this nor the club says");
  add_look(*booklet, texts.look);
  booklet->footer(
      "Print it on both sides, turned over by the short edge; fold the stack and staple the fold.\n"
      "Examples:\n  chalkleaf booklet sessions/tuesday.md sessions/thursday.md\n  chalkleaf "
      "booklet --group Kestrels --starting 2026-11-30 --out kestrels.pdf");
  add_common(*check, texts);
  times->add_option("PLAN", texts.paths, "The plan")->required()->expected(1);
  CLI::App* explain = app.add_subcommand("explain", "Say what a check finds, why, and what to do");
  std::string check_name;
  explain->add_option("NAME", check_name, "The name at the end of a message; without, all of them");
  explain->footer("Example:\n  chalkleaf explain over-slot");
  CLI::App* begin = app.add_subcommand("begin", "Make a new club folder to start from");
  std::string new_folder;
  begin->add_option("DIR", new_folder, "A folder that is not there yet, or is empty")->required();
  begin->footer("Example:\n  chalkleaf begin our-club");
  CLI::App* looks = app.add_subcommand("looks", "List the looks sheets can have");
  std::string looks_folder;
  looks->add_option("FOLDER", looks_folder, "A club; without, the one you stand in");
  looks->footer("Example:\n  chalkleaf looks");
  DrawTexts draw;
  CLI::App* figure = app.add_subcommand("figure", "Draw a figure of the catalogue");
  figure->add_option("NAME", draw.names, "The figure's name; several make several pages")
      ->required();
  add_drawing(*figure, draw, "Where it goes, .pdf or .svg; NAME.pdf if not given");
  figure->footer(
      "Examples:\n  chalkleaf figure front support\n  chalkleaf figure bridge --out bridge.svg");
  CLI::App* figures = app.add_subcommand("figures", "Draw the whole catalogue on a sheet");
  figures->add_option("FOLDER", draw.folder,
                      "A club, or a folder of figure files; without, all of the club you stand in");
  add_drawing(*figures, draw, "Where it goes; figures.pdf if not given");
  figures->footer("Example:\n  chalkleaf figures --out catalogue.pdf");
  try {
    app.parse(count, values);
  } catch (const CLI::ParseError& error) {
    std::ostringstream out;
    std::ostringstream err;
    const bool asked = app.exit(error, out, err) == 0;
    if (!asked && app.get_subcommands().empty()) {
      const std::string what =
          count > 1 ? "‘" + printable(values[1]) + "’ is not a command" : "no command is given";
      return Stop{kUsageError, "chalkleaf: " + what +
                                   ": write build, check, proof, times, week, booklet, looks, "
                                   "explain, figure, figures or begin\n"
                                   "Run with --help for more information.\n"};
    }
    return Stop{asked ? 0 : kUsageError, asked ? out.str() : "chalkleaf: " + err.str()};
  }
  if (texts.two_up && out_of_two(texts.paper)) {
    return Stop{kUsageError,
                "chalkleaf: two pages of that paper have no sheet we print on: --two-up is for a5 "
                "and half-letter\n"};
  }
  if (figure->parsed() || figures->parsed()) {
    Arguments out = from_texts(figure->parsed() ? Command::kFigure : Command::kFigures, texts);
    out.draw.names = draw.names;
    if (!draw.folder.empty()) out.draw.folder = draw.folder;
    if (!draw.out.empty()) out.draw.out = draw.out;
    out.draw.paper = read_paper(draw.paper).value_or(Paper::kA4);
    out.draw.years = draw.age;
    return out;
  }
  if (week->parsed() || booklet->parsed()) {
    Arguments out = from_texts(week->parsed() ? Command::kWeek : Command::kBooklet, texts);
    out.together.base = out.request;
    if (!together.group.empty()) out.together.group = together.group;
    if (!together.file.empty()) out.together.file = together.file;
    out.together.starting = parse_date(together.starting);
    return out;
  }
  if (looks->parsed()) {
    Arguments out = from_texts(Command::kLooks, texts);
    out.name = looks_folder;
    return out;
  }
  if (begin->parsed()) {
    Arguments out = from_texts(Command::kBegin, texts);
    out.name = new_folder;
    return out;
  }
  if (explain->parsed()) {
    Arguments out = from_texts(Command::kExplain, texts);
    out.name = check_name;
    return out;
  }
  if (times->parsed()) return from_texts(Command::kTimes, texts);
  if (proof->parsed()) return from_texts(Command::kProof, texts);
  return from_texts(check->parsed() ? Command::kCheck : Command::kBuild, texts);
}

}  // namespace chalkleaf::cli
