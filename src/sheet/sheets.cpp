#include "sheet/sheets.h"

#include <array>

#include "sheet/builder.h"

namespace chalkleaf::sheet {
namespace {

/// A sheet at one scale. The builder must outlive the composing: the foot is built last.
page::Composed compose_at(Kind kind, double scale, const plan::Session& session,
                          const reason::Timetable& timetable, const Context& context,
                          type::Typesetter& typesetter) {
  Builder builder(context, context.theme.look(kind).scaled(scale), typesetter);
  page::Flow flow = kind == Kind::kCoachCard ? coach_card(session, timetable, builder)
                                             : home_sheet(session, timetable, builder);
  return page::compose(std::move(flow), typesetter);
}

/// How much of the paper's height is free below the last line.
double free_share(const page::Composed& composed) {
  const page::Page& last = composed.list.pages.back();
  return composed.free_on_last_page.in_pt() / last.size.height.in_pt();
}

// A page that is mostly empty looks lost, and a last page with three lines on it is a page to lose:
// a short sheet is set larger, one that just runs over is set a little smaller (never below the
// minimum size).
page::Composed compose_to_fit(Kind kind, const plan::Session& session,
                              const reason::Timetable& timetable, const Context& context,
                              type::Typesetter& typesetter) {
  constexpr std::array kLarger = {1.4, 1.25, 1.12};
  constexpr std::array kSmaller = {0.96, 0.92, 0.88};
  const double paper_scale = context.theme.look(kind).scale.at(context.paper);
  page::Composed best = compose_at(kind, paper_scale, session, timetable, context, typesetter);
  const std::size_t pages = best.list.pages.size();
  if (pages == 1 && free_share(best) > 0.3) {
    for (const double factor : kLarger) {
      page::Composed tried =
          compose_at(kind, paper_scale * factor, session, timetable, context, typesetter);
      if (tried.list.pages.size() == 1 && tried.problems.size() <= best.problems.size())
        return tried;
    }
  }
  // What is on the last page, spread over the pages before it, must be little enough for 12 %
  // smaller type.
  const double last_page_used = 1 - free_share(best);
  if (pages > 1 && last_page_used < 0.12 * static_cast<double>(pages - 1)) {
    for (const double factor : kSmaller) {
      page::Composed tried =
          compose_at(kind, paper_scale * factor, session, timetable, context, typesetter);
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
