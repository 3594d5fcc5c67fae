#include "base/pack.h"

#include <algorithm>
#include <cstring>

namespace chalkleaf {
namespace {

// Another version of the format, or of what the entries mean, has another number.
constexpr std::string_view kMagic = "chalkleaf pack 1";
constexpr std::size_t kAlign = 8;

/// One line of the table that follows the head, in the order of the keys.
struct Line {
  Hash128 key;
  std::uint64_t begin;
  std::uint64_t size;
  std::uint64_t check;  ///< hash64 of the bytes
};
static_assert(sizeof(Line) == 40);

struct Head {
  char magic[16];
  std::uint64_t byte_order;  ///< kOrder as this machine writes it
  std::uint64_t lines;
  std::uint64_t check;  ///< hash64 of the table
};
static_assert(sizeof(Head) == 40 && kMagic.size() == sizeof(Head::magic));
constexpr std::uint64_t kOrder = 0x0102030405060708;

Line line_at(std::string_view bytes, std::size_t index) {
  Line out;
  std::memcpy(&out, bytes.data() + sizeof(Head) + index * sizeof(Line), sizeof out);
  return out;
}

}  // namespace

Hash128 pack_key(std::string_view what, std::string_view made_of) {
  const Hash128 hash = hash128(made_of);
  std::string both(what);
  both.push_back('\0');
  both.append(reinterpret_cast<const char*>(hash.data()), hash.size());
  return hash128(both);
}

Pack::Pack(FileBytes file) : file_(std::move(file)) {
  const std::string_view bytes = file_.bytes;
  Head head;
  if (bytes.size() < sizeof head) return;
  std::memcpy(&head, bytes.data(), sizeof head);
  if (std::string_view(head.magic, sizeof head.magic) != kMagic || head.byte_order != kOrder)
    return;
  const std::size_t room = bytes.size() - sizeof head;
  if (head.lines > room / sizeof(Line)) return;
  const auto lines = static_cast<std::size_t>(head.lines);
  if (hash64(bytes.substr(sizeof head, lines * sizeof(Line))) != head.check) return;
  count_ = lines;
}

std::optional<std::string_view> Pack::find(const Hash128& key) const {
  std::size_t low = 0;
  std::size_t high = count_;
  while (low < high) {
    const std::size_t middle = (low + high) / 2;
    const Line line = line_at(file_.bytes, middle);
    if (line.key == key) {
      const std::size_t all = file_.bytes.size();
      if (line.begin > all || line.size > all - line.begin) return std::nullopt;
      const std::string_view bytes = file_.bytes.substr(static_cast<std::size_t>(line.begin),
                                                        static_cast<std::size_t>(line.size));
      return hash64(bytes) == line.check ? std::optional(bytes) : std::nullopt;
    }
    if (line.key < key) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return std::nullopt;
}

std::string packed(const std::map<Hash128, std::string>& entries) {
  std::string table;
  std::string data;
  const std::size_t begin = sizeof(Head) + entries.size() * sizeof(Line);
  for (const auto& [key, bytes] : entries) {
    data.resize((data.size() + kAlign - 1) / kAlign * kAlign);
    const Line line{key, begin + data.size(), bytes.size(), hash64(bytes)};
    table.append(reinterpret_cast<const char*>(&line), sizeof line);
    data += bytes;
  }
  Head head{};
  std::memcpy(head.magic, kMagic.data(), kMagic.size());
  head.byte_order = kOrder;
  head.lines = entries.size();
  head.check = hash64(table);
  return std::string(reinterpret_cast<const char*>(&head), sizeof head) + table + data;
}

}  // namespace chalkleaf
