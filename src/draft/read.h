// A coach's own text becomes a plan in the taught form.
//
// `plan` makes the model of what comes out, and of nothing else; `tidy` shows the same text. So the
// sheets of a draft are those of its tidied plan. Tested by tests/draft/ and tests/drafts/.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "draft/origin.h"
#include "rota/model.h"

namespace chalkleaf::draft {

class Lexicon;

struct Draft {
  SourcePtr canonical;  ///< the plan that was read; its path is the coach's file's
  Origin origin;
  /// The lines whose words were taken apart, as typed: printed on the card beside what was read.
  std::vector<Span> typed;
  /// A plan in the taught form, but for the lines in `typed`.
  bool taught = false;
  std::vector<std::string> read_as = {};  ///< taught: the line or lines that were read for each
};

/// True when a file is in the taught form, and so means what it says: it begins with front matter.
bool is_canonical(const Source& source);

/// Reads a draft; nothing when the file is canonical, or has no words at all. `rotations` are what
/// rota::read finds in it.
std::optional<Draft> read(const Lexicon& words, const SourcePtr& coach,
                          const std::vector<rota::Rotation>& rotations = {});

}  // namespace chalkleaf::draft
