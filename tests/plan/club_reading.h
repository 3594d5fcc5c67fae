// A club file read from a string.
#pragma once

#include "plan/reading.h"

namespace chalkleaf::plan {

struct ReadClub {
  SourcePtr source;
  Club club;
  Diagnostics diagnostics;
};
inline ReadClub read_club_text(const std::string& text) {
  ReadClub out;
  out.source = source::load_text("club.yaml", text, out.diagnostics);
  const auto root = source::read_yaml(out.source, out.diagnostics);
  if (root) out.club = read_club(out.source, *root, out.diagnostics);
  return out;
}

}  // namespace chalkleaf::plan
