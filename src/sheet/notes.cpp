// Text of the coach's that is no drill: paragraphs, tables, pictures, for the reader they are for.
//
// Tested by tests/sheet/notes_test.cpp.
#include <algorithm>

#include "sheet/builder.h"
#include "sheet/note_table.h"

namespace chalkleaf::sheet {
namespace {

using Run = std::vector<const plan::Note*>;

// Whether `note` goes on with the table that `run` is.
bool continues(const Run& run, const plan::Note& note) {
  return !run.empty() && run.back()->kind == plan::Note::Kind::kTableRow &&
         note.kind == plan::Note::Kind::kTableRow && !note.table_head;
}

}  // namespace

bool Builder::is_for_reader(const plan::Note& note) const {
  switch (note.reader) {
    case plan::Note::For::kAll:
      break;
    case plan::Note::For::kCoach:
      return is_for_coaches(kind_);
    case plan::Note::For::kFamily:
      return kind_ == Kind::kHomeSheet;
  }
  return true;
}

std::vector<Block> Builder::notes(NodeId parent, std::span<const plan::Note> all, Length room) {
  std::vector<Block> out;
  Run run;
  const auto finish = [&] {
    if (!run.empty()) out.push_back(stack(note_pieces(parent, run, room)));
    run.clear();
  };
  for (const plan::Note& one : all) {
    if (!is_for_reader(one)) continue;
    if (!continues(run, one)) finish();
    run.push_back(&one);
  }
  finish();
  return out;
}

std::vector<Block> Builder::note_pieces(NodeId parent, std::span<const plan::Note* const> run,
                                        Length room) {
  if (run.size() > 1 || run.front()->kind == plan::Note::Kind::kTableRow) {
    std::vector<Block> table = note_table(parent, run, room, *this);
    if (!table.empty()) return table;
  }
  std::vector<Block> lines;
  for (const plan::Note* one : run) lines.push_back(note(parent, *one));
  return lines;
}

Block Builder::note(NodeId parent, const plan::Note& note) {
  if (note.kind == plan::Note::Kind::kPicture) return picture(parent, note);
  const bool heading = note.kind == plan::Note::Kind::kSubheading;
  return text(heading ? TextRole::kStrong : TextRole::kNote, note.words,
              Owner::of(node(parent, Role::kP)));
}

std::vector<const plan::Note*> note_run(const std::vector<plan::Step>& steps, std::size_t first) {
  Run out;
  for (std::size_t i = first; i < steps.size(); ++i) {
    const auto* note = std::get_if<plan::Note>(&steps[i]);
    if (note == nullptr || (i > first && !continues(out, *note))) break;
    out.push_back(note);
  }
  return out;
}

bool is_paragraph(const std::vector<const plan::Note*>& run) {
  const plan::Note::Kind kind = run.front()->kind;
  return run.size() == 1 && kind != plan::Note::Kind::kTableRow &&
         kind != plan::Note::Kind::kPicture;
}

bool has_content(const plan::Part& part, const Builder& builder) {
  if (part.steps.empty()) return true;  // a heading alone is a heading the coach wants
  return std::any_of(part.steps.begin(), part.steps.end(), [&](const plan::Step& step) {
    const auto* note = std::get_if<plan::Note>(&step);
    return note == nullptr || builder.is_for_reader(*note);
  });
}

}  // namespace chalkleaf::sheet
