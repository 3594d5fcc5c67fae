// A session becomes the display list of one of its sheets.
// Tested by tests/sheet/.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "base/date.h"
#include "base/diagnostic.h"
#include "figure/catalogue.h"
#include "page/display_list.h"
#include "plan/model.h"
#include "reason/timetable.h"
#include "sheet/figure_art.h"
#include "sheet/labels.h"
#include "sheet/theme.h"
#include "type/lines.h"

namespace chalkleaf::sheet {

/// Where a sheet's pages stand in a document of several.
struct Numbering {
  std::size_t first = 1;  ///< number of its first page
  std::size_t pages = 1;  ///< of the whole document
};

/// The club's logo, beside the title of the first page.
struct Logo {
  std::string source;  ///< as a picture of the coach's names its pixels
  int width = 0;       ///< pixels
  int height = 0;
};

/// What the coach has to see first.
struct Caution {
  std::string text;
  bool is_danger = false;  ///< can hurt a child as written; else only something that is open
};

/// Everything a sheet needs besides the session. Refers to values that must outlive the call.
struct Context {
  const Theme& theme;
  const Labels& labels;
  const plan::Club& club;
  Paper paper = Paper::kA5;
  std::string revision;               ///< `4f2a91c`, `4f2a91c, edited`, or empty
  std::optional<Date> revision_date;  ///< printed beside the revision
  std::optional<std::int64_t> created;
  std::string producer;
  const figure::Drawings* drawings = nullptr;  ///< none: sheets without figures
  FigureArt* art = nullptr;  ///< keeps what `drawings` drew in colours; none: made each time
  plan::Filing filing = plan::Filing::kNone;
  std::optional<Numbering> numbering = {};  ///< none: a document of its own
  const Logo* logo = nullptr;               ///< may be none
  std::vector<Caution> cautions = {};       ///< of the card: on top of its safety box
};

/// Sets the sheet. What does not fit or cannot be shown is reported (`text-overflow`,
/// `missing-glyph`).
page::DisplayList make(Kind kind, const plan::Session& session, const reason::Timetable& timetable,
                       const Context& context, type::Typesetter& typesetter,
                       Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
