// See evening.h. For the wall of the hall: a table of the turns, in letters as large as the page
// holds.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "base/text.h"
#include "sheet/builder.h"
#include "sheet/evening.h"

namespace chalkleaf::sheet {
namespace {

using page::RowAlign;
using page::RowBlock;
using page::Track;

// Okabe and Ito 2008, "Color universal design": told apart by every kind of colour vision. The
// lightest ones last, since they are the faintest on paper.
constexpr std::array<Colour, 8> kGroupColours = {
    Colour{0x00, 0x72, 0xB2}, Colour{0xE6, 0x9F, 0x00}, Colour{0x00, 0x9E, 0x73},
    Colour{0xD5, 0x5E, 0x00}, Colour{0x56, 0xB4, 0xE9}, Colour{0xCC, 0x79, 0xA7},
    Colour{0xF0, 0xE4, 0x42}, Colour{0x00, 0x00, 0x00}};

// As a group is called, if it is called by a colour; the others get what is left, in turn.
std::vector<Colour> colours_of(const rota::Rotation& rotation) {
  using rota::NamedColour;
  constexpr std::array<std::pair<NamedColour, std::size_t>, 8> kNamed{{{NamedColour::kBlue, 0},
                                                                       {NamedColour::kOrange, 1},
                                                                       {NamedColour::kGreen, 2},
                                                                       {NamedColour::kRed, 3},
                                                                       {NamedColour::kTurquoise, 4},
                                                                       {NamedColour::kPurple, 5},
                                                                       {NamedColour::kYellow, 6},
                                                                       {NamedColour::kBlack, 7}}};
  std::vector<Colour> out(rotation.groups.size());
  std::array<bool, kGroupColours.size()> taken{};
  for (std::size_t i = 0; i < out.size(); ++i) {
    for (const auto& [name, number] : kNamed) {
      if (rotation.groups[i].colour != name) continue;
      out[i] = kGroupColours[number];
      taken[number] = true;
    }
  }
  std::size_t next = 0;
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (rotation.groups[i].colour) continue;
    for (std::size_t n = 0; n < taken.size() && taken[next % taken.size()]; ++n) ++next;
    out[i] = kGroupColours[next++ % kGroupColours.size()];
  }
  return out;
}

// The first letters of the names where they are all different, else A, B, C; none where the names
// are letters themselves.
std::vector<std::string> letters_of(const rota::Rotation& rotation) {
  std::vector<std::string> out;
  bool alike = false;
  bool all_short = true;
  for (const rota::Group& group : rotation.groups) {
    const std::string& name = group.name.text;
    const bool plain =
        !name.empty() && ((name[0] >= 'a' && name[0] <= 'z') || (name[0] >= 'A' && name[0] <= 'Z'));
    std::string letter = plain ? name.substr(0, 1) : std::string();
    if (plain && letter[0] >= 'a') letter[0] = static_cast<char>(letter[0] - 'a' + 'A');
    alike = alike || letter.empty() || std::find(out.begin(), out.end(), letter) != out.end();
    all_short = all_short && name.size() <= 2;
    out.push_back(std::move(letter));
  }
  if (all_short) return std::vector<std::string>(out.size());
  constexpr std::size_t kAlphabet = 26;
  for (std::size_t i = 0; alike && i < out.size(); ++i)
    out[i] = std::string(1, static_cast<char>('A' + i % kAlphabet));
  return out;
}

class PosterWriter {
 public:
  PosterWriter(const plan::Session& session, Builder& builder)
      : session_(session),
        b_(builder),
        labels_(builder.labels()),
        gap_(builder.look().gap),
        pad_(builder.look().row_padding * 2) {}

  page::Section rotation(const rota::Rotation& rotation) {
    page::Section section;
    add_title(section);
    rotation_ = &rotation;
    letters_ = letters_of(rotation);
    colours_ = colours_of(rotation);
    clock_ = b_.text_width(TextRole::kPart, "00:00") + gap_;
    for (std::size_t i = 0; i < rotation.turns.size(); ++i)
      clock_ = std::max(clock_, b_.text_width(TextRole::kPart, when(i)) + gap_);
    const auto stations = static_cast<std::int64_t>(std::max<std::size_t>(1, columns()));
    column_ = (b_.width() - clock_ - gap_ * stations) / stations;
    const NodeId table = b_.node(Builder::kRoot, Role::kTable);
    Block head = head_row(b_.node(table, Role::kTableHead));
    const NodeId body = b_.node(table, Role::kTableBody);
    std::vector<Block> lines = {std::move(head)};
    for (std::size_t turn = 0; turn <= rotation.turns.size(); ++turn) {
      for (const rota::Pause& pause : rotation.pauses) {
        if (pause.before == turn) lines.push_back(pause_row(pause, body));
      }
      if (turn < rotation.turns.size()) lines.push_back(turn_row(turn, body));
      page::Slab slab{Builder::stack(std::exchange(lines, {})), Length()};
      slab.keep_with_next = turn == 0;
      slab.origin = rotation.heading.span;
      section.slabs.push_back(std::move(slab));
    }
    section.slabs.push_back(
        {b_.text(TextRole::kPartDetail, ending(), Owner::of(b_.node(Builder::kRoot, Role::kP))),
         b_.look().part_space});
    return section;
  }

 private:
  std::size_t columns() const { return rotation_->stations.size(); }

  void add_title(page::Section& section) {
    page::Slab head{b_.title(session_.title, Owner::of(b_.node(Builder::kRoot, Role::kH1))), {}};
    head.begins_page = true;
    head.keep_with_next = true;
    head.outline = page::OutlineEntry{session_.title.text, 1, 0, {}};
    section.slabs.push_back(std::move(head));
    std::vector<std::string> about;
    if (!session_.group_name.empty()) about.push_back(session_.group_name.text);
    if (session_.date) about.push_back(labels_.date(session_.date->value));
    if (about.empty()) return;
    page::Slab line{b_.text(TextRole::kSubtitle, fmt::format("{}", fmt::join(about, " · ")),
                            Owner::of(b_.node(Builder::kRoot, Role::kP))),
                    {}};
    line.keep_with_next = true;
    section.slabs.push_back(std::move(line));
  }

  std::string when(std::size_t turn) const {
    const auto& clock = rotation_->turns[turn].clock;
    return clock ? clock_text(TimeOfDay{Duration::minutes(*clock)}) : std::to_string(turn + 1);
  }

  Block framed_row(Block row, std::optional<Use> ground = std::nullopt) const {
    page::BoxBlock box;
    box.padding = {pad_, Length(), pad_, Length()};
    if (ground) box.fill = b_.colour(*ground);
    box.content.push_back(std::move(row));
    return {std::move(box)};
  }

  std::string coach_of(std::size_t station) const {
    std::string out;
    for (const rota::Coach& coach : rotation_->coaches) {
      const auto& own = coach.stations;
      if (std::find(own.begin(), own.end(), station) == own.end()) continue;
      out += (out.empty() ? "" : ", ") + coach.name.text;
    }
    return out;
  }

  Block head_row(NodeId group) {
    const NodeId row = b_.node(group, Role::kTableRow);
    RowBlock cells;
    cells.gap = gap_;
    const NodeId time = b_.node(row, Role::kHeaderCell);
    b_.at(time).scope = page::HeaderScope::kColumn;
    cells.cells.push_back(
        {Track::fixed(clock_),
         b_.text(TextRole::kPartDetail, labels_.say("rota-time"), Owner::of(time))});
    for (std::size_t i = 0; i < columns(); ++i) {
      const NodeId cell = b_.node(row, Role::kHeaderCell);
      b_.at(cell).scope = page::HeaderScope::kColumn;
      std::string name = rotation_->stations[i].name.text;
      if (!name.empty() && name[0] >= 'a' && name[0] <= 'z')
        name[0] = static_cast<char>(name[0] - 'a' + 'A');
      std::vector<Block> lines = {
          b_.text(TextRole::kPart, name, Owner::of(b_.node(cell, Role::kP)))};
      if (const std::string coach = coach_of(i); !coach.empty())
        lines.push_back(b_.text(TextRole::kPartDetail, coach, Owner::of(b_.node(cell, Role::kP))));
      cells.cells.push_back({Track::fixed(column_), Builder::stack(std::move(lines))});
    }
    std::vector<Block> both = {framed_row({std::move(cells)})};
    both.push_back(b_.rule(b_.width(), b_.look().line_width.scaled(1.5), Use::kMain));
    return Builder::stack(std::move(both));
  }

  // A patch in the group's colour, with its letter.
  Block patch(std::size_t group, Length height, Owner owner) const {
    const Colour ground = colours_[group];
    page::BoxBlock box;
    box.fill = ground;
    box.radius = height / 6;
    if (letters_[group].empty()) {
      box.content.push_back(Builder::space(height));
      return {std::move(box)};
    }
    type::Inline letter = b_.piece(TextRole::kPart, letters_[group]);
    letter.colour =
        contrast_ratio(ground, kWhite) >= contrast_ratio(ground, kBlack) ? kWhite : kBlack;
    box.content.push_back(
        b_.paragraph({std::move(letter)}, TextRole::kPart, owner, page::Align::kCentre));
    return {std::move(box)};
  }

  Block who(std::size_t group, NodeId cell) const {
    const rota::Group& one = rotation_->groups[group];
    const Owner owner = Owner::of(b_.node(cell, Role::kP));
    const Length height = b_.look().text(TextRole::kPart).leading;
    std::vector<Block> words = {b_.text(TextRole::kPart, one.name.text, owner)};
    RowBlock row;
    row.gap = gap_ / 2;
    row.align = RowAlign::kTop;
    row.cells.push_back(
        {Track::fixed(height), patch(group, height, Owner::none(Artifact::kLayout))});
    row.cells.push_back({Track::flexible(), Builder::stack(std::move(words))});
    return {std::move(row)};
  }

  Block turn_row(std::size_t turn, NodeId body) {
    const NodeId row = b_.node(body, Role::kTableRow);
    RowBlock cells;
    cells.gap = gap_;
    const NodeId label = b_.node(row, Role::kHeaderCell);
    b_.at(label).scope = page::HeaderScope::kRow;
    cells.cells.push_back(
        {Track::fixed(clock_), b_.text(TextRole::kPart, when(turn), Owner::of(label))});
    for (std::size_t station = 0; station < columns(); ++station) {
      const NodeId cell = b_.node(row, Role::kDataCell);
      std::vector<Block> groups;
      for (const rota::Visit& visit : rotation_->visits) {
        if (visit.turn == turn && visit.station == station)
          groups.push_back(who(visit.group, cell));
      }
      if (groups.empty()) groups.push_back(b_.text(TextRole::kPart, "–", Owner::of(cell)));
      cells.cells.push_back({Track::fixed(column_), Builder::stack(std::move(groups), pad_ / 2)});
    }
    std::vector<Block> both = {framed_row({std::move(cells)})};
    both.push_back(b_.rule(b_.width(), b_.look().hair_width, Use::kHair));
    return Builder::stack(std::move(both));
  }

  Block pause_row(const rota::Pause& pause, NodeId body) {
    const NodeId row = b_.node(body, Role::kTableRow);
    RowBlock cells;
    cells.gap = gap_;
    const NodeId label = b_.node(row, Role::kHeaderCell);
    b_.at(label).scope = page::HeaderScope::kRow;
    const std::string clock =
        pause.clock ? clock_text(TimeOfDay{Duration::minutes(*pause.clock)}) : std::string();
    cells.cells.push_back(
        {Track::fixed(clock_), b_.text(TextRole::kPart, clock, Owner::of(label))});
    const NodeId cell = b_.node(row, Role::kDataCell);
    b_.at(cell).column_span = static_cast<int>(columns());
    cells.cells.push_back(
        {Track::flexible(), b_.text(TextRole::kPart, pause.words, Owner::of(cell))});
    return framed_row({std::move(cells)}, Use::kTint);
  }

  // `Turns end 19:16`
  std::string ending() const {
    const rota::Turn& last = rotation_->turns.back();
    if (!last.clock || last.minutes <= 0) return {};
    return labels_.say(
        "rota-end",
        {{"time", clock_text(TimeOfDay{Duration::minutes(*last.clock + last.minutes)})}});
  }

  const plan::Session& session_;
  Builder& b_;
  const Labels& labels_;
  const rota::Rotation* rotation_ = nullptr;
  std::vector<std::string> letters_;
  std::vector<Colour> colours_;
  Length gap_;
  Length pad_;
  Length clock_;
  Length column_;
};

page::Composed compose_at(double factor, const plan::Session& session,
                          const reason::Timetable& timetable, const Context& context,
                          type::Typesetter& typesetter) {
  const Look& look = context.theme.card;
  Builder builder(Kind::kHallPoster, context, look.scaled(look.scale.at(context.paper) * factor),
                  typesetter);
  PosterWriter writer(session, builder);
  std::vector<page::Section> sections;
  for (const rota::Rotation* one : grids_of(timetable)) sections.push_back(writer.rotation(*one));
  return page::compose(
      builder.finish(std::move(sections), session, builder.labels().say("hall-poster")),
      typesetter);
}

}  // namespace

page::DisplayList hall_poster(const plan::Session& session, const reason::Timetable& timetable,
                              const Context& context, type::Typesetter& typesetter,
                              Diagnostics& diagnostics) {
  const std::size_t wanted = grids_of(timetable).size();
  constexpr std::array kFactors = {2.0, 1.75, 1.5, 1.3, 1.15, 1.0, 0.88, 0.76};
  page::Composed best;
  for (const double factor : kFactors) {
    best = compose_at(factor, session, timetable, context, typesetter);
    if (best.list.pages.size() <= wanted && best.problems.empty()) break;
  }
  page::report(best, "hall poster", diagnostics);
  return std::move(best.list);
}

}  // namespace chalkleaf::sheet
