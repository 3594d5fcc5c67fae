// The structure tree, against poppler's reading of it and against check_tags.py; and check_tags.py
// against files made wrong on purpose, one failure condition at a time.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "pdf/sample.h"

using namespace chalkleaf;
using namespace chalkleaf::pdf;

TEST_CASE("the sample keeps every condition a program can check") {
  CHECK(findings(saved("sample.pdf", written(sample()))) == "");
}

TEST_CASE("poppler reads the tree and its text in order") {
  const std::string path = saved("tree.pdf", written(sample()));
  // Standard error aside: poppler 22.12 does not know that Form takes the PrintField attributes.
  const std::string tree = support::run("pdfinfo -struct-text " + path + " 2>/dev/null").output;
  const std::string expected = R"tree(Document
  H1 (block)
    "Balance for Wrens"
  Sect
    H2 (block)
      "Warm-up (first fifty)"
    P (block)
      "AV Toes first; 3 × 8 café ⇒ finish, "
      "and this goes on over the page."
    L (block):
       /ListNumbering /Decimal
      LI (block)
        Lbl (block)
          "1. "
        LBody (block)
          P (block)
            "Walk 1 beams"
      LI (block)
        Lbl (block)
          "2. "
        LBody (block)
          P (block)
            "Walk 2 beams"
    Table (block)
)tree";
  INFO(tree);
  CHECK(tree.substr(0, expected.size()) == expected);
  CHECK(tree.find("\"Stop on pain (always) \\ now\"") != std::string::npos);
}

TEST_CASE("a link is pressed where its words stand, and leads where they say") {
  const std::string path = saved("link.pdf", written(sample()));
  const support::Ran ran = support::run("pdfinfo -url " + path + " 2>/dev/null");
  CHECK(ran.output.find("1  Annotation    https://alder-quay.example/plans/balance?(a)") !=
        std::string::npos);
  // poppler's boxes of words are an independent reading of where the text stands.
  const support::Ran box = support::run(
      "/usr/bin/python3 -c \"import pikepdf, sys; d = pikepdf.open(sys.argv[1]); p = d.pages[0]; "
      "print(*[float(x) for x in p.Annots[0].Rect])\" " +
      path);
  const support::Ran words = support::run("pdftotext -bbox " + path + " - | grep alder-quay");
  double left = 0, bottom = 0, right = 0, top = 0, x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  REQUIRE(std::sscanf(box.output.c_str(), "%lf %lf %lf %lf", &left, &bottom, &right, &top) == 4);
  REQUIRE(std::sscanf(words.output.c_str(),
                      " <word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\"", &x0, &y0, &x1,
                      &y1) == 4);
  CHECK(std::abs(left - x0) < 0.1);
  CHECK(std::abs(right - x1) < 0.1);
  // The page is 595.276 pt high, and poppler counts from its top.
  CHECK(595.276 - top < y1);
  CHECK(595.276 - bottom > y0);
  CHECK(top - bottom < 20);
}

// ISO 32000-1, table 348: the roles of a printed form field.
TEST_CASE("a box to tick is a check box, a field to write in a text value") {
  page::DisplayList list = sample();
  const auto roles = [&](const char* name) {
    const std::string path = saved(name, written(list));
    const support::Ran ran = support::run("qpdf --qdf --object-streams=disable " + path +
                                          " - | grep -a -o '/Role /[a-z]*'");
    return ran.output;
  };
  CHECK(roles("tick.pdf") == "/Role /cb\n");
  for (page::Node& node : list.tree) node.write_in = node.role == page::Role::kForm;
  CHECK(roles("write.pdf") == "/Role /tv\n");
}

TEST_CASE("the checker tells each thing that is made wrong, and nothing else") {
  const std::string good = saved("good.pdf", written(sample()));
  const std::string folder = good.substr(0, good.rfind('/'));
  const support::Ran made =
      support::run(support_script("break_tags.py ") + good + " " + folder + " 2>&1");
  INFO(made.output);
  REQUIRE(made.status == 0);
  // `file: number` of each way, and all files looked at in one run: starting Python takes longer
  // than looking.
  std::vector<std::string> wanted;
  std::string files;
  std::istringstream ways(made.output);
  for (std::string name, number; ways >> name >> number;) {
    const std::string bad = folder + "/bad-" + name + ".pdf";
    files += (files.empty() ? "" : " ") + bad;
    wanted.push_back(bad + ": " + number + " ");
  }
  CHECK(wanted.size() >= 25);
  std::set<std::string> told;
  std::istringstream lines(findings(files));
  for (std::string line; std::getline(lines, line);) {
    const auto way = std::find_if(wanted.begin(), wanted.end(), [&](const std::string& begin) {
      return line.starts_with(begin);
    });
    INFO(line);  // every line is about the condition of its file
    CHECK(way != wanted.end());
    if (way != wanted.end()) told.insert(*way);
  }
  for (const std::string& begin : wanted) {
    INFO(begin);
    CHECK(told.contains(begin));
  }
}

TEST_CASE("a tree that is none is refused") {
  const auto told = [](const page::DisplayList& list) {
    const auto out = write(list, support::test_fonts());
    return out ? std::string("written") : out.error().message;
  };
  Draft d;
  const auto sect = d.node(page::Role::kSect);
  const auto p = d.node(page::Role::kP, sect);
  d.text(page::Owner::of(p), 40, 40, "Hold");
  CHECK(told(d.list) == "written");
  page::DisplayList bad = d.list;
  std::get<page::TextItem>(bad.pages[0].items[0]).owner = page::Owner::of(sect);
  CHECK(told(bad) == "node 1 (Sect) has both marks and nodes below it");
  std::get<page::TextItem>(bad.pages[0].items[0]).owner = page::Owner::of(9);
  CHECK(told(bad) == "a mark belongs to node 9, which there is not");
  bad = d.list;
  bad.tree[1].parent = 2;
  CHECK(told(bad) == "node 1 comes before its parent");
  bad = d.list;
  bad.tree[2].role = page::Role::kFigure;
  CHECK(told(bad) == "figure 2 has no alternative text");
  for (const char* address : {"", "https://a.example/two words", "https://caf\xC3\xA9.example"}) {
    bad = d.list;
    bad.tree[2].role = page::Role::kLink;
    bad.tree[2].web_address = address;
    CHECK(told(bad) == "link 2 does not lead to an address");
  }
  bad = d.list;
  bad.tree[0].role = page::Role::kP;
  CHECK(told(bad) == "the structure tree does not begin with a Document node");
}
