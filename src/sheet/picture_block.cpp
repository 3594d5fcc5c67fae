// A picture of the coach's: a Figure with its text for who cannot see it.
//
// As large as it looks in a browser (a pixel is 1/96 inch there: CSS Values and Units 3, 5.2), but
// never wider than its column nor higher than a third of the page, so that it goes with the text it
// belongs to. It stands where lines of text begin. Tested by tests/sheet/picture_block_test.cpp.
#include <algorithm>

#include "base/files.h"
#include "base/text.h"
#include "sheet/builder.h"

namespace chalkleaf::sheet {
namespace {

constexpr Length kPixel = Length::millipoints(750);

bool begins_with_picture(const Block& block) {
  if (std::holds_alternative<page::PictureBlock>(block.content)) return true;
  const std::vector<Block>* inside = nullptr;
  if (const auto* box = std::get_if<page::BoxBlock>(&block.content)) inside = &box->content;
  if (const auto* stack = std::get_if<page::StackBlock>(&block.content)) inside = &stack->children;
  return inside != nullptr && !inside->empty() && begins_with_picture(inside->front());
}

}  // namespace

Block Builder::picture(NodeId parent, const plan::Note& note) {
  // What stands for a picture that cannot be seen is never nothing.
  std::string words(trim(note.words.text));
  if (words.empty()) words = file_stem(note.picture);
  if (note.picture_width <= 0 || note.picture_height <= 0) {
    return text(TextRole::kNote, words, Owner::of(node(parent, Role::kP)), note.words.span);
  }
  const NodeId figure = node(parent, Role::kFigure);
  at(figure).alternative_text = std::move(words);

  const Length highest = paper_size(context_.paper).height / 3;
  Size size{kPixel * note.picture_width, kPixel * note.picture_height};
  if (size.height > highest) {
    size.width = size.width.scaled(highest.in_pt() / size.height.in_pt());
    size.height = highest;
  }
  if (size.width > width_) {
    size.height = size.height.scaled(width_.in_pt() / size.width.in_pt());
    size.width = width_;
  }
  // A line of pixels is still a line.
  const Length least = Length::millipoints(100);
  size = {std::max(size.width, least), std::max(size.height, least)};
  const Length air = look_.text(TextRole::kNote).leading / 4;
  page::BoxBlock box;
  box.padding = {air, Length(), air, Length()};
  box.content.push_back(
      {page::PictureBlock{size, note.picture, Owner::of(figure), page::Align::kStart}});
  return {std::move(box)};
}

// Not a whole row of pictures, which can be longer than a page.
void keep_pictures(std::vector<page::Section>& sections) {
  for (page::Section& section : sections) {
    for (std::size_t i = 1; i < section.slabs.size(); ++i) {
      page::Slab& before = section.slabs[i - 1];
      if (begins_with_picture(section.slabs[i].block) && !begins_with_picture(before.block)) {
        before.keep_with_next = true;
      }
    }
  }
}

}  // namespace chalkleaf::sheet
