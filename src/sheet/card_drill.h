// The words of one drill on the coach card. Internal to the room.
#pragma once

#include "sheet/builder.h"

namespace chalkleaf::sheet {

/// What all drills of a part have in common: its heading says it, they leave it out.
struct InCommon {
  std::string place;  ///< and waves
  std::optional<Duration> rest;
  std::optional<Duration> every;
  std::optional<int> effort;

  std::string words(const Labels& labels) const;
};

/// Makes the lines of one drill; the card says which cell of its table they belong to.
class CardDrill {
 public:
  CardDrill(const plan::Session& session, const plan::Drill& drill, const reason::DrillTime& time,
            Builder& builder)
      : session_(session), drill_(drill), time_(time), b_(builder), labels_(builder.labels()) {}

  /// Where and in how many waves, as words; empty where there is nothing to say.
  std::vector<type::Inline> place_pieces() const;
  void leave_out(const InCommon& common) { common_ = &common; }
  /// The name and, where they fit into `room`, the dose and the station behind it.
  Block name(NodeId cell, Length room);
  /// What of dose and station did not fit behind the name, on a line of its own.
  std::vector<Block> dose(NodeId cell);
  /// The cues, the kit it uses and what to record: one line, or none.
  std::vector<Block> cues(NodeId cell);
  /// Both: cues, and what others() gives; where paper is dear and no notes stand between them, what
  /// is easier and harder runs on behind the cues.
  std::vector<Block> rest(NodeId cell, NodeId others, Length room);
  /// A station of a circuit: name, dose and cues on one line if they fit into `room`, else on two.
  std::vector<Block> station(NodeId cell, Length room);
  /// Notes, easier and harder on one line behind their marks, substitutes; `room` is their width.
  std::vector<Block> others(NodeId cell, Length room);

 private:
  bool has_cues() const {
    return !drill_.cues.empty() || !drill_.uses.empty() || !drill_.record.empty();
  }
  void add_rungs(std::string_view key, const std::vector<plan::Variation>& rungs,
                 page::TextBlock& line) const;
  bool is_dose_of_drill(const plan::Substitute& substitute) const;
  Block substitute(const plan::Substitute& substitute, NodeId cell);
  type::Inline plain(const std::string& text, Span span) const {
    return b_.piece(TextRole::kVariation, text, span);
  }
  /// A middle dot that stays with what it follows.
  type::Inline dot(TextRole role) const;

  std::vector<type::Inline> dose_pieces() const;
  std::vector<type::Inline> cue_pieces() const;
  Block line(std::vector<type::Inline> pieces, TextRole role, NodeId cell);

  const InCommon* common_ = nullptr;     // none: it says all
  std::vector<type::Inline> left_over_;  // of dose and station, for a line below the name
  const plan::Session& session_;
  const plan::Drill& drill_;
  const reason::DrillTime& time_;
  Builder& b_;
  const Labels& labels_;
};

}  // namespace chalkleaf::sheet
