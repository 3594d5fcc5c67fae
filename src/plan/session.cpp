// read_session and read_part of plan/read.h: front matter and body, put together.
// Tested by tests/plan/session_test.cpp.
#include <fmt/format.h>

#include <map>

#include "base/text.h"
#include "plan/body.h"
#include "plan/front_matter.h"
#include "plan/read.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

// The heading says one time, `timings: parts:` another.
void two_budgets(const Part& part, const Budget& budget, Diagnostics& diagnostics) {
  Diagnostic two{Severity::kError, kBadValue, budget.time.span,
                 fmt::format("the heading of ‘{}’ gives it {}, not {}", part.title.text,
                             exact_text(part.budget->value), exact_text(budget.time.value))};
  two.labels.push_back({part.budget->span, "this is in its heading"});
  two.hint = "keep one of the two times";
  diagnostics.add(std::move(two));
}

void place_budgets(const std::vector<Budget>& budgets, Session& session, Diagnostics& diagnostics) {
  constexpr std::size_t kMostCompared = 100;  // for a suggestion
  std::vector<std::string> titles;
  std::multimap<std::string, Part*> by_title;
  for (Part& part : session.parts) {
    if (titles.size() < kMostCompared) titles.push_back(part.title.text);
    by_title.emplace(lower_ascii(part.title.text), &part);
  }
  for (const Budget& budget : budgets) {
    bool found = false;
    const auto [from, to] = by_title.equal_range(lower_ascii(budget.part.text));
    for (auto at = from; at != to; ++at) {
      Part& part = *at->second;
      found = true;
      if (part.budget && part.budget->value != budget.time.value) {
        two_budgets(part, budget, diagnostics);
      }
      part.budget = budget.time;
    }
    if (found) continue;
    diagnostics.error(kBadValue, budget.part.span,
                      fmt::format("the plan has no part ‘{}’", budget.part.text),
                      titles.empty() ? "write the part as a heading: `## Warm-up`"
                                     : suggestion(budget.part.text, titles, "parts"));
  }
}

}  // namespace

Session read_session(const source::Document& document, const Club& club, Diagnostics& diagnostics) {
  Session session;
  session.source = document.source;
  session.sources.push_back(document.source);
  session.timings = club.timings;
  session.printing = club.printing;
  const std::vector<Budget> budgets = read_front_matter(document, club, session, diagnostics);
  const bool title_written = !session.title.empty();
  Body body = read_body(document.body, FileRole::kSession, session.title, diagnostics);
  if (!title_written) session.title = std::move(body.title);
  session.introduction = std::move(body.introduction);
  if (session.place.value == Place::kHome && !club.home_safety.empty())
    session.safety.insert(session.safety.begin(), safety_of(club.home_safety));
  for (Safety& one : body.safety) session.safety.push_back(std::move(one));
  session.parts = std::move(body.parts);
  if (session.title.empty() && !is_reported("title", document, diagnostics)) {
    diagnostics.error("missing-key", session.front_matter, "the plan has no title",
                      has_front_matter(document)
                          ? "add a line `title: ` to the front matter, or begin the text with a "
                            "heading `# `"
                          : "write a line such as `title: Shapes on the floor` between those two "
                            "`---` lines");
  }
  place_budgets(budgets, session, diagnostics);
  return session;
}

PartFile read_part(const source::Document& document, Diagnostics& diagnostics) {
  PartFile out;
  out.source = document.source;
  out.place = place_written(document);
  out.title = read_part_title(document, diagnostics);
  Body body = read_body(document.body, FileRole::kSharedPart, out.title, diagnostics);
  if (out.title.empty()) out.title = std::move(body.title);
  out.steps = std::move(body.parts.front().steps);
  out.safety = std::move(body.parts.front().safety);
  return out;
}

}  // namespace chalkleaf::plan
