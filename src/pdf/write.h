// A display list becomes the bytes of a tagged PDF 1.7.
//
// libharu keeps the objects, the cross-reference table and the file; text operators, fonts,
// structure and metadata are written by us. Deterministic: the same list gives the same bytes on
// every machine. Tested by tests/pdf/.
#pragma once

#include <memory>
#include <string>
#include <tl/expected.hpp>

#include "page/display_list.h"
#include "type/fonts.h"

namespace chalkleaf::pdf {

struct WriteError {
  std::string message;
};

class Kept;

/// Writes the files of a run with these fonts, which have to outlive it. What its files have in
/// common is made once. Thread-safe: each file has a document of its own.
class Writer {
 public:
  explicit Writer(const type::Fonts& fonts);
  ~Writer();
  Writer(const Writer&) = delete;
  Writer& operator=(const Writer&) = delete;

  tl::expected<std::string, WriteError> write(const page::DisplayList& list) const;

 private:
  const type::Fonts& fonts_;
  std::unique_ptr<Kept> kept_;
};

/// One file by itself.
tl::expected<std::string, WriteError> write(const page::DisplayList& list,
                                            const type::Fonts& fonts);

}  // namespace chalkleaf::pdf
