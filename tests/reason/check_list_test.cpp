// The list of checks is complete and well-formed.
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "reason/checks.h"

using namespace chalkleaf;
using namespace chalkleaf::reason;

TEST_CASE("every check issue 2 names is in the list once, with two of our own") {
  std::multiset<std::string> names;
  for (const CheckInfo& info : all_checks()) names.emplace(info.name);
  CHECK(names == std::multiset<std::string>{"missing-warm-up",
                                            "missing-cool-down",
                                            "warm-up-not-first",
                                            "cool-down-not-last",
                                            "over-slot",
                                            "under-slot",
                                            "substitute-without-easier",
                                            "no-dose",
                                            "unreadable-dose",
                                            "unknown-key",
                                            "duplicate-key",
                                            "bad-value",
                                            "missing-key",
                                            "unknown-part",
                                            "part-cycle",
                                            "outside-folder",
                                            "unreadable-file",
                                            "no-adult-note",
                                            "no-space-note",
                                            "text-overflow",
                                            "missing-glyph",
                                            "over-budget",
                                            "not-written"});
}

TEST_CASE("a purpose is one sentence without a full stop; few are warnings") {
  std::set<std::string> warnings;
  for (const CheckInfo& info : all_checks()) {
    INFO(info.name);
    CHECK(info.purpose.size() > 20);
    CHECK(info.purpose.find('.') == std::string_view::npos);
    if (info.severity == Severity::kWarning) warnings.emplace(info.name);
  }
  CHECK(warnings == std::set<std::string>{"under-slot", "over-budget", "missing-glyph"});
}
