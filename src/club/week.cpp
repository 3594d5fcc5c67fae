// See the header.
#include "club/week.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "club/setup.h"
#include "page/impose.h"
#include "page/join.h"
#include "pdf/write.h"
#include "reason/week.h"
#include "sheet/booklet_cover.h"
#include "sheet/week_sheet.h"

namespace chalkleaf::club {
namespace {

/// A plan that was read, and where it stands.
struct Read {
  PlanPaths paths;
  std::unique_ptr<Studied> studied;
  const plan::Session& session() const { return studied->session; }
};

class Gathering {
 public:
  Gathering(const TogetherRequest& request, const Surroundings& around, Listener& listener)
      : request_(request), around_(around), teller_(listener, out_.summary) {}

  /// False: nothing can be made, and why was told.
  bool open(const std::string& usual_file) {
    path_ = request_.file.value_or(usual_file);
    if (!path_.ends_with(".pdf"))
      return problem(fmt::format("‘{}’ should end in .pdf", printable(path_)));
    date_ = read_source_date(around_.environment, teller_);
    if (out_.summary.environment_failed) return false;
    const Request& base = request_.base;
    selection_ = select(base, around_.files, teller_, out_.summary);
    refuse_shared(selection_, base, teller_);
    if (out_.summary.environment_failed) return false;
    if (selection_.plans.empty()) return problem("there are no plans there");
    if (selection_.roots.size() != 1)
      return problem("plans of one club, or of one folder, can be put together: name only those");
    auto revisions = ask_for_revisions(selection_, around_.files);
    press_ = set_up_press(around_, teller_, out_.summary);
    if (!press_) return false;
    auto club = open_club(selection_.roots.front(), base, around_.files, press_->data,
                          press_->shelf, teller_);
    if (!club) {
      out_.summary.environment_failed = true;
      return false;
    }
    club_ = std::move(*club);
    club_.revisions = std::move(revisions().front());
    tell_of_revisions(*club_.revisions, selection_.roots.front(), base, teller_);
    Diagnostics in_look;
    RunTools run{around_.files, *press_->writer};
    run.look = request_.base.look;
    theme_ = look_for(club_.club.printing, club_, run, in_look);
    teller_.tell(in_look, "");
    if (!theme_) return false;
    typesetter_.emplace(*press_->fonts, club_.club.language,
                        &press_->hyphenations->of(club_.club.language));
    return read_all() && club_.sound && club_.broken_club.empty();
  }

  Together finish() {
    if (out_.path.empty() && out_.summary.errors > 0) out_.summary.failed = 1;
    return std::move(out_);
  }

  bool problem(const std::string& sentence) {
    teller_.problem(sentence);
    return false;
  }

  const TogetherRequest& request() const { return request_; }
  const plan::Club& club() const { return club_.club; }
  const sheet::Labels& labels() const { return *club_.labels; }
  const sheet::Theme& theme() const { return *theme_; }
  type::Typesetter& typesetter() { return *typesetter_; }
  const std::vector<Read>& plans() const { return plans_; }
  Together& out() { return out_; }

  sheet::Context context(const plan::Session& session, const std::string& path, Paper paper) const {
    RunTools run{around_.files, *press_->writer};
    run.paper = paper;
    run.source_date = date_;
    run.producer = "Chalkleaf " + std::string(version());
    return context_for(sheet::Kind::kCoachCard, session, theme(), club_, run, path);
  }
  /// Of a page that is no plan's.
  sheet::Context plain_context(Paper paper) const {
    sheet::Context out{theme(), labels(), club(), paper, {}, {}, date_, {}, nullptr};
    out.producer = "Chalkleaf " + std::string(version());
    out.logo = club_.logo ? &*club_.logo : nullptr;
    return out;
  }

  /// Tells what was found in the plan; false when it has errors.
  bool tell(const Read& plan, Diagnostics found) {
    if (request_.base.strictness == Strictness::kStrict) found.make_strict();
    const bool fine = !found.has_errors();
    teller_.tell(found, plan.paths.display);
    if (fine) return true;
    ++out_.summary.failed;
    if (out_.summary.failed_plans.size() < kMostNamedPlans)
      out_.summary.failed_plans.push_back(plan.paths.display);
    return false;
  }

  void write(page::DisplayList list) {
    if (const auto gone = supply_pictures(list, *club_.pictures)) {
      problem(fmt::format("the picture {} changed while it was set; try again", printable(*gone)));
      return;
    }
    const auto bytes = press_->writer->write(list);
    if (!bytes) {
      problem("the pages could not be made into a PDF: " + bytes.error().message);
      return;
    }
    const std::string whole = normal_path(join_path(request_.base.standing, path_));
    if (const auto written = around_.files.write_whole(whole, *bytes); !written) {
      problem(fmt::format("{} cannot be written: {}", printable(path_), written.error().message));
      return;
    }
    out_.path = path_;
  }

 private:
  // Reads every plan and keeps those of the group asked for, by day and hour.
  bool read_all() {
    const Root& root = selection_.roots.front();
    bool readable = true;
    std::vector<std::string> groups;
    for (const PlanFile& file : selection_.plans) {
      Read read{paths_of(file, root, request_.base), nullptr};
      read.studied = study(read.paths, club_, around_.files, around_.on_pass);
      if (!read.studied->readable) {
        tell(read, std::move(read.studied->diagnostics));
        readable = false;
        continue;
      }
      groups.push_back(read.session().group_name.text);
      if (!request_.group || lower_ascii(groups.back()) == lower_ascii(*request_.group))
        plans_.push_back(std::move(read));
    }
    if (!readable) return false;
    if (plans_.empty()) return no_such_group(std::move(groups));
    std::stable_sort(plans_.begin(), plans_.end(), [](const Read& a, const Read& b) {
      return hour_of(a.session()) < hour_of(b.session());
    });
    return true;
  }

  bool no_such_group(std::vector<std::string> groups) {
    std::sort(groups.begin(), groups.end());
    groups.erase(std::unique(groups.begin(), groups.end()), groups.end());
    groups.erase(std::remove(groups.begin(), groups.end(), std::string()), groups.end());
    return problem(fmt::format("no plan there is for a group ‘{}’; there are: {}",
                               printable(*request_.group),
                               groups.empty() ? "none" : printable(join_list(groups))));
  }

  // Plans without a date come last, in the order of their paths.
  static std::pair<Date, std::int64_t> hour_of(const plan::Session& session) {
    constexpr Date kLast{9999, 12, 31};
    return {session.date ? session.date->value : kLast,
            session.start ? session.start->value.since_midnight.in_milliseconds() : 0};
  }

  const TogetherRequest& request_;
  const Surroundings& around_;
  Together out_;
  Teller teller_;
  std::string path_;
  std::optional<std::int64_t> date_;
  Selection selection_;
  std::optional<Press> press_;
  std::shared_ptr<const sheet::Theme> theme_;
  ClubTools club_;
  std::optional<type::Typesetter> typesetter_;
  std::vector<Read> plans_;
};

bool is_american(const std::optional<plan::Sourced<Paper>>& paper) {
  if (!paper) return false;
  const Paper upright = is_landscape(paper->value) ? turned(paper->value) : paper->value;
  return upright == Paper::kLetter || upright == Paper::kHalfLetter;
}

/// Groups as the club lists them, then others by name, plans without a group last.
std::vector<sheet::GroupWeek> by_group(const plan::Club& club, std::vector<sheet::WeekPlan> plans) {
  std::map<std::pair<std::size_t, std::string>, sheet::GroupWeek> groups;
  for (sheet::WeekPlan& plan : plans) {
    const std::string& name = plan.session->group_name.text;
    const plan::Group* known = club.group(name);
    const std::size_t place = known != nullptr
                                  ? static_cast<std::size_t>(known - club.groups.data())
                                  : club.groups.size() + (name.empty() ? 1 : 0);
    sheet::GroupWeek& week = groups[{place, lower_ascii(name)}];
    week.name = known != nullptr ? known->name.text : name;
    week.group = known;
    week.plans.push_back(std::move(plan));
  }
  std::vector<sheet::GroupWeek> out;
  for (auto& each : groups) out.push_back(std::move(each.second));
  return out;
}

// The week asked for, else the days from the first to the last of the plans that have one.
std::string days_of(const TogetherRequest& request, const std::vector<const Read*>& plans,
                    const sheet::Labels& labels) {
  std::optional<Date> first = request.starting;
  std::optional<Date> last;
  if (first) last = date_from_days(days_since_epoch(*first) + 6);
  for (const Read* read : plans) {
    if (request.starting || !read->session().date) continue;
    const Date date = read->session().date->value;
    first = std::min(first.value_or(date), date);
    last = std::max(last.value_or(date), date);
  }
  if (!first) return {};
  if (*first == *last) return labels.date(*first);
  return labels.say("week-of", {{"from", labels.date(*first)}, {"to", labels.date(*last)}});
}

}  // namespace

Together make_week(const TogetherRequest& request, const Surroundings& around, Listener& listener) {
  Gathering all(request, around, listener);
  if (!all.open("week.pdf")) return all.finish();
  std::vector<const plan::Session*> sessions;
  for (const Read& read : all.plans()) sessions.push_back(&read.session());
  const auto first = request.starting ? request.starting : reason::newest_week(sessions);
  if (!first) {
    all.problem("no plan there has a date; say which week: --starting 2026-11-30");
    return all.finish();
  }
  bool sound = true;
  std::vector<sheet::WeekPlan> plans;
  for (const Read& read : all.plans()) {
    const plan::Session& session = read.session();
    if (!session.date && session.repeat.empty()) ++all.out().undated;
    auto days = reason::days_in_week(session, *first);
    if (days.empty()) continue;
    sound = all.tell(read, std::move(read.studied->diagnostics)) && sound;
    plans.push_back({&session, &read.studied->timetable, std::move(days)});
  }
  all.out().first = first;
  if (plans.empty()) {
    all.problem(
        fmt::format("nothing is on within seven days from {}; say which week with "
                    "--starting",
                    iso_text(*first)));
    return all.finish();
  }
  if (!sound) return all.finish();
  const bool letter =
      is_american(all.club().printing.sheet_paper) || is_american(all.club().printing.card_paper);
  const Paper paper =
      request.base.paper.value_or(letter ? Paper::kLetterLandscape : Paper::kA4Landscape);
  all.out().sessions = plans.size();
  const auto groups = by_group(all.club(), std::move(plans));
  Diagnostics found;
  page::DisplayList list =
      sheet::week_sheet(groups, *first, all.plain_context(paper), all.typesetter(), found);
  all.out().pages = list.pages.size();
  if (all.tell(all.plans().front(), std::move(found))) all.write(std::move(list));
  return all.finish();
}

Together make_booklet(const TogetherRequest& request, const Surroundings& around,
                      Listener& listener) {
  Gathering all(request, around, listener);
  if (!all.open("booklet.pdf")) return all.finish();
  const bool letter = is_american(all.club().printing.card_paper);
  const Paper paper = request.base.paper.value_or(letter ? Paper::kHalfLetter : Paper::kA5);
  if (is_landscape(paper) || !double_of(paper)) {
    all.problem("a booklet is made of a5 or half-letter pages, two on a sheet");
    return all.finish();
  }
  std::vector<const Read*> plans;
  for (const Read& read : all.plans()) {
    if (!request.starting || !reason::days_in_week(read.session(), *request.starting).empty())
      plans.push_back(&read);
  }
  if (plans.empty()) {
    all.problem(
        fmt::format("nothing is on within seven days from {}", iso_text(*request.starting)));
    return all.finish();
  }
  bool sound = true;
  for (const Read* read : plans)
    sound = all.tell(*read, std::move(read->studied->diagnostics)) && sound;
  if (!sound) return all.finish();

  const std::string title =
      all.club().name.empty() ? all.labels().say("booklet") : all.club().name.text;
  std::vector<std::string> about;
  if (request.group) about.push_back(plans.front()->session().group_name.text);
  if (const std::string days = days_of(request, plans, all.labels()); !days.empty())
    about.push_back(days);
  const std::string about_line = fmt::format("{}", fmt::join(about, " · "));

  // Once to count the pages, and again with their numbers, which take the same room.
  std::vector<page::DisplayList> documents;
  std::vector<std::size_t> lengths(plans.size() + 1, 1);
  std::size_t pages = 0;
  for (const bool last : {false, true}) {
    documents.clear();
    std::size_t next = 1 + lengths.front();
    std::vector<sheet::BookletSession> contents;
    for (std::size_t i = 0; i < plans.size(); ++i) {
      contents.push_back({&plans[i]->session(), next});
      next += lengths[i + 1];
    }
    sheet::Context cover = all.plain_context(paper);
    cover.numbering = sheet::Numbering{1, pages};
    Diagnostics on_cover;
    documents.push_back(
        sheet::booklet_cover(title, about_line, contents, cover, all.typesetter(), on_cover));
    if (last) sound = all.tell(*plans.front(), std::move(on_cover)) && sound;
    lengths.front() = documents.back().pages.size();
    pages = lengths.front();
    for (std::size_t i = 0; i < plans.size(); ++i) {
      const Read& read = *plans[i];
      sheet::Context context = all.context(read.session(), read.paths.path, paper);
      context.filing = plan::Filing::kNone;  // it is stapled
      context.numbering = sheet::Numbering{contents[i].page, next - 1};
      Diagnostics found;
      documents.push_back(sheet::make(sheet::Kind::kCoachCard, read.session(),
                                      read.studied->timetable, context, all.typesetter(), found));
      if (last) sound = all.tell(read, std::move(found)) && sound;
      lengths[i + 1] = documents.back().pages.size();
      pages += lengths[i + 1];
    }
  }
  if (!sound) return all.finish();
  page::DocumentInfo info = documents.front().info;
  page::DisplayList list = page::join(std::move(documents), std::move(info));
  const auto order = page::booklet_order(pages);
  const page::Stroke line{
      all.theme().colour(sheet::Use::kLine), all.theme().card.hair_width, false, {}};
  all.out().sessions = plans.size();
  all.out().pages = pages;
  all.out().sheets = order.size() / 2;
  all.write(page::impose(std::move(list), order,
                         {paper_size(*double_of(paper)), page::MiddleMark::kFold, line}));
  return all.finish();
}

}  // namespace chalkleaf::club
