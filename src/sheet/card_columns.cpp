#include "sheet/card_columns.h"

#include <algorithm>

namespace chalkleaf::sheet {
namespace {

using Each = plan::Ticks::Each;

constexpr int kGymnastsUnknown = 8;  // columns when nobody says how many come
constexpr int kMostColumns = 100;    // a bound against numbers that no reader should let through

int most_sets(const plan::Session& session) {
  std::int64_t most = 1;
  for (const plan::Part& part : session.parts) {
    for (const plan::Drill* drill : plan::drills_of(part))
      most = std::max(most, sets_to_tick(*drill));
  }
  return static_cast<int>(most);
}

}  // namespace

TickColumns::TickColumns(const plan::Session& session, Builder& builder) : b_(builder) {
  const Labels& labels = b_.labels();
  const plan::Ticks ticks = session.ticks_card ? session.ticks_card->value : plan::Ticks();
  each_ = ticks.each;
  switch (each_) {
    case Each::kGymnast:
      heads_ = numbered(
          "gymnast",
          std::clamp(session.gymnast_count().value_or(kGymnastsUnknown), 1, kMostColumns), labels);
      break;
    case Each::kSet:
      heads_ = numbered("set", most_sets(session), labels);
      meaning_ = labels.say("box-each-set");
      break;
    case Each::kDay:
      heads_ = practice_days(session, labels);
      meaning_ = labels.say("box-each-day");
      break;
    case Each::kWeek:
      heads_ = practice_weeks(ticks.count, labels);
      meaning_ = labels.say("box-each-week");
      break;
    case Each::kTurn:
      heads_ = numbered("rota-turn", std::clamp(ticks.count, 1, kMostColumns), labels);
      meaning_ = labels.say("box-each-turn");
      break;
  }
  // A card set larger keeps its boxes as the theme has them, if that saves a line of boxes.
  side_ = b_.look().tick_box;
  const Length plain = b_.context().theme.card.tick_box;
  if (lines(plain).lines < lines(side_).lines) side_ = plain;
  // A box is never narrower than what stands above it.
  for (const Occasion& head : heads_)
    side_ = std::max(side_, b_.text_width(TextRole::kColumn, head.short_name));
  per_line_ = static_cast<int>(lines(side_).a_line);
  width_ = (side_ + gap()) * per_line_ - gap();
}

// Boxes may take two fifths of the width.
EvenLines TickColumns::lines(Length side) const {
  return even_lines(count(), b_.width() * 2 / 5, side, side / 4);
}

std::vector<NodeId> TickColumns::cells(NodeId row, Role role) const {
  std::vector<NodeId> out;
  for (int i = 0; i < count(); ++i) {
    out.push_back(b_.node(row, role));
    if (role == Role::kHeaderCell) b_.at(out.back()).scope = page::HeaderScope::kColumn;
  }
  return out;
}

// Lines of cells as wide as a box, filled by `cell(i)` for column i from 0.
template <class MakeCell>
Block TickColumns::grid(Length line_gap, MakeCell cell) const {
  std::vector<Block> out;
  for (int from = 0; from < count(); from += per_line_) {
    page::RowBlock line;
    line.gap = gap();
    for (int i = from; i < std::min(from + per_line_, count()); ++i)
      line.cells.push_back({page::Track::fixed(side_), cell(static_cast<std::size_t>(i))});
    out.push_back({std::move(line)});
  }
  return Builder::stack(std::move(out), line_gap);
}

Block TickColumns::heads(const std::vector<Owner>& owners) const {
  return grid({}, [&](std::size_t i) {
    return b_.text(TextRole::kColumn, heads_[i].short_name, owners[i], {}, page::Align::kCentre);
  });
}

Block TickColumns::boxes(const std::vector<NodeId>& cells, const plan::Drill& drill) const {
  const bool write_in = !drill.record.empty();
  const auto sets = static_cast<std::size_t>(sets_to_tick(drill));
  std::vector<NodeId> forms;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (each_ == Each::kSet && i >= sets) break;
    const Labels& labels = b_.labels();
    const std::string& what = heads_[i].name;
    forms.push_back(
        write_in
            ? b_.field_node(cells[i], labels.say("field-column", {{"column", what},
                                                                  {"drill", drill.name.text},
                                                                  {"unit", drill.record.text}}))
            : b_.tick_node(cells[i], labels.say("tick-column",
                                                {{"column", what}, {"drill", drill.name.text}})));
  }
  // A figure wants more height than a tick.
  const Length height = write_in ? side_.scaled(1.6) : side_;
  return grid(gap(), [&](std::size_t i) {
    return i < forms.size() ? b_.tick_box(side_, forms[i], height) : Builder::space({});
  });
}

}  // namespace chalkleaf::sheet
