// The choices a run is started with.
#pragma once

namespace chalkleaf::club {

/// `--only`
enum class Only { kBoth, kCards, kSheets };
/// `build` writes sheets; `check` does everything but that; `proof` writes pictures of their pages.
enum class Purpose { kBuild, kCheck, kProof };
/// `--strict`: a warning counts as an error.
enum class Strictness { kNormal, kStrict };

}  // namespace chalkleaf::club
