// See the header.
#include "draft/grids.h"

#include <algorithm>

#include "base/text.h"
#include "draft/markdown_text.h"

namespace chalkleaf::draft {
namespace {

void make_heading(const rota::Rotation& rotation, DraftLine& one) {
  one.reading = DraftLine::Reading::kHeading;
  one.heading.name_begin = rotation.title.span ? rotation.title.span.begin : one.line.text;
  one.heading.name_end = rotation.title.span ? rotation.title.span.end : one.line.end;
  one.heading.rest = one.heading.rest_end = one.line.end;
}

}  // namespace

bool is_line_of(const rota::Rotation& rotation, const DraftLine& one) {
  return std::find(rotation.lines.begin(), rotation.lines.end(), one.line.number) !=
         rotation.lines.end();
}

bool is_of_rotation(const DraftLine& one) {
  return one.reading == DraftLine::Reading::kGrid || one.opens_rotation != nullptr;
}

void mark_grids(const std::vector<rota::Rotation>& rotations, const DraftLine* title,
                std::vector<DraftLine>& lines) {
  for (const rota::Rotation& rotation : rotations) {
    DraftLine* heading = nullptr;
    DraftLine* grid = nullptr;
    for (DraftLine& one : lines) {
      const std::uint32_t at = rotation.heading.span.begin;
      if (rotation.heading.span && one.line.begin <= at && at < one.line.end) heading = &one;
      if (!is_line_of(rotation, one) || rotation.form == rota::Rotation::Form::kNone) continue;
      one.reading = DraftLine::Reading::kGrid;
      if (grid == nullptr) grid = &one;
    }
    if (grid != nullptr) grid->grid_of = &rotation;
    if (heading == title) heading = nullptr;
    DraftLine* opens = heading != nullptr ? heading : grid;
    if (opens == nullptr) continue;
    opens->opens_rotation = &rotation;
    if (!opens->line.clock && rotation.start()) opens->line.clock = Clock{*rotation.start(), {}};
    if (heading != nullptr) make_heading(rotation, *heading);
  }
}

std::vector<rota::Piece> table_pieces(const rota::Rotation& rotation) {
  std::vector<rota::Piece> out;
  bool head = true;
  for (const std::vector<rota::Piece>& row : rota::table_of(rotation)) {
    for (const rota::Piece& piece : row) {
      out.push_back({"| ", {}});
      out.push_back({escaped(piece.text), piece.span ? piece.span : rotation.span});
      out.push_back({piece.text.empty() ? "" : " ", {}});
    }
    out.push_back({"|\n", {}});
    if (!head) continue;
    for (std::size_t i = 0; i < row.size(); ++i) out.push_back({"|---", {}});
    out.push_back({"|\n", {}});
    head = false;
  }
  return out;
}

std::string grid_text(const rota::Rotation& rotation) {
  std::string out;
  for (const std::vector<rota::Piece>& row : rota::table_of(rotation)) {
    for (const rota::Piece& piece : row) out += " " + lower_ascii(piece.text);
  }
  if (const rota::Pause* behind = rota::pause_behind(rotation))
    out += " " + lower_ascii(behind->words);
  return out;
}

bool has_other_words(std::string_view text, const std::string& words) {
  const std::string line = lower_ascii(text);
  std::string word;
  for (std::size_t i = 0; i <= line.size(); ++i) {
    if (i < line.size() && is_letter(line[i])) {
      word += line[i];
      continue;
    }
    if (word.size() > 1 && words.find(word) == std::string::npos) return true;
    word.clear();
  }
  return false;
}

}  // namespace chalkleaf::draft
