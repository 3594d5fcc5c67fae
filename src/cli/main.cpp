// The program: reads its arguments, runs the command, gives its exit code.
#include <fcntl.h>
#include <malloc.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>
#include <exception>

#include "cli/program.h"

namespace {

// A program started with a standard stream closed would get its number for the next file it opens,
// and print its messages into a PDF.
void hold_standard_streams() {
  while (true) {
    const int file = ::open("/dev/null", O_RDWR);
    if (file > STDERR_FILENO) ::close(file);
    if (file < 0 || file > STDERR_FILENO) return;
  }
}

// Setting a sheet takes and gives back some megabytes; handing them to the machine each time, to
// get them back as pages it has to clear, was 7 % of a plan's page faults and 3 % of its time.
void keep_memory() {
  constexpr int kStep = 1024 * 1024;
  constexpr int kMost = 256 * 1024 * 1024;
  mallopt(M_TOP_PAD, kStep);
  mallopt(M_TRIM_THRESHOLD, kMost);
  mallopt(M_MMAP_THRESHOLD, 32 * kStep);
}

// A file that grows over what the machine allows is to fail like a full disk, with a message, and
// not to end the program (POSIX.1-2017, write(): EFBIG, SIGXFSZ).
void fail_where_files_are_too_large() { (void)std::signal(SIGXFSZ, SIG_IGN); }

}  // namespace

int main(int count, char** values) {
  using namespace chalkleaf;
  hold_standard_streams();
  keep_memory();
  fail_where_files_are_too_large();
  try {
    return cli::run_program(count, values);
  } catch (const std::exception& error) {
    // Mistakes in plans are never exceptions: this is memory, threads, or a mistake of ours.
    return cli::stopped_by(error);
  }
}
