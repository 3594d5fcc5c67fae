#include "sheet/fit.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace chalkleaf::sheet {
namespace {

bool sets_all(const page::Composed& tried, const page::Composed& plain) {
  return tried.problems.size() <= plain.problems.size() &&
         tried.too_tall.size() <= plain.too_tall.size();
}

}  // namespace

double pages_needed(const page::Composed& composed) {
  const double last = 1 - composed.free_on_last_page.in_pt() / composed.page_height.in_pt();
  return static_cast<double>(composed.list.pages.size()) - 1 + last;
}

// A page that is mostly empty looks lost, and pages with wide gaps at their feet are more paper
// than there is text.
page::Composed compose_freely(const ComposeAt& at) {
  constexpr std::array kLarger = {1.4, 1.25, 1.12};
  constexpr std::array kSmaller = {0.96, 0.92, 0.88};
  constexpr double kMostFree = 0.3;      // of a single page, before it is set larger
  constexpr double kLeastSaving = 0.96;  // what smaller type can take off the length, about
  page::Composed best = at(1);
  const std::size_t pages = best.list.pages.size();
  if (pages == 1 && best.free_on_last_page > best.page_height.scaled(kMostFree)) {
    for (const double factor : kLarger) {
      page::Composed tried = at(factor);
      if (tried.list.pages.size() == 1 && sets_all(tried, best)) return tried;
    }
  }
  const Length one_page_less = best.page_height * static_cast<std::int64_t>(pages - 1);
  if (pages > 1 && best.used.scaled(kLeastSaving) <= one_page_less) {
    for (const double factor : kSmaller) {
      page::Composed tried = at(factor);
      if (tried.list.pages.size() < pages && sets_all(tried, best)) return tried;
    }
  }
  return best;
}

page::Composed compose_compact(const ArrangeAt& at) {
  constexpr std::size_t kSides = 2;  // of a sheet of paper
  constexpr std::size_t kLong = 16;  // of a document that no closer setting makes a sheet of
  page::Composed best = at(1, Arrangement::kCompact);
  const page::Composed plain = best;
  const auto pages = [](const page::Composed& one) { return one.list.pages.size(); };
  if (pages(best) > kLong) return best;
  const auto take = [&](double factor, Arrangement arrangement, std::size_t most) {
    page::Composed tried = at(factor, arrangement);
    if (pages(tried) > most || !sets_all(tried, plain)) return false;
    best = std::move(tried);
    return true;
  };
  if (pages(best) > kSides) {
    // As few as can be, and of those the calmest, and of those the largest.
    std::optional<Arrangement> taken;
    for (const Arrangement other : {Arrangement::kDense, Arrangement::kClose}) {
      const double least = other == Arrangement::kClose ? kSmallestClose : kSmallestCompact;
      // The closest way is for one sheet of paper and nothing else.
      const std::size_t most = other == Arrangement::kClose ? kSides : pages(best) - 1;
      if (pages(best) > kSides && take(least, other, most)) taken = other;
    }
    // Halving: from the middle up while it fits, else down.
    const std::size_t fewest = pages(best);
    constexpr double kFull = 0.985;  // of its pages: nothing larger fits
    const double filled =
        best.used.in_pt() / (best.page_height.in_pt() * static_cast<double>(fewest));
    if (!taken || filled > kFull) return best;
    if (take(0.8, *taken, fewest)) {
      if (take(0.9, *taken, fewest)) take(1, *taken, fewest);
    } else {
      take(0.7, *taken, fewest);
    }
    return best;
  }
  // Room on the last side is for larger type.
  const std::size_t most = pages(best);
  for (const double factor : {1.12, 1.25, 1.4}) {
    if (!take(factor, Arrangement::kCompact, most)) break;
  }
  return best;
}

// Halving: the pages grow with the scale, but for small steps where lines break otherwise. What is
// kept has been composed, so it fits in any case.
Fitted compose_to_fit(int pages, const ComposeAt& at) {
  constexpr double kCloseEnough = 0.03;
  const auto fits = [&](const page::Composed& composed) {
    return composed.list.pages.size() <= static_cast<std::size_t>(pages);
  };
  page::Composed plain = at(1);
  int tries = 1;
  double low = 1;
  double high = kLargestFactor;
  std::optional<page::Composed> best;
  if (fits(plain)) {
    page::Composed largest = at(kLargestFactor);
    if (fits(largest) && sets_all(largest, plain)) return {std::move(largest), std::nullopt};
  } else {
    page::Composed smallest = at(kSmallestFactor);
    if (!fits(smallest)) {
      // Never more pages than without the wish, and the fewest that were found.
      const double needed = pages_needed(smallest);
      const bool fewer = smallest.list.pages.size() <= plain.list.pages.size();
      return {fewer ? std::move(smallest) : std::move(plain), needed};
    }
    low = kSmallestFactor;
    high = 1;
    best = std::move(smallest);
  }
  ++tries;
  while (tries < kMostTries && high - low > kCloseEnough) {
    const double middle = (low + high) / 2;
    page::Composed tried = at(middle);
    ++tries;
    if (fits(tried) && sets_all(tried, plain)) {
      low = middle;
      best = std::move(tried);
    } else {
      high = middle;
    }
  }
  if (!best) best = std::move(plain);
  return {std::move(*best), std::nullopt};
}

// ---- what is said

namespace {

std::size_t letters(const std::vector<plan::Words>& all) {
  std::size_t out = 0;
  for (const plan::Words& one : all) out += one.text.size();
  return out;
}

std::size_t letters(const std::vector<plan::Note>& notes) {
  std::size_t out = 0;
  for (const plan::Note& note : notes) out += note.words.text.size();
  return out;
}

// What the coach wrote about a drill besides its name and dose.
std::size_t letters(const plan::Drill& drill) {
  std::size_t out =
      letters(drill.cues) + letters(drill.easier) + letters(drill.harder) + letters(drill.notes);
  for (const plan::KitUse& use : drill.uses) out += use.kit.text.size() + use.how.text.size();
  for (const plan::Substitute& one : drill.substitutes) {
    out += one.name.text.size() + letters(one.cues) + letters(one.easier) + letters(one.harder) +
           letters(one.notes);
  }
  return out;
}

std::string in_words(const plan::PageCount& count) {
  const int n = count.in_sheets ? count.pages / 2 : count.pages;
  return fmt::format("{} {}{}", n, count.in_sheets ? "sheet" : "page", n == 1 ? "" : "s");
}

}  // namespace

void report_does_not_fit(const plan::Session& session, const plan::Sourced<plan::PageCount>& asked,
                         double needed, const std::string& sheet_name, Paper paper,
                         Diagnostics& diagnostics) {
  constexpr std::size_t kMostNamed = 3;
  constexpr std::size_t kWorthNaming = 60;  // letters; what is shorter saves no line
  struct Long {
    const plan::Drill* drill;
    std::size_t letters;
  };
  std::vector<Long> longest;
  for (const plan::Part& part : session.parts) {
    for (const plan::Drill* drill : plan::all_drills_of(part)) {
      const std::size_t n = letters(*drill);
      if (drill->name.span && n >= kWorthNaming) longest.push_back({drill, n});
    }
  }
  std::stable_sort(longest.begin(), longest.end(),
                   [](const Long& a, const Long& b) { return a.letters > b.letters; });
  longest.resize(std::min(longest.size(), kMostNamed));

  // Rounded up, so that `1.0 pages` is never said to be more than one.
  const double shown = std::ceil(needed * 10) / 10;
  Diagnostic found{Severity::kWarning, "does-not-fit", asked.span,
                   fmt::format("the {} needs {:.1f} pages at its smallest type; {} {} asked "
                               "for, so it is printed as small as it can be",
                               sheet_name, shown, in_words(asked.value),
                               in_words(asked.value).back() == 's' ? "were" : "was")};
  for (const Long& one : longest) {
    found.labels.push_back(
        {one.drill->name.span, fmt::format("{} letters of cues, notes and choices", one.letters)});
  }
  found.hint = longest.empty() ? "take out drills" : "shorten what is marked or take out drills";
  if (double_of(paper))
    found.hint += kin(paper) == paper ? ", or print on A4" : ", or print on larger paper";
  found.hint += fmt::format("; or ask for {} pages", static_cast<int>(std::ceil(needed)));
  diagnostics.add(std::move(found));
}

}  // namespace chalkleaf::sheet
