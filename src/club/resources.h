// What is shipped beside the program: the theme, the fixed words, the font catalogue.
//
// Found without a path being compiled in, so that an installed program can be moved and a build
// folder can stand anywhere. Tested by tests/club/resources_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "base/diagnostic.h"
#include "base/environment.h"
#include "base/files.h"
#include "base/pack.h"
#include "draft/read.h"
#include "plan/hall_book.h"
#include "rota/words.h"
#include "sheet/labels.h"
#include "sheet/theme.h"

namespace chalkleaf::reason {
class Guard;
}

namespace chalkleaf::club {

/// The folder with `themes/` and `fonts/`: CHALKLEAF_DATA if set; else `../share/chalkleaf` from
/// the program (installed); else the source tree its build folder belongs to. `program` is the
/// program's own absolute path. The error is a sentence for the user.
tl::expected<std::string, std::string> find_data_folder(const FileSystem& files,
                                                        const Environment& environment,
                                                        const std::string& program);

/// The folder with the program's data, and what was made of its files when the program was built.
struct DataFolder {
  DataFolder() = default;
  // NOLINTNEXTLINE(google-explicit-constructor): a folder without a pack is a path and no more
  DataFolder(std::string folder, PackPtr made = nullptr)
      : path(std::move(folder)), pack(std::move(made)) {}
  std::string path;  ///< empty: none is wanted
  PackPtr pack;      ///< null: nothing was made beforehand, so all is read from the files
};
/// The folder and its pack: `shipped.pack` in it (installed), else beside the program (built). The
/// files are the truth: a pack that is not there, damaged or of other files is not missed.
tl::expected<DataFolder, std::string> open_data_folder(const FileSystem& files,
                                                       const Environment& environment,
                                                       const std::string& program);
/// The files whose YAML the pack has: looks, words, figures, the font catalogue; sorted.
std::vector<std::string> packable_files(const FileSystem& files, const std::string& data_folder);

/// Reads `themes/classic.yaml`. Null when there are errors (reported).
std::shared_ptr<const sheet::Theme> load_theme(const FileSystem& files, const DataFolder& data,
                                               Diagnostics& diagnostics);
/// True when there are sheet words for the language.
bool has_labels(const FileSystem& files, const std::string& data_folder,
                const std::string& language);
/// Reads `themes/labels/<language>.yaml`. Null when there are errors, among them that there is no
/// such file.
std::shared_ptr<const sheet::Labels> load_labels(const FileSystem& files, const DataFolder& data,
                                                 const std::string& language,
                                                 Diagnostics& diagnostics);
/// What is dangerous, in the words of a language. Null when the program has none for it: then plans
/// are checked without.
std::shared_ptr<const reason::Guard> load_guard(const FileSystem& files, const DataFolder& data,
                                                const std::string& language,
                                                Diagnostics& diagnostics);

/// What the pack holds of such a file: its patterns, compiled. Nothing when it has errors
/// (reported).
std::optional<std::pair<Hash128, std::string>> pack_guard(const SourcePtr& source,
                                                          Diagnostics& diagnostics);

/// The same of a file of line weights; nothing when there is none that can be read.
std::optional<std::pair<Hash128, std::string>> pack_line_weights(const FileSystem& files,
                                                                 const std::string& path);

/// How a hall runs, in the words of a language, or in English where it has no such file. Null when
/// there are errors (reported), or no file at all.
std::shared_ptr<const plan::HallBook> load_hall(const FileSystem& files, const DataFolder& data,
                                                const std::string& language,
                                                Diagnostics& diagnostics);
/// The words by which rotations are read, of a language or English; null when there are none.
std::shared_ptr<const rota::Words> load_rota(const FileSystem& files, const DataFolder& data,
                                             const std::string& language, Diagnostics& diagnostics);

/// Reads `themes/words/<language>.yaml`, or English where a language has no such file. Null when
/// there are errors (reported).
std::shared_ptr<const draft::Lexicon> load_words(const FileSystem& files, const DataFolder& data,
                                                 const std::string& language,
                                                 Diagnostics& diagnostics);

}  // namespace chalkleaf::club
