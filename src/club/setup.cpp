// See the header.
#include "club/setup.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "base/diagnostic_text.h"
#include "club/club_file.h"
#include "club/drill_library.h"
#include "club/font_catalogue.h"
#include "club/logo.h"
#include "club/part_library.h"
#include "club/places.h"
#include "club/resources.h"
#include "club/shared_files.h"
#include "club/shelf.h"
#include "reason/checks.h"

namespace chalkleaf::club {

void Teller::problem(const std::string& sentence) {
  summary_.environment_failed = true;
  listener_.problem(sentence);
}

// Of several names together: a few pages, of which nobody reads more.
constexpr std::size_t kMostOfOneFile = 400;

void Teller::tell(const Diagnostics& found, const std::string& plan) {
  std::map<Severity, std::size_t> heard;
  for (Diagnostic& diagnostic : found.sorted()) {
    const bool shared = !diagnostic.span || diagnostic.span.source->path() != plan;
    if (shared && !is_new(diagnostic)) continue;
    const std::size_t before = heard[diagnostic.severity]++;
    if (before > kMostOfOneFile) continue;
    if (before == kMostOfOneFile) {
      diagnostic.message = "there is more wrong from here on, which is not listed";
      diagnostic.hint = "mend what is listed, and check again";
      diagnostic.labels.clear();
      diagnostic.edits.clear();
    }
    if (diagnostic.severity == Severity::kError) ++summary_.errors;
    if (diagnostic.severity == Severity::kWarning) ++summary_.warnings;
    listener_.found(diagnostic);
  }
}

bool Teller::is_new(const Diagnostic& diagnostic) {
  return told_.insert(hash128(render(diagnostic, MessageStyle::kShort, Colouring::kPlain))).second;
}

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

std::optional<Press> set_up_press(const Surroundings& around, Teller& teller, Summary& summary) {
  auto data = open_data_folder(around.files, around.environment, around.program);
  if (!data) {
    teller.problem(data.error());
    return std::nullopt;
  }
  Press press;
  press.data = std::move(*data);
  press.shelf = open_shelf(around.files, press.data);
  Diagnostics found;
  type::Catalogue catalogue = load_font_catalogue(around.files, press.data, found);
  teller.tell(found, "");
  if (found.has_errors()) {
    summary.environment_failed = true;
    return std::nullopt;
  }
  press.fonts = std::make_unique<type::Fonts>(std::move(catalogue), around.files);
  press.writer = std::make_unique<const pdf::Writer>(*press.fonts);
  press.hyphenations = std::make_unique<type::Hyphenations>(
      around.files, type::Hyphenations::usual_folders(), press.data.pack);
  const std::vector<type::FontError> unusable = press.fonts->open_primary();
  for (const type::FontError& error : unusable) {
    teller.problem("the font " + error.path + " cannot be used: " + error.message);
  }
  if (!unusable.empty()) return std::nullopt;
  return press;
}

std::optional<ClubTools> open_club(const Root& root, const Request& request,
                                   const FileSystem& files, const DataFolder& data,
                                   const std::shared_ptr<const plan::ShelfSource>& shelf,
                                   Teller& teller, Need need) {
  ClubTools out;
  const bool strict = request.strictness == Strictness::kStrict;
  bool unusable = false;
  Diagnostics found;
  if (root.is_club) {
    const std::string display = path_from(request.standing, join_path(root.path, "club.yaml"));
    out.club = load_club(files, root.path, display, found);
  }
  if (!data.path.empty()) {
    out.labels = load_labels(files, data, out.club.language, found);
    out.sound = out.labels != nullptr;
    out.hall = load_hall(files, data, out.club.language, found);
    out.rota = load_rota(files, data, out.club.language, found);
    out.guard = load_guard(files, data, out.club.language, found);
    unusable = !out.sound && has_labels(files, data.path, out.club.language);
  }
  if (!data.path.empty()) {
    out.looks = std::make_shared<const Looks>(
        files, Looks::Places{data, root.is_club ? root.path : "", request.standing},
        sheet::OwnColours{out.club.main_colour, out.club.second_colour});
    if (!request.look.empty() && out.looks->known(request.look).empty()) {
      teller.problem("there is no look ‘" + printable(request.look) +
                     "’: " + out.looks->hint(request.look));
      return std::nullopt;
    }
    // The club's own is only of plans that have it, and is told with them.
    Diagnostics in_look;
    if (!out.looks->is_own(kUsualLook) && !out.looks->find(kUsualLook, in_look)) unusable = true;
    found.append(in_look);
  }
  if (!data.path.empty()) {
    out.words = load_words(files, data, out.club.language, found);
    unusable = unusable || !out.words;
  }
  out.parts = std::make_unique<PartLibrary>(files, root.path, request.standing);
  out.pictures = std::make_unique<Pictures>(files, root.path);
  // What is wrong in these concerns the plans that use them; what is in `found`, all.
  Diagnostics in_folders;
  Diagnostics in_drills;
  if (root.is_club) {
    out.logo = load_logo(out.club, join_path(root.path, "club.yaml"), *out.pictures, found);
    DrillLibrary library = load_drills({files, root.path, request.standing, request.jobs, need},
                                       out.pictures.get(), out.club.uses_shelf ? shelf : nullptr);
    out.drills = std::move(library.book);
    in_drills = std::move(library.drills);
    reason::apply_choices(out.club, in_drills);
    if (strict) library.folder.make_strict();
    in_folders.append(library.folder);
    out.missing_drills = std::move(library.folder);
    out.missing_drills.revise([](const Diagnostic& one) {
      return one.severity == Severity::kError ? std::optional(one.severity) : std::nullopt;
    });
  } else {
    out.drills = std::make_shared<const plan::DrillBook>(std::vector<plan::LibraryDrill>{},
                                                         in_drills, shelf);
  }
  if (!data.path.empty()) {
    Diagnostics in_figures;
    out.figures = std::make_shared<const Figures>(
        load_figures(files, data, root.is_club ? root.path : "", request.standing, in_figures));
    reason::apply_choices(out.club, in_figures);
    if (strict) in_figures.make_strict();
    out.broken_figures = BrokenFigures(*out.figures, in_figures);
    in_folders.append(in_figures);
    Diagnostics named;
    // Drills that are not read until a plan names them are looked at with the plan.
    for (const plan::LibraryDrill& drill : out.drills->read_now()) {
      reason::check_figures(drill, names_of(*out.figures->catalogue), named);
    }
    reason::apply_choices(out.club, named);
    in_drills.append(named);
  }
  if (strict) {
    found.make_strict();
    in_drills.make_strict();
  }
  out.broken_club = BrokenClub(out.club, found);
  found.append(in_folders);
  teller.tell(found, "");
  teller.tell(in_drills, "");
  return unusable ? std::nullopt : std::optional(std::move(out));
}

Need need_of(const Request& request, const Selection& selection, const FileSystem& files) {
  constexpr std::size_t kFew = 8;
  const bool few = !request.arguments.empty() && request.arguments.size() <= kFew;
  const bool plans =
      selection.shared.empty() &&
      std::all_of(request.arguments.begin(), request.arguments.end(), [&](const std::string& one) {
        return files.kind(normal_path(join_path(request.standing, one))) == FileKind::kFile;
      });
  return few && plans ? Need::kNamed : Need::kAll;
}

std::shared_ptr<const draft::Lexicon> words_for(const std::string& language,
                                                const Surroundings& around, Teller& teller) {
  const auto data = open_data_folder(around.files, around.environment, around.program);
  if (!data) return nullptr;  // plans in the taught form need no words
  Diagnostics found;
  auto out = load_words(around.files, *data, language, found);
  teller.tell(found, "");
  return out;
}

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

void tell_of_revisions(const Revisions& revisions, const Root& root, const Request& request,
                       Teller& teller) {
  if (revisions.trouble().empty()) return;
  const std::string shown = path_from(request.standing, root.path);
  Diagnostics found;
  found.warning("unreadable-file", {},
                fmt::format("the git repository of {} {}, so sheets do not say which version of a "
                            "plan they show",
                            shown == "." ? "this folder" : shown, revisions.trouble()),
                "see whether ‘git log’ works there; the sheets are whole without it");
  teller.tell(found, "");
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

}  // namespace chalkleaf::club
