// Mistakes are data.
//
// A pass that meets something wrong pushes a Diagnostic to the collector and goes on with what it
// has, so that one run reports everything. How it looks to a person or a program is decided
// elsewhere (base/diagnostic_text.h). Tested by tests/base/diagnostic_test.cpp.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/span.h"

namespace chalkleaf {

/// An error keeps the plan from being printed; a warning does not (unless the user asks for
/// `--strict`). A note says what was assumed; nothing has to be done about it, and strictness does
/// not touch it.
enum class Severity { kError, kWarning, kNote };

/// `error`, `warning` or `note`.
std::string_view word_for(Severity severity);

/// The name of a finding that is used in many rooms: a value that cannot be what it says.
inline constexpr const char* kBadValue = "bad-value";

/// Another place that has to do with a diagnostic, and why.
struct Label {
  Span span;
  std::string message;
};

/// A cure that can be written down: the bytes of `span` become `text`. An empty span is a place
/// where `text` is put in.
struct Edit {
  Span span;
  std::string text;
};

/// One thing the coach should know.
struct Diagnostic {
  Severity severity = Severity::kError;
  std::string name;     ///< stable name of the check, such as `over-slot`
  Span span;            ///< where; a span with no source when the whole run is concerned
  std::string message;  ///< what is wrong: a sentence, no full stop
  std::vector<Label> labels = {};
  std::string hint = {};         ///< what to change: a sentence, no full stop
  std::vector<Edit> edits = {};  ///< that cure it, all of them together; none: a person must choose
};

/// Collects what the passes find about one document. Of one name only the first kMostOfOneName are
/// kept, and one more that says so: a file made of mistakes must not fill the terminal, and nobody
/// mends from the far end of such a list. A text of more than kLongestText bytes loses its middle.
/// Not shared between threads.
class Diagnostics {
 public:
  static constexpr std::size_t kMostOfOneName = 200;
  static constexpr std::size_t kLongestText = 1'000;  // bytes of a message, a hint, a label

  void add(Diagnostic diagnostic);
  void error(std::string name, Span span, std::string message, std::string hint = {});
  void warning(std::string name, Span span, std::string message, std::string hint = {});
  void note(std::string name, Span span, std::string message, std::string hint = {});

  bool has_errors() const { return errors_ > 0; }
  std::size_t error_count() const { return errors_; }
  std::size_t warning_count() const;
  const std::vector<Diagnostic>& all() const { return all_; }
  /// Everything, in the order of (path, offset, name), each thing once.
  std::vector<Diagnostic> sorted() const;
  /// Keeps a source alive that spans here point into and nobody else holds: its file was
  /// unreadable.
  void keep(SourcePtr source) { kept_.push_back(std::move(source)); }
  /// Adds everything of `other` to this one.
  void append(const Diagnostics& other);
  /// Gives each the severity that `decide` says, and drops those it says nothing for.
  void revise(const std::function<std::optional<Severity>(const Diagnostic&)>& decide);
  /// Makes every warning an error, for `--strict`; notes stay notes.
  void make_strict();

 private:
  std::vector<Diagnostic> all_;
  std::vector<SourcePtr> kept_;
  std::map<std::pair<std::string, Severity>, std::size_t> counts_;
  std::size_t errors_ = 0;
};

}  // namespace chalkleaf
