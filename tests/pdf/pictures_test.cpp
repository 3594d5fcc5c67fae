// Pictures in the file, read back by poppler, MuPDF and netpbm.
#include "pdf/pictures.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>

#include "pdf/sample.h"

using namespace chalkleaf;
using namespace chalkleaf::pdf;

namespace {

using Pixels = std::shared_ptr<const page::PackedPicture>;

Pixels packed_of(int width, int height, int channels, const std::string& pixels) {
  return std::make_shared<const page::PackedPicture>(
      packed(width, height, channels, pixels).value());
}

// A slope with a step in it, so that every row's filter has something to do.
std::string slope(int width, int height, int channels) {
  std::string out;
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      for (int c = 0; c < channels; ++c) {
        out.push_back(static_cast<char>((x * (3 + c) + y * 5 + (x > width / 2 ? 90 : 0)) % 256));
      }
    }
  }
  return out;
}

page::NodeId figure(Draft& d, const Pixels& pixels, double x, double y, double width,
                    double height) {
  const page::NodeId node = d.node(page::Role::kFigure);
  d[node].alternative_text = "Two children on a line";
  d.list.pages.back().items.emplace_back(
      page::PictureItem{page::Owner::of(node),
                        {points(x), points(y), points(width), points(height)},
                        "line.png",
                        pixels});
  return node;
}

std::string output_of(const std::string& command) { return support::run(command + " 2>&1").output; }

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

}  // namespace

TEST_CASE("a picture stands in the file once, and poppler reads back its pixels") {
  const std::string colours = slope(31, 17, 3);
  const std::string greys = slope(40, 23, 1);
  Draft d;
  const Pixels colour = packed_of(31, 17, 3, colours);
  figure(d, colour, 40, 40, 93, 51);
  figure(d, packed_of(40, 23, 1, greys), 40, 140, 80, 46);
  d.add_page();
  figure(d, colour, 40, 40, 31, 17);
  figure(d, packed_of(31, 17, 3, colours), 40, 100, 31, 17);  // equal, but kept elsewhere
  const std::string path = saved("pictures.pdf", written(d.list));
  CHECK(findings(path) == "");
  CHECK(support::run("qpdf --check " + path + " 2>&1").status == 0);

  // The columns: page num type width height color comp bpc enc interp object ID. One object for the
  // three in colour.
  const std::string list = output_of("pdfimages -list " + path +
                                     " | tail -n +3 | awk '{print $1,$3,$4,$5,$6,$8,$9,$11}'");
  INFO(list);
  std::istringstream lines(list);
  std::vector<std::string> rows;
  for (std::string line; std::getline(lines, line);) rows.push_back(line);
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].starts_with("1 image 31 17 rgb 8 image "));
  CHECK(rows[1].starts_with("1 image 40 23 gray 8 image "));
  CHECK(rows[2].substr(1) == rows[0].substr(1));
  CHECK(rows[3].substr(1) == rows[0].substr(1));

  const std::string stem = path + ".read";
  CHECK(output_of("pdfimages -f 1 -l 1 " + path + " " + stem) == "");
  CHECK((bytes_of(stem + "-000.ppm") == "P6\n31 17\n255\n" + colours));
  std::string as_colours;  // which is how pdfimages writes grey
  for (const char grey : greys) as_colours.append(3, grey);
  CHECK((bytes_of(stem + "-001.ppm") == "P6\n40 23\n255\n" + as_colours));
}

TEST_CASE("a picture stands upright in its box") {
  // Two by two: red, green; blue, black. Drawn by MuPDF at 72 dpi, a point is a pixel.
  Draft d;
  const std::string pixels("\xFF\0\0\0\xFF\0\0\0\xFF\0\0\0", 12);
  d.list.pages.back().size = {points(100), points(200)};
  figure(d, packed_of(2, 2, 3, pixels), 20, 30, 40, 60);
  const std::string path = saved("upright.pdf", written(d.list));
  const std::string drawn = path + ".ppm";
  CHECK(output_of("mutool draw -q -A 0 -r 72 -F ppm -o " + drawn + " " + path +
                  " 2>&1 | grep -v 'ICC support is not available'") == "");
  const std::string ppm = bytes_of(drawn);
  REQUIRE(ppm.starts_with("P6\n100 200\n255\n"));
  const std::string raw = ppm.substr(ppm.size() - 100 * 200 * 3);
  const auto at = [&](std::size_t x, std::size_t y) { return raw.substr((y * 100 + x) * 3, 3); };
  CHECK(at(24, 35) == pixels.substr(0, 3));
  CHECK(at(55, 35) == pixels.substr(3, 3));
  CHECK(at(24, 85) == pixels.substr(6, 3));
  CHECK(at(55, 85) == pixels.substr(9, 3));
  const std::string white = "\xFF\xFF\xFF";
  CHECK(at(17, 60) == white);
  CHECK(at(63, 60) == white);
  CHECK(at(40, 27) == white);
  CHECK(at(40, 93) == white);
  // 200 - 90 = 110 to 200 - 30 = 170, from the bottom.
  CHECK(output_of("qpdf --qdf --object-streams=disable " + path + " - | grep -a -A5 BBox") ==
        "    /BBox [\n      20\n      110\n      60\n      170\n    ]\n");
}

TEST_CASE("photos are filtered and drawings are not, whichever is smaller") {
  std::string drawing(200 * 100, '\xFF');
  for (std::size_t i = 0; i < drawing.size(); i += 7) drawing[i] = 0;
  const std::string photo = slope(200, 100, 3);
  CHECK(packed(200, 100, 1, drawing)->data.size() < 250);
  CHECK(packed(200, 100, 3, photo)->data.size() < 2'000);
  const page::PackedPicture one = packed(1, 1, 1, "x").value();
  CHECK(one.width == 1);
  CHECK(one.height == 1);
  CHECK(one.channels == 1);
}

TEST_CASE("a picture without pixels is an error, and never an empty frame") {
  Draft d;
  figure(d, nullptr, 20, 30, 40, 60);
  const auto out = write(d.list, support::test_fonts());
  REQUIRE_FALSE(out.has_value());
  CHECK(out.error().message == "a picture has no pixels");
}

TEST_CASE("a picture without its text is an error") {
  Draft d;
  const page::NodeId node = figure(d, packed_of(1, 1, 1, "x"), 20, 30, 40, 60);
  d[node].alternative_text.clear();
  const auto out = write(d.list, support::test_fonts());
  REQUIRE_FALSE(out.has_value());
  CHECK(out.error().message == "figure 1 has no alternative text");
}
