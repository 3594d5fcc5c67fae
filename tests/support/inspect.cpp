#include "support/inspect.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace chalkleaf::page {
namespace {

const Length kTouch = Length::millipoints(500);

enum class Thing { kText, kBox, kFigure, kLine };

/// Something on a page, and its box.
struct Mark {
  Thing thing = Thing::kText;
  Owner owner;
  Rect box;
  std::string what;
};

Rect around(Point a, Point b) {
  const Length x = std::min(a.x, b.x);
  const Length y = std::min(a.y, b.y);
  return {x, y, std::max(a.x, b.x) - x, std::max(a.y, b.y) - y};
}

Rect joined(const Rect& a, const Rect& b) {
  return around({std::min(a.x, b.x), std::min(a.y, b.y)},
                {std::max(a.right(), b.right()), std::max(a.bottom(), b.bottom())});
}

Rect common(const Rect& a, const Rect& b) {
  const Length x = std::max(a.x, b.x);
  const Length y = std::max(a.y, b.y);
  return {x, y, std::min(a.right(), b.right()) - x, std::min(a.bottom(), b.bottom()) - y};
}

// Of a straight line one side is nothing: there the other thing must reach over it on both sides.
bool lie_on_each_other(const Mark& a, const Mark& b) {
  const auto over = [](Length a_begin, Length a_end, Length b_begin, Length b_end) {
    return std::min(a_end, b_end) - std::max(a_begin, b_begin);
  };
  const auto enough = [](Length overlap, Length a_size, Length b_size) {
    const bool thin = a_size < kTouch * 2 || b_size < kTouch * 2;
    return thin ? overlap >= std::min(a_size, b_size) : overlap > kTouch;
  };
  Rect larger = a.box;  // a line must lie inside by more than a touch
  Rect smaller = b.box;
  if (a.thing == Thing::kLine) std::swap(larger, smaller);
  if (a.thing == Thing::kLine || b.thing == Thing::kLine) {
    larger = {larger.x + kTouch, larger.y + kTouch, larger.width - kTouch * 2,
              larger.height - kTouch * 2};
    if (larger.width <= Length() || larger.height <= Length()) return false;
  }
  return enough(over(larger.x, larger.right(), smaller.x, smaller.right()), larger.width,
                smaller.width) &&
         enough(over(larger.y, larger.bottom(), smaller.y, smaller.bottom()), larger.height,
                smaller.height);
}

class PageInspector {
 public:
  PageInspector(const DisplayList& list, const type::Fonts& fonts, const Insets& margins)
      : list_(list), fonts_(fonts), margins_(margins) {}

  std::vector<Flaw> run() {
    for (std::size_t p = 0; p < list_.pages.size(); ++p) {
      page_ = p;
      gather(list_.pages[p]);
      compare();
    }
    return std::move(flaws_);
  }

 private:
  void gather(const Page& page) {
    marks_.clear();
    std::map<NodeId, std::size_t> wholes;  // of the paths that are one figure or box
    for (const Item& item : page.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) {
        // A space at a line's end has no ink.
        if (text->text.find_first_not_of(" \u00A0\u2002") == std::string::npos) continue;
        add({Thing::kText, text->owner, box_of(*text), "‘" + text->text + "’"}, page);
      } else if (const auto* picture = std::get_if<PictureItem>(&item)) {
        add({Thing::kFigure, picture->owner, picture->place, "a picture"}, page);
      } else if (const auto* art = std::get_if<ArtItem>(&item)) {
        add({Thing::kFigure, art->owner, art->place, "a figure"}, page);
      } else {
        gather_path(std::get<PathItem>(item), page, wholes);
      }
    }
  }

  void gather_path(const PathItem& path, const Page& page, std::map<NodeId, std::size_t>& wholes) {
    const auto box = box_of(path);
    if (!box) return;
    const Role role = path.owner.node ? list_.tree.at(*path.owner.node).role : Role::kDocument;
    if (role == Role::kFigure || role == Role::kForm) {
      const auto [at, is_new] = wholes.try_emplace(*path.owner.node, marks_.size());
      const bool form = role == Role::kForm;
      if (is_new) {
        marks_.push_back(
            {form ? Thing::kBox : Thing::kFigure, path.owner, *box, form ? "a box" : "a figure"});
      } else {
        marks_[at->second].box = joined(marks_[at->second].box, *box);
      }
      check_margin(marks_[at->second], page);
      return;
    }
    check_margin({Thing::kLine, path.owner, *box, "a line"}, page);
    if (!path.stroke || path.owner.artifact == Artifact::kBackground) return;
    // The straight pieces of frames and rules; corners are too short to matter.
    Point from;
    Point first;
    for (const PathStep& step : path.steps) {
      Point to = step.kind == PathStep::Kind::kCurve ? step.c : step.a;
      if (step.kind == PathStep::Kind::kClose) to = first;
      const bool straight =
          step.kind == PathStep::Kind::kLine || step.kind == PathStep::Kind::kClose;
      if (straight && (from.x == to.x || from.y == to.y) && !(from == to))
        marks_.push_back({Thing::kLine, path.owner, around(from, to), "a line"});
      if (step.kind == PathStep::Kind::kMove) first = to;
      from = to;
    }
  }

  Rect box_of(const TextItem& text) const {
    const type::Face* face = fonts_.face(text.face);
    const double em = face == nullptr ? 1000.0 : static_cast<double>(face->units_per_em());
    const auto scaled = [&](double units) { return text.size.scaled(units / em); };
    std::int64_t width = 0;
    for (const type::Glyph& glyph : text.glyphs) width += glyph.advance;
    // A space at its end is not seen.
    if (face != nullptr && !text.glyphs.empty() && text.text.back() == ' ')
      width -= text.glyphs.back().advance;
    const double capitals = face == nullptr ? em * 0.7 : face->cap_height();
    // Line metrics leave room for accents that few glyphs need; letters go a quarter below at most.
    const double descent = face == nullptr ? em / 4 : std::min<double>(-face->descender(), em / 4);
    const Length above = scaled(capitals);
    return {text.baseline.x, text.baseline.y - above, scaled(static_cast<double>(width)),
            above + scaled(descent)};
  }

  static std::optional<Rect> box_of(const PathItem& path) {
    std::optional<Rect> out;
    const auto take = [&](Point p) {
      const Rect here{p.x, p.y, {}, {}};
      out = out ? joined(*out, here) : here;
    };
    for (const PathStep& step : path.steps) {
      if (step.kind == PathStep::Kind::kClose) continue;
      take(step.a);
      if (step.kind != PathStep::Kind::kCurve) continue;
      take(step.b);  // the box of the control points holds the curve
      take(step.c);
    }
    return out;
  }

  void add(Mark mark, const Page& page) {
    const bool blank = mark.thing == Thing::kText && mark.box.width <= Length();
    if (blank) return;
    check_margin(mark, page);
    marks_.push_back(std::move(mark));
  }

  void check_margin(const Mark& mark, const Page& page) {
    const bool outside = mark.box.x < margins_.left - kTouch ||
                         mark.box.y < margins_.top - kTouch ||
                         mark.box.right() > page.size.width - margins_.right + kTouch ||
                         mark.box.bottom() > page.size.height - margins_.bottom + kTouch;
    if (outside) flaws_.push_back({Flaw::Kind::kInMargin, page_, mark.box, mark.what});
  }

  // From the top of the page down: only what begins above another's end can lie on it.
  void compare() {
    std::stable_sort(marks_.begin(), marks_.end(),
                     [](const Mark& a, const Mark& b) { return a.box.y < b.box.y; });
    for (std::size_t i = 0; i < marks_.size(); ++i) {
      for (std::size_t j = i + 1; j < marks_.size(); ++j) {
        if (marks_[j].box.y > marks_[i].box.bottom()) break;
        compare(marks_[i], marks_[j]);
      }
    }
  }

  void compare(const Mark& a, const Mark& b) {
    const auto both = [&](Thing x, Thing y) {
      return (a.thing == x && b.thing == y) || (a.thing == y && b.thing == x);
    };
    if (both(Thing::kLine, Thing::kLine)) return;
    const bool one_thing = a.owner.node && a.owner == b.owner;
    if (one_thing && !both(Thing::kText, Thing::kText)) return;
    if (!lie_on_each_other(a, b)) return;
    if (both(Thing::kText, Thing::kBox) && is_letter_in(a, b)) return;
    Flaw flaw;
    if (both(Thing::kText, Thing::kText)) {
      flaw.kind = Flaw::Kind::kTextOnText;
    } else if (both(Thing::kText, Thing::kFigure)) {
      flaw.kind = Flaw::Kind::kTextOnFigure;
    } else if (both(Thing::kText, Thing::kBox)) {
      flaw.kind = Flaw::Kind::kTextOnBox;
    } else if (both(Thing::kText, Thing::kLine)) {
      flaw.kind = Flaw::Kind::kTextOnLine;
    } else if (a.thing == Thing::kLine || b.thing == Thing::kLine) {
      flaw.kind = Flaw::Kind::kFigureOnLine;
    } else {
      flaw.kind = Flaw::Kind::kBoxOnBox;
    }
    flaw.page = page_;
    flaw.place = common(a.box, b.box);
    flaw.what = a.what + ", " + b.what;
    flaws_.push_back(std::move(flaw));
  }

  // The letter of a day stands inside its box to tick: one letter or two, with room to cross it.
  static bool is_letter_in(const Mark& a, const Mark& b) {
    const Mark& text = a.thing == Thing::kText ? a : b;
    const Mark& box = a.thing == Thing::kText ? b : a;
    const Length x = text.box.x + text.box.width / 2;
    const Length y = text.box.y + text.box.height / 2;
    return text.what.size() <= std::string_view("‘Mo’").size() && x >= box.box.x &&
           x <= box.box.right() && y >= box.box.y && y <= box.box.bottom();
  }

  const DisplayList& list_;
  const type::Fonts& fonts_;
  Insets margins_;
  std::size_t page_ = 0;
  std::vector<Mark> marks_;
  std::vector<Flaw> flaws_;
};

std::string_view name_of(Flaw::Kind kind) {
  switch (kind) {
    case Flaw::Kind::kTextOnText:
      return "text on text";
    case Flaw::Kind::kTextOnFigure:
      return "text on a figure";
    case Flaw::Kind::kTextOnBox:
      return "text on a box";
    case Flaw::Kind::kTextOnLine:
      return "text on a line";
    case Flaw::Kind::kBoxOnBox:
      return "one box on another";
    case Flaw::Kind::kFigureOnLine:
      return "a figure or box on a line";
    case Flaw::Kind::kInMargin:
      break;
  }
  return "in the margin";
}

}  // namespace

std::vector<Flaw> inspect(const DisplayList& list, const type::Fonts& fonts,
                          const Insets& margins) {
  return PageInspector(list, fonts, margins).run();
}

std::string describe(const Flaw& flaw) {
  return fmt::format("page {} at {:.1f},{:.1f} pt: {}: {}", flaw.page + 1, flaw.place.x.in_pt(),
                     flaw.place.y.in_pt(), name_of(flaw.kind), flaw.what);
}

}  // namespace chalkleaf::page
