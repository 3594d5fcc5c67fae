#include "club/club_file.h"

#include "plan/read.h"
#include "source/read.h"

namespace chalkleaf::club {

plan::Club load_club(const FileSystem& files, const std::string& root,
                     const std::string& display_path, Diagnostics& diagnostics) {
  const SourcePtr source =
      source::load(files, join_path(root, "club.yaml"), display_path, diagnostics);
  if (!source) return {};
  diagnostics.keep(source);
  const auto yaml = source::read_yaml(source, diagnostics);
  return yaml ? plan::read_club(source, *yaml, diagnostics) : plan::Club{};
}

}  // namespace chalkleaf::club
