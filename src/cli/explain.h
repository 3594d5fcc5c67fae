// `explain`: the manual of the checks, on the terminal.
#pragma once

#include <string>
#include <tl/expected.hpp>

namespace chalkleaf::cli {

/// What a check finds, why, what it rests on, what to change and an example; with an empty name,
/// all checks in one line each. The error is a sentence for the user.
tl::expected<std::string, std::string> explain(const std::string& name);

}  // namespace chalkleaf::cli
