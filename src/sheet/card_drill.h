// The words of one drill on the coach card. Internal to the room.
#pragma once

#include "sheet/builder.h"

namespace chalkleaf::sheet {

/// Makes the lines of one drill; the card says which cell of its table they belong to.
class CardDrill {
 public:
  CardDrill(const plan::Session& session, const plan::Drill& drill, const reason::DrillTime& time,
            Builder& builder)
      : session_(session), drill_(drill), time_(time), b_(builder), labels_(builder.labels()) {}

  /// The name and, where both fit into `room`, the dose behind it.
  Block name(NodeId cell, Length room);
  /// The dose on a line of its own, if it did not fit behind the name.
  std::vector<Block> dose(NodeId cell);
  /// The cues and the kit it uses: one line, or none.
  std::vector<Block> cues(NodeId cell);
  /// Notes, easier and harder in two columns, substitutes.
  std::vector<Block> others(NodeId cell);

 private:
  Block variations(std::string_view key, const std::vector<plan::Variation>& variations,
                   NodeId cell);
  Block substitute(const plan::Substitute& substitute, NodeId cell);
  type::Inline plain(const std::string& text, Span span) const {
    return b_.piece(TextRole::kVariation, text, span);
  }
  /// A middle dot that stays with what it follows.
  type::Inline dot(TextRole role) const;

  type::Inline dose_piece() const;

  bool dose_is_placed_ = false;
  const plan::Session& session_;
  const plan::Drill& drill_;
  const reason::DrillTime& time_;
  Builder& b_;
  const Labels& labels_;
};

}  // namespace chalkleaf::sheet
