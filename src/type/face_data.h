// HarfBuzz's side of a face. Only for this room.
//
// A font and a face that are immutable may be used by many threads at once (HarfBuzz manual,
// "object lifecycle"); what changes later, the copy prepared for cutting subsets, is made once.
#pragma once

#include <hb-subset.h>
#include <hb.h>

#include <array>
#include <atomic>
#include <memory>
#include <mutex>
#include <string>
#include <tl/expected.hpp>

#include "type/fonts.h"

namespace chalkleaf::type {

/// Ends one of HarfBuzz's objects.
template <auto kDestroy>
struct HbEnd {
  template <class T>
  void operator()(T* object) const {
    kDestroy(object);
  }
};
using HbBlob = std::unique_ptr<hb_blob_t, HbEnd<hb_blob_destroy>>;
using HbFace = std::unique_ptr<hb_face_t, HbEnd<hb_face_destroy>>;
using HbFont = std::unique_ptr<hb_font_t, HbEnd<hb_font_destroy>>;
using HbBuffer = std::unique_ptr<hb_buffer_t, HbEnd<hb_buffer_destroy>>;

/// Which kind of outlines a font file holds.
enum class Outlines { kTrueType, kCff };

class FaceData {
 public:
  /// Checks that the bytes are a font this program can set and embed.
  static tl::expected<std::unique_ptr<FaceData>, FontError> open(const FaceSpec& spec,
                                                                 FileBytes file);

  /// The face to cut subsets from: the file's own at first, later a copy prepared for it.
  hb_face_t* face_for_subsets() const;

  FileBytes file;  // HarfBuzz reads from here for as long as the face lives
  HbFace face;
  HbFont font;
  std::string path;
  std::string family;
  std::string postscript_name;
  Outlines outlines = Outlines::kTrueType;
  std::uint32_t units_per_em = 0;
  std::int32_t ascender = 0;
  std::int32_t descender = 0;
  std::int32_t cap_height = 0;
  std::int32_t x_height = 0;
  std::int32_t italic_angle = 0;
  std::array<std::int32_t, 4> bounds{};
  /// Taken by whoever cuts a subset. A face that hb_subset_preprocess made keeps the tables it has
  /// checked, and HarfBuzz 6.0 writes them down there without a lock (the thread sanitizer found
  /// it).
  mutable std::mutex cutting;
  std::once_flag share_once;
  std::unique_ptr<const SharedSubset> shared;  // null before, and when it cannot be cut

 private:
  mutable std::atomic<int> subsets_cut_{0};
  mutable std::once_flag prepare_once_;
  mutable HbFace prepared_;
};

/// The bytes of a table; empty when the font has none.
std::string_view table_bytes(hb_blob_t* blob);

}  // namespace chalkleaf::type
