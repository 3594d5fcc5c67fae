// One drill of the home sheet in its frame, in plain words. Internal to the room.
//
// home_panel.cpp has the drills, home_circuit.cpp the circuits. What and how much; how; and what
// else it can be; at its foot the days. A circuit is a panel over the whole width with its stations
// numbered. Tested by tests/sheet/home_sheet_test.cpp and circuit_test.cpp.
#pragma once

#include <vector>

#include "sheet/builder.h"
#include "sheet/dose_text.h"
#include "sheet/home_days.h"

namespace chalkleaf::sheet {

class HomePanels {
 public:
  HomePanels(const plan::Session& session, HomeDays& days, Builder& builder);

  /// Whether panels stand two in a row.
  bool two_columns() const { return two_columns_; }
  Length gap() const { return b_.look().row_padding; }

  enum class Shape {
    kHalf,     ///< half a row, the figure on top
    kHalfLow,  ///< the same with a smaller figure, where that saves a page
    kWhole,    ///< a whole row, the figure at its side
  };
  /// The panel of the drill of that number; its figure stands on the ground of a strip
  /// `figure_height` high, so that names beside each other are level.
  Block drill(const plan::Drill& drill, const reason::DrillTime& time, int number,
              Length figure_height, Shape shape);
  /// How high the drill's figures are; nothing without any.
  Length figure_height(const plan::Drill& drill, Shape shape) const;
  /// A circuit, or a drill whose panel is too high for a page, over the whole width; in several
  /// frames when one is too high.
  std::vector<Block> in_frames(const plan::Drill& drill, const reason::DrillTime& time, int number);
  /// Whether a page cannot hold the panel below the heading of its part.
  bool is_too_high(const Block& panel);
  /// A line that says what to fetch or put away.
  Block kit_move(const plan::KitMove& move);

  // ---- the usual, compact sheet (home_entry.cpp)

  enum class Ticked {
    kEach,  ///< the drill has boxes of its own
    kOnce,  ///< the part's heading has them for all its drills
  };
  /// The drill without a frame, as wide as that.
  Block entry(const plan::Drill& drill, const reason::DrillTime& time, int number, Length width,
              Ticked ticked);
  /// What stands above a circuit's stations.
  std::vector<Block> circuit_head(const plan::Drill& drill, const reason::DrillTime& time,
                                  int number, Length width);
  Block station_entry(const plan::Drill& station, const reason::DrillTime& time, std::size_t number,
                      NodeId list, Length width);

 private:
  class RunOn;
  enum class Ground { kPaper, kTint };
  using Scene = std::shared_ptr<const figure::Scene>;
  NodeId paragraph() { return b_.node(parent_, Role::kP); }
  Owner paragraph_owner() { return Owner::of(paragraph()); }
  Length inner_width(Length outer) const;

  std::vector<Scene> scenes_of(const plan::Drill& drill) const;
  Size most_of(std::size_t count, Length width, Shape shape) const;
  Length figure_column() const;
  Block figures(const std::vector<Scene>& scenes, Length width, Length height);
  Block with_small_figure(Block words, const plan::Words& figure);
  Block number_and(Block words, Owner owner);
  Block name(const plan::Drill& drill);
  std::vector<Block> choice_lines(const plan::Drill& drill);
  using Plain = PlainDose (*)(const plan::Dose&, std::string_view, const Labels&);
  std::vector<Block> dose(const plan::Drill& drill, const reason::DrillTime& time,
                          Plain plain = plain_dose);
  std::vector<Block> how(const plan::Drill& drill, Length room);
  std::vector<Block> others(const plan::Drill& drill, Length room, bool rungs_beside = false);
  std::vector<Block> station_rows(const plan::Drill& drill, const reason::DrillTime& time,
                                  Length room);
  Length heading() const;
  Length room_below_heading() const;
  std::vector<Block> frames(std::vector<Block> groups, Length room, const Block& continued);
  Block continued_name(const plan::Drill& drill);
  Block station(const plan::Drill& station, const reason::DrillTime& time, std::size_t number,
                NodeId list, Length room);
  Block labelled(std::string_view label, std::vector<type::Inline> words);
  Block labelled(std::string_view label, const plan::Words& words);
  std::vector<type::Inline> kit_pieces(const plan::KitUse& use) const;
  Block substitute(const plan::Substitute& substitute, Length room);
  Block padded(Block content, Ground ground) const;

  std::vector<Block> add_how(const plan::Drill& drill, Length room, RunOn& text);
  void add_rungs(const std::vector<plan::Variation>& easier,
                 const std::vector<plan::Variation>& harder, RunOn& text);
  std::vector<Block> brief_words(const plan::Drill& drill, Length room);
  /// A drill's figures and their nodes, read behind its name.
  struct Shown {
    std::vector<Scene> scenes;
    std::vector<NodeId> nodes;
  };
  Shown shown(const plan::Drill& drill);
  Block around_figure(const Shown& figures, std::vector<Block> beside, std::vector<Block> below,
                      Length width);
  Block with_days(Block title, Block days, Length room);

  const plan::Session& session_;
  HomeDays& days_;
  Builder& b_;
  const Labels& labels_;
  bool two_columns_ = true;
  int number_ = 0;                  ///< of the drill whose panel is made now
  Shape shape_ = Shape::kWhole;     ///< of that panel
  NodeId parent_ = Builder::kRoot;  ///< of the paragraphs that are made now
};

}  // namespace chalkleaf::sheet
