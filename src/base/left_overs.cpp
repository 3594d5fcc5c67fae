// See the header.
#include "base/left_overs.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <csignal>

#include "base/hash.h"

namespace chalkleaf {
namespace {

constexpr std::string_view kBegins = ".chalkleaf-";
constexpr std::size_t kMachineDigits = 8;
constexpr std::time_t kSurelyOld = 24L * 60 * 60;  // seconds; no run takes a day

std::string machine_tag() {
  std::array<char, 256> host{};
  (void)::gethostname(host.data(), host.size() - 1);
  std::array<char, 64> space{};
  (void)::readlink("/proc/self/ns/pid", space.data(), space.size() - 1);
  return fmt::format("{:016x}", hash64(std::string(host.data()) + "\n" + space.data()))
      .substr(0, kMachineDigits);
}

const std::string& this_machine() {
  static const std::string tag = machine_tag();
  return tag;
}

template <class Number>
std::optional<Number> whole_number(std::string_view text) {
  Number out = 0;
  const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), out);
  if (problem != std::errc() || end != text.data() + text.size() || out < 0) return std::nullopt;
  return out;
}

bool is_hexadecimal(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); });
}

}  // namespace

std::string temporary_name(unsigned number) {
  return fmt::format("{}{}-{}-{}", kBegins, this_machine(), ::getpid(), number);
}

std::optional<TemporaryName> read_temporary_name(std::string_view name) {
  if (!name.starts_with(kBegins)) return std::nullopt;
  name.remove_prefix(kBegins.size());
  const std::size_t last = name.rfind('-');
  if (last == std::string_view::npos || !whole_number<long>(name.substr(last + 1)))
    return std::nullopt;
  name = name.substr(0, last);
  TemporaryName out;
  if (const std::size_t middle = name.find('-'); middle != std::string_view::npos) {
    out.machine = name.substr(0, middle);
    if (out.machine.size() != kMachineDigits || !is_hexadecimal(out.machine)) return std::nullopt;
    name = name.substr(middle + 1);
  }
  const auto process = whole_number<long>(name);
  if (!process || *process == 0) return std::nullopt;
  out.process = *process;
  return out;
}

bool is_left_over(const TemporaryName& name, std::time_t changed, std::time_t now) {
  if (now - changed > kSurelyOld) return true;
  if (name.machine != this_machine()) return false;
  return ::kill(static_cast<pid_t>(name.process), 0) != 0 && errno == ESRCH;
}

}  // namespace chalkleaf
