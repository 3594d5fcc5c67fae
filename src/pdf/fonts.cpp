#include "pdf/fonts.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/hash.h"
#include "pdf/deflate.h"
#include "pdf/syntax.h"
#include "pdf/text_use.h"

namespace chalkleaf::pdf {
namespace {

// ISO 32000-1, 9.8.1: a required guess of the vertical stems; no reader draws with it when the font
// is embedded.
constexpr int kStemV = 80;

std::int64_t in_thousandths(std::int64_t units, std::uint32_t units_per_em) {
  return rounded_quotient(units * 1000, units_per_em);
}

tl::expected<void, WriteError> note_use(FaceUse& use, const page::TextItem& item) {
  for (const type::Glyph& glyph : item.glyphs) {
    if (glyph.id == 0) {
      return tl::unexpected(WriteError{
          fmt::format("a text holds a glyph that stands for no character: '{}'", item.text)});
    }
    if (use.index_of.size() <= glyph.id) use.index_of.resize(glyph.id + 1U);
    use.index_of[glyph.id] = 1;  // numbered when all are known
  }
  return {};
}

std::uint16_t number_of(std::uint16_t glyph) { return glyph; }
std::uint16_t number_of(const GlyphUse& use) { return use.glyph; }

void number_glyphs(FaceUse& use) {
  for (std::size_t glyph = 0; glyph < use.index_of.size(); ++glyph) {
    if (use.index_of[glyph] == 0) continue;
    GlyphUse one;
    one.glyph = static_cast<std::uint16_t>(glyph);
    one.width = static_cast<std::int32_t>(
        in_thousandths(use.face->advance(one.glyph), use.face->units_per_em()));
    use.glyphs.push_back(std::move(one));
    use.index_of[glyph] = static_cast<std::uint16_t>(use.glyphs.size());
  }
}

// What a code reads as is what its glyph stands for where it first stands alone.
void note_texts(FaceUse& use, const page::TextItem& item) {
  for (const Cluster& cluster : clusters_of(item)) {
    if (cluster.count != 1) continue;
    GlyphUse& glyph = use.glyphs[use.index_of[item.glyphs[cluster.first].id] - 1U];
    if (glyph.text.empty()) glyph.text = readable(cluster.text);
  }
}

// The face's shared subset when it has all glyphs the document needs and not much more: what is not
// drawn makes the file larger.
const type::SharedSubset* shared_for(const FaceUse& use) {
  const type::SharedSubset* shared = use.face->shared_subset();
  if (shared == nullptr || use.glyphs.size() * 2 < shared->glyphs.size()) return nullptr;
  const auto order = [](const auto& a, const auto& b) { return number_of(a) < number_of(b); };
  const bool all = std::includes(shared->glyphs.begin(), shared->glyphs.end(), use.glyphs.begin(),
                                 use.glyphs.end(), order);
  return all ? shared : nullptr;
}

tl::expected<void, WriteError> cut_subset(FaceUse& use) {
  use.shared = shared_for(use);
  if (use.shared != nullptr) {
    std::size_t at = 0;
    for (GlyphUse& glyph : use.glyphs) {
      while (use.shared->glyphs[at] != glyph.glyph) ++at;
      glyph.code = use.shared->subset.new_ids[at];
    }
  } else {
    std::vector<std::uint16_t> ids;
    ids.reserve(use.glyphs.size());
    for (const GlyphUse& glyph : use.glyphs) ids.push_back(glyph.glyph);
    auto subset = use.face->subset(ids);
    if (!subset) {
      return tl::unexpected(
          WriteError{fmt::format("{}: {}", subset.error().path, subset.error().message)});
    }
    use.subset = std::move(*subset);
    for (std::size_t i = 0; i < ids.size(); ++i) use.glyphs[i].code = use.subset.new_ids[i];
  }
  // A glyph that never stands alone reads as nothing; its cluster says what it means.
  for (GlyphUse& glyph : use.glyphs) {
    if (glyph.text.empty()) glyph.text = readable("");
  }
  return {};
}

WriteError cannot_use(type::FaceId id, const type::Fonts& fonts) {
  const auto& faces = fonts.catalogue().faces;
  if (id < faces.size()) return {fmt::format("{}: the font cannot be used", faces[id].path)};
  return {fmt::format("there is no font number {}", id)};
}

template <class Visit>
tl::expected<void, WriteError> for_each_text(const page::DisplayList& list, Visit visit) {
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const auto* text = std::get_if<page::TextItem>(&item);
      if (text == nullptr || text->glyphs.empty()) continue;
      if (auto done = visit(*text); !done) return done;
    }
  }
  return {};
}

// ISO 32000-1, 9.6.4: a subset's name begins with a tag of six letters; from the name and the
// glyphs, so that two weights never share one.
std::string tagged_name(const FaceUse& use) {
  std::string key = use.face->postscript_name();
  const auto add = [&](std::uint16_t glyph) {
    key.push_back(static_cast<char>(glyph >> 8U));
    key.push_back(static_cast<char>(glyph & 0xFFU));
  };
  if (use.shared != nullptr) {
    for (const std::uint16_t glyph : use.shared->glyphs) add(glyph);
  } else {
    for (const GlyphUse& glyph : use.glyphs) add(glyph.glyph);
  }
  std::uint64_t hash = hash64(key);
  std::string out;
  for (int i = 0; i < 6; ++i, hash /= 26) out.push_back(static_cast<char>('A' + hash % 26));
  return out + "+" + use.face->postscript_name();
}

// The widths of runs of codes without gaps (ISO 32000-1, 9.7.4.3).
std::string widths(const FaceUse& use) {
  std::string out = "/W [";
  int next = -1;
  for (const GlyphUse& glyph : use.glyphs) {
    if (glyph.code != next) {
      if (next >= 0) out += "] ";
      append_int(out, glyph.code);
      out += " [";
    } else {
      out.push_back(' ');
    }
    append_int(out, glyph.width);
    next = glyph.code + 1;
  }
  return out + (next >= 0 ? "]]\n" : "]\n");
}

// ISO 32000-1, 9.10.3, after Adobe Technical Note 5411; at most 100 lines to a block.
std::string to_unicode(const FaceUse& use) {
  std::string out =
      "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
      "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n"
      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
  for (std::size_t begin = 0; begin < use.glyphs.size(); begin += 100) {
    const std::size_t end = std::min(begin + 100, use.glyphs.size());
    append_int(out, static_cast<std::int64_t>(end - begin));
    out += " beginbfchar\n";
    for (std::size_t i = begin; i < end; ++i) {
      out.push_back('<');
      append_hex_16(out, use.glyphs[i].code);
      out += "> <";
      append_utf16_hex(out, use.glyphs[i].text);
      out += ">\n";
    }
    out += "endbfchar\n";
  }
  return out + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

std::string descriptor(const FaceUse& use, const std::string& name, ObjectId file) {
  const type::Face& face = *use.face;
  const auto scaled = [&](std::int64_t units) {
    return in_thousandths(units, face.units_per_em());
  };
  const auto box = face.bounds();
  // Flags (9.8.2): 4, symbolic: the codes are not those of a standard character set; 64, italic.
  return fmt::format(
      "/Type /FontDescriptor\n/FontName /{}\n/Flags {}\n/FontBBox [{} {} {} {}]\n/ItalicAngle {}\n"
      "/Ascent {}\n/Descent {}\n/CapHeight {}\n/XHeight {}\n/StemV {}\n/{} {}\n",
      name, face.italic_angle() == 0 ? 4 : 68, scaled(box[0]), scaled(box[1]), scaled(box[2]),
      scaled(box[3]), face.italic_angle(), scaled(face.ascender()), scaled(face.descender()),
      scaled(face.cap_height()), scaled(face.x_height()), kStemV,
      use.cut().is_cff ? "FontFile3" : "FontFile2", reference(file));
}

// The file of the font, packed once a run where it is shared.
ObjectId write_file(const FaceUse& use, Objects& objects, Kept& kept) {
  const type::Subset& subset = use.cut();
  std::string entries = subset.is_cff ? "/Subtype /CIDFontType0C\n"
                                      : fmt::format("/Length1 {}\n", subset.bytes.size());
  if (use.shared == nullptr)
    return objects.add_stream(std::move(entries), subset.bytes, Packing::kDeflated);
  const std::string& packed =
      kept.bytes_of_lasting(use.shared, [&] { return deflated(subset.bytes); });
  if (packed.empty())  // no memory for it then; perhaps now
    return objects.add_stream(std::move(entries), subset.bytes, Packing::kDeflated);
  return objects.add_stream(entries + "/Filter /FlateDecode\n", packed, Packing::kPlain);
}

ObjectId write_face(const FaceUse& use, Objects& objects, Kept& kept) {
  const bool cff = use.cut().is_cff;
  const std::string name = tagged_name(use);
  const ObjectId described = objects.add(descriptor(use, name, write_file(use, objects, kept)));
  const ObjectId descendant = objects.add(
      fmt::format("/Type /Font\n/Subtype /{}\n/BaseFont /{}\n"
                  "/CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>>\n"
                  "/FontDescriptor {}\n/DW 0\n{}{}",
                  cff ? "CIDFontType0" : "CIDFontType2", name, reference(described), widths(use),
                  cff ? "" : "/CIDToGIDMap /Identity\n"));
  const ObjectId unicode = objects.add_stream("", to_unicode(use), Packing::kDeflated);
  return objects.add(
      fmt::format("/Type /Font\n/Subtype /Type0\n/BaseFont /{}{}\n/Encoding /Identity-H\n"
                  "/DescendantFonts [{}]\n/ToUnicode {}\n",
                  name, cff ? "-Identity-H" : "", reference(descendant), reference(unicode)));
}

}  // namespace

tl::expected<FontTable, WriteError> FontTable::collect(const page::DisplayList& list,
                                                       const type::Fonts& fonts) {
  FontTable table;
  auto done =
      for_each_text(list, [&](const page::TextItem& item) -> tl::expected<void, WriteError> {
        FaceUse& use = table.faces_[item.face];
        if (use.face == nullptr) {
          use.face = fonts.face(item.face);
          use.name = fmt::format("F{}", table.faces_.size() - 1);
        }
        if (use.face == nullptr) {
          return tl::unexpected(cannot_use(item.face, fonts));
        }
        return note_use(use, item);
      });
  if (!done) return tl::unexpected(done.error());
  for (auto& [id, use] : table.faces_) number_glyphs(use);
  done = for_each_text(list, [&](const page::TextItem& item) -> tl::expected<void, WriteError> {
    note_texts(table.faces_[item.face], item);
    return {};
  });
  for (auto& [id, use] : table.faces_) {
    if (done = cut_subset(use); !done) return tl::unexpected(done.error());
  }
  return table;
}

std::string FontTable::write(Objects& objects, Kept& kept) const {
  std::string out = "/Font <<";
  for (const auto& [id, use] : faces_) {
    out += fmt::format("/{} {} ", use.name, reference(write_face(use, objects, kept)));
  }
  return out + ">>\n";
}

}  // namespace chalkleaf::pdf
