#include "club/pictures.h"

#include <algorithm>

#include "base/paper.h"
#include "base/text.h"
#include "pdf/pictures.h"
#include "picture/shrink.h"

namespace chalkleaf::club {
namespace {

using plan::FoundPicture;
using plan::PictureProblem;

constexpr std::size_t kMostPixelBytes = 64 * 1024 * 1024;
constexpr std::size_t kMostPackedBytes = 64 * 1024 * 1024;
// The finest that is worth printing (common practice, no source).
constexpr std::int64_t kDotsPerInch = 300;

int dots(Length length) {
  constexpr std::int64_t kInch = 72'000;  // thousandths of a point
  return static_cast<int>((length.in_millipoints() * kDotsPerInch + kInch - 1) / kInch);
}

PictureProblem problem(PictureProblem::Kind kind) {
  PictureProblem out;
  out.kind = kind;
  return out;
}

bool is_picture_name(std::string_view name) {
  const std::string lower = lower_ascii(name);
  return lower.ends_with(".png") || lower.ends_with(".jpg") || lower.ends_with(".jpeg");
}

// Capitals and the ending are what is most often wrong.
std::optional<std::string> name_meant(std::string_view name,
                                      const std::vector<std::string>& names) {
  const std::string whole = lower_ascii(name);
  const std::string stem = file_stem(whole);
  for (const std::string& other : names) {
    if (lower_ascii(other) == whole) return other;
  }
  for (const std::string& other : names) {
    if (file_stem(lower_ascii(other)) == stem) return other;
  }
  return closest(name, names);
}

}  // namespace

Pictures::Pictures(const FileSystem& files, std::string root)
    : files_(files),
      folder_(files, std::move(root), {"pictures", is_picture_name, name_meant}),
      pixels_(kMostPixelBytes),
      packed_(kMostPackedBytes) {}

tl::expected<FoundPicture, PictureProblem> Pictures::find(const std::string& from_path,
                                                          const std::string& target) const {
  using Kind = PictureProblem::Kind;
  const auto real = folder_.find(from_path, target);
  if (!real && real.error() == ClubFolder::Miss::kOutside) {
    return tl::unexpected(problem(Kind::kOutside));
  }
  if (!real && real.error() == ClubFolder::Miss::kUnreadable) {
    PictureProblem unreadable = problem(Kind::kUnreadable);
    unreadable.message = "cannot be looked at: the disk does not allow it";
    unreadable.hint = "see that the file and the folders above it may be read";
    return tl::unexpected(std::move(unreadable));
  }
  if (!real) {
    PictureProblem missing = problem(Kind::kMissing);
    missing.suggestion = folder_.suggestion(from_path, target);
    return tl::unexpected(std::move(missing));
  }
  std::shared_ptr<Entry> entry;
  {
    const std::lock_guard lock(mutex_);
    auto& place = entries_[*real];
    if (!place) place = std::make_shared<Entry>();
    entry = place;
  }
  std::call_once(entry->once, [&] { entry->result = look_at(*real); });
  return entry->result;
}

tl::expected<FoundPicture, PictureProblem> Pictures::look_at(const std::string& path) const {
  FoundPicture found;
  const auto pixels = read(path, &found);
  if (!pixels) return tl::unexpected(pixels.error());
  return found;
}

tl::expected<Pictures::Pixels, PictureProblem> Pictures::read(const std::string& path,
                                                              FoundPicture* found) const {
  const auto unreadable = [](const picture::Problem& why) {
    PictureProblem out = problem(PictureProblem::Kind::kUnreadable);
    out.message = why.message;
    out.hint = why.hint;
    return tl::unexpected(std::move(out));
  };
  const std::lock_guard one_at_a_time(decoding_);
  // Somebody may have decoded it while we waited.
  if (found == nullptr) {
    if (Pixels kept = pixels_.find(path)) return kept;
  }
  const auto bytes = files_.read(path, picture::kMostBytes);
  if (!bytes && bytes.error().kind == FileError::Kind::kTooLarge) {
    return unreadable(picture::too_many_bytes());
  }
  if (!bytes) {
    return unreadable(
        {"cannot be read: " + bytes.error().message, "see that the file is there and may be read"});
  }
  auto picture = picture::decode(*bytes);
  if (!picture) return unreadable(picture.error());
  if (found != nullptr) *found = {path, picture->width, picture->height};
  // No sheet prints more (sheet/picture_block.cpp).
  const Size largest = paper_size(Paper::kA4);
  auto pixels = std::make_shared<const picture::Picture>(
      picture::shrunk_into(std::move(*picture), dots(largest.width), dots(largest.height / 3)));
  pixels_.keep(path, pixels, pixels->pixels.size());
  return pixels;
}

Pictures::Pixels Pictures::pixels(const std::string& path) const {
  if (Pixels kept = pixels_.find(path)) return kept;
  return read(path, nullptr).value_or(nullptr);
}

std::shared_ptr<const page::PackedPicture> Pictures::printed(const std::string& path,
                                                             Size size) const {
  const PrintKey key{path, dots(size.width), dots(size.height)};
  if (auto kept = packed_.find(key)) return kept;
  const Pixels whole = pixels(path);
  if (!whole) return nullptr;
  const picture::Picture small =
      picture::shrunk(*whole, std::max(1, std::get<1>(key)), std::max(1, std::get<2>(key)));
  auto packed = pdf::packed(small.width, small.height, small.channels, small.pixels);
  if (!packed) return nullptr;
  auto out = std::make_shared<const page::PackedPicture>(std::move(*packed));
  packed_.keep(key, out, out->data.size());
  return out;
}

std::optional<std::string> supply_pictures(page::DisplayList& list, const Pictures& pictures) {
  for (page::Page& page : list.pages) {
    for (page::Item& item : page.items) {
      auto* picture = std::get_if<page::PictureItem>(&item);
      if (picture == nullptr) continue;
      picture->pixels =
          pictures.printed(picture->source, {picture->place.width, picture->place.height});
      if (!picture->pixels) return file_name(picture->source);
    }
  }
  return std::nullopt;
}

}  // namespace chalkleaf::club
