// What a coach did when YAML cannot be read: the usual slips, each with its place and what to
// change.
//
// yaml-cpp says where it gave up, which is often a line too late and never in a coach's words; so
// the lines around that place are looked at again for the slips people make. Tested by
// tests/source/yaml_mistakes_test.cpp.
#pragma once

#include <optional>
#include <string>

#include "source/yaml_tree.h"

namespace chalkleaf::source {

struct YamlMistake {
  Stretch where;
  std::string message;
  std::string hint;
  Stretch leave_out;  ///< blank this and read again to check the rest
  /// What cures it where that is plain: these bytes become `text`.
  struct Cure {
    Stretch where;
    std::string text;
  };
  std::optional<Cure> cure = {};
};

YamlMistake explain(const YamlText& yaml, const YamlFailure& failure);

}  // namespace chalkleaf::source
