#include "club/places.h"

#include "base/files.h"

namespace chalkleaf::club {

std::string path_from(std::string_view folder, std::string_view path) {
  std::string up;
  std::string common(folder);
  while (!is_within(path, common)) {
    common = parent_path(common);
    up += "../";
  }
  if (common == "/" && folder != "/") return std::string(path);
  return normal_path(up + relative_to(path, common));
}

}  // namespace chalkleaf::club
