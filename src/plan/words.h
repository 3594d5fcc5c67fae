// Small steps from running text to the model's words, and the hints that suggest one.
// Tested by tests/plan/session_test.cpp through everything that uses them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "dose/words_of.h"
#include "plan/dose.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// `words_of` without emphasis: for names and titles, which the sheets set in a type of their own.
Words plain_words_of(const source::Text& text);
/// Appends `more` and its emphasis, `between` the two where neither is empty.
void append_words(Words& to, std::string_view between, const Words& more);
/// The text of a paragraph or heading, for printing: web links have their address behind them, HTML
/// comments are gone, a picture without a text is named by its file.
source::Text printed_text(const source::MarkNode& node);
/// `node` without HTML comments, its links moved along.
source::MarkNode without_comments(const source::MarkNode& node);
/// The text between sentence ends: `.`, `!` or `?` before white space and the next sentence's
/// begin.
std::vector<Words> sentences_of(const source::Text& text);

/// "did you mean `place`?", or else "the keys are `a`, `b` and `c`" with `kind` for "keys".
std::string suggestion(std::string_view word, const std::vector<std::string>& known,
                       std::string_view kind);

}  // namespace chalkleaf::plan
