// The looks a club's sheets can have: those that ship with the program (themes/*.yaml) and the
// club's own (looks/*.yaml), which go before shipped ones of the same name.
//
// A look's name is its file's. Tested by tests/club/looks_test.cpp.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/files.h"
#include "club/resources.h"
#include "sheet/theme.h"

namespace chalkleaf::club {

inline constexpr std::string_view kUsualLook = "classic";

/// Reads each look once, when it is first asked for. Safe to share between threads.
class Looks {
 public:
  /// Where looks are read from; `club_folder` is absolute and real, or empty.
  struct Places {
    DataFolder data;
    std::string club_folder;
    std::string standing;  ///< for how files are named in messages
  };
  Looks(const FileSystem& files, Places places, sheet::OwnColours own);

  /// All names, the club's own among them, in alphabetical order.
  const std::vector<std::string>& names() const { return names_; }
  /// `High Contrast`, `high_contrast` and `high-contrast` are one name; the name as the file has
  /// it, or empty.
  std::string known(std::string_view name) const;
  /// Whether the look's file is the club's: what is wrong with it is no fault of the program.
  bool is_own(std::string_view name) const;
  /// Why the club's own looks could not be listed; a name that is not known may be one of them.
  const std::optional<std::string>& unlisted() const { return unlisted_; }
  /// ‘playfull’ → `did you mean …`, else all names.
  std::string hint(std::string_view name) const;
  /// The look, in the club's own colours; null when there is none of that name or its file is
  /// broken. What is wrong with it is in `found` each time.
  std::shared_ptr<const sheet::Theme> find(std::string_view name, Diagnostics& found) const;

 private:
  struct Read {
    std::shared_ptr<const sheet::Theme> theme;
    Diagnostics found;
  };
  SourcePtr source(std::string_view name, Diagnostics& found) const;

  const FileSystem& files_;
  Places places_;
  sheet::OwnColours own_colours_;
  std::map<std::string, std::string, std::less<>> paths_;  ///< by name
  std::vector<std::string> names_;
  std::optional<std::string> unlisted_;
  mutable std::mutex mutex_;
  mutable std::map<std::string, std::unique_ptr<const Read>, std::less<>> read_;
};

}  // namespace chalkleaf::club
