// Where the words of a language may be hyphenated: patterns after Liang, "Word Hy-phen-a-tion by
// Com-put-er" (Stanford, 1983), read and applied by libhyphen, from the packages Debian has of them
// (hyphen-en-gb and its like). Without them nothing is hyphenated, and nothing fails.
//
// Reading them takes 24 ms for English and 3.5 s for German's 78,000 (libhyphen's own time): they
// are read when the first word is asked about, which is where a paragraph is ragged enough to gain.
//
// Tested by tests/type/hyphenation_test.cpp.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/files.h"
#include "base/pack.h"

namespace chalkleaf::type {

/// The patterns of one language; immutable, safe to share between threads (libhyphen only reads
/// them, and works in memory of the call's own).
class Hyphenation {
 public:
  /// Reads a file of libhyphen's format; null when it is none.
  static std::unique_ptr<const Hyphenation> read(const std::string& patterns);
  /// The same of patterns that were read before, out of a pack; null when it has them not.
  static std::unique_ptr<const Hyphenation> from_pack(std::string_view patterns,
                                                      const PackPtr& pack);
  /// What a pack holds of patterns; nothing when they are none.
  static std::optional<std::pair<Hash128, std::string>> packed(const std::string& patterns);
  ~Hyphenation();

  /// How many characters of a word of letters, given in small letters, may stand before a hyphen:
  /// all places, ascending. At least two stay before each and three behind, more where the
  /// language's patterns ask for it.
  std::vector<std::uint32_t> places(std::u32string_view word) const;

 private:
  struct State;
  explicit Hyphenation(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

/// The patterns that are installed for one language, read when first asked for. Thread-safe.
class LazyHyphenation {
 public:
  /// `pack` may be null.
  LazyHyphenation(const FileSystem& files, std::vector<std::string> paths, std::string language,
                  PackPtr pack);
  /// Null when there are none.
  const Hyphenation* get() const;
  const std::string& language() const { return language_; }
  /// Where they may stand; the first that is there counts.
  const std::vector<std::string>& paths() const { return paths_; }

 private:
  const FileSystem& files_;
  std::vector<std::string> paths_;
  std::string language_;
  PackPtr pack_;
  mutable std::once_flag once_;
  mutable std::unique_ptr<const Hyphenation> read_;
};

/// The patterns of all languages. Thread-safe; what it hands out lives as long as it does.
class Hyphenations {
 public:
  /// Looks in `folders` in order. `files` must outlive it. What is in `pack` is not read again.
  explicit Hyphenations(const FileSystem& files, std::vector<std::string> folders = usual_folders(),
                        PackPtr pack = nullptr);
  /// Where Debian and the machine's owner put patterns.
  static std::vector<std::string> usual_folders();
  /// For a BCP 47 tag: `de-AT` takes Austria's patterns, else Germany's; plain `en` is set as
  /// British English.
  const LazyHyphenation& of(const std::string& language) const;

 private:
  const FileSystem& files_;
  std::vector<std::string> folders_;
  PackPtr pack_;
  mutable std::mutex mutex_;
  mutable std::map<std::string, LazyHyphenation> known_;
};

}  // namespace chalkleaf::type
