// Fuzzes a whole plan, from its bytes to its sheets, in a club that has groups, a hall and drills.
#include <cstddef>
#include <cstdint>

#include "fuzz/disk.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  chalkleaf::fuzz::build(
      {{"club.yaml",
        "name: Alder Quay Gymnastics\ngroups:\n  Wrens: {ages: 6-8, size: 8, level: 2}\n"
        "hall:\n  beam: {count: 3, takes: 1}\nkit: {hoops: 4}\nwords: {dish: a curve}\n"},
       {"drills/dish-hold.md",
        "---\ntitle: Dish hold\nkind: shape\ncurve: dish\nlevel: 3\n---\n\n- cue: long\n"},
       {"parts/warm-up.md", "# Warm-up\n\n- Jog: 2 min\n"},
       {"sessions/plan.md", std::string(reinterpret_cast<const char*>(data), size)}});
  return 0;
}
