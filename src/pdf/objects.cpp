#include "pdf/objects.h"

#include <fmt/format.h>
#include <hpdf_objects.h>
#include <hpdf_utils.h>

#include <limits>
#include <new>
#include <vector>

#include "base/hash.h"
#include "pdf/deflate.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

// libharu's cross-reference table counts bytes in 31 bits.
constexpr std::size_t kLargestFile = std::numeric_limits<std::int32_t>::max();

// Objects in one object stream: a reader that wants one unpacks all of them.
constexpr std::size_t kMostInStream = 512;

// A binary comment after the header tells file transfer programs not to touch line ends
// (ISO 32000-1, 7.5.2).
constexpr std::string_view kHeader = "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n";

// libharu prints "<<", the entries it knows of, then calls this, then prints ">>".
HPDF_STATUS write_entries(HPDF_Dict dict, HPDF_Stream stream) {
  const auto* entries = static_cast<const std::string*>(dict->attr);
  if (entries == nullptr) return HPDF_OK;
  return HPDF_Stream_Write(stream, reinterpret_cast<const HPDF_BYTE*>(entries->data()),
                           static_cast<HPDF_UINT>(entries->size()));
}

bool is_dictionary(const void* object) {
  const auto* header = static_cast<const HPDF_Obj_Header*>(object);
  return (header->obj_class & HPDF_OCLASS_ANY) == HPDF_OCLASS_DICT &&
         static_cast<const HPDF_Dict_Rec*>(object)->stream == nullptr;
}

void append_big_endian(std::string& out, std::size_t value, int bytes) {
  for (int shift = (bytes - 1) * 8; shift >= 0; shift -= 8)
    out.push_back(static_cast<char>(value >> shift & 0xFFU));
}

/// Where an object is (ISO 32000-1, 7.5.8): a row of the cross-reference stream.
struct Whereabouts {
  enum class Kind { kFree = 0, kInFile = 1, kInStream = 2 };
  Kind kind = Kind::kFree;
  std::size_t place = 0;  ///< the byte, or the stream's number
  std::size_t index = 0;  ///< in that stream
};

constexpr int kPlaceBytes = 4;
constexpr int kIndexBytes = 2;

// Each byte as its difference from the one above (predictor 12), which deflates to little.
std::string table_of(const std::vector<Whereabouts>& all) {
  std::string out;
  std::string above(1 + kPlaceBytes + kIndexBytes, '\0');
  for (const Whereabouts& one : all) {
    std::string row;
    append_big_endian(row, static_cast<std::size_t>(one.kind), 1);
    append_big_endian(row, one.place, kPlaceBytes);
    append_big_endian(row, one.index, kIndexBytes);
    out.push_back(2);
    for (std::size_t i = 0; i < row.size(); ++i)
      out.push_back(static_cast<char>(static_cast<unsigned char>(row[i]) -
                                      static_cast<unsigned char>(above[i])));
    above = std::move(row);
  }
  return out;
}

void append_stream(std::string& file, ObjectId number, std::string_view entries,
                   std::string_view data) {
  file += fmt::format("{} 0 obj\n<<\n{}/Filter /FlateDecode\n/Length {}\n>>\nstream\n", number,
                      entries, data.size());
  file += data;
  file += "\nendstream\nendobj\n";
}

void free_entries(HPDF_Dict dict) { delete static_cast<std::string*>(dict->attr); }

// No exception may pass through libharu's frames.
HPDF_STATUS append_to_file(HPDF_Stream stream, const HPDF_BYTE* bytes, HPDF_UINT size) {
  auto* file = static_cast<std::string*>(stream->attr);
  if (size > kLargestFile - file->size()) return HPDF_FILE_IO_ERROR;
  try {
    file->append(reinterpret_cast<const char*>(bytes), size);
  } catch (const std::bad_alloc&) {
    return HPDF_FAILD_TO_ALLOC_MEM;
  }
  return HPDF_OK;
}

}  // namespace

struct Objects::Haru {
  Haru() {
    HPDF_Error_Init(&error, nullptr);
    memory = HPDF_MMgr_New(&error, 0, nullptr, nullptr);
    if (memory != nullptr) xref = HPDF_Xref_New(memory, 0);
  }
  ~Haru() {
    if (xref != nullptr) HPDF_Xref_Free(xref);
    if (memory != nullptr) HPDF_MMgr_Free(memory);
  }
  Haru(const Haru&) = delete;
  Haru& operator=(const Haru&) = delete;

  // Takes the entries over; true when the dictionary exists.
  static bool give(HPDF_Dict dict, std::string entries) {
    if (dict == nullptr) return false;
    delete static_cast<std::string*>(dict->attr);
    dict->attr = new std::string(std::move(entries));
    dict->write_fn = write_entries;
    dict->free_fn = free_entries;
    return true;
  }
  // What is no dictionary, as libharu writes it; the others are left for write_dictionaries().
  HPDF_STATUS write_objects(HPDF_Stream stream, std::string& file,
                            std::vector<Whereabouts>& where) const {
    const HPDF_UINT count = xref->entries->count;
    where.resize(count);
    where.front().index = 65'535;  // the list of free objects has this one only
    for (HPDF_UINT i = 1; i < count; ++i) {
      const HPDF_XrefEntry entry = HPDF_Xref_GetEntry(xref, i);
      if (is_dictionary(entry->obj)) continue;
      where[i] = {Whereabouts::Kind::kInFile, file.size(), 0};
      file += fmt::format("{} 0 obj\n", i);
      const HPDF_STATUS status = HPDF_Obj_WriteValue(entry->obj, stream, nullptr);
      if (status != HPDF_OK) return status;
      file += "\nendobj\n";
    }
    return HPDF_OK;
  }
  // Packed together (ISO 32000-1, 7.5.7): they are many, small and alike.
  bool write_dictionaries(std::string& file, std::vector<Whereabouts>& where) const {
    std::vector<HPDF_UINT> waiting;
    const auto flush = [&] {
      const std::size_t number = where.size();
      std::string heads;
      std::string bodies;
      for (std::size_t k = 0; k < waiting.size(); ++k) {
        const auto* dict =
            static_cast<const HPDF_Dict_Rec*>(HPDF_Xref_GetEntry(xref, waiting[k])->obj);
        const auto* entries = static_cast<const std::string*>(dict->attr);
        heads += fmt::format("{} {} ", waiting[k], bodies.size());
        bodies += "<<";
        if (entries != nullptr) bodies += *entries;
        bodies += ">>\n";
        where[waiting[k]] = {Whereabouts::Kind::kInStream, number, k};
      }
      where.push_back({Whereabouts::Kind::kInFile, file.size(), 0});
      const std::string packed = deflated(heads + bodies);
      append_stream(file, static_cast<ObjectId>(number),
                    fmt::format("/Type /ObjStm\n/N {}\n/First {}\n", waiting.size(), heads.size()),
                    packed);
      waiting.clear();
      return !packed.empty();
    };
    const HPDF_UINT count = xref->entries->count;
    for (HPDF_UINT i = 1; i < count; ++i) {
      if (is_dictionary(HPDF_Xref_GetEntry(xref, i)->obj)) waiting.push_back(i);
      if (waiting.size() == kMostInStream && !flush()) return false;
    }
    return waiting.empty() || flush();
  }
  static ObjectId number(HPDF_Dict dict) {
    return dict == nullptr ? 0 : dict->header.obj_id & 0x00FFFFFFU;
  }

  HPDF_Error_Rec error{};
  HPDF_MMgr memory = nullptr;
  HPDF_Xref xref = nullptr;
};

Objects::Objects() : haru_(std::make_unique<Haru>()) {}
Objects::~Objects() = default;

ObjectId Objects::reserve() {
  if (haru_->xref == nullptr) return 0;
  HPDF_Dict dict = HPDF_Dict_New(haru_->memory);
  if (dict != nullptr && HPDF_Xref_Add(haru_->xref, dict) != HPDF_OK) dict = nullptr;
  return Haru::number(dict);
}

void Objects::fill(ObjectId object, std::string entries) {
  if (haru_->xref == nullptr || object == 0) return;
  const HPDF_XrefEntry entry = HPDF_Xref_GetEntry(haru_->xref, object);
  if (entry != nullptr) Haru::give(static_cast<HPDF_Dict>(entry->obj), std::move(entries));
}

ObjectId Objects::add(std::string entries) {
  const ObjectId object = reserve();
  fill(object, std::move(entries));
  return object;
}

ObjectId Objects::add_stream(std::string entries, std::string_view data, Packing packing) {
  if (haru_->xref == nullptr) return 0;
  HPDF_Dict dict = HPDF_DictStream_New(haru_->memory, haru_->xref);
  if (dict == nullptr) return 0;
  std::string packed;
  if (packing == Packing::kDeflated) {
    packed = deflated(data);
    if (packed.empty()) HPDF_SetError(&haru_->error, HPDF_FAILD_TO_ALLOC_MEM, 0);
    data = packed;
    entries += "/Filter /FlateDecode\n";
  }
  dict->filter = HPDF_STREAM_FILTER_NONE;  // what is written is what was given
  if (data.size() > kLargestFile) {
    HPDF_SetError(&haru_->error, HPDF_FILE_IO_ERROR, 0);
  } else if (!data.empty()) {
    HPDF_Stream_Write(dict->stream, reinterpret_cast<const HPDF_BYTE*>(data.data()),
                      static_cast<HPDF_UINT>(data.size()));
  }
  Haru::give(dict, std::move(entries));
  return Haru::number(dict);
}

tl::expected<std::string, WriteError> Objects::save(ObjectId catalog, ObjectId info) {
  const auto failed = [](HPDF_STATUS status) {
    if (status == HPDF_FILE_IO_ERROR) {
      return tl::unexpected(WriteError{"the PDF would be larger than 2 GB"});
    }
    if (status == HPDF_FAILD_TO_ALLOC_MEM) {
      return tl::unexpected(WriteError{"there is not enough memory to write the PDF"});
    }
    return tl::unexpected(
        WriteError{fmt::format("the PDF library failed with error {:#06x}", status)});
  };
  Haru& haru = *haru_;
  if (haru.error.error_no != HPDF_OK) return failed(haru.error.error_no);
  if (haru.xref == nullptr) return failed(HPDF_FAILD_TO_ALLOC_MEM);

  std::string file(kHeader);
  HPDF_Stream stream = HPDF_CallbackWriter_New(haru.memory, append_to_file, &file);
  if (stream == nullptr) return failed(HPDF_FAILD_TO_ALLOC_MEM);
  std::vector<Whereabouts> where;
  const HPDF_STATUS status = haru.write_objects(stream, file, where);
  HPDF_Stream_Free(stream);
  if (status != HPDF_OK) return failed(status);
  if (haru.error.error_no != HPDF_OK) return failed(haru.error.error_no);
  if (!haru.write_dictionaries(file, where)) return failed(HPDF_FAILD_TO_ALLOC_MEM);

  // The identifier (ISO 32000-1, 14.4) is the hash of the file written with zeros in its place.
  const std::string no_id(32, '0');
  const auto number = static_cast<ObjectId>(where.size());
  const std::size_t begin = file.size();
  where.push_back({Whereabouts::Kind::kInFile, begin, 0});
  const std::string rows = deflated(table_of(where));
  if (rows.empty()) return failed(HPDF_FAILD_TO_ALLOC_MEM);
  append_stream(
      file, number,
      fmt::format("/Type /XRef\n/Size {}\n/W [1 {} {}]\n/Root {}\n/Info {}\n/ID [<{}> <{}>]\n"
                  "/DecodeParms <</Predictor 12 /Columns {}>>\n",
                  where.size(), kPlaceBytes, kIndexBytes, reference(catalog), reference(info),
                  no_id, no_id, 1 + kPlaceBytes + kIndexBytes),
      rows);
  file += fmt::format("startxref\n{}\n%%EOF\n", begin);
  if (file.size() > kLargestFile) return failed(HPDF_FILE_IO_ERROR);

  const std::string id = hex_text(hash128(file));
  const std::size_t first = file.rfind("<" + no_id + "> <");
  file.replace(first + 1, id.size(), id);
  file.replace(first + id.size() + 4, id.size(), id);
  return file;
}

}  // namespace chalkleaf::pdf
