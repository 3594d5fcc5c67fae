#include "club/revision.h"

#include <cstdlib>
#include <map>

#include "club/git_history.h"

namespace chalkleaf::club {
namespace {

constexpr std::int64_t kNoTime = -1;

Date day_of(const FileHistory& known) {
  constexpr std::int64_t kDay = 86'400;
  const std::int64_t local = known.time + std::int64_t{known.offset_minutes} * 60;
  return date_from_days(local / kDay - (local % kDay < 0 ? 1 : 0));
}

// A time no calendar of ours has is no time.
FileHistory with_sound_time(FileHistory known) {
  constexpr std::int64_t kLastSecond =
      253'402'300'799;                    // of the year 9999, as far as a PDF's dates go
  constexpr int kWidestOffset = 14 * 60;  // minutes from UTC, of any place on earth
  if (known.time < 0 || known.time > kLastSecond ||
      std::abs(known.offset_minutes) > kWidestOffset) {
    known.time = kNoTime;
    known.offset_minutes = 0;
  }
  return known;
}

}  // namespace

struct Revisions::State {
  std::map<std::string, FileHistory> plans;  ///< by absolute path
};

std::function<Revisions()> Revisions::ask(const FileSystem& files, const std::string& folder,
                                          const std::vector<std::string>& paths) {
  if (!is_in_repository(files, folder)) return [] { return Revisions(); };
  return [&files, folder, paths] {
    Revisions out;
    out.state_ = std::make_unique<State>();
    const auto [known, trouble] = file_histories(files, folder, paths);
    for (std::size_t i = 0; i < paths.size(); ++i) {
      if (known[i]) out.state_->plans[paths[i]] = with_sound_time(*known[i]);
    }
    out.trouble_ = trouble;
    return out;
  };
}

Revisions::Revisions(const FileSystem& files, const std::string& folder,
                     const std::vector<std::string>& paths)
    : Revisions(ask(files, folder, paths)()) {}
Revisions::~Revisions() = default;
Revisions::Revisions(Revisions&&) noexcept = default;
Revisions& Revisions::operator=(Revisions&&) noexcept = default;

Revision Revisions::of(const std::string& path, std::string_view bytes) const {
  Revision out;
  if (!state_) return out;
  const auto found = state_->plans.find(path);
  if (found == state_->plans.end()) return out;
  const FileHistory& known = found->second;
  if (!known.in_head) {
    out.text = "not yet committed";
    return out;
  }
  if (known.short_id.empty()) return out;
  const bool same = hash128(bytes) == known.content;
  out.text = same ? known.short_id : known.short_id + ", edited";
  if (known.time == kNoTime) return out;
  out.date = day_of(known);
  out.committed = known.time;
  return out;
}

}  // namespace chalkleaf::club
