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

constexpr Length kNumberGap = Length::millipoints(1500);  // between two numbers

// Where numbers so wide begin: in the middle below their frames, or beside each other where those
// stand closer, as near as that allows.
std::vector<Length> number_places(const std::vector<Length>& middles, Length wide, Length room) {
  const auto count = static_cast<std::int64_t>(middles.size());
  // Closer together before any stands out of the figure, where the margin may be.
  Length gap = kNumberGap;
  if (wide * count + gap * (count - 1) > room && count > 1)
    gap = std::max(Length(), (room - wide * count) / (count - 1));
  std::vector<Length> out;
  for (const Length middle : middles) {
    const Length own = middle - wide / 2;
    out.push_back(out.empty() ? own : std::max(own, out.back() + wide + gap));
  }
  // What went too far to the right pushes the others back, half of it at most out of the figure.
  const Length over = out.back() + wide - room;
  const Length all = wide * count + gap * (count - 1);
  Length most = room - wide + std::max(Length(), all - room) / 2;
  for (std::size_t i = out.size(); over > Length() && i-- > 0;) {
    out[i] = std::min(out[i], most);
    most = out[i] - wide - gap;
  }
  return out;
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

  // The frames' numbers, each under its frame: marks of the same figure.
  const std::size_t count = scene.frames.size();
  const Length digit = text_width(TextRole::kFine, std::to_string(count));
  std::vector<Length> middles;
  for (std::size_t i = 0; i < count; ++i) {
    const double left = i == 0 ? scene.box.left : scene.frames[i];
    const double right = i + 1 == count ? scene.box.right : scene.frames[i + 1];
    middles.push_back(Length::pt(((left + right) / 2 - scene.box.left) * metre));
  }
  page::RowBlock row;
  Length x;
  for (const Length left : number_places(middles, digit, size.width)) {
    row.cells.push_back({page::Track::fixed(left - x), space(Length())});
    row.cells.push_back(
        {page::Track::fixed(digit), text(TextRole::kFine, std::to_string(row.cells.size() / 2 + 1),
                                         Owner::of(id), {}, page::Align::kCentre)});
    x = left + digit;
  }
  std::vector<Block> both;
  both.push_back(std::move(picture));
  both.push_back({std::move(row)});
  return stack(std::move(both));
}

}  // namespace chalkleaf::sheet
