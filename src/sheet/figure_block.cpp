// A drawing of figure's on a sheet: scaled to its place, coloured by the theme, a Figure with its
// words.
//
// Drawings of one sheet have about one scale, so that the same child is much the same size in every
// panel; only what is too wide or too high for its place is smaller. Tested by
// tests/sheet/figure_block_test.cpp.
#include <algorithm>
#include "sheet/builder.h"
#include "sheet/figure_art.h"

namespace chalkleaf::sheet {
namespace {

// A standing child with hanging arms, about: as high as the look's figures are.
constexpr double kMetresHigh = 1.3;
// Who lies or kneels leaves room above, and is drawn so much larger.
constexpr double kCloser = 1.35;
// Without a group's ages: a child between the ages of most groups.
constexpr double kUsualAge = 10;

double age_of(const plan::Session& session) {
  if (!session.group || !session.group->youngest) return kUsualAge;
  const int youngest = session.group->youngest->value;
  const int oldest = session.group->oldest ? session.group->oldest->value : youngest;
  return (youngest + oldest) / 2.0;
}

// Room below the frames of a row for their numbers.
Length number_height(const Look& look) { return look.text(TextRole::kFine).leading; }

}  // namespace

std::shared_ptr<const figure::Scene> Builder::scene(std::string_view name,
                                                    const plan::Session& session,
                                                    figure::Extent extent) const {
  if (context_.drawings == nullptr || name.empty()) return nullptr;
  return context_.drawings->find(name, age_of(session), extent);
}

Size Builder::figure_size(const figure::Scene& scene, Size most) const {
  const double width = std::max(scene.box.width(), 0.01);
  const double height = std::max(scene.box.height(), 0.01);
  const Length numbers = scene.frames.empty() ? Length() : number_height(look_);
  const double metre =
      std::min({look_.figure.in_pt() / kMetresHigh * kCloser, most.width.in_pt() / width,
                std::max(0.0, (most.height - numbers).in_pt()) / height});
  return {Length::pt(width * metre), Length::pt(height * metre) + numbers};
}

Block Builder::drawing(const figure::Scene& scene, Size size, Owner owner) const {
  const figure::Palette& inks = context_.theme.inks;
  return {page::ArtBlock{
      size, context_.art != nullptr ? context_.art->of(scene, inks) : artwork_of(scene, inks),
      owner}};
}

Block Builder::figure(const figure::Scene& scene, Size size, NodeId parent) {
  return figure_of(scene, size, figure_node(scene, parent));
}

NodeId Builder::figure_node(const figure::Scene& scene, NodeId parent) {
  const NodeId id = node(parent, Role::kFigure);
  at(id).alternative_text = scene.alternative;
  return id;
}

Block Builder::figure_of(const figure::Scene& scene, Size size, NodeId id) {
  const Length numbers = scene.frames.empty() ? Length() : number_height(look_);
  const double metre = size.width.in_pt() / std::max(scene.box.width(), 0.01);
  Block picture = drawing(scene, {size.width, size.height - numbers}, Owner::of(id));
  if (scene.frames.empty()) return picture;

  // The frames' numbers, each under its frame: marks of the same figure. Frames that stand closer
  // than a number is wide have theirs side by side.
  const std::size_t count = scene.frames.size();
  std::vector<Length> ends;
  bool too_close = false;
  for (std::size_t i = 0; i < count; ++i) {
    const bool last = i + 1 == count;
    const double middle = last ? scene.box.right : (scene.frames[i] + scene.frames[i + 1]) / 2;
    ends.push_back(last ? size.width : Length::pt((middle - scene.box.left) * metre));
    const Length room = ends[i] - (i == 0 ? Length() : ends[i - 1]);
    too_close = too_close || room < numbers * 3 / 4;
  }
  page::RowBlock row;
  const auto share = static_cast<std::int64_t>(count);
  const bool as_one = too_close && size.width / share < numbers * 3 / 4;
  if (as_one) {
    row.cells.push_back(
        {page::Track::fixed(size.width), text(TextRole::kFine, "1–" + std::to_string(count),
                                              Owner::of(id), {}, page::Align::kCentre)});
  }
  for (std::size_t i = 0; i < count && !as_one; ++i) {
    const Length room =
        too_close ? size.width / share : ends[i] - (i == 0 ? Length() : ends[i - 1]);
    row.cells.push_back({page::Track::fixed(room), text(TextRole::kFine, std::to_string(i + 1),
                                                        Owner::of(id), {}, page::Align::kCentre)});
  }
  std::vector<Block> both;
  both.push_back(std::move(picture));
  both.push_back({std::move(row)});
  return stack(std::move(both));
}

}  // namespace chalkleaf::sheet
