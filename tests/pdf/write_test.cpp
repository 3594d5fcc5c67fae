// The whole file, against qpdf, poppler and MuPDF.
#include "pdf/write.h"

#include <catch2/catch.hpp>
#include <thread>

#include "page/shapes.h"
#include "pdf/sample.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::pdf;

namespace {

std::string told(const page::DisplayList& list) {
  const auto out = write(list, support::test_fonts());
  return out ? std::string("written") : out.error().message;
}

std::string run(const std::string& command) { return support::run(command + " 2>&1").output; }

// What MuPDF says while it draws, apart from how Debian built it.
std::string complaints(const std::string& command) {
  return run(command + " 2>&1 | grep -v 'ICC support is not available'");
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("qpdf and MuPDF find nothing wrong with the file") {
  const std::string path = saved("whole.pdf", written(sample()));
  const support::Ran checked = support::run("qpdf --check " + path + " 2>&1");
  CHECK(checked.status == 0);
  CHECK(holds(checked.output, "No syntax or stream encoding errors found"));
  CHECK(holds(checked.output, "PDF Version: 1.7"));
  const std::string drawn = support::build_folder() + "/test-files/pdf/whole-%d.png";
  CHECK(complaints("mutool draw -q -o " + drawn + " " + path) == "");
}

TEST_CASE("poppler reads the pages' text in reading order") {
  const std::string text = run("pdftotext -raw " + saved("order.pdf", written(sample())) + " -");
  std::size_t last = 0;
  for (const char* part :
       {"Alder Quay", "Balance for Wrens", "Warm-up (first fifty)", "AV Toes", "1. Walk 1 beams",
        "2. Walk 2 beams", "Time Drill", "17:05 Tuck jump", "Rest", "Doucement !", "Stop on pain",
        "and this goes on", "Cool-down", "Page 2"}) {
    const std::size_t at = text.find(part, last);
    INFO(part << " in " << text);
    REQUIRE(at != std::string::npos);
    last = at;
  }
}

TEST_CASE("the file says what it is, twice in the same words") {
  auto list = sample();
  list.info.title = "Balance & <reach> f\xC3\xBCr Wrens";
  const std::string path = saved("info.pdf", written(list));
  const std::string info = run("TZ=UTC pdfinfo " + path);
  INFO(info);
  CHECK(holds(info, "Title:           Balance & <reach> f\xC3\xBCr Wrens\n"));
  CHECK(holds(info, "Author:          Alder Quay Gymnastics\n"));
  CHECK(holds(info, "Subject:         A session\n"));
  CHECK(holds(info, "Producer:        Chalkleaf test\n"));
  // python3 -c "import datetime as d; print(d.datetime.utcfromtimestamp(1700000000))"
  CHECK(holds(info, "CreationDate:    Tue Nov 14 22:13:20 2023 UTC\n"));
  CHECK(holds(info, "Tagged:          yes\n"));
  CHECK(holds(info, "Pages:           2\n"));
  CHECK(holds(info, "Page size:       419.528 x 595.276 pts\n"));
  CHECK(holds(info, "PDF version:     1.7\n"));
  const std::string xmp = run("pdfinfo -meta " + path);
  CHECK(holds(
      xmp, "<rdf:li xml:lang=\"x-default\">Balance &amp; &lt;reach&gt; f\xC3\xBCr Wrens</rdf:li>"));
  CHECK(holds(xmp, "<xmp:CreateDate>2023-11-14T22:13:20Z</xmp:CreateDate>"));
  CHECK(holds(xmp, "<dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>"));
  // ISO 14289-1, 5.
  CHECK(holds(xmp, "xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">1</pdfuaid:part>"));
  CHECK(findings(path) == "");
}

TEST_CASE("bookmarks lead to their places") {
  // Witness: MuPDF's reading of the outline.
  const std::string outline =
      run("mutool show " + saved("outline.pdf", written(sample())) + " outline");
  INFO(outline);
  const std::size_t warm_up = outline.find("\"Warm-up\"\t#page=1");
  const std::size_t cafe = outline.find("\t\"Caf\xC3\xA9\"\t#page=1");
  const std::size_t cool_down = outline.find("\"Cool-down\"\t#page=2");
  CHECK(warm_up < cafe);
  CHECK(cafe < cool_down);
  CHECK(cool_down != std::string::npos);
}

TEST_CASE("the same list gives the same bytes, again and from many threads") {
  const page::DisplayList list = sample();
  const std::string first = written(list);
  std::vector<std::string> others(4);
  std::vector<std::thread> workers;
  for (std::string& other : others) {
    // So often that the fonts are prepared for cutting subsets on the way.
    workers.emplace_back([&] {
      for (int i = 0; i < 15; ++i) other = written(list);
    });
  }
  for (std::thread& worker : workers) worker.join();
  for (const std::string& other : others) CHECK((other == first));
  page::DisplayList changed = list;
  changed.info.subject = "Another session";
  CHECK_FALSE((written(changed) == first));
}

TEST_CASE("the file's identifier changes with its content") {
  const auto id_of = [](const std::string& file) {
    const std::size_t at = file.rfind("/ID [<");
    return file.substr(at + 6, 32);
  };
  page::DisplayList list = sample();
  const std::string first = written(list);
  CHECK(id_of(first) != std::string(32, '0'));
  CHECK(holds(first, "/ID [<" + id_of(first) + "> <" + id_of(first) + ">]"));
  list.pages[1].items.pop_back();
  CHECK(id_of(written(list)) != id_of(first));
}

TEST_CASE("what cannot be a document is refused in words") {
  CHECK(told(page::DisplayList{}) == "there are no pages to write");
  page::DisplayList list = sample();
  list.info.title.clear();
  CHECK(told(list) == "the document has no title");
  list = sample();
  list.info.language.clear();
  CHECK(told(list) == "the document names no language");
  list = sample();
  list.pages[1].size.width = Length::pt(20'000);
  CHECK(told(list) == "page 2 is smaller than 3 pt or larger than 14400 pt");
}

TEST_CASE("an empty page and a page of nothing but empty items are pages") {
  Draft d;
  d.add_page();
  page::TextItem nothing;
  d.list.pages[1].items.push_back(nothing);
  d.list.pages[1].items.push_back(page::PathItem{});
  const std::string path = saved("empty.pdf", written(d.list));
  CHECK(support::run("qpdf --check " + path + " 2>&1").status == 0);
  CHECK(complaints("mutool draw -q -o /dev/null -F txt " + path) == "");
  CHECK(findings(path) == "");
  CHECK(holds(run("pdfinfo " + path), "Pages:           2\n"));
}

TEST_CASE("a long document keeps its pages in a tree") {
  Draft d;
  for (int i = 1; i <= 200; ++i) {
    const auto p = d.node(page::Role::kP);
    d.text(page::Owner::of(p), 40, 60, fmt::format("Page number {}", i));
    if (i < 200) d.add_page();
  }
  const std::string path = saved("long.pdf", written(d.list));
  CHECK(support::run("qpdf --check " + path + " 2>&1").status == 0);
  CHECK(findings(path) == "");
  CHECK(run("pdftotext -f 130 -l 130 " + path + " - | head -1") == "Page number 130\n");
}

// A path of many steps is written from an origin of its own; what is drawn is the same.
TEST_CASE("a long path stands where a short one does") {
  const auto pixels = [](const std::string& name, int extra) {
    Draft draft;
    const auto figure = draft.node(page::Role::kFigure);
    draft[figure].alternative_text = "A box.";
    const auto box = [&](double left, double top, int more) {
      page::PathItem item;
      item.owner = page::Owner::of(figure);
      const auto to = [&](page::PathStep::Kind kind, double x, double y) {
        item.steps.push_back({kind, {points(left + x), points(top + y)}, {}, {}});
      };
      to(page::PathStep::Kind::kMove, 0, 0);
      for (int i = 1; i <= more; ++i) to(page::PathStep::Kind::kLine, 100.0 * i / (more + 1), 0);
      to(page::PathStep::Kind::kLine, 100, 0);
      to(page::PathStep::Kind::kLine, 100, 40);
      to(page::PathStep::Kind::kLine, 0, 40);
      item.steps.push_back({page::PathStep::Kind::kClose, {}, {}, {}});
      item.fill = kBlack;
      draft.list.pages.back().items.emplace_back(std::move(item));
    };
    box(50, 60, extra);
    box(200, 300, 0);  // and what comes after it is where it was
    const std::string path = saved(name, written(draft.list));
    return run("pdftoppm -r 72 -aaVector no " + path + " | md5sum");
  };
  // Eleven steps are written from the page's corner, twelve and more from their own.
  const std::string expected = pixels("short-path.pdf", 6);
  CHECK(pixels("long-path.pdf", 7) == expected);
  CHECK(pixels("longer-path.pdf", 20) == expected);
}

TEST_CASE("dictionaries are packed, and other programs find them") {
  Draft d;
  for (int i = 0; i < 700; ++i) {  // more than one object stream holds
    const page::NodeId node = d.node(page::Role::kFigure);
    d[node].alternative_text = "Figure " + std::to_string(i);
    page::PathItem line;
    line.owner = page::Owner::of(node);
    line.steps = page::straight_line({points(10), points(10)}, {points(50), points(20)});
    line.stroke = page::Stroke{kBlack, points(1), false, {}};
    d.list.pages.back().items.emplace_back(std::move(line));
  }
  const std::string file = written(d.list);
  CHECK(file == written(d.list));
  CHECK(file.find("/StructElem") == std::string::npos);
  CHECK(file.find("/ObjStm") != std::string::npos);
  const std::string path = saved("packed.pdf", file);
  CHECK_THAT(support::run("qpdf --check " + path + " 2>&1").output,
             Catch::Contains("No syntax or stream encoding errors"));
  CHECK_THAT(
      support::run("qpdf --qdf --object-streams=disable " + path + " - | grep -ac 'Figure 699'")
          .output,
      Catch::Contains("1"));
  CHECK(support::run("pdfinfo " + path + " 2>&1").output.find("Error") == std::string::npos);
}
