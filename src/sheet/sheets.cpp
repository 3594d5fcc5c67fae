#include "sheet/sheets.h"

#include <array>

#include "page/filing.h"
#include "sheet/builder.h"

namespace chalkleaf::sheet {
namespace {

/// A sheet at one scale. The builder must outlive the composing: the foot is built last.
page::Composed compose_at(Kind kind, double scale, const plan::Session& session,
                          const reason::Timetable& timetable, const Context& context,
                          type::Typesetter& typesetter) {
  Builder builder(kind, context, context.theme.look(kind).scaled(scale), typesetter);
  page::Flow flow = kind == Kind::kCoachCard ? coach_card(session, timetable, builder)
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

// A page that is mostly empty looks lost, and pages with wide gaps at their feet are more paper
// than there is text: a short sheet is set larger; one whose text could nearly do with a page less
// is set a little smaller, if that saves the page (never below the minimum size).
page::Composed compose_to_fit(Kind kind, const plan::Session& session,
                              const reason::Timetable& timetable, const Context& context,
                              type::Typesetter& typesetter) {
  constexpr std::array kLarger = {1.4, 1.25, 1.12};
  constexpr std::array kSmaller = {0.96, 0.92, 0.88};
  constexpr double kMostFree = 0.3;      // of a single page, before it is set larger
  constexpr double kLeastSaving = 0.96;  // what smaller type can take off the length, about
  const double paper_scale = context.theme.look(kind).scale.at(context.paper);
  const auto at = [&](double factor) {
    return compose_at(kind, paper_scale * factor, session, timetable, context, typesetter);
  };
  page::Composed best = at(1);
  const std::size_t pages = best.list.pages.size();
  if (pages == 1 && best.free_on_last_page > best.page_height.scaled(kMostFree)) {
    for (const double factor : kLarger) {
      page::Composed tried = at(factor);
      if (tried.list.pages.size() == 1 && tried.problems.size() <= best.problems.size())
        return tried;
    }
  }
  const Length one_page_less = best.page_height * static_cast<std::int64_t>(pages - 1);
  if (pages > 1 && best.used.scaled(kLeastSaving) <= one_page_less) {
    for (const double factor : kSmaller) {
      page::Composed tried = at(factor);
      if (tried.list.pages.size() < pages && tried.too_tall.empty()) return tried;
    }
  }
  return best;
}

}  // namespace

page::DisplayList make(Kind kind, const plan::Session& session, const reason::Timetable& timetable,
                       const Context& context, type::Typesetter& typesetter,
                       Diagnostics& diagnostics) {
  page::Composed composed = compose_to_fit(kind, session, timetable, context, typesetter);
  const std::string name = kind == Kind::kCoachCard ? "coach card" : "home sheet";
  page::report(composed, name, diagnostics);
  return std::move(composed.list);
}

}  // namespace chalkleaf::sheet
