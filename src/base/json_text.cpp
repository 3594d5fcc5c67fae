// See the header.
#include "base/json_text.h"

#include <nlohmann/json.hpp>

namespace chalkleaf {

std::string json_string(std::string_view text) {
  return nlohmann::json(std::string(text))
      .dump(-1, ' ', true, nlohmann::json::error_handler_t::replace);
}

}  // namespace chalkleaf
