#include "club/places.h"

#include "base/files.h"

namespace chalkleaf::club {
namespace {

int hex_digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

}  // namespace

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

std::string percent_decoded(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const int high = i + 2 < text.size() ? hex_digit(text[i + 1]) : -1;
    const int low = high >= 0 ? hex_digit(text[i + 2]) : -1;
    if (text[i] == '%' && low >= 0) {
      out += static_cast<char>(high * 16 + low);
      i += 2;
    } else {
      out += text[i];
    }
  }
  return out;
}

}  // namespace chalkleaf::club
