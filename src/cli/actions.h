// What the commands do: from what was given to an exit code. No rules of the trade here. Each is a
// row's action in cli/command_table.h. Tested through the program by tests/cli/program_test.cpp.
#pragma once

#include "cli/command_table.h"

namespace chalkleaf::cli {

int build_plans(const Run& run);
int check_plans(const Run& run);
int proof_plans(const Run& run);
int show_times(const Run& run);
int show_loads(const Run& run);
int show_clashes(const Run& run);
int tidy_plans(const Run& run);
int make_week(const Run& run);
int make_booklet(const Run& run);
int list_looks(const Run& run);
int list_drills(const Run& run);
int explain_check(const Run& run);
int begin_club(const Run& run);
int draw_figures(const Run& run);
int draw_catalogue(const Run& run);

}  // namespace chalkleaf::cli
