// take_strays and list_in_code of plan/stray_lines.h: through lists and quotes, line by line.
// Tested by tests/plan/stray_lines_test.cpp.
#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "plan/drill_line.h"
#include "plan/part_links.h"
#include "plan/stray_lines.h"
#include "plan/words.h"

namespace chalkleaf::plan {
namespace {

using MarkKind = source::MarkNode::Kind;

/// Goes through a block and takes out what does not belong.
class Sieve {
 public:
  Sieve(std::size_t margin, Diagnostics& diagnostics)
      : margin_(margin), diagnostics_(diagnostics) {}

  void block(source::MarkNode& node, RunsOnFrom from) {
    std::vector<source::MarkNode> kept;
    kept.reserve(node.children.size());
    for (source::MarkNode& child : node.children) {
      const bool first = kept.empty() && node.kind == MarkKind::kItem;
      if (!first && from == RunsOnFrom::kList && is_link(child)) continue;
      if (child.kind == MarkKind::kParagraph) {
        paragraph(child, from);
      } else if (child.kind == MarkKind::kCode) {
        list_in_code(child, from, diagnostics_);
      } else {
        block(child, child.kind == MarkKind::kQuote ? RunsOnFrom::kQuote : from);
      }
      kept.push_back(std::move(child));
    }
    node.children = std::move(kept);
  }

  std::vector<Stray> take() { return std::move(out_); }

 private:
  // A paragraph, or an item of a list below the drill, that is nothing but links to parts.
  bool is_link(const source::MarkNode& node) {
    if (node.kind == MarkKind::kItem) return node.children.size() == 1 && is_link(node.children[0]);
    if (node.kind != MarkKind::kParagraph || node.links.empty()) return false;
    LinksFound found = part_links(without_comments(node));
    if (!found.only_links) return false;
    out_.push_back({Stray::Kind::kLink, std::move(found.links)});
    return true;
  }

  void paragraph(source::MarkNode& node, RunsOnFrom from) {
    if (!has_several_lines(node)) return;
    const source::MarkNode clean = without_comments(node);
    source::MarkNode kept = clean;
    kept.text = {};
    kept.links.clear();
    std::size_t begin = 0;  // of the lines kept and not yet copied
    bool changed = false;
    const std::vector<ParagraphLine> lines = lines_in(clean);
    std::string said_above;  // of the line above, when it was a stray too
    for (std::size_t i = 1; i < lines.size(); ++i) {
      Diagnostics said;
      auto stray = judge_line(clean, lines[i], from, margin_, said);
      // The lines of one piece of text are told of once: the same empty line mends them all.
      const std::string message =
          stray && !said.all().empty() ? said.all()[0].message + said.all()[0].hint : "";
      const bool again = stray && stray->kind == Stray::Kind::kNote && message == said_above;
      if (!again || message.empty()) diagnostics_.append(said);
      said_above = message;
      if (!stray) continue;
      out_.push_back(std::move(*stray));
      if (begin < lines[i].begin)
        append_stretch(kept, stretch_of(clean, begin, lines[i].begin - 1));
      begin = lines[i].end;
      changed = true;
    }
    if (!changed) return;
    append_stretch(kept, stretch_of(clean, begin, clean.text.str().size()));
    node = std::move(kept);
  }

  std::size_t margin_;
  Diagnostics& diagnostics_;
  std::vector<Stray> out_;
};

// Whether there is anything to take out at all: the common item is one line.
bool needs_look(const source::MarkNode& node) {
  if (node.kind == MarkKind::kParagraph) return has_several_lines(node) || !node.links.empty();
  if (node.kind == MarkKind::kCode) return true;
  return std::any_of(node.children.begin(), node.children.end(), needs_look);
}

// The bytes of a bullet or number and its space; 0 when the line has none.
std::size_t marker_length(std::string_view line) {
  for (const std::string_view mark : {"- ", "* ", "+ ", "-\t", "• "}) {
    if (line.starts_with(mark)) return mark.size();
  }
  const std::size_t digits = std::min(line.find_first_not_of("0123456789"), line.size());
  const std::string_view rest = line.substr(digits);
  return digits > 0 && digits < 4 && (rest.starts_with(". ") || rest.starts_with(") ")) ? digits + 2
                                                                                        : 0;
}

bool is_fenced(const source::MarkNode& code) {
  const std::string_view bytes = trim(code.span.text());
  return bytes.starts_with("```") || bytes.starts_with("~~~");
}

Stray line_of_code(const source::Text& line) {
  const source::Text kept = line.trimmed();
  const source::Text said = kept.slice(marker_length(kept.str()), kept.str().size());
  if (is_drill_line(said)) return {Stray::Kind::kDrill, {}, said, words_of(said), kept.span()};
  return {Stray::Kind::kNote, {}, kept, words_of(kept), kept.span()};
}

}  // namespace

std::vector<Stray> take_strays(source::MarkNode& block, Diagnostics& diagnostics) {
  if (!needs_look(block)) return {};
  Sieve sieve(indent_of(*block.span.source, block.span.begin), diagnostics);
  sieve.block(block, block.kind == MarkKind::kQuote ? RunsOnFrom::kQuote : RunsOnFrom::kList);
  return sieve.take();
}

std::vector<Stray> list_in_code(const source::MarkNode& code, RunsOnFrom from,
                                Diagnostics& diagnostics) {
  if (is_fenced(code)) return {};
  std::vector<source::Text> lines;
  const std::string& all = code.text.str();
  for (std::size_t at = 0; at < all.size();) {
    const std::size_t stop = std::min(all.find('\n', at), all.size());
    lines.push_back(code.text.slice(at, stop));
    at = stop + 1;
  }
  const auto listed = std::find_if(lines.begin(), lines.end(), [](const source::Text& line) {
    return marker_length(trim(line.str())) > 0 || is_plainly_a_drill(line);
  });
  if (listed == lines.end()) return {};
  const bool below = from == RunsOnFrom::kList;
  diagnostics.error(
      kBadValue, listed->trimmed().span(),
      below ? "this list is indented too far, which makes it a block of code"
            : "this list is indented by four spaces, which makes it a block of code",
      below ? "indent it by two spaces more than the line it belongs to" : "move it to the left");
  std::vector<Stray> out;
  for (const source::Text& line : lines) {
    if (!trim(line.str()).empty()) out.push_back(line_of_code(line));
  }
  return out;
}

}  // namespace chalkleaf::plan
