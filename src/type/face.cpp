// Opening a font file and reading what layout and the PDF need to know of it.
//
// HarfBuzz checks every table before it reads it, so a damaged file is refused or gives empty
// tables, never a wild read. Sources: OpenType 1.9, tables head, post, CFF. Test:
// tests/type/fonts_test.cpp.
#include <hb-ot.h>

#include <optional>

#include "base/text.h"
#include "type/face_data.h"

namespace chalkleaf::type {
namespace {

HbBlob table(hb_face_t* face, hb_tag_t tag) { return HbBlob(hb_face_reference_table(face, tag)); }

bool has_table(hb_face_t* face, hb_tag_t tag) {
  return hb_blob_get_length(table(face, tag).get()) > 0;
}

std::int32_t signed_16(std::string_view bytes, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
  return static_cast<std::int16_t>(byte(at) << 8U | byte(at + 1));
}

// Compact Font Format (Adobe Technical Note 5176), section 5: where an INDEX ends, and its first
// entry.
struct Index {
  std::string_view first;
  std::size_t end = 0;
};
std::optional<Index> read_index(std::string_view cff, std::size_t at) {
  const auto number = [&](std::size_t from, std::size_t size) -> std::optional<std::size_t> {
    if (from > cff.size() || size > cff.size() - from) return std::nullopt;
    std::size_t value = 0;
    for (std::size_t i = 0; i < size; ++i) {
      value = value << 8U | static_cast<unsigned char>(cff[from + i]);
    }
    return value;
  };
  const auto count = number(at, 2);
  if (!count) return std::nullopt;
  if (*count == 0) return Index{{}, at + 2};
  const auto size = number(at + 2, 1);
  if (!size || *size < 1 || *size > 4) return std::nullopt;
  const std::size_t offsets = at + 3;
  const std::size_t data = offsets + (*count + 1) * *size - 1;
  const auto begin = number(offsets, *size);
  const auto second = number(offsets + *size, *size);
  const auto end = number(offsets + *count * *size, *size);
  if (!begin || !second || !end || *begin < 1 || *second < *begin || *end < *second ||
      data + *end > cff.size()) {
    return std::nullopt;
  }
  return Index{cff.substr(data + *begin, *second - *begin), data + *end};
}

// The same, section 9 and 18: the Top DICT of a CID-keyed font begins with the operator ROS
// (12 30). Nothing when the table is damaged.
std::optional<bool> is_cid_keyed(std::string_view cff) {
  if (cff.size() < 4) return std::nullopt;
  const auto names = read_index(cff, static_cast<unsigned char>(cff[2]));
  if (!names) return std::nullopt;
  const auto dicts = read_index(cff, names->end);
  if (!dicts || dicts->first.empty()) return std::nullopt;
  const std::string_view dict = dicts->first;
  for (std::size_t i = 0; i < dict.size();) {
    const auto first = static_cast<unsigned char>(dict[i]);
    if (first == 12) return i + 1 < dict.size() && dict[i + 1] == 30;
    if (first <= 21) return false;
    if (first == 28) {
      i += 3;
    } else if (first == 29) {
      i += 5;
    } else if (first == 30) {  // a real number ends with a nibble of all ones
      for (++i; i < dict.size() && (static_cast<unsigned char>(dict[i]) & 0x0FU) != 0x0F &&
                (static_cast<unsigned char>(dict[i]) >> 4U) != 0x0F;) {
        ++i;
      }
      ++i;
    } else {
      i += first >= 247 && first != 255 ? 2 : 1;
    }
  }
  return std::nullopt;
}

// The characters a PDF name may hold without escapes, and no more than 63 of them, so that the
// subset's tag fits before it.
std::string tidy_name(std::string_view name) {
  std::string out;
  for (const char c : name) {
    const bool letter = (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    const bool plain = letter || (c >= '0' && c <= '9') || c == '.' || c == '_' || c == '+';
    if ((plain || c == '-') && out.size() < 63) out.push_back(c);
  }
  return out;
}

std::string read_postscript_name(hb_face_t* face, const std::string& family) {
  std::array<char, 128> buffer{};
  auto size = static_cast<unsigned>(buffer.size());
  hb_ot_name_get_utf8(face, HB_OT_NAME_ID_POSTSCRIPT_NAME, HB_LANGUAGE_INVALID, &size,
                      buffer.data());
  std::string name = tidy_name(std::string_view(buffer.data(), size));
  if (name.empty()) name = tidy_name(family);
  return name.empty() ? "Font" : name;
}

// Why the face cannot be used, in words; nothing when it can.
std::optional<std::string> why_not(hb_face_t* face, Outlines& outlines) {
  if (hb_face_get_glyph_count(face) < 2) return "it holds no glyphs";
  const unsigned em = hb_face_get_upem(face);
  // OpenType 1.9, head: unitsPerEm is from 16 to 16384.
  if (em < 16 || em > 16384) return "its units per em are not from 16 to 16384";
  if (hb_blob_get_length(table(face, HB_TAG('h', 'e', 'a', 'd')).get()) < 54) {
    return "its head table is damaged";
  }
  if (!has_table(face, HB_TAG('h', 'm', 't', 'x'))) return "it has no advance widths";
  if (!has_table(face, HB_TAG('c', 'm', 'a', 'p'))) return "it maps no characters to glyphs";
  const HbBlob cff = table(face, HB_TAG('C', 'F', 'F', ' '));
  if (has_table(face, HB_TAG('g', 'l', 'y', 'f'))) {
    outlines = Outlines::kTrueType;
    return std::nullopt;
  }
  outlines = Outlines::kCff;
  if (hb_blob_get_length(cff.get()) == 0) return "it has neither TrueType nor CFF outlines";
  const auto cid_keyed = is_cid_keyed(table_bytes(cff.get()));
  if (!cid_keyed) return "its CFF table is damaged";
  if (*cid_keyed) return "it is a CID-keyed CFF font; use the TrueType version of it";
  return std::nullopt;
}

std::int32_t metric(hb_font_t* font, hb_ot_metrics_tag_t tag) {
  hb_position_t value = 0;
  hb_ot_metrics_get_position_with_fallback(font, tag, &value);
  return value;
}

void read_metrics(FaceData& data) {
  hb_face_t* face = data.face.get();
  hb_font_t* font = data.font.get();
  data.units_per_em = hb_face_get_upem(face);
  hb_font_extents_t extents{};
  hb_font_get_h_extents(font, &extents);
  data.ascender = extents.ascender;
  data.descender = extents.descender;
  data.cap_height = metric(font, HB_OT_METRICS_TAG_CAP_HEIGHT);
  data.x_height = metric(font, HB_OT_METRICS_TAG_X_HEIGHT);
  // OpenType 1.9: head keeps xMin, yMin, xMax, yMax from byte 36; post the angle from byte 4, in
  // 16.16.
  const HbBlob head = table(face, HB_TAG('h', 'e', 'a', 'd'));
  for (std::size_t i = 0; i < 4; ++i) {
    data.bounds[i] = signed_16(table_bytes(head.get()), 36 + 2 * i);
  }
  const HbBlob post = table(face, HB_TAG('p', 'o', 's', 't'));
  if (hb_blob_get_length(post.get()) >= 8) {
    data.italic_angle = signed_16(table_bytes(post.get()), 4);
  }
}

}  // namespace

std::string_view table_bytes(hb_blob_t* blob) {
  unsigned size = 0;
  const char* bytes = hb_blob_get_data(blob, &size);
  return bytes == nullptr ? std::string_view() : std::string_view(bytes, size);
}

tl::expected<std::unique_ptr<FaceData>, FontError> FaceData::open(const FaceSpec& spec,
                                                                  FileBytes file) {
  auto data = std::make_unique<FaceData>();
  data->file = std::move(file);
  data->path = spec.path;
  data->family = spec.family;
  const HbBlob blob(hb_blob_create(data->file.bytes.data(),
                                   static_cast<unsigned>(data->file.bytes.size()),
                                   HB_MEMORY_MODE_READONLY, nullptr, nullptr));
  if (hb_face_count(blob.get()) == 0) {
    return tl::unexpected(FontError{spec.path, "it is not a TrueType or OpenType font"});
  }
  data->face.reset(hb_face_create(blob.get(), 0));
  if (const auto reason = why_not(data->face.get(), data->outlines)) {
    return tl::unexpected(FontError{spec.path, *reason});
  }
  hb_face_make_immutable(data->face.get());
  data->font.reset(hb_font_create(data->face.get()));
  hb_font_make_immutable(data->font.get());
  read_metrics(*data);
  data->postscript_name = read_postscript_name(data->face.get(), spec.family);
  return data;
}

Face::Face(std::unique_ptr<FaceData> data) : data_(std::move(data)) {}
Face::~Face() = default;
std::uint32_t Face::units_per_em() const { return data_->units_per_em; }
std::int32_t Face::ascender() const { return data_->ascender; }
std::int32_t Face::descender() const { return data_->descender; }
std::int32_t Face::cap_height() const { return data_->cap_height; }
std::int32_t Face::x_height() const { return data_->x_height; }
const std::string& Face::postscript_name() const { return data_->postscript_name; }
const std::string& Face::family() const { return data_->family; }
std::array<std::int32_t, 4> Face::bounds() const { return data_->bounds; }
std::int32_t Face::italic_angle() const { return data_->italic_angle; }

bool Face::has(char32_t code) const {
  hb_codepoint_t glyph = 0;
  return hb_font_get_nominal_glyph(data_->font.get(), code, &glyph) != 0 && glyph != 0;
}

std::int32_t Face::advance(std::uint16_t glyph) const {
  return hb_font_get_glyph_h_advance(data_->font.get(), glyph);
}

}  // namespace chalkleaf::type
