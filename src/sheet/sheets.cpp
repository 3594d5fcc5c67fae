#include "sheet/sheets.h"

#include "page/filing.h"
#include "sheet/builder.h"
#include "sheet/evening.h"
#include "sheet/fit.h"

namespace chalkleaf::sheet {
namespace {

// Letters for who learns to read are wide; from nine years on a family reads those of the card.
void set_close(Kind kind, const plan::Session& session, const Theme& theme, Look& look) {
  constexpr int kReads = 9;  // years
  // Of the leading; lines as short as a card's are found without much of it.
  const double tight = kind == Kind::kCoachCard ? 0.94 : 0.96;
  const auto& youngest = session.group ? session.group->youngest : std::nullopt;
  const bool reads = youngest && youngest->value >= kReads;
  if (kind == Kind::kHomeSheet && !reads) return;
  look.font = theme.card.font;
  for (TextLook& text : look.texts) text.leading = text.leading.scaled(tight);
}

/// A sheet at one scale. The builder must outlive the composing: the foot is built last.
page::Composed compose_at(Kind kind, double scale, Arrangement arrangement,
                          const plan::Session& session, const reason::Timetable& timetable,
                          const Context& context, type::Typesetter& typesetter) {
  const Look& usual = context.theme.look(kind);
  const bool compact = arrangement != Arrangement::kRoomy;
  Look look = compact ? usual.compacted(kind).scaled(scale) : usual.scaled(scale);
  if (arrangement == Arrangement::kClose) set_close(kind, session, context.theme, look);
  Builder builder(kind, context, look, typesetter, arrangement);
  page::Flow flow = kind == Kind::kCoachCard ? coach_card(session, timetable, builder)
                    : compact                ? compact_home_sheet(session, timetable, builder)
                                             : home_sheet(session, timetable, builder);
  page::Composed out = page::compose(std::move(flow), typesetter);
  if (context.filing != plan::Filing::kNone) {
    const auto sides = context.filing == plan::Filing::kBothSides ? page::PrintedOn::kBothSides
                                                                  : page::PrintedOn::kOneSide;
    page::prepare_for_filing(out.list, sides, builder.margins(),
                             builder.stroke(Use::kLine, builder.look().hair_width));
  }
  return out;
}

}  // namespace

page::DisplayList make(Kind kind, const plan::Session& session, const reason::Timetable& timetable,
                       const Context& context, type::Typesetter& typesetter,
                       Diagnostics& diagnostics) {
  if (kind == Kind::kStationCards)
    return station_cards(session, timetable, context, typesetter, diagnostics);
  if (kind == Kind::kHallPoster)
    return hall_poster(session, timetable, context, typesetter, diagnostics);
  const double paper_scale = context.theme.look(kind).scale.at(context.paper);
  const bool compact =
      kind == Kind::kCoachCard || session.printing.layout == plan::SheetLayout::kCompact;
  const auto arrange = [&](double factor, Arrangement arrangement) {
    return compose_at(kind, paper_scale * factor, arrangement, session, timetable, context,
                      typesetter);
  };
  const std::string name = kind == Kind::kCoachCard ? "coach card" : "home sheet";
  const auto& fit = kind == Kind::kCoachCard ? session.fit_card : session.fit_sheet;
  page::Composed composed;
  if (fit) {
    // The calmest way to set it that does.
    std::vector<Arrangement> ways = {Arrangement::kRoomy};
    if (compact) ways = {Arrangement::kCompact, Arrangement::kDense, Arrangement::kClose};
    Fitted fitted;
    for (const Arrangement way : ways) {
      fitted =
          compose_to_fit(fit->value.pages, [&](double factor) { return arrange(factor, way); });
      if (!fitted.needed) break;
    }
    composed = std::move(fitted.composed);
    if (fitted.needed)
      report_does_not_fit(session, *fit, *fitted.needed, name, context.paper, diagnostics);
  } else {
    composed = compact ? compose_compact(arrange) : compose_freely([&](double factor) {
      return arrange(factor, Arrangement::kRoomy);
    });
  }
  page::report(composed, name, diagnostics,
               session.title.span ? session.title.span : session.front_matter);
  return std::move(composed.list);
}

}  // namespace chalkleaf::sheet
