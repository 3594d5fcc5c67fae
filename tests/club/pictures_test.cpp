// Pictures of a club: found, decoded once, and never from outside its folder.
#include "club/pictures.h"

#include <catch2/catch.hpp>
#include <thread>

#include "club/folders.h"
#include "picture/shrink.h"
#include "support/memory_files.h"

using namespace chalkleaf;
using namespace chalkleaf::club;
using chalkleaf::club::tests::TemporaryFolder;
using chalkleaf::support::MemoryFileSystem;
using plan::PictureProblem;

namespace {

/// A disk that counts how often each file is read.
class CountingFiles final : public FileSystem {
 public:
  explicit CountingFiles(MemoryFileSystem& disk) : disk_(disk) {}
  tl::expected<std::string, FileError> read(const std::string& path,
                                            std::uint64_t most) const override {
    const std::lock_guard lock(mutex_);
    ++reads[path];
    return disk_.read(path, most);
  }
  FileKind kind(const std::string& path) const override { return disk_.kind(path); }
  tl::expected<std::vector<FolderEntry>, FileError> list(const std::string& folder) const override {
    return disk_.list(folder);
  }
  tl::expected<std::string, FileError> real_path(const std::string& path) const override {
    return disk_.real_path(path);
  }
  tl::expected<void, FileError> write_whole(const std::string& path,
                                            std::string_view bytes) override {
    return disk_.write_whole(path, bytes);
  }
  tl::expected<void, FileError> remove(const std::string& path) override {
    return disk_.remove(path);
  }
  tl::expected<void, FileError> remove_empty_folder(const std::string& path) override {
    return disk_.remove_empty_folder(path);
  }
  mutable std::map<std::string, int> reads;

 private:
  MemoryFileSystem& disk_;
  mutable std::mutex mutex_;
};

// Written by Pillow: Image.new("RGB", (12, 8), (200, 30, 40)).save(…)
std::string red_png() {
  static const std::string bytes = [] {
    const TemporaryFolder folder("red-picture");
    const auto made = tests::shell(
        "/usr/bin/python3 -c \"from PIL import Image; Image.new('RGB', (12, 8), (200, 30, "
        "40)).save('" +
        folder / "red.png" + "')\" 2>&1");
    REQUIRE(made.text.empty());
    return folder.read("red.png");
  }();
  return bytes;
}

MemoryFileSystem disk_with_pictures() {
  return MemoryFileSystem{{"/c/pictures/line.png", red_png()},
                          {"/c/pictures/On the beam.JPG", "GIF89a"},
                          {"/c/pictures/short.png", red_png().substr(0, 60)},
                          {"/c/pictures/large.png", std::string(8 * 1024 * 1024 + 1, 'x')},
                          {"/c/sessions/beside.png", red_png()},
                          {"/c/sessions/a.md", ""},
                          {"/elsewhere/x.png", red_png()}};
}

std::string found_picture(const Pictures& pictures, const std::string& target) {
  const auto picture = pictures.find("/c/sessions/a.md", target);
  if (picture) {
    return picture->path + " " + std::to_string(picture->width) + "x" +
           std::to_string(picture->height);
  }
  switch (picture.error().kind) {
    case PictureProblem::Kind::kMissing:
      return "missing " + picture.error().suggestion;
    case PictureProblem::Kind::kOutside:
      return "outside";
    case PictureProblem::Kind::kUnreadable:
      return picture.error().message + "; " + picture.error().hint;
  }
  return {};
}

}  // namespace

TEST_CASE("a picture is found from the file that names it") {
  const MemoryFileSystem files = disk_with_pictures();
  const Pictures pictures(files, "/c");
  CHECK(found_picture(pictures, "../pictures/line.png") == "/c/pictures/line.png 12x8");
  CHECK(found_picture(pictures, "beside.png") == "/c/sessions/beside.png 12x8");
  CHECK(found_picture(pictures, "./../pictures/../pictures/line.png") ==
        "/c/pictures/line.png 12x8");
}

TEST_CASE("what cannot be printed is told") {
  const MemoryFileSystem files = disk_with_pictures();
  const Pictures pictures(files, "/c");
  CHECK(found_picture(pictures, "../pictures/On the beam.JPG") ==
        "is a GIF, and only PNG and JPEG can be printed; save it again as PNG or JPEG");
  CHECK(found_picture(pictures, "../pictures/short.png") ==
        "is cut short: its end is missing; save it again as PNG or JPEG");
  CHECK(found_picture(pictures, "../pictures/large.png") ==
        "is larger than 8 MB; save it smaller: 2500 pixels across fill a page");
}

TEST_CASE("a near name is suggested: its capitals, its ending, its letters, its folder") {
  const MemoryFileSystem files = disk_with_pictures();
  const Pictures pictures(files, "/c");
  CHECK(found_picture(pictures, "../pictures/Line.PNG") == "missing ../pictures/line.png");
  CHECK(found_picture(pictures, "../pictures/line.jpg") == "missing ../pictures/line.png");
  CHECK(found_picture(pictures, "../pictures/line") == "missing ../pictures/line.png");
  CHECK(found_picture(pictures, "../pictures/lime.png") == "missing ../pictures/line.png");
  CHECK(found_picture(pictures, "line.png") == "missing ../pictures/line.png");
  CHECK(found_picture(pictures, "../pictures/on the beam.jpg") ==
        "missing ../pictures/On the beam.JPG");
  CHECK(found_picture(pictures, "../pictures/elephant.png") == "missing ");
  CHECK(found_picture(pictures, "../pictures") == "missing ");
  CHECK(found_picture(pictures, "") == "missing ");
  CHECK(found_picture(pictures, std::string("a\0b", 3)) == "missing ");
}

TEST_CASE("a picture outside the club is refused, whether or not there is one") {
  const MemoryFileSystem files = disk_with_pictures();
  const Pictures pictures(files, "/c");
  CHECK(found_picture(pictures, "../../elsewhere/x.png") == "outside");
  CHECK(found_picture(pictures, "../../elsewhere/y.png") == "outside");
  CHECK(found_picture(pictures, "/elsewhere/x.png") == "outside");
  CHECK(found_picture(pictures, "/c/pictures/line.png") == "outside");
  CHECK(found_picture(pictures, "../../../../../etc/passwd") == "outside");
}

TEST_CASE("a link that leads out of the club's folder is refused") {
  const TemporaryFolder folder("pictures-link");
  folder.put("outside/x.png", red_png());
  folder.put("c/pictures/line.png", red_png());
  folder.link("c/pictures/out.png", "../../outside/x.png");
  folder.link("c/pictures/in.png", "line.png");
  folder.link("c/pictures/self.png", "self.png");
  folder.link("c/away", "../outside");
  const RealFileSystem files;
  const Pictures pictures(files, folder / "c");
  const auto ask = [&](const std::string& target) {
    const auto out = pictures.find(folder / "c/pictures/a.md", target);
    if (out) return out->path.substr(folder.str().size());
    return std::string(out.error().kind == PictureProblem::Kind::kOutside ? "outside" : "missing");
  };
  CHECK(ask("in.png") == "/c/pictures/line.png");
  CHECK(ask("out.png") == "outside");
  CHECK(ask("../away/x.png") == "outside");
  CHECK(ask("self.png") == "missing");
}

TEST_CASE("a picture is read once, however many workers ask for it, and packed alike for all") {
  MemoryFileSystem memory = disk_with_pictures();
  const CountingFiles files(memory);
  const Pictures pictures(files, "/c");
  const Size size{Length::pt(9), Length::pt(6)};
  std::vector<std::shared_ptr<const page::PackedPicture>> packed(8);
  std::vector<std::thread> workers;
  for (auto& one : packed) {
    workers.emplace_back([&] {
      const auto picture = pictures.find("/c/sessions/a.md", "../pictures/line.png");
      if (picture) one = pictures.printed(picture->path, size);
    });
  }
  for (std::thread& worker : workers) worker.join();
  CHECK(files.reads == std::map<std::string, int>{{"/c/pictures/line.png", 1}});
  for (const auto& one : packed) {
    REQUIRE(one != nullptr);
    CHECK((one->data == packed[0]->data));
  }
  // 9 pt at 300 dpi are 37.5 dots: the picture has fewer and stays as it is.
  CHECK(packed[0]->width == 12);
  CHECK(packed[0]->height == 8);
  CHECK(packed[0]->channels == 3);
}

TEST_CASE("no more pixels are printed than 300 dpi need, and none is made up") {
  MemoryFileSystem memory = disk_with_pictures();
  const Pictures pictures(memory, "/c");
  REQUIRE(pictures.find("/c/sessions/a.md", "../pictures/line.png").has_value());
  const auto dots = [&](double width, double height) {
    const auto one =
        pictures.printed("/c/pictures/line.png", {Length::pt(width), Length::pt(height)});
    return std::pair(one->width, one->height);
  };
  CHECK(dots(1.44, 0.96) == std::pair(6, 4));
  CHECK(dots(1.45, 0.96) == std::pair(7, 4));  // rounded up
  CHECK(dots(0.0001, 0.0001) == std::pair(1, 1));
  CHECK(dots(500, 400) == std::pair(12, 8));
}

TEST_CASE("a picture that goes while it is in use is told, not printed") {
  MemoryFileSystem memory = disk_with_pictures();
  const Pictures pictures(memory, "/c");
  page::DisplayList list;
  list.pages.push_back({paper_size(Paper::kA5), {}});
  const Rect place{Length(), Length(), Length::pt(9), Length::pt(6)};
  list.pages[0].items.emplace_back(
      page::PictureItem{page::Owner::of(0), place, "/c/pictures/line.png", nullptr});
  CHECK(supply_pictures(list, pictures) == std::nullopt);
  CHECK(std::get<page::PictureItem>(list.pages[0].items[0]).pixels != nullptr);
  list.pages[0].items.emplace_back(
      page::PictureItem{page::Owner::of(0), place, "/c/pictures/gone.png", nullptr});
  CHECK(supply_pictures(list, pictures) == "gone.png");
}
