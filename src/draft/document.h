// A whole draft: which line opens a part, which has drills, which is a remark.
//
// Each line is tried as each of these, with what speaks for it (draft/weights.h); the readings that
// together speak loudest are chosen over the whole document, as a paragraph breaker chooses lines
// (a shortest path over three states: before the parts, within them, behind them), so that one odd
// line does not derail the rest. Tested by tests/draft/document_test.cpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "draft/drills.h"
#include "draft/headings.h"
#include "draft/lines.h"
#include "rota/model.h"

namespace chalkleaf::draft {

struct DraftLine {
  /// kTable: a row that stays one. kTyped: a row whose words are said by other
  /// lines. kKept: a line of the taught form, taken as it is. kGrid: of the grid of a rotation.
  enum class Reading { kBlank, kTitle, kRemark, kHeading, kDrills, kTable, kTyped, kKept, kGrid };
  Line line;
  Reading reading = Reading::kBlank;
  HeadingRead heading;
  SpokenLine spoken;                    ///< of the whole line, or of what stands behind the heading
  std::uint32_t from = 0;               ///< where `spoken` begins, in bytes of the file
  bool dose_behind = false;             ///< behind what would be its heading stand doses
  std::optional<Group> opens = {};      ///< rounds over this line and those below it
  std::optional<Element> of_each = {};  ///< a heading that is what each drill below it has
  std::uint32_t dose_begin = 0;         ///< of a dose on the next line or in a bracket behind the
  std::uint32_t dose_end = 0;           ///< name, without the bracket; both 0 where none stands so
  bool remark_below = false;            ///< stands below such a dose, further in than its name
  bool about_child = false;
  bool label = false;  ///< `Coaches: …`: says something of the session
  bool tail = false;   ///< behind the last part
  const rota::Rotation* opens_rotation =
      nullptr;                              ///< this heading's, or the first line of its grid
  const rota::Rotation* grid_of = nullptr;  ///< that is written where this line stands
};

struct DraftDocument {
  std::vector<DraftLine> lines;
  bool home = false;
};

/// `rotations` are those of this source (rota/read.h); they must outlive what is given back.
DraftDocument read_document(const Lexicon& words, const Source& source,
                            const std::vector<rota::Rotation>& rotations = {});

}  // namespace chalkleaf::draft
