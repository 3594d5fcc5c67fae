// Running an independent program from a test.
#pragma once

#include <array>
#include <cstdio>
#include <string>

namespace chalkleaf::support {

/// What a command printed on standard output and how it ended.
struct Ran {
  std::string output;
  int status = -1;
};

/// Runs a command line with sh.
inline Ran run(const std::string& command) {
  Ran out;
  FILE* pipe = ::popen(command.c_str(), "r");
  if (pipe == nullptr) return out;
  std::array<char, 4096> buffer{};
  while (const std::size_t n = std::fread(buffer.data(), 1, buffer.size(), pipe))
    out.output.append(buffer.data(), n);
  const int status = ::pclose(pipe);
  out.status = status < 0 ? status : (status >> 8) & 0xFF;
  return out;
}

}  // namespace chalkleaf::support
