#include "club/git_pack.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <zlib.h>

#include <algorithm>
#include <cerrno>
#include <cstring>

namespace chalkleaf::club {
namespace {

constexpr std::size_t kHead = 8;  // magic and version
constexpr std::size_t kFan = 256 * 4;
constexpr std::size_t kName = 20;

std::uint32_t number_32(std::string_view bytes, std::size_t at) {
  std::uint32_t out = 0;
  for (std::size_t i = 0; i < 4; ++i) out = out << 8U | static_cast<unsigned char>(bytes[at + i]);
  return out;
}

std::uint64_t number_64(std::string_view bytes) {
  return std::uint64_t{number_32(bytes, 0)} << 32U | number_32(bytes, 4);
}

/// Reads the numbers of a pack, byte by byte; what runs over the end is no number.
class Numbers {
 public:
  explicit Numbers(std::string_view bytes) : bytes_(bytes) {}

  std::optional<std::uint8_t> byte() {
    if (at_ == bytes_.size()) return std::nullopt;
    return static_cast<std::uint8_t>(bytes_[at_++]);
  }
  /// Seven bits a byte, the lowest first; `bits` of it are known already.
  std::optional<std::uint64_t> size(std::uint64_t known = 0, unsigned bits = 0, bool more = true) {
    while (more) {
      const auto next = byte();
      if (!next || bits > 56) return std::nullopt;
      known |= std::uint64_t{*next & 0x7FU} << bits;
      bits += 7;
      more = (*next & 0x80U) != 0;
    }
    return known;
  }
  /// How far back another object stands: seven bits a byte, the highest first, each one but the
  /// last counting one more.
  std::optional<std::uint64_t> distance() {
    auto next = byte();
    if (!next) return std::nullopt;
    std::uint64_t out = *next & 0x7FU;
    while ((*next & 0x80U) != 0) {
      next = byte();
      if (!next || out > (UINT64_MAX >> 8U)) return std::nullopt;
      out = ((out + 1) << 7U) | (*next & 0x7FU);
    }
    return out;
  }
  std::optional<std::string_view> take(std::uint64_t size) {
    if (size > bytes_.size() - at_) return std::nullopt;
    const std::string_view out = bytes_.substr(at_, static_cast<std::size_t>(size));
    at_ += static_cast<std::size_t>(size);
    return out;
  }
  std::string_view rest() const { return bytes_.substr(at_); }
  bool at_end() const { return at_ == bytes_.size(); }

 private:
  std::string_view bytes_;
  std::size_t at_ = 0;
};

// A number of a copy: of four (or three) bytes those that its bits name are written.
std::optional<std::uint64_t> sparse(Numbers& numbers, unsigned bits, unsigned bytes) {
  std::uint64_t out = 0;
  for (unsigned i = 0; i < bytes; ++i) {
    if ((bits >> i & 1U) == 0) continue;
    const auto next = numbers.byte();
    if (!next) return std::nullopt;
    out |= std::uint64_t{*next} << (8 * i);
  }
  return out;
}

}  // namespace

PlainFile::PlainFile(const std::string& path) {
  // O_NONBLOCK: opening a named pipe would wait for who writes into it.
  fd_ = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  if (fd_ < 0) return;
  struct stat found {};
  if (::fstat(fd_, &found) == 0 && S_ISREG(found.st_mode)) {
    size_ = static_cast<std::uint64_t>(found.st_size);
    return;
  }
  ::close(fd_);
  fd_ = -1;
}

PlainFile::~PlainFile() {
  if (fd_ >= 0) ::close(fd_);
}

std::string PlainFile::read(std::uint64_t from, std::uint64_t size) const {
  std::string out;
  if (fd_ < 0 || from >= size_) return out;
  out.resize(static_cast<std::size_t>(std::min(size, size_ - from)));
  std::size_t filled = 0;
  while (filled < out.size()) {
    const ssize_t n =
        ::pread(fd_, out.data() + filled, out.size() - filled, static_cast<off_t>(from + filled));
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) break;
    filled += static_cast<std::size_t>(n);
  }
  out.resize(filled);
  return out;
}

std::optional<std::string> inflated(std::string_view bytes, std::size_t most) {
  std::string out(most, '\0');
  uLongf made = out.size();
  uLong used = bytes.size();
  if (uncompress2(reinterpret_cast<Bytef*>(out.data()), &made,
                  reinterpret_cast<const Bytef*>(bytes.data()), &used) != Z_OK) {
    return std::nullopt;
  }
  out.resize(made);
  return out;
}

std::optional<std::string> with_changes(std::string_view base, std::string_view changes,
                                        std::uint64_t most) {
  Numbers numbers(changes);
  const auto before = numbers.size();
  const auto after = numbers.size();
  if (!before || !after || *before != base.size() || *after > most) return std::nullopt;
  std::string out;
  out.reserve(static_cast<std::size_t>(*after));
  while (!numbers.at_end()) {
    const unsigned op = *numbers.byte();
    std::optional<std::string_view> piece;
    if ((op & 0x80U) != 0) {
      const auto from = sparse(numbers, op, 4);
      const auto size = sparse(numbers, op >> 4U & 7U, 3);
      if (!from || !size) return std::nullopt;
      constexpr std::uint64_t kUsual = 0x10000;  // what a size of 0 stands for
      const std::uint64_t whole = *size == 0 ? kUsual : *size;
      if (*from > base.size() || whole > base.size() - *from) return std::nullopt;
      piece = base.substr(static_cast<std::size_t>(*from), static_cast<std::size_t>(whole));
    } else {
      piece = op == 0 ? std::nullopt : numbers.take(op);
    }
    if (!piece || piece->size() > *after - out.size()) return std::nullopt;
    out += *piece;
  }
  if (out.size() != *after) return std::nullopt;
  return out;
}

bool GitPack::open_index() {
  if (index_) return !fan_.empty();
  index_.emplace(path_ + ".idx");
  const std::string head = index_->read(0, kHead + kFan);
  if (head.size() != kHead + kFan || !head.starts_with("\377tOc") || number_32(head, 4) != 2)
    return false;
  std::vector<std::uint32_t> fan;
  for (std::size_t i = 0; i < 256; ++i) fan.push_back(number_32(head, kHead + i * 4));
  if (!std::is_sorted(fan.begin(), fan.end())) return false;
  fan_ = std::move(fan);
  return true;
}

std::optional<std::uint64_t> GitPack::find(const GitId& id) {
  if (!open_index()) return std::nullopt;
  const std::string_view wanted(reinterpret_cast<const char*>(id.data()), id.size());
  constexpr std::uint64_t kNames = kHead + kFan;
  const std::uint64_t all = fan_.back();
  // A file holds as many names as its size allows, whatever its head says.
  if (kNames + all * (kName + 8) > index_->size()) return std::nullopt;
  std::uint64_t low = id[0] == 0 ? 0 : fan_[id[0] - 1U];
  std::uint64_t high = fan_[id[0]];
  // The names left are halved until they are few, then read at once.
  constexpr std::uint64_t kFew = 512;
  while (high - low > kFew) {
    const std::uint64_t middle = low + (high - low) / 2;
    if (index_->read(kNames + middle * kName, kName) <= wanted) {
      low = middle;
    } else {
      high = middle;
    }
  }
  const std::string names = index_->read(kNames + low * kName, (high - low) * kName);
  for (std::size_t i = 0; i + kName <= names.size(); i += kName) {
    if (std::string_view(names).substr(i, kName) == wanted) return offset_of(low + i / kName, all);
  }
  return std::nullopt;
}

// Where the object of a name stands: four bytes, or the place of eight more.
std::optional<std::uint64_t> GitPack::offset_of(std::uint64_t name, std::uint64_t all) const {
  const std::uint64_t offsets = kHead + kFan + all * (kName + 4);
  const std::string small = index_->read(offsets + name * 4, 4);
  if (small.size() != 4) return std::nullopt;
  const std::uint32_t offset = number_32(small, 0);
  if ((offset & 0x8000'0000U) == 0) return offset;
  const std::string large =
      index_->read(offsets + all * 4 + std::uint64_t{offset & 0x7FFF'FFFFU} * 8, 8);
  return large.size() == 8 ? std::optional(number_64(large)) : std::nullopt;
}

std::optional<PackedObject> GitPack::at(std::uint64_t offset, std::uint64_t most) {
  if (!pack_) pack_.emplace(path_ + ".pack");
  // Most objects are small: one read has the head and all of it.
  constexpr std::uint64_t kFirstRead = 4096;
  std::string bytes = pack_->read(offset, kFirstRead);
  Numbers numbers(bytes);
  const auto first = numbers.byte();
  if (!first) return std::nullopt;
  PackedObject out;
  out.type = *first >> 4U & 7U;
  const auto size = numbers.size(*first & 0x0FU, 4, (*first & 0x80U) != 0);
  if (!size || *size > most) return std::nullopt;
  if (out.type == 6) {
    const auto back = numbers.distance();
    if (!back || *back == 0 || *back > offset) return std::nullopt;
    out.base_offset = offset - *back;
  } else if (out.type == 7) {
    const auto name = numbers.take(kName);
    if (!name) return std::nullopt;
    std::memcpy(out.base_id.data(), name->data(), kName);
  }
  std::string_view packed = numbers.rest();
  // zlib adds five bytes to each 16 KB it cannot pack, and a few in all.
  const std::uint64_t longest = *size + *size / 1024 + 64;
  if (longest > packed.size()) {
    const std::uint64_t head = bytes.size() - packed.size();
    bytes = pack_->read(offset + head, longest);
    packed = bytes;
  }
  auto plain = inflated(packed, static_cast<std::size_t>(*size));
  if (!plain || plain->size() != *size) return std::nullopt;
  out.bytes = std::move(*plain);
  return out;
}

}  // namespace chalkleaf::club
