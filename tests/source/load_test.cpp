// Files that are text, and files that are not. Well-formed UTF-8 is that of Unicode 15, table 3-7.
#include <catch2/catch.hpp>

#include "reading.h"
#include "support/memory_files.h"

namespace chalkleaf::source {
namespace {

std::string refused(const std::string& text) {
  Diagnostics diagnostics;
  CHECK(load_text("p.md", text, diagnostics) == nullptr);
  return messages(diagnostics);
}

TEST_CASE("a text file is loaded byte for byte") {
  const support::MemoryFileSystem files{{"plans/p.md", "\xEF\xBB\xBFtitle — é\r\n"}};
  Diagnostics diagnostics;
  const SourcePtr source = load(files, "plans/p.md", "p.md", diagnostics);
  REQUIRE(source);
  CHECK(source->path() == "p.md");
  CHECK(source->text() == "\xEF\xBB\xBFtitle — é\r\n");
  CHECK(messages(diagnostics).empty());
}

TEST_CASE("what is not text is refused at its first bad byte") {
  CHECK(refused("ok\nH\xE9j\n") ==
        "p.md:2:2: error: this file cannot be read: the byte 0xE9 here is not UTF-8 "
        "[unreadable-file]; open the file in your text editor and save it as UTF-8\n");
  CHECK(
      refused(std::string("ok\n\0x", 5)) ==
      "p.md:2:1: error: this file cannot be read: it has a NUL byte here, which no text has "
      "[unreadable-file]; check that it is a plain text file; a word processor's document must be "
      "saved as plain text\n");
  CHECK(refused(std::string("\xFF\xFEh\0i\0", 6)) ==
        "p.md:1:1: error: this file cannot be read: it is saved as UTF-16, not as UTF-8 "
        "[unreadable-file]; open the file in your text editor and save it as UTF-8\n");
  CHECK(refused("\xC0\xAF").find("0xC0") != std::string::npos);          // overlong
  CHECK(refused("\xED\xA0\x80").find("0xED") != std::string::npos);      // a surrogate
  CHECK(refused("\xF4\x90\x80\x80").find("0xF4") != std::string::npos);  // above U+10FFFF
}

TEST_CASE("a file that is missing or far too large says so") {
  support::MemoryFileSystem files;
  Diagnostics diagnostics;
  CHECK(load(files, "p.md", "p.md", diagnostics) == nullptr);
  CHECK(messages(diagnostics) ==
        "p.md:1:1: error: this file cannot be read: there is no such file [unreadable-file]; check "
        "the name and the folder\n");
  CHECK(refused(std::string(kLargestFile + 1, 'a')) ==
        "p.md:1:1: error: this file cannot be read: it is larger than 512 KB [unreadable-file]; a "
        "plan is a page or two of text; check that this is the right file\n");
}

TEST_CASE("diagnostics keep the source of an unreadable file alive") {
  Diagnostics all;
  {
    Diagnostics inner;
    load_text("p.md", "a\xFF", inner);
    all.append(inner);
  }
  CHECK(all.all().at(0).span.text() == "\xFF");
}

}  // namespace
}  // namespace chalkleaf::source
