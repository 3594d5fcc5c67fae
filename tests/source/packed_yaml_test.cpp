// Packed trees against the trees they were packed from.
#include "source/packed_yaml.h"

#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::source {
namespace {

const char* const kForms =
    "a: b c # d\ne: 'f'\ng: \"h \\\"i\\\"\"\nj: [k, 'l', [m]]\nn: {o: p, q: , r}\n"
    "s: |\n  t\n    u\nv: ~\nw:\n- x: y\n  z: 1\n-\na: again\n";

SourcePtr source_of(const std::string& text, PackPtr pack = nullptr) {
  return std::make_shared<const Source>("c.yaml", text, std::move(pack));
}

YamlNode tree_of(const SourcePtr& source) {
  Diagnostics diagnostics;
  return read_yaml(source, diagnostics).value();
}

PackPtr pack_of(const std::map<Hash128, std::string>& entries) {
  const auto bytes = std::make_shared<const std::string>(chalkleaf::packed(entries));
  return std::make_shared<const Pack>(FileBytes{bytes, *bytes});
}

}  // namespace

TEST_CASE("what is unpacked is what was packed, places and all") {
  for (const std::string& text : {std::string(kForms), std::string(),
                                  std::string("\xEF\xBB\xBF"
                                              "a: b\n")}) {
    const SourcePtr source = source_of(text);
    const YamlNode tree = tree_of(source);
    const std::string bytes = packed(tree, 0);
    const auto again = PackedNode(bytes, source.get(), 0).unpacked();
    REQUIRE(again);
    CHECK(described(*again) == described(tree));
    CHECK(packed(*again, 0) == bytes);  // all that is kept of it, spans too
    CHECK(again->span == tree.span);
  }
}

TEST_CASE("a value is found without unpacking what stands before it") {
  const SourcePtr source = source_of(kForms);
  const std::string bytes = packed(tree_of(source), 0);
  const PackedNode root(bytes, source.get(), 0);
  CHECK(root.kind() == YamlNode::Kind::kMap);
  CHECK(described(*root.find("j")->unpacked()) == "[k, l<'l'>, [m]]");
  CHECK(root.find("a")->unpacked()->text == "b c");  // the first of two
  CHECK(root.find("n")->find("o")->unpacked()->text == "p");
  CHECK_FALSE(root.find("b"));
  CHECK_FALSE(root.find("a")->find("b"));
  std::string keys;
  root.each_entry([&](const YamlNode& key, const PackedNode&) { keys += key.text; });
  CHECK(keys == "aegjnsvwa");
}

TEST_CASE("damaged bytes give a tree or none, and end") {
  const SourcePtr source = source_of(kForms);
  const std::string bytes = packed(tree_of(source), 0);
  std::size_t refused = 0;
  for (std::size_t at = 0; at < bytes.size(); ++at) {
    for (const unsigned flip : {0x01U, 0x04U, 0x80U, 0xFFU}) {
      std::string damaged = bytes;
      damaged[at] = static_cast<char>(static_cast<unsigned char>(damaged[at]) ^ flip);
      const PackedNode root(damaged, source.get(), 0);
      if (!root.unpacked()) ++refused;
      root.find("w");
    }
    CHECK_FALSE(PackedNode(std::string_view(bytes).substr(0, at), source.get(), 0).unpacked());
  }
  CHECK(refused > 0);
}

TEST_CASE("a file is read from the pack when the pack has its very text, and else from the file") {
  const SourcePtr plain = source_of(kForms);
  const auto entry = pack_yaml(plain);
  REQUIRE(entry);
  const PackPtr pack = pack_of({*entry});
  const SourcePtr known = source_of(kForms, pack);
  CHECK(packed_yaml(known));
  CHECK(described(tree_of(known)) == described(tree_of(plain)));
  const SourcePtr other = source_of(kForms + std::string("\nb: c\n"), pack);
  CHECK_FALSE(packed_yaml(other));
  CHECK(described(tree_of(other)).find("b=c") != std::string::npos);
  CHECK_FALSE(packed_yaml(plain));
  // Proof that the pack is what is read: one that lies is believed.
  const SourcePtr lie = source_of("x: y\n");
  const PackPtr lying = pack_of({{entry->first, packed(tree_of(lie), 0)}});
  CHECK(described(tree_of(source_of(kForms, lying))) != described(tree_of(plain)));
}

TEST_CASE("what is not sound is not packed") {
  CHECK_FALSE(pack_yaml(source_of("a: [b\n")));
  CHECK_FALSE(pack_yaml(source_of("a: &b c\nd: *b\n")));
}

}  // namespace chalkleaf::source
