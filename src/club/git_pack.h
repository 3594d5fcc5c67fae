// One pack of a git repository and its index (gitformat-pack: index version 2). Internal to the
// room; see club/git_objects.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "club/git_objects.h"

namespace chalkleaf::club {

/// A plain file open for reading; pipes and devices are refused. Not mapped: a file that shrinks
/// under a map would end the program.
class PlainFile {
 public:
  explicit PlainFile(const std::string& path);
  PlainFile(PlainFile&& other) noexcept : fd_(other.fd_), size_(other.size_) { other.fd_ = -1; }
  PlainFile& operator=(PlainFile&&) = delete;
  ~PlainFile();
  bool is_open() const { return fd_ >= 0; }
  std::uint64_t size() const { return size_; }
  /// The bytes of a stretch; fewer when the file ends there.
  std::string read(std::uint64_t from, std::uint64_t size) const;

 private:
  int fd_ = -1;
  std::uint64_t size_ = 0;
};

/// An object as its pack holds it.
struct PackedObject {
  int type = 0;                   ///< 1 to 4 a whole object; 6 and 7 what differs from another
  std::uint64_t base_offset = 0;  ///< of type 6: where the other one stands
  GitId base_id{};                ///< of type 7: its name
  std::string bytes;
};

class GitPack {
 public:
  /// `path` without its `.idx` or `.pack`.
  explicit GitPack(std::string path) : path_(std::move(path)) {}
  /// Where an object stands.
  std::optional<std::uint64_t> find(const GitId& id);
  /// Nothing when it is broken or unpacks to more than `most` bytes.
  std::optional<PackedObject> at(std::uint64_t offset, std::uint64_t most);

 private:
  bool open_index();
  std::optional<std::uint64_t> offset_of(std::uint64_t name, std::uint64_t all) const;

  std::string path_;
  std::optional<PlainFile> index_;
  std::optional<PlainFile> pack_;
  std::vector<std::uint32_t> fan_;  ///< of 256: how many names begin with this byte or a lower one
};

/// What `bytes` of zlib's format unpack to, when that is at most `most` bytes.
std::optional<std::string> inflated(std::string_view bytes, std::size_t most);
/// Makes an object from the one it differs from. Nothing when the two do not fit.
std::optional<std::string> with_changes(std::string_view base, std::string_view changes,
                                        std::uint64_t most);

}  // namespace chalkleaf::club
