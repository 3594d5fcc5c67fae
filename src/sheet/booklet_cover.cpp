// See the header.
#include "sheet/booklet_cover.h"

#include <fmt/format.h>

#include <array>

#include "sheet/builder.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

class CoverWriter {
 public:
  explicit CoverWriter(Builder& builder) : b_(builder), labels_(builder.labels()) {
    page_ = b_.text_width(TextRole::kClock, "888");
  }

  std::vector<page::Section> write(const std::string& title, const std::string& about,
                                   const std::vector<BookletSession>& sessions) {
    page::Section section;
    plan::Words words;
    words.text = title;
    page::Slab head{b_.title(words, Owner::of(b_.node(Builder::kRoot, Role::kH1))), {}};
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{title, 1, 0, {}};
    section.slabs.push_back(std::move(head));
    if (!about.empty()) {
      section.slabs.push_back(
          {b_.text(TextRole::kSubtitle, about, Owner::of(b_.node(Builder::kRoot, Role::kP))),
           {},
           true});
    }
    page::Slab contents{b_.text(TextRole::kPart, labels_.say("booklet-contents"),
                                Owner::of(b_.node(Builder::kRoot, Role::kH2))),
                        b_.look().part_space * 3, true};
    section.slabs.push_back(std::move(contents));
    const NodeId list = b_.node(Builder::kRoot, Role::kList);
    for (const BookletSession& one : sessions) {
      std::vector<Block> lines;
      const bool first = &one == &sessions.front();
      lines.push_back(b_.rule(b_.width(), first ? b_.look().line_width : b_.look().hair_width,
                              first ? Use::kInk : Use::kHair));
      lines.push_back(entry(one, list));
      page::Slab slab{Builder::stack(std::move(lines)), first ? b_.look().row_padding : Length()};
      slab.origin = one.session->title.span;
      section.slabs.push_back(std::move(slab));
    }
    std::vector<page::Section> out;
    out.push_back(std::move(section));
    return out;
  }

 private:
  Block entry(const BookletSession& one, NodeId list) {
    const plan::Session& session = *one.session;
    const NodeId body = b_.node(b_.node(list, Role::kListItem), Role::kListBody);
    std::vector<std::string> about;
    if (session.date) about.push_back(labels_.date(session.date->value));
    if (session.start) about.push_back(clock_text(session.start->value));
    if (!session.group_name.empty()) about.push_back(session.group_name.text);
    about.push_back(
        labels_.say(session.place.value == plan::Place::kHome ? "booklet-home" : "booklet-gym"));
    std::vector<Block> lines;
    lines.push_back(b_.text(TextRole::kDrill, session.title, Owner::of(b_.node(body, Role::kP))));
    lines.push_back(b_.text(TextRole::kVariation, fmt::format("{}", fmt::join(about, " · ")),
                            Owner::of(b_.node(body, Role::kP))));
    const NodeId number = b_.node(body, Role::kSpan);
    b_.at(number).actual_text = labels_.say("booklet-page", {{"page", std::to_string(one.page)}});
    RowBlock row;
    row.gap = b_.look().gap;
    row.align = RowAlign::kBaseline;
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(lines))});
    row.cells.push_back({Track::fixed(page_), b_.text(TextRole::kClock, std::to_string(one.page),
                                                      Owner::of(number), {}, page::Align::kEnd)});
    page::BoxBlock box;
    box.padding = {b_.look().row_padding * 3 / 2, Length(), b_.look().row_padding * 3 / 2,
                   Length()};
    box.content.push_back({std::move(row)});
    return {std::move(box)};
  }

  Builder& b_;
  const Labels& labels_;
  Length page_;
};

page::Composed compose_at(double factor, const std::string& title, const std::string& about,
                          const std::vector<BookletSession>& sessions, const Context& context,
                          type::Typesetter& typesetter) {
  const Look& look = context.theme.card;
  Builder builder(Kind::kCoachCard, context, look.scaled(look.scale.at(context.paper) * factor),
                  typesetter);
  std::vector<page::Section> sections = CoverWriter(builder).write(title, about, sessions);
  plan::Session whole;
  whole.title.text = title;
  return page::compose(builder.finish(std::move(sections), whole, builder.labels().say("booklet")),
                       typesetter);
}

}  // namespace

page::DisplayList booklet_cover(const std::string& title, const std::string& about,
                                const std::vector<BookletSession>& sessions, const Context& context,
                                type::Typesetter& typesetter, Diagnostics& diagnostics) {
  // A short list is set as large as one page takes; a long one goes on on the next.
  constexpr std::array kFactors = {1.5, 1.35, 1.2, 1.1, 1.0};
  page::Composed composed;
  for (const double factor : kFactors) {
    composed = compose_at(factor, title, about, sessions, context, typesetter);
    if (composed.list.pages.size() == 1 && composed.problems.empty()) break;
  }
  page::report(composed, "booklet", diagnostics);
  return std::move(composed.list);
}

}  // namespace chalkleaf::sheet
