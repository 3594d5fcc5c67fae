// fonts/catalogue.yaml becomes the fonts the program may use.
//
// The catalogue names where Debian puts each file; the first place that has it counts. A style a
// family lacks is set in the next plainer one, so that text never falls out of its family for a
// slant. Tested by tests/club/font_catalogue_test.cpp.
#pragma once

#include "base/diagnostic.h"
#include "base/files.h"
#include "club/resources.h"
#include "type/fonts.h"

namespace chalkleaf::club {

/// Reads `<data folder>/fonts/catalogue.yaml`. A role's first family must be there (an
/// `unreadable-file` error names the package that has it); others are left out when missing.
type::Catalogue load_font_catalogue(const FileSystem& files, const DataFolder& data,
                                    Diagnostics& diagnostics);

}  // namespace chalkleaf::club
