// read_session and read_part of plan/read.h: front matter and body, put together.
// Tested by tests/plan/session_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/text.h"
#include "plan/body.h"
#include "plan/front_matter.h"
#include "plan/keys.h"
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

// A plan without a title has that of its group, or its file.
void name_after_file(Session& session, const source::Document& document, Diagnostics& diagnostics) {
  std::string name = session.group_name.text;
  if (name.empty()) {
    std::string_view file = document.source->path();
    file.remove_prefix(file.find_last_of('/') + 1);  // 0 where there is none
    name = file.substr(0, file.rfind('.'));
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == '-' || c == '_'; }, ' ');
    if (!name.empty() && name[0] >= 'a' && name[0] <= 'z')
      name[0] = static_cast<char>(name[0] - 'a' + 'A');
  }
  session.title = {name.empty() ? std::string("Session") : std::move(name), session.front_matter};
  if (is_reported("title", document, diagnostics)) return;
  Diagnostic found{Severity::kWarning, "missing-key", session.front_matter,
                   fmt::format("the plan has no title, and is called ‘{}’", session.title.text)};
  if (has_front_matter(document)) {
    found.hint = "add a line `title: ` to the front matter, or begin the text with a heading `# `";
    add_line(found, session.front_matter, fmt::format("title: \"{}\"", session.title.text));
  } else {
    found.hint = "write a line such as `title: Shapes on the floor` between those two `---` lines";
  }
  diagnostics.add(std::move(found));
}

bool is_about_form(const Diagnostic& found) {
  return found.name == kBadValue || found.name == "unknown-key" || found.name == "missing-key" ||
         found.name == "duplicate-key";
}

// What the front matter says in a way that cannot be read costs no sheet: the coach is warned, and
// the card shows the line as it was typed. Not what keeps children safe, and no names of theirs.
void keep_unread(const source::Document& document, Session& session, Diagnostics& diagnostics) {
  const Source& source = *document.source;
  std::vector<std::uint32_t> lines;
  diagnostics.revise([&](const Diagnostic& found) -> std::optional<Severity> {
    const bool inside = document.front_span.contains(found.span) && is_about_form(found);
    if (!inside || found.severity != Severity::kError) return found.severity;
    const std::uint32_t number = source.line_column(found.span.begin).line;
    const std::string line = lower_ascii(trim(source.line(number)));
    for (const std::string_view key : {"safety", "heat", "adults"}) {
      if (line.starts_with(key)) return found.severity;
    }
    // `gymnasts: Ann and Ben`
    const bool names = is_about_children(trim(line.substr(0, line.find(':'))));
    const bool whole = found.span.begin < found.span.end && found.name != "missing-key";
    if (whole && !names && found.edits.empty()) lines.push_back(number);
    return Severity::kWarning;
  });
  std::sort(lines.begin(), lines.end());
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  std::vector<Note> kept;
  for (const std::uint32_t number : lines) {
    const std::string_view text = trim(source.line(number));
    const std::size_t colon = text.find(':');
    if (text.empty() || colon + 1 == text.size()) continue;
    const auto begin = static_cast<std::uint32_t>(text.data() - source.text().data());
    const Span where{&source, begin, begin + static_cast<std::uint32_t>(text.size())};
    kept.push_back({Note::Kind::kParagraph, {std::string(text), where}, Note::For::kCoach});
  }
  session.introduction.insert(session.introduction.begin(), kept.begin(), kept.end());
}

}  // namespace

Session read_session(const source::Document& document, const Club& club, Diagnostics& diagnostics,
                     const FrontWords& words) {
  Session session;
  session.source = document.source;
  session.sources.push_back(document.source);
  session.timings = club.timings;
  session.printing = club.printing;
  const std::vector<Budget> budgets =
      read_front_matter(document, club, words, session, diagnostics);
  const bool title_written = !session.title.empty();
  Body body = read_body(document.body, FileRole::kSession, session.title, diagnostics);
  if (!title_written) session.title = std::move(body.title);
  session.introduction = std::move(body.introduction);
  if (session.place.value == Place::kHome && !club.home_safety.empty())
    session.safety.insert(session.safety.begin(), safety_of(club.home_safety));
  for (Safety& one : body.safety) session.safety.push_back(std::move(one));
  session.parts = std::move(body.parts);
  if (session.title.empty()) name_after_file(session, document, diagnostics);
  place_budgets(budgets, session, diagnostics);
  keep_unread(document, session, diagnostics);
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
