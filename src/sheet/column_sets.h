// Entries of a sheet in one, two or three columns: which of them stand together in how many is
// chosen for the whole document. Internal to the room.
//
// A sheet is written twice. The first time every entry is measured at each width and all ways to
// set some of them together are offered to the page planner (page/page_breaks.h) as blocks of the
// right height with nothing in them; the second time what it chose is built. Only heights are
// needed for choosing, so what is built is built once, at most four times measured. Tested by
// tests/sheet/home_compact_test.cpp.
#pragma once

#include <array>
#include <functional>
#include <utility>
#include <vector>

#include "sheet/builder.h"

namespace chalkleaf::sheet {

inline constexpr std::size_t kMostInRow = 3;

struct ColumnStyle {
  std::size_t most = 2;  ///< columns
  Length between;        ///< two columns
  Length gap;            ///< between entries below each other, a hairline in its middle
  Length space_before;
  std::int64_t alone = 0;  ///< what an entry over the whole width is disliked; see page::Way
  std::int64_t three = 0;  ///< the same of three columns
};

class ColumnSets {
 public:
  using Make = std::function<Block(std::size_t entry, Length width)>;
  using Write = std::function<std::vector<page::Section>()>;

  explicit ColumnSets(Builder& builder) : b_(builder) {}

  /// Writes the sheet twice; what the second time gives.
  std::vector<page::Section> write_twice(const plan::Session& session, std::string_view kind_label,
                                         const Write& write);
  /// Sets the entries into the section of that number of the document. `make` is called for one
  /// entry after the other, and may be called again for the same after its nodes were taken back.
  void add(const std::vector<Span>& origins, const ColumnStyle& style, std::size_t section_number,
           page::Section& section, const Make& make);
  /// Of a column, where there are so many.
  Length column(std::size_t columns, const ColumnStyle& style) const;

 private:
  /// How high an entry is in one, two and three columns.
  using Heights = std::array<Length, kMostInRow>;
  /// Entries that stand together.
  struct Together {
    std::size_t entries = 1;
    std::size_t columns = 1;
  };
  /// A set of entries as it was offered: for each of its slabs what its ways are.
  struct Offered {
    std::size_t section = 0;
    std::vector<std::pair<std::size_t, std::vector<Together>>> slabs;
    std::vector<Heights> heights;
  };

  void offer(const std::vector<Span>& origins, const ColumnStyle& style, Offered offered,
             page::Section& section);
  std::vector<Together> chosen(const Offered& offered) const;
  Block column_of(std::vector<Block> entries, Length width, Length gap) const;

  Builder& b_;
  std::vector<Offered> offered_;
  std::vector<page::ChosenWay> ways_;
  bool measured_ = false;
  std::size_t next_ = 0;  ///< of `offered_`, the second time
};

}  // namespace chalkleaf::sheet
