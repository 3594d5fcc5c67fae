#include "figure/catalogue.h"

#include <cmath>

#include "base/text.h"
#include "figure/picture.h"

namespace chalkleaf::figure {

Catalogue::Catalogue(std::vector<Figure> figures, const std::vector<std::string>& described)
    : figures_(std::move(figures)) {
  for (const std::string& name : described) described_.insert(lower_ascii(name));
  // A name of its own goes before another figure's other name.
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    by_name_.emplace(lower_ascii(figures_[i].name.text), i);
  }
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    for (const Word& also : figures_[i].also) by_name_.emplace(lower_ascii(also.text), i);
  }
}

const Figure* Catalogue::find(std::string_view name) const {
  const auto found = by_name_.find(lower_ascii(trim(name)));
  return found == by_name_.end() ? nullptr : &figures_[found->second];
}

bool Catalogue::is_described(std::string_view name) const {
  return find(name) != nullptr || described_.contains(lower_ascii(trim(name)));
}

std::optional<std::string> Catalogue::closest(std::string_view name) const {
  std::vector<std::string> names;
  names.reserve(by_name_.size());
  for (const auto& [known, place] : by_name_) names.push_back(known);
  return chalkleaf::closest(lower_ascii(trim(name)), names);
}

std::shared_ptr<const Scene> Drawings::find(std::string_view name, double years,
                                            Extent extent) const {
  const Figure* figure = catalogue_.find(name);
  if (figure == nullptr) return nullptr;
  if (figure->poses.size() == 1) extent = Extent::kWhole;
  const Key key{figure, static_cast<int>(std::lround(years)), extent};
  {
    const std::lock_guard lock(mutex_);
    const auto known = drawn_.find(key);
    if (known != drawn_.end()) return known->second;
  }
  // Outside the lock: two threads may draw the same thing, and get the same.
  const Body body = Body::of_age(key.years);
  Scene scene;
  if (extent == Extent::kWhole) {
    scene = picture(*figure, body);
  } else {
    // Of a movement where it arrives; of a row its middle, which is what the drill is known by.
    Figure one = *figure;
    const std::size_t which =
        figure->show == Show::kRow ? figure->poses.size() / 2 : figure->poses.size() - 1;
    one.poses = {figure->poses[which]};
    scene = picture(one, body);
  }
  auto drawn = std::make_shared<const Scene>(std::move(scene));
  const std::lock_guard lock(mutex_);
  return drawn_.emplace(key, std::move(drawn)).first->second;
}

}  // namespace chalkleaf::figure
