// The program: reads its arguments, runs the command, gives its exit code.
#include <cstdio>
#include <exception>

#include "cli/commands.h"

int main(int count, char** values) {
  using namespace chalkleaf;
  try {
    const auto read = cli::read_arguments(count, values);
    if (const auto* nothing_to_run = std::get_if<cli::Stop>(&read))
      return cli::stop(*nothing_to_run);
    return cli::run(std::get<cli::Arguments>(read));
  } catch (const std::exception& error) {
    // Mistakes in plans are never exceptions: this is memory, threads, or a mistake of ours.
    std::fprintf(stderr, "chalkleaf: stopped by an internal error: %s\n", error.what());
    return 2;
  }
}
