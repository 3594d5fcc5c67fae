// Runs a program for a test and keeps what it prints.
#pragma once

#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <string>

namespace chalkleaf::support {

struct Ran {
  int status = -1;     ///< exit status; -1 when it could not be run or was killed
  std::string output;  ///< standard output and standard error
};

/// Runs a shell command line. Debian's own python3 is /usr/bin/python3: the one that sees
/// python3-pikepdf.
inline Ran run_program(const std::string& command) {
  Ran ran;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  if (pipe == nullptr) return ran;
  std::array<char, 4096> buffer{};
  for (std::size_t n = 0; (n = fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
    ran.output.append(buffer.data(), n);
  }
  const int status = pclose(pipe);
  if (WIFEXITED(status)) ran.status = WEXITSTATUS(status);
  return ran;
}

}  // namespace chalkleaf::support
