// See the header.
#include "club/gone_plans.h"

#include <algorithm>
#include <set>

#include "club/places.h"

namespace chalkleaf::club {

GonePlans::GonePlans(const Selection& selection, const Request& request, FileSystem& files,
                     const std::vector<std::string>& earlier, Teller& teller)
    : selection_(selection), request_(request), files_(files), earlier_(earlier), teller_(teller) {
  for (const Root& root : selection.roots) {
    // A club's `out` may be a link to someone's papers; nothing is printed there either.
    if (resolved_path(files, root.out) != root.out) continue;
    const auto [place, is_new] = lists_.try_emplace(root.out, files, root.out);
    if (is_new && place->second.problem()) {
      teller.problem(path_from(request.standing, join_path(root.out, MadeList::kName)) +
                     " cannot be read, so sheets of plans that are gone are not looked for: " +
                     place->second.problem()->message);
    }
    if (request.arguments.empty()) asked_.push_back(root.path);
  }
  for (const std::string& argument : request.arguments) {
    const auto real = files.real_path(normal_path(join_path(request.standing, argument)));
    if (real && files.kind(*real) == FileKind::kFolder) asked_.push_back(*real);
  }
}

void GonePlans::note_plans() {
  if (noted_) return;
  noted_ = true;
  for (const PlanFile& plan : selection_.plans) {
    const auto list = lists_.find(selection_.roots[plan.root].out);
    if (list != lists_.end()) list->second.add(plan.sheets, plan.path);
  }
  save();
}

void GonePlans::save() {
  for (auto& [out, list] : lists_) {
    const auto saved = list.save(files_);
    if (saved) continue;
    teller_.problem(path_from(request_.standing, join_path(out, MadeList::kName)) +
                    " could not be written, so sheets of plans that are deleted will not be "
                    "noticed: " +
                    saved.error().message);
  }
}

Placed GonePlans::look() {
  Placed out;
  Absentees absentees(files_);
  std::set<std::string> selected;
  for (const PlanFile& plan : selection_.plans) selected.insert(plan.sheets);
  for (auto& [folder, list] : lists_) {
    if (list.problem()) continue;
    const auto plans = list.plans();
    for (const auto& [sheets, plan] : plans) {
      if (selected.count(sheets) > 0) continue;
      PlanPaths paths{plan, path_from(request_.standing, plan), sheets,
                      path_from(request_.standing, sheets)};
      paths.out = folder;
      look_at(list, paths, absentees, out);
    }
  }
  save();
  return out;
}

void GonePlans::look_at(MadeList& list, const PlanPaths& plan, Absentees& absentees,
                        Placed& placed) {
  const Root* root = root_of(plan.path, plan.out);
  if (root == nullptr) return;
  PlanPaths paths = plan;
  paths.earlier = earlier_[static_cast<std::size_t>(root - selection_.roots.data())];
  const Presence presence = absentees.look_for(plan.path, root->path);
  if (presence == Presence::kThere || is_within(plan.sheets, paths.earlier)) return;
  const bool gone = presence == Presence::kGone;
  Diagnostics found;
  const Placed done =
      put_in_place(files_, paths, request_.only, {}, gone ? Older::kMoveAway : Older::kStay, found);
  teller_.tell(found, "");
  placed.moved.insert(placed.moved.end(), done.moved.begin(), done.moved.end());
  placed.stayed.insert(placed.stayed.end(), done.stayed.begin(), done.stayed.end());
  placed.well = placed.well && done.well;
  if (gone && standing_sheets(files_, paths, Only::kBoth).empty()) list.forget(plan.sheets);
}

const Root* GonePlans::root_of(const std::string& plan, const std::string& out) const {
  const bool asked = std::any_of(asked_.begin(), asked_.end(), [&](const std::string& folder) {
    return is_within(plan, folder);
  });
  const Root* best = nullptr;
  for (const Root& root : selection_.roots) {
    const bool below = root.is_club ? is_within(plan, root.path) : parent_path(plan) == root.path;
    if (!asked || root.out != out || !below) continue;
    if (best == nullptr || root.path.size() > best->path.size()) best = &root;
  }
  return best;
}

}  // namespace chalkleaf::club
