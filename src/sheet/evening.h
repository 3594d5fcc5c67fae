// An evening of rotations besides its coach card: a card for who stays at a station, a card for who
// goes round with a group, and a sheet for the wall.
//
// A station's card is the coach card of a session of its own, made of the evening's: who comes
// when, and what they do there. So is a group's: its way round, with each station's drills. Tested
// by tests/sheet/evening_test.cpp.
#pragma once

#include <memory>
#include <vector>

#include "sheet/sheets.h"

namespace chalkleaf::sheet {

/// Part of an evening as a session of its own. The timetable points into the session.
struct OwnSession {
  plan::Session session;
  reason::Timetable timetable;
};

/// The rotations that are worth a poster: a grid with somebody in it, and drills of its stations or
/// three stations and more.
std::vector<const rota::Rotation*> grids_of(const reason::Timetable& timetable);
/// Of these the ones that are worth cards: with drills of their stations.
std::vector<const rota::Rotation*> evenings_of(const reason::Timetable& timetable);

/// Of each station in the order of the grid: its turns, and its part where the plan has one.
std::vector<std::unique_ptr<OwnSession>> sessions_of_stations(const plan::Session& session,
                                                              const reason::Timetable& timetable,
                                                              const Context& context);
/// Of each group: what comes before, its stations in the order it comes to them, what comes after.
std::vector<std::unique_ptr<OwnSession>> sessions_of_groups(const plan::Session& session,
                                                            const reason::Timetable& timetable,
                                                            const Context& context);

/// A card each, stations first. `evenings_of` must not be empty.
page::DisplayList station_cards(const plan::Session& session, const reason::Timetable& timetable,
                                const Context& context, type::Typesetter& typesetter,
                                Diagnostics& diagnostics);

/// Who is where in each turn, to be read across a hall: a page a rotation. Groups have a colour and
/// a letter each (colours: Okabe and Ito 2008, for all kinds of colour vision).
page::DisplayList hall_poster(const plan::Session& session, const reason::Timetable& timetable,
                              const Context& context, type::Typesetter& typesetter,
                              Diagnostics& diagnostics);

}  // namespace chalkleaf::sheet
