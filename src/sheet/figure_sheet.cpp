#include "sheet/figure_sheet.h"

#include "sheet/builder.h"
#include "sheet/home_boxes.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

// Of the card's figures, so that a person judges what a coach will see.
constexpr Length kGlance = Length::millipoints(39'685);  // 14 mm

// The document's name stands where a session's title does.
plan::Session titled(const std::string& title) {
  plan::Session out;
  out.title.text = title;
  return out;
}

Size fitted(const figure::Scene& scene, Size most) {
  const double width = std::max(scene.box.width(), 0.01);
  const double height = std::max(scene.box.height(), 0.01);
  const double metre = std::min(most.width.in_pt() / width, most.height.in_pt() / height);
  return {Length::pt(width * metre), Length::pt(height * metre)};
}

class FigureWriter {
 public:
  explicit FigureWriter(Builder& builder) : b_(builder) {}

  // ---- one on a page

  page::Section page_of(const ShownFigure& shown, NodeId heading_parent, Role role) {
    page::Section section;
    page::Slab slab;
    std::vector<Block> lines;
    const Owner owner = Owner::of(b_.node(heading_parent, role));
    lines.push_back(b_.text(TextRole::kTitle, shown.name, owner));
    // Rows keep room for their numbers.
    const Length numbers =
        shown.scene->frames.empty() ? Length() : b_.look().text(TextRole::kFine).leading;
    Size size = fitted(*shown.scene, {b_.width(), b_.page_height() * 6 / 10});
    size.height += numbers;
    lines.push_back(in_the_middle(b_.figure(*shown.scene, size, heading_parent), size.width));
    lines.push_back(b_.text(TextRole::kNote, shown.scene->alternative,
                            Owner::of(b_.node(heading_parent, Role::kP))));
    slab.block = Builder::stack(std::move(lines), b_.look().part_space);
    slab.outline = page::OutlineEntry{shown.name, 1, 0, {}};
    section.slabs.push_back(std::move(slab));
    return section;
  }

  // ---- a catalogue

  page::Section family(const std::string& name, std::span<const ShownFigure> figures) {
    page::Section section;
    const Owner owner = Owner::of(b_.node(Builder::kRoot, Role::kH2));
    page::Slab head;
    head.block = b_.text(TextRole::kPart, name, owner);
    head.space_before = b_.look().part_space;
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{name, 2, 0, {}};
    section.slabs.push_back(std::move(head));
    section.continuation = b_.text(TextRole::kPart, b_.labels().say("continued", {{"part", name}}),
                                   Owner::none(Artifact::kHeader));
    constexpr std::size_t kColumns = 3;
    for (std::size_t i = 0; i < figures.size(); i += kColumns) {
      RowBlock row;
      row.gap = b_.look().gap;
      row.align = RowAlign::kStretch;
      for (std::size_t at = i; at < i + kColumns; ++at) {
        Block cell = Builder::space({});
        if (at < figures.size()) cell = panel(figures[at]);
        row.cells.push_back({Track::flexible(), std::move(cell)});
      }
      page::Slab slab;
      slab.block = Block{std::move(row)};
      slab.space_before = b_.look().gap;
      section.slabs.push_back(std::move(slab));
    }
    return section;
  }

 private:
  static Block in_the_middle(Block block, Length width) {
    RowBlock row;
    row.cells.push_back({Track::flexible(), Builder::space({})});
    row.cells.push_back({Track::fixed(width), std::move(block)});
    row.cells.push_back({Track::flexible(), Builder::space({})});
    return {std::move(row)};
  }

  Block panel(const ShownFigure& shown) {
    const Length pad = b_.look().row_padding;
    const Length room = (b_.width() - b_.look().gap * 2) / 3 - (pad + b_.look().hair_width) * 2;
    std::vector<Block> lines;
    lines.push_back(b_.text(TextRole::kVariationLabel, shown.name,
                            Owner::of(b_.node(Builder::kRoot, Role::kH3))));
    const Size small = fitted(*shown.glance, {kGlance, kGlance});
    const Length left = room - small.width - b_.look().gap / 2;
    const Size large = b_.figure_size(*shown.scene, {left, b_.look().figure});
    RowBlock row;
    row.align = RowAlign::kMiddle;
    row.cells.push_back(
        {Track::fixed(large.width), b_.figure(*shown.scene, large, Builder::kRoot)});
    row.cells.push_back({Track::flexible(), Builder::space({})});
    row.cells.push_back({Track::fixed(small.width), glance(*shown.glance, small)});
    lines.push_back({std::move(row)});
    lines.push_back(b_.text(TextRole::kFine, shown.scene->alternative,
                            Owner::of(b_.node(Builder::kRoot, Role::kP))));
    for (const std::string& finding : shown.findings) {
      lines.push_back(b_.text(TextRole::kVariationLabel, finding,
                              Owner::of(b_.node(Builder::kRoot, Role::kP))));
    }
    return framed(b_, Builder::stack(std::move(lines), pad / 2), Use::kLine, b_.look().hair_width);
  }

  // The same picture again, smaller: nothing new for who cannot see it.
  Block glance(const figure::Scene& scene, Size size) {
    return b_.drawing(scene, size, Owner::none(Artifact::kLayout));
  }

  Builder& b_;
};

}  // namespace

page::DisplayList figure_pages(const std::vector<ShownFigure>& figures, const Context& context,
                               type::Typesetter& typesetter, Diagnostics& diagnostics) {
  Builder builder(Kind::kHomeSheet, context,
                  context.theme.home.scaled(context.theme.home.scale.at(context.paper)),
                  typesetter);
  FigureWriter writer(builder);
  std::vector<page::Section> sections;
  for (const ShownFigure& shown : figures) {
    sections.push_back(writer.page_of(shown, Builder::kRoot, Role::kH1));
    sections.back().slabs.front().begins_page = true;
  }
  const std::string title = figures.size() == 1 ? figures.front().name : "Figures";
  page::Composed composed = page::compose(
      builder.finish(std::move(sections), titled(title), builder.labels().say("figures")),
      typesetter);
  page::report(composed, "figure page", diagnostics);
  return std::move(composed.list);
}

page::DisplayList contact_sheet(const std::vector<ShownFigure>& figures, const Context& context,
                                type::Typesetter& typesetter, Diagnostics& diagnostics) {
  Builder builder(Kind::kHomeSheet, context,
                  context.theme.home.scaled(context.theme.home.scale.at(context.paper)),
                  typesetter);
  FigureWriter writer(builder);
  const plan::Session session = titled(builder.labels().say("figures"));
  page::Section opening;
  page::Slab title;
  title.block = builder.title(session.title, Owner::of(builder.node(Builder::kRoot, Role::kH1)));
  title.keep_with_next = true;
  opening.slabs.push_back(std::move(title));
  std::vector<page::Section> sections;
  sections.push_back(std::move(opening));
  for (std::size_t begin = 0; begin < figures.size();) {
    std::size_t end = begin;
    while (end < figures.size() && figures[end].family == figures[begin].family) ++end;
    sections.push_back(
        writer.family(figures[begin].family, std::span(figures).subspan(begin, end - begin)));
    begin = end;
  }
  page::Composed composed = page::compose(
      builder.finish(std::move(sections), session, builder.labels().say("figures")), typesetter);
  page::report(composed, "contact sheet", diagnostics);
  return std::move(composed.list);
}

}  // namespace chalkleaf::sheet
