#include "club/compile.h"

#include <fmt/format.h>

#include <algorithm>
#include <new>
#include <stdexcept>

#include "club/drafts.h"
#include "club/outputs.h"
#include "club/page_pictures.h"
#include "club/rotations.h"
#include "page/impose.h"
#include "pdf/write.h"
#include "reason/checks.h"
#include "reason/rotations.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

void begin(const OnPass& on_pass, std::string_view pass) {
  if (on_pass) on_pass(pass);
}

// A5 is held in the hand, A4 hangs on the wall. Large print (UKAAF G003 (2019): from 16 pt, value
// from memory) has too few words on a line of A5.
Paper paper_for(sheet::Kind kind, const plan::Session& session, const sheet::Theme& theme,
                const RunTools& run) {
  if (kind == sheet::Kind::kHallPoster) {  // the wall takes what the printer has
    const Paper asked = run.paper.value_or(
        session.printing.card_paper ? session.printing.card_paper->value : Paper::kA4);
    const Paper whole = double_of(asked).value_or(asked);
    return is_landscape(whole) ? whole : turned(whole);
  }
  if (run.paper) return *run.paper;
  const bool card = sheet::is_for_coaches(kind);
  const auto& written = card ? session.printing.card_paper : session.printing.sheet_paper;
  if (written) return written->value;
  const bool large = theme.look(kind).minimum >= Length::pt(16);
  return card && !large ? Paper::kA5 : Paper::kA4;
}

// Two of a small page on a sheet of the next size.
page::DisplayList two_up(page::DisplayList list, Paper paper, const sheet::Theme& theme,
                         const RunTools& run) {
  const auto sheet = double_of(paper);
  if (run.two_up == TwoUp::kNo || !sheet) return list;
  const std::size_t pages = list.pages.size();
  const auto order =
      run.two_up == TwoUp::kPages ? page::two_up_order(pages) : page::twice_order(pages);
  const page::Stroke line{theme.colour(sheet::Use::kLine), theme.card.hair_width, false, {}};
  return page::impose(std::move(list), order, {paper_size(*sheet), page::MiddleMark::kCut, line});
}

}  // namespace

std::shared_ptr<const sheet::Theme> look_for(const plan::Printing& printing, const ClubTools& club,
                                             const RunTools& run, Diagnostics& diagnostics) {
  if (club.looks->unlisted()) {
    diagnostics.error(
        "unreadable-file", {},
        fmt::format("the looks there are cannot be read: {}", *club.looks->unlisted()),
        "see that the club's folder ‘looks’ and what is in it may be read");
    return nullptr;
  }
  if (!run.look.empty()) return club.looks->find(run.look, diagnostics);
  const plan::Words& look = printing.look;
  if (look.empty()) return club.looks->find(kUsualLook, diagnostics);
  if (!club.looks->known(look.text).empty()) return club.looks->find(look.text, diagnostics);
  diagnostics.error(kBadValue, look.span, fmt::format("there is no look ‘{}’", look.text),
                    club.looks->hint(look.text));
  return nullptr;
}

sheet::Context context_for(sheet::Kind kind, const plan::Session& session,
                           const sheet::Theme& theme, const ClubTools& club, const RunTools& run,
                           const std::string& path) {
  const Revision revision =
      club.revisions ? club.revisions->of(path, session.source->text()) : Revision{};
  return {theme,
          *club.labels,
          club.club,
          paper_for(kind, session, theme, run),
          revision.text,
          revision.date,
          run.source_date ? run.source_date : revision.committed,
          run.producer,
          club.figures ? club.figures->drawings.get() : nullptr,
          club.figures ? club.figures->art.get() : nullptr,
          session.printing.filing,
          {},
          club.logo ? &*club.logo : nullptr};
}

namespace {

std::size_t wrong_in(const Diagnostics& found) {
  return found.error_count() + found.warning_count();
}

}  // namespace

std::unique_ptr<Studied> study(const PlanPaths& plan, const ClubTools& club,
                               const FileSystem& files, const OnPass& on_pass, Turns* turns) {
  auto out = std::make_unique<Studied>();
  Diagnostics& found = out->diagnostics;

  begin(on_pass, "read");
  const SourcePtr source = source::load(files, plan.path, plan.display, found);
  if (!source) return out;
  found.keep(source);
  if (turns != nullptr) out->turn = turns->take(source->text().size());
  begin(on_pass, "draft");
  if (club.words && !draft::is_canonical(*source))
    out->draft = draft::read(*club.words, source, rotations_in(source, club).all);
  const SourcePtr& taught = out->draft ? out->draft->canonical : source;
  found.keep(taught);
  const auto understand = [&](const SourcePtr& text, Diagnostics& in_text) {
    const source::Document document = source::read_document(text, in_text);
    begin(on_pass, "understand");
    return plan::read_session(document, club.club, in_text, front_words(club.words.get()));
  };
  Diagnostics in_plan;
  out->session = understand(taught, in_plan);
  if (!out->draft && club.words && wrong_in(in_plan) > 0) {
    // Line by line: what is mended may show what else is not as it is taught.
    auto better = mended(*club.words, source, in_plan, Supply::kNothing);
    if (better) {
      Diagnostics in_better;
      plan::Session session = understand(better->canonical, in_better);
      if (wrong_in(in_better) < wrong_in(in_plan)) {
        in_plan = std::move(in_better);
        out->session = std::move(session);
        out->draft = std::move(better);
        found.keep(out->draft->canonical);
        tell_mended(*out->draft, in_plan);
      }
    }
  }
  found.append(in_plan);
  if (out->draft) {  // what is printed of the file is the coach's: its revision, its lines
    out->session.source = source;
    out->session.sources.push_back(source);
    out->session.typed = typed_lines(*out->draft);
  }

  begin(on_pass, "link");
  plan::link_parts(out->session, plan.path, *club.parts, found, club.pictures.get());

  begin(on_pass, "inherit");
  plan::inherit(out->session, *club.drills, found);

  begin(on_pass, "time");
  PlanRotations rotations;
  if (out->session.place.value == plan::Place::kGym)
    rotations = rotations_in(out->draft ? out->draft->canonical : source, club);
  propose_missing(rotations, out->session, club);
  const std::vector<reason::Seat> seats = reason::seat_rotations(out->session, rotations.all);
  add_grids(out->session, seats, rotations);
  tell_of_proposals(rotations, found);
  out->timetable = reason::timetable(out->session, club.club, club.hall.get());
  out->timetable.rotations = std::move(rotations.all);
  out->timetable.seats = seats;

  begin(on_pass, "check");
  if (!club.missing_drills.all().empty() && has_unknown_drill(out->session, *club.drills))
    found.append(club.missing_drills);
  club.broken_figures.report(out->session, found);
  if (club.figures) reason::check_figures(out->session, names_of(*club.figures->catalogue), found);
  reason::check(out->session, out->timetable, club.club, *club.drills, club.guard.get(), found);
  out->session.unsaid = reason::unsaid_at_home(found);
  if (out->draft) found = told_of_draft(found, *out->draft);
  out->readable = true;
  return out;
}

namespace {

// Whoever asks for strictness wants no sheet at all with anything wrong.
bool stops(const Diagnostics& found, reason::Stops what, const RunTools& run) {
  const bool strict = run.strictness == Strictness::kStrict;
  return std::any_of(found.all().begin(), found.all().end(), [&](const Diagnostic& one) {
    const auto stopped = reason::stopped_by(one);
    return stopped && (strict || *stopped == what);
  });
}

// What the coach has to see first: everything that can hurt a child, and what the session lacks.
std::vector<sheet::Caution> cautions_in(const Diagnostics& found) {
  constexpr std::size_t kMost = 5;  // a box that fills the card is not read
  std::vector<sheet::Caution> out;
  std::size_t more = 0;
  for (const Diagnostic& one : found.sorted()) {
    if (!reason::is_open_point(one)) continue;
    if (out.size() == kMost) {
      ++more;
      continue;
    }
    std::string hint = one.hint;
    if (!hint.empty() && hint[0] >= 'a' && hint[0] <= 'z')
      hint[0] = static_cast<char>(hint[0] - 'a' + 'A');
    out.push_back({hint.empty() ? one.message : fmt::format("{}. {}", one.message, hint),
                   reason::stopped_by(one) == reason::Stops::kHomeSheet});
  }
  if (more > 0)
    out.push_back({fmt::format("{} more: see ‘chalkleaf check’", more), out.back().is_danger});
  // Dangers first.
  std::stable_partition(out.begin(), out.end(),
                        [](const sheet::Caution& one) { return one.is_danger; });
  return out;
}

Compiled compile_plan(const PlanPaths& plan, const ClubTools& club, const RunTools& run,
                      type::Typesetter& typesetter) {
  Compiled out;
  const std::unique_ptr<Studied> studied = study(plan, club, run.files, run.on_pass, run.turns);
  const plan::Session& session = studied->session;
  Diagnostics found = std::move(studied->diagnostics);
  std::vector<Sheet> sheets;
  const bool club_sound = club.sound && !club.broken_club.holds_back(session);
  const auto sound = [&] {
    if (run.strictness == Strictness::kStrict) found.make_strict();
    return studied->readable && club_sound && !stops(found, reason::Stops::kEverything, run);
  };
  const auto prints = [&](sheet::Kind kind) {
    return sound() &&
           (sheet::is_for_coaches(kind) || (!club.broken_club.holds_home_sheets() &&
                                            !stops(found, reason::Stops::kHomeSheet, run)));
  };

  const auto theme = sound() ? look_for(session.printing, club, run, found) : nullptr;
  // A plan with errors is not set: its sheets would repeat the same mistakes as overflow.
  if (theme && sound()) {
    const Rotations rotations = rotations_of(studied->timetable);
    for (const sheet::Kind kind : kinds_to_print(session.place.value, rotations, run.only)) {
      if (!prints(kind)) continue;
      sheet::Context context = context_for(kind, session, *theme, club, run, plan.path);
      if (sheet::is_for_coaches(kind)) context.cautions = cautions_in(found);
      begin(run.on_pass, sheet::is_for_coaches(kind) ? "set card" : "set sheet");
      page::DisplayList list =
          two_up(sheet::make(kind, session, studied->timetable, context, typesetter, found),
                 context.paper, *theme, run);
      if (studied->draft) found = told_of_draft(found, *studied->draft);
      if (run.purpose == Purpose::kCheck || !sound()) continue;
      begin(run.on_pass, "supply pictures");
      if (const auto gone = supply_pictures(list, *club.pictures)) {
        found.error("not-written", {},
                    fmt::format("the picture {} changed while {} was set", *gone, plan.display),
                    "build again");
        continue;
      }
      begin(run.on_pass, "write pdf");
      auto bytes = run.writer.write(list);
      if (!bytes) {
        found.error("not-written", {},
                    fmt::format("a sheet of {} could not be made into a PDF: {}", plan.display,
                                bytes.error().message));
        continue;
      }
      sheets.push_back({kind, std::move(*bytes)});
      if (run.purpose != Purpose::kProof) continue;
      begin(run.on_pass, "draw pages");
      auto pictures = page_pictures(sheets.back().bytes, list.pages.size(), run.dots);
      if (!pictures) {
        found.error(
            "not-written", {},
            fmt::format("the pages of {} could not be drawn: {}", plan.display, pictures.error()));
        continue;
      }
      sheets.back().pages = std::move(*pictures);
    }
  }
  std::erase_if(sheets, [&](const Sheet& sheet) { return !prints(sheet.kind); });
  const bool own_fault = club_sound && !club.broken_club.holds_home_sheets();
  out.older = own_fault ? fate_of_older(found, session.source.get()) : Older::kStay;

  if (run.purpose != Purpose::kCheck) begin(run.on_pass, "save");
  if (run.purpose == Purpose::kBuild) {
    out.not_written = !stage(run.files, plan, sheets, out.staged, found);
    if (out.not_written) out.older = Older::kStay;
  } else if (run.purpose == Purpose::kProof) {
    out.not_written = !save_pictures(run.files, plan, run.only, sheets, out.older, found);
    for (const Sheet& sheet : sheets) out.written += sheet.pages.size();
  }
  out.failed = !sound();
  out.home_sheet_held =
      !out.failed && session.place.value == plan::Place::kHome && !prints(sheet::Kind::kHomeSheet);
  if (out.failed) out.written = 0;
  // What a draft says stands elsewhere in the coach's file: its places would lead astray.
  if (run.purpose != Purpose::kProof && studied->readable && !studied->draft) {
    const auto loads = reason::loads_of(session, studied->timetable, *club.drills);
    out.week = reason::week_session(session, studied->timetable, loads.sum);
  }
  out.diagnostics = std::move(found);
  out.sources = session.sources;
  out.sources.push_back(session.source);
  return out;
}

}  // namespace

// A plan that brings us to the end of memory fails alone; it does not take the other plans with it.
// Any other exception is a mistake of ours, and is not blamed on the coach.
Compiled compile(const PlanPaths& plan, const ClubTools& club, const RunTools& run,
                 type::Typesetter& typesetter) {
  Compiled out;
  out.failed = true;
  const auto out_of_memory = [&] {
    out.diagnostics.error(
        "not-written", {},
        fmt::format("{} could not be set: it needs more memory than there is", plan.display),
        "shorten it, or split it into several plans");
  };
  try {
    return compile_plan(plan, club, run, typesetter);
  } catch (const std::bad_alloc&) {
    out_of_memory();
  } catch (const std::length_error&) {
    out_of_memory();
  } catch (const std::exception& error) {
    out.internal_error = true;
    out.diagnostics.error("not-written", {},
                          fmt::format("{} could not be set, because of a mistake in Chalkleaf "
                                      "itself (an internal error: {})",
                                      plan.display, error.what()),
                          "the plan may well be right; please report this, with the plan");
  }
  return out;
}

}  // namespace chalkleaf::club
