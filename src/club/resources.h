// What is shipped beside the program: the theme, the fixed words, the font catalogue.
//
// Found without a path being compiled in, so that an installed program can be moved and a build
// folder can stand anywhere. Tested by tests/club/resources_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <tl/expected.hpp>

#include "base/diagnostic.h"
#include "base/environment.h"
#include "base/files.h"
#include "sheet/labels.h"
#include "sheet/theme.h"

namespace chalkleaf::club {

/// The folder with `themes/` and `fonts/`: CHALKLEAF_DATA if set; else `../share/chalkleaf` from
/// the program (installed); else the source tree its build folder belongs to. `program` is the
/// program's own absolute path. The error is a sentence for the user.
tl::expected<std::string, std::string> find_data_folder(const FileSystem& files,
                                                        const Environment& environment,
                                                        const std::string& program);

/// Reads `themes/classic.yaml`. Null when there are errors (reported).
std::shared_ptr<const sheet::Theme> load_theme(const FileSystem& files,
                                               const std::string& data_folder,
                                               Diagnostics& diagnostics);
/// True when there are sheet words for the language.
bool has_labels(const FileSystem& files, const std::string& data_folder,
                const std::string& language);
/// Reads `themes/labels/<language>.yaml`. Null when there are errors, among them that there is no
/// such file.
std::shared_ptr<const sheet::Labels> load_labels(const FileSystem& files,
                                                 const std::string& data_folder,
                                                 const std::string& language,
                                                 Diagnostics& diagnostics);

}  // namespace chalkleaf::club
