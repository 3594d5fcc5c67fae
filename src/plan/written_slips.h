// Pictures and tables that Markdown does not see, because of how they are written.
//
// Their text is kept as text, which nobody wants printed: so each is reported with the line to
// write. Tested by tests/plan/written_slips_test.cpp.
#pragma once

#include "base/diagnostic.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// Reports what in a paragraph was meant as a picture or a table and is none.
void report_written_slips(const source::MarkNode& paragraph, Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
