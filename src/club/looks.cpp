#include "club/looks.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/diagnostic_text.h"
#include "base/text.h"
#include "club/list_looks.h"
#include "club/places.h"
#include "club/resources.h"
#include "club/select.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

constexpr std::size_t kMostLooks = 100;

// `High Contrast` and `high_contrast` mean the file high-contrast.yaml.
std::string as_file_name(std::string_view name) {
  std::string out = lower_ascii(trim(name));
  std::replace(out.begin(), out.end(), ' ', '-');
  std::replace(out.begin(), out.end(), '_', '-');
  return out;
}

}  // namespace

Looks::Looks(const FileSystem& files, Places places, sheet::OwnColours own)
    : files_(files), places_(std::move(places)), own_colours_(std::move(own)) {
  // What the disk would not show may be a look that some plan has, so it is remembered; what is
  // not there is not.
  const auto note = [&](const FileError& error) {
    if (error.kind != FileError::Kind::kNotFound) unlisted_ = error.message;
  };
  const auto take = [&](const std::string& folder) {
    const auto entries = files_.list(folder);
    if (!entries) return note(entries.error());
    for (const FolderEntry& entry : *entries) {
      if (entry.kind != FileKind::kFile || entry.name.starts_with('.')) continue;
      const bool is_look = entry.name.ends_with(".yaml") || entry.name.ends_with(".yml");
      if (!is_look || paths_.size() >= kMostLooks) continue;
      const std::string path = join_path(folder, entry.name);
      const auto real = files_.real_path(path);
      // A club's folder comes from anyone: its links may not lead out of it.
      if (!real) note(real.error());
      if (!real || !is_within(*real, folder)) continue;
      paths_[as_file_name(file_stem(entry.name))] = path;
    }
  };
  const auto shipped = files_.real_path(join_path(places_.data.path, "themes"));
  if (shipped) take(*shipped);
  if (!places_.club_folder.empty()) {
    const std::string own_folder = join_path(places_.club_folder, "looks");
    const auto real = files_.real_path(own_folder);
    if (!real) note(real.error());
    if (real && *real == own_folder) take(own_folder);
  }
  for (const auto& [name, path] : paths_) names_.push_back(name);
}

std::string Looks::known(std::string_view name) const {
  const std::string file = as_file_name(name);
  return paths_.count(file) > 0 ? file : std::string();
}

bool Looks::is_own(std::string_view name) const {
  const auto path = paths_.find(as_file_name(name));
  return path != paths_.end() && !places_.club_folder.empty() &&
         is_within(path->second, places_.club_folder);
}

std::string Looks::hint(std::string_view name) const {
  if (const auto meant = closest(as_file_name(name), names_))
    return fmt::format("did you mean ‘{}’?", *meant);
  return fmt::format("there are {}", join_list(names_));
}

SourcePtr Looks::source(std::string_view name, Diagnostics& found) const {
  const auto path = paths_.find(as_file_name(name));
  if (path == paths_.end()) return nullptr;
  // A shipped file is named in full, like all that belongs to the program.
  if (!is_own(name)) return source::load_shipped(files_, path->second, places_.data.pack, found);
  return source::load(files_, path->second, path_from(places_.standing, path->second), found);
}

std::shared_ptr<const sheet::Theme> Looks::find(std::string_view name, Diagnostics& found) const {
  const std::string file = as_file_name(name);
  const std::lock_guard lock(mutex_);
  auto known = read_.find(file);
  if (known == read_.end()) {
    auto read = std::make_unique<Read>();
    if (const SourcePtr from = source(file, read->found)) {
      read->found.keep(from);
      read->theme = sheet::read_theme(
          from, [&](std::string_view other) { return source(other, read->found); }, read->found);
      if (read->theme) read->theme = sheet::in_colours(read->theme, own_colours_, read->found);
    }
    known = read_.emplace(file, std::move(read)).first;
  }
  found.append(known->second->found);
  return known->second->theme;
}

ListedLooks list_looks(const std::optional<std::string>& folder, const std::string& standing,
                       const Surroundings& around, Listener& listener) {
  ListedLooks out;
  const auto fail = [&](const std::string& sentence) {
    listener.problem(sentence);
    out.exit_code = 2;
    return out;
  };
  const auto data = open_data_folder(around.files, around.environment, around.program);
  if (!data) return fail(data.error());
  const std::string asked = folder ? normal_path(join_path(standing, *folder)) : standing;
  const auto real = around.files.real_path(asked);
  if (!real || around.files.kind(*real) != FileKind::kFolder)
    return fail(fmt::format("‘{}’ is not a folder", printable(folder.value_or("."))));
  const Looks looks(around.files, {*data, club_above(around.files, *real).value_or(""), standing},
                    {});
  for (const std::string& name : looks.names()) {
    Diagnostics found;
    const auto theme = looks.find(name, found);
    for (const Diagnostic& one : found.sorted()) listener.found(one);
    if (theme) {
      out.looks.emplace_back(name, theme->about);
    } else {
      out.exit_code = 1;
    }
  }
  return out;
}

}  // namespace chalkleaf::club
