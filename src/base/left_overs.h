// Temporary files of runs that were killed: how ours are named, and which may go.
//
// A name says which run made it: the machine (host and process namespace, since a shared disk or a
// container has process numbers of its own), the process, a number. Tested by
// tests/base/real_files_test.cpp.
#pragma once

#include <ctime>
#include <optional>
#include <string>
#include <string_view>

namespace chalkleaf {

/// Who made a temporary file.
struct TemporaryName {
  std::string machine;  ///< eight hexadecimal digits; empty in those of earlier versions
  long process = 0;
};

/// `.chalkleaf-1a2b3c4d-4711-0` for this process.
std::string temporary_name(unsigned number);
/// Nothing for a name that is not of ours.
std::optional<TemporaryName> read_temporary_name(std::string_view name);
/// Whether nobody writes the file any more: its process is gone; or we cannot know, and it is a day
/// old.
bool is_left_over(const TemporaryName& name, std::time_t changed, std::time_t now);

}  // namespace chalkleaf
