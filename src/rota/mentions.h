// Groups and stations that are named outside of the grid, and what is said of them there: how many
// they are, who coaches them, when they come and go. Internal to the room. Tested by
// tests/rota/around_test.cpp.
#pragma once

#include <vector>

#include "rota/lines.h"
#include "rota/model.h"
#include "rota/words.h"

namespace chalkleaf::rota {

/// A group or a station that a text names.
struct Mention {
  enum class What { kGroup, kStation };
  What what = What::kGroup;
  std::size_t which = 0;
  std::size_t at = 0;  ///< the first of its tokens
  std::size_t size = 1;
};

/// Finds the names of one rotation in texts.
class Mentions {
 public:
  Mentions(const Words& words, const Rotation& rotation);
  std::vector<Mention> in(std::string_view text, const std::vector<Token>& tokens) const;
  /// The station whose name, or one of whose names, is that of a part: `VAULT (Jo)`, `FX`.
  std::optional<std::size_t> station_of_title(std::string_view title) const;

 private:
  struct Known {
    Mention::What what;
    std::size_t which;
    std::vector<std::string> tokens;
  };
  void add(Mention::What what, std::size_t which, std::string_view name);
  const Words& words_;
  std::vector<Known> known_;
};

void read_mentions(const Source& source, const std::vector<Line>& lines, const Words& words,
                   Rotation& rotation);

/// `D not first on vault`; kUnread where it cannot be read.
Rule read_rule(const Words& words, const Rotation& rotation, std::string_view text);

}  // namespace chalkleaf::rota
