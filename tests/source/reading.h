// What the tests of this room share: trees and messages in words.
#pragma once

#include <fmt/format.h>

#include <string>

#include "base/diagnostic_text.h"
#include "source/front_matter.h"
#include "source/read.h"

namespace chalkleaf::source {

inline std::string messages(const Diagnostics& diagnostics) {
  std::string out;
  for (const Diagnostic& d : diagnostics.sorted()) {
    out += render(d, MessageStyle::kShort, Colouring::kPlain);
  }
  return out;
}

/// A file read from a string.
struct ReadFile {
  SourcePtr source;
  Document document;
  Diagnostics diagnostics;
};
inline ReadFile read_text(const std::string& text) {
  ReadFile out;
  out.source = std::make_shared<const Source>("plan.md", text);
  out.document = read_document(out.source, out.diagnostics);
  return out;
}

/// `front [front matter] [body] messages`: where a file is split.
inline std::string parted(const std::string& text) {
  const Source source("p.md", text);
  Diagnostics diagnostics;
  const Split split = split_front_matter(source, diagnostics);
  return fmt::format("{}[{}] [{}] {}", split.has_front ? "front " : "", split.front.text(),
                     source.text().substr(split.body_begin), messages(diagnostics));
}

/// `{key=value, list=[a, b]}`, each scalar followed by its bytes in the file when they differ.
inline std::string described(const YamlNode& node) {
  std::string out;
  switch (node.kind) {
    case YamlNode::Kind::kNull:
      return node.unreadable ? fmt::format("?<{}>", node.span.text())
                             : fmt::format("~<{}>", node.span.text());
    case YamlNode::Kind::kScalar:
      return node.span.text() == node.text ? node.text
                                           : fmt::format("{}<{}>", node.text, node.span.text());
    case YamlNode::Kind::kList:
      for (const YamlNode& item : node.items) out += (out.empty() ? "" : ", ") + described(item);
      return "[" + out + "]";
    case YamlNode::Kind::kMap:
      for (const auto& entry : node.entries) {
        out += (out.empty() ? "" : ", ") + described(entry.first) + "=" + described(entry.second);
      }
      return "{" + out + "}";
  }
  return out;
}

/// The tree, one node a line: kind, text, and the bytes where they differ.
inline std::string described(const MarkNode& node, int depth = 0) {
  constexpr const char* kKinds[] = {"document", "heading", "paragraph", "list", "item", "quote",
                                    "table",    "row",     "cell",      "code", "html", "rule"};
  std::string out = fmt::format("{:{}}{}", "", depth * 2, kKinds[static_cast<int>(node.kind)]);
  if (node.level > 0) out += fmt::format(" {}", node.level);
  if (!node.text.empty()) {
    out += fmt::format(" «{}»", node.text.str());
    if (node.text.span().text() != node.text.str()) {
      out += fmt::format(" from «{}»", node.text.span().text());
    }
  }
  for (const Text::Mark& mark : node.text.marks()) {
    out += fmt::format(" {} «{}»", mark.tone == Tone::kStrong ? "strong" : "emphasised",
                       node.text.str().substr(mark.begin, mark.end - mark.begin));
  }
  for (const MarkNode::Link& link : node.links) {
    out += fmt::format(" {} «{}» {} from «{}»", link.is_image ? "image" : "link",
                       node.text.str().substr(link.begin, link.end - link.begin), link.target,
                       link.span.text());
  }
  out += "\n";
  for (const MarkNode& child : node.children) out += described(child, depth + 1);
  return out;
}

}  // namespace chalkleaf::source
