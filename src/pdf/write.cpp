// One document, step by step. Tests: tests/pdf/write_test.cpp, against qpdf and poppler, and
// tests/support/check_tags.py over its files.
#include "pdf/write.h"

#include <fmt/format.h>

#include "pdf/artworks.h"
#include "pdf/content.h"
#include "pdf/fonts.h"
#include "pdf/kept.h"
#include "pdf/links.h"
#include "pdf/metadata.h"
#include "pdf/objects.h"
#include "pdf/outline.h"
#include "pdf/pictures.h"
#include "pdf/structure.h"
#include "pdf/syntax.h"

namespace chalkleaf::pdf {
namespace {

// ISO 32000-1, annex C: the sides of a page that every reader can show.
constexpr Length kShortestSide = Length::millipoints(3'000);
constexpr Length kLongestSide = Length::millipoints(14'400'000);

// Kids of one node of the page tree: small nodes keep long documents quick to open.
constexpr std::size_t kKidsOfNode = 64;

tl::expected<void, WriteError> check(const page::DisplayList& list) {
  const auto wrong = [](const std::string& what) { return tl::unexpected(WriteError{what}); };
  if (list.pages.empty()) return wrong("there are no pages to write");
  if (list.info.title.empty()) return wrong("the document has no title");
  if (list.info.language.empty()) return wrong("the document names no language");
  for (std::size_t i = 0; i < list.pages.size(); ++i) {
    const Size size = list.pages[i].size;
    for (const Length side : {size.width, size.height}) {
      if (side < kShortestSide || side > kLongestSide) {
        return wrong(fmt::format("page {} is smaller than 3 pt or larger than 14400 pt", i + 1));
      }
    }
  }
  return check_tree(list);
}

std::string page_entries(const page::Page& page, std::size_t number, ObjectId parent,
                         ObjectId resources, ObjectId content) {
  std::string out = "/Type /Page\n/Parent " + reference(parent) + "\n/MediaBox [0 0 ";
  append_length(out, page.size.width);
  out.push_back(' ');
  append_length(out, page.size.height);
  out += fmt::format("]\n/Resources {}\n/Contents {}\n/StructParents {}\n/Tabs /S\n",
                     reference(resources), reference(content), number);
  return out;
}

// Writes the nodes above `kids` (ISO 32000-1, 7.7.3); `parent_of` tells each page its node.
ObjectId write_page_tree(const std::vector<ObjectId>& pages, std::vector<ObjectId>& parent_of,
                         Objects& objects) {
  const ObjectId root = objects.reserve();
  const auto kids_entries = [](const std::vector<ObjectId>& kids, std::size_t count) {
    std::string out = "/Type /Pages\n/Kids [";
    for (const ObjectId kid : kids) out += reference(kid) + " ";
    out.back() = ']';
    return out + fmt::format("\n/Count {}\n", count);
  };
  parent_of.assign(pages.size(), root);
  if (pages.size() <= kKidsOfNode) {
    objects.fill(root, kids_entries(pages, pages.size()));
    return root;
  }
  std::vector<ObjectId> nodes;
  for (std::size_t begin = 0; begin < pages.size(); begin += kKidsOfNode) {
    const std::size_t end = std::min(begin + kKidsOfNode, pages.size());
    const std::vector<ObjectId> kids(pages.begin() + static_cast<std::ptrdiff_t>(begin),
                                     pages.begin() + static_cast<std::ptrdiff_t>(end));
    nodes.push_back(
        objects.add("/Parent " + reference(root) + "\n" + kids_entries(kids, kids.size())));
    for (std::size_t i = begin; i < end; ++i) parent_of[i] = nodes.back();
  }
  objects.fill(root, kids_entries(nodes, pages.size()));
  return root;
}

}  // namespace

Writer::Writer(const type::Fonts& fonts) : fonts_(fonts), kept_(std::make_unique<Kept>()) {}
Writer::~Writer() = default;

tl::expected<std::string, WriteError> write(const page::DisplayList& list,
                                            const type::Fonts& fonts) {
  return Writer(fonts).write(list);
}

tl::expected<std::string, WriteError> Writer::write(const page::DisplayList& list) const {
  if (auto sound = check(list); !sound) return tl::unexpected(sound.error());
  const auto table = FontTable::collect(list, fonts_);
  if (!table) return tl::unexpected(table.error());
  const auto pictures = PictureTable::collect(list);
  if (!pictures) return tl::unexpected(pictures.error());

  const ArtworkTable artworks = ArtworkTable::collect(list, *kept_);

  Objects objects;
  const ObjectId catalog = objects.reserve();
  std::vector<ObjectId> pages;
  for (std::size_t i = 0; i < list.pages.size(); ++i) pages.push_back(objects.reserve());
  std::vector<ObjectId> parent_of;
  const ObjectId page_tree = write_page_tree(pages, parent_of, objects);
  std::string named = table->write(objects, *kept_);
  const std::string drawn = pictures->write(objects) + artworks.write(objects);
  if (!drawn.empty()) named += "/XObject <<" + drawn + ">>\n";
  const ObjectId resources = objects.add(std::move(named));

  // Each page is compressed as soon as it is done, so that only small streams are kept.
  Marks marks(list.tree.size());
  std::vector<ObjectId> contents;
  for (std::size_t i = 0; i < list.pages.size(); ++i) {
    const ObjectId content = objects.add_stream(
        "", page_content(list, i, *table, *pictures, artworks, marks), Packing::kDeflated);
    contents.push_back(content);
  }
  // Every mark on every page now has its node.
  const std::vector<Link> links = write_links(list, marks, pages, objects);
  for (std::size_t i = 0; i < list.pages.size(); ++i) {
    objects.fill(pages[i], page_entries(list.pages[i], i, parent_of[i], resources, contents[i]) +
                               annotations_of(i, links));
  }
  const ObjectId structure = write_structure(list, marks, pages, links, objects);
  std::string entries = fmt::format(
      "/Type /Catalog\n/Pages {}\n/Lang {}\n/MarkInfo <</Marked true>>\n/StructTreeRoot {}\n"
      "/ViewerPreferences <</DisplayDocTitle true>>\n/Metadata {}\n",
      reference(page_tree), text_string(list.info.language), reference(structure),
      reference(write_xmp(list.info, objects)));
  if (const auto outline = write_outline(list, pages, objects)) {
    entries += "/Outlines " + reference(*outline) + "\n";
  }
  objects.fill(catalog, std::move(entries));
  return objects.save(catalog, write_info(list.info, objects));
}

}  // namespace chalkleaf::pdf
