// Pose files become figures.
//
// A file is YAML: a `family` and a map `figures`; themes/figures/*.yaml ships with the program, a
// club's `figures/*.yaml` adds to it and may replace figures by name. Everything that is wrong is
// reported with its place, and the figure concerned is left out. Tested by
// tests/figure/read_test.cpp.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "figure/pose.h"
#include "source/packed_yaml.h"
#include "source/tree.h"

namespace chalkleaf::figure {

/// Descriptions as they stand in files, before one follows `from` to another.
class Descriptions {
 public:
  /// Takes all figures of a file; what is no figure is reported. A name that is there already is
  /// replaced when that one came from an earlier library (`replaces`), else reported.
  void take(const SourcePtr& source, bool replaces, Diagnostics& diagnostics);
  /// Every description but those read before (see below), followed to its end and read, in the
  /// order of family and file. Reports unknown keys and joints, bad values, circles of `from`.
  std::vector<Figure> resolve(Diagnostics& diagnostics) const;
  /// One of them, by its place in that order; nothing when it does not resolve. Safe to call from
  /// several threads.
  std::optional<Figure> resolve(std::size_t place, Diagnostics& diagnostics) const;
  /// Of every figure described, those too that do not resolve.
  std::vector<std::string> names() const {
    std::vector<std::string> out;
    for (const Entry& entry : entries_) out.push_back(entry.name);
    return out;
  }
  std::size_t size() const { return entries_.size(); }
  const std::string& name(std::size_t place) const { return entries_[place].name; }
  /// Other names, as far as they are known without reading the whole figure: of one that
  /// was_read_before.
  std::vector<std::string> also(std::size_t place) const;
  /// True for a figure of a packed file (base/pack.h): it was read without a word when the program
  /// was built, so it need not be read to see whether it is sound.
  bool was_read_before(std::size_t place) const { return entries_[place].packed.has_value(); }
  /// Those of files that were not read before, with the places of their names.
  std::vector<std::pair<std::string, Span>> places() const {
    std::vector<std::pair<std::string, Span>> out;
    for (const Entry& entry : entries_) {
      if (!entry.packed) out.emplace_back(entry.name, entry.span);
    }
    return out;
  }

 private:
  void take_packed(const source::PackedNode& root);
  struct Entry {
    std::string name;
    Span span;
    std::string family;
    source::YamlNode node;  ///< empty when packed
    bool replaceable = false;
    std::optional<source::PackedNode> packed = {};
  };
  friend class FigureReader;
  std::vector<Entry> entries_;
  std::map<std::string, std::size_t> by_name_;
};

}  // namespace chalkleaf::figure
