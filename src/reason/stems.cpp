#include "reason/stems.h"

#include <libstemmer.h>

#include <memory>

namespace chalkleaf::reason {
namespace {

struct FreeStemmer {
  void operator()(sb_stemmer* stemmer) const { sb_stemmer_delete(stemmer); }
};

// A stemmer has room for one word at a time, so each thread has its own.
sb_stemmer* english_stemmer() {
  thread_local const std::unique_ptr<sb_stemmer, FreeStemmer> kStemmer(
      sb_stemmer_new("english", "UTF_8"));
  return kStemmer.get();
}

}  // namespace

std::string stem(std::string_view word) {
  constexpr std::size_t kLongest = 40;  // bytes: no word with an ending is longer
  sb_stemmer* stemmer = english_stemmer();
  if (stemmer == nullptr || word.size() < 3 || word.size() > kLongest) return std::string(word);
  const auto* bytes = reinterpret_cast<const sb_symbol*>(word.data());
  const sb_symbol* out = sb_stemmer_stem(stemmer, bytes, static_cast<int>(word.size()));
  if (out == nullptr) return std::string(word);
  return {reinterpret_cast<const char*>(out), static_cast<std::size_t>(sb_stemmer_length(stemmer))};
}

}  // namespace chalkleaf::reason
