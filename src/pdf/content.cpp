#include "pdf/content.h"

#include <algorithm>

#include "pdf/paths.h"
#include "pdf/syntax.h"
#include "pdf/text_use.h"

namespace chalkleaf::pdf {
namespace {

using page::Item;
using page::Owner;
using page::PathItem;
using page::PathStep;
using page::PictureItem;
using page::TextItem;

// A letter is moved only when it is off by this much (in ten-thousandths of the em), so that
// rounding alone never moves one: 0.015 pt at 10 pt.
constexpr std::int64_t kLeastMove = 15;

bool is_empty(const Item& item) {
  if (const auto* text = std::get_if<TextItem>(&item)) return text->glyphs.empty();
  if (std::holds_alternative<PictureItem>(item) || std::holds_alternative<page::ArtItem>(item))
    return false;
  const auto& path = std::get<PathItem>(item);
  return path.steps.empty() || (!path.fill && !path.stroke);
}

// A figure tells where it stands; a link is pressed there.
bool needs_box(page::Role role) { return role == page::Role::kFigure || role == page::Role::kLink; }

class PageWriter {
 public:
  PageWriter(const page::DisplayList& list, std::size_t page, const FontTable& fonts,
             const PictureTable& pictures, const ArtworkTable& artworks, Marks& marks)
      : list_(list),
        page_(list.pages[page]),
        page_number_(page),
        fonts_(fonts),
        pictures_(pictures),
        artworks_(artworks),
        marks_(marks),
        numbers_(marks.of_page.emplace_back()),
        paths_(out_, page_.size.height, PathWriter::Begins::kAsAPage) {}

  std::string write() {
    for (std::size_t i = 0; i < page_.items.size(); ++i) {
      const Item& item = page_.items[i];
      if (is_empty(item)) continue;
      enter(i);
      if (const auto* text = std::get_if<TextItem>(&item)) {
        write_text(*text);
      } else if (const auto* picture = std::get_if<PictureItem>(&item)) {
        end_text();
        write_picture(*picture);
      } else if (const auto* art = std::get_if<page::ArtItem>(&item)) {
        end_text();
        write_art(*art);
      } else {
        end_text();
        paths_.write(std::get<PathItem>(item));
      }
    }
    leave();
    return std::move(out_);
  }

 private:
  // --- marked content -------------------------------------------------------------------------

  void enter(std::size_t index) {
    const Owner& owner = owner_of(page_.items[index]);
    if (open_ && *open_ != owner) leave();
    if (!open_) {
      open_ = owner;
      if (owner.node) {
        begin_node(*owner.node);
      } else {
        begin_artifact(index);
      }
    }
    if (owner.node && needs_box(list_.tree[*owner.node].role)) {
      add_to_box(page_.items[index], marks_.boxes[*owner.node]);
    }
  }

  void begin_node(page::NodeId node) {
    const auto number = static_cast<int>(numbers_.size());
    numbers_.push_back(node);
    marks_.of_node[node].push_back({page_number_, number});
    out_ += '/';
    out_ += role_name(list_.tree[node].role);
    out_ += " <</MCID ";
    append_int(out_, number);
    out_ += ">> BDC\n";
  }

  // ISO 32000-1, 14.8.2.2.
  void begin_artifact(std::size_t index) {
    switch (open_->artifact) {
      case page::Artifact::kLayout:
        out_ += "/Artifact <</Type /Layout>> BDC\n";
        return;
      case page::Artifact::kHeader:
        out_ += "/Artifact <</Type /Pagination /Subtype /Header>> BDC\n";
        return;
      case page::Artifact::kFooter:
        out_ += "/Artifact <</Type /Pagination /Subtype /Footer>> BDC\n";
        return;
      case page::Artifact::kBackground:
        break;
    }
    MarkBox box;  // table 330 asks for it with backgrounds
    for (; index < page_.items.size() && owner_of(page_.items[index]) == *open_; ++index) {
      if (!is_empty(page_.items[index])) add_to_box(page_.items[index], box);
    }
    out_ += "/Artifact <</Type /Background /BBox [";
    for (const Length edge : {box.left, box.bottom, box.right, box.top}) number(edge);
    out_.back() = ']';
    out_ += ">> BDC\n";
  }

  void leave() {
    end_text();
    if (open_) out_ += "EMC\n";
    open_.reset();
  }

  void add_to_box(const Item& item, MarkBox& box) const {
    if (const auto* text = std::get_if<TextItem>(&item)) {
      const type::Face& face = *fonts_.face(text->face).face;
      const auto scaled = [&](std::int64_t units) {
        return Length::millipoints(
            rounded_quotient(units * text->size.in_millipoints(), face.units_per_em()));
      };
      std::int64_t advance = 0;
      for (const type::Glyph& glyph : text->glyphs) advance += glyph.advance;
      const Length y = flipped(text->baseline.y);
      box.add(page_number_, text->baseline.x, y + scaled(face.descender()));
      box.add(page_number_, text->baseline.x + scaled(advance), y + scaled(face.ascender()));
      return;
    }
    if (const auto* picture = std::get_if<PictureItem>(&item)) {
      box.add(page_number_, picture->place.x, flipped(picture->place.bottom()));
      box.add(page_number_, picture->place.right(), flipped(picture->place.y));
      return;
    }
    if (const auto* art = std::get_if<page::ArtItem>(&item)) {
      box.add(page_number_, art->place.x, flipped(art->place.bottom()));
      box.add(page_number_, art->place.right(), flipped(art->place.y));
      return;
    }
    const auto& path = std::get<PathItem>(item);
    const Length edge = path.stroke ? path.stroke->width / 2 : Length();
    const auto add = [&](Point p) {
      box.add(page_number_, p.x - edge, flipped(p.y) - edge);
      box.add(page_number_, p.x + edge, flipped(p.y) + edge);
    };
    for (const PathStep& step : path.steps) {
      if (step.kind == PathStep::Kind::kClose) continue;
      add(step.a);
      if (step.kind != PathStep::Kind::kCurve) continue;
      add(step.b);
      add(step.c);
    }
  }

  // --- text -----------------------------------------------------------------------------------

  void begin_text() {
    if (in_text_) return;
    out_ += "BT\n";
    in_text_ = true;
    line_start_ = Point();
  }

  void end_text() {
    if (!in_text_) return;
    out_ += "ET\n";
    in_text_ = false;
  }

  void write_text(const TextItem& item) {
    const FaceUse& use = fonts_.face(item.face);
    set_fill(item.colour);
    begin_text();
    if (font_ != &use || font_size_ != item.size) {
      out_ += '/';
      out_ += use.name;
      out_ += ' ';
      number(item.size);
      out_ += "Tf\n";
      font_ = &use;
      font_size_ = item.size;
    }
    const Point start{item.baseline.x, flipped(item.baseline.y)};
    number(start.x - line_start_.x);
    number(start.y - line_start_.y);
    out_ += "Td\n";
    line_start_ = start;
    write_glyphs(item, use);
  }

  // Two pens, in ten-thousandths of the em: where the letters belong, and where a reader that adds
  // whole widths has come to. The difference is written, in whole thousandths, once it can
  // be seen.
  void write_glyphs(const TextItem& item, const FaceUse& use) {
    const std::int64_t em = use.face->units_per_em();
    std::int64_t wanted = 0;  // in font units
    std::int64_t reached = 0;
    Length rise;
    for (const Cluster& cluster : clusters_of(item)) {
      const type::Glyph* glyphs = item.glyphs.data() + cluster.first;
      // The codes say it themselves when one glyph stands for what its code reads as.
      const std::u16string text = readable(cluster.text);
      const bool spoken = cluster.count == 1 && use.use(glyphs[0].id).text == text;
      if (!spoken) {
        end_show();
        out_ += "/Span <</ActualText <FEFF";
        append_utf16_hex(out_, text);
        out_ += ">>> BDC\n";
      }
      for (std::size_t i = 0; i < cluster.count; ++i) {
        const type::Glyph& glyph = glyphs[i];
        const GlyphUse& drawn = use.use(glyph.id);
        const Length up =
            Length::millipoints(rounded_quotient(glyph.dy * item.size.in_millipoints(), em));
        if (up != rise) {
          end_show();
          number(up);
          out_ += "Ts\n";
          rise = up;
        }
        const std::int64_t move = rounded_quotient((wanted + glyph.dx) * 10'000, em) - reached;
        if (move >= kLeastMove || move <= -kLeastMove) {
          const std::int64_t whole = rounded_quotient(move, 10) * 10;
          show_move(-whole);
          reached += whole;
        }
        show_code(drawn.code);
        reached += drawn.width * 10LL;
        wanted += glyph.advance;
      }
      if (!spoken) {
        end_show();
        out_ += "EMC\n";
      }
    }
    end_show();
    if (rise != Length()) out_ += "0 Ts\n";
  }

  // The parts of [<...> move <...>] TJ.
  void show_code(std::uint16_t code) {
    if (!showing_) out_ += '[';
    if (!in_codes_) out_ += '<';
    showing_ = in_codes_ = true;
    append_hex_16(out_, code);
  }
  void show_move(std::int64_t ten_thousandths) {
    if (!showing_) out_ += '[';
    if (in_codes_) out_ += '>';
    showing_ = true;
    in_codes_ = false;
    append_thousandths(out_, ten_thousandths * 100);
  }
  void end_show() {
    if (!showing_) return;
    out_ += in_codes_ ? ">] TJ\n" : "] TJ\n";
    showing_ = in_codes_ = false;
  }

  // --- paths and pictures ---------------------------------------------------------------------

  // A picture fills the unit square (8.9.5.1), which is stretched to its box.
  void write_picture(const PictureItem& item) {
    out_ += "q ";
    number(item.place.width);
    out_ += "0 0 ";
    number(item.place.height);
    number(item.place.x);
    number(flipped(item.place.bottom()));
    out_ += "cm /" + pictures_.name(item) + " Do Q\n";
  }

  // An artwork keeps its own measures, which are stretched to its box.
  void write_art(const page::ArtItem& item) {
    const Size size = item.art->size();
    out_ += "q ";
    append_ratio(out_, item.place.width, size.width);
    out_ += " 0 0 ";
    append_ratio(out_, item.place.height, size.height);
    out_ += ' ';
    number(item.place.x);
    number(flipped(item.place.bottom()));
    out_ += "cm /" + artworks_.name(item) + " Do Q\n";
  }

  void set_fill(Colour colour) { paths_.set_fill(colour); }

  void number(Length length) {
    append_length(out_, length);
    out_ += ' ';
  }
  Length flipped(Length y) const { return page_.size.height - y; }

  const page::DisplayList& list_;
  const page::Page& page_;
  std::size_t page_number_;
  const FontTable& fonts_;
  const PictureTable& pictures_;
  const ArtworkTable& artworks_;
  Marks& marks_;
  std::vector<page::NodeId>& numbers_;
  std::string out_;
  std::optional<Owner> open_;
  bool in_text_ = false;
  bool showing_ = false;
  bool in_codes_ = false;
  Point line_start_;
  const FaceUse* font_ = nullptr;
  Length font_size_;
  PathWriter paths_;
};

}  // namespace

std::string page_content(const page::DisplayList& list, std::size_t page, const FontTable& fonts,
                         const PictureTable& pictures, const ArtworkTable& artworks, Marks& marks) {
  return PageWriter(list, page, fonts, pictures, artworks, marks).write();
}

}  // namespace chalkleaf::pdf
