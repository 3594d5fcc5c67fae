// Drills and books from strings, for the tests of the library.
#pragma once

#include "plan/library.h"
#include "plan/reading.h"

namespace chalkleaf::plan {

/// A drill file read from a string, with what was found wrong in it.
inline LibraryDrill read_drill_text(const std::string& text,
                                    const std::string& path = "drills/dish-hold.md") {
  Diagnostics found;
  const SourcePtr source = source::load_text(path, text, found);
  LibraryDrill out;
  if (source) out = read_drill(source::read_document(source, found), found);
  out.found = std::move(found);
  return out;
}

/// A book of drill files, named drills/0.md and so on; what is wrong with their names is in
/// `found`.
struct ReadBook {
  Diagnostics found;
  DrillBook book;
};
inline ReadBook book_of(const std::vector<std::string>& files) {
  ReadBook out;
  std::vector<LibraryDrill> drills;
  for (std::size_t i = 0; i < files.size(); ++i) {
    drills.push_back(read_drill_text(files[i], fmt::format("drills/{}.md", i)));
  }
  out.book = DrillBook(std::move(drills), out.found);
  return out;
}

}  // namespace chalkleaf::plan
