#include "support/places.h"

namespace chalkleaf::support {

std::string repository() { return CHALKLEAF_REPOSITORY; }
std::string build_folder() { return CHALKLEAF_BUILD; }
std::string program() { return build_folder() + "/chalkleaf"; }

}  // namespace chalkleaf::support
