// The front matter of a plan or a shared part. Tested by tests/plan/front_matter_test.cpp.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/model.h"
#include "plan/read.h"
#include "plan/timings.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// A safety note of these words, in its sentences. Words must not be empty.
Safety safety_of(const Words& words);

/// Fills everything of `session` that front matter says; returns the part budgets, which can be
/// placed only when the parts are known.
std::vector<Budget> read_front_matter(const source::Document& document, const Club& club,
                                      const FrontWords& words, Session& session,
                                      Diagnostics& diagnostics);
/// Adds the edit that puts `line` at the end of front matter.
void add_line(Diagnostic& found, const Span& front, const std::string& line);
/// Where the front matter says `place:`, as only a session's does.
std::optional<Span> place_written(const source::Document& document);
/// The title a shared part's front matter gives it; the only key it may have. The keys of a session
/// are not reported (plan/read.h, link_parts, says of the whole file that it is none).
Words read_part_title(const source::Document& document, Diagnostics& diagnostics);
/// True when something is already said about a key of the front matter, so that its absence is no
/// news.
bool is_reported(std::string_view key, const source::Document& document,
                 const Diagnostics& diagnostics);
/// True when the file has front matter, readable or not.
bool has_front_matter(const source::Document& document);

}  // namespace chalkleaf::plan
