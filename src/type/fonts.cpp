// The catalogue's faces, each opened when it is first asked for, by whichever worker asks first.
// Test: tests/type/fonts_test.cpp.
#include "type/fonts.h"

#include <fmt/format.h>

#include <mutex>
#include <optional>
#include <set>

#include "base/text.h"
#include "type/face_data.h"

namespace chalkleaf::type {
namespace {

// Far above the largest text font; keeps a wrong path from filling the memory.
constexpr std::uint64_t kLargestFont = 64ULL * 1024 * 1024;

struct Slot {
  std::once_flag once;
  std::unique_ptr<Face> face;
  std::optional<FontError> error;
};

}  // namespace

struct Fonts::State {
  Catalogue catalogue;
  const FileSystem* files = nullptr;
  std::vector<std::vector<FaceId>> chains;  // by StyleId
  mutable std::vector<Slot> slots;          // by FaceId

  void open(FaceId id) const {
    Slot& slot = slots[id];
    std::call_once(slot.once, [&] {
      const FaceSpec& spec = catalogue.faces[id];
      auto bytes = files->map(spec.path, kLargestFont);
      if (!bytes) {
        slot.error = FontError{spec.path, bytes.error().message};
        return;
      }
      auto data = FaceData::open(spec, std::move(*bytes));
      if (data) {
        slot.face = std::make_unique<Face>(std::move(*data));
      } else {
        slot.error = data.error();
      }
    });
  }
};

Fonts::Fonts(Catalogue catalogue, const FileSystem& files) : state_(std::make_unique<State>()) {
  state_->catalogue = std::move(catalogue);
  state_->files = &files;
  state_->slots = std::vector<Slot>(state_->catalogue.faces.size());
  for (const RoleSpec& role : state_->catalogue.roles) {
    for (std::size_t variant = 0; variant < role.chains.size(); ++variant) {
      // A role without this weight or slant lends its nearest: the same weight upright, then
      // regular, then any.
      const std::vector<FaceId>* chain = &role.chains[variant];
      if (chain->empty()) chain = &role.chains[variant & 2U];
      if (chain->empty()) chain = &role.chains[0];
      for (std::size_t other = 0; chain->empty() && other < role.chains.size(); ++other) {
        chain = &role.chains[other];
      }
      state_->chains.push_back(*chain);
    }
  }
}
Fonts::~Fonts() = default;

std::vector<FontError> Fonts::open_primary() const {
  std::set<FaceId> first_choices;
  for (const auto& chain : state_->chains) {
    if (!chain.empty() && chain.front() < state_->slots.size()) first_choices.insert(chain.front());
  }
  std::vector<FontError> errors;
  for (const FaceId id : first_choices) {
    state_->open(id);
    if (state_->slots[id].error) errors.push_back(*state_->slots[id].error);
  }
  return errors;
}

tl::expected<StyleId, std::string> Fonts::style(std::string_view role, Weight weight,
                                                Slant slant) const {
  const auto& roles = state_->catalogue.roles;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < roles.size(); ++i) {
    names.push_back("'" + roles[i].name + "'");
    if (roles[i].name != role) continue;
    const auto style =
        i * 4 + static_cast<std::size_t>(weight) * 2 + static_cast<std::size_t>(slant);
    if (state_->chains[style].empty()) {
      return tl::unexpected(fmt::format("the font role '{}' names no fonts", role));
    }
    return static_cast<StyleId>(style);
  }
  if (names.empty()) return tl::unexpected(std::string("the font catalogue names no roles"));
  return tl::unexpected(fmt::format("there is no font role '{}'; there {} {}", role,
                                    names.size() == 1 ? "is only" : "are", join_list(names)));
}

const std::vector<FaceId>& Fonts::chain(StyleId style) const { return state_->chains.at(style); }

const Face* Fonts::face(FaceId id) const {
  if (id >= state_->slots.size()) return nullptr;
  state_->open(id);
  return state_->slots[id].face.get();
}

const Catalogue& Fonts::catalogue() const { return state_->catalogue; }

}  // namespace chalkleaf::type
