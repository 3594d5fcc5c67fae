// All figures of a club, found by name, and their drawings, made once for each age.
//
// Tested by tests/figure/catalogue_test.cpp.
#pragma once

#include <deque>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "figure/pose.h"
#include "figure/read.h"
#include "figure/scene.h"

namespace chalkleaf::figure {

/// Read-only once made; safe to share between threads.
class Catalogue {
 public:
  Catalogue() = default;
  /// `described` names figures that need not be among `figures`: what is wrong with one is said
  /// where it is described, not at every drill that names it.
  explicit Catalogue(std::vector<Figure> figures, const std::vector<std::string>& described = {});
  /// All of `descriptions`. Those that were read before, when the program was built, are read again
  /// only when they are asked for; what is wrong with the others is reported now.
  Catalogue(Descriptions descriptions, Diagnostics& diagnostics);
  Catalogue(const Catalogue&) = delete;  // drawings point into it
  Catalogue& operator=(const Catalogue&) = delete;

  /// Reads them all.
  std::vector<const Figure*> all() const;
  /// Those described outside of the program's own files.
  std::vector<const Figure*> own() const;
  /// By name or other name, ignoring ASCII case.
  const Figure* find(std::string_view name) const;
  /// Whether a figure of this name is described, however badly.
  bool is_described(std::string_view name) const;
  std::optional<std::string> closest(std::string_view name) const;

 private:
  /// A figure, or where it is described; null in the end when it does not resolve.
  struct Slot {
    std::once_flag once;
    std::optional<Figure> figure;
    std::optional<std::size_t> place;  ///< in descriptions_; none: it is there already
    bool own = true;
  };
  const Figure* at(std::size_t slot) const;
  void add_name(std::string_view name, std::size_t slot);

  Descriptions descriptions_;
  mutable std::deque<Slot> slots_;
  std::map<std::string, std::size_t, std::less<>> by_name_;  ///< in lower case
  std::set<std::string, std::less<>> described_;             ///< in lower case
};

/// How much of a figure is drawn.
enum class Extent {
  kWhole,   ///< a movement with its ghost and arrow, a row with all its frames
  kGlance,  ///< one pose, for where there is little room
};

/// Draws on demand and keeps what it has drawn. One for a run; safe to share between threads, since
/// a drawing depends on nothing but the figure and the age.
class Drawings {
 public:
  /// `catalogue` must outlive it.
  explicit Drawings(const Catalogue& catalogue) : catalogue_(catalogue) {}

  const Catalogue& catalogue() const { return catalogue_; }
  /// Null when there is no such figure. `years` is rounded to a whole number.
  std::shared_ptr<const Scene> find(std::string_view name, double years, Extent extent) const;

 private:
  struct Key {
    const Figure* figure;
    int years;
    Extent extent;
    auto operator<=>(const Key&) const = default;
  };
  const Catalogue& catalogue_;
  mutable std::mutex mutex_;
  mutable std::map<Key, std::shared_ptr<const Scene>> drawn_;
};

}  // namespace chalkleaf::figure
