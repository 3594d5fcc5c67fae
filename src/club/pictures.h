// The pictures of one club: found by path, decoded once a run, used by many plans and workers.
//
// As with shared parts, a path may not reach out of the club's folder (club/club_folder.h). What
// is kept are pixels no finer than print can show, and what was packed for a PDF; both within a
// limit, beyond which a picture is read again. Tested by tests/club/pictures_test.cpp.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <tuple>
#include <vector>

#include "base/files.h"
#include "club/byte_cache.h"
#include "club/club_folder.h"
#include "page/display_list.h"
#include "picture/decode.h"
#include "plan/read.h"

namespace chalkleaf::club {

class Pictures final : public plan::PictureLookup {
 public:
  /// `root` is absolute and without links. `files` must outlive it.
  Pictures(const FileSystem& files, std::string root);

  /// `from_path` is the absolute path of the file that names the picture.
  tl::expected<plan::FoundPicture, plan::PictureProblem> find(
      const std::string& from_path, const std::string& target) const override;

  /// The pixels of a picture that find() found; fewer, if it has more than any sheet prints.
  std::shared_ptr<const picture::Picture> pixels(const std::string& path) const;
  /// A picture that find() found, with as many pixels as 300 dpi need on so much paper. Null when
  /// its file is gone or no longer a picture.
  std::shared_ptr<const page::PackedPicture> printed(const std::string& path, Size size) const;

 private:
  using Pixels = std::shared_ptr<const picture::Picture>;
  /// What is known of a file; asked of the disk once.
  struct Entry {
    std::once_flag once;
    tl::expected<plan::FoundPicture, plan::PictureProblem> result;
  };
  using PrintKey = std::tuple<std::string, int, int>;  ///< path, width and height in pixels

  tl::expected<plan::FoundPicture, plan::PictureProblem> look_at(const std::string& path) const;
  tl::expected<Pixels, plan::PictureProblem> read(const std::string& path,
                                                  plan::FoundPicture* found) const;

  const FileSystem& files_;
  ClubFolder folder_;
  mutable std::mutex mutex_;                                       ///< guards entries_
  mutable std::map<std::string, std::shared_ptr<Entry>> entries_;  ///< by real path
  mutable std::mutex decoding_;  ///< one at a time: the largest takes 300 MB while it is decoded
  mutable ByteCache<std::string, picture::Picture> pixels_;
  mutable ByteCache<PrintKey, page::PackedPicture> packed_;
};

/// Gives every picture of the list its pixels; the name of the file that had none, if any.
std::optional<std::string> supply_pictures(page::DisplayList& list, const Pictures& pictures);

}  // namespace chalkleaf::club
