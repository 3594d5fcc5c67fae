// See the header.
#include "sheet/evening.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "page/join.h"
#include "plan/table_row.h"

namespace chalkleaf::sheet {
namespace {

std::string clock_at(int minutes) { return clock_text(TimeOfDay{Duration::minutes(minutes)}); }

/// Writes one rotation's cards.
class Evening {
 public:
  Evening(const plan::Session& whole, const reason::Timetable& times,
          const rota::Rotation& rotation, const Context& context)
      : whole_(whole), rotation_(rotation), context_(context), labels_(context.labels) {
    const auto number = static_cast<std::size_t>(&rotation - times.rotations.data());
    for (const reason::Seat& seat : times.seats) {
      if (seat.rotation != number) continue;
      if (whole.parts[seat.part].station_of) {
        stations_.push_back(seat);
      } else {
        grid_ = seat.part;
      }
    }
  }

  std::unique_ptr<OwnSession> of_station(std::size_t station) const {
    auto out = begun(name_of(station), coaches(&rota::Coach::stations, station));
    plan::Part& turns = out->session.parts.front();
    turns.title.text = labels_.say("rota-who");
    for (plan::Note& row : who_comes(station)) turns.steps.emplace_back(std::move(row));
    for (const reason::Seat& seat : stations_) {
      if (seat.station == station) add_part(seat.part, *out);
    }
    const int turn_count = static_cast<int>(rotation_.turns.size());
    out->session.ticks_card =
        plan::Sourced<plan::Ticks>{{plan::Ticks::Each::kTurn, turn_count}, {}};
    finish(*out);
    return out;
  }

  std::unique_ptr<OwnSession> of_group(std::size_t group) const {
    auto out = begun(rotation_.groups[group].name.text, coaches(&rota::Coach::groups, group));
    plan::Session& own = out->session;
    own.gymnasts.reset();
    if (const auto& size = rotation_.groups[group].size)
      own.gymnasts = plan::Sourced<int>{*size, {}};
    own.slot = whole_.slot;
    own.start = whole_.start;
    own.ticks_card.reset();
    plan::Part turns = std::move(own.parts.front());
    own.parts.clear();
    for (std::size_t i = 0; i < grid_; ++i) own.parts.push_back(whole_.parts[i]);
    const std::size_t grid = own.parts.size();
    turns.title.text = labels_.say("rota-round");
    for (plan::Note& row : way_round(group)) turns.steps.emplace_back(std::move(row));
    own.parts.push_back(std::move(turns));
    std::vector<reason::Seat> seats;
    for (const rota::Visit& visit : visits_of(group)) {
      for (const reason::Seat& seat : stations_) {
        if (seat.station != visit.station) continue;
        own.parts.push_back(whole_.parts[seat.part]);
        own.parts.back().station_of = grid;
        own.parts.back().gymnasts = rotation_.groups[group].size;
        seats.push_back({own.parts.size() - 1, 0, visit.station});
      }
    }
    for (std::size_t i = grid_ + 1; i < whole_.parts.size(); ++i) {
      if (!whole_.parts[i].station_of) own.parts.push_back(whole_.parts[i]);
    }
    finish(*out);
    rota::Rotation of_it = rotation_;
    std::erase_if(of_it.visits, [&](const rota::Visit& visit) { return visit.group != group; });
    out->timetable.rotations = {std::move(of_it)};
    out->timetable.seats = std::move(seats);
    return out;
  }

 private:
  // A session of that name that begins with an empty part as long as the turns.
  std::unique_ptr<OwnSession> begun(const std::string& name, const std::string& with) const {
    auto out = std::make_unique<OwnSession>();
    plan::Session& own = out->session;
    own = whole_;
    own.title = {};
    own.title.text = name;
    own.title.span = whole_.title.span;
    own.group_name = {};
    own.group_name.text = with;
    if (own.group) own.group->adults.reset();
    own.adults.reset();
    own.equipment.clear();
    own.typed.clear();
    own.fit_card.reset();
    plan::Note evening;
    evening.words = whole_.title;
    evening.words.emphasis = {{0, evening.words.text.size(), true}};
    own.introduction.insert(own.introduction.begin(), std::move(evening));
    const plan::Part& grid = whole_.parts[grid_];
    plan::Part turns;
    turns.span = grid.span;
    turns.title.span = grid.title.span;
    turns.budget = grid.budget;
    turns.safety = grid.safety;
    own.parts = {std::move(turns)};
    own.slot = grid.budget;
    if (const auto begins = rotation_.start())
      own.start = plan::Sourced<TimeOfDay>{TimeOfDay{Duration::minutes(*begins)}, {}};
    return out;
  }

  void add_part(std::size_t part, OwnSession& out) const {
    out.session.parts.push_back(whole_.parts[part]);
    out.session.parts.back().station_of = 0;
  }

  void finish(OwnSession& out) const {
    out.timetable = reason::timetable(out.session, context_.club);
  }

  // As its part is called, else as the grid calls it.
  std::string name_of(std::size_t station) const {
    for (const reason::Seat& seat : stations_) {
      if (seat.station == station) return whole_.parts[seat.part].title.text;
    }
    return rotation_.stations[station].name.text;
  }

  std::string coaches(std::vector<std::size_t> rota::Coach::*of, std::size_t which) const {
    std::string out;
    for (const rota::Coach& coach : rotation_.coaches) {
      const auto& list = coach.*of;
      if (std::find(list.begin(), list.end(), which) == list.end()) continue;
      out += (out.empty() ? "" : ", ") + coach.name.text;
    }
    return out;
  }

  std::vector<rota::Visit> visits_of(std::size_t group) const {
    std::vector<rota::Visit> out;
    for (const rota::Visit& visit : rotation_.visits) {
      if (visit.group == group) out.push_back(visit);
    }
    std::stable_sort(out.begin(), out.end(),
                     [](const auto& a, const auto& b) { return a.turn < b.turn; });
    return out;
  }

  // `17:45–18:05`, or `Turn 2` where there is no clock.
  std::string when(std::size_t turn) const {
    const rota::Turn& one = rotation_.turns[turn];
    if (!one.clock) return labels_.say("rota-turn", {{"n", std::to_string(turn + 1)}});
    if (one.minutes <= 0) return clock_at(*one.clock);
    return labels_.say(
        "from-to", {{"from", clock_at(*one.clock)}, {"to", clock_at(*one.clock + one.minutes)}});
  }

  plan::Note row(const std::vector<std::string>& cells, plan::RowKind kind) const {
    return plan::table_row(cells, kind, rotation_.heading.span);
  }

  void add_pauses(std::size_t before, std::vector<plan::Note>& out) const {
    for (const rota::Pause& pause : rotation_.pauses) {
      if (pause.before != before) continue;
      out.push_back(row({pause.clock ? clock_at(*pause.clock) : std::string(), pause.words, "", ""},
                        plan::RowKind::kBody));
    }
  }

  // Time, who, how many, and where each goes on to.
  std::vector<plan::Note> who_comes(std::size_t station) const {
    std::vector<plan::Note> out = {row({labels_.say("rota-time"), labels_.say("rota-group"),
                                        labels_.say("rota-gymnasts"), labels_.say("rota-next")},
                                       plan::RowKind::kHead)};
    for (std::size_t turn = 0; turn < rotation_.turns.size(); ++turn) {
      add_pauses(turn, out);
      std::vector<std::string> cells = {when(turn), "–", "", ""};
      const auto add = [](std::string& cell, const std::string& text) {
        if (cell == "–") cell.clear();
        cell += (cell.empty() || text.empty() ? "" : " + ") + text;
      };
      for (const rota::Visit& visit : rotation_.visits) {
        if (visit.turn != turn || visit.station != station) continue;
        const rota::Group& group = rotation_.groups[visit.group];
        add(cells[1], group.name.text);
        add(cells[2], group.size ? std::to_string(*group.size) : std::string());
        for (const rota::Visit& next : visits_of(visit.group)) {
          if (next.turn != turn + 1) continue;
          add(cells[3], name_of(next.station));
          break;
        }
      }
      out.push_back(row(cells, plan::RowKind::kBody));
    }
    return out;
  }

  std::vector<plan::Note> way_round(std::size_t group) const {
    std::vector<plan::Note> out = {
        row({labels_.say("rota-time"), labels_.say("rota-station"), labels_.say("rota-coach")},
            plan::RowKind::kHead)};
    const std::vector<rota::Visit> visits = visits_of(group);
    for (std::size_t turn = 0; turn < rotation_.turns.size(); ++turn) {
      add_pauses(turn, out);
      std::vector<std::string> cells = {when(turn), "–", ""};
      for (const rota::Visit& visit : visits) {
        if (visit.turn != turn) continue;
        cells[1] = name_of(visit.station);
        cells[2] = coaches(&rota::Coach::stations, visit.station);
      }
      out.push_back(row(cells, plan::RowKind::kBody));
    }
    return out;
  }

  const plan::Session& whole_;
  const rota::Rotation& rotation_;
  const Context& context_;
  const Labels& labels_;
  std::size_t grid_ = 0;                // the part with the grid
  std::vector<reason::Seat> stations_;  // parts below it, in the order of the plan
};

}  // namespace

namespace {

bool has_drills(const reason::Timetable& timetable, const rota::Rotation& rotation) {
  return std::any_of(timetable.seats.begin(), timetable.seats.end(), [&](const auto& seat) {
    return seat.station && &timetable.rotations[seat.rotation] == &rotation;
  });
}

}  // namespace

std::vector<const rota::Rotation*> grids_of(const reason::Timetable& timetable) {
  // Two halves that change places need no paper of their own.
  constexpr std::size_t kWorthIt = 3;
  std::vector<const rota::Rotation*> out;
  for (const rota::Rotation& rotation : timetable.rotations) {
    const bool seated = std::any_of(
        timetable.seats.begin(), timetable.seats.end(),
        [&](const auto& seat) { return &timetable.rotations[seat.rotation] == &rotation; });
    const bool worth_it = has_drills(timetable, rotation) || rotation.stations.size() >= kWorthIt;
    if (seated && !rotation.visits.empty() && worth_it) out.push_back(&rotation);
  }
  return out;
}

std::vector<const rota::Rotation*> evenings_of(const reason::Timetable& timetable) {
  std::vector<const rota::Rotation*> out = grids_of(timetable);
  std::erase_if(out, [&](const auto* rotation) { return !has_drills(timetable, *rotation); });
  return out;
}

std::vector<std::unique_ptr<OwnSession>> sessions_of_stations(const plan::Session& session,
                                                              const reason::Timetable& timetable,
                                                              const Context& context) {
  std::vector<std::unique_ptr<OwnSession>> out;
  for (const rota::Rotation* rotation : evenings_of(timetable)) {
    const Evening evening(session, timetable, *rotation, context);
    for (std::size_t i = 0; i < rotation->stations.size(); ++i)
      out.push_back(evening.of_station(i));
  }
  return out;
}

std::vector<std::unique_ptr<OwnSession>> sessions_of_groups(const plan::Session& session,
                                                            const reason::Timetable& timetable,
                                                            const Context& context) {
  std::vector<std::unique_ptr<OwnSession>> out;
  for (const rota::Rotation* rotation : evenings_of(timetable)) {
    const Evening evening(session, timetable, *rotation, context);
    for (std::size_t i = 0; i < rotation->groups.size(); ++i) out.push_back(evening.of_group(i));
  }
  return out;
}

page::DisplayList station_cards(const plan::Session& session, const reason::Timetable& timetable,
                                const Context& context, type::Typesetter& typesetter,
                                Diagnostics& diagnostics) {
  std::vector<page::DisplayList> cards;
  for (const auto& all : {sessions_of_stations(session, timetable, context),
                          sessions_of_groups(session, timetable, context)}) {
    for (const auto& own : all) {
      cards.push_back(
          make(Kind::kCoachCard, own->session, own->timetable, context, typesetter, diagnostics));
    }
  }
  page::DocumentInfo info = cards.front().info;
  info.title = fmt::format("{} – {}", session.title.text, context.labels.say("station-cards"));
  return page::join(std::move(cards), std::move(info));
}

}  // namespace chalkleaf::sheet
