// See the header.
#include "club/tidy.h"

#include "club/drafts.h"
#include "club/line_changes.h"
#include "club/places.h"
#include "club/resources.h"
#include "club/rotations.h"
#include "club/setup.h"
#include "club/shelf.h"
#include "draft/lexicon.h"
#include "plan/read.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

// The plan with the grids that it leaves to us.
std::string completed(const std::string& display, const std::string& text, const ClubTools& club) {
  Diagnostics unused;
  const auto source = std::make_shared<const Source>(display, text);
  PlanRotations rotations = rotations_in(source, club);
  if (rotations.all.empty()) return text;
  plan::Session session =
      plan::read_session(source::read_document(source, unused), club.club, unused);
  propose_missing(rotations, session, club);
  return with_grids(*source, rotations);
}

}  // namespace

TidyRun tidy(const Request& request, TidyWay way, const Surroundings& around, Listener& listener) {
  TidyRun out;
  Teller teller(listener, out.summary);
  const Selection selection = select(request, around.files, teller, out.summary);
  refuse_shared(selection, request, teller);
  if (out.summary.environment_failed) return out;
  const auto data = open_data_folder(around.files, around.environment, around.program);
  const auto shelf = open_shelf(around.files, data.value_or(DataFolder()));
  for (const PlanFile& plan : selection.plans) {
    const std::string display = path_from(request.standing, plan.path);
    Diagnostics found;
    ClubTools club = open_club(selection.roots[plan.root], request, around.files, {}, shelf, teller,
                               Need::kNamed)
                         .value();
    const auto words = words_for(club.club.language, around, teller);
    const SourcePtr source = source::load(around.files, plan.path, display, found);
    if (source) found.keep(source);
    teller.tell(found, display);
    if (!source || !words) continue;
    Tidied made{display, std::string(source->text()), std::string(source->text())};
    Diagnostics in_words;
    if (data) club.rota = load_rota(around.files, *data, club.club.language, in_words);
    teller.tell(in_words, "");
    const bool taught = draft::is_canonical(*source);
    auto read = taught ? std::nullopt : draft::read(*words, source, rotations_in(source, club).all);
    if (!read) {
      Diagnostics in_plan;
      plan::read_session(source::read_document(source, in_plan), club.club, in_plan,
                         front_words(words.get()));
      read = mended(*words, source, in_plan, Supply::kMissingKeys);
    }
    if (read) made.after = read->canonical->text();
    made.after = completed(display, made.after, club);
    if (way == TidyWay::kWrite && made.after != made.before) {
      const auto written = around.files.write_whole(plan.path, made.after);
      if (!written) teller.problem(display + " cannot be written: " + written.error().message);
    }
    out.plans.push_back(std::move(made));
  }
  return out;
}

std::string change_text(const Tidied& plan) {
  return line_changes(plan.path, plan.before, plan.after);
}

}  // namespace chalkleaf::club
