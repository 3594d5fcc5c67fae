#include "club/page_pictures.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/mman.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <optional>

#include "club/child_process.h"

extern char** environ;  // POSIX: handed on as it is

namespace chalkleaf::club {
namespace {

constexpr std::chrono::seconds kPatience{60};
constexpr std::size_t kLargest = 256UL * 1024 * 1024;
constexpr int kNoSuchProgram = 127;  // what a shell, and posix_spawn's child, answers

/// A file descriptor with one owner.
class Descriptor {
 public:
  explicit Descriptor(int number = -1) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { close(); }
  int get() const { return number_; }
  explicit operator bool() const { return number_ >= 0; }
  void close() {
    if (number_ >= 0) ::close(number_);
    number_ = -1;
  }
  void take(int number) {
    close();
    number_ = number;
  }

 private:
  int number_;
};

// The bytes as a file without a name. A pipe would have to be filled while the answer is read.
bool fill(const Descriptor& file, const std::string& bytes) {
  for (std::size_t done = 0; done < bytes.size();) {
    const ssize_t n = ::write(file.get(), bytes.data() + done, bytes.size() - done);
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) return false;
    done += static_cast<std::size_t>(n);
  }
  return ::lseek(file.get(), 0, SEEK_SET) == 0;
}

struct Ran {
  int status = kNoSuchProgram;
  std::optional<std::string> output;
};

// `pdftoppm` with the file at its standard input; what it writes.
Ran run_pdftoppm(int pdf, std::size_t page, int dots) {
  std::array<int, 2> ends{};
  if (::pipe2(ends.data(), O_CLOEXEC) != 0) return {};
  Descriptor from(ends[0]);
  Descriptor to(ends[1]);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_adddup2(&actions, pdf, 0);
  posix_spawn_file_actions_adddup2(&actions, to.get(), 1);
  posix_spawn_file_actions_addopen(&actions, 2, "/dev/null", O_WRONLY, 0);
  std::string number = std::to_string(page);
  std::string resolution = std::to_string(dots);
  std::array<std::string, 10> words{"pdftoppm", "-png", "-singlefile", "-r",   resolution,
                                    "-f",       number, "-l",          number, "-"};
  std::array<char*, words.size() + 1> arguments{};
  for (std::size_t i = 0; i < words.size(); ++i) arguments[i] = words[i].data();
  pid_t child = -1;
  const int failed =
      ::posix_spawnp(&child, "pdftoppm", &actions, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  to.close();
  if (failed != 0) return {};
  Ran out;
  out.output = read_pipe(from.get(), std::chrono::steady_clock::now() + kPatience, kLargest);
  out.status = end_child(child, out.output ? EndHow::kWait : EndHow::kKill);
  return out;
}

}  // namespace

tl::expected<std::vector<std::string>, std::string> page_pictures(const std::string& pdf,
                                                                  std::size_t pages, int dots) {
  std::vector<std::string> out;
  for (std::size_t page = 1; page <= pages; ++page) {
    const Descriptor file(::memfd_create("pages", MFD_CLOEXEC));
    if (!file || !fill(file, pdf)) return tl::unexpected(std::string("there is no memory for it"));
    Ran ran = run_pdftoppm(file.get(), page, dots);
    if (ran.status == kNoSuchProgram) {
      return tl::unexpected(std::string(
          "the program ‘pdftoppm’ is not there; on Debian: apt-get install poppler-utils"));
    }
    constexpr std::string_view kPngBegins = "\x89PNG\r\n";
    if (ran.status != 0 || !ran.output || !ran.output->starts_with(kPngBegins))
      return tl::unexpected(fmt::format("‘pdftoppm’ could not draw page {}", page));
    out.push_back(std::move(*ran.output));
  }
  return out;
}

}  // namespace chalkleaf::club
