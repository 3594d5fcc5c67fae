// The boxes of the home sheet that are no drills: what comes before and after them. Internal to the
// room. Tested by tests/sheet/home_sheet_test.cpp.
#pragma once

#include <vector>

#include "sheet/builder.h"
#include "sheet/home_days.h"

namespace chalkleaf::sheet {

/// A frame around a block.
Block framed(const Builder& builder, Block content, Use use, Length width,
             std::optional<Use> fill = std::nullopt);
/// A drill's panel, framed and filled as the look has it.
Block panel(const Builder& builder, Block content);

class HomeBoxes {
 public:
  HomeBoxes(const plan::Session& session, HomeDays& days, Builder& builder)
      : session_(session), days_(days), b_(builder), labels_(builder.labels()) {}

  /// What a grown-up reads and ticks first.
  Block adults();
  /// What is needed.
  Block kit();
  /// The club's words for families that stand on this sheet, in a box that wide.
  Block words(const std::vector<const plan::ExplainedWord*>& words, Length outer);
  /// How hard it was, a line of numbers a day.
  std::vector<Block> effort();
  /// When to stop, who to ask.
  Block care();

  // ---- the usual, compact sheet

  /// The grown-ups' box and what is needed, beside each other where there is room; when to stop,
  /// and what the marks mean.
  Block opening();
  /// The same question as `effort`, a box a time.
  Block effort_line();
  /// The words without a frame.
  std::vector<Block> plain_words(const std::vector<const plan::ExplainedWord*>& words);
  /// Who to ask, the caution, the way to the page.
  Block foot();

 private:
  Length list_box() const { return b_.look().text(TextRole::kBoxText).size.scaled(1.05); }
  Owner paragraph() { return Owner::of(b_.node(Builder::kRoot, Role::kP)); }
  Block meaning(const plan::ExplainedWord& word, Length word_width, NodeId list);
  std::vector<Block> adult_lines();
  std::vector<Block> kit_lines();
  Block marks_line();
  Block words_line(const std::vector<const plan::ExplainedWord*>& words);
  Block number_cell(const std::string& number, Owner owner) const;

  const plan::Session& session_;
  HomeDays& days_;
  Builder& b_;
  const Labels& labels_;
};

}  // namespace chalkleaf::sheet
