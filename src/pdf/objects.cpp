#include "pdf/objects.h"

#include <fmt/format.h>
#include <hpdf_objects.h>
#include <hpdf_utils.h>

#include <limits>
#include <new>

#include "base/hash.h"
#include "pdf/deflate.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

// libharu's cross-reference table counts bytes in 31 bits.
constexpr std::size_t kLargestFile = std::numeric_limits<std::int32_t>::max();

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
    packed = deflated(data, Effort::kOften);
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

  // The identifier (ISO 32000-1, 14.4) is the hash of the file written with zeros in its place.
  const std::string no_id(32, '0');
  Haru::give(haru.xref->trailer, fmt::format("/Root {}\n/Info {}\n/ID [<{}> <{}>]\n",
                                             reference(catalog), reference(info), no_id, no_id));
  std::string file;
  HPDF_Stream stream = HPDF_CallbackWriter_New(haru.memory, append_to_file, &file);
  if (stream == nullptr) return failed(HPDF_FAILD_TO_ALLOC_MEM);
  HPDF_Stream_Write(stream, reinterpret_cast<const HPDF_BYTE*>(kHeader.data()),
                    static_cast<HPDF_UINT>(kHeader.size()));
  const HPDF_STATUS status = HPDF_Xref_WriteToStream(haru.xref, stream, nullptr);
  HPDF_Stream_Free(stream);
  if (status != HPDF_OK) return failed(status);
  if (haru.error.error_no != HPDF_OK) return failed(haru.error.error_no);

  const std::string id = hex_text(hash128(file));
  const std::size_t first = file.rfind("<" + no_id + "> <");
  file.replace(first + 1, id.size(), id);
  file.replace(first + id.size() + 4, id.size(), id);
  return file;
}

}  // namespace chalkleaf::pdf
