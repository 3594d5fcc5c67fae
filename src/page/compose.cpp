#include "page/compose.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/text.h"
#include "page/layout.h"

namespace chalkleaf::page {
namespace {

/// A slab laid out, waiting for its page.
struct Ready {
  Fragment fragment;
  const Slab* slab = nullptr;
  std::size_t section = 0;
  bool first_of_section = false;
};

class Paginator {
 public:
  Paginator(Flow& flow, Layout& layout) : flow_(flow), layout_(layout) {
    width_ = flow.paper.width - flow.margins.left - flow.margins.right;
    foot_height_ = flow.foot ? layout.place(flow.foot(0, 1), width_).size.height : Length();
    bottom_ = flow.paper.height - flow.margins.bottom - foot_height_ -
              (flow.foot ? flow.foot_gap : Length());
  }

  Composed run() {
    std::vector<Ready> ready = lay_out_slabs();
    start_page();
    for (std::size_t i = 0; i < ready.size();) {
      const std::size_t end = chain_end(ready, i);
      place_chain(ready, i, end);
      i = end;
    }
    set_feet();
    out_.list.tree = std::move(flow_.tree);
    out_.list.info = std::move(flow_.info);
    out_.free_on_last_page = bottom_ - y_ + skipped_;
    out_.page_height = bottom_ - flow_.margins.top;
    out_.used += y_ - flow_.margins.top - skipped_;
    out_.problems = layout_.problems();
    return std::move(out_);
  }

 private:
  std::vector<Ready> lay_out_slabs() {
    std::vector<Ready> ready;
    for (std::size_t s = 0; s < flow_.sections.size(); ++s) {
      bool first = true;
      for (const Slab& slab : flow_.sections[s].slabs) {
        ready.push_back({layout_.place(slab.block, width_), &slab, s, first});
        first = false;
      }
    }
    return ready;
  }

  // A chain is a slab, those it keeps with, and the first that may end a page.
  static std::size_t chain_end(const std::vector<Ready>& ready, std::size_t from) {
    std::size_t end = from;
    while (end + 1 < ready.size() && ready[end].slab->keep_with_next) ++end;
    return end + 1;
  }

  void place_chain(std::vector<Ready>& ready, std::size_t from, std::size_t end) {
    Length height;
    for (std::size_t i = from; i < end; ++i) {
      const bool at_top = page_is_empty_ && i == from;
      height += ready[i].fragment.size.height + (at_top ? Length() : ready[i].slab->space_before);
    }
    const bool wants_page = ready[from].slab->begins_page;
    if (!page_is_empty_ && (wants_page || y_ + height > bottom_)) {
      start_page();
      const Section& section = flow_.sections[ready[from].section];
      if (!ready[from].first_of_section && section.continuation) {
        Fragment again = layout_.place(*section.continuation, width_);
        put(std::move(again));
        page_is_empty_ = false;
      }
    }
    for (std::size_t i = from; i < end; ++i) place_slab(ready[i]);
  }

  void place_slab(Ready& ready) {
    if (!page_is_empty_) y_ += ready.slab->space_before;
    if (y_ + ready.fragment.size.height > bottom_ && !page_is_empty_) start_page();
    if (y_ + ready.fragment.size.height > bottom_) out_.too_tall.push_back(ready.slab->origin);
    if (ready.slab->at_foot) {
      const Length down = std::max(bottom_ - ready.fragment.size.height - y_, Length());
      y_ += down;
      skipped_ += down;
    }
    if (ready.slab->outline) {
      OutlineEntry entry = *ready.slab->outline;
      entry.page = out_.list.pages.size() - 1;
      entry.y = y_;
      out_.list.outline.push_back(std::move(entry));
    }
    put(std::move(ready.fragment));
    page_is_empty_ = false;
  }

  void put(Fragment fragment) {
    const Length height = fragment.size.height;
    append_moved(out_.list.pages.back().items, std::move(fragment.items), flow_.margins.left, y_);
    y_ += height;
  }

  void start_page() {
    if (!out_.list.pages.empty()) out_.used += y_ - flow_.margins.top - skipped_;
    skipped_ = {};
    out_.list.pages.push_back({flow_.paper, {}});
    y_ = flow_.margins.top;
    page_is_empty_ = true;
  }

  void set_feet() {
    if (!flow_.foot) return;
    const std::size_t pages = out_.list.pages.size();
    for (std::size_t i = 0; i < pages; ++i) {
      Fragment foot = layout_.place(flow_.foot(i, pages), width_);
      append_moved(out_.list.pages[i].items, std::move(foot.items), flow_.margins.left,
                   flow_.paper.height - flow_.margins.bottom - foot_height_);
    }
  }

  Flow& flow_;
  Layout& layout_;
  Composed out_;
  Length width_;
  Length foot_height_;
  Length bottom_;
  Length y_;
  Length skipped_;  // of this page, above what stands at its foot
  bool page_is_empty_ = true;
};

}  // namespace

Composed compose(Flow flow, type::Typesetter& typesetter) {
  Layout layout(typesetter);
  return Paginator(flow, layout).run();
}

void report(const Composed& composed, const std::string& sheet_name, Diagnostics& diagnostics) {
  for (const Span& origin : composed.too_tall) {
    diagnostics.error("text-overflow", origin,
                      fmt::format("this does not fit on one page of the {}", sheet_name),
                      "shorten its cues and notes, or print on larger paper");
  }
  std::set<std::string> told;  // scripts; a script is missing as a whole
  for (const type::TextProblem& problem : composed.problems) {
    if (problem.kind == type::TextProblem::Kind::kCutWord) {
      diagnostics.warning(
          "text-overflow", problem.origin,
          fmt::format("‘{}’ is wider than its column on the {} and was cut", problem.text,
                      sheet_name),
          "write it as shorter words, or put a space or a hyphen where it may break");
      continue;
    }
    const char32_t code = problem.text.empty() ? 0xFFFD : decode_utf8(problem.text, 0).code;
    const std::string character =
        fmt::format("‘{}’ (U+{:04X})", problem.text, static_cast<std::uint32_t>(code));
    if (problem.script.empty()) {
      diagnostics.warning("missing-glyph", problem.origin,
                          fmt::format("no font of the {} has the character {}; a box is printed in "
                                      "its place",
                                      sheet_name, character),
                          "write it in words, or leave it out");
    } else if (told.insert(problem.script).second) {
      diagnostics.warning(
          "missing-glyph", problem.origin,
          fmt::format("no font of the {} has the {} character {}; a box is printed in the place of "
                      "each that is missing",
                      sheet_name, problem.script, character),
          fmt::format("add a font for {} to fonts/catalogue.yaml, or write it in other letters",
                      problem.script));
    }
  }
}

}  // namespace chalkleaf::page
