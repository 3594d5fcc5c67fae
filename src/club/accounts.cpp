// See the header.
#include "club/accounts.h"

#include "club/no_plans.h"
#include "club/places.h"

namespace chalkleaf::club {
namespace {

// Files made safe at a time. More would be no faster, and a run that is killed loses as many.
constexpr std::size_t kMostStaged = 48;

// `out/earlier`, unless a folder of the club's plans prints there.
std::string earlier_folder(const FileSystem& files, const Root& root, const Request& request) {
  std::string name(kEarlierFolder);
  for (const std::string_view plans : kPlanFolders) {
    if (root.is_club &&
        files.kind(join_path(join_path(root.path, plans), kEarlierFolder)) != FileKind::kNothing)
      name += "-sheets";
  }
  return join_path(folder_of(root.out, request), name);
}

void name_some(const std::vector<std::string>& names, std::vector<std::string>& named,
               std::size_t& count) {
  count += names.size();
  for (const std::string& name : names) {
    if (named.size() < kMostNamedPlans) named.push_back(name);
  }
}

}  // namespace

Accounts::Accounts(const Selection& selection, const Request& request, FileSystem& files,
                   Teller& teller, Summary& summary)
    : selection_(selection), request_(request), files_(files), teller_(teller), summary_(summary) {
  for (const Root& root : selection.roots) earlier_.push_back(earlier_folder(files, root, request));
  if (request.purpose == Purpose::kBuild)
    gone_plans_.emplace(selection, request, files, earlier_, teller);
}

PlanPaths Accounts::paths(std::size_t index) const {
  const PlanFile& plan = selection_.plans[index];
  const Root& root = selection_.roots[plan.root];
  PlanPaths out = paths_of(plan, root, request_);
  out.out = folder_of(root.out, request_);
  out.earlier = earlier_[plan.root];
  return out;
}

void Accounts::take(std::size_t index, Compiled compiled) {
  ++taken_;
  staged_ += compiled.staged.size();
  waiting_.push_back({index, std::move(compiled)});
  if (staged_ == 0 || staged_ >= kMostStaged) put_waiting_in_place();
}

Summary& Accounts::close() {
  put_waiting_in_place();
  if (gone_plans_ && taken_ == selection_.plans.size() && summary_.skipped == 0) {
    const Placed of_gone = gone_plans_->look();
    note_stayed(of_gone.stayed);
    name_some(of_gone.moved, summary_.moved, summary_.moved_count);
    if (!of_gone.well) summary_.environment_failed = true;
    settle();
  }
  if (request_.purpose == Purpose::kBuild) {
    for (; taken_ < selection_.plans.size(); ++taken_)
      note_stayed(standing_sheets(files_, paths(taken_), request_.only));
  }
  summary_.folders.assign(folders_.begin(), folders_.end());
  return summary_;
}

void Accounts::put_waiting_in_place() {
  std::vector<Placed> placed;
  if (gone_plans_ && staged_ > 0) gone_plans_->note_plans();
  for (Waiting& one : waiting_) {
    placed.emplace_back();
    if (request_.purpose != Purpose::kBuild) continue;
    const PlanPaths plan = paths(one.index);
    if (one.compiled.skipped) {
      placed.back().stayed = standing_sheets(files_, plan, request_.only);
    } else {
      placed.back() = put_in_place(files_, plan, request_.only, one.compiled.staged,
                                   one.compiled.older, one.compiled.diagnostics);
    }
  }
  if (request_.purpose == Purpose::kBuild) settle();
  for (std::size_t i = 0; i < waiting_.size(); ++i) count(waiting_[i], placed[i]);
  waiting_.clear();
  staged_ = 0;
}

void Accounts::settle() {
  if (const auto settled = files_.settle(); !settled)
    teller_.problem("the folder of the sheets: " + settled.error().message);
}

void Accounts::count(const Waiting& done, const Placed& placed) {
  const PlanFile& plan = selection_.plans[done.index];
  const Compiled& compiled = done.compiled;
  const std::string display = path_from(request_.standing, plan.path);
  note_stayed(placed.stayed);
  name_some(placed.moved, summary_.moved, summary_.moved_count);
  if (compiled.skipped) {
    ++summary_.skipped;
    return;
  }
  teller_.tell(compiled.diagnostics, display);
  const std::size_t written = compiled.written + placed.written;
  summary_.sheets += written;
  if (compiled.not_written || compiled.internal_error || !placed.well)
    summary_.environment_failed = true;
  if (written > 0) {
    folders_.insert(
        path_from(request_.standing, folder_of(selection_.roots[plan.root].out, request_)));
  }
  if (compiled.home_sheet_held && placed.well) {
    ++summary_.held_back;
    if (summary_.held_plans.size() < kMostNamedPlans) summary_.held_plans.push_back(display);
  }
  if (!compiled.failed && placed.well) return;
  ++summary_.failed;
  if (summary_.failed_plans.size() < kMostNamedPlans) summary_.failed_plans.push_back(display);
}

void Accounts::note_stayed(const std::vector<std::string>& sheets) {
  name_some(sheets, summary_.stayed, summary_.stayed_count);
}

}  // namespace chalkleaf::club
