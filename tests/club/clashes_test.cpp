// `clashes` over a club's folder, and what `check` says of the same.
#include "club/clashes.h"

#include <catch2/catch.hpp>

#include "club/folders.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using namespace chalkleaf::club::tests;

namespace {

class ClashesEar final : public Listener {
 public:
  void problem(const std::string& sentence) override { text += "! " + sentence + "\n"; }
  void found(const Diagnostic& diagnostic) override {
    if (diagnostic.name == "hall-clash") text += diagnostic.message + "\n";
  }
  void progress(std::size_t, std::size_t) override {}
  std::string text;
};

std::string at_vault(const std::string& title, const std::string& start) {
  return "---\ntitle: " + title +
         "\nplace: gym\ngymnasts: 6\nadults: 2\ndate: 2026-12-01\nstart: \"" + start +
         "\"\n---\n\n## Warm-up (10 min)\n\n- Jog: 5 min\n\n## Vault (15 min)\n\n- Squat on: 5 "
         "goes\n  - at: vault\n\n## Cool-down (2 min)\n\n- Slow walk: 1 min\n";
}

}  // namespace

TEST_CASE("clashes: both plans are named, and check says the same once") {
  const TemporaryFolder folder("clashes-club");
  folder.put("club.yaml", "name: Alder Quay Gymnastics\nhall:\n  vault: {count: 1, takes: 1}\n");
  folder.put("sessions/a.md", at_vault("First", "17:00"));
  folder.put("sessions/b.md", at_vault("Second", "17:05"));
  folder.put("sessions/c.md", at_vault("Third", "18:00"));
  RealFileSystem files;
  const FixedEnvironment environment(
      std::map<std::string, std::string>{{"CHALKLEAF_DATA", support::repository()}});
  const Surroundings around{files, environment, "/nowhere/chalkleaf"};
  Request request;
  request.standing = folder.str();
  request.purpose = Purpose::kCheck;
  ClashesEar ear;
  const ClashesRun made = clashes(request, around, ear);
  CHECK(ear.text.empty());
  CHECK(made.sessions == 3);
  REQUIRE(made.clashes.size() == 1);
  CHECK(made.clashes[0].first == "sessions/a.md");
  CHECK(made.clashes[0].second == "sessions/b.md");
  CHECK(made.clashes[0].what == "the vault from 17:15 to 17:25 (2 wanted, 1 there)");
  build(request, around, ear);
  CHECK(ear.text ==
        "on 2026-12-01 this session and ‘First’ want the same of the hall: the vault from 17:15 to "
        "17:25 (2 wanted, 1 there)\n");
}
