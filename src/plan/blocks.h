// Markdown blocks that are not drills: notes in their place, and safety quotes.
// Tested by tests/plan/body_test.cpp, tables_test.cpp and readers_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// Adds what a block says as notes, in order, so that nothing of it vanishes.
void add_notes(const source::MarkNode& block, std::vector<Note>& out);
/// Running text as notes of a kind, parted by whom it is for.
void add_text_notes(Note::Kind kind, const source::Text& text, std::vector<Note>& out);
/// A list item and everything in it as notes.
void add_item_notes(const source::MarkNode& item, std::vector<Note>& out);
/// Gives the notes from `begin` on that are for everybody to one reader.
void keep_for(Note::For reader, std::vector<Note>& notes, std::size_t begin);
/// A blockquote as safety words, without a leading `Safety.`; nothing when it is empty.
std::optional<Safety> read_safety(const source::MarkNode& quote);
/// The item's first paragraph; null when it begins with anything else.
const source::MarkNode* first_paragraph(const source::MarkNode& item);

}  // namespace chalkleaf::plan
