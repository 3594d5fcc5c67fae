// The language: from a tree to the model. Everything wrong is reported; what is right is kept.
// Tested by tests/plan/.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "base/diagnostic.h"
#include "plan/library.h"
#include "plan/model.h"
#include "source/tree.h"

namespace chalkleaf::plan {

/// What words stand for in front matter: those of the session's language (draft/lexicon.h), handed
/// in by whoever has them, since this room knows none. Each may be empty.
struct FrontWords {
  std::function<std::optional<Place>(std::string_view)> place;  ///< behind `place:`
  std::function<bool(std::string_view)> says_home;              ///< anywhere in a text
  /// The key that another word stands for: `kit` for `equipment`; empty when it stands for none.
  std::function<std::string(std::string_view)> key;
  /// The bytes of what joins two clocks at the begin of a text: `to`; 0 when it does not.
  std::function<std::size_t(std::string_view)> to_clock;
};

/// Reads a plan. Timings and groups come from `club`, overridden by the plan's own. What is wrong
/// in its front matter is a warning, unless it is about safety: the sheets print without it.
Session read_session(const source::Document& document, const Club& club, Diagnostics& diagnostics,
                     const FrontWords& words = {});
/// Reads a shared part.
PartFile read_part(const source::Document& document, Diagnostics& diagnostics);
/// Reads one file of the drill library; always gives a drill, with a name from the file's when it
/// has none. LibraryDrill::found is for the caller to fill.
LibraryDrill read_drill(const source::Document& document, Diagnostics& diagnostics);
/// Reads `club.yaml`; always gives a club that can be used.
Club read_club(const SourcePtr& source, const source::YamlNode& root, Diagnostics& diagnostics);

/// Reads one dose from text. Nothing when it cannot be read (`unreadable-dose` is reported, showing
/// the forms that can).
std::optional<Dose> read_dose(const source::Text& text, Diagnostics& diagnostics);

/// A shared part as found by whoever knows the folder, with what was found wrong in it.
struct FoundPart {
  PartFile file;
  Diagnostics diagnostics;
  std::string path;  ///< identifies the file, for the circle check
};
/// Why a link leads nowhere.
struct LinkProblem {
  enum class Kind { kMissing, kOutside, kUnreadable };
  Kind kind = Kind::kMissing;
  std::string suggestion;   ///< a target that does exist and is close, if any
  Diagnostics diagnostics;  ///< kUnreadable: what was wrong
};
/// Finds shared parts. Implemented by `club`; safe to call from several threads. `target` is a
/// path, no longer a URL: link_parts has decoded it.
class PartLookup {
 public:
  virtual ~PartLookup() = default;
  virtual tl::expected<std::shared_ptr<const FoundPart>, LinkProblem> find(
      const std::string& from_path, const std::string& target) const = 0;
};

/// A picture that was found, decoded and can be printed.
struct FoundPicture {
  std::string path;  ///< identifies the file
  int width = 0;     ///< pixels
  int height = 0;
};
/// Why a picture cannot be printed.
struct PictureProblem {
  enum class Kind { kMissing, kOutside, kUnreadable };
  Kind kind = Kind::kMissing;
  std::string suggestion;  ///< kMissing: a target that does exist and is close, if any
  std::string message;     ///< kUnreadable: goes on after the picture's name
  std::string hint;        ///< kUnreadable
};
/// Finds and decodes pictures. Implemented by `club`; safe to call from several threads. `target`
/// is a path, no longer a URL.
class PictureLookup {
 public:
  virtual ~PictureLookup() = default;
  virtual tl::expected<FoundPicture, PictureProblem> find(const std::string& from_path,
                                                          const std::string& target) const = 0;
};

/// Replaces every PartLink of the session by the steps of the part it names (`unknown-part`,
/// `part-cycle`, `outside-folder`, `unreadable-file`), and carries over what was found wrong in
/// those parts. With `pictures` it finds every picture too, and says what is wrong with it
/// (`unreadable-file`, `outside-folder`); without, they stay as written.
void link_parts(Session& session, const std::string& plan_path, const PartLookup& parts,
                Diagnostics& diagnostics, const PictureLookup* pictures = nullptr);

}  // namespace chalkleaf::plan
