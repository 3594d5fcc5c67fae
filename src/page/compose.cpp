#include "page/compose.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/text.h"
#include "page/layout.h"
#include "page/page_breaks.h"
#include "page/prune_tree.h"

namespace chalkleaf::page {
namespace {

/// One way to set a slab, measured, waiting to be chosen.
struct Ready {
  const Block* block = nullptr;
  Length height;
  std::vector<type::TextProblem> problems;
  Length most_stretch;
  NodeRange nodes;
  bool chosen = false;
};

/// A slab's place: its slab, and its ways in the order of Place::ways.
struct Stand {
  const Slab* slab = nullptr;
  const Section* section = nullptr;
  std::vector<Ready> ways;
};

class Paginator {
 public:
  Paginator(Flow& flow, type::Typesetter& typesetter) : flow_(flow), typesetter_(typesetter) {
    width_ = flow.paper.width - flow.margins.left - flow.margins.right;
    foot_height_ = flow.foot ? measure(flow.foot(0, 1)).height : Length();
    bottom_ = flow.paper.height - flow.margins.bottom - foot_height_ -
              (flow.foot ? flow.foot_gap : Length());
    out_.page_height = bottom_ - flow.margins.top;
  }

  std::vector<ChosenWay> choose() {
    lay_out();
    std::vector<ChosenWay> out;
    for (const PlannedPage& page : plan_pages(places_, out_.page_height).pages) {
      for (const PlannedPage::Piece& piece : page.pieces) {
        const Stand& stand = stands_[piece.place];
        out.push_back({static_cast<std::size_t>(stand.section - flow_.sections.data()),
                       static_cast<std::size_t>(stand.slab - stand.section->slabs.data()),
                       piece.way});
      }
    }
    return out;
  }

  Composed run() {
    lay_out();
    const PagePlan plan = plan_pages(places_, out_.page_height);
    if (plan.pages.empty()) start_page();
    for (std::size_t p = 0; p < plan.pages.size(); ++p) {
      const bool last = p + 1 == plan.pages.size() || places_[first_place(plan, p + 1)].begins_page;
      set_page(plan.pages[p], last);
    }
    set_feet();
    out_.list.tree = std::move(flow_.tree);
    out_.list.info = std::move(flow_.info);
    prune_tree(out_.list, not_chosen());
    return std::move(out_);
  }

 private:
  static std::size_t first_place(const PagePlan& plan, std::size_t page) {
    return plan.pages[page].pieces.front().place;
  }

  static const Block* continuation_of(const Slab& slab, const Section& section) {
    if (slab.continuation) return slab.continuation.get();
    return section.continuation ? &*section.continuation : nullptr;
  }

  Ready measure(const Block& block) {
    Layout layout(typesetter_);
    Ready out;
    out.block = &block;
    out.height = layout.measure(block, width_).size.height;
    out.problems = layout.problems();
    return out;
  }

  void lay_out() {
    for (const Section& section : flow_.sections) {
      const Block* measured = nullptr;  // many slabs have the same
      Length head;
      for (std::size_t s = 0; s < section.slabs.size(); ++s) {
        const Slab& slab = section.slabs[s];
        Stand stand{&slab, &section, {}};
        Place here;
        if (const Block* again = continuation_of(slab, section); again != measured) {
          measured = again;
          head = again == nullptr ? Length() : measure(*again).height;
        }
        here.head = s == 0 ? Length() : head;
        here.begins_page = slab.begins_page;
        const auto add = [&](const Block& block, std::size_t covers, std::int64_t dislike,
                             Length most_stretch, NodeRange nodes) {
          Ready ready = measure(block);
          ready.most_stretch = most_stretch;
          ready.nodes = nodes;
          here.ways.push_back({places_.size() + covers, ready.height, slab.space_before,
                               section.slabs[s + covers - 1].keep_with_next,
                               dislike + disliked(ready)});
          stand.ways.push_back(std::move(ready));
        };
        add(slab.block, 1, slab.dislike, slab.most_stretch, slab.nodes);
        for (const Alternative& other : slab.alternatives)
          add(other.block, other.covers, other.dislike, other.most_stretch, other.nodes);
        places_.push_back(std::move(here));
        stands_.push_back(std::move(stand));
      }
    }
  }

  // A word that had to be cut is worse than any empty foot.
  static std::int64_t disliked(const Ready& ready) {
    constexpr std::int64_t kCutWord = 10'000'000;
    return kCutWord *
           std::count_if(ready.problems.begin(), ready.problems.end(), [](const auto& problem) {
             return problem.kind == type::TextProblem::Kind::kCutWord;
           });
  }

  // ---- a page

  void set_page(const PlannedPage& page, bool last) {
    start_page();
    const Stand& first = stands_[page.pieces.front().place];
    if (page.head) put(*continuation_of(*first.slab, *first.section));
    const Stretch stretch = last ? Stretch() : stretch_of(page);
    for (std::size_t i = 0; i < page.pieces.size(); ++i) {
      Stand& stand = stands_[page.pieces[i].place];
      Ready& chosen = stand.ways[page.pieces[i].way];
      chosen.chosen = true;
      if (i > 0 || page.head) {
        y_ += stand.slab->space_before;
        if (stretches(page, i))
          y_ += stretch.part(stand.slab->space_before * kGapNumerator / kGapDenominator);
      }
      set_slab(*stand.slab, chosen, stretch.part(chosen.most_stretch));
    }
    out_.used += page.height;
    out_.free_on_last_page = std::max(Length(), out_.page_height - page.height);
  }

  /// What part of all that could be stretched is.
  struct Stretch {
    Length spare;
    Length most;
    Length part(Length of) const {
      if (most <= Length()) return {};
      if (spare >= most) return of;
      return Length::millipoints(of.in_millipoints() * spare.in_millipoints() /
                                 most.in_millipoints());
    }
  };

  // A gap grows by half of itself at most: more, and pages beside each other differ in rhythm.
  static constexpr std::int64_t kGapNumerator = 1;
  static constexpr std::int64_t kGapDenominator = 2;

  // Not between what belongs together.
  bool stretches(const PlannedPage& page, std::size_t i) const {
    if (i == 0) return false;
    const auto& before = page.pieces[i - 1];
    return !places_[before.place].ways[before.way].keep_with_next;
  }

  Stretch stretch_of(const PlannedPage& page) const {
    Stretch out{out_.page_height - page.height, {}};
    for (std::size_t i = 0; i < page.pieces.size(); ++i) {
      const Stand& stand = stands_[page.pieces[i].place];
      out.most += stand.ways[page.pieces[i].way].most_stretch;
      if (stretches(page, i))
        out.most += stand.slab->space_before * kGapNumerator / kGapDenominator;
    }
    if (out.spare <= Length()) return {};
    return out;
  }

  void set_slab(const Slab& slab, const Ready& ready, Length higher) {
    out_.problems.insert(out_.problems.end(), ready.problems.begin(), ready.problems.end());
    if (ready.height > out_.page_height) out_.too_tall.push_back(slab.origin);
    if (slab.at_foot) y_ = std::max(y_, bottom_ - ready.height);
    const auto enter = [&](OutlineEntry entry, Length y) {
      entry.page = out_.list.pages.size() - 1;
      entry.y = y;
      out_.list.outline.push_back(std::move(entry));
    };
    if (slab.outline) enter(*slab.outline, y_);
    for (const InnerOutline& one : slab.inner) enter(one.entry, y_ + one.below);
    put(*ready.block, higher > Length() ? ready.height + higher : Length());
  }

  // Its problems were noted when it was measured.
  void put(const Block& block, Length least_height = {}) {
    Fragment made = Layout(typesetter_).place(block, width_, least_height);
    append_moved(out_.list.pages.back().items, std::move(made.items), flow_.margins.left, y_);
    y_ += made.size.height;
  }

  void start_page() {
    out_.list.pages.push_back({flow_.paper, {}});
    y_ = flow_.margins.top;
  }

  void set_feet() {
    if (!flow_.foot) return;
    const std::size_t pages = out_.list.pages.size();
    for (std::size_t i = 0; i < pages; ++i) {
      const Block foot = flow_.foot(i, pages);
      Layout layout(typesetter_);
      Fragment made = layout.place(foot, width_);
      if (i == 0)
        out_.problems.insert(out_.problems.end(), layout.problems().begin(),
                             layout.problems().end());
      append_moved(out_.list.pages[i].items, std::move(made.items), flow_.margins.left,
                   flow_.paper.height - flow_.margins.bottom - foot_height_);
    }
  }

  std::vector<NodeRange> not_chosen() const {
    std::vector<NodeRange> out;
    for (const Stand& stand : stands_) {
      for (const Ready& way : stand.ways) {
        if (!way.chosen && way.nodes.begin < way.nodes.end) out.push_back(way.nodes);
      }
    }
    return out;
  }

  Flow& flow_;
  type::Typesetter& typesetter_;
  std::vector<Place> places_;
  std::vector<Stand> stands_;  // of each place
  Composed out_;
  Length width_;
  Length foot_height_;
  Length bottom_;
  Length y_;
};

}  // namespace

std::vector<ChosenWay> choose_ways(Flow flow, type::Typesetter& typesetter) {
  return Paginator(flow, typesetter).choose();
}

Composed compose(Flow flow, type::Typesetter& typesetter) {
  return Paginator(flow, typesetter).run();
}

void report(const Composed& composed, const std::string& sheet_name, Diagnostics& diagnostics,
            const Span& fallback) {
  const auto place = [&](const Span& origin) { return origin ? origin : fallback; };
  for (const Span& origin : composed.too_tall) {
    diagnostics.error("text-overflow", place(origin),
                      fmt::format("this does not fit on one page of the {}", sheet_name),
                      "shorten its cues and notes, or print on larger paper");
  }
  std::set<std::string> told;  // scripts; a script is missing as a whole
  for (const type::TextProblem& problem : composed.problems) {
    if (problem.kind == type::TextProblem::Kind::kCutWord) {
      diagnostics.warning(
          "text-overflow", place(problem.origin),
          fmt::format("‘{}’ is wider than its column on the {} and was cut", problem.text,
                      sheet_name),
          "write it as shorter words, or put a space or a hyphen where it may break");
      continue;
    }
    const char32_t code = problem.text.empty() ? 0xFFFD : decode_utf8(problem.text, 0).code;
    const std::string character =
        fmt::format("‘{}’ (U+{:04X})", problem.text, static_cast<std::uint32_t>(code));
    if (problem.script.empty()) {
      diagnostics.warning("missing-glyph", place(problem.origin),
                          fmt::format("no font of the {} has the character {}; a box is printed in "
                                      "its place",
                                      sheet_name, character),
                          "write it in words, or leave it out");
    } else if (told.insert(problem.script).second) {
      diagnostics.warning(
          "missing-glyph", place(problem.origin),
          fmt::format("no font of the {} has the {} character {}; a box is printed in the place of "
                      "each that is missing",
                      sheet_name, problem.script, character),
          fmt::format("add a font for {} to fonts/catalogue.yaml, or write it in other letters",
                      problem.script));
    }
  }
}

}  // namespace chalkleaf::page
