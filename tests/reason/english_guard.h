// The guard with the words the program ships.
#pragma once

#include <memory>

#include "base/files.h"
#include "reason/guard.h"
#include "reason/line_weights.h"
#include "source/read.h"
#include "support/places.h"

namespace chalkleaf::reason::tests {

inline const Guard* english_guard() {
  static const std::unique_ptr<const Guard> kGuard = [] {
    const RealFileSystem files;
    Diagnostics found;
    const std::string path = chalkleaf::support::repository() + "/themes/words/en/dangers.yaml";
    const SourcePtr source = source::load(files, path, "dangers.yaml", found);
    const std::string folder = chalkleaf::support::repository() + "/themes/words/en/";
    const auto text = files.read(folder + "danger_weights.txt", 4'000'000);
    const auto weights = text ? LineWeights::read(*text) : std::nullopt;
    return std::make_unique<const Guard>(
        plan::read_danger_book(source, found), found, std::string_view(),
        weights ? std::make_shared<const LineWeights>(*weights) : nullptr);
  }();
  return kGuard.get();
}

}  // namespace chalkleaf::reason::tests
