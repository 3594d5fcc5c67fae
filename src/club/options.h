// The choices a run is started with.
#pragma once

namespace chalkleaf::club {

/// `--only`
enum class Only { kBoth, kCards, kSheets };
/// `build` writes sheets; `check` does everything but that; `proof` writes pictures of their pages.
enum class Purpose { kBuild, kCheck, kProof };
/// `--two-up`: two small pages on a sheet, one after the other or each of them twice.
enum class TwoUp { kNo, kPages, kCopies };
/// `--strict`: a warning counts as an error.
enum class Strictness { kNormal, kStrict };

}  // namespace chalkleaf::club
