#include "base/pack.h"

#include <catch2/catch.hpp>

using namespace chalkleaf;

namespace {

Pack open(const std::string& bytes) {
  const auto kept = std::make_shared<const std::string>(bytes);
  return Pack({kept, *kept});
}

std::map<Hash128, std::string> three() {
  return {{pack_key("yaml", "a"), "of a"},
          {pack_key("yaml", "b"), std::string("\0\1", 2)},
          {pack_key("hyphens", "a"), ""}};
}

}  // namespace

TEST_CASE("a pack gives what was put in, by what it was made of and for") {
  const Pack pack = open(packed(three()));
  CHECK(pack.find(pack_key("yaml", "a")) == "of a");
  CHECK(pack.find(pack_key("yaml", "b")) == std::string("\0\1", 2));
  CHECK(pack.find(pack_key("hyphens", "a")) == "");
  CHECK(pack.find(pack_key("hyphens", "b")) == std::nullopt);
  CHECK(pack.find(pack_key("yaml", "c")) == std::nullopt);
  CHECK(packed(three()) == packed(three()));
}

TEST_CASE("every entry begins at a multiple of eight bytes") {
  const std::string bytes = packed(three());
  const Pack pack = open(bytes);
  const auto first = pack.find(pack_key("yaml", "a"));
  const auto second = pack.find(pack_key("yaml", "b"));
  REQUIRE((first && second));
  CHECK((second->data() - first->data()) % 8 == 0);
}

TEST_CASE("a damaged pack has less, and nothing that was not put in") {
  const std::string bytes = packed(three());
  for (std::size_t at = 0; at < bytes.size(); ++at) {
    std::string damaged = bytes;
    damaged[at] = static_cast<char>(damaged[at] ^ 0x10);
    const Pack pack = open(damaged);
    INFO("byte " << at);
    for (const auto& [key, value] : three()) {
      const auto found = pack.find(key);
      CHECK((!found || *found == value));
    }
  }
  for (std::size_t size = 0; size < bytes.size(); ++size) {
    const Pack pack = open(bytes.substr(0, size));
    for (const auto& [key, value] : three()) {
      const auto found = pack.find(key);
      CHECK((!found || *found == value));
    }
  }
  CHECK(open("").empty());
  CHECK(open("something else, and longer than a pack's head and its table").empty());
  CHECK(Pack().find(pack_key("yaml", "a")) == std::nullopt);
}
