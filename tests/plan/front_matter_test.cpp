// Front matter that is right: every value, and its place in the file.
#include <catch2/catch.hpp>

#include "reading.h"

namespace chalkleaf::plan {
namespace {

constexpr const char* kFrontMatter = R"(---
title: "Strong shapes: at home"
place: Home
group: kestrels
slot: 40 min
start: 5:30pm
date: 2026-12-02
repeat: Mon, wed, Friday
equipment:
  towel: a bath towel, rolled lengthways
  line:
timings:
  changeover: 10 s
  parts: {Warm-up: 8 min}
---

## Warm-Up

## Shapes
)";

Club club() {
  Club out;
  out.name.text = "Alder Quay Gymnastics";
  out.groups.push_back({{"Kestrels", {}}, {}, {}, Sourced<int>{8, {}}});
  out.timings.step = {Duration::seconds(2), Timing::Origin::kClub, {}};
  return out;
}

TEST_CASE("front matter gives the session its values, each with its bytes") {
  const ReadPlan plan = read_plan(kFrontMatter, club());
  CHECK(messages(plan.diagnostics).empty());
  const Session& s = plan.session;
  CHECK(s.title.text == "Strong shapes: at home");
  CHECK(s.title.span.text() == "\"Strong shapes: at home\"");
  CHECK(s.place.value == Place::kHome);
  CHECK(s.place.span.text() == "Home");
  CHECK(s.group_name.text == "kestrels");
  CHECK(s.group.value().name.text == "Kestrels");
  CHECK(s.slot.value().value == Duration::minutes(40));
  CHECK(s.slot.value().span.text() == "40 min");
  CHECK(clock_text(s.start.value().value) == "17:30");
  CHECK(s.start.value().span.text() == "5:30pm");
  CHECK(iso_text(s.date.value().value) == "2026-12-02");
  REQUIRE(s.repeat.size() == 3);
  CHECK(s.repeat[1].value == Weekday::kWednesday);
  CHECK(s.repeat[1].span.text() == "wed");
  REQUIRE(s.equipment.size() == 2);
  CHECK(s.equipment[0].name.span.text() == "towel");
  CHECK(s.equipment[0].description.text == "a bath towel, rolled lengthways");
  CHECK(s.equipment[1].description.empty());
  CHECK(s.timings.changeover.value == Duration::seconds(10));
  CHECK(s.timings.changeover.origin == Timing::Origin::kPlan);
  CHECK(s.timings.changeover.span.text() == "10 s");
  CHECK(s.timings.step.value == Duration::seconds(2));
  CHECK(s.timings.step.origin == Timing::Origin::kClub);
  CHECK(s.timings.repetition.origin == Timing::Origin::kDefault);
  REQUIRE(s.parts.size() == 2);
  CHECK(s.parts[0].budget.value().value == Duration::minutes(8));
  CHECK(s.parts[0].budget.value().span.text() == "8 min");
  CHECK(!s.parts[1].budget);
  CHECK(s.sources == std::vector<SourcePtr>{plan.source});
}

TEST_CASE("a group the club does not have is reported; without groups any name will do") {
  const std::string text = "---\ntitle: T\nplace: gym\ngroup: Kestrel\n---\n## P\n";
  CHECK(messages(read_plan(text, club()).diagnostics) ==
        "plan.md:4:8: warning: the club has no group ‘Kestrel’ [bad-value]; did you mean "
        "`Kestrels`?\n");
  CHECK(messages(read_plan(text).diagnostics).empty());
}

TEST_CASE("a hot day is said with yes or no") {
  const auto heat = [](const std::string& lines) {
    const ReadPlan plan = read_plan("---\ntitle: T\nplace: gym\n" + lines + "---\n");
    const auto& said = plan.session.heat;
    return (said ? (said->value ? "yes" : "no") : std::string("none")) + "\n" +
           messages(plan.diagnostics);
  };
  CHECK(heat("") == "none\n");
  CHECK(heat("heat: yes\n") == "yes\n");
  CHECK(heat("heat: no\n") == "no\n");
  CHECK(heat("heat: rather\n").find("plan.md:4:7: error: ") != std::string::npos);
}

TEST_CASE("how many come, and how many adults are with them") {
  const auto counts = [](const std::string& lines) {
    const ReadPlan plan = read_plan("---\ntitle: T\nplace: gym\n" + lines + "---\n");
    const auto text = [](const std::optional<Sourced<int>>& n) {
      return n ? fmt::format("{} ({})", n->value, n->span.text()) : std::string("none");
    };
    return text(plan.session.gymnasts) + ", " + text(plan.session.adults) + "\n" +
           messages(plan.diagnostics);
  };
  CHECK(counts("gymnasts: 6\nadults: two\n") == "6 (6), 2 (two)\n");
  CHECK(counts("") == "none, none\n");
  CHECK(counts("gymnasts: 61\nadults: 0\n") ==
        "none, none\n"
        "plan.md:4:11: warning: ‘61’ is not a number that makes sense here [bad-value]; write a "
        "whole number from 1 to 60\n"
        "plan.md:5:9: error: ‘0’ is not a number that makes sense here [bad-value]; write a whole "
        "number from 1 to 30\n");
  CHECK(counts("gymnasts: Ann and Ben\nadults:\n") ==
        "none, none\n"
        "plan.md:4:11: warning: ‘gymnasts’ must be a number [bad-value]; write how many there are, "
        "from 1 to 60; names do not belong here\n"
        "plan.md:5:8: error: ‘adults’ has no value [bad-value]; write a value behind the colon, or "
        "leave the line out\n");
}

// What a key gives the card and the sheet, by `show`, and what is said of it.
template <class Value, class Show>
std::string each_sheet(const std::string& key, Value Session::*card, Value Session::*sheet,
                       Show show) {
  const ReadPlan plan = read_plan("---\ntitle: T\nplace: gym\n" + key + "\n---\n");
  const auto text = [&](const Value& one) { return one ? show(*one) : std::string("none"); };
  return text(plan.session.*card) + ", " + text(plan.session.*sheet) + "\n" +
         messages(plan.diagnostics);
}

TEST_CASE("how long the sheets may be: in pages, or in sheets of paper of two pages each") {
  const auto fit = [](const std::string& written) {
    return each_sheet("fit: " + written, &Session::fit_card, &Session::fit_sheet,
                      [](const auto& n) {
                        return fmt::format("{}{} ({})", n.value.pages,
                                           n.value.in_sheets ? " in sheets" : "", n.span.text());
                      });
  };
  CHECK(fit("1 sheet") == "2 in sheets (1 sheet), 2 in sheets (1 sheet)\n");
  CHECK(fit("three pages") == "3 (three pages), 3 (three pages)\n");
  CHECK(fit("{card: 1 page, sheet: 2 sheets}") == "1 (1 page), 4 in sheets (2 sheets)\n");
  CHECK(fit("{sheet: 1 Sheet}") == "none, 2 in sheets (1 Sheet)\n");
  CHECK(fit("2") ==
        "none, none\nplan.md:4:6: warning: ‘2’ could be pages or sheets of paper [bad-value]; say "
        "which: `2 pages` or `2 sheets`\n");
  CHECK(fit("0 pages") ==
        "none, none\nplan.md:4:6: warning: ‘0 pages’ is no length a sheet can have [bad-value]; "
        "write from 1 to 60 pages\n");
  CHECK(fit("one side") ==
        "none, none\nplan.md:4:6: warning: ‘one side’ is not a number of pages [bad-value]; write "
        "`1 sheet` (of paper, printed on both sides), `2 sheets`, `1 page` or `3 pages`\n");
  CHECK_THAT(fit("{cards: 1 page}"), Catch::Contains("‘cards’ is not a key of fit"));
}

TEST_CASE("what there is a box for") {
  const auto ticks = [](const std::string& written) {
    return each_sheet(
        "ticks: " + written, &Session::ticks_card, &Session::ticks_sheet, [](const auto& one) {
          constexpr std::array<std::string_view, 4> kNames{"gymnasts", "sets", "days", "weeks"};
          return fmt::format("{} {}", one.value.count,
                             kNames.at(static_cast<std::size_t>(one.value.each)));
        });
  };
  CHECK(ticks("gymnasts") == "0 gymnasts, 0 gymnasts\n");
  CHECK(ticks("each set") == "0 sets, 0 sets\n");
  CHECK(ticks("Per day") == "0 days, 0 days\n");
  CHECK(ticks("six weeks") == "6 weeks, 6 weeks\n");
  CHECK(ticks("{card: sets, sheet: 12 weeks}") == "0 sets, 12 weeks\n");
  CHECK(ticks("{card: gymnasts}") == "0 gymnasts, none\n");
  CHECK(ticks("weeks") ==
        "none, none\nplan.md:4:8: warning: a block of weeks needs its length [bad-value]; write it "
        "as "
        "`ticks: 6 weeks`\n");
  for (const std::string weeks : {"1 week", "13 weeks", "2½ weeks", "99999999999999999999 weeks"}) {
    CHECK(ticks(weeks) == "none, none\nplan.md:4:8: warning: ‘" + weeks +
                              "’ is no length of a block that fits beside a drill [bad-value]; "
                              "write from 2 to 12 weeks, and a new plan for the next block\n");
  }
  CHECK(ticks("sides") ==
        "none, none\nplan.md:4:8: warning: ‘sides’ is nothing to have a box for [bad-value]; write "
        "`gymnasts`, `sets`, `days` or the length of the block: `6 weeks`\n");
  CHECK_THAT(ticks("{sheet: gymnasts}"),
             Catch::Contains("a home sheet belongs to one gymnast, so it has no boxes for others"));
  CHECK_THAT(ticks("{cards: sets}"), Catch::Contains("‘cards’ is not a key of ticks"));
}

TEST_CASE("equipment may be a map, a list or one line") {
  const auto kit = [](const std::string& written) {
    std::string out;
    const ReadPlan plan = read_plan("---\ntitle: T\nplace: gym\nequipment:" + written + "---\n");
    for (const KitItem& item : plan.session.equipment) {
      out += fmt::format("{} ({}) = {}; ", item.name.text, item.name.span.text(),
                         item.description.text);
    }
    return out + messages(plan.diagnostics);
  };
  CHECK(kit("\n  - towel: rolled\n  - line\n") == "towel (towel) = rolled; line (line) = ; ");
  CHECK(kit(" towel, two books\n") == "towel (towel) = ; two books (two books) = ; ");
  CHECK(kit(" [towel, 'a, b']\n") == "towel (towel) = ; a, b ('a, b') = ; ");
  CHECK(kit("\n  towel: &a x\n") ==
        "towel (towel) = x; plan.md:5:10: warning: a value cannot begin with ‘&’ [bad-value]; put "
        "the whole value in quotation marks\n");
}

TEST_CASE("a duplicate key points at both places") {
  const ReadPlan plan = read_plan("---\ntitle: A\nplace: gym\ntitle: B\n---\n");
  REQUIRE(plan.diagnostics.all().size() == 1);
  const Diagnostic& twice = plan.diagnostics.all()[0];
  CHECK(twice.name == "duplicate-key");
  CHECK(twice.span.source->line_column(twice.span.begin) == LineColumn{4, 1});
  REQUIRE(twice.labels.size() == 1);
  CHECK(twice.labels[0].message == "it is written here first");
  CHECK(twice.labels[0].span.source->line_column(twice.labels[0].span.begin) == LineColumn{2, 1});
  CHECK(plan.session.title.text == "A");
}

TEST_CASE("a plan without front matter says where it belongs") {
  CHECK(messages(read_plan("# My plan\n\n## P\n").diagnostics) ==
        "plan.md:1:1: warning: the plan does not say where it is done, and was read as one for the "
        "hall [missing-key]; begin the file with three lines: `---`, then `place: gym`, then "
        "`---`\n");
  CHECK(messages(read_plan("").diagnostics) ==
        "plan.md:1:1: warning: the plan does not say where it is done, and was read as one for the "
        "hall [missing-key]; begin the file with three lines: `---`, then `place: gym`, then "
        "`---`\n"
        "plan.md:1:1: warning: the plan has no title, and is called ‘Plan’ [missing-key]; write a "
        "line such as `title: "
        "Shapes on the floor` between those two `---` lines\n");
}

TEST_CASE("a word processor's quotation marks round a whole value are none of the value") {
  const ReadPlan plan = read_plan(
      "---\ntitle: “Bars and ‘beam’”\nplace: ‘gym’\nstart: “17:00”\nrepeat: “Mon”, ”Wed”\n"
      "equipment:\n  mat: „thick“\n---\n## P\n");
  CHECK(messages(plan.diagnostics).empty());
  CHECK(plan.session.title.text == "Bars and ‘beam’");
  CHECK(plan.session.title.span.text() == "Bars and ‘beam’");
  CHECK(plan.session.place.value == Place::kGym);
  CHECK(clock_text(plan.session.start->value) == "17:00");
  CHECK(plan.session.repeat.size() == 2);
  CHECK(plan.session.equipment.at(0).description.text == "thick");
  for (const char* title : {"“Bars” and “beam”", "The “bars”", "‘Bars’ and ‘beam’", "“”"}) {
    INFO(title);
    CHECK(read_plan(fmt::format("---\ntitle: {}\nplace: gym\n---\n## P\n", title))
              .session.title.text == title);
  }
}

TEST_CASE("a value whose meaning is plain carries its edit") {
  const auto cure = [](const std::string& line) {
    const ReadPlan plan = read_plan("---\ntitle: T\nplace: gym\n" + line + "\n---\n## P\n");
    for (const Diagnostic& one : plan.diagnostics.all()) {
      if (!one.edits.empty()) return one.edits.front().text;
    }
    return std::string();
  };
  CHECK(cure("date: 3/12/2026") == "2026-12-03");
  CHECK(cure("date: 3rd December 2026") == "2026-12-03");
  CHECK(cure("date: 3/12").empty());  // of which year nobody knows
  CHECK(cure("start: 5") == "17:00");
  CHECK(cure("start: 5.30-6.30pm") == "17:30\nslot: 60 min");
  CHECK(cure("slot: 60") == "60 min");
  CHECK(cure("slot: 1:15") == "1:15 h");
  CHECK(cure("gymnasts: about 12") == "12");
  CHECK(cure("gymnasts: 10-12") == "12");
  CHECK(cure("equipmnt: mats") == "equipment");
  CHECK(cure("names: Robin").empty());
}

TEST_CASE("another word for a key is told to be the key, and its value is not lost") {
  FrontWords words;
  words.key = [](std::string_view said) { return std::string(said == "gear" ? "equipment" : ""); };
  const ReadPlan plan = read_plan("---\ntitle: T\nplace: gym\ngear: mats\n---\n## P\n", {}, words);
  REQUIRE(plan.diagnostics.all().size() == 1);
  REQUIRE(plan.diagnostics.all()[0].edits.size() == 1);
  CHECK(plan.diagnostics.all()[0].edits[0].text == "equipment");
}

TEST_CASE("a plan that does not say where is one for the hall, unless its words say home") {
  const std::string text = "---\ntitle: Home week\n---\n## P\n";
  CHECK(read_plan(text).session.place.value == Place::kGym);
  Diagnostics diagnostics;
  const SourcePtr source = source::load_text("plan.md", text, diagnostics);
  FrontWords words;
  words.says_home = [](std::string_view said) { return said.starts_with("Home"); };
  const Session home =
      read_session(source::read_document(source, diagnostics), {}, diagnostics, words);
  CHECK(home.place.value == Place::kHome);
  CHECK_FALSE(diagnostics.has_errors());
}

TEST_CASE("what was not understood is kept for the coach, names are not, safety stays an error") {
  const ReadPlan plan = read_plan(
      "---\ntitle: T\nplace: gym\ntheme: rolling\ngymnasts: Robin and Kim\nnames: Robin\nheat: "
      "warm\n---\n## P\n");
  REQUIRE(plan.session.introduction.size() == 1);
  CHECK(plan.session.introduction[0].words.text == "theme: rolling");
  CHECK(plan.session.introduction[0].reader == Note::For::kCoach);
  CHECK(plan.diagnostics.error_count() == 1);
}

TEST_CASE("checks that a plan lets be need a reason") {
  const ReadPlan plan = read_plan(
      "---\ntitle: T\nplace: gym\nchecks:\n  long-queue: two coaches\n  under-slot: off\n---\n## "
      "P\n");
  REQUIRE(plan.session.checks_off.size() == 1);
  CHECK(plan.session.checks_off[0].reason.text == "two coaches");
  CHECK(
      messages(plan.diagnostics) ==
      "plan.md:6:3: warning: ‘under-slot’ is switched off without a reason [bad-value]; write why: "
      "`under-slot: two coaches tonight`\n");
}

}  // namespace
}  // namespace chalkleaf::plan
