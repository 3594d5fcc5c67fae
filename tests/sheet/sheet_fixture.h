// A theme, labels and a session of our own making, for the tests of the sheets.
#pragma once

#include <catch2/catch.hpp>
#include <functional>

#include "base/files.h"
#include "base/text.h"
#include "reason/timetable.h"
#include "sheet/sheets.h"
#include "source/read.h"
#include "support/places.h"
#include "support/test_fonts.h"

namespace chalkleaf::support {

/// Loads a file of the repository's data.
inline SourcePtr repository_file(const std::string& path) {
  Diagnostics diagnostics;
  const RealFileSystem files;
  SourcePtr source = source::load(files, support::repository() + "/" + path, path, diagnostics);
  REQUIRE(source != nullptr);
  return source;
}

/// The names of the looks that ship with the program.
inline std::vector<std::string> shipped_looks() {
  std::vector<std::string> out;
  const RealFileSystem files;
  const auto entries = files.list(support::repository() + "/themes");
  REQUIRE(entries);
  for (const FolderEntry& entry : *entries) {
    if (entry.kind == FileKind::kFile) out.push_back(file_stem(entry.name));
  }
  return out;
}

inline SourcePtr look_file(std::string_view name) {
  return repository_file("themes/" + std::string(name) + ".yaml");
}

inline std::shared_ptr<const sheet::Theme> shipped_look(const std::string& name) {
  Diagnostics diagnostics;
  auto theme = sheet::read_theme(look_file(name), look_file, diagnostics);
  for (const Diagnostic& one : diagnostics.all()) UNSCOPED_INFO(one.message);
  REQUIRE(diagnostics.all().empty());
  return theme;
}

inline std::shared_ptr<const sheet::Theme> classic_theme() {
  static const auto theme = shipped_look("classic");
  return theme;
}

inline std::shared_ptr<const sheet::Labels> english() {
  static const SourcePtr source = repository_file("themes/labels/en.yaml");
  Diagnostics diagnostics;
  auto labels = sheet::read_labels(source, diagnostics);
  REQUIRE(diagnostics.all().empty());
  return labels;
}

inline plan::Words words(const std::string& text) { return {text, {}}; }

/// A time dose: `sets` × `seconds`.
inline plan::Dose hold(std::int64_t sets, std::int64_t seconds) {
  plan::Dose dose;
  dose.sets = sets;
  dose.amount.kind = plan::AmountKind::kTime;
  dose.amount.time = Duration::seconds(seconds);
  return dose;
}

inline plan::Drill drill(const std::string& name, plan::Dose dose) {
  plan::Drill out;
  out.name = words(name);
  out.dose = std::move(dose);
  out.cues.push_back(words("long legs, proud chest"));
  out.easier.push_back(words("knees bent"));
  return out;
}

/// A session with one part of `drills` drills, each with a box for each gymnast on the card and a
/// framed panel on the home sheet.
inline plan::Session session(int drills, plan::Place place = plan::Place::kHome) {
  plan::Session out;
  out.title = words("Strong shapes");
  out.place = {place, {}};
  out.safety.push_back({words("Clear the floor. An adult stays."),
                        {words("Clear the floor."), words("An adult stays.")}});
  out.repeat = {{Weekday::kMonday, {}}, {Weekday::kFriday, {}}};
  out.equipment.push_back({words("towel"), words("a bath towel")});
  plan::Part part;
  part.title = words("Bar shapes");
  for (int i = 1; i <= drills; ++i)
    part.steps.emplace_back(drill("Shape number " + std::to_string(i) + "!", hold(2, 20)));
  out.parts.push_back(std::move(part));
  out.ticks_card = plan::Sourced<plan::Ticks>{plan::Ticks(), {}};
  out.printing.layout = plan::SheetLayout::kRoomy;
  return out;
}

/// No-break and wide spaces as plain ones, for tests of the words and not of their spacing.
inline std::string plain_spaces(const std::string& text) {
  return replace_all(replace_all(text, "\u00A0", " "), "\u2002", " ");
}

/// Whether `next` goes on exactly where `run` ends, as one text does that changes its style.
inline bool goes_on(const page::TextItem& run, const page::TextItem& next) {
  const type::Face* face = test_fonts().face(run.face);
  if (face == nullptr || run.owner != next.owner || run.baseline.y != next.baseline.y) return false;
  std::int64_t units = 0;
  for (const type::Glyph& glyph : run.glyphs) units += glyph.advance;
  const double width = static_cast<double>(units) * run.size.in_pt() / face->units_per_em();
  const double gap = next.baseline.x.in_pt() - run.baseline.x.in_pt() - width;
  return gap > -0.01 && gap < 0.01;
}

/// A sheet, its findings, and ways to read it back.
struct Made {
  page::DisplayList list;
  Diagnostics diagnostics;

  /// All text of the pages in painting order, words joined by single spaces.
  std::string text() const {
    std::string out;
    for (const page::Page& page : list.pages) {
      const page::TextItem* last = nullptr;
      for (const page::Item& item : page.items) {
        const auto* run = std::get_if<page::TextItem>(&item);
        if (run == nullptr) continue;
        if (last != nullptr && !goes_on(*last, *run)) out += ' ';
        out += run->text;
        last = run;
      }
      out += ' ';
    }
    out = plain_spaces(out);
    for (std::size_t at = out.find("  "); at != std::string::npos; at = out.find("  "))
      out.erase(at, 1);
    return out;
  }
  std::size_t count(page::Role role) const {
    std::size_t n = 0;
    for (const page::Node& node : list.tree) n += node.role == role ? 1 : 0;
    return n;
  }
  /// The smallest type on the pages.
  Length smallest() const {
    Length out = Length::pt(1000);
    for (const page::Page& page : list.pages) {
      for (const page::Item& item : page.items) {
        if (const auto* run = std::get_if<page::TextItem>(&item)) out = std::min(out, run->size);
      }
    }
    return out;
  }
};

inline Made make_sheet(sheet::Kind kind, const plan::Session& session, Paper paper,
                       plan::Club club = {}, const figure::Drawings* drawings = nullptr,
                       const sheet::Theme* look = nullptr) {
  const sheet::Theme& theme = look != nullptr ? *look : *classic_theme();
  static const auto labels = english();
  club.name = words("Alder Quay Gymnastics");
  const sheet::Context context{theme,
                               *labels,
                               club,
                               paper,
                               "4f2a91c",
                               Date{2026, 11, 26},
                               std::nullopt,
                               "Chalkleaf",
                               drawings,
                               nullptr,
                               session.printing.filing};
  type::Typesetter typesetter(test_fonts());
  Made made;
  made.list = sheet::make(kind, session, reason::timetable(session, club), context, typesetter,
                          made.diagnostics);
  return made;
}

/// Every mark of every page lies on the paper, inside the margins' outer 5 mm that printers cannot
/// reach.
inline void check_inside_paper(const page::DisplayList& list) {
  const Length edge = Length::mm(5);
  const auto inside = [&](const page::Page& page, Point p) {
    return p.x >= edge && p.y >= edge && p.x <= page.size.width - edge &&
           p.y <= page.size.height - edge;
  };
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      if (const auto* text = std::get_if<page::TextItem>(&item)) {
        CHECK(inside(page, text->baseline));
      } else if (const auto* picture = std::get_if<page::PictureItem>(&item)) {
        CHECK(inside(page, {picture->place.x, picture->place.y}));
        CHECK(inside(page, {picture->place.right(), picture->place.bottom()}));
      } else if (const auto* art = std::get_if<page::ArtItem>(&item)) {
        CHECK(inside(page, {art->place.x, art->place.y}));
        CHECK(inside(page, {art->place.right(), art->place.bottom()}));
      } else {
        for (const page::PathStep& step : std::get<page::PathItem>(item).steps) {
          if (step.kind != page::PathStep::Kind::kClose) CHECK(inside(page, step.a));
        }
      }
    }
  }
}

/// The tree keeps what `pdf` relies on: parents first, and a node has children or marks, never
/// both.
inline void check_tree(const page::DisplayList& list) {
  std::vector<bool> has_children(list.tree.size());
  for (std::size_t i = 1; i < list.tree.size(); ++i) {
    CHECK(list.tree[i].parent < i);
    has_children[list.tree[i].parent] = true;
  }
  for (const page::Page& page : list.pages) {
    for (const page::Item& item : page.items) {
      const page::Owner owner = page::owner_of(item);
      if (owner.node) {
        REQUIRE(*owner.node < list.tree.size());
        CHECK_FALSE(has_children[*owner.node]);
      }
    }
  }
}

}  // namespace chalkleaf::support
