#include "source/packed_yaml.h"

namespace chalkleaf::source {
namespace {

// The first byte of a value: its kind in the low two bits, then what is true of it.
constexpr unsigned kKinds = 3;
constexpr unsigned kQuoted = 4;
constexpr unsigned kUnreadable = 8;
constexpr unsigned kAsWritten = 16;  ///< its text is what stands in the file, and is not repeated

void append_number(std::string& out, std::uint64_t value) {
  while (value >= 0x80) {
    out.push_back(static_cast<char>(value | 0x80U));
    value >>= 7U;
  }
  out.push_back(static_cast<char>(value));
}

void append_node(std::string& out, const YamlNode& node, std::uint32_t offset) {
  const bool written = node.is_scalar() && node.span && node.text == node.span.text();
  out.push_back(static_cast<char>(static_cast<unsigned>(node.kind) | (node.quoted ? kQuoted : 0U) |
                                  (node.unreadable ? kUnreadable : 0U) |
                                  (written ? kAsWritten : 0U)));
  append_number(out, node.span.begin - offset);
  append_number(out, node.span.size());
  std::string inside;
  if (node.is_scalar() && !written) inside = node.text;
  if (node.kind == YamlNode::Kind::kList) {
    append_number(inside, node.items.size());
    for (const YamlNode& item : node.items) append_node(inside, item, offset);
  } else if (node.kind == YamlNode::Kind::kMap) {
    append_number(inside, node.entries.size());
    for (const YamlEntry& entry : node.entries) {
      append_node(inside, entry.first, offset);
      append_node(inside, entry.second, offset);
    }
  }
  if (written || node.kind == YamlNode::Kind::kNull) return;
  append_number(out, inside.size());
  out += inside;
}

}  // namespace

/// Reads bytes from the front of a view.
class Unpacker {
 public:
  explicit Unpacker(std::string_view bytes) : left_(bytes) {}

  struct Head {
    unsigned flags = 0;
    Span span;
    std::string_view inside;
    YamlNode::Kind kind() const { return static_cast<YamlNode::Kind>(flags & kKinds); }
  };

  std::optional<std::uint64_t> number() {
    std::uint64_t out = 0;
    for (unsigned bits = 0; bits < 64 && !left_.empty(); bits += 7) {
      const auto byte = static_cast<unsigned char>(left_.front());
      left_.remove_prefix(1);
      out |= std::uint64_t{byte & 0x7FU} << bits;
      if ((byte & 0x80U) == 0) return out;
    }
    return std::nullopt;
  }

  std::optional<Head> head(const Source* source, std::uint32_t offset) {
    if (left_.empty()) return std::nullopt;
    Head out;
    out.flags = static_cast<unsigned char>(left_.front());
    left_.remove_prefix(1);
    const auto begin = number();
    const auto size = number();
    const std::uint64_t room = source == nullptr ? 0 : source->text().size() - offset;
    if (!begin || !size || *begin > room || *size > room - *begin) return std::nullopt;
    out.span = {source, offset + static_cast<std::uint32_t>(*begin),
                offset + static_cast<std::uint32_t>(*begin + *size)};
    if ((out.flags & kAsWritten) != 0) {
      out.inside = out.span.text();
    } else if (out.kind() != YamlNode::Kind::kNull) {
      const auto inside = number();
      if (!inside || *inside > left_.size()) return std::nullopt;
      out.inside = left_.substr(0, static_cast<std::size_t>(*inside));
      left_.remove_prefix(static_cast<std::size_t>(*inside));
    }
    return out;
  }

  bool node(YamlNode& out, const Source* source, std::uint32_t offset, unsigned depth) {
    constexpr unsigned kDeepest = 64;  // above source/yaml_tree.h's
    const auto found = head(source, offset);
    if (!found || depth > kDeepest) return false;
    out.kind = found->kind();
    out.span = found->span;
    out.quoted = (found->flags & kQuoted) != 0;
    out.unreadable = (found->flags & kUnreadable) != 0;
    if (out.kind == YamlNode::Kind::kScalar) out.text = found->inside;
    if (out.kind != YamlNode::Kind::kList && out.kind != YamlNode::Kind::kMap) return true;
    Unpacker inside(found->inside);
    const auto count = inside.number();
    if (!count || *count > found->inside.size()) return false;
    if (out.kind == YamlNode::Kind::kList) {
      out.items.resize(static_cast<std::size_t>(*count));
      for (YamlNode& item : out.items) {
        if (!inside.node(item, source, offset, depth + 1)) return false;
      }
      return true;
    }
    out.entries.reserve(static_cast<std::size_t>(*count));
    for (std::uint64_t i = 0; i < *count; ++i) {
      YamlEntry& entry = out.entries.emplace_back(YamlNode{}, YamlNode{});
      if (!inside.node(entry.first, source, offset, depth + 1)) return false;
      if (!inside.node(entry.second, source, offset, depth + 1)) return false;
    }
    return true;
  }

  std::string_view left() const { return left_; }

 private:
  std::string_view left_;
};

YamlNode::Kind PackedNode::kind() const {
  return bytes_.empty()
             ? YamlNode::Kind::kNull
             : static_cast<YamlNode::Kind>(static_cast<unsigned char>(bytes_.front()) & kKinds);
}

std::optional<YamlNode> PackedNode::unpacked() const {
  YamlNode out;
  Unpacker reader(bytes_);
  return reader.node(out, source_, offset_, 0) ? std::optional(std::move(out)) : std::nullopt;
}

std::uint64_t PackedNode::begin_inside(PackedNode& first) const {
  Unpacker reader(bytes_);
  const auto head = reader.head(source_, offset_);
  if (!head || (head->kind() != YamlNode::Kind::kList && head->kind() != YamlNode::Kind::kMap)) {
    return 0;
  }
  Unpacker inside(head->inside);
  const auto count = inside.number();
  first = PackedNode(inside.left(), source_, offset_);
  return count.value_or(0);
}

bool PackedNode::step_over() {
  Unpacker reader(bytes_);
  if (!reader.head(source_, offset_)) return false;
  bytes_ = reader.left();
  return true;
}

std::optional<PackedNode> PackedNode::find(std::string_view key) const {
  PackedNode at;
  if (kind() != YamlNode::Kind::kMap) return std::nullopt;
  for (std::uint64_t left = begin_inside(at); left > 0; --left) {
    Unpacker reader(at.bytes_);
    const auto head = reader.head(source_, offset_);
    if (!head || !at.step_over()) return std::nullopt;
    if (head->kind() == YamlNode::Kind::kScalar && head->inside == key) return at;
    if (!at.step_over()) return std::nullopt;
  }
  return std::nullopt;
}

std::string packed(const YamlNode& node, std::uint32_t offset) {
  std::string out;
  append_node(out, node, offset);
  return out;
}

}  // namespace chalkleaf::source
