#include "page/layout.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

#include "page/shapes.h"

namespace chalkleaf::page {
namespace {

Owner owner_of(const TextBlock& block, std::size_t piece) {
  Owner out = block.owner;
  for (const PieceOwner& one : block.owners) {
    if (one.piece <= piece) out = one.owner;
  }
  return out;
}

Length aligned_offset(Align align, Length room) {
  if (align == Align::kCentre) return room / 2;
  return align == Align::kEnd ? room : Length();
}

}  // namespace

void move_by(Item& item, Length dx, Length dy) {
  const auto move_point = [&](Point& p) {
    p.x += dx;
    p.y += dy;
  };
  if (auto* text = std::get_if<TextItem>(&item)) {
    move_point(text->baseline);
  } else if (auto* picture = std::get_if<PictureItem>(&item)) {
    picture->place.x += dx;
    picture->place.y += dy;
  } else if (auto* art = std::get_if<ArtItem>(&item)) {
    art->place.x += dx;
    art->place.y += dy;
  } else {
    for (PathStep& step : std::get<PathItem>(item).steps) {
      move_point(step.a);
      move_point(step.b);
      move_point(step.c);
    }
  }
}

void append_moved(std::vector<Item>& to, std::vector<Item>&& from, Length dx, Length dy) {
  for (Item& item : from) move_by(item, dx, dy);
  if (to.empty()) {
    to = std::move(from);  // a box in a box in a box hands on the same items
  } else {
    to.insert(to.end(), std::move_iterator(from.begin()), std::move_iterator(from.end()));
  }
}

Fragment Layout::measure(const Block& block, Length width, Length least_height) {
  const bool before = std::exchange(measuring_, true);
  Fragment out = place(block, width, least_height);
  measuring_ = before;
  return out;
}

Fragment Layout::place(const Block& block, Length width, Length least_height) {
  struct Visitor {
    Layout& layout;
    Length width;
    Length least_height;
    Fragment operator()(const TextBlock& b) { return layout.place_text(b, width); }
    Fragment operator()(const StackBlock& b) { return layout.place_stack(b, width, least_height); }
    Fragment operator()(const RowBlock& b) { return layout.place_row(b, width, least_height); }
    Fragment operator()(const WrapBlock& b) { return layout.place_wrap(b, width); }
    Fragment operator()(const AroundBlock& b) { return layout.place_around(b, width); }
    Fragment operator()(const BoxBlock& b) { return layout.place_box(b, width, least_height); }
    Fragment operator()(const DrawingBlock& b) {
      Fragment out{b.size, b.baseline > Length() ? b.baseline : b.size.height, {}};
      if (!layout.measuring_) out.items.assign(b.paths.begin(), b.paths.end());
      out.last_baseline = out.baseline;
      return out;
    }
    Fragment operator()(const PictureBlock& b) { return layout.place_picture(b, width); }
    Fragment operator()(const ArtBlock& b) {
      Fragment out{b.size, b.size.height, {}, b.size.height};
      if (layout.measuring_) return out;
      out.items.emplace_back(ArtItem{b.owner, {{}, {}, b.size.width, b.size.height}, b.art});
      return out;
    }
    Fragment operator()(const SpaceBlock& b) { return {{width, b.height}, b.height, {}, b.height}; }
  };
  return std::visit(Visitor{*this, width, least_height}, block.content);
}

Fragment Layout::place_text(const TextBlock& block, Length width) {
  const std::shared_ptr<const type::Paragraph> set = typesetter_.set_once(block.text, width);
  problems_.insert(problems_.end(), set->problems.begin(), set->problems.end());
  return place_lines(block, *set, set->lines.size(), width);
}

Fragment Layout::place_lines(const TextBlock& block, const type::Paragraph& set, std::size_t count,
                             Length width) const {
  Fragment out{{width, Length()}, Length(), {}};
  for (std::size_t i = 0; i < count; ++i) {
    const type::Line& line = set.lines[i];
    // The line's height is the leading; what its type leaves of it goes half above and half below.
    const Length half = (block.leading - line.ascent - line.descent) / 2;
    const Length baseline = out.size.height + half + line.ascent;
    if (out.size.height == Length()) out.baseline = baseline;
    out.last_baseline = baseline;
    out.size.height += block.leading;
    if (measuring_) continue;
    const Length indent = aligned_offset(block.align, width - line.width);
    for (const type::Fragment& fragment : line.fragments) {
      const bool is_last = &fragment == &line.fragments.back();
      if (is_last && block.text[fragment.inline_index].text == kSeparator) continue;
      bool is_room = false;
      for (const Inlaid& other : block.inlaid) {
        if (other.piece != fragment.inline_index) continue;
        is_room = true;
        for (const PathItem& path : other.drawing.paths) {
          out.items.emplace_back(path);
          move_by(out.items.back(), indent + fragment.x, baseline - other.drawing.baseline);
        }
      }
      if (is_room) continue;  // spaces, with a drawing on them
      TextItem item;
      item.owner = block.owners.empty() ? block.owner : owner_of(block, fragment.inline_index);
      item.face = fragment.face;
      item.size = fragment.size;
      item.colour = fragment.colour;
      item.baseline = {indent + fragment.x, baseline};
      item.text = fragment.text;
      item.glyphs = fragment.glyphs;
      for (const ReadAs& other : block.read_as) {
        if (other.piece != fragment.inline_index) continue;
        item.text = other.words;
        for (type::Glyph& glyph : item.glyphs) glyph.cluster = 0;
      }
      out.items.emplace_back(std::move(item));
    }
  }
  return out;
}

// ---- around a figure

namespace {

// What of a paragraph its first `count` lines leave, in the same pieces; nothing where the lines do
// not say it (a letter was replaced).
std::optional<TextBlock> rest_of(const TextBlock& block, const type::Paragraph& set,
                                 std::size_t count) {
  std::vector<std::size_t> used(block.text.size());
  for (std::size_t i = 0; i < count; ++i) {
    for (const type::Fragment& fragment : set.lines[i].fragments) {
      const std::string& whole = block.text[fragment.inline_index].text;
      std::size_t& at = used[fragment.inline_index];
      if (whole.compare(at, fragment.text.size(), fragment.text) != 0) return std::nullopt;
      at += fragment.text.size();
    }
  }
  TextBlock out = block;
  out.text.clear();
  out.read_as.clear();
  out.owners.clear();
  out.inlaid.clear();
  for (std::size_t i = 0; i < block.text.size(); ++i) {
    if (used[i] == block.text[i].text.size()) continue;
    for (const ReadAs& other : block.read_as) {
      if (other.piece == i) out.read_as.push_back({out.text.size(), other.words});
    }
    if (!block.owners.empty()) out.owners.push_back({out.text.size(), owner_of(block, i)});
    for (const Inlaid& other : block.inlaid) {
      if (other.piece == i && used[i] == 0) out.inlaid.push_back({out.text.size(), other.drawing});
    }
    out.text.push_back(block.text[i]);
    out.text.back().text.erase(0, used[i]);
  }
  return out;
}

}  // namespace

// The lines that begin above the figure's foot stand beside it; the others are broken anew over the
// whole width.
Fragment Layout::place_text_around(const TextBlock& block, Length beside, Length width,
                                   Length room) {
  const std::shared_ptr<const type::Paragraph> set = typesetter_.set_once(block.text, beside);
  const std::int64_t leading = std::max<std::int64_t>(1, block.leading.in_millipoints());
  const auto most = static_cast<std::size_t>((room.in_millipoints() + leading - 1) / leading);
  std::optional<TextBlock> rest;
  if (set->lines.size() > most) rest = rest_of(block, *set, most);
  problems_.insert(problems_.end(), set->problems.begin(), set->problems.end());
  Fragment out = place_lines(block, *set, rest ? most : set->lines.size(), beside);
  for (Item& item : out.items) move_by(item, width - beside, Length());
  out.size.width = width;
  if (!rest || rest->text.empty()) return out;
  Fragment below = place_text(*rest, width);
  const Length y = out.size.height;
  out.last_baseline = y + below.last_baseline;
  out.size.height += below.size.height;
  append_moved(out.items, std::move(below.items), Length(), y);
  return out;
}

Fragment Layout::place_around(const AroundBlock& block, Length width) {
  Fragment out{{width, Length()}, Length(), {}};
  Fragment left;
  Length beside = width;
  if (!block.left.empty()) {
    left = place(block.left.front(), block.left_width);
    beside -= block.left_width + block.gap;
  }
  Length y;
  for (std::size_t i = 0; i < block.children.size(); ++i) {
    if (i > 0) y += block.line_gap;
    const Block& child = block.children[i];
    const Length room = left.size.height - y;
    Fragment part;
    if (room <= Length()) {
      part = place(child, width);
    } else if (const auto* text = std::get_if<TextBlock>(&child.content)) {
      part = place_text_around(*text, beside, width, room);
    } else {
      part = place(child, beside);
      for (Item& item : part.items) move_by(item, width - beside, Length());
    }
    if (i == 0) out.baseline = part.baseline;
    out.last_baseline = y + part.last_baseline;
    const Length height = part.size.height;
    const bool left_first = block.left_read == AroundBlock::Read::kFirst;
    if (i == 0 && left_first) append_moved(out.items, std::move(left.items), Length(), Length());
    append_moved(out.items, std::move(part.items), Length(), y);
    if (i == 0 && !left_first) append_moved(out.items, std::move(left.items), Length(), Length());
    y += height;
  }
  out.size.height = std::max(y, left.size.height);
  return out;
}

Fragment Layout::place_stack(const StackBlock& block, Length width, Length least_height) {
  Fragment out{{width, Length()}, Length(), {}};
  std::vector<Fragment> parts;
  parts.reserve(block.children.size());
  for (const Block& child : block.children) parts.push_back(place(child, width));
  Length needed;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    needed += parts[i].size.height + (i > 0 ? block.gap : Length());
  }
  const Length spare = std::max(Length(), least_height - needed);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) out.size.height += block.gap;
    if (block.last_at_bottom && i + 1 == parts.size()) out.size.height += spare;
    if (i == 0) out.baseline = parts[i].baseline;
    const Length y = out.size.height;
    out.last_baseline = y + parts[i].last_baseline;
    out.size.height += parts[i].size.height;
    append_moved(out.items, std::move(parts[i].items), Length(), y);
  }
  return out;
}

std::vector<Length> Layout::track_widths(const RowBlock& block, Length width) {
  std::vector<Length> widths;
  Length left = width;
  std::int64_t shares = 0;
  if (!block.cells.empty()) left -= block.gap * static_cast<std::int64_t>(block.cells.size() - 1);
  for (const RowCell& cell : block.cells) {
    Length w;
    if (cell.track.kind == Track::Kind::kFixed) w = cell.track.length;
    // A natural track never takes what is not there; its text then breaks.
    if (cell.track.kind == Track::Kind::kNatural)
      w = std::min(natural_width(cell.block), std::max(left, Length()));
    if (cell.track.kind == Track::Kind::kFlexible) shares += cell.track.share;
    widths.push_back(w);
    left -= w;
  }
  left = std::max(left, Length());
  for (std::size_t i = 0; i < widths.size(); ++i) {
    const Track& track = block.cells[i].track;
    if (track.kind == Track::Kind::kFlexible && shares > 0) widths[i] = left * track.share / shares;
  }
  return widths;
}

Fragment Layout::place_row(const RowBlock& block, Length width, Length least_height) {
  const std::vector<Length> widths = track_widths(block, width);
  const bool stretch = block.align == RowAlign::kStretch;
  std::vector<Fragment> parts;
  parts.reserve(block.cells.size());
  for (std::size_t i = 0; i < block.cells.size(); ++i) {
    const Block& cell = block.cells[i].block;
    parts.push_back(stretch ? measure(cell, widths[i]) : place(cell, widths[i]));
  }
  // What is brought to one level: the first baselines, the last ones, or simply the tops.
  const auto level = [&](const Fragment& part) {
    if (block.align == RowAlign::kBaseline) return part.baseline;
    return block.align == RowAlign::kLastBaseline ? part.last_baseline : Length();
  };
  Length deepest;
  for (const Fragment& part : parts) deepest = std::max(deepest, level(part));
  Length height = least_height;
  for (const Fragment& part : parts)
    height = std::max(height, deepest - level(part) + part.size.height);
  Fragment out{{width, height}, {}, {}};
  Length x;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (stretch && (!measuring_ || parts[i].size.height < height)) {
      // At its final height; problems were noted when it was measured.
      const std::size_t known = problems_.size();
      parts[i] = place(block.cells[i].block, widths[i], height);
      problems_.resize(known);
    }
    Length y = deepest - level(parts[i]);
    if (block.align == RowAlign::kMiddle) y = (height - parts[i].size.height) / 2;
    if (i == 0) out.baseline = y + parts[i].baseline;
    out.last_baseline = std::max(out.last_baseline, y + parts[i].last_baseline);
    append_moved(out.items, std::move(parts[i].items), x, y);
    x += widths[i] + block.gap;
  }
  return out;
}

Fragment Layout::place_wrap(const WrapBlock& block, Length width) {
  Fragment out{{width, Length()}, Length(), {}};
  std::vector<Fragment> line;
  Length used;
  bool first_line = true;
  const auto finish_line = [&] {
    if (line.empty()) return;
    Length baseline;
    Length height;
    for (const Fragment& part : line) baseline = std::max(baseline, part.baseline);
    for (const Fragment& part : line)
      height = std::max(height, baseline - part.baseline + part.size.height);
    if (first_line) {
      out.baseline = baseline;
    } else {
      out.size.height += block.line_gap;
    }
    Length x = aligned_offset(block.align, width - used);
    for (Fragment& part : line) {
      const Length y = out.size.height + baseline - part.baseline;
      out.last_baseline = y + part.last_baseline;
      const Length step = part.size.width + block.gap;
      append_moved(out.items, std::move(part.items), x, y);
      x += step;
    }
    out.size.height += height;
    first_line = false;
    line.clear();
    used = Length();
  };
  for (const Block& child : block.children) {
    const Length wanted = std::min(natural_width(child), width);
    const Length with_gap = line.empty() ? wanted : used + block.gap + wanted;
    if (with_gap > width) finish_line();
    Fragment part = place(child, wanted);
    part.size.width = wanted;
    used = line.empty() ? wanted : used + block.gap + wanted;
    line.push_back(std::move(part));
  }
  finish_line();
  return out;
}

Fragment Layout::place_picture(const PictureBlock& block, Length width) const {
  Size size = block.size;
  if (size.width > width) {
    const std::int64_t room = std::max<std::int64_t>(width.in_millipoints(), 0);
    size.height = size.height * room / size.width.in_millipoints();
    size.width = Length::millipoints(room);
  }
  Fragment out{{width, size.height}, size.height, {}, size.height};
  if (measuring_) return out;
  out.items.emplace_back(PictureItem{
      block.owner,
      {aligned_offset(block.align, width - size.width), Length(), size.width, size.height},
      block.source,
      nullptr});
  return out;
}

Fragment Layout::place_box(const BoxBlock& block, Length width, Length least_height) {
  const Insets& pad = block.padding;
  Fragment inner;
  if (!block.content.empty()) {
    inner = place(block.content.front(), width - pad.left - pad.right,
                  least_height - pad.top - pad.bottom);
  }
  const Length height = std::max(inner.size.height + pad.top + pad.bottom, least_height);
  Fragment out{{width, height}, inner.baseline + pad.top, {}, inner.last_baseline + pad.top};
  if (!measuring_ && (block.fill || block.border)) {
    // A border's line lies inside the box's edge, so that boxes side by side align.
    const Length half = block.border ? block.border->width / 2 : Length();
    PathItem frame;
    frame.owner = Owner::none(block.border ? Artifact::kLayout : Artifact::kBackground);
    frame.steps =
        rounded_rectangle({half, half, width - half * 2, height - half * 2}, block.radius);
    frame.fill = block.fill;
    frame.stroke = block.border;
    out.items.emplace_back(std::move(frame));
  }
  append_moved(out.items, std::move(inner.items), pad.left, pad.top);
  return out;
}

Length Layout::natural_width(const Block& block) {
  struct Visitor {
    Layout& layout;
    Length operator()(const TextBlock& b) { return layout.typesetter_.natural_width(b.text); }
    Length operator()(const StackBlock& b) {
      Length widest;
      for (const Block& child : b.children) widest = std::max(widest, layout.natural_width(child));
      return widest;
    }
    Length operator()(const RowBlock& b) {
      Length sum;
      for (const RowCell& cell : b.cells) {
        sum += cell.track.kind == Track::Kind::kFixed ? cell.track.length
                                                      : layout.natural_width(cell.block);
      }
      if (!b.cells.empty()) sum += b.gap * static_cast<std::int64_t>(b.cells.size() - 1);
      return sum;
    }
    Length operator()(const WrapBlock& b) {
      Length sum;
      for (const Block& child : b.children) sum += layout.natural_width(child);
      if (!b.children.empty()) sum += b.gap * static_cast<std::int64_t>(b.children.size() - 1);
      return sum;
    }
    Length operator()(const AroundBlock& b) {
      Length widest;
      for (const Block& child : b.children) widest = std::max(widest, layout.natural_width(child));
      return b.left.empty() ? widest : widest + b.left_width + b.gap;
    }
    Length operator()(const BoxBlock& b) {
      const Length inner = b.content.empty() ? Length() : layout.natural_width(b.content.front());
      return inner + b.padding.left + b.padding.right;
    }
    Length operator()(const DrawingBlock& b) { return b.size.width; }
    Length operator()(const PictureBlock& b) { return b.size.width; }
    Length operator()(const ArtBlock& b) { return b.size.width; }
    Length operator()(const SpaceBlock&) { return {}; }
  };
  return std::visit(Visitor{*this}, block.content);
}

}  // namespace chalkleaf::page
