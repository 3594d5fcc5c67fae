// Fuzzes a club folder: files one after the other, each behind a line `=== path`.
#include <cstddef>
#include <cstdint>

#include "fuzz/disk.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  constexpr std::string_view kMark = "=== ";
  const std::string_view all(reinterpret_cast<const char*>(data), size);
  std::vector<std::pair<std::string, std::string>> files;
  for (std::size_t at = 0; at < all.size();) {
    const std::size_t stop = std::min(all.find('\n', at), all.size());
    const std::string_view line = all.substr(at, stop - at);
    if (line.starts_with(kMark)) {
      files.emplace_back(line.substr(kMark.size()), "");
    } else if (!files.empty()) {
      files.back().second += line;
      files.back().second += '\n';
    }
    at = stop + 1;
  }
  chalkleaf::fuzz::build(files);
  return 0;
}
