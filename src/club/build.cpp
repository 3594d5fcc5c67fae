// Resources, plans, clubs, workers: in that order. What is wrong before the first plan is compiled
// ends the run; what is wrong with one plan ends that plan.
#include "club/build.h"

#include <charconv>
#include <future>
#include <map>
#include <set>

#include "base/diagnostic_text.h"
#include "base/hash.h"
#include "club/club_file.h"
#include "club/compile.h"
#include "club/drill_library.h"
#include "club/font_catalogue.h"
#include "club/in_order.h"
#include "club/part_library.h"
#include "club/places.h"
#include "club/resources.h"
#include "club/select.h"
#include "club/shared_files.h"
#include "reason/checks.h"
#include "type/hyphenation.h"

namespace chalkleaf::club {
namespace {

/// Tells the listener, counts, and tells things in shared files only once.
class Teller {
 public:
  Teller(Listener& listener, Summary& summary) : listener_(listener), summary_(summary) {}

  void problem(const std::string& sentence) {
    summary_.environment_failed = true;
    listener_.problem(sentence);
  }
  /// What was found while compiling `plan` (its path as displayed; empty: nothing in particular).
  void tell(const Diagnostics& found, const std::string& plan) {
    for (const Diagnostic& diagnostic : found.sorted()) {
      const bool shared = diagnostic.span && diagnostic.span.source->path() != plan;
      if (shared && !is_new(diagnostic)) continue;
      ++(diagnostic.severity == Severity::kError ? summary_.errors : summary_.warnings);
      listener_.found(diagnostic);
    }
  }

 private:
  bool is_new(const Diagnostic& diagnostic) {
    return told_.insert(hash128(render(diagnostic, MessageStyle::kShort, Colouring::kPlain)))
        .second;
  }

  Listener& listener_;
  Summary& summary_;
  std::set<Hash128> told_;
};

// https://reproducible-builds.org/specs/source-date-epoch/: a decimal number of seconds.
std::optional<std::int64_t> read_source_date(const Environment& environment, Teller& teller) {
  const auto text = environment.get("SOURCE_DATE_EPOCH");
  if (!text) return std::nullopt;
  constexpr std::int64_t kLast = 253'402'300'799;  // 9999-12-31T23:59:59Z, the last a PDF can name
  std::int64_t seconds = 0;
  const char* end = text->data() + text->size();
  const auto [stop, problem] = std::from_chars(text->data(), end, seconds);
  if (problem == std::errc() && stop == end && seconds >= 0 && seconds <= kLast) return seconds;
  teller.problem("SOURCE_DATE_EPOCH is ‘" + *text +
                 "’, which is not a number of seconds since 1970; correct it or unset it");
  return std::nullopt;
}

/// What a run prints with, apart from the plans.
struct Press {
  std::shared_ptr<const sheet::Theme> theme;
  std::unique_ptr<const type::Fonts> fonts;
  std::unique_ptr<const type::Hyphenations> hyphenations;
  std::string data_folder;
};

// Nothing when something is missing (told): without it no plan could be set.
std::optional<Press> set_up_press(const Surroundings& around, Teller& teller, Summary& summary) {
  const auto folder = find_data_folder(around.files, around.environment, around.program);
  if (!folder) {
    teller.problem(folder.error());
    return std::nullopt;
  }
  Press press;
  press.data_folder = *folder;
  Diagnostics found;
  press.theme = load_theme(around.files, *folder, found);
  type::Catalogue catalogue = load_font_catalogue(around.files, *folder, found);
  teller.tell(found, "");
  if (!press.theme || found.has_errors()) {
    summary.environment_failed = true;
    return std::nullopt;
  }
  press.fonts = std::make_unique<type::Fonts>(std::move(catalogue), around.files);
  press.hyphenations = std::make_unique<type::Hyphenations>(around.files);
  const std::vector<type::FontError> unusable = press.fonts->open_primary();
  for (const type::FontError& error : unusable) {
    teller.problem("the font " + error.path + " cannot be used: " + error.message);
  }
  if (!unusable.empty()) return std::nullopt;
  return press;
}

// Nothing when the program's own words cannot be read (told). Without a data folder none are
// needed.
std::optional<ClubTools> open_club(const Root& root, const Request& request,
                                   const FileSystem& files, const std::string& data_folder,
                                   Teller& teller) {
  ClubTools out;
  bool words_broken = false;
  Diagnostics found;
  if (root.is_club) {
    const std::string display = path_from(request.standing, join_path(root.path, "club.yaml"));
    out.club = load_club(files, root.path, display, found);
  }
  if (!data_folder.empty()) {
    out.labels = load_labels(files, data_folder, out.club.language, found);
    out.sound = out.labels != nullptr;
    words_broken = !out.sound && has_labels(files, data_folder, out.club.language);
  }
  out.parts = std::make_unique<PartLibrary>(files, root.path, request.standing);
  out.pictures = std::make_unique<Pictures>(files, root.path);
  Diagnostics in_drills;
  if (root.is_club) {
    DrillLibrary library =
        load_drills({files, root.path, request.standing, request.jobs}, out.pictures.get());
    out.drills = std::move(library.book);
    found.append(library.folder);
    in_drills = std::move(library.drills);
    reason::apply_choices(out.club, in_drills);
  }
  if (!data_folder.empty()) {
    Diagnostics in_figures;
    out.figures = std::make_shared<const Figures>(load_figures(
        files, data_folder, root.is_club ? root.path : "", request.standing, in_figures));
    reason::apply_choices(out.club, in_figures);
    found.append(in_figures);
    Diagnostics named;
    for (const plan::LibraryDrill& drill : out.drills->all()) {
      reason::check_figures(drill, names_of(*out.figures->catalogue), named);
    }
    reason::apply_choices(out.club, named);
    in_drills.append(named);
  }
  if (request.strictness == Strictness::kStrict) {
    found.make_strict();
    in_drills.make_strict();
  }
  out.sound = out.sound && !found.has_errors();
  teller.tell(found, "");
  teller.tell(in_drills, "");
  return words_broken ? std::nullopt : std::optional(std::move(out));
}

// Each root's plans in one walk through its repository. Asks now, in this thread, and gives what
// waits for the answers.
std::function<std::vector<Revisions>()> ask_for_revisions(const Selection& selection,
                                                          const FileSystem& files) {
  std::vector<std::vector<std::string>> paths(selection.roots.size());
  for (const PlanFile& plan : selection.plans) paths[plan.root].push_back(plan.path);
  std::vector<std::function<Revisions()>> asked;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    asked.push_back(Revisions::ask(files, selection.roots[i].path, paths[i]));
  }
  return [asked] {
    std::vector<Revisions> out;
    for (const auto& wait_for : asked) out.push_back(wait_for());
    return out;
  };
}

// Pictures of pages do not lie among the sheets that are printed, unless a folder is named.
std::string folder_of(const std::string& out, const Request& request) {
  return request.purpose == Purpose::kProof && !request.out ? join_path(out, "proof") : out;
}

PlanPaths paths_of(const PlanFile& plan, const Root& root, const Request& request) {
  const std::string sheets =
      join_path(folder_of(root.out, request), relative_to(plan.sheets, root.out));
  return {plan.path, path_from(request.standing, plan.path), sheets,
          path_from(request.standing, sheets)};
}

Selection select(const Request& request, const FileSystem& files, Teller& teller,
                 Summary& summary) {
  Selection out = select_plans(files, {request.standing, request.arguments, request.out});
  for (const std::string& sentence : out.problems) teller.problem(sentence);
  if (request.strictness == Strictness::kStrict) out.diagnostics.make_strict();
  teller.tell(out.diagnostics, "");
  summary.plans = out.plans.size();
  return out;
}

// A part, a drill and the club's file can be checked, but not printed or timed.
void refuse_shared(const Selection& selection, const Request& request, Teller& teller) {
  for (const SharedFile& file : selection.shared) {
    const std::string name = "‘" + path_from(request.standing, file.path) + "’";
    switch (file.kind) {
      case SharedFile::Kind::kPart:
        teller.problem(name + " is a shared part, used by sessions: name one of those");
        break;
      case SharedFile::Kind::kDrill:
        teller.problem(name + " is a drill of the library, used by sessions: name one of those");
        break;
      case SharedFile::Kind::kClub:
        teller.problem(name + " is the club's file: name a plan, or the club's folder");
        break;
    }
  }
}

void check_shared(const Selection& selection, const std::vector<ClubTools>& clubs,
                  const Request& request, const FileSystem& files, Teller& teller,
                  Summary& summary) {
  for (const SharedFile& file : selection.shared) {
    if (file.kind == SharedFile::Kind::kClub) {
      ++summary.club_files;  // opened with its club, and what is wrong with it told
      continue;
    }
    const std::string display = path_from(request.standing, file.path);
    const ClubTools& club = clubs[file.root];
    Diagnostics found;
    if (file.kind == SharedFile::Kind::kDrill) {
      ++summary.drills;  // of a club's library all is told already; a drill may stand alone, too
      found = load_drill(files, file.path, display, club.pictures.get()).found;
      reason::apply_choices(club.club, found);
    } else {
      ++summary.parts;
      found = check_part(files, file.path, display, *club.parts, club.pictures.get());
    }
    if (request.strictness == Strictness::kStrict) found.make_strict();
    teller.tell(found, "");
  }
}

// `--out` is a folder, there or to be made.
bool is_usable_out(const Request& request, const FileSystem& files, Teller& teller) {
  if (!request.out || request.purpose == Purpose::kCheck) return true;
  std::string at = normal_path(join_path(request.standing, *request.out));
  while (files.kind(at) == FileKind::kNothing && at != "/" && at != ".") at = parent_path(at);
  if (files.kind(at) == FileKind::kFolder) return true;
  teller.problem("‘--out’ has to be a folder, and ‘" + path_from(request.standing, at) +
                 "’ is a file; name a folder");
  return false;
}

/// A worker's own: one typesetter a language, because what it has shaped is worth keeping.
class Worker {
 public:
  Worker(const type::Fonts& fonts, const type::Hyphenations& hyphenations)
      : fonts_(&fonts), hyphenations_(&hyphenations) {}
  type::Typesetter& typesetter(const ClubTools& club) {
    const std::string& language = club.club.language;
    return typesetters_.try_emplace(language, *fonts_, language, &hyphenations_->of(language))
        .first->second;
  }

 private:
  const type::Fonts* fonts_;
  const type::Hyphenations* hyphenations_;
  std::map<std::string, type::Typesetter> typesetters_;
};

/// Counts one plan after the other, and tells what was found.
class Accounts {
 public:
  Accounts(const Selection& selection, const Request& request, Teller& teller, Summary& summary)
      : selection_(selection), request_(request), teller_(teller), summary_(summary) {}

  void take(std::size_t index, const Compiled& compiled) {
    const PlanFile& plan = selection_.plans[index];
    const std::string display = path_from(request_.standing, plan.path);
    if (compiled.skipped) {
      ++summary_.skipped;
      return;
    }
    teller_.tell(compiled.diagnostics, display);
    summary_.sheets += compiled.written;
    if (compiled.not_written) summary_.environment_failed = true;
    if (compiled.written > 0) {
      folders_.insert(
          path_from(request_.standing, folder_of(selection_.roots[plan.root].out, request_)));
    }
    if (!compiled.failed) return;
    ++summary_.failed;
    if (summary_.failed_plans.size() < kMostNamedPlans) summary_.failed_plans.push_back(display);
  }
  void close() { summary_.folders.assign(folders_.begin(), folders_.end()); }

 private:
  const Selection& selection_;
  const Request& request_;
  Teller& teller_;
  Summary& summary_;
  std::set<std::string> folders_;
};

}  // namespace

Summary build(const Request& request, const Surroundings& around, Listener& listener) {
  Summary summary;
  Teller teller(listener, summary);
  const std::optional<std::int64_t> date = read_source_date(around.environment, teller);
  if (summary.environment_failed) return summary;
  if (!is_usable_out(request, around.files, teller)) return summary;
  const Selection selection = select(request, around.files, teller, summary);
  const bool checks = request.purpose == Purpose::kCheck;
  if (!checks) refuse_shared(selection, request, teller);
  if (selection.plans.empty() && (!checks || selection.shared.empty())) return summary;
  // Beside the fonts: libgit2 takes longer to start (it reads the machine's certificates) than the
  // walk takes, and neither needs the other.
  std::future<std::vector<Revisions>> revisions;
  if (!checks) {
    revisions = std::async(std::launch::async, ask_for_revisions(selection, around.files));
  }
  const std::optional<Press> press = set_up_press(around, teller, summary);
  if (!press) return summary;

  std::vector<ClubTools> clubs;
  for (const Root& root : selection.roots) {
    auto club = open_club(root, request, around.files, press->data_folder, teller);
    if (!club) {
      summary.environment_failed = true;
      return summary;
    }
    clubs.push_back(std::move(*club));
  }
  if (checks) check_shared(selection, clubs, request, around.files, teller, summary);
  if (revisions.valid()) {
    std::vector<Revisions> found = revisions.get();
    for (std::size_t i = 0; i < clubs.size(); ++i) clubs[i].revisions = std::move(found[i]);
  }

  RunTools run{around.files, *press->theme, *press->fonts};
  run.paper = request.paper;
  run.only = request.only;
  run.purpose = request.purpose;
  run.strictness = request.strictness;
  run.dots = request.dots;
  run.source_date = date;
  run.producer = "Chalkleaf " + std::string(version());
  run.on_pass = around.on_pass;

  const std::size_t total = selection.plans.size();
  Accounts accounts(selection, request, teller, summary);
  const auto make_worker = [&] {
    return [&, worker = std::make_shared<Worker>(*press->fonts, *press->hyphenations)](
               std::size_t index) {
      const PlanFile& plan = selection.plans[index];
      const ClubTools& club = clubs[plan.root];
      if (around.is_stopped && around.is_stopped()) {
        Compiled nothing;
        nothing.skipped = true;
        return nothing;
      }
      return compile(paths_of(plan, selection.roots[plan.root], request), club, run,
                     worker->typesetter(club));
    };
  };
  run_in_order<Compiled>(total, request.jobs, make_worker,
                         [&](std::size_t index, const Compiled& compiled) {
                           accounts.take(index, compiled);
                           if (!compiled.skipped) listener.progress(index + 1, total);
                         });
  accounts.close();
  return summary;
}

Timed times(const Request& request, const Surroundings& around, Listener& listener) {
  Timed out;
  Teller teller(listener, out.summary);
  const Selection selection = select(request, around.files, teller, out.summary);
  refuse_shared(selection, request, teller);
  if (out.summary.environment_failed) return out;
  if (selection.plans.size() != 1) {
    teller.problem("‘times’ shows one plan at a time: name its file");
    return out;
  }
  const PlanFile& plan = selection.plans.front();
  const ClubTools club =
      open_club(selection.roots[plan.root], request, around.files, "", teller).value();
  const std::unique_ptr<Studied> studied = study(
      paths_of(plan, selection.roots[plan.root], request), club, around.files, around.on_pass);
  teller.tell(studied->diagnostics, path_from(request.standing, plan.path));
  out.summary.failed = studied->diagnostics.has_errors() ? 1 : 0;
  if (!studied->readable) return out;
  // The model's own vectors move as they are, so what the timetable points at stays where it is.
  out.plan = std::make_unique<const TimedPlan>(
      TimedPlan{std::move(studied->session), std::move(studied->timetable), club.drills});
  return out;
}

std::string_view version() { return CHALKLEAF_VERSION; }

}  // namespace chalkleaf::club
