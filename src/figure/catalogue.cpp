#include "figure/catalogue.h"

#include <cmath>

#include "base/text.h"
#include "figure/picture.h"

namespace chalkleaf::figure {

Catalogue::Catalogue(std::vector<Figure> figures, const std::vector<std::string>& described) {
  for (const std::string& name : described) described_.insert(lower_ascii(name));
  for (Figure& figure : figures) slots_.emplace_back().figure = std::move(figure);
  // A name of its own goes before another figure's other name.
  for (std::size_t i = 0; i < slots_.size(); ++i) add_name(slots_[i].figure->name.text, i);
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    for (const Word& also : slots_[i].figure->also) add_name(also.text, i);
  }
}

Catalogue::Catalogue(Descriptions descriptions, Diagnostics& diagnostics)
    : descriptions_(std::move(descriptions)) {
  std::vector<Figure> own = descriptions_.resolve(diagnostics);
  auto next = own.begin();
  for (std::size_t i = 0; i < descriptions_.size(); ++i) {
    const std::string& name = descriptions_.name(i);
    if (descriptions_.was_read_before(i)) {
      Slot& slot = slots_.emplace_back();
      slot.place = i;
      slot.own = false;
    } else if (next != own.end() && next->name.text == name) {
      slots_.emplace_back().figure = std::move(*next++);
    } else {
      described_.insert(lower_ascii(name));  // broken, which was said
      continue;
    }
    add_name(name, slots_.size() - 1);
  }
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    if (slots_[i].place) {
      for (const std::string& also : descriptions_.also(*slots_[i].place)) add_name(also, i);
    } else {
      for (const Word& also : slots_[i].figure->also) add_name(also.text, i);
    }
  }
}

void Catalogue::add_name(std::string_view name, std::size_t slot) {
  by_name_.emplace(lower_ascii(name), slot);
}

const Figure* Catalogue::at(std::size_t index) const {
  Slot& slot = slots_[index];
  if (slot.place) {
    std::call_once(slot.once, [&] {
      Diagnostics said_when_built;
      slot.figure = descriptions_.resolve(*slot.place, said_when_built);
    });
  }
  return slot.figure ? &*slot.figure : nullptr;
}

const Figure* Catalogue::find(std::string_view name) const {
  const auto found = by_name_.find(lower_ascii(trim(name)));
  return found == by_name_.end() ? nullptr : at(found->second);
}

std::vector<const Figure*> Catalogue::all() const {
  std::vector<const Figure*> out;
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    if (const Figure* figure = at(i)) out.push_back(figure);
  }
  return out;
}

std::vector<const Figure*> Catalogue::own() const {
  std::vector<const Figure*> out;
  for (std::size_t i = 0; i < slots_.size(); ++i) {
    if (slots_[i].own) out.push_back(at(i));
  }
  return out;
}

bool Catalogue::is_described(std::string_view name) const {
  const std::string key = lower_ascii(trim(name));
  return by_name_.find(key) != by_name_.end() || described_.contains(key);
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
