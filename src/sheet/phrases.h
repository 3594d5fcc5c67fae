// Every phrase the sheets can say.
#pragma once

#include <string_view>
#include <vector>

namespace chalkleaf::sheet {

struct PhraseForm {
  std::string_view key;
  std::string_view places;  ///< the names that may stand in braces, with spaces between
  bool counted = false;     ///< has a form for one and a form for the rest
};

/// In the order of themes/labels/en.yaml.
const std::vector<PhraseForm>& all_phrases();

}  // namespace chalkleaf::sheet
