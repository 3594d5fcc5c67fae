#include "club/figures.h"

#include <algorithm>

#include "club/places.h"
#include "figure/truth.h"
#include "source/read.h"

namespace chalkleaf::club {
namespace {

constexpr std::size_t kMostFiles = 200;

bool is_figure_file(const std::string& name) {
  return !name.starts_with('.') && (name.ends_with(".yaml") || name.ends_with(".yml"));
}

// The shipped figures are judged by our tests; a club's own at each run, for a child of usual age.
void judge_own(const figure::Catalogue& catalogue, const std::vector<SourcePtr>& own,
               Diagnostics& diagnostics) {
  constexpr double kUsualAge = 10;
  const figure::Body body = figure::Body::of_age(kUsualAge);
  for (const figure::Figure* figure : catalogue.own()) {
    const bool is_own = std::any_of(own.begin(), own.end(), [&](const SourcePtr& source) {
      return source.get() == figure->name.span.source;
    });
    if (is_own) figure::check(*figure, figure::show(*figure, body), diagnostics);
  }
}

}  // namespace

reason::FigureNames names_of(const figure::Catalogue& catalogue) {
  return {[&catalogue](std::string_view name) { return catalogue.is_described(name); },
          [&catalogue](std::string_view name) { return catalogue.closest(name); }};
}

void take_figures(const FileSystem& files, const std::string& folder, const std::string& shown,
                  bool replaces, const PackPtr& pack, figure::Descriptions& descriptions,
                  std::vector<SourcePtr>& sources, Diagnostics& diagnostics) {
  const FileKind kind = files.kind(folder);
  if (kind == FileKind::kNothing) return;
  const auto real = files.real_path(folder);
  if (kind != FileKind::kFolder || !real || *real != folder) {
    const bool link = kind == FileKind::kFolder;
    return diagnostics.error(
        link ? "outside-folder" : "unreadable-file", {},
        shown + (link ? " is a link, and links to folders are not followed" : " is not a folder"),
        "keep the club's figures in a folder ‘figures’");
  }
  const auto entries = files.list(folder);
  if (!entries) {
    return diagnostics.error("unreadable-file", {},
                             shown + " cannot be read: " + entries.error().message);
  }
  std::vector<std::string> names;
  for (const FolderEntry& entry : *entries) {
    if (entry.kind != FileKind::kFile || !is_figure_file(entry.name)) continue;
    const std::string path = join_path(folder, entry.name);
    const auto target = files.real_path(path);
    if (entry.is_link && (!target || !is_within(*target, folder))) {
      diagnostics.error("outside-folder", {},
                        join_path(shown, entry.name) + " is a link that leads out of the folder",
                        "put the file itself there");
      continue;
    }
    names.push_back(entry.name);
  }
  std::sort(names.begin(), names.end());
  if (names.size() > kMostFiles) {
    diagnostics.error("unreadable-file", {},
                      shown + " has more than " + std::to_string(kMostFiles) + " files of figures",
                      "put several figures into one file");
    names.resize(kMostFiles);
  }
  for (const std::string& name : names) {
    const std::string path = join_path(folder, name);
    const SourcePtr source = pack ? source::load_shipped(files, path, pack, diagnostics)
                                  : source::load(files, path, join_path(shown, name), diagnostics);
    if (!source) continue;
    sources.push_back(source);
    diagnostics.keep(source);
    descriptions.take(source, replaces, diagnostics);
  }
}

Figures load_figures(const FileSystem& files, const DataFolder& data,
                     const std::string& club_folder, const std::string& standing,
                     Diagnostics& diagnostics) {
  return load_figure_folder(files, data,
                            club_folder.empty() ? "" : join_path(club_folder, "figures"), standing,
                            diagnostics);
}

Figures load_figure_folder(const FileSystem& files, const DataFolder& data,
                           const std::string& folder, const std::string& standing,
                           Diagnostics& diagnostics) {
  Figures out;
  figure::Descriptions descriptions;
  const std::string shipped = join_path(data.path, "themes/figures");
  take_figures(files, shipped, shipped, false, folder == shipped ? nullptr : data.pack,
               descriptions, out.sources, diagnostics);
  out.shipped = out.sources.size();
  if (!folder.empty() && folder != shipped) {
    take_figures(files, folder, path_from(standing, folder), true, nullptr, descriptions,
                 out.sources, diagnostics);
  }
  if (folder == shipped) out.shipped = 0;
  out.described = descriptions.places();
  out.catalogue = std::make_unique<const figure::Catalogue>(std::move(descriptions), diagnostics);
  judge_own(*out.catalogue,
            {out.sources.begin() + static_cast<std::ptrdiff_t>(out.shipped), out.sources.end()},
            diagnostics);
  out.drawings = std::make_unique<const figure::Drawings>(*out.catalogue);
  out.art = std::make_unique<sheet::FigureArt>();
  return out;
}

}  // namespace chalkleaf::club
