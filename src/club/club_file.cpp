#include "club/club_file.h"

#include "plan/read.h"
#include "reason/checks.h"
#include "source/read.h"

namespace chalkleaf::club {

plan::Club load_club(const FileSystem& files, const std::string& root,
                     const std::string& display_path, Diagnostics& diagnostics) {
  const std::string path = join_path(root, "club.yaml");
  if (const auto real = files.real_path(path); real && !is_within(*real, root)) {
    diagnostics.error("outside-folder", {},
                      display_path + " is a link that leads out of the club's folder",
                      "put the file itself there");
    return {};
  }
  const SourcePtr source = source::load(files, path, display_path, diagnostics);
  if (!source) return {};
  diagnostics.keep(source);
  const auto yaml = source::read_yaml(source, diagnostics);
  if (!yaml) return {};
  plan::Club club = plan::read_club(source, *yaml, diagnostics);
  reason::check_choices(club, diagnostics);
  return club;
}

}  // namespace chalkleaf::club
