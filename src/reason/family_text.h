// Everything of a session that a home sheet prints, in its order. Inside the room.
#pragma once

#include <vector>

#include "plan/model.h"

namespace chalkleaf::reason {

/// Some words on the family's page.
struct FamilyText {
  enum class Kind { kName, kRung, kText };  ///< a drill's name; what is done instead; all else
  const plan::Words* words = nullptr;
  const plan::Drill* drill = nullptr;  ///< whose they are; null outside drills
  Kind kind = Kind::kText;
  bool described = false;  ///< kName: a sentence beside it says what the drill is
  bool addressed = false;  ///< written for the family: `Family: …`
};

/// Notes for the coach alone are left out.
std::vector<FamilyText> family_texts(const plan::Session& session);

}  // namespace chalkleaf::reason
