#include "club/font_catalogue.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>

#include "source/read.h"

namespace chalkleaf::club {
namespace {

using source::YamlNode;

constexpr std::array<std::string_view, 4> kStyles = {"regular", "italic", "bold", "bold-italic"};
static_assert(static_cast<int>(type::Weight::kBold) * 2 + static_cast<int>(type::Slant::kItalic) ==
              3);

// Which style stands in for one a family lacks: upright for italic, regular for bold.
constexpr std::array<std::size_t, 4> kPlainer = {0, 0, 0, 2};

/// A family with its four styles as faces of the catalogue; empty where no file was found.
struct Family {
  std::array<std::optional<type::FaceId>, 4> faces;
  std::string package;
  std::string missing;  ///< a file that is nowhere
  Span span;
};

const YamlNode* entry(const YamlNode& map, std::string_view key) {
  for (const auto& [name, value] : map.entries) {
    if (name.text == key) return &value;
  }
  return nullptr;
}

std::string text_of(const YamlNode& map, std::string_view key) {
  const YamlNode* node = entry(map, key);
  return node == nullptr ? std::string() : node->text;
}

class Reader {
 public:
  Reader(const FileSystem& files, std::string folder, Diagnostics& diagnostics)
      : files_(files), folder_(std::move(folder)), diagnostics_(diagnostics) {}

  type::Catalogue read(const YamlNode& root) {
    const YamlNode* families = entry(root, "families");
    const YamlNode* roles = entry(root, "roles");
    if (families == nullptr || roles == nullptr || roles->entries.empty()) {
      diagnostics_.error("missing-key", root.span, "the font catalogue lacks its roles or families",
                         "install the program again, or put back fonts/catalogue.yaml");
      return {};
    }
    for (const auto& [name, value] : families->entries) read_family(name, value);
    for (const auto& [name, value] : roles->entries) read_role(name, value);
    return std::move(catalogue_);
  }

 private:
  std::optional<std::string> find_file(const YamlNode& family, const std::string& name) const {
    const YamlNode* folders = entry(family, "folders");
    if (folders == nullptr) return std::nullopt;
    for (const YamlNode& folder : folders->items) {
      std::string path = join_path(join_path(folder_, folder.text), name);
      if (files_.kind(path) == FileKind::kFile) return path;
    }
    return std::nullopt;
  }

  void read_family(const YamlNode& name, const YamlNode& value) {
    Family family;
    family.package = text_of(value, "package");
    family.span = name.span;
    for (std::size_t style = 0; style < kStyles.size(); ++style) {
      const std::string file = text_of(value, kStyles[style]);
      if (file.empty()) {
        family.faces[style] = family.faces[kPlainer[style]];
        continue;
      }
      const auto path = find_file(value, file);
      if (!path) {
        family.missing = file;
        continue;
      }
      family.faces[style] = static_cast<type::FaceId>(catalogue_.faces.size());
      catalogue_.faces.push_back({name.text, *path, text_of(value, "licence")});
    }
    families_.emplace(name.text, family);
  }

  void read_role(const YamlNode& name, const YamlNode& value) {
    type::RoleSpec role;
    role.name = name.text;
    for (const YamlNode& wanted : value.items) {
      const auto found = families_.find(wanted.text);
      const bool first = &wanted == &value.items.front();
      if (found == families_.end()) {
        diagnostics_.error(kBadValue, wanted.span,
                           fmt::format("the font catalogue has no family ‘{}’", wanted.text),
                           "list it under ‘families:’");
        continue;
      }
      const Family& family = found->second;
      if (first && !family.missing.empty()) {
        diagnostics_.error("unreadable-file", family.span,
                           fmt::format("the font file {} of ‘{}’ is in none of its folders",
                                       family.missing, wanted.text),
                           fmt::format("install the Debian package {}, or put the file in {}",
                                       family.package, folder_));
      }
      for (std::size_t style = 0; style < kStyles.size(); ++style) {
        if (family.faces[style]) role.chains[style].push_back(*family.faces[style]);
      }
    }
    catalogue_.roles.push_back(std::move(role));
  }

  const FileSystem& files_;
  std::string folder_;
  Diagnostics& diagnostics_;
  type::Catalogue catalogue_;
  std::map<std::string, Family> families_;
};

}  // namespace

type::Catalogue load_font_catalogue(const FileSystem& files, const DataFolder& data,
                                    Diagnostics& diagnostics) {
  const std::string folder = join_path(data.path, "fonts");
  const std::string path = join_path(folder, "catalogue.yaml");
  const SourcePtr source = source::load_shipped(files, path, data.pack, diagnostics);
  if (!source) return {};
  const auto root = source::read_yaml(source, diagnostics);
  diagnostics.keep(source);
  return root ? Reader(files, folder, diagnostics).read(*root) : type::Catalogue{};
}

}  // namespace chalkleaf::club
