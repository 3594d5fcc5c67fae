// One pass of yaml-cpp over a text, by events: duplicates are kept and every node has its place,
// which yaml-cpp's own tree offers neither of. This file and read_yaml.cpp are the only ones that
// know yaml-cpp.
//
// Aliases, anchors, tags and merge keys are refused (a plan has no use for them, and they are how
// YAML files explode). Tested by tests/source/yaml_test.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "source/tree.h"

namespace chalkleaf::source {

/// Nesting and number of values that are read; far above any honest file.
inline constexpr std::size_t kDeepestYaml = 32;
inline constexpr std::size_t kMostYamlNodes = 20'000;

/// A half-open range of offsets in a YAML text.
struct Stretch {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Why a pass stopped early, and what it had seen by then. Offsets are in the text it was given.
struct YamlFailure {
  enum class Kind {
    kSyntax,         ///< yaml-cpp says it cannot go on at `at`
    kOpenBracket,    ///< the `[` or `{` at `opened` is not closed where it should be
    kOpenQuote,      ///< the quotation mark at `opened` is not closed where it should be
    kSecondTree,     ///< a line at `at` that does not belong to the map above
    kNoMap,          ///< bare text instead of entries
    kUnknownEscape,  ///< a `\` in double quotes before a letter that means nothing there
  };
  Kind kind = Kind::kSyntax;
  std::size_t at = 0;
  std::size_t opened = 0;
};

struct YamlPass {
  YamlNode root;  ///< kNull when the text is empty
  std::optional<YamlFailure> failure;
};

/// Where the text handed to yaml-cpp stands in the file.
struct YamlText {
  const Source* source = nullptr;
  std::uint32_t offset = 0;       ///< of the text's first byte in the file
  std::string text;               ///< as yaml-cpp gets it: the same bytes, some of them blanked
  std::vector<Stretch> left_out;  ///< values blanked because they could not be read

  Span span(std::size_t begin, std::size_t end) const {
    return {source, offset + static_cast<std::uint32_t>(begin),
            offset + static_cast<std::uint32_t>(end)};
  }
};

/// Reads once. What is well-formed but refused is reported; a failure is only handed back.
YamlPass read_once(const YamlText& yaml, Diagnostics& diagnostics);

}  // namespace chalkleaf::source
