// Lines that Markdown reads as running on from the line above, and that the coach meant otherwise:
// a link to a part, a heading, a drill without its dash.
//
// Each is taken out of the paragraph it ran into, so that it spoils nothing there, is reported
// where it stands, and is handed back as what it was meant to be. A line that is indented goes on
// with the line above, as Markdown has it. Tested by tests/plan/stray_lines_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "plan/lines.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// A line, as what it was meant to be.
struct Stray {
  enum class Kind {
    kLink,     ///< nothing but links to parts; not reported
    kHeading,  ///< `words` is its title
    kDrill,    ///< `text` is the line of a drill, a circuit or a kit move
    kItem,     ///< `text` behind a dash: a station of a circuit, elsewhere a note
    kNote,     ///< `words`
  };
  Kind kind = Kind::kNote;
  std::vector<PartLink> links = {};
  source::Text text = {};
  Words words = {};
  Span span = {};  ///< the whole line; nowhere for a link
};

/// What a line runs on from.
enum class RunsOnFrom { kText, kList, kQuote };

/// Judges one line of a paragraph and reports what is wrong with it; nothing when it is in its
/// place. `margin` is the indentation of the list or quote it runs on from.
std::optional<Stray> judge_line(const source::MarkNode& paragraph, const ParagraphLine& line,
                                RunsOnFrom from, std::size_t margin, Diagnostics& diagnostics);

/// The title of a line that is meant as a heading, though it stands in a text: all bold or all
/// capitals, or hardly more than the name of a part everybody has. Empty when it is none of these.
std::string heading_in_text(std::string_view raw);

/// Takes the strays out of an item or a quote and everything in it, in order.
std::vector<Stray> take_strays(source::MarkNode& block, Diagnostics& diagnostics);

/// A block of code that is a list indented by mistake, reported; empty when it is honest code.
/// `from` says whether it stands below a list's item.
std::vector<Stray> list_in_code(const source::MarkNode& code, RunsOnFrom from,
                                Diagnostics& diagnostics);

}  // namespace chalkleaf::plan
