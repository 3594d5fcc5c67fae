// link_parts of plan/read.h: each link to a shared part becomes the part's own steps.
//
// A walk with the circle it stands in as a stack; bounded in depth and in all, because ten parts
// that each name the next one twice would make a thousand copies. Tested by
// tests/plan/link_test.cpp.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/files.h"
#include "base/text.h"
#include "plan/picture_links.h"
#include "plan/read.h"

namespace chalkleaf::plan {
namespace {

constexpr std::size_t kDeepestParts = 16;
// Lines of a plan and its shared parts: drills, what stands below them, notes, headings. An honest
// session has a few hundred; each costs memory on the sheets, times the gymnasts of the group.
constexpr std::size_t kMostLines = 2'000;

class Linker {
 public:
  Linker(Session& session, const PartLookup& parts, const PictureLookup* pictures,
         Diagnostics& diagnostics)
      : session_(session),
        parts_(parts),
        diagnostics_(diagnostics),
        pictures_(pictures, diagnostics) {}

  void run(const std::string& plan_path) {
    trail_.push_back({plan_path, {}});
    taken_ = session_.introduction.size() + session_.safety.size() + session_.equipment.size();
    pictures_.follow(session_.introduction, plan_path);
    for (Part& part : session_.parts) {
      if (full_) part.steps.clear();
      taken_ += 1 + part.safety.size();
      std::vector<Step> steps = std::move(part.steps);
      part.steps.clear();
      expand(steps, part);
    }
  }

 private:
  /// A file we are inside, and the link that led into it.
  struct Place {
    std::string path;
    Span link;
  };

  void expand(const std::vector<Step>& steps, Part& part) {
    for (const Step& step : steps) {
      if (full_) return;
      taken_ += lines_of_step(step);
      if (taken_ > kMostLines) return stop(step);
      if (const auto* link = std::get_if<PartLink>(&step)) {
        follow(*link, part);
      } else {
        part.steps.push_back(step);
        pictures_.follow(part.steps.back(), trail_.back().path);
      }
    }
  }

  void stop(const Step& step) {
    full_ = true;
    const Span where = std::visit([](const auto& s) { return span_of(s); }, step);
    diagnostics_.error(
        kBadValue, where,
        fmt::format("with its shared parts this plan has more than {} lines", kMostLines),
        "split it into several plans, or share fewer parts");
  }
  static std::size_t lines_of_step(const Step& step) {
    const auto* drill = std::get_if<Drill>(&step);
    if (drill == nullptr) return 1;
    std::size_t lines = lines_of_drill(*drill);
    for (const Drill& station : drill->stations) lines += lines_of_drill(station);
    return lines;
  }
  static std::size_t lines_of_drill(const Drill& drill) {
    std::size_t lines = 1 + drill.cues.size() + drill.easier.size() + drill.harder.size() +
                        drill.uses.size() + drill.notes.size() + drill.choices.size();
    if (drill.dose) lines += drill.dose->moves.size();
    for (const Substitute& one : drill.substitutes) {
      lines += 1 + one.cues.size() + one.easier.size() + one.harder.size() + one.notes.size();
    }
    return lines;
  }
  static Span span_of(const Drill& drill) { return drill.span; }
  static Span span_of(const Note& note) { return note.words.span; }
  static Span span_of(const PartLink& link) { return link.span; }
  static Span span_of(const KitMove& move) { return move.span; }

  void follow(const PartLink& link, Part& part) {
    const auto found = parts_.find(trail_.back().path, link_path(link.target));
    if (!found) return report(link, found.error());
    const FoundPart& shared = **found;
    const auto again = std::find_if(trail_.begin(), trail_.end(),
                                    [&](const Place& place) { return place.path == shared.path; });
    if (again != trail_.end()) {
      return circle(link, static_cast<std::size_t>(again - trail_.begin()));
    }
    if (trail_.size() > kDeepestParts) {
      return diagnostics_.error(
          "part-cycle", link.span,
          fmt::format("parts link to parts more than {} deep here", kDeepestParts),
          "put the drills themselves into fewer files");
    }
    if (shared.file.place) return session_linked(link, *shared.file.place, shared);
    keep(shared);
    if (trail_.size() == 1) {
      part.shared.push_back(link);
      if (part.title.empty()) part.title = shared.file.title;
    }
    for (const Safety& safety : shared.file.safety) add_safety(safety, part);
    trail_.push_back({shared.path, link.span});
    expand(shared.file.steps, part);
    trail_.pop_back();
  }

  // A whole session where a part belongs: nothing in it is used.
  void session_linked(const PartLink& link, const Span& place, const FoundPart& shared) {
    if (held_.insert(shared.file.source.get()).second) {
      session_.sources.push_back(shared.file.source);
    }
    Diagnostic found{Severity::kError, "unknown-part", link.span,
                     fmt::format("‘{}’ is a session, not a shared part", link.target)};
    found.labels.push_back({place, "only a session says where it is done"});
    found.hint =
        "link to a file that holds the part alone; if that is what this file is, take `place:` out "
        "of it, and keep of its front matter the title only";
    diagnostics_.add(std::move(found));
  }

  // Holds on to the file (a lookup may hand out a new copy each time, and spans lead into each),
  // and says once what is wrong in it.
  void keep(const FoundPart& shared) {
    if (held_.insert(shared.file.source.get()).second) {
      session_.sources.push_back(shared.file.source);
    }
    if (said_.insert(shared.path).second) diagnostics_.append(shared.diagnostics);
  }

  void add_safety(const Safety& safety, Part& part) const {
    const auto same = [&](const Safety& other) { return other.words.text == safety.words.text; };
    const bool known = std::any_of(session_.safety.begin(), session_.safety.end(), same) ||
                       std::any_of(part.safety.begin(), part.safety.end(), same);
    if (!known) part.safety.push_back(safety);
  }

  void circle(const PartLink& link, std::size_t first) {
    std::string way;
    for (std::size_t i = first; i < trail_.size(); ++i) way += file_name(trail_[i].path) + " → ";
    Diagnostic found{
        Severity::kError, "part-cycle", link.span,
        fmt::format("this link leads round in a circle: {}{}", way, file_name(trail_[first].path))};
    for (std::size_t i = first + 1; i < trail_.size(); ++i) {
      found.labels.push_back(
          {trail_[i].link, fmt::format("{} links to {} here", file_name(trail_[i - 1].path),
                                       file_name(trail_[i].path))});
    }
    found.hint = "take one of these links out";
    diagnostics_.add(std::move(found));
  }

  std::string missing_hint(const PartLink& link, const LinkProblem& problem) const {
    std::string slashes = replace_all(link.target, "\\", "/");
    if (slashes != link.target) {
      return fmt::format("write `/` between folders and file: `{}`", slashes);
    }
    if (link.target.ends_with('/')) return "name a file in that folder, such as `warm-up.md`";
    const std::string whole = link.target + ".md";
    if (file_name(link.target).find('.') == std::string::npos &&
        parts_.find(trail_.back().path, link_path(whole))) {
      return fmt::format("did you mean `{}`?", whole);
    }
    if (!problem.suggestion.empty()) return fmt::format("did you mean `{}`?", problem.suggestion);
    return "check the path; it begins at the folder of the file it stands in";
  }

  void report(const PartLink& link, const LinkProblem& problem) {
    using Kind = LinkProblem::Kind;
    switch (problem.kind) {
      case Kind::kMissing:
        return diagnostics_.error("unknown-part", link.span,
                                  fmt::format("there is no part at ‘{}’", link.target),
                                  missing_hint(link, problem));
      case Kind::kOutside:
        return diagnostics_.error("outside-folder", link.span,
                                  fmt::format("‘{}’ is outside the club's folder", link.target),
                                  "copy the part into the club's folder and link to the copy");
      case Kind::kUnreadable:
        diagnostics_.error("unreadable-file", link.span,
                           fmt::format("the part ‘{}’ cannot be read", link.target),
                           "mend that file; what is wrong with it is reported too");
        return diagnostics_.append(problem.diagnostics);
    }
  }

  Session& session_;
  const PartLookup& parts_;
  Diagnostics& diagnostics_;
  PictureLinks pictures_;
  std::vector<Place> trail_;
  std::set<const Source*> held_;
  std::set<std::string> said_;
  std::size_t taken_ = 0;
  bool full_ = false;
};

}  // namespace

void link_parts(Session& session, const std::string& plan_path, const PartLookup& parts,
                Diagnostics& diagnostics, const PictureLookup* pictures) {
  Linker(session, parts, pictures, diagnostics).run(plan_path);
}

}  // namespace chalkleaf::plan
