// Every figure that ships: it reads, it is true, and its words are its own.
#include <catch2/catch.hpp>
#include <map>

#include "base/files.h"
#include "figure/words.h"
#include "reading.h"
#include "support/places.h"

using namespace chalkleaf;
using namespace chalkleaf::figure;

namespace {

ReadFigures catalogue() {
  const std::string folder = support::repository() + "/themes/figures";
  ReadFigures out;
  const RealFileSystem files;
  Descriptions all;
  const auto entries = files.list(folder);
  if (!entries) return out;  // a build without the catalogue
  for (const FolderEntry& entry : *entries) {
    if (!entry.name.ends_with(".yaml")) continue;
    const std::string path = folder + "/" + entry.name;
    out.sources.push_back(source::load(files, path, entry.name, out.diagnostics));
    if (out.sources.back()) all.take(out.sources.back(), false, out.diagnostics);
  }
  out.figures = all.resolve(out.diagnostics);
  return out;
}

}  // namespace

TEST_CASE("every figure of the catalogue reads without a word") {
  CHECK(messages(catalogue().diagnostics) == "");
}

// For the youngest and the oldest bodies too: what touches for one must touch for all.
TEST_CASE("every figure of the catalogue is true") {
  const ReadFigures read = catalogue();
  for (const double age : {6.0, 9.0, 15.0}) {
    INFO("age " << age);
    CHECK(found(read, Body::of_age(age)) == "");
  }
}

TEST_CASE("every figure of the catalogue has words of its own") {
  std::map<std::string, std::string> by_words;
  for (const Figure& figure : catalogue().figures) {
    const std::string words = alternative_text(figure);
    INFO(figure.name.text << ": " << words);
    CHECK(words.size() > 10);
    CHECK(words.ends_with("."));
    const auto [at, added] = by_words.emplace(words, figure.name.text);
    INFO("the same as " << at->second);
    CHECK(added);
  }
}
