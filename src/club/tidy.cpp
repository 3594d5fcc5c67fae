// See the header.
#include "club/tidy.h"

#include <fmt/format.h>

#include <algorithm>

#include "club/places.h"
#include "club/resources.h"
#include "club/setup.h"
#include "club/shelf.h"
#include "draft/lexicon.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

std::vector<std::string_view> lines_in(std::string_view text) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    out.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
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
    const ClubTools club = open_club(selection.roots[plan.root], request, around.files, {}, shelf,
                                     teller, Need::kNamed)
                               .value();
    const auto words = words_for(club.club.language, around, teller);
    const SourcePtr source = source::load(around.files, plan.path, display, found);
    if (source) found.keep(source);
    teller.tell(found, display);
    if (!source || !words) continue;
    Tidied made{display, std::string(source->text()), std::string(source->text())};
    if (const auto draft = draft::read(*words, source)) made.after = draft->canonical->text();
    if (way == TidyWay::kWrite && made.after != made.before) {
      const auto written = around.files.write_whole(plan.path, made.after);
      if (!written) teller.problem(display + " cannot be written: " + written.error().message);
    }
    out.plans.push_back(std::move(made));
  }
  return out;
}

std::string change_text(const Tidied& plan) {
  const std::vector<std::string_view> before = lines_in(plan.before);
  const std::vector<std::string_view> after = lines_in(plan.after);
  std::size_t same = 0;
  while (same < std::min(before.size(), after.size()) && before[same] == after[same]) ++same;
  std::size_t tail = 0;
  while (tail < std::min(before.size(), after.size()) - same &&
         before[before.size() - 1 - tail] == after[after.size() - 1 - tail]) {
    ++tail;
  }
  if (same == before.size() && same == after.size()) return {};
  const std::size_t goes = before.size() - same - tail;
  const std::size_t comes = after.size() - same - tail;
  std::string out =
      fmt::format("--- {0}\n+++ {0}\n@@ -{1},{2} +{1},{3} @@\n", plan.path, same + 1, goes, comes);
  for (std::size_t i = same; i < same + goes; ++i) out += fmt::format("-{}\n", before[i]);
  for (std::size_t i = same; i < same + comes; ++i) out += fmt::format("+{}\n", after[i]);
  return out;
}

}  // namespace chalkleaf::club
