// The objects of a PDF file, kept, numbered and written by libharu. Only for this room.
//
// An object here is a dictionary whose inside is text of our own, given to libharu as one block: no
// limits on names, strings or arrays, no numbers through float, and numbers known up front for
// references that run both ways. libharu keeps and numbers the objects and writes the streams;
// dictionaries, which are a third of a sheet's bytes as text, are packed into object streams, and a
// cross-reference stream (ISO 32000-1, 7.5.7 and 7.5.8), which libharu does not know, ends the
// file. Its documents, pages and fonts are not used. Tested through tests/pdf/write_test.cpp.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "pdf/write.h"

namespace chalkleaf::pdf {

/// An object's number.
using ObjectId = unsigned;

/// Whether a stream is compressed in the file.
enum class Packing { kPlain, kDeflated };

class Objects {
 public:
  Objects();
  ~Objects();
  Objects(const Objects&) = delete;
  Objects& operator=(const Objects&) = delete;

  /// A number for a dictionary that is filled later, before save().
  ObjectId reserve();
  /// `entries`: what stands between << and >>.
  void fill(ObjectId object, std::string entries);
  ObjectId add(std::string entries);
  ObjectId add_stream(std::string entries, std::string_view data, Packing packing);
  /// The whole file. Its /ID is a hash of its content. To be called once.
  tl::expected<std::string, WriteError> save(ObjectId catalog, ObjectId info);

 private:
  struct Haru;
  std::unique_ptr<Haru> haru_;
};

}  // namespace chalkleaf::pdf
