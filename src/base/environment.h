// The seam to the process's surroundings: environment variables, and nothing else. There is no
// clock here on purpose: no output may depend on when it was made.
#pragma once

#include <map>
#include <optional>
#include <string>

namespace chalkleaf {

class Environment {
 public:
  virtual ~Environment() = default;
  virtual std::optional<std::string> get(const std::string& name) const = 0;
};

/// The real one.
class ProcessEnvironment final : public Environment {
 public:
  std::optional<std::string> get(const std::string& name) const override;
};

/// One for tests.
class FixedEnvironment final : public Environment {
 public:
  explicit FixedEnvironment(std::map<std::string, std::string> values = {})
      : values_(std::move(values)) {}
  std::optional<std::string> get(const std::string& name) const override {
    const auto found = values_.find(name);
    return found == values_.end() ? std::nullopt : std::optional(found->second);
  }

 private:
  std::map<std::string, std::string> values_;
};

}  // namespace chalkleaf
