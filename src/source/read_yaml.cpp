// YAML in, tree out; where a line cannot be read it is reported, blanked, and the rest read again.
//
// Tested by tests/source/yaml_test.cpp and yaml_mistakes_test.cpp.
#include "source/read_yaml.h"

#include "source/front_matter.h"
#include "source/read.h"
#include "source/yaml_mistakes.h"

namespace chalkleaf::source {
namespace {

constexpr int kMostTries = 8;  // slips reported in one run; each costs one more pass

// yaml-cpp knows LF and CRLF only; a lone CR becomes LF, byte for byte. Control characters, one of
// which ends its input, become spaces.
void make_readable(std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '\r' && (i + 1 == text.size() || text[i + 1] != '\n')) {
      text[i] = '\n';
    } else if (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\r' && c != '\t') {
      text[i] = ' ';
    }
  }
}

void blank(std::string& text, Stretch where) {
  for (std::size_t i = where.begin; i < where.end && i < text.size(); ++i) {
    if (text[i] != '\n' && text[i] != '\r') text[i] = ' ';
  }
}

}  // namespace

std::optional<YamlNode> read_yaml_span(const Span& where, Diagnostics& diagnostics) {
  if (where.size() > kLargestYaml) {
    diagnostics.error(kBadValue, {where.source, where.begin, where.begin},
                      "this is too long to be read", "check that this is the right file");
    return std::nullopt;
  }
  YamlText yaml{where.source, where.begin, std::string(where.text()), {}};
  make_readable(yaml.text);
  for (int i = 0; i < kMostTries; ++i) {
    Diagnostics found;
    YamlPass pass = read_once(yaml, found);
    if (!pass.failure) {
      diagnostics.append(found);
      if (pass.root.kind == YamlNode::Kind::kNull) {  // nothing but comments
        pass.root.kind = YamlNode::Kind::kMap;
        pass.root.span = {where.source, where.begin, where.begin};
      }
      return std::move(pass.root);
    }
    const YamlMistake mistake = explain(yaml, *pass.failure);
    Diagnostic wrong{Severity::kError, kBadValue, yaml.span(mistake.where.begin, mistake.where.end),
                     mistake.message};
    wrong.hint = mistake.hint;
    if (mistake.cure) {
      wrong.edits.push_back(
          {yaml.span(mistake.cure->where.begin, mistake.cure->where.end), mistake.cure->text});
    }
    diagnostics.add(std::move(wrong));
    const std::string before = yaml.text;
    blank(yaml.text, mistake.leave_out);
    if (yaml.text == before) break;  // nothing left to leave out
    yaml.left_out.push_back(mistake.leave_out);
  }
  return std::nullopt;
}

Hash128 yaml_key(std::string_view text) { return pack_key("yaml", text); }

Hash128 front_key(std::string_view text) { return pack_key("front", text); }

std::optional<PackedNode> packed_yaml(const SourcePtr& source) {
  if (source->pack() == nullptr) return std::nullopt;
  const auto bytes = source->pack()->find(yaml_key(source->text()));
  if (!bytes) return std::nullopt;
  return PackedNode(*bytes, source.get(), 0);
}

std::optional<YamlNode> packed_front_matter(const SourcePtr& source, const Span& where) {
  if (source->pack() == nullptr) return std::nullopt;
  const auto bytes = source->pack()->find(front_key(source->text()));
  if (!bytes) return std::nullopt;
  return PackedNode(*bytes, source.get(), where.begin).unpacked();
}

std::optional<std::pair<Hash128, std::string>> pack_front_matter(const SourcePtr& source) {
  Diagnostics found;
  const Document document = read_document(source, found);
  if (!document.front || !found.all().empty()) return std::nullopt;
  return std::pair(front_key(source->text()), packed(*document.front, document.front_span.begin));
}

std::optional<std::pair<Hash128, std::string>> pack_yaml(const SourcePtr& source) {
  Diagnostics found;
  const auto root = read_yaml(source, found);
  if (!root || !found.all().empty()) return std::nullopt;
  return std::pair(yaml_key(source->text()), packed(*root, 0));
}

std::optional<YamlNode> read_yaml(const SourcePtr& source, Diagnostics& diagnostics) {
  if (const auto known = packed_yaml(source)) {
    if (auto root = known->unpacked()) return root;
  }
  const std::uint32_t mark = byte_order_mark(source->text());
  return read_yaml_span({source.get(), mark, static_cast<std::uint32_t>(source->text().size())},
                        diagnostics);
}

}  // namespace chalkleaf::source
