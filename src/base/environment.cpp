#include "base/environment.h"

#include <cstdlib>

namespace chalkleaf {

std::optional<std::string> ProcessEnvironment::get(const std::string& name) const {
  const char* value = std::getenv(name.c_str());  // NOLINT: read before any thread is started
  return value == nullptr ? std::nullopt : std::optional<std::string>(value);
}

}  // namespace chalkleaf
