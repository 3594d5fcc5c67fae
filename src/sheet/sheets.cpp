#include "sheet/sheets.h"

#include "page/filing.h"
#include "sheet/builder.h"
#include "sheet/fit.h"

namespace chalkleaf::sheet {
namespace {

/// A sheet at one scale. The builder must outlive the composing: the foot is built last.
page::Composed compose_at(Kind kind, double scale, Arrangement arrangement,
                          const plan::Session& session, const reason::Timetable& timetable,
                          const Context& context, type::Typesetter& typesetter) {
  const Look& usual = context.theme.look(kind);
  const bool compact = arrangement != Arrangement::kRoomy;
  const Look look = compact ? usual.compacted(kind).scaled(scale) : usual.scaled(scale);
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
  const double paper_scale = context.theme.look(kind).scale.at(context.paper);
  const bool compact =
      kind == Kind::kCoachCard || session.printing.layout == plan::SheetLayout::kCompact;
  const auto arrange = [&](double factor, Arrangement arrangement) {
    return compose_at(kind, paper_scale * factor, arrangement, session, timetable, context,
                      typesetter);
  };
  const auto at = [&](double factor) {
    return arrange(factor, compact ? Arrangement::kDense : Arrangement::kRoomy);
  };
  const std::string name = kind == Kind::kCoachCard ? "coach card" : "home sheet";
  const auto& fit = kind == Kind::kCoachCard ? session.fit_card : session.fit_sheet;
  page::Composed composed;
  if (fit) {
    Fitted fitted = compose_to_fit(fit->value.pages, at);
    composed = std::move(fitted.composed);
    if (fitted.needed)
      report_does_not_fit(session, *fit, *fitted.needed, name, context.paper, diagnostics);
  } else {
    composed = compact ? compose_compact(arrange) : compose_freely(at);
  }
  page::report(composed, name, diagnostics,
               session.title.span ? session.title.span : session.front_matter);
  return std::move(composed.list);
}

}  // namespace chalkleaf::sheet
