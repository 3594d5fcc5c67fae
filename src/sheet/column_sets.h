// What stands on a sheet in one, two or three columns: which of it together in how many is chosen
// for the whole document. Internal to the room.
//
// A sheet is written twice. The first time everything is measured at each width and all ways to set
// some of it together are offered to the page planner (page/page_breaks.h) as blocks of the right
// height with nothing in them; the second time what it chose is built. Columns may go on from one
// part into the next, the part's heading in its column, where that saves a page or a hole. Only
// heights are needed for choosing, so what is built is built once, at most four times measured.
// Tested by tests/sheet/home_compact_test.cpp and coach_card_test.cpp.
#pragma once

#include <array>
#include <functional>
#include <memory>
#include <utility>
#include <vector>

#include "sheet/builder.h"
#include "sheet/columns.h"

namespace chalkleaf::sheet {

inline constexpr std::size_t kMostInRow = 3;

/// A piece of the sheet, in the order in which it is read.
struct FlowItem {
  enum class Kind {
    kHead,   ///< a part's heading
    kEntry,  ///< a drill; hairlines stand between them
    kOther,  ///< kit to fetch, a note
  };
  Kind kind = Kind::kEntry;
  Span origin;
  /// Makes it at that width. It is called for one item after the other: for each at every width the
  /// first time, once the second time.
  std::function<Block(Length width)> make;
  /// In the place of `make`: slabs over the whole width, ready as they are.
  std::function<std::vector<page::Slab>()> slabs;
  std::size_t most = kMostInRow;  ///< columns it may stand in
  std::int64_t three = 0;         ///< what three of them are disliked
  bool keep_with_next = false;
  bool goes_on = false;  ///< a circuit's station: better in one set with the item before it
  std::optional<page::OutlineEntry> outline;
  std::shared_ptr<const Block> continuation;  ///< see page::Slab
};

/// Kit to fetch, a note.
inline FlowItem other_item(Span origin) {
  FlowItem out;
  out.kind = FlowItem::Kind::kOther;
  out.origin = origin;
  return out;
}

struct ColumnStyle {
  std::size_t most = 2;  ///< columns
  Length between;        ///< two columns
  Length gap;            ///< between entries below each other, a hairline in its middle
  Length above_head;
  Length below_head;
  std::int64_t alone = 0;  ///< what an entry over the whole width is disliked; see page::Way
  std::int64_t head = 0;   ///< the same of a heading that stands in a column
};

class ColumnSets {
 public:
  using Write = std::function<std::vector<page::Section>()>;

  explicit ColumnSets(Builder& builder) : b_(builder) {}

  /// Writes the sheet twice; what the second time gives.
  std::vector<page::Section> write_twice(const plan::Session& session, std::string_view kind_label,
                                         const Write& write);
  /// Sets the items into the section of that number of the document.
  void add(const std::vector<FlowItem>& items, const ColumnStyle& style, std::size_t section_number,
           page::Section& section);
  /// Of a column, where there are so many.
  Length column(std::size_t columns, const ColumnStyle& style) const;

 private:
  /// How high an item is in one, two and three columns.
  using Heights = std::array<Length, kMostInRow>;
  /// Items that stand together.
  struct Together {
    std::size_t items = 1;
    std::size_t columns = 1;
  };
  /// Items as they were offered: for each slab that begins one of them what its ways are.
  struct Offered {
    std::size_t section = 0;
    std::vector<std::pair<std::size_t, std::vector<Together>>> slabs;
    std::vector<Heights> heights;  ///< of every item
  };

  void measure(const std::vector<FlowItem>& items, const ColumnStyle& style, Offered& offered);
  void offer(const std::vector<FlowItem>& items, std::size_t first, const ColumnStyle& style,
             Offered& offered, page::Section& section) const;
  void build(const std::vector<FlowItem>& items, const ColumnStyle& style, const Offered& offered,
             page::Section& section);
  std::vector<Together> chosen(const Offered& offered) const;
  Block column_of(const std::vector<FlowItem>& items, std::size_t from, std::size_t to,
                  Length width, const ColumnStyle& style) const;
  Block closed(Block set, bool with_rule, const ColumnStyle& style) const;

  Builder& b_;
  std::vector<Offered> offered_;
  std::vector<page::ChosenWay> ways_;
  bool measured_ = false;
  std::size_t next_ = 0;  ///< of `offered_`, the second time
};

}  // namespace chalkleaf::sheet
