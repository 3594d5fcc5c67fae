// For tests/commonmark.py: reads Markdown texts from standard input, each ended by a NUL, and
// prints every text our tree keeps of each, ended by a NUL.
#include <cstdio>
#include <iostream>
#include <iterator>
#include <string>

#include "source/read.h"

namespace {

void print(const chalkleaf::source::MarkNode& node) {
  std::cout << node.text.str() << '\n';
  for (const chalkleaf::source::MarkNode& child : node.children) print(child);
}

}  // namespace

int main() {
  using namespace chalkleaf;
  const std::string all{std::istreambuf_iterator<char>(std::cin), {}};
  for (std::size_t at = 0; at < all.size();) {
    const std::size_t stop = std::min(all.find('\0', at), all.size());
    Diagnostics diagnostics;
    const SourcePtr source =
        source::load_text("example.md", all.substr(at, stop - at), diagnostics);
    if (source) print(source::read_document(source, diagnostics).body);
    std::cout << '\0';
    at = stop + 1;
  }
}
