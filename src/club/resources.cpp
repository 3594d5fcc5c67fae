#include "club/resources.h"

#include <algorithm>
#include <optional>

#include "base/text.h"
#include "draft/lexicon.h"
#include "plan/danger_book.h"
#include "reason/guard.h"
#include "reason/line_weights.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

bool is_data_folder(const FileSystem& files, const std::string& folder) {
  return files.kind(join_path(folder, "fonts/catalogue.yaml")) == FileKind::kFile &&
         files.kind(join_path(folder, "themes")) == FileKind::kFolder;
}

// A build folder says in a file of its own which source tree it was made from.
std::optional<std::string> source_tree_of(const FileSystem& files,
                                          const std::string& build_folder) {
  constexpr std::uint64_t kLongestPath = 4096;
  auto tree = files.read(join_path(build_folder, "source-tree"), kLongestPath);
  if (!tree) return std::nullopt;
  return std::string(trim(*tree));
}

// A tag names a file here, so it may hold nothing but what BCP 47 (RFC 5646, 2.1) allows.
bool is_language_tag(const std::string& tag) {
  return !tag.empty() && tag.size() <= 35 && std::all_of(tag.begin(), tag.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
  });
}

}  // namespace

tl::expected<std::string, std::string> find_data_folder(const FileSystem& files,
                                                        const Environment& environment,
                                                        const std::string& program) {
  if (const auto named = environment.get("CHALKLEAF_DATA"); named && !named->empty()) {
    if (is_data_folder(files, *named)) return *named;
    return tl::unexpected("CHALKLEAF_DATA names " + *named +
                          ", but that folder has no themes and no fonts/catalogue.yaml");
  }
  const std::string beside = parent_path(program);
  const std::string installed = normal_path(join_path(beside, "../share/chalkleaf"));
  if (is_data_folder(files, installed)) return installed;
  const std::string above = parent_path(beside);
  if (is_data_folder(files, above)) return above;
  if (const auto tree = source_tree_of(files, beside); tree && is_data_folder(files, *tree)) {
    return *tree;
  }
  return tl::unexpected("the themes and fonts that belong to the program are not in " + installed +
                        "; set CHALKLEAF_DATA to the folder that has them");
}

tl::expected<DataFolder, std::string> open_data_folder(const FileSystem& files,
                                                       const Environment& environment,
                                                       const std::string& program) {
  const auto folder = find_data_folder(files, environment, program);
  if (!folder) return tl::unexpected(folder.error());
  constexpr std::uint64_t kLargestPack = 64ULL * 1024 * 1024;
  for (const std::string& place : {*folder, parent_path(program)}) {
    auto bytes = files.map(join_path(place, "shipped.pack"), kLargestPack);
    if (!bytes) continue;
    auto pack = std::make_shared<const Pack>(std::move(*bytes));
    if (!pack->empty()) return DataFolder(*folder, std::move(pack));
  }
  return DataFolder(*folder);
}

std::vector<std::string> packable_files(const FileSystem& files, const std::string& data_folder) {
  std::vector<std::string> out = {join_path(data_folder, "fonts/catalogue.yaml")};
  for (const char* name :
       {"themes", "themes/figures", "themes/labels", "themes/words", "themes/words/en"}) {
    const std::string folder = join_path(data_folder, name);
    for (const FolderEntry& entry : files.list(folder).value_or(std::vector<FolderEntry>{})) {
      if (entry.kind == FileKind::kFile && entry.name.ends_with(".yaml"))
        out.push_back(join_path(folder, entry.name));
    }
  }
  return out;
}

std::shared_ptr<const sheet::Theme> load_theme(const FileSystem& files, const DataFolder& data,
                                               Diagnostics& diagnostics) {
  const std::string path = join_path(data.path, "themes/classic.yaml");
  const SourcePtr source = source::load_shipped(files, path, data.pack, diagnostics);
  if (!source) return nullptr;
  diagnostics.keep(source);
  return sheet::read_theme(source, {}, diagnostics);
}

bool has_labels(const FileSystem& files, const std::string& data_folder,
                const std::string& language) {
  const std::string path = join_path(data_folder, "themes/labels/" + language + ".yaml");
  return is_language_tag(language) && files.kind(path) == FileKind::kFile;
}

std::shared_ptr<const sheet::Labels> load_labels(const FileSystem& files, const DataFolder& data,
                                                 const std::string& language,
                                                 Diagnostics& diagnostics) {
  const std::string folder = join_path(data.path, "themes/labels");
  const std::string path = join_path(folder, language + ".yaml");
  if (!has_labels(files, data.path, language)) {
    diagnostics.error(kBadValue, {}, "there are no sheet words for the language ‘" + language + "’",
                      "write ‘language: en’, or add a file for it to " + folder);
    return nullptr;
  }
  const SourcePtr source = source::load_shipped(files, path, data.pack, diagnostics);
  if (!source) return nullptr;
  diagnostics.keep(source);
  return sheet::read_labels(source, diagnostics);
}

std::shared_ptr<const draft::Lexicon> load_words(const FileSystem& files, const DataFolder& data,
                                                 const std::string& language,
                                                 Diagnostics& diagnostics) {
  const std::string folder = join_path(data.path, "themes/words");
  std::string path = join_path(folder, language + ".yaml");
  if (!is_language_tag(language) || files.kind(path) != FileKind::kFile) {
    path = join_path(folder, "en.yaml");
  }
  const std::size_t before = diagnostics.error_count();
  const SourcePtr source = source::load_shipped(files, path, data.pack, diagnostics);
  if (!source) return nullptr;
  diagnostics.keep(source);
  const auto root = source::read_yaml(source, diagnostics);
  if (!root) return nullptr;
  auto words = std::make_shared<const draft::Lexicon>(draft::Lexicon::read(*root, diagnostics));
  return diagnostics.error_count() > before ? nullptr : words;
}

namespace {

Hash128 guard_key(std::string_view text) { return pack_key("guard", text); }

}  // namespace

std::optional<std::pair<Hash128, std::string>> pack_guard(const SourcePtr& source,
                                                          Diagnostics& diagnostics) {
  auto book = plan::read_danger_book(source, diagnostics);
  if (!book) return std::nullopt;
  const reason::Guard guard(std::move(book), diagnostics);
  return std::pair(guard_key(source->text()), guard.image());
}

namespace {

// A language's own file of words, else the English one; null when there is neither.
SourcePtr words_file(const FileSystem& files, const DataFolder& data, const std::string& language,
                     const std::string& name, Diagnostics& diagnostics) {
  const std::string base = language.substr(0, language.find('-'));
  const std::string folder = join_path(data.path, "themes/words");
  std::string path = join_path(folder, base + "/" + name);
  if (!is_language_tag(language) || files.kind(path) != FileKind::kFile) {
    path = join_path(folder, "en/" + name);
  }
  if (files.kind(path) != FileKind::kFile) return nullptr;
  const SourcePtr source = source::load_shipped(files, path, data.pack, diagnostics);
  if (source) diagnostics.keep(source);
  return source;
}

}  // namespace

std::shared_ptr<const plan::HallBook> load_hall(const FileSystem& files, const DataFolder& data,
                                                const std::string& language,
                                                Diagnostics& diagnostics) {
  const SourcePtr source = words_file(files, data, language, "hall.yaml", diagnostics);
  return source ? plan::read_hall_book(source, diagnostics) : nullptr;
}

std::shared_ptr<const rota::Words> load_rota(const FileSystem& files, const DataFolder& data,
                                             const std::string& language,
                                             Diagnostics& diagnostics) {
  const SourcePtr source = words_file(files, data, language, "rota.yaml", diagnostics);
  return source ? rota::read_words(source, diagnostics) : nullptr;
}

namespace {

Hash128 weights_key(std::string_view text) { return pack_key("line weights", text); }

constexpr std::uint64_t kLargestWeights = 4ULL * 1024 * 1024;  // bytes

// Null when there are none, or none that can be read: the patterns are believed then.
std::shared_ptr<const reason::LineWeights> load_line_weights(const FileSystem& files,
                                                             const DataFolder& data,
                                                             const std::string& path) {
  const auto text = files.read(path, kLargestWeights);
  if (!text) return nullptr;
  const auto image = data.pack ? data.pack->find(weights_key(*text)) : std::nullopt;
  auto weights = image ? reason::LineWeights::from_image(*image, data.pack) : std::nullopt;
  if (!weights) weights = reason::LineWeights::read(*text);
  return weights ? std::make_shared<const reason::LineWeights>(std::move(*weights)) : nullptr;
}

}  // namespace

std::optional<std::pair<Hash128, std::string>> pack_line_weights(const FileSystem& files,
                                                                 const std::string& path) {
  const auto text = files.read(path, kLargestWeights);
  const auto weights = text ? reason::LineWeights::read(*text) : std::nullopt;
  if (!weights) return std::nullopt;
  return std::pair(weights_key(*text), weights->image());
}

std::shared_ptr<const reason::Guard> load_guard(const FileSystem& files, const DataFolder& data,
                                                const std::string& language,
                                                Diagnostics& diagnostics) {
  if (!is_language_tag(language)) return nullptr;
  const std::string base = language.substr(0, language.find('-'));
  const std::string path = join_path(data.path, "themes/words/" + base + "/dangers.yaml");
  if (files.kind(path) != FileKind::kFile) return nullptr;
  const SourcePtr source = source::load_shipped(files, path, data.pack, diagnostics);
  if (!source) return nullptr;
  diagnostics.keep(source);
  auto book = plan::read_danger_book(source, diagnostics);
  if (!book) return nullptr;
  const auto image = data.pack ? data.pack->find(guard_key(source->text())) : std::nullopt;
  return std::make_shared<const reason::Guard>(
      std::move(book), diagnostics, image.value_or(""),
      load_line_weights(files, data,
                        join_path(data.path, "themes/words/" + base + "/danger_weights.txt")));
}

}  // namespace chalkleaf::club
