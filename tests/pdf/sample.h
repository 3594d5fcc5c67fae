// A document with one of everything, built as `page` builds them, and the ways tests look at a
// file.
#pragma once

#include <fmt/format.h>

#include <stdexcept>
#include <string>

#include "base/files.h"
#include "page/display_list.h"
#include "pdf/pictures.h"
#include "pdf/write.h"
#include "support/places.h"
#include "support/shell.h"
#include "support/test_fonts.h"
#include "type/lines.h"

namespace chalkleaf::pdf {

inline Length points(double pt) { return Length::pt(pt); }

/// Fills a display list by hand.
class Draft {
 public:
  Draft() : typesetter_(support::test_fonts()) {
    list.info = {"Balance for Wrens", "Alder Quay Gymnastics", "A session", "en", "Chalkleaf test",
                 1'700'000'000};
    list.tree.push_back({});
    add_page();
  }

  void add_page() { list.pages.push_back({{points(419.528), points(595.276)}, {}}); }
  page::NodeId node(page::Role role, page::NodeId parent = 0) {
    page::Node out;
    out.role = role;
    out.parent = parent;
    list.tree.push_back(out);
    return static_cast<page::NodeId>(list.tree.size() - 1);
  }
  page::Node& operator[](page::NodeId id) { return list.tree[id]; }

  /// One line of text at a place; where it ends.
  Length text(page::Owner owner, double x, double y, const std::string& words, double size = 10,
              type::Weight weight = type::Weight::kRegular) {
    type::Inline source;
    source.text = words;
    source.size = points(size);
    source.style = support::test_fonts().style("card", weight, type::Slant::kUpright).value();
    const auto set = typesetter_.set(std::span(&source, 1), points(5000));
    for (const type::Line& line : set.lines) {
      for (const type::Fragment& fragment : line.fragments) {
        page::TextItem item;
        item.owner = owner;
        item.face = fragment.face;
        item.size = fragment.size;
        item.baseline = {points(x) + fragment.x, points(y)};
        item.text = fragment.text;
        item.glyphs = fragment.glyphs;
        list.pages.back().items.push_back(std::move(item));
      }
    }
    return points(x) + (set.lines.empty() ? Length() : set.lines[0].width);
  }
  /// A paragraph of its own.
  page::NodeId paragraph(page::NodeId parent, double y, const std::string& words,
                         page::Role role = page::Role::kP) {
    const page::NodeId id = node(role, parent);
    text(page::Owner::of(id), 40, y, words);
    return id;
  }
  page::PathItem& box(page::Owner owner, double x, double y, double width, double height) {
    using page::PathStep;
    page::PathItem item;
    item.owner = owner;
    const auto at = [](double px, double py) { return Point{points(px), points(py)}; };
    item.steps = {{PathStep::Kind::kMove, at(x, y), {}, {}},
                  {PathStep::Kind::kLine, at(x + width, y), {}, {}},
                  {PathStep::Kind::kLine, at(x + width, y + height), {}, {}},
                  {PathStep::Kind::kCurve, at(x + width / 2, y + height + 2),
                   at(x + width / 3, y + height + 2), at(x, y + height)},
                  {PathStep::Kind::kClose, {}, {}, {}}};
    item.stroke = page::Stroke{kBlack, points(0.5), true, {}};
    list.pages.back().items.push_back(item);
    return std::get<page::PathItem>(list.pages.back().items.back());
  }

  page::DisplayList list;

 private:
  type::Typesetter typesetter_;
};

/// One of everything, on two pages.
inline page::DisplayList sample() {
  using page::Artifact;
  using page::Owner;
  using page::Role;
  Draft d;
  d.box(Owner::none(Artifact::kBackground), 0, 0, 419.528, 60).fill = Colour{230, 240, 250};
  d.text(Owner::none(Artifact::kHeader), 40, 20, "Alder Quay Gymnastics", 8);
  const auto title = d.node(Role::kH1);
  d.text(Owner::of(title), 40, 50, "Balance for Wrens", 18, type::Weight::kBold);
  const auto part = d.node(Role::kSect);
  d.paragraph(part, 80, "Warm-up (first fifty)", Role::kH2);
  const auto split = d.paragraph(
      part, 100, "AV Toes first; 3\xC2\xA0\xC3\x97 8 caf\xC3\xA9 \xE2\x87\x92 finish, ");

  const auto list = d.node(Role::kList, part);
  d[list].ordered = true;
  for (int i = 1; i <= 2; ++i) {
    const auto item = d.node(Role::kListItem, list);
    const auto label = d.node(Role::kLabel, item);
    d.text(Owner::of(label), 40, 110 + 14 * i, fmt::format("{}. ", i));
    const auto body = d.node(Role::kListBody, item);
    const auto words = d.node(Role::kP, body);
    d.text(Owner::of(words), 60, 110 + 14 * i, fmt::format("Walk {} beams", i));
  }

  const auto table = d.node(Role::kTable, part);
  const auto head = d.node(Role::kTableHead, table);
  const auto row = d.node(Role::kTableRow, head);
  for (const char* words : {"Time", "Drill"}) {
    const auto cell = d.node(Role::kHeaderCell, row);
    d[cell].scope = page::HeaderScope::kColumn;
    d.text(Owner::of(cell), words[0] == 'T' ? 40 : 120, 170, words, 10, type::Weight::kBold);
  }
  d.box(Owner::none(Artifact::kLayout), 40, 172, 200, 0.5);
  const auto body = d.node(Role::kTableBody, table);
  const auto first = d.node(Role::kTableRow, body);
  const auto time = d.node(Role::kHeaderCell, first);
  d[time].scope = page::HeaderScope::kRow;
  d[time].row_span = 2;
  d.text(Owner::of(time), 40, 185, "17:05");
  d.text(Owner::of(d.node(Role::kDataCell, first)), 120, 185, "Tuck jump");
  d.node(Role::kDataCell, d.node(Role::kTableRow, body));  // an empty cell
  const auto last = d.node(Role::kTableRow, body);
  const auto wide = d.node(Role::kDataCell, last);
  d[wide].column_span = 2;
  d.text(Owner::of(wide), 40, 199, "Rest");

  const auto figure = d.node(Role::kFigure, part);
  d[figure].alternative_text = "A gymnast stands on one leg \xE2\x80\x93 arms wide";
  d.box(Owner::of(figure), 40, 220, 30, 40).fill = Colour{200, 0, 0};
  d.box(Owner::of(figure), 80, 230, 10, 10);
  const auto form = d.node(Role::kForm, part);
  d[form].box_description = "Done: Tuck jump";
  d.box(Owner::of(form), 40, 280, 8, 8).stroke->dashes = {points(1.5), points(0.75)};
  const auto quote = d.node(Role::kBlockQuote, part);
  const auto own_words = d.paragraph(quote, 300, "Doucement !");
  d[own_words].language = "fr";
  const auto note = d.paragraph(part, 320, "Stop on pain (always) \\ now", Role::kNote);
  d[note].actual_text = "Stop when it hurts";
  const auto pointer = d.paragraph(part, 330, "");
  const auto link = d.node(Role::kLink, pointer);
  d[link].web_address = "https://alder-quay.example/plans/balance?(a)";
  d.text(Owner::of(link), 40, 330, "alder-quay.example/plans");
  const auto picture = d.node(Role::kFigure, part);
  d[picture].alternative_text = "Two children on a line";
  d.list.pages.back().items.emplace_back(
      page::PictureItem{Owner::of(picture),
                        {points(40), points(340), points(40), points(20)},
                        "line.png",
                        std::make_shared<const page::PackedPicture>(
                            packed(2, 1, 3, std::string("\xFF\x80\0\0\x80\xFF", 6)).value())});

  const auto drawn = d.node(Role::kFigure, part);
  d[drawn].alternative_text = "A dish shape";
  page::PathItem line;
  line.steps = {{page::PathStep::Kind::kMove, {points(1), points(2)}, {}, {}},
                {page::PathStep::Kind::kLine, {points(9), points(2)}, {}, {}}};
  line.stroke = page::Stroke{kBlack, points(1), true, {}};
  d.list.pages.back().items.emplace_back(
      page::ArtItem{Owner::of(drawn),
                    {points(100), points(340), points(30), points(15)},
                    std::make_shared<const page::Artwork>(Size{points(10), points(5)},
                                                          std::vector<page::PathItem>{line})});

  d.add_page();
  d.text(Owner::none(Artifact::kHeader), 40, 20, "Alder Quay Gymnastics", 8);
  d.text(Owner::of(split), 40, 50, "and this goes on over the page.");
  const auto second = d.paragraph(part, 80, "Cool-down", Role::kH2);
  d.text(Owner::none(Artifact::kFooter), 40, 580, "Page 2", 8);
  (void)second;
  d.list.outline = {{"Warm-up", 1, 0, points(70)},
                    {"Caf\xC3\xA9", 2, 0, points(90)},
                    {"Cool-down", 1, 1, points(70)}};
  return d.list;
}

/// The written file; throws what went wrong.
inline std::string written(const page::DisplayList& list) {
  auto out = write(list, support::test_fonts());
  if (!out) throw std::runtime_error(out.error().message);
  return *out;
}

/// Writes a file below the build's folder; its path.
inline std::string saved(const std::string& name, const std::string& bytes) {
  RealFileSystem files;
  const std::string path = support::build_folder() + "/test-files/pdf/" + name;
  if (!files.write_whole(path, bytes)) throw std::runtime_error("cannot write " + path);
  return path;
}

inline std::string support_script(const std::string& name) {
  return std::string("/usr/bin/python3 ") + support::repository() + "/tests/support/" + name;
}

/// What check_tags.py finds; empty when all is well.
inline std::string findings(const std::string& path) {
  const support::Ran ran = support::run(support_script("check_tags.py ") + path + " 2>&1");
  return ran.status == 0 ? "" : ran.output;
}

}  // namespace chalkleaf::pdf
