// The program: reads its arguments, runs the command, gives its exit code.
#include <fcntl.h>
#include <malloc.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <unistd.h>

#include <csignal>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
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

// Memory is asked for in pages of 2 MB: in pages of 4 KB a plan's cost 3,000 page faults, an eighth
// of its time. It is only asked (Linux, madvise(2)): a machine may say no.
void ask_for_large_pages() {
  constexpr std::uintptr_t kLarge = 2UL * 1024 * 1024;
  constexpr int kRoom = 64 * 1024 * 1024;  // addresses, not memory: what is not used costs nothing
  rlimit limit{};
  if (getrlimit(RLIMIT_AS, &limit) != 0 || limit.rlim_cur != RLIM_INFINITY) return;
  mallopt(M_TOP_PAD, kRoom);
  void* const first = std::malloc(kLarge / 8);  // makes the heap, with the room behind it
  const std::uintptr_t begin =
      (reinterpret_cast<std::uintptr_t>(first) + kLarge - 1) / kLarge * kLarge;
  const std::uintptr_t end = reinterpret_cast<std::uintptr_t>(sbrk(0)) / kLarge * kLarge;
  std::free(first);
  if (end > begin && end - begin <= kRoom)
    (void)madvise(reinterpret_cast<void*>(begin), end - begin, MADV_HUGEPAGE);
}

// Setting a sheet takes and gives back some megabytes; handing them to the machine each time, to
// get them back as pages it has to clear, was 7 % of a plan's page faults and 3 % of its time.
void keep_memory() {
  constexpr int kStep = 1024 * 1024;
  constexpr int kMost = 256 * 1024 * 1024;
  mallopt(M_TRIM_THRESHOLD, kMost);
  mallopt(M_MMAP_THRESHOLD, 32 * kStep);
  ask_for_large_pages();
  mallopt(M_TOP_PAD, kStep);
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
