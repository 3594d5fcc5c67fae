#include "club/places.h"

#include <algorithm>

#include "base/diagnostic_text.h"
#include "base/files.h"
#include "base/text.h"

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

std::string sheet_name(std::string_view name) {
  const std::size_t begin = std::min(name.find_first_not_of(".- "), name.size());
  const std::size_t end = name.find_last_not_of(". ") + 1;
  if (begin >= end) return "plan";
  constexpr std::string_view kReplaced = "\xEF\xBF\xBD";  // U+FFFD, as printable() writes it
  return replace_all(printable(replace_all(name.substr(begin, end - begin), "\t", "_")), kReplaced,
                     "_");
}

}  // namespace chalkleaf::club
